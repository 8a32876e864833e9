"""The scale that degrees told before are of: "Fahrenheit, not Celsius", "F or C? F, sorry", "no, Celsius"."""

from __future__ import annotations

from grammar.scene.scene import Scene
from grammar.told.cold.degrees import CONVERTED, FAHRENHEIT, said_fahrenheit

CELSIUS = frozenset({"c", "celsius", "centigrade"})
OTHER = {"F": "C", "C": "F"}
FEW = 10  # words: in a longer message "c" is no scale
IS = frozenset({"is", "was", "its", "it's", "are", "were", "that's", "thats"})  # "that was in F", not "what is 5 in F"


def scale_meant(scene: Scene) -> str:
    """ "F" or "C" where a message says of which the degrees are; "" where it asks which, or for both, or none."""
    named = {scale for at in range(len(scene.tokens)) if (scale := _named(scene, at))}
    if "C" in named and len(scene.tokens) > FEW:
        return ""
    if not named:
        return "F" if said_fahrenheit(scene) and not CELSIUS & scene.vocabulary else ""
    return named.pop() if len(named) == 1 else ""


def _named(scene: Scene, at: int) -> str:
    """The scale that the word at a place tells; "" for "F or C?" and for "in F", which asks for a conversion."""
    word, before = scene.word(at), scene.word(at - 1)
    scale = "F" if word in FAHRENHEIT else "C" if word in CELSIUS else ""
    if not scale or scene.at_word[at].dim or "or" in (before, scene.word(at + 1)):
        return ""
    if before in CONVERTED and scene.word(at - 2) not in IS:
        return ""
    return OTHER[scale] if before == "not" else scale
