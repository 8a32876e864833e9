"""Two who differ, and which of them is right: "he says it keeps up, I say it is a toy. Who is right?".

What each says of the thing makes them its friend or its foe; the verdict takes one side, and the headline names it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from grammar.reading import Message, Span
from grammar.text.patterns import regex
from service import say
from service.reply import Answer
from service.routing.request import Request
from service.topics.charger_size import KEEPS_FULL
from service.wording.claims import is_bad
from service.wording.summed import has_opening

PEOPLE = (
    "neighbour|neighbor|husband|wife|partner|yard|boatyard|surveyor|electrician|dealer|salesman|seller|shop|friend|mate"
    "|brother|father|dad|son|sister|mother|daughter|uncle|cousin|skipper|crew|mechanic|fitter|engineer|man|woman|lad"
    "|guy|bloke|chap|club|marina|builder|owner|instructor|buddy|boss|father-in-law|brother-in-law"
)
WHO = regex(
    r"\bwho(?:['’]s| is| was| has| do you)?\s+(?:got\s+|have\s+|has\s+)?(?:it\s+|think\s+is\s+|say\s+is\s+)?"
    r"(?P<way>right|correct|wrong|mistaken)\b|\bwhich of (?:us|them|the two) is (?P<of>right|correct|wrong)\b",
    re.IGNORECASE,
)
OR_ME = regex(  # "is the yard right or am I"
    rf"\b(?:is|are|was)\s+(?:(?:the|my|our)\s+)?(?:{PEOPLE}|he|she|they)\s+(?P<way>right|correct|wrong)?,?\s*or\s+"
    r"(?:am\s+i|are\s+we|is\s+it\s+me|me|i|we)\b",
    re.IGNORECASE,
)
IS_RIGHT = regex(  # "is the yard right"
    rf"\b(?:is|are|was|were)\s+(?P<who>(?:(?:the|my|our)\s+)?(?:{PEOPLE})|he|she|they)\s+"
    r"(?P<way>right|correct|wrong|mistaken)\b",
    re.IGNORECASE,
)
SAYS = (
    r"says?|said|reckons?|thinks?|thought|claims?|claimed|insists?|insisted|swears?|swore|believes?|holds?|maintains?"
    r"|argues?|argued|tells?\s+me|told\s+me|read|heard|am\s+sure|am\s+certain|is\s+sure|is\s+certain"
)
DOES = r"put|puts|fitted|installed|sold|chose|laid|used|recommends?|recommended|gave|wants?\s+to\s+fit"
PARTY = regex(
    rf"""\b(?P<who>(?:(?:the|my|our|a|an|his|her)\s+)?(?:{PEOPLE})|he|she|they|i|we|you)\b
         (?:\s+(?:on|at|of|from|in)\s+(?:the\s+|our\s+|my\s+)?\w+)?\s+(?:\w+ly\s+|has\s+|have\s+|had\s+|just\s+|still\s+)?
         (?:(?P<says>{SAYS})|(?P<does>{DOES}))\b
       | (?:^|(?<=[.;!?\n,])\s*)(?P<label>(?:(?:the|my)\s+)?(?:{PEOPLE})|me|i)\s*:\s""",
    re.IGNORECASE | re.VERBOSE,
)
END = regex(r"[.!?;\n](?=\s|$)")
RIGHT = ("right", "correct")
BOTH = "Both are right"  # as an answer has it itself
YOU = ("i", "we", "me")
PRONOUNS = ("he", "she", "they")
ANTECEDENT = regex(rf"\b(?:the|my|our|a|an|his|her)\s+(?P<who>{PEOPLE})\b", re.IGNORECASE)
SPEAKS_WELL = ("put:good", "request:enough", "detail:keeps_up")
WANTS_MORE = regex(r"\b(?:wants?|needs?|takes?|should be|must be|has to be|ought to be)\b", re.IGNORECASE)
TAKEN = regex(r"^Take (?P<thing>[^:]+): it ")
FIRST = regex(r"^(?:Yes|No|Only just|Just enough|Not yet|No, not yet)[^:]{0,30}: ")
MARKS = str.maketrans({"²": "2", say.NB: " "})


@dataclass(frozen=True, slots=True)
class Party:
    """One who holds something of the thing: the name in the headline, the stretch told of them, what they think."""

    name: str
    span: Span
    friend: bool | None  # of the thing that is told; None where it is not told


def taken(answer: Answer, message: Message, requests: Sequence[Request]) -> Answer | None:
    """The answer opened with the one who is right; None where none is asked for, or the verdict takes no side."""
    text = message.text
    if answer.headline.startswith(BOTH):
        return None
    which, asked = WHO.search(text) or OR_ME.search(text), IS_RIGHT.search(text)
    if len(requests) > 1 or not (which or asked) or answer.verdict not in ("yes", "marginal", "no"):
        return None
    parties = tuple(_parties(message))
    if len({party.name for party in parties}) < 2:
        return None
    right = [party.name for party in parties if _agrees(party, answer, text)]
    if len(set(right)) != 1:
        return None
    if which:
        wrong = (which.groupdict().get("way") or which.groupdict().get("of") or "right").lower() not in RIGHT
        others = {party.name for party in parties} - {right[0]}
        return _named(answer, others.pop(), "wrong") if wrong and len(others) == 1 else _named(answer, right[0])
    assert asked is not None
    theirs = _name(asked["who"], text, asked.start())
    agreed = (theirs == right[0]) == (asked["way"].lower() in RIGHT)
    return _opened(answer, "Yes" if agreed else "No")


def _parties(message: Message) -> Iterator[Party]:
    """Those who say or did something, each with what they think of it; of two the one who does not tell differs."""
    text = message.text
    found = list(PARTY.finditer(text))
    told = []
    for one, later in zip(found, [*(other.start() for other in found[1:]), len(text)], strict=False):
        end = END.search(text, one.end(), later)
        span = (one.end(), end.start() if end else later)
        who = one["who"] or one["label"]
        friend = True if one["does"] else _friend(message, span)
        told.append(Party(_name(who, text, one.start()), span, friend))
    known = {party.friend for party in told} - {None}
    for party in told:
        yield replace(party, friend=True not in known) if party.friend is None and len(known) == 1 else party


def _friend(message: Message, span: Span) -> bool | None:
    """Whether a stretch speaks well of the thing it tells of, or ill; None where it tells neither."""
    if is_bad(message, span):
        return False
    if any(message.says(cue, span) for cue in SPEAKS_WELL):
        return True
    return False if WANTS_MORE.search(message.text, *span) else None


def _name(who: str, text: str, at: int) -> str:
    """A party as the headline names it: "You", "The yard", "Your wife"; a pronoun by the person told before it."""
    who = who.lower()
    if who in YOU:
        return "You"
    if who in PRONOUNS:
        before = list(ANTECEDENT.finditer(text, 0, at))
        return _name(before[-1].group(), text, at) if before else say.capital(who)
    first, _, rest = who.rpartition(" ")
    return f"{'Your' if first in ('my', 'our') else 'The'} {rest}"


def _agrees(party: Party, answer: Answer, text: str) -> bool:
    """Whether the verdict takes a party's side: that on the size they name, where several are weighed."""
    said = text[slice(*party.span)].translate(MARKS).lower()
    own = [side.verdict for side in answer.compare if side.label.translate(MARKS).lower() in said]
    verdict = own[0] if len(own) == 1 and party.friend else answer.verdict
    too_small = verdict == "marginal" and KEEPS_FULL in answer.headline
    return party.friend is not None and party.friend == (verdict != "no" and not too_small)


def _named(answer: Answer, who: str, what: str = "right") -> Answer:
    """ "You are right: ..."; with little in hand, right only just."""
    first = f"{who} {'are' if who in ('You', 'They') else 'is'} {what}"
    only = " by little" if what == "wrong" else ", but only just"
    little = answer.verdict == "marginal" and KEEPS_FULL not in answer.headline
    return _opened(answer, f"{first}{only}" if little else first)


def _opened(answer: Answer, first: str) -> Answer:
    """The headline with this in place of its own first word."""
    head = TAKEN.sub(lambda found: f"{found['thing']} ", answer.headline)
    rest = FIRST.sub("", head) if has_opening(answer.headline) else head
    return replace(answer, headline=f"{first}: {rest}")
