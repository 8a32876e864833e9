"""Amps that are too many for what a boat takes while it lies idle: those of a load that runs, "a constant 6 A"."""

from __future__ import annotations

import re

from grammar.scene.claims import NOTHING, Claim
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

DRAIN, LOAD = "drain.current", Claim("load.current", "near")
MOST = 3.5  # amps of a drain, where nothing says that all is off
IDLE = regex(
    r"\b(?:off|parasitic|drain\w*|leak\w*|idle|laid up|lay[- ]?up|nobody|empty boat|away|unplugged|standby"
    r"|disappear\w*)\b",
    re.IGNORECASE,
)


def kept_running(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of such amps, where nothing is told to be switched off."""
    if not any(claim.fact == DRAIN for claim in claims.values()) or IDLE.search(scene.text):
        return {}
    drains = (item for item in scene.quantities("AMP") if claims.get(item.at, NOTHING).fact == DRAIN)
    amps = ((item.at, item.quantity.value) for item in drains if item.quantity.unit == "ampere")
    return {at: LOAD for at, value in amps if isinstance(value, float) and value > MOST}
