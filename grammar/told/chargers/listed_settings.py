"""The settings that a charger lists, and the kind of battery that is told beside them: "1 gel, 2 agm, 3 wet. Mine are
agm." What is listed is neither the battery nor where the switch stands."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from grammar.reading import Span, Stated
from grammar.text.patterns import regex

KIND, SETTING = "battery.chemistry", "charger.setting"
FULL_LIST = 3  # kinds: more than a choice of two
IN_A_LIST = frozenset({KIND, SETTING, "battery.count", "charger.outputs", "bank.count"})
WORDS = {
    **{"wet": "flooded", "flooded": "flooded", "agm": "agm", "gel": "gel"},
    **dict.fromkeys(("lithium", "lifepo4", "lfp", "li", "lith"), "lfp"),
}
NAMES = "|".join(WORDS)
MORE = (
    r"calcium|std|standard|normal|sealed|vrla|eq(?:uali[sz]\w*)?|boost|winter|cold|supply"  # on a switch, and no kind
)
QUOTE = "[\"'“”‘’]?"
PLACE = r"(?:(?:\d|[a-h]) ?[=.:)] ?|(?:\d|[b-h]|(?<=: )a) )?"  # "1 = gel", "B AGM"; "a gel" has its article
VOLTS = r"(?: (?:is|at|says|gives|has))?(?: ?[=:(]? ?1[2-6][.,]\d{1,2}(?: ?v(?:olts?)?)?\)?)?"
ONE = rf"{PLACE}(?:an? |the )?{QUOTE}\b(?:{NAMES}|{MORE})(?: ?[1-3](?! ?[=.:)]))?\b{QUOTE}{VOLTS}"
LISTED = regex(
    rf"\b{ONE}(?:(?:,? (?:and|or)(?: (?:on|for|to|at))? |, ?|; ?| ?/ ?| ?& ?| ?[|·–-] ?| ){ONE})+", re.IGNORECASE
)
LISTED_NAMES = regex(rf"\b(?P<name>{NAMES})[1-3]?\b", re.IGNORECASE)  # "AGM1" and "AGM2"
NO_KIND = r"(?:std|standard|normal)\b"
PLAIN = regex(  # a position that names no kind beside one that does: "AGM and Std", no "normal AGM"
    rf"(?:\b(?:and|or)|[,;/&]) ?(?:an? |the )?{QUOTE}{NO_KIND}|\b{NO_KIND}{QUOTE}(?:,? (?:and|or)\b| ?[,;/&])",
    re.IGNORECASE,
)
OFFERS = regex(
    r"\b(?:switch|toggle|jumper|bridge|slider|can be (?:put|set|turned|switched))\b"
    r"|\b(?:selector|dial|knob|buttons?|settings?|positions?|modes?|programm?e?s?)\b"
    r"|\bcharger(?:'?s)? (?:\w+ )?(?:has|have|have got|offers|gives|does|with|says|shows|lists|reads)\b",
    re.IGNORECASE,
)
OWN = regex(
    r"\b(?:my|our|his|her|have(?: got)?|got"
    r"|(?:batter(?:y|ies)|mine|ours|bank|it|they)(?: is| are|['’]s|['’]re)(?: all| both| an?)?)"
    rf" (?:an? )?(?:\d+ ?(?:ah|v) )?(?P<after>{NAMES})\b(?! (?:setting|mode|position|programme|one\b))"
    rf"|\b(?P<before>{NAMES}) (?:batter(?:y|ies)|bank)\b|\ban? \d+ ?ah (?P<sized>{NAMES})\b",
    re.IGNORECASE,
)
ENDS = regex(r"[.?!;](?= |$)")
OF_BATTERIES = regex(
    r"(?<!switch )(?<!selector )(?<!knob )(?<!jumper )(?<!bridge )(?<!toggle )(?<!link )(?<!put )"
    r"(?<!set )(?<!turned )(?<!switched )\b(?:for|of|on):?,? (?:an? |my |both |each of )?[\"'“‘]?$",
    re.IGNORECASE,
)


def rows(text: str) -> Iterator[Span]:
    """The stretches in which two settings and more are listed, where a charger's settings are spoken of."""
    if not OFFERS.search(text):
        return
    for found in LISTED.finditer(text):
        kinds = _kinds(text, found.span())
        if (len(kinds) > 1 or (kinds and PLAIN.search(found[0]))) and not OF_BATTERIES.search(text[: found.start()]):
            yield found.span()


def beside_the_list(text: str, stated: Sequence[Stated]) -> list[Stated]:
    """The facts of a message with the kind that is told apart from the listed settings as the battery's."""
    spans = tuple(span for span in rows(text) if _is_offered(text, span))
    own = next((found for found in OWN.finditer(text) if spans and not _in(found.span(), spans)), None)
    if own is None:
        return _told_apart(text, stated, spans)
    name = next(key for key, typed in own.groupdict().items() if typed)
    kept = [item for item in stated if not (item.fact in IN_A_LIST and _in(item.span, spans))]
    kept = [item for item in kept if not (item.fact == SETTING and item.span == own.span(name))]
    if any(item.fact == KIND for item in kept):
        first = any(item.fact == KIND and item.of == 1 for item in kept)
        return kept if first else [replace(item, of=1) if item.fact == KIND else item for item in kept]
    return [*kept, Stated(KIND, WORDS[own[name].lower()], "", own[name], own.span(name), how="token")]


def _kinds(text: str, span: Span) -> set[str]:
    """The kinds that are named in a stretch."""
    return {WORDS[word] for word in LISTED_NAMES.findall(text[slice(*span)].lower())}


def _told_apart(text: str, stated: Sequence[Stated], spans: Sequence[Span]) -> list[Stated]:
    """The facts without the listed kinds, where the battery's is told in words that no list has: "with caps"."""
    kinds = [item for item in stated if item.fact == KIND]
    apart = [item for item in kinds if not _in(item.span, spans)]
    if not apart and any(len(_kinds(text, span)) >= FULL_LIST for span in spans):  # "Wet - AGM - Gel - Li"
        return [item for item in stated if item not in kinds]
    if len(apart) != 1:
        return list(stated)
    stated = [item for item in stated if item.fact != SETTING or not _in(item.span, spans)]
    if len(kinds) == 1:
        return stated
    return [replace(item, of=1) if item in apart else item for item in stated if item not in kinds or item in apart]


def place_of(text: str, kind: str) -> str:
    """The number or letter under which a kind stands in a list of settings; "" where it has none.

    >>> place_of("a switch: 1 gel, 2 agm, 3 wet", "agm"), place_of("settings gel, agm", "agm")
    ('2', '')
    """
    names = "|".join(word for word, meant in WORDS.items() if meant == kind)
    place = regex(
        rf"\b(?:(?P<marked>\d|[a-h]) ?[=.:)] ?|(?P<bare>\d|[b-h]|(?<=: )a) ){QUOTE}(?:{names})\b", re.IGNORECASE
    )
    found = next((hit for start, end in rows(text) for hit in place.finditer(text, start, end)), None)
    return str(found["marked"] or found["bare"]).upper() if found else ""


def _is_offered(text: str, span: Span) -> bool:
    """Whether a list is told as a charger's in its own sentence, and no choice of batteries: "gel or AGM?"."""
    start = max((found.end() for found in ENDS.finditer(text, 0, span[0])), default=0)
    last = ENDS.search(text, span[1])
    sentence = text[start : last.start() if last else len(text)]
    return OFFERS.search(sentence) is not None and not text[span[1] :].lstrip().startswith("?")


def _in(span: Span, spans: Sequence[Span]) -> bool:
    return any(start <= span[0] < end for start, end in spans)
