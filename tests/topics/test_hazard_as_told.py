"""A danger is spoken of as it was told: the charger that is hot, rain water, a battery that swelled and has cooled."""

from __future__ import annotations

import pytest

from service.leadsman import Leadsman
from service.turns.thread import Signer


def talk(*messages: str):  # type: ignore[no-untyped-def]
    """The answers to the last of these messages."""
    desk, thread = Leadsman(signer=Signer("a key")), None
    for message in messages:
        reply = desk.ask(message, thread=thread)
        thread = reply.thread
    return reply.answers


@pytest.mark.parametrize(
    "text",
    ["the charger gets scalding hot but both batteries are cold", "battery is cool, the charger feels very hot, 15 A"],
)
def test_a_hot_charger_is_no_hot_battery(text: str) -> None:
    (first, *_) = talk(text)
    assert (first.verdict, first.urgency) == ("stop", "stop-now")
    assert "no charger may get that hot" in first.headline


def test_a_hot_charger_beside_a_warm_battery_is_a_hot_battery() -> None:
    (first, *_) = talk("the charger is hot and the battery is hot too, agm")
    assert "battery is far too hot" in first.headline


def test_a_swollen_battery_that_cooled_is_still_swollen() -> None:
    first, *below = talk("the agm got hot and its sides swelled on charge", "it has cooled down. which charger?")
    assert first.verdict == "stop"
    assert "a swollen battery still counts" in first.headline
    assert not any(item.verdict in ("yes", "marginal") for item in below)


def test_a_swollen_battery_that_heats_up_again_is_acted_on() -> None:
    (first, *_) = talk("the agm's sides swelled on charge", "now it is too hot to touch")
    assert first.urgency == "stop-now"


def test_rain_water_is_not_called_sea_water() -> None:
    (first, *_) = talk("rain water got in the battery box, the wet cells are standing in water. may I charge them?")
    assert first.verdict == "stop"
    assert "sea water" not in first.headline
    (later, *_) = talk("the lithium got sea water on it", "no, it was rain water only", "can I charge it?")
    assert later.verdict == "stop"
    assert "sea water" not in later.headline


def test_a_lithium_that_stood_flat_did_not_trip() -> None:
    (first, *_) = talk("our lithium went to 0 volts over the winter, how do I wake it?")
    assert "long flat" in first.headline
    assert not any("if it happens again" in step.say for step in first.steps)
