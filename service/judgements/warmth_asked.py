"""Whether cold or heat changes the charging volts: "do I set the charger higher in the winter?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import reference, say
from service.calculators.charging import REFERENCE, compensated
from service.case import Case
from service.judgements import charging
from service.judgements.charge_volts import MILD, figures, stage
from service.reply import Answer
from service.topic import Topic

WARMTH = r"\b(?:cold\w*|winter|frost\w*|heat|hot\w*|warm\w*|summer|tropic\w*|temperature|degrees?)\b|°|\d ?[cf]\b"
CHANGES = (
    r"\b(?:chang\w*|differen\w*|adjust\w*|alter\w*|rais\w*|lower\w*|higher|compensat\w*|turn (?:it )?(?:up|down))\b"
)
ASKED = regex(rf"{CHANGES}[^.?!;]{{0,60}}(?:{WARMTH})|(?:{WARMTH})[^.?!;]{{0,60}}{CHANGES}", re.IGNORECASE)
WHICH_VOLTS = regex(r"\b(?:what|which)\b[^.?!;]{0,24}\b(?:volts?|voltage)\b", re.IGNORECASE)
SENSOR = regex(r"\btemp(?:erature)?[- ]?(?:sensor|probe|compensat\w*)", re.IGNORECASE)
HEAT = regex(r"\b(?:heat|hot\w*|warm\w*|summer|tropic\w*|temperature)\b", re.IGNORECASE)
COLDEST = regex(
    r"\b(?:what|which|how)\b[^.?!;]{0,12}\b(?:temperatures?|temp|cold|degrees)\b[^.?!;]{0,40}\bcharg"
    r"|\btoo cold (?:to charge|for charging)\b",
    re.IGNORECASE,
)
SET_SO = regex(
    r"\b(?:set|turn|put|adjust|rais\w*|lower)\b[^.?!;]{0,20}\b(?:charger|charging|absorption|float)\b[^.?!;]{0,16}"
    rf"\b(?:higher|lower|up|down)\b[^.?!;]{{0,40}}(?:{WARMTH})",
    re.IGNORECASE,
)
TOLD = ("charger.setting", "charger.voltage", "charger.current")
AT = "ambient.temperature"
LEAD = ("flooded", "agm", "gel")


def judged(topic: Topic, case: Case, chemistry: str | None) -> Answer | None:
    """How far the volts go with the warmth; None where that is not asked, or the charger's own volts are told."""
    if chemistry == "lfp" and COLDEST.search(case.text):
        return coldest(topic, case)
    if any(case.said(fact) is not None for fact in TOLD):
        return None
    start = "It helps: " if SENSOR.search(case.text) else "A little: " if ASKED.search(case.text) else ""
    if not start and not WHICH_VOLTS.search(case.text):
        return None
    if not start and (chemistry not in LEAD or not _far(case)):
        return None
    if chemistry == "lfp":
        case.step("Charging at or below 0 °C plates metal on lithium cells, for good", "lithium-charge-cold")
        head = "No: leave the lithium setting as it is in cold and heat, and never charge at or below 0 °C."
        return topic.says("information", head, *figures(case, chemistry))
    if chemistry not in LEAD or not _far(case):
        return in_general(topic, case, chemistry, start)
    celsius = float(case[AT])
    own = stage(chemistry, "absorption", float(case["bank.voltage"]))
    by_degree = reference.row("charge_voltage", chemistry=chemistry, stage="absorption")["by_degree"].value
    cold = celsius < REFERENCE
    wanted = compensated(own.aim, celsius, by_degree * float(case["bank.voltage"]) / 12)
    brings = f"brings {say.volts(own.aim)} {'up' if cold else 'down'} to {say.volts(min(wanted, own.high))}"
    rest = "leave it as it is" if cold else f"keep to {say.volts(own.low)}"
    head = f"{start}at {say.temperature(celsius)} a sensor on the battery {brings}; without one {rest}."
    return topic.says("information", say.capital(head), *figures(case, chemistry))


def too_much_in_heat(case: Case, chemistry: str, volts: float) -> str:
    """That set volts are over the kind's highest in the heat that is asked about, in words; "" where they are not."""
    celsius = case.said(AT)
    if chemistry not in LEAD or celsius is None or float(celsius) <= REFERENCE or not HEAT.search(case.text):
        return ""
    system = float(case["bank.voltage"])
    own = stage(chemistry, "absorption", system)
    by_degree = reference.row("charge_voltage", chemistry=chemistry, stage="absorption")["by_degree"].value
    wanted = compensated(volts, float(celsius), by_degree * system / 12)
    if volts <= compensated(own.high, float(celsius), by_degree * system / 12) + charging.NEAR:
        return ""
    at = say.temperature(float(celsius))
    case.step("In heat a lead battery gasses at fewer volts", "charge-compensation")
    brings = f"brings {say.volts(volts)} down to {say.volts(wanted)}"
    return f"at {at} a sensor on the battery {brings}; without one set {say.volts(own.low)}"


def told_to_set(text: str) -> bool:
    """Whether a charger is to be set higher or lower for the season.

    >>> told_to_set("shall I set the charger higher for the winter?"), told_to_set("is the charger up for winter?")
    (True, False)
    """
    return SET_SO.search(text) is not None


def coldest(topic: Topic, case: Case) -> Answer:
    """From which temperature lithium may be charged, and how fast in the cold."""
    rows = reference.rows("charge_cold")
    takes = [
        f"up to {say.quantity(row['up_to'].value, '°C', 0)} at most {say.amps(row['share'].value * 100)}"
        for row in rows
        if row["share"].value
    ]
    case.source(*(row["share"].cite for row in rows))
    never = next(say.temperature(row["up_to"].value) for row in rows if not row["share"].value)
    return topic.says("information", f"At or below {never} never; {say.listed(takes)} for each 100{say.NB}Ah.")


def _far(case: Case) -> bool:
    """Whether a temperature is told that is far enough from the usual warmth."""
    celsius = case.said(AT)
    return celsius is not None and not REFERENCE - MILD <= float(celsius) <= REFERENCE


def in_general(topic: Topic, case: Case, chemistry: str | None, start: str) -> Answer:
    """The rule by the degree, where no temperature is told or the kind is not known."""
    row = reference.row("charge_voltage", chemistry="flooded", stage="absorption")["by_degree"]
    by_degree = row.value * float(case["bank.voltage"]) / 12
    usual = say.quantity(REFERENCE, "°C", 0)
    more = f"{say.volts(by_degree, 2)} more for each °C under {usual}, less in heat; a sensor on it sees to that"
    case.step("Without a sensor on the battery leave the setting as it is", "charge-compensation")
    if chemistry in LEAD:
        head = f"{start}{charging.called(str(chemistry))} wants {more}."
        return topic.says("information", head, *figures(case, str(chemistry)))
    head = f"{start}lead wants {more}; lithium is left as it is."
    return topic.says("information", head, asks=(topic.ask("battery.chemistry", topic.likely["battery.chemistry"]),))
