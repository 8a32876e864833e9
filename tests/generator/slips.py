"""Slips of the fingers: a neighbouring key, a letter dropped, doubled or swapped, a space left out. Numbers stay."""

from __future__ import annotations

import re
from random import Random

ROWS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
WORD = re.compile(r"[A-Za-z]+")
SHORTEST = 5  # letters: slips in shorter words make other words
UNIT_BEHIND = re.compile(r"[\d½²/.-][ -]?$")


def neighbours(letter: str) -> str:
    """The keys left and right of a letter and those below and above it."""
    row = next(number for number, keys in enumerate(ROWS) if letter in keys)
    at = ROWS[row].index(letter)
    places = [(row, at - 1), (row, at + 1), (row - 1, at), (row - 1, at + 1), (row + 1, at - 1), (row + 1, at)]
    return "".join(ROWS[r][c] for r, c in places if 0 <= r < len(ROWS) and 0 <= c < len(ROWS[r]))


def slipped(rng: Random, word: str) -> str:
    """A word of letters with one slip in it. The first letter stays, as most slips leave it."""
    at = rng.randrange(1, len(word) - 1)
    letter = word[at]
    way = rng.choice(("near", "dropped", "doubled", "swapped"))
    if way == "near":
        return word[:at] + rng.choice(neighbours(letter.lower())) + word[at + 1 :]
    if way == "dropped":
        return word[:at] + word[at + 1 :]
    if way == "doubled":
        return word[:at] + letter + word[at:]
    return word[:at] + word[at + 1] + letter + word[at + 2 :]


def with_slips(rng: Random, text: str, count: int) -> str:
    """The text with slips in so many of its longer words; a word right behind a number is its unit and stays."""
    places = [
        match.span()
        for match in WORD.finditer(text)
        if match.end() - match.start() >= SHORTEST and not UNIT_BEHIND.search(text[: match.start()])
    ]
    for start, end in sorted(rng.sample(places, min(count, len(places))), reverse=True):
        text = text[:start] + slipped(rng, text[start:end]) + text[end:]
    return text


def without_a_space(rng: Random, text: str) -> str:
    """The text without one of its spaces: behind a comma or full stop, or between two words of letters."""
    places = [
        match.start() for match in re.finditer(r"(?<=[a-z]{3}[,.?]) (?=[A-Za-z])|(?<=[a-z]{4}) (?=[a-z]{4})", text)
    ]
    if not places:
        return text
    at = rng.choice(places)
    return text[:at] + text[at + 1 :]
