"""A charger's outputs that share nothing, as a sheet tells it: "two outputs, isolated, says the box"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene

FACT = "charger.isolated"
APART = re.compile(
    r"\b(?:outputs?|outlets?|exits|legs|channels|outs)(?: ?[,:(]+)? ?(?:\(?(?:all|both|fully|galvanically|each) )?"
    r"(?:isolated|floating|(?:galvanically )?separated?)\b(?!\s*\?| or\b| from (?:the )?(?:boat|hull))"
    r"|\b(?:outputs?|outlets?|exits|legs|channels|outs)\b[^.?!;]{0,40}"
    r"\b(?:they'?re|they are|them are|each is|both are|being)"
    r"(?: all| both| fully| galvanically| properly)* isolated\b(?!\s*\?| or\b)",
    re.IGNORECASE,
)
ASKED = re.compile(r"\b(?:are|is|must|should|needs?|whether|if|does|not|non|no|unless|without)\b[^.?!;]{0,30}$", re.I)
OPEN = re.compile(r"\b(?:if|whether|wonder|unsure|unless|are they|not sure)\b", re.IGNORECASE)
ASKED_AFTER = re.compile(r"^[^.?!;,]{0,12}\?")


def floating(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """That a charger's outputs are isolated, where it is told and not asked."""
    if "charger" not in scene.heads and not scene.about("word:outputs", "role:charger.outputs"):
        return
    if any(item.fact == FACT for item in stated) or (found := APART.search(scene.text)) is None:
        return
    if OPEN.search(found[0]):
        return
    if not ASKED.search(scene.ahead(found.start())) and not ASKED_AFTER.search(scene.text[found.end() :][:20]):
        yield Stated(FACT, True, "", found[0], found.span(), how="default")
