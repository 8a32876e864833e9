"""How much lighter lithium is."""

from __future__ import annotations

import pytest

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
