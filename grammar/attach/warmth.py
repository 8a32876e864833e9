"""Whether a bare number is a temperature: by its sign, its frost or heat."""

from __future__ import annotations

from grammar.attach.beside_numbers import plain
from grammar.scene.claims import close
from grammar.scene.items import Item
from grammar.scene.scene import Scene

WARM, LEAST_ASIDE = 45.0, 3.0  # "(+1)" is one more
HOT = (25.0, 50.0)
WEATHER = frozenset({"winter", "cold", "frost", "weather", "autumn", "spring", "freezing", "chilly", "mild"})
HEAT = frozenset({"hot", "heat", "summer", "summers", "roasting", "sweltering", "tropics", "scorching"})
REACHES = frozenset({"hits", "reaches", "touches", "hit", "reach"})
NEAR_ZERO = frozenset({"near", "around"})
AFTER_ABOVE = frozenset(
    {"", ".", ",", "?", "!", ";", "zero", "freezing", "and", "or", "now", "then", "today", "ok", "too"}
)


def is_warmth(scene: Scene, item: Item, value: float, decimals: int) -> bool:
    """Whether a bare number is of degrees above zero: "temp 12", "near zero", "spring here is +2"."""
    if 0 <= value <= 130 and not decimals and close(scene, item, "ambient.temperature", reach=1.6):
        return True
    if not decimals and 0 <= value <= WARM and (_signed(scene, item) or _above_zero(scene, item)):
        return True
    before = scene.word(item.start - 1)
    if HOT[0] <= value <= HOT[1] and not decimals and HEAT & scene.vocabulary:
        placed = before == "," and scene.word(item.end) in ("on", "in", "here")  # "hot in Darwin, 36 on deck"
        return before in REACHES | {"heat"} or placed or [scene.word(item.start - 2), before] == ["heat", "of"]
    return (value == 0 and before in NEAR_ZERO) or (0 <= value <= WARM and before in ("plus", "+") and _warmer(scene))


def _above_zero(scene: Scene, item: Item) -> bool:
    """Whether it is the second of two temperatures: "at 10 below, and at 5 above?"."""
    above = scene.word(item.end) == "above" and scene.word(item.end + 1) in AFTER_ABOVE
    return above and (bool(scene.quantities("TEMP")) or _warmer(scene))


def _warmer(scene: Scene) -> bool:
    """Whether a temperature was spoken of: then "plus 5" is another."""
    return any(fact.fact == "ambient.temperature" for fact in scene.said)


def _signed(scene: Scene, item: Item) -> bool:
    """Whether a plus stands right at a number that adds to nothing: "spring here is +2", "in a shed at +5"."""
    if not item.quantity.text.strip().startswith("+"):
        return False
    before, after = scene.word(item.start - 1), scene.after(item)
    told = "ambient.temperature" in scene.expected or any(old.fact == "ambient.temperature" for old in scene.said)
    ends = after is None or after.kind == "mark" or after.name in ("in", "here", "now", "outside", "inside", "at")
    if ends and before in (".", ";", "!") and plain(item) >= LEAST_ASIDE and WEATHER & scene.vocabulary:
        return True  # "Winter here is wet. +4."
    apart = before in ("(", ",") and plain(item) >= LEAST_ASIDE and not scene.at_word[item.start - 2].dim
    if ends and apart:  # "hands frozen (+6)", "alone in the boat, +10"
        return True
    return ends and (before in ("is", "at", "its", "about", "around", "in", "to", "near") or (before == "" and told))
