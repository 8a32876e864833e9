"""A topic that the facts of a message are those of, where its words alone point elsewhere."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Set

from grammar.reading import Message
from grammar.text.patterns import regex
from service.judgements import new_and_old, parallel_cables
from service.judgements.ice_first import has_it_frozen
from service.routing import supply_as_told
from service.routing.in_words import IN_WORDS
from service.routing.motor_as_told import (
    ANY_CABLE,
    cold_or_battery,
    lifted,
    loaded,
    story_of_a_motor,
    volts_lost,
    weak_though_full,
    wire_or_battery,
)
from service.routing.seen import Seen
from service.routing.supply_as_told import KIND, LOADS, MAY, UNLIKE, is_lithium
from service.told import loose, other_volts, part_charged, posts_way

TIMES = frozenset({"run-time", "charge-time", "standing-drain"})
PUT_ON = regex(
    r"\b(?:can|may|could|should|ok to|safe to)\b[^.?!]{0,200}"
    r"\b(?:put|leave|hook|connect|clip|plug|use|keep)\b[^.?!]{0,200}\bcharger\b",
    re.IGNORECASE,
)
DUE = regex(r"\b(?:due|overdue|time (?:for|to)|how (?:long|much longer)|last|next|soon)\b", re.IGNORECASE)
LIMITS = "detail:which_limit"
KILOAMPS = regex(r"\d ?ka\b", re.IGNORECASE)
WHY_IS = regex(r"\bwhy (?:is|are|does|do|would|should)\b", re.IGNORECASE)
SIZES, TO_OTHER = frozenset({"cable.gauge", "cable.area"}), ("detail:to_mm2", "detail:to_awg")
EXPLAINS = regex(r"\bdifference\b|\bwhat (?:is|are|does|do)\b|\bmeans?\b", re.IGNORECASE)
ITS_MCA = regex(r"\b(?:its|the|that|in|how many|how much)\W+m?ca\b|\bm?ca\W+(?:be|is that|would)\b", re.IGNORECASE)
STRAIGHT = regex(r"\b(?:straight|direct(?:ly)?)\b", re.IGNORECASE)  # onto the battery, with nothing between
FREEZES = regex(r"\b(?:freez|froze|frost|ice\b)", re.IGNORECASE)
HOLD = regex(
    r"\b(?:strap|hold|held|fix|fasten|clamp|bolt|tie|tied|secur|bracket|stand|on (?:its|their|the) \w|lying|upright)",
    re.IGNORECASE,
)
RUINED = regex(
    r"\b(?:is|are|was|have|has|did) (?:it|he|she|they|this|that|i|we|the \w+)\b[^.?!,]{0,12}"
    r"\b(?:ruined|killed|finished|goners?|scrap|toast|done for|knackered|a write[- ]?off|past saving)\b"
    r"|\b(?:ruined|scrap|toast|a goner|knackered) ?\?",
    re.IGNORECASE,
)
DIFFERS = regex(
    r"\b(?:matters?|differen(?:t|ce)|differs?|unlike|a problem)\b[^.?!]{0,200}\bm?cca\b"
    r"|\bm?cca\b[^.?!]{0,200}\b(?:matters?|differen(?:t|ce))\b",
    re.IGNORECASE,
)
SYSTEM, SIX = frozenset({"battery.nominal", "bank.voltage"}), 6.0
ONE_CELL, DEEPLY = 4.0, 10.5  # volts: a 12 V battery between them is deeply flat
ICY = frozenset({"rest-voltage", "specific-gravity", "storage", "unclear"})  # as which a reading in the frost is read


def by_what_is_told(message: Message, found: Set[str], context: Iterable[str] = ()) -> str:
    """The topic that takes the place of those found, as the facts tell; "" where they stand."""
    told = frozenset(item.fact for item in message.stated)
    seen = Seen(message, frozenset(found), told, frozenset(context))
    return next((topic for topic, holds in IN_PLACE if holds(seen)), "")


def _charged(seen: Seen) -> bool:
    """ "A 115 A alternator straight onto a 280 Ah lithium, is it ok?", "can I put a 20 A charger on my AGM?"."""
    message, found = seen.message, seen.found
    alternator = "alternator.current" in seen.told or seen.says("thing:alternator")
    straight = {"battery-type"} <= found <= {"dc-dc", "battery-type"} and bool(STRAIGHT.search(message.text))
    if (straight or found <= {"run-check", "unclear"}) and alternator and not seen.told & LOADS and is_lithium(message):
        return True
    cold = found == {"freeze-point"} and is_lithium(message) and not FREEZES.search(message.text)
    if cold and seen.says("word:charge"):
        return True  # "does it hurt to charge my lithium at minus 3"
    asked = bool(PUT_ON.search(message.text)) or seen.says("word:setting")
    return found <= {"unclear"} and KIND in seen.told and not message.dangers and asked


def _why_cranking_amps(seen: Seen) -> bool:
    """ "Why is CCA more important than Ah for a bow thruster?": no size is sought."""
    both = seen.says("term:cca") and seen.says("term:ah") and not seen.told & (LOADS - {"load.kind"})
    return seen.found <= {"bank-size", "run-check", "unclear"} and both and WHY_IS.search(seen.message.text) is not None


def _kind_found_out(seen: Seen) -> bool:
    """ "How do I find out what kind it is?": of the battery they have."""
    others = seen.found - {"battery-type", "unclear", "bank-size", "meaning", "battery-duty", "standing-drain"}
    return seen.says("detail:find_kind") and not others and not seen.message.dangers


def _ruined(seen: Seen) -> bool:
    """ "10.2 V after the winter, is it ruined?": a battery that was deeply flat, not how full it is."""
    read = [item.value for item in seen.message.stated if item.fact == "reading.voltage" and item.of == 1]
    six = any(item.fact in SYSTEM and item.value == SIX for item in seen.message.stated)
    flat = bool(read) and ONE_CELL < float(read[0]) < DEEPLY and not six and not seen.message.dangers
    return seen.found <= {"rest-voltage", "unclear"} and flat and bool(RUINED.search(seen.message.text))


def _saved(seen: Seen) -> bool:
    """ "8.2 V, can it be saved?"."""
    return seen.found <= {"unclear"} and "reading.voltage" in seen.told and seen.says("detail:saved")


def _converted(seen: Seen) -> bool:
    """ "4 AWG in mm2?", "100 Ah in reserve minutes?", "600 W, how many amps?", "700 CCA, and its MCA would be?"."""
    found, told = seen.found, seen.told
    if found <= {"run-time", "unclear"} and "battery.capacity" in told and seen.says("detail:to_rc"):
        return True
    if found and found <= {"cable-size", "meaning"} and told and told <= SIZES and seen.says(*TO_OTHER):
        return True
    if found == {"run-check"} and "load.power" in told and not any(name.startswith("battery.") for name in told):
        return seen.says("detail:to_amps") and not seen.says("thing:battery")
    asks = bool(ITS_MCA.search(seen.message.text)) and not EXPLAINS.search(seen.message.text)
    return found == {"meaning"} and "battery.cca" in told and asks


def _limited(seen: Seen) -> bool:
    """ "Is it 3 % or 10 % for a windlass?"."""
    found = seen.found <= {"unclear", "battery-duty", "cable-size", "other-desk"}
    return found and seen.says(LIMITS) and not seen.told & ANY_CABLE


def _joined(seen: Seen) -> bool:
    """ "May they be of different age, one is 4 years old?", "one died, must I replace both?", "it's 4 years old, may I
    put the same again beside it?"."""
    apart = new_and_old.both_asked(seen.message) and new_and_old.uneven(seen.message.text)
    text = seen.message.text
    beside = "battery.age" in seen.told and new_and_old.thought_of(text) and new_and_old.BESIDE.search(text)
    if "battery.age" in seen.told and new_and_old.one_renewed(text) and not DUE.search(text):
        return seen.found <= {"replacement", "bank-wiring"}
    return seen.found == {"replacement"} and (
        apart or bool(beside) or (seen.says("request:may_i") and seen.says(*UNLIKE))
    )


def _per_pole(seen: Seen) -> bool:
    """ "Two cables per pole in place of one?"."""
    return seen.found <= {"unclear", "terminals"} and parallel_cables.PER_POLE.search(seen.message.text) is not None


def _posts_way(seen: Seen) -> bool:
    """ "Posts towards the hull or away from it?"."""
    return seen.found <= {"unclear", "group-size", "mounting"} and posts_way.asked(seen.message.text)


def _broken(seen: Seen) -> bool:
    """ "Is 5 kA enough for a 300 Ah lithium bank?": amps of a short circuit, which a fuse must break."""
    kilo = bool(KILOAMPS.search(seen.message.text)) and "battery.cca" not in seen.told
    return seen.found <= {"run-check", "unclear"} and (kilo or seen.says("term:interrupting"))


def _shut_in(seen: Seen) -> bool:
    """ "Would a lid without gaps be dangerous on the box of my wet battery?"."""
    return seen.found <= {"unclear", "mounting"} and seen.says("detail:shut") and not HOLD.search(seen.message.text)


def _amps_of_a_charger(seen: Seen) -> bool:
    """ "Warmed up to 15 C, lithium 150 Ah. 30 A charger ok now?": its amps are told, and of its setting nothing."""
    set_so = {"charger.setting", "charger.voltage", "charger.kind"} & seen.told
    asked = seen.says(*MAY) and not seen.says("role:charger.setting") and not set_so
    amps = {"charger.current", "battery.capacity", "ambient.temperature"} <= seen.told
    return asked and amps and seen.found <= {"charger-setting", "freeze-point", "unclear"} and not seen.message.dangers


def _adrift(seen: Seen) -> bool:
    """ "It shifts around in its tray at sea, can I leave it for now?": it must be held, and nothing is laid up."""
    left = seen.found <= {"unclear", "storage"} and "storage.time" not in seen.told
    return left and not seen.message.dangers and loose.spoken_of(seen.message.text)


def _unlike_amps(seen: Seen) -> bool:
    """ "Does it matter that one has 700 CCA and the other 800?": no load is told that they should run."""
    return seen.found == {"run-check"} and unlike_amps(seen.message, seen.told)


def unlike_amps(message: Message, told: Set[str]) -> bool:
    """Whether it is asked if cranking amps may differ between batteries that are joined."""
    load = told & LOADS or message.says("thing:thruster")
    return "battery.cca" in told and not load and bool(DIFFERS.search(message.text))


def _frozen(seen: Seen) -> bool:
    """ "It snowed and mine shows 11.9, has it frozen?": not how full it is."""
    other = seen.says("request:is_good", "request:how_full")
    return seen.found <= ICY and not other and not seen.message.dangers and has_it_frozen(seen.message.text)


def _charged_in_part(seen: Seen) -> bool:
    """ "Can I put my 12 V charger on one of the two batteries of the 24 V bank", or a 24 V one on a 12 V battery."""
    low, bank = part_charged.volts(seen.message.text), [item for item in seen.message.stated if item.fact in SYSTEM]
    above = low is not None and any(float(item.value) != low for item in bank)
    return above and seen.found <= {"bank-wiring", "unclear", "dc-dc"} and part_charged.one_only(seen.message.text)


def _linked(seen: Seen) -> bool:
    """ "Connect the 12 V engine battery and the 24 V bow bank in parallel while motoring?"."""
    return seen.found <= {"dc-dc", "unclear"} and not seen.message.dangers and other_volts.linked(seen.message.text)


def _of_more_volts(seen: Seen) -> bool:
    """ "A 24 V windlass for a 12 V boat, feed it from the house?", "how do I get 24 V up there?"."""
    if seen.says("about:charging") or other_volts.motor_above(seen.message.text) is None:
        return False
    fed = other_volts.FED.search(seen.message.text) and seen.found <= {"unclear", "run-check", "other-desk"}
    return bool(fed) or seen.found <= {"unclear", "dc-dc", "battery-type"}


IN_PLACE: tuple[tuple[str, Callable[[Seen], bool]], ...] = (
    *IN_WORDS,
    ("mounting", _adrift),
    ("voltage-drop", _limited),
    ("voltage-drop", volts_lost),
    ("weight", lifted),
    ("terminals", _posts_way),
    ("cable-size", _per_pole),
    ("load-voltage", wire_or_battery),
    ("cold-cranking", cold_or_battery),
    ("fuse-size", _broken),
    ("charger-size", _amps_of_a_charger),
    ("charger-setting", _charged),
    ("load-voltage", loaded),
    ("load-voltage", story_of_a_motor),
    ("load-voltage", weak_though_full),
    ("battery-type", _kind_found_out),
    ("meaning", _why_cranking_amps),
    ("replacement", _ruined),
    ("freeze-point", _frozen),
    ("rest-voltage", _saved),
    ("rating-convert", _converted),
    ("bank-wiring", _joined),
    ("bank-wiring", _unlike_amps),
    ("ventilation", _shut_in),
    ("bank-size", supply_as_told.sized),
    ("run-time", supply_as_told.lasting),
    ("run-time", supply_as_told.kept_on),
    ("run-time", supply_as_told.longer),
    ("run-check", supply_as_told.in_the_cold),
    ("charger-banks", _charged_in_part),
    ("bank-wiring", _of_more_volts),
    ("bank-wiring", _linked),
    ("run-check", supply_as_told.supplied),
    ("run-check", supply_as_told.cut_off),
    ("bank-wiring", supply_as_told.too_many),
    ("run-check", supply_as_told.proposed),
    ("run-check", supply_as_told.each_sized),
)
