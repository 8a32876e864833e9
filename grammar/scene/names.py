"""Whether a number is part of the name that a maker gave a thing: no amps, "a Somebody 95 thruster", "model 80"."""

from __future__ import annotations

from grammar.lexicon.vocabulary import lexicon
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

NAMING = frozenset({"model", "mk", "mark", "version"})
IS = frozenset({"is", "no", "nr", "number"})
ENDS = frozenset({"", ".", "?", "!", ":", ";", "\n"})
TITLE = regex(r"[A-Z][a-z]{2,}")


def is_name(scene: Scene, item: Item) -> bool:
    """Whether a bare number belongs to a load's name, told by a capital or by a word such as "model"."""
    if "load" not in scene.heads or item.start == 0:
        return False
    at = item.start - 1
    if scene.word(at) in NAMING or (scene.word(at) in IS and scene.word(at - 1) in NAMING):
        return True
    known, typed = scene.at_word[at], scene.text[slice(*scene.span(at, at + 1))]
    if known.head or known.fact or known.kind == "model" or not TITLE.fullmatch(typed):
        return False
    return scene.word(at) not in lexicon().words or scene.word(at - 1) not in ENDS
