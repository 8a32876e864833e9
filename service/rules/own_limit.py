"""The most volts that a battery may be charged with by its own label or maker, where that is told."""

from __future__ import annotations

from grammar.told.readings.quoted import own_limit
from service import say
from service.case import Case
from service.rules.charge_volts import Put
from service.rules.readings import NEAR


def limit(text: str) -> float | None:
    """The volts that are told as the battery's own limit.

    >>> limit("charger says 14.7 on AGM, label on the battery says max 14.4"), limit("the label says 95 Ah, max 20 A")
    (14.4, None)
    """
    found = own_limit(text)
    return float(found["volts"].replace(",", ".")) if found else None


def over(case: Case, put: Put) -> str:
    """That the charger gives more volts than the battery's own label allows, in words; "" where it does not."""
    most = limit(case.text)
    times = float(case["bank.voltage"]) / 12
    given = put.each * times
    if most is None or given <= most + NEAR:
        return ""
    case.because("The battery's own label or maker comes before any table: the stricter counts", "settings-by-kind")
    return (
        f"keep to the battery's own {say.volts(most)}: {say.volts(given)} is over that, whatever the setting is called"
    )
