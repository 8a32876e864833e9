"""The table of points, and what it makes of a message: every topic's points, the best first, and those over the bars.

A sign counts once for its clause ("here") and once for the whole message ("anywhere"). The best clause speaks for
a topic.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass
from functools import cache
from itertools import pairwise
from pathlib import Path

from grammar.files import kept, toml
from grammar.reading import Message
from service.routing.evidence import Sign
from service.routing.parted import growth, in_order, parted
from service.routing.several import ALONE, CUT, FIRST, GAP, LEAD, SECOND, THERE, TOTAL, Several

FOLDER = Path(__file__).with_name("points")
SEVERAL, QUESTIONS = "several.toml", "questions.toml"
HAZARD = "hazard"  # found by the tables of dangers, or else by its points (`alarmed`), and answered before all else
TOLD = ("quantity:", "fact:", "two:")  # signs that are told, often after what is asked
MOST = 4  # topics of one message
LEAST = -12  # points of a topic that is named beside another one, without those of the turn before
THIRD = 0  # and of one that is named after two
BEFORE = "before"  # begins the signs of the turn before
NOTHING: Mapping[str, tuple[int, int]] = {}  # of a sign that the table does not know


@dataclass(frozen=True, slots=True)
class Bars:
    """The points it takes to be named.

    `first` for a topic, `danger` where a danger stands, `lead` over the next where only one is named; `more` for a
    further topic; `own` to turn away from the thread without asking.
    """

    first: int
    more: int
    danger: int
    lead: int
    own: int

    def as_dict(self) -> dict[str, int]:
        """The bars by name."""
        return asdict(self)


@dataclass(frozen=True, slots=True)
class Table:
    """The whole numbers behind every decision, as they were fitted."""

    start: Mapping[str, int]  # by topic: what it begins with
    points: Mapping[str, Mapping[str, tuple[int, int]]]  # by sign, then topic: in its clause, anywhere
    several: Several  # how much easier a further topic is
    bars: Bars


@dataclass(slots=True)
class Tally:
    """The points of one topic, the clause that speaks for it, and its place beside the best topic."""

    topic: str
    total: int
    row: int = 0
    tops: bool = False  # whether it is the best of some clause
    place: tuple[str, ...] = ()


@cache
def table() -> Table:
    """The table of points, kept as it was read. Raises ValueError for a line that holds no whole numbers."""
    files = sorted(FOLDER.glob("*.toml"))
    start, points, *several, bars = kept(str(FOLDER), [*files, Path(__file__)], lambda: _read(files))
    return Table(start, points, Several(*several), Bars(**bars))


def _read(files: Iterable[Path]) -> tuple[object, ...]:
    start: dict[str, int] = {}
    points: dict[str, dict[str, tuple[int, int]]] = {}
    shared: dict[str, dict[str, int]] = {}
    for path in files:
        content = toml(path)
        if path.name in (SEVERAL, QUESTIONS):
            shared |= content
            continue
        start[path.stem] = content["start"]
        for name, pair in content["points"].items():
            if len(pair) != 2 or not all(isinstance(number, int) for number in pair):
                raise ValueError(f"{path.name}, {name}: it must hold two whole numbers, not {pair!r}")
            points.setdefault(name, {})[path.stem] = (pair[0], pair[1])
    return start, points, shared["questions"], shared["second"], shared["third"], shared["bars"]


def rows_of(message: Message, signs: Iterable[Sign]) -> list[dict[str, int]]:
    """The signs by clause, each name once, with the place where it stands first."""
    starts = [clause.span[0] for clause in message.clauses] or [0]
    rows: list[dict[str, int]] = [{} for _ in starts]
    for sign in signs:
        row = max(bisect_right(starts, sign.at) - 1, 0)
        rows[row].setdefault(sign.name, sign.at)
    return rows


def ranked(rows: Sequence[Mapping[str, int]]) -> list[Tally]:
    """Every topic with its points, the best first, and the place of those that may be named beside it."""
    known = table()
    return placed(by_points(rows), rows, lambda sign, topic: known.points.get(sign, NOTHING).get(topic, (0, 0)))


def by_points(rows: Sequence[Mapping[str, int]]) -> list[Tally]:
    """Every topic with its points, the best first; equal ones by name."""
    known = table()
    anywhere = dict(known.start)
    here = {topic: [0] * len(rows) for topic in anywhere}
    seen: set[str] = set()
    for number, row in enumerate(rows):
        for name in row:
            anew = name not in seen
            seen.add(name)
            for topic, (own, shared) in known.points.get(name, NOTHING).items():
                here[topic][number] += own
                if anew:
                    anywhere[topic] += shared
    return tallied({topic: [anywhere[topic] + own for own in points] for topic, points in here.items()})


def tallied(points: Mapping[str, Sequence[int]]) -> list[Tally]:
    """The topics by their best clause, the best first. `points`: by topic, those of every clause."""
    rows = len(next(iter(points.values())))
    best = {max((t for t in points if t != HAZARD), key=lambda topic: points[topic][row]) for row in range(rows)}
    tallies = [Tally(topic, max(own), own.index(max(own)), topic in best) for topic, own in points.items()]
    return sorted(tallies, key=lambda item: (-item.total, item.topic))


def placed(
    ranking: list[Tally],
    rows: Sequence[Mapping[str, int]],
    points: Callable[[str, str], tuple[int, int]],
) -> list[Tally]:
    """The ranking with the place of those that may be named beside the first. `points`: of a sign for a topic.

    Those with too few points are named in no case and get no place.
    """
    first, *others = [item for item in ranking if item.topic != HAZARD][: MOST + 1]
    beside = [(item, after) for item, after in pairwise(others) if item.total >= LEAST]
    if not beside:
        return ranking
    other, signs = weights(first, rows, points), in_order(rows)
    firsts = growth(signs, _of(first.topic, points))
    for item, after in beside:
        own = weights(item, rows, points)
        if item.total - sum(value for name, value in own.items() if name.startswith(BEFORE)) < LEAST:
            continue
        apart = parted(signs, firsts, growth(signs, _of(item.topic, points)))
        gain = item.total - sum(own.values()) + apart - sum(other.values())
        alone = sum(max(value - max(other[name], 0), 0) for name, value in own.items())
        there = sum(points(sign, item.topic)[0] - points(sign, first.topic)[0] for sign in rows[item.row])
        item.place = (
            f"clause:{'same' if item.row == first.row else 'other'}{', its best' if item.tops else ''}",
            f"points:{TOTAL.step(item.total)}",
            f"first:{FIRST.step(first.total)}",
            f"lead:{LEAD.step(item.total - after.total)}",
            f"gap:{GAP.step(first.total - item.total)}",
            f"alone:{ALONE.step(alone)}",
            f"there:{THERE.step(there)}",
            f"cut:{CUT.step(gain)}",
        )
    return ranking


def _of(topic: str, points: Callable[[str, str], tuple[int, int]]) -> Callable[[str], tuple[int, int]]:
    """The points of signs for one topic."""
    return lambda sign: points(sign, topic)


def weights(
    item: Tally, rows: Sequence[Iterable[str]], points: Callable[[str, str], tuple[int, int]]
) -> dict[str, int]:
    """What every sign of a message adds to a topic."""
    found: dict[str, int] = {}
    for number, row in enumerate(rows):
        for name in row:
            own, shared = points(name, item.topic)
            found[name] = found.get(name, shared) + (own if number == item.row else 0)
    return found


def chosen(ranking: Sequence[Tally], shown: Iterable[str], danger: bool, several: Several, bars: Bars) -> list[Tally]:
    """The topics over their bars. The more a message looks like several questions, the easier a further one is.

    `shown`: what its words and marks show of that (`Several.shown`).
    """
    first, *others = [item for item in ranking if item.topic != HAZARD]
    perilous = danger or next(item.total for item in ranking if item.topic == HAZARD) > first.total
    bar = bars.danger if perilous else bars.first
    if first.total < bar:
        return []
    shown, further = list(shown), []
    lowest = (bar, bar) if perilous else (LEAST, THIRD)  # of a second topic, of those after it
    for number, item in enumerate(others[: MOST - 1], SECOND):
        stands = item.place and item.total >= lowest[number > SECOND]
        if stands and several.ease(number, [*shown, *item.place]) >= bars.more:
            further.append(item)
    if not further and first.total - others[0].total < bars.lead:
        return []
    found = [first, *further]
    return [item for item in found if item.topic != "unclear"] or found


def reasons(item: Tally, rows: Sequence[Mapping[str, int]]) -> list[tuple[int, str, int]]:
    """What spoke for a topic, the strongest first: points, sign, where."""
    found: dict[str, tuple[int, int]] = {}
    for number, row in enumerate(rows):
        for name, at in row.items():
            own, shared = table().points.get(name, {}).get(item.topic, (0, 0))
            value = (own if number == item.row else 0) + (0 if name in found else shared)
            before = found.get(name, (0, at))
            found[name] = (before[0] + value, at if number == item.row else before[1])
    reasons = [(value, name, at) for name, (value, at) in found.items() if value > 0]
    return sorted(reasons, key=lambda reason: (-reason[0], reason[1]))
