"""How a reading under load is put where they ask which part is at fault, or what to do about it."""

from __future__ import annotations

from service.case import Case
from service.rules.culprit import either, parts_in

WEAK = ", so the battery is the weak part"
ASKS_MOTOR = "; read the volts at the motor too, as cable and joints may lose some"
BLAMED = {"both": "Both", "alone": "The battery, if this was read on its posts"}
AT_LOAD = "reading.load_voltage_at_load"


def of_the_battery(case: Case, head: str, verdict: str, share: str) -> str:
    """The headline on a lead battery. `share`: "both" where cable and joints take too much as well, "alone" where
    nothing but its volts is known, "small" where it is in order but too small for the load."""
    told = bare(head.replace(WEAK, ""))
    if either(case.text):
        if verdict == "yes":
            return f"Not the battery: {told}{'' if case.said(AT_LOAD) is not None else ASKS_MOTOR}."
        if "battery" not in parts_in(case.text):
            return f"The battery comes first: {told}."
        return f"{BLAMED.get(share, 'The battery')}: {told}."
    if not case.says("detail:what_now") or verdict != "no":
        return head
    if share == "small":
        return f"Fit a battery of more CCA, or a second one like it in parallel: {told}."
    if share == "alone":
        return f"Read the volts at the motor's own terminals too, while it runs: {told}."
    return f"Charge it fully, let it rest and test again before you buy: {told}; if it still drops so far, replace it."


def of_the_cable(case: Case, head: str) -> str:
    """The headline where more is lost between battery and motor than suits a motor."""
    told = bare(head.partition(", so ")[0])
    if either(case.text):
        return f"The cable or its joints: {told}."
    if case.says("detail:what_now"):
        return f"Clean and tighten the joints, then measure again: {told}; if so much is still lost, fit thicker cable."
    return head


def bare(head: str) -> str:
    """A headline without its first word and its stop."""
    first, mark, rest = head.partition(": ")
    return (rest if mark else first).removesuffix(".")
