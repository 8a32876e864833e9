"""The short circuit that a fuse must be able to break: kiloamps, which are no rating of its own."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.judgements.fusing import Band
from service.reply import Answer, Verdict

QUOTED = reference.value("fuse_rules", "lithium_fault")
KILO = regex(r"(?<![\d.,])(\d+(?:[.,]\d+)?) ?(?:ka|kilo ?amps?)\b", re.IGNORECASE)
AMPS = regex(r"(?<![\d.,])(\d{3,6}) ?(?:a|amps?)? ?(?:aic|interrupt\w*|breaking)\b", re.IGNORECASE)


def named(text: str) -> float | None:
    """The amps that a fuse is said to break, None where none are told."""
    if found := KILO.search(text):
        return 1000 * float(found[1].replace(",", "."))
    found = AMPS.search(text)
    return float(found[1]) if found else None


def asked(case: Case) -> bool:
    """Whether the question speaks of what a fuse can break."""
    return case.says("term:interrupting", "detail:interrupting") or KILO.search(case.text) is not None


def judged(case: Case, band: Band) -> tuple[Verdict, str]:
    """The verdict on what the fuse can break, and the sentence for it."""
    amps = named(case.text)
    if case.get("battery.family") == "lithium":
        return _of_lithium(case, amps)
    if band.breaks is None:
        return "information", "what it must break follows from the CCA of the whole bank"
    needed = say.amps(band.breaks)
    if amps is None:
        return "information", f"it must break {needed}"
    if amps < band.breaks:
        return "no", f"one that breaks {say.amps(amps)} is too weak, as this bank asks for {needed}"
    return "yes", f"one that breaks {say.amps(amps)} is strong enough for this bank"


def _of_lithium(case: Case, amps: float | None) -> tuple[Verdict, str]:
    """The same for lithium, whose maker states the current of a short; what owners quote tells what is too weak."""
    capacity = case.get("bank.capacity")
    quoted = float(QUOTED.value) * float(capacity) if capacity else 0.0
    if capacity:
        whole = f"{say.amps(quoted)} for {say.amp_hours(float(capacity))}"
        case.because(
            f"A short of lithium: owners quote about {whole}; the battery's maker states its own figure", QUOTED.cite
        )
    if amps is not None and amps < quoted:
        return "no", f"one that breaks {say.amps(amps)} is too weak for this bank, so take class T"
    return "information", "it must break what the battery's maker states, else take class T"


def with_breaking(case: Case, band: Band, answer: Answer, rated: bool) -> Answer:
    """The answer on a fuse, with what it must be able to break where that is asked as well.

    `rated`: whether the answer is on the rating of a fuse, and not only asks for what decides it.
    """
    if not asked(case):
        return answer
    verdict, sentence = judged(case, band)
    if not rated:
        opening = {"no": "No: ", "yes": "Yes: "}.get(verdict, "")
        alone = sentence.replace("one that", "a fuse that", 1).replace("it must", "the fuse must", 1)
        return replace(answer, verdict=verdict, headline=say.capital(f"{opening}{alone}."), asks=())
    head = f"{answer.headline.removesuffix('.')}; {sentence}."
    return replace(answer, verdict="no" if verdict == "no" else answer.verdict, headline=head)
