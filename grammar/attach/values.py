"""The facts that words state: kinds, duties, layouts, models, yes and no."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from grammar.attach.denials import is_asked_of, is_denied, is_unsure, is_wanted, one_before_or
from grammar.attach.flags import charges, flag, is_switched
from grammar.attach.kinds import LIST, is_deep_cycle, is_no_kind, is_wire, only_looks_so
from grammar.facts import facts
from grammar.reading import Stated, Value
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.batteries.passed_over import is_passed_over
from grammar.told.chargers.switch import on_the_switch
from grammar.told.refused import avoided, moved_out, named_again, refused_after

WEIGHED = regex(r"\b(?:or|vs|versus|than)\b|[/?]")
OPEN_CHOICE = frozenset(
    {"bank.layout", "charger.isolated", "battery.duty", "reading.state"}
)  # "series or parallel?" states neither
PAUSES = frozenset({",", ".", "..."})  # after the "er" of somebody who hesitates
DID = frozenset({"did", "does", "do", "could", "can", "was", "would", "used", "took", "takes", "managed"})
LEADS_ON = 2  # pieces from a list to the place of a switch that begins it, over a stroke
POSITIONS = frozenset(
    {"user", "custom", "supply", "program", "std", "standard", "normal", "stnd"}
)  # of a charger's switch, beside kinds of battery
THRUSTS = regex(r"\bthrust(?:ers?|ing)?\b", re.IGNORECASE)  # "while thrusting" names the load
OWN_MAKE = regex(r"home|self|diy", re.IGNORECASE)  # a pack whose cells are not told, unless they are named:
PHOSPHATE = regex(r"\bl(?:i|ife)? ?fe? ?p|phosphate", re.IGNORECASE)
SHARES = frozenset({"third", "thirds", "fifth", "fifths", "tenth"})
AFTER_SHARE = frozenset(
    {
        *("to", "up", "with", "on", "by", "at", "in", "and", "or", "how", "when", "using", "is", "now", "so", "but"),
        *("then", "if", "does", "will", "can", "what", "tonight", "today"),
    }
)
DUTY = "battery.duty"
SIZED = r"(?: (?:old|own|present|current|existing|\d{2,3} ?(?:ah|amp[- ]?hours?)))*"
OURS = regex(rf"\b(?:my|our|(?:mine|ours)(?:['’]?s| is| are)(?: an?)?){SIZED} $", re.IGNORECASE)
AGAINST = regex(r"\b(?:or|vs|versus|than|instead of|rather than|in place of)\b")
FAR = 60  # characters from one kind to the one that it is held against
GENERIC = {"battery.chemistry": "lead"}  # "sealed AGM" is AGM


@dataclass(frozen=True, slots=True)
class Words:
    """The facts stated by words, and those denied."""

    stated: tuple[Stated, ...]
    denied: tuple[Stated, ...]


def words_of(scene: Scene) -> Words:
    """What the value words and model names of a message state, each value once, and what they deny."""
    offered = on_the_switch(scene)
    listed = _listed(scene, offered)
    stated: list[Stated] = []
    denied: list[Stated] = []
    doubted: set[int] = set()
    for item in scene.items:
        if item.kind not in ("value", "model") or item.at in listed:
            continue
        fact, value = _meaning(scene, item, offered)
        refused = refused_after(scene, item) or is_passed_over(scene, item)
        turned = isinstance(value, bool) and (refused or avoided(scene, item))
        if turned:  # "engine room: no", "it does not pass through the engine room"
            value, refused = not value, False
        other = one_before_or(scene, item)
        if is_unsure(scene, item) or (other is not None and other.at in doubted):
            doubted.add(item.at)
            continue
        only = _either(scene, item) or _counts_things(scene, item) or _as_before(scene, item)
        if not fact or is_wire(scene, item) or only:
            continue
        if (isinstance(value, bool) and is_asked_of(scene, item) and not named_again(scene, item)) or is_wanted(
            scene, item
        ):
            continue
        span = scene.span(item.start, item.end)
        found = Stated(fact, value, "", scene.text[slice(*span)], span, how="token")
        if refused or (is_denied(scene, item) and not turned):
            denied.append(found)
        elif not _stands(scene, found, stated):
            stated.append(found)
            house = scene.word(item.end) == "house" or is_deep_cycle(scene, item.end)
            if fact == "battery.chemistry" and house:  # "200 Ah AGM house", "a flooded DC"
                stated.append(Stated("battery.duty", "deep-cycle", "", found.text, span, how="token"))
    return Words(tuple(_settled(scene, [*stated, *_running_load(scene, stated)])), tuple(denied))


def _running_load(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """The load that is named in how a reading was taken: "21.0 with the thruster going"."""
    if any(item.fact in ("load.kind", "load.model") for item in stated):
        return
    for item in stated:
        named = THRUSTS.search(item.text) if item.fact == "reading.state" else None
        if named and (scene.quantities("VOLT", "NUM") or named[0].lower() == "thruster"):
            span = item.span[0] + named.start(), item.span[0] + named.end()
            yield Stated("load.kind", "thruster", "", scene.text[slice(*span)], span, how="token")
            return


def _stands(scene: Scene, found: Stated, stated: list[Stated]) -> bool:
    """Whether a value is told already; a duty is told of ours then: "starting or leisure? Mine is leisure"."""
    at = next((at for at, other in enumerate(stated) if (other.fact, other.value) == (found.fact, found.value)), None)
    if at is not None and found.fact == DUTY and _is_ours(scene, found):
        stated[at] = found
    return at is not None


def _is_ours(scene: Scene, item: Stated) -> bool:
    """Whether it is said of the battery that is there: "our deep cycle", "mine's 110 Ah leisure"."""
    return OURS.search(scene.ahead(item.span[0])) is not None


def _either(scene: Scene, item: Item) -> bool:
    """Whether it is one side of a choice: "isolated or non isolated", "isolated or not isolated"."""
    return item.fact == "charger.isolated" and (
        scene.word(item.start - 1) == "or"
        or (scene.word(item.start - 2) == "or" and scene.word(item.start - 1) == "not")
    )


def _as_before(scene: Scene, item: Item) -> bool:
    """Whether a kind is only what the new one is held against: "would they take the frost where lead did"."""
    told = any(old.fact == item.fact and old.value != item.name for old in scene.said)
    if item.fact == "bank.layout":
        return told and scene.word(item.start - 1) in ("than", "versus", "vs")  # "why is that worse than parallel"
    against = scene.word(item.start - 1) in ("where", "as", "like", "than", "what", "way")
    return told and against and scene.word(item.end) in DID


def _listed(scene: Scene, offered: set[int]) -> set[int]:
    """Kinds in a list of three and more: a charger's switch or a comparison, not what they have."""
    listed = set(offered)
    run: list[Item] = []
    for item in scene.items:
        if item.fact == "battery.chemistry":
            run.append(item)
        elif item.name not in ("/", ",", "or", "v", "vs", "and", "&", "+"):
            if len({other.name for other in run}) + (item.name in POSITIONS) + _after_position(scene, run) >= LIST:
                listed.update(other.at for other in run)
            run = []
    if len({other.name for other in run}) + _after_position(scene, run) >= LIST:
        listed.update(other.at for other in run)
    return listed


def _after_position(scene: Scene, run: list[Item]) -> bool:
    """Whether a place of a switch begins a list of kinds: "STD / AGM / GEL"."""
    if not run or run[0].at < LEADS_ON:
        return False
    return scene.items[run[0].at - 1].name == "/" and scene.items[run[0].at - LEADS_ON].name in POSITIONS


STANDS_THERE = regex(  # "the charger is in the engine room"
    r"\b(?:charger|alternator|inverter|isolator|relay|fuse box|panel|switch)s?"
    r" (?:is|are|sits?|lives?|stands?|hangs?|stays?)"
    r"(?: (?:mounted|fitted|screwed|bolted|also|both|up|down|out))* $",
    re.IGNORECASE,
)


def _runs_there(scene: Scene, item: Item) -> bool:
    """Whether a place is where a cable runs: one is spoken of, and "ER" is no "er, 2/0" of somebody who hesitates."""
    first = scene.tokens[item.start]
    hesitates = not item.start or scene.word(item.end) in PAUSES
    if scene.word(item.start) == "er" and hesitates and scene.text[first.start : first.end] != "ER":
        return False
    sized = bool(scene.quantities("LENGTH", "GAUGE", "AREA")) or "cable" in scene.heads
    if STANDS_THERE.search(scene.ahead(first.start)):
        return False
    return sized or any(fact.fact.startswith("cable.") for fact in scene.said)


def _meaning(scene: Scene, item: Item, offered: set[int]) -> tuple[str, Value]:
    if item.kind == "model":
        return "load.model", item.name
    if item.fact == "cable.in_engine_space" and (not _runs_there(scene, item) or moved_out(scene, item)):
        return "", ""
    if scene.word(item.start) == "start" and item.end == item.start + 1 and scene.word(item.start - 1) in ("at", "on"):
        return "", ""  # "240 A at start"
    if is_no_kind(scene, item):
        return "", ""
    if item.name == "smart" and item.end == item.start + 1 and not charges(scene, item):
        return "", ""
    if only_looks_so(scene, item):
        return "", ""
    kind = facts()[item.fact].kind
    if kind == "flag":
        return flag(scene, item)
    if kind == "number":
        return item.fact, float(item.name)
    if item.fact == "battery.chemistry" and is_switched(scene, item, offered):
        return "charger.setting", "flooded" if item.name == "lead" else item.name
    return item.fact, item.name


def _counts_things(scene: Scene, item: Item) -> bool:
    """Whether a share of the charge is none, as a thing follows: "from a third battery", "mine is full of jelly"."""
    after = scene.after(item)
    if item.fact == "battery.charge" and [scene.word(item.end - 1), scene.word(item.end)] == ["full", "of"]:
        return True
    if item.fact != "battery.charge" or scene.word(item.end - 1) not in SHARES or after is None or after.kind == "mark":
        return False
    return after.name not in AFTER_SHARE


def _settled(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """Without open choices ("series or parallel?") and without a general kind beside its exact one."""
    values: dict[str, list[Stated]] = {}
    for item in stated:
        values.setdefault(item.fact, []).append(item)
    ours = {item.value for item in values.get(DUTY, ()) if _is_ours(scene, item)}
    for item in stated:
        among = values[item.fact]
        if item.fact == DUTY and len(ours) == 1 and _against(scene, among):  # the other one is only weighed against it
            if item.value in ours:
                yield item
            continue
        if len(among) > 1 and item.fact in OPEN_CHOICE and _weighed(scene, among):
            continue
        if len(among) > 1 and item.value == GENERIC.get(item.fact) and (_touches(item, among) or _only_flooded(among)):
            continue
        if item.value == "lithium-other" and OWN_MAKE.search(item.text) and _of_phosphate(among):
            continue
        yield item


def _only_flooded(among: list[Stated]) -> bool:
    """Whether the lead that is told is a flooded battery: nothing else is named, but a lithium one that is weighed."""
    kinds = {item.value for item in among} - {"lfp", "lithium-other"}
    return kinds == {"lead", "flooded"}


def _of_phosphate(among: list[Stated]) -> bool:
    """Whether the cells are told to be of the iron phosphate kind."""
    return any(PHOSPHATE.search(item.text) for item in among)


def _weighed(scene: Scene, among: list[Stated]) -> bool:
    """Whether "or" stands between the two: then it is asked, not told."""
    between = scene.text[among[0].span[1] : among[1].span[0]].lower()
    return len(between) < 30 and bool(WEIGHED.search(between))


def _against(scene: Scene, among: list[Stated]) -> bool:
    """Whether one of two is held against the other: "a cranking one instead of our deep cycle"."""
    if len(among) < 2:
        return False
    between = scene.text[among[0].span[1] : among[1].span[0]].lower()
    return len(between) < FAR and bool(AGAINST.search(between))


def _touches(item: Stated, among: list[Stated]) -> bool:
    return any(
        0 <= max(item.span[0] - other.span[1], other.span[0] - item.span[1]) <= 3
        for other in among
        if other is not item
    )
