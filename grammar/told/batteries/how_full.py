"""How full a battery is by other words: "full to the brim", "at full", "from dead half"; and a later "quarter?",
"what if it is full", "same but a full AGM"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from grammar.reading import Stated
from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

FACT = "battery.charge"
FULL = regex(
    r"\bat full(?=\s*(?:[,.;:?!)]|$))"
    r"|\b(?:brim[- ]?full|brimful|chock[- ]?full|(?:full|filled|charged|topped)(?: up)? to the brim"
    r"|(?:i|we|he|she) (?:always |usually )?(?:charges?|fills?|tops?)(?: it| them| her| mine| ours)?(?: up)?"
    r" to the brim)\b(?! of\b)"
    r"|\b(?:battery|batteries|bank|agms?|gels?|wets?|lithium|accu|lead|they|cells?) (?:is|are) (?:now )?"
    r"(?:full|charged)(?= (?:at the moment|at present|right now|just now|as of now|for now)\b)"
    r"|\b(?:battery|batt|accu|bank) full(?=\s*[,;.])"
    r"|\bfull(?= (?:when|before|whenever|every time|each time) (?:i|we|he|she|they) "
    r"(?:leave|left|lock|locked|go|went|close|closed)\b)",
    re.IGNORECASE,
)
NOT_NOW = regex(  # what is to be reached, or what somebody says
    r"\b(?:till?|until|to be|to get|before|when|is (?:it|she|he|that)|says?|said|means?|meant|told|leave|keep|or|if"
    r"|better|should|take it)\b[^.?!;]{0,28}$",
    re.IGNORECASE,
)
AFTERWARDS = regex(r"^(?:,? (?:again|or|half|with|by (?!the))\b|\s*\?|; who)", re.IGNORECASE)
HALF = regex(r"\bfrom (?:dead|exactly|just|bang on|bang|roughly|a bare|barely) half\b(?! past)", re.IGNORECASE)
HALF_GONE = regex(  # "130 Ah, half is gone"
    r"\bhalf(?: of (?:it|that|them))? (?:is|was|are|has been|'s) (?:already |now )?"
    r"(?:gone|used|spent|out|taken|drunk|eaten)\b(?!\s*\?)",
    re.IGNORECASE,
)
SHARES = {
    "quarter": 25.0,
    "third": 100 / 3,
    "half": 50.0,
    "two thirds": 200 / 3,
    "two-thirds": 200 / 3,
    "three quarters": 75.0,
    "three-quarters": 75.0,
}
AGAIN = regex(  # a message of nothing else
    r"^\W*(?:(?:and|or|but|then|what|how|about|at|if|it'?s|say|only|just|with|sorry|make it|no)\W+)*"
    rf"(?:an? |one |the )?(?P<share>{'|'.join(sorted(SHARES, key=len, reverse=True))})"
    r"(?: (?:full|charged|charge|then|of it))*\W*$",
    re.IGNORECASE,
)
FULL_AGAIN = regex(  # of a charge that was told before
    r"^\W*(?:(?:and|or|but|ok|same|again|what|how|about|if|then|it|is|it'?s|they|are|they'?re|were|was|with|when|say"
    r"|now|one|starting)\W+)*"
    r"(?P<full>(?:completely |fully |quite )?(?:full|charged)(?: up)?)"
    r"(?: to start with| then| instead| at the start)?"
    r"(?:\W*$|[.;!] *(?:so |and |then )?(?:how|what|when|will|is|does)\b)",
    re.IGNORECASE,
)
ASKED_IF = regex(r"^\W*(?:(?:and|or|but|ok)\W+)*(?:is|are|was|were)\b", re.IGNORECASE)  # "is it full?"
KINDS = r"(?:agm|gel|lithium|lfp|lifepo4|wet|flooded|lead|sealed|battery|batteries|bank|pair|one|ones)"
FULL_ONE = regex(rf"\b(?:an?|the|my|our|with|but|for|two) full(?:y charged)? {KINDS}\b", re.IGNORECASE)
LEFT = regex(
    rf"\b(?:leav|left|stor|lay|laid|put away|winter)\w*\b[^.?!;,]{{0,16}}"
    rf"\b(?:an?|the|my|our|two) full(?:y charged)? {KINDS}\b",
    re.IGNORECASE,
)
AHEAD = 12  # characters
SHORT = 8  # words
AMPS = ("drain.current", "load.current")
LITTLE = 2.0  # amps, of which people tell shares
CHARGE = Claim("battery.charge", "role")
BEHIND_NAME = regex(
    r"\b(?:soc|s\.o\.c\.?|state of charge)[\"',:=]*"
    r"(?: (?:is|at|of|says|reads|shows|stands at|sits at|was|gives))*(?: only| just| about| around)? ?[\"']?$",
    re.IGNORECASE,
)
SHOWN = regex(
    r"\b(?:gauge|meter|monitor|display|shunt|app|screen|computer|dial|indicator|readout)\b[^.?!;\d]{0,24}"
    r"\b(?:says?|said|shows?|showed|reads?|gives?|stands at|at|claims)(?: only| just| about| still)? ?[\"']?$",
    re.IGNORECASE,
)
PERCENT = regex(r"^ ?(?:%|per ?cent\b|pct\b)", re.IGNORECASE)
UNITS = regex(r"^ ?(?:v\b|volts?\b|a\b|amps?\b|ah\b|[.,:]\d|w\b)", re.IGNORECASE)
UNIT_AHEAD = 10  # characters
COMING = 5  # words between "until" and where it ends
COMES = frozenset(
    (
        *("i", "im", "am", "we", "were", "are", "it", "its", "is", "she", "shes", "they", "theyre", "battery", "bank"),
        *("at", "on", "down", "hit", "hits", "reach", "reaches", "get", "gets", "reads", "shows", "stands"),
        *("meter", "monitor", "drops", "drop", "falls", "fall", "around", "about", "the", "my"),
    )
)
TIMES = frozenset(["min", "mins", "minutes", "hr", "hrs", "hours", "days", "weeks", "time", "long", "last"]) | {
    *("trips", "outings", "dockings", "sessions", "sails", "bursts"),
}
ASKED_BEFORE = 8  # words before "to 50 %" in which "how long" stands
AHEAD_OF_IT = 6  # words
FALLEN = frozenset({"down", "drops", "drop", "falls", "fall", "drained", "used"})
FILLED = frozenset({"go", "charge", "fill", "stop", "only", "just", "charged", "fills", "goes", "take"})
CHARGED = frozenset({"charge", "charged", "charging", "charger", "fill", "full", "when", "if", "at"})


def charge_so(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """How full the battery is, where such words tell it."""
    spoken = "battery" in scene.facts | scene.heads or any(old.fact.startswith("battery.") for old in scene.said)
    if not spoken and not scene.quantities("AH", "CCA"):
        return
    gone = HALF_GONE.search(scene.text)
    if gone and (NOT_NOW.search(scene.ahead(gone.start())) or any(item.fact == FACT for item in stated)):
        gone = None
    if found := HALF.search(scene.text) or gone:
        yield Stated(FACT, 50.0, "percent", found[0], found.span(), how="default")
        return
    if not any(item.fact == FACT for item in stated) and (found := LEFT.search(scene.text)):
        yield Stated(FACT, 100.0, "percent", found[0], found.span(), how="default")
        return
    found = FULL.search(scene.text)
    if (
        found is None
        or NOT_NOW.search(scene.ahead(found.start()))
        or AFTERWARDS.match(scene.text[found.end() :][:AHEAD])
    ):
        return
    begins = scene.ahead(found.start()).lower().endswith("from ")  # then a half is where the wait ends
    if begins or not any(item.fact == FACT for item in stated):
        yield Stated(FACT, 100.0, "percent", found[0], found.span(), how="default")


def charge_again(scene: Scene, said: Sequence[Stated]) -> Iterator[Stated]:
    """Another share of the charge that was told before: "quarter", "and at three quarters?", "same but a full AGM"."""
    old = next((item for item in said if item.fact == FACT or _little(item)), None)
    if old is None or old.fact != FACT or len(scene.tokens) > SHORT or scene.measured[1:]:
        return
    if found := AGAIN.match(scene.text):
        value = SHARES[found["share"].lower()]
        yield Stated(FACT, value, "percent", found["share"], found.span("share"), how="asked")
    elif (again := FULL_AGAIN.match(scene.text)) and not ASKED_IF.match(scene.text):
        yield Stated(FACT, 100.0, "percent", again["full"], again.span("full"), how="asked")
    elif one := FULL_ONE.search(scene.text):
        yield Stated(FACT, 100.0, "percent", one[0], one.span(), how="asked")


def _little(item: Stated) -> bool:
    return item.fact in AMPS and not isinstance(item.value, str) and item.value <= LITTLE


def charge_shown(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of figures that are a state of charge."""
    if any(claim.fact == CHARGE.fact for claim in claims.values()):
        return {}
    return {item.at: CHARGE for item in scene.quantities("NUM") if item.at not in claims and _is_shown(scene, item)}


def _is_shown(scene: Scene, item: Item) -> bool:
    value = item.quantity.value
    if isinstance(value, str) or not 1 <= value <= 100 or value != int(value):
        return False
    start, end = scene.span(item.start, item.end)
    before, after = scene.ahead(start), scene.text[end : end + UNIT_AHEAD]
    if PERCENT.match(after):
        return bool(BEHIND_NAME.search(before) or SHOWN.search(before))
    return BEHIND_NAME.search(before) is not None and not UNITS.match(after)


def ends_at(scene: Scene, item: Item) -> bool:
    """Whether a percentage is where a time ends, not where the battery stands: "mins to 50 %", "how many till 80 %"."""
    led = _led_to(scene, item.start)
    if scene.word(led) not in ("to", "till", "until", "before"):
        return False
    charged = any(old.fact == "charger.current" for old in scene.said)
    ahead = {scene.word(at) for at in range(max(0, led + 1 - AHEAD_OF_IT), led)}
    if charged and FILLED & ahead and not FALLEN & ahead:
        return True  # "and if I only go to 80 %?"
    first, last = scene.clauses[scene.clause(item.start)].start, led
    how = next((at for at in range(last - 1, max(first, last - ASKED_BEFORE) - 1, -1) if scene.word(at) == "how"), last)
    between = {scene.word(at) for at in range(how + 2, last)}
    asked = scene.word(how + 1) in ("long", "many") and not between & CHARGED
    return asked or scene.word(last - 1) in TIMES


def _led_to(scene: Scene, start: int) -> int:
    """The word that leads to a figure, past who comes there: "until I'm at the 50 % line", "before it hits 50"."""
    at = start - 1
    while at > max(0, start - 1 - COMING) and scene.word(at) in COMES:
        at -= 1
    return at
