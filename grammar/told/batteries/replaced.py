"""A battery or charger that was changed for another one: "replaced the 80 Ah with a 120 Ah". The new one counts."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from grammar.reading import Span, Stated
from grammar.text.patterns import regex

NOT_DONE = (  # "should be replaced with", "is it to be changed for", "not swapped"
    r"(?<!\bbe )(?<!\bbeing )(?<!\bget )(?<!\bnot )(?<!\bgetting )(?<!\bwould have )(?<!\bif i )(?<!\bif we )"
)
SPOKEN = regex(
    r"replac|swapped|changed|traded|upgraded|renewed|from|place of|instead of|fitted|put in|got|bought|installed",
    re.IGNORECASE,
)
FIRST = (  # "our AGM died" at the head of a sentence, and not "one of the two died", which leaves the other
    r"(?:^|(?<=[.?!;\n] ))(?![^.?!;]{0,80}\b(?:one of|the other|second|beside)\b)"
)
ENDED = r"(?:died|dead|gone|went|scrapped|failed|binned|swollen|swelled|ruined|killed|finished|packed up|worn out)"
DONE = r"(?:(?!\b(?:should|shall|could|would|must|want|if|when|may|can)\b)[^.?!;])"  # of what is told, not weighed
THEN = r"(?:[.,;:]\s*|\s)(?:(?:and|so|then|now|we|i|have|had|i['’]ve|we['’]ve|just|therefore)\s){0,4}"
OLD, NEW = r"(?P<old>[^.?!;]{3,45}?)", r"(?P<new>[^.?!;,]{3,45})"
CHANGED = (
    regex(
        rf"{NOT_DONE}\b(?:replaced|swapped|changed|exchanged|traded|upgraded|renewed)\b(?: out)?"
        rf" (?!by\b|with\b|to\b|for\b){OLD}\s(?:with|for|by|to|against|into)\s{NEW}",
        re.IGNORECASE,
    ),
    regex(rf"{NOT_DONE}\b(?:went|gone|moved|stepped up|upgraded)\s+from\s{OLD}\sto\s{NEW}", re.IGNORECASE),
    regex(
        r"\b(?:put|fitted|installed|have|has|got)\s(?P<new>[^.?!;,]{3,35}?)"
        r"\s(?:in(?:to)? (?:the )?place of|instead of)\s(?P<old>[^.?!;,]{3,35})",
        re.IGNORECASE,
    ),
    regex(
        r"(?:^|[.?!;,:]\s*|\b(?:a|the|my|our)\s)(?P<new>[^.?!;,]{3,30}?)\s(?:replaces|replaced)"
        r"\s(?P<old>(?:an?|the|my|our)\s[^.?!;,]{3,30})",
        re.IGNORECASE,
    ),
    regex(
        rf"{FIRST}(?P<old>{DONE}{{3,80}}?){THEN}(?:replaced|swapped|changed|exchanged)\s(?:it|them|both|that|her)"
        rf"(?:\s\w+){{0,2}}?\s(?:with|for|by|to|against)\s{NEW}",
        re.IGNORECASE,
    ),
    regex(
        rf"{FIRST}(?P<old>{DONE}{{0,60}}\b{ENDED}\b{DONE}{{0,25}}?){THEN}"
        r"(?:fitted|put in|got|bought|installed)\s(?P<new>(?:an?\s)?(?:brand[- ])?new\s[^.?!;,]{3,40})",
        re.IGNORECASE,
    ),
)
WISHED = regex(r"\b(?:should|shall|can|could|may|must|want|wish|thinking|plan\w*|going) (?:\w+ ){0,3}$", re.IGNORECASE)
ANOTHERS = regex(r"\b(?:he|she|they|neighbou?r|friend|brother|mate) (?:has |have |had |just )*$", re.IGNORECASE)
MINE = regex(r"\b(?:i (?:have|own|use|got)|my|mine|our|ours|we have)\b", re.IGNORECASE)
TURNED = frozenset(
    (
        *("battery.capacity", "battery.cca", "battery.ca", "battery.chemistry", "battery.reserve"),
        *("charger.current", "alternator.current"),
    )
)


def new_ones(text: str, stated: Sequence[Stated]) -> list[Stated]:
    """The facts of a message without those of what was changed for another one, where the new one has its own."""
    if SPOKEN.search(text) is None:
        return list(stated)
    found = next((match for words in CHANGED if (match := words.search(text))), None)
    if found is None or WISHED.search(text[: found.start()]):
        return list(stated)
    old, new = found.span("old"), found.span("new")
    told = {item.fact for item in stated if _in(item, new)} & TURNED
    anothers = ANOTHERS.search(text[: found.start()]) and MINE.search(text[found.end() :])
    gone = [item for item in stated if item.fact in told and (_in(item, old) or (anothers and _in(item, new)))]
    lost = {item.fact for item in gone}
    kept = [item for item in stated if item not in gone]
    first = {item.fact for item in kept if item.of == 1}
    return [replace(item, of=1) if item.fact in lost - first and item.of == 2 else item for item in kept]


SWAPS = regex(
    r"\b(?:chang|swap|replac|upgrad|exchang|trad|switch|mov|go|going|went|step)\w*\b[^.?!;]{0,25}$", re.IGNORECASE
)
FOR_IT = regex(
    r"^ ?(?:for|to|with|by|into|against)(?: (?:an?|the|my|our|new|bigger|larger|stronger))* $", re.IGNORECASE
)
IN_PLACE = regex(
    r"^ ?(?:(?:comes |goes |fitted |put )?in (?:the )?place of|instead of|replaces|replaced|replacing)"
    r"(?: (?:an?|the|my|our|old|present))* $",
    re.IGNORECASE,
)


def new_model(text: str, stated: Sequence[Stated]) -> list[Stated]:
    """The facts without the thruster that goes, where another one comes in its place or is to: what is asked is asked
    of the new one."""
    models = sorted((item for item in stated if item.fact == "load.model"), key=lambda item: item.span)
    if len(models) != 2 or models[0].value == models[1].value:
        return list(stated)
    first, second = models
    between = text[first.span[1] : second.span[0]]
    comes = FOR_IT.search(between) and SWAPS.search(text[: first.span[0]])
    if not comes and not IN_PLACE.search(between):
        return list(stated)
    new, gone = (second, first) if comes else (first, second)
    return [replace(item, of=1) if item is new else item for item in stated if item is not gone]


def _in(item: Stated, span: Span) -> bool:
    return span[0] <= item.span[0] < span[1]
