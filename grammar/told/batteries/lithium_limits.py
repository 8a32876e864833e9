"""What a lithium battery lets out, told by how long: "150 A without end and 300 for the space of a breath"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace

from grammar.reading import Span, Stated
from grammar.scene.claims import UNSURE, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import SENTENCE

STEADY, PEAK = "battery.max_current", "battery.peak_current"
AMPS = r"(?<![\d.,])(?P<{0}>\d{{2,4}})(?: ?(?:a|amps?|amperes?)\b|(?![\d.,]*\d| ?(?:ah|v|w|mm2?|cca|kg|%)\b))"
PASSES = r"(?: (?:pass|go|flow|out|through|by|of current))*"
LASTING = (
    r"(?:without (?:an? )?(?:end|rest|pause|break|limit|stop|stopping)|forever|for ever|endlessly|always"
    r"|for good|for keeps"
    r"|all day(?: long)?|non[- ]?stop|steady|steadily|continuous(?:ly)?|cont|permanent(?:ly)?|constantly"
    r"|through-?going(?:ly)?|throughout|lasting(?:ly)?|enduring(?:ly)?|durable|day and night"
    r"|round the clock|no end|(?:till|until) (?:doomsday|kingdom come)"
    r"|(?:for )?(?:a )?long time|all the time|as long as (?:i|you|we) (?:like|want))\b"
)
SHORT = (
    r"(?:(?:for|in) (?:short )?bursts|(?:(?:for|in|at|over|during) )?(?:just |only |about )?"
    r"(?:(?:a few|an?|the|one|some|few|\d{1,2}|two|three|five|ten) )"
    r"(?:space of an? |length of an? |very |first |short )*"
    r"(?:(?:breath|sigh|blink|moment|instant|heartbeat|wink|flash|gasp|sneeze|sec|second)s?|s))\b|\bpeak\b|\bbriefly\b|\bmomentarily\b"
)
JOINED = r"[^.?!;:\d]{0,24}?(?:\band|\bbut|,|/|&|\bthen)\s*"
PAIR = regex(
    rf"{AMPS.format('steady')}{PASSES}\s+{LASTING}{JOINED}(?:for )?{AMPS.format('peak')}{PASSES}\s+(?:{SHORT})"
    rf"|\b(?:permits?|allows?|limited (?:[\w' -]{{0,30}})?(?:to|at)|lets?|gives?|yields?)(?: out| through)? "
    rf"{AMPS.format('first')}{PASSES}{JOINED}(?:{SHORT}) {AMPS.format('second')}",
    re.IGNORECASE,
)
GUARDS = "box of tricks|brain|electronics|guard|nanny|watchdog"
LETS = regex(
    rf"\b(?:lets?|allow(?:s|ed)?|permits?)(?: out| through)? {AMPS.format('let')} (?:pass|go|flow|out|through|by)\b"
    rf"|\blimited by [\w' -]{{2,30}}? (?:to|at) {AMPS.format('limited')}"
    rf"|(?<!thruster's )(?<!motor's )\b(?:lithium|lfp|lifepo4|bms|{GUARDS})(?:'?s)?\b"
    r"[^.?!;,\d]{0,30}?"  # "lithium's box of tricks allowing 150 A"
    rf"\b(?:allow|permit|let)(?:s|ing|ting)?(?: out| through| us)? {AMPS.format('ruled')}",
    re.IGNORECASE,
)
MINE_GIVES = regex(  # "what is a BMS? Mine gives 150 A"
    r"\bbms\b[^.?!;]{0,30}[.?!;] (?:and )?(?:mine|ours)"
    r" (?:gives?|allows?|lets? (?:out|through)|permits?|does|is(?: good for| rated(?: at| for)?)?|has)"
    rf"(?: out| up to| about| only)? {AMPS.format('mine')}",
    re.IGNORECASE,
)
AGAIN = regex(rf"{AMPS.format('steady')}{PASSES}\s+{LASTING}", re.IGNORECASE)
LOADS = r"thrusters?|motors?|windlass|winch|pump"
OTHERS = r"alternators?|charger|solar|panels?|converter|booster|dc-?dc|genset|generator|fuses?|breaker|fridge"
LOAD = regex(rf"\b(?:{LOADS}|{OTHERS}|it|draws?|takes?|pulls?|begs?|wants?|needs?|uses?)\b", re.IGNORECASE)
LOAD_NEXT = regex(rf" ?(?:current )?(?:bow |stern )?(?:{LOADS})\b", re.IGNORECASE)
GIVER = regex(
    r"\b(?:lets?|allows?|permits?|gives?|concedes?|yields?|pass(?:es)?|hands?|delivers?|offers?|guard\w*|bms|protection"
    r"|limit\w*|stickers?|labels?|battery|batteries|each|lithiums?|lfp|lifepo\w*|ours|mine|does)\b",
    re.IGNORECASE,
)
OURS = regex(r"\b(?:ours|mine)(?: is| are|'s|,)? ?$", re.IGNORECASE)
OF_LOAD = "load.peak"
LITHIUM = ("lfp", "lithium-other")
GIVE = frozenset({"give", "deliver", "supply", "feed", "push", "send", "provide", "offer"})
CAN = frozenset({"will", "can", "could", "would", "does", "may", "must"})
INTO = frozenset({"to", "into", "for"})
EACH = frozenset({"each", "apiece"})
AT = frozenset({"at", "with", "for", "from"})  # of a current at which it is used
FLOWS = frozenset({"measured", "drawn", "draw", "running", "used", "flows", "flowing", "load", "for", "on", "by"})
SIZE_AHEAD = 5  # words and marks
ASKED_AHEAD, ASKED_BEFORE = 4, 6  # words


def limits_told(scene: Scene) -> dict[int, Claim]:
    """What the figures are that are told as a lithium battery's limits, by how long they may flow."""
    spans = dict(_limits(scene))
    return {
        item.at: Claim(fact, "role")
        for item in (scene.quantities("AMP", "NUM", "COUNT") if spans else ())
        if item.part is not None and (fact := _fact_at(item.part.span, spans))
    }


def _limits(scene: Scene) -> Iterator[tuple[Span, str]]:
    if not any(item.dim == "AMP" or item.dim == "NUM" for item in scene.measured):
        return
    limited = scene.lithium_known or "bms" in scene.heads
    for found in PAIR.finditer(scene.text):
        own = OURS.search(scene.ahead(found.start())) and any(item.kind == "model" for item in scene.items)
        begins = found.start("steady" if found["steady"] else "first")
        if (limited or own) and _of_battery(scene, begins) and not LOAD_NEXT.match(scene.text[found.end() :]):
            first, second = ("steady", "peak") if found["steady"] else ("first", "second")
            if float(found[first]) < float(found[second]):
                yield found.span(first), STEADY
                yield found.span(second), PEAK
    lets = LETS.search(scene.text) if limited else None
    if lets is not None:
        name = next(name for name in ("let", "limited", "ruled") if lets[name])
        if _of_battery(scene, lets.start(name if name == "ruled" else 0)):
            yield lets.span(name), STEADY
    elif (mine := MINE_GIVES.search(scene.text)) is not None:
        yield mine.span("mine"), STEADY
    if any(old.fact == STEADY for old in scene.said) and "load" not in scene.heads:
        yield from ((found.span("steady"), STEADY) for found in AGAIN.finditer(scene.text))


def _of_battery(scene: Scene, at: int) -> bool:
    """Whether what gives the amps that begin there is the battery: nothing that draws is named after it."""
    before = SENTENCE.split(scene.ahead(at))[-1]
    drawn, given = ([word.end() for word in words.finditer(before)] for words in (LOAD, GIVER))
    start = at - len(before)
    models = (scene.span(item.start, item.end)[1] - start for item in scene.items if item.kind == "model")
    drawn += [end for end in models if 0 < end <= len(before)]
    return not drawn or (bool(given) and max(given) > max(drawn))


def _fact_at(span: Span, spans: Mapping[Span, str]) -> str:
    return next((fact for (start, end), fact in spans.items() if start < span[1] and span[0] < end), "")


def label_limits(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, a peak as the battery's where its load was told of before and the message names none."""
    told = {old.fact: old.value for old in scene.said if old.of == 1}
    if told.get("battery.chemistry") not in LITHIUM or "load" in scene.heads or PEAK in {item.fact for item in stated}:
        return stated
    limits = [item for item in stated if item.fact == STEADY]
    known = "load.model" in told or (limits and "load.current" in told)
    if not known or any(item.fact in ("load.current", "load.model") for item in stated):
        return stated
    if len(limits) > 1:  # "250 A cont, 450 A max"
        peak = max(limits, key=lambda item: float(item.value))
        return [replace(item, fact=PEAK, of=1) if item is peak else item for item in stated]
    return [replace(item, fact=PEAK) if item.fact == OF_LOAD else item for item in stated]


def beside_its_size(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps that follow a lithium battery's amp-hours or are told of each one, where the thruster is
    named: "200 Ah lithium, 200 A, Pike". What that draws is known, so they are the battery's limit."""
    unsure = [at for at, claim in claims.items() if claim.fact == "load.current" and claim.how in UNSURE]
    named = any(item.kind == "model" for item in scene.items) or any(old.fact == "load.model" for old in scene.said)
    if len(unsure) != 1 or not named or not scene.lithium_known or any(one.fact == STEADY for one in claims.values()):
        return {}
    item = scene.items[unsure[0]]
    sizes = [other for other in scene.quantities("AH") if other.end <= item.start <= other.end + SIZE_AHEAD]
    begins = scene.span(item.start, item.end)[0]
    between = scene.text[scene.span(sizes[-1].start, sizes[-1].end)[1] : begins] if sizes else ""
    used = scene.word(item.start - 1) in AT or scene.word(item.end) in FLOWS  # "200 Ah at 130 A"
    beside = sizes and not used and not LOAD.search(between) and not SENTENCE.search(between)
    return {item.at: Claim(STEADY, "near")} if beside or scene.word(item.end) in EACH else {}


def asked_to_give(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps that are wanted of a lithium battery, no limit: "will it give 130 A to the bow motor"."""
    limits = [at for at, claim in claims.items() if claim.fact == STEADY and claim.how == "role"]
    if len(limits) != 1 or any(claim.fact == "load.current" for claim in claims.values()):
        return {}
    item = scene.items[limits[0]]
    return {item.at: Claim("load.current", "near")} if _is_asked_for(scene, item) else {}


def _is_asked_for(scene: Scene, item: Item) -> bool:
    before = [scene.word(at) for at in range(max(0, item.start - ASKED_BEFORE), item.start)]
    asked = before[-1:] and before[-1] in GIVE and bool(CAN & set(before))
    loads = any(item.end < head.start <= item.end + ASKED_AHEAD for head in scene.head_items if head.head == "load")
    return bool(asked) and scene.word(item.end) in INTO and loads
