"""Whether a charger that is named stays on: not where it was taken off before, nor where it is only for in between."""

from __future__ import annotations

import re

LEADS = r"(?:cables?|leads?|wires?|clamps?|clips?|terminals?|everything|all of it|the lot)"
OFF = re.compile(  # told, not asked
    r"\b(?:disconnected|unplugged|unhooked|uncoupled)\b"
    rf"|\b{LEADS}\W+(?:(?:are|is|were|was|all|now)\W+)*(?:taken |removed|off\b)"
    rf"|\b(?:took|taken|pulled|lifted)\b[^.?!;]{{0,30}}\boff\b|\boff (?:the|its|their|all) (?:leads?|cables?|charger)\b"
    r"|\bcharger (?:is |was )?(?:now )?(?:off|away|unplugged|removed|gone|switched off)\b",
    re.IGNORECASE,
)
STAYS = re.compile(
    r"\b(?:leav|keep|left|kept|stay|remain)\w*\b[^.?!;]{0,60}\b(?:charger|charging|plugged in|on charge|on float)\b"
    r"|\bcharger\b[^.?!;]{0,40}\b(?:stays?|remains?|left on|kept on|still on|on all|be on)\b",
    re.IGNORECASE,
)
BETWEEN = re.compile(
    r"\bcharg(?:er|e|ed|ing)\b[^.?!;]{0,20}\b(?:in[- ]between|between times|meanwhile|now and then|from time to time"
    r"|half ?way|mid-?winter|along the way)\b",
    re.IGNORECASE,
)
WHO = re.compile(
    r"\bwho(?:['’]s| is| of (?:us|them))?\b[^.?!;]{0,24}\b(?:right|correct|listen|believe|trust|follow)\b"
    r"|\bwhich of (?:us|them|the two)\b[^.?!;]{0,12}\b(?:right|correct)\b",
    re.IGNORECASE,
)
UNPLUG = re.compile(r"\b(?:unplug|disconnect|take it off|off the charger|cables off|leads off)\w*\b", re.IGNORECASE)


def two_ways(text: str) -> bool:
    """Whether two differ on leaving a charger on or taking it off, and it is asked which of them is right.

    >>> two_ways("She says leave it on the charger, he says charge it full and unplug it. Who is right?")
    True
    """
    return all(pattern.search(text) for pattern in (WHO, STAYS, UNPLUG))


def taken_off(text: str) -> bool:
    """Whether the battery stands disconnected, and nobody asks of leaving it on.

    >>> taken_off("charged them with his charger and took the cables off. Can I leave them like that?")
    True
    >>> taken_off("it is disconnected from the boat. Can I leave it on the charger?")
    False
    """
    return OFF.search(text) is not None and STAYS.search(text) is None


def in_between(text: str) -> bool:
    """Whether a charger is spoken of for a charge in between: "does it need a charger in between"."""
    return BETWEEN.search(text) is not None and STAYS.search(text) is None
