"""The two voltages of a boat told by halves and sides: "the lower half of the 24", "on the side of 12"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene

INPUT, BANK, COMMON = "charger.input_voltage", "bank.voltage", "converter.common_negative"
VALUES = {"12": 12.0, "twelve": 12.0, "24": 24.0, "36": 36.0, "48": 48.0}
OF_VOLTS = r"(?: ?-?v(?:olts?)?\b|(?! ?(?:h|hrs?|hours?|ah|amps?|cells?|batteries|boats|/|\.\d)\b)\b)"
LOW, HIGH = rf"\b(?P<low>12|twelve)\b{OF_VOLTS}", rf"\b(?P<high>24|twenty[- ]four)\b{OF_VOLTS}"
HALF = re.compile(  # what is or is not one half of the bank
    r"\b(?:half|(?:lower|bottom|upper|top|first|second|one) (?:half|battery|one|twelve)) of (?:the|my|our|a|that|his)"
    rf" (?P<high>24|36|48|twenty[- ]four)\b{OF_VOLTS}",
    re.IGNORECASE,
)
CARRIES = re.compile(
    r"\b(?:box|gadget|gizmo|converter|booster|b2b|dc-?dc|unit|step-?up)\b"
    r"|\b(?:charg(?:es?|ing)|feeds?|fills?) (?:a|the|my|our) (?:24|twenty)",
    re.IGNORECASE,
)
PAIRS = tuple(  # how the side that gives and the side that gets are told
    (re.compile(low, re.IGNORECASE), re.compile(high, re.IGNORECASE))
    for low, high in (
        (rf"\bside of (?:the )?{LOW}", rf"\bside of (?:the )?{HIGH}"),
        (rf"\b(?:have|got|there is|there'?s|only) (?:only )?{LOW}", rf"\b(?:need|needs|want|wants|require) {HIGH}"),
        (rf"{LOW} (?:engine|motor|diesel|alternator|dynamo)\b", rf"\b(?:amps?|amperes|a) (?:at|on) {HIGH}"),
        (
            rf"\b(?:from|off|out of) (?:a |an |the |my |our )?{LOW} (?:engine|motor|diesel|alternator|dynamo)\b",
            rf"\b(?:feeds?|charg(?:es?|ing)|fills?) (?:a |the |my |our ){HIGH}",
        ),
        (r"\b(?P<low>12)(?: ?-?v(?:olts?)?)? side\b", rf"\b(?:amps?|amperes|a) (?:at|on) {HIGH}"),
    )
)
ONE_PLACE = re.compile(
    r"\b(?:both|the two|all the|all) (?:minus(?:es)?|negatives?|neg)(?: (?:cables?|leads?|wires?|posts?))?"
    r"(?: \w+){0,2}? (?:on|at|to|in|onto|into) "
    r"(?:(?:the |an? )?(?:same|one|single)(?: \w+)? (?:block|bus ?bar|bar|bolt|stud|point|post|frame)"
    r"|the engine(?: block)?|the (?:motor|engine) block)\b"
    r"|\b(?:the|my|our|all|every) (?:minus|negative|neg)(?: side)? (?:is|goes to) (?:all )?(?:one|a single|the same)"
    r"(?: \w+)? (?:bus ?bar|bar|bolt|stud|block|rail)\b",
    re.IGNORECASE,
)
FAR = 160  # characters between the two sides


def halves(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, with the volts of a bank of which a half is spoken, of the two sides of a box between, and with one
    negative of both."""
    text = scene.text
    if "24" in text or "twenty" in text.lower() or "36" in text or "48" in text:
        stated = _half(scene, _sides(scene, stated))
    return [*stated, *_one_place(scene, stated)]


def _half(scene: Scene, stated: list[Stated]) -> list[Stated]:
    found = HALF.search(scene.text)
    if found is None:
        return stated
    span = found.span("high")
    volts = VALUES.get(found["high"].lower(), 24.0)
    kept = [item for item in stated if item.fact != BANK and not (span[0] <= item.span[0] < span[1])]
    return [*kept, Stated(BANK, volts, "volt", found["high"], span, how="grammar")]


def _sides(scene: Scene, stated: list[Stated]) -> list[Stated]:
    if any(item.fact == INPUT for item in stated) or CARRIES.search(scene.text) is None:
        return stated
    for first, second in PAIRS:
        low, high = first.search(scene.text), second.search(scene.text)
        if low is None or high is None or abs(low.start("low") - high.start("high")) > FAR:
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


def _one_place(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """One negative of a converter's two sides: "both minuses land on one engine block"."""
    steps = "dcdc" in scene.heads or scene.about("word:boost")
    if steps and not any(item.fact == COMMON for item in stated) and (found := ONE_PLACE.search(scene.text)):
        yield Stated(COMMON, True, "", found[0], found.span(), how="grammar")
