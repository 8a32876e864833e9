"""The current of a motor that goes, beside that of the one in its place: "the old one drew 300 A, the new one 160"."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from grammar.reading import Span, Stated
from grammar.text.patterns import regex

MOTOR = r"(?:motors?|thrusters?|bow ?thrusters?|windlass|winch|pump|unit|one|engine|model)"
OLD = regex(
    r"\b(?:old|previous|former|outgoing|original|worn[- ]out|last|present|existing) (?:\d\d ?v(?:olts?)? )?"
    rf"(?:\w+ )?{MOTOR}\b[^.?!;\d]{0, 24}?\b(?:drew|took|pulled|used|was|had|ran|wanted|draws|takes|pulls|is|of|at)\b",
    re.IGNORECASE,
)
NEW = regex(
    rf"\b(?:new|newer|coming|replacement|successor)(?: \d\d ?v(?:olts?)?)?(?: (?:\w+ )?{MOTOR})?\b"
    r"(?=[^.?!;\d]{0,40}\d)",
    re.IGNORECASE,
)
GOES = regex(  # the old one is no longer asked about
    r"\b(?:drew|took|pulled|was|had|ran|wanted|replac\w+|swap\w*|chang\w+|convert\w*|upgrad\w+|going (?:from|over)"
    r"|instead|successor|in its place)\b",
    re.IGNORECASE,
)
WEIGHED = regex(
    r"\b(?:compar\w+|difference|both (?:motors|thrusters|of them)|either|which of|better than)\b", re.IGNORECASE
)
ENDS = regex(r"[.?!;](?=\s|$)")
OF_A_MOTOR = frozenset({"load.current", "load.peak", "load.power", "load.model", "bank.voltage"})


def of_the_new(text: str, stated: Sequence[Stated]) -> list[Stated]:
    """The facts without those of the motor that goes, where the one in its place has its own."""
    old = OLD.search(text)
    new = NEW.search(text, old.end()) if old else None
    if old is None or new is None or not GOES.search(text) or WEIGHED.search(text):
        return list(stated)
    end = ENDS.search(text, new.end())
    theirs = (old.start(), new.start()), (new.start(), end.start() if end else len(text))
    told = {item.fact for item in stated if _in(item, theirs[1])} & OF_A_MOTOR
    gone = [item for item in stated if item.fact in told and _in(item, theirs[0])]
    if not any(item.fact != "bank.voltage" for item in gone):
        return list(stated)
    lost = {item.fact for item in gone}
    kept = [item for item in stated if item not in gone]
    first = {item.fact for item in kept if item.of == 1}
    return [replace(item, of=1) if item.fact in lost - first and item.of == 2 else item for item in kept]


def _in(item: Stated, span: Span) -> bool:
    return span[0] <= item.span[0] < span[1]
