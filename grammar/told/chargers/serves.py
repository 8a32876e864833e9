"""How many a charger serves, and the two sides of a converter: "it suits 2 banks", "12 V in, 24 V and 8 A out"."""

from __future__ import annotations

import re

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex

OUTPUTS, INPUT, BANK, AMPS = "charger.outputs", "charger.input_voltage", "bank.voltage", "charger.current"
FEW = "two|three|four|[2-4]"
SERVES = regex(  # "one charger for three batteries?" asks
    r"(?<!\bone )\bcharger(?:'s| it| only| just| (?:says|claims) it)* (?:suits|serves|handles|minds|looks after|covers"
    r"|is (?:made|meant|rated|sold|built) for)"
    rf"(?: up to| only| just)? (?P<count>{FEW}) (?:separate |independent )?(?:banks|batteries)\b",
    re.IGNORECASE,
)
IN_AND_OUT = regex(
    r"\b(?P<low>12|24) ?v(?:olts?)? in\b[,;]?(?: and| but)? (?P<high>12|24) ?v(?:olts?)?(?:,| and| at| with)* "
    r"(?P<amps>\d{1,3}) ?a(?:mps?)? out\b",
    re.IGNORECASE,
)
FILLED_FROM = regex(
    r"\b(?:topping up|charging|fill(?:ing)?|feed(?:ing)?|top up|charge|for) (?:the|my|our) (?P<high>12|24)"
    r"(?: ?v(?:olts?)?)?"
    r" (?:at|in|up|by) (?:the )?(?:front|bow|stern|back|aft|forward|forepeak)\b"
    r"[^.?!;]{0,20}? (?:from|off) (?:the |my |our )?"
    r"(?:engine|main|house|start\w*|alternator)(?:'?s| side| bank)* (?P<low>12|24)\b(?! ?(?:a|amps?|ah)\b)",
    re.IGNORECASE,
)


def serves(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with what such words tell; the same figure is no other fact."""
    if not any(item.fact == OUTPUTS for item in stated) and (match := SERVES.search(scene.text)):
        count = value(match["count"].lower())
        stated = [item for item in stated if item.fact != "bank.count"]
        stated.append(Stated(OUTPUTS, count, "", match[0], match.span(), how="default"))
    match = IN_AND_OUT.search(scene.text) or FILLED_FROM.search(scene.text)
    if match is None:
        return stated
    sides, (start, end) = _sides(match), match.span()
    told = {item.fact for item in sides}
    kept = (item for item in stated if item.fact not in told and not start <= item.span[0] < end)
    return [*kept, *sides]


def _sides(match: re.Match[str]) -> list[Stated]:
    found = [
        Stated(fact, float(match[name]), "volt", match[name], match.span(name), how="default")
        for fact, name in ((INPUT, "low"), (BANK, "high"))
    ]
    if "amps" in match.re.groupindex:
        found.append(Stated(AMPS, float(match["amps"]), "ampere", match["amps"], match.span("amps"), how="default"))
    return found
