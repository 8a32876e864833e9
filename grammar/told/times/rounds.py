"""Runs that are counted with "such" and "of those": "twenty such leans, thirty seconds each", "ten of those at 5 s"."""

from __future__ import annotations

import re

from grammar.scene.claims import NOTHING, Claim
from grammar.scene.scene import Scene

BURSTS, STORED = Claim("load.bursts", "role"), Claim("storage.time", "role")
EACH_SO_LONG = re.compile(
    r"^ (?:such|like that|of (?:these|those|them|that sort|that kind))(?: [a-z]+s)?,? (?:of |at |each |for )*"
    r"(?:\d+(?:\.\d+)? ?|[a-z]+(?:-[a-z]+)? )(?:s|secs?|seconds?)\b",
    re.IGNORECASE,
)
PUT_BY = re.compile(
    r"\b(?:put (?:it |them |her |him |the battery )(?:up|away|by|aside)|put (?:away|aside)|laid (?:it "
    r"|them |her )?(?:up|by)|on the shelf"
    r"|in (?:the )?(?:store|storage|shed|garage|loft)|stored|shelved|mothballed|stowed)\b[^.?!;\d]{0,24}$",
    re.IGNORECASE,
)
AGO = re.compile(r"^ (?:ago|back|since|gone)\b", re.IGNORECASE)
OPEN = frozenset({"battery.count", "reading.rest_time", NOTHING.fact})
LONG = frozenset({"day", "week", "month"})
AFTER = 60  # characters


def rounds(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of counted runs, and of the time since a battery was put away."""
    facts = {claim.fact for claim in claims.values()}
    found: dict[int, Claim] = {}
    for item in scene.quantities("NUM", "COUNT") if BURSTS.fact not in facts else ():
        if claims.get(item.at, NOTHING).fact in OPEN and EACH_SO_LONG.match(_after(scene, item.start, item.end)):
            found[item.at] = BURSTS
    for item in scene.quantities("TIME") if STORED.fact not in facts else ():
        before = scene.ahead(scene.span(item.start, item.end)[0])
        since = item.quantity.unit in LONG and AGO.match(_after(scene, item.start, item.end)) is not None
        if since and claims.get(item.at, NOTHING).fact in OPEN and PUT_BY.search(before):
            found[item.at] = STORED
    return found


def _after(scene: Scene, start: int, end: int) -> str:
    at = scene.span(start, end)[1]
    return scene.text[at : at + AFTER]
