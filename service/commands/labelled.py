"""Labelled cases read from their file: what a label may hold, and what is wrong with one."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any

from service.leadsman import LONGEST


def _texts(value: Any) -> bool:
    return isinstance(value, list) and all(isinstance(item, str) for item in value)


def _by_topic(value: Any) -> bool:
    return isinstance(value, dict) and all(_texts(item) for item in value.values())


def _targets(value: Any) -> bool:
    return isinstance(value, dict) and all(isinstance(item, list) and item for item in value.values())


SHAPES: dict[str, tuple[Callable[[Any], bool], str]] = {
    **dict.fromkeys(("topics", "may", "cautions", "urgency", "route"), (_texts, "a list of texts")),
    **dict.fromkeys(("verdict", "asks"), (_by_topic, "an object with a list of texts for each topic")),
    "figures": (_targets, 'an object with [value, tolerance] or a list of texts for each "topic.figure"'),
    "facts": (lambda value: isinstance(value, dict), "an object of facts and their values"),
}


def check(expect: Any) -> None:
    """Raise ValueError for a label of another shape: "yes" for ["yes"] would be judged letter by letter."""
    if not isinstance(expect, Mapping):
        raise ValueError('expect must be an object, such as {"topics": ["rest-voltage"]}')
    if strange := set(expect) - set(SHAPES):
        raise ValueError(f"a label knows no {sorted(strange)}; it knows {sorted(SHAPES)}")
    for name, value in expect.items():
        sound, shape = SHAPES[name]
        if not sound(value):
            raise ValueError(f"{name} must be {shape}")


def cases_of(lines: Iterable[str]) -> Iterator[dict[str, Any]]:
    """The cases of a JSONL file. Raises ValueError with the line for one that is none."""
    for number, line in enumerate(lines, 1):
        if not line.strip():
            continue
        try:
            case = json.loads(line)
            _check_case(case)
        except (ValueError, RecursionError) as error:
            raise ValueError(f"line {number} is not a case: {error}") from error
        yield case


def _check_case(case: Any) -> None:
    turns = case.get("turns") if isinstance(case, dict) and "id" in case else None
    if not isinstance(turns, list) or not turns or not all(isinstance(turn, dict) for turn in turns):
        raise ValueError('it needs "id", and "turns": a list of objects with "text" and "expect"')
    for turn in turns:
        text = turn.get("text")
        if not isinstance(text, str) or not 0 < len(text.strip()) <= len(text) <= LONGEST:
            raise ValueError(f"text must be a text of at most {LONGEST} characters, and not empty")
        check(turn.get("expect"))
