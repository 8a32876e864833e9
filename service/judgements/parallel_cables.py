"""Equal cables side by side that the customer names: "two runs of 50 in parallel"."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from grammar.text.patterns import regex
from service import say
from service.calculators import cable
from service.case import Case
from service.judgements import circuit
from service.judgements.fitting import BUNDLED, FROM_AREA, FROM_GAUGE
from service.reply import Figure
from service.rules.cable import PER_MM2, TABLE_5, K

LEAST = float(FROM_AREA.value) * float(PER_MM2.value)  # circular mils: 50 mm2, or 1/0 AWG, which has more
PER_POLE = regex(
    r"\b(?:two|2|three|3|twin|double)\b[^.?!;]{0,24}\b(?:cables?|runs?|wires?|ones|conductors?|leads?)\b"
    r"[^.?!;]{0,24}\b(?:per|each|to each|on each|for each|a) (?:pole|post|terminal|side)\b"
    r"|\b(?:two|2) (?:thinner|smaller|lighter|slimmer) (?:cables?|ones|runs?|wires?)\b",
    re.IGNORECASE,
)
TWO_EACH = regex(  # "two for plus and two for minus"
    r"\b(?:two|2) (?:for|on|to|as) (?:the )?(?:plus|positive)\b[^.?!;]{0,8}"
    r"\b(?:two|2) (?:for|on|to|as) (?:the )?(?:minus|negative)\b",
    re.IGNORECASE,
)
EACH_POLE = regex(r"\b(?P<count>2|3|two|three) (?:per|for each|to each|on each|each) pole\b", re.IGNORECASE)
WORDS = {2: "two", 3: "three"}


TIMES = regex(
    r"\b(?P<count>2|3|two|three)(?: ?(?:x|×|\*|times) ?| lots of )"
    r"(?:(?P<area>\d{2,3}) ?(?:mm|sq)|(?P<gauge>\d/0)|(?P<awg>\d) ?(?:awg|gauge)"
    r"|(?P<bare>\d{2,3})(?=\W*$| (?:instead|then|now|in parallel|side by side)\b))",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Taken:
    """One of two ways that are weighed: a cable, or two and more of a thinner one for each pole."""

    name: str
    count: int
    verdict: str
    why: str
    short: str  # what is against it
    figures: tuple[Figure, ...]


def taken(case: Case, amps: float, judge: Callable[[Case, float], tuple[str, str]]) -> Taken:
    """How a cable does that is told as often as it is told; `judge` is for a single one."""
    count, area = twice(case), float(case["cable.cmil"])
    share = float(BUNDLED.value) * count if count > 1 else 1.0
    carries = float(case["cable.ampacity"]) * share
    drop = cable.drop(amps, float(case["cable.length"]), area * count, k=K.value)
    name = circuit.name(case) if count == 1 else f"{WORDS[count]} of {circuit.name(case)}"
    if count > 1:
        verdict, head, _ = judged(case, amps, count)
        why = head.partition(": ")[2].removesuffix(".")
    else:
        verdict, why = judge(case, amps)
        why = f"it {why}"
    thin = count > 1 and area < LEAST * (1 - 1e-9)
    loses = f"loses {say.volts(drop, 2)}" if count == 1 else f"lose {say.volts(drop, 2)}"
    short = "are too thin to be doubled" if thin else f"may carry {say.amps(carries)}" if carries < amps else loses
    figures = (Figure("drop", "lost", drop, "V"), Figure("ampacity", "may carry", carries, "A"))
    return Taken(name, count, verdict, why, short, figures)


def twice(case: Case) -> int:
    """How often this very cable is named: "2x50 mm2" is two of 50 mm2; 1 where it stands alone."""
    area, gauge = case.said("cable.area"), case.said("cable.gauge")
    for found in TIMES.finditer(case.text):
        size = found["area"] or found["bare"]
        same = size and area is not None and float(size) == float(area)
        if same or (gauge is not None and str(gauge) in (found["gauge"], found["awg"])):
            return _number(found["count"])
    return 1


def _number(said: str) -> int:
    return next(count for count, word in WORDS.items() if said.lower() in (word, str(count)))


def runs(case: Case) -> int:
    """How many equal cables go to each pole."""
    if TWO_EACH.search(case.text):
        return 2
    if each := EACH_POLE.search(case.text):
        return _number(each["count"])
    return 3 if case.says("detail:three_runs") else 2 if case.says("detail:two_runs") else twice(case)


def judged(case: Case, amps: float, count: int) -> tuple[str, str, tuple[Figure, ...]]:
    """The verdict on so many of the stated cable for each pole, the sentence for it and its figures."""
    share, area = float(BUNDLED.value) * count, float(case["cable.cmil"])
    carries, warm = float(case["cable.ampacity"]) * share, circuit.warm_rating(case)
    volts, allowed = circuit.volts(case), circuit.allowed(case)
    drop = cable.drop(amps, float(case["cable.length"]), area * count, k=K.value)
    lost = circuit.Loss(drop, drop / volts * 100, allowed)
    ours, run = f"{WORDS[count]} of {circuit.name(case)}", say.length(case["cable.length"], circuit.in_feet(case))
    case.step(
        f"{count} x {say.amps(case['cable.ampacity'])} x 0.6 side by side = {say.amps(carries)}", BUNDLED.cite, TABLE_5
    )
    case.step(f"Together they lose {say.volts(drop, 2)}, {say.share(lost.percent)}", K.cite)
    case.source(circuit.limit_cite(allowed), FROM_GAUGE.cite)
    figures = (
        Figure("conductors_per_pole", "cables for each pole", float(count), ""),
        Figure("drop", "lost in the cables", drop, "V"),
        Figure("drop_percent", "share of the system's volts", lost.percent, "%"),
        Figure("ampacity", "may carry together", carries, "A"),
    )
    if area < LEAST * (1 - 1e-9):
        least = f"{say.quantity(float(FROM_AREA.value), 'mm2')} ({say.gauge(str(FROM_GAUGE.value))})"
        return "no", f"No: cables go side by side only from {least} up, and yours are {circuit.name(case)}.", figures
    if carries < amps:
        return "no", f"No: {ours} side by side may carry {say.amps(carries)}, and {say.amps(amps)} run.", figures
    loses = f"lose {say.volts(drop, 2)} ({say.share(lost.percent)}) over {run}"
    if not lost.within:
        return "no", f"No: {ours} side by side {loses}, over the limit of {say.quantity(allowed, '%')}.", figures
    if warm is not None and warm * share < amps:
        told = f"{say.amps(carries)} with 105{say.NB}°C insulation but only {say.amps(warm * share)} with 75{say.NB}°C"
        return "needs-facts", f"We can't say yet: {ours} side by side may carry {told}; the print decides.", figures
    head = f"Yes: {ours} side by side may carry {say.amps(carries)} and {loses}; let an electrician lay them."
    return "yes", head, figures
