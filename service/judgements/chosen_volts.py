"""Which of the volts that a charger can be set to suits the battery: "14.4 or 14.1 for gel"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import charging
from service.judgements.charge_volts import figures, stage
from service.reply import Answer, Option
from service.topic import Topic

VOLTS = "charger.voltage"
ONE = r"(?:1[2-6]|2[5-9]|3[0-2])(?:[.,]\d{1,2})?(?: ?v(?:olts?)?)?"
LISTED = regex(
    rf"\b(?P<row>{ONE}(?:,? ?(?:/|,|\bor\b|\band\b|\bvs\.?|\bversus\b) ?(?:the |at )?{ONE})+)(?![.,]?\d)", re.I
)
FIGURE = regex(r"\d{2}(?:[.,]\d{1,2})?")
CHOOSES = regex(r"\bor\b|\bvs\b|\bversus\b|\bwh?ich\b|\bbetter\b|\bpick\b|\bchoose\b", re.IGNORECASE)
STAGES = ("term:float", "detail:equalise", "detail:equalising")  # volts of two stages are no choice


def judged(topic: Topic, case: Case, chemistry: str) -> Answer | None:
    """The volts to take of those that are listed; None where no such choice is put."""
    offers = offered(case)
    if len(offers) < 2:
        return None
    volts = float(case["bank.voltage"])
    suits, battery = stage(chemistry, "absorption", volts), charging.called(chemistry)
    verdicts = {one: "yes" if suits.holds(one) else "no" if one > suits.high else "marginal" for one in offers}
    good = [one for one, verdict in verdicts.items() if verdict == "yes"]
    if not good and "no" not in verdicts.values():  # all of them too low to fill it: each is judged by itself
        return None
    case.known(VOLTS)
    if VOLTS in case.second:
        case.used.setdefault((VOLTS, 2), case.second[VOLTS])
    case.source("settings-by-kind")
    sides = tuple(Option(say.volts(one), verdict) for one, verdict in verdicts.items())
    takes = f"{battery} takes {suits} in absorption, best {say.volts(suits.aim)}"
    if not good:
        case.because("Over its limit a battery is harmed, under it it does not fill", "settings-by-kind")
        head = f"Neither is right: {takes}."
        return topic.says("no", head, *figures(case, chemistry), compare=sides)
    best = min(good, key=lambda one: (round(abs(one - suits.aim), 2), one))
    too_high = [say.volts(one) for one, verdict in verdicts.items() if verdict == "no"]
    rest = f"; {say.listed(too_high)} {'are' if len(too_high) > 1 else 'is'} too high" if too_high else ""
    head = f"Take {say.volts(best)}: {takes}{rest}."
    return topic.says("information", head, *figures(case, chemistry), compare=sides)


def offered(case: Case) -> tuple[float, ...]:
    """The volts between which is chosen, as they stand in the text; none where they are those of two stages."""
    told = case.stated.get(VOLTS)
    if told is None or case.says(*STAGES) or not CHOOSES.search(case.text):
        return ()
    for found in LISTED.finditer(case.text):
        row = tuple(dict.fromkeys(float(one.replace(",", ".")) for one in FIGURE.findall(found["row"])))
        if float(told.value) in row:
            return row
    return ()
