"""Numbers and facts as people write them. A number and its unit are joined by a no-break space."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from grammar.facts import facts
from grammar.text.patterns import regex

NB = "\u00a0"
HAIR = 1e-6  # of the last figure shown: a value worked out to be whole is whole
SYMBOL = {
    "volt": "V",
    "ampere": "A",
    "ampere_hour": "Ah",
    "watt": "W",
    "watt_hour": "Wh",
    "second": "s",
    "minute": "min",
    "hour": "h",
    "day": "d",
    "year": "years",
    "meter": "m",
    "millimeter ** 2": "mm2",
    "meter ** 3": "m3",
    "kilogram": "kg",
    "percent": "%",
    "degree_Celsius": "C",
    "": "",
}
SHOWN = {"mm2": "mm²", "m3": "m³", "C": "°C", "m3/h": "m³/h", "cm2": "cm²", "d": "days", "mohm": "mΩ"}
DERIVED = {  # units of facts that only rules give, by their last word: "bank.cca", "battery.start_voltage"
    "capacity": "Ah",
    "cca": "A",
    "current": "A",
    "energy": "Wh",
    "voltage": "V",
    "volts": "V",
}
CABLE_WORDS = {"cable.insulation": "insulation", "cable.drop": "loss"}
CHEMISTRY = {
    "flooded": "wet-cell",
    "agm": "AGM",
    "gel": "gel",
    "lead": "lead",
    "lfp": "lithium",
    "lithium-other": "lithium-ion",
}
VERDICT = {  # of one of two things, beside the other
    "yes": "yes",
    "marginal": "only just",
    "no": "no",
    "needs-facts": "one fact is missing",
}


def capital(text: str) -> str:
    """The text with a capital letter first; the rest stays as it is."""
    return text[:1].upper() + text[1:]


def number(value: float, places: int = 0) -> str:
    """A number with so many places, no minus zero. Halves go away from zero, as people round.

    >>> number(8.25, 1), number(-0.01, 1), number(1234.5)
    ('8.3', '0.0', '1235')
    """
    scaled = math.floor(abs(value) * 10**places + 0.5 + 1e-9) / 10**places
    text = f"{scaled:.{places}f}"
    return f"-{text}" if value < 0 and float(text) else text


def significant(value: float, figures: int = 3) -> str:
    """A number with so many figures that count, whole from there on.

    >>> significant(0.0833), significant(1280.4), significant(12.55), significant(2.0)
    ('0.0833', '1280', '12.6', '2')
    """
    if not value or not math.isfinite(value):
        return number(value) if not value else str(value)
    places = max(0, figures - 1 - math.floor(math.log10(abs(value))))
    text = number(value, places)
    return text.rstrip("0").rstrip(".") if "." in text else text


def at_most(value: float, unit: str = "A") -> str:
    """A limit, which rounding never lifts: three figures that count, rounded down.

    >>> at_most(23.75).replace(NB, " "), at_most(34.5).replace(NB, " "), at_most(46).replace(NB, " ")
    ('23.7 A', '34.5 A', '46 A')
    """
    return quantity(_directed(value, math.floor), unit)


def at_least(value: float, unit: str = "A") -> str:
    """What is needed, which rounding never lowers.

    >>> at_least(11.25).replace(NB, " "), at_least(9.5).replace(NB, " ")
    ('11.3 A', '9.5 A')
    """
    return quantity(_directed(value, math.ceil), unit)


def within(low: float, high: float, unit: str = "A") -> str:
    """Two limits as a range that is nowhere wider than they are.

    >>> within(9.5, 23.75).replace(NB, " ")
    '9.5 to 23.7 A'
    """
    first, last = at_least(low, unit), at_most(high, unit)
    return last if first == last else f"{first.removesuffix(f'{NB}{unit}')} to {last}"


def _directed(value: float, way: Callable[[float], int]) -> float:
    """A number with three figures that count, rounded one way; what is on the step within a hair stays."""
    step = 10 ** max(0, 2 - math.floor(math.log10(value))) if value > 0 else 1
    near = round(value * step)
    return near / step if abs(value * step - near) < HAIR else way(value * step) / step


def quantity(value: float, unit: str, places: int | None = None) -> str:
    """A number and its unit: `quantity(12.62, "V", 1)` is "12.6 V"."""
    text = significant(value) if places is None else number(value, places)
    if unit == "d":
        return f"{text}{NB}day{'' if text == '1' else 's'}"
    if unit == "years" and text == "1":
        return f"{text}{NB}year"
    if unit == "years" and places is None and 0 < value < 1:
        return _under_a_year(value)
    return f"{text}{NB}{SHOWN.get(unit, unit)}" if unit else text


def _under_a_year(years: float) -> str:
    """Part of a year in whole days, weeks or months: 0.0575 is "3 weeks"."""
    days = years * 365.25
    count, name = (days, "day") if days < 13.5 else (days / 7, "week") if days < 60 else (years * 12, "month")
    return f"{round(count)}{NB}{name}{'' if round(count) == 1 else 's'}"


def volts(value: float, places: int = 1) -> str:
    """Volts to 0.1, or to the places asked for."""
    return quantity(value, "V", places)


def amps(value: float) -> str:
    """Amps: whole from 10 on, below with the figures that count."""
    return quantity(value, "A", 0) if abs(value) >= 10 and abs(value - round(value)) < 0.05 else quantity(value, "A")


def given(value: float) -> str:
    """Amps that a battery gives, whole: what is given rounds down.

    >>> given(812.5).replace(NB, " "), given(721.99).replace(NB, " "), given(875.0 - 1e-9).replace(NB, " ")
    ('812 A', '721 A', '875 A')
    """
    return quantity(math.floor(value + 1e-6), "A", 0)


def cca(value: float) -> str:
    """A cranking rating."""
    return f"{number(value)}{NB}CCA"


def amp_hours(value: float) -> str:
    """Amp-hours with the figures that count."""
    return quantity(value, "Ah")


def daily(value: float) -> str:
    """Amp-hours of a day: whole from 10 on, 0.1 from 1 on, else 0.01.

    >>> daily(11.11).replace(NB, " "), daily(1.44).replace(NB, " ")
    ('11 Ah', '1.4 Ah')
    """
    return quantity(value, "Ah", 0 if value >= 10 else 1 if value >= 1 else 2)


def fives(value: float) -> int:
    """A share to the nearest five, halves up.

    >>> fives(68.6), fives(62.5), fives(67.5)
    (70, 65, 70)
    """
    return math.floor(value / 5 + 0.5) * 5


def charge(value: float) -> str:
    """A state of charge to 5 %.

    >>> charge(68.6).replace(NB, " ")
    '70 %'
    """
    return f"{fives(value)}{NB}%"


def charge_within(value: float, limits: tuple[int, ...] = (75, 50)) -> str:
    """A charge to 5 % that rounding never lifts over a limit.

    >>> [charge_within(value).replace(NB, " ") for value in (94.7, 74.1, 75.0)]
    ['95 %', 'just under 75 %', '75 %']
    """
    rounded = fives(value)
    crossed = next((limit for limit in limits if value < limit <= rounded), None)
    return f"just under {crossed}{NB}%" if crossed else charge(value)


def still_in(value: float) -> str:
    """A charge that is still there after a use: whole, rounded down.

    >>> still_in(92.9).replace(NB, " ")
    '92 %'
    """
    return f"{math.floor(value + HAIR)}{NB}%"


def share(value: float) -> str:
    """A loss in percent to 0.1, to 0.01 where that would make it just 3 or 10 %.

    >>> [share(value).replace(NB, " ") for value in (9.41, 10.0, 10.02, 13.26)]
    ['9.4 %', '10 %', '10.02 %', '13.3 %']
    """
    near = any(value != limit and number(value, 1) == number(limit, 1) for limit in (3, 10))
    return f"{number(value, 2 if near else 1).removesuffix('.0')}{NB}%"


def duration(minutes: float) -> str:
    """A time as people say it.

    >>> [duration(m).replace(NB, " ") for m in (0.5, 6.4, 60, 150, 3000, 20000)]
    ['30 seconds', '6 minutes', '1 hour', '2.5 hours', '50 hours', '14 days']
    """
    for size, name, places in ((1 / 60, "second", 0), (1, "minute", 0), (60, "hour", 1), (1440, "day", 0)):  # noqa: B007
        count = minutes / size
        if count < {"second": 99.5, "minute": 59.5, "hour": 71.95}.get(name, math.inf):
            break
    text = number(count, places).removesuffix(".0")
    return f"{text}{NB}{name}{'' if text == '1' else 's'}"


def days(count: float) -> str:
    """Days that something lasts, rounded down: to the figures that count, in hours under two days.

    >>> [days(n).replace(NB, " ") for n in (1.5, 9.69, 26.04)]
    ['36 hours', '9.6 days', '26 days']
    """
    if count < 2:
        return quantity(int(count * 24 + 1e-6), "hours", 0)
    return quantity(int(count + 1e-6) if count >= 10 else int(count * 10 + 1e-6) / 10, "d")


def lasting(minutes: float) -> str:
    """A time that something lasts, rounded down.

    >>> [lasting(m).replace(NB, " ") for m in (7.7, 13.75, 82.6, 59.9, 0.7)]
    ['7 minutes', '13 minutes', '1.3 hours', '59 minutes', '42 seconds']
    """
    if minutes < 2:
        return duration(minutes)
    return duration(math.floor(minutes + 1e-6) if minutes < 60 else math.floor(minutes / 6 + 1e-6) * 6)


def between_times(low: float, high: float, given: bool = False) -> str:
    """Two times in minutes as people say them: "11 to 17 minutes", "42 seconds to 4 minutes"; what is `given` rounds
    down.

    >>> between_times(10.9, 17.2).replace(NB, " "), between_times(0.7, 3.8).replace(NB, " ")
    ('11 to 17 minutes', '42 seconds to 4 minutes')
    """
    first, last = (lasting(low), lasting(high)) if given else (duration(low), duration(high))
    if first == last:
        return first
    number_, _, unit = first.partition(NB)
    return f"{number_ if last.endswith(unit) else first} to {last}"


def length(metres: float, feet: bool = False) -> str:
    """A length in the unit the customer typed, the other in brackets."""
    metric, imperial = quantity(metres, "m"), f"{significant(metres / 0.3048)}{NB}ft"
    return f"{imperial} ({metric})" if feet else f"{metric} ({imperial})"


def temperature(celsius: float, fahrenheit: bool = False) -> str:
    """A temperature, the other scale in brackets."""
    metric = f"{number(celsius)}{NB}°C"
    imperial = f"{number(celsius * 9 / 5 + 32)}{NB}°F"
    return f"{imperial} ({metric})" if fahrenheit else f"{metric} ({imperial})"


def between(low: float, high: float, unit: str, places: int | None = None) -> str:
    """A range: "14.2 to 14.8 V"; one value where both ends read alike."""
    first, last = quantity(low, "", places), quantity(high, "", places)
    return quantity(high, unit, places) if first == last else f"{first} to {quantity(high, unit, places)}"


def so_many(count: float) -> str:
    """How many times a battery is good for something: over 20 down to fives, as no sum tells it nearer.

    >>> so_many(78), so_many(20), so_many(13), so_many(24)
    ('75', '20', '13', '20')
    """
    return number(count if count <= 20 else math.floor(count / 5 + 1e-9) * 5)


def listed(parts: list[str], word: str = "and") -> str:
    """ "a, b and c"."""
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} {word} {parts[-1]}" if parts else ""


def gauge(text: str) -> str:
    """A wire gauge: "1/0 AWG"."""
    return f"{text}{NB}AWG"


def symbol(fact: str) -> str:
    """The unit of a fact as the JSON writes it: "Ah", "mm2", "" for none. Derived facts go by their last word."""
    spec = facts().get(fact)
    return SYMBOL.get(spec.unit, spec.unit) if spec else DERIVED.get(re.split(r"[._]", fact)[-1], "")


AN = regex(r"\b(a|(?:^|(?<=[.:;] ))A)(?= (?:8[\d.]*|1[18](?:\.\d+)?)(?![\d/]))")


def with_articles(text: str) -> str:
    """A text with "an" before the numbers that begin with a vowel.

    >>> with_articles("A 80 A charger, a 8 mm stud, a 18 A load and a 110 Ah battery; a 1.8 V sag")
    'An 80 A charger, an 8 mm stud, an 18 A load and a 110 Ah battery; a 1.8 V sag'
    """
    return AN.sub(lambda found: f"{found[1]}n", text)


LIMITS = (20, 40, 50, 75)  # percent of charge at which a verdict turns


def whole_percent(value: float) -> str:
    """A state of charge to a whole percent, which no reading tells nearer; it is never rounded up to a limit.

    >>> whole_percent(1.47).replace(NB, " "), whole_percent(74.8).replace(NB, " ")
    ('1 %', '74 %')
    """
    whole = round(value)
    return f"{whole - 1 if whole in LIMITS and value < whole - 1e-6 else whole}{NB}%"


def fact(name: str, value: float | str | bool) -> str:
    """The value of a fact as people write it: "340 A", "AGM", "2/0 AWG"."""
    if name == "cable.in_engine_space":
        return "in the engine space" if value else "outside the engine space"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if name in CABLE_WORDS:
        return f"{quantity(float(value), symbol(name))} {CABLE_WORDS[name]}"
    if name == "cable.gauge":
        return gauge(str(value))
    if name in ("battery.chemistry", "charger.setting"):
        return CHEMISTRY.get(str(value), str(value))
    if isinstance(value, str):
        return value
    if name == "battery.charge":
        return whole_percent(float(value))
    if symbol(name) == "V":  # a reading of 12.15 V is not one of 12.2 V
        return quantity(value, "V", 2 if abs(value * 10 - round(value * 10)) > 1e-6 else None)
    if symbol(name) == "s" and value >= 60:
        return duration(value / 60)
    return quantity(value, symbol(name))
