"""A battery more in series, or a motor of other volts than the bank."""

from __future__ import annotations

from service import say
from service.case import Case
from service.judgements import rewired
from service.judgements.joining import figures
from service.judgements.may_be_joined import kinds_apart, not_allowed, strength_apart
from service.judgements.tap import EMPTIED_MORE, SMALL_ONES
from service.judgements.unlike import LIMITS
from service.reply import Answer
from service.sentences.bank import outcome
from service.told import motor_volts, other_volts
from service.topic import Topic

FAMILY, MOST_JOINED = "battery.family", ("battery.max_in_series", "battery.max_in_parallel")


def of_two_volts(topic: Topic, case: Case) -> Answer | None:
    """What is answered where the volts there are differ from those wanted."""
    if other_volts.jumped(case.text) or other_volts.linked(case.text):
        case.step("Batteries of unlike volts drive current into each other", LIMITS["kind"].cite)
        head = "No: batteries of unlike volts must never be joined; only a 12-to-24 V charger may stand between them."
        return topic.says("no", head)
    if other_volts.small_ones(case.text, case.said("bank.voltage")):
        case.step(EMPTIED_MORE, LIMITS["tap"].cite)
        return topic.says("information", SMALL_ONES)
    if how := rewired.wanted(case):
        return joined_anew(topic, case, how)
    if volts := other_volts.motor_above(case.text):
        return of_more_volts(topic, case, *volts)
    unlike = motor_volts.apart(case.text)
    return of_a_motor(topic, case, *unlike) if unlike else None


def of_a_motor(topic: Topic, case: Case, bank: float, motor: float) -> Answer:
    """A motor that is made for other volts than the bank."""
    gives, takes = say.quantity(bank, "V"), say.quantity(motor, "V")
    case.step(f"The batteries give {gives}, the load takes {takes}", "od1002")
    return topic.says(
        "no", f"No: a motor made for {takes} must not be put on {gives}; it needs a bank of its own volts."
    )


def joined_anew(topic: Topic, case: Case, how: str) -> Answer:
    """Batteries that are joined another way than before, for other volts."""
    anew = case.supposing({"bank.layout": how}, ["bank.voltage"])
    anew.second = {fact: known for fact, known in case.second.items() if fact != "bank.layout"}
    if (
        found := kinds_apart(topic, anew)
        or strength_apart(topic, anew)
        or not_allowed(topic, anew, how, may=True, family=case.get(FAMILY))
    ):
        case.follow(anew)
        return found
    shown, told = figures(anew, how), outcome(anew, how)
    case.follow(anew)
    return topic.says("yes", f"Yes: {told}; {rewired.LINKS}.", *shown)


def of_more_volts(topic: Topic, case: Case, motor: float, boat: float) -> Answer:
    """A motor of 24 V on a boat of 12 V."""
    wanted, aboard = say.quantity(motor, "V"), say.quantity(boat, "V")
    case.step("In series the volts add; a converter for the amps of a motor would be too large", LIMITS["sums"].cite)
    charger = f"a {wanted} charger or a {say.number(boat)}-to-{say.number(motor)} V charger"
    own = f"a {wanted} bank of its own, with {charger}"
    if other_volts.FED.search(case.text) or case.says("request:may_i", "request:enough"):
        return topic.says("no", f"No: {aboard} cannot run a {wanted} motor; give it {own}.")
    return topic.says("information", f"Give the motor {own}: {aboard} cannot run it.")
