"""A converter stands between two circuits: what each one takes for a fuse."""

from __future__ import annotations

from service import say
from service.calculators import fuse
from service.case import Case
from service.judgements import circuit, converter
from service.judgements.fusing import LISTED, LOAD_MARGIN, RATINGS
from service.reply import Figure


def fuses(case: Case) -> tuple[str, tuple[Figure, ...]] | None:
    """The headline and the fuse of either side, None where no converter is told of or one is beyond the list."""
    if not converter.converts(case) or circuit.has_cable(case):
        return None
    given = float(case["charger.current"])
    taken = converter.most_taken_in(case.fresh(), given)
    into, out = (fuse.at_least(LOAD_MARGIN.value * amps, RATINGS) for amps in (taken, given))
    if into is None or out is None:
        return None
    for amps, rated, side in ((taken, into, "takes from"), (given, out, "charges")):
        case.step(
            f"On the side it {side} 1.25 x {say.amps(amps)} = {say.amps(LOAD_MARGIN.value * amps)}: {say.amps(rated)}",
            LOAD_MARGIN.cite,
            LISTED,
        )
    source, target = (say.quantity(volts, "V") for volts in (converter.taken_from(case), converter.charges_at(case)))
    where = ("the battery it takes from", "the one it charges") if source == target else _sides(source, target)
    head = f"Fit fuses of {say.amps(into)} at {where[0]} and {say.amps(out)} at {where[1]}, each as its cable allows."
    figures = (
        Figure("fuse_rating", f"fuse at {where[0]}", into, "A"),
        Figure("fuse_rating_out", f"fuse at {where[1]}", out, "A"),
    )
    return head, figures


def _sides(source: str, target: str) -> tuple[str, str]:
    return f"the {source} battery", f"the {target} one"
