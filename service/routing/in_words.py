"""A topic that the words of a message put plainly, though the table of points does not tell it from others."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from grammar.reading import Message
from service.told import amp_hours_taken, its_years, kind_required, more_volts, volts_of_charge, who

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


def _of_its_years(seen: Seen) -> bool:
    """ "Does hot weather ruin batteries faster?", "made in 2020, still ok?"."""
    text, plain = seen.message.text, seen.told <= {"battery.chemistry", "battery.capacity", "ambient.temperature"}
    battery = seen.says("thing:battery", "about:kind_word")
    if not seen.found <= {"unclear"} or not battery or not plain or seen.message.dangers:
        return False
    of_now = seen.says("request:is_good", "put:good", "word:age")
    return its_years.asks_of_heat(text) or (of_now and its_years.of_year(text) is not None)


def _volts_of_a_charge(seen: Seen) -> bool:
    """ "What volts is 50 percent on a flooded?"."""
    about = seen.found <= {"unclear", "meaning", "charger-setting"} and not seen.message.dangers
    plain = seen.told <= {"battery.chemistry", "battery.charge", "battery.nominal", "bank.voltage", "battery.count"}
    battery = seen.says("thing:battery", "about:kind_word", "thing:bank")
    return about and plain and battery and volts_of_charge.of_a_charge(seen.message.text)


IN_WORDS: tuple[tuple[str, Callable[[Seen], bool]], ...] = (
    ("maintenance", _by_children),
    ("run-time", _taken),
    ("dc-dc", _of_more_volts),
    ("battery-type", _one_kind_a_must),
    ("replacement", _of_its_years),
    ("rest-voltage", _volts_of_a_charge),
)
