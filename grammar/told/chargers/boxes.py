"""Amps of a charger that is not called one: "a box giving 12 amps", "a 9 A box over a 60 Ah gel", "hours on a 20"."""

from __future__ import annotations

import re

from grammar.scene.claims import NOTHING, UNSURE, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.currents import emptied
from grammar.told.words import ahead_of, stops

CHARGER, ALTERNATOR = Claim("charger.current", "grammar"), "alternator.current"
BOX = (
    r"(?<!fuse )(?<!battery )(?<!junction )(?<!chain )"
    r"(?:box|gadget|gizmo|unit|brick|contraption|converter|booster|apparatus)"
)
GIVEN_BY = regex(
    rf"\b{BOX},?(?: between [^.?!;]{{3,30}}?)?(?: that| which| it)?"
    r" (?:giv(?:es?|ing)|push(?:es|ing)?|puts? out|putting out|deliver(?:s|ing)?|mak(?:es?|ing)|yield(?:s|ing)?|does"
    r"|suppl(?:ies|ying)|provid(?:es|ing)|is good for|good for|(?:is )?rated(?: at| for)?|of|at)"
    r"(?: only| just| about| around| some| up to| a mere)? $",
    re.IGNORECASE,
)
NAMED_BY = regex(  # "a 12-to-12 gadget, 40 A", "the dc-dc is a 25"
    r"\b(?:12|24|twelve|twenty[- ]four)(?:[ -]?v(?:olts?)?)?(?: ?(?:/|>|->|→) ?|[ -](?:to|into)[ -])"
    rf"(?:12|24|twelve|twenty[- ]four)(?:[ -]?v(?:olts?)?)? (?:[\w-]+ )?{BOX}[,:(]* ?$"
    r"|\b(?:amp(?:ere)?|current|output) rating (?:of|is) $"
    r"|\b(?:dc-?dc|dc to dc|b2b|step-?up|converter|booster)(?:'s| is|,)? (?:only |just )?an? $",
    re.IGNORECASE,
)
YIELDS = regex(
    r"\b(?:gives?|giving|makes?|puts?(?: out)?|delivers?|yields?|supplies|pushes|feeds?)"
    r"(?: about| only| up to| me| us)* $",
    re.IGNORECASE,
)
ON_THE_HIGHER = regex(r" ?(?:out )?(?:on|at|to|into) the (?:24|twenty[- ]four|36|48)\b", re.IGNORECASE)
PUT = regex(r"\bput(?:s|ting)? (?:only |just |about |some )?$", re.IGNORECASE)
ON_THE_BATTERY = regex(r" ?(?:on|in|into|through) (?:it|them|her|the (?:battery|bank))\b", re.IGNORECASE)
MOST_PUT = 30.0  # amps: a tester puts more on it
BETWEEN_BANKS = regex(
    r"\bbetween (?:the |my |our )?(?:start\w*|engine\w*|house|main|domestic|alternator)(?: battery| bank| one)?"
    r" and (?:the |my |our |a )?(?:bow|stern|thruster|lithium|lfp|windlass|front|forward|second|24)\b"
    rf"|\b(?:12|24)(?:[ -]?v)?[ -]to[ -](?:12|24)(?:[ -]?v)? {BOX}\b",
    re.IGNORECASE,
)
ENGINE_GIVES = regex(  # "the outboard makes 40 A"
    r"\b(?:outboard|inboard|engine|diesel|genset|generator(?: on the \w+)?)(?:'?s|,)?"
    r" (?:makes?|gives?|puts out|(?:is )?good for|delivers?|yields?|produces?|charges at|turns out)"
    r"(?: about| only| just| some| up to| at most| a mere)* $",
    re.IGNORECASE,
)
OUT = regex(  # "when 15 come out", "for 30 out", "if it puts 14 out", "when thirty amps leave it"
    r"^ ?(?:a\b|amps?\b|amperes?\b)? ?(?:(?:to |must |shall )?(?:com(?:e|es|ing)|go(?:es|ing)?) out\b|out\b"
    r"|(?:to )?lea(?:ve|ves|ving) (?:it|the (?:box|unit|converter|other))\b)",
    re.IGNORECASE,
)
WHEN_IT_GIVES = regex(
    r"\b(?:when|if|while) (?:it|the box|he|she) (?:gives?|delivers?|makes?|puts? out|yields?|supplies)"
    r"(?: me| us| about)? $",
    re.IGNORECASE,
)
GOES_IN = regex(r"\b(?:how (?:many|much)|what|which)\b[^.?!;]{0,24}\b(?:in|into|at the input|above)\b", re.IGNORECASE)
BOX_AHEAD = regex(  # "a box between the engine and my lithium, 50 A, alternator 100"
    rf"\b{BOX}\b(?:(?!alternator)(?:[^.?!;\d]|\b(?:12|24)\b))*, $", re.IGNORECASE
)
AT = regex(r"\b(?:at|with|by)(?: only| just| about| around| some)? $", re.IGNORECASE)
ONES = frozenset({"one", "unit", "box", "job", "jobbie", "model", "version"})
ARTICLES = frozenset({"a", "an", "the", "my", "our"})
ENDS = frozenset({"and", "into", "to", "at", "for", "from", "of", "while", "when", "so", "but", "then", "between"})
SYSTEMS = frozenset({6.0, 12.0, 24.0, 36.0, 48.0})  # volts, where no unit stands behind
LEAST, MOST = 2.0, 120.0  # amps of a converter
OPEN = frozenset(
    {"load.current", "load.bursts", "load.peak", "battery.capacity", "reading.current", "drain.current", ALTERNATOR}
)
CHARGES = Claim("charger.current", "near")
LEAST_BARE, MOST_BARE = 1.0, 100.0
VOLTS = frozenset({12.0, 13.0, 14.0})  # what a charger that "gives 14" may give
LOOSE = frozenset({"load.current", "drain.current", "reading.current"})
NUMBER_ENDS = r"(?=\W*(?:$|[.,;?!)]|\b(?:and|or|so|when|how|what|in|does|will|would|can|then)\b))"
BOX_NEXT = regex(r"[ -]*(?:box|brick|wall wart|plug-in|gadget|gizmo|set(?! (?:of|to|at|up|on|in|by)))\b", re.IGNORECASE)
THING_NEXT = regex(r"[ -]*(?:thing|yoke|thingy|device|jobbie|job|doofer|apparatus)\b", re.IGNORECASE)
MOST_THING = 15.0  # amps of what is only called a thing
ON_BATTERY = regex(  # "5 amp on a 180 wet", "40 A on his 100 Ah gel"
    r" on (?:(?:an?|the|my|our|his|her) )?(?P<size>\d{2,3}) ?(?:ah |amp hours? )?"
    r"(?:agm|gel|wet|flooded|lead|lithium|lfp|battery)\b",
    re.IGNORECASE,
)
MOST_SHARE = 0.6  # of the amp-hours
HOURS_WITH = regex(r"\bhow (?:long|many hours) (?:w/?|with|on|using) an? $", re.IGNORECASE)
FED_BY = regex(
    r"\b(?:off|from) (?:the|my|our|his|her) (?:engine|start\w*|alternator|main|house)\b"
    r"|\b12 ?v? (?:to|into) (?:12|24)\b",
    re.IGNORECASE,
)
HOURS_ASKED = regex(
    r"\bhow (?:long|many hours|much hours|much time)\b|\b(?:what|number of) hours\b|^hours\b|[,.;:] hours\b"
    r"|\bwhen (?:is|will|can|may)\b|\b(?:until|till|by) when\b",
    re.IGNORECASE,
)
LASTS = regex(r"\b(?:last|lasts|run|runs|running|keep|keeps|burn|burns|going|until (?:flat|dead|empty))\b", re.I)
ON_IT = regex(r"\b(?:be|stay|sit|left|leave it|keep it|put|is|go) on (?:the|a|my|our|his) $", re.IGNORECASE)
FROM_HALF = regex(
    r"\b(?:half|flat|empty|dead|quarter|third|\d{1,2} ?(?:%|percent|per cent))(?: \w+){0,2} "
    r"(?:on|with|off|using) (?:an?|the|my|our|his) $",
    re.IGNORECASE,
)
GIVING = regex(
    r"\bcharger(?:'?s| is| does| just| only| it)* ?(?:giving|gives?|puts? out|putting out|mak(?:es|ing)"
    r"|deliver(?:s|ing)|push(?:es|ing)|good for|pumps?(?: out)?|feed(?:s|ing))"
    r"(?: me| it| them| out| about| only| just| at most| up to)* $",
    re.IGNORECASE,
)
PULLED_AT = regex(
    r" at (?:12|24)(?: ?v(?:olts?)?)? (?:from|off|out of) (?:that|it|this|the (?:engine|alternator))\b", re.IGNORECASE
)
CHARGING_THING = regex(
    r"\b(?:thing|box|gadget|unit|device|gizmo)s? (?:that|which|to) (?:charges?|tops? up)\b[^.?!;]{0,200}$",
    re.IGNORECASE,
)
OTHERS = frozenset({"load", "drain", "fuse", "panel", "alternator"})
BOOST = regex(r" ?(?:of )?(?:boost|bulk|absorption)\b(?! (?:pump|motor|thruster|fan|winch))", re.IGNORECASE)
CLIPPED = regex(r" (?:clipped|hooked|connected|wired|strapped|hung)(?: up)? (?:on|to|onto|across) ", re.IGNORECASE)
FAR = 70  # characters


def of_a_box(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps that such a box gives."""
    facts = [claim.fact for claim in claims.values()]
    if CHARGER.fact in facts or not _converted(scene):
        return {}
    return {item.at: CHARGER for item in scene.quantities("AMP", "NUM", "COUNT") if _gives(scene, claims, item)}


def _converted(scene: Scene) -> bool:
    """Whether something charges one bank from another, or a bank from an alternator."""
    if {12.0, 24.0} <= scene.figures or "dcdc" in scene.heads or BETWEEN_BANKS.search(scene.text):
        return True
    if any(ENGINE_GIVES.search(ahead_of(scene, item)) for item in scene.quantities("AMP")):
        return True
    return "alternator" in scene.heads and bool(scene.quantities("VOLT"))


def _gives(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    claim, value = claims.get(item.at), item.quantity.value
    taken = claim is not None and claim.fact not in (OPEN | {NOTHING.fact} if "engine" in scene.heads else OPEN)
    if isinstance(value, str) or not LEAST <= value <= MOST or taken:
        return False
    before, after = _sides(scene, item)
    if (item.dim == "AMP" or value not in SYSTEMS) and _comes_out(scene, before, after):
        return True
    given = GIVEN_BY.search(before) is not None or NAMED_BY.search(before) is not None
    given = given or (YIELDS.search(before) is not None and ON_THE_HIGHER.match(after) is not None)
    if item.dim != "AMP":
        return value not in SYSTEMS and stops(scene, item, ENDS) and given
    if claim is not None and claim.fact == ALTERNATOR:
        several = sum(one.fact == ALTERNATOR for one in claims.values()) > 1  # "a 90 A alternator, box of 20 A"
        return _beside_its_alternator(scene, claims, item, before) or (several and given)
    return given


def _comes_out(scene: Scene, before: str, after: str) -> bool:
    """Whether what comes out is told, and asked what goes in for it: "which ampere goes in when 15 come out"."""
    out = OUT.match(after) is not None or WHEN_IT_GIVES.search(before) is not None
    return out and GOES_IN.search(scene.text) is not None


def _beside_its_alternator(scene: Scene, claims: dict[int, Claim], item: Item, before: str) -> bool:
    """Whether they are the smaller of two that seemed the alternator's: "from an alternator of 120 A at 20 A"."""
    of_it = (one for one in scene.quantities("AMP", "NUM") if one is not item and one.at in claims)
    others = [one for one in of_it if claims[one.at].fact == ALTERNATOR]
    larger = any(float(one.quantity.value) > float(item.quantity.value) for one in others)
    one = scene.word(item.end) in ONES and scene.word(item.start - 1) in ARTICLES
    told = one or AT.search(before) is not None or BOX_AHEAD.search(before) is not None
    return larger and len(others) == 1 and told


def box_amps(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps and bare numbers that charge."""
    if not any(item for item in scene.quantities("AMP", "NUM")):
        return {}
    if named := {item.at: CHARGES for item in scene.quantities("AMP") if _is_named(scene, claims, item)}:
        return named
    if "fuse" in scene.heads:
        return {}
    if any(claim.fact == "charger.current" and claim.how != "default" for claim in claims.values()):
        return {}
    amps = [item for item in scene.quantities("AMP") if claims.get(item.at, CHARGES).fact in LOOSE | {CHARGES.fact}]
    bare = [item for item in scene.quantities("NUM") if item.at not in claims]
    asked = HOURS_ASKED.search(scene.text) is not None
    waits = asked and LASTS.search(scene.text) is None
    found = [item for item in amps if _likely(item) and _is_charging(scene, item, waits)]
    found += [item for item in bare if asked and _likely(item) and _bare_charging(scene, item, waits)]
    return {item.at: CHARGES for item in found}


def _is_named(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    """Whether amps that seemed a load's are told as a charge: "on 25 A boost", "a 40 amper clipped to a gel"."""
    claim = claims.get(item.at, CHARGES)
    if claim.fact not in LOOSE or claim.how not in UNSURE or not _likely(item):
        return False
    after = _sides(scene, item)[1]
    return BOOST.match(after) is not None or (
        item.quantity.text.strip().endswith("amper") and bool(CLIPPED.match(after))
    )


def _likely(item: Item) -> bool:
    value = item.quantity.value
    return not isinstance(value, str) and LEAST_BARE <= value <= MOST_BARE


def _sides(scene: Scene, item: Item) -> tuple[str, str]:
    start, end = scene.span(item.start, item.end)
    return scene.text[max(0, start - FAR) : start], scene.text[end : end + FAR]


def _is_charging(scene: Scene, item: Item, waits: bool) -> bool:
    """Whether such amps charge; `waits`: hours of charging are asked about."""
    before, after = _sides(scene, item)
    put = PUT.search(before) is not None and ON_THE_BATTERY.match(after) is not None  # "put 10 A on it"
    if put and float(item.quantity.value) <= MOST_PUT:
        return not scene.heads & OTHERS
    if BOX_NEXT.match(after):
        sized = scene.quantities("AH") or "battery.chemistry" in scene.facts
        return FED_BY.search(after) is not None or (waits and bool(sized))
    if PULLED_AT.match(after):
        return "alternator" in scene.heads
    if CHARGING_THING.search(before) or _on_battery(scene, item, after):
        return True
    if HOURS_WITH.search(before) and waits and re.match(NUMBER_ENDS, after):
        return True
    ends = re.match(NUMBER_ENDS, after) is not None
    return ends and waits and not scene.heads & OTHERS and ON_IT.search(before) is not None


def _on_battery(scene: Scene, item: Item, after: str) -> bool:
    """Whether so many amps are put on a battery, and nothing that draws them is spoken of."""
    thing, on, value = THING_NEXT.match(after), ON_BATTERY.match(after), float(item.quantity.value)
    fits = (
        value <= MOST_THING and "battery" in scene.heads | scene.facts
        if thing
        else (on is not None and value <= MOST_SHARE * float(on["size"]))
    )
    if not fits or scene.heads & OTHERS or scene.about("request:how_long", "role:off"):
        return False
    lasts = LASTS.search(scene.text) or (emptied.LASTS.search(scene.text) and not emptied.CHARGED.search(scene.text))
    return not lasts


def _bare_charging(scene: Scene, item: Item, waits: bool) -> bool:
    before, after = _sides(scene, item)
    if not re.match(NUMBER_ENDS, after) or item.quantity.value in VOLTS:
        return False
    if GIVING.search(before):
        return True
    return waits and FROM_HALF.search(before) is not None
