"""First actions: the gravest sign leads, people come first, the kind of battery decides how far to go."""

from __future__ import annotations

from typing import Any

import pytest

from service.finish import finished
from service.reply import Answer
from service.topics import topic
from tests.building import case


def danger(*signs: str, facts: dict[str, Any] | None = None, cues: tuple[str, ...] = ()) -> Answer:
    named = {f"danger:{sign}" if sign.count(":") else f"danger:{sign}:present" for sign in signs}
    return finished(topic("hazard"), case(facts or {}, {*named, *cues}))


def test_a_swollen_battery_of_unknown_kind_is_treated_as_lithium() -> None:
    found = danger("swollen-case")
    assert (found.verdict, found.urgency, found.route) == ("stop", "stop-now", "technician")
    assert found.headline.startswith("Everybody off the boat now")
    assert [step.kind for step in found.steps][-1] == "who"


def test_a_swollen_lead_battery_is_left_alone() -> None:
    assert danger("swollen-case", facts={"battery.chemistry": "agm"}).headline.startswith("Leave it alone")


def test_an_eye_comes_before_the_battery() -> None:
    found = danger("leaking-case", "acid-in-eyes", facts={"battery.chemistry": "flooded"})
    assert found.headline.startswith("Rinse the eye")
    assert any("what leaks is acid" in step.say for step in found.steps)


def test_with_fuel_about_no_step_sends_anyone_to_a_switch() -> None:
    found = danger("fuel-vapour", "hot-to-touch", "burnt-cable", facts={"battery.chemistry": "flooded"})
    assert found.headline.startswith("Touch no switch")
    assert not any("main switch" in step.say for step in found.steps if step.kind == "do")


def test_the_others_stay_off_too() -> None:
    told = [step.say for step in danger("swollen-case", cues=("detail:the_others",)).steps if step.kind == "do-not"]
    assert any("other batteries" in text for text in told)


def test_asked_in_general_it_is_information_with_the_first_actions() -> None:
    found = danger("smoke:general")
    assert (found.verdict, found.urgency, found.route) == ("information", "routine", None)
    assert found.headline.startswith("If it happens: get everyone off the boat")


def test_jump_leads_are_information() -> None:
    assert danger("jump-start:general").headline.startswith("Jump leads go plus to plus first")


def test_one_present_sign_outweighs_a_general_one() -> None:
    assert danger("smoke:general", "fire").verdict == "stop"


@pytest.mark.parametrize(("cues", "urgency"), [((), "today"), (("thing:charger",), "stop-now")])
def test_a_frozen_battery_on_a_charger_is_more_urgent(cues: tuple[str, ...], urgency: str) -> None:
    assert danger("frozen-lead", cues=cues).urgency == urgency


def test_too_high_a_charging_voltage_is_named() -> None:
    found = danger("overcharging-voltage", facts={"charger.voltage": 16.1, "battery.chemistry": "agm"})
    assert (found.verdict, found.urgency) == ("stop", "today")
    assert "16.1\u00a0V" in found.headline


def test_a_danger_of_the_thread_still_counts() -> None:
    assert danger("hot-to-touch:standing").verdict == "stop"


def test_a_danger_without_a_name_goes_to_a_person() -> None:
    found = finished(topic("hazard"), case({}))
    assert (found.verdict, found.route) == ("stop", "technician")
