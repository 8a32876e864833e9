"""How long charging takes."""

import pytest

from service.topics.charge_time import TOPIC
from tests.building import case
from tests.talks import on, plain, talk


@pytest.mark.parametrize(
    ("kind", "capacity", "amps", "charge", "hours"),
    [
        ("flooded", 100, 20, 50, 5.0),
        ("agm", 150, 15, 60, 6.4),
        ("gel", 80, 8, 0, 13.5),
        ("lead", 100, 10, 50, 7.75),
        ("lfp", 100, 30, 20, 2.747),
        ("lfp", 100, 20, 0, 5.15),
        ("agm", 90, 30, 50, 3.833),  # the battery takes 27 A at most
        ("agm", 300, 40, None, 6.125),  # from the usable limit of lead
        ("lfp", 100, 40, None, 2.06),  # from the usable limit of lithium
    ],
)
def test_hours_to_full(kind, capacity, amps, charge, hours):
    facts = {"battery.chemistry": kind, "battery.capacity": float(capacity), "charger.current": float(amps)}
    answer = TOPIC.answer(case(facts | ({} if charge is None else {"battery.charge": float(charge)})))
    assert answer.verdict == "information"
    assert answer.figures[0].value == pytest.approx(hours, abs=0.002)


@pytest.mark.parametrize(("cue", "hours"), [("detail:from_flat", 8.6), ("detail:from_half", 5.3), ("", 5.3)])
def test_flat_and_half_are_taken_as_written(cue, hours):
    facts = {"battery.chemistry": "agm", "battery.capacity": 90.0, "charger.current": 15.0}
    assert TOPIC.answer(case(facts, cues={cue})).figures[0].value == pytest.approx(hours)


def test_a_reading_tells_the_charge():
    facts = {"battery.chemistry": "flooded", "battery.capacity": 90.0, "charger.current": 6.0, "reading.voltage": 4.9}
    assert TOPIC.answer(case(facts)).figures[0].value == pytest.approx(20)


def test_a_full_battery_needs_no_time():
    facts = {"battery.chemistry": "agm", "battery.capacity": 90.0, "charger.current": 15.0, "battery.charge": 100.0}
    assert TOPIC.answer(case(facts)).figures[0].value == 0


@pytest.mark.parametrize(
    ("facts", "asked"),
    [
        ({"battery.chemistry": "agm"}, {"battery.capacity", "charger.current"}),
        ({"charger.current": 10.0, "battery.chemistry": "agm"}, {"battery.capacity"}),
        ({"charger.current": 10.0, "battery.capacity": 100.0}, {"battery.chemistry"}),
        ({"battery.capacity": 100.0, "battery.chemistry": "lfp", "alternator.current": 90.0}, {"charger.kind"}),
    ],
)
def test_what_is_missing_is_asked(facts, asked):
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == "needs-facts"
    assert {item.fact for item in answer.asks} == asked


def test_lithium_is_not_charged_in_frost():
    facts = {"battery.chemistry": "lfp", "battery.capacity": 100.0, "charger.current": 10.0}
    assert TOPIC.answer(case(facts | {"ambient.temperature": -3.0})).verdict == "no"


def test_a_frozen_lead_battery_is_a_hazard_with_first_actions():
    facts = {
        "battery.chemistry": "flooded",
        "battery.capacity": 100.0,
        "charger.current": 10.0,
        "battery.charge": 20.0,
        "ambient.temperature": -15.0,
    }
    answer = TOPIC.answer(case(facts))
    assert (answer.verdict, answer.urgency, answer.route) == ("stop", "today", "technician")
    assert answer.steps[0].kind == "do"
    assert not answer.figures


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("AGM resting 12.2 V: how full is it, and how long will a 10A charger take on 100Ah?", "from 40 % to full"),
        ("how long from 42 % to full, 10 A on 100 Ah AGM", "from 42 % to full"),
    ],
)
def test_a_charge_by_volts_is_rounded_as_the_reading_is(text: str, start: str) -> None:
    assert start in plain(on("charge-time", text).headline)


def test_a_battery_read_at_rest_and_then_put_on_charge_is_one_battery():
    text = "100 Ah AGM read 12.0 V after resting 6 hours, my charger is 20 A. How many hours must it be on charge?"
    found = on("charge-time", text)
    assert found.headline.startswith("About ")
    assert not found.compare


def test_two_batteries_are_still_weighed():
    text = "How long does a 20 A charger take for a half empty 100 Ah AGM, and how long for a half empty 120 Ah gel?"
    assert on("charge-time", text).compare


@pytest.mark.parametrize(
    ("later", "hours"),
    [("and if I just charge it to 85 %?", 2.575), ("and if it is down to 20 %?", 4.12)],
)
def test_where_a_charge_is_to_end_is_no_charge_that_it_has(later: str, hours: float) -> None:
    found = on("charge-time", "LiFePO4, 100 Ah at 35 %, a 20 A charger, how long?", later)
    assert found.figures[0].value == pytest.approx(hours, rel=0.01)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("Will my 60 A alternator fully charge a 90 Ah AGM from half in a 2 hour trip?", "No: about 3.8 hours in all"),
        ("Can a 25 A charger fill 90 Ah of AGM from half during 6 hours?", "Yes: about 4 hours in all"),
    ],
)
def test_whether_it_is_full_in_the_hours_that_are_told(text: str, start: str) -> None:
    assert plain(on("charge-time", text).headline).startswith(start)


@pytest.mark.parametrize(
    "turns",
    [
        ("110 Ah AGM, 12.7 V rested. How long for a 5 A fridge, and how long on 10 A to fill it again?",),
        ("110 Ah AGM, 12.7 V rested. How long for a 5 A fridge?", "and on a 10 A charger to get it back up, how long?"),
    ],
)
def test_after_a_run_a_battery_that_was_full_is_filled_from_half(turns):
    found = next(item for item in talk(*turns).answers if item.topic == "charge-time")
    assert "from 50\u00a0% to full" in found.headline
