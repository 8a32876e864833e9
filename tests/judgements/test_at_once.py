"""Two loads at the same time: their amps add up where they share a battery or a cable, and not elsewhere."""

from __future__ import annotations

from typing import Any

import pytest

from service.leadsman import default_desk
from service.reply import Answer


def answer(text: str, topic: str) -> Answer:
    return next(item for item in default_desk().ask(text).answers if item.topic == topic)


def figure(found: Answer, name: str) -> Any:
    return next(item.value for item in found.figures if item.name == name)


@pytest.mark.parametrize(
    ("text", "topic", "name", "value"),
    [
        ("One pair of cables feeds a windlass of 95 A and a thruster of 210 A at the same time, 12 V, 20 ft each way. "
         "Which size?", "cable-size", "gauge", "2/0"),  # 305 A over 40 ft
        ("What fuse for 1/0 feeding both a windlass of 90 A and a thruster of 150 A?", "fuse-size", "fuse_rating", 300),
        ("Bow thruster 180 A and stern thruster 240 A, which CCA do I need to run both together?", "bank-size",
         "required_cca", 1050),  # 2.5 x 420 A
        ("Fridge 4 A and lights 2 A on a 100 Ah AGM, how long?", "run-time", "time_to_usable_limit", 8.1 * 60),
    ],
)  # fmt: skip
def test_the_amps_add_up(text, topic, name, value):
    found = figure(answer(text, topic), name)
    assert found == (value if isinstance(value, str) else pytest.approx(value, rel=0.01))


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("Windlass 80 A and thruster 200 A at the same time on one 500 CCA AGM, ok?", "no"),  # 420 A x 12 mΩ: 7.6 V
        ("Windlass 80 A and thruster 200 A, never at the same time, on one 600 CCA AGM, ok?", "yes"),  # 300 A: 9.6 V
        ("Thruster of 200 A, AGM of 700 CCA, and a stern thruster of 250 A as well. Will it run both?", "yes"),
    ],
)
def test_a_battery_for_two_motors(text, verdict):
    assert answer(text, "run-check").verdict == verdict


def test_what_fails_at_once_is_told_where_it_is_not_asked():
    found = answer(
        "Thruster of 200 A, AGM of 700 CCA, and a stern thruster of 250 A as well. Will it run both?", "run-check"
    )
    assert found.headline.startswith("Yes, one at a time:")
    assert found.headline.endswith("both at once: no.")


def test_a_choice_of_loads_is_no_sum():
    found = answer("100 Ah AGM, how long with a fridge of 4 A or a lamp of 2 A?", "run-time")
    assert [side.figures[0].value for side in found.compare] == pytest.approx([12.5 * 60, 25 * 60], rel=0.01)


def test_three_loads_are_not_taken_for_two():
    found = answer("Fridge 5 A plus lights 3 A plus plotter 2 A on a 110 Ah AGM, how long?", "run-time")
    assert (found.verdict, found.asks[0].fact, found.figures) == ("needs-facts", "load.current", ())
    summed = answer("Fridge 5 A, lights 3 A, plotter 2 A, so 10 A on a 110 Ah AGM, how long?", "run-time")
    assert figure(summed, "time_to_usable_limit") == pytest.approx(5.03 * 60, rel=0.01)


def test_both_facts_stay_in_sight():
    found = default_desk().ask("Windlass 80 A and thruster 200 A at the same time on one 500 CCA AGM, ok?").answers[0]
    amps = {(item.value, item.of) for item in found.understood if item.fact == "load.current"}
    assert amps == {(80.0, 1), (200.0, 2)}


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("Bow and stern thruster are both 12 V, 200 A each. Can one 110 Ah AGM (850 CCA) feed both at once?",
         "No: your 850 CCA"),  # 12.6 - 600 x 6 / 850 = 8.4 V
        ("I have two thrusters, 250 A each. One flooded battery of 900 CCA at 12 V, both running together: enough?",
         "No: your 900 CCA"),
        ("The two thrusters pull 160 A each, at once sometimes. One 12 V one, 600 CCA. Enough?", "No: your 600 CCA"),
        ("Can a single 800 CCA AGM run both thrusters at once? Each draws 180 A, 12 V.", "Just enough: your 800 CCA"),
        ("Twin thrusters, 12 V 140 A each, run simultaneously off one 720 CCA wet battery. OK?", "Yes: your 720 CCA"),
        ("Bow and stern thruster, 200 A each at 12 V. Is one 850 CCA battery enough for both?", "Yes, one at a time:"),
        # one that draws, or two batteries
        ("Bow and stern thruster, 200 A each, never at the same time. One 110 Ah AGM, 850 CCA, 12 V. Enough?",
         "Yes: your 850 CCA"),
        ("Bow and stern thruster, 150 A each, 12 V. Each has its own 700 CCA battery. Enough?", "Yes: your 700 CCA"),
        ("Two thrusters draw 200 A each, 12 V, fed by two 850 CCA batteries in parallel, both on at once. Enough?",
         "Yes: your two 850 CCA"),
        ("Both batteries are 12 V AGM, 850 CCA each, in parallel, the bow thruster takes 200 A. Enough?",
         "Yes: your two 850 CCA"),
    ],
)  # fmt: skip
def test_two_thrusters_of_the_same_amps_are_two_loads_and_no_two_batteries(text, opens):
    assert answer(text, "run-check").headline.replace("\u00a0", " ").startswith(opens)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("I have a stern thruster as well as a bow thruster, both Minnow 12 V. One battery for both, how big?",
         "both Minnows at once want 700 CCA and 59 Ah, one at a time 350 CCA and 30 Ah"),
        ("Bow and stern thruster, both are the Pike. What battery if they share one?",
         "both Pikes at once want 1300 CCA and 126 Ah, one at a time 650 CCA and 63 Ah"),
        ("Minnow at the bow and Pike at the stern, one battery, how big?",
         "the Minnow and the Pike at once want 1000 CCA and 92 Ah, one at a time 650 CCA and 63 Ah"),
        ("Bow and stern thruster, 150 A each. One battery for both, what CCA?", "both thrusters at once want 750 CCA"),
    ],
)  # fmt: skip
def test_one_battery_for_two_thrusters_is_sized_both_ways(text, told):
    found = answer(text, "bank-size")
    assert found.verdict == "needs-facts"
    assert told in found.headline.replace("\u00a0", " ")
    assert [side.label for side in found.compare] == ["both at once", "one at a time"]


@pytest.mark.parametrize(
    "text",
    [
        "We have two boats, each with a Minnow. Which battery?",
        "What battery for the Minnow? I have two of them in mind",
        "both batteries for the Minnow are 60 Ah, how big must they be?",
        "bow thruster Minnow and a stern anchor windlass, what battery for the Minnow?",
    ],
)
def test_one_thruster_is_sized_alone(text):
    assert answer(text, "bank-size").headline.replace("\u00a0", " ").startswith("Look for a lead battery of 350 CCA")


def test_both_thrusters_are_no_two_batteries():
    found = answer("bow Minnow and stern Minnow, can one 800 CCA AGM run both at the same time?", "run-check")
    assert figure(found, "inrush_current") == 420
    assert "your 800 CCA AGM battery" in found.headline.replace("\u00a0", " ")
