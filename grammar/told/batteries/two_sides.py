"""The two voltages of a boat with a converter between them, each told with its place: "engine 12, bow 24"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.reading import Span, Stated
from grammar.scene.scene import Scene

INPUT, BANK, AMPS = "charger.input_voltage", "bank.voltage", "charger.current"
COMMON = "converter.common_negative"
NEXT = (
    r"(?:and|but|while|with|the|up|to|so|sides?|end|on|at|from|into|aft|astern|forward|for|in|is|what|how|a|i|we|bow"
    r"|forrard|back)"
)
V = rf"(?: ?-?v(?:olts?)?\b|(?=\s*(?:[,;:?!)/]|\.(?!\d)|$|{NEXT}\b)))"  # not "12 hp", "12 lights", "24 hours"
TWELVE, HIGH = rf"\b(?P<low>12|twelve)\b{V}", rf"\b(?P<high>24|twenty[- ]four)\b{V}"
PLACE = r"(?:'?s)?(?: (?:side|end|bank|pair|set|battery|batteries|batt|system|circuit|supply|motor|thruster|own))*"
IS = (
    r"(?:'s|,|:)?(?: (?:is|are|makes?|gives?|runs?|puts out|has|have|wants?|needs?|takes?|stays|works|at|on|only|all"
    r"|an?))*"
)
FROM_ENGINE = re.compile(
    rf"\b(?:engine|motor|start(?:er|ing)?|alternator|dynamo|house|domestic|boat|main){PLACE}{IS} ?{TWELVE}",
    re.IGNORECASE,
)
TO_BOW = re.compile(rf"\b(?:bow|stern|thruster|windlass|capstan){PLACE}{IS} ?{HIGH}", re.IGNORECASE)
AFT = re.compile(
    rf"{TWELVE} (?:aft|astern|back aft|at the (?:stern|back|rear|engine)|by the engine|(?:for|in) the house)\b",
    re.IGNORECASE,
)
FORWARD = re.compile(
    rf"{HIGH} (?:forward|for'?r?ard|forrard|up there|up at the front|up front|in front|(?:in|at|for) the bow)\b",
    re.IGNORECASE,
)
BETWEEN = re.compile(  # that something carries current from the one to the other
    r"\b(?:from|off|out of|into|on) the (?:12|24|twelve|twenty[- ]four)\b|\b(?:12|24) side\b|\bbetween (?:the )?two\b"
    r"|\bthe (?:one|first|second|other) (?:from|off|out of) the (?:other|first|one)\b",
    re.IGNORECASE,
)
GIVEN_FROM = re.compile(  # "what would it take from the 24 side to give me 10 A at 12"
    rf"\b(?:from|off|out of) (?:the |my |our )?(?P<taken>12|24|twelve|twenty[- ]four){V}"
    rf"(?: (?:side|end|bank|system|supply|volts?))?[^.?!]{{0,20}}? (?:to )?"
    rf"(?:give|get|make|run|feed|supply|have|want|need)\b"
    rf"[^.?!]{{0,14}}?\b(?P<amps>\d+(?:\.\d+)?) ?(?:a|amps?)\b (?:at|on) (?P<given>12|24|twelve|twenty[- ]four)\b{V}",
    re.IGNORECASE,
)
TWO = (
    r"(?:both(?: sides| systems| of them)?|each side|(?:the )?two sides|sides"
    rf"|(?:12|24){V}(?: side)? and (?:the )?(?:12|24){V}(?: sides?)?)"
)
EARTHED = re.compile(  # "the 12 V side and the 24 V side both earth on the engine block"
    rf"\b{TWO}(?: of the [\w-]+)? (?:are |is |get |go |come |both |all |sit )*"
    r"(?:(?:earth|ground|negative|return)(?:s|ed)? (?:on|to|at|in|through|via) (?:the |one |a )?(?:same )?"
    r"(?:engine|block|motor|hull|keel|bus|bar|busbar|bolt|stud|frame|point|place)"
    r"|shar(?:e|ing) (?:an?|one|the|their) (?:earth|ground|return))\b",
    re.IGNORECASE,
)
FAR = 90  # characters between the two sides
VALUES = {"12": 12.0, "twelve": 12.0}


def two_sides(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, with the side that a converter takes from and the one that it charges, where places tell them."""
    stated = [*stated, *_earthed(scene, stated)]
    if not any(item.quantity.value in (12.0, 24.0) for item in scene.measured):
        return stated
    if found := GIVEN_FROM.search(scene.text):
        taken, given = _volts(found["taken"]), _volts(found["given"])
        if taken != given:
            told = [
                Stated(INPUT, taken, "volt", found["taken"], found.span("taken"), how="grammar"),
                Stated(BANK, given, "volt", found["given"], found.span("given"), how="grammar"),
                Stated(AMPS, float(found["amps"]), "ampere", found["amps"], found.span("amps"), how="grammar"),
            ]
            return with_sides(stated, told)
    if not _converted(scene):
        return stated
    low = FROM_ENGINE.search(scene.text) or AFT.search(scene.text)
    high = TO_BOW.search(scene.text) or FORWARD.search(scene.text)
    if low is None or high is None or abs(low.start("low") - high.start("high")) > FAR:
        return stated
    return with_sides(
        stated,
        [
            Stated(INPUT, 12.0, "volt", low["low"], low.span("low"), how="grammar"),
            Stated(BANK, 24.0, "volt", high["high"], high.span("high"), how="grammar"),
        ],
    )


def _earthed(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """One negative of both sides, told as their earth."""
    spoken = "dcdc" in scene.heads or scene.about("word:boost") or {12.0, 24.0} <= scene.figures
    if not spoken or any(item.fact == COMMON for item in stated):
        return
    if found := EARTHED.search(scene.text):
        yield Stated(COMMON, True, "", found[0], found.span(), how="grammar")


def _volts(said: str) -> float:
    return VALUES.get(said.lower(), 24.0)


def _converted(scene: Scene) -> bool:
    """Whether something carries a charge from the one side to the other."""
    carried = bool({"dcdc", "alternator"} & scene.heads) or scene.about("word:boost")
    return carried or BETWEEN.search(scene.text) is not None


def with_sides(stated: list[Stated], told: list[Stated]) -> list[Stated]:
    """The facts, those told here in place of what the same figures or their facts were taken for."""
    facts, spans = {item.fact for item in told}, [item.span for item in told]
    kept = [item for item in stated if item.fact not in facts and not any(_overlap(item.span, span) for span in spans)]
    return [*kept, *(replace(item, of=1) for item in told)]


def _overlap(one: Span, other: Span) -> bool:
    return one[0] < other[1] and other[0] < one[1]
