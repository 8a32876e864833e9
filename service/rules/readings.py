"""What a meter or a hydrometer tells: how many batteries were read, how full they are, what is too high."""

from __future__ import annotations

from dataclasses import dataclass

from service import reference
from service.calculators import gravity, rest_voltage
from service.case import Case, rule
from service.rules.bank import read_system, system

DEAD = 2.0  # V: less is no reading of a battery
NEAR = 1e-6  # a value worked out to stand on a limit is on it
SIX_AT_MOST = 9.0  # more than that is not one 6 V battery
USES_ACID = (None, "flooded", "lead")  # a hydrometer needs liquid acid


def limit(name: str) -> float:
    """A single value of readings and care."""
    return float(reference.value("readings", name).value)


def cite(name: str) -> str:
    """The source of that value."""
    return reference.value("readings", name).cite


@dataclass(frozen=True, slots=True)
class Charge:
    """How full a battery is by its volts at rest: `value` in percent, with `low` and `high` where charts differ."""

    value: float
    each: float  # volts for each 12 V
    kind: str  # whose table was read: flooded, agm, gel or lfp
    cites: tuple[str, ...]
    low: float | None = None
    high: float | None = None

    @property
    def over(self) -> bool:
        """More than a full battery shows at rest: surface charge, or still on charge."""
        return self.each > highest(self.kind) + NEAR

    @property
    def flat(self) -> bool:
        """So low that the battery may be harmed inside."""
        return self.each < limit("lithium-flat" if self.kind == "lfp" else "lead-flat") - NEAR

    @property
    def verdict(self) -> str:
        """yes, marginal or no by the limits of its kind."""
        return judged(self.value, self.kind)


def judged(charge: float, kind: str) -> str:
    """Whether a charge is good (yes), just enough (marginal) or too low (no) for lead or lithium."""
    good, low = ("lithium-good", "lithium-low") if kind == "lfp" else ("lead-good", "lead-half")
    if charge >= limit(good) - NEAR:
        return "yes"
    return "marginal" if charge >= limit(low) - NEAR else "no"


def table_of(chemistry: str | None) -> str:
    """Whose table of resting volts counts: the wet-cell one where the kind is not said."""
    return chemistry if chemistry in ("agm", "gel", "lfp") else "flooded"


def rest_rows(kind: str) -> list[tuple[float, float]]:
    """The (volts, percent) rows of a kind; for lithium the middle of its band."""
    if kind == "lfp":
        return [(row["volts"].value, row["middle"].value) for row in reference.rows("lithium_rest")]
    rows = [row for row in reference.rows("rest_voltage") if row["chemistry"].value == kind]
    return [(row["volts"].value, row["charge"].value) for row in rows]


def band_rows() -> list[tuple[float, float, float, float]]:
    """The lithium band as (volts, low, middle, high)."""
    names = ("volts", "low", "middle", "high")
    return [tuple(row[name].value for name in names) for row in reference.rows("lithium_rest")]


def highest(kind: str) -> float:
    """The most that a full battery of a kind shows at rest."""
    if kind == "lfp":
        return limit("lithium-over")
    return max(volts for volts, _ in rest_rows(kind)) + limit(f"{kind}-over")


def charge_of(each: float, kind: str) -> Charge:
    """The charge that belongs to so many volts at rest for each 12 V."""
    if kind == "lfp":
        source = reference.rows("lithium_rest")[0]["volts"].cite
        low, middle, high = rest_voltage.band(each, band_rows())
        if 13.0 - NEAR <= each <= 13.4 + NEAR:  # the flat part, where one figure would be a guess
            return Charge(middle, each, kind, (source,), low, high)
        return Charge(middle, each, kind, (source,))
    source = reference.row("rest_voltage", chemistry=kind, charge=50)["volts"].cite
    return Charge(rest_voltage.charge(max(each, 0.0), rest_rows(kind)), each, kind, (source,))


def volts_for(charge: float, kind: str) -> float:
    """Volts at rest for each 12 V at which a kind of battery is so full."""
    return rest_voltage.volts_at(charge, rest_rows(kind))


def six_volts(case: Case) -> bool:
    """Whether the batteries are 6 V ones: only when said."""
    return 6.0 in (case.said("battery.nominal"), case.said("bank.voltage"))


def said_system(case: Case) -> float | None:
    """The volts of what was read, as said: of the system, of the batteries as joined, or of the one battery."""
    said = case.said("bank.voltage") or case.get("bank.built_voltage")
    one = case.said("battery.nominal")
    if said is None and one and case.said("battery.count") is None and not six_volts(case):
        return system(float(one))
    return None if said is None else float(said)


def batteries_read(volts: float, said: float | None, six: bool) -> float | None:
    """How many 12 V batteries in series a reading spans (half a one for 6 V), or None where it fits no system."""
    if six and volts <= SIX_AT_MOST:
        return 0.5
    found = said or read_system(volts)
    if found is None and limit("lead-overcharge") <= volts <= limit("believable-most"):
        return 1.0
    return None if found is None else found / 12


def spanned(case: Case, volts: float) -> float | None:
    """`batteries_read` for this case. Of two readings each is taken as one battery's where it fits one."""
    said, found = said_system(case), read_system(volts)
    first = case.stated.get("reading.voltage")
    of_a_pair = "reading.voltage" in case.second or (first is not None and first.of > 1)
    if of_a_pair and said and found and found < said:
        said = found
    return batteries_read(volts, said, six_volts(case))


def _rest_rule(kind: str, source: str) -> None:
    """Declares how the charge follows from volts at rest, with the source of that kind's table."""

    def by_volts(volts: float, chemistry: str | None, nominal: float | None, state: str | None) -> float | None:
        if state in ("load", "charging") or table_of(chemistry) != kind or chemistry == "lithium-other":
            return None
        count = batteries_read(volts, None, nominal == 6)
        found = charge_of(volts / count, kind) if count else None
        return None if found is None or found.over else found.value

    by_volts.__name__ = f"{kind}_charge_at_rest"
    rule(
        "battery.charge",
        ["reading.voltage", "?battery.chemistry", "?battery.nominal", "?reading.state"],
        unit="%",
        cites=[source],
        say="{reading.voltage} at rest is about {value} of charge",
    )(by_volts)


@rule(
    "battery.charge",
    ["reading.gravity", "?battery.chemistry", "?ambient.temperature"],
    unit="%",
    cites=["bci-charge"],
    say="A gravity of {reading.gravity} is about {value} of charge",
)
def charge_by_gravity(reading: float, chemistry: str | None, celsius: float | None) -> float | None:
    """The hydrometer goes before the meter; no reading that a wet-cell battery cannot have."""
    if chemistry not in USES_ACID or not 1.0 <= reading <= limit("gravity-most"):
        return None
    frost = celsius is not None and celsius <= 0  # the night's, not the acid's
    return gravity_charge(corrected_gravity(reading, None if frost else celsius))


for _kind in ("flooded", "agm", "gel", "lfp"):
    _rest_rule(_kind, charge_of(12.0, _kind).cites[0].partition("@")[0])


def corrected_gravity(reading: float, celsius: float | None) -> float:
    """A hydrometer reading at 26.7 C (80 F); as read where no temperature is said."""
    reference_at = (limit("gravity-reference") - 32) / 1.8
    return gravity.corrected(
        reading, reference_at if celsius is None else celsius, limit("gravity-correction"), reference_at
    )


def gravity_charge(corrected: float) -> float:
    """The charge that belongs to a corrected gravity."""
    return gravity.charge(corrected, [(row["gravity"].value, row["charge"].value) for row in reference.rows("gravity")])
