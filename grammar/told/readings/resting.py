"""Volts that were not read at rest: with the fridge on, or on charge; told with the reading or taken back later. And
volts that were: "the charger has been off since yesterday"."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

STATE, TIME, VOLTS = "reading.state", "reading.rest_time", "reading.voltage"
UNDER = "reading.load_voltage"
READ = frozenset({"reading.voltage", "reading.load_voltage", "reading.load_voltage_at_load"})
SMALL = (
    r"(?:fridge|freezer|heater|heating|lights?|lamps?|plotter|radio|stereo|tv|telly|instruments|cool ?box|fan|laptop|"
    r"pump|kettle|inverter|microwave|oven|autopilot|something|things|stuff|everything)"
)
ON = r"(?:on\b(?! (?:(?:a|an|the|my|its)\b|\d))|running\b(?! (?:on|off|from)\b)|going\b)"
WAS = r"(?:was|were|is|had been|has been|been)"
HAD = r"(?:with|had|have|left|forgot|forgotten)"
LOADED = regex(
    rf"(?<!no )\b{SMALL} {WAS} (?:still |left |all )*{ON}"
    rf"|\b{HAD} (?:the |a |my |all the |some )?{SMALL} (?:still |left )*{ON}"
    rf"|\b(?:it|that|this|reading) was (?:read |taken |measured )?(?:under|on) load\b",
    re.IGNORECASE,
)
UNRESTED = regex(
    r"\b(?:was ?n['o]?t|were ?n['o]?t|was not|were not|not|had ?n['o]?t|had not|has ?n['o]?t|never)"
    r" (?:really |actually |fully |properly |quite )?(?:been )?(?:rested|resting|at rest)\b",
    re.IGNORECASE,
)
LONG_AGO = (
    r"(?:since (?:yesterday|last (?:night|evening|week|weekend|month)|the (?:day before|weekend)|"
    r"(?:mon|tues|wednes|thurs|fri|satur|sun)day)"
    r"|all (?:night|day|week|weekend)|overnight|for (?:days|a day|a week|weeks|ages))\b"
)
SOME = r"(?:\d{1,2}|two|three|four|five|six|eight|ten|twelve|some|several|a few)"
RESTED = rf"(?:{LONG_AGO}|(?:for )?(?:about |over |nearly )?{SOME} ?(?:h|hrs?|hours|days|nights)\b)"
CHARGED = regex(
    r"\b(?:charger|engine|alternator) (?:was|had been|has been) (?:still )?(?:on|running|connected)\b"
    r"|\b(?:engine|charger) (?:was|had|has) (?:only |just )+(?:been )?(?:switched off|turned off|stopped|taken off)\b"
    r"|\b(?:come|came|taken|been) (?:straight )?off (?:the |its |a )?(?:charger|charge)\b"
    rf"(?! {RESTED})"
    r"|\b(?:straight|right|just|directly|soon) after (?:charging|motoring|the engine|the charger|a charge)\b"
    r"|\bcharger (?:is |still )*(?:on|in) (?:float|absorption|bulk)\b"
    r"|\bit was (?:still )?(?:on charge|charging|being charged|plugged in)\b",
    re.IGNORECASE,
)
NOT = r"(?:not|never|(?:ha[sd]|have|was|were|is) ?n['’]?o?t|ain['’]?t)"
OFF_SINCE = regex(
    rf"\b(?:charger|charge|engine|motor|mains|shore power|everything|all|it|that)\b[^.?!;,\d]{{0,24}}"
    rf"\b(?:off|out|unplugged|disconnected|not (?:been )?(?:on|running|charged)) {LONG_AGO}"
    rf"|\b{NOT} (?:been )?(?:on (?:the |its |a )?charger?|charged|charging|plugged in) {RESTED}"
    rf"|\boff (?:the |its )?(?:charger|charge) {RESTED}",
    re.IGNORECASE,
)
LEFT_ON = (
    regex(  # "left the lights on for two nights": what is read then is of a flat battery, under no load to speak of
        rf"\bleft (?:the |a |my |all the |some )?(?:\w+ )?{SMALL} (?:on|running|burning|going)"
        r"(?: (?:for|all|over|the whole|a whole))?"
        rf" (?:night|overnight|weekend|week|day|(?:an? |{SOME} )?(?:days?|nights?|weeks?|fortnight|weekend))\b",
        re.IGNORECASE,
    )
)
STATES = (("charging", CHARGED), ("load", LOADED), ("load", UNRESTED))


def without_rest(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> list[Stated]:
    """The facts with how a voltage was read, where this message tells that it did not rest.

    A rest that was told before is taken back by it; without a reading, here or before, it tells nothing.
    """
    told = {item.fact for item in stated}
    if not READ & told and not any(item.fact == VOLTS for item in said):
        return stated
    if READ & told == {UNDER} and LEFT_ON.search(scene.text):
        kept = [item for item in stated if item.fact not in (STATE, TIME)]
        return [replace(item, fact=VOLTS) if item.fact == UNDER else item for item in kept]
    if READ & told and VOLTS not in told:  # volts under load are no matter of rest
        return stated
    off = OFF_SINCE.search(scene.text)
    if off is not None:  # "hasn't been on charge since Sunday" is no charge
        stated = [item for item in stated if item.fact != STATE or not off.start() <= item.span[0] < off.end()]
    state, found = next(((state, found) for state, words in STATES if (found := words.search(scene.text))), ("", None))
    if found is None:
        if off is None or any(item.fact == STATE for item in stated):
            return stated
        return [*stated, Stated(STATE, "rest", "", off[0], off.span(), how="token")]
    start, end = found.span()
    inside = {item for item in stated if item.fact == "load.kind" and start <= item.span[0] < end}  # no load of theirs
    kept = [item for item in stated if item.fact not in (STATE, TIME) and item not in inside]
    return [*kept, Stated(STATE, state, "", found[0], found.span(), how="token")]
