"""Which topics a message asks about, in its order: points of the table, added up clause by clause.

A sign counts once for its clause ("here") and once for the whole message ("anywhere"). The best clause speaks for
a topic. What stays under the bar is not guessed: the thread's topic goes on, or a technician is asked.
"""
from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import NamedTuple

from grammar.files import toml
from grammar.reading import Message, Span
from service.evidence import Sign, evidence, shape

FOLDER = Path(__file__).with_name("points")
SEVERAL = "several.toml"
HANDED_OVER = ("other-desk", "unclear")


class Weight(NamedTuple):
    """The points of a sign for a topic, in its own clause and anywhere in the message."""

    here: int
    anywhere: int


@dataclass(frozen=True, slots=True)
class Bars:
    """What it takes to be named: points for the first topic, for one more, and where a danger stands."""

    first: int
    more: int
    danger: int
    lead: int


@dataclass(frozen=True, slots=True)
class Table:
    """The whole numbers behind every decision, as fitted; nothing in it is computed here."""

    start: dict[str, int]  # by topic: what it begins with
    signs: dict[str, dict[str, Weight]]  # by sign, then topic
    several: dict[str, int]  # by sign of the shape: how much easier a further topic is
    pairs: dict[str, int]  # "first > further": the same for two topics
    bars: Bars


@dataclass(frozen=True, slots=True)
class Request:
    """A topic that is asked about, the clause that asks, its points, its lead over the next and why."""

    topic: str
    span: Span
    points: int = 0
    lead: int = 0
    evidence: tuple[str, ...] = field(default=())

    def why(self) -> str:
        """The points in words, for `leadsman why`."""
        if not self.evidence:
            return "the thread's topic goes on"
        return f"{self.points:+} points, {self.lead:+} over the next: " + ", ".join(self.evidence)


@dataclass(slots=True)
class Tally:
    """The points of one topic: each clause's own, and those that count anywhere."""

    topic: str
    total: int
    clause: int = 0
    place: int = 0
    reasons: list[tuple[int, str]] = field(default_factory=list)


@cache
def table() -> Table:
    """The table of points. Raises ValueError for a line that is no whole number."""
    start: dict[str, int] = {}
    signs: dict[str, dict[str, Weight]] = {}
    for path in sorted(FOLDER.glob("*.toml")):
        if path.name == SEVERAL:
            continue
        content = toml(path)
        start[path.stem] = _whole(path, "start", content["start"])
        for name, (here, anywhere) in content["points"].items():
            signs.setdefault(name, {})[path.stem] = Weight(_whole(path, name, here), _whole(path, name, anywhere))
    shared = toml(FOLDER / SEVERAL)
    return Table(start, signs, dict(shared["several"]), dict(shared["pairs"]), Bars(**shared["bars"]))


def _whole(path: Path, name: str, value: object) -> int:
    if not isinstance(value, int):
        raise ValueError(f"{path.name}, {name}: points must be whole numbers, not {value!r}")
    return value


def route(message: Message, *, context: tuple[str, ...] = ()) -> list[Request]:
    """The topics asked, in the order of the message. `context`: the topics of the turn before.

    Thanks and greetings ask nothing. What is not understood is one request, `unclear`.
    """
    if not any(word[0].isalnum() for word in message.words):
        return []
    ranked = rank(message, context)
    chosen = choose(ranked, message, context)
    if not chosen:
        return _without(message, context)
    found = [_request(message, item, ranked) for item in chosen]
    return [request for _, request in sorted(found, key=lambda pair: pair[0])]


def rank(message: Message, context: Iterable[str] = ()) -> list[Tally]:
    """Every topic with its points, the best first; equal points in the order of their names."""
    points = table()
    starts = [item.span[0] for item in message.clauses] or [0]
    rows = len(starts)
    anywhere = dict(points.start)
    here: dict[str, list[int]] = {topic: [0] * rows for topic in points.start}
    found = _counted(evidence(message, context), starts)
    for (name, row), first in found.items():
        for topic, weight in points.signs.get(name, {}).items():
            here[topic][row] += weight.here
            if first:
                anywhere[topic] += weight.anywhere
    tallies = []
    for topic, rows_of in here.items():
        best = max(range(rows), key=lambda row: (rows_of[row], -row))
        tallies.append(Tally(topic, anywhere[topic] + rows_of[best], best))
    return sorted(tallies, key=lambda item: (-item.total, item.topic))


def _counted(signs: Iterable[Sign], starts: list[int]) -> dict[tuple[str, int], bool]:
    """The signs by name and clause, each once; true for the first of its name in the message."""
    found: dict[tuple[str, int], bool] = {}
    seen: set[str] = set()
    for sign in signs:
        row = max((number for number, start in enumerate(starts) if start <= sign.at), default=0)
        if (sign.name, row) not in found:
            found[sign.name, row] = sign.name not in seen
            seen.add(sign.name)
    return found


def choose(ranked: list[Tally], message: Message, context: tuple[str, ...] = ()) -> list[Tally]:
    """The topics over the bar. A further one needs the shape of several questions, or very many points."""
    points = table()
    bars = points.bars
    first, *others = [item for item in ranked if item.topic != "hazard"]
    danger = ranked[0].topic == "hazard" or any(item.status == "present" for item in message.dangers)
    bar = bars.danger if danger else bars.first
    if first.total < bar or first.total - others[0].total < bars.lead:
        return []
    ease = sum(points.several.get(name, 0) for name in shape(message))
    chosen = [first]
    for item in others[:2]:
        pair = points.pairs.get(f"{first.topic} > {item.topic}", 0)
        if item.total >= bar and item.total + ease + pair >= bars.more * len(chosen):
            chosen.append(item)
    kept = [item for item in chosen if item.topic != "unclear"]
    return kept or chosen


def _without(message: Message, context: tuple[str, ...]) -> list[Request]:
    """No topic over the bar: the thread goes on where the message has nothing of its own, else it is handed over."""
    if context and not message.dangers:
        return [Request(topic, (0, len(message.text))) for topic in context]
    return [Request("unclear", (0, len(message.text)), evidence=("nothing over the bar",))]


def _request(message: Message, item: Tally, ranked: list[Tally]) -> tuple[tuple[int, int], Request]:
    """The request of a chosen topic with its place in the message."""
    return (item.clause, item.place), Request(item.topic, (0, 0))
