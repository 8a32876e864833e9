"""Whether a message asks a further topic: its words, its marks and the place of the topic beside the first."""

from __future__ import annotations

import pytest

from grammar import read
from service.leadsman import default_desk
from service.routing.several import MARKS, MORE, SECOND, START, Scale, Several, forms, spoken
from service.routing.tally import table


def shown(text: str) -> int:
    """The step on which the questions of a message stand."""
    (more,) = (name for name in table().several.shown(forms(read(text))) if name.startswith("more:"))
    return int(more.removeprefix("more:"))


def test_words_stand_with_their_neighbours_and_numbers_are_alike() -> None:
    assert list(spoken(["is", "12.6", "ok", "?"])) == [
        *("is", "#", "ok", "?"),
        *("^_is", "is_#", "#_ok", "ok_?", "?_$"),
    ]
    assert "anew:and" in spoken(["fuse", "and", "which", "cable"])


def test_a_number_stands_on_a_step_between_the_ends() -> None:
    assert [Scale(5, -1, 2).step(number) for number in (-30, -1, 0, 4, 5, 11, 90)] == [-1, -1, 0, 0, 1, 2, 2]


@pytest.mark.parametrize(
    ("one", "two"),
    [
        ("Which fuse for 300 A?", "Which fuse for 300 A, and how thick must the cable be?"),
        ("Is 12.4 V at rest good?", "Is 12.4 V at rest good? Also, which charger should I buy?"),
        ("how long does a 20 A charger need for 100 Ah", "how long does a 20 A charger need and can I leave it on"),
    ],
)
def test_a_second_question_is_seen_by_its_words(one: str, two: str) -> None:
    assert shown(one) < shown(two)


def test_what_is_shown_and_where_a_topic_stands_add_up() -> None:
    several = Several({START: -4, "also": 9}, {START: -3, "more:1": 8}, {START: -6, "more:1": 8})
    names = several.shown(["also", "marks:2"])
    assert names == [f"more:{MORE.step(5)}", "marks:2"]
    assert (several.ease(SECOND, names), several.ease(SECOND + 1, names)) == (5, 2)


def test_what_is_counted_of_a_message_stands_first() -> None:
    counted = forms(read("Which fuse for 300 A? And which cable?"))[: len(MARKS)]
    assert [name.partition(":")[0] + ":" for name in counted] == list(MARKS)


def test_the_turn_before_alone_asks_nothing_beside_a_new_question() -> None:
    desk = default_desk()
    first = desk.ask("Will a 700 CCA AGM run a Pike?")
    assert [item.topic for item in desk.ask("Will it freeze at minus 20?", thread=first.thread).answers] == [
        "freeze-point"
    ]
