"""What the desk itself worked out and a later question speaks of: a corrected gravity, a rating in another one."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.reply import Answer
from service.turns.thread import Thread
from tests.talks import talk


def answers(*turns: str) -> tuple[Answer, ...]:
    return talk(*turns).answers


def figure(answer: Answer, name: str) -> float:
    return float(next(item.value for item in answer.figures if item.name == name))


@pytest.mark.parametrize(
    ("turns", "gravity", "freezes"),  # 0.004 for each 10 °F from 80 °F; then the table of gravities
    [
        (("hydrometer 1.150, flooded", "acid was 5 C", "minus 20 tonight, will it freeze"), "1.134", -12.1),
        (("all cells 1.160 at 40 F, wet battery, how full?", "and if it drops to -20C, freezes?"), "1.144", -13.7),
        (("wet battery gravity 1.200 at 100F", "when would it freeze?"), "1.208", -29.9),
        (("SG 1.155 wet", "it was 50F", "1.200 after charging", "freeze at -25C?"), "1.188", -23.9),
        (("SG 1.155 at 50F, wet. forecast -18C, will it freeze?",), "1.143", -13.6),
        (("how full is it, 1.160 at 4 C, and will it freeze at -15 C?",), "1.144", -13.6),
        (("SG 1.155 at 50F wet. when will it freeze?",), "1.143", -13.6),
    ],
)
def test_the_gravity_corrected_to_27_degrees_tells_where_it_freezes(turns, gravity, freezes):
    found = next(item for item in answers(*turns) if item.topic == "freeze-point")
    assert f"the gravity is {gravity} (corrected)" in found.headline
    assert figure(found, "freezing_temperature") == pytest.approx(freezes, abs=0.3)


def test_a_gravity_read_at_no_named_temperature_stands_as_it_is():
    found = answers("1.200 wet, minus 10 forecast, will it freeze")[-1]
    assert "the gravity is 1.200, and" in found.headline


def test_a_new_reading_takes_the_place_of_the_corrected_one_and_the_frost_is_not_its_temperature():
    turns = ("wet battery 1.150 at 30 C", "freeze at -15?", "charged it, reads 1.250 now")
    assert figure(answers(*turns)[0], "corrected_gravity") == pytest.approx(1.250, abs=0.0005)
    assert "1.250" in answers(*turns, "freeze at -25?")[0].headline


@pytest.mark.parametrize(
    ("turns", "name", "value"),
    [
        (("what CCA do I need for the Sturgeon?", "how many MCA is that?"), "ca", 875.0),
        (("what CCA for a 260 A 12V thruster?", "in MCA?"), "ca", 812.5),
        (("12V 180A thruster, what CCA do I need and how many MCA is that",), "ca", 562.5),
        (("650 CCA at minus 5, what's left, and how many MCA is that",), "ca", 812.5),
        (("800 CCA at -10C, what can it give?", "how many MCA is that"), "ca", 1000.0),
        (("700 MCA battery, enough for the Minnow and how many CCA is that?",), "cca", 560.0),
        (("AGM RC 120, what Ah?", "and how many Wh is that"), "energy", 810.2),
    ],
)
def test_how_many_of_another_rating_that_is(turns, name, value):
    found = answers(*turns)[-1]
    assert found.topic == "rating-convert"
    assert figure(found, name) == pytest.approx(value, rel=0.001)


def test_what_is_needed_and_what_they_have_are_both_put_in_the_other_rating():
    found = answers("will 500 CCA run the Pike?", "what would that be in marine cranking amps")[0]
    assert "650\u00a0CCA (-18 °C) are about 813 cranking amps" in found.headline
    assert "500\u00a0CCA are about 625" in found.headline


def test_what_a_rating_is_stays_a_question_of_its_own():
    topics = [item.topic for item in answers("what is MCA and how many CCA is 1000 MCA")]
    assert topics == ["meaning", "rating-convert"]


def test_how_many_amp_hours_they_need_is_no_conversion():
    assert answers("what CCA for a 260 A 12V thruster?", "and how many Ah do I need?")[-1].topic == "bank-size"


def test_a_thread_keeps_only_what_the_desk_works_out():
    told = Thread(worked={"cable-size.gauge": "3/0", "bank-size.required_cca": 700.0})
    again = Thread.from_dict(told.as_dict() | {"w": {**told.worked, "other.figure": 1.0}})
    assert again.worked == told.worked


def test_another_boat_drops_it():
    desk, first = default_desk(), default_desk().ask("260A 12V 18 ft one way, AWG?")
    reply = desk.ask("on my other boat the thruster takes 180 A, which fuse?", thread=first.thread)
    assert reply.answers[0].asks  # the cable there is not the one proposed
