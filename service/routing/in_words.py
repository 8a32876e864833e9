"""A topic that the words of a message put plainly, though the table of points does not tell it from others."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from grammar.reading import Message
from service.told import amp_hours_taken, kind_required, longest_run, more_volts, who
from service.topic import CIRCUIT

CABLES = frozenset({"cable.gauge", "cable.area"})
MORE_VOLTS = frozenset(
    (
        "load.kind",
        "load.model",
        "load.voltage",
        "bank.voltage",
        "bank.count",
        "battery.nominal",
        "charger.input_voltage",
    )
)


class Seen(NamedTuple):
    """A message, the topics its words point to, the facts it tells and the topics of the turn before."""

    message: Message
    found: frozenset[str]
    told: frozenset[str]
    context: frozenset[str]

    def says(self, *cues: str) -> bool:
        """Whether the message says one of these."""
        return any(map(self.message.says, cues))


def _by_children(seen: Seen) -> bool:
    """ "Can the kids top up the batteries?"."""
    present = any(item.status == "present" for item in seen.message.dangers)
    return seen.found <= {"unclear"} and not present and who.children_may(seen.message.text)


def _taken(seen: Seen) -> bool:
    """ "250 A for 3 minutes, how many amp hours is that?": no battery is sought for it."""
    others = seen.found - {"run-time", "run-check", "bank-size", "rating-convert", "unclear"}
    return (
        not others
        and seen.told >= amp_hours_taken.FACTS
        and amp_hours_taken.asked(seen.message.text)
        and not seen.message.dangers
    )


def _of_more_volts(seen: Seen) -> bool:
    """ "Going 12 to 24 V thruster, must the charger change?"."""
    text, told = seen.message.text, seen.told - MORE_VOLTS
    about = seen.found <= {"bank-wiring", "unclear", "dc-dc", "battery-type"} and not seen.message.dangers
    return about and more_volts.changes(text) and seen.says("thing:charger") and told <= CABLES


def _one_kind_a_must(seen: Seen) -> bool:
    """ "Must I fit a gel battery for the thruster?"."""
    about = seen.found <= {"battery-type", "mounting", "unclear"} and not seen.message.dangers
    return about and seen.told <= {"battery.chemistry", "load.kind"} and kind_required.asked(seen.message.text)


def _longest_run(seen: Seen) -> bool:
    """ "How far can I go with 70 mm2 to a Pike?"."""
    others = seen.found - CIRCUIT - {"mounting", "run-time", "rating-convert", "unclear"}
    return not others and not seen.message.dangers and longest_run.asked(seen.message.text, seen.told)


IN_WORDS: tuple[tuple[str, Callable[[Seen], bool]], ...] = (
    ("maintenance", _by_children),
    ("run-time", _taken),
    ("cable-size", _longest_run),
    ("dc-dc", _of_more_volts),
    ("battery-type", _one_kind_a_must),
)
