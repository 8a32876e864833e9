"""Readings that cannot be, or that contradict each other: what to ask again, and when a technician looks."""

from __future__ import annotations

from dataclasses import dataclass

from service import say
from service.case import Case
from service.reply import Route
from service.rules import readings
from service.rules.bank import read_system
from service.rules.readings import NEAR, limit

ON_CHARGE = 13.2  # no lead battery shows as much for each 12 V after a night's rest
MOST_SHOWN = 60  # over that a slip of the point, shown as typed
MAINS = (60.0, 500.0)  # what a meter shows where mains has got onto the battery's wires
WELL_CHARGED = (10.5, 15.0)


@dataclass(frozen=True, slots=True)
class Doubt:
    """What does not fit: the sentence that names it, the facts to ask again, and who sees to it."""

    say: str
    asks: tuple[str, ...]
    route: Route = "needs-facts"


def of_rest(case: Case) -> Doubt | None:
    """A doubt about a reading at rest, or None."""
    found = _amps_for_volts(case) or _impossible(case) or _one_of_several(case) or _two_of_one(case)
    return found or _rises(case) or opposed(case)


def of_load(case: Case) -> Doubt | None:
    """A doubt about a reading under load, or None."""
    found = _impossible(case) or _impossible(case, "reading.load_voltage") or _one_of_several(case)
    return found or _rises(case) or _ends_swapped(case)


def shown(volts: float) -> str:
    """Volts to 0.1, or to 0.01 where they were read so finely."""
    if volts > MOST_SHOWN:
        return say.volts(volts, 0)
    return say.volts(volts, 1 if abs(volts * 10 - round(volts * 10)) < 1e-6 else 2)


def _amps_for_volts(case: Case) -> Doubt | None:
    """ "12.8 amps battery voltage": the figure of a voltage with the unit of a current."""
    if case.said("reading.voltage") is not None:
        return None
    for fact in ("reading.current", "load.current"):
        amps = case.said(fact)
        if amps is not None and WELL_CHARGED[0] <= float(amps) < WELL_CHARGED[1]:
            figure = say.number(float(amps), 1)
            return Doubt(
                f"A battery's voltage is in volts, not amps, so we think you mean {figure} V: please read it again.",
                ("reading.voltage",),
            )
    return None


def _impossible(case: Case, fact: str = "reading.voltage") -> Doubt | None:
    """More than any battery of the stated system shows, or less than nothing."""
    volts, said = case.said(fact), readings.said_system(case)
    if volts is None:
        return None
    volts = float(volts)
    if volts < 0:
        head = f"A minus sign means the meter's leads are swapped: we think you mean {shown(-volts)}."
        return Doubt(head, (fact,))
    count = readings.batteries_read(volts, said, readings.six_volts(case))
    if count is None and said is None and volts > MAINS[1]:
        return _point_left_out(volts)
    if count is None or volts / count <= limit("believable-most") + NEAR:
        return None
    system = say.quantity(count * 12, "V")
    head = f"A {system} battery cannot read {shown(volts)}"
    for tens in (10, 100):
        if read_system(volts / tens) == count * 12:
            meant, kind = volts / tens, readings.table_of(case.said("battery.chemistry"))
            if meant / count > readings.highest(kind) + NEAR:
                charged = f"{shown(meant)} is what a battery shows while it is charged, not at rest"
                case.because(charged, readings.cite(f"{'lithium' if kind == 'lfp' else kind}-over"))
            mains = MAINS[0] <= volts <= MAINS[1]
            really = "; if it really shows that, hands off: mains may be on the wires" if mains else ""
            return Doubt(f"{head}, so we think you mean {shown(meant)}{really}.", (fact,))
    other = read_system(volts)
    slip = f", so it may be a {say.quantity(other, 'V')} bank" if other else ", so the meter or its range is in doubt"
    return Doubt(f"{head}{slip}: please read it again.", ("bank.voltage", fact))


def _point_left_out(volts: float) -> Doubt | None:
    """ "my batt reads 1270 volts": a point that the display has and the message has not."""
    meant = next((volts / tens for tens in (100, 10, 1000) if read_system(volts / tens)), None)
    if meant is None:
        return None
    head = f"No battery aboard reads {shown(volts)}, so we think you mean {say.volts(meant, 2)}: please read it again."
    return Doubt(head, ("reading.voltage",))


def _one_of_several(case: Case) -> Doubt | None:
    """A 24 V bank that reads as one 12 V battery does: one battery was read, or one gives nothing."""
    volts, said = case.said("reading.voltage"), readings.said_system(case)
    if volts is None or said is None or "reading.voltage" in case.second:
        return None
    found = read_system(float(volts))
    if found is None or found >= said:
        return None
    return Doubt(
        f"A {say.quantity(said, 'V')} bank at rest cannot read {shown(float(volts))}: either one battery was read, or "
        "one of them gives nothing.",
        ("reading.voltage",),
        "technician",
    )


def _two_of_one(case: Case) -> Doubt | None:
    """Two readings of one battery, both said to be at rest, of which one is a charging voltage."""
    if case.said("reading.voltage") is None or not case.says("detail:same_battery"):
        return None
    second = case.second.get("reading.voltage")
    other = second.value if second else case.said("charger.voltage")
    if other is None:
        return None
    pair = (float(case["reading.voltage"]), float(other))
    low, high = (volts / (readings.spanned(case, volts) or 1.0) for volts in sorted(pair))
    if case.said("battery.chemistry") == "lfp" or high < ON_CHARGE or high - low < 0.5:
        return None
    if second:
        case.used.setdefault(("reading.voltage", 2), second)
    both = f"{shown(min(pair))} and {shown(max(pair))} at rest"
    return Doubt(
        f"{both} cannot both be right: the higher one is a charging voltage.", ("reading.voltage",), "technician"
    )


def opposed(case: Case) -> Doubt | None:
    """Volts and gravity of one battery that are further apart than any error of meter and float."""
    volts, gravity = case.said("reading.voltage"), case.said("reading.gravity")
    chemistry = case.said("battery.chemistry") or "flooded"  # only cells with caps can be dipped
    if volts is None or gravity is None or chemistry not in readings.USES_ACID:
        return None
    if case.said("reading.state") in ("load", "charging"):
        return None
    count = readings.spanned(case, float(volts))
    if count is None:
        return None
    by_volts = readings.charge_of(float(volts) / count, "flooded").value
    by_float = readings.gravity_charge(readings.corrected_gravity(float(gravity), case.said("ambient.temperature")))
    if abs(by_volts - by_float) <= limit("opposed"):
        return None
    case.step(
        f"{shown(float(volts))} at rest is about {say.charge(by_volts)} of charge, a gravity of {gravity:.3f} "
        f"about {say.charge(by_float)}",
        readings.cite("opposed"),
        "bci-charge",
    )
    first, then = (_in_words(charge) for charge in (by_volts, by_float))
    return Doubt(
        f"{shown(float(volts))} and {gravity:.3f} cannot both be right: the first says {first} and the second {then}, "
        "so a technician will look at this.",
        ("reading.gravity", "reading.voltage"),
        "technician",
    )


def _in_words(charge: float) -> str:
    return "full" if charge > 90 else "empty" if charge < 10 else f"about {say.charge(charge)}"


def _rises(case: Case) -> Doubt | None:
    """Volts that do not drop when the load comes on."""
    rest, load = case.said("reading.voltage"), case.said("reading.load_voltage")
    if rest is None or load is None or float(load) <= float(rest) + NEAR:
        return None
    rise = f"from {shown(float(rest))} to {shown(float(load))}"
    return Doubt(
        f"Volts cannot rise {rise} when a load comes on: we think the two are swapped, or something was charging.",
        ("reading.load_voltage", "reading.voltage"),
        "technician",
    )


def _ends_swapped(case: Case) -> Doubt | None:
    """More volts at the motor than at the battery that feeds it."""
    near, far = case.said("reading.load_voltage"), case.said("reading.load_voltage_at_load")
    if near is None or far is None or float(far) <= float(near) + 0.1:
        return None
    return Doubt(
        f"The motor cannot have {shown(float(far))} while the battery shows {shown(float(near))}: we think the two are "
        "swapped.",
        ("reading.load_voltage", "reading.load_voltage_at_load"),
        "technician",
    )
