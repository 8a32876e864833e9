"""Laying up: days to the next charge, how often to look, what is left."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.reply import Answer
from service.topics.storage import TOPIC
from tests.talks import on, plain, talk
from tests.topics import readings
from tests.topics.readings import Facts, asks, figures

DRAIN = {"drain.current": 0.06, "battery.capacity": 100}


def asked(facts: Facts, *cues: str) -> Answer:
    return readings.asked(TOPIC, facts, cues)


@pytest.mark.parametrize(
    ("facts", "verdict", "days", "left"),
    [
        ({"battery.chemistry": "flooded"}, "information", 152.2, None),
        ({"battery.chemistry": "agm"}, "information", 180, None),  # 254 days, shown as 180
        ({"battery.chemistry": "flooded", "ambient.temperature": 30}, "information", 76.1, None),
        ({"battery.chemistry": "flooded", "storage.time": 152, "ambient.temperature": 5}, "yes", 180, 91.2),
        ({"battery.chemistry": "flooded", "storage.time": 182.6, "ambient.temperature": 10}, "yes", 180, 85),
        ({"battery.chemistry": "agm", "storage.time": 121.75, "ambient.temperature": 20}, "yes", 180, 88),
        ({"battery.chemistry": "flooded", "storage.time": 90, "reading.voltage": 12.5}, "marginal", 38, 66.5),
        ({"battery.chemistry": "flooded", "storage.time": 320}, "no", 152.2, 47.4),
        ({"battery.chemistry": "lfp", "storage.time": 150}, "yes", 180, 35.2),
        ({"battery.chemistry": "lfp", "storage.time": 400}, "no", 180, 10.6),
        ({"reading.voltage": 12.0}, "no", 0, None),
        (DRAIN | {"storage.time": 30}, "marginal", 15.6, 51.9),
        (DRAIN | {"storage.time": 60}, "no", 15.6, 3.7),
    ],
)
def test_days_verdict_and_what_is_left(facts: Facts, verdict: str, days: float, left: float | None) -> None:
    answer = asked(facts)
    assert answer.verdict == verdict
    assert figures(answer)["days_to_recharge"] == pytest.approx(days, abs=0.2)
    assert figures(answer)["check_interval"] == pytest.approx(min(days, 90), abs=0.2)
    assert figures(answer).get("state_of_charge_after") == (None if left is None else pytest.approx(left, abs=0.2))


def test_asked_about_disconnecting_the_drain_is_left_out() -> None:
    answer = asked({**DRAIN, "storage.time": 90, "battery.chemistry": "flooded"}, "detail:disconnect")
    assert answer.verdict == "yes"
    assert figures(answer)["days_to_recharge"] == pytest.approx(152.2, abs=0.1)


def test_a_drain_needs_the_capacity() -> None:
    assert asks(asked({"drain.current": 0.06})) == ["battery.capacity"]


def test_a_half_full_battery_in_hard_frost_is_no() -> None:
    answer = asked({"battery.chemistry": "agm", "battery.charge": 55, "ambient.temperature": -30, "storage.time": 10})
    assert answer.verdict == "no"
    assert "freeze" in answer.headline


def test_lead_under_half_is_for_today() -> None:
    assert asked({"reading.voltage": 12.0}).urgency == "today"
    assert asked({"battery.chemistry": "flooded", "storage.time": 400}).urgency == "routine"


@given(days=st.floats(1, 2000), celsius=st.floats(-30, 45), kind=st.sampled_from(["flooded", "agm", "gel", "lfp"]))
def test_a_longer_time_never_leaves_more(days: float, celsius: float, kind: str) -> None:
    first, later = (
        asked({"battery.chemistry": kind, "ambient.temperature": celsius, "storage.time": time})
        for time in (days, days * 1.5)
    )
    assert figures(first)["state_of_charge_after"] >= figures(later)["state_of_charge_after"]
    assert 0 <= figures(first)["days_to_recharge"] <= 180


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("Cells read 1.230 all across at 5 degrees C. Should I charge before I lay up?", "Yes: at 65 % charge it"),
        ("12.3 V AGM, do I need to charge it before the winter lay up?", "Yes: at 50 % charge it"),
        ("AGM at 12.4 V, is that ok to lay up for the winter?", "Only just: at 60 % charge it"),
    ],
)
def test_whether_to_charge_before_it_is_laid_up(text: str, start: str) -> None:
    assert plain(on("storage", text).headline).startswith(start)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Lithium, 6 months in a cellar. Do I charge it to 100 %?", "Leave it about half full"),
        ("Lithium stands at 100 % for 6 months, is that ok?", "; about half full is better."),
        ("AGM stands at 100 % for 4 months, is that ok?", ""),
    ],
)
def test_lithium_is_best_laid_up_half_full_also_where_it_is_full(text: str, told: str) -> None:
    headline = on("storage", text).headline
    assert (told in headline) if told else ("half" not in headline)


def test_a_charge_of_now_is_not_reckoned_from_the_day_the_lay_up_began() -> None:
    found = on("storage", "Aboard since October, it reads 12.55 now, wet. Is it ok till May?")
    assert "state_of_charge_after" not in {figure.name for figure in found.figures}
    assert not any("Laid up on" in step.say for step in found.working)


@pytest.mark.parametrize(
    "text",
    [
        "The gel shows 12.7. Good? And has it to come indoors, we have -9 in the cabin",
        "Is 12.7 all right on the wet, and must we carry it ashore when it falls to -9?",
        "Does the wet battery freeze at -9 when it is full, or may it stay on the boat?",
    ],
)
def test_whether_it_must_come_home_is_answered_beside_the_frost(text):
    assert "storage" in {item.topic for item in talk(text).answers}


def test_who_comes_home_is_no_battery():
    text = "It shows 12.7 on the wet at -9. Good, can we come home on it?"
    assert "storage" not in {item.topic for item in talk(text).answers}


def test_a_charge_that_is_only_supposed_is_not_the_one_that_is_laid_up() -> None:
    text = (
        "Flooded 100 Ah, full, stands in the cellar at 20 C, nothing connected, and we are back 6 months on. Too long? "
        "And supposing it had been at a quarter out there at -8: would it have frozen?"
    )
    laid_up, frost = on("storage", text), on("freeze-point", text)
    known = [{item.fact: item.value for item in answer.understood} for answer in (laid_up, frost)]
    assert (laid_up.verdict, known[0]["battery.charge"], known[1]["battery.charge"]) == ("marginal", 100.0, 25.0)


def test_of_two_the_low_one_is_charged_first():
    answer = on("storage", "two wet ones rested at 12.65 and 12.15 V, may they stay like that over winter?")
    assert answer.verdict == "no"
    assert "charge the one at 12.15 V full first" in plain(answer.headline)
    both = on("storage", "two wet ones rested at 12.25 and 12.15 V, may they stay like that over winter?")
    assert "charge both full first" in both.headline


def test_charged_since_it_was_asked_whether_it_may_be_left():
    turns = ("12.1 V after rest, wet", "may I leave it over the winter like that?")
    answer = on("storage", *turns, "charged it, 12.7 V now. Can it be left then?")
    assert answer.verdict != "no"
    assert "charge it full" not in answer.headline
