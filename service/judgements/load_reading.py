"""A voltage read while the load runs, against the least that a battery in good order would hold."""

from __future__ import annotations

import re
from dataclasses import dataclass

from grammar.text.patterns import regex
from service import say
from service.calculators import sag
from service.case import Case
from service.reference import value
from service.rules.battery import lowest_at
from service.rules.readings import NEAR, cite, limit, spanned

TESTED = "detail:load_test"
OUTCOMES = ("detail:failed_test", "detail:passed_test")  # with the volts it held, a test that was done
COUNTS_AS_STATED = ("message", "thread", "house")
WANTED = regex(  # a test that is only thought of: "should I load test anyway?"
    r"\b(?:should|shall|must|do|does|did (?:i|you|he|she|we|they)|can|could|may|might|would|need|worth|want|going"
    r"|better|ought|before|not|never|how)\b"
    r"[^.?!;,]{0,30}\bload[- ]?test(?:ed|ing)?\b(?! (?:at|with|gave|reads?|showed|says?|of \d))",
    re.IGNORECASE,
)
NAMED = regex(r"\bload[- ]?test", re.IGNORECASE)
TOPS = (15.0, 30.0, 45.0)  # a lone reading under load up to 15 V is of a 12 V system, and so on


@dataclass(frozen=True, slots=True)
class UnderLoad:
    """One reading under load. Volts are those of the bank that was read; `count` batteries of 12 V in series.

    `basis` is what the lowest volts follow from: lithium, test, current or alone (9.6 V, where nothing else is known).
    """

    read: float | None
    lowest: float
    count: float
    basis: str
    rest: float | None = None
    current: float | None = None
    small: bool = False  # in order, but too small for its load: its own lowest is under 9.0 V

    @property
    def sag(self) -> float | None:
        """How far the voltage drops."""
        return None if self.rest is None or self.read is None else self.rest - self.read

    @property
    def milliohms(self) -> float | None:
        """Inner resistance of what was read."""
        return None if self.sag is None or not self.current else self.sag / self.current * 1000

    @property
    def holds(self) -> bool:
        """Whether the reading is at or over the lowest."""
        return self.read is not None and self.read >= self.lowest - NEAR


def current_of(case: Case) -> float | None:
    """The current during the reading: measured, else what the load is said to draw, else its model's."""
    if found := case.said("reading.current"):
        return float(found)
    found = case.known("load.current")
    return float(found.value) if found and found.origin in COUNTS_AS_STATED else None


def readings_of(case: Case) -> tuple[float | None, float | None]:
    """Volts under load and at rest. One reading alone that was taken under load, or in a load test, is the former."""
    read, rest = case.said("reading.load_voltage"), case.said("reading.voltage")
    if read is None and rest is not None:
        state = case.said("reading.state")
        other = case.second.get("reading.state")
        if other is not None and other.value == "rest":  # "9.1 running at the motor, 12.7 at rest"
            state = "rest"
        if state == "load" or (tested(case) and state != "rest"):
            read, rest = rest, None
    return None if read is None else float(read), None if rest is None else float(rest)


def batteries_of(case: Case) -> float:
    """How many 12 V batteries in series the meter spanned: by the resting reading, the system, else the reading."""
    read, rest = readings_of(case)
    count = spanned(case, rest) if rest else None
    said = case.said("bank.voltage") or case.get("bank.built_voltage") or case.get("load.voltage")
    if count or said:
        return count or float(said) / 12
    volts = float(read or case.said("reading.load_voltage_at_load") or 12.0)
    return 1.0 + sum(volts > top for top in TOPS)


def start_of(case: Case, count: float) -> float:
    """Volts for each 12 V from which the drop is reckoned: the resting reading or those of the charge that was told, at
    most 12.8 V, else 12.6 V."""
    _, rest = readings_of(case)
    if rest is None:
        return by_its_charge(case) or float(value("ratings", "full").value)
    return min(rest / count, float(value("ratings", "full-at-most").value))


def by_its_charge(case: Case) -> float | None:
    """Volts for each 12 V of lead from which it starts by the charge that was told; None where no charge was."""
    told = case.said("battery.charge") is not None and case.get("battery.family") not in ("lithium", "lithium-other")
    return float(case["battery.start_voltage"]) if told and "reading.voltage" not in case.stated else None


def read_under_load(case: Case) -> UnderLoad:
    """The reading of this case with its limit; each step of the limit is noted."""
    read, rest = readings_of(case)
    count = batteries_of(case)
    if rest is None and (start := by_its_charge(case)) is not None:
        rest = start * count
    lithium = case.get("battery.family") in ("lithium", "lithium-other")
    lowest, basis, small = _lithium(case) if lithium else _lead(case, count)
    return UnderLoad(read, lowest * count, count, basis, rest, current_of(case), small)


def _lithium(case: Case) -> tuple[float, str, bool]:
    lowest = limit("lithium-load-yes")
    case.step(f"A lithium battery should hold {say.volts(lowest)} for each 12 V under load", cite("lithium-load-yes"))
    return lowest, "lithium", False


def is_test(case: Case) -> bool:
    """Whether it is a load test: called one, or at about half the CCA."""
    share = _share(case)
    half = share is not None and limit("test-share-low") - NEAR <= share <= limit("test-share-high") + NEAR
    return half or (tested(case) and share is None)


def tested(case: Case) -> bool:
    """Whether a load test was done, and not only asked after: "should I load test it?"."""
    if not case.says(TESTED):
        return case.says(*OUTCOMES) and case.said("reading.load_voltage") is not None and bool(NAMED.search(case.text))
    named, wanted = len(NAMED.findall(case.text)), len(WANTED.findall(case.text))
    return not (named and named == wanted)


def test_asked(case: Case) -> bool:
    """Whether it is asked if a load test is worth it, and none was done."""
    return case.says(TESTED) and not tested(case) and "?" in case.text


def _share(case: Case) -> float | None:
    amps, cca = current_of(case), case.get("bank.cca")
    return amps / float(cca) if amps and cca else None


def _lead(case: Case, count: float) -> tuple[float, str, bool]:
    celsius = case.said("ambient.temperature")
    table = lowest_at(celsius)
    if is_test(case):
        case.step(
            f"Load test at half the CCA: {say.volts(table.value)} is the least for each 12 V"
            + (f" at {say.temperature(celsius)}" if celsius is not None else " at 21 °C"),
            table.cite,
        )
        return float(table.value), "test", False
    amps, cca = current_of(case), case.get("bank.cca")
    if not amps or not cca:
        warm = lowest_at(None)
        case.step(f"Current or CCA not known: the load test's {say.volts(warm.value)} at 21 °C is taken", warm.cite)
        return float(warm.value), "alone", False
    ohms = ohms_of(case)
    start = start_of(case, count)
    lowest = sag.terminal_voltage(start, amps, ohms)
    case.step(
        f"A battery that just passes the load test has {say.number(ohms * 1000, 1)} mΩ: {say.volts(start, 2)} less "
        f"{say.amps(amps)} x {say.number(ohms * 1000, 1)} mΩ = {say.volts(lowest, 2)} for each 12 V",
        value("ratings", "full").cite,
        table.cite,
    )
    least = limit("lead-load-least")
    if lowest < least - NEAR:
        case.step(f"A thruster wants {say.volts(least)} in any case", cite("lead-load-least"))
    return max(lowest, least), "current", lowest < least - NEAR


def ohms_of(case: Case) -> float:
    """Inner resistance for each 12 V of a bank of this CCA that just passes the load test at this temperature."""
    full = float(value("ratings", "full").value)
    return sag.resistance(float(case["bank.cca"]), full, float(lowest_at(case.said("ambient.temperature")).value))


def not_full(case: Case) -> bool:
    """Whether the battery is known not to have been charged when it was read under load."""
    rest, charge = readings_of(case)[1], case.said("battery.charge")
    if rest is None:
        told = case.says("detail:half_charged", "detail:flat_one")
        return told if charge is None else float(charge) < limit("lead-good") - NEAR
    return rest / batteries_of(case) < limit("test-charged") - NEAR


def test_is_void(case: Case) -> tuple[str, ...]:
    """Why a load test does not count: not charged (reading.voltage), too cold (ambient.temperature)."""
    celsius = case.said("ambient.temperature")
    cold = celsius is not None and float(celsius) < limit("test-coldest") - NEAR
    return (*(("reading.voltage",) if not_full(case) else ()), *(("ambient.temperature",) if cold else ()))


def passed_test(case: Case) -> bool:
    """Whether a valid load test of a lead battery was passed, by its volts."""
    if readings_of(case)[0] is None or case.get("battery.family") == "lithium" or test_is_void(case):
        return False
    return is_test(case) and read_under_load(case).holds


def failed_test(case: Case) -> bool:
    """Whether a valid load test was failed: by its volts, or as told."""
    if readings_of(case)[0] is None:
        return case.says("detail:failed_test")
    if case.get("battery.family") == "lithium" or test_is_void(case):
        return False
    return is_test(case) and not read_under_load(case).holds


def fell_by_volts(case: Case) -> UnderLoad | None:
    """The reading under a load that is not known, where it is lower than a lead battery in order shows; else None."""
    if case.said("reading.load_voltage") is None or case.get("battery.family") in ("lithium", "lithium-other"):
        return None
    under = read_under_load(case)
    return None if under.holds or under.basis != "alone" or under.read is None else under


def held(case: Case) -> UnderLoad | None:
    """The reading under load of a lead battery that stays at or over its lowest; else None."""
    if case.said("reading.load_voltage") is None or case.get("battery.family") in ("lithium", "lithium-other"):
        return None
    under = read_under_load(case)
    return under if under.holds and under.read is not None else None


def held_by_volts(case: Case) -> UnderLoad | None:
    """The reading under a load that is not known, where a good lead battery may read as much; else None."""
    under = held(case)
    return under if under is not None and under.basis == "alone" else None
