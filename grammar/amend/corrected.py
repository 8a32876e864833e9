"""A bare number that puts a figure right at once: "380 A. Sorry, misread, 330", "4 hours of sun? call it one"."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.scene.claims import NOT_OURS, NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of, stops

SLIP = (
    r"(?:sorry|oops|whoops|misread(?: (?:it|that))?|mistyped(?: (?:it|that))?|typo|correction|scratch that|no wait|wait"
    r"|my (?:mistake|bad)|actually|(?:read|got|typed|had) (?:it|that) wrong"
    r"|wrong (?:figure|number|plate|label|one|line|page|column)|i mean|i meant)"
)
RATHER = r"(?:call it|make (?:it|that)|(?:it'?s |it is |that'?s )?more like|should (?:be|read)|rather)"
LINKS = r"(?:(?:it'?s|it is|that'?s|it was|it says|really|the right one is|no|i think|about)[ ,:]+)*"
SLIPPED = regex(rf"\b{SLIP}(?:[ ,.;:!-]+{SLIP})*[ ,.;:!-]+{LINKS}(?:{RATHER} )?$", re.IGNORECASE)
TAKEN_BACK = regex(
    r"\b(?:(?:but|er|oh|well|hm+|ah) no|is an? (?:laugh|joke|lie|dream|fantasy|exaggeration)"
    rf"|is (?:rubbish|nonsense|optimistic|too (?:much|many|high|kind)))[ ,.;:!-]+{RATHER} $",
    re.IGNORECASE,
)
OF_SUN = "solar.sun_hours"
CLAIMED_SUN = regex(rf"[ ,.;:!-]{RATHER} $", re.IGNORECASE)  # "the leaflet says 6 hours of sun; make it 3"
LIKE = 4.0  # times as much or as little is another thing
FAR = 14  # pieces between a figure and what puts it right


def corrected(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims with each figure that is put right replaced by the number that puts it right, in its unit."""
    for item in scene.quantities("NUM", "COUNT"):
        value = item.quantity.value
        if isinstance(value, str) or value <= 0 or not stops(scene, item, ("and", "so", "with")):
            continue
        old = _put_right(scene, item, value, claims)
        if old is not None:
            _as(item, old)
            claims = {at: claim for at, claim in claims.items() if at != old.at} | {item.at: claims[old.at]}
    return claims


def _put_right(scene: Scene, item: Item, value: float, claims: dict[int, Claim]) -> Item | None:
    """The figure before a number that the words between take back; None where none does."""
    ahead = ahead_of(scene, item)
    slipped = SLIPPED.search(ahead) or TAKEN_BACK.search(ahead)
    for old in reversed(scene.items[max(0, item.at - FAR) : item.at]):
        if claims.get(old.at, NOTHING).fact == NOT_OURS or not old.dim:
            continue
        before = old.quantity.value
        if isinstance(before, str) or old.part is None or len(old.part.quantities) > 1:
            return None
        of_sun = claims[old.at].fact == OF_SUN and CLAIMED_SUN.search(ahead) is not None
        like = before / LIKE <= value <= before * LIKE and value != before
        return old if like and (slipped or of_sun) else None
    return None


def _as(item: Item, old: Item) -> None:
    """Gives a bare number the unit of the figure that it stands in for."""
    assert item.part is not None
    quantity = replace(item.quantity, unit=old.quantity.unit)
    item.part, item.dim = replace(item.part, dim=old.dim, quantities=(quantity,)), old.dim
