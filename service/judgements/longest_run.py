"""How long a cable of a told size may be for a current: by the loss that suits the load, and by the catalogue."""

from __future__ import annotations

import math
from dataclasses import replace

from service import say
from service.calculators import cable
from service.case import Case
from service.judgements import circuit
from service.reply import Figure
from service.rules.cable import K, gauges
from service.told import longest_run

LENGTH = "cable.length"  # of an earlier turn it is no length of the cable that is asked about
STEPS = 10  # of a metre, in which a length is told


def judged(case: Case, amps: float) -> tuple[str, Figure] | None:
    """The sentence and the length, where it is asked; None where it is not, or the cable is too thin for the amps."""
    told = {fact for fact, item in case.stated.items() if fact != LENGTH or item.origin == "message"}
    if not longest_run.asked(case.text, told) or float(case["cable.ampacity"]) < amps:
        return None
    allowed, volts, name = circuit.allowed(case), circuit.volts(case), circuit.name(case)
    each = cable.drop(amps, 1.0, float(case["cable.cmil"]), k=K.value)
    most = math.floor(volts * allowed / 100 / each * STEPS + 1e-9) / STEPS
    case.step(f"{name} loses {say.volts(each, 3)} in each m of run at {say.amps(amps)}", K.cite)
    case.source(circuit.limit_cite(allowed))
    warm = circuit.warm_rating(case)
    hotter = f", if its insulation is for more than {circuit.COOLER:g}{say.NB}°C"
    only_if = hotter if warm is not None and warm < amps else ""
    run, figure = _length(case, most), Figure("longest_run", "longest run, one way", most, "m")
    listed = in_the_catalogue(case)
    if listed and listed[1] < most:
        head = f"At most {_length(case, listed[1])} one way, as our catalogue has it for the {listed[0]}; by its loss "
        return f"{head}alone {name} would do for {run}{only_if}.", replace(figure, value=listed[1])
    lost = f"{say.volts(volts * allowed / 100, 2)} ({say.quantity(allowed, '%')} of {say.quantity(volts, 'V')})"
    return f"At most {run} one way{only_if}: over that {name} loses {lost} at {say.amps(amps)}.", figure


def in_the_catalogue(case: Case) -> tuple[str, float] | None:
    """The model and the longest run for which the catalogue lists the cable named or a thinner one; None for none."""
    model = case.house.model(case["load.model"]) if case.house and "load.model" in case else None
    own, areas = float(case["cable.cmil"]), {size.name: size.area for size in gauges()}
    runs = [run.up_to for run in model.cables if areas[run.gauge] <= own * (1 + 1e-9)] if model else []
    if not model or not runs:
        return None
    case.step(f"The catalogue lists it for the {model.name} up to {say.quantity(max(runs), 'm')}", "house")
    return model.name, max(runs)


def _length(case: Case, metres: float) -> str:
    return say.length(metres, not circuit.metric(case))
