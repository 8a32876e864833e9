"""The cable that the desk proposed: it goes with the fuse, the loss and the motor's volts as an assumption, by name."""

from __future__ import annotations

from service import say
from service.calculators.cable import Size
from service.case import Case, Known
from service.judgements import circuit
from service.judgements.fitting import to_fit, us_first
from service.judgements.fusing import running

TOPIC = "cable-size"
BEFORE = {"gauge": f"{TOPIC}.gauge", "area": f"{TOPIC}.area"}  # the size proposed in an earlier turn, by figure
THEIRS = ("cable.gauge", "cable.area")
OF_THE_RUN = ("load.current", "load.model", "load.power", "cable.length")


def stands(case: Case) -> bool:
    """Whether the desk proposed a cable in this conversation, or does so in this very answer.

    A cable that they have and do not know is no proposed one, nor is that of another boat.
    """
    asked = TOPIC in case.beside or any(name in case.worked for name in BEFORE.values())
    return asked and not circuit.has_cable(case) and not case.says("note:no_idea", "note:other_boat")


def size(case: Case) -> Size | None:
    """The one size to fit for the run and the amps of this case, in the customer's system; None where none is told,
    where two runs are, or where one cable is not enough. The catalogue's counts where it asks for more."""
    if circuit.has_cable(case) or "cable.length" not in case or not set(OF_THE_RUN).isdisjoint(case.second):
        return None
    case = case.fresh()  # its steps are those of another answer
    amps, american = running(case), us_first(case)
    if amps is None:
        return None
    choice = to_fit(case, amps)
    found = choice.gauge if american else choice.area
    if choice.count != 1 or found is None:
        return None
    old = None if TOPIC in case.beside else _before(case, american)
    return old if old and old.area > found.area else found  # less would do by now, but that one was named


def _before(case: Case, american: bool) -> Size | None:
    """The size that an earlier answer of the conversation proposed, None where none did."""
    name = case.worked.get(BEFORE["gauge" if american else "area"])
    return next((item for item in circuit.sizes(case)[0 if american else 1] if item.name == name), None)


def in_place_of_theirs(case: Case) -> Size | None:
    """The size that the answer on their cable, beside this one, puts in its place as it loses too much; else None."""
    named = next((fact for fact in THEIRS if fact in case.stated), None)
    if TOPIC not in case.beside or named is None or not {*OF_THE_RUN, *THEIRS}.isdisjoint(case.second):
        return None
    bare, amps = case.fresh(), running(case.fresh())
    bare.stated = {fact: known for fact, known in case.stated.items() if fact not in THEIRS}
    carries = float(case.fresh().get("cable.ampacity") or 0.0)
    if amps is None or "cable.length" not in case.stated or carries < amps:
        return None
    choice = to_fit(bare, amps)
    found = choice.gauge if named == THEIRS[0] else choice.area
    sizes = circuit.sizes(bare)[0 if named == THEIRS[0] else 1]
    theirs = next((item for item in sizes if item.name == case.stated[named].value), None)
    return found if choice.count == 1 and found and theirs and found.area > theirs.area else None


def put_in(case: Case) -> Case:
    """The same case, in place, with the proposed cable among its facts, assumed."""
    found = size(case) if stands(case) else None
    if found is not None:
        item = _known(found)
        case.stated = {**case.stated, item.fact: item}
    return case


def instead(case: Case) -> Case:
    """The same case, in place, with the size that is put in place of theirs, assumed, where one is."""
    better = in_place_of_theirs(case)
    if better is None:
        return case
    item = _known(better)
    kept = {fact: known for fact, known in case.stated.items() if fact not in THEIRS}
    case.stated = {**kept, item.fact: item}
    return case


def assumed(case: Case, found: Size) -> None:
    """List the proposed cable among what the answer assumes."""
    item = _known(found)
    case.used.setdefault((item.fact, 1), item)


def _known(found: Size) -> Known:
    fact = "cable.gauge" if isinstance(found.name, str) else "cable.area"
    return Known(fact, found.name, "assumed", say.symbol(fact), why=circuit.PROPOSED)


def outdone(case: Case, fit: Size) -> str:
    """Why the size proposed before no longer does: "3/0 AWG may carry only 327 A in the engine space"; "" where the
    same is proposed again, or the one before does still."""
    old, amps = _before(case, isinstance(fit.name, str)), running(case)
    if old is None or amps is None or old.area >= fit.area or old.ampacity >= amps:
        return ""
    where = " in the engine space" if case.get("cable.in_engine_space") else f" of {say.amps(amps)}"
    return f"{circuit.called(old)} may carry only {say.at_most(old.ampacity)}{where}"
