"""Sums that somebody else makes of batteries."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from grammar.reading import Stated
from service.reply import Answer

OPENING = 3  # words before a colon that open a headline: "No, not yet: ..."

SUMS = {  # a claimed fact and the figures of an answer that it is checked by
    "battery.cca": ("bank_cca", "cca"),
    "battery.capacity": ("bank_capacity", "capacity"),
    "battery.ca": ("ca",),
    "bank.voltage": ("bank_voltage",),
    "battery.nominal": ("bank_voltage",),
}

NEAR = 0.02  # a share by which a claimed sum may be off


def summed(answer: Answer, put: str, claimed: Iterable[Stated]) -> Answer:
    """The answer opened for a claim: by the figure that was claimed, or half and half for what is bad only in part."""
    head = answer.headline
    if put and answer.verdict == "yes" and head.startswith("Yes: "):
        agree = [held for item in claimed for held in _agrees(answer, item)]
        return answer if all(agree) else replace(answer, verdict="information", headline=f"No{head[3:]}")
    if not put or has_opening(head):
        return answer
    head = lower(head)
    if answer.verdict == "marginal" and put == "bad":
        return replace(answer, headline=f"Not quite: {head}")
    held = [agrees for item in claimed for agrees in _agrees(answer, item)] if answer.verdict == "information" else []
    return replace(answer, headline=f"{'Yes' if all(held) else 'No'}: {head}") if held else answer


def _agrees(answer: Answer, item: Stated) -> Iterator[bool]:
    """Whether the figure of an answer is the claimed one, where it has that figure."""
    for figure in answer.figures:
        if figure.name in SUMS.get(item.fact, ()) and not isinstance(figure.value, str):
            yield abs(float(figure.value) - float(item.value)) <= NEAR * float(item.value)


def has_opening(headline: str) -> bool:
    """Whether a headline begins with the word that answers: "No, not yet: ..."."""
    first, mark, _ = headline.partition(": ")
    return bool(mark) and len(first.split()) <= OPENING


def lower(text: str) -> str:
    """The text as it goes on after a colon; a name in capitals stays: "CCA is ..."."""
    return text if text[1:2].isupper() else f"{text[:1].lower()}{text[1:]}"
