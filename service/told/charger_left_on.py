"""Whether a charger stays on: not where the battery is taken off, nor where it is only for a charge in between.

Also the two ways through a winter between which is chosen: "leave it on, or take it home?".
"""

from __future__ import annotations

import re

from grammar.text.patterns import regex

LEADS = r"(?:cables?|leads?|wires?|clamps?|clips?|terminals?|everything|all of it|the lot)"
OFF = regex(  # told, not asked
    r"\b(?:disconnected|unplugged|unhooked|uncoupled)\b"
    rf"|\b{LEADS}\W+(?:(?:are|is|were|was|all|now)\W+)*(?:taken |removed|off\b)"
    rf"|\b(?:took|taken|pulled|lifted)\b[^.?!;]{{0,30}}\boff\b|\boff (?:the|its|their|all) (?:leads?|cables?|charger)\b"
    r"|\bcharger (?:is |was )?(?:now )?(?:off|away|unplugged|removed|gone|switched off)\b",
    re.IGNORECASE,
)
NONE_ON = regex(  # "seven months, no charger", "left over winter without a charger", "unplugged from any charger"
    r"\b(?:no|without(?: (?:an?|any|the|my|its))?|not on (?:an?|any|the)|unplugged from (?:an?|any|the|its)"
    r"|off (?:an?|any|the|its)) (?:\w+ )?(?:charger|charging|maintainer|tender)\b"
    r"(?! (?:is |was )?(?:left|needed|required|necessary|light|fault))",
    re.IGNORECASE,
)
A_CHARGER = regex(r"\b(?:charger|charging|maintainer|tender|on charge|plugged in)\b", re.IGNORECASE)
STAYS = regex(
    r"\b(?:leav|keep|left|kept|stay|remain)\w*\b[^.?!;]{0,60}\b(?:charger|charging|plugged in|on charge|on float)\b"
    r"|\bcharger\b[^.?!;]{0,40}\b(?:stays?|remains?|left on|kept on|still on|on all|be on)\b",
    re.IGNORECASE,
)
ASKED = regex(  # "can the charger stay on all week?", "do I leave it plugged in"
    r"\b(?:can|may|could|should|shall|must|do|does|would|is|okay?|safe|fine|all ?right)\b[^.?!;]{0,60}"
    r"(?:\b(?:charger|it|that|this|one|unit)\b[^.?!;]{0,40}\b(?:stay|stays|remain|be left|be kept)\b[^.?!;]{0,12}"
    r"\b(?:on|plugged|connected|in|running)\b"
    r"|\b(?:leav|keep)(?:e|ing)?\b(?!\W+(?:it|them) (?:out|off|aboard))[^.?!;]{0,60}"
    r"\b(?:on|plugged(?: in)?|connected|hooked up|humming)\b"
    r"(?! (?:the |that |its )?(?:\w+ )?(?:setting|position|mode|programme)))",
    re.IGNORECASE,
)
CHARGER = regex(r"\bcharg(?:er|ing|e)\b|\bmaintainer\b|\btender\b", re.IGNORECASE)
SIZED = regex(r"\b(?:big|small|large|strong|enough|right|size|suits?|too (?:much|little)|how many amps)\b", re.I)
SIZE_ASKED = regex(rf"{SIZED.pattern}|\b(?:which|what|need an?)\b[^.?!;]{{0,30}}\bcharger\b", re.IGNORECASE)
APART = regex(r"(?:[.?!;](?: and| also)?|\b(?:and|also|then))$", re.IGNORECASE)  # a question of its own
FLOATS = regex(
    r"(?<!never )\b(?:goes|drops|switches|falls|changes)(?: itself| back| down| over)* (?:in)?to (?:a )?"
    r"(?:float|storage|maintenance)\b",
    re.IGNORECASE,
)
BETWEEN = regex(
    r"\bcharg(?:er|e|ed|ing)\b[^.?!;]{0,20}\b(?:in[- ]between|between times|meanwhile|now and then|from time to time"
    r"|half ?way|mid-?winter|along the way)\b",
    re.IGNORECASE,
)
WHO = regex(
    r"\bwho(?:['’]s| is| of (?:us|them))?\b[^.?!;]{0,24}\b(?:right|correct|listen|believe|trust|follow)\b"
    r"|\bwhich of (?:us|them|the two)\b[^.?!;]{0,12}\b(?:right|correct)\b",
    re.IGNORECASE,
)
UNPLUG = regex(r"\b(?:unplug|disconnect|take it off|off the charger|cables off|leads off)\w*\b", re.IGNORECASE)
TAKEN = regex(  # "carry them home and charge every two months"
    r"\b(?:tak|carry|bring|fetch|lug|stor|unplug|disconnect|charg|top)\w*\b[^.?!;]{0,60}"
    r"\b(?:every|once an?|each|now and then|from time to time|(?:week|month)ly)\b",
    re.IGNORECASE,
)
BY_THE_CHARGER = regex(r"\b(?:leav|keep|left|kept|stay|let|hav)\w*\b[^.?!;]{0,90}\bcharger\b", re.IGNORECASE)
OR = regex(r"\bor\b|\bversus\b|\bvs\b|\binstead of\b|\brather than\b|\bthan\b", re.IGNORECASE)
INSTEAD = regex(r"\bwhat\b[^.?!;]{0,30}\binstead\b|^\W*(?:ok |so |and |well )*what (?:then|now)\b", re.IGNORECASE)
KINDS = ("detail:unregulated", "detail:no_float", "detail:never_drops", "detail:regulated")  # of a charger, unnamed
PLAIN = ("timer", "trickle")  # chargers that must not stay on
BESIDE = "charger-setting"  # the topic that judges the charger


def two_ways(text: str) -> bool:
    """Whether two differ on leaving a charger on or taking it off, and it is asked which of them is right.

    >>> two_ways("She says leave it on the charger, he says charge it full and unplug it. Who is right?")
    True
    """
    return all(pattern.search(text) for pattern in (WHO, STAYS, UNPLUG))


def asked(text: str) -> bool:
    """Whether it is asked if a charger may stay on, and nothing of its size.

    >>> asked("Can the 40 amp charger stay on all week while he is away"), asked("may I leave the 10 A charger on?")
    (True, True)
    >>> asked("40 amp charger for 220 Ah, is it the right size?"), asked("do I leave the battery aboard?")
    (False, False)
    >>> asked("can I swap to lithium and keep the same charger"), asked("may I leave the charger on the gel setting?")
    (False, False)
    """
    found = ASKED.search(text)
    return found is not None and CHARGER.search(text) is not None and SIZED.search(text) is None


def asked_of_it(text: str) -> bool:
    """Whether it is asked if something may stay on that was spoken of before.

    >>> asked_of_it("and can I leave it on afterwards?"), asked_of_it("and how long?")
    (True, False)
    """
    return ASKED.search(text) is not None and SIZED.search(text) is None


def instead(text: str) -> bool:
    """Whether it is asked what to do in the place of leaving it on.

    >>> instead("fine, so what would you do instead"), instead("what then?"), instead("what do I do when it is full?")
    (True, True, False)
    """
    return INSTEAD.search(text) is not None


def asked_beside_its_size(text: str) -> bool:
    """Whether it is asked if a charger may stay on, and in a question before it how big it must be.

    >>> asked_beside_its_size("How many amps should the charger be for 110 Ah? And can I leave it connected?")
    True
    >>> asked_beside_its_size("is a 10 A charger big enough to stay on all week")
    False
    """
    found = ASKED.search(text)
    if found is None or CHARGER.search(text) is None or SIZED.search(text, found.start()):
        return False
    before = text[: found.start()].rstrip(" ,")
    return bool(SIZE_ASKED.search(before) and APART.search(before))


def floats(text: str) -> bool:
    """Whether a charger is told to go down to float: "it drops to float by itself".

    >>> floats("it goes to float by itself"), floats("it never drops to float"), floats("does it drop to float?")
    (True, False, False)
    """
    return FLOATS.search(text) is not None


def taken_off(text: str) -> bool:
    """Whether the battery stands disconnected, and nobody asks of leaving it on.

    >>> taken_off("charged them with his charger and took the cables off. Can I leave them like that?")
    True
    >>> taken_off("it is disconnected from the boat. Can I leave it on the charger?")
    False
    >>> taken_off("ok to leave it half a year, no charger?"), taken_off("no charger, or leave it on the charger?")
    (True, False)
    """
    if NONE_ON.search(text) and len(A_CHARGER.findall(text)) == 1:
        return True
    return OFF.search(text) is not None and STAYS.search(text) is None


def in_between(text: str) -> bool:
    """Whether a charger is spoken of for a charge in between: "does it need a charger in between"."""
    return BETWEEN.search(text) is not None and STAYS.search(text) is None


def or_taken_home(text: str) -> bool:
    """Whether a text weighs leaving a charger on against a charge now and then.

    >>> or_taken_home("leave it on a timer charger, or take it home and charge it every month?")
    True
    >>> or_taken_home("leave it on the charger and look every month?")
    False
    """
    stays, taken = BY_THE_CHARGER.search(text), TAKEN.search(text)
    if stays is None or taken is None:
        return False
    first, last = sorted((stays.span(), taken.span()))
    return OR.search(text, first[0], last[1]) is not None
