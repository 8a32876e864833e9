"""Cases of batteries in a place that was measured: which of them go in, and with how much room."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.reference import Row
from service.told import tray, tray_of_whom

SIDES = ("length", "width", "height")
MORE = {"length": tray.HOLD_DOWN, "width": tray.HOLD_DOWN, "height": tray.LUGS}
NOT_ITS_ROOM = regex(  # what else may be asked of a case: "how high is a 27?", "and its CCA?"
    r"\bhow (?!about\b)\w+|\b(?:dimension|measure|outline|weigh|differ|gain)\w*|\b(?:cca|mca|ah|amps?|power|kg)\b",
    re.IGNORECASE,
)
OTHER_PLACE = regex(
    r"\b(?:other|another|new|bigger|larger|second|different) (?:tray|box|place|space|locker|bay)\b", re.IGNORECASE
)
NEAR = 8.0  # mm by which a battery that was measured with a rule may differ from the outline of its case
HALF_INCH, ROUNDED = 12.7, 0.1  # mm; the same where all three are told in whole inches
PLACES = ("thing:space", "detail:space_given")


@dataclass(frozen=True, slots=True)
class Fit:
    """How a case does in a place: yes, marginal (without room for hold-down or lugs) or no."""

    verdict: str
    alone: Mapping[str, float]  # the case
    has: Mapping[str, float]  # the place, of the sides that were measured
    wanted: tuple[float, ...]  # with the hold-down and lugs
    short: tuple[str, ...]  # the sides that have less


def measured(case: Case) -> tray.Place | None:
    """The place that the customer measured, where one is told of."""
    told = case.says(*PLACES) or tray.is_measured(case.text)
    return tray.inside(case.text) if told else tray.by_name(case.text)


def told(case: Case) -> tray.Place | None:
    """The place of this message, else the one measured earlier, which is still the same: "a 27, then?"."""
    own = measured(case)
    if own or NOT_ITS_ROOM.search(case.text) or OTHER_PLACE.search(case.text):
        return own
    elsewhere = tray_of_whom.whose(case.text) or tray.spare(case.text) or tray.length_alone(case.text)
    return None if elsewhere else tray.of_before(case.cues)


def kept(case: Case, topics: Iterable[str]) -> tuple[str, ...]:
    """The cue of the place that was measured where case sizes were asked about, for the turns that follow."""
    place = measured(case) if "group-size" in topics else None
    return (tray.as_cue(place),) if place else ()


def fits(row: Row, place: tray.Place) -> Fit:
    """How a case of the table does in a place."""
    alone = {side: float(row[side].value) for side in SIDES}
    has = {"length": place.length, "width": place.width}
    if place.height is not None:
        has["height"] = place.height
    short = tuple(side for side in has if has[side] < alone[side] + MORE[side])
    too_small = any(has[side] < alone[side] + tray.TOLERANCE for side in has)
    verdict = "no" if too_small else "marginal" if short else "yes"
    return Fit(verdict, alone, has, tuple(alone[side] + MORE[side] for side in has), short)


def those_that_go_in(place: tray.Place, least_cca: float = 0.0) -> tuple[list[str], list[str]]:
    """The cases of 12 V that go in with room, and those that only just do, the largest first.

    `least_cca`: only those of which some have as much.
    """
    rows = (row for row in reference.rows("group_sizes") if float(row["volts"].value) == 12)
    strong = [row for row in rows if float(row["cca_high"].value) >= least_cca]
    largest = sorted(strong, key=lambda row: -math.prod(float(row[side].value) for side in SIDES))
    found = [(str(row["group"].value), fits(row, place).verdict) for row in largest]
    fit, tight = ([name for name, verdict in found if verdict == way] for way in ("yes", "marginal"))
    return fit, tight


def of_measures(outside: tray.Place) -> list[str]:
    """The cases whose outline a battery of these measures has: the nearest, and those that are alike."""
    has = (outside.length, outside.width, outside.height or 0.0)
    apart = {
        str(row["group"].value): [abs(float(row[side].value) - own) for side, own in zip(SIDES, has, strict=True)]
        for row in reference.rows("group_sizes")
    }
    whole = outside.inches and all(side % tray.INCH < ROUNDED for side in has)
    near = {name: sum(sides) for name, sides in apart.items() if max(sides) <= (HALF_INCH if whole else NEAR)}
    return [name for name, by in near.items() if by <= min(near.values()) + tray.TOLERANCE]


def across(sides: Iterable[float], inches: bool) -> str:
    """Sides in the unit in which they were told."""
    shown = (say.number(side / tray.INCH, 1) if inches else say.number(side) for side in sides)
    return f"{' x '.join(shown)}{say.NB}{'in' if inches else 'mm'}"


def inside(place: tray.Place) -> str:
    """The place as it was measured."""
    return across((side for side in (place.length, place.width, place.height) if side is not None), place.inches)
