"""How much lighter lithium is."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.topics.weight import TOPIC
from tests.building import case
from tests.talks import on, plain
from tests.topics import asked, figures


@pytest.mark.parametrize(
    ("facts", "saved", "after"),
    [
        ({"battery.weight": 30.0}, 15, 15),
        ({"battery.weight": 28.0, "battery.count": 4.0}, 56, 56),
        ({"battery.weight": (31.0, 12.0)}, 19, 12),
        ({"battery.weight": (12.0, 31.0), "battery.chemistry": ("lfp", "agm")}, 19, 12),
        ({"battery.weight": (20.0, 30.0)}, -10, 30),
    ],
)
def test_the_weight_saved(facts, saved, after):
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == "information"
    assert figures(answer) == {"weight_saved": saved, "weight_after": after}


def test_without_a_weight_the_rule_is_told_and_the_weight_asked():
    answer = TOPIC.answer(case({"battery.chemistry": "lfp"}))
    assert asked(answer) == ["battery.weight"]
    assert "half" in answer.headline


def test_a_case_size_tells_what_is_usual_but_gives_no_figure():
    answer = TOPIC.answer(case({"battery.group": "8D"}))
    assert "58 to 75\u00a0kg" in answer.headline
    assert not answer.figures


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "what does a lithium battery weigh compared with AGM for the same thruster? bow is nose heavy, pike 12v",
            "usually 260 Ah of it",
        ),
        ("Would lithium be lighter than AGM for the Minnow?", "usually 120 Ah of it"),
        ("How much lighter is lithium than my 25 kg AGM?", "About 12.5 kg lighter"),
        ("weight of lithium against AGM?", "tell us what yours weighs"),
    ],
)
def test_lithium_for_the_same_motor_may_weigh_as_much(text, told):
    assert told in plain(on("weight", text).headline)


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("How heavy is a 100Ah AGM compared with a 100Ah lithium?",
         "A 100 Ah AGM battery usually weighs 22 to 34 kg, a lithium one about half, 11 to 17 kg; the labels decide."),
        ("How many kilos do I save if I change my 110 Ah AGM for 100 Ah lithium",
         "A 110 Ah AGM battery usually weighs 24 to 34 kg, lithium of 100 Ah about 11 to 17 kg; the labels decide."),
        ("what does a 100 amp hour lifepo4 weigh?",
         "A 100 Ah lithium battery usually weighs about 11 to 17 kg, half of a lead one; the label decides."),
        ("weight of 120 Ah gel battery?", "A 120 Ah gel battery usually weighs 27 to 34 kg; the label decides."),
        ("how heavy is a lithium of 160 Ah", "A lithium battery weighs about half as much: tell us what yours weighs."),
        ("how much lighter is lithium", "A lithium battery weighs about half as much: tell us what yours weighs."),
        ("my 100 Ah AGM weighs 28 kg, how much would lithium be",
         "About 14 kg lighter: lithium in place of the battery weighs about 14 kg."),
    ],
)  # fmt: skip
def test_the_amp_hours_tell_what_is_usual(text: str, head: str) -> None:
    assert plain(on("weight", text).headline) == head


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("2 x 75 Ah AGM against 1 x 100 Ah lithium, kg?", "Two 75 Ah AGM batteries usually weigh 34 to 50 kg together"),
        ("How heavy are two 110 Ah gels?", "Two 110 Ah gel batteries usually weigh 48 to 68 kg together"),
        ("I have two AGM batteries of 95 Ah, how heavy are they?", "Two 95 Ah AGM batteries usually weigh 44 to 68 kg"),
        ("what do 2 x 100 Ah lithium weigh?", "Two 100 Ah lithium batteries usually weigh about 22 to 34 kg together"),
        ("1 x 120 Ah AGM vs 2 x 50 Ah lithium, kg?", "A 120 Ah AGM battery usually weighs 27 to 34 kg, two of 50 Ah"),
        (
            "2 x 12 V 100 Ah AGM or 2 x 100 Ah lithium, kg?",
            "Two 100 Ah AGM batteries usually weigh 44 to 68 kg together",
        ),
        ("what does each of my two 95 Ah AGM weigh", "A 95 Ah AGM battery usually weighs 22 to 34 kg"),
        ("two 100 Ah AGM in the bow, what would one weigh?", "A 100 Ah AGM battery usually weighs 22 to 34 kg"),
        ("what does a 90 Ah AGM weigh?", "A 90 Ah AGM battery usually weighs 22 to 29 kg"),
    ],
)
def test_two_batteries_weigh_twice_as_much_unless_each_is_asked(text, begins):
    assert plain(on("weight", text).headline).startswith(begins)


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("Will an 80 Ah AGM weigh less than 25 kilos?", "Usually yes: an 80 Ah AGM battery usually weighs 17 to 25 kg"),
        ("Does a 100 Ah AGM weigh under 30 kg?", "Perhaps: a 100 Ah AGM battery usually weighs 22 to 34 kg"),
        ("is a 100 Ah lithium lighter than 20 kg?", "Usually yes: a 100 Ah lithium battery usually weighs 11 to 17 kg"),
        ("Will a 120 Ah gel weigh less than 20 kg?", "Hardly: a 120 Ah gel battery usually weighs 27 to 34 kg"),
        ("Will a 120 Ah gel weigh more than 20 kg?", "Usually yes: a 120 Ah gel battery usually weighs 27 to 34 kg"),
        (
            "My 100 Ah battery is over 30 kg. How much lighter would lithium be?",
            "About 15 kg lighter: lithium in place",
        ),
    ],
)
def test_a_weight_it_is_to_be_under_is_no_weight_of_theirs(text: str, head: str) -> None:
    assert plain(on("weight", text).headline).startswith(head)


def test_one_battery_in_the_place_of_several_weighs_its_own():
    desk = default_desk()
    one = desk.ask("three wets of 24 kg each for one lithium of 20 kg, what is saved?").answers[0]
    both = desk.ask("two wets of 24 kg each for two lithiums of 12 kg, what is saved?").answers[0]
    saved = [next(item.value for item in found.figures if item.name == "weight_saved") for found in (one, both)]
    assert saved == pytest.approx([52, 24])


def test_two_kinds_of_lead_of_one_size_weigh_alike():
    found = default_desk().ask("is a gel lighter than an AGM, 90 Ah?").answers[0]
    assert plain(found.headline).startswith("Gel and AGM of one size weigh about the same: usually ")


def test_what_a_boat_saves_goes_by_its_batteries():
    text = "Lead at 26 kg each, two to a boat, lithium instead: how many kilos does each boat lose?"
    assert figures(on("weight", text))["weight_saved"] == 26
    text = "Lead at 26 kg, one to a boat, lithium instead: how many kilos does each boat lose?"
    assert figures(on("weight", text))["weight_saved"] == 13
