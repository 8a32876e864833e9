"""Time for a new one: by age, or by a failed test."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.reply import Answer
from service.topics.replacement import TOPIC
from tests.talks import on, plain, talk
from tests.topics import readings
from tests.topics.readings import Facts, asks


def asked(facts: Facts, *cues: str) -> Answer:
    return readings.asked(TOPIC, facts, cues)


@pytest.mark.parametrize(
    ("kind", "age", "verdict"),
    [
        ("flooded", 2.9, "yes"), ("flooded", 3, "marginal"), ("flooded", 5, "marginal"), ("flooded", 5.1, "no"),
        ("agm", 3, "yes"), ("agm", 4, "marginal"), ("agm", 7, "marginal"), ("agm", 8, "no"),
        ("gel", 4, "yes"), ("gel", 7, "marginal"), ("gel", 9, "no"),
        ("lfp", 7, "yes"), ("lfp", 9, "marginal"), ("lfp", 13, "no"),
    ],
)  # fmt: skip
def test_age_against_the_usual_life(kind: str, age: float, verdict: str) -> None:
    answer = asked({"battery.chemistry": kind, "battery.age": age})
    assert answer.verdict == verdict
    assert "by age only" in answer.headline


def test_months_left_are_a_range_and_none_past_it() -> None:
    left = asked({"battery.chemistry": "gel", "battery.age": 6}).figures[0]
    assert (left.name, left.low, left.high) == ("months_left", 0, 24)
    assert asked({"battery.chemistry": "gel", "battery.age": 9}).figures == ()


def test_kind_not_said_takes_the_wet_cell_life_and_asks_where_agm_differs() -> None:
    answer = asked({"battery.age": 6})
    assert (answer.verdict, asks(answer)) == ("no", ["battery.chemistry"])


@pytest.mark.parametrize(
    ("facts", "cues", "verdict"),
    [
        ({"reading.load_voltage": 8.9, "ambient.temperature": 22}, ("detail:load_test",), "no"),
        ({"reading.load_voltage": 8.9, "ambient.temperature": 2}, ("detail:load_test",), "yes"),  # too cold to count
        ({"reading.load_voltage": 9.9, "reading.current": 325, "battery.cca": 650}, (), "yes"),
        ({"reading.load_voltage": 9.3, "reading.current": 325, "battery.cca": 650}, (), "no"),
        ({"reading.gravity_spread": 0.05}, (), "no"),
        ({"reading.gravity": (1.265, 1.18)}, (), "no"),
        ({}, ("detail:failed_test",), "no"),
    ],
)
def test_a_valid_failed_test_ends_a_young_battery(facts: Facts, cues: tuple[str, ...], verdict: str) -> None:
    assert asked({"battery.age": 1, **facts}, *cues).verdict == verdict


def test_without_an_age_it_is_asked_unless_the_usual_life_is_the_question() -> None:
    assert asks(asked({"battery.chemistry": "agm"})) == ["battery.age"]
    answer = asked({"battery.chemistry": "agm"}, "detail:when_replaced")
    assert answer.verdict == "information"
    assert "4 to 7" in answer.headline


def test_a_deeply_flat_one_is_for_today() -> None:
    assert asked({"battery.age": 3, "reading.voltage": 4.9, "battery.chemistry": "flooded"}).urgency == "today"


@pytest.mark.parametrize(
    ("facts", "verdict", "says"),
    [
        ({"battery.chemistry": "agm", "battery.age": 4, "reading.voltage": 9.8}, "marginal", "reckon with a new one"),
        ({"battery.chemistry": "flooded", "battery.age": 1, "reading.voltage": 9.5}, "marginal", "replacing early"),
        ({"battery.chemistry": "gel", "battery.age": 9, "reading.voltage": 10.1}, "no", "reckon with a new one"),
        ({"battery.chemistry": "lfp", "battery.age": 3, "reading.voltage": 9.0}, "no", "maker"),
    ],
)
def test_one_that_stood_flat_is_not_told_by_its_age(facts: Facts, verdict: str, says: str) -> None:
    found = asked({**facts, "battery.nominal": 12})
    assert found.verdict == verdict
    assert says in found.headline
    assert not found.figures


def test_a_reading_under_load_or_one_that_is_sound_tells_no_flat_one() -> None:
    told = {"battery.chemistry": "agm", "battery.age": 4, "battery.nominal": 12}
    assert asked({**told, "reading.voltage": 12.4}).figures
    assert asked({**told, "reading.voltage": 9.8, "reading.state": "load"}).figures


@pytest.mark.parametrize(
    ("text", "age"),
    [
        ("My AGM is 10 days old, is it done?", "10 days"),
        ("battery is 3 weeks old, is it finished?", "3 weeks"),
        ("the wet one is two months old, time for a new one?", "2 months"),
        ("AGM is half a year old, replace it?", "6 months"),
        ("My AGM is 1 year old, is it done?", "1 year"),
        ("My AGM is 18 months old, is it done?", "1.5 years"),
    ],
)
def test_an_age_under_a_year_is_told_in_days_weeks_or_months(text: str, age: str) -> None:
    assert f"at {age} your" in talk(text).answers[0].headline.replace("\u00a0", " ").replace("At ", "at ")


@pytest.mark.parametrize(
    ("text", "young"),
    [
        ("NEW BATTERY 3 WEEKS OLD AND THRUSTER DIES AFTER 20 SECONDS. WHAT IS WRONG", True),
        ("My new AGM, 2 months old, dies after a minute. Is it finished?", True),
        ("My AGM, 5 years old, dies after a minute. Is it finished?", False),
        ("battery is 6 months old, when should I replace it?", False),
    ],
)
def test_a_weak_battery_that_is_nearly_new_is_not_worn_by_its_age(text: str, young: bool) -> None:
    answer = talk(text).answers[0]
    assert answer.topic == "replacement"
    assert answer.headline.startswith("Not its age") == young


@pytest.mark.parametrize(
    ("text", "taken"),
    [
        ("THIS IS THE THIRD TIME I WRITE. AGM 3 YEARS OLD, IS IT DONE?", True),
        ("Second email now. Is a 4 year old AGM done?", True),
        ("nobody answers! what size fuse for 120 A on 35 mm2?", True),
        ("this is the third time I charge it, AGM 3 years old, is it done?", False),
        ("third mail now and the battery is smoking", False),
    ],
)
def test_who_writes_again_is_taken_over_by_a_person(text: str, taken: bool) -> None:
    reply = talk(text)
    assert (reply.notice or "").startswith("You have written before") == taken
    assert not taken or reply.triage.route == "technician"


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("The AGM for the Minnow is from 2017. Wife says leave it, I say it is due.",
         "An AGM battery from 2017 is in its last years from 2021 on, and after 2024 past its usual life"),
        ("battery bought in 2016, gel. time to change?", "A gel battery from 2016 is in its last years from 2021 on"),
        ("label says 03/2018, AGM. still good?", "An AGM battery from 2018 is in its last years from 2022 on"),
        ("my gel was made in 2020, still ok to use?", "A gel battery from 2020 is in its last years from 2025 on"),
        ("my boat is from 2005, replace the AGM?", "We can't say yet"),
        ("Gel from 2015, 12.8 V at rest, 11.1 V while the bow motor takes 200 A. Do I replace it?",
         "Not by that reading: 11.1 V under load holds up; but one from 2015 is past its usual life after 2023"),
        ("AGM is 5 years old, in 2017 I had another. Replace?", "Perhaps soon: at 5 years"),
    ],
)  # fmt: skip
def test_a_year_is_told_by_the_calendar_and_no_age_is_asked(text: str, start: str) -> None:
    assert plain(on("replacement", text).headline).startswith(start)


@pytest.mark.parametrize(
    ("text", "heat"),
    [
        ("hot day, 34 degrees in the shade. does the heat shorten the life of my AGM?", True),
        ("is 35 C bad for my battery's lifespan", True),
        ("does summer heat kill AGMs early?", True),
        ("does hot weather ruin batteries faster?", True),
        ("boat is kept in the tropics, how much shorter will my gel live?", True),
        ("How many years shorter is the life of a gel in the heat?", True),
        ("how many years does a gel last in the heat of the tropics?", False),
        ("how long does an AGM last?", False),
        ("hot deal on an AGM, 5 years old. Replace mine?", False),
    ],
)
def test_heat_shortens_its_years(text: str, heat: bool) -> None:
    found = on("replacement", text)
    assert ("asting heat about halves a battery's life with each 8 °C" in found.headline.replace(" °", " °")) == heat


@pytest.mark.parametrize(
    ("text", "tested"),
    [
        ("my batteries are 6 yrs old, when should i replace them?? and how can i test them myself", True),
        ("AGM is 5. how do I test it myself?", True),
        ("AGM is 5 years old, how should I check it at home before I replace it?", True),
        ("AGM is 5 years old, replace it?", False),
        ("AGM is 5 years old, replace? and how do I check the cables", False),
    ],
)
def test_how_to_test_it_is_told_beside_its_age(text: str, tested: bool) -> None:
    found = on("replacement", text)
    assert ("must hold 9.6 V with the thruster running" in plain(found.headline)) == tested
    assert found.working[0].say.startswith("To test a lead battery yourself") == tested


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("AGM is 2 years old and falls to 8.7 V under load, replace it?", "Test first: 8.7 V under load is too low"),
        ("4 year old gel, drops to 8.9 with the thruster, new one?", "Test first: 8.9 V under load is too low"),
        ("AGM is 2 years old and holds 10.7 V under load, replace it?", "No: at 2 years"),
        ("AGM is 2 years old, at 12.1 V it falls to 8.7 V under load, replace it?", "No: at 2 years"),
        ("AGM is 2 years old, replace it?", "No: at 2 years"),
    ],
)
def test_low_volts_under_load_come_before_the_years(text: str, start: str) -> None:
    assert plain(on("replacement", text).headline).startswith(start)


@pytest.mark.parametrize(
    ("topic", "text", "start"),
    [
        ("run-check", "Pike 12 V, 70 Ah start battery, strong in the morning, weak later. Is the battery too small or "
         "is it finished?", "Not known yet: charge it overnight and load-test it"),
        ("replacement", "thruster ok at first, then weaker each time. Battery too small or worn out?", "Not known yet"),
        ("run-check", "is a 60 Ah battery too small for the Pike?", "We can't say yet: the Pike needs"),
        ("replacement", "4 years old AGM, is it worn?", "Perhaps soon"),
    ],
)  # fmt: skip
def test_too_small_or_worn_is_parted_by_a_test(topic: str, text: str, start: str) -> None:
    assert plain(on(topic, text).headline).startswith(start)


@pytest.mark.parametrize("text", ["is it done for, it's a 2016 gel", "gel, april 2016 on the label, is it too old?"])
def test_the_year_of_a_battery_by_its_kind_or_a_month(text: str) -> None:
    found = next(item for item in default_desk().ask(text).answers if item.topic == "replacement")
    assert "from 2016" in found.headline
