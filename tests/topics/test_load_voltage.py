"""Volts under load: sag, the lowest that is good, cable or battery."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.leadsman import default_desk
from service.reply import Answer
from service.topics.load_voltage import TOPIC
from tests.talks import on, only, plain, talk
from tests.topics import readings
from tests.topics.readings import Facts, asks, figures

PIKE = {"load.model": "Pike", "battery.cca": 650}


def asked(facts: Facts, *cues: str) -> Answer:
    return readings.asked(TOPIC, facts, cues)


def read(rest: float | None, load: float | None, amps: float | None = None, cca: float | None = None) -> Facts:
    facts = {"reading.voltage": rest, "reading.load_voltage": load, "reading.current": amps, "battery.cca": cca}
    return {name: value for name, value in facts.items() if value is not None}


@pytest.mark.parametrize(
    ("facts", "verdict", "lowest"),
    [
        (read(12.6, 9.9, 425, 850), "yes", 9.6),  # half the CCA: the load-test table
        (read(12.6, 9.5, 425, 850), "no", 9.6),
        (read(12.7, 10.9, 300, 900), "yes", 10.7),
        (read(12.6, 9.9, 300, 900), "no", 10.6),
        (read(12.7, 10.8, 150, 550), "no", 11.064),
        (read(12.8, 9.0) | PIKE, "no", 10.4),
        (read(None, 9.8) | PIKE, "no", 10.2),  # from 12.6 V, as no resting volts are said
        (read(12.6, 8.9, 340, 500), "no", 9.0),  # in order, but too small
        (read(12.6, 9.0, 340, 500), "yes", 9.0),
        (read(12.7, 7.5), "no", 9.6),
        (read(12.7, 9.6), "needs-facts", 9.6),
        (read(25.6, 21.8) | {"load.model": "Sturgeon", "battery.cca": 650, "battery.count": 2}, "yes", 20.43),
        (read(25.2, 21.0), "needs-facts", 19.2),
        (read(13.3, 12.4) | {"battery.chemistry": "lfp"}, "yes", 12.0),
        (read(13.3, 11.5) | {"battery.chemistry": "lfp"}, "marginal", 12.0),
        (read(13.3, 11.4) | {"battery.chemistry": "lfp"}, "no", 12.0),
    ],
)
def test_verdict_and_lowest_volts(facts: Facts, verdict: str, lowest: float) -> None:
    answer = asked(facts)
    assert answer.verdict == verdict
    assert figures(answer)["lowest_acceptable_voltage"] == pytest.approx(lowest, abs=0.005)


def test_sag_and_resistance_are_those_of_what_was_measured() -> None:
    found = figures(asked(read(13.3, 12.7, 150) | {"battery.chemistry": "lfp"}))
    assert found["sag"] == pytest.approx(0.6)
    assert found["internal_resistance"] == pytest.approx(4.0)
    assert figures(asked(read(25.2, 21.0)))["sag"] == pytest.approx(4.2)


@pytest.mark.parametrize(
    ("facts", "cues"),
    [
        (read(12.3, 9.9, 325, 650), ()),
        (read(12.6, 9.3, 350, 700) | {"ambient.temperature": 0}, ()),
        (read(12.6, 9.2) | {"ambient.temperature": 2}, ("detail:load_test",)),
    ],
)
def test_a_load_test_of_a_flat_or_cold_battery_does_not_count(facts: Facts, cues: tuple[str, ...]) -> None:
    answer = asked(facts, *cues)
    assert (answer.verdict, asks(answer)) == ("needs-facts", ["reading.load_voltage"])


def test_a_load_test_needs_no_amps_but_at_known_amps_the_cca() -> None:
    assert asked(read(12.6, 9.9), "detail:load_test").verdict == "yes"
    assert asks(asked(read(12.65, 10.4, 300), "detail:load_test")) == ["battery.cca"]


def test_one_reading_taken_under_load_is_not_a_resting_one() -> None:
    answer = asked({"reading.voltage": 9.3, "reading.state": "load", "reading.current": 400, "battery.cca": 800})
    assert (answer.verdict, "sag" in figures(answer)) == ("no", False)


def test_good_posts_and_a_poor_motor_blame_the_cable() -> None:
    answer = asked(read(12.5, 11.3) | {"reading.load_voltage_at_load": 9.4})
    assert (answer.verdict, asks(answer)) == ("no", [])  # neither amps nor CCA can change it
    assert figures(answer)["drop"] == pytest.approx(1.9)
    assert "cable" in answer.headline


def test_low_posts_blame_the_battery_and_the_cable_is_still_told() -> None:
    answer = asked(read(12.6, 10.4, 200, 900) | {"reading.load_voltage_at_load": 8.0})
    assert "drops to 10.4" in answer.headline.replace("\u00a0", " ")
    assert "cable" in answer.headline
    assert figures(answer)["drop"] == pytest.approx(2.4)


def test_ten_percent_is_no_fault() -> None:
    assert "drop" not in figures(asked(read(12.6, 11.5, 200, 900) | {"reading.load_voltage_at_load": 10.35}))


def test_a_low_reading_alone_asks_where_it_was_measured() -> None:
    assert asks(asked(read(12.8, 9.0))) == ["reading.load_voltage_at_load"]


@pytest.mark.parametrize(
    ("facts", "wanted"),
    [
        ({}, "reading.load_voltage"),
        ({"reading.load_voltage_at_load": 9.4}, "reading.load_voltage"),
        (read(9.9, 13.1), "reading.load_voltage"),
        (read(12.7, 12.1, 6), "battery.cca"),
        (read(12.6, 11.5), "reading.current"),
    ],
)
def test_what_is_asked_back(facts: Facts, wanted: str) -> None:
    answer = asked(facts)
    assert (answer.verdict, asks(answer)[0]) == ("needs-facts", wanted)


def test_the_limit_itself_is_information() -> None:
    answer = asked({"bank.voltage": 24, "battery.chemistry": "flooded"}, "detail:reading_wanted")
    assert answer.verdict == "information"
    assert figures(answer)["lowest_acceptable_voltage"] == pytest.approx(19.2)


@given(rest=st.floats(12.4, 12.8), sag=st.floats(0, 6), amps=st.floats(5, 900), cca=st.floats(100, 2000))
def test_more_volts_never_turn_a_yes_into_a_no(rest: float, sag: float, amps: float, cca: float) -> None:
    worse, better = (asked(read(rest, rest - drop, amps, cca)).verdict for drop in (sag, sag / 2))
    assert not (worse == "yes" and better == "no")


@pytest.mark.parametrize(
    ("turns", "begins"),
    [
        (("12.3 V AGM rested, drops to 8.7 with the Pike, 650 CCA",), "No: with the Pike running"),
        (("wet 12.1 rested, falls to 8.8 under load, need a new one?",), "No: a lead battery in good order"),
        (("wet 12.2 V resting, 9.0 V under 200 A, 700 CCA. replace it?",), "Not certain yet: with 200 A"),
        (("AGM half full, went to 8.9 V under load with the Pike, 650 CCA. ok?",), "No: with the Pike running"),
        (("12.2 V at rest overnight, agm. ok?", "ran the bow thruster, went to 8.4"), "No: a lead battery"),
        (("12.2 V at rest overnight, agm. ok?", "ran the bow thruster, went to 8.4", "200 A 12 V, 600 CCA"),
         "No: with 200 A"),
        (("12.3 rested, 8.9 at the posts and 7.5 at the motor with 260A, 650 CCA",), "No: with 260 A"),
    ],
)  # fmt: skip
def test_a_low_reading_of_a_battery_that_was_not_full_sends_nobody_to_buy_one(turns, begins):
    head = talk(*turns).answers[0].headline.replace("\u00a0", " ")
    assert head.startswith(begins)
    assert "it was not full: charge it and test again before you buy" in head
    assert "weak part" not in head


def test_a_full_one_that_falls_so_far_is_the_weak_part():
    answer = default_desk().ask("12.7 V rested, drops to 8.8 with the Pike, 650 CCA AGM").answers[0]
    assert answer.headline.endswith("so the battery is the weak part.")


def test_a_load_test_of_a_half_charged_battery_does_not_count():
    text = "load test on a half charged 800 CCA wet battery: 9.2 V at 400A after 15 s. failed?"
    answer = default_desk().ask(text).answers[0]
    assert answer.verdict == "needs-facts"
    assert "charge it and test again" in answer.headline


@pytest.mark.parametrize(
    "text",
    [
        "our bow thruster only groans, and yet the battery shows 12.7. Where should I look first?",
        "Weak thruster although the battery has 12.8 V. What do I check?",
    ],
)
def test_a_weak_motor_gets_the_two_places_to_measure(text):
    answer = next(item for item in talk(text).answers if item.topic == "load-voltage")
    assert answer.headline.startswith("Read the volts twice while it runs")
    assert [item.fact for item in answer.asks] == ["reading.load_voltage", "reading.load_voltage_at_load"]


def test_which_volts_it_should_hold_is_told_and_not_asked():
    answer = talk("What volts should it hold while the thruster runs?").answers[0]
    assert (answer.verdict, "9.6" in answer.headline) == ("information", True)


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        (
            "Our Minnow goes weak after two minutes, battery says 12.7 in the morning. What do I measure?",
            "load-voltage",
        ),
        ("The Sturgeon turns slowly, the bank rests at 25.4 V. Why?", "load-voltage"),
        ("My bow thruster is sluggish although the battery shows 12.8 V at rest. What's wrong?", "load-voltage"),
        ("The Pike is slow, and the battery rests at 12.0 V. Why?", "rest-voltage"),
    ],
)
def test_a_weak_motor_on_a_full_battery_is_measured_while_it_runs(text: str, topic: str) -> None:
    (found,) = default_desk().ask(text).answers
    assert found.topic == topic


@pytest.mark.parametrize(
    ("turns", "start"),
    [
        (("when I push the joystick the voltage drops to 9 volts and the thruster goes weak, why",), "A low or worn"),
        (("it goes down to 8.8 when running the thruster and it is slow. what is the reason?",), "A low or worn"),
        (("what makes the voltage drop to 8.9 when the thruster runs?",), "A low or worn"),
        (("battery 9 V under load, 8.6 at the motor, why",), "No: a lead battery in good order"),
        (("Thruster falls to 9 V when I push it. Is that bad?", "should I swap the battery or check the cables first?"),
         "The cables and joints first"),
        (("drops to 9.1 V when I run the thruster. the cables or the battery first?",), "The cables and joints first"),
        (("drops to 9.1 V when I run the thruster. the cables or the battery?",), "The battery, if this was read on"),
        (("Thruster falls to 9 V when I push it. Is that bad?",), "Yes: a lead battery in good order"),
        (("the battery drops to 10.5 V when the thruster runs, is that bad",), "No, not by this reading: 10.5 V"),
        (("falls to 10.2 with the thruster on, should I worry?",), "No, not by this reading: 10.2 V"),
        (("the battery drops to 10.5 V when the thruster runs, is it good",), "We can't say yet: 10.5 V"),
    ],
)  # fmt: skip
def test_the_first_word_is_about_what_is_asked_of_a_low_reading(turns: tuple[str, ...], start: str) -> None:
    assert plain(on("load-voltage", *turns).headline).startswith(start)


@pytest.mark.parametrize(
    ("turns", "rested"),
    [
        (("voltage falls to 8.7 when I push the bow button", "12.7"), True),
        (("the 24 V bank drops to 18.2 under load", "25.3"), True),
        (("drops to 9.0 under load", "8.2"), False),
        (("drops to 9.0 under load", "12.7 at the motor"), False),
    ],
)
def test_a_bare_reading_higher_than_under_load_is_that_at_rest(turns: tuple[str, ...], rested: bool) -> None:
    told = {item.fact for item in on("load-voltage", *turns).understood}
    assert ("reading.voltage" in told) == rested


@pytest.mark.parametrize(
    "text",
    [
        "r int at 300 A? 12.65 at rest, 10.4 with it on, wet 800 CCA",
        "wet 800 CCA, 12.65 V resting, 10.4 V at 300 A. Internal r of it?",
        "int resistance please: 12.65 rest, 10.4 loaded, 300A, wet 800cca",
    ],
)
def test_the_resistance_that_is_asked_leads_the_headline(text):
    assert only("load-voltage", text).headline.startswith("7.5\u00a0mΩ inner resistance")


def test_volts_under_load_are_not_told_as_a_resistance():
    answer = only("load-voltage", "12.65 at rest, 10.4 with it on at 300 A, wet 800 CCA, any good?")
    assert "mΩ" not in answer.headline


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("12.7 V at rest, 9.2 on the posts at 280 A, wet 850 CCA. Is it dead?", "Most likely: "),
        (
            "My 700 CCA AGM fell from 12.8 to 8.7 V on the posts with 240 A drawn. Is that one finished?",
            "Most likely: ",
        ),
        ("12.7 V at rest, 9.2 on the posts at 280 A, wet 850 CCA. Is that a low reading?", "Yes: "),
        ("24V, 2 wets, posts 25.2 rest, 22.4 running, at motor 18.9. fault?", "Yes: "),
        ("12V, posts 12.6 rest, 11.2 running, at motor 9.4, any fault", "Yes: "),
        ("12V, posts 12.6 rest, 11.2 running, at motor 9.4, is that ok", "No: "),
    ],
)
def test_the_first_word_fits_what_is_feared(text, first):
    assert on("load-voltage", text).headline.startswith(first)


@pytest.mark.parametrize(
    "text",
    [
        "Minnow feels slow. 12.6 resting, 11.7 on the posts with it on, 600 CCA gel. What is the matter?",
        "weak thruster, 200 A on the clamp, 12.7 falls to 11.5 V, 900 CCA wet. what next?",
    ],
)
def test_a_weak_motor_on_a_battery_that_holds_is_measured_at_its_own_terminals(text: str) -> None:
    found = on("load-voltage", text)
    assert found.verdict == "yes"
    assert found.headline.startswith("Not the battery: ")
    assert asks(found)[0] == "reading.load_voltage_at_load"
    assert "the motor itself" in found.asks[0].where


def test_a_low_reading_of_the_dash_is_read_again_on_the_posts() -> None:
    low = "the {} drops to 9.1 V while the Minnow runs, is that bad"
    assert asks(on("load-voltage", low.format("voltmeter at the helm")))[0] == "reading.load_voltage"
    assert asks(on("load-voltage", low.format("meter")))[0] == "reading.load_voltage_at_load"


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("The yard did a load test: 9.9 V at half CCA. Is it good?", "yes"),
        ("It failed the load test with 9.0 V, is that low?", "no"),
    ],
)
def test_the_volts_of_a_test_that_was_done_pass_or_fail_it(text: str, verdict: str) -> None:
    found = on("load-voltage", text)
    assert (found.verdict, "load test" in found.headline) == (verdict, True)


def test_what_volts_under_load_tell_is_no_question_of_what_the_battery_would_run() -> None:
    told = "Sturgeon on, the volts go from 25.3 to 19.4, two 700 CCA gels. {}"
    assert [item.topic for item in default_desk().ask(told.format("What does that show me?")).answers] == [
        "load-voltage"
    ]


def test_volts_under_load_that_one_battery_cannot_have_pass_no_test():
    found = on("load-voltage", "Tester shows 41 V with my 12 V battery on load. A pass?")
    assert found.verdict == "needs-facts"
    assert "cannot read 41.0 V" in plain(found.headline)
    assert on("load-voltage", "Tester shows 10.4 V with my 12 V battery on load. A pass?").verdict != "needs-facts"


def test_battery_or_cable_stays_open_until_it_is_told_where_the_meter_was():
    text = "12.6 falls to 9.1 while the Pike runs, 700 CCA gel. Cable or battery?"
    found = only(text)
    assert plain(found.headline).startswith("The battery, if this was read on its posts: with the Pike running")
    assert [item.fact for item in found.asks] == ["reading.load_voltage_at_load"]
    assert "should show 9.4 V or more" in plain(found.working[0].say)
    assert not only(text.replace("9.1", "9.1 on the posts")).asks


def test_a_low_reading_on_the_posts_settles_that_it_is_the_battery():
    thread = ["our thruster is slow, it drops to 9.1", "12.6 before", "read on the battery posts"]
    reply = talk(*thread)
    assert reply.notice is None
    assert "so it is too weak or too small" in reply.answers[0].headline
    assert [item.fact for item in reply.answers[0].asks] == ["battery.cca"]
