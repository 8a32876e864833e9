"""Finds phrases in a row of words: many phrases at once, in time that grows with the text, whatever repeats in it.

A phrase is words with spaces between; a word stands for its plural too, and "boiling" for "boilin". "boil~" is any
word that begins so, "hot|warm" either word, "<battery>" a word of that class, "*" up to three further words and "**" up
to eight. A phrase never reaches over a BREAK; its last word may be the "?" that ends a question.

The places of a text where a word of a phrase fits are one whole number, a bit for each place, so that a phrase is
looked for everywhere at once.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

BREAK = "."
QUESTION = "?"  # ends a sentence too
ENDS = (BREAK, QUESTION)
GAPS = {"*": 3, "**": 8}
SHORTEST_PLURAL = 5
SHORTEST_DROPPED = 6  # hissin

Steps = tuple[tuple[int, int], ...]  # the words of a phrase: which of the table's, after up to how many others


def forms(word: str) -> tuple[str, ...]:
    """A word and, where it looks like a plural, its singular; with a dropped g, the word with it."""
    if len(word) >= SHORTEST_PLURAL and word.endswith("s") and not word.endswith("ss"):
        return word, word[:-1]
    if len(word) >= SHORTEST_DROPPED and word.endswith("in"):
        return word, word + "g"
    return (word,)


class Hit(NamedTuple):
    """A phrase that was found: its name and the places of its own words."""

    name: str
    at: tuple[int, ...]

    @property
    def start(self) -> int:
        """The first word that it covers."""
        return self.at[0]

    @property
    def end(self) -> int:
        """The word after the last that it covers."""
        return self.at[-1] + 1


@dataclass(frozen=True, slots=True)
class Phrases:
    """A set of named phrases, compiled: plain types only, so that it can be kept in a file."""

    whole: dict[str, list[int]]  # a word: the places of phrases it fits
    stems: dict[str, list[int]]  # a word's beginning: the same
    phrases: dict[int, list[tuple[str, Steps]]]  # by the first place of the phrase

    def find(self, words: Sequence[str]) -> list[Hit]:
        """All phrases found, each at its shortest, in the order in which they begin."""
        fits = self._fits(words)
        unbroken = ~sum(1 << at for at, word in enumerate(words) if word in ENDS)
        hits: dict[Hit, None] = {}
        for first in fits:
            for name, steps in self.phrases.get(first, ()):
                if all(place in fits for place, _ in steps):
                    hits.update(dict.fromkeys(_hits(name, steps, fits, unbroken)))
        return sorted(hits, key=lambda hit: hit.start)

    def _fits(self, words: Sequence[str]) -> dict[int, int]:
        """The places of phrases that some word fits, each with the bits of those words."""
        bits: dict[str, int] = {}
        for at, word in enumerate(words):
            bits[word] = bits.get(word, 0) | 1 << at
        fits: dict[int, int] = {}
        longest = max(map(len, self.stems), default=0)
        for word, where in bits.items():
            for place in self._places(word, longest):
                fits[place] = fits.get(place, 0) | where
        return fits

    def _places(self, word: str, longest: int) -> Iterator[int]:
        for form in forms(word):
            yield from self.whole.get(form, ())
        for size in range(1, min(len(word), longest) + 1):
            yield from self.stems.get(word[:size], ())


def compiled(named: Mapping[str, Iterable[str]], classes: Mapping[str, Iterable[str]]) -> list[Any]:
    """The fields of a Phrases. Raises ValueError for a phrase that is empty or names an unknown class."""
    parts: dict[str, int] = {}
    phrases: dict[int, list[tuple[str, Steps]]] = {}
    for name, texts in named.items():
        for text in texts:
            steps = tuple(_steps(text, parts))
            phrases.setdefault(steps[0][0], []).append((name, steps))
    whole: dict[str, list[int]] = {}
    stems: dict[str, list[int]] = {}
    for part, number in parts.items():
        for word in _choices(part, classes):
            table, key = (stems, word[:-1]) if word.endswith("~") else (whole, word)
            table.setdefault(key, []).append(number)
    return [whole, stems, phrases]


def _steps(phrase: str, parts: dict[str, int]) -> Iterator[tuple[int, int]]:
    gap = 0
    found = phrase.split()
    if not found or found[0] in GAPS or found[-1] in GAPS:
        raise ValueError(f"phrase {phrase!r}: it must begin and end with a word")
    for part in found:
        if part in GAPS:
            gap = GAPS[part]
        else:
            yield parts.setdefault(part, len(parts)), gap
            gap = 0


def _choices(part: str, classes: Mapping[str, Iterable[str]]) -> Iterator[str]:
    for choice in dict.fromkeys(part.split("|")):
        if not choice.startswith("<"):
            yield choice
        elif choice.strip("<>") in classes:
            yield from classes[choice.strip("<>")]
        else:
            raise ValueError(f"phrase {part!r}: there is no class of that name")


def _hits(name: str, steps: Steps, fits: Mapping[int, int], unbroken: int) -> Iterator[Hit]:
    """The hits of one phrase: from its last word back, the places from which the rest of it can be read."""
    ways = [fits[steps[-1][0]]]
    for (place, _), (_, gap) in zip(reversed(steps[:-1]), reversed(steps), strict=False):
        ways.append(fits[place] & _before(ways[-1], gap, unbroken))
        if not ways[-1]:
            return
    ways.reverse()
    for start in _bits(ways[0]):
        at = [start]
        for way in ways[1:]:
            at.append(at[-1] + 1 + _lowest(way >> at[-1] + 1))
        yield Hit(name, tuple(at))


def _before(places: int, gap: int, unbroken: int) -> int:
    """The places with one of these behind them, over up to `gap` others and no BREAK."""
    found = step = places >> 1
    for _ in range(gap):
        step = (step & unbroken) >> 1
        found |= step
    return found


def _lowest(places: int) -> int:
    return (places & -places).bit_length() - 1


def _bits(places: int) -> Iterator[int]:
    """The numbers of the bits that are set, in order."""
    while places:
        lowest = places & -places
        yield lowest.bit_length() - 1
        places ^= lowest
