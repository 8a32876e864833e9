"""Volts that were measured to be lost: the share of the system's volts settles it, without amps and size."""

from __future__ import annotations

import pytest

from service.told import lost_volts
from tests.talks import on, talk

TOPIC = "voltage-drop"


@pytest.mark.parametrize(
    ("text", "verdict", "opens"),
    [
        ("Is 0.7 of a volt gone between battery and windlass a drama?", "yes", "No: 0.70"),
        ("We lose 1.1 V between battery and motor with it running. Acceptable?", "yes", "Yes: 1.10"),
        ("1.6 V lost between battery and thruster, too much?", "no", "Yes: 1.60"),
        ("We lose 2 volts to the bow thruster on a 24 V system, is that all right?", "yes", "Yes: 2.00"),
        ("0.6 V lost to the chartplotter. OK?", "no", "No: 0.60"),
    ],
)
def test_a_measured_loss_is_judged_by_its_share(text: str, verdict: str, opens: str) -> None:
    found = on(TOPIC, text)
    assert found.verdict == verdict
    assert found.headline.replace("\u00a0", " ").startswith(opens)
    assert not found.asks


@pytest.mark.parametrize(
    "text",
    ["How much may a thruster lose, 1 V?", "It drops to 9 volts at the motor.", "I lost my 12 V battery on the way."],
)
def test_no_loss_is_told(text: str) -> None:
    assert lost_volts.told(text) is None


def test_a_loss_is_no_limit_that_was_set() -> None:
    found = talk("120 A over 5 m of 35 mm2, do I lose 1 V in the cable?").answers[0]
    assert "10" in found.headline
    assert found.verdict == "yes"
