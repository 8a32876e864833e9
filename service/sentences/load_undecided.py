"""A reading under load that decides nothing yet: what is lacking, and which part may be to blame."""

from __future__ import annotations

from service.case import Case
from service.judgements.load_reading import UnderLoad
from service.sentences import wording


def what_lacks(case: Case, under: UnderLoad) -> tuple[str, ...]:
    """The facts without which a reading that is not low proves nothing."""
    lacking = [
        fact for fact, known in (("reading.current", under.current), ("battery.cca", case.get("bank.cca"))) if not known
    ]
    if under.basis == "test":  # of a test at unknown amps the name is enough; at known amps the CCA is wanted
        return ("battery.cca",) if under.current and not case.get("bank.cca") else ()
    return tuple(lacking)


def lead_taken(case: Case) -> None:
    """Notes that lead was taken where the kind is not said."""
    if wording.kind_is_open(case):
        case.assume("battery.chemistry", "lead", "lithium would have to hold 12.0 V")
