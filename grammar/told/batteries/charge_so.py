"""How full a battery is by other words: "full to the brim", "at full", "from dead half"; and a later "quarter?",
"what if it is full", "same but a full AGM"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from grammar.reading import Stated
from grammar.scene.scene import Scene

FACT = "battery.charge"
FULL = re.compile(
    r"\bat full(?=\s*(?:[,.;:?!)]|$))"
    r"|\b(?:brim[- ]?full|brimful|chock[- ]?full|(?:full|filled|charged|topped)(?: up)? to the brim)\b(?! of\b)"
    r"|\bfull(?= (?:when|before|whenever|every time|each time) (?:i|we|he|she|they) "
    r"(?:leave|left|lock|locked|go|went|close|closed)\b)",
    re.IGNORECASE,
)
NOT_NOW = re.compile(  # what is to be reached, or what somebody says
    r"\b(?:till?|until|to be|to get|before|when|is (?:it|she|he|that)|says?|said|means?|meant|told|leave|keep|or|if"
    r"|better|should|take it)\b[^.?!;]{0,28}$",
    re.IGNORECASE,
)
AFTERWARDS = re.compile(r"^(?:,? (?:again|or|half|with|by (?!the))\b|\s*\?|; who)", re.IGNORECASE)
HALF = re.compile(r"\bfrom (?:dead|exactly|just|bang on|bang|roughly|a bare|barely) half\b(?! past)", re.IGNORECASE)
SHARES = {
    "quarter": 25.0,
    "third": 100 / 3,
    "half": 50.0,
    "two thirds": 200 / 3,
    "two-thirds": 200 / 3,
    "three quarters": 75.0,
    "three-quarters": 75.0,
}
AGAIN = re.compile(  # a message of nothing else
    r"^\W*(?:(?:and|or|but|then|what|how|about|at|if|it'?s|say|only|just|with|sorry|make it|no)\W+)*"
    rf"(?:an? |one |the )?(?P<share>{'|'.join(sorted(SHARES, key=len, reverse=True))})"
    r"(?: (?:full|charged|charge|then|of it))*\W*$",
    re.IGNORECASE,
)
FULL_AGAIN = re.compile(  # of a charge that was told before
    r"^\W*(?:(?:and|or|but|ok|same|again|what|how|about|if|then|it|is|it'?s|they|are|they'?re|were|was|with|when|say"
    r"|now|one|starting)\W+)*"
    r"(?P<full>(?:completely |fully |quite )?(?:full|charged)(?: up)?)"
    r"(?: to start with| then| instead| at the start)?\W*$",
    re.IGNORECASE,
)
ASKED_IF = re.compile(r"^\W*(?:(?:and|or|but|ok)\W+)*(?:is|are|was|were)\b", re.IGNORECASE)  # "is it full?"
KINDS = r"(?:agm|gel|lithium|lfp|lifepo4|wet|flooded|lead|sealed|battery|batteries|bank|pair|one|ones)"
FULL_ONE = re.compile(rf"\b(?:an?|the|my|our|with|but|for|two) full(?:y charged)? {KINDS}\b", re.IGNORECASE)
LEFT = re.compile(
    rf"\b(?:leav|left|stor|lay|laid|put away|winter)\w*\b[^.?!;,]{{0,16}}"
    rf"\b(?:an?|the|my|our|two) full(?:y charged)? {KINDS}\b",
    re.IGNORECASE,
)
AHEAD = 12  # characters
SHORT = 8  # words
AMPS = ("drain.current", "load.current")
LITTLE = 2.0  # amps, of which people tell shares


def charge_so(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """How full the battery is, where such words tell it."""
    spoken = "battery" in scene.facts | scene.heads or any(old.fact.startswith("battery.") for old in scene.said)
    if not spoken and not scene.quantities("AH", "CCA"):
        return
    if found := HALF.search(scene.text):
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
