"""The short circuit that a fuse must be able to break: kiloamps, which are no rating of its own."""

from __future__ import annotations

import re
from dataclasses import replace

from service import reference, say
from service.case import Case
from service.reply import Answer
from service.rules.fusing import Band

QUOTED = reference.value("fuse_rules", "lithium_fault")
KILO = re.compile(r"(?<![\d.,])(\d+(?:[.,]\d+)?) ?(?:ka|kilo ?amps?)\b", re.IGNORECASE)
AMPS = re.compile(r"(?<![\d.,])(\d{3,6}) ?(?:a|amps?)? ?(?:aic|interrupt\w*|breaking)\b", re.IGNORECASE)
STRICT = ("no", "needs-facts", "marginal")  # of the rating: the breaking says nothing laxer
MAKER = "ask its maker for the current of a short, else take class T"


def named(text: str) -> float | None:
    """The amps that a fuse is said to break, None where none are told."""
    if found := KILO.search(text):
        return 1000 * float(found[1].replace(",", "."))
    found = AMPS.search(text)
    return float(found[1]) if found else None


def asked(case: Case) -> bool:
    """Whether the question speaks of what a fuse can break."""
    return case.says("term:interrupting", "detail:interrupting") or KILO.search(case.text) is not None


def judged(case: Case, band: Band) -> tuple[str, str]:
    """The verdict on what the fuse can break, and the sentence for it."""
    amps = named(case.text)
    lithium = case.get("battery.family") == "lithium"
    needed = _quoted(case) if lithium else band.breaks
    theirs = f"a fuse that breaks {say.amps(amps)}" if amps else ""
    if needed is None:
        return "information", MAKER if lithium else "what it must break follows from the CCA of the whole bank"
    short = (
        f"about {say.amps(needed)} is quoted for a short of so much lithium"
        if lithium
        else (f"a bank of {say.cca(float(case['bank.cca']))} asks for {say.amps(needed)}")
    )
    if amps is None:
        return "information", f"it must break a short circuit: {short}{f'; {MAKER}' if lithium else ''}"
    if amps < needed:
        return "no", f"{theirs} is not enough: {short}{f'; {MAKER}' if lithium else ''}"
    if lithium:
        return "information", f"{theirs} is over that: {short}; {MAKER}"
    return "yes", f"{theirs} is enough: {short}"


def _quoted(case: Case) -> float | None:
    """The amps that are quoted for a short of their lithium bank, None where its amp-hours are not known."""
    capacity = case.get("bank.capacity")
    if not capacity:
        return None
    case.because(
        f"Owners quote about {say.amps(QUOTED.value * 100)} for 100 Ah; batteries in parallel add up", QUOTED.cite
    )
    return QUOTED.value * float(capacity)


def with_breaking(case: Case, band: Band, answer: Answer, rated: bool) -> Answer:
    """The answer on a fuse, with what it must be able to break where that is asked as well."""
    if not asked(case):
        return answer
    verdict, sentence = judged(case, band)
    told = f"{sentence[:1].upper()}{sentence[1:]}."
    if not rated:
        return replace(answer, verdict=verdict, headline=told, asks=())
    stricter = verdict == "no" or answer.verdict not in STRICT
    sides = "no" if verdict == "no" else answer.verdict
    head = f"{answer.headline.removesuffix('.')}; {sentence}."
    return replace(answer, verdict=sides if stricter else answer.verdict, headline=head)
