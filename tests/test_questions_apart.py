"""Two questions in one message: each keeps its own facts, its yes or no, and its place in the order."""

from __future__ import annotations

import pytest

from service.render.as_text import as_text, backed
from tests.talks import talk
from tests.test_headlines import head, last


@pytest.mark.parametrize(
    ("text", "topic", "opens"),
    [
        # a yes or no question beside one of another form
        ("will a 30w panel hold up a 0.1a alarm, 90ah? and how long would it last without?", "solar", "Yes: a 30"),
        ("will a 720 CCA AGM turn the Pike? and how long does it run?", "run-check", "Yes: your 720"),
        ("Can a 30 A charger go on a 100 Ah gel? And how long does it take?", "charger-size", "No: 30 A"),
        ("AGM or gel for the thruster, and is 12.3 V at rest ok for an AGM?", "rest-voltage", "Only just: 12.3"),
        # a cable that only the later question names
        ("what size cable for a 9m run to the sturgeon, and how much would 50mm2 lose", "cable-size", "Use 70 mm²"),
        ("What cable for the Pike at 6 m? And what does 50 mm2 lose over that?", "cable-size", "Use 70 mm²"),
        ("which cable for the Pike at 5 m and which fuse would 50 mm2 take?", "cable-size", "Use 70 mm²"),
        # ... and one that is there
        ("What size cable for 280 A at 24 V over 10 m? We have 50 mm2 there now. How much does it lose?", "cable-size",
         "50 mm² may carry 245 A"),
        # the battery, where the cable has its own answer
        ("12 V thruster 300 A, cable 50 mm2, 4 m. How much is lost in it, and will a 900 CCA AGM hold it up?",
         "run-check", "The battery itself holds it, at about 9.6 V"),
        ("12 V thruster 340 A, cable 70 mm2, 4 m. How much is lost, and does the 800 CCA flooded one hold it up?",
         "run-check", "The battery itself only just holds it, at about 8.8 V"),
        ("will a 900 CCA AGM run a 300 A thruster over 4 m of 50 mm2?", "run-check", "No: the battery would"),
        # whose battery
        ("must the minnow have a starter battery, can i use leisure ones? and can it share the engine battery",
         "battery-duty", "Starting or dual-purpose for a thruster"),
        ("can i use leisure batteries for the minnow or must it be a starter? and can it share the engine battery",
         "run-check", "At best only just: the Minnow needs 350 CCA"),
        # a question inside a sentence that tells
        ("The 90 Ah gel is too heavy for me, so it stays aboard, full, at 10 C. There is no power. My question is only "
         "whether it can stand there untouched for four months.", "storage", "Yes, but look every 90 days"),
        # how it came out
        ("My AGM 800 CCA did a load test, full, 20 C, 400 A for 15 s, it fell to 9.2 V. So?", "load-voltage", "9.2 V"),
        ("12.6 V at rest, a wet one. Well?", "rest-voltage", "12.6 V"),
    ],
)  # fmt: skip
def test_each_question_is_answered_by_its_own_facts(text, topic, opens):
    assert head(text, topic=topic)[: len(opens)] == opens


def test_a_question_that_points_back_keeps_its_place():
    text = "12.65 at rest then 9.2 with 400 amps for 15 sec, 800cca wet. is that a fail? its 6 years old, a new one?"
    assert [item.topic for item in talk(text).answers] == ["load-voltage", "replacement"]


def test_a_charger_that_stays_is_judged_for_the_lithium():
    asked = last("agm or lithium for a thruster, and can the old charger stay?", topic="charger-setting")
    told = {item.say: item.then for item in asked.asks[0].replies}
    assert (told["lithium"], told["AGM"]) == ("yes", "no")
    assert "lithium-kind" in [item.id for item in asked.cautions]


def test_a_reply_counts_for_both_of_two_kinds():
    asked = last("gel or agm, and can the old charger stay?", topic="charger-setting")
    assert "gel or AGM" in asked.headline or "AGM or gel" in asked.headline
    told = {item.say: item.then for item in asked.asks[0].replies}
    assert (told["AGM"], told["gel"]) == ("no", "marginal")


def test_no_setting_for_it_is_a_no_with_a_way_out():
    turns = (
        "can the old charger stay when I go from AGM to lithium?",
        "it only has agm and wet settings, and the new one is 100 Ah",
    )
    found = last(*turns, topic="charger-setting")
    assert found.headline.startswith("No: ")
    assert [item.say for item in found.would_change] == ["a charger that has the lithium setting"]


@pytest.mark.parametrize(
    "text",
    [
        "can I charge lithium with a charger that offers only wet and AGM",
        "my charger has only wet and agm, battery is lithium. ok?",
    ],
)
def test_asked_whether_it_may_none_of_them_is_a_no(text):
    assert head(text, topic="charger-setting").startswith("No: each of its settings goes over the 14.6 V")


def test_volts_are_shown_with_their_sources():
    assert "Sources:" in as_text(talk("Which absorption and float voltage for a gel, 12 V?"))
    kept_back = talk("The wet battery is swollen. Is my 20 A charger right for its 100 Ah?").answers[-1]
    assert (kept_back.topic, backed(kept_back)) == ("charger-size", ())
