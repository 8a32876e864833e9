"""What is said where a dirty or loose joint is thought to make a motor weak: two topics speak of such joints."""

from __future__ import annotations

from service.case import Case
from service.told import weak_joint

MEASURE = (
    "While it runs, read the volts on the battery posts, then at the motor: on 12 V cable and joints may take 1.2 V",
    "cable-share",
)
HEAT = ("A joint that carries hundreds of amps badly also runs hot", "joints-and-heat")


def headline(case: Case) -> str:
    """That it can, why, and what to do; "" where that is not asked."""
    if not weak_joint.asked(case.text):
        return ""
    if weak_joint.is_loose(case.text):
        return (
            "Yes, it can: a loose joint adds resistance, so the motor gets fewer volts; tighten it to the label's "
            "torque, then measure."
        )
    return "Yes, it can: crust adds resistance, so volts are lost in the joint; clean and tighten it, then measure."
