"""A charger that takes from another battery, told with no word for a converter: "a 12 V to 24 V charger", "a charger
fed off the engine battery".
"""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.chargers.two_sides import AMPS, BANK, INPUT, with_sides

KIND = "charger.kind"
LOADS = frozenset({"load", "drain", "thruster"})
CALLED = (
    r"(?:battery |smart |automatic |marine |isolated |non-?isolated )*"
    r"(?:charger|charging (?:unit|box|brick|module))"
)
SYSTEM = r"12|24|36|48|twelve|twenty[- ]four"
VALUES = {"twelve": 12.0, "twenty four": 24.0, "twenty-four": 24.0}
V = r"(?: ?-?v(?:olts?|dc)?\b)"
PAIR = rf"\b(?P<taken>{SYSTEM}){V}?(?: ?(?:-?to-?|into|->|>|→) ?)(?P<given>{SYSTEM})(?:{V}|\b)"
UNDER = r"(?: (?:\d{1,3} ?(?:a|amps?)|dc))*"  # amps that stand between the volts and the thing
OF_BOTH = regex(rf"{PAIR}{UNDER}[ -]{CALLED}\b", re.IGNORECASE)
GOES = regex(  # "the charger goes from 12 V to 24 V", "charger, 24 V to 12 V, 30 A"
    rf"\bcharger\b,?(?: (?:is|goes|that|which|works|runs|from|of|\d{{1,3}} ?(?:a|amps?)),?){{0,4}} {PAIR}",
    re.IGNORECASE,
)
LISTED = regex(  # "a 12/24 V charger" may be one for either, unless a side of it is spoken of
    rf"\b(?P<taken>12|24){V}? ?[-/] ?(?P<given>24|12){V}?{UNDER}[ -]{CALLED}\b", re.IGNORECASE
)
SIDE = regex(
    r"\b(?:input|supply|feed|primary|(?:12|24) ?v?(?:olts?)?) (?:side|end|feed)\b|\b(?:on|at|for) the input\b",
    re.IGNORECASE,
)
MAINS = regex(
    r"\b(?:mains|shore|harbou?r|marina|(?:230|240|220|120|110) ?v(?:olts?|ac)?|plug(?:s|ged)?|socket|generator)\b",
    re.IGNORECASE,
)
OTHER = r"(?:the|my|our|his|her|an?) (?:12 ?v?(?:olts?)? |24 ?v?(?:olts?)? )?"
ENGINE = r"(?:engine|motor|start(?:er|ing)?|crank(?:ing)?|house|domestic|leisure|service|main|alternator)(?:'s)?"
FED = regex(
    r"\bcharger\b[^.?!;]{0,50}?\b(?:fed|feeds|powered|supplied|runs?|running|driven|takes?|taking|draws?|drawing"
    r"|gets? (?:its|the))"
    r"(?: (?:its|the|all|power|current|supply|feed|input|juice))* (?:from|off|by|out of) "
    rf"{OTHER}{ENGINE} (?:batter(?:y|ies)|bank|one)\b",
    re.IGNORECASE,
)


def between_batteries(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with such a charger's kind, and the volts of its two sides where they are told."""
    text = scene.text
    if "charg" not in text.lower() or any(item.fact == KIND and item.value != "smart" for item in stated):
        return stated
    if MAINS.search(text):
        return stated
    pair = OF_BOTH.search(text) or GOES.search(text) or (LISTED.search(text) if SIDE.search(text) else None)
    found = pair or FED.search(text)
    if found is None:
        return stated
    kept = [item for item in _its_amps(scene, stated) if item.fact != KIND]
    if pair is not None:
        kept = with_sides(kept, [_side(INPUT, pair, "taken"), _side(BANK, pair, "given")])
    return [*kept, Stated(KIND, "dc-dc", "", found[0], found.span(), how="grammar")]


def _its_amps(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts; amps that stand as nobody's for certain are the charger's own where no other thing takes any."""
    if LOADS & scene.heads:
        return stated
    loose = [item for item in stated if item.fact in (AMPS, "load.current") and item.how == "default"]
    if len(loose) != 1 or any(item.fact == AMPS and item not in loose for item in stated):
        return stated
    return [replace(item, fact=AMPS, how="grammar") if item is loose[0] else item for item in stated]


def _side(fact: str, pair: re.Match[str], name: str) -> Stated:
    said = pair[name].lower()
    return Stated(fact, VALUES.get(said) or float(said), "volt", pair[name], pair.span(name), how="grammar")
