"""The cells of a battery that a hydrometer read: how far apart, and what is done first."""

from __future__ import annotations

from service import reference
from service.case import Case
from service.judgements.cells import cells
from service.reply import Answer
from service.rules.readings import NEAR, cite, limit
from service.sentences import wording
from service.topic import Topic

WAY_BACK = ("detail:saved", "detail:desulphate", "detail:equalise")


def uneven(case: Case, spread: float) -> bool:
    """Whether the cells are too far apart; a smaller spread that asks for care is noted."""
    too_far = spread >= limit("gravity-spread") - NEAR
    if not too_far and spread >= limit("gravity-uneven") - NEAR:
        case.step(f"A spread of {spread:.3f} asks for a full charge and a second reading", cite("gravity-uneven"))
    return too_far


def by_spread(topic: Topic, case: Case, spread: float) -> Answer:
    """The verdict on the difference between cells alone."""
    most = f"{limit('gravity-spread'):.3f}"
    case.step(f"Highest less lowest cell {spread:.3f}; from {most} a cell is at fault", cite("gravity-spread"))
    if uneven(case, spread):
        if case.says(*WAY_BACK, "detail:what_now"):
            return equalised_first(topic, case, spread)
        start = wording.opening(case, "no").removesuffix(", not yet")
        head = (
            f"{start}: the cells differ by {spread:.3f}, and from {most} on one cell is failing{lowest(case)}, so the "
            "battery is near its end."
        )
        return topic.says("no", head)
    opening = wording.opening(case, "yes")
    return topic.says("yes", f"{opening}: the cells differ by {spread:.3f}, which is within the limit of {most}.")


def equalised_first(topic: Topic, case: Case, spread: float) -> Answer:
    """Whether a battery with a cell apart is thrown out or saved: one equalising charge decides."""
    often = reference.value("care", "equalise-interval")
    case.because(
        "Equalise until the gravity of all cells stays the same, mostly 1 to 8 hours: plates covered, caps on, aired, "
        "electronics off",
        often.cite,
    )
    head = (
        f"Equalise it once, watched, and replace it if the cells stay apart: they differ by {spread:.3f}, and from "
        f"{limit('gravity-spread'):.3f} on one is failing{lowest(case)}."
    )
    return topic.says("no", head)


def lowest(case: Case) -> str:
    """Which cell it is, by its reading; nothing where only the difference was told."""
    told = cells(case)
    return f", the one at {min(told):.3f}" if len(told) > 1 else ""
