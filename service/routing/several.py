"""How many questions a message holds: what its words and marks show, and where a further topic stands beside the first.

Both are points of tables (service/routing/points): `questions.toml` tells from the words whether more than one thing is
asked, `several.toml` weighs that with how the topic compares with the first one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from grammar.reading import Message
from service.routing.asking import OPENERS

START = "start"  # what a table begins with
SECOND = 2
JOINTS = frozenset(["and", "also", "plus", "n", "+", "&", ",", "?", ".", "-", "/", "or", "but", "then"])
ENDS = ("^", "$")  # of a message, as words
FIGURE = "#"  # any number
MARKS = ("marks:", "asking:", "clauses:", "requests:", "length:")  # begin what is counted of a message


@dataclass(frozen=True, slots=True)
class Scale:
    """A number as a step of a table: so many points to a step, from the lowest step to the highest."""

    size: int
    low: int
    high: int

    def step(self, number: int) -> int:
        """The step that a number stands on."""
        return min(max(number // self.size, self.low), self.high)


MORE = Scale(5, -7, 7)  # points of the table of questions
TOTAL = Scale(5, -4, 8)  # points of the topic
FIRST = Scale(8, -2, 6)  # those of the first one
LEAD = Scale(4, 0, 8)  # over the next topic
GAP = Scale(6, 0, 8)  # under the first one
ALONE = Scale(6, 0, 7)  # what speaks for this topic alone
THERE = Scale(4, -2, 3)  # how the two compare in the clause of this one
CUT = Scale(5, -4, 9)  # what is gained when the message is cut between the two


@dataclass(frozen=True, slots=True)
class Several:
    """The tables: what speaks for more than one question, and what eases a second topic and those after it."""

    questions: Mapping[str, int]
    second: Mapping[str, int]
    third: Mapping[str, int]

    def shown(self, names: Iterable[str]) -> list[str]:
        """What the words and marks of a message (`forms`) show: the step of its questions, and what is counted."""
        names = list(names)
        return [f"more:{MORE.step(summed(self.questions, names))}", *(name for name in names if name.startswith(MARKS))]

    def ease(self, number: int, names: Iterable[str]) -> int:
        """The points of the topic that stands second, third and so on for what its message and its place show."""
        return summed(self.second if number == SECOND else self.third, names)


def summed(table: Mapping[str, int], names: Iterable[str]) -> int:
    """What a table begins with and the points of these names."""
    return table.get(START, 0) + sum(table.get(name, 0) for name in names)


def forms(message: Message) -> list[str]:
    """What tells how many questions a message holds: its marks, clauses, requests, words and pairs of words."""
    words = message.words
    asking = sum(item.asks for item in message.clauses)
    requests = len({cue.name for cue in message.cues if cue.name.startswith("request:")})
    counted = (min(words.count("?"), 3), min(asking, 4), min(len(message.clauses), 5), min(requests, 4))
    names = [f"{mark}{number}" for mark, number in zip(MARKS, (*counted, min(len(words) // 10, 6)), strict=True)]
    return list(dict.fromkeys([*names, *spoken(words)]))


def spoken(words: Sequence[str]) -> Iterator[str]:
    """The words with their ends, and each with the next: "and_what"; a joint before a word that opens a question."""
    plain = [ENDS[0], *(FIGURE if word[0].isdigit() else word for word in words), ENDS[1]]
    yield from plain[1:-1]
    for word, after in pairwise(plain):
        yield f"{word}_{after}"
        if word in JOINTS and after in OPENERS:
            yield f"anew:{word}"
