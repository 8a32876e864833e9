"""Kinds that a charger's switch offers, and the one it stands on or is made for: neither is what the battery is."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of

OFFERS = frozenset({"has", "have", "offers", "choices", "options", "between", "another", "marked", "labelled"})
OWNERS = frozenset({"we", "i", "ive", "weve", "you", "boat", "she"})  # "we have AGM" is a battery
SWITCHES = frozenset({"switch", "selector", "button", "settings", "positions", "modes"})
DIALS = frozenset({"menu", "wheel", "dial", "knob", "lamps", "words", "lights", "pointer", "lever"})
REGULATORS = frozenset({"regulator", "controller"})  # of a panel: a charger too
STANDS = frozenset(
    {
        *("left", "stands", "stood", "sits", "sat", "set", "stuck", "turned", "glows", "points", "had", "put"),
        *("keep", "rests", "being", "is", "pointing", "parked", "wound", "jammed", "standing", "sitting", "resting"),
    }
)
REMAINS = frozenset({"remains", "remained", "stays", "stayed", "still"})  # "the charger, which remains on WET"
SPEAKS = frozenset({"speaks", "understands", "knows"})  # "the box on the wall only speaks wet and gel"
STANDS_AT = 4  # words
MARKED = frozenset({"says", "reads", "marked", "labelled", "labeled", "stamped", "printed", "branded", "badged"})
STAMPED = MARKED - {"says", "reads"}
MARKED_AFTER = 4  # words from a charger to what it is marked with
OFFERED_AS = SWITCHES | {"options", "choices", "setting", "buttons", "programmes", "programs", "profiles", "curves"}
OFFERED_AS |= DIALS
GIVES = frozenset(
    {"does", "do", "has", "offers", "gives", "only", "just", "with", "between", "allows", "reads", "shows"}
)
KNOWS = frozenset({"know", "knows", "understands", "speaks", "recognises", "recognizes"})
JOINERS = frozenset({"/", ",", "or", "and", "&", "+"})
MOST_PLACES = 9  # numbered places of a switch
USED = frozenset({"on", "use", "using", "used", "uses", "chose", "chosen", "picked"})
AHEAD, BEHIND = 8, 4  # pieces before and after a list in which it is said what offers it
CHARGE_VOLTS = (13.0, 16.0)
CHARGES = ("charger.current",)  # what the charger asked about last goes by
IT = frozenset({"it", "its", "that", "thats", "which"})
SAYS = frozenset({"says", "reads", "shows", "said"})
AT = frozenset({"in", "on", "at"})
IT_STANDS = frozenset({"is", "stands", "sits", "was", "points", "still", "stuck", "s"})
BACK = 4  # words
LABELLED = frozenset({"battery", "batteries", "lid", "label", "sticker", "case"})
ALTERNATIVES = frozenset({"/", "or", "and", "&", "+"})
CHARGER = r"\b(?:the|my|our|his|her|their|your|old) (?:\w+ ){0,2}charger\b"
MADE_FOR = regex(
    rf"{CHARGER}[^.?!;]{{0,32}}?,? (?:made|meant|built|intended|designed|sold|bought|set|marked"
    rf"|labelled) (?:for|as) ['\"‘“]?$",
    re.IGNORECASE,
)
ONE_FOR = regex(rf"{CHARGER} is (?:an? )?(?:[\w.]+ ){{0,4}}?(?:one|unit|model|type) (?:only )?for $", re.IGNORECASE)
IS_FOR = regex(rf"{CHARGER} is (?:only |just )?for $", re.IGNORECASE)  # beside a battery of another kind
HAD_FOR = regex(  # "he lent me a charger for wet cells", beside a battery of another kind
    r"\b(?:have|has|had|got|gave|given|borrow\w*|lent|own|found|bought|using|use|with|old|spare) (?:me |us |you )?"
    r"(?:the|my|our|his|her|their|an?|this) (?:(?!lithium|lifepo4|lfp|agm|gel|wet)\w+ ){0,2}charger "
    r"(?:that is |that's |only )?for (?:(?:the|old|normal|plain|ordinary|an?) )*$",
    re.IGNORECASE,
)
ALSO = regex(r"^(?: (?:batter\w+|cells?))?,? ?(?:and|or|&|/|\+|plus)\b", re.IGNORECASE)  # then it is for both
ONLY_KNOWS = regex(
    r"\bcharger (?:only|just) (?:knows|does|has|speaks|understands|offers|takes)(?: the)? ['\"‘“]?$", re.IGNORECASE
)
ONE_SETTING = regex(  # "it has a single programme, marked 'wet'"
    r"\b(?:an? single|only one|just one|one|an? sole|the only|its only|no more than one) (?:fixed |charging )?"
    r"(?:programme?|setting|mode|profile|position|curve)\b,? ?(?:is |for |and (?:that|it) is |that is |which is )?"
    r"(?:marked |labell?ed |called |named |for |made for )?(?:as )?['\"‘“]?$",
    re.IGNORECASE,
)
ASKS_BEFORE = regex(
    r"(?:\b(?:is|would|will|does|can|could|should|may) (?:i |we )?(?:(?:use|take|choose|pick|set it to|try) )?"
    r"|[.?!;,] )(?:the |its )?['\"‘“]?$",
    re.IGNORECASE,
)
ASKS_AFTER = regex(  # "is AGM alright?", after the kinds that the switch offers
    r"['\"’”]?(?: (?:one|setting|mode|position|programme?))? (?:do|work|serve"
    r"|(?:be )?(?:al+ ?right|ok|okay|fine|safe|good|suitable|(?:near|close) enough))\b",
    re.IGNORECASE,
)
ON_QUOTED = regex(rf"{CHARGER}[^.?!;]{{0,32}}?,? (?:on|at|says|marked|reads) ['\"‘“]$", re.IGNORECASE)
ON_ASIDE = regex(rf"{CHARGER} (?:is|was)[^.?!;,]{{3,28}}, (?:still )?on $", re.IGNORECASE)


def on_the_switch(scene: Scene) -> set[int]:
    """Kinds that a charger offers, where the battery's own is told besides: "it only has gel or wet, mine is AGM"."""
    kinds = [item for item in scene.items if item.fact == "battery.chemistry"]
    with_volts = [item for item in kinds if _has_volts(scene, item)]
    if len(with_volts) > 1:  # "settings AGM 14.4, gel 14.1, wet 14.8"
        return {item.at for item in with_volts}
    spoken = (
        "charger" in scene.heads
        or bool((REGULATORS | DIALS) & scene.vocabulary)
        or scene.about("word:setting", "role:charger.setting")
        or scene.likely[:1] == CHARGES
        or bool(SPEAKS & scene.vocabulary)
    )
    offered = {item.at for item in kinds if spoken and _is_offered(scene, item)}
    offered |= _before_switch(scene, kinds)
    if "charger" in scene.heads and any(scene.word(item.start - 1) == "got" for item in kinds):
        offered |= {item.at for item in kinds if {"got", "or"} & {scene.word(item.start - 1)}}
    if spoken and (lists := [run for run in _lists(scene, kinds) if _is_offer(scene, run)]):
        offered = {item.at for run in lists for item in run}
    offered |= {item.at for run in _lists(scene, kinds) if _is_known(scene, run) for item in run}
    several = len({item.name for item in kinds if item.at in offered}) > 1
    told = len(offered) < len(kinds) or any(old.fact == "battery.chemistry" for old in scene.said)
    return offered if several and told else set()


def stands_on(scene: Scene, item: Item, offered: set[int]) -> bool:
    """Whether a kind is the one that the switch stands on, of those it offers: "wet or AGM, I've had it on AGM"."""
    if item.at in offered:
        return False
    told = _left_at(scene, item, bool(offered)) or _marked(scene, item) or _stamped(scene, item)
    if told or its_switch(scene, item):
        return True
    if item.name not in {scene.items[at].name for at in offered}:
        return False
    before = [scene.word(item.start - back) for back in (1, 2)]
    after = scene.after(item)
    used = before[1] if before[0] in ("the", "its", "their") else before[0]
    return (used in USED or _is_asked_of(scene, item)) and (after is None or after.head != "battery")


def _is_asked_of(scene: Scene, item: Item) -> bool:
    """Whether one of the kinds that are offered is asked of after them: "is AGM alright", "would gel do"."""
    after = ASKS_AFTER.match(scene.text, scene.span(item.start, item.end)[1])
    return after is not None and ASKS_BEFORE.search(ahead_of(scene, item)) is not None


def _left_at(scene: Scene, item: Item, offered: bool) -> bool:
    """Whether the switch was left there: "my nephew left it at WET", "the selector sits at gel"."""
    if scene.word(item.start - 1) not in ("at", "on", "to"):
        return False
    other = scene.items[item.at - 2] if item.at > 1 else item
    # "should I switch from AGM to gel" is of the battery
    swapped = scene.word(other.start - 1) == "from" and "charger" not in scene.heads
    if other.fact == item.fact and other.name != item.name and SWITCHES & scene.vocabulary and not swapped:
        return True  # "got the gel on AGM since the switch is stuck"
    before = [scene.word(at) for at in range(item.start - 1 - STANDS_AT, item.start - 1)]
    after = scene.after(item)
    if REMAINS & set(before[-2:]) and any(0 < item.start - head.end <= MARKED_AFTER for head in _chargers(scene)):
        return after is None or after.kind == "mark" or after.name in ("and", "but", "setting", "mode")
    named = bool((DIALS | SWITCHES) & set(before)) or offered
    return named and bool(STANDS & set(before)) and (after is None or after.head != "battery")


def _chargers(scene: Scene) -> list[Item]:
    return [head for head in scene.head_items if head.head == "charger"]


def _marked(scene: Scene, item: Item) -> bool:
    """Whether a charger is marked with the kind: "her old charger, which says AGM on its face"."""
    if scene.word(item.start - 1) not in MARKED:
        return False
    after = scene.after(item)
    if after is not None and (after.name in JOINERS - {","} or after.head == "battery"):
        return False  # "my charger says gel or AGM" offers both
    return any(head.head == "charger" and 0 < item.start - head.end <= MARKED_AFTER for head in scene.head_items)


def _stamped(scene: Scene, item: Item) -> bool:
    """Whether the kind is stamped on a charger: "WET ONLY stamped across her charger", "AGM printed on the charger"."""
    at = item.end + (scene.word(item.end) in ("only", "is", "badge", "sticker", "label"))
    if scene.word(at) not in STAMPED:
        return False
    on_it = scene.word(at + 1) in ("on", "across", "upon") and scene.word(at + 2) in ("it", "its")
    return any(
        head.head == "charger"
        and (0 < head.start - at <= MARKED_AFTER or (on_it and 0 < item.start - head.end <= MARKED_AFTER))
        for head in scene.head_items
    )


def _lists(scene: Scene, kinds: list[Item]) -> Iterator[list[Item]]:
    """Runs of two kinds and more with nothing but joiners between."""
    run = kinds[:1]
    for first, second in pairwise(kinds):
        if all(other.name in JOINERS or _is_place(other) for other in scene.items[first.at + 1 : second.at]):
            run.append(second)
            continue
        yield run
        run = [second]
    yield run


def _is_place(item: Item) -> bool:
    """Whether it numbers a place of a switch: "1 gel, 2 AGM, 3 wet"."""
    value = item.quantity.value if item.dim in ("NUM", "COUNT") else ""
    return not isinstance(value, str) and 1 <= value <= MOST_PLACES and value % 1 == 0


def _is_known(scene: Scene, run: list[Item]) -> bool:
    """Whether something knows these kinds and no other: "the machine knows only WET and AGM. Mine is gel."."""
    if len({item.name for item in run}) < 2:
        return False
    return bool(KNOWS & {scene.word(at) for other in _ahead(scene, run[0]) for at in range(other.start, other.end)})


def _is_offer(scene: Scene, run: list[Item]) -> bool:
    """Whether a list is what a charger can be set to: "settings are wet and AGM", "my charger just does AGM or wet"."""
    if len({item.name for item in run}) < 2:
        return False
    before, after = _ahead(scene, run[0]), _behind(scene, run[-1])
    if any(other.head == "battery" for other in after[:1]):  # "charger for AGM and gel batteries"
        return False
    charger = any(other.head == "charger" or other.name in REGULATORS for other in before)
    words = {scene.word(at) for other in (*before, *after) for at in range(other.start, other.end)}
    return bool((OFFERED_AS | SPEAKS) & words) or (charger and bool(GIVES & words))


def _ahead(scene: Scene, item: Item) -> list[Item]:
    """The pieces before it in its sentence."""
    near = scene.items[max(0, item.at - AHEAD) : item.at]
    begins = [place for place, other in enumerate(near, start=1) if other.name == "end"]
    return near[begins[-1] :] if begins else near


def _behind(scene: Scene, item: Item) -> list[Item]:
    """The pieces after it in its sentence."""
    near = scene.items[item.at + 1 : item.at + 1 + BEHIND]
    ends = [place for place, other in enumerate(near) if other.name == "end"]
    return near[: ends[0]] if ends else near


def _has_volts(scene: Scene, item: Item) -> bool:
    """Whether the volts of a charge follow a kind at once: "gel 14.1"."""
    after = scene.after(item)
    if after is None or after.dim not in ("NUM", "VOLT") or isinstance(after.quantity.value, str):
        return False
    value = after.quantity.value
    return CHARGE_VOLTS[0] <= value / (2 if value > 20 else 1) <= CHARGE_VOLTS[1]


def _before_switch(scene: Scene, kinds: list[Item]) -> set[int]:
    """The two kinds of "a wet or AGM switch"."""
    for first, second in pairwise(kinds):
        if (
            scene.word(second.end) in SWITCHES
            and second.at - first.at == 2
            and scene.word(first.end) in ("or", "/", "and")
        ):
            return {first.at, second.at}
    return set()


def _is_offered(scene: Scene, item: Item) -> bool:
    """Whether a charger's switch has the kind: "it has gel and wet", "one says GEL"."""
    before = [scene.word(item.start - back) for back in (1, 2, 3, 4, 5)]
    offers = any(word in OFFERS and owner not in OWNERS for word, owner in pairwise(before))
    return offers or before[:2] == ["says", "one"]


def its_switch(scene: Scene, item: Item) -> bool:
    """Whether "it" is a charger, and the kind what its switch says or stands on."""
    after = scene.after(item)
    if after is not None and (after.name in ALTERNATIVES or after.head == "battery"):
        return False
    if scene.word(item.end) == "on" and LABELLED & {scene.word(at) for at in range(item.end, item.end + BACK)}:
        return False  # "it says AGM on the battery"
    last, before = scene.word(item.start - 1), [scene.word(item.start - back) for back in range(2, BACK + 1)]
    if last in SAYS:
        return before[0] in IT and _of_charger(scene, item)
    at = last in AT and (before[0] in IT or (before[0] in IT_STANDS and bool(IT & set(before))))
    return at and (_of_charger(scene, item) or _of_that_charger(scene, item))


def _of_charger(scene: Scene, item: Item) -> bool:
    """Whether a charger was named last before it."""
    heads = [head.head for head in scene.head_items if head.end <= item.start and head.head != "meter"]
    return heads[-1:] == ["charger"]


def _of_that_charger(scene: Scene, item: Item) -> bool:
    """Whether a charger was told of before, and a battery of another kind."""
    charged = any(old.fact.startswith("charger.") for old in scene.said)
    others = any(old.fact == "battery.chemistry" and old.value != item.name for old in scene.said)
    return charged and others and not scene.heads - {"charger"}


def of_its_kind(scene: Scene, item: Item) -> bool:
    """Whether a kind of battery is what the charger that they have is made for, or is set to."""
    if "charger" not in scene.heads:
        return False
    before = ahead_of(scene, item)
    others = scene.names_of(item.fact) - {item.name}
    if IS_FOR.search(before) and others:
        return True
    if HAD_FOR.search(before) and others:
        return ALSO.match(scene.text[scene.span(item.start, item.end)[1] :]) is None
    return any(words.search(before) for words in (MADE_FOR, ONE_FOR, ON_QUOTED, ON_ASIDE, ONLY_KNOWS, ONE_SETTING))
