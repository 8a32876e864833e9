"""Water for cells with caps: which, when and how much."""

from __future__ import annotations

from dataclasses import dataclass

from service import reference, say
from service.case import Case
from service.reply import Figure
from service.sentences import wording
from service.told import caps, water_level, who

SEALED = {"agm": "AGM", "gel": "gel", "lfp": "lithium", "lithium-other": "lithium"}
ONE_ADULT = "One adult with goggles and gloves who stays beside it,"


def other_water(case: Case) -> bool:
    """Whether another water than distilled is to go in, and none is left to choose."""
    if water_level.in_its_place(case.text):
        return case.says("detail:tap_water") or water_level.which(case.text)
    return case.says("detail:tap_water") and not case.says("detail:distilled_too")


def water(case: Case) -> Advice:
    """Topping up: what, how far, how often."""
    if sealed(case):
        named = case.get("battery.chemistry") in SEALED
        battery = f"{wording.a_kind(case)} battery" if named else "A battery without caps"
        head = f"{battery} takes no water: it is sealed, and opening it ruins it."
        return Advice("information", head, (("Only batteries with caps are topped up", "watering"),))
    often, often_cite = care("water-interval")
    above, above_cite = care("water-above")
    below, _ = care("water-below-tube")
    steps = (
        (f"Look {often}", often_cite),
        (
            f"A full battery stands about {above} over the plates, or {below} below the filling tube; "
            "the mark in the cell comes first",
            above_cite,
        ),
        (f"In use or not, {care('water-least')[0]}", care("water-least")[1]),
        (care("water-when")[0], care("water-when")[1]),
    )
    figures = (interval("water-interval", "look at the water"), interval("water-least", "in use or not"))
    tap = other_water(case)
    if case.says("detail:plates_dry"):
        start = f"No {water_level.named(case.text)}, not for once either: cover" if tap else "Cover"
        water_named = "distilled or deionised water" if tap else "distilled water"
        head = f"{start} the plates with {water_named} today, then charge, and fill to the mark only after that."
        worn = ("Plates that stood dry for long have lost capacity for good", "care-practice")
        return Advice("no", head, (*steps, worn), figures, today=True)
    if tap:
        other = water_level.named(case.text)
        head = f"No {other}: what is dissolved in it stays on the plates, so use distilled or deionised water."
        if case.says("request:how_often"):
            head = (
                f"Look {often}, and fill with distilled or deionised water: what is in tap water stays on the plates."
            )
        return Advice("no", head, steps, figures)
    if water_level.is_low(case.text):
        head = f"Yes: charge it, then fill each cell to its mark, about {above} over the plates, with distilled water."
        return Advice("information", head, steps, figures)
    if water_level.which(case.text):
        return Advice("information", which_water(case, often), steps, figures)
    if case.says("detail:before_or_after"):
        head = "After charging: fill to the mark with distilled water; before it, add only enough to cover the plates."
        return Advice("information", head, steps, figures)
    head = "Look at the water every month in season, and fill to the mark with distilled water after charging."
    if who.children_may(case.text):
        head = (
            "No, not children: acid and gas are for one adult with goggles and gloves; distilled water, after charging."
        )
        return Advice("no", head, steps, figures)
    if who.is_asked(case.text):
        head = f"{ONE_ADULT} no children: distilled water to the mark after charging, looked at every month in season."
    return Advice("information", head, steps, figures)


def stood_dry(case: Case) -> Advice:
    """Cells that ran out of water and were filled since: what is left of them, and why it happened."""
    head = "Test it under load before you rely on it, and have the charger's volts checked: too many boil water off."
    worn = ("Plates that stood dry for long have lost capacity for good", "care-practice")
    often, cite = care("water-interval")
    steps = (worn, ("Charge it full, let it rest, and test it under load", "test-under-load"), (f"Look {often}", cite))
    return Advice("information", head, steps, (interval("water-interval", "look at the water"),))


def which_water(case: Case, often: str) -> str:
    """The water that goes in, after how often where that is asked as well."""
    if case.says("request:how_often"):
        return f"Look {often}, and fill with distilled or deionised water only."
    return "Distilled or deionised water only: what is dissolved in any other stays on the plates."


@dataclass(frozen=True, slots=True)
class Advice:
    """What is said of one aspect: the headline, the steps with their sources, and the figures."""

    verdict: str
    headline: str
    steps: tuple[tuple[str, str], ...] = ()
    figures: tuple[Figure, ...] = ()
    today: bool = False


def care(name: str) -> tuple[str, str]:
    """A value of the care table in words, with its source."""
    found = reference.value("care", name)
    text = found.value if isinstance(found.value, str) else say.quantity(found.value, found.unit)
    return text, found.cite


def interval(name: str, label: str) -> Figure:
    """An interval as a figure in words."""
    return Figure(name.replace("-", "_"), label, care(name)[0])


def sealed(case: Case) -> str:
    """The name of a kind that takes no water, or ""."""
    return SEALED.get(str(case.get("battery.chemistry", "")), "a battery without caps" if caps.has_none(case) else "")
