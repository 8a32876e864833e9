"""How alike two figures are, and as what a new one may be read."""

from __future__ import annotations

from functools import lru_cache

from grammar.facts import facts
from grammar.reading import Quantity, Stated
from grammar.scene.claims import UNSURE
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.canonical import in_unit
from grammar.text.parts import parts
from grammar.text.standard import METRIC_SIZES, NOMINAL

READ = 1.4  # of one battery's readings no one is so many times another
TWICE = 2.0
VOLTS = ("bank.voltage", "battery.nominal")


def may_be_of(old: Stated, value: float) -> bool:
    """Whether a new figure can be one of this fact: a system's volts are round, readings differ by little."""
    if old.fact in VOLTS:
        return value in NOMINAL
    if old.fact == "cable.area":
        return value in METRIC_SIZES
    volts = facts()[old.fact].unit == "volt"
    if not volts or isinstance(old.value, str) or old.fact == "cable.drop":
        return True
    return ratio_of(value, old.value) <= READ or ratio_of(value, old.value * TWICE) <= READ


@lru_cache(maxsize=256)
def as_typed(text: str) -> Quantity | None:
    """The quantity that a figure told before was typed as."""
    return next((part.quantities[0] for part in parts(text) if part.quantities), None)


def free_figures(scene: Scene, stated: list[Stated]) -> list[Item]:
    """The figures of a message that state nothing firmly yet."""
    taken = {item.span for item in stated if item.how not in UNSURE}
    return [item for item in scene.measured if item.part and item.part.span not in taken]


def read_as(old: Stated, new: Quantity) -> float | str | None:
    """The new number as a value of the old fact, in the unit in which that one was typed."""
    spec, typed = facts()[old.fact], as_typed(old.text)
    if spec.kind == "text":
        typed_so = new.text.strip() if "/" in new.text else ""  # a stud of 5/16
        return new.value if isinstance(new.value, str) else typed_so or f"{new.value:g}"
    if typed is None or isinstance(typed.value, str) or isinstance(new.value, str) or isinstance(old.value, str):
        return None
    value: float | None = float(new.value)
    if new.unit or spec.unit == "degree_Celsius":
        value = in_unit(float(new.value), new.unit or typed.unit, spec.unit)
    elif old.low is not None:
        value = in_unit(float(new.value), typed.unit, spec.unit) if typed.unit else float(new.value)
    elif typed.value and new.kind != "count" and old.value != typed.value:
        value = float(old.value) * float(new.value) / float(typed.value)
    if value is None or (spec.low is not None and value < spec.low) or (spec.high is not None and value > spec.high):
        return None
    return value if may_be_of(old, value) else None


def are_alike(new: Stated, old: Stated, most: float) -> bool:
    """Whether two figures are within a ratio of each other."""
    if isinstance(new.value, str) or isinstance(old.value, str):
        return False
    return ratio_of(new.value, old.value) <= most


def ratio_of(one: float, other: float) -> float:
    """How many times the larger is the smaller; endless where they differ in sign."""
    return max(one / other, other / one) if one * other > 0 else float("inf")


def stated_so(scene: Scene, item: Item, fact: str, value: float | str) -> Stated:
    """A fact as a later message states it with a figure."""
    span = scene.span(item.start, item.end)
    return Stated(fact, value, facts()[fact].unit, scene.text[slice(*span)], span, how="asked")
