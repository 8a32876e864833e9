"""What later turns say of figures and batteries told before: read over a conversation, as the desk understands it."""

from __future__ import annotations

import pytest

from tests.talks import talk


def understood(*turns: str) -> dict[str, object]:
    """What the desk goes by after the last turn: stated and assumed facts, the first battery's."""
    answers = talk(*turns).answers
    found: dict[str, object] = {}
    for answer in answers:
        found |= {item.fact: item.value for item in answer.assumed}
        found |= {item.fact: item.value for item in answer.understood if item.of == 1}
    return found


@pytest.mark.parametrize(
    ("turns", "fact", "value"),
    [
        (("Pike on one AGM, 95 Ah, 750 CCA. ok?", "three of same, parallel"), "battery.count", 3.0),
        (("a Minnow on a single gel, 680 CCA?", "n if she doubles up, 2 in parallel?"), "battery.count", 2.0),
        (("how much would lithium save, the lead one is 44 kg", "it is three such leads"), "battery.count", 3.0),
        (("what is CCA?", "mine's 640. what will it give at zero degrees?"), "battery.cca", 640.0),
        (("what does CCA mean", "ours says 580, what's left at -10"), "battery.cca", 580.0),
        (
            (
                "24 V thruster, 130 A, two lithium 12 V",
                "limit of each: 100 A always, 250 a moment",
                "those of 150 always?",
            ),
            "battery.max_current",
            150.0,
        ),
        (("lithium put to bed at 70 per cent for 20 weeks, all right?", "at forty?"), "battery.charge", 40.0),
        (("lithium put to bed at 70 per cent for 20 weeks, all right?", "and at 30"), "storage.time", 140.0),
        (("lithium at -5, ok to charge?", "would they take the frost where lead did"), "battery.chemistry", "lfp"),
    ],
)
def test_a_later_turn_goes_on_with_what_was_told(turns, fact, value):
    assert understood(*turns)[fact] == value
