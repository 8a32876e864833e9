"""A share of an amp without its unit, after one was told: "a tenth, sorry", "no, half"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from grammar.facts import facts
from grammar.reading import Stated
from grammar.scene.scene import Scene

SHARES = {
    "half": 0.5,
    "third": 1 / 3,
    "quarter": 0.25,
    "fifth": 0.2,
    "tenth": 0.1,
    "twentieth": 0.05,
    "hundredth": 0.01,
}
SAID = re.compile(
    r"^\W*(?:(?:no|oh|oops|sorry|actually|make (?:it|that)|it'?s|only|about|just|more like|rather|i mean|and|then)\W+)*"
    rf"(?P<share>(?:an? |one )?(?P<part>{'|'.join(SHARES)}))\b(?! ?(?:full|charged|empty|way|the|past|of)\b)",
    re.IGNORECASE,
)
OF_AN_AMP = ("drain.current", "load.current")
OF_A_CHARGE = frozenset({"half", "third", "quarter"})
MOST = 2.0  # amps: of more nobody tells a share
SHORT = 12  # words


def a_share(scene: Scene, said: Sequence[Stated]) -> Iterator[Stated]:
    """The amps of a few that were told before, mended or weighed anew by a share alone."""
    old = next((item for item in said if item.fact in OF_AN_AMP), None)
    found = SAID.match(scene.text) if old is not None and len(scene.tokens) <= SHORT else None
    if found is None or old is None or isinstance(old.value, str) or old.value > MOST:
        return
    part = found["part"].lower()
    full = part in OF_A_CHARGE and not scene.named("note", "correction")  # "half" may answer how full it is
    if full or "battery.charge" in scene.expected or scene.quantities("AMP"):
        return
    value = SHARES[part]
    yield Stated(old.fact, value, facts()[old.fact].unit, found["share"], found.span("share"), how="asked")
