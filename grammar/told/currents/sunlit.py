"""What the sun gives, told without a panel: "160 W on the cabin roof", "five hours daily in the full sun"."""

from __future__ import annotations

import re

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of

LIES_IN_SUN = regex(
    r"^[^.?!;\d]{0,24}\b(?:on|over|across|atop) (?:the |my |our |his |her |its |a )?"
    r"(?:cabin |wheelhouse |saloon |coach)?"
    r"(?:roof|bimini|hatch|arch|pushpit|sprayhood|awning|cabin top)\b"
    r"|^ (?:of|from) (?:july|june|august|summer|the sun|sun|sunshine|daylight)\b",
    re.IGNORECASE,
)
KEEPS = regex(  # "fifteen watts feed a sleeping 70 Ah the whole summer"
    r"^[^.?!;\d]{0,24}\b(?:feeds?|keeps?|holds?|nurses?|tends?|nourish\w*|maintains?|carries|sees|looks? after)\b"
    r"[^.?!;]{0,36}(?:\d ?ah|amp hours?|battery|bank|agm|gel|lead)\b",
    re.IGNORECASE,
)
OF_MODULE = regex(r"^ (?:of )?(?:an? )?(?:solar |sun )?(?:modules?|panels?|pv|glass on)\b", re.IGNORECASE)
KEEPS_UP = regex(  # "does 60 W keep a mark lamp alight, the lamp wanting 1.5 Ah a day"
    r"^ (?:\w+ ){0,2}?(?:feeds?|keeps?|holds?|carry|carries|sustains?|nourish(?:es)?|maintains?)"
    r" (?:an?|the|my|our|up|it)\b",
    re.IGNORECASE,
)
A_DAY = regex(r"\d ?(?:ah|amp[- ]?hours?)\b[^.?!;]{0,4}(?:a|per|each|every) day\b|\bah daily\b", re.IGNORECASE)
SEASON = regex(r"\b(?:summer|winter|season|spring|autumn)\b", re.IGNORECASE)
IN_SUN = regex(r"^[^.?!;,\d]{0,16}\bin (?:the )?(?:full |bright |hot |blazing |open )?sun(?:shine|light)?\b", re.I)
SUN_OF = regex(r"\bsun(?:shine|light)?\b[^.?!;\d]{0,48}$", re.IGNORECASE)
OF_A_MONTH = regex(r"^ of (?:may|june|july|august|september|summer|midsummer)\b", re.IGNORECASE)
DAILY = regex(r"^ ?(?:a|per|each|every|the) day\b|^ daily\b|^ ?/ ?day\b|^ at (?:most|best)\b", re.IGNORECASE)
PEAK = regex(r"(?:wp|watts?[ -]peak)\s*$", re.IGNORECASE)
AHEAD = 90  # characters
LONGEST = 16 * 3600.0  # seconds of sun a day
HOURS = frozenset({"reading.rest_time", "load.time", "storage.time", "battery.age"})
CONSUMES = frozenset({"electronics", "thruster", "windlass"})


def in_peak_watts(item: Item) -> bool:
    """Whether watts are told as those of a panel by their unit: "55 Wp", "100 watt-peak"."""
    return item.dim == "WATT" and PEAK.search(item.quantity.text) is not None


def of_the_sun(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of watts that a panel gives and of hours of sun."""
    found = {
        item.at: Claim("solar.power", "near")
        for item in scene.quantities("WATT")
        if claims.get(item.at, Claim("load.power", "default")) == Claim("load.power", "default")
        and _shone_on(scene, item)
    }
    for item in scene.quantities("TIME"):
        claim = claims.get(item.at)
        hours = item.quantity.unit == "hour" and (claim is None or claim.fact in HOURS)
        if claim is not None and claim.fact == "solar.sun_hours" and _of_a_load(scene, item, claims):
            found[item.at] = Claim("load.time", "near")
        watts = "panel" in scene.heads or bool(scene.quantities("WATT"))
        if hours and watts and OF_A_MONTH.match(_after(scene, item)):  # "eighty watts with five hours of June on it"
            found[item.at] = Claim("solar.sun_hours", "role")
        if hours and watts and (IN_SUN.search(_after(scene, item)) or _of_the_day(scene, item)):
            found[item.at] = Claim("solar.sun_hours", "role")
    return found | _of_a_sunny_place(scene, claims | found)


def _of_the_day(scene: Scene, item: Item) -> bool:
    """Whether the sun is spoken of, and these are its hours of a day: "sun in Galway: one and a half hours a day"."""
    before = ahead_of(scene, item)
    return SUN_OF.search(before) is not None and DAILY.match(_after(scene, item)) is not None


def _of_a_sunny_place(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """Watts that nothing claims where the sun's hours are told and the load goes by its amps."""
    facts = {claim.fact for claim in claims.values()}
    if "solar.sun_hours" not in facts or "solar.power" in facts or not facts & {"load.current", "drain.current"}:
        return {}
    loose = [at for at, claim in claims.items() if claim == Claim("load.power", "default")]
    return {at: Claim("solar.power", "near") for at in loose if len(loose) == 1}


def _of_a_load(scene: Scene, item: Item, claims: dict[int, Claim]) -> bool:
    """Whether something runs while it is light, and no panel is spoken of: "1.5 A, 14 hours of daylight"."""
    if "daylight" not in (scene.word(item.end), scene.word(item.end + 1)):
        return False
    told = {claim.fact for claim in claims.values()} | {old.fact for old in scene.said}
    solar = {"solar.power", "solar.sun_hours"} & {old.fact for old in scene.said} or "solar.power" in told
    return "load.current" in told and not solar and "panel" not in scene.heads and "solar" not in scene.vocabulary


def _after(scene: Scene, item: Item) -> str:
    end = scene.span(item.start, item.end)[1]
    return scene.text[end : end + AHEAD]


def _shone_on(scene: Scene, item: Item) -> bool:
    """Whether watts lie in the sun or keep a battery up over a season."""
    after = _after(scene, item)
    if LIES_IN_SUN.search(after) or OF_MODULE.match(after):
        return True
    if KEEPS_UP.match(after) and A_DAY.search(scene.text):
        return True
    keeps = KEEPS.search(after) is not None and SEASON.search(scene.text) is not None
    return keeps and not any(head.name in CONSUMES for head in scene.head_items)
