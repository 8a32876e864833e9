"""What a message tells for one of its questions alone: the kinds that are only weighed, a time that is only wished for.

"My wet one is six years old, replace it? And would you take AGM or gel?": no AGM is six years old. "How many minutes
does it give? And for ten minutes, how big must it be?": nobody asks ten minutes of the battery they have, and nobody
asks of it the eight hours of "which charger fills it in eight hours?".
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace

from grammar.reading import Message, Span
from grammar.text.patterns import regex
from service.case import Case, Known
from service.routing.request import Request

KIND, TIME, NAMED = "battery.chemistry", "load.time", "detail:kind_"
WEIGHS, LIGHTER, WISHES = "battery-type", "weight", "bank-size"
AMPS, FUSE = "load.current", "fuse-size"
CHARGES = frozenset({"charger-size", "charge-time", "solar"})  # a time in which it is to be full is no run of theirs
GRAVITY = "reading.gravity"  # told of a battery of wet cells, whatever else is weighed
OF_THEIRS = frozenset({"replacement", "rest-voltage", "specific-gravity", "load-voltage", "standing-drain"})
STOPS = regex(r"[.?!;]\s")
FILLS = regex(r"\b(?:re-?)?(?:charg\w*|fill\w*|full|restor\w*|top\w*|put\w*)\b[^.?!;]{0,60}$", re.IGNORECASE)
LASTS = frozenset({"run-time", "run-check"})


def apart(case: Case, request: Request, requests: Iterable[Request], message: Message) -> Case:
    """The case without what stands in another question and is not of this one."""
    spans = [other.span for other in requests]
    others = {other.topic: _whole(other.span, spans, message.text) for other in requests if other.span != request.span}
    if request.topic == WEIGHS:
        return _only_weighed(case, request.span, message)
    stated, second = dict(case.stated), dict(case.second)
    time = stated.get(TIME)
    wished = (_to_its_stop(others[name], spans, message.text) for name in CHARGES & others.keys())
    filled = any(_inside(time, span) for span in wished) and _of_a_charge(time, message.text)
    if request.topic in LASTS and (filled or (WISHES in others and _inside(time, others[WISHES]))):
        stated.pop(TIME)
    if request.topic == "solar" and FUSE in others and _inside(stated.get(AMPS), others[FUSE]):
        stated.pop(AMPS)  # "and what fuse for a 10 A load on it?" drains nothing all day
    for weighs in (WEIGHS, LIGHTER):
        if weighs in others and request.topic != LIGHTER:
            alone = request.topic in OF_THEIRS or GRAVITY in stated
            _without_weighed(stated, second, others[weighs], alone=alone)
    changed = stated != dict(case.stated) or second != dict(case.second)
    return replace(case, stated=stated, second=second) if changed else case


def _without_weighed(stated: dict[str, Known], second: dict[str, Known], span: Span, *, alone: bool) -> None:
    """Takes out the kinds that are only weighed, all of them (`alone`) where it is asked of the battery they have."""
    told = [item for held in (stated, second) if (item := held.get(KIND)) is not None]
    kept = [item for item in told if not _inside(item, span)]
    if len(kept) == len(told) or not (kept or alone):
        return
    stated.pop(KIND, None)
    second.pop(KIND, None)
    if kept:
        stated[KIND] = replace(kept[0], of=1)


def _only_weighed(case: Case, span: Span, message: Message) -> Case:
    """The case of what is weighed, without a kind that is told outside of it, where two or more stand inside."""
    weighed = {cue.name for cue in message.cues if cue.name.startswith(NAMED) and span[0] <= cue.span[0] < span[1]}
    if len(weighed) < 2:
        return case
    inside = [item for item in message.stated if item.fact == KIND and f"{NAMED}{item.value}" in weighed]
    cues = frozenset(name for name in case.cues if not name.startswith(NAMED) or name in weighed)
    stated, second = _without_kind(case.stated), _without_kind(case.second)
    for held, of, item in zip((stated, second), (1, 2), inside, strict=False):
        held[KIND] = Known(KIND, item.value, "message", item.unit, text=item.text, span=item.span, of=of)
    return replace(case, cues=cues, stated=stated, second=second)


def _without_kind(held: Mapping[str, Known]) -> dict[str, Known]:
    return {fact: item for fact, item in held.items() if fact != KIND}


def _whole(span: Span, spans: list[Span], text: str) -> Span:
    """A question with what leads to it in its sentence, as far as no other one stands there: "if we wanted ten minutes,
    how big"."""
    ends = [found.end() for found in STOPS.finditer(text, 0, span[0])] + [end for _, end in spans if end <= span[0]]
    return max(ends, default=0), span[1]


def _of_a_charge(time: Known | None, text: str) -> bool:
    """Whether words of filling lead to a time: "what charger fills them overnight, say ten hours"."""
    return time is not None and time.span is not None and FILLS.search(text[: time.span[0]]) is not None


def _to_its_stop(span: Span, spans: list[Span], text: str) -> Span:
    """A question with what follows it in its sentence, as far as no other one stands there: ", say ten hours?"."""
    stop = STOPS.search(text, max(span[1] - 2, 0))
    starts = [start for start, _ in spans if start >= span[1]]
    return span[0], min([*starts, stop.end() if stop else len(text)])


def _inside(item: Known | None, span: Span) -> bool:
    return item is not None and item.span is not None and span[0] <= item.span[0] < span[1]
