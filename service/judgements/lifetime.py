"""The usual life of a battery of a kind, and where an age stands in it."""

from __future__ import annotations

from service import reference, say
from service.case import Case
from service.reply import Figure
from service.rules.readings import NEAR


def of_one_age(case: Case) -> bool:
    """Whether the one age that is told is that of the first kind: "an AGM of 2 years and a flooded one"."""
    age, one, other = (
        case.stated.get("battery.age"),
        case.stated.get("battery.chemistry"),
        case.second.get("battery.chemistry"),
    )
    if not (age and one and other and age.span and one.span and other.span) or "battery.age" in case.second:
        return False
    return one.span < age.span < other.span


def life_of(case: Case) -> tuple[str, float, float]:
    """The name of the kind whose usual life is taken, and the two ends of that life in years."""
    said = str(case.said("battery.chemistry") or "lead")
    kind = {"lead": "flooded", "lithium-other": "lfp"}.get(said, said)
    row = reference.row("lives", chemistry=kind)
    low, high = float(row["low"].value), float(row["high"].value)
    name = say.CHEMISTRY[kind]
    case.step(f"{say.capital(name)} batteries usually last {say.between(low, high, 'years')}", row["low"].cite)
    return name, low, high


def judged(age: float, low: float, high: float) -> str:
    """yes under the low end of its life, marginal up to the high end, no above."""
    if age < low - NEAR:
        return "yes"
    return "marginal" if age <= high + NEAR else "no"


def months(age: float, low: float, high: float) -> tuple[Figure, ...]:
    """The months that are left by age; none past the usual life."""
    if age > high:
        return ()
    least, most = (max(0.0, (years - age) * 12) for years in (low, high))
    return (Figure("months_left", "months left by age", (least + most) / 2, "months", least, most),)
