"""Whether a battery has the CCA that the load's own manual asks for: that decides where nothing tells the amps."""

from __future__ import annotations

import math

from service import say
from service.case import Case
from service.rules import cranking, supply
from service.rules.cranking import Ground


def is_told(case: Case) -> bool:
    """Whether a demand was told that a lead battery is held against; one of lithium goes by its limits."""
    return "load.cca" in case.stated and case.get("battery.family") != "lithium"


def grounds(case: Case) -> list[Ground]:
    """Its CCA against the demand, its charge, and whose battery it is. The CCA of the bank must be known."""
    wanted, has = cranking.demanded(case), float(case["bank.cca"])
    asks = f"{{load}} asks for {say.cca(math.ceil(wanted - 1e-6))}"
    alone = float(case.get("bank.in_parallel", 1)) == 1
    ours = f"your {supply.kind_of(case)}battery has" if alone else "your batteries together have"
    ours += f" {say.cca(has)}"
    case.step(f"{say.cca(has)} against the {say.cca(wanted)} that it asks for")
    verdict = "yes" if round(has) >= wanted - 1e-6 else "no"
    return [
        Ground(verdict, f"{asks}, and {ours}", "cca"),
        *cranking.charge_grounds(case),
        *cranking.other_grounds(case),
    ]
