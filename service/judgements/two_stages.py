"""Both volts of a charger told by their stages, "absorption 28.8, float 27.6", each against the volts of its stage."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from service import say
from service.case import Case
from service.judgements import charge_volts, charging
from service.judgements.charge_volts import Stage, stage
from service.reply import Change, Option, strictest, strictness

VOLTS = "charger.voltage"
FLOAT, ABSORPTION = ("term:float",), ("term:absorption", "term:bulk")


@dataclass(frozen=True, slots=True)
class Told:
    """The volts of one stage of the bank that is charged, beside those that suit it."""

    name: str
    volts: float
    suits: Stage

    @property
    def verdict(self) -> str:
        """yes inside its stage, marginal below it, no above: a float is held for days."""
        if self.suits.holds(self.volts):
            return "yes"
        return "no" if self.volts > self.suits.high else "marginal"

    def say(self) -> str:
        """How it stands: "28.8 V for absorption is inside 27.6 to 28.8 V"."""
        how = "inside" if self.verdict == "yes" else "over" if self.verdict == "no" else "under"
        return f"{say.volts(self.volts)} for {self.name} is {how} the {self.suits}"


@dataclass(frozen=True, slots=True)
class Judged:
    """What both come to."""

    verdict: str
    say: str
    short: str  # both volts and no ranges: "14.4 V for absorption and 13.6 V for float are inside its range"
    sides: tuple[Option, ...]
    changes: tuple[Change, ...]


def judged(case: Case, chemistry: str) -> Judged | None:
    """The two stages of a charger against those of a kind of battery; None where not both are told."""
    both = tuple(_told(case, chemistry))
    if len(both) < 2:
        return None
    verdict = strictest(*(one.verdict for one in both))
    first, second = sorted(both, key=lambda one: -strictness(one.verdict))
    joined = "and" if first.verdict == second.verdict else "but"
    told = f"{first.say()} of {charging.called(chemistry)}, {joined} {second.say()}"
    sides = tuple(Option(f"{one.name}, {say.volts(one.volts)}", one.verdict) for one in both)
    case.used[(VOLTS, 2)] = replace(case.second[VOLTS], of=2)
    changes = tuple(
        Change(VOLTS, one.suits.high if one.verdict == "no" else one.suits.low, "V", f"{one.name} of {one.suits}")
        for one in both
        if one.verdict != "yes"
    )
    short = f"{' and '.join(f'{say.volts(one.volts)} for {one.name}' for one in both)} are inside its range"
    return Judged(verdict, told, short, sides, changes)


def _told(case: Case, chemistry: str) -> Iterator[Told]:
    """Absorption is the higher one, whichever is told first."""
    first, second = case.said(VOLTS), case.second.get(VOLTS)
    if first is None or second is None or not case.says(*FLOAT) or charge_volts.put_out(case) is None:
        return
    volts = float(case["bank.voltage"])
    high, low = sorted((float(first), float(second.value)), reverse=True)
    yield Told("absorption", high, stage(chemistry, "absorption", volts))
    yield Told("float", low, stage(chemistry, "float", volts))
