"""What a charger's amps and the cold make of a charge whose setting and volts are right."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from service import say
from service.case import Case, Value
from service.judgements import charging
from service.kinds import CHARGED

TOO_MUCH = "More amps than it can take up turn into heat and gas inside the battery"


@dataclass(frozen=True, slots=True)
class Finding:
    """The verdict on the amps, the sentence for it, and the facts that it still wants."""

    verdict: str
    say: str
    wants: tuple[str, ...] = ()
    short: str = ""  # of too many, beside another finding


def judged(case: Case, chemistry: str) -> Finding | None:
    """A stated charger's amps against the battery; None where nothing is told of them and no cold limits them."""
    lacking = tuple(fact for fact in ("battery.capacity", "charger.current") if not known(case, fact))
    if lacking:
        return in_the_cold(case, chemistry, lacking)
    amps, cold = float(case["charger.current"]), charging.cold_share(case, chemistry)
    span = charging.span(case, chemistry, charging.capacity(case))
    bank = f"{say.amp_hours(span.capacity)} of {say.CHEMISTRY[chemistry]}"
    at = f" at {say.temperature(float(case['ambient.temperature']))}" if cold else ""
    if not span.over(amps):
        slow = amps < span.low * (1 - charging.NEAR)
        fits = "is not too much for" if slow else "suits"
        return None if slow and not cold else Finding("yes", f"{say.amps(amps)} {fits} {bank}{at}")
    verdict = span.verdict(amps, charging.unregulated(case))
    if verdict == "yes":
        return None
    if not cold:
        case.because(TOO_MUCH, "charging-by-kind")
    takes = f"which takes {say.at_most(span.high)} at most"
    short = f"{say.amps(amps)} is too much ({say.at_most(span.high)} at most)"
    return Finding(verdict, f"{say.amps(amps)} is too much for {bank}, {takes}{at}", short=short)


def in_the_cold(case: Case, chemistry: str, lacking: tuple[str, ...]) -> Finding | None:
    """That in the cold the amps decide, where they are not told."""
    share = charging.cold_share(case, chemistry)
    if share is None:
        return None
    at = say.temperature(float(case["ambient.temperature"]))
    takes = f"at {at} lithium takes at most {say.amps(share.value * 100)} for each 100{say.NB}Ah"
    case.source(share.cite)
    return Finding("needs-facts", takes, lacking)


def known(case: Case, fact: str) -> bool:
    """Whether what decides the amps is told: of the battery also by what it is worked out from."""
    return fact in case.stated if fact == "charger.current" else "charge.capacity" in case


def largest(case: Case) -> Iterator[Value]:
    """The most amps that suit the battery, where they are what is too much."""
    case = case.fresh()
    chemistry = charging.known_kind(case)
    if chemistry in CHARGED and known(case, "charger.current") and known(case, "battery.capacity"):
        found = charging.span(case, str(chemistry), charging.capacity(case))
        if found.over(float(case["charger.current"])):
            yield found.high
