"""The two voltages of a converter: "engine 12, bow 24", "feed 24 from the start battery's 12",
"the lower half of the 24".
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.reading import Span, Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex
from grammar.told.chargers.one_minus import ASKED, V, earthed, one_minus, one_place

INPUT, BANK, AMPS = "charger.input_voltage", "bank.voltage", "charger.current"
TWELVE, HIGH = rf"\b(?P<low>12|twelve)\b{V}", rf"\b(?P<high>24|twenty[- ]four)\b{V}"
PLACE = r"(?:'?s)?(?: (?:side|end|bank|pair|set|battery|batteries|batt|system|circuit|supply|motor|thruster|own))*"
IS = (
    r"(?:'s|,|:)?(?: (?:is|are|makes?|gives?|runs?|puts out|has|have|wants?|needs?|takes?|stays|works|at|on|only|all"
    r"|an?))*"
)
NO_OTHER = r"(?! (?:bow|stern|thruster|windlass|engine|start|starter|house|domestic)\b)"  # "boat, 24 V bow bank"
FROM_ENGINE = regex(
    rf"\b(?:engine|motor|start(?:er|ing)?|alternator|dynamo|house|domestic|boat|main){PLACE}{IS} ?{TWELVE}{NO_OTHER}",
    re.IGNORECASE,
)
TO_BOW = regex(rf"\b(?:bow|stern|thruster|windlass|capstan){PLACE}{IS} ?{HIGH}{NO_OTHER}", re.IGNORECASE)
AFT = regex(
    rf"{TWELVE} (?:aft|astern|back aft|at the (?:stern|back|rear|engine)|by the engine|(?:for|in) the house)\b",
    re.IGNORECASE,
)
DOWN_FROM = regex(  # the other way round: "my ship has 24 V, the thruster bank is 12 V"
    rf"\b(?:engine|motor|start(?:er|ing)?|alternator|house|domestic|boat|ship|yacht|main){PLACE}{IS} ?{HIGH}{NO_OTHER}",
    re.IGNORECASE,
)
DOWN_TO = regex(rf"\b(?:bow|stern|thruster|windlass|capstan|radio){PLACE}{IS} ?{TWELVE}{NO_OTHER}", re.IGNORECASE)
FORWARD = regex(
    rf"{HIGH} (?:forward|for'?r?ard|forrard|up there|up at the front|up front|in front|(?:in|at|for) the bow)\b",
    re.IGNORECASE,
)
BETWEEN = regex(  # that something carries current from the one to the other
    r"\b(?:from|off|out of|into|on) the (?:12|24|twelve|twenty[- ]four)\b"
    r"|\bbetween(?=\W*(?:[.,;?!]|$))|\b(?:12|24) side\b|\bbetween (?:the )?two\b"
    r"|\bthe (?:one|first|second|other) (?:from|off|out of) the (?:other|first|one)\b",
    re.IGNORECASE,
)
GIVEN_FROM = regex(  # "what would it take from the 24 side to give me 10 A at 12"
    rf"\b(?:from|off|out of) (?:the |my |our )?(?P<taken>12|24|twelve|twenty[- ]four){V}"
    rf"(?: (?:side|end|bank|system|supply|volts?))?[^.?!]{{0,20}}? (?:to )?"
    rf"(?:give|get|make|run|feed|supply|have|want|need)\b"
    rf"[^.?!]{{0,14}}?\b(?P<amps>\d+(?:\.\d+)?) ?(?:a|amps?)\b (?:at|on) (?P<given>12|24|twelve|twenty[- ]four)\b{V}",
    re.IGNORECASE,
)
OUT_AT = regex(  # "twenty out at 24, what goes in at 12"
    rf"\b(?P<amps>\d+(?:\.\d+)?|ten|fifteen|twenty|thirty|forty) ?(?:a\b|amps?\b)? ?out at"
    rf" (?P<given>12|24|twenty[- ]four){V}"
    rf"[^.?!]{{0,16}}?\b(?:goes|comes|does|will|is|must)\b[^.?!;\d]{{0,24}}?\b(?:at|from|off) (?:the )?"
    rf"(?P<taken>12|24|twelve){V}",
    re.IGNORECASE,
)
FAR = 90  # characters between the two sides
VALUES = {"12": 12.0, "twelve": 12.0}
ANY = r"12|24|twelve|twenty[- ]four"
SOURCE = r"(?:engine|start(?:er|ing)?|house|domestic|alternator|cranking|leisure|main|service)"
FED = regex(
    r"\b(?:feed|charge|load|fill|supply|top up|nourish|keep up|bring up)(?:s|es|ing)? (?:up )?(?:the |my |our |a )?"
    rf"(?P<given>{ANY})(?:{V}(?! (?:a|amps?)\b)|(?= (?:off|out)\b))[^.?!;]{{0,24}}? (?:from|off"
    rf"|out of) [^.?!;\d]{{0,34}}?(?<![-\d.])(?P<taken>{ANY})\b{V}",
    re.IGNORECASE,
)
PULLED = regex(
    r"\b(?:pull|draw|take|cost|eat|steal|suck|come|go|gobble)(?:s|n|ing)?(?: (?!or\b)\w+){0,3}"
    rf" (?:from|off|out of) the (?P<taken>{ANY})\b{V}",
    re.IGNORECASE,
)
PARTED = regex(
    rf"\b(?P<taken>{ANY})\b{V} {SOURCE}(?: (?:battery|batt|bank|side|accu|one))?,? (?:(?:is|are|stays?"
    rf"|kept|sits|quite) )*"
    rf"(?:separate[d]?|apart|independent|split|away|isolated|divorced) (?:from|of) (?:the |my "
    rf"|our )?(?P<given>{ANY})\b{V}",
    re.IGNORECASE,
)
OR_OTHER = regex(rf"^(?: ?-?v(?:olts?)?| side)* or (?:the )?(?:{ANY})\b", re.IGNORECASE)
ISOLATED = regex(
    r"\b(?:through|via|by way of|using|by) (?:an?|the|our|my|one) (?:galvanically )?isolated "
    r"(?:box|unit|converter|charger|booster|dc-?dc|b2b|brick|gadget|one|job)\b",
    re.IGNORECASE,
)
SEPARATE = "charger.isolated"
OTHER = {12.0: 24.0, 24.0: 12.0}
SYSTEMS = {"12": 12.0, "twelve": 12.0, "24": 24.0, "36": 36.0, "48": 48.0}
OF_VOLTS = r"(?: ?-?v(?:olts?)?\b|(?! ?(?:h|hrs?|hours?|ah|amps?|cells?|batteries|boats|/|\.\d)\b)\b)"
LOW, GIVEN = rf"\b(?P<low>12|twelve)\b{OF_VOLTS}", rf"\b(?P<high>24|twenty[- ]four)\b{OF_VOLTS}"
HALF = regex(  # what is or is not one half of the bank
    r"\b(?:half|middle|centre|center|mid-?point|(?:lower|bottom|upper|top|first|second|one) (?:half|battery|one"
    r"|twelve)) of (?:the|my|our|a|that|his)"
    rf" (?P<high>24|36|48|twenty[- ]four)\b{OF_VOLTS}",
    re.IGNORECASE,
)
CARRIES = regex(
    r"\b(?:box|gadget|gizmo|converter|booster|b2b|dc-?dc|unit|step-?up)\b"
    r"|\b(?:charg(?:es?|ing)|feeds?|fills?) (?:a|the|my|our) (?:24|twenty)"
    r"|\b(?:suck|pull|draw|take|cost)\w*\b[^.?!;]{0,12}\b(?:from|off|out of) the (?:12|24)",
    re.IGNORECASE,
)
PAIRS = tuple(  # how the side that gives and the side that gets are told
    (regex(low, re.IGNORECASE), regex(high, re.IGNORECASE))
    for low, high in (
        (rf"\bside of (?:the )?{LOW}", rf"\bside of (?:the )?{GIVEN}"),
        (rf"\b(?:have|got|there is|there'?s|only) (?:only )?{LOW}", rf"\b(?:need|needs|want|wants|require) {GIVEN}"),
        (rf"{LOW} (?:engine|motor|diesel|alternator|dynamo)\b", rf"\b(?:amps?|amperes|a) (?:at|on) {GIVEN}"),
        (
            rf"\b(?:from|off|out of) (?:a |an |the |my |our )?{LOW} (?:engine|motor|diesel|alternator|dynamo)\b",
            rf"\b(?:feeds?|charg(?:es?|ing)|fills?) (?:a |the |my |our ){GIVEN}",
        ),
        (
            r"\b(?P<low>12)(?: ?-?v(?:olts?)?)? side\b",
            rf"(?:\b|(?<=\d))(?:amps?|amperes|a)(?: out)? ?(?:at|on|@) ?{GIVEN}",
        ),
    )
)
PAIR_WITHIN = 160  # characters between the two sides


def two_sides(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with the two sides, by their places, by what is done with them, and by halves of a bank."""
    return _by_halves(scene, _by_deeds(scene, _by_places(scene, stated)))


def _by_places(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, with the side that a converter takes from and the one that it charges, where places tell them."""
    stated = [*stated, *earthed(scene, stated)]
    if not any(item.quantity.value in (12.0, 24.0) for item in scene.measured):
        return stated
    if found := GIVEN_FROM.search(scene.text) or OUT_AT.search(scene.text):
        taken, given = _volts(found["taken"]), _volts(found["given"])
        if taken != given:
            told = [
                Stated(INPUT, taken, "volt", found["taken"], found.span("taken"), how="grammar"),
                Stated(BANK, given, "volt", found["given"], found.span("given"), how="grammar"),
                Stated(AMPS, value(found["amps"].lower()), "ampere", found["amps"], found.span("amps"), how="grammar"),
            ]
            return with_sides(stated, told)
    if not _converted(scene):
        return stated
    down = DOWN_FROM.search(scene.text), DOWN_TO.search(scene.text)
    if down[0] and down[1] and abs(down[0].start("high") - down[1].start("low")) <= FAR:
        sides = ((INPUT, 24.0, down[0], "high"), (BANK, 12.0, down[1], "low"))
        return with_sides(
            stated,
            [Stated(fact, volts, "volt", at[name], at.span(name), how="grammar") for fact, volts, at, name in sides],
        )
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


def _by_deeds(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, with the sides of a converter where such words tell them, and their common minus."""
    stated = [*stated, *_isolated(scene, stated)]
    if not ("dcdc" in scene.heads or scene.about("word:boost") or {12.0, 24.0} <= scene.figures):
        return stated
    stated = [*stated, *one_minus(scene, stated)]
    if not {12.0, 24.0} <= scene.figures:
        return stated
    for pattern in (FED, PARTED):
        found = pattern.search(scene.text)
        if found is not None and _volts(found["taken"]) != _volts(found["given"]):
            sides = ((INPUT, "taken"), (BANK, "given"))
            return with_sides(stated, [_stated(fact, found, name) for fact, name in sides])
    return _pulled(scene, stated)


def _pulled(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with the side from which a converter is said to pull, where both are named."""
    found = PULLED.search(scene.text) if "dcdc" in scene.heads else None
    if found is None or OR_OTHER.match(scene.text[found.end("taken") :][:24]):
        return stated
    taken = _volts(found["taken"])
    other = [item for item in stated if item.value == OTHER[taken] and item.fact in (INPUT, BANK, "battery.nominal")]
    told = [_stated(INPUT, found, "taken")]
    told += [Stated(BANK, OTHER[taken], "volt", one.text, one.span, how="grammar") for one in other[:1]]
    kept = [item for item in stated if item.fact != BANK or item.value != taken]
    return with_sides(kept, told)


def _isolated(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """That the box is an isolated one, told with the way that the current goes."""
    found = ISOLATED.search(scene.text)
    if found is None or any(item.fact == SEPARATE for item in stated) or ASKED.search(scene.ahead(found.start())):
        return
    yield Stated(SEPARATE, True, "", found[0], found.span(), how="grammar")


def _stated(fact: str, found: re.Match[str], name: str) -> Stated:
    return Stated(fact, _volts(found[name]), "volt", found[name], found.span(name), how="grammar")


def _by_halves(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, with the volts of a bank of which a half is spoken, of the two sides of a box between, and with one
    negative of both."""
    text = scene.text
    if "24" in text or "twenty" in text.lower() or "36" in text or "48" in text:
        stated = _half(scene, _sides(scene, stated))
    return [*stated, *one_place(scene, stated)]


def _half(scene: Scene, stated: list[Stated]) -> list[Stated]:
    found = HALF.search(scene.text)
    if found is None:
        return stated
    span = found.span("high")
    volts = SYSTEMS.get(found["high"].lower(), 24.0)
    kept = [item for item in stated if item.fact != BANK and not (span[0] <= item.span[0] < span[1])]
    return [*kept, Stated(BANK, volts, "volt", found["high"], span, how="grammar")]


def _sides(scene: Scene, stated: list[Stated]) -> list[Stated]:
    if any(item.fact == INPUT and item.how != "weighed" for item in stated) or CARRIES.search(scene.text) is None:
        return stated
    for first, second in PAIRS:
        low, high = first.search(scene.text), second.search(scene.text)
        if low is None or high is None or abs(low.start("low") - high.start("high")) > PAIR_WITHIN:
            continue
        told = [
            Stated(INPUT, 12.0, "volt", low["low"], low.span("low"), how="grammar"),
            Stated(BANK, 24.0, "volt", high["high"], high.span("high"), how="grammar"),
        ]
        kept = [item for item in stated if item.fact != BANK and all(not _within(item, one) for one in told)]
        return [*kept, *(replace(one, of=1) for one in told)]
    return stated


def _within(item: Stated, other: Stated) -> bool:
    return item.span[0] < other.span[1] and other.span[0] < item.span[1]
