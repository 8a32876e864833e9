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


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        (
            "Where is the box I ordered? Until then the gel stands loose in the stern locker and slid across it in the "
            "last blow. Dangerous to leave it so for now?",
            {"other-desk", "mounting"},
        ),
        ("The AGM shifts around in its tray at sea, can I leave it for now?", {"mounting"}),
        ("our wet battery lies loose in the bilge, ok to keep it so?", {"mounting"}),
        ("The battery rolls about when we heel. Can it stay like that till the yard has time?", {"mounting"}),
        ("AGM slid about when we crossed, 12.6 V now. is it ok?", {"rest-voltage", "mounting"}),
    ],
)
def test_a_battery_that_moves_is_held_today_and_not_laid_up(text: str, topics: set[str]) -> None:
    reply = talk(text)
    assert {item.topic for item in reply.answers} == topics
    (held,) = (item for item in reply.answers if item.topic == "mounting")
    assert (held.verdict, reply.triage.urgency) == ("no", "today")
    assert held.headline.startswith("Do not go out with it like that")


@pytest.mark.parametrize(
    "text",
    [
        "how do I stop my battery sliding around?",
        "the loose battery terminal slides about on its post. what nut?",
        "my AGM slid around last season, it is now strapped. reads 12.7, good?",
    ],
)
def test_what_is_held_or_only_asked_in_general_is_routine(text: str) -> None:
    assert talk(text).triage.urgency == "routine"
