"""What is only supposed: the charge in "can it freeze at -15 if it drops to half", beside the one that is told."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Span, Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

IF = (
    r"\b(?:if|suppos(?:e|ing)(?: that)?|imagin(?:e|ing)|assum(?:e|ing)|had (?:it|they|she|he)|once|when|after"
    r"|(?<!long )(?<!soon )(?<!fast )(?<!days )should)\b"
)
SUPPOSED = regex(rf"{IF}[^.?!;]{{0,200}}$", re.IGNORECASE)
FALLS = (
    r"(?:drops?|dropped|falls?|fell|fallen|goes|went|gone|gets?|sinks?|sunk|sank|runs?|ran|is|are"
    r"|(?:pulls?|pulled|draws?|drawn|takes?|taken|used) (?:it|them))"
)
SHARES = {
    "half": 50.0,
    "a half": 50.0,
    "a quarter": 25.0,
    "a third": 100 / 3,
    "three quarters": 75.0,
    "two thirds": 200 / 3,
}
FALLEN = regex(
    rf"{IF}[^.?!;]{{0,40}}?\b{FALLS}(?: down| back| all the way)? (?:to|at) (?:only |just |about )?"
    rf"(?P<share>{'|'.join(sorted(SHARES, key=len, reverse=True))})\b(?! (?:an?|past|the) )",
    re.IGNORECASE,
)
REACH = 80  # characters before a value in which its "if" stands


def is_supposed(text: str, span: Span) -> bool:
    """Whether a value stands behind the "if" of its sentence."""
    return bool(SUPPOSED.search(text[max(0, span[0] - REACH) : span[0]]))


def fallen_to(scene: Scene) -> Iterator[Stated]:
    """The share to which a battery is supposed to fall, where it is told in a word."""
    found = FALLEN.search(scene.text)
    if found:
        share = SHARES[found["share"].lower()]
        yield Stated("battery.charge", share, "percent", found["share"], found.span("share"), how="default")
