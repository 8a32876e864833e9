"""Finds signs of danger in a text and how far each counts: present, past, denied or only asked about in general.

The words are in words/dangers*.toml, danger_words.toml and danger_context.toml. Look-alikes ("boiling hot weather",
"lead acid") are taken out first.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from functools import lru_cache

from grammar.dangers.chosen import is_chosen, may_be_chosen
from grammar.dangers.context import Context
from grammar.dangers.hearsay import is_hearsay
from grammar.dangers.landed import is_landed
from grammar.dangers.mended import was_mended
from grammar.dangers.standing import spoken_of, standing
from grammar.dangers.status import is_advised, status_of
from grammar.dangers.table import signs
from grammar.dangers.text import Text, read
from grammar.dangers.to_come import is_to_come
from grammar.dangers.traced import is_traced
from grammar.dangers.unbuilt import is_only_said
from grammar.dangers.woodwork import is_of_wood
from grammar.lexicon.phrases import Hit
from grammar.reading import Danger, Span, Stated

ADRIFT = "boat-disabled"
SMELL, UNFUSED = "rotten-egg-smell", "no-fuse"
AM_I = ("am", "i")  # asked by the battery of a riddle of itself


def find_dangers(text: str, said: Iterable[Stated] = (), rated: Sequence[Span] = ()) -> tuple[Danger, ...]:
    """The signs of danger in a text, in its order; of each family and status the first. Any text will do.

    `said` are the facts of the conversation: what it speaks of need not be named again. `rated` are the degrees that a
    cable stands: alone they are no heat of a battery.
    """
    words = read(text)
    table = signs()
    hits = [hit for hit in standing(words, table, spoken_of(said)) if not _is_rated(hit, words, rated)]
    if not hits:
        return ()
    context = Context(table.context.find(words.words), words)
    lithium = frozenset(hit.start for hit in table.places.find(words.words) if hit.name == "lithium")
    found: dict[tuple[str, str], Danger] = {}
    denied: Hit | None = None
    weighed = may_be_chosen(words) and is_chosen(lithium, words)
    for hit in sorted(hits, key=lambda item: (item.start, -item.end)):
        if context.riddle and words.words[hit.start : hit.start + 2] == AM_I:
            continue
        family = hit.name.split("/")[0]
        keeps = family in table.keeps and not (family in table.unmended and was_mended(words.words))
        status = status_of(hit, keeps, words, context, denied)
        asked = family in table.general or (family in table.advised and is_advised(hit, words, context))
        if status == "present" and asked:
            status = "general"
        if status in ("present", "general") and family in table.planned:
            only_thought_of = weighed or is_advised(hit, words, context) or (status == "present" and is_to_come(words))
            status = "planned" if only_thought_of else status
        status = _as_told(hit, family, status, words, lithium)
        if status == "denied":
            denied = hit
        if (family, status) not in found:
            span = words.spans[hit.start][0], words.spans[hit.end - 1][1]
            found[family, status] = Danger(family, status, text[slice(*span)], span)
    return tuple(found.values())


def _as_told(hit: Hit, family: str, status: str, words: Text, lithium: frozenset[int]) -> str:
    """The status after what the rest of the message makes of it: only said, landed since, a smell that was traced."""
    if status == "present" and family in signs().hearsay and is_hearsay(hit, lithium, words):
        return "planned"
    if status in ("present", "general") and family == UNFUSED and is_only_said(hit, words):
        return "planned"
    over = (family == ADRIFT and is_landed(words.words)) or (family == SMELL and is_traced(hit, words))
    return "past" if status == "present" and over else status


@lru_cache(maxsize=2)  # each figure that is told may ask for it
def _context(text: str) -> Context:
    words = read(text)
    return Context(signs().context.find(words.words), words)


def _is_rated(hit: Hit, words: Text, rated: Sequence[Span]) -> bool:
    """Whether a sign is nothing but degrees that a cable stands: "90C insulation"."""
    spans = (words.spans[at] for at in hit.at)
    return bool(rated) and all(any(first <= start and end <= last for first, last in rated) for start, end in spans)


def advised(text: str, span: Span) -> bool:
    """Whether what stands at this place is only what somebody advises, or what is asked of as such advice."""
    words = read(text)
    at = bisect_right(words.spans, span[0], key=lambda place: place[1])
    return at < len(words.words) and is_advised(Hit("", (at,)), words, _context(text))


def look_alikes(text: str) -> list[Span]:
    """Where a text has phrases that only sound like a danger: "slightly warm after charging"."""
    words = read(text)
    hits = [
        *signs().masks.find(words.words),
        *(hit for hit in signs().signs.find(words.words) if is_of_wood(hit, words)),
    ]
    return [(words.spans[hit.start][0], words.spans[hit.end - 1][1]) for hit in hits]
