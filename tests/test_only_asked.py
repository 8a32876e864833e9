"""Messages that say what they only ask, and an age that is told on the way: nothing else takes over."""

from __future__ import annotations

import pytest

from service.routing.only_asked import marked
from tests.talks import talk


@pytest.mark.parametrize(
    ("text", "topic", "verdict"),
    [
        ("the propane locker is beside the battery, all tight. Just asking if a 12 A charger is enough for 100 Ah wet",
         "charger-size", "yes"),
        ("battery stands under the bunk, nothing wrong there, only wondering whether 12.7 is good for an AGM",
         "rest-voltage", "yes"),
        ("it lies on its side on the trailer, I only want to know how long 110 Ah runs a fridge at 4 A",
         "run-time", "information"),
        ("just asking what fuse for a Minnow on 2 AWG, the petrol tank is next door", "fuse-size", "information"),
    ],
)  # fmt: skip
def test_what_is_told_beside_the_one_question_is_not_answered(text, topic, verdict):
    assert [(item.topic, item.verdict) for item in talk(text).answers] == [(topic, verdict)]


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("15 W of panel enough for a 0.04 A alarm drain, otherwise how big?", ["solar"]),
        ("would a 12 A charger be enuff for 140 Ah of wet, if not what size?", ["charger-size"]),
        ("15 W of panel enough for a 0.04 A drain, and what size of battery for a 160 A thruster?",
         ["solar", "bank-size"]),
    ],
)  # fmt: skip
def test_else_what_size_is_of_the_thing_asked_of(text, topics):
    assert [item.topic for item in talk(text).answers] == topics


def test_gas_beside_a_charger_is_still_a_caution():
    (answer,) = talk("gas bottles stand next to it, just asking if a 12 A charger is enough for 100 Ah wet").answers
    assert "ignition-protected" in [item.id for item in answer.cautions]


@pytest.mark.parametrize(
    "text",
    [
        "may it lie on its side? also just wondering if a 12 A charger suits 100 Ah wet",
        "just asking",
        "is 12.4 good for an agm and what charger?",
    ],
)
def test_two_questions_stay_two(text):
    assert marked(text) is None


def test_a_danger_stands_whatever_is_only_asked():
    first, *_ = talk("the battery is swollen, just asking if a 10 A charger is enough for 100 Ah").answers
    assert first.verdict == "stop"


@pytest.mark.parametrize(
    ("turns", "topic"),
    [
        (("12.7 drops to 9.0 when I push the Minnow, why?", "at the posts, a 550 cca wet one, 4 years old"),
         "load-voltage"),
        (("is 12.4 good?", "it's an agm, 5 years old"), "rest-voltage"),
        (("what charger for my bank?", "110 Ah gel, 3 years old"), "charger-size"),
        (("is 12.4 good?", "it is 9 years old"), "replacement"),
        (("will it run a Minnow?", "700 cca, 6 years old, should I replace it?"), "replacement"),
    ],
)  # fmt: skip
def test_an_age_told_on_the_way_asks_nothing(turns, topic):
    assert [item.topic for item in talk(*turns).answers] == [topic]


@pytest.mark.parametrize("both", ["Please judge both.", "Your verdict on each, please.", "Both questions matter."])
def test_the_question_of_one_of_two_people_is_not_the_only_one(both):
    text = (
        "HER: the gel shows 12.5 V after a night of rest, which I call full. HIM: never mind that, the real question "
        f"is whether a 12 A charger suits 90 Ah. {both}"
    )
    assert {item.topic for item in talk(text).answers} == {"rest-voltage", "charger-size"}
    assert "rest-voltage" not in {item.topic for item in talk(text.removesuffix(both)).answers}
