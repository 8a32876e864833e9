"""A shock that swimmers feel comes before the propeller: the current in the water is what hurts them."""

from __future__ import annotations

import pytest

from service.leadsman import Leadsman


@pytest.mark.parametrize(
    "text",
    [
        "our son says it tingles when he swims near the stern",
        "a friend swam round the boat and felt little shocks, can a 12 V battery do that?",
    ],
)
def test_current_in_the_water_is_stopped_first(text: str) -> None:
    (first, *_) = Leadsman().ask(text).answers
    assert (first.topic, first.verdict, first.urgency) == ("hazard", "stop", "stop-now")
    assert first.headline.startswith("Nobody goes into the water")
    assert any("thruster's main switch off" in step.say for step in first.steps)


def test_a_swimmer_who_feels_nothing_is_told_of_the_propeller() -> None:
    (first, *_) = Leadsman().ask("somebody swims right beside the thruster, may I use it?").answers
    assert "Switch the thruster's main switch off" in first.headline
