"""Finds phrases in a row of words: many phrases at once, in one pass.

A phrase is words with spaces between; a word stands for its plural too. "boil~" is any word that begins so,
"hot|warm" either word, "<battery>" a word of that class, "*" up to three further words and "**" up to eight. A phrase
never reaches over a BREAK.
"""
from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

BREAK = "."
GAPS = {"*": 3, "**": 8}


SHORTEST_PLURAL = 5


def forms(word: str) -> tuple[str, ...]:
    """A word and, where it looks like a plural, its singular."""
    plural = len(word) >= SHORTEST_PLURAL and word.endswith("s") and not word.endswith("ss")
    return (word, word[:-1]) if plural else (word,)


@dataclass(frozen=True, slots=True)
class Hit:
    """A phrase that was found: its name and the words it covers, the last one not included."""

    name: str
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Word:
    """One place of a phrase: the words that fit, whole or by their beginning, after up to `gap` others."""

    whole: frozenset[str]
    begins: tuple[str, ...]
    gap: int = 0

    def fits(self, word: str) -> bool:
        """Whether the word may stand here."""
        return not self.whole.isdisjoint(forms(word)) or (bool(self.begins) and word.startswith(self.begins))


@dataclass
class Phrases:
    """A set of named phrases, found by the word each begins with."""

    classes: Mapping[str, Iterable[str]] = field(default_factory=dict)
    by_word: dict[str, list[tuple[str, tuple[Word, ...]]]] = field(default_factory=dict)
    by_stem: dict[str, list[tuple[str, tuple[Word, ...]]]] = field(default_factory=dict)
    _parts: dict[tuple[str, int], Word] = field(default_factory=dict)  # many phrases share their parts

    def add(self, name: str, phrases: Iterable[str]) -> None:
        """Add phrases under a name. Raises ValueError for one that is empty or names an unknown class."""
        for phrase in phrases:
            places = self._places(phrase)
            for word in places[0].whole:
                self.by_word.setdefault(word, []).append((name, places))
            for stem in places[0].begins:
                self.by_stem.setdefault(stem, []).append((name, places))

    def find(self, words: Sequence[str]) -> list[Hit]:
        """All phrases found, each at its shortest, in the order in which they begin."""
        hits: dict[Hit, None] = {}
        for start, word in enumerate(words):
            for name, places in self._beginning(word):
                end = _end(places, words, start)
                if end:
                    hits[Hit(name, start, end)] = None
        return list(hits)

    def _beginning(self, word: str) -> Iterator[tuple[str, tuple[Word, ...]]]:
        for form in forms(word):
            yield from self.by_word.get(form, ())
        for size in range(1, len(word) + 1):
            yield from self.by_stem.get(word[:size], ())

    def _places(self, phrase: str) -> tuple[Word, ...]:
        places: list[Word] = []
        gap = 0
        for part in phrase.split():
            if part in GAPS:
                gap = GAPS[part]
            else:
                known = self._parts.get((part, gap))
                places.append(known or self._parts.setdefault((part, gap), self._place(part, phrase, gap)))
                gap = 0
        if not places or gap:
            raise ValueError(f"phrase {phrase!r}: it must begin and end with a word")
        return tuple(places)

    def _place(self, part: str, phrase: str, gap: int) -> Word:
        whole: set[str] = set()
        begins: set[str] = set()
        for choice in part.split("|"):
            name = choice.strip("<>")
            if choice.startswith("<") and name not in self.classes:
                raise ValueError(f"phrase {phrase!r}: there is no class {name!r}")
            for word in self.classes[name] if choice.startswith("<") else (choice,):
                if word.endswith("~"):
                    begins.add(word[:-1])
                else:
                    whole.add(word)
        return Word(frozenset(whole), tuple(sorted(begins)), gap)


def _end(places: tuple[Word, ...], words: Sequence[str], start: int, place: int = 1) -> int:
    """Where the phrase ends whose words before `place` stand before `start + 1`; 0 if it does not fit."""
    if place == len(places):
        return start + 1
    for at in range(start + 1, min(start + 2 + places[place].gap, len(words))):
        if words[at] == BREAK:
            return 0
        if places[place].fits(words[at]):
            end = _end(places, words, at, place + 1)
            if end:
                return end
    return 0
