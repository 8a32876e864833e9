"""What the load draws: from the catalogue, from its power, or from one of its two currents."""
from __future__ import annotations

from service.case import rule
from service.house import House


@rule("load.current", ["load.model"], kind="house", unit="A", say="{load.model} draws {value} running")
def running_of_the_model(house: House, model: str) -> float | None:
    found = house.model(model)
    return found.running if found else None


@rule("load.peak", ["load.model"], kind="house", unit="A", say="{load.model} draws {value} in the first instant")
def inrush_of_the_model(house: House, model: str) -> float | None:
    found = house.model(model)
    return found.inrush if found else None


@rule("load.peak", ["load.current"], kind="assumed", unit="A", cites=["inrush-practice"],
      say="First instant 1.5 x {load.current} = {value}", why="1.5 x running")
def inrush_from_running(running: float) -> float:
    return 1.5 * running
