"""Plain English questions with random values, and the facts they state. The same seed gives the same questions."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from random import Random

from tests.second import ask_charging, ask_readings, ask_supply, ask_wiring
from tests.second.draw import Draw, Question

ASKERS = (ask_supply, ask_readings, ask_charging, ask_wiring)


def asker(topic: str) -> Callable[[Draw], str]:
    """What words the questions of a topic."""
    name = topic.replace("-", "_")
    return next(getattr(part, name) for part in ASKERS if hasattr(part, name))


def questions(topic: str, count: int, seed: int = 1) -> Iterator[Question]:
    """So many questions of a topic."""
    rng = Random(f"{topic} {seed}")
    words = asker(topic)
    for _ in range(count):
        draw = Draw(rng, {})
        text = words(draw)
        yield Question(topic, text, draw.facts)
