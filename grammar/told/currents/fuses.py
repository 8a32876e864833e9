"""Which bare numbers are the amps of a fuse."""

from __future__ import annotations

import re

from grammar.scene.claims import NOTHING, Claim, asked
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of

FUSES = frozenset({*range(30, 101, 10), *range(125, 226, 25), 250, 300, 350, 400, 500})  # usual sizes, in amps
SMALL_FUSES = frozenset({5.0, 7.5, 10.0, 15.0, 20.0, 25.0})
SMALLEST_FUSE = 30
FOLLOWING = 60  # characters after amps that can tell of their fuse
SAYING = frozenset({"say", "says", "said", "reckon", "reckons", "think", "thinks", "thought", "want", "wants"})
SAYERS = frozenset({"i", "he", "she", "we", "they", "mate", "yard", "dealer", "owner", "other", "colleague", "boss"})
RATINGS = FUSES | {35, 45, 110, 450, 600}  # others that are sold
AMPS_OF = frozenset({"load.current", "load.model", "load.power"})
ALONE = frozenset(  # beside a rating that is only put in place of the one judged
    {
        *("instead", "then", "and", "or", "so", "what", "whats", "how", "about", "a", "an", "the", "amp", "amps"),
        *("ok", "okay"),
    }
    | {"now", "fine", "good", "right", "better", "next", "size", "up", "one", "well", "maybe", "just", "rather", "try"}
)
FITS = frozenset(
    {"put", "puts", "fit", "fits", "fitted", "used", "use", "swapped", "upped", "stuck", "gone", "went", "try"}
)
PUT_IN = FITS - {"gone", "went", "try"} | {"installed", "wired", "left"}
GO = frozenset({"go", "going", "gone", "went", "up", "step", "upsize", "change", "move"})  # "go 400?", "go up to 350"
AFTER_IT = frozenset(
    {"", ".", ",", "?", ";", "one", "in", "instead", "now", "there", "fuse", "breaker", "is", "and", "on", "ok"}
)
WAS_THERE = regex(  # "a 500 A in place of the 350 A", "replaced the 350 A by a 500 A"
    r"\b(?:in (?:the )?place of|instead of|rather than|(?:replac|swapp|chang)\w+)\W+"
    r"(?:(?:the|a|an|my|our|his|her|its|their|old|original|blown|proper|correct|right)\W+)*$",
    re.IGNORECASE,
)
HAD = regex(r"\b(?:there (?:was|used to be)|had)\W+(?:an?|the)\W+$", re.IGNORECASE)
WHERE = regex(r"\bwhere (?:there was )?(?:(?:the|an?|my|our|his|its|old|original)\W+)*$", re.IGNORECASE)
USED_TO_BE = regex(
    r"\W*(?:amps?\b|a\b)?\W*(?:fuse |breaker |one )?(?:was|used to|sat|had been|stood|lived|before|once)", re.I
)
PUT = regex(
    r"\b(?:for|with|by|to|put|fit\w*|has|have|got|now|is|us\w+)\W+(?:in\W+)?(?:(?:an?|the|now)\W+)*$", re.IGNORECASE
)
SAID_OF_FUSE = regex(  # "the breaker he wants is 200", "fuse in there says 250"
    r"\b(?:fuse|breaker)(?: that| which)?(?: in there| there| here| aboard| in place"
    r"| (?:of|for|on|in) (?:it|this|that|(?:the|my|our|its|this|that) \w+(?: (?:cable|lead|wire|side|line))?))?"
    r"(?: (?:i|we|he|she|they|the \w+|my \w+|your \w+)(?:'s| has| have| had)?"
    r" (?:wants?|says?|said|wanted|fitted|put in|got|likes?|sold me|recommends?|specifies))?"
    r" (?:is|was|says|reads|of|sits|stands|is sitting)(?: at)?(?: an?| only| just)? $",
    re.IGNORECASE,
)
FOR_LOAD = regex(  # "would a 250 fuse suit 180 amps"
    r"\b(?:fuse|breaker) (?:suits?|serves?|covers?|protects?|(?:be )?(?:ok|okay|right|fine|good|enough)(?: enough)? for"
    r"|handles?|carr(?:y|ies)|takes?|stands?|do(?:es)? for)(?: an?| the| my)? $",
    re.IGNORECASE,
)
TOO_SMALL = 0.5  # of the load: nobody means such a fuse
LEADS_ON = frozenset({"how", "what", "which", "no", "so", "parallel", "series", "a", "an", "one", "two", "under"})
SHOPS = frozenset({"shop", "chandlery", "chandlers", "catalogue", "store", "window", "sale", "sales"})
OF_FUSE = (["of"], ["of", "a"], [",", "its"], ["its"], ["is"], ["says"])


def fuse(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that a bare number near a fuse states."""
    if value < SMALLEST_FUSE:
        return None
    if value in FUSES and (claim := in_place(scene, item)):
        return claim
    if _is_opinion(scene, item, value) or stands_in(scene, item, value) or put_in(scene, item, value):
        return Claim("fuse.rating", "role")
    alone = scene.word(item.start - 1) in ("its", "is") and scene.heads == {"fuse"} and value in FUSES
    if alone and (after := scene.after(item)) is not None and after.kind != "mark":
        alone = False
    if alone:
        return Claim("fuse.rating", "role")
    return Claim("fuse.rating", "role") if _is_fuse(scene, item, value) else _beside_fuse(scene, item)


def in_place(scene: Scene, item: Item) -> Claim | None:
    """The fuse or the load that is there, and the one that it took the place of, which counts no more."""
    if was_there(scene, item) or gave_way(scene, item):
        return NOTHING
    value, before = item.quantity.value, ahead_of(scene, item)
    if value in FUSES | SMALL_FUSES and SAID_OF_FUSE.search(before):
        return Claim("fuse.rating", "role")
    if item.dim == "AMP" and FOR_LOAD.search(before):
        return Claim("load.current", "role")
    if took_its_place(scene, item):
        return Claim("fuse.rating", "role")
    if scene.word(item.end) not in ("one", "", ".", ",", "?") or "load" not in scene.heads:
        return None
    loads = any(gave_way(scene, other) for other in scene.quantities("AMP") if other is not item)
    return Claim("load.current", "role") if loads else None


def _is_opinion(scene: Scene, item: Item, value: float) -> bool:
    """Whether somebody says another fuse than the one named before: "a 200 A fuse is right, I say 250"."""
    said = scene.word(item.start - 1) in SAYING and scene.word(item.start - 2) in SAYERS
    named = any(other.dim == "AMP" and scene.word(other.end) in ("fuse", "breaker") for other in scene.items[: item.at])
    return said and named and value in FUSES


def stands_in(scene: Scene, item: Item, value: float) -> bool:
    """Whether amps are a fuse's that is there, in a talk of fuses whose load is known: "he has a 300 A in place",
    "they've put in 500"."""
    told = any(old.fact in ("load.current", "load.model") for old in scene.said)
    article = scene.word(item.start - 1) in ("a", "an", "the", "that", "this") and scene.word(item.start - 2) != "on"
    ours = scene.likely[:1] == ("fuse.rating",) and not {"load", "charger", "battery"} & scene.heads
    before = scene.word(item.start - 1)
    fitted = before in PUT_IN or (before == "in" and scene.word(item.start - 2) in PUT_IN)
    article = article or (fitted and scene.word(item.end) in AFTER_IT)
    return told and article and ours and value in FUSES and not is_too_small(scene, value)


def another(scene: Scene, item: Item, value: float) -> bool:
    """Whether amps that stand alone after a fuse was judged are those of another one: "350 instead", "and a 300 A?"."""
    told = {old.fact for old in scene.said}
    if is_too_small(scene, value):
        return False
    judged = scene.likely[:1] == ("fuse.rating",) and "fuse.rating" in told and not AMPS_OF.isdisjoint(told)
    if not judged or value not in RATINGS or len(scene.measured) != 1 or AMPS_OF & scene.expected:
        return False
    beside = (token.word for at, token in enumerate(scene.tokens) if not item.start <= at < item.end)
    return all(word in ALONE or not word.isalnum() for word in beside)


def is_too_small(scene: Scene, value: float) -> bool:
    """Whether no fuse can be meant: "make that 70 instead" of a 95 mm2 cable for 280 A."""
    running = next((old.value for old in scene.said if old.fact == "load.current"), 0.0)
    return not isinstance(running, str) and value < TOO_SMALL * running


def was_there(scene: Scene, item: Item) -> bool:
    """Whether amps are those of the fuse that another one took the place of: no load, and none that is fitted now."""
    follows = scene.after(item)
    if not (scene.blown or "fuse" in scene.heads) or (follows is not None and follows.head not in ("", "fuse")):
        return False
    first, last = scene.span(item.start, item.end)
    before, after = scene.ahead(first), scene.text[last : last + FOLLOWING]
    if HAD.search(before) and "now" in scene.vocabulary:
        return True
    return bool(WAS_THERE.search(before) or (WHERE.search(before) and USED_TO_BE.match(after)))


def gave_way(scene: Scene, item: Item) -> bool:
    """Whether amps are those of a load that gives way to another: "swapped the 260 A thruster for a 340 A one"."""
    follows = scene.after(item)
    if follows is None or follows.head != "load" or not WAS_THERE.search(ahead_of(scene, item)):
        return False
    named = any(found.kind == "model" for found in scene.items)
    return named or any(other.dim == "AMP" and other is not item for other in scene.measured)


def took_its_place(scene: Scene, item: Item) -> bool:
    """Whether amps are those of the fuse that is there now, where another one was: the 500 A in place of the 350 A."""
    if not PUT.search(ahead_of(scene, item)):
        return False
    others = (other for other in scene.measured if other is not item and other.dim in ("AMP", "NUM"))
    return any(was_there(scene, other) for other in others)


def put_in(scene: Scene, item: Item, value: float) -> bool:
    """Whether amps are those of another fuse after one that blew: "so I fitted a 250 A one", "put a 400 A in"."""
    if value not in FUSES or not scene.blown or "fuse" not in scene.heads:
        return False
    before = [scene.word(at) for at in range(item.start - 4, item.start)]
    if before[-1] in GO or (before[-1] == "to" and not GO.isdisjoint(before[1:3])):
        return scene.word(item.end) in AFTER_IT
    if not FITS.intersection(before) or before[-1] not in ("a", "an", "the", "in"):
        return False
    return scene.word(item.end) in AFTER_IT


def _beside_fuse(scene: Scene, item: Item) -> Claim | None:
    """ "Fuse for 340" is a fuse for the load's amps; "a fuse of 160", "my fuse, its 250" are its own."""
    named = [head for head in scene.head_items if head.head == "fuse" and head.end <= item.start]
    between = [scene.word(at) for at in range(named[-1].end, item.start)] if named else []
    if between == ["for"]:
        return Claim("load.current", "role")
    return Claim("fuse.rating", "role") if between in OF_FUSE and not asked(scene, named[-1]) else None


def _on_a_cable(scene: Scene, item: Item) -> bool:
    """Whether it sits on a cable: "left a 400 on 70 mm2", "there's a 250 on my 2/0"."""
    at = item.end + 2 if scene.word(item.end + 1) in ("the", "my", "our", "his", "this", "a") else item.end + 1
    return scene.word(item.end) == "on" and at < len(scene.at_word) and scene.at_word[at].dim in ("AREA", "GAUGE")


def _is_fuse(scene: Scene, item: Item, value: float) -> bool:
    """ "Put a 300 in", "keeps blowing the 250": a usual size of fuse with an article, of which a fuse is spoken."""
    after = scene.after(item)
    one_of = [scene.word(item.start - 2), scene.word(item.start - 1)] == ["one", "of"]
    if not (one_of or scene.word(item.start - 1) in ("a", "an", "the")) or value < SMALLEST_FUSE:
        return False
    if after is not None and after.head in ("load", "charger", "battery"):
        return False
    if value in FUSES and _on_a_cable(scene, item) and (scene.quantities("AMP") or "load" in scene.heads):
        return True
    if "fuse" in scene.heads or scene.blown:
        return True
    put = {"put", "fit", "fitted", "used", "swapped"} & {scene.word(item.start - 2), scene.word(item.start - 3)}
    fuses_only = "battery" not in scene.heads | scene.facts and any(old.fact.startswith("load.") for old in scene.said)
    if scene.word(item.end) == "in" and put and value in FUSES and fuses_only:
        return True
    there = [scene.word(at) for at in range(item.start - 5, item.start)]
    if there[:3] == ["one", "in", "there"] and value in FUSES and fuses_only:
        return True
    in_it = scene.word(item.end) == "in" and scene.word(item.end + 1) not in LEADS_ON  # "empties an 80 in how long"
    in_it = in_it and not SHOPS & {scene.word(item.end + 2), scene.word(item.end + 3)}  # "there's a 40 in the shop"
    fitted = (in_it or scene.word(item.end) == "instead") and value in FUSES
    return fitted and bool({"load", "cable"} & scene.heads) and "battery" not in scene.heads
