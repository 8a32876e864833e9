"""Jump leads: never on a frozen battery, never between unlike volts; and a frozen one that nobody charges yet."""

from __future__ import annotations

import pytest

from service.leadsman import Leadsman
from service.told.other_volts import jumped

NEVER = "No: a frozen battery is never jump-started, charged or put under load"


@pytest.mark.parametrize(
    "text",
    [
        "jump a frozen tractor battery off our house bank?",
        "the start battery froze in the yard, how do we boost it",
        "our wet bank has frozen. May I put it on charge tonight?",
        "is it ok to thaw and charge a battery that is frozen?",
    ],
)
def test_a_frozen_battery_is_refused_before_any_how_to(text: str) -> None:
    (first, *below) = Leadsman().ask(text).answers
    assert first.headline.startswith(NEVER)
    assert (first.verdict, first.urgency, first.route) == ("stop", "today", "technician")
    assert not any("plus to plus" in item.headline for item in below)


@pytest.mark.parametrize(
    "text",
    [
        "battery is frozen and the charger has been on since noon, can I jump the engine?",
        "wet battery froze solid while it was charging. how long does it take?",
    ],
)
def test_on_a_charger_that_is_switched_off_first_and_at_once(text: str) -> None:
    (first, *_) = Leadsman().ask(text).answers
    assert (first.verdict, first.urgency) == ("stop", "stop-now")
    assert "witch the charger off at the shore end" in first.headline


@pytest.mark.parametrize(
    "text",
    [
        "24V jump leads to 12V car, any trouble?",
        "will twenty-four volts jump a 12 volt diesel",
        "jumper cables from a 24 volt bus to our 12 volt boat, which order",
        "12V tractor, 24V lorry: jump one off the other?",
    ],
)
def test_unlike_volts_are_never_joined(text: str) -> None:
    (first, *_) = Leadsman().ask(text).answers
    assert (first.topic, first.verdict) == ("hazard", "no")
    assert first.headline.startswith("No: never join batteries of unlike volts")


@pytest.mark.parametrize(
    "text",
    [
        "jump my 12 V start battery from the 12 V house bank, the thruster has 24 V",
        "two 12 V in series here, jumped from a 24 V lorry",
        "jump leads on a 12 V engine, which order?",
        "jump a 24 V engine from a pair of 12 V that give 24",
    ],
)
def test_like_volts_stay_a_how_to(text: str) -> None:
    assert not jumped(text)
