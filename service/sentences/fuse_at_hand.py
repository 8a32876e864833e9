"""Whether the fuse that they have is right, the one that blew, and two in one line."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import circuit, supply
from service.judgements.fusing import (
    RATINGS,
    Band,
    figures,
    running,
    too_thin,
)
from service.reply import Answer, Option, strictness
from service.sentences.fuse_faults import ask_cable, decided
from service.sentences.fuses import (
    blew,
    neither_suits,
    one_each_way,
)
from service.told import blown_at_once
from service.topic import Topic

BESIDE = {  # of the other one of two fuses, by its verdict
    "yes": "; {other}: yes",
    "marginal": "; {other}: only just",
    "no": "; {other} is too {size}",
    "information": "",
    "needs-facts": "",
}
LARGEST = max(RATINGS)
BY_NAME = r"\b(?:bigger|larger|stronger|heavier|higher|next size|size up|go(?:ing)? up)\b"
LARGER_YET = regex(BY_NAME, re.IGNORECASE)
LARGER = regex(
    rf"{BY_NAME}|\binstead\b"
    r"|\b(?:put|putting|fit|fitting|go|going|use|try|swap|stick|bung)\b[^.?!;]{0,24}\d",
    re.IGNORECASE,
)
PUT_IN = regex(r"\b(?:can|could|may|should|shall) (?:i|we)\b|\bwhat about\b|\bhow about\b", re.IGNORECASE)


def no_larger(topic: Topic, case: Case, band: Band) -> Answer | None:
    """A fuse in order for its load that blew, and a larger one asked for: first the cause, then the fuse of the load.

    One that is too small for its load, and one that the cable does not allow, are judged for themselves.
    """
    other, rated = case.second.get("fuse.rating"), float(case["fuse.rating"])
    gone, there = sorted((rated, float(other.value) if other else rated))
    if not blew(case) or band.fit is None or band.load is None or there <= band.fit or too_thin(case, band):
        return None
    if gone < min(band.load, band.fit) or bool(band.most and there > band.most):
        return None
    if not (LARGER.search(case.text) or (other is None and PUT_IN.search(case.text))):
        return None
    if other:
        case.used.setdefault(("fuse.rating", 2), other)
    case.because(
        f"A {say.amps(band.fit)} fuse carries this load: that it blows tells of a jammed propeller, a worn motor or a "
        "short circuit, and a larger one only lets more flow into that",
        "fuse-practice",
    )
    whose = f", as our catalogue names for {supply.load_name(case)}" if band.fit == band.house else ""
    again = f"fit {say.amps(band.fit)}{whose}, and have motor and cable looked at"
    return topic.says("no", f"No larger fuse until the cause is known: {again}.", *figures(band))


def cause_first(case: Case, found: Answer) -> Answer:
    """The answer opened with a no where one of no told rating blew and a larger one is asked for."""
    if not (blew(case) and LARGER_YET.search(case.text)):
        return found
    case.source("fuse-practice")
    fitted = found.verdict == "information"
    after = found.headline.removeprefix("We can't say yet: ")
    head = f"No larger fuse until the cause is known; {'then ' if fitted else ''}{after[0].lower()}{after[1:]}"
    return replace(found, verdict="no" if fitted else found.verdict, headline=head)


def gone_at_once(topic: Topic, case: Case, band: Band) -> Answer | None:
    """A fuse large enough for its load that blows in the first second: first the cause, then the fuse of the load."""
    other = case.second.get("fuse.rating")
    amps, gone = running(case), min(float(item) for item in (case["fuse.rating"], other.value if other else LARGEST))
    if amps is None or gone < amps or not blown_at_once.told(case.text):
        return None
    case.because(
        f"A {say.amps(gone)} fuse carries {say.amps(amps)}: so soon it blows of far more, such as a jammed propeller, "
        "a worn motor or a short circuit; an electrician looks first",
        "fuse-practice",
    )
    then = f"; then fit {say.amps(band.fit)}" if band.fit and not too_thin(case, band) else ""
    if other:
        case.used.setdefault(("fuse.rating", 2), other)
    head = (
        f"No larger fuse until the cause is found: a {say.amps(gone)} fuse that blows at once passes far more than "
        f"{say.amps(amps)}{then}."
    )
    return topic.says("no", head, *figures(band), urgency="today")


def after_a_blown_one(topic: Topic, case: Case, band: Band, *rated: float) -> Answer:
    """Two fuses of which the smaller blew: the larger one, fitted or thought of in its place, is what is judged."""
    gone, there = min(rated), max(rated)
    verdict, why, asks = decided(topic, case, band, there)
    case.used.setdefault(("fuse.rating", 2), case.second["fuse.rating"])
    cause = "it calls for a look at motor and cable, never for a larger fuse alone"
    if band.load and gone < band.load:
        cause = f"it is under the {say.amps(band.load)} of this load, or there is a fault: an electrician looks first"
    case.because(f"That the {say.amps(gone)} fuse blew: {cause}", "fuse-practice")
    over = bool(band.most and there > band.most)
    if over and band.fit and not too_thin(case, band):
        why = f"{why.removesuffix('.')}; fit {say.amps(band.fit)}."
    return topic.says(verdict, why, *figures(band), urgency="today" if over else None, asks=asks)


def two_fuses(topic: Topic, case: Case, band: Band, pair: tuple[tuple[float, str, str], ...]) -> Answer:
    """Two fuses weighed: of the better ones the catalogue's, else the smaller."""
    options = tuple(Option(say.amps(rated), verdict) for rated, verdict, _ in pair)
    (rated, verdict, why), other = sorted(
        pair, key=lambda item: (strictness(item[1]), item[0] != band.house, item[0])
    )  # the catalogue's own before the smaller one
    if verdict == "yes":
        why = f"Take the {say.amps(rated)} fuse: it suits {say.amps(circuit.current(case))} on {circuit.name(case)}"
        size = "small" if other[0] < rated else "large"
        why = f"{why}{BESIDE[other[1]].format(other=say.amps(other[0]), size=size)}."
    elif verdict == "no":
        why = one_each_way(case, band, rated, other[0]) or why
    elif verdict == "marginal":
        why = neither_suits(case, band, rated, other) or why
    elif verdict == "information" and band.fit:
        why = f"The load asks for {say.amps(band.fit)}; the size of the cable decides if it may be larger."
    asks = {"information": ask_cable(topic, case), "needs-facts": (topic.ask("load.current"),)}.get(verdict, ())
    return topic.says(verdict, why, *figures(band), compare=options, asks=asks)
