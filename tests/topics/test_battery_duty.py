"""Starting, deep-cycle or dual-purpose."""

from __future__ import annotations

from typing import Any

import pytest

from service.topics.battery_duty import TOPIC
from tests.building import case


@pytest.mark.parametrize(
    ("facts", "cues", "verdict", "word"),
    [
        ({}, [], "information", "CCA decides"),
        ({"battery.duty": ("cranking", "deep-cycle")}, [], "information", "CCA decides"),
        ({}, ["detail:engine_battery"], "marginal", "engine"),
        ({}, ["detail:slow_load"], "information", "Deep-cycle"),
        ({"battery.duty": "cranking"}, ["detail:slow_load"], "no", "20"),
        ({"battery.duty": "deep-cycle", "load.kind": "electronics"}, [], "yes", "50"),
        ({"battery.duty": "deep-cycle", "load.kind": "thruster"}, [], "no", "CCA"),
        ({"battery.duty": "deep-cycle", "load.kind": "thruster", "battery.cca": 700}, [], "information", "700"),
        ({"battery.duty": "dual-purpose"}, [], "information", "compromise"),
        ({"battery.duty": "cranking", "load.kind": "thruster"}, [], "information", "CCA decides"),
    ],
)
def test_verdict_and_reason(facts: dict[str, Any], cues: list[str], verdict: str, word: str) -> None:
    found = TOPIC.answer(case(facts, cues))
    assert found.verdict == verdict
    assert word in found.headline
    assert len(found.compare) == 3


def test_a_deep_cycle_battery_without_a_rating_is_asked_for_it() -> None:
    found = TOPIC.answer(case({"battery.duty": "deep-cycle", "load.model": "pike"}))
    assert [ask.fact for ask in found.asks] == ["battery.cca"]
