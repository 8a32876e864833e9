"""Batteries that are not alike: how many of each, whose figure a later message tells, and what they make together."""

from __future__ import annotations

import pytest

from tests.talks import talk

ALIKE = "two 110 ah agm in parallel, is that ok?"


def figures(reply, topic):
    (found,) = (item for item in reply.answers if item.topic == topic)
    return found.verdict, {item.name: item.value for item in found.figures}


@pytest.mark.parametrize(
    ("turns", "verdict", "capacity"),
    [
        (("two old 70 Ah and a new 90 Ah in parallel",), "marginal", 230.0),
        (("3 x 80 Ah plus one 110 Ah, all in parallel, ok?",), "marginal", 350.0),
        (("a pair: one 70 Ah and one 90 Ah in parallel",), "marginal", 160.0),
        (("two batteries, one 70 Ah and one 90 Ah, in parallel ok?",), "marginal", 160.0),
        (("two 70 and 90 Ah agm in parallel",), "marginal", 160.0),
        ((ALIKE, "sorry, 110 and 85"), "marginal", 195.0),
        ((ALIKE, "one of them is 85"), "marginal", 195.0),
        ((ALIKE, "the other one's 85 Ah"), "marginal", 195.0),
        ((ALIKE, "only one is 85 Ah", "and in series?"), "no", 85.0),
        ((ALIKE, "85 each"), "information", 170.0),
        (("110 ah agm beside a 110 ah gel, in parallel?", "both agm then, 110 and 80"), "marginal", 190.0),
    ],
)
def test_each_sort_counts_with_its_own_figure(turns, verdict, capacity):
    found, told = figures(talk(*turns), "bank-wiring")
    assert (found, told["bank_capacity"]) == (verdict, capacity)


def test_the_volts_of_a_mixed_row_are_told_where_they_are_asked():
    reply = talk("two old 12 V 70 Ah and a new 90 Ah together, ok?", "and in series, what volts?")
    found, told = figures(reply, "bank-wiring")
    assert (found, told["bank_voltage"]) == ("no", 36.0)
    assert "36\u00a0V" in reply.answers[0].headline


@pytest.mark.parametrize(
    ("turns", "verdict"),
    [
        ((ALIKE, "one is gel"), "no"),
        (("two 95 ah agm 750 cca in parallel, pike ok?", "one is lithium, 95 Ah"), "no"),
        (("two 110 ah agm in parallel, 20 A charger ok?", "one of them is flooded"), "no"),
    ],
)
def test_one_of_another_kind_is_never_joined(turns, verdict):
    found, _ = figures(talk(*turns), "bank-wiring")
    assert found == verdict


ROW = "two 90 Ah agm in series for a Sturgeon, 760 cca each. ok?"


@pytest.mark.parametrize(
    ("later", "topic", "verdict"),
    [
        ("one is only 600", "run-check", "no"),
        ("one is 950", "run-check", "marginal"),
        ("one has 60 Ah", "bank-wiring", "no"),
        ("one of them is gel", "bank-wiring", "no"),
    ],
)
def test_in_series_the_weaker_one_decides(later, topic, verdict):
    assert [(item.topic, item.verdict) for item in talk(ROW, later).answers] == [(topic, verdict)]


def test_cables_of_two_sizes_are_no_batteries():
    told = talk(ALIKE, "which cable for a Pike over 6 m, 70 and 95?").answers
    assert all(item.of == 1 for answer in told for item in answer.understood if item.fact == "battery.capacity")


@pytest.mark.parametrize(
    ("later", "fact", "value"),
    [
        ("at 110 and 160 A, how long", "battery.capacity", 110.0),
        ("the bow one reads 12.1", "reading.voltage", 12.1),
        ("or one 24 V lfp, 150 Ah", "battery.chemistry", "lfp"),
    ],
)
def test_what_only_looks_like_a_second_one_is_the_first(later, fact, value):
    found = (item for answer in talk(ALIKE, later).answers for item in answer.understood)
    told = {item.fact: item.value for item in found if item.of == 1}
    assert told[fact] == value


@pytest.mark.parametrize(
    ("turns", "gone"),
    [
        (("gel in the bow is 6 years, load test gave 10.1 V at half cca. change it?", "and the agm aft, 8 years"),
         "reading.load_voltage"),
        (("agm 800 cca, 6 years old, replace?", "and the house one, gel, 4 years"), "battery.cca"),
        (("wet house bank reads 12.4, 4 years old. replace?", "what about the gel in the bow, 7 years"),
         "reading.voltage"),
    ],
)  # fmt: skip
def test_a_battery_elsewhere_has_figures_of_its_own(turns, gone):
    reply = talk(*turns)
    told = {item.fact for answer in reply.answers for item in answer.understood}
    assert reply.answers[0].topic == "replacement"
    assert "battery.age" in told
    assert gone not in told


@pytest.mark.parametrize(
    ("later", "verdict"),
    [
        ("200 A continuous, 450 peak", "no"),
        ("label: 300 A continuous and 450 peak", "yes"),
        ("300 A cont, 350 A peak", "no"),
    ],
)
def test_the_peak_on_a_label_is_the_batterys(later, verdict):
    (found,) = talk("will a 120 Ah lithium run the Pike?", later).answers
    told = {item.fact: item.value for item in found.understood}
    assert (found.verdict, told["load.peak"]) == (verdict, 390)
    assert "battery.peak_current" in told


def test_a_peak_that_the_thruster_is_said_to_take_is_the_thrusters():
    (found,) = talk("will a 120 Ah lithium run a 300 A thruster?", "the thruster peaks at 500").answers
    assert {item.fact: item.value for item in found.understood}["load.peak"] == 500.0


TWO = "two 12 V 100 Ah 640 CCA agm in parallel, what do I get?"


@pytest.mark.parametrize(
    ("turns", "verdict", "capacity"),
    [
        ((TWO, "may I add a third that's 80 Ah?"), "marginal", 280.0),
        ((TWO, "and if I put another 60 Ah beside them?"), "marginal", 260.0),
        ((TWO, "can I connect two more of 70 Ah?"), "marginal", 340.0),
        ((TWO, "can I add a third one?"), "yes", 300.0),
        ((TWO, "shall I add a third person to my account?", "and in parallel?"), "information", 200.0),
        (("I've two 90 Ah wet ones in parallel. Could I add another of 120 Ah?",), "marginal", 300.0),
        (("three 12 V 80 Ah wet in parallel, may I add a fourth of 80 Ah?",), "yes", 320.0),
        (("four 12 V 80 Ah wet in parallel, may I add a fifth of 60 Ah?",), "no", 380.0),
        (("two 12 V 100 Ah gel in series. May I add a third of 80 Ah?",), "no", 80.0),
    ],
)
def test_a_further_battery_is_one_more_beside_those_there(turns, verdict, capacity):
    found, told = figures(talk(*turns), "bank-wiring")
    assert (found, told["bank_capacity"]) == (verdict, capacity)


def test_the_starting_power_of_a_further_battery_is_not_made_up():
    assert "bank_cca" in figures(talk(TWO), "bank-wiring")[1]
    assert (
        "bank_cca"
        not in figures(talk(TWO, "and with another 60 Ah put beside them, I add another 60 Ah"), "bank-wiring")[1]
    )


def test_a_third_battery_counts_where_it_has_to_run_a_thruster():
    asked = "will two 600 CCA agm batteries in parallel run a Pike?"
    two, three = (figures(talk(*turns), "run-check")[1] for turns in ((asked,), (asked, "and if I add a third?")))
    assert three["terminal_voltage_at_inrush"] > two["terminal_voltage_at_inrush"]
