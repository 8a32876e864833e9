"""A "no" that stands apart from what it denies: "engine room: no", "no part of it is in there", "the AGM goes".

Beside it a place that is only left: "we move the bank out of the engine room".
"""

from __future__ import annotations

import re

from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of

NO = frozenset({"no", "nope", "n"})
BETWEEN = frozenset({":", "=", "-", "?", "–", "->"})  # "in the engine room? no"
GOES_ON = frozenset({"and", "for", "but", "so", "then", "please", "pls", "now", "this", "next"})
FOLLOWING = 160  # characters
NEVER_AFTER = "?"  # "AGM, no?" asks whether it is
AVOIDS = regex(  # "it does not run through the engine room"; "doesn't it ...?" says nothing
    r"(?:\b(?:(?:is|does|do|are|will)(?: not|n'?t)|not|never|nowhere|avoids|none of (?:it|them)"
    r"|no (?:part|bit|piece|metre|foot) of (?:it|them))"
    r"(?: (?:even|is|be|been|it|the|our|cables?|pass\w*|runs?|running|go|goes|going|comes?|leads?|led|touch\w*|cross\w*"
    r"|enters?|lies?|laid|routed|taken|through|thru|into|in|inside|near|anywhere|across|past|along|via|by))* ?)$",
    re.IGNORECASE,
)
MOVES_OUT = regex(  # "we move the bank out of the engine room"
    r"(?:^|[.?!;,])[^.?!;,]{0,200}\b(?:mov(?:e|es|ed|ing)|shift(?:s|ed|ing)?|relocat(?:e|es|ed|ing)|tak(?:e|es|en|ing)|took|bring(?:s|ing)?|brought"
    r"|com(?:e|es|ing)|came|going|goes|gone|transfer\w*)\b[^.?!;,]{0,60}?\b(?:from|out of) (?:the |its |my |our )?$",
    re.IGNORECASE,
)
CABLE = regex(r"\b(?:cables?|wires?|leads?|run)\b", re.IGNORECASE)
SAME_PLACE = regex(  # "... live in the engine space? And the wire goes through the same space"
    r"\b(?:wires?|cables?|leads?|run)\b(?:(?!\bnot\b|n['’]?t\b|\bnever\b|\bavoid)[^.?!;]){0,40}?"
    r"\b(?:through|thru|via|in|into|across|inside) (?:the|that) (?:very )?same (?:hot )?"
    r"(?:space|room|compartment|bay|place|hole|box)\b",
    re.IGNORECASE,
)
ASKING = regex(r"(?:^|[.?!;,] )(?:is|does|do|are|will)n'?t\b[^.?!;,]{0,200}$", re.IGNORECASE)


def avoided(scene: Scene, item: Item) -> bool:
    """Whether the words straight before a place say that a cable does not pass it."""
    if item.fact != "cable.in_engine_space" or item.name != "true":
        return False
    before = ahead_of(scene, item)
    return AVOIDS.search(before) is not None and ASKING.search(before) is None


def named_again(scene: Scene, item: Item) -> bool:
    """Whether a cable is told to run where a battery is only asked about: "may it live there? The wire goes through the
    same space"."""
    after = scene.span(item.start, item.end)[1]
    return item.fact == "cable.in_engine_space" and SAME_PLACE.search(scene.text[after : after + FOLLOWING]) is not None


def moved_out(scene: Scene, item: Item) -> bool:
    """Whether a battery only leaves that place: "the bank is moving from the engine room to the bow"."""
    if item.fact != "cable.in_engine_space":
        return False
    found = MOVES_OUT.search(ahead_of(scene, item))
    return found is not None and CABLE.search(found[0]) is None


def refused_after(scene: Scene, item: Item) -> bool:
    """Whether a "no" by itself follows a value: nothing that it might deny comes after it."""
    if item.fact == "battery.chemistry" and _goes(scene, item):
        return True
    at = item.end + (scene.word(item.end) in BETWEEN)
    after = scene.word(at + 1)
    return scene.word(at) in NO and not after[:1].isalnum() and after != NEVER_AFTER


def _goes(scene: Scene, item: Item) -> bool:
    """Whether a kind of battery is to go: "wants the lead gone", "the AGM goes, which lithium", "wet is ruled out";
    "the lithium's gone soft" tells how it is."""
    at = item.end + (scene.word(item.end) in ("is", "are", "was"))
    begins = item.at == 0 or scene.items[item.at - 1].kind == "mark"
    out = scene.word(at) == "out" and begins and not scene.word(at + 1)[:1].isalnum()  # "gel is out", of the question
    if at > item.end and (out or [scene.word(at), scene.word(at + 1)] == ["ruled", "out"]):
        return True
    named = scene.word(item.start - 1) in ("the", "my", "our", "all")
    if not named or scene.word(item.end) not in ("gone", "goes", "out"):
        return False
    follows = scene.word(item.end + 1)
    if scene.word(item.start) == "lead":  # one that goes forward is a wire
        return follows not in ("of", "flat")
    return not follows[:1].isalnum() or follows in GOES_ON
