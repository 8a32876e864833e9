"""So much cable that is to be bought is no run: its price and delivery are the other desk's, and theirs alone."""

from __future__ import annotations

import pytest

from tests.talks import talk

RUN = "what cable for 260A 12V, 6 m each way?"


@pytest.mark.parametrize(
    "turns",
    [
        (RUN, "price for 20 m of 70mm2?"),
        (RUN, "what would 20 m of that cost"),
        (RUN, "ok, can I order 12 m of that from you"),
        (RUN, "quote for 12 m delivered"),
        ("drop on 70mm2, 8 m each way, 12V 260A?", "would 50 do?", "which is cheaper and when can you deliver 30 m"),
        ("what fuse for 2/0, 260 A?", "how much is 15 m of it"),
        ("do you have 15 m of 50 mm2 in stock",),
        ("how much is 50 ft of 1/0 cable and when can you ship it",),
    ],
)
def test_an_ordered_length_is_the_other_desks(turns):
    reply = talk(*turns)
    assert [answer.topic for answer in reply.answers] == ["other-desk"]
    assert reply.triage.route == "other-desk"


def test_the_run_stays_what_it_was():
    answer = talk(RUN, "can you deliver 20 m of that?", "and the fuse?").answers[0]
    assert answer.headline.startswith("Fit a 350\u00a0A fuse; 450\u00a0A is the most for 70\u00a0mm²")


def test_a_question_beside_the_order_is_answered():
    topics = [answer.topic for answer in talk("Pike 5 m each way, which cable? and please quote me 12 m of it").answers]
    assert topics == ["cable-size", "other-desk"]
    answer = talk("what cable for 200A at 12V, I have to order 20 m, battery 8 m away").answers[0]
    assert answer.headline.startswith("Use 50\u00a0mm²")


@pytest.mark.parametrize(
    "text",
    [
        "Please email me the invoice of the three anodes from last spring, our bookkeeper asks for it",
        "could we have a copy of the receipt for the propeller and the zincs?",
        "The tax office wants a proof of purchase for our thruster",
        "do you sell anodes?",
        "how much is a spare propeller",
    ],
)
def test_papers_and_spare_parts_are_the_other_desks(text):
    reply = talk(text)
    assert [answer.topic for answer in reply.answers] == ["other-desk"]
    assert reply.triage.route == "other-desk"


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("I have the receipt, it is a 110 Ah gel. what charger?", "charger-size"),
        ("the invoice says AGM, which charger setting do I need?", "charger-setting"),
        ("to cut the electricity bill, may the charger of my wet battery go off in winter?", "storage"),
        ("how often do anodes want changing?", "unclear"),
    ],
)
def test_a_paper_that_only_tells_hands_nothing_over(text, topic):
    assert [answer.topic for answer in talk(text).answers] == [topic]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("Our tablet dies after two hours and is only 2 years old, is that normal?", "other-desk"),
        ("the laptop's battery lasts 40 minutes, 4 years old. Replace?", "other-desk"),
        ("My phone died, so no photo. The thruster's battery is 9 years old, replace it?", "replacement"),
        ("the camera battery is flat. Our gel shows 12.5 at rest, is it all right?", "rest-voltage"),
    ],
)
def test_the_battery_of_a_phone_is_none_of_ours(text: str, topic: str) -> None:
    assert [item.topic for item in talk(text).answers] == [topic]
