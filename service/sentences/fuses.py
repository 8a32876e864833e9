"""What is said of fuses: the one to fit, one that is named, and two of which neither suits."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import circuit, supply
from service.judgements.fusing import PLACE, PLACED, STARTER, Band, carries_it, next_cable, running, too_thin
from service.reply import Answer, Verdict
from service.told import fuse_habits

_FUSE = regex(r"\bfuse\b")
EITHER_ONE = regex(r"\b(?:breaker or (?:an? )?fuse|fuse or (?:an? )?breaker)\b", re.IGNORECASE)
BREAKER = regex(r"\bbreakers?\b", re.IGNORECASE)
BLOWS = regex(r"\b(?:blow\w*|blew|pop(?:s|ped|ping)?|trip\w*|(?:went|gone) again|gave up|ke(?:eps|pt) going)\b", re.I)
NEVER_BLOWS = regex(  # "400 A is better because then it does not blow"
    r"\b(?:not|never|won'?t|doesn'?t|don'?t|can'?t|cannot|wouldn'?t|less likely to|hardly|without) (?:ever )?"
    r"(?:blow(?:s|ing)?|pop(?:s|ping)?|trip(?:s|ping)?)\b",
    re.IGNORECASE,
)
WHICH = regex(r"\b(?:what|which)(?: \w+){0,2} (?:fuse|breaker)", re.IGNORECASE)  # asks no yes or no
WHETHER = regex(r"\b(?:do|does|must|should)\b[^.?!]{0,40}\b(?:fuse|breaker|fusing)", re.IGNORECASE)
HABITS = {  # cue: verdict, headline, why, source; where neither the load nor the cable is known
    "bms_instead": (
        "no",
        "No: the BMS (the safety switch inside a lithium battery) does not replace the fuse that protects the cable.",
        "A BMS protects the cells; a short in the cable is the fuse's work",
        "fuse-practice",
    ),
    "class_t": (
        "information",
        "For lithium use class T, unless the maker states a short-circuit current that another fuse can break.",
        "Lithium can drive thousands of amps into a short, and a fuse that cannot break them may burst",
        "e11-interrupting",
    ),
    "each_battery": (
        "information",
        f"One fuse for each battery, {PLACED}, because each of them can feed a short circuit.",
        "Batteries in parallel feed each other's fault",
        PLACE.cite,
    ),
    "need_fuse": (
        "information",
        f"Yes, a thruster needs a fuse as well, {PLACED}: only the engine's own starter is let off.",
        "The fuse protects the cable, not the motor",
        STARTER.cite,
    ),
    "fuse_place": (
        "information",
        f"Put the fuse {PLACED}, because the cable before the fuse has no protection.",
        "Measured along the cable",
        PLACE.cite,
    ),
}


SIZED = regex(  # the size of the fuse is asked, not only its place
    r"\b(?:what|which|size|rating|rated|how (?:big|many|large))\b[^.?!,;]{0,20}\bfuse|\bfuses? (?:size|rating|amps)",
    re.IGNORECASE,
)

SIZE_TOO = regex(  # the same, of one fuse that is to be fitted: "where does it go, and how big must it be"
    r"\b(?:what|which)(?: (?:size|sized|rating|kind|sort|amps?|amperage|of|an?))* (?:fuse|breaker)"
    r"|\b(?:what|which) (?:size|rating|amps)\b|\bhow (?:big|large|strong|many amps)\b"
    r"|\b(?:fuse|breaker)s? (?:size|rating|amps)\b",
    re.IGNORECASE,
)
ITS_SIZE = "its size follows from the amps of the motor and the size of the cable"

WHAT_IF = regex(  # "what happens if the fuse is too small"
    r"\bwhat (?:happens|would happen|if|harm)\b[^.?!;]{0,30}\b(?:fuse|breaker)\b[^.?!;]{0,20}"
    r"\b(?P<size>small|low|weak|big|large|high|strong)\b",
    re.IGNORECASE,
)
TOO_SMALL = (
    "A fuse too small blows while the motor works as it should, and leaves you without it; the cable takes no harm."
)
TOO_LARGE = "With a fuse too large the cable can burn before the fuse blows: what the cable may carry sets the most."


def habit_alone(case: Case) -> tuple[Verdict, str] | None:
    """What is asked of a fuse that was spoken of and no sum answers: whether a BMS replaces it, where it goes."""
    asked = fuse_habits.bms_enough(case.text), fuse_habits.where_it_goes(case.text)
    if "fuse-size" not in case.before or not any(asked):
        return None
    verdict, head, why, cite = HABITS["bms_instead" if asked[0] else "fuse_place"]
    case.step(why, cite)
    return ("no" if verdict == "no" else "information"), head


def shortened(head: str) -> str:
    """A sentence of habit without its reason, for more to follow: "Put the fuse within 7 in of the battery plus"."""
    return head.partition(", because")[0].partition(": only")[0].removesuffix(".")


def what_if(case: Case) -> str | None:
    """What a fuse of the wrong size does, where that is asked; None where it is not."""
    found = WHAT_IF.search(case.text)
    if found is None:
        return None
    case.step("The fuse protects the cable: enough for the motor, not too much for the cable", "fuse-practice")
    return TOO_SMALL if found["size"].lower() in ("small", "low", "weak") else TOO_LARGE


def blew(case: Case) -> bool:
    """Whether a fuse did blow, and it is not only said of one that it does not."""
    told = len(BLOWS.findall(case.text)) > len(NEVER_BLOWS.findall(case.text)) or not NEVER_BLOWS.search(case.text)
    return case.says("detail:blows") and told


def place(case: Case) -> str:
    """Where the fuse goes, for a headline, where the place was asked; the caution tells it in any case."""
    return f" {PLACED}" if case.says("detail:fuse_place") else ""


def fitted(case: Case, band: Band, cable: str, thicker: str, named: str = "") -> str:
    """The sentence for the fuse to fit on a cable that carries its load.

    `thicker` is the size that suits it better, `named` what the catalogue says otherwise.
    """
    fit, most = say.amps(band.fit or 0), say.amps(band.most or 0)
    if over_what_suits(band) and not thicker:
        suits = f"over the {say.amps(band.cable or 0)} that suits {cable}, within its {most} limit"
        return f"Fit a {fit} fuse{place(case)}{named}: {suits}; only two cables for each pole suit it better."
    if over_what_suits(band):
        suits = f"that is over the {say.amps(band.cable or 0)} that suits {cable}, within its {most} limit"
        return f"Fit a {fit} fuse{place(case)}{named}: {suits}; {thicker} fits better."
    return f"Fit a {fit} fuse{place(case)}{named}; {most} is the most for {cable}."


def over_what_suits(band: Band) -> bool:
    """Whether the fuse of the load is larger than the first one that suits the cable."""
    return bool(band.cable and band.fit and band.fit > band.cable)


def the_most(case: Case, band: Band, cable: str) -> str:
    """The sentence where they ask for the largest fuse: that one first, then the one to fit."""
    most, fit = f"{say.amps(band.most or 0)} is the most for {cable}", say.amps(band.fit or 0)
    if not too_thin_if_older(case):
        return f"{most}; fit {fit}."
    warm, amps = f"75{say.NB}°C", say.amps(circuit.current(case))
    return f"{most} with 105{say.NB}°C insulation, where {fit} suits; with {warm} it is too thin for {amps}."


def their_word(case: Case) -> str:
    """ "breaker" where they speak of one and of no fuse."""
    if BREAKER.search(case.text) and not _FUSE.search(case.text.lower()):  # whatever was spoken of before
        return "breaker"
    return "breaker" if case.says("detail:breaker") and not case.says("detail:fuse_word") else "fuse"


def in_their_word(case: Case, answer: Answer) -> Answer:
    """The answer with their word for what protects the cable, and with a yes where they ask if one is needed."""
    word = their_word(case)
    whether = case.says("detail:need_fuse") and WHETHER.search(case.text) and not WHICH.search(case.text)
    if whether and answer.headline.startswith("Fit "):
        answer = replace(answer, headline=f"Yes: f{answer.headline[1:]}")
    if EITHER_ONE.search(case.text) and answer.headline.startswith("Fit a "):
        case.source("fuse-practice")
        sized = answer.headline[1:].replace(" fuse", " one", 1)
        return replace(answer, headline=f"Either, if it can break the bank's short circuit: f{sized}")
    if word == "fuse":
        return answer
    figures = tuple(replace(item, label=_FUSE.sub(word, item.label)) for item in answer.figures)
    return replace(answer, headline=_FUSE.sub(word, answer.headline), figures=figures)


def far(metres: float) -> str:
    """A distance from the battery to its fuse, the short ones in millimetres."""
    return say.length(metres) if metres >= 1 else f"{metres * 1000:.0f}{say.NB}mm ({metres / 0.0254:.0f}{say.NB}in)"


def cable_beside(case: Case, away: float) -> None:
    """What the cable loses, as a step beside a finding on its fuse; `away` is no length of the cable."""
    if "cable.length" not in case.stated or float(case["cable.length"]) == away:
        return
    lost = circuit.loss(case, circuit.current(case))
    within = "within" if lost.within else "over"
    share, most = say.number(lost.percent, 1), say.number(lost.allowed)
    told = f"{say.volts(lost.volts, 2)} or {share}{say.NB}%, {within} the {most}{say.NB}% allowed"
    case.because(f"{circuit.name(case)} loses {told}", circuit.limit_cite(lost.allowed))


def print_decides(case: Case, band: Band, cable: str, thicker: str, rated: float | None = None) -> str:
    """The sentence for a cable that carries its load with new insulation only.

    `rated` is the fuse that is there, None where one is to be fitted.
    """
    holds = f"105{say.NB}°C insulation {cable} takes "
    if rated is None and case.says("detail:fuse_place") and not SIZED.search(case.text):
        return f"Put the fuse {PLACED}; what size, the print on the insulation decides."
    if rated is None:
        first = f"a {say.amps(band.fit or 0)} fuse{place(case)}"
    elif rated == band.house or (band.cable and rated <= band.cable):
        first = f"the {say.amps(rated)} fuse"
    else:
        first = f"the {say.amps(rated)} fuse, which only just suits it"
    fits_better = bool(
        thicker and band.cable and (rated or band.fit or 0) > band.cable and (rated or band.fit) == band.fit
    )
    better_on = f" ({thicker} fits better)" if fits_better else ""
    thin = f"with 75{say.NB}°C it is too thin for {say.amps(circuit.current(case))}"
    return f"We can't say yet: with {holds}{first}{better_on}, but {thin}."


def no_fuse_suits(case: Case, band: Band) -> str:
    """The sentence for a cable that is too thin for its load or for the load's fuse."""
    amps, carries = circuit.current(case), float(case["cable.ampacity"])
    thicker, cable = next_cable(case, band), circuit.name(case)
    fit = f"fit {thicker}" if thicker else "a technician will look at it"
    if carries < amps:
        if thicker and (carrying := carries_it(case)) != thicker:
            fit = f"{carrying} carries it, {thicker} suits its {say.amps(band.load or 0)} fuse as well"
        return f"No fuse suits: {cable} may carry {say.at_most(carries)}, and the load draws {say.amps(amps)}; {fit}."
    return (
        f"No fuse suits: the load needs {say.amps(band.load or 0)}, and {cable} allows {say.amps(band.most or 0)} "
        f"at most; {fit}."
    )


def judge(case: Case, band: Band, rated: float) -> tuple[str, str]:
    """The verdict on one fuse and the sentence for it."""
    named = f"a {say.amps(rated)} fuse"
    if too_thin(case, band):
        unsuited = no_fuse_suits(case, band)
        if band.most and rated > band.most:
            return "no", f"No: take the {say.amps(rated)} fuse out; {unsuited[:1].lower()}{unsuited[1:]}"
        told = unsuited.replace("No fuse suits: ", f"No: neither {named} nor any other suits, as ")
        head, _, fit = told.rpartition("; ")
        return "no", f"{head}; {fit.partition(', ')[0].removesuffix('.')}."  # the headline has room for one size
    if band.most and rated > band.most:
        return "no", f"No: {named} is too large, as {circuit.name(case)} allows {say.amps(band.most)} at most."
    if band.load is None:
        return "needs-facts", f"We can't say yet: {named} is within what the cable allows; the amps of the load decide."
    amps = say.amps(circuit.current(case))
    if rated < min(band.load, band.fit or band.load):
        takes = f"{say.amps(band.load)}{'' if band.most else ', if the cable allows it'}"
        return "no", f"No: {named} is too small for {amps} running, which takes {takes}."
    if band.most is None:
        return "information", f"{say.capital(named)} is enough for {amps}; the cable must allow it as well."
    cable = circuit.name(case)
    if rated == band.house or (band.cable and rated <= band.cable):
        if band.house and rated != band.fit == band.house:  # the catalogue's comes before any that suits as well
            within = f"is within what {cable} allows" if rated > band.house else f"is enough for {amps} running"
            ours = f"fit the {say.amps(band.house)} that our catalogue names for {supply.load_name(case)}"
            return "yes", f"Yes: {named} {within}, but {ours}."
        at = f" with 105{say.NB}°C insulation" if too_thin_if_older(case) else ""
        return "yes", f"Yes: {named} suits {amps} on {cable}{at}."
    suiting = better(case, band)
    return "marginal", (
        f"Only just: {named} is over the {say.amps(band.cable or 0)} that suits {cable}, within its "
        f"{say.amps(band.most)} limit{f'; {suiting} fits better' if suiting else ''}."
    )


def better(case: Case, band: Band) -> str:
    """What suits better than a fuse at the limit: the load's own where the cable takes it, else a thicker cable."""
    if band.fit and (band.fit == band.house or (band.cable and band.fit <= band.cable)):
        return f"{say.amps(band.fit)}"
    return next_cable(case, band)


def neither_suits(case: Case, band: Band, rated: float, other: tuple[float, str, str]) -> str:
    """The sentence for two fuses of which the better one is at the limit: what suits, and why neither does."""
    suiting, smaller = better(case, band), other[0] < rated and other[1] == "no"
    if not suiting:
        return ""
    small = f"{say.amps(other[0])} is too small for {say.amps(circuit.current(case))}, and " if smaller else ""
    fit = f"Fit {suiting}" if suiting == say.amps(band.fit or 0) else f"Take {say.amps(rated)}, better on {suiting}"
    return f"{fit}: {small}{say.amps(rated)} is over the {say.amps(band.cable or 0)} that suits {circuit.name(case)}."


def one_each_way(case: Case, band: Band, *rated: float) -> str:
    """The sentence for two fuses of which one is too small for the load and one too large for the cable; else ""."""
    low, high = sorted(rated)
    if not band.most or not band.fit or too_thin(case, band) or not (low < band.fit and high > band.most):
        return ""
    small = f"{say.amps(low)} is too small for {say.amps(circuit.current(case))}"
    return f"Neither: {small}, {say.amps(high)} too large for {circuit.name(case)}; fit {say.amps(band.fit)}."


def too_thin_if_older(case: Case) -> bool:
    """Whether their cable would be too thin with the 75 °C insulation of older cable, the print not being known."""
    amps, warm = running(case), circuit.warm_rating(case) if circuit.has_cable(case) else None
    return amps is not None and warm is not None and warm < amps <= float(case["cable.ampacity"])
