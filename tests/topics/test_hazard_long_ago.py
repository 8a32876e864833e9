"""A battery that burst or burned long ago and was replaced hinders no answer; cells that ran dry then are tested."""

from __future__ import annotations

import pytest

from service.leadsman import Leadsman


@pytest.mark.parametrize(
    ("text", "topic", "verdict"),
    [
        ("an AGM exploded last summer, we changed everything. Which setting for the new gel?", "charger-setting", None),
        ("battery fire three years ago, everything is new now. Is 12.8 V at rest good on AGM?", "rest-voltage", "yes"),
        ("the lithium smoked last year, new AGMs since. What charger for 2x90 Ah?", "charger-size", "information"),
    ],
)
def test_what_was_replaced_since_is_answered(text: str, topic: str, verdict: str | None) -> None:
    (answer,) = Leadsman().ask(text).answers
    assert answer.topic == topic
    assert answer.verdict == (verdict or "information")


@pytest.mark.parametrize(
    "text",
    [
        "an AGM swelled last summer, it is still in use. Which setting for the new gel beside it?",
        "battery fire an hour ago, we will replace everything. Is 12.8 V good on AGM?",
    ],
)
def test_what_is_aboard_still_stops(text: str) -> None:
    assert Leadsman().ask(text).answers[0].verdict == "stop"


def test_cells_that_ran_dry_and_were_filled_are_to_be_tested() -> None:
    (answer,) = Leadsman().ask("the house battery boiled dry last spring, I filled it up and it seems fine").answers
    assert (answer.topic, answer.verdict) == ("maintenance", "information")
    assert answer.headline.startswith("Test it under load before you rely on it")


def test_cells_that_boil_dry_now_still_stop() -> None:
    assert Leadsman().ask("the house battery is boiling dry, I filled it up twice").answers[0].verdict == "stop"
