"""Where and which way up: the kind of battery decides."""

from __future__ import annotations

from typing import Any

import pytest

from service.finish import finished
from service.topics import topic
from tests.building import case
from tests.talks import talk


@pytest.mark.parametrize(
    ("kind", "detail", "verdict"),
    [
        ("flooded", "on_side", "no"),
        ("agm", "on_side", "yes"),
        ("gel", "on_side", "yes"),
        ("lfp", "on_side", "marginal"),
        (None, "on_side", "needs-facts"),
        ("lfp", "upside_down", "no"),
        ("flooded", "cabin", "no"),
        ("agm", "cabin", "yes"),
        ("lfp", "cabin", "yes"),
        ("lfp", "engine_heat", "no"),
        ("agm", "engine_heat", "marginal"),
        (None, "petrol_near", "no"),
        (None, "gas_bottles", "no"),
        (None, "rained_on", "no"),
        (None, "hold_down", "information"),
        (None, "concrete", "information"),
    ],
)
def test_each_place_has_its_verdict(kind: str | None, detail: str, verdict: str) -> None:
    facts: dict[str, Any] = {"battery.chemistry": kind} if kind else {}
    assert finished(topic("mounting"), case(facts, {f"detail:{detail}"})).verdict == verdict


def test_the_strictest_leads_and_the_others_are_told() -> None:
    found = finished(topic("mounting"), case({"battery.chemistry": "flooded"}, {"detail:hold_down", "detail:on_side"}))
    assert found.headline.startswith("No: a wet-cell battery stands upright")
    assert any("10 mm" in step.say for step in found.working)


def test_a_hot_place_shortens_its_life() -> None:
    found = finished(topic("mounting"), case({"ambient.temperature": 49}))
    assert found.verdict == "marginal"
    assert "49" in found.headline


def test_of_two_kinds_both_are_told() -> None:
    found = finished(topic("mounting"), case({"battery.chemistry": ("flooded", "agm")}, {"detail:on_side"}))
    assert [option.verdict for option in found.compare] == ["no", "yes"]


def test_what_holds_it_down_comes_before_the_place_where_it_stands() -> None:
    asked = {"detail:on_side", "detail:hold_down", "detail:cabin"}
    found = finished(topic("mounting"), case({"battery.chemistry": "gel"}, asked))
    assert found.headline.startswith("Usually yes: a gel battery may lie on a side")
    first, then = (step.say for step in found.working[:2])
    assert "a strap over it" in first
    assert then.startswith("A gel battery may stand in a cabin")  # without its own yes


@pytest.mark.parametrize(
    ("text", "mains"),
    [
        ("Air for four 120 Ah flooded ones, the charger gives 30 A? And can AGMs go there lying on their side?", False),
        ("Can an AGM lie on its side with the charger mounted above it?", True),
    ],
)
def test_only_a_charger_that_is_mounted_too_brings_the_mains(text: str, mains: bool) -> None:
    found = next(item for item in talk(text).answers if item.topic == "mounting")
    assert ("mains" in [item.id for item in found.cautions]) is mains
