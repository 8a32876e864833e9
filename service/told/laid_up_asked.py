"""What is asked of a battery that is laid up: whether it comes off, what it will read, whether it wants a charge."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

SWITCH = r"(?:isolator|isolation switch|battery switch|main switch|master switch|battery isolator)"
ASKS = r"\b(?:do|does|should|shall|must|need|needs|have|has|ought|better|best|necessary|required)\b"
WITHIN = r"(?:(?!\b(?:if|when|once|after|before|without|how|charger|shore)\b)[^.?!;]){0,40}?"
TAKEN = (
    r"\b(?:disconnect(?:ed|ing)?|isolate[d]?|unhook(?:ed)?"
    rf"|(?:switch|turn)(?:ed)? (?:(?:it|them|the|battery|{SWITCH}) )*off|{SWITCH}(?: be| to be)? off"
    r"|(?:take|taking|pull) (?:the |its |both )*(?:leads|cables|wires|clamps) off)\b"
)
COMES_OFF = regex(
    rf"{ASKS}{WITHIN}{TAKEN}(?! (?:first|last)\b)(?![^.?!;]{{0,25}}\b(?:charger|shore|first)\b)"
    rf"|\b{SWITCH} (?:be |to be )?off\b[^.?!;]{{0,30}}(?:\?|\byes or no\b)",
    re.IGNORECASE,
)
HOW = regex(r"\b(?:how|when|why|where|which|who)\b[^.?!;]{0,12}$", re.IGNORECASE)
OF_A_SWITCH = regex(rf"\b{SWITCH}", re.IGNORECASE)
WILL_READ = regex(
    r"\bwhat (?:will|would|should|might|can)\b[^.?!;]{0,30}\b(?:read|show|be at|find|see|measure|say)\b"
    r"|(?<!at )\bwhat (?:voltage|volts|reading)\b(?![^.?!;]{0,30}\b(?:charg\w*|top|go|come)\b)",
    re.IGNORECASE,
)
OR_STAYS = regex(
    r"\bor (?:do (?:i|we) )?(?:leave|leaving|keep|keeping|let|stay)\b|\bor (?:left|kept|on)\b", re.IGNORECASE
)
IN_BETWEEN = regex(
    rf"{ASKS}[^.?!;]{{0,25}}\b(?:charg(?:e|ed|ing)|top(?:ped|ping)?[ -]?up|boost(?:ed|ing)?)\b[^.?!;]{{0,30}}"
    r"\b(?:middle of|mid-?winter|during|half ?way|over the winter|all winter)\b",
    re.IGNORECASE,
)
ABOARD = (
    r"(?:(?:can |may )?(?:it )?(?:stays?|staying|left|leave|leaving|remain|keep|keeping) )?(?:it |them )?"
    r"(?:aboard|on (?:board|the boat)|in the boat|there)"
)
ASHORE = (
    r"(?:(?:ashore|home|indoors)|(?:come|comes|taken?) (?:it |them )?off|off the boat"
    r"|(?:to|in) the (?:shed|garage|house))"
)
WHERE = regex(
    rf"\b{ASHORE}\b[^.?!;]{{0,24}}\bor\b[^.?!;]{{0,16}}\b{ABOARD}\b"
    rf"|\b{ABOARD}\b[^.?!;]{{0,24}}\bor\b[^.?!;]{{0,16}}\b{ASHORE}\b",
    re.IGNORECASE,
)
STAYS = regex(
    r"\b(?:not|won['’]?t|don['’]?t|cannot|can['’]?t|rather not)\b[^.?!;]{0,24}"
    r"\b(?:tak|carr|lift|remov|bring|haul)\w*\b[^.?!;]{0,14}\b(?:off|out|home|ashore)\b",
    re.IGNORECASE,
)


def comes_off(text: str) -> bool:
    """Whether it is asked if the battery is to be disconnected or its switch turned off.

    >>> comes_off("do I disconnect it for winter?"), comes_off("the isolator off for winter, yes or no?")
    (True, True)
    >>> comes_off("how do I disconnect it?"), comes_off("do I take minus off first when I disconnect it?")
    (False, False)
    """
    found = COMES_OFF.search(text)
    return found is not None and HOW.search(text, 0, found.start()) is None


def or_stays_on(text: str) -> bool:
    """Whether leaving it connected is weighed, so that a yes would name neither."""
    return OR_STAYS.search(text) is not None


def of_a_switch(text: str) -> bool:
    """Whether a battery switch is spoken of."""
    return OF_A_SWITCH.search(text) is not None


def will_read(text: str) -> bool:
    """Whether it is asked what a meter will show at the end.

    >>> will_read("what will it read in spring?"), will_read("at what voltage should I charge it?")
    (True, False)
    """
    return WILL_READ.search(text) is not None


def in_between(text: str) -> bool:
    """Whether it is asked if it wants a charge in the middle of the winter.

    >>> in_between("must I charge in the middle of winter?"), in_between("must I charge it full first?")
    (True, False)
    >>> in_between("do they want topping up half way?"), in_between("must I top up the water?")
    (True, False)
    """
    return IN_BETWEEN.search(text) is not None


def where(text: str) -> bool:
    """Whether it is asked if the battery is laid up ashore or aboard.

    >>> where("Take it ashore or leave it aboard?"), where("home for the winter or can it stay on the boat?")
    (True, True)
    >>> where("leave it aboard and look at it in spring?"), where("charge it aboard or at home?")
    (False, True)
    """
    return WHERE.search(text) is not None


def stays_aboard(text: str) -> bool:
    """Whether the battery is not to be taken off the boat.

    >>> stays_aboard("not going to take them off the boat"), stays_aboard("shall I take it home?")
    (True, False)
    """
    return STAYS.search(text) is not None
