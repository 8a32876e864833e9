"""Which amps are those of a fuse, by what is said of them."""

from __future__ import annotations

import re

from grammar.scene.claims import (
    Claim,
    asked,
)
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.currents.another_fuse import has_its_own, is_choice, of_another
from grammar.told.currents.fuses import FUSES, put_in, stands_in
from grammar.told.words import ahead_of

FUSE_THERE = regex(  # "fuse at the battery 250 A"
    r"\b(?:fuse|breaker) (?:at|near|by|beside|on|in) (?:the|its|my|our) \w+(?: \w+)?[,:]? (?:is |of )?$", re.IGNORECASE
)
FUSE_DONE = regex(  # "fuse stamped 250 A", "fuse in, 300 A", "the fuse we changed already, 200 A"
    r"\b(?<!what )(?<!which )(?:fuse|breaker)(?:,? (?:is |was )?(?:stamped|marked|labelled|labeled|printed|engraved)"
    r"(?: as| at| with)?|(?: is| was| has been| already)* (?:in|fitted|done|installed|changed|bought|in place)"
    r"(?: already| too| as well| now)?[,:]"
    r"|(?: that| which)? (?:we|i|he|they|she)(?:'ve| have| has)?(?: already)?"
    r" (?:changed|fitted|bought|installed|chose)(?: already)?[,:]) $",
    re.IGNORECASE,
)
PUT_IN = regex(
    r"\b(?:go|fit|use|take|try|put|need|is|are|would|will|to|up to|with|one of|change to)(?: in)?(?: an?| the)? $",
    re.IGNORECASE,
)
ASKED = regex(
    r"^(?: (?:be|is|it|one|a better one|ok|okay|fine|instead|in|then|allowed|better|now|right|enough|good|too much"
    r"|safe|help|do))*"
    r"\W{0,2}\?",
    re.IGNORECASE,
)
IT_IS_A = regex(r"\b(?:it'?s|it is|that'?s|mine is|ours is|it was)(?: only| just)? an? $", re.IGNORECASE)
FOR_ITS_LOAD = regex(  # "the fuse for the thruster itself, 140 amps"
    r"\b(?:fuse|breaker) (?:for|of) (?:the|my|our) (?:bow |stern |anchor )?(?:thruster|windlass|motor|winch|capstan)"
    r"(?: itself| alone)?,? $",
    re.IGNORECASE,
)
ASKING = 40  # characters after amps that are asked about
WEIGHED = frozenset({"big", "small", "large", "much", "little", "heavy", "light", "good", "right"})
FITTING = frozenset({"right", "enough", "ok", "okay", "correct", "fine", "good", "big", "small", "much"})


def _fuses(scene: Scene, item: Item) -> bool:
    """Whether the amps stand on a cable, where a fuse is told of: "the fuse is far off, 400 A on 70 mm2"."""
    later = scene.items[item.at + 1 : item.at + 3]
    on_cable = len(later) == 2 and later[0].name == "on" and later[1].dim in ("AREA", "GAUGE")
    if scene.word(item.start - 1) == "for":  # "a fuse for 300 A on 2/0"
        return False
    if _right_for(scene, item):
        return True
    return on_cable and any(head.head == "fuse" and not asked(scene, head) for head in scene.head_items)


def fuse_of(scene: Scene, item: Item, value: float, claim: Claim | None) -> Claim | None:
    """The claim, or what a fuse that is spoken of makes of the amps."""
    if value not in FUSES and FOR_ITS_LOAD.search(ahead_of(scene, item)):
        return Claim("load.current", "near")
    if value in FUSES and _is_there(scene, item):
        return Claim("fuse.rating", "role")
    if (value in FUSES and _so_much_of_a_fuse(scene, item)) or put_in(scene, item, value):
        return Claim("fuse.rating", "role")
    if _gives_way(scene, item, claim) and (of_another(scene, item, value) or is_choice(scene, item)):
        return Claim("fuse.rating", "role")
    if _gives_way(scene, item, claim) and _put_in_its_place(scene, item, value):
        return Claim("fuse.rating", "role")
    if _gives_way(scene, item, claim) and _is_such_a_one(scene, item, value):
        return Claim("fuse.rating", "role")
    if claim is None and stands_in(scene, item, value):
        return Claim("fuse.rating", "role")
    if claim is None and _fuses(scene, item):
        return Claim("fuse.rating", "near")
    if _is_the_fuse(scene, item, value) or ((claim is None or claim.how == "near") and _blown(scene, item, value)):
        return Claim("fuse.rating", "role")
    fused = claim is not None and claim.fact == "fuse.rating" and _to_be_fused(scene, item, value)
    fused = fused or (claim is not None and claim.how == "near" and _beside_its_fuse(scene, item, claim))
    return Claim("load.current", "near") if fused else claim


def _is_there(scene: Scene, item: Item) -> bool:
    """Whether a fuse that is there is told to have these amps, and no motor: "fuse in, 300 A thruster"."""
    ahead, follows = ahead_of(scene, item), scene.after(item)
    if FUSE_THERE.search(ahead):
        return True
    of_load = follows is not None and follows.head in ("load", "charger", "alternator")
    return not of_load and FUSE_DONE.search(ahead) is not None


def _is_such_a_one(scene: Scene, item: Item, value: float) -> bool:
    """Whether the fuse that was named last is told to be of these amps: "about my fuse: it's a 200 A one"."""
    before = [head.head for head in scene.head_items if head.end <= item.start]
    if value not in FUSES or before[-1:] != ["fuse"] or scene.word(item.end) != "one":
        return False
    return IT_IS_A.search(ahead_of(scene, item)) is not None


def _gives_way(scene: Scene, item: Item, claim: Claim | None) -> bool:
    """Whether a claim is no more than a guess, or that of "my brother wants 400 A" where the load has its own amps."""
    if claim is None or claim.how in ("near", "default"):
        return True
    return claim.how == "role" and claim.fact in ("load.current", "battery.max_current") and has_its_own(scene, item)


def _so_much_of_a_fuse(scene: Scene, item: Item) -> bool:
    """Whether it is weighed as a fuse: "is 400 A too big a fuse on 95 mm2"."""
    words = [scene.word(at) for at in range(item.end, item.end + 5)]
    named = next((at for at, word in enumerate(words) if word in ("fuse", "breaker")), 0)
    return named > 1 and words[named - 1] in ("a", "of") and bool(WEIGHED & set(words[:named]))


def _is_the_fuse(scene: Scene, item: Item, value: float) -> bool:
    """Whether a fuse is said to be of these amps: "the fuse for my Pike is 200 A"."""
    clause = scene.clause(item.start)
    heads = [head for head in scene.heads_by_clause.get(clause, ()) if head.end <= item.start]
    told = scene.word(item.start - 1) in ("is", "was", "says")
    return told and value in FUSES and bool(heads) and heads[0].head == "fuse" and scene.word(heads[0].end) == "for"


def _blown(scene: Scene, item: Item, value: float) -> bool:
    """Whether amps of a usual size begin what follows on a fuse that blew: "my fuse blew again. 200 A, ..."."""
    before = scene.items[item.at - 1] if item.at else None
    return before is not None and before.kind in ("mark", "end") and value in FUSES and scene.blown


def _put_in_its_place(scene: Scene, item: Item, value: float) -> bool:
    """Whether amps of a usual size are asked about after a fuse that blew: "it blew again. Fit 350 A?"."""
    if not scene.blown or value not in FUSES or "fuse" not in scene.heads:
        return False
    start, end = scene.span(item.start, item.end)
    return PUT_IN.search(scene.ahead(start)) is not None and ASKED.match(scene.text[end : end + ASKING]) is not None


def _to_be_fused(scene: Scene, item: Item, value: float) -> bool:
    """Whether amps of no usual size of fuse stand apart from the word: the load's of "340 A 5 m fuse cable"."""
    near = {scene.word(at) for at in (*range(item.start - 3, item.start), item.end, item.end + 1)}
    return value not in FUSES and not {"fuse", "fuses", "fused", "breaker"} & near


def _beside_its_fuse(scene: Scene, item: Item, claim: Claim) -> bool:
    """Whether amps follow a fuse that has its own, with a comma between and nothing else: "a 100 A fuse, 90 amps"."""
    before = scene.before(item)
    if claim.fact != "fuse.rating" or before is None or before.name != "," or item.at < 3 or item.dim != "AMP":
        return False
    fuse, size = scene.items[item.at - 2], scene.items[item.at - 3]
    follows = scene.after(item)
    ends = follows is None or follows.kind in ("mark", "end")
    known = any(old.fact in ("load.current", "load.model") for old in scene.said)
    return fuse.head == "fuse" and size.dim == "AMP" and ends and not known and len(scene.quantities("AMP")) == 2


def _right_for(scene: Scene, item: Item) -> bool:
    """Whether they are a fuse's, asked about for a motor's: "is 250 A right for a 200 A motor", of fuses."""
    later = scene.items[item.at + 1 : item.at + 6]
    other = next((at for at, one in enumerate(later) if one.dim == "AMP"), None)
    if other is None or "fuse" not in scene.heads or not {"for", "on"} & {one.name for one in later[:other]}:
        return False
    fits = FITTING & {one.name for one in later[:other]}
    sides = scene.sides.get(later[other].at)
    return bool(fits) and sides is not None and sides.right is not None and sides.right.head == "load"
