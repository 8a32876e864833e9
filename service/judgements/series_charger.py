"""What charges batteries in series: one charger of the full voltage, or an isolated output for each."""

from __future__ import annotations

from service import say
from service.case import Case
from service.reply import Answer, Figure
from service.rules.bank import system
from service.told import one_by_one, part_charged
from service.topic import Topic

EACH_ALONE = "then charge each battery alone, one after the other"


def judged(topic: Topic, case: Case, counts: bool) -> Answer:
    """Batteries in series: one charger of the full voltage, or an isolated output for each."""
    number = int(case["bank.in_series"]) if case["bank.in_series"] > 1 else int(case.get("battery.count", 2))
    volts = say.quantity(float(case["bank.voltage"]), "V")
    case.because(
        "In series the plus of one battery is joined to the minus of the other, so outputs that share a "
        "negative would short one of them",
        "series-charging",
    )
    have, apart = case.get("charger.outputs"), case.get("charger.isolated")
    if full_voltage(case):
        return topic.says("yes", f"Yes: one {volts} charger charges the whole bank in series.", outputs(1))
    if not counts and (low := too_low(topic, case)):
        return low
    if apart is False:
        head = "No: outputs that share one negative short a battery of a series bank, so do not connect them."
        return topic.says("no", head, outputs(number))
    if counts:
        head = f"One {volts} charger for the whole bank; or {number} outputs, but only if isolated from each other."
        return topic.says("information", head, outputs(1))
    if apart is None:
        head = "We can't say yet: in series each battery may have its own output only if the outputs are isolated."
        return topic.needs("charger.isolated", headline=head, figures=(outputs(number),))
    if have is not None and have < number:
        head = f"No: {number} batteries in series need {number} isolated outputs, and yours has {int(have)}."
        return topic.says("no", head, outputs(number))
    return topic.says("yes", f"Yes: isolated outputs may charge one battery of the {volts} bank each.", outputs(number))


def of_the_whole(topic: Topic, case: Case, bank: float) -> Answer:
    """Which of two chargers for a bank of several batteries: the one of its volts."""
    volts = say.quantity(bank, "V")
    case.because(f"A {volts} bank takes more volts to charge than a smaller charger has", "series-charging")
    head = f"The {volts} charger, on the whole bank: one of fewer volts cannot charge it, whatever its amps."
    return topic.says("information", head, outputs(1))


def in_turn(topic: Topic, case: Case) -> Answer:
    """One charger for one battery, put on each of a series in turn."""
    case.because("With the link on they are still one bank, and what is on draws from both", "bank-practice")
    if one_by_one.linked(case.text):
        return topic.says("no", f"Not with the link on: take it off first, all switched off, {EACH_ALONE}.")
    return topic.says("information", f"Yes, with the link off: all switched off first, {EACH_ALONE}.")


def full_voltage(case: Case) -> bool:
    """Whether the charger puts out the volts of the whole bank."""
    bank, volts = float(case["bank.voltage"]), case.said("charger.voltage")
    if volts is not None:
        return system(float(volts)) == bank
    named = part_charged.volts(case.text)  # "a 24 V charger" is read as a 24 V system
    return named == bank and case.said("charger.outputs") in (None, 1)


def too_low(topic: Topic, case: Case) -> Answer | None:
    """One charger of fewer volts than the series it is put on, whole or on a part; None where there is none such."""
    bank, named = float(case["bank.voltage"]), part_charged.volts(case.text)
    apart = {"charger.outputs", "charger.isolated", "bank.count"} & set(case.stated)
    if named is None or named >= bank or apart or not part_charged.single(case.text):
        return None
    one, whole = say.quantity(named, "V"), say.quantity(bank, "V")
    fit = f"fit one {whole} charger for the whole bank"
    if part_charged.one_only(case.text):
        case.because(
            "The battery without the charger is emptied and never filled, and wears out first", "series-charging"
        )
        head = f"No: charging one battery of a {whole} bank alone unbalances it and ruins both; {fit}."
        return topic.says("no", head, outputs(1))
    case.because(f"A {whole} bank takes more volts to charge than a {one} charger has", "series-charging")
    return topic.says("no", f"No: a {one} charger cannot charge a {whole} bank; {fit}.", outputs(1))


def outputs(number: int) -> Figure:
    """The outputs as a figure."""
    return Figure("charger_outputs", "outputs needed", float(number))
