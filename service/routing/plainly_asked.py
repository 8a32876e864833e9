"""Topics that two or three words of a message ask plainly, where its other words point elsewhere."""

from __future__ import annotations

import re
from collections.abc import Callable

from grammar.text.patterns import regex
from service.routing.seen import CABLES, Seen
from service.told import fresh_water, kind_by_caps, longest_run, off_first

OF_A_READING = frozenset(
    {"reading.voltage", "bank.voltage", "battery.nominal", "battery.chemistry", "load.kind", "battery.count"}
)
CHARGING = ("charger-setting", "charger-size", "charge-time")
CHOSEN = regex(r"\bwhich (?:one |is |for |of )|\b(?:better|best|prefer)\b", re.IGNORECASE)
NO_MORE = regex(
    r"\b(?:charg\w*|fuses?|cables?|wires?|series|parallel|buy|fit|need|run|drops?|fall\w*)\b", re.IGNORECASE
)


def _danger(seen: Seen) -> bool:
    return any(item.status == "present" for item in seen.message.dangers)


def _off_first(seen: Seen) -> bool:
    """ "Do I disconnect the negative or the positive first?": nothing is laid up."""
    about = seen.found <= {"storage", "maintenance", "mounting", "replacement", "unclear"}
    return about and not _danger(seen) and off_first.asked(seen.message.text)


def _in_fresh_water(seen: Seen) -> bool:
    """ "Rain water in the battery compartment, wet cells, ok?": no cell is topped up."""
    about = seen.found <= {"maintenance", "mounting", "ventilation", "storage", "freeze-point", "unclear", *CHARGING}
    return about and not _danger(seen) and fresh_water.stands(seen.message.text)


def _by_its_caps(seen: Seen) -> bool:
    """ "Which type has the caps on top?": a kind, and no battery of theirs."""
    about = seen.found <= {"battery-type", "maintenance", "meaning", "unclear"}
    return about and not _danger(seen) and not seen.says("request:how_often") and kind_by_caps.asked(seen.message.text)


def _kinds_apart(seen: Seen) -> bool:
    """ "The difference between AGM and lithium, and which for the house bank?": two kinds, no words of the trade."""
    kinds = {item.value for item in seen.message.stated if item.fact == "battery.chemistry"}
    weighed = CHOSEN.search(seen.message.text) is not None
    return seen.found == {"meaning"} and len(kinds) > 1 and weighed and not _danger(seen)


def _how_far(seen: Seen) -> bool:
    """ "How far may the battery be from the thruster?": the cable between them, whose size is not told."""
    about = seen.found <= {"mounting", "voltage-drop", "run-time", "unclear"} and not seen.told & CABLES
    return about and not _danger(seen) and longest_run.from_the_load(seen.message.text)


def _read_of_a_bank(seen: Seen) -> bool:
    """ "37.4 V on the 36 V bank, wet": how full it is, as nothing else is told or asked."""
    only = {"reading.voltage"} <= seen.told <= OF_A_READING and seen.told & {"bank.voltage", "battery.nominal"}
    plain = seen.found <= {"unclear"} and not seen.message.dangers and not seen.context
    return bool(only) and plain and NO_MORE.search(seen.message.text) is None


PLAINLY: tuple[tuple[str, Callable[[Seen], bool]], ...] = (
    ("terminals", _off_first),
    ("maintenance", _in_fresh_water),
    ("battery-type", _by_its_caps),
    ("battery-type", _kinds_apart),
    ("cable-size", _how_far),
    ("rest-voltage", _read_of_a_bank),
)
