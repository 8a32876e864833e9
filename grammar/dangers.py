"""Finds signs of danger in a text and how far each counts: present, past, denied or only asked about in general.

The words are in words/dangers*.toml and words/danger_words.toml. Look-alikes ("boiling hot weather", "lead acid") are
taken out first.
"""
from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any

from grammar.files import toml
from grammar.phrases import BREAK, Hit, Phrases
from grammar.reading import Danger, Span

WORDS = Path(__file__).with_name("words")
CONTEXT = ("negation", "but-not", "mended", "past", "supposed", "general", "but-present")
TOKEN = re.compile(
    r"""(?P<abbreviated>(?<![^\W_])[^\W\d_](?=\.\s))\.            # "v. hot" ends no sentence
    |(?P<number>[0-9]+(?:[.,][0-9]+)?)
    |(?P<word>[^\W\d_][^\W_]*(?:['’`´][^\W_]+)*)
    |(?P<stop>[.!?…;\n])
    |(?P<comma>[,:()])
    |(?P<minus>(?<![\w)])[-−–](?=[0-9]))""",
    re.VERBOSE,
)
BESIDE = 8  # words between a sign and what it must stand by
SHORT = 4  # words of a message so short that one word of danger is enough
DENIES = 4  # words over which a "not" reaches
JOINS = frozenset({"or", "nor", "and", "either", "is", "it", "any", "even", "no", "not"})
LONGEST_PRONOUN = 5  # it's, that's, she's, there's
CONTRACTED = {
    "is": "isnt", "are": "arent", "was": "wasnt", "were": "werent", "does": "doesnt", "do": "dont", "did": "didnt",
    "has": "hasnt", "have": "havent", "will": "wont", "would": "wouldnt", "can": "cant", "could": "couldnt",
}
VOLTS = ("v", "volt", "volts")
FALLS = frozenset(
    {"drop", "drops", "dropped", "fall", "falls", "fell", "dip", "dips", "dipped", "sag", "sags", "sagged", "down"}
)
DEGREES = frozenset({"c", "deg", "degc", "degree", "degrees", "celsius", "centigrade", "grad"})


@dataclass(frozen=True, slots=True)
class Text:
    """The words of a text in order, each with its place; a sentence's end is a BREAK."""

    words: tuple[str, ...]
    spans: tuple[Span, ...]
    commas: frozenset[int] = frozenset()  # the words that stand after a comma, colon or bracket

    def sentence(self, at: int) -> tuple[int, int]:
        """The stretch of words without a BREAK around the word."""
        first = last = at
        while first and self.words[first - 1] != BREAK:
            first -= 1
        while last < len(self.words) and self.words[last] != BREAK:
            last += 1
        return first, last


@dataclass
class Signs:
    """The phrases of the tables, ready for use."""

    classes: dict[str, tuple[str, ...]]
    signs: Phrases
    context: Phrases
    masks: Phrases
    places: Phrases  # the words of each class, to look for what a sign must stand by
    keeps: frozenset[str] = frozenset()
    general: frozenset[str] = frozenset()  # families that are only ever asked about
    needs: dict[str, tuple[str, ...]] = field(default_factory=dict)


@cache
def signs() -> Signs:
    """The tables of words, compiled. Raises ValueError for a phrase that cannot be."""
    table = toml(WORDS / "danger_words.toml")
    families = {name: spec for path in sorted(WORDS.glob("dangers*.toml")) for name, spec in toml(path).items()}
    del families["class"]
    classes = {name: tuple(words.split()) for name, words in table["classes"].items()}
    found = Signs(classes, Phrases(classes), Phrases(classes), Phrases(classes), Phrases(classes))
    found.masks.add("look-alike", table["look-alikes"]["says"])
    for name in classes:
        found.places.add(name, [f"<{name}>"])
    for name in CONTEXT:
        found.context.add(name, _context(table, name))
    for family, spec in families.items():
        found.signs.add(family, spec.get("says", ()))
        for pair in spec.get("pairs", ()):
            sign, place = pair.split()
            found.signs.add(family, [f"<{sign}> ** <{place}>"])
            found.signs.add(f"{family}/last", [f"<{place}> ** <{sign}>"])  # the sign is the last word
        found.signs.add(f"{family}/short", spec.get("short", {}).get("says", ()))
        for how in ("beside", "anywhere"):
            for place, phrases in spec.get(how, {}).items():
                found.signs.add(f"{family}/{how}/{place}", phrases)
    found.keeps = frozenset(family for family, spec in families.items() if spec.get("keeps"))
    found.general = frozenset(family for family, spec in families.items() if spec.get("general"))
    found.needs = {family: tuple(spec["needs"]) for family, spec in families.items() if "needs" in spec}
    return found


def _context(table: dict[str, Any], name: str) -> list[str]:
    if name == "but-not":
        return list(table["negation"]["but-not"])
    if name == "but-present":
        return list(table["general"]["but-present"])
    return list(table[name]["says"])


def find_dangers(text: str) -> tuple[Danger, ...]:
    """The signs of danger in a text, in its order; of each family and status the first. Any text will do."""
    read = _read(text)
    table = signs()
    hits = _standing(read, table)
    if not hits:
        return ()
    context = table.context.find(read.words)
    found: dict[tuple[str, str], Danger] = {}
    denied: list[Hit] = []
    for hit in sorted(hits, key=lambda item: (item.start, -item.end)):
        family = hit.name.split("/")[0]
        status = _status(hit, family in table.keeps, read, context, denied)
        if status == "present" and family in table.general:
            status = "general"
        if status == "denied":
            denied.append(hit)
        span = read.spans[hit.start][0], read.spans[hit.end - 1][1]
        found.setdefault((family, status), Danger(family, status, text[slice(*span)], span))
    return tuple(found.values())


def _read(text: str) -> Text:
    words: list[str] = []
    spans: list[Span] = []
    commas: set[int] = set()
    for match in TOKEN.finditer(text):
        if match.lastgroup == "comma":
            commas.add(len(words))
            continue
        if match.lastgroup == "abbreviated":
            word = match["abbreviated"].lower()
        elif match.lastgroup == "stop":
            word = BREAK
        elif match.lastgroup == "minus":
            word = "#-"
        else:
            word = _plain(match.group().lower())
        if word == "not" and words and words[-1] in CONTRACTED:  # "does not" is "doesnt"
            words[-1], spans[-1] = CONTRACTED[words[-1]], (spans[-1][0], match.end())
            continue
        words.append(CONTRACTED["can"] if word == "cannot" else word)
        spans.append(match.span())
    return Text(tuple(_figures(words)), tuple(spans), frozenset(commas))


def _plain(word: str) -> str:
    """A word without apostrophes; "battery's" is "battery", but "it's" is "its"."""
    base, _, ending = re.sub(r"[’`´]", "'", word).partition("'")
    return base if ending == "s" and len(base) > LONGEST_PRONOUN else base + ending.replace("'", "")


def _figures(words: list[str]) -> list[str]:
    """Numbers that are a sign by themselves get a name: too hot, too high a charging voltage, below freezing."""
    named = list(words)
    systems = {word for word, after in pairwise(words) if after in VOLTS}
    if FALLS & set(words):  # then one battery's volts are no reading
        systems.discard("12")
    for at, word in enumerate(words):
        if not "0" <= word[:1] <= "9":
            continue
        value = float(word.replace(",", "."))
        after = words[at + 1] if at + 1 < len(words) else ""
        if (after in DEGREES and 50 <= value <= 100) or (after == "f" and 140 <= value <= 212):
            named[at] = "#hot"
        elif after in VOLTS or "." in word or "," in word:
            named[at] = "#high" if _too_high(value, systems) else word
        elif after == "f" and value <= 32:
            named[at] = "#-"
    return named


def _too_high(volts: float, systems: set[str]) -> bool:
    """Whether a 12 V or 24 V battery takes harm from these volts; a larger system that is named has them at rest."""
    if 15.0 <= volts <= 17.9:
        return "12" in systems or not systems & {"24", "36", "48"}
    return 30.0 <= volts <= 35.8 and not systems & {"36", "48"}


def _standing(read: Text, table: Signs) -> list[Hit]:
    """The signs that have by them what they need and are no look-alike."""
    masked = {at for hit in table.masks.find(read.words) for at in range(hit.start, hit.end)}
    near: dict[str, list[int]] = {}
    for hit in table.places.find(read.words):
        near.setdefault(hit.name, []).append(hit.start)
    size = len(read.words) - read.words.count(BREAK)
    return [
        hit
        for hit in table.signs.find(read.words)
        if not (hit.start in masked or hit.end - 1 in masked) and _has_place(hit, near, size, read, table)
    ]


def _has_place(hit: Hit, near: dict[str, list[int]], size: int, read: Text, table: Signs) -> bool:
    family, how, place = (*hit.name.split("/"), "", "")[:3]
    if any(not near.get(need) for need in table.needs.get(family, ())):
        return False
    if how == "short":
        return size <= SHORT
    if how == "anywhere":
        return bool(near.get(place)) or size <= SHORT
    if how == "beside":
        first, last = read.sentence(hit.start)
        first, last = max(first, hit.start - BESIDE), min(last, hit.end + BESIDE)
        inside = range(hit.start, hit.end)
        return any(first <= at < last and at not in inside for at in near.get(place, ()))
    return True


def _status(hit: Hit, keeps: bool, read: Text, context: list[Hit], denied: list[Hit]) -> str:
    first, last = read.sentence(hit.start)
    if _is_denied(hit, first, read, context, denied):
        return "denied"
    if _is_general(hit, first, context):
        return "general"
    after = read.sentence(min(last + 1, len(read.words) - 1))[1]
    if any(item.name == "mended" and hit.start <= item.start < after for item in context):
        return "past"
    if not keeps and any(item.name == "past" and first <= item.start < last for item in context):
        return "past"
    return "present"


def _is_denied(hit: Hit, first: int, read: Text, context: list[Hit], denied: list[Hit]) -> bool:
    if read.words[hit.end : hit.end + 1] == ("not",):
        return True
    if denied and hit.start < denied[-1].end:  # inside or overlapping what was denied
        return True
    if denied and all(word in JOINS for word in read.words[denied[-1].end : hit.start]):
        return True  # "not swollen, hot or leaking"
    spared = [item for item in context if item.name == "but-not"]
    sign = hit.end - 1 if hit.name.endswith("/last") else hit.start
    return any(
        item.name == "negation"
        and first <= item.start
        and sign - DENIES <= item.end <= sign
        and "but" not in read.words[item.end : sign]
        and not any(at in read.commas for at in range(item.end, sign + 1))
        and not _inside(item, spared)
        for item in context
    )


def _is_general(hit: Hit, first: int, context: list[Hit]) -> bool:
    spared = [item for item in context if item.name == "but-present"]
    for item in context:
        if item.name == "supposed":
            return True
        in_sentence = first <= item.start <= hit.start
        if item.name == "general" and in_sentence and item.end <= hit.end and not _inside(item, spared):
            return True
    return False


def _inside(item: Hit, others: list[Hit]) -> bool:
    return any(other.start <= item.start < other.end for other in others)
