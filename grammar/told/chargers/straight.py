"""That an alternator charges with nothing in between: "the alternator wired straight on to the lithium"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

KIND = "charger.kind"
ALTERNATOR = r"(?:alternator|dynamo|alt)"
LITHIUM = r"(?:lithium|lfp|lifepo4?|li-?ion)"
STRAIGHT = regex(
    rf"\b{ALTERNATOR}\b[^.?!;,\d]{{0,18}}?\b(?:straight|direct(?:ly)?)\b(?: \w+){{0,2}}? (?:on|onto|to|into|at)\b"
    rf"[^.?!;,]{{0,16}}\b(?:{LITHIUM}|battery|batteries|bank|agm|gel)\b"
    rf"|\b{LITHIUM}\b[^.?!;,\d]{{0,18}}\b(?:straight|direct(?:ly)?|right) (?:off|from|out of|on|onto|to|by)"
    rf" (?:the|my|our|an|its|his)(?: [\w']+)? {ALTERNATOR}\b"
    rf"|\b(?:fill|charge|feed|load|nourish)(?:s|ed|ing)? (?:up )?(?:an? |the |my |our |his |her )?(?:\w+ )?{LITHIUM}\b"
    rf"[^.?!;,\d]{{0,12}} (?:from|off|by|with|on) (?:the|an|my|our|his|its)(?: [\w']+)? {ALTERNATOR}\b",
    re.IGNORECASE,
)
NOT_SO = regex(r"\b(?:not|never|no|instead of|rather than|isn'?t|wasn'?t)\b[^.?!;,]{0,16}$", re.IGNORECASE)


def straight(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """The kind of charger, where an alternator is told to be it and nothing that charges is named beside it."""
    if any(item.fact == KIND for item in stated) or {"dcdc", "charger"} & scene.heads:
        return
    found = STRAIGHT.search(scene.text)
    if found is not None and not NOT_SO.search(scene.ahead(found.start())):
        yield Stated(KIND, "alternator", "", found[0], found.span(), how="default")
