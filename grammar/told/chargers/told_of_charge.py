"""What a charger's state tells: the volts that hold a battery all winter, and "set to gel, which the battery is"."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene

READING, CHARGE, SETTING, KIND = "reading.voltage", "charger.voltage", "charger.setting", "battery.chemistry"
FLOAT = re.compile(r"\bfloat(?:s|ed|ing)?\b|\btrickl\w+|\bmaintain\w*|\bon charge\b", re.IGNORECASE)
HELD_AT = re.compile(
    r"\b(?:on|held at|kept at|sits at|sitting at|stays at|at a constant|at|floats? at|floated at|floating at)"
    r"(?: a constant| a steady)? $",
    re.IGNORECASE,
)
ALWAYS = re.compile(
    r"(?: ?v(?:olts?)?)? (?:all (?:winter|summer|year|season|week|month|the time|night)"
    r"|for (?:months|weeks|ever|good)|forever"
    r"|permanently|constantly|day and night|round the clock|without end|non[- ]?stop|the whole (?:winter|year|time)"
    r"|(?:from \w+ )?(?:till|until|to) (?:spring|easter|march|april|may))\b",
    re.IGNORECASE,
)
FLOATING = (13.0, 14.4)  # volts of 12 V that hold a battery full
WHICH_IT_IS = re.compile(  # behind the setting: "on GEL by the by, which the battery is"
    r"^[^.?!;:]{0,14}?,? (?:which|as|and so) (?:is (?:what )?(?:the|my|our|its) (?:battery|accu|bank)(?: is)?"
    r"|(?:the|my|our) (?:battery|accu|bank) (?:is|'s)(?: too| also)?|it is|is mine|mine is)(?=[.,;:?!)]|$)"
    r"|^[^.?!;:]{0,14}?,? (?:the )?same as (?:the|my|our) (?:battery|accu|bank)(?: is)?(?=[.,;:?!)]|$)",
    re.IGNORECASE,
)
AFTER = 70  # characters


def told_of_charge(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with what the charger's volts and its switch tell of the battery."""
    held = any(item.fact == READING for item in stated) and FLOAT.search(scene.text) is not None
    stated = [_held(scene, item) for item in stated] if held else stated
    if any(item.fact == KIND for item in stated):
        return stated
    return [*stated, *(_kind(item) for item in stated if item.fact == SETTING and _which_it_is(scene, item))][
        : len(stated) + 1
    ]


def _held(scene: Scene, item: Stated) -> Stated:
    """Volts that hold a battery for a long time, of a charger: "on 13.6 all winter", where a float is spoken of."""
    if item.fact != READING or not isinstance(item.value, float):
        return item
    low, high = FLOATING
    start, end = item.span
    volts = item.value / 2 if item.value > 2 * low - 1 else item.value
    told = HELD_AT.search(scene.ahead(start)) and ALWAYS.match(scene.text[end : end + AFTER])
    return replace(item, fact=CHARGE) if told and low <= volts <= high else item


def _which_it_is(scene: Scene, item: Stated) -> bool:
    """Whether the battery is told to be of the kind that the charger stands on."""
    return WHICH_IT_IS.match(scene.text[item.span[1] : item.span[1] + AFTER]) is not None


def _kind(item: Stated) -> Stated:
    return replace(item, fact=KIND, how="grammar")
