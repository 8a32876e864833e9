"""A charger of more volts than the battery it is put on: "a 24 V charger for my one 12 V battery"; or of half as many
as the bank: 14.2 V "on a 24 V system" were read across one battery, or are a slip."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import charge_volts
from service.reply import Answer
from service.rules.bank import read_system
from service.topic import Topic

NOMINAL = charge_volts.NOMINAL
ONE_OF_THEM = regex(  # each battery is charged or read by itself
    r"\b(?:each|apiece|per batter\w+|every (?:one|battery)|one (?:battery|of)|both|either|converter|dc-?dc|outputs?)\b"
    r"|\b(?:half|lower|upper|12 ?v(?:olts?)?)\b",
    re.IGNORECASE,
)


def judged(topic: Topic, case: Case) -> Answer | None:
    """A plain no, for however short a time; None where charger and battery fit or their volts are not known."""
    apart = charge_volts.systems_apart(case)
    if apart is None:
        return None
    charger, battery = (say.quantity(volts, "V") for volts in apart)
    case.step("A charger drives its full voltage into whatever battery is on it", "settings-by-kind")
    return topic.says("no", f"No: a {charger} charger must never go on a {battery} battery, not even for a minute.")


def half(topic: Topic, case: Case) -> Answer | None:
    """Volts that charge one 12 V battery, told of a bank of more volts: nobody measured the bank's."""
    volts, bank = case.said("charger.voltage"), case.said("bank.voltage")
    read = None if volts is None else read_system(float(volts))
    if read is None or bank is None or float(bank) <= read or float(volts) in NOMINAL or ONE_OF_THEM.search(case.text):
        return None
    if "battery.nominal" in case.stated or "charger.voltage" in case.second or "dc-dc" in case.beside:
        return None
    shown, of_one = say.volts(float(volts)), say.quantity(read, "V")
    head = (
        f"We can't say yet: {shown} charges a {of_one} battery, and yours is a {say.quantity(float(bank), 'V')} bank; "
        "read it across the whole bank."
    )
    return topic.needs("charger.voltage", headline=head)
