"""A reading at rest beside one under load, or beside that of another battery."""

from __future__ import annotations

from service.case import Case
from service.judgements.unlike import LIMITS


def with_load(case: Case) -> bool:
    """Whether something was on while the volts were read; what had been left on before is why they are low."""
    state = case.said("reading.state")
    if state == "load" and _is_of_the_other_reading(case):
        return False
    text = case.stated["reading.state"].text.lower() if state == "load" else ""
    before = "left" in text.split() and (not text.startswith("with") or case.said("storage.time") is not None)
    return state == "load" and not before


def _is_of_the_other_reading(case: Case) -> bool:
    """Whether "when I push the button" stands nearer to the volts under load: "12.8, and when I push it 9.1"."""
    state, rested, loaded = (case.stated.get(f"reading.{name}") for name in ("state", "voltage", "load_voltage"))
    if not (state and rested and loaded and state.span and rested.span and loaded.span):
        return False
    return _apart(state.span, loaded.span) < _apart(state.span, rested.span)


def _apart(one: tuple[int, int], other: tuple[int, int]) -> int:
    return max(one[0], other[0]) - min(one[1], other[1])


def joined_but_apart(case: Case, one: float, other: float) -> None:
    """Says of two batteries in parallel that they cannot read so far apart while they are joined."""
    most = LIMITS["before_joining"]
    if case.said("bank.layout") != "parallel" or abs(one - other) <= float(most.value) * (1 + 1e-9):
        return
    case.because(
        "Two that are still joined in parallel read alike: they were apart when you measured, or a joint between them "
        "is bad",
        most.cite,
    )
