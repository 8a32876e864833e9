"""Whether a message is a technician's shorthand: one line of figures and abbreviations, without a sentence."""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

from grammar.files import toml
from grammar.text.patterns import regex

STYLE = "style:shorthand"  # of a conversation, as its thread carries it
FEW, MANY = 3, 25  # figures and abbreviations at least, words at most
SHARE = 0.4  # of the words
GOES_ON = 8  # words of a turn that goes on in shorthand
ONE_FIGURE = regex(r"(\d) +(?:a|in)\b", re.IGNORECASE)  # "180 a" is no article, "8 in" no word
WORD = regex(r"[^\s,;:?!()=+]+")
ACRONYM = regex(r"[A-Z]{2,}\d*$")
TABLE = toml(Path(__file__).parent / "shorthand.toml")
SHORT, SENTENCE = frozenset(TABLE["short"]), frozenset(TABLE["sentence"])


def is_shorthand(text: str, before: Iterable[str] = ()) -> bool:
    """Whether to answer in few words. `before`: the cues of the thread, which a short turn goes on with."""
    if "\n" in text.strip():
        return False
    words = [word.strip(".'\"") for word in WORD.findall(ONE_FIGURE.sub(r"\1", text))]
    words = [word for word in words if word]
    if not words or len(words) > MANY or not SENTENCE.isdisjoint(word.lower().replace("'", "") for word in words):
        return False
    terse = sum(_is_terse(word) for word in words)
    goes_on = STYLE in before and len(words) <= GOES_ON
    return goes_on or (terse >= FEW and terse >= SHARE * len(words))


def _is_terse(word: str) -> bool:
    """A figure or an abbreviation: "260A", "1/0", "AGM", "chgr"."""
    return any(sign.isdigit() for sign in word) or bool(ACRONYM.match(word)) or word.lower() in SHORT
