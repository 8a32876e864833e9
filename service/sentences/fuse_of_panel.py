"""The fuse of a solar panel: its own amps decide, whatever hangs on the battery that it charges."""

from __future__ import annotations

from dataclasses import replace

from service.case import Case
from service.reply import Answer

OF_A_PANEL = "We can't say yet: the fuse follows from the panel's own amps and the size of its cable."
ISC = "It is on the panel's label, as Isc."


def of_the_panel(case: Case) -> bool:
    """Whether it is the fuse of a panel that was spoken of before, whatever hangs on its battery."""
    told = any(item.origin == "message" for fact, item in case.stated.items() if fact.startswith(("load.", "fuse.")))
    return case.before == ("solar",) and not told and not case.says("thing:thruster")


def panel_first(needed: Answer) -> Answer:
    """The answer that asks for the panel's own amps."""
    asked = replace(needed.asks[0], say="the short-circuit current of the panel, in amps", where=ISC)
    return replace(needed, headline=OF_A_PANEL, asks=(asked, *needed.asks[1:]))
