"""Cuts a text into words and marks. Phrases of the lexicon are cut the same way, so that both always fit."""

from __future__ import annotations

import re
import sys
from collections.abc import Sequence
from dataclasses import dataclass

TOKEN = re.compile(
    r"->|=>"
    r"|\d+(?:[.,]\d+)*"  # "12.6", "1,000"; the letters of "100ah" are a word of their own
    r"|[xX×](?=\d)"
    r"|\b(?P<dotted>(?:[A-Z]\.){2,}[A-Z])(?![A-Za-z])"  # "B.M.S."; its last point may end a sentence
    r"|[^\W\d_]\w*(?:['’´`][^\W\d_]+)*"
    r"|\n|(?P<mark>[^\w\s])(?P=mark)*"  # a run of one mark is one mark
)
LINK = re.compile(r"\b(?:https?://|www\.)\S+", re.IGNORECASE)
QUIET = frozenset("'\"’‘“”`´*_~")  # quotes and stars say nothing
PLAIN = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789", "’´`")  # "LiFePO₄"
BEFORE_FIGURES = frozenset(("approx", "cont", "incl"))  # "100 A cont. 200 A peak"; "amps. 12 V" may begin anew
ABBREVIATED = frozenset(
    ("approx", "no", "vs", "max", "min", "temp", "cont", "incl", "amps", "volts", "etc", "e", "g", "i")
)
ASK_ANEW = frozenset(
    ("what", "how", "which", "will", "does", "can", "should", "would", "could")
)  # "80 amps. what will"
ENDS = frozenset(".?!;\n")


@dataclass(slots=True)
class Token:
    """A word (lower case, apostrophes dropped) or a mark, and where it stands. `mended`: it was typed with a slip."""

    word: str
    start: int
    end: int
    mended: bool = False


def unlinked(text: str) -> str:
    """The text with spaces for its links: what stands in one are not the writer's words."""
    return LINK.sub(lambda link: " " * len(link[0]), text)


def cut(text: str, most: int = sys.maxsize) -> list[Token]:
    """The first words and marks of a text. Hyphens inside words, quotes and links are left out."""
    tokens: list[Token] = []
    for match in TOKEN.finditer(unlinked(text)):
        if len(tokens) == most:
            break
        word = match.group()
        if match.lastgroup == "mark":
            word = word[0]
        elif match.lastgroup == "dotted":
            word = word.replace(".", "")
        if word in QUIET or (word in "-–‐‑" and _joins(text, match.start(), match.end())):
            continue
        if not word.isascii():
            word = word.translate(PLAIN)
        tokens.append(Token(word.replace("'", "").lower() or "'", match.start(), match.end()))
    return tokens


def _joins(text: str, start: int, end: int) -> bool:
    return start > 0 and end < len(text) and not text[start - 1].isspace() and not text[end].isspace()


def ends(tokens: Sequence[Token], at: int, text: str) -> bool:
    """Whether the mark at this place ends a sentence."""
    word = tokens[at].word
    if word not in ENDS:
        return False
    if word != ".":
        return True
    after = tokens[at].end
    if after < len(text) and not text[after].isspace():
        return text[after] in ".?!)\"'"
    short = at > 0 and tokens[at - 1].word in ABBREVIATED and tokens[at - 1].end == tokens[at].start
    if short and at + 1 < len(tokens) and tokens[at + 1].word in ASK_ANEW:
        return True
    follows = text[after:].lstrip()[:1]
    if at > 1 and tokens[at - 1].word == "ea" and tokens[at - 2].word.isdigit() and follows.isdigit():
        return False  # "2 ea. 12 V", so many of a kind; "30 kg ea. 12 V" begins anew
    return not (short and (follows.islower() or (follows.isdigit() and tokens[at - 1].word in BEFORE_FIGURES)))
