"""Which dangers stand, in a message and in its thread, and the case of the hazard answer."""

from __future__ import annotations

from collections.abc import Iterable

from grammar.reading import Message
from service.case import Case


def standing(message: Message, before: Iterable[str]) -> tuple[str, ...]:
    """The families of danger that stand after a message: those of the thread and those present in it."""
    present = (danger.family for danger in message.dangers if danger.status == "present")
    return tuple(dict.fromkeys((*before, *present)))


def hazard_case(case: Case, message: Message, before: Iterable[str]) -> Case | None:
    """The case of a hazard answer: signs in this message, present or asked about in general; None without any."""
    signs = {f"danger:{item.family}:{item.status}" for item in message.dangers if item.status in ("present", "general")}
    if not signs:
        return None
    case.cues = case.cues | signs
    case.hazard = any(sign.endswith(":present") for sign in signs)
    return case
