"""Topics on cases by hand; what the tests look at."""

from __future__ import annotations

from service.case import Value
from service.reply import Answer


def figures(answer: Answer) -> dict[str, Value]:
    """Name and value of each figure."""
    return {figure.name: figure.value for figure in answer.figures}


def asked(answer: Answer) -> list[str]:
    """The facts asked back, in order."""
    return [item.fact for item in answer.asks]
