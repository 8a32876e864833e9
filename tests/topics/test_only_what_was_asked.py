"""What is only told beside a question is not answered; a second question in the same breath is."""

from __future__ import annotations

import pytest

from tests.talks import talk


def topics(text: str) -> list[str]:
    return [item.topic for item in talk(text).answers]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("We have minus 8. Does a 780 CCA battery still turn a 280 A thruster?", ["run-check"]),
        ("Minus 8: how many amps does 780 CCA still give, and does it turn a 280 A thruster?",
         ["cold-cranking", "run-check"]),
        ("Is 12.5 V good for a Minnow's battery, wet, 620 CCA?", ["rest-voltage"]),
        ("Is 12.5 V good, and will my wet battery of 620 CCA run the Minnow?", ["rest-voltage", "run-check"]),
        ("AGM of five years rests at 12.2 V. Time for a new one? And will it freeze at -12?",
         ["replacement", "freeze-point"]),
        ("AGM of five years rests at 12.2 V, is that good? Time for a new one? And will it freeze at -12?",
         ["rest-voltage", "replacement", "freeze-point"]),
        ("Will two 110 Ah AGM of 720 CCA in parallel run a Pike, and can I charge them from a 30 A charger?",
         ["run-check", "charger-size"]),
    ],
)  # fmt: skip
def test_each_question_has_its_answer_and_no_more(text: str, expected: list[str]) -> None:
    assert topics(text) == expected
