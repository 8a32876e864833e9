"""What is left of a battery's amp-hours: "40 Ah left of 80", "30 Ah remaining out of 90" tell size and charge."""

from __future__ import annotations

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

SIZE, CHARGE = "battery.capacity", "battery.charge"
FIGURE = r"(?<![\d.,])\d{1,4}(?:[.,]\d)?"
AH = r" ?(?:ah|amp[- ]?hours?)"
LEFT = regex(
    rf"(?P<left>{FIGURE}){AH} (?:still )?(?:left|remaining|to go|in it|in hand)(?: in it)? (?:out )?of"
    rf" (?:its |the |an? |my )?(?P<size>{FIGURE})(?:{AH})?(?![\d.,]*\d| ?(?:%|v\b|volts?\b|a\b|amps?\b|hours?\b))",
    0,
)
WHOLE = 100.0  # percent


def left_of(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with the size and the charge that such words tell, and without what else was made of their figures."""
    found = LEFT.search(scene.text.lower())
    if found is None:
        return stated
    left, size = (float(found[name].replace(",", ".")) for name in ("left", "size"))
    if not 0 < left <= size:
        return stated
    start, end = found.span()
    kept = [item for item in stated if item.fact not in (SIZE, CHARGE) and not start <= item.span[0] < end]
    told = scene.text[start:end]
    return [
        *kept,
        Stated(SIZE, size, "ampere_hour", told, found.span("size"), how="grammar"),
        Stated(CHARGE, WHOLE * left / size, "percent", told, found.span("left"), how="grammar"),
    ]
