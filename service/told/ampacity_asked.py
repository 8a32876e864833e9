"""What a cable may carry, asked of its size alone: "35 mm2 how many amps", "how many A can 2/0 take"."""

from __future__ import annotations

import re
from collections.abc import Collection

from grammar.text.patterns import regex

SIZES = frozenset({"cable.gauge", "cable.area"})
OF_A_CABLE = SIZES | {"cable.insulation", "cable.in_engine_space"}
AMPS = regex(
    r"\bhow (?:many|much) (?:a|amps?|amperes?|current)\b(?![^.?!;]{0,40}\b(?:draw|pull|need|use|take from|lose)s?\b)"
    r"|\bampacity\b|\b(?:max|maximum|most) (?:amps?|current)\b",
    re.IGNORECASE,
)


def of_a_size(text: str, told: Collection[str]) -> bool:
    """Whether amps are asked for where nothing but a cable is told.

    >>> of_a_size("how many A can 35mm2 take", {"cable.area"}), of_a_size("2/0, what max amps", {"cable.gauge"})
    (True, True)
    >>> of_a_size("35mm2, how many amps does the motor draw", {"cable.area"}), of_a_size("how many amps", set())
    (False, False)
    """
    return bool(SIZES & set(told)) and set(told) <= OF_A_CABLE and AMPS.search(text) is not None
