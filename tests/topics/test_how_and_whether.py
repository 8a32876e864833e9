"""What is asked beside the figures: how a hydrometer is used, whether a joint makes a motor weak, what else changes."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.reply import Answer


def first(text: str) -> Answer:
    return default_desk().ask(text).answers[0]


def opens(text: str) -> str:
    return first(text).headline.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("what's the right way to use a hydrometer on my wet batteries", "Charged and rested, draw acid"),
        ("Bought a hydrometer, how do I use it?", "Charged and rested, draw acid"),
        ("how do you go about testing a battery's cells using a hydrometer", "Charged and rested, draw acid"),
        ("how do I use a hydrometer on an AGM", "We can't say yet: an AGM"),
        ("hydrometer says 1.225, how full?", "About 75 % full"),
        ("How often should I use the hydrometer?", "We can't say yet"),
    ],
)
def test_how_a_hydrometer_is_used(text, begins):
    assert first(text).topic == "specific-gravity"
    assert opens(text).startswith(begins)


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("could corroded lugs be why my bow thruster is slow?", "Yes, it can: crust"),
        ("Does white powder on the terminals make a thruster weak?", "Yes, it can: crust"),
        ("would a clamp that is not tight leave the thruster weak?", "Yes, it can: a loose joint"),
        ("how do I clean the green stuff off the posts?", "Brush it off"),
    ],
)
def test_whether_a_joint_makes_it_weak(text, begins):
    assert opens(text).startswith(begins)


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("just put a lifepo4 in place of the old gel, keep the charger and alternator as they are, ok?", "No: lithium"),
        ("Straight swap of my flooded bow battery to lithium, the alternator fills it. Fine?", "No: lithium also"),
        ("Going from gel to lithium at the bow, charged by the alternator. What else must change?", "Lithium also"),
        ("charge lithium straight from the alternator?", "Not straight from the alternator"),
    ],
)
def test_lithium_with_all_else_as_it_is(text, begins):
    assert opens(text).startswith(begins)


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("how is a dual purpose battery different from a starting battery?", "A starting battery gives much"),
        ("what's the difference between deep cycle and dual purpose", "Dual-purpose stands between"),
        ("difference between starting and deep cycle", "A starting battery gives much"),
        ("dual-purpose or deep-cycle for a thruster?", "Dual-purpose: it shows a CCA"),
        ("is a dual purpose battery any good for a thruster", "Starting or dual-purpose"),
    ],
)
def test_two_builds_set_side_by_side(text, begins):
    assert opens(text).startswith(begins)


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("how often do I fill and which water do I use", "Look every month"),
        ("what water do I use", "Distilled or deionised water only"),
        ("how often do I look at the water", "Look at the water every month"),
    ],
)
def test_how_often_and_which_water(text, begins):
    assert opens(text).startswith(begins)
