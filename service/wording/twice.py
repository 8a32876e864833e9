"""One finding is told once: volts lost between two readings are no second answer beside that on the readings."""

from __future__ import annotations

from collections.abc import Iterable

from service.reply import Answer

READINGS, LOSS = "load-voltage", "voltage-drop"
NEAR = 1e-6


def told_once(answers: Iterable[Answer]) -> list[Answer]:
    """The answers without a loss in the cable that the answer on the same two readings has told."""
    found = list(answers)
    read = [loss for item in found if item.topic == READINGS and (loss := _lost(item)) is not None]
    return [item for item in found if item.topic != LOSS or not _is_one(_lost(item), read)]


def _lost(answer: Answer) -> float | None:
    return next((float(item.value) for item in answer.figures if item.name == "drop"), None)


def _is_one(lost: float | None, others: Iterable[float]) -> bool:
    return lost is not None and any(abs(lost - other) < NEAR for other in others)
