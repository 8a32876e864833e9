"""The house's own words for ours, in everything that an answer says but its cautions and first actions."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import replace

from service.reply import Answer, Asked, Choice, Figure


def worded(answer: Answer, wording: Mapping[str, str]) -> Answer:
    """The answer in the house's own words. Cautions and first actions keep theirs."""
    if not wording or answer.verdict == "stop":
        return answer
    return rewritten(answer, lambda text: _worded(text, wording))


def rewritten(answer: Answer, of: Callable[[str], str]) -> Answer:
    """The answer with every sentence and label put through `of`, but its cautions and first actions."""
    return replace(
        answer,
        headline=of(answer.headline),
        figures=tuple(_labelled(item, of) for item in answer.figures),
        working=tuple(replace(item, say=of(item.say)) for item in answer.working),
        asks=tuple(_asked(item, of) for item in answer.asks),
        assumed=tuple(replace(item, why=of(item.why)) for item in answer.assumed),
        would_change=tuple(replace(item, say=of(item.say)) for item in answer.would_change),
        compare=tuple(
            replace(item, label=of(item.label), figures=tuple(_labelled(part, of) for part in item.figures))
            for item in answer.compare
        ),
    )


def _labelled(figure: Figure, of: Callable[[str], str]) -> Figure:
    return replace(figure, label=of(figure.label))


def _asked(item: Asked, of: Callable[[str], str]) -> Asked:
    replies: tuple[Choice, ...] = tuple(replace(part, say=of(part.say)) for part in item.replies)
    return replace(item, say=of(item.say), where=of(item.where), replies=replies)


def _worded(text: str, wording: Mapping[str, str]) -> str:
    """A text with our words replaced by the house's, the article before them fitting.

    >>> _worded("A wet-cell battery: ask a technician.", {"wet-cell": "flooded", "technician": "adviser"})
    'A flooded battery: ask an adviser.'
    """
    names = "|".join(re.escape(word) for word in sorted(wording, key=len, reverse=True))
    known = {word.lower(): theirs for word, theirs in wording.items()}

    def put(found: re.Match[str]) -> str:
        article, ours = found[1] or "", found[2]
        theirs = known[ours.lower()]
        theirs = (
            theirs[:1].upper() + theirs[1:] if ours[:1].isupper() and not article and not ours.isupper() else theirs
        )
        if not article:
            return theirs
        fitting = "an" if theirs[:1].lower() in "aeiou" else "a"
        return f"{fitting.capitalize() if article[0].isupper() else fitting} {theirs}"

    return re.sub(rf"\b(?:(an?) )?({names})\b", put, text, flags=re.IGNORECASE)
