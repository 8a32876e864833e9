"""Batteries counted apart from their name: "the 25 kg wets (two)", and of the conversation's: "same, two of"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

DESCRIBED = frozenset({"battery.chemistry", "battery.duty", "battery.nominal"})
RATED = frozenset({"AH", "CCA", "CA", "RC", "WEIGHT", "GROUP"})
ONE_BY_ONE = frozenset({"each", "either", "every"})
JOINED = frozenset(
    {
        *("wired", "joined", "linked", "strung", "coupled", "hooked", "paralleled", "connected", "bridged", "married"),
        *("series", "parallel"),
    }
)
NEW_ONES = frozenset({"new", "brand", "identical", "equal", "alike", "same", "matching", "fresh"})
SHARES = frozenset({"half", "one", "either", "neither"})
PAIR_AFTER = 3  # pieces from "24.2" to the pair of "24.2 on the pair"
ONES_WITHIN, LAID_WITHIN = 3, 10  # words
LEADS = frozenset({"leads", "leaden", "lead"})
KILOS = frozenset({"kilos", "kilo", "kg", "kgs", "weigh", "weight", "lighter", "heavier"})
BOATS = frozenset({"hull", "boat", "barge", "yacht", "launch", "tender", "vessel", "craft", "cruiser", "dinghy", "rib"})
A_BOAT = frozenset({("to", "a"), ("to", "each"), ("to", "every"), ("on", "each"), ("for", "each")})
FIGURES = frozenset({"VOLT", "AH", "CCA", "CA", "RC", "GROUP", "WH", "WEIGHT"})


def bracketed(scene: Scene, item: Item) -> bool:
    """Whether the number stands in brackets behind batteries: "the 25 kg wets (two)", "gel batteries (4)"; where other
    brackets hold numbers too, they are a list's."""
    near = scene.items[max(0, item.at - 2) : item.at + 2]
    if item.at < 2 or len(near) < 4 or near[1].name != "(" or near[3].name != ")":
        return False
    others = (other for other in scene.quantities("NUM", "COUNT") if other is not item)
    listed = any(scene.word(other.start - 1) == "(" and scene.word(other.end) == ")" for other in others)
    return not listed and (near[0].head == "battery" or near[0].fact in DESCRIBED or near[0].dim in FIGURES)


def so_many_of(scene: Scene, item: Item) -> bool:
    """Whether there are so many of the battery of the conversation: "same, two of", "two of the same, parallel"."""
    if not any(fact.fact.startswith("battery.") for fact in scene.said) or scene.heads - {"battery"}:
        return False
    of, follows = scene.word(item.end), [scene.word(item.end + 1), scene.word(item.end + 2)]
    if of not in ("of", "off"):
        return False
    ends = not follows[0][:1].isalnum()
    return ends or (of == "of" and ("same" in follows[:1] or follows == ["the", "same"]))


def so_many_off(scene: Scene, item: Item) -> bool:
    """Whether it is a workshop's "six off at 38 kg", "4 off, 100 Ah": so many of one kind."""
    if scene.word(item.end) != "off":
        return False
    at = item.end + 1 + (scene.word(item.end + 1) in ("at", "of", ","))
    return at < len(scene.tokens) and scene.at_word[at].dim in RATED


def of_each_one(scene: Scene, item: Item) -> bool:
    """Whether it is the volts of one of several: "can each twelve have its own charger", "either 6"."""
    if scene.word(item.start - 1) not in ONE_BY_ONE or item.quantity.value not in (6.0, 12.0):
        return False
    after = scene.after(item)
    return after is None or after.kind == "mark" or (after.kind == "word" and not after.name.endswith("s"))


def joined_pair(scene: Scene, item: Item) -> bool:
    """Whether a pair is of batteries by what was done to it: "a pair wired for 24", "one of the pair, in parallel"."""
    if item.kind != "count" or not item.name.endswith("pair") or scene.word(item.end) == "of":
        return False
    if scene.word(item.end) in JOINED or [scene.word(item.end), scene.word(item.end + 1)] == ["in", "parallel"]:
        return True
    shared = scene.word(item.start - 2) == "of" and scene.word(item.start - 3) in SHARES
    told = "bank.layout" in scene.facts and bool(scene.facts & DESCRIBED)
    return shared and told and "load" not in scene.heads


def so_many_ones(scene: Scene, item: Item) -> bool:
    """Whether unnamed ones are joined: "the two square ones under the bunk are in series"."""
    ahead = [scene.word(at) for at in range(item.end, item.end + ONES_WITHIN)]
    if "ones" not in ahead or scene.heads & {"load", "panel"}:
        return False
    laid = (other for other in scene.items[item.at + 1 :] if other.fact == "bank.layout")
    first = next(laid, None)
    return first is not None and first.start - item.end <= LAID_WITHIN


def so_many_a_boat(scene: Scene, item: Item) -> bool:
    """Whether each boat of several has so many: "28 kg each, two per hull", "there are 2 to each boat"."""
    ahead = [scene.word(at) for at in range(item.end, item.end + 3)]
    each = ahead[0] in ("per", "a") or (ahead[0], ahead[1]) in A_BOAT
    of_battery = "battery" in scene.facts | scene.heads or bool(scene.facts & DESCRIBED)
    return each and bool(BOATS & set(ahead[1:])) and of_battery


def so_many_new(scene: Scene, item: Item) -> bool:
    """Whether so many new ones are spoken of where batteries were: "and two brand new ones?"."""
    if not any(fact.fact.startswith("battery.") for fact in scene.said) or scene.heads - {"battery"}:
        return False
    ahead = [scene.word(at) for at in range(item.end, item.end + ONES_WITHIN + 1)]
    named = next((at for at, word in enumerate(ahead) if word in ("ones", "batteries")), 0)
    return "new" in ahead[:named] and set(ahead[:named]) <= NEW_ONES


def so_many_at(scene: Scene, item: Item) -> bool:
    """Whether they go by their kilos: "the old lead was two at 33 kg", "two leads of 30 apiece", of kilos."""
    at = item.end + (scene.word(item.end) in LEADS)
    if scene.word(at) not in ("at", "of") or at + 1 >= len(scene.at_word):
        return False
    figure = scene.at_word[at + 1]
    if figure.dim == "WEIGHT":
        return "battery" in scene.facts | scene.heads or at > item.end
    bare = figure.dim == "NUM" and bool(KILOS & scene.vocabulary)
    return bare and at > item.end and scene.word(figure.end) in ("each", "apiece")


def read_on_pair(scene: Scene, item: Item) -> bool:
    """Whether volts are read on the pair: "24.2 on the pair this morning", "25.1 across our pair"."""
    if not item.name.endswith("pair") or scene.word(item.start - 1) not in ("the", "my", "our", "a"):
        return False
    if scene.word(item.start - 2) not in ("on", "across", "over") or item.at < PAIR_AFTER:
        return False
    read = scene.items[item.at - PAIR_AFTER]
    return read.dim in ("VOLT", "NUM") and not isinstance(read.quantity.value, str) and read.quantity.value % 1 != 0


APART_FROM_NAME = (
    read_on_pair,
    so_many_at,
    bracketed,
    so_many_of,
    so_many_off,
    joined_pair,
    so_many_ones,
    so_many_new,
    so_many_a_boat,
)
