"""How long it lasts, against Peukert's law worked by hand."""

from __future__ import annotations

from typing import Any

import pytest

from service.finish import finished
from service.leadsman import default_desk
from service.reply import Answer
from service.topics.run_time import TOPIC
from tests.building import case
from tests.talks import on, plain, talk

AGM = {"battery.chemistry": "agm", "battery.capacity": 100}


def asked(facts: dict[str, Any], *cues: str) -> Answer:
    return TOPIC.answer(case(facts, cues))


def minutes(answer: Answer) -> Any:
    return {figure.name: figure.value for figure in answer.figures}["time_to_usable_limit"]


@pytest.mark.parametrize(
    ("facts", "wanted"),
    [
        ({**AGM, "load.current": 260}, 6.379),  # 20 x (100 / 5200)^1.15 h x 50 %
        ({**AGM, "battery.chemistry": "flooded", "load.current": 50}, 33.74),
        ({**AGM, "battery.count": 2, "load.current": 340}, 10.398),
        ({"battery.capacity": 90, "load.current": 4}, 675),  # under C20 / 20
        ({"battery.reserve": 180, "load.current": 40}, 51.2),
        ({"battery.chemistry": "lfp", "battery.capacity": 100, "load.current": 80}, 52.23),
        ({"battery.chemistry": "lfp", "battery.energy": 1280, "load.power": 60}, 960),
        ({**AGM, "load.current": 5, "battery.charge": 80}, 360),  # 30 % of 20 h left above half
        ({**AGM, "load.current": 4, "load.burst": 1200, "load.rest": 2400}, 2250),  # 12.5 h on, a third of the time
        ({**AGM, "load.current": 260, "load.burst": 5, "load.rest": 15}, 6.379),  # a thruster's bursts: minutes on
        ({**AGM, "load.current": 3.85, "ambient.temperature": 4.4}, 600),  # 77 % of 100 Ah, its 20-hour rate
    ],
)
def test_time_to_the_usable_limit(facts: dict[str, Any], wanted: float) -> None:
    assert minutes(asked(facts)) == pytest.approx(wanted, rel=0.002)


def test_bursts_are_rounded_down() -> None:
    found = asked({"battery.chemistry": "flooded", "battery.capacity": 90, "load.current": 240, "load.burst": 5})
    assert {figure.name: figure.value for figure in found.figures}["burst_count"] == 49


@pytest.mark.parametrize(
    ("facts", "verdict"),
    [
        ({**AGM, "load.current": 6, "load.time": 36000}, "no"),
        ({**AGM, "load.current": 4, "load.time": 36000}, "yes"),
        ({**AGM, "load.current": 150, "load.burst": 8, "load.bursts": 20}, "yes"),
        ({**AGM, "load.current": 5}, "information"),
        ({**AGM, "load.current": 5, "battery.charge": 40}, "no"),
        ({"battery.chemistry": "lfp", "battery.capacity": 150, "battery.max_current": 100, "load.current": 160}, "no"),
        ({"battery.chemistry": "lfp", "battery.capacity": 280, "load.current": 340}, "needs-facts"),
        (
            {
                "battery.chemistry": "lfp",
                "battery.capacity": 200,
                "battery.max_current": 200,
                "load.current": 130,
                "ambient.temperature": -8,
            },
            "no",
        ),
        ({"load.model": "pike"}, "needs-facts"),
        ({**AGM, "load.model": "pike", "load.time": 300}, "no"),  # the Pike may run 180 s
    ],
)
def test_verdicts(facts: dict[str, Any], verdict: str) -> None:
    assert asked(facts).verdict == verdict


def test_a_load_over_the_limit_gets_no_time() -> None:
    found = asked({"battery.chemistry": "lfp", "battery.capacity": 100, "load.current": 340})
    assert found.figures == ()
    assert found.would_change[0].fact == "battery.max_current"


def test_the_models_own_limit_comes_first() -> None:
    found = asked({"battery.capacity": 200, "battery.chemistry": "lead", "load.model": "pike"})
    told = found.headline.replace("\u00a0", " ")
    assert told.startswith("The Pike may run 3 minutes in one hour; the battery would last")


def test_a_case_size_gives_the_usual_range_and_no_time() -> None:
    found = asked({"battery.group": "27", "load.current": 30})
    assert "85 to 105" in found.headline
    assert (found.verdict, found.asks[0].fact) == ("needs-facts", "battery.capacity")


def test_thrust_is_no_current() -> None:
    assert "thrust gives no amps" in asked({**AGM}, "detail:thrust").headline


def test_the_picture_shows_the_time_against_the_current() -> None:
    found = asked({"battery.chemistry": "flooded", "battery.capacity": 100, "load.current": 50, "load.time": 600})
    plot = found.plot
    assert plot is not None
    usual, worst = (dict(map(tuple, series["points"])) for series in plot["series"])
    assert list(usual.values()) == sorted(usual.values(), reverse=True)
    assert usual[50] == pytest.approx(minutes(found))
    assert all(worst[amps] < usual[amps] for amps in usual)
    assert (plot["mark"]["x"], plot["mark"]["y"]) == pytest.approx((50, minutes(found)))
    assert plot["limits"] == [{"label": "asked for", "value": 10}]


def test_one_curve_where_the_exponent_is_at_the_top_of_its_range() -> None:
    plot = asked({**AGM, "load.current": 50}).plot
    assert plot is not None
    assert len(plot["series"]) == 1
    assert plot["limits"] == []


def test_a_charge_from_which_a_charger_fills_it_is_not_where_the_run_begins() -> None:
    facts = {"load.current": 60, "battery.capacity": 200, "battery.chemistry": "lfp", "battery.charge": 20}
    from_empty, from_full = asked(facts), asked(facts, "about:charger")
    assert from_empty.verdict == "no"
    assert next(item.value for item in from_full.figures if item.name == "time_to_usable_limit") > 120


@pytest.mark.parametrize(
    ("kind", "volts", "told"),
    [("flooded", 12.0, "12.2"), ("agm", 24.0, "24.6"), ("lfp", 12.0, "12.8"), ("gel", 24.0, "24.7")],
)
def test_the_reading_to_stop_at_is_told_on_asking(kind, volts, told):
    facts = {"load.current": 5.0, "battery.capacity": 100.0, "battery.chemistry": kind, "bank.voltage": volts}
    asked = finished(TOPIC, case(facts, cues={"detail:stop_reading"})).headline.replace("\u00a0", " ")
    assert f"stop at about {told}" in asked
    assert "stop at" not in finished(TOPIC, case(facts)).headline


@pytest.mark.parametrize(
    "text",
    [
        "How long would the stern thruster run on our 200 Ah LFP (BMS 200 A) at 8 below zero C, and is it up to it? "
        "Draws 130 A.",
        "How long will the thruster run on 200 Ah LFP, and will the 200 A BMS carry its 130 A at minus 9 C?",
        "how many minutes of thruster from a 180 Ah lithium, bms 180 A, and is that enough for 120 A when it's -7 C",
    ],
)
def test_the_cold_halves_the_limit_whatever_else_is_asked(text):
    verdicts = {answer.topic: answer.verdict for answer in default_desk().ask(text).answers}
    assert verdicts == {"run-time": "no", "run-check": "no"}


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("lamps of 4 amps for 5 hours on an 80 Ah gel, how much is left then?", "About 75 % is left"),
        ("ten 6 second bursts at 200 A off a 100 Ah AGM, what will be left in it", "About 94 % is left"),
        ("90 Ah gel, lamps of 3 A for 6 hours, how many Ah do I have left", "About 80 % is left"),
    ],
)
def test_what_is_left_after_a_run_is_told_on_asking_and_never_rounds_up(text, left):
    (answer,) = default_desk().ask(text).answers
    assert answer.headline.replace("\u00a0", " ").startswith(left)
    assert default_desk().ask(text.rpartition(",")[0] + ", enough?").answers[0].headline.startswith("Yes: your")


def test_a_count_of_bursts_is_shown_in_fives():
    (answer,) = default_desk().ask("how many 3 s bursts at 160 A from a 70 Ah AGM?").answers
    count = next(item.value for item in answer.figures if item.name == "burst_count")
    assert isinstance(count, float)
    assert count % 5
    assert f"about {int(count // 5) * 5} bursts" in answer.headline


@pytest.mark.parametrize("then", ["and in winter at -8?", "what about in the cold, minus 8 C", "and at -8"])
def test_a_season_with_its_degrees_asks_the_same_once_more(then):
    desk = default_desk()
    warm = desk.ask("how long does a Minnow run on a 90 Ah gel?")
    (cold,) = desk.ask(then, thread=warm.as_dict()["thread"]).answers
    assert cold.topic == "run-time"
    assert minutes(cold) < minutes(warm.answers[0])


def test_half_its_charge_gone_ends_a_run_and_begins_no_charge():
    (found,) = talk("90 Ah wet battery at 6 A, how many hours until half the charge is used?").answers
    assert found.topic == "run-time"
    (found,) = talk("90 Ah wet battery, half empty, how many hours at 6 A until it is charged?").answers
    assert found.topic == "charge-time"


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("Is an 800 CCA 95 Ah wet battery enough to drive the Minnow for a quarter of an hour?", "No: the Minnow may"),
        ("would two 95 Ah 800 CCA gels in parallel push a 220 A thruster for 25 minutes, ok?", "No: your two"),
        ("Does my 90 Ah gel with 700 CCA manage an 80 A windlass for 3 minutes?", "Yes: your 700 CCA gel"),
        ("can a pair of 90 Ah AGM in series run the Sturgeon for 12 minutes", "No: the Sturgeon may"),
    ],
)
def test_a_run_of_so_many_minutes_is_first_held_against_the_minutes(text, head):
    first, then = talk(text).answers
    assert (first.topic, then.topic) == ("run-time", "run-check")
    assert plain(first.headline).startswith(head)


@pytest.mark.parametrize(
    "text",
    [
        "does a 90 Ah AGM with 800 CCA run a 200 A thruster for 5 seconds at a time",
        "will a 110 Ah 850 CCA AGM run the Minnow? It was charged for 10 minutes",
        "will 900 CCA run the Pike for 10 minutes",  # of no known amp-hours
        "90 Ah lithium, BMS 90 A, thruster 120 A, does it work? the lock opens in 20 minutes",
    ],
)
def test_a_battery_is_not_held_against_minutes_that_no_run_is_told_of(text):
    assert [answer.topic for answer in talk(text).answers] == ["run-check"]


@pytest.mark.parametrize(
    ("amps", "step"),
    [
        (10, "(120 Ah / (20 h x 10 A))^1.15 = 11.1 hours from full to empty (never more than Ah / A, 12 hours)"),
        (4, "120 Ah / 4 A = 30 hours from full to empty"),
    ],
)
def test_the_working_holds_only_sums_that_are_true(amps, step):
    found = finished(TOPIC, case({**AGM, "battery.capacity": 120, "load.current": amps}))
    assert any(step in plain(item.say) for item in found.working)


def test_bursts_are_worked_out_from_the_time_of_the_headline():
    text = "how many 10 s bursts of a 300 A thruster from a 200 Ah lithium whose BMS allows 500 A"
    found = next(item for item in talk(text).answers if item.topic == "run-time")
    assert "27 minutes in all" in plain(found.headline)
    assert any(plain(item.say).startswith("1620 s / 10 s") for item in found.working)


def test_a_time_just_short_of_the_wish_is_not_rounded_up_to_it():
    found = asked(
        {
            "battery.chemistry": "lfp",
            "battery.capacity": 200,
            "load.current": 300,
            "load.time": 1620,
            "battery.max_current": 500,
            "battery.peak_current": 500,
        }
    )
    assert found.verdict == "no"
    assert "just under 27 minutes" in plain(found.headline)


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("will a 70 Ah gel at 75% charge run a 2 A radio for 14 hours", "No: your 70 Ah gel battery lasts about 8.7"),
        ("Can an 80 Ah AGM run a 4 A fridge for 8 hours?", "Yes: your 80 Ah AGM battery lasts about 10 hours"),
    ],
)
def test_hours_told_beside_a_state_of_charge_are_those_of_the_run(text, head):
    (found,) = talk(text).answers
    assert found.topic == "run-time"
    assert plain(found.headline).startswith(head)


@pytest.mark.parametrize(
    ("then", "figure"),
    [
        ("and if it is half empty?", 0.0),
        ("what if they are half discharged", 0.0),
        ("and half that current", 19.14),
        ("and with half of those amps?", 19.14),
        ("and double that current", 3.89),
        ("and for twice those amps", 3.89),
        ("what about half this current", 19.14),
        ("and half those amps?", 19.14),
        ("and half of that current", 19.14),
        ("and twice that current", 3.89),
    ],
)
def test_a_later_turn_may_halve_the_charge_or_the_current(then, figure):
    found = on("run-time", "100 Ah AGM, the thruster takes 200 A, how long does it last?", then)
    assert minutes(found) == pytest.approx(figure, rel=0.002)


def test_nothing_is_left_to_use_of_a_half_empty_lead_battery():
    found = on("run-time", "how long will an 80 Ah gel run 4 A?", "and if it is half flat?")
    assert plain(found.headline) == (
        "Nothing is left to use: your 80 Ah gel battery should not go below 50 %, so charge it first."
    )
