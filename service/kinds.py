"""Kinds of battery by their families, and how lithium iron phosphate is named in full."""

from __future__ import annotations

LEAD = ("flooded", "agm", "gel", "lead")
LITHIUM = ("lfp", "lithium-other")
CHARGED = ("flooded", "agm", "gel", "lfp")  # that have charging volts of their own
IRON = ("fe", "lfp", "iron", "phosphate", "po4")


def says_iron(text: str) -> bool:
    """Whether a name tells that the lithium is iron phosphate; "lithium" alone is only taken as that."""
    return any(part in text.lower() for part in IRON)
