"""Makes short messages that hold a given phrase of the lexicon, in places where it can have an effect.

A phrase is spelled out first: alternatives, endings, gaps and classes become words. Then it stands in the frames of its
class (frames.toml): a role or a value beside a quantity, a sign of danger beside what it needs, a word that tells signs
apart before and behind one. The same entry gives the same messages in the same order, the plainest first.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Iterator, Sequence
from functools import cache
from itertools import chain, product
from pathlib import Path
from random import Random

from grammar.lexicon.phrases import GAPS
from grammar.lexicon.vocabulary import lexicon
from grammar.text.tokens import cut
from tests.tools.dead import TESTS, Entry, classes, families, strings

HERE = Path(__file__).parent
ENDINGS = ("", "s", "ing", "ed", "e", "es", "er", "ation", "y", "ical")
BETWEEN = ("", "the", "the old", "it up")  # what may stand in a gap
FIGURES = {
    "#hot": "70 degrees",
    "#high": "15.6",
    "#low": "7.8 volts",
    "#mild": "18 degrees",
    "#cool": "8 degrees",
    "#ma": "30 mA",
    "#-": "-5",
    "percent": "%",
}
BESIDE_QUANTITIES = ("role", "alike", "count", "filler")
LONGEST_EXAMPLE, MOST_EXAMPLES = 140, 25
MIXED = 40  # spellings of one phrase with its alternatives mixed anew
MOST_PLACED = 60  # frames and signs for one spelling of what tells signs apart
MOST_PLACES = 12  # words of a class that a sign is set beside

Row = list[str]


@cache
def frames() -> dict[str, list[str]]:
    """The frames by class, and for some concepts by "class:concept"."""
    found: dict[str, list[str]] = tomllib.loads((HERE / "frames.toml").read_text(encoding="utf-8"))
    return found


def spelled(phrase: str) -> Iterator[str]:
    """The words of a lexicon phrase, with "~" and "*" made words; the plainest first."""
    parts = phrase.split()
    stems, gaps = any(part.endswith("~") for part in parts), "*" in parts
    for ending, gap in product(ENDINGS if stems else ("",), BETWEEN if gaps else ("",)):
        words = (gap if part == "*" else part[:-1] + ending if part.endswith("~") else part for part in parts)
        yield " ".join(filter(None, words))


def around(kind: str, concept: str) -> list[str]:
    """The frames of a concept, "{}" for its phrase, those made for it first. The class of a value begins with "="."""
    known = frames()
    group = "value" if kind.startswith("=") else kind
    found = [*known.get(f"{kind}:{concept}", ()), *known.get(group, ()), *examples().get(f"{kind}:{concept}", ())]
    if group in BESIDE_QUANTITIES:
        found += [place.replace("Q", value) for place in known["places"] for value in known["quantities"]]
    return list(dict.fromkeys((*found, *known["any"])))


@cache
def examples() -> dict[str, list[str]]:
    """The shortest examples of reading that hold a phrase of a concept, with "{}" in its place."""
    found: dict[str, set[str]] = {}
    for path in sorted((TESTS / "reading").rglob("*.toml")):
        for message in strings(tomllib.loads(path.read_text(encoding="utf-8"))):
            if len(message) > LONGEST_EXAMPLE:
                continue
            tokens = cut(message)
            for hit in lexicon().find([token.word for token in tokens]):
                frame = f"{message[: tokens[hit.start].start]}{{}}{message[tokens[hit.end - 1].end :]}"
                found.setdefault(f"{hit.kind}:{hit.concept}", set()).add(frame)
    return {
        name: sorted(texts, key=lambda text: (len(text), text))[:MOST_EXAMPLES]
        for name, texts in found.items()
        if name.partition(":")[0] in BESIDE_QUANTITIES or name.startswith("=")
    }


def rows(phrase: str, gaps: Sequence[str] = BETWEEN) -> Iterator[Row]:
    """The words of a phrase of danger: first so that each alternative stands once, then with them mixed."""
    choices = [list(gaps) if part in GAPS else list(_choices(part)) for part in phrase.split()]
    rng = Random(phrase)
    each = ([words[row % len(words)] for words in choices] for row in range(max(map(len, choices))))
    mixed = ([rng.choice(words) for words in choices] for _ in range(MIXED))
    seen = set()
    for row in chain(each, mixed):
        words = " ".join(row).split()
        if tuple(words) not in seen:
            seen.add(tuple(words))
            yield words


def _choices(part: str) -> Iterator[str]:
    for choice in part.split("|"):
        for word in classes()[choice.strip("<>")] if choice.startswith("<") else (choice,):
            if word.endswith("~"):
                yield from (word[:-1] + ending for ending in ENDINGS[:5])
            else:
                yield word


def text(row: Iterable[str]) -> str:
    """A row of words as somebody types it."""
    return " ".join(FIGURES.get(word, word) for word in row).replace(" ?", "?").replace(" degrees c ", " c ")


def sign_messages(entry: Entry) -> Iterator[str]:
    """The messages of a sign of danger, with what its family needs."""
    how, _, place = entry.how.partition("/")
    needs = [classes()[name][0] for name in families()[entry.table].get("needs", ())]
    set_in = frames()["danger"]
    if how in ("beside", "anywhere", "with"):
        words = classes()[place]
        some = words[:: max(1, len(words) // MOST_PLACES)]
        set_in = [
            frame.replace("[]", word) for word in some for frame in frames()["anywhere" if how == "with" else how]
        ]
    for row in rows(entry.phrase):
        for frame in set_in:
            message = frame.replace("{}", text(row))
            yield message
            if needs:
                yield f"{text(needs)}. {message}"
                yield f"{text(needs)} {message}"
                yield f"{message} {text(needs)}"


def context_messages(entry: Entry) -> Iterator[str]:
    """The messages of what tells signs apart: before, behind and around signs of several families."""
    known = frames()
    name = entry.how or entry.table
    set_in = known.get(f"danger {name}") or known["danger context"]
    signs = known["danger signs"]
    placed = [(frame, sign) for frame in set_in for sign in (signs if "[]" in frame else ("",))]
    rng = Random(entry.phrase)
    for row in rows(entry.phrase, (*BETWEEN, *known["danger gaps"])):
        for frame, sign in rng.sample(placed, min(len(placed), MOST_PLACED)):
            yield frame.replace("{}", text(row)).replace("[]", sign)


def look_alike_messages(entry: Entry, signs: Iterable[Entry]) -> Iterator[str]:
    """The messages of a look-alike: spliced into the signs of danger that share a word with it."""
    steps = [(sign, _steps(sign.phrase)) for sign in signs]
    for row in rows(entry.phrase):
        words = set(row)
        for sign, parts in steps:
            if any(not words.isdisjoint(part) or any(_fits(part, word) for word in words) for part, _ in parts):
                for spliced in _spliced(row, parts):
                    yield from _placed(sign, spliced)


@cache
def _steps(phrase: str) -> tuple[tuple[frozenset[str], int], ...]:
    """The words of a sign, each as its choices, and how many others may stand before it."""
    found, gap = [], 0
    for part in phrase.split():
        if part in GAPS:
            gap = GAPS[part]
        else:
            found.append((frozenset(_plain(part)), gap))
            gap = 0
    return tuple(found)


def _plain(part: str) -> Iterator[str]:
    for choice in part.split("|"):
        yield from classes()[choice.strip("<>")] if choice.startswith("<") else (choice,)


def _fits(part: frozenset[str], word: str) -> bool:
    singular = word[:-1] if len(word) > 4 and word.endswith("s") and not word.endswith("ss") else word
    return word in part or singular in part or any(word[:size] + "~" in part for size in range(2, len(word) + 1))


def _spliced(row: Row, parts: Sequence[tuple[frozenset[str], int]]) -> Iterator[Row]:
    """The look-alike with the rest of the sign before and behind it."""
    for at, (part, gap) in enumerate(parts):
        for place, word in enumerate(row):
            if not _fits(part, word) or (at and place > gap):
                continue
            step, reached = at + 1, place  # further words of the sign that stand in the look-alike
            while step < len(parts):
                reach = range(reached + 1, min(len(row), reached + 2 + parts[step][1]))
                further = next((later for later in reach if _fits(parts[step][0], row[later])), None)
                if further is None:
                    break
                step, reached = step + 1, further
            if step < len(parts) and len(row) - 1 - reached > parts[step][1]:
                continue
            yield [*map(_first, parts[:at]), *row, *map(_first, parts[step:])]


def _first(part: tuple[frozenset[str], int]) -> str:
    return min(part[0], key=lambda word: (word.endswith("~"), len(word), word)).rstrip("~")


def _placed(sign: Entry, row: Row) -> Iterator[str]:
    """A row with what the sign needs beside it."""
    how, _, place = sign.how.partition("/")
    needs = [classes()[name][0] for name in families()[sign.table].get("needs", ())]
    if how in ("beside", "anywhere"):
        yield text([*row, classes()[place][0]])
        yield text([classes()[place][0], *row])
    else:
        yield text([*row, *needs])
