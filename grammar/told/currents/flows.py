"""Which way amps flow, by what is said of their flowing: into a battery, out of a charger's leg, out of the battery."""

from __future__ import annotations

import re

from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

CHARGER, LOAD, LIMIT = "charger.current", "load.current", "battery.max_current"
MOST = 200.0  # amps of a charger
MOST_OF_A_DRAIN = 1.0
AFTER = 48  # characters
TO_FILL = regex(  # "how long for 24 A to make good a half"
    r" ?(?:to (?:make (?:good|up)|put back|give back|bring back|fill|refill|restore|replenish|recharge"
    r"|return (?:it|them|half|what|those|the (?:amp|half|lost)))"
    r"|(?:makes? good|puts? back|restores|replenishes|recharges|refills)) (?!(?:the|my) (?:tank|water|fuel|oil))",
    re.IGNORECASE,
)
LEG = r"(?:leg|outlet|output|channel|exit|port)"
ONE = r"(?:one|two|three|four|1|2|3|4)"
LEAVES = regex(  # "35 A leaves leg two", "20 amps on each leg"
    rf" (?:leav(?:es?|ing)|(?:com(?:es?|ing) |go(?:es|ing) )?(?:out of|from|off)|on|at|per) "
    rf"(?:(?:each|every|the|its|one) )?(?:(?:first|second|third|last) )?{LEG}\b",
    re.IGNORECASE,
)
LEG_GIVES = regex(
    rf"\b{LEG} {ONE}(?: (?:gives|is|has|carries|puts out|delivers|does|makes)|:|,|=)? (?:about |some )?$", re.IGNORECASE
)
FED = regex(r"\b(?:feeds on|fed (?:on|by|with|at)|dines on|grazes on)(?: an?| about| some)? $", re.IGNORECASE)
STEPPED = regex(  # "a 12-to-24 box delivers 10 A"
    r"\b(?:12|twelve)(?:[ -]?v(?:olts?)?)?(?: ?(?:/|>|->|→) ?|[ -](?:to|into)[ -])(?:24|twenty[ -]four)\b"
    r"[^.?!;\d]{0,30}\b(?:gives?|delivers?|outputs?|puts? out|makes?|sends?|supplies|yields?|pushes|hands|provides"
    r"|offers)(?: (?:out|up|me|us|about|some|only|just|over))* $",
    re.IGNORECASE,
)
AFTERWARDS = regex(  # "and afterwards how many hours on 20 A"
    r"\b(?:afterwards?|after that|then|thereafter)\b[^.?!;\d]{0,30}\bhow (?:many|much|long)\b[^.?!;\d]{0,24}"
    r"\b(?:on|at|with)(?: an?| my| the)? $",
    re.IGNORECASE,
)
BATTERY = (
    r"(?:it|they|she|he|these|those|both"
    r"|(?:the|this|that|my|our) (?:pair|bank|two|three|four|lot|battery|batteries|accu))"
)
GIVES = regex(  # "for how long can it give 20 amps"
    rf"\bhow long (?:can|could|will|would|does|do) {BATTERY}(?: all| both| together)? "
    r"(?:give|deliver|supply|feed|yield|hold|keep up|keep|carry|sustain|provide|put out|stand|bear)"
    r"(?: me| us| out)?(?: an?| about| some)? $",
    re.IGNORECASE,
)
EACH_LETS = regex(  # "each permits 100 A continuous"
    r"\b(?:each|each one|either|both|every one)(?: of (?:them|these|those|the two|the pair))? "
    r"(?:(?:can |may |will )?(?:permits?|allows?|lets?|gives?|concedes?|yields?|stands?)|is (?:limited to|good for))"
    r"(?: (?:out|through|up|to|me|us|about))* $",
    re.IGNORECASE,
)
OURS_LETS = regex(  # "what a BMS may be; if ours, good for 150 A continuous"
    r"\b(?:ours|mine)(?:,| is| being)*(?: only| just)? "
    r"(?:good for|rated(?: at| for)?|allows?|lets?|gives?|permits?|stands?)(?: (?:out|through|about|up to))* $",
    re.IGNORECASE,
)
STEADY = regex(
    r" ?(?:of )?(?:a |as )?(?:continuous|cont\b|steady|steadily|constant|permanent|all day|without end|for good)",
    re.IGNORECASE,
)
GOING_OUT = regex(  # "4.5 A going out", "6 amps leaving the battery"
    r" ?(?:(?:is |are |still |now |being )*(?:going|flowing|running|coming|pulled|drawn|taken) out\b"
    r"|leaving\b|out of (?:it|them|the (?:battery|bank|pair)))"
    r"(?! (?:of )?(?:the |my |its )?(?:charger|leg|output|panel))",
    re.IGNORECASE,
)
LIMITED = regex(  # "limit is 100 A each"
    r"\b(?:the |their |its |bms )?limit(?:s|ed)?(?: (?:is|are|being|of|to|at|says?))?(?: about)? $", re.IGNORECASE
)
CHARGERS = frozenset({"charger", "dcdc", "alternator", "panel"})
GOES_IN = frozenset({("going", "in"), ("goes", "in"), ("go", "in"), ("fed", "in"), ("put", "in"), ("sent", "in")})
SHORE = frozenset({"shore", "mains", "quay", "charger", "chargers", "charging", "charge"})


def flowing(scene: Scene, item: Item, value: float) -> str:
    """The fact of amps whose way is told; "" where nothing tells it."""
    if item.dim != "AMP":
        return ""
    start, end = scene.span(item.start, item.end)
    before, after = scene.ahead(start), scene.text[end : end + AFTER]
    if GIVES.search(before):
        return LOAD
    if "bms" in scene.heads and OURS_LETS.search(before) and STEADY.match(after):
        return LIMIT
    if scene.lithium_known and EACH_LETS.search(before) and STEADY.match(after):
        return LIMIT
    if scene.lithium_known and LIMITED.search(before) and scene.word(item.end) == "each":
        return LIMIT
    if value > MOST_OF_A_DRAIN and GOING_OUT.match(after) and not scene.about("role:drain.current"):
        return LOAD
    return CHARGER if value <= MOST and _charges(scene, item, before, after) else ""


def _charges(scene: Scene, item: Item, before: str, after: str) -> bool:
    """Whether they flow into a battery, or out of a charger."""
    if STEPPED.search(before) or LEAVES.match(after) or LEG_GIVES.search(before):
        return True
    others = [other for other in scene.quantities("AMP") if other.at < item.at]
    if others and AFTERWARDS.search(before):
        return True
    running = "load" in scene.heads or "load.kind" in scene.facts
    owner = scene.after(item)
    fed = FED.search(before) and (owner is None or not owner.head)  # "fed by a 90 amp alternator" is that one's
    return not running and bool(fed or TO_FILL.match(after))


def through_a_cable(scene: Scene, item: Item) -> bool:
    """Whether amps that "go in" do so at a cable's end: "4 AWG, 16 ft, ninety amps going in"."""
    cabled = scene.quantities("LENGTH") and scene.quantities("GAUGE", "AREA")
    goes_in = (scene.word(item.end), scene.word(item.end + 1)) in GOES_IN
    return goes_in and bool(cabled) and not CHARGERS & scene.heads and not SHORE & scene.vocabulary
