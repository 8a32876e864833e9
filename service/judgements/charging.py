"""What is charged, by what, and when it may not be: shared by all charging topics."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from grammar.text.patterns import regex
from service import likely, reference, say
from service.calculators import charging, freezing
from service.case import Case, Missing
from service.judgements.joining import alternatives, of_each
from service.reply import Act, Answer, Change, Urgency
from service.rules.bank import COUNTED
from service.rules.readings import DEAD, cite, limit
from service.told import charged_in_frost, nothing_else, part_charged
from service.topic import Lever, Topic

NEAR = 1e-6  # a value worked out to stand on a limit is on it
BY_VOLTS = frozenset({"charger-size", "charge-time", "charger-setting"})  # topics of one charger on one bank
IRON = "whether its label or data sheet says LiFePO4 (LFP) after all"
ELSE_ITS_MAKER = "If not, its maker names the charger and the volts, and it stays off a boat's chargers."
PUMP = "thing:drain"  # a pump has a float switch, or none
LEAVE = regex(  # "may it be charged when it is below freezing"
    r"\bforbid|\ballowed\b|\b(?:can|could|may|might|should|shall|must)\b[^.?!;]{0,40}\b(?:re)?charged\b", re.IGNORECASE
)
BETWEEN = "what stands between the alternator and the battery"
A_BOX = "A DC-to-DC charger is a box with electronics that both batteries go to; a switch or relay only joins them."
THAW = (
    Act("do", "Switch the charger off at the shore end, if one is connected."),
    Act("do", "Let the battery warm up slowly above freezing, in an aired place, on a tray, without a heater."),
    Act("do-not", "Charge it, jump-start from it, or put a load on it."),
    Act("who", "A marine electrician tests it before any charge. Bulged or split, it is finished."),
)


@dataclass(frozen=True, slots=True)
class Span:
    """The charging current that suits: from `low` to `high`, in A, for so many Ah of a kind.

    In the cold `high` is a cap, and `warm` the range that suits when it is warmer.
    """

    kind: str
    capacity: float
    low: float
    high: float
    warm: tuple[float, float] | None = None

    def verdict(self, amps: float, unregulated: bool = False) -> str:
        """yes inside, marginal where slow or somewhat over, no where it harms."""
        row = reference.row("charge_current", chemistry=self.kind)
        if amps > self.high * row["slack"].value * (1 + NEAR):
            most = self.high * (1.0 if unregulated else row["over"].value)
            return "marginal" if amps <= most * (1 + NEAR) else "no"
        return "marginal" if amps < self.low * single("slow") * (1 - NEAR) else "yes"

    def over(self, amps: float) -> bool:
        """Whether it is more than suits."""
        return amps > self.high * (1 + NEAR)

    def maintains(self, amps: float) -> bool:
        """Whether it is so little that it only keeps a full battery full."""
        return amps < self.low * single("maintainer")


def single(name: str) -> float:
    """A single value of charging."""
    return float(reference.value("charging", name).value)


def kind(case: Case) -> str:
    """The kind of battery as stated. Raises Missing: a kind that was only assumed is no ground for charging."""
    found = case.known("battery.chemistry")
    if found is None or found.origin == "assumed":
        raise Missing("battery.chemistry")
    return str(found.value)


def known_kind(case: Case) -> str | None:
    """The kind of battery as stated, or None."""
    try:
        return kind(case)
    except Missing:
        return None


def called(chemistry: str) -> str:
    """The kind with its battery: "an AGM battery"."""
    name = say.CHEMISTRY.get(chemistry, chemistry)
    return f"a{'n' if name[0] in 'AEIO' else ''} {name} battery"


def capacity(case: Case) -> float:
    """Amp-hours that one output charges together; two unlike batteries in parallel add up. Raises Missing."""
    other = case.second.get("battery.capacity")
    second = case.second.get("battery.chemistry")
    kinds = {case.get("battery.chemistry"), second.value} if second else set()
    weighed = len(kinds) > 1 or alternatives(case)  # not joined
    if other is None or case.get("bank.layout") != "parallel" or weighed:
        return float(case["charge.capacity"])
    first, last = of_each(case)
    one, two = float(case["battery.capacity"]) * first, float(other.value) * last
    case.used.setdefault(("battery.capacity", 2), other)
    case.step(
        f"In parallel {say.amp_hours(one)} and {say.amp_hours(two)} add up to {say.amp_hours(one + two)}", COUNTED
    )
    return one + two


def span(case: Case, chemistry: str, amp_hours: float) -> Span:
    """The charging current that suits so many amp-hours of a kind, less for lithium in the cold."""
    row = reference.row("charge_current", chemistry=chemistry)
    low, high = (charging.current(amp_hours, row[end].value) for end in ("low", "high"))
    shares = f"{say.number(row['low'].value * 100)} to {say.number(row['high'].value * 100)} %"
    name = say.CHEMISTRY[chemistry]
    case.step(f"{shares} of {say.amp_hours(amp_hours)} of {name} is {say.within(low, high)}", row["low"].cite)
    cold, warm = cold_share(case, chemistry), None
    if cold is not None:
        warm = (low, high)
        high = min(high, charging.current(amp_hours, cold.value))
        at = say.temperature(float(case["ambient.temperature"]))
        case.step(f"At {at} lithium takes at most {say.at_most(high)}", cold.cite)
    return Span(chemistry, amp_hours, min(low, high), high, warm)


def cold_share(case: Case, chemistry: str) -> reference.Cited | None:
    """The most that lithium takes in the cold, as a share of its capacity; None where no limit holds."""
    celsius = case.said("ambient.temperature")
    if chemistry != "lfp" or celsius is None:
        return None
    return next((row["share"] for row in reference.rows("charge_cold") if celsius <= row["up_to"].value + NEAR), None)


def too_cold(case: Case, chemistry: str) -> bool:
    """Whether lithium may not be charged at this temperature at all."""
    found = cold_share(case, chemistry)
    return found is not None and found.value == 0


def in_frost(case: Case) -> bool:
    """Whether leave is asked to charge "in frost" or "below freezing", and no degrees are told."""
    asks = case.says("request:may_i", "put:leave") or LEAVE.search(case.text) or charged_in_frost.rule(case.text)
    return case.says("detail:frost") and case.said("ambient.temperature") is None and bool(asks)


def freezing_point(case: Case) -> reference.Cited | None:
    """Where the acid of a lead battery freezes at its charge, None where that is not known."""
    charge = case.get("battery.charge")
    if charge is None or case.get("battery.family") != "lead":
        return None
    rows = [row for row in reference.rows("freezing") if row["chart"].value == "charge"]
    points = [(row["at"].value, row["freezes"].value) for row in rows]
    return reference.Cited(freezing.point(float(charge), points), "C", rows[0]["freezes"].cite)


def frozen(case: Case) -> bool:
    """Whether a lead battery is at or under its freezing point: charging it is a hazard."""
    celsius = case.said("ambient.temperature")
    found = freezing_point(case) if celsius is not None else None
    return found is not None and float(celsius) <= found.value + NEAR


def deeply_flat(case: Case) -> float | None:
    """The volts at rest, for each 12 V, of a lithium battery under what its cells bear; else None."""
    volts = case.get("battery.rest_voltage")
    return float(volts) if volts is not None and DEAD < float(volts) < limit("lithium-flat") - NEAR else None


def alternator_alone(case: Case) -> bool:
    """Whether an alternator charges with nothing between it and the battery, as far as is said."""
    if case.get("charger.kind") == "alternator":
        return True
    if any(fact in case for fact in ("charger.kind", "charger.current", "charger.setting")):
        return False
    return "alternator.current" in case or case.says("thing:alternator")


IN_FROST = "No: a lithium battery may not be charged at or below 0 °C, so let it come above 5 °C first."
KEPT_FROM_IT = "Yes: a lithium battery may not be charged at or below 0 °C, so let it come above 5 °C first."


def barred(topic: Topic, case: Case, chemistry: str | None, alternator: bool = True) -> Answer | None:
    """What comes before every charge: frozen, too cold, a lithium of unknown volts, an alternator on lithium."""
    if frozen(case):
        return frozen_answer(topic, case)
    if topic.name in BY_VOLTS and (low := too_low(topic, case)):
        return low
    if chemistry == "lithium-other":
        head = "We can't say: lithium that is not iron phosphate has other charging volts, which only its maker knows."
        asked = topic.ask("battery.chemistry", (("LiFePO4 on the label", "lfp"),))
        return topic.says("needs-facts", head, asks=(replace(asked, say=IRON, where=ELSE_ITS_MAKER),))
    if chemistry == "lfp" and too_cold(case, chemistry):
        return cold_answer(topic, case)
    if chemistry == "lfp" and in_frost(case):
        case.step("Charging at or below 0 °C plates metal on lithium cells, for good", "lithium-charge-cold")
        if charged_in_frost.rule(case.text):
            return topic.says("information", KEPT_FROM_IT)
        return topic.says("no", IN_FROST)
    if chemistry == "lfp" and (volts := deeply_flat(case)):
        case.step(f"Under {say.volts(limit('lithium-flat'))} lithium cells may be damaged inside", cite("lithium-flat"))
        told = f"at {say.volts(volts)} a lithium battery is deeply flat"
        head = f"Not as it is: {told}, so charge it only as its maker says."
        return topic.says("no", head, urgency="today", route="technician")
    if chemistry == "lfp" and alternator and alternator_alone(case):
        return not_straight(topic, case)
    return None


def too_low(topic: Topic, case: Case) -> Answer | None:
    """A charger named by fewer volts than the bank has, whatever its amps; None where it is none."""
    named, bank = part_charged.named_once(case.text), case.said("bank.voltage")
    if named is None or bank is None or named >= float(bank) or case.said("charger.voltage") is not None:
        return None
    one, whole = say.quantity(named, "V"), say.quantity(float(bank), "V")
    case.because(f"A {whole} bank takes more volts to charge than a {one} charger has", "series-charging")
    return topic.says("no", f"No: a {one} charger cannot charge a {whole} bank; fit one {whole} charger for the whole.")


WITH_LITHIUM = (
    "lithium also needs a DC-to-DC charger from the alternator, the lithium setting on any other charger, and a BMS "
    "limit above the thruster's amps."
)


def not_straight(topic: Topic, case: Case) -> Answer:
    """No alternator on lithium with nothing between."""
    case.step("Lithium takes all that an alternator gives until it is hot", "lithium-alternator")
    head = "Not straight from the alternator: lithium needs a DC-to-DC charger or current control between them."
    asked = topic.ask("charger.kind", likely.FROM_THE_ENGINE)
    if nothing_else.as_it_is(case.text) or nothing_else.asked(case.text):
        leave = nothing_else.as_it_is(case.text) and not nothing_else.asked(case.text)
        return topic.says("no" if leave else "information", f"{'No' if leave else 'Yes'}: {WITH_LITHIUM}")
    return topic.says("needs-facts", head, asks=(replace(asked, say=BETWEEN, where=A_BOX),))


def frozen_answer(topic: Topic, case: Case) -> Answer:
    """The hazard of a charge at or under the freezing point."""
    found = freezing_point(case)
    assert found is not None, "frozen_answer without a freezing point"
    case.step(
        f"At {say.charge(float(case['battery.charge']))} of charge the acid freezes at {say.temperature(found.value)}",
        found.cite,
        "frozen-charge",
    )
    at = say.temperature(float(case["ambient.temperature"]))
    head = f"Do not charge: at {at} a lead battery as empty as this is frozen, and it can burst on charge."
    return topic.says("stop", head, urgency="today", route="technician", steps=THAW)


def cold_answer(topic: Topic, case: Case) -> Answer:
    """No charging of lithium at or below 0 C."""
    celsius = float(case["ambient.temperature"])
    case.step("Charging at or below 0 °C plates metal on lithium cells, for good", "lithium-charge-cold")
    on = case.says("detail:left_on")  # it charges at this moment, as far as anybody knows
    why = f"a lithium battery may not be charged at or below 0 °C, and it is {say.temperature(celsius)} there"
    timed = case.get("charger.kind") == "timer"
    off = "take the panel off it" if topic.name == "solar" else "switch it off at the shore end"
    first = f"{off}, as " if on else "turn the timer off, as " if timed else ""
    head = f"No: {first}{why}."
    warm = Change("ambient.temperature", 1.0, "C", "a battery above 0 °C, charged only slowly up to 10 °C")
    urgency: Urgency = "today" if on or timed else "routine"
    return topic.says("no", head, would_change=() if "charger.current" in case else (warm,), urgency=urgency)


def warmer(case: Case) -> tuple[float, ...]:
    """Temperatures from which lithium takes more, least first."""
    celsius = case.said("ambient.temperature")
    return () if celsius is None else tuple(at for at in (1.0, 6.0, 11.0) if at > celsius)


WARMER = Lever("ambient.temperature", warmer, "a battery at {value} or warmer")


def stays_high(case: Case) -> bool:
    """Whether the charger is told never to go down to float: "an old one without any float stage"."""
    never = case.says("detail:no_float", "detail:never_drops") and not case.says(PUMP)
    return never and case.get("charger.kind") != "smart"


def must_come_off(case: Case) -> str:
    """What a charger that may not stay on is called: it has a clock, holds its volts or watches none; else ""."""
    if case.get("charger.kind") == "timer":
        return "timer charger"
    if unregulated(case):
        return "charger that does not regulate its voltage"
    return "charger without a float stage" if stays_high(case) else ""


def unregulated(case: Case) -> bool:
    """Whether the charger does not watch the battery's voltage, as far as is said."""
    if case.says("detail:unregulated"):
        return True
    return case.get("charger.kind") in ("timer", "trickle") and not case.says("detail:regulated")
