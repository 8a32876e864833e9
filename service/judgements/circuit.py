"""The circuit that a cable or a fuse serves: its current, its volts, the loss allowed, and how its cable is named."""

from __future__ import annotations

import re
from dataclasses import dataclass

from grammar.text.patterns import regex
from service import say
from service.calculators import cable
from service.calculators.cable import Size
from service.case import Case, Known, Missing
from service.judgements import converter
from service.rules.cable import (
    COLUMNS,
    CRITICAL_LIMIT,
    INSULATION,
    MOTOR_LIMIT,
    K,
    ampacity,
    area_cite,
    gauges,
    metric_sizes,
    nearest_gauge,
    standard,
)
from service.rules.load import MOTORS

CHARGES = ("thing:charger", "thing:dcdc", "word:charge")
PANEL = "thing:panel"  # a solar panel, or the controller that it charges through
SOLAR = regex(r"\b(?:solar|sun|pv|mppt|regulator|controller|\d+ ?w(?:atts?)?)\b", re.IGNORECASE)
TEN = r"\b(?:10|ten)\b(?! ?(?:m|metres?|meters?|ft|feet|foot|mm2?|a|amps?|awg|sq)\b)"
THREE = r"\b(?:3|three) ?(?:%|per ?cent)"
BOTH_QUOTED = regex(
    rf"(?:{THREE}[^.?!;]{{0,60}}?{TEN}|{TEN}[^.?!;]{{0,60}}?{THREE})[^?]{{0,200}}\bwhich\b", re.IGNORECASE
)
IN_FEET = regex(r"(?:\d|\b)f(?:t|oot|eet)?\b|['′]", re.IGNORECASE)  # not the f of "four metres"
MOST_OF_A_PANEL = 60.0  # A: more is a motor's, on a boat that has a panel as well
COOLER = 75.0  # C: the insulation of much older and household cable
MOST_LOST = 10.0  # percent, whatever is said to be allowed
LIGHTS = regex(r"\bnav(?:igation)? ?lights?\b", re.IGNORECASE)
SIZES = {"cable.gauge", "cable.area"}
PROPOSED = "as proposed"  # why a cable is assumed: the desk itself named it
LOAD = ("load.current", "load.power", "load.peak", "load.model")


@dataclass(frozen=True, slots=True)
class Loss:
    """What a cable loses: volts, the share of the system's volts, and the most that suits the load."""

    volts: float
    percent: float
    allowed: float  # percent

    @property
    def within(self) -> bool:
        """Whether the loss is within the limit that applies."""
        return self.percent <= self.allowed * (1 + 1e-9)


def current(case: Case) -> float:
    """Amps that run in the cable: the load's, or a charger's where no load is named. Raises Missing."""
    charges = case.says(*CHARGES) and not any(name in case.stated for name in LOAD[:3])
    if "charger.current" in case.stated and (charges or not any(name in case.stated for name in LOAD)):
        amps = float(case["charger.current"])
        return converter.into_the_converter(case, amps) if converter.converts(case) else amps
    return float(case["load.current"])


def volts(case: Case) -> float:
    """Nominal volts of the circuit: of the side taken from where a converter is fed, else of the bank."""
    feeds = converter.converts(case) and not any(name in case.stated for name in LOAD[:3])
    return converter.taken_from(case) if feeds else float(case["bank.voltage"])


def allowed(case: Case) -> float:
    """Percent of the system's volts that the cable may lose: as stated, at most 10; else by the kind of load."""
    if "load.kind" not in case.stated and "load.model" not in case.stated:
        if case.says("detail:feed"):
            case.assume("load.kind", "panel feed", "a feed, electronics or navigation lights, as you wrote")
        elif case.says(*CHARGES) or (converter.converts(case) and not any(name in case.stated for name in LOAD)):
            case.assume("load.kind", "charger", "the cable of a charger, as you wrote")
        elif case.says(PANEL) and current(case) <= MOST_OF_A_PANEL:
            kind = "solar panel" if SOLAR.search(case.text) else "panel feed"
            case.assume("load.kind", kind, "the cable of a panel or its controller, as you wrote")
    found = case.known("cable.drop")
    if found is None:
        raise Missing("cable.drop")
    return min(_percent(case, found), MOST_LOST)


def _percent(case: Case, found: Known) -> float:
    """A loss allowed in percent of the system's volts, however it was typed."""
    typed = found.text.lower()
    in_volts = found.unit in ("V", "volt") or ("v" in typed and "%" not in typed and "per" not in typed)
    return float(found.value) / volts(case) * 100 if in_volts else float(found.value)


def limit(case: Case, percent: float, link: str = "for") -> str:
    """A limit of loss and whose it is: "10 % for a thruster", "5 % that you set"."""
    told = case.stated.get("cable.drop")
    own = told is not None and _percent(case, told) <= MOST_LOST
    return f"{say.quantity(percent, '%')} {'that you set' if own else f'{link} {suits(case)}'}"


def loss(case: Case, amps: float) -> Loss:
    """What the stated cable loses over the stated length. Raises Missing."""
    lost = cable.drop(amps, float(case["cable.length"]), float(case["cable.cmil"]), k=K.value)
    case.source(area_cite(case))
    return Loss(lost, lost / volts(case) * 100, allowed(case))


def limit_cite(percent: float) -> str:
    """The source of the limit that applies."""
    return CRITICAL_LIMIT.cite if percent <= float(CRITICAL_LIMIT.value) else MOTOR_LIMIT.cite


def has_cable(case: Case) -> bool:
    """Whether the size of a cable was said."""
    return "cable.gauge" in case.stated or "cable.area" in case.stated


def is_proposed(case: Case) -> bool:
    """Whether the cable of the case is the one that the desk proposes: a new one."""
    return any(case.stated[fact].why == PROPOSED for fact in SIZES if fact in case.stated)


def must_know(case: Case) -> None:
    """Raise Missing for a cable whose size, or an insulation, that no table holds."""
    insulation = float(case["cable.insulation"])
    if insulation < COLUMNS[0]:
        raise Missing("cable.insulation")
    if has_cable(case) and not ("cable.cmil" in case and "cable.ampacity" in case):
        raise Missing("cable.gauge")


def metric(case: Case) -> bool:
    """Whether the customer writes in metric sizes."""
    return "cable.area" in case.stated and "cable.gauge" not in case.stated


def name(case: Case) -> str:
    """The customer's cable as it was said: "2/0 AWG", "70 mm²"."""
    if "cable.gauge" in case.stated:
        return say.gauge(standard(str(case["cable.gauge"])))
    return say.quantity(float(case["cable.area"]), "mm2")


def called(size: Size) -> str:
    """A standard size by name."""
    return say.gauge(size.name) if isinstance(size.name, str) else say.quantity(size.name, "mm2")


def sizes(case: Case) -> tuple[tuple[Size, ...], tuple[Size, ...]]:
    """American and metric sizes with what they carry at this insulation and place."""
    insulation, engine_space = float(case["cable.insulation"]), bool(case["cable.in_engine_space"])
    return gauges(insulation, engine_space), metric_sizes(insulation, engine_space)


def warm_rating(case: Case) -> float | None:
    """Amps of the stated cable if its insulation were for 75 °C only, where its insulation was not said; else None."""
    if "cable.insulation" in case.stated or is_proposed(case):
        return None
    gauge = standard(str(case["cable.gauge"])) if "cable.gauge" in case else nearest_gauge(float(case["cable.area"]))
    return ampacity(gauge, COOLER, bool(case["cable.in_engine_space"]))


def least_insulation(case: Case, amps: float) -> float | None:
    """The lowest insulation in °C, at most that of a new cable, with which the stated size carries these amps."""
    gauge = standard(str(case["cable.gauge"])) if "cable.gauge" in case else nearest_gauge(float(case["cable.area"]))
    inside = bool(case["cable.in_engine_space"])
    carrying = (float(one) for one in COLUMNS if one <= INSULATION and (ampacity(gauge, one, inside) or 0.0) >= amps)
    return min(carrying, default=None)


def insulation_named(insulation: float) -> str:
    """ "with 90 °C insulation or better"."""
    return f"with {say.number(insulation)}{say.NB}°C insulation{' or better' if insulation < INSULATION else ''}"


def second_cable(case: Case) -> Case | None:
    """The same question for the second cable, None where only one was named. Raises Missing for an unknown size."""
    named = SIZES & set(case.second)
    if not named:
        return None
    other = case.others()
    other.stated = {fact: item for fact, item in other.stated.items() if fact in named or fact not in SIZES}
    must_know(other)
    return other


def in_feet(case: Case, fact: str = "cable.length") -> bool:
    """Whether a length was typed in feet."""
    found = case.stated.get(fact)
    return found is not None and IN_FEET.search(found.text) is not None


def _served(case: Case) -> str:
    """What the cable serves: a charger's where its amps run in it, whatever hangs on the battery that it charges."""
    charges = "charger.current" in case.stated and case.get("load.current") is None
    return "charger" if charges else str(case.get("load.kind", "motor")).lower()


def suits(case: Case) -> str:
    """What the loss allowed is for, in words: "a thruster", "electronics"."""
    kind = _served(case)
    if kind == "panel feed":
        return "feeds, electronics and navigation lights"
    if kind == "electronics" and LIGHTS.search(case.text):
        return "navigation lights"
    return f"a {kind}" if kind in MOTORS | {"charger", "solar panel"} else kind


def what_is_missing(case: Case) -> str:
    """What the volts that a cable loses do to its load."""
    kind = _served(case)
    if kind in ("charger", "solar panel"):
        return "Volts lost in the cable are missing at the battery, so it charges slowly and not right through"
    does = "a motor turns slowly or its relay lets go" if kind in MOTORS else "lamps dim and electronics may cut out"
    return f"Volts lost in the cable are missing at the load, so {does}"


def both_quoted(text: str) -> bool:
    """Whether both limits are quoted and it is asked which of them counts.

    >>> both_quoted("I read 3% everywhere but your manual says 10, which"), both_quoted("3 % over 10 m, which cable?")
    (True, False)
    """
    return BOTH_QUOTED.search(text) is not None


def which_counts(case: Case) -> str:
    """Which of the two limits counts, where both were quoted and neither is stated; else ""."""
    asked = case.says("detail:which_limit") or both_quoted(case.text)
    if not asked or "cable.drop" in case.stated:
        return ""
    counts = allowed(case)
    motors, feeds = (say.quantity(share, "%") for share in (10.0, 3.0))
    other = f"{feeds} is for electronics and feeds" if counts > 3 else f"{motors} is for motors"
    return f"{say.quantity(counts, '%')} counts for {suits(case)}, {other}"


def bars(case: Case, amps: float, fitted: Size | None, around: int = 2) -> dict[str, object] | None:
    """A picture of the volts lost by size, some sizes each side of the one fitted, with the limits as lines."""
    known = next((found for found in sizes(case) if fitted in found), None)
    if known is None or fitted is None:
        return None
    system, length, place = volts(case), float(case["cable.length"]), known.index(fitted)
    shown = known[max(0, place - around) : place + around + 1]
    lost = [cable.drop(amps, length, size.area, k=K.value) for size in shown]
    return {
        "kind": "bars",
        "title": "Volts lost by cable size",
        "x": {"label": "cable", "values": [called(size) for size in shown]},
        "y": {"label": "volts lost", "unit": "V"},
        "series": [{"label": "volts lost", "values": lost}],
        "limits": [{"label": f"{say.number(share)}{say.NB}%", "value": system * share / 100} for share in (3, 10)],
        "mark": {"x": called(fitted), "label": "this cable"},
    }


def no_battery_there(case: Case) -> str:
    """ "Must there be a battery in the bow?" before the amps are told."""
    over = f"over {say.length(float(case['cable.length']))}" if "cable.length" in case else "over a long run"
    return f"No, but {over} the cable from the house bank gets very thick: the amps of the thruster decide its size."
