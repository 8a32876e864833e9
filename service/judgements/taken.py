"""The amp-hours that a run of the motor takes out of the battery: amps times hours, where just that is asked."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.reply import Figure

ASKED = regex(
    r"\bhow (?:many|much) (?:(?:ah|amp[- ]?hours?)\b(?! (?:batter|bank|agm|gel|lithium))|of (?:a|an|the|my|our|its)\b)"
    r"[^.?!]{0,50}?"
    r"\b(?:takes?|uses?|used|using|draws?|costs?|is that|goes|gone|go|eats?|burns?)\b(?! to\b)",
    re.IGNORECASE,
)
NEEDED = regex(r"\b(?:need|needed|require|must|should|big|size)\b", re.IGNORECASE)
FACTS = frozenset({"load.current", "load.time"})


def asked(text: str) -> bool:
    """Whether it is asked how many amp-hours a run takes.

    >>> asked("How many Ah does one docking take?"), asked("How many Ah do I need for that?")
    (True, False)
    """
    return ASKED.search(text) is not None and NEEDED.search(text) is None


def by_the_run(case: Case) -> tuple[str, tuple[Figure, ...]] | None:
    """The sentence and its figures; None where it is not asked or amps and time are not told."""
    if not asked(case.text) or not all(fact in case for fact in FACTS):
        return None
    amps, seconds = float(case["load.current"]), float(case["load.time"])
    drawn = amps * seconds / 3600
    case.step(
        f"{say.amps(amps)} x {say.number(seconds / 60, 1)} min / 60 = {say.quantity(drawn, 'Ah')}", "drain-arithmetic"
    )
    told = f"That takes about {say.quantity(drawn, 'Ah')}: {say.amps(amps)} for {say.duration(seconds / 60)}"
    return told + _share(case, drawn), tuple(_figures(case, drawn))


def _share(case: Case, drawn: float) -> str:
    """How much of their battery it is; lead gives less than its label at such amps."""
    if "bank.capacity" not in case:
        return "."
    capacity = float(case["bank.capacity"])
    case.step("A lead battery gives less than its label at large amps, so it is emptied by more", "peukert-limits")
    return f", {say.quantity(drawn / capacity * 100, '%', 0)} of {say.amp_hours(capacity)}."


def _figures(case: Case, drawn: float) -> Iterator[Figure]:
    yield Figure("session_charge", "taken by the run", drawn, "Ah")
