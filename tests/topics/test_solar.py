"""Panels against drain and self-discharge."""

from dataclasses import replace

import pytest

from service.topics.solar import TOPIC
from tests.building import case
from tests.talks import on, plain, talk


@pytest.mark.parametrize(
    ("facts", "cues", "amp_hours"),
    [
        ({"solar.power": 100.0}, set(), 22.22),
        ({"solar.power": 200.0, "solar.sun_hours": 5.0, "bank.voltage": 24.0}, set(), 27.78),
        ({"solar.power": 50.0}, {"word:winter"}, 2.78),
        ({"solar.power": 50.0, "storage.time": 120.0}, set(), 2.78),
    ],
)
def test_daily_charge_with_its_low_end(facts, cues, amp_hours):
    answer = TOPIC.answer(case(facts, cues=cues))
    figure = answer.figures[0]
    assert answer.verdict == "information"
    assert (figure.value, figure.low) == pytest.approx((amp_hours, amp_hours * 0.8), abs=0.01)


@pytest.mark.parametrize(
    ("power", "verdict"),
    [(20.0, "yes"), (14.1, "yes"), (14.0, "marginal"), (10.9, "marginal"), (10.7, "no")],
)
def test_yes_from_1_3_times_the_need(power, verdict):
    facts = {"solar.power": power, "solar.sun_hours": 4.0, "drain.current": 0.1}  # 2.4 Ah a day: 10.8 W just cover it
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == verdict
    assert answer.figures[1].value == pytest.approx(10.8)


@pytest.mark.parametrize(("kind", "lost"), [("flooded", 5), ("agm", 3), ("gel", 3), ("lfp", 3), (None, 5)])
def test_self_discharge_is_part_of_the_need(kind, lost):
    facts = {"solar.power": 20.0, "battery.capacity": 300.0} | ({"battery.chemistry": kind} if kind else {})
    required = TOPIC.answer(case(facts)).figures[1].value
    assert required == pytest.approx(300 * lost / 100 / 30 * 13.5 / (4 * 0.75))


def test_a_panel_in_winter_does_not_cover_an_alarm():
    facts = {"solar.power": 20.0, "drain.current": 0.1, "battery.capacity": 100.0, "battery.chemistry": "flooded"}
    assert TOPIC.answer(case(facts, cues={"word:winter"})).verdict == "no"


def test_under_a_cover_it_brings_nothing():
    answer = TOPIC.answer(case({"solar.power": 20.0}, cues={"detail:under_cover"}))
    assert (answer.verdict, answer.figures[0].value) == ("no", 0)


def test_the_panel_for_a_need():
    answer = TOPIC.answer(case({"drain.current": 5 / 24, "solar.sun_hours": 3.0}))
    assert (answer.verdict, answer.figures[0].name) == ("information", "required_power")
    assert answer.figures[0].value == pytest.approx(30)


def test_a_fridge_that_cycles_takes_its_share_of_the_day():
    fridge = {"load.current": 5.0, "load.kind": "fridge", "solar.sun_hours": 3.0}
    whole = TOPIC.answer(case(fridge)).figures[0].value
    half = TOPIC.answer(case(fridge | {"load.burst": 1800.0, "load.rest": 1800.0})).figures[0].value
    assert (whole, half) == pytest.approx((720, 360))  # 120 and 60 Ah x 13.5 V / (3 h x 0.75)


def test_a_battery_that_only_stands_gets_the_trades_panel():
    answer = TOPIC.answer(case({"battery.chemistry": "agm", "battery.capacity": 100.0}))
    assert answer.figures[0].value == pytest.approx(0.45)
    assert answer.headline.startswith("About 10")


def test_a_panel_left_on_lithium_in_frost():
    assert TOPIC.answer(case({"solar.power": 200.0, "battery.chemistry": "lfp"}, cues={"detail:frost"})).verdict == "no"


def test_a_panel_put_up_without_a_need_asks_what_stays_on():
    answer = TOPIC.answer(case({"solar.power": 50.0}, cues={"request:enough"}))
    assert answer.verdict == "needs-facts"
    assert {item.fact for item in answer.asks} == {"drain.current", "battery.capacity"}
    assert answer.figures[0].name == "daily_charge"


@pytest.mark.parametrize(
    ("kind", "power", "verdict"), [("agm", 10.0, "no"), ("flooded", 10.0, "yes"), ("flooded", 50.0, "no")]
)
def test_a_panel_without_a_controller(kind, power, verdict):
    facts = {"solar.power": power, "battery.capacity": 100.0, "battery.chemistry": kind}
    assert TOPIC.answer(case(facts, cues={"detail:no_controller"})).verdict == verdict


def test_frost_stops_lithium_here_too():
    facts = {"solar.power": 120.0, "battery.chemistry": "lfp", "ambient.temperature": -4.0}
    assert TOPIC.answer(case(facts)).verdict == "no"


@pytest.mark.parametrize(
    ("text", "power", "verdicts"),
    [
        ("enough in summer and in lay-up?", 100.0, ["yes", "no"]),
        ("OK in July? and in winter?", 400.0, ["yes", "yes"]),
        ("June and winter, does it hold", 150.0, ["yes", "marginal"]),
    ],
)
def test_summer_and_winter_are_told_side_by_side(text, power, verdicts):
    facts = {"solar.power": power, "drain.current": 0.3, "battery.capacity": 220.0, "battery.chemistry": "agm"}
    asked = replace(case(facts, cues={"detail:winter"}), text=text)
    answer = TOPIC.answer(asked)
    assert [option.verdict for option in answer.compare] == verdicts
    assert answer.verdict == verdicts[-1]


def test_hours_of_sun_that_are_told_count_for_both_seasons():
    facts = {"solar.power": 100.0, "drain.current": 0.3, "battery.capacity": 220.0, "solar.sun_hours": 3.0}
    asked = replace(case(facts, cues={"detail:winter"}), text="in summer and in winter?")
    assert TOPIC.answer(asked).compare == ()


@pytest.mark.parametrize(
    ("text", "verdict", "told"),
    [
        ("0.3 A drain, 100 Ah wet, 40 W panel. Enough for two weeks away?", "marginal", "in summer"),
        ("30 mA, 60 Ah wet, three weeks over Christmas, 10 W panel, enough?", "no", "0.56 Ah a day"),
        ("50 mA, 100 Ah AGM, away five months, 20 W panel, enough?", "no", "1.1 Ah a day, but"),
        ("30 mA, 60 Ah. A 10 W panel cures it? And which fuse in its plus lead?", "yes", "Yes: a 10 W panel"),
        ("An 80 W panel on a PWM controller, what does it make a day in June?", "information", "About 14 Ah"),
        ("An 80 W panel on an MPPT controller, what does it make a day in June?", "information", "About 18 Ah"),
    ],
)
def test_a_fortnight_away_is_no_winter_and_the_controller_counts(text: str, verdict: str, told: str) -> None:
    found = on("solar", text)
    assert (found.verdict, told in plain(found.headline)) == (verdict, True)


def test_a_panels_fuse_asks_for_the_panels_amps() -> None:
    found = on("fuse-size", "30 mA, 60 Ah. A 10 W panel cures it? And which fuse in its plus lead?")
    assert "panel" in found.asks[0].say
    assert "thruster" in on("fuse-size", "Which fuse for my thruster?").asks[0].say


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("What solar panel do I need?", "drain.current"),
        ("Which panel for the bow battery?", "drain.current"),
        ("How many watts of panel for my battery on the mooring? It draws 20 mA.", "battery.capacity"),
        ("Will my solar panel keep the battery up?", "solar.power"),
    ],
)
def test_the_watts_are_not_asked_of_one_who_asks_for_them(text, first):
    found = talk(text).answers[0]
    if found.verdict == "needs-facts":
        assert found.asks[0].fact == first
    else:
        assert "solar.power" not in [item.fact for item in found.asks]


def test_a_panel_over_the_winter_has_the_sun_of_a_winter_day():
    found = on("solar", "Does 25 W of panel cover a 12 mA alarm and the battery's own loss over winter, 80 Ah AGM?")
    assert found.figures[0].value == pytest.approx(
        25 * 1 * 0.75 / 13.5
    )  # watts x hours of full sun x share, by charging volts


def test_months_cut_short_are_winter_too() -> None:
    found = on("solar", "60 W panel, 80 Ah AGM, an alarm of 20 mA. Enough from Nov to Feb?")
    assert "summer" not in found.headline
    assert next(item.value for item in found.figures if item.name == "daily_charge") == pytest.approx(3.33, rel=0.01)


def test_a_motor_that_is_not_named_counts_by_how_often_it_runs() -> None:
    found = on("solar", "60 W panel for the bow battery, 90 Ah, used 2 min a week at 350 A. Enough in summer?")
    assert found.verdict == "yes"
    assert "your thruster" in found.headline


@pytest.mark.parametrize(
    ("told", "verdict"),
    [
        ("the boat has her cover on and the panel lies below it", "no"),
        ("there is a tarp over it until spring", "no"),
        ("the winter cover goes over the panel", "no"),
        ("a tarpaulin is pulled across the panel", "no"),
        ("a canvas hangs over the boat", "no"),
        ("we leave the panel lying outside, under a sheet", "no"),
        ("the hull is tented over, solar and all", "no"),
        ("she sits under a heavy blue tarp, panel too", "no"),
        ("our tarpaulin hides everything on deck", "no"),
        ("she's all wrapped till the spring", "no"),
        ("the boat is under a tarp, everything but the panel", "yes"),
        ("she is under the tent and the panel stays out", "yes"),
        ("the tarp covers the outboard", "yes"),
        ("no tarpaulin on her", "yes"),
        ("the cover goes on but leaves the panel free", "yes"),
        ("the panel lies on top of the tarp", "yes"),
        ("the cover goes over the boat, not over the panel", "yes"),
        ("there is a tarp over the outboard, the panel is on deck", "yes"),
    ],
)
def test_no_sun_reaches_a_panel_under_what_covers_the_boat(told: str, verdict: str) -> None:
    found = on("solar", f"Does a 20 W panel keep an 85 Ah AGM full over winter, nothing on, if {told}?")
    assert found.verdict == verdict


def test_a_panel_underneath_a_tent_brings_nothing() -> None:
    first = "20 mA from an 80 Ah gel, does a 40 W panel keep up in summer?"
    assert on("solar", first, "in winter the panel lies underneath the big tent").verdict == "no"
    assert on("solar", first, "in winter the panel lies beside the tent").verdict == "yes"


def test_watts_that_are_asked_for_are_not_asked_back():
    asks = [item.fact for item in on("solar", "a panel to keep the battery up: how many watts?").asks]
    assert asks == ["drain.current", "battery.capacity"]
    assert on("solar", "does a panel keep my battery up?").asks[0].fact == "solar.power"
