"""A danger that no word of a message names, told by its points."""

from __future__ import annotations

import re
from collections.abc import Set

from grammar.dangers.find import look_alikes
from grammar.reading import Message
from grammar.text.patterns import regex
from service.routing.evidence import evidence
from service.routing.in_order import SHOWN
from service.routing.request import Request
from service.routing.supply_as_told import is_lithium
from service.routing.tally import HAZARD, NOTHING, TOLD, Tally, reasons, rows_of, table
from service.told import water_level

ALARM = 4  # points of a hazard from which a message tells of one, though none of its words names it: three in four do
DEAD = "detail:dead_motor"  # "the thruster won't work": no danger by itself
SURE = 12  # points that need no word of danger, lithium or the battery's body: many small ones make a chance sum
BODY = frozenset({"case", "casing", "lid", "side", "sides", "corner", "top", "seam", "cap", "caps", "vent", "plug"})
ALIKE = 5  # the points that a phrase takes off which only sounds like a danger, and volts on charge that are ordinary
ORDINARY = ((12.0, 14.8), (24.0, 29.6))  # V on charge, of 12 and 24 V
WELL = regex(  # said of a battery that is as it should be: "cool to the touch, sides flat, no smell"
    r"\b(?:cool|cold|stone cold|not (?:even )?(?:hot|warm)) to (?:the )?touch\b"
    r"|\b(?:sides?|cases?|casing|flanks?|walls?|ends|lids?|tops?)(?: (?:is|are|all|still|look|looks|both|dead|nice|and"
    r"|perfectly|quite))* (?:flat|straight|square|true|dry|clean|intact|sound)\b(?! (?:no|any)\b)"
    r"|\b(?:flat|straight|square) (?:sides|flanks|walls|case)\b"
    r"|\b(?:no|never a|not a|without(?: any| a)?) (?:funny |odd |strange |bad |trace of (?:a )?|sign of (?:a )?)?"
    r"(?:smells?|odou?rs?|bulg(?:e|es|ing)|swelling|heat|warmth|leak(?:s|ing)?|hiss(?:ing)?|noises?|cracks?|fumes|wet)\b"
    r"(?! (?:until|till|but|except|before|then)\b)",
    re.IGNORECASE,
)
CONTRARY = regex(  # something else is told beside it, which may be the danger
    r"\b(?:but|except|though|although|until|till|apart from|however|yet|only|just|then|now|strange|odd|weird|funny"
    r"|(?:sort|kind) of|started|starts|began)\b",
    re.IGNORECASE,
)

FELL = regex(  # what banged was no battery: "a bang; it turned out to be the toolbox"
    r"\b(?:bang|boom|thump|crash|thud)\b[^?!]{0,48}\bit (?:turned out to be|was only|was just) (?:the|a|my|our) "
    r"(?!batter|fuse|charger|cell|gel|agm|lithium)",
    re.IGNORECASE,
)


def alarmed(message: Message, context: tuple[str, ...] = ()) -> Request | None:
    """The clause that tells of a danger by its points, where the tables of dangers found none; else None.

    A phrase that only sounds like a danger speaks for none itself and takes some points off; one that says that all is
    well speaks for none either. An alarm that is named with the amps going out is what draws them.
    """
    if message.says("thing:drain") and any(item.fact == "drain.current" for item in message.stated):
        return None
    alike = look_alikes(message.text)
    rows = rows_of(message, evidence(message, context))
    places = {name: at for row in reversed(rows) for name, at in row.items()}
    well = () if CONTRARY.search(message.text) else (found.span() for found in WELL.finditer(message.text))
    mute = {at for span in (*alike, *well) for at in range(*span)}
    own = [sum(_of_danger(name, at, mute)[0] for name, at in row.items()) for row in rows]
    shared = sum(_of_danger(name, at, mute)[1] for name, at in places.items())
    item = Tally(HAZARD, table().start.get(HAZARD, 0) + shared + max(own), own.index(max(own)))
    harmless = bool(alike) or message.says(DEAD) or _charged_as_it_should(message) or bool(FELL.search(message.text))
    harmless = harmless or water_level.filled_since(message.text)
    if item.total < ALARM or (item.total < ALARM + ALIKE and harmless):
        return None
    sensed = message.says("about:danger") or is_lithium(message) or not BODY.isdisjoint(message.words)
    if item.total < SURE and not sensed:
        return None
    span = message.clauses[item.row].span if message.clauses else (0, len(message.text))
    shown = tuple(f"{name} {value:+}" for value, name, _ in reasons(item, rows)[:SHOWN])
    return Request(HAZARD, span, item.total, evidence=shown)


def _charged_as_it_should(message: Message) -> bool:
    """Whether the volts on charge are told and ordinary: "on for two weeks, 13.4 V now, is it ok?"."""
    told = [float(item.value) for item in message.stated if item.fact == "charger.voltage"]
    return bool(told) and all(any(low <= volts <= high for low, high in ORDINARY) for volts in told)


def _of_danger(sign: str, at: int, mute: Set[int]) -> tuple[int, int]:
    """A sign's points for a hazard. A figure speaks only against one, as what it is worth is reckoned elsewhere, and so
    does what only sounds like a danger."""
    own, shared = table().points.get(sign, NOTHING).get(HAZARD, (0, 0))
    against = sign.startswith(TOLD) or at in mute
    return (min(own, 0), min(shared, 0)) if against else (own, shared)
