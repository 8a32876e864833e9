"""Words that the answers on readings and care share: the opening, the kind of battery, a charge as people say it."""

from __future__ import annotations

from service import say
from service.case import Case
from service.rules.readings import Charge, limit

OPENINGS = {"yes": ("Yes", "No"), "marginal": ("Only just", "A little"), "no": ("No, not yet", "Yes")}

BESIDE = ("Only just: ", "Usually yes: ", "Yes, within limits: ", "Yes: ")

NO_PROOF = "Not by this reading"  # of a battery that they fear is dead or damaged: a reading tells its charge
FILLED, NEARLY = 97.5, 90.0  # percent: from the first a battery counts as full
FEARS = ("detail:asks_dead", "detail:asks_harmed")
WHAT_IS_WRONG = {"yes": "Nothing by this reading", "marginal": "A little", "no": "Too low"}


def opening(case: Case, verdict: str) -> str:
    """The first words of a verdict: turned round where they ask whether something is bad."""
    if verdict not in OPENINGS:
        return "Too early to say"
    told = case.says("request:what_is", "detail:weak_motor", "detail:dead_motor", "detail:how_bad", "detail:saved")
    if told and case.says("detail:asks_bad"):  # "what is wrong", "how bad", "the thruster is weak": neither yes nor no
        return WHAT_IS_WRONG[verdict]
    good, bad = OPENINGS[verdict]
    return bad if case.says("detail:asks_bad") and not case.says("detail:asks_good") else good


def whether_full(charge: float) -> str:
    """Yes or no, where they ask whether it is full."""
    return "Yes" if charge >= FILLED else "Nearly" if charge >= NEARLY else "No"


def fears_it_spoilt(case: Case, verdict: str) -> bool:
    """Whether they ask if it is dead or damaged, "did we ruin it": a reading that tells a charge is no proof."""
    return case.says("detail:asks_harmed") or (verdict in ("no", "marginal") and case.says(*FEARS))


def beside(headline: str) -> str:
    """A headline that stands among the reasons of another one, without its Yes, which would seem to answer that."""
    rest = next((headline.removeprefix(start) for start in BESIDE if headline.startswith(start)), headline)
    return say.capital(rest)


def kind_is_open(case: Case) -> bool:
    """Whether a lead battery's kind is not said."""
    return case.said("battery.chemistry") in (None, "lead")


def kind(case: Case) -> str:
    """The kind of battery as said, else lead."""
    said = case.said("battery.chemistry")
    return say.CHEMISTRY.get(str(said), "lead") if said else "lead"


def a_kind(case: Case, capital: bool = True) -> str:
    """The kind with its article: "An AGM", "A wet-cell"."""
    name = kind(case)
    article = "an" if name[0] in "A" else "a"
    return f"{article.capitalize() if capital else article} {name}"


def percent(value: float, *limits: float) -> str:
    """A charge to 5 %, that rounding never lifts over a limit: "just under 75 %"."""
    rounded = say.fives(value)
    for at in limits or (limit("lead-good"), limit("lead-half")):
        if value < at <= rounded:
            return f"just under {say.charge(at)}"
    return say.charge(value) if rounded or value <= 0 else f"under {say.charge(5)}"


def charge(found: Charge) -> str:
    """How full: one figure, or a range where the charts differ."""
    if found.low is not None and found.high is not None:
        return say.between(say.fives(found.low), say.fives(found.high), "%", 0)
    if found.kind == "lfp":
        return percent(found.value, limit("lithium-good"), limit("lithium-low"))
    return percent(found.value)


def about(told: str) -> str:
    """ "about 80 %"; a range and "just under 75 %" stay as they are."""
    return told if told.startswith(("just", "under")) or " to " in told else f"about {told}"


def full(found: Charge, only: str = "") -> str:
    """How full, as the end of a sentence: "is full", "is only about 30 % full", "is empty"."""
    if found.low is None and found.value >= FILLED:
        return "is full"
    if found.low is None and found.kind != "lfp" and found.value < 2.5:
        return "is empty"
    told = charge(found)
    return f"is {only}{about(told)} full"
