"""What a figure of a later message is by what was spoken of: the fuse that blew, a lithium battery's limit, a part of
the drain that is switched off, volts at the motor and at the battery."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from grammar.facts import facts
from grammar.reading import Span, Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex
from grammar.told.currents.fuses import RATINGS

Told = Mapping[str, Stated]
FUSE, LOAD, DRAIN = "fuse.rating", "load.current", "drain.current"
STEADY, PEAK, LOAD_PEAK = "battery.max_current", "battery.peak_current", "load.peak"
POSTS, MOTOR, REST = "reading.load_voltage", "reading.load_voltage_at_load", "reading.voltage"
ISOLATED, EACH = "charger.isolated", "battery.nominal"
ONE_BATTERY = 12.0  # volts
READ = (POSTS, MOTOR, REST)
LITHIUM = ("lfp", "lithium-other")
OTHER = r"v|volts?|a|amps?|ah|w|watts?|m|mm2?|metres?|meters?|hours?|h|min|days?|degrees|percent|cca|kg"
ENDS = rf"(?![\d.,]*\d| ?(?:{OTHER})\b| ?%)"  # no other unit follows
AMPS = rf"(?<![\d.,])(?P<amps>\d{{1,4}}(?:[.,]\d{{1,2}})?)(?: ?(?P<milli>m)?a(?:mps?)?\b)?{ENDS}"
VOLTS = rf"(?<![\d.,])(?P<volts>\d{{1,2}}[.,]\d{{1,2}})(?: ?v(?:olts?)?\b)?{ENDS}"
AMPS_2, AMPS_3, AMPS_4 = (AMPS.replace("amps>", f"amps{n}>").replace("milli>", f"milli{n}>") for n in (2, 3, 4))
VOLTS_2 = VOLTS.replace("volts>", "volts2>")
IT_WAS = regex(  # "it was a 150", "the old one was 175 A"
    r"^\W*(?:(?:ok|well|um+|er+|and|so)\W+)*(?:it|that|that one|the (?:old|blown) (?:one|fuse)|the fuse)"
    rf" (?:was|had been) (?:an? |only |just )*{AMPS}(?: fuse| one)?\W*$",
    re.IGNORECASE,
)
GO_TO = regex(  # of another fuse than the one told of: "so should i go to 200?"
    rf"\b(?:go|step|move|change|jump)(?: up)? (?:to|for)(?: an?)? {AMPS}(?: fuse| one)?"
    r"(?=\W*$| (?:then|instead|now)\b)",
    re.IGNORECASE,
)
OF_THEM = regex(  # "four of em, 12V"
    r"\b(?P<many>\d{1,2}|two|four|six|eight) of (?:them|em|'em|those|these)\b[^.?!;\d]{0,16}"
    r"\b(?P<bank>12|24|36|48) ?v(?:olts?)?\b",
    re.IGNORECASE,
)
OUTPUTS = regex(
    r"\b(?P<many>[1-6]|one|two|three|four|five|six) (?P<so>(?:fully )?isolated)"
    r" (?:\d{1,2} ?a(?:mps?)? )?(?:ones|outputs|chargers|channels)\b",
    re.IGNORECASE,
)
LESS = regex(  # what falls away of the drain that was told
    rf"\b(?:drop(?:s|ped)?|goes down|went down|falls?|fell|comes down|came down|is down|shrinks?)(?: down)? by {AMPS}"
    rf"|\b{AMPS_2} (?:amps? )?(?:less|lower)\b"
    r"|\bminus (?:the |my |that )?[a-z]+(?: (?!its?\b|is\b|was\b|now\b|leaves\b|makes\b|gives\b)[a-z]+)?,? "
    rf"{AMPS_3}\W*$"
    rf"|\b(?:off|out|disconnected|unplugged|pulled)\b[^.?!;\d]{{0,12}}\b(?:that|which|it)"
    rf" (?:was|is|took|takes|drew|makes?) (?:about )?{AMPS_4} of (?:it|that|them)\b",
    re.IGNORECASE,
)
READ_THERE = regex(  # of volts said before: "that was at the thruster"
    r"\b(?:that|it|this|the meter|meter|i|we|those)(?:'?s| was| is| were)?"
    r"(?: (?:read|measured|taken|was|had it|put it))*(?: on| at)?"
    r" (?:at|on|across) (?:the )?(?:bow |stern )?(?:thruster|motor|windlass)\b",
    re.IGNORECASE,
)
AT_POSTS = regex(
    r"\b(?:at|on|across) (?:the )?(?:batter(?:y|ies)|batts?|posts|battery (?:posts|terminals))"
    rf"(?: (?:its|it's|it is|it was|is|was))?[:,]? {VOLTS}|{VOLTS_2} (?:at|on|across) (?:the )?(?:batter|batt|posts)",
    re.IGNORECASE,
)
LOADED = regex(
    rf"\b(?:under load|while (?:it|she) runs|(?:it|thruster|motor) running|when (?:it|she) runs|running)\b"
    rf"[^.?!;\d]{{0,12}}{VOLTS}|{VOLTS_2} (?:under load|running)\b",
    re.IGNORECASE,
)
LEAST_24, MOST_24 = 16.0, 24.5  # volts of a 24 V bank under load
RESTING = regex(r"\b(?:rest\w*|off|idle|standing|nothing (?:on|running)|before)\b", re.IGNORECASE)
THEY_ARE = regex(  # of outputs said to share a negative
    r"^\W*(?:(?:so|and|no|ok(?:ay)?|oh|wait|sorry|actually|but|then|what|if|hm+|ah|well)\W+)*"
    r"(?:(?:they|it|these|those|the outputs|outputs|all)(?:'?re|'?s| are| is| were)? )?"
    r"(?:actually |all |fully )?isolated"
    r"(?: (?:ones?|outputs|after all|actually|instead|then|it is|they are|from each other))*\W*$",
    re.IGNORECASE,
)


def as_meant(scene: Scene, stated: Sequence[Stated], said: Sequence[Stated]) -> list[Stated]:
    """The facts of a later message, each figure as what was spoken of makes it."""
    told = {old.fact: old for old in said if old.of == 1}
    found = list(stated)
    if not told:
        return found
    for rule in RULES:
        found = rule(scene, found, told)
    return found


def _of_the_fuse(scene: Scene, stated: list[Stated], told: Told) -> list[Stated]:
    """ "My fuse blew", then "it was a 150", then "should I go to 200": the fuse that is spoken of."""
    spoken = scene.likely[:1] == (FUSE,) and {LOAD, "load.power", "load.model"}.isdisjoint(told)
    found = IT_WAS.match(scene.text) if FUSE not in told else GO_TO.search(scene.text)
    if not spoken or found is None or (amps := _amps(found)) not in RATINGS:
        return stated
    return [*_without(stated, found.span("amps")), _fact(found, FUSE, amps, "amps")]


def _of_the_limits(scene: Scene, stated: list[Stated], told: Told) -> list[Stated]:
    """ "Peak 350 A" of a lithium battery whose own limit was told, and whose load is known, is the battery's."""
    kind = told.get("battery.chemistry")
    limited = kind is not None and kind.value in LITHIUM and STEADY in told
    known = not {LOAD, "load.model"}.isdisjoint(told) and LOAD_PEAK not in scene.expected
    if not (limited and known) or "load" in scene.heads or any(item.fact in (PEAK, LOAD) for item in stated):
        return stated
    return [replace(item, fact=PEAK) if item.fact == LOAD_PEAK and item.of == 1 else item for item in stated]


def _left_of_the_drain(scene: Scene, stated: list[Stated], told: Told) -> list[Stated]:
    """ "It drops by 0.3", "the alarm off, that was 0.2 of it": what is drawn still; more than there was is no part."""
    before, found = told.get(DRAIN), LESS.search(scene.text)
    if before is None or found is None or isinstance(before.value, str):
        return stated
    name = next(one for one in ("amps", "amps2", "amps3", "amps4") if found[one])
    gone = _amps(found, name, name.replace("amps", "milli"))
    if re.search(r"\d ?ma\b|milli", before.text, re.IGNORECASE) and gone > float(before.value):
        gone /= 1000  # in the unit in which the drain was told
    left = round(float(before.value) - gone, 4)
    kept = [item for item in _without(stated, found.span(name)) if item.fact != DRAIN]
    return [*kept, _fact(found, DRAIN, left, name)] if left > 0 else kept


def _at_both_ends(scene: Scene, stated: list[Stated], told: Told) -> list[Stated]:
    """ "That was at the thruster, 10.8 at the battery" of volts under load told before: each at its own end."""
    posts = AT_POSTS.search(scene.text)
    volts = _volts(posts) if posts else 0.0
    span = posts.span("volts" if posts["volts"] else "volts2") if posts else (0, 0)
    if posts is None or RESTING.search(scene.text):
        return stated
    if POSTS in told and MOTOR not in told and READ_THERE.search(scene.text) and volts > float(told[POSTS].value):
        old = replace(told[POSTS], fact=MOTOR, span=(0, 0), how="asked")
        return [*_without(stated, span, POSTS, REST), _fact(posts, POSTS, volts), old]
    if MOTOR in told and POSTS not in told and volts >= float(told[MOTOR].value):
        return [*_without(stated, span, POSTS, REST), _fact(posts, POSTS, volts)]
    return stated


def _loaded_bank(scene: Scene, stated: list[Stated], told: Told) -> list[Stated]:
    """ "Under load 19.2" of batteries in series: the volts of the bank as it works."""
    found = LOADED.search(scene.text)
    series = told.get("bank.layout")
    many = (series is not None and series.value == "series") or _value(told, "bank.voltage") > ONE_BATTERY
    if found is None or not many or any(item.fact in READ for item in stated) or scene.quantities("VOLT"):
        return stated
    if not LEAST_24 <= (volts := _volts(found)) <= MOST_24:
        return stated
    span = found.span("volts" if found["volts"] else "volts2")
    return [*_without(stated, span), _fact(found, POSTS, volts)]


def _value(told: Told, fact: str) -> float:
    return float(told[fact].value) if fact in told else 0.0


def _in_strings(scene: Scene, stated: list[Stated], told: Told) -> list[Stated]:
    """ "Four of them, 12 V" of 6 V batteries told before: the volts are those of the bank that they make."""
    each, found = _value(told, EACH), OF_THEM.search(scene.text)
    if found is None or not 0 < each < ONE_BATTERY or any(item.fact == "bank.layout" for item in stated):
        return stated
    many, volts = value(found["many"].lower()), float(found["bank"])
    if many <= 0 or volts <= each or volts % each or many * each < volts or many * each % volts:
        return stated
    how = "series" if many * each == volts else "series-parallel"
    kept = [item for item in stated if item.fact not in (EACH, "bank.voltage")]
    layout = Stated("bank.layout", how, "", found[0], found.span(), how="asked")
    return [*kept, Stated("bank.voltage", volts, "volt", found["bank"], found.span("bank"), how="asked"), layout]


def _isolated_after_all(scene: Scene, stated: list[Stated], told: Told) -> list[Stated]:
    """ "No, they are isolated", "isolated then" of outputs that were said to share a negative."""
    many = ISOLATED in scene.expected and OUTPUTS.search(scene.text)
    if many:  # "4 isolated 5 A ones" where it was asked
        names = (ISOLATED, "charger.outputs", "battery.count")
        kept = [item for item in stated if item.fact not in names]
        outputs = Stated(
            "charger.outputs", value(many["many"].lower()), "", many["many"], many.span("many"), how="asked"
        )
        return [*kept, outputs, Stated(ISOLATED, True, "", many["so"], many.span("so"), how="asked")]
    before = told.get(ISOLATED)
    if before is None or before.value is not False or (found := THEY_ARE.match(scene.text)) is None:
        return stated
    kept = [item for item in stated if item.fact != ISOLATED]
    return [*kept, Stated(ISOLATED, True, "", found[0].strip(), found.span(), how="asked")]


def _without(stated: Sequence[Stated], span: Span, *names: str) -> list[Stated]:
    """The facts but those of these names, or told by the figure that stands there."""
    return [item for item in stated if item.fact not in names and not item.span[0] <= span[0] < max(item.span)]


def _fact(found: re.Match[str], fact: str, value: float, group: str = "") -> Stated:
    name = group or ("volts" if found["volts"] else "volts2")
    return Stated(fact, value, facts()[fact].unit, found[name], found.span(name), how="asked")


def _amps(found: re.Match[str], name: str = "amps", milli: str = "milli") -> float:
    return float(found[name].replace(",", ".")) / (1000 if found[milli] else 1)


def _volts(found: re.Match[str]) -> float:
    return float((found["volts"] or found["volts2"]).replace(",", "."))


RULES: tuple[Callable[[Scene, list[Stated], Told], list[Stated]], ...] = (
    _of_the_fuse,
    _of_the_limits,
    _left_of_the_drain,
    _at_both_ends,
    _loaded_bank,
    _in_strings,
    _isolated_after_all,
)
