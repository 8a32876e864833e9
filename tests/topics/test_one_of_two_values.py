"""Which of two values a question goes by, and values that are no second ones."""

from __future__ import annotations

import pytest

from tests.talks import plain, talk


def on(topic: str, text: str):
    return next(answer for answer in talk(text).answers if answer.topic == topic)


def figure(topic: str, text: str, name: str) -> float:
    return next(float(item.value) for item in on(topic, text).figures if item.name == name)


@pytest.mark.parametrize(
    "text",
    ["wot size agm 4 fridge 3.5A, 20 hrs", "what size of AGM for a fridge of 3.5 A, 20 hours"],
)
def test_a_four_that_is_short_for_a_word_is_no_load(text: str) -> None:
    assert figure("bank-size", text, "required_capacity") == pytest.approx(140, rel=0.02)


def test_degrees_told_once_more_in_the_other_scale_are_the_same() -> None:
    text = "What does a 700 CCA battery give at 0 F, so minus 18?"
    assert on("cold-cranking", text).compare == ()
    assert figure("cold-cranking", text, "cranking_current") == pytest.approx(702, abs=3)


def test_two_temperatures_that_are_asked_are_both_answered() -> None:
    text = "Our battery has 800 CCA. How many amps at -24 C, and how much of its warm power is left at 0 F?"
    assert plain(on("cold-cranking", text).headline).startswith("It gives 733 A at -24 ")


@pytest.mark.parametrize(
    ("text", "starts"),
    [
        (
            "can i run a 12v trolling motor, 40 amps, straight off our 24 volt bank",
            "No: your trolling motor is made for",
        ),
        ("will a 24 V bow motor work on my 12 V battery", "No"),
    ],
)
def test_a_motor_on_other_volts_is_refused(text: str, starts: str) -> None:
    assert plain(on("run-check", text).headline).startswith(starts)


def test_the_amps_of_a_fuse_drain_no_panel() -> None:
    text = "100 W panel in summer: how many Ah a day into 12 V? And what fuse for an 8 A load on it?"
    assert on("solar", text).verdict == "information"
    assert on("fuse-size", text).verdict == "information"


def test_a_second_battery_that_is_only_thought_of_gives_no_hours() -> None:
    text = "how many hours from a 180 Ah gel at 10 amps and what happens if I add a second one the same"
    assert figure("run-time", text, "time_to_usable_limit") == pytest.approx(
        60 * 8.9, rel=0.02
    )  # 20 h x (180 / 200)^1.15 / 2
