"""What differs between two answers to one question: topics, verdicts, figures, what is asked back, the wording."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

KINDS = ("topic", "verdict", "figure", "asks", "urgency", "route", "words")
WORDS = ("headline", "working", "cautions", "would_change", "steps", "compare", "assumed", "asks")
READ = ("label", "verdict", "fact", "value", "unit", "say", "where", "why")  # of an item, in this order
LONGEST = 160  # characters of a side that is shown

Content = Mapping[str, Any]  # the contract's JSON


@dataclass(frozen=True, slots=True)
class Change:
    """One thing that is not as it was: of which answer, its kind (KINDS), its name, what it was and what it is."""

    topic: str
    kind: str
    name: str
    before: Any
    now: Any

    def as_dict(self) -> dict[str, Any]:
        """The change as plain values."""
        return {"topic": self.topic, "kind": self.kind, "name": self.name, "before": self.before, "now": self.now}


def changes(earlier: Content, now: Content) -> Iterator[Change]:
    """What is not as it was: topics, then within each verdict, figures, what is asked back; last the wording."""
    old, new = ({item["topic"]: item for item in reply["answers"]} for reply in (earlier, now))
    for key in ("urgency", "route"):
        was, is_ = earlier.get("triage", {}).get(key), now["triage"][key]
        if was is not None and was != is_:
            yield Change("", key, key, was, is_)
    for topic in dict.fromkeys((*old, *new)):
        if topic in old and topic in new:
            yield from _within(topic, old[topic], new[topic])
        else:
            yield Change(topic, "topic", topic, topic in old, topic in new)


def _within(topic: str, old: Content, new: Content) -> Iterator[Change]:
    if old["verdict"] != new["verdict"]:
        yield Change(topic, "verdict", "verdict", old["verdict"], new["verdict"])
    figures = [_figures(part) for part in (old, new)]
    for name in dict.fromkeys((*figures[0], *figures[1])):
        was, is_ = (_bare(found.get(name)) for found in figures)
        if not same(was, is_):
            yield Change(topic, "figure", name, was, is_)
    asked = [[item["fact"] for item in part.get("asks", ())] for part in (old, new)]
    if asked[0] != asked[1]:
        yield Change(topic, "asks", "asks", *asked)
    for name in WORDS:
        was, is_ = _words(old.get(name)), _words(new[name])
        if name in old and not same(was, is_):
            yield Change(topic, "words", name, _apart(was, is_), _apart(is_, was))


def _figures(part: Content) -> dict[str, Content]:
    """The figures by name, those of a comparison with its side."""
    found = {item["name"]: item for item in part.get("figures", ())}
    for side in part.get("compare", ()):
        found |= {f"{side['label']}: {item['name']}": item for item in side["figures"]}
    return found


def _bare(figure: Content | None) -> list[Any] | None:
    """Value, unit and both ends of a figure."""
    return None if figure is None else [figure.get(name) for name in ("value", "unit", "low", "high")]


def _words(part: Any) -> Any:
    """A part of an answer as it reads: its sentences, without ids and sources."""
    if not isinstance(part, list):
        return part
    return [" ".join(str(item[name]) for name in READ if item.get(name) is not None) for item in part]


def _apart(one: Any, other: Any) -> Any:
    """The sentences of one side that the other has not; all of them where only their order differs."""
    if not isinstance(one, list) or sorted(one) == sorted(other):
        return one
    return [item for item in one if item not in other]


def same(was: Any, is_: Any) -> bool:
    """Whether two plain values are alike; numbers to nine digits."""
    if isinstance(was, list) and isinstance(is_, list):
        return len(was) == len(is_) and all(map(same, was, is_))
    if isinstance(was, bool) or isinstance(is_, bool):
        return was is is_
    if isinstance(was, (int, float)) and isinstance(is_, (int, float)):
        return math.isclose(was, is_, rel_tol=1e-9, abs_tol=1e-12)
    return bool(was == is_)


def shown(change: Change, value: Any) -> str:
    """One side of a change in a line."""
    if change.kind == "topic":
        return "answered" if value else "not answered"
    if change.kind == "figure":
        if value is None:
            return "none"
        number, unit, low, high = value
        text = f"{number:g}" if isinstance(number, (int, float)) and not isinstance(number, bool) else str(number)
        return f"{text} {unit}".strip() + (f" ({low:g} to {high:g})" if low is not None and high is not None else "")
    text = " ".join(value) if isinstance(value, list) else str(value)
    return text if len(text) <= LONGEST else f"{text[: LONGEST - 3]}..."
