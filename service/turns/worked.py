"""What the desk itself worked out in a conversation, by topic and figure: it answers "how many MCA is that?" later."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from grammar.reading import Message
from service.case import Value
from service.reply import Answer

CONVERTED = "rating-convert."
KEPT = {  # figures that a later question may speak of, and the facts that make each of them stale when they change
    "cable-size.gauge": ("load.model", "load.kind"),
    "cable-size.area": ("load.model", "load.kind"),
    "bank-size.required_cca": ("battery.cca", "battery.ca", "load."),
    "run-check.required_cca": ("battery.cca", "battery.ca", "load."),
    "specific-gravity.corrected_gravity": ("reading.gravity", "reading.voltage", "battery.charge"),
    "dc-dc.output_current": ("charger.", "alternator.", "bank.voltage"),
    **{f"{CONVERTED}{name}": ("battery.",) for name in ("capacity", "cca", "ca", "reserve", "energy")},
}
OUTPUT = "dc-dc.output_current"
RATINGS = {"battery.ca": "battery.cca", "battery.cca": "battery.ca"}
SIZED = ("cable-size.gauge", "cable-size.area")
THEIRS = ("cable.gauge", "cable.area")


def still(worked: Mapping[str, Value], changed: Iterable[str]) -> dict[str, Value]:
    """What stands of it, after a message that changes these facts."""
    changed = tuple(changed)
    return {name: value for name, value in worked.items() if not any(fact.startswith(KEPT[name]) for fact in changed)}


def in_its_rating(message: Message, worked: Mapping[str, Value]) -> Message:
    """A message with a bare number as the rating in which the desk gave it: "will 640 do?" of "about 640 CCA"."""
    given = {fact: worked.get(f"{CONVERTED}{fact.partition('.')[2]}") for fact in RATINGS}
    stated = tuple(
        replace(item, fact=RATINGS[item.fact])
        if item.fact in RATINGS and item.text.strip().isdigit() and item.value == given[RATINGS[item.fact]]
        else item
        for item in message.stated
    )
    return message if stated == message.stated else replace(message, stated=stated)


def kept(worked: Mapping[str, Value], answers: Iterable[Answer], told: Iterable[str]) -> dict[str, Value]:
    """With what these answers worked out; their topics' earlier figures are gone. A size of cable is the desk's own
    only where none of theirs is `told`, and one cable is enough."""
    answers = [answer for answer in answers if answer.figures]
    topics, theirs = {answer.topic for answer in answers}, not set(THEIRS).isdisjoint(told)
    found = {name: value for name, value in worked.items() if name.partition(".")[0] not in topics}
    for answer in answers:
        several = any(figure.name == "conductors_per_pole" for figure in answer.figures)
        for figure in answer.figures:
            name = f"{answer.topic}.{figure.name}"
            if name in KEPT and not (name in SIZED and (theirs or several)):
                found[name] = figure.value
    return found
