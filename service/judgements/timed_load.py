"""Which of two loads the hours of a message are those of: a thruster runs for minutes, a stereo for an evening."""

from __future__ import annotations

from service.case import Case
from service.judgements.at_once import is_motor

TOPIC = "run-time"
LEAST = 3600.0  # seconds: no thruster runs that long


def its_load(topic: str, case: Case) -> Case:
    """The case of the load that takes little for long, where hours are told beside it and a thruster."""
    seconds = case.said("load.time") if topic == TOPIC and "load.time" not in case.second else None
    if seconds is None or float(seconds) < LEAST or not {"load.current", "load.power"} & case.second.keys():
        return case
    other = case.fresh().others()
    steady = [not is_motor(side) for side in (case.fresh(), other)]
    if steady[0] == steady[1]:
        return case
    if steady[1]:
        return other
    alone = case.fresh()
    alone.second = {fact: known for fact, known in case.second.items() if not fact.startswith("load.")}
    return alone
