"""What the tests of readings and care share."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from service.reply import Answer
from service.topic import Topic
from tests.building import case

Facts = dict[str, Any]
LONGEST = 30  # words of a headline


def asked(topic: Topic, facts: Facts, cues: Iterable[str] = ()) -> Answer:
    """The bare answer to these facts; its headline is one short sentence and its steps are cited."""
    given = case(facts, cues)
    answer = topic.answer(given)
    assert len(answer.headline.replace("\u00a0", " ").split()) <= LONGEST, answer.headline
    assert answer.headline.endswith(".")
    assert answer.verdict == "needs-facts" or any(step.cites for step in given.trace)
    return answer


def figures(answer: Answer) -> dict[str, Any]:
    """The values by name."""
    return {figure.name: figure.value for figure in answer.figures}


def asks(answer: Answer) -> list[str]:
    """The facts that are asked back, in order."""
    return [item.fact for item in answer.asks]
