"""Volts that harm a battery: too high while it was read, or a lithium one left flat. The core puts them in front."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service.case import Case
from service.rules.readings import NEAR, limit, six_volts, spanned
from service.told import no_equalising, wished_for

LONG = 28.0  # days: flat for so long is no flat of last night
ONE_BATTERY = 12.0  # V
ONE_CELL = 4.0  # V: less is a cell's
_MEASURED = frozenset({"reading.voltage", "charger.voltage"})
STAGES = ("role:charger.setting", "term:absorption", "term:bulk", "term:float")
OPINION = ("request:is_good", "request:may_i", "request:enough", "detail:harm")  # asked of what a charger is made for
SEVERAL = regex(r"\b(?:batteries|batts|both|pair|two|twin|bank|series|each|(?:24|36|48) ?v)\b", re.IGNORECASE)
CHARGED = regex(
    r"charg|\b(?:shore|mains|quay|plug\w*|alternator|engine|motoring|solar|panels?|generator|genset|regulator|converter"
    r"|dc ?-? ?dc|hook\w*)\b",
    re.IGNORECASE,
)
LIVE = ("about:reading_word", "role:read_off", "thing:meter", "detail:held", "about:how_long")  # it is on and is read


def overvoltage(case: Case) -> bool:
    """Whether a voltage that was read harms the battery: the core puts the hazard "overcharging-voltage" in front."""
    return _too_high(case) is not None or ("reading.voltage" in case.second and _too_high(case.others()) is not None)


def mistaken(case: Case) -> bool:
    """Whether the one 12 V battery that is told of cannot read so many volts, and nothing is told to charge it: then
    the meter or its range is in doubt, and no charger's fault is told."""
    volts, state = case.said("reading.voltage"), case.said("reading.state")
    alone = case.said("battery.nominal") == ONE_BATTERY and case.said("bank.voltage") is None
    alone = alone and case.said("battery.count") in (None, 1.0) and not SEVERAL.search(case.text)
    if (
        volts is None
        or not alone
        or state == "charging"
        or CHARGED.search(case.text)
        or "reading.voltage" in case.second
    ):
        return False
    return float(volts) > limit("believable-most") + NEAR


def equalised(case: Case) -> bool:
    """Whether a wet-cell battery is equalised on purpose, within the volts that are allowed for that."""
    told = case.says("detail:equalising") and case.said("battery.chemistry") == "flooded"
    return (
        told
        and not no_equalising.denied(case.text)
        and not overvoltage(case)
        and any(case.said(fact) is not None for fact in ("reading.voltage", "charger.voltage"))
    )


def harmful(case: Case) -> float | None:
    """Of the volts that are told those that harm the battery, or None."""
    found = _too_high(case)
    return found if found is not None or _MEASURED.isdisjoint(case.second) else _too_high(case.others())


def lithium_left_flat(case: Case) -> bool:
    """Whether a lithium battery stood for weeks or longer and rests so low that its cells may be harmed.

    The core puts the hazard of a lithium battery that was long flat in front.
    """
    volts, stood = case.said("reading.voltage"), case.said("storage.time")
    long = float(stood) >= LONG if stood is not None else case.says("detail:since_months", "detail:for_months")
    lithium = case.said("battery.chemistry") in ("lfp", "lithium-other")
    if volts is None or not long or not lithium or case.said("reading.state") in ("load", "charging"):
        return False
    each = float(volts) / (spanned(case, float(volts)) or 1)
    return ONE_CELL < each < limit("lithium-flat") - NEAR and not six_volts(case)


def _too_high(case: Case) -> float | None:
    chemistry = case.said("battery.chemistry") or case.said("charger.setting")  # "we switched to lithium"
    equalising = case.says("detail:equalising")
    asked = case.says("word:setting") and case.says(*STAGES) and case.says(*OPINION)
    programme = equalising or (asked and not case.says(*LIVE))
    lithium = chemistry in ("lfp", "lithium-other") and not wished_for.lithium(case.text)
    allowed = limit("lithium-overcharge") + NEAR if lithium else limit("lead-overcharge") - NEAR
    if equalising and chemistry == "flooded":
        allowed = limit("equalise-most") + NEAR
    for fact in ("reading.voltage", "charger.voltage"):
        volts = case.said(fact)
        if volts is None or (fact == "charger.voltage" and (programme or _is_of_before(case))):
            continue  # a programme of the charger, or what it gave before it was switched off
        count = spanned(case, float(volts))
        if count and allowed < float(volts) / count <= limit("believable-most") + NEAR:
            return float(volts)
    return None


def _is_of_before(case: Case) -> bool:
    """Whether the charger's volts are of a turn before and a reading at rest is told now."""
    charger, read = case.stated.get("charger.voltage"), case.stated.get("reading.voltage")
    rests = case.said("reading.state") == "rest" and read is not None and read.origin == "message"
    return rests and charger is not None and charger.origin == "thread"
