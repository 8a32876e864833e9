"""Messages of which the topics and the facts are known. The same seed gives the same messages."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

from tests.generator.slips import with_slips, without_a_space

HERE = Path(__file__).parent
CHOICE = re.compile(r"\[([^\[\]]*)\]")
SYNONYM = re.compile(r"<([a-z]+)>")
SLOT = re.compile(r"\{([a-z_0-9]+)\}")
SPACES = re.compile(r"  +")
KINDS = re.compile(r"agm|gel|flooded|wet|lithium|lifepo|lfp|lead acid", re.IGNORECASE)
LEVELS = ("plain", "careless", "story", "slips", "hurried")
ENDS = ("?", ".", "!", ",")
APART = ("Also, ", "And ", "Second question: ", "Another thing: ", "One more: ", "")
NOTHING = "nothing"
ALONE = frozenset({"hazard", "unclear", "other-desk", NOTHING})  # no second question stands beside them


@dataclass(frozen=True, slots=True)
class Made:
    """A message, what it asks about ("a|b": either), the facts it states, and where the words stand that state none."""

    text: str
    topics: tuple[str, ...]
    facts: dict[str, Any]
    level: str
    noise: tuple[tuple[int, int], ...] = ()


@dataclass
class Draft:
    """A message while it is made: its pieces, each the question itself or noise around it."""

    pieces: list[tuple[str, bool]] = field(default_factory=list)
    facts: dict[str, Any] = field(default_factory=dict)


@cache
def data(name: str) -> dict[str, Any]:
    return tomllib.loads((HERE / f"{name}.toml").read_text(encoding="utf-8"))


def worded(rng: Random, template: str) -> str:
    """A template with its choices made and its synonyms chosen; the slots are left."""
    while match := SYNONYM.search(template):
        template = template[: match.start()] + rng.choice(data("synonyms")[match[1]]) + template[match.end() :]
    while match := CHOICE.search(template):
        template = template[: match.start()] + rng.choice(match[1].split("|")) + template[match.end() :]
    return SPACES.sub(" ", template).replace(" ?", "?").replace(" ,", ",").strip()


def written(rng: Random, slot: dict[str, Any]) -> tuple[str, Any]:
    """A value of a slot: its words and its value in the fact's unit."""
    notation = rng.choice(slot["says"])
    if "low" not in slot:
        return notation[0], notation[1]
    words, scale, step, zero = (*notation, 0)[:4]
    steps = round((rng.uniform(slot["low"], slot["high"]) / scale + zero) / step)
    value = round((steps or 1) * step, 4)
    as_read = slot["fact"].startswith("reading.") and step < 1 and value % 1 == 0  # "12.0": 12 names a system
    return words.format(f"{value:.1f}" if as_read else f"{value:g}"), (value - zero) * scale


def question(rng: Random, topic: str) -> Draft:
    """One question of a topic, with its facts."""
    draft = Draft()
    text = worded(rng, rng.choice(data("templates")[topic]))
    while match := SLOT.search(text):
        slot = data("slots")[match[1]]
        words, value = written(rng, slot)
        draft.facts[slot["fact"]] = value
        text = text[: match.start()] + words + text[match.end() :]
    draft.pieces.append((text[0].upper() + text[1:] if rng.random() < 0.7 else text, False))
    return draft


def things(draft: Draft) -> set[str]:
    """What its facts are of: battery, load, cable ..."""
    return {fact.partition(".")[0] for fact in draft.facts}


def two_questions(rng: Random) -> tuple[tuple[str, str], Draft]:
    """Questions of two topics in one message. Neither states a fact of the other."""
    topics = sorted(set(data("templates")) - ALONE)
    while True:
        first, second = rng.sample(topics, 2)
        one, two = question(rng, first), question(rng, second)
        opening, closing = one.pieces[0][0], two.pieces[0][0]
        if things(one) & things(two) or (KINDS.search(opening) and KINDS.search(closing)):
            continue
        opening += "" if opening[-1] in "?.!" else "?"
        apart = rng.choice(APART)
        closing = closing[0].lower() + closing[1:] if apart and closing[1:2].islower() else closing
        return (first, second), Draft([(opening, False), (apart + closing, False)], one.facts | two.facts)


def told(rng: Random, draft: Draft) -> None:
    """Put a greeting, a story and an ending around it."""
    noise = data("noise")
    if rng.random() < 0.7:
        draft.pieces.insert(0, (rng.choice(noise["greetings"]), True))
    begin = 1 if draft.pieces[0][1] else 0
    for story in rng.sample(noise["stories"], rng.choice((1, 1, 2, 3))):
        place = rng.choice((begin, len(draft.pieces)))
        draft.pieces.insert(place, (story, True))
    if not draft.pieces[-1][1] or rng.random() < 0.5:
        draft.pieces.append((rng.choice(noise["endings"]), True))


def careless(rng: Random, text: str) -> str:
    """In small letters, without the last mark, apostrophes or hyphens; perhaps with an emoji behind."""
    text = text.lower().rstrip(" ?.!")
    if rng.random() < 0.5:
        text = text.replace("'", "")
    if rng.random() < 0.2:
        text += " " + rng.choice(data("noise")["emojis"])
    return text


def _hurried(rng: Random, text: str) -> str:
    """A piece with a slip in it as often as not, and now and then a space left out."""
    text = with_slips(rng, text, rng.choice((0, 1)))
    return without_a_space(rng, text) if rng.random() < 0.2 else text


def message(rng: Random, topic: str, level: str) -> Made:
    """A message of a topic ("several": two of them) at a level of noise."""
    topics: tuple[str, ...] = (topic,)
    if topic == "several":
        topics, draft = two_questions(rng)
    else:
        draft = question(rng, topic)
    if level in ("story", "hurried") and topic not in ("hazard", "unclear", NOTHING):
        told(rng, draft)
    pieces = draft.pieces
    if level in ("careless", "hurried"):
        last = len(pieces) - 1
        pieces = [
            (careless(rng, text) if at == last else text.lower(), noise) for at, (text, noise) in enumerate(pieces)
        ]
    if level == "slips":
        pieces = [(with_slips(rng, text, rng.choice((1, 1, 2))), noise) for text, noise in pieces]
    if level == "hurried":
        pieces = [(_hurried(rng, text), noise) for text, noise in pieces]
    text, noisy = "", []
    for piece, noise in pieces:
        text += ("\n" if text and text[-1] not in ENDS else " " if text else "") + piece
        if noise:
            noisy.append((len(text) - len(piece), len(text)))
    return Made(text, topics, draft.facts, level, tuple(noisy))


def messages(count: int, level: str, seed: int = 1) -> Iterator[Made]:
    """So many messages of a level, the topics in turn; every sixth asks two things."""
    rng = Random(f"{level} {seed}")
    topics = sorted(data("templates"))
    for number in range(count):
        yield message(rng, "several" if number % 6 == 5 else topics[(number - number // 6) % len(topics)], level)
