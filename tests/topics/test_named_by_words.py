"""Topics that the words of a message name, though what is told beside them points to another one."""

from __future__ import annotations

import pytest

from tests.talks import plain, talk


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("Deep cycle of 95 Ah, trolling motor of 30 A. How many hours do I have?", ["run-time"]),
        ("Dual purpose, 80 Ah, and a 4 A fridge: how long would we have left?", ["run-time"]),
        ("Starter battery, 95 Ah, 30 A trolling motor. How long have I got, and is it the right sort?",
         ["run-time", "battery-duty"]),
        ("24 V bow bank with the 12 V radio hung on the midpoint: is that right?", ["bank-wiring"]),
        ("Two in series for 24 V, one battery feeds the 12 V lights as well. All right?", ["bank-wiring"]),
        ("May our lithium go on charge when the locker is at -7?", ["charger-setting"]),
        ("Will our lithium freeze when the locker is at -7?", ["freeze-point"]),
    ],
)  # fmt: skip
def test_words_name_what_is_asked(text: str, topics: list[str]) -> None:
    assert [answer.topic for answer in talk(text).answers] == topics


def test_a_tap_is_no_whoever_feeds_from_it() -> None:
    answer = talk("24 V of two 12 V batteries, and 1 battery gives 12 V for the plotter. Bad?").answers[0]
    assert (answer.topic, answer.verdict) == ("bank-wiring", "no")
    assert plain(answer.headline).startswith("Yes: taking 12 V from one battery")


def test_lithium_in_the_cold_may_be_charged_slowly_after_its_reading() -> None:
    answer = talk("lifepo4 at 12.1 volts", "it's 4 degrees in there. charge it now?").answers[0]
    assert answer.topic == "charger-setting"


def test_the_next_one_stays_lithium() -> None:
    told = (
        "The BMS of our lithium allows 90 A and the thruster takes 210 A. Is it too much? What does the next one need?"
    )
    size = next(answer for answer in talk(told).answers if answer.topic == "bank-size")
    assert "lithium" in size.headline
    assert "CCA" not in size.headline


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("My LiFePO4 sits at 3 degrees. Charge it now?", "Only slowly: at 3 °C"),
        ("LiFePO4, 6 degrees in the box. Which setting for it?", "Use the lithium setting"),
    ],
)
def test_lithium_just_over_freezing_is_charged_slowly(text: str, opens: str) -> None:
    answer = talk(text).answers[0]
    assert plain(answer.headline).startswith(opens)
    assert "only slowly" in plain(answer.headline).lower()


def test_warm_lithium_needs_no_such_word() -> None:
    assert "slowly" not in talk("LiFePO4, 22 degrees in the box. Which setting for it?").answers[0].headline


def test_a_reading_beside_words_freezes_by_the_emptier_of_the_two() -> None:
    answer = next(item for item in talk("gel reads 12.2 at rest. How full and will it freeze at minus 8?").answers
                  if item.topic == "freeze-point")  # fmt: skip
    assert "full, and it freezes near -21" in plain(answer.headline)
    assert "it is full" not in answer.headline


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("Six LiFePO4 of 80 Ah in parallel, all of one batch. Yes or no?", "no"),
        ("Three LiFePO4 of 80 Ah in parallel: what does that give?", "information"),
    ],
)
def test_a_yes_or_no_on_a_join_is_judged(text: str, verdict: str) -> None:
    assert talk(text).answers[0].verdict == verdict


def test_the_case_that_is_liked_is_the_one_to_go_in() -> None:
    answer = talk(
        "The tray is 11 inches long and 7.5 wide and took a group 24. I'd love a 27, does one go in?"
    ).answers[0]
    assert (answer.topic, answer.verdict) == ("group-size", "no")


def test_a_trolling_motor_off_their_battery_is_judged_and_the_duty_alone_is_not() -> None:
    assert [item.topic for item in talk("would a 40 lb trolling motor be fine off my 90 ah deep cycle").answers] == [
        "run-check"
    ]
    assert [item.topic for item in talk("is a deep cycle fine for a thruster").answers] == ["battery-duty"]
