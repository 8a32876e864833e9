"""Charging volts by kind of battery and stage, and how a charger's setting or voltage fits them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from grammar.text.patterns import regex
from grammar.told.readings.quoted import own_limit
from service import reference, say
from service.calculators.charging import REFERENCE, compensated
from service.case import Case
from service.judgements.charging import NEAR
from service.reply import Figure
from service.rules.readings import batteries_read, spanned
from service.told import charger_left_on, part_charged

ABSORPTION = "absorption (the high-voltage part of a charge)"
FLOAT = "float (the low voltage that keeps it full)"
MILD = 10.0  # °C under the reference in which nothing is said of it
LEAST = 12.0  # V: 6 V batteries are seldom charged one by one
HIGHER = regex(  # a bank of the charger's own volts is told of
    r"\b(?:series|pair|two|both|bank|string|set)\b|\b2 ?x\b|\b(?:24|36|48) ?v(?:olts?)? (?:boat|system|side)",
    re.IGNORECASE,
)
NOMINAL = (6.0, 12.0, 24.0, 36.0, 48.0)  # a charger "of 24 V" is named by its system, not by what it puts out


@dataclass(frozen=True, slots=True)
class Stage:
    """The volts of a stage for a bank: from `low` to `high`, best at `aim`."""

    low: float
    high: float
    aim: float
    cite: str

    def holds(self, volts: float) -> bool:
        """Whether a voltage is inside."""
        return self.low - NEAR <= volts <= self.high + NEAR

    def __str__(self) -> str:
        """As people write it: "14.2 to 14.8 V"."""
        return say.between(self.low, self.high, "V", 1)


@dataclass(frozen=True, slots=True)
class Put:
    """What a charger puts out: its volts for each 12 V of battery."""

    each: float
    held: bool  # it never drops back


def stage(chemistry: str, name: str, volts: float = 12.0) -> Stage:
    """The absorption, float or equalise volts of a kind, for a bank of so many volts."""
    row = reference.row("charge_voltage", chemistry=chemistry, stage=name)
    low, high, aim = (row[part].value * volts / 12 for part in ("low", "high", "aim"))
    return Stage(low, high, aim, row["low"].cite)


def figures(case: Case, chemistry: str) -> tuple[Figure, ...]:
    """Absorption and float volts for this bank, and what a sensor on the battery makes of the first."""
    volts = float(case["bank.voltage"])
    absorption, floating = (stage(chemistry, name, volts) for name in ("absorption", "float"))
    case.source(absorption.cite, floating.cite)
    return (
        Figure("absorption_voltage", ABSORPTION, absorption.aim, "V", absorption.low, absorption.high),
        Figure("float_voltage", FLOAT, floating.aim, "V", floating.low, floating.high),
        *by_warmth(case, chemistry, absorption),
    )


def by_warmth(case: Case, chemistry: str, absorption: Stage) -> Iterator[Figure]:
    """What lead wants in warmth and cold, in the cold never more than its kind's highest; nothing near 25 °C."""
    celsius = case.said("ambient.temperature")
    row = reference.row("charge_voltage", chemistry=chemistry, stage="absorption")
    if celsius is None or "by_degree" not in row or REFERENCE - MILD < celsius <= REFERENCE:
        return
    by_degree = row["by_degree"].value * float(case["bank.voltage"]) / 12
    aim = min(compensated(absorption.aim, celsius, by_degree), absorption.high)
    brings = f"a sensor on the battery brings {say.volts(absorption.aim)}"
    how = f"down to {say.volts(aim)}" if celsius > REFERENCE else f"up to {say.volts(aim)}; without one leave it"
    case.step(f"At {say.temperature(celsius)} {brings} {how}", "charge-compensation")
    yield Figure("absorption_by_warmth", "absorption with a sensor", aim, "V")


STAGED = regex(r"\b(?:in absorption|then (?:it )?(?:drops?|goes|falls|down|floats?))\b", re.IGNORECASE)  # it ends


def put_out(case: Case) -> Put | None:
    """The voltage that the charger puts out, for each 12 V; None where it is not said or only the system is."""
    volts = case.said("charger.voltage")
    if volts is None and case.said("reading.state") == "charging":
        volts = case.said("reading.voltage")
    if volts is None or volts in NOMINAL:
        return None
    count = batteries_read(float(volts), None, six=False) or spanned(case, float(volts))
    held = case.says("detail:held", "detail:never_drops") and "charger.setting" not in case.stated
    ends = STAGED.search(case.text) or charger_left_on.floats(case.text) or case.get("charger.kind") == "smart"
    held = held and (case.says("detail:never_drops") or not ends)
    return Put(float(volts) / count, held) if count else None


def systems_apart(case: Case) -> tuple[float, float] | None:
    """A charger for more volts than the battery has: (charger, battery) volts; None where they fit or are not known."""
    battery = case.said("battery.nominal")
    volts = case.said("charger.voltage")
    if volts is None and case.said("battery.count") == 1:
        volts = case.said("bank.voltage")  # "a 24 V charger on one 12 V battery": the 24 V are the charger's
    if volts is None and not HIGHER.search(case.text):
        volts = part_charged.named_once(case.text)  # "my 12 V battery with a 24 V charger"
    if part_charged.put_on_one(case.text):  # of a pair: that one battery takes its own volts
        charger = part_charged.volts(case.text)
        return (charger, float(battery)) if charger and battery and charger > battery >= LEAST else None
    joined = case.get("bank.layout") in ("series", "series-parallel") or case.get("battery.count", 1) > 1
    if volts is None or battery is None or battery < LEAST or joined:
        return None
    count = batteries_read(float(volts), None, six=False)
    charger = float(volts) if volts in NOMINAL else LEAST * count if count else None
    return (charger, float(battery)) if charger is not None and charger > battery else None


def verdict_of_volts(put: Put, chemistry: str) -> str:
    """yes as a stage that ends or a float that may be held, marginal where too low or somewhat high, no over it."""
    absorption, floating = stage(chemistry, "absorption"), stage(chemistry, "float")
    if put.each > absorption.high + NEAR:
        return "no"
    if floating.holds(put.each):
        return "yes"
    if put.each >= absorption.low - NEAR:
        return "no" if put.held else "yes"
    return "marginal"


def verdict_of_setting(setting: str, chemistry: str) -> str:
    """yes for the battery's own setting, no for one that goes over its absorption range, else marginal."""
    if setting == chemistry:
        return "yes"
    over = stage(setting, "absorption").high > stage(chemistry, "absorption").high + NEAR
    return "no" if over else "marginal"


def its_own_limit(text: str) -> float | None:
    """The volts that are told as the battery's own limit.

    >>> its_own_limit("charger says 14.7 on AGM, label on the battery says max 14.4")
    14.4
    >>> its_own_limit("the label says 95 Ah, max 20 A")
    """
    found = own_limit(text)
    return float(found["volts"].replace(",", ".")) if found else None


def over_its_own_limit(case: Case, put: Put) -> str:
    """That the charger gives more volts than the battery's own label allows, in words; "" where it does not."""
    most = its_own_limit(case.text)
    times = float(case["bank.voltage"]) / 12
    given = put.each * times
    if most is None or given <= most + NEAR:
        return ""
    case.because("The battery's own label or maker comes before any table: the stricter counts", "settings-by-kind")
    return (
        f"keep to the battery's own {say.volts(most)}: {say.volts(given)} is over that, whatever the setting is called"
    )
