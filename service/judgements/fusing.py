"""The ratings that count for a fuse: enough for the load, not too much for the cable, and what every fuse must meet."""

from __future__ import annotations

from dataclasses import dataclass

from service import reference, say
from service.calculators import fuse
from service.calculators.cable import Size
from service.case import Case, Missing
from service.judgements import circuit
from service.judgements.fitting import to_fit
from service.reply import Figure
from service.rules.cable import TABLE_5

RATINGS = tuple(float(item["amps"].value) for item in reference.rows("fuse_ratings"))
LISTED = "nec-240-6@240.6(A)"
LOAD_MARGIN = reference.value("fuse_rules", "load_margin")
CABLE_MARGIN = reference.value("fuse_rules", "cable_margin")
PLACE = reference.value("fuse_rules", "place_mm")
VOLTAGE = reference.value("fuse_rules", "voltage")
STARTER = reference.value("fuse_rules", "starter")
GREAT = 450.0  # A: beyond what a usual motor circuit has
PLACED = f"within 7{say.NB}in (178{say.NB}mm) of the battery plus"


@dataclass(frozen=True, slots=True)
class Band:
    """The ratings that count: for the load, at or just above the ampacity, and the most for the cable."""

    load: float | None
    cable: float | None
    most: float | None
    house: float | None = None
    breaks: float | None = None  # amps that the fuse must be able to break

    @property
    def fit(self) -> float | None:
        """The rating to fit: the house's where the cable holds, else the load's."""
        return self.house if self.house and self.most and self.house <= self.most else self.load


def running(case: Case) -> float | None:
    """Amps in the cable, None where they are not known."""
    try:
        return circuit.current(case)
    except Missing:
        return None


def ratings(case: Case) -> Band:
    """The band of ratings, each from what is known."""
    amps, load, first, most = running(case), None, None, None
    if amps:
        load = fuse.at_least(LOAD_MARGIN.value * amps, RATINGS)
        shown = f"at least {say.amps(load)}" if load else "beyond the list"
        case.step(
            f"1.25 x {say.amps(amps)} = {say.amps(LOAD_MARGIN.value * amps)}, so the fuse is {shown}",
            LOAD_MARGIN.cite,
            LISTED,
        )
    if circuit.has_cable(case) and "cable.ampacity" in case:
        carries = float(case["cable.ampacity"])
        first = fuse.at_least(carries, RATINGS)
        most = fuse.at_most(CABLE_MARGIN.value * carries, RATINGS)
        case.step(
            f"1.5 x {say.amps(carries)} = {say.amps(CABLE_MARGIN.value * carries)}, so the most is "
            f"{say.amps(most or 0)}",
            CABLE_MARGIN.cite,
            TABLE_5,
        )
    main = interrupting(case)
    return Band(load, first, most, house_fuse(case, amps), float(main.value) if main else None)


def house_fuse(case: Case, amps: float | None) -> float | None:
    """The fuse that the catalogue names for the model, as long as the model's own current runs."""
    model = case.house.model(case["load.model"]) if case.house and "load.model" in case else None
    if not model or amps != model.running:
        return None
    case.because(f"The catalogue names a {say.amps(model.fuse)} fuse for the {model.name}", "house")
    return float(model.fuse)


def requirements(case: Case) -> None:
    """What every fuse must meet, noted as steps."""
    case.step(f"Fit it {PLACED}; at each end where both ends can feed it", PLACE.cite)
    case.step(
        "The fuse must be rated for the bank's charging voltage (DC) and able to break its short-circuit current",
        VOLTAGE.cite,
    )
    if main := interrupting(case):
        cca = say.cca(float(case["bank.cca"]))
        case.step(f"A bank of {cca} asks for a fuse that can break {say.amps(main.value)}", main.cite)
    if case.get("battery.family") == "lithium":
        case.step(
            "A short of a lithium bank can be thousands of amps: its maker states how many, else class T",
            "fault-current",
        )


def interrupting(case: Case) -> reference.Cited | None:
    """Amps that the first fuse after a lead bank of 12 or 24 V must be able to break, None where its CCA is not known.

    The table goes by all cranking amps together, whether in series or in parallel.
    """
    cca = case.get("bank.cca")
    if not cca or case.get("battery.family") == "lithium" or float(case["bank.voltage"]) > 24:
        return None
    table = reference.rows("interrupting")
    return next((item for item in table if cca <= item["cca_to"].value), table[-1])["main"]


def great(case: Case, rated: float) -> None:
    """How a very large fuse is met, noted as a cause; nothing for a smaller one."""
    if rated >= GREAT:
        case.because(
            "So large a fuse is a slow bolt-down one, or class T: its kind is named in the motor's manual, and where "
            "that asks for a smaller one, the manual's stands",
            "fuse-practice",
        )


def many_cables(case: Case) -> bool:
    """Whether no single cable carries the load, whatever its run."""
    amps = running(case)
    return amps is not None and all(size.ampacity < amps for sizes in circuit.sizes(case.fresh()) for size in sizes)


def too_thin(case: Case, band: Band) -> bool:
    """Whether the cable cannot carry the load, or no fuse suits both."""
    amps = running(case)
    return bool(amps and band.most and band.load and (float(case["cable.ampacity"]) < amps or band.load > band.most))


def next_cable(case: Case, band: Band, than: Size | None = None) -> str:
    """The thinnest size that carries the load and suits its fuse, thicker `than` that or theirs; "" for none."""
    amps, wanted = running(case) or 0.0, band.load or 0.0
    metric, area = (isinstance(than.name, float), than.area) if than else (circuit.metric(case), case["cable.cmil"])
    least = of_the_run(case, metric)
    for size in circuit.sizes(case)[1 if metric else 0]:
        first = fuse.at_least(size.ampacity, RATINGS) if size.ampacity else None
        if size.area > float(area) and size.area >= least and size.ampacity >= amps and first and first >= wanted:
            return circuit.called(size)
    return ""


def of_the_run(case: Case, metric: bool) -> float:
    """Circular mils of the size that the told run asks for; 0 where no run is told, or one cable is not enough."""
    amps = running(case)
    if amps is None or "cable.length" not in case.stated:
        return 0.0
    choice = to_fit(case.fresh(), amps)
    size = choice.area if metric else choice.gauge
    return size.area if size and choice.count == 1 else 0.0


def carries_it(case: Case) -> str:
    """The thinnest size that carries the load over its run, whatever its fuse; "" where there is none."""
    metric, amps = circuit.metric(case), running(case) or 0.0
    sizes, least = circuit.sizes(case)[1 if metric else 0], of_the_run(case, metric)
    return next((circuit.called(size) for size in sizes if size.ampacity >= amps and size.area >= least), "")


def figures(band: Band) -> tuple[Figure, ...]:
    """The fuse for the load and the most that the cable allows, as far as they are known."""
    found = []
    if band.fit:
        found.append(Figure("fuse_rating", "fuse for this load", band.fit, "A"))
    if band.most:
        found.append(Figure("fuse_rating_high", "the most the cable allows", band.most, "A"))
    if band.breaks and found:
        found.append(Figure("interrupting_rating", "short circuit it must break", band.breaks, "A"))
    return tuple(found)
