"""Hydrometer: correction, charge, spread between cells."""

from __future__ import annotations

import pytest

from service.finish import finished
from service.reply import Answer
from service.topics.specific_gravity import TOPIC
from tests.building import case
from tests.talks import on, plain, talk
from tests.topics import readings
from tests.topics.readings import Facts, asks, figures


def asked(facts: Facts, *cues: str) -> Answer:
    return readings.asked(TOPIC, facts, cues)


@pytest.mark.parametrize(
    ("facts", "verdict", "corrected", "charge"),
    [
        ({"reading.gravity": 1.265}, "yes", 1.265, 100),
        ({"reading.gravity": 1.225}, "yes", 1.225, 75),
        ({"reading.gravity": 1.225, "ambient.temperature": 26.67}, "yes", 1.225, 75),
        ({"reading.gravity": 1.235, "ambient.temperature": 4.44}, "marginal", 1.219, 70.8),
        ({"reading.gravity": 1.250, "ambient.temperature": 4.44}, "yes", 1.234, 80.6),
        ({"reading.gravity": 1.190}, "marginal", 1.190, 50),
        ({"reading.gravity": 1.150}, "no", 1.150, 21.4),
        ({"reading.gravity": 1.280, "ambient.temperature": 35}, "yes", 1.286, 100),
    ],
)
def test_charge_at_80_fahrenheit(facts: Facts, verdict: str, corrected: float, charge: float) -> None:
    answer = asked(facts)
    assert answer.verdict == verdict
    assert figures(answer)["corrected_gravity"] == pytest.approx(corrected, abs=0.0005)
    assert figures(answer)["state_of_charge"] == pytest.approx(charge, abs=0.3)


@pytest.mark.parametrize(
    ("facts", "verdict"),
    [
        ({"reading.gravity": (1.265, 1.180)}, "no"),
        ({"reading.gravity": (1.270, 1.220)}, "no"),  # 0.050 is the limit
        ({"reading.gravity": (1.270, 1.221)}, "marginal"),  # the lower cell decides
        ({"reading.gravity_spread": 0.055}, "no"),
        ({"reading.gravity_spread": 0.020}, "yes"),
        ({"reading.gravity": 1.265, "reading.gravity_spread": 0.06}, "no"),
    ],
)
def test_cells_that_differ_by_0_050_end_it(facts: Facts, verdict: str) -> None:
    assert asked(facts).verdict == verdict


@pytest.mark.parametrize(
    ("facts", "wanted"),
    [
        ({}, "reading.gravity"),
        ({"reading.gravity": 1.34}, "reading.gravity"),
        ({"reading.gravity": 1.25, "battery.chemistry": "agm"}, "reading.voltage"),
    ],
)
def test_what_is_asked_back(facts: Facts, wanted: str) -> None:
    answer = asked(facts)
    assert (answer.verdict, asks(answer)[0]) == ("needs-facts", wanted)


def test_volts_that_say_full_and_a_float_that_says_empty_go_to_a_technician() -> None:
    answer = asked({"reading.gravity": 1.120, "reading.voltage": 12.7})
    assert (answer.verdict, answer.route) == ("needs-facts", "technician")
    assert asked({"reading.gravity": 1.225, "reading.voltage": 12.45}).verdict == "yes"


def test_a_full_cell_is_information() -> None:
    answer = asked({}, "detail:reading_wanted")
    assert answer.verdict == "information"
    assert "1.265" in answer.headline


@pytest.mark.parametrize("cue", ["detail:saved", "detail:desulphate"])
def test_thrown_out_or_saved_is_decided_by_one_equalising_charge(cue):
    facts = {"reading.gravity": (1.255, 1.185), "reading.gravity_spread": 0.07, "battery.chemistry": "flooded"}
    answer = finished(TOPIC, case(facts, cues={cue}))
    assert answer.verdict == "no"
    assert answer.headline.startswith("Equalise it once, watched, and replace it if the cells stay apart")
    assert "the one at 1.185" in answer.headline


def test_the_lowest_of_many_cells_is_reckoned_by_their_spread():
    facts = {"reading.gravity": (1.260, 1.250), "reading.gravity_spread": 0.075, "battery.chemistry": "flooded"}
    answer = finished(TOPIC, case(facts))
    assert "the one at 1.185" in answer.headline
    assert answer.figures[0].low == pytest.approx(1.185)


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("Hydrometer: 1.220 1.225 1.215 1.225 1.220 and 1.150 in the last, good?", 1.150, 1.225),
        ("1.180, 1.255, 1.250, 1.265, 1.260, 1.255: is a cell gone?", 1.180, 1.265),
        ("cells at 1.240 1.225 1.250 1.245 1.230 1.235, ok?", 1.225, 1.250),
        ("1.265 1.270 1.260 on three cells, all good?", 1.260, 1.270),
    ],
)
def test_of_many_cells_the_lowest_and_the_highest_are_told(text: str, low: float, high: float) -> None:
    answer = next(item for item in talk(text).answers if item.topic == "specific-gravity")
    gravity = next(item for item in answer.figures if item.name == "corrected_gravity")
    assert (gravity.low, gravity.high) == pytest.approx((low, high))


@pytest.mark.parametrize(
    ("text", "change"),
    [
        ("SG 1.220 all six cells. charge it?", "1.225 or more on the float after charging (75 %; full is 1.265)"),
        ("hydrometer 1.200, good?", "1.225 or more on the float after charging (75 %; full is 1.265)"),
        ("hydrometer 1.220 at 5 C, good?", "1.241 or more on the float after charging (75 %; full is 1.281)"),
    ],
)
def test_the_least_good_reading_stands_beside_that_of_a_full_one(text: str, change: str) -> None:
    assert plain(on("specific-gravity", text).would_change[0].say) == change


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("hydrometer says 1.265 1.260 1.265 1.190 1.265 1.260. wots that mean", "The cells differ by 0.075"),
        ("hydrometer says 1.265 1.260 1.265 1.190 1.265 1.260. is that good", "No: the cells differ by 0.075"),
    ],
)
def test_no_no_where_it_is_asked_what_it_means(text: str, start: str) -> None:
    assert plain(on("specific-gravity", text).headline).startswith(start)


def test_what_to_do_about_a_cell_apart_is_told():
    text = "Flooded battery, five cells at 1.260 and one at 1.190, charged all day. What should I do about it?"
    assert on("specific-gravity", text).headline.startswith("Equalise it once, watched, and replace it if")


def test_a_cell_apart_that_is_only_judged_is_near_its_end():
    text = "Flooded battery, five cells at 1.260 and one at 1.190, charged all day. Is that all right?"
    assert "near its end" in on("specific-gravity", text).headline


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("1.230 in each cell, is it full?", "No: a gravity of 1.230 means your battery is about 80 % full"),
        ("1.252 in each cell, is it full?", "Nearly: a gravity of 1.252"),
        ("1.266 in each cell, is it full?", "Yes: a gravity of 1.266 means your battery is full"),
    ],
)
def test_whether_it_is_full_is_a_yes_only_of_a_full_one(text: str, start: str) -> None:
    assert plain(on("specific-gravity", text).headline).startswith(start)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("Should I equalise? The cells read 1.245 to 1.265, wet.", "Yes, once it is charged right through: the cells "
         "differ by 0.020"),
        ("1.262 1.266 1.264 1.262 1.266 1.264 in the cells, do they need equalising?", "Not for its cells: the cells "
         "differ by only 0.004"),
        ("All cells at 1.260, is equalising due?", "Not for its cells: all cells read alike"),
        ("Should I equalise? The cells read 1.190 to 1.265, wet.", "Equalise it once, watched, and replace it if"),
    ],
)  # fmt: skip
def test_whether_to_equalise_goes_by_the_cells_that_are_told(text: str, start: str) -> None:
    assert any(plain(item.headline).startswith(start) for item in talk(text).answers)


@pytest.mark.parametrize(
    "text",
    [
        "The gel shows 12.55, the flooded one has 1.240 on the float. Good, both?",
        "12.55 on our gel at rest and 1.240 by the hydrometer in the wet engine battery: are the two all right?",
        "gel bank 12.55 V; wet starter 1.240 by hydrometer. ok?",
    ],
)
def test_the_float_tells_of_the_battery_that_has_acid(text):
    found = on("specific-gravity", text)
    assert (found.verdict, plain(found.headline)) == (
        "yes",
        "Yes: a gravity of 1.240 means your wet-cell battery is about 85 % full.",
    )


def test_a_float_in_a_sealed_battery_tells_nothing():
    assert on("specific-gravity", "My gel has 1.240 by the hydrometer. Good?").verdict != "yes"
