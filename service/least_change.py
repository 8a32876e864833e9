"""The least change of one fact that turns a verdict."""

from __future__ import annotations

from collections.abc import Iterator

from service import say
from service.case import Case, Value
from service.house_rules.by_house import answered, levers
from service.reply import (
    Answer,
    Change,
)
from service.topic import Lever, Topic

BETTER = {"no": ("yes", "marginal"), "marginal": ("yes",)}

MOST_TRIED = 400  # values of one lever


def all_changes(topic: Topic, case: Case, answer: Answer) -> Iterator[Change]:
    """The changes that turn a verdict, the least of each lever."""
    for lever in levers(topic, case):
        found = least_change(topic, case, lever, BETTER[answer.verdict][0])
        if found:
            yield found


def least_change(topic: Topic, case: Case, lever: Lever, wanted: str) -> Change | None:
    """The first of the lever's values, least change first, with which the topic's verdict is `wanted`."""
    for count, value in enumerate(lever.values(case)):
        if count >= MOST_TRIED:
            break
        also = dict(lever.also(case, value)) if lever.also else {}
        if answered(topic, case.supposing({lever.fact: value, **also}, lever.without)).verdict == wanted:
            return Change(lever.fact, value, say.symbol(lever.fact), _words(lever, case, value), tuple(_also(also)))
    return None


def _words(lever: Lever, case: Case, value: Value) -> str:
    if callable(lever.say):
        return lever.say(case, value)
    return lever.say.replace("{value}", say.fact(lever.fact, value))


def _also(facts: dict[str, Value]) -> Iterator[dict[str, Value]]:
    for name, value in facts.items():
        yield {"fact": name, "value": value, "unit": say.symbol(name)}
