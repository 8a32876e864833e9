"""A charger of more volts than the battery it is put on: "a 24 V charger for my one 12 V battery"."""

from __future__ import annotations

from service import say
from service.case import Case
from service.judgements import charge_volts
from service.reply import Answer
from service.topic import Topic


def judged(topic: Topic, case: Case) -> Answer | None:
    """A plain no, for however short a time; None where charger and battery fit or their volts are not known."""
    apart = charge_volts.systems_apart(case)
    if apart is None:
        return None
    charger, battery = (say.quantity(volts, "V") for volts in apart)
    case.step("A charger drives its full voltage into whatever battery is on it", "settings-by-kind")
    return topic.says("no", f"No: a {charger} charger must never go on a {battery} battery, not even for a minute.")
