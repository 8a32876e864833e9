"""The questions of a message one by one: what each asks by itself, and which of them no answer speaks of."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from grammar.reading import Message, Span
from grammar.text.patterns import regex
from service import say
from service.routing.evidence import Sign
from service.routing.listed import ASKS, numbered, questions
from service.routing.tally import HAZARD, Tally, by_points, rows_of
from service.told import longest_run

APART = -20  # points of what is answered, in a question by itself, under which it is another one
OTHER = -15  # the same of one that is answered, as it is clear what it asks
IN_A_LIST = -10  # the same of a numbered item, which is a question of its own more surely
AT_HOME = 40  # points behind another topic from which a question is no longer that of this one
CLEAR = (0, 9)  # points of a topic, and those over the next one, from which a question by itself is clearly of it
LISTED = (0, 3)  # the same of a numbered item
OWN_THING = (-8, 4)  # and of one that names a thing which is named nowhere else
TWICE_TOLD = {"meaning": 8, "rating-convert": 8}  # points these want: what a word means is often told with an answer
ORDERS, ORDERED = "other-desk", (8, 20)  # points of a numbered item that is for the orders desk
NEVER = frozenset({"unclear", ORDERS, HAZARD})  # topics that no other part of a message is by itself
THINGS = frozenset(  # a question that alone names one of these is of that; batteries, boats and loads are in every one
    {
        *("thing:charger", "thing:dcdc", "thing:alternator", "thing:panel", "thing:fuse", "thing:bms"),
        *("thing:terminal", "thing:space", "thing:hydrometer", "thing:cable"),
    }
)
BY_CABLE = frozenset({"load-voltage", "voltage-drop", "cable-size", "fuse-size", "dc-dc"})  # these speak of cables
FEW = 3  # words of a numbered item under which "alright?" asks of the one before
LONGEST = 90  # characters of a question that is named again
NOT_ANSWERED = "We have not answered {parts} here: one of our technicians reads that too."
ENDS = regex(r"[.?!;](?!\d)|\n")
OF_A_VALUE = regex(r"\bdoes (?:that|it|this) (?:stand for|mean|tell)\b", re.IGNORECASE)  # asks of what was read
ITS_PLACE = regex(  # of a fuse spoken of before: its answer always tells it
    r"\W*(?:and |so )?where (?:does|do|should|must|would|will|shall|is|are|to|can)"
    r"(?: (?:it|that|this|one|they|those|i|we|you|the thing))?"
    r"(?: (?:go|sit|be|live|belong|put|fit|mount|place|fitted|mounted|placed|best|it|that|one))*\W*",
    re.IGNORECASE,
)
PLACED = frozenset({"thing:fuse", "thing:battery", "thing:charger", "thing:panel", "thing:space", "thing:dcdc"})
LEADING = regex(r"^\W*(?:(?:and|also|plus|then|but|secondly|thirdly|finally|lastly)\b\W*)*", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Question:
    """One question of a message: where it stands, and every topic by what it says alone, the best first."""

    span: Span
    ranking: Sequence[Tally]

    @property
    def topic(self) -> str:
        """What it asks by itself."""
        return self.ranking[0].topic

    def points(self, topics: Iterable[str]) -> int:
        """The points of the best of some topics."""
        names = set(topics)
        return max((item.total for item in self.ranking if item.topic in names), default=APART)


def asked_in(message: Message, signs: Iterable[Sign]) -> list[Tally]:
    """The topics by some signs of a message alone, the best first."""
    rows = [row for row in rows_of(message, signs) if row]
    return [item for item in by_points(rows or [{}]) if item.topic != HAZARD]


def one_by_one(message: Message, signs: Sequence[Sign]) -> list[Question]:
    """The questions of a message, where it asks more than one: halves of a sentence as well, ", and how long ...?"."""
    spans = questions(message.text)
    return [
        Question(span, asked_in(message, [sign for sign in signs if span[0] <= sign.at < span[1]])) for span in spans
    ]


def beside(asked: Sequence[Question], topics: Iterable[str]) -> Iterator[Question]:
    """The questions that none of these topics is asked in, each topic taken for the one that speaks most for it."""
    names = set(topics)
    best = {name: max(range(len(asked)), key=lambda at: (asked[at].points([name]), -at)) for name in names if asked}
    homes = {at for name, at in best.items() if asked[at].ranking[0].total - asked[at].points([name]) <= AT_HOME}
    yield from (one for at, one in enumerate(asked) if at not in homes and one.topic not in names)


def clear(message: Message, one: Question, topics: Iterable[str], whole: Sequence[Tally]) -> bool:
    """Whether a question that stands beside these topics asks its own clearly enough to be answered.

    What the rest of the message (`whole`, its ranking) says for it against the next one counts as well.
    """
    first, second = one.ranking[:2]
    own, in_a_list = _of_its_own(message, one.span, topics), bool(numbered(message.text))
    least, lead = LISTED if in_a_list else OWN_THING if own else CLEAR
    over = first.total - second.total
    if own and over > 0:
        over += max(_lead(whole, first.topic, second.topic), 0)
    if first.topic == "meaning" and OF_A_VALUE.search(message.text, *one.span):
        return False
    if first.topic == ORDERS and in_a_list:  # "3. can he have a discount"
        return first.total >= ORDERED[0] and over >= ORDERED[1]
    sure = first.total >= TWICE_TOLD.get(first.topic, least) and over >= lead
    answered = one.points(topics)
    other = answered <= (IN_A_LIST if in_a_list else OTHER) or first.total - answered > AT_HOME
    return sure and first.topic not in NEVER and other


def _lead(ranking: Iterable[Tally], one: str, other: str) -> int:
    """The points of one topic over another."""
    points = {item.topic: item.total for item in ranking}
    return points[one] - points[other]


def left_open(message: Message, signs: Sequence[Sign], topics: Iterable[str]) -> list[str]:
    """The questions, in their own words, that no answer of these topics speaks of.

    Of a list those that ask something else; of other messages those of a thing that only they name: "Anything to
    change on the charger?". A question without one may ask of the same thing again ("Will it come to harm?").
    """
    names, in_a_list = set(topics), bool(numbered(message.text))
    asked = one_by_one(message, signs)
    told = [LEADING.sub("", message.text[slice(*one.span)]).strip(" ,;:.\n") for one in asked]
    if not all(told):
        return []  # "(a) (b) (c)" with nothing behind them
    open_now = [one for one in beside(asked, names) if _is_open(message, one, names, in_a_list)]
    return [words for one, words in zip(asked, told, strict=True) if one in open_now]


def _is_open(message: Message, one: Question, topics: set[str], in_a_list: bool) -> bool:
    """Whether a question beside those that are answered is one of its own."""
    text = message.text[slice(*one.span)]
    told = {item.fact for item in message.stated}
    if "fuse-size" in topics and ITS_PLACE.fullmatch(text) and _last_thing(message, one.span[0]) == "thing:fuse":
        return False
    if "cable-size" in topics and longest_run.asked(text, told):
        return False
    if in_a_list:
        return one.points(topics) <= IN_A_LIST and bool(ASKS.search(text)) and len(text.split()) >= FEW
    own = one.topic not in NEVER and _of_its_own(message, one.span, topics)
    return own and one.points(topics) <= APART and _is_marked(message.text, one.span)


def _last_thing(message: Message, before: int) -> str:
    """What was named last, before a place, of all that has a place aboard."""
    named = [cue for cue in message.cues if cue.name in PLACED and cue.span[1] <= before]
    return max(named, key=lambda cue: cue.span).name if named else ""


def _is_marked(text: str, span: Span) -> bool:
    """Whether the sentence that a question ends in ends with a question mark."""
    end = ENDS.search(text, span[1] - 1)
    return end is not None and end[0] == "?"


def told_of(parts: Sequence[str]) -> str | None:
    """The sentence that names the questions left open."""
    named = [f'"{textwrap.shorten(part, LONGEST, placeholder=" ...")}"' for part in parts]
    return NOT_ANSWERED.format(parts=say.listed(named)) if named else None


def _of_its_own(message: Message, span: Span, topics: Iterable[str]) -> bool:
    """Whether a thing is named in a stretch that is named nowhere else in the message, and that none of these topics
    speaks of."""
    of_cables = not BY_CABLE.isdisjoint(topics)
    things = [cue for cue in message.cues if cue.name in THINGS and not (of_cables and cue.name == "thing:cable")]
    inside = {cue.name for cue in things if span[0] <= cue.span[0] < span[1]}
    return bool(inside) and inside.isdisjoint(cue.name for cue in things if not span[0] <= cue.span[0] < span[1])
