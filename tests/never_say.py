"""Walks every sentence of an answer for what the desk must never say. For the tests of all topics."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

from service.reply import Answer

TABLE = tomllib.loads(Path(__file__).with_suffix(".toml").read_text(encoding="utf-8"))
LONGEST_HEADLINE = 30  # words
TURNS_OFF = ("never ", "not ", "no ", "do not", "don't", "nor ", "without ")


def sentences(answer: Answer) -> Iterator[tuple[str, str]]:
    """Every sentence with the part of the answer it stands in; what is told as do-not is named so."""
    yield "headline", answer.headline
    yield from (("working", step.say) for step in answer.working)
    yield from (("caution", item.say) for item in answer.cautions)
    yield from (("ask", f"{item.say} {item.where}") for item in answer.asks)
    yield from (("assumed", item.why) for item in answer.assumed)
    yield from (("change", item.say) for item in answer.would_change)
    yield from ((item.kind, item.say) for item in answer.steps)
    yield from (("figure", f"{item.label} {item.value} {item.unit}") for item in answer.figures)


def faults(answer: Answer) -> list[str]:
    """What is said and must not be: "headline: it is safe -> within the limits of"."""
    found = []
    forbidden = TABLE["only-forbidden"]["words"]
    for part, text in sentences(answer):
        plain = text.lower().replace("\u00a0", " ")
        for row in TABLE["phrase"]:
            found += [f"{part}: {phrase!r}, say: {row['instead']}" for phrase in row["says"] if phrase in plain]
        if part != "do-not":
            found += [f"{part}: {word!r} without a no" for word in forbidden if _told(word, plain)]
        if "!" in text:
            found.append(f"{part}: an exclamation mark")
    if len(answer.headline.split()) > LONGEST_HEADLINE:
        found.append(f"headline: {len(answer.headline.split())} words, at most {LONGEST_HEADLINE}")
    return found


def _told(word: str, text: str) -> bool:
    """Whether the word stands in a sentence that forbids nothing."""
    return any(
        re.search(rf"\b{word}", sentence) and not any(no in f"{sentence} " for no in TURNS_OFF)
        for sentence in re.split(r"[.;:]", text)
    )
