"""Equal cables side by side that the customer names: "two runs of 50 in parallel"."""

from __future__ import annotations

import re

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
WORDS = {2: "two", 3: "three"}


def runs(case: Case) -> int:
    """How many equal cables go to each pole."""
    return 3 if case.says("detail:three_runs") else 2 if case.says("detail:two_runs") else 1


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
