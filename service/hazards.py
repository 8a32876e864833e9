"""Which dangers stand, in a message and in its thread, and the case of the hazard answer."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from grammar.reading import Message
from service import reference
from service.case import Case
from service.rules.readings import overvoltage

TOLD = ("present", "general")
OVERCHARGED = "overcharging-voltage"
MEASURED = ("reading.voltage", "charger.voltage")


def signs(case: Case, message: Message) -> tuple[str, ...]:
    """The dangers of a message as "family:status", those it tells and those that follow from its readings."""
    found = [f"{item.family}:{item.status}" for item in message.dangers]
    measured = any(fact in case.stated and case.stated[fact].origin == "message" for fact in MEASURED)
    if measured and overvoltage(case.fresh()):
        found.append(f"{OVERCHARGED}:present")
    return tuple(dict.fromkeys(found))


def standing(now: Iterable[str], before: Iterable[str]) -> tuple[str, ...]:
    """The families that stand after a message with these signs; one that is denied or mended no longer does."""
    status = dict(sign.split(":") for sign in now)
    kept = (family for family in before if status.get(family) not in ("denied", "past"))
    added = (family for family, found in status.items() if found == "present" and _stops(family))
    return tuple(dict.fromkeys((*kept, *added)))


def hazard_case(case: Case, now: Iterable[str], stands: Iterable[str]) -> Case | None:
    """The case of a hazard answer: signs of this message and families that still stand; None without any."""
    cues = {f"danger:{sign}" for sign in now if sign.split(":")[1] in TOLD}
    cues |= {f"danger:{family}:standing" for family in stands if f"danger:{family}:present" not in cues}
    if not cues:
        return None
    case.cues = case.cues | cues
    case.hazard = True
    return case


def _stops(family: str) -> bool:
    return family not in set(_explained())


def _explained() -> Iterator[str]:
    for row in reference.rows("hazards"):
        if "verdict" in row and row["verdict"].value == "information":
            yield str(row["id"].value)
