"""The cues of a message: every phrase of the lexicon counts, but not one inside a longer one of its own class."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence

from grammar.lexicon.vocabulary import Found
from grammar.reading import Cue
from grammar.text.tokens import Token

HELPERS = frozenset({"alike", "clause", "filler", "model"})  # of use to the reader only


def as_cues(text: str, tokens: Sequence[Token], found: Iterable[Found]) -> tuple[Cue, ...]:
    """The cues by their place in the text, in the order in which they begin."""
    kinds: dict[str, list[Found]] = defaultdict(list)
    for item in found:
        if item.kind not in HELPERS and not item.kind.startswith("="):
            kinds[item.kind].append(item)
    kept = [item for items in kinds.values() for item in _outermost(items)]
    cues = []
    for item in sorted(kept, key=lambda item: (item.start, item.end, item.kind, item.concept)):
        span = tokens[item.start].start, tokens[item.end - 1].end
        cues.append(Cue(f"{item.kind}:{item.concept}", text[span[0] : span[1]], span))
    return tuple(dict.fromkeys(cues))


def _outermost(items: list[Found]) -> list[Found]:
    items.sort(key=lambda item: (item.start, -item.end))
    kept: list[Found] = []
    reach, widest = -1, (-1, -1)
    for item in items:  # sorted so that whatever holds an item stands before it
        if item.end > reach:
            reach, widest = item.end, (item.start, item.end)
        elif (item.start, item.end) != widest:
            continue
        kept.append(item)
    return kept
