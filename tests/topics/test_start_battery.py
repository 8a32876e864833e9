"""The engine's own start battery by whatever name, and the hours of a load that stand beside a thruster."""

from __future__ import annotations

import pytest

from service.reply import Answer
from tests.talks import on, plain

CAUTION = "start-battery"


def cautioned(answer: Answer) -> bool:
    return CAUTION in [item.id for item in answer.cautions]


@pytest.mark.parametrize(
    "text",
    [
        "Does our starter battery, 780 CCA, run a 165 A bow thruster?",
        "Starting batt doubles for the 150 A thruster here, 820 CCA. Good?",
        "We feed the 155 A stern thruster from the cranking battery, 790 CCA. All right?",
        "The one that starts the engine has 880 CCA; does it turn a 190 A thruster as well?",
        "The 160 A stern thruster has no battery of its own and hangs on the engine's, 860 CCA wet. Enough?",
        "Instead of a separate battery the customer wants 175 A of bow thruster off the engine battery, 870 CCA. Ok?",
        "We have no room for a second battery: 150 A thruster, the engine's starter battery, 840 CCA AGM. Fine?",
        "Is our engine's starting battery, 830 CCA, up to a 170 A thruster, and what kind if I got a separate one?",
        "Can the engine battery of 840 CCA turn a 165 A thruster, or must we buy a separate battery?",
        "150 A thruster off the engine's start battery, 800 CCA: will that do, or should I fit a separate one?",
        "Would the engine battery (870 CCA) do for 160 A at the bow, and what if I fitted a separate battery?",
        "The 145 A thruster shares the diesel's battery, wet, 810 CCA. Good?",
        "Is it good to feed 150 A of bow thruster from the same cranking battery as our outboard, 830 CCA?",
        "We hang the 150 A windlass on the same battery like the motor, 820 CCA wet. Fine?",
        "Do the diesel and a 150 A thruster go on one battery of 850 CCA?",
        "150 A thruster together with the engine on a single 850 CCA battery: good?",
        "May I use the battery which is there for the diesel, 850 CCA, for a 150 A thruster?",
    ],
)
def test_on_the_engines_battery_it_is_only_just_enough(text: str) -> None:
    found = on("run-check", text)
    assert found.verdict == "marginal"
    assert cautioned(found)


@pytest.mark.parametrize(
    ("text", "warned"),
    [
        ("The starter battery is aft; the thruster battery has 900 CCA and the thruster draws 200 A. Enough?", False),
        ("The thruster has its own battery, a starting battery of 900 CCA; it draws 200 A. OK?", False),
        ("Starter batt of 850 CCA, 180 A bow thruster, good enough?", True),
        ("A dedicated thruster battery, a starting one of 880 CCA, for 180 A. Enough?", False),
    ],
)
def test_a_start_battery_by_its_kind_is_judged_by_its_cca(text: str, warned: bool) -> None:
    found = on("run-check", text)
    assert found.verdict == "yes"
    assert cautioned(found) is warned


def test_hours_are_those_of_the_small_load_beside_a_thruster() -> None:
    text = "A 70 Ah battery runs a 170 A thruster. Will it also give 3 A of stereo for 6 hours?"
    assert on("run-time", text).verdict == "yes"
    assert on("run-time", "How long does a 170 A thruster run on 70 Ah?").verdict == "information"


def test_hours_off_the_start_battery_are_only_just_right() -> None:
    found = on("run-time", "3 A of stereo off the start battery, 70 Ah, for 6 hours?")
    assert found.verdict == "marginal"
    assert cautioned(found)
    assert on("run-time", "3 A of stereo off the house battery, 70 Ah, for 6 hours?").verdict == "yes"


@pytest.mark.parametrize(
    ("text", "cca"),
    [
        ("Minnow on the engine start battery, and the engine will not start. Would a separate battery cure it?",
         "350 CCA"),
        ("Our Pike is on the engine battery and the engine won't start. Would its own battery solve that?",
         "650 CCA"),
    ],
)  # fmt: skip
def test_its_own_battery_leaves_the_engine_s_for_starting(text, cca):
    found = on("run-check", text)
    assert found.headline.startswith("Yes: its own battery leaves the engine's for starting")
    assert cca in plain(found.headline)


def test_a_shared_one_of_which_no_cure_is_asked_is_judged_as_before():
    assert on("run-check", "Minnow on the engine battery, 75 Ah, ok?").headline.startswith("At best only just")


@pytest.mark.parametrize(
    "text",
    [
        "For the 150 A thruster I took the same battery as the diesel has, 850 CCA wet. Enough?",
        "Our 150 A thruster has the same battery as last year, 850 CCA. Enough?",
        "The engine and the 150 A thruster each have a battery; the thruster's has 850 CCA. Enough?",
    ],
)
def test_one_of_the_same_kind_is_not_the_engines(text: str) -> None:
    assert on("run-check", text).verdict == "yes"


def test_that_it_is_shared_holds_in_the_next_turn() -> None:
    told = "The thruster is to hang on the same start battery like the diesel. Good?"
    assert on("run-check", told, "it's 150 A, and 850 CCA wet").verdict == "marginal"
