"""A bang whose harmless cause is told as a fact: "loud bang forward. It was the hatch coming down"."""

from __future__ import annotations

from grammar.dangers.text import Text
from grammar.dangers.traced import DOUBTS
from grammar.lexicon.phrases import Hit

NOISE = frozenset(  # nothing but a noise is told
    (
        *("bang", "boom", "crack", "loud", "big", "huge", "almighty", "a", "one", "heard", "there", "was", "with"),
        *("from", "went", "and", "then", "in", "up", "on", "under", "the", "my", "our", "locker", "bow"),
        *("bunk", "berth", "forward", "inside", "near"),
    )
)
FELL = frozenset(  # what bangs aboard and is no part of a battery or its circuit
    (
        *("hatch", "door", "anchor", "fender", "fenders", "pan", "pans", "kettle", "drawer", "ladder", "oar"),
        *("oars", "washboard", "boom", "bucket", "toolbox", "winch", "plank", "gangway", "passerelle", "dinghy"),
        *("outboard", "floorboard", "cupboard", "hatchboard", "tin", "tins", "toilet", "cat", "dog", "gull"),
    )
)
LIDDED = frozenset({"locker", "bin", "toilet", "cooler", "fridge", "bench", "seat", "lazarette", "chest", "deck"})
OURS = frozenset(
    (
        *("battery", "batteries", "bank", "charger", "cell", "cells", "lithium", "agm", "gel", "lfp", "lead", "accu"),
        *("box", "fuse", "cable", "terminal", "terminals", "post", "posts", "cap", "caps", "inverter", "thruster"),
        *("charge", "charged", "charging", "charges", "switched", "spanner", "wrench", "acid"),
    )
)
SUBJECTS, ARTICLES = frozenset({"it", "that", "which"}), frozenset({"the", "a", "an", "my", "our", "next", "his"})
IS = (("was",), ("turned", "out", "to", "be"), ("proved", "to", "be"))
ONLY = frozenset({"only", "just", "simply", "merely", "actually", "in", "fact"})
NAME = 3  # words from the article to the thing: "the anchor locker lid"
MORE = frozenset({"another", "again", "since", "smoke", "smell", "still", "keeps", "hot", "burst", "split"})


def is_traced_noise(hit: Hit, words: Text) -> bool:
    """Whether a bang, in a sentence that names no battery, is then said to have been something that fell or shut."""
    first, last = words.sentences[hit.start]
    if not NOISE.issuperset(words.words[at] for at in hit.at) or not OURS.isdisjoint(words.words[first:last]):
        return False
    until = words.sentences[last + 1][1] if last + 1 < len(words.words) else last
    return any(_names_cause(at, words) for at in range(hit.end, until) if words.begins(at))


def _names_cause(at: int, words: Text) -> bool:
    """Whether a clause that begins here says for certain what it was."""
    clause = words.words[at : words.sentences[at][1]]
    if (clause[:1] and clause[0] not in SUBJECTS) or not (DOUBTS | OURS | MORE).isdisjoint(clause):
        return False
    verb = next((verb for verb in IS if clause[1 : 1 + len(verb)] == verb), None)
    if verb is None:
        return False
    rest = [word for word in clause[1 + len(verb) :] if word not in ONLY]
    named = rest[1 : 2 + NAME]
    fell = not FELL.isdisjoint(named) or ("lid" in named and not LIDDED.isdisjoint(named))
    return bool(rest) and rest[0] in ARTICLES and fell
