"""What a charger that goes by the battery's warmth puts out: "-30 mV/°C, 14.4 V at 25 °C, the battery at 5 °C"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.text.patterns import regex
from service import say
from service.calculators.charging import REFERENCE
from service.case import Case
from service.judgements import charging
from service.judgements.charge_volts import stage
from service.kinds import CHARGED
from service.reply import Answer, Figure
from service.topic import Topic

CELLS = 6  # of a 12 V battery
MILLI = 1000.0
RULE = regex(
    r"(?P<amount>\d{1,3}(?:[.,]\d+)?) ?(?P<unit>mv|millivolts?|v|volts?) ?(?:/|per|for each|each|a|for every) ?"
    r"(?:°|deg(?:ree)?s?)? ?(?:c\b|k\b|celsius|kelvin|degrees?|deg)?(?P<cell>[ ,/]*(?:per |a |and )?cells?\b)?",
    re.IGNORECASE,
)
AS_TOLD = regex(r"(?:/|per|each|\ba\b|every) ?(?:°|deg|c\b|k\b|celsius|kelvin)", re.IGNORECASE)
STATED_AT = regex(
    r"\b(?:1[2-6]|2[5-9]|3[0-2])(?:[.,]\d{1,2})? ?(?:v(?:olts?)?)? ?(?:at|@|for|\() ?(?P<at>\d{1,2})"
    r"(?! ?(?:v|a|ah|%)\b)",
    re.IGNORECASE,
)
CELSIUS = regex(
    r"(?P<minus>\bminus |(?<![\d.,])-)?\b(?P<at>\d{1,2}) ?(?:°(?! ?F)|deg(?:ree)?s?\b(?! ?F))", re.IGNORECASE
)
AT = "ambient.temperature"


def judged(topic: Topic, case: Case) -> Answer | None:
    """The volts at the battery's temperature by the rule that is told; None where no rule, set volts or warmth is."""
    rule, volts = by_degree(case), case.said("charger.voltage")
    if rule is None or volts is None:
        return None
    stated = STATED_AT.search(case.text)
    reference = float(stated["at"]) if stated else REFERENCE
    warmth = next((at for at in temperatures(case) if at != reference), None)
    if warmth is None:
        return None
    case.known(AT)
    if AT in case.second:
        case.used.setdefault((AT, 2), case.second[AT])
    change = rule * (reference - warmth)
    found = float(volts) + change
    apart = say.number(abs(reference - warmth))
    how, more = ("colder", "more") if change > 0 else ("warmer", "less")
    case.step(
        f"{say.volts(float(volts))} {'+' if change > 0 else '-'} {apart} °C x {say.volts(rule, 3)} = "
        f"{say.volts(found, 2)}",
        "charge-compensation",
    )
    figure = Figure("absorption_by_warmth", "with compensation", found, "V")
    told_so = f"{apart}{say.NB}°C {how} than {say.number(reference)}{say.NB}°C is {say.volts(abs(change), 2)} {more}"
    head = f"{say.volts(found)}: {told_so} than {say.volts(float(volts))}"
    return topic.says("information", f"{head}{kept_under(case, found)}.", figure)


def temperatures(case: Case) -> Iterator[float]:
    """The temperatures that are told: as facts, then as they stand in the text, which may name more than two."""
    yield from (float(item.value) for item in (case.stated.get(AT), case.second.get(AT)) if item is not None)
    for found in CELSIUS.finditer(case.text):
        yield float(found["at"]) * (-1 if found["minus"] else 1)


def by_degree(case: Case) -> float | None:
    """Volts less for each degree of warmth, of a 12 V battery, as the text tells them; None where it does not."""
    for found in RULE.finditer(case.text):
        if not AS_TOLD.search(found.group()):
            continue
        amount = float(found["amount"].replace(",", "."))
        volts = amount / MILLI if found["unit"].lower().startswith("m") else amount
        cells = CELLS * float(case["bank.voltage"]) / 12 if found["cell"] else 1.0
        if 0 < volts * cells <= 0.2:
            return volts * cells
    return None


def kept_under(case: Case, volts: float) -> str:
    """That the battery's own highest comes before the sum, where the sum goes over it; of unknown kinds a step."""
    kind, system = charging.known_kind(case), float(case["bank.voltage"])
    if kind in CHARGED:
        most = stage(str(kind), "absorption", system).high
        over = f"; hold it to the {say.volts(most)} that {charging.called(str(kind))} takes at most"
        return over if volts > most + charging.NEAR else ""
    gel, agm = (say.volts(stage(name, "absorption", system).high) for name in ("gel", "agm"))
    case.step(
        f"Gel takes {gel} at most and AGM {agm}, where its own label allows no more in the cold", "settings-by-kind"
    )
    return ""
