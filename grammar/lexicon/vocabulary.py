"""The words of the trade: lexicon files loaded into one trie, and the phrases of it that stand in a row of words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from grammar.files import TABLES, kept, toml
from grammar.text.tokens import ENDS, cut

SHORTEST_PLURAL = 4  # "amps" may stand for "amp", "gas" not for "ga"
END = ""  # the key in a trie's node that holds the names ending there
GAP = "*"
GAP_WORDS = 3
DANGERS = "danger"  # its files have a shape of their own: grammar/dangers reads them

Node = dict[str, Any]


class Found(NamedTuple):
    """A phrase that was found: its class and concept, and the words it covers, the last one not included."""

    kind: str
    concept: str
    start: int
    end: int


@dataclass
class Trie:
    """Phrases by their words. A word ending in "~" stands for all words that begin so; "*" skips up to three."""

    root: Node = field(default_factory=dict)
    words: set[str] = field(default_factory=set)
    stems: set[str] = field(default_factory=set)
    _shortest: int = 99
    _longest: int = 0

    def add(self, phrase: str, name: tuple[str, str]) -> None:
        """Add a phrase under its (class, concept). Raises ValueError for one that "*" begins or ends."""
        parts = [word for part in phrase.split() for word in _words(part)]
        if not parts or GAP in (parts[0], parts[-1]):
            raise ValueError(f"phrase {phrase!r} of {name[0]}: it must begin and end with a word")
        node = self.root
        for part in parts:
            if part.endswith("~"):
                self.stems.add(part[:-1])
                self._shortest = min(self._shortest, len(part) - 1)
                self._longest = max(self._longest, len(part) - 1)
            elif part != GAP:
                self.words.add(part)
            node = node.setdefault(part, {})
        names = node.setdefault(END, [])
        if name not in names:  # "12v" and "12 v" are one phrase
            names.append(name)

    def as_plain(self) -> tuple[Any, ...]:
        """The trie in plain types, to be kept."""
        return self.root, self.words, self.stems, self._shortest, self._longest

    @classmethod
    def from_plain(cls, plain: tuple[Any, ...]) -> Trie:
        """The trie that `as_plain` gave."""
        return cls(*plain)

    def keys(self, word: str) -> tuple[str, ...]:
        """The ways in which a word may stand in a phrase: itself, its singular, its stems."""
        keys = [word] if word in self.words else []
        if len(word) >= SHORTEST_PLURAL and word.endswith("s") and word[:-1] in self.words:
            keys.append(word[:-1])
        keys += [
            word[:size] + "~"
            for size in range(self._shortest, min(len(word), self._longest) + 1)
            if word[:size] in self.stems
        ]
        return tuple(keys)

    def find(self, words: Sequence[str]) -> list[Found]:
        """Every phrase that stands in the words, in the order in which they begin."""
        seen: dict[str, tuple[str, ...]] = {}
        keys = [seen[word] if word in seen else seen.setdefault(word, self.keys(word)) for word in words]
        found: dict[Found, None] = {}
        for start in range(len(words)):
            if keys[start]:
                for (kind, concept), end in self._from(self.root, words, keys, start):
                    found[Found(kind, concept, start, end)] = None
        return list(found)

    def _from(
        self, node: Node, words: Sequence[str], keys: Sequence[tuple[str, ...]], at: int
    ) -> Iterator[tuple[tuple[str, str], int]]:
        for key in keys[at]:
            below = node.get(key)
            if below is None:
                continue
            for name in below.get(END, ()):
                yield name, at + 1
            if at + 1 < len(words):
                yield from self._from(below, words, keys, at + 1)
            if GAP in below:
                for later in range(at + 1, min(at + 2 + GAP_WORDS, len(words))):
                    if words[later - 1] in ENDS:
                        break
                    yield from self._from(below[GAP], words, keys, later)


def _words(part: str) -> list[str]:
    """A part of a phrase, cut as texts are cut; "*" and the "~" of a stem are kept."""
    if part == GAP or (part.isalpha() and part.isascii()):  # most are; cutting takes its time
        return [part]
    words = [token.word for token in cut(part.rstrip("~"))]
    return [*words[:-1], words[-1] + "~"] if part.endswith("~") else words


def entries(path: Path) -> Iterator[tuple[str, str, str]]:
    """The (class, concept, phrase) lines of a lexicon file. Raises ValueError for a key that has no meaning."""
    content = toml(path)
    kind = content.get("class")
    if not isinstance(kind, str):
        raise ValueError(f'{path.name}: it must begin with class = "..."')
    if kind == DANGERS:
        return
    for concept, entry in content.items():
        if concept == "class":
            continue
        if not isinstance(entry, dict) or set(entry) != {"says"}:
            raise ValueError(f"{path.name}, [{concept}]: it must hold says = [...] and nothing else")
        if twice := sorted(str(phrase) for phrase, times in Counter(map(str, entry["says"])).items() if times > 1):
            raise ValueError(f"{path.name}, [{concept}]: {twice} stand twice, keep one of each")
        for phrase in entry["says"]:
            yield kind, concept, phrase


def values() -> Iterator[tuple[str, str, str]]:
    """The (class, concept, phrase) lines of values.toml: the class is the fact with "=" before it."""
    for fact, words in toml(TABLES / "values.toml").items():
        for value, phrases in words.items():
            for phrase in phrases:
                yield f"={fact}", value, phrase


@cache
def lexicon() -> Trie:
    """All files of grammar/words and the words that state values, in one trie, kept as it was built."""
    files = sorted((TABLES / "words").glob("*.toml"))
    plain = kept(
        str(TABLES / "words"), [*files, TABLES / "values.toml", Path(__file__)], lambda: _built(files).as_plain()
    )
    return Trie.from_plain(plain)


def _built(files: Iterable[Path]) -> Trie:
    trie = Trie()
    for path in files:
        _add(trie, entries(path))
    _add(trie, values())
    return trie


def _add(trie: Trie, lines: Iterable[tuple[str, str, str]]) -> None:
    for kind, concept, phrase in lines:
        trie.add(phrase, (kind, concept))


@cache
def small_words(concept: str) -> frozenset[str]:
    """The single words of a concept of words/fillers.toml."""
    path = TABLES / "words" / "fillers.toml"
    return frozenset(phrase for _, name, phrase in entries(path) if name == concept)


@cache
def model_names(models: tuple[str, ...]) -> Trie:
    """A trie of the house's models, in lower case; the concept is the name as the house writes it."""
    trie = Trie()
    for model in models:
        trie.add(" ".join(model.lower().replace("-", " ").split()), ("model", model))
    return trie
