"""Currents and watts that the words on both sides tell: "130 running, 190 kick", "the motor's plate says 190",
"four hours at 18 A", "the meter in the minus lead says 0.22"."""

from __future__ import annotations

import re

from grammar.scene.claims import NOT_OURS, NOTHING, UNSURE, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

LOAD, PEAK = Claim("load.current", "near"), Claim("load.peak", "near")
FUSE = Claim("fuse.rating", "near")
DRAIN, SIZE = Claim("drain.current", "near"), Claim("battery.capacity", "near")
LEAST, MOST = 20.0, 1500.0  # amps of a motor
MOST_DRAIN = 3.0
FOR_THE_FUSE = regex(  # "300 A is fine for the fuse"
    r"[,]? ?(?:(?:is|are|would be|will be|should be|sounds|seems) )?(?:just |quite |about )?"
    r"(?:fine|right|enough|ok|okay|good|correct|plenty|best) for (?:the|an?|my|our|its|that) (?:main )?"
    r"(?:fuse|breaker)\b",
    re.IGNORECASE,
)
RUNNING = regex(r" ?(?:running|when running|once running|while running|steady|in the steady)\b", re.IGNORECASE)
RUNS_AT = regex(  # "mine runs at 150", where the inrush is spoken of
    r"\b(?:mine|ours|it|that one|the (?:thruster|motor|windlass|winch)) (?:runs|works|sits|hums(?: along)?) (?:at|on)"
    r"(?: about| around| some)? $",
    re.IGNORECASE,
)
SUMMED = regex(r"(?:\bsum|\btotal|\bmakes|\btogether)\W*(?:is|=)?\W*$|=\W*$", re.IGNORECASE)
PLATE = regex(
    r"\b(?:motor|thruster|windlass|winch|its|load)(?:'?s)? (?:own )?(?:plate|nameplate|label|sticker|name plate|badge)"
    r" (?:says|reads|is|gives|shows|has|tells|states) $",
    re.IGNORECASE,
)
INRUSH = regex(
    r"\b(?:inrush|in-rush|first (?:instant|kick)|starting (?:current|amps)|start(?:-| )?up (?:current|amps))\b",
    re.IGNORECASE,
)
STAMPED = regex(r" (?:is )?(?:stamped|printed|marked|written|engraved|embossed|next to it|beside it)\b", re.IGNORECASE)
THE = regex(r"\b(?:the|a|an|that) $", re.IGNORECASE)
HOURS_AT = regex(r"\b(?:hours?|hrs?|minutes?|mins?) (?:at|of|pulling|drawing) $", re.IGNORECASE)
IN_THE_LEAD = regex(
    r"\b(?:meter|ammeter|multimeter|clamp|tester) (?:in|round|around|in series with|on) (?:the |its )?"
    r"(?:(?:minus|negative|neg|earth|ground|plus|positive|main|battery) ){1,2}(?:lead|cable|wire|strap|line)"
    r" (?:says|reads|shows|gives|has) $",
    re.IGNORECASE,
)
IN_THE = regex(r"\b(?:left|still|remains|remaining) in (?:the|my|our|his|her|that) $", re.IGNORECASE)
PANEL_LIKE_IT = regex(r"\bpanel (?:of )?(?:that|this) (?:size|big|much|many|rating)\b", re.IGNORECASE)
NO_PANEL = 3.0  # watts: no panel is so small
TAKEN_BY = regex(  # "gas alarm plate: 4 W", "the computer on standby 12 W"
    r"\b(?:alarm|tracker|monitor|detector|sensor|radio|router|computer|camera|clock|stereo)(?:'?s)?"
    r"(?: (?:on|in|its|plate|label|sticker|standby|takes|draws|uses|is|says|eats|nibbles|of)|[:,=])* ?$",
    re.IGNORECASE,
)
PANEL_WANTED = regex(
    r"\b(?:want|need|wanting|buy|get|add|fit|like|which|what|how (?:big|large|small|little))\b[^.?!;,]{0,14}\bpanel",
    re.IGNORECASE,
)
LEAST_DRAWN = 1.0
VOLTS = frozenset({12.0, 24.0, 36.0, 48.0})
DRAWS = regex(
    r"\b(?P<who>\w+) (?:draws?|drew|pulls?|drinks?|eats?|uses|consumes?|burns?|sips?|gulps?|swallows?|guzzles?)"
    r"(?: about| only| roughly| around| some| just| maybe)? $",
    re.IGNORECASE,
)
ENDS = regex(
    r"(?=\s*(?:[,;:?!)]|\.(?!\d)|$)| (?:all (?:night|day|in|told|the time)|overnight|through the|round the|between them"
    r"|together|and (?:the|my|our|it|i|we|how|what|has|must))\b)",
    re.IGNORECASE,
)
FROM_FULL = regex(r"\b(?:from|off|with|starting) (?:an? )?full\b", re.IGNORECASE)  # what is full is only drawn from
LISTED = regex(r"(?:,| and|, and) (?:the |my |our )?\w+(?: \w+)? \d", re.IGNORECASE)  # "radar eats 3, plotter 1.5"
NO_LOAD = frozenset(  # what draws metres, or amps that are no load's
    {
        *("she", "he", "boat", "barge", "yacht", "hull", "keel", "ketch", "sloop", "cruiser", "tender", "charger"),
        *("alternator", "we", "i", "they", "you", "engine", "who", "motor"),
    }
)
CHARGED = regex(r"\bcharg|\bfull\b|\bfill|\btop\w* (?:it |her )?up|\binto\b|\bputs? back\b", re.IGNORECASE)
ALL_TOLD = regex(r" ?(?:all (?:told|in|up|together)|altogether|between them|in total|in all)\b", re.IGNORECASE)
SUN = frozenset({"sun", "sunny", "solar", "sunlight", "daylight", "summer"})
FAR = 70  # characters


def by_phrase(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of figures whose own words tell what they are, where nothing or only a guess has them."""
    found: dict[int, Claim] = {}
    for item in scene.quantities("AMP", "NUM", "AH", "WATT"):
        value = item.quantity.value
        if isinstance(value, str) or claims.get(item.at, NOTHING).how in ("token", "role"):
            continue
        if (claim := _told(scene, item, value, claims)) is not None:
            found[item.at] = claim
    told = [claim for claim in (claims | found).values() if claim.fact == LOAD.fact and claim.how != "default"]
    if told:  # "2 x 80 A, sum = 160 A, does that carry 130 running"
        found |= {
            item.at: Claim(NOT_OURS, "grammar") for item in scene.quantities("AMP") if _is_sum(scene, item, claims)
        }
    return found


def _told(scene: Scene, item: Item, value: float, claims: dict[int, Claim]) -> Claim | None:
    start, end = scene.span(item.start, item.end)
    before, after = scene.text[max(0, start - FAR) : start], scene.text[end : end + FAR]
    claim = claims.get(item.at)
    if item.dim == "AH":
        return SIZE if claim is not None and claim.fact == NOT_OURS and IN_THE.search(before) else None
    if item.dim == "WATT":
        return _watts(scene, claim, before, value)
    if item.dim == "AMP":
        drawn = _drawn(scene, item, before, claims) or _all_told(scene, claim, after)
        return FUSE if FOR_THE_FUSE.match(after) else LOAD if drawn else None
    if claim is not None:
        return None
    if LEAST_DRAWN <= value <= MOST and _draws(scene, before, after):
        return LOAD
    if value <= MOST_DRAIN:
        return DRAIN if value % 1 and IN_THE_LEAD.search(before) else None
    if not LEAST <= value <= MOST:
        return None
    runs = RUNS_AT.search(before) and ENDS.match(after) and value not in VOLTS and INRUSH.search(scene.text)
    if runs or PLATE.search(before):
        return LOAD
    if RUNNING.match(after):
        return LOAD if "load" in scene.heads or _peaks(scene, item, claims) else None
    return PEAK if STAMPED.match(after) and THE.search(before) and INRUSH.search(before) else None


def _draws(scene: Scene, before: str, after: str) -> bool:
    """Whether a bare figure ends what something draws: "the anchor watch draws 6"; a boat draws metres."""
    found = DRAWS.search(before)
    if found is None or not ENDS.match(after) or LISTED.match(after) or found["who"].lower() in NO_LOAD:
        return False
    named = "load" in scene.heads or scene.about("request:how_long")
    battery = bool({"battery", "battery.chemistry", "battery.capacity"} & (scene.heads | scene.facts))
    return named and (battery or bool(scene.quantities("AH")))


def _all_told(scene: Scene, claim: Claim | None, after: str) -> bool:
    """Whether amps that were guessed to be a charger's are those of all that runs: "seven amps all in"."""
    guessed = claim is not None and claim.fact == "charger.current" and claim.how in UNSURE
    charges = {"charger", "dcdc", "alternator", "panel"} & scene.heads or CHARGED.search(scene.text)
    return guessed and not charges and ALL_TOLD.match(after) is not None


def _peaks(scene: Scene, item: Item, claims: dict[int, Claim]) -> bool:
    """Whether a peak is told beside it: "130 running, 190 kick"."""
    near = scene.items[max(0, item.at - 6) : item.at + 7]
    return any(claims.get(other.at, NOTHING).fact == PEAK.fact for other in near)


def _watts(scene: Scene, claim: Claim | None, before: str, value: float) -> Claim | None:
    """Watts that a guess gave to a panel that nobody has, or to a load where a panel is as big."""
    wanted = claim is not None and claim.fact == "solar.power" and claim.how in UNSURE
    if wanted and PANEL_WANTED.search(scene.text) and TAKEN_BY.search(before):
        return Claim("load.power", "near")
    if claim is None or claim.how != "default":
        return None
    if claim.fact == "solar.power" and "panel" not in scene.heads and not SUN & scene.vocabulary:
        return Claim("load.power", "near") if value <= NO_PANEL or TAKEN_BY.search(before) else None
    as_big = claim.fact == "load.power" and "panel" in scene.vocabulary and PANEL_LIKE_IT.search(scene.text)
    return Claim("solar.power", "near") if as_big else None


def _drawn(scene: Scene, item: Item, before: str, claims: dict[int, Claim]) -> bool:
    """Whether amps that were guessed to be a charger's are drawn: for so many hours, from full, over so many metres."""
    if claims.get(item.at) != Claim("charger.current", "default"):
        return False
    if HOURS_AT.search(before):
        return sum(claim.fact == "charger.current" for claim in claims.values()) > 1
    if FROM_FULL.search(scene.text) and scene.about("request:how_long"):
        return not {"charger", "dcdc", "alternator"} & scene.heads
    near = scene.items[max(0, item.at - 2) : item.at + 3]
    run = any(claims.get(other.at, NOTHING).fact == "cable.length" for other in near)
    return run and "battery.charge" not in scene.facts and not {"charger", "dcdc", "alternator"} & scene.heads


def _is_sum(scene: Scene, item: Item, claims: dict[int, Claim]) -> bool:
    start = scene.tokens[item.start].start
    guessed = claims.get(item.at) == Claim("load.current", "default")
    return guessed and SUMMED.search(scene.text[max(0, start - FAR) : start]) is not None
