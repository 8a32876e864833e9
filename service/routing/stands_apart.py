"""Parts of a short message that ask another thing than what was found: "12.4, fresh enough? ten second goes how many".

A part begins behind the end of a sentence, behind a dash or a slash, or with a joint that opens a question of its own
("plus will it", ", and at 14.1 V is it"). It counts where its own words leave no doubt, and those of no answer speak
for it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence, Set
from itertools import pairwise

from grammar.reading import Message, Span
from grammar.text.patterns import regex
from service.routing.evidence import Sign
from service.routing.listed import ELLIPTIC
from service.routing.one_by_one import NEVER, asked_in
from service.routing.tally import Tally
from service.topic import CIRCUIT

ENDS = regex(r"[.?!;]+(?!\w)\s*|\n+|\s[/–—-]+\s")
JOINTS = regex(
    r",?\s+(?:oh and|and also|also|and|plus|n|&|\+|then)\s+(?=(?:also |then |if so )?"
    r"(?:what|whats|wots?|which|how|can|could|does|do|is|are|will|would|should|may|must|where|when|why|who|have|has|am"
    r"|did|shall|if|at|for|with|on|in|my|the|it|our|to)\b)",
    re.IGNORECASE,
)
OPENS = regex(
    r"\W*(?:(?:oh|and|also|plus|then|but|so|n|second(?:ly)?|next|last(?:ly)?|finally)\W+)*"
    r"(?:(?:with|at|in|on|for|if)\b[^,.?!;]{0,40},? )?"
    r"(?:what|whats|wots?|which|how|can|could|does|do|is|are|will|would|should|may|must|where|when|why|who|shall)\b",
    re.IGNORECASE,
)
WITHIN = regex(  # "going in when do I unplug", "lithium would take off what": not "the day when we bought her"
    r"\b(?:what|which|how|when|where|why|wot)\b"
    r"(?: (?:do|does|is|are|can|should|will|would|much|many|long|far|big|often|full)\b|(?<!or what)\W*$)"
    r"|\bwhats? that in\b|\b(?:wonder\w*|wanna|(?:s?he|wife|owner|boss) asks)\b"
    r"|\bso (?:is|are|does|do|can|will|would|should) (?:it|they|she|he|that|i|we|the)\b"
    r"|\bor (?:an? |just )?(?:single|both|not|no|upright)\b|\b(?:doubtful|not convinced|true or \w+)\b"
    r"|\b(?:that|it|this|they)(?:['’]?(?:s|re))? (?:al?right|all right|ok(?:ay)?|fine|good|normal|plenty|enough)\W*$",
    re.IGNORECASE,
)
OF_THE_SAME = regex(  # "and if it won't, which size would?"
    r"\W*(?:(?:and|or|but) )?(?:if (?:it|they|that|this|not|so|no)\b|otherwise\b|else\b)", re.IGNORECASE
)
POINTS_BACK = regex(r"\b(?:it|that|this|they|them|those|these|ones?|if not|if so|else)\b", re.IGNORECASE)
FIGURE = regex(r"\d")
WORDS = regex(r"\w+")
ANNOUNCED = regex(  # "my other worry: they stand under the bunk"
    r"(?:^|[.?!;\n–-]\s*|\band )(?:(?:my|our|the|his|her|one|an?) )?(?:other|second|next|further|third|last|final|more)"
    r" (?:thing|query|question|worry|doubt|itch|point|matter|concern|issue|headache|puzzle)\b",
    re.IGNORECASE,
)
SAID = (-8, 6, 6)  # points of what is announced as another question, those over the next, and over what was found
FEW = 5  # words of a part without a figure under which it asks of the one before: "and how big"
SHORTEST, LONGEST = 6, 500  # characters of a part, and of a message that is cut
MOST = 8  # parts
FOUND = 2  # topics beside which a message may ask one more
BACK, BACK_OVER = 12, 28  # points of a part that points back, and those over the topics found
SURE, AT_HOME = 8, 4  # points of a part's topic, and where every topic found has a part of its own that asks
LEAD, OVER = 12, 20  # over the next one, and over those found
TOLD = frozenset({"meaning", "battery-type"})  # what words of a part often tell of another question
NEVER_BESIDE = (  # a topic that only tells of one of those
    ("charger-size", frozenset({"ventilation"})),
    ("rating-convert", CIRCUIT),
    ("charger-setting", frozenset({"dc-dc"})),
    ("cold-cranking", frozenset({"meaning"})),
    ("bank-wiring", frozenset({"bank-size"})),
    ("replacement", frozenset({"charger-banks", "charger-size", "charge-time"})),  # "do I chuck it": the charger
)


def parts(text: str) -> list[Span]:
    """The parts of a message between the ends of its sentences and its joints; none of a long one.

    >>> [text[slice(*part)] for text in ["12.4 ok? plus what fuse for 2/0"] for part in parts(text)]
    ['12.4 ok? ', 'plus what fuse for 2/0']
    """
    if len(text) > LONGEST:
        return []
    ends = {item.end() for item in ENDS.finditer(text)} | {item.start() for item in JOINTS.finditer(text)}
    spans = pairwise(sorted({0, len(text), *ends}))
    found = [span for span in spans if len(text[slice(*span)].strip()) >= SHORTEST]
    return found if 1 < len(found) <= MOST else []


def stands_apart(message: Message, signs: Sequence[Sign], found: Set[str]) -> set[str]:
    """The topics of parts that ask clearly of another thing than those found."""
    if not found or len(found) > FOUND or found & NEVER:
        return set()
    if said := _announced(message, signs, found):
        return said
    spans = [span for span in parts(message.text) if asks(message.text[slice(*span)])]
    ranked = [(span, asked_in(message, [sign for sign in signs if span[0] <= sign.at < span[1]])) for span in spans]
    at_home = found <= {ranking[0].topic for _, ranking in ranked}
    alone = (AT_HOME if at_home else SURE, OVER)
    return {
        ranking[0].topic
        for span, ranking in ranked
        if _clear(ranking, found, *(alone if of_its_own(message.text[slice(*span)]) else (BACK, BACK_OVER)))
    }


def _announced(message: Message, signs: Sequence[Sign], found: Set[str]) -> set[str]:
    """What the last part asks that is announced as another question: "my second worry, the locker is shut"."""
    marks = [item.end() for item in ANNOUNCED.finditer(message.text, 1)] if len(message.text) <= LONGEST else []
    if not marks:
        return set()
    ranking = asked_in(message, [sign for sign in signs if sign.at >= marks[-1]])
    return {ranking[0].topic} if _clear(ranking, found, *SAID) else set()


def asks(part: str) -> bool:
    """Whether a part asks, with a mark or without one, and not the question before once more: "and at -18?"."""
    if ELLIPTIC.fullmatch(part) or OF_THE_SAME.match(part):
        return False
    return part.rstrip().endswith("?") or any(sign(part) for sign in (OPENS.match, WITHIN.search))


def of_its_own(part: str) -> bool:
    """Whether a part holds all that it asks of: a figure, or words enough that do not point back."""
    enough = len(WORDS.findall(part)) >= FEW and not POINTS_BACK.search(part)
    return enough or FIGURE.search(part) is not None


def _clear(ranking: Sequence[Tally], found: Set[str], least: int, over: int, lead: int = LEAD) -> bool:
    """Whether the words of a part speak for one topic beside those found, and for none of those."""
    first, second = ranking[:2]
    others = max((item.total for item in ranking if item.topic in found), default=least)
    beside = any(first.topic == topic and found & told_by for topic, told_by in NEVER_BESIDE)
    sure = first.total >= least and first.total - second.total >= lead and first.total - others >= over
    return sure and not beside and first.topic not in found | NEVER | TOLD
