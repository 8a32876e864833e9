"""Volts that go down under load are judged as such, and batteries that were split to be read are no split case."""

from __future__ import annotations

import pytest

from service.leadsman import Leadsman


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("LFP goes from 13.1 down to 11.6 V as I push the lever, is that usual?", "marginal"),
        ("my lithium goes down from 13.3 to 12.3 V with the windlass on, ok?", "yes"),
    ],
)
def test_volts_that_go_down_are_a_reading_under_load(text: str, verdict: str) -> None:
    assert [(item.topic, item.verdict) for item in Leadsman().ask(text).answers] == [("load-voltage", verdict)]


def test_volts_that_go_down_to_none_are_a_lithium_that_switched_off() -> None:
    first = Leadsman().ask("LFP goes from 13.1 down to 0 V as I push the lever, is that usual?").answers[0]
    assert (first.topic, first.verdict) == ("hazard", "stop")


def test_batteries_that_were_split_for_the_night_are_read_at_rest() -> None:
    first = Leadsman().ask("AGM one 12.70, AGM two 12.10, split and left for the night").answers[0]
    assert first.topic == "rest-voltage"
    assert "12.1\N{NO-BREAK SPACE}V" in first.headline
