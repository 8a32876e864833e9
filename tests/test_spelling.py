"""How often the speller makes a trade word of an ordinary one, and how many slips it mends. The figures are printed."""

from __future__ import annotations

import re
import tomllib
from importlib.resources import files
from random import Random

import pytest

from grammar.files import TABLES
from grammar.lexicon.vocabulary import lexicon
from grammar.text import spelling
from grammar.text.spelling import mended, targets
from tests.generator.slips import slipped
from tests.tools.labelled import OWN

MODELS = ("minnow", "sturgeon")
FALSE_MOST = 0.00005  # of the kinds of words
RUNNING_MOST = 2e-5  # of the words of books: "gage" is one, and a gauge in trade
RECALL_LEAST = 0.96


def english() -> dict[str, int]:
    """Some 82,000 English words with their inflections and how often each stands in books."""
    text = files("symspellpy").joinpath("frequency_dictionary_en_82_765.txt").read_text(encoding="utf-8-sig")
    return {word: int(count) for word, count in (line.split() for line in text.splitlines())}


def changed(words) -> dict[str, str]:
    """The words of which the speller makes others, as it does while it reads."""
    known, spoken = lexicon().words, spelling._lists()["spoken"]
    made = {word: mended(word, known, MODELS) for word in words if word not in spoken}
    return {word: other for word, other in made.items() if other != word}


def test_a_spoken_word_becomes_no_trade_word():
    spoken = spelling._lists()["spoken"]
    assert not set(spoken) & set(targets())
    assert not set(spoken.values()) & set(targets()) - {"enough"}


def test_no_english_word_becomes_a_trade_word(tell):
    words = english()
    made = changed(words)
    kinds, running = len(made) / len(words), sum(words[word] for word in made) / sum(words.values())
    tell(f"speller: of {len(words)} English words {len(made)} become trade words, {running:.1e} of running words")
    assert kinds <= FALSE_MOST, f"put those that matter among the ordinary words of spelling.toml: {made}"
    assert running <= RUNNING_MOST


def test_the_words_of_our_own_messages_stay(tell):
    words = {word for path in OWN.glob("*.toml") for word in re.findall("[a-z]+", path.read_text("utf-8").lower())}
    ordinary = words & set(english())
    others = words - ordinary
    made, slips = changed(ordinary), changed(others)
    tell(
        f"speller: of {len(ordinary)} English words of our messages {len(made)} change, "
        f"of {len(others)} others {len(slips)}"
    )
    assert made == {}


def test_slips_of_trade_words_are_mended(tell):
    rng = Random(1)
    known = lexicon().words
    words = english()
    tried = [(word, slipped(rng, word)) for word in (*targets(), *MODELS) if word.isalpha() for _ in range(40)]
    tried = [(word, typed) for word, typed in tried if typed != word and typed not in words and typed not in known]
    right = sum(mended(typed, known, MODELS) == word for word, typed in tried)
    tell(f"speller: {right} of {len(tried)} slips in trade words are mended, {100 * right / len(tried):.1f} %")
    assert right >= RECALL_LEAST * len(tried)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("litihum", "lithium"),
        ("htruster", "thruster"),
        ("livepo4", "lifepo4"),
        ("floodedbattery", "flooded battery"),
        ("mnius", "minus"),
        ("sturgoen", "sturgeon"),
        ("lifepo5", "lifepo5"),  # another number is another thing
        ("leaving", "leaving"),
        ("settin", "setting"),  # as it is spoken
        ("chargin", "charging"),
        ("goin", "going"),
        ("cabin", "cabin"),
        ("margin", "margin"),
        ("cellphone", "cellphone"),
    ],
)
def test_slips_and_words_that_look_like_slips(typed, meant):
    assert mended(typed, lexicon().words, MODELS) == meant


def test_an_ordinary_word_on_the_list_is_near_a_target():
    """So that the list does not grow for nothing: without it each would become another word."""
    lists = tomllib.loads((TABLES / "spelling.toml").read_text(encoding="utf-8"))
    halves = (*lists["repair"], *lists["halves"])
    needless = [
        word
        for word in sorted(lists["ordinary"])
        if not spelling._closest(word, ()) and not any(word.startswith(half) or word.endswith(half) for half in halves)
    ]
    assert needless == []


def test_a_fixed_slip_is_one_that_the_rules_do_not_mend():
    lists = tomllib.loads((TABLES / "spelling.toml").read_text(encoding="utf-8"))
    assert [
        word for word, meant in lists["fixed"].items() if spelling._closest(word, ()) == meant and len(word) > 4
    ] == []
