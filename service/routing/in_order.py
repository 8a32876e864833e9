"""The order in which a message's questions are answered: that of the items and the words that ask them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from grammar.reading import Message, Span
from service.routing.request import Request
from service.routing.tally import HAZARD, TOLD, Tally, reasons
from service.routing.two_ways import LASTS, RUNS, timed

NOWHERE: Mapping[str, int] = {}
POINTS_BACK = -10  # points of the best topic of an item that has no word of its own
SHOWN = 6  # reasons that `why` gives


def places_of(asking: Sequence[tuple[int, Sequence[Tally]]], found: Iterable[Tally]) -> dict[str, int]:
    """Where the item begins that speaks most for each topic, the first where two do; "is that a fail?" speaks for
    none, but points back."""
    names = {item.topic for item in found}
    best = ((next((item for item in own if item.topic in names), None), start) for start, own in asking)
    return dict(reversed([(item.topic, start) for item, start in best if item and item.total > POINTS_BACK]))


def in_order(
    message: Message,
    rows: Sequence[Mapping[str, int]],
    found: Sequence[Tally],
    ranking: Sequence[Tally],
    asked: Mapping[str, int] = NOWHERE,
) -> list[Request]:
    """The requests by the places of the items that ask them (`asked`), else of their strongest words; those of
    questions apart by their question marks."""
    places = []
    rows_found = {item.row for item in found}
    apart = not asked and len(rows_found) > 1 and all(_marked(message, row) for row in rows_found)
    names = {item.topic for item in found}
    rival = max((item.total for item in ranking if item.topic not in names and item.topic != HAZARD), default=0)
    for item in found:
        told = reasons(item, rows)
        words = [(value, at) for value, name, at in told if not name.startswith(TOLD) and "<" not in name]
        place = max(words, key=lambda pair: (pair[0], -pair[1]), default=(0, 0))[1]
        place = asked.get(item.topic, place)
        span = _clause_of(message, item, asked.get(item.topic))
        shown = tuple(f"{name} {value:+}" for value, name, _ in told[:SHOWN])
        places.append(
            ((item.row if apart else 0, place), Request(item.topic, span, item.total, item.total - rival, shown))
        )
    if message.text.count("?") < 2 and names >= {LASTS, RUNS} and timed(message):  # one question, and its time decides
        places = [((0, -1) if request.topic == LASTS else key, request) for key, request in places]
    return [request for _, request in sorted(places, key=lambda pair: pair[0])]


def _clause_of(message: Message, item: Tally, asked: int | None) -> Span:
    """The clause that speaks for a topic; where that one only tells, the one in which the question itself begins."""
    if not message.clauses:
        return (0, len(message.text))
    own = message.clauses[item.row]
    if own.asks or asked is None:
        return own.span
    return next((clause.span for clause in message.clauses if clause.span[0] <= asked < clause.span[1]), own.span)


def _marked(message: Message, row: int) -> bool:
    """Whether a clause ends in a question mark."""
    return row < len(message.clauses) and message.text[: message.clauses[row].span[1]].endswith("?")
