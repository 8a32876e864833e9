"""What draws with everything off: what it may be, and how much it takes by two readings some days apart."""

from __future__ import annotations

import re
from dataclasses import dataclass

from grammar.text.patterns import regex
from grammar.told.readings import dated
from service import say
from service.case import Case
from service.judgements import laid_up
from service.judgements.laid_up import is_lithium
from service.rules import readings
from service.rules.readings import NEAR, limit

LEFT_ALONE = regex(
    r"\b(?:nothing|all|everything|isolator|main switch|charger)\b[^.?!;]{0,20}"
    r"\b(?:on|off|used|connected|running|drawn)\b"
    r"|\bdisconnected\b|\b(?:nobody|no one|no-one) (?:aboard|on board|used)|\bunused\b|\bnot used\b|\bdrain\b",
    re.IGNORECASE,
)
CHARGED_SINCE = regex(r"\b(?:charged|charging|on charge)\b(?! (?:on|it|up|full\w*) )[^.?!;]{0,30}", re.IGNORECASE)
UNKNOWN_DAYS, A_SEASON = 30, 180  # days, where none are told, and since a month that is named
UNSURE = 10.0  # points of charge that a meter may be off
ASKED = "detail:what_draws"
CAUSES = "drain-causes"
MAY_BE = (
    "It may be the bilge pump's float switch, an alarm, the memory of a radio, or a charger or monitor wired past the "
    "switch"
)
FIND_IT = "With a meter in the minus cable, pull the fuses one by one: the current drops with the right one"
LIKELY = "a float switch, an alarm, a radio's memory or a charger wired past the switch"
SHORT = f"Most likely {LIKELY}: pull the fuses one by one until the current drops."


OFF_THE_CHARGER = regex(
    r"\bcharger (?:was |is |has been |been )?(?:switched |turned )?off\b|\boff (?:the |its )?charg(?:er|e|ing)\b"
    r"|\bafter (?:the |its |a )?(?:last |full )*charg(?:e|ing)\b"
    r"|\bunplugged\b|\b(?:last )?(?:fully )?charged\b[^.?!;]{0,24}\b(?:ago|yesterday|last)\b"
    r"|\bsince (?:the |its )?(?:last |full )*charge\b",
    re.IGNORECASE,
)


PARTED = regex(  # the battery, not what charges it
    r"(?<!charger )(?<!charger was )(?<!charger is )(?<!panel )(?<!power )\bdisconnected\b"
    r"(?! (?:the|my|its|all|a|from|everything|charger|solar|shore))"
    r"|\bcables? (?:was |were )?(?:off|taken off|removed)\b|\bleads? (?:were )?off\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Loss:
    """What two readings at rest tell: the charge at first and then, the days between, percent lost in a day by itself
    and at most so."""

    first: float
    then: float
    days: float
    own: float
    own_at_most: float
    volts: tuple[float, float]

    @property
    def daily(self) -> float:
        """Percent of the capacity lost in a day."""
        return (self.first - self.then) / self.days

    @property
    def drawn(self) -> float:
        """Percent that something takes in a day, beside what it loses by itself; 0 where that alone explains it."""
        return 0.0 if self.daily <= self.own_at_most + NEAR else self.daily - self.own


def causes(case: Case) -> None:
    """Notes what it may be and how it is found."""
    if PARTED.search(case.text):
        case.because(
            "With its cables off nothing can draw: it was never full, or a cell is bad", "self-discharge-range"
        )
        return
    case.because(MAY_BE, CAUSES)
    case.because(FIND_IT, CAUSES)


def by_two_readings(case: Case) -> Loss | None:
    """The loss of a lead battery that rested at two voltages, the lower one so many days later; else None.

    The volts of lithium tell too little of its charge.
    """
    days, other = (
        case.said("storage.time"),
        case.second.get("reading.voltage") or case.stated.get("reading.load_voltage"),
    )
    if not days or other is None or "reading.voltage" not in case.stated or is_lithium(case):
        return None
    volts = sorted((float(case["reading.voltage"]), float(other.value)), reverse=True)
    kind = readings.table_of(case.said("battery.chemistry"))
    charges = []
    for read in volts:
        count = readings.spanned(case, read)
        if not count or (found := readings.charge_of(read / count, kind)).flat:
            return None
        charges.append(found.value)
    if charges[0] - charges[1] < NEAR:
        return None
    case.used.setdefault((other.fact, other.of), other)
    figure = laid_up.self_discharge(case)
    most = float(figure.high or figure.value) / limit("month")
    return Loss(charges[0], charges[1], float(days), laid_up.daily_share(case), most, (volts[0], volts[1]))


@dataclass(frozen=True, slots=True)
class Fall:
    """Volts at rest on one day and on a later one, with nothing on, that fell further than a battery does by itself."""

    volts: tuple[float, float]
    days: int | None


def fallen(case: Case) -> Fall | None:
    """The fall of a lead battery that rested at two voltages of two days with nothing on; None where it is small."""
    read = dated.read_on_days(case.text)
    if len(read) < 2 or is_lithium(case) or not LEFT_ALONE.search(case.text) or CHARGED_SINCE.search(case.text):
        return None
    first, last = read[0], read[-1]
    if case.said("reading.voltage") != last.volts:
        return None
    kind = readings.table_of(case.said("battery.chemistry"))
    count = readings.spanned(case, first.volts)
    if not count or last.volts >= first.volts - NEAR:
        return None
    charges = [readings.charge_of(item.volts / count, kind).value for item in (first, last)]
    days = dated.days_between(first, last)
    figure = laid_up.self_discharge(case)
    unknown = A_SEASON if first.day["month"] else UNKNOWN_DAYS
    own = float(figure.high or figure.value) / limit("month") * float(unknown if days is None else days)
    if charges[0] - charges[1] <= own + UNSURE:
        return None
    return Fall((first.volts, last.volts), days)


def since_the_charger(case: Case, charge: float) -> None:
    """Notes that a lead battery lost more since it came off its charger than it loses by itself, where that is told.

    In a frost it may hold ice, which comes first.
    """
    hours, frost = case.said("reading.rest_time"), float(case.get("ambient.temperature", 20.0)) <= 0
    if hours is None or frost or is_lithium(case) or not OFF_THE_CHARGER.search(case.text):
        return
    days = float(hours) / 24
    row = laid_up.rate_of(case)
    own = laid_up.monthly(case) * float(row["high"].value) / float(row["rate"].value) / limit("month") * days
    if not 1 <= days <= limit("month") or charge >= limit("lead-good") - own:
        return
    lost = f"down to about {say.charge(charge)} in {say.quantity(days, 'd', 0)}"
    case.because(
        f"{say.capital(lost)} off the charger is more than it loses by itself: something draws, it was never full, or "
        "a cell is bad; charge it, take the cables off and read it again after a day",
        "self-discharge-range",
        CAUSES,
    )


def note(case: Case, loss: Loss, kind: str) -> None:
    """The steps from the readings to what is lost in a day. `kind`: the battery's, as "an AGM"."""
    table = readings.charge_of(12.5, readings.table_of(case.said("battery.chemistry"))).cites
    low = " and ".join(f"{say.volts(read, 2)} is about {say.charge(at)}" for read, at in pairs(loss))
    case.step(f"{low}: {say.quantity(loss.daily, '%', 1)} a day over {say.quantity(loss.days, 'd', 0)}", *table)
    own = say.quantity(loss.own, "%", 2)
    case.step(f"By itself {kind} battery loses about {own} a day", "drain-arithmetic")


def pairs(loss: Loss) -> tuple[tuple[float, float], tuple[float, float]]:
    """The volts with their charge."""
    return (loss.volts[0], loss.first), (loss.volts[1], loss.then)
