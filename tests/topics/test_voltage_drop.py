"""The loss in a cable, by the contract's method."""

from __future__ import annotations

import pytest

from service.least_change import least_change
from service.topics.voltage_drop import TOPIC
from tests.building import case
from tests.talks import plain, talk
from tests.topics import asked, figures


@pytest.mark.parametrize(  # 10.75 x A x ft there and back / smallest SAE area, or mm2 x 1973.5
    ("facts", "verdict", "volts", "percent"),
    [
        ({"cable.gauge": "2/0", "load.current": 340.0, "cable.length": 6.096}, "no", 1.1686, 9.739),  # carries 330 A
        ({"cable.gauge": "1", "load.current": 120.0, "cable.length": 4.572}, "yes", 0.4975, 4.146),
        ({"cable.area": 70.0, "load.current": 260.0, "cable.length": 9.0}, "yes", 1.1948, 9.957),
        ({"cable.area": 16.0, "load.current": 20.0, "cable.length": 8.0, "bank.voltage": 24.0}, "yes", 0.3574, 1.489),
        ({"cable.gauge": "6", "charger.current": 30.0, "cable.length": 7.62}, "no", 0.6571, 5.476),  # 3 % for a charger
        ({"cable.gauge": "2", "load.current": 320.0, "cable.length": 7.62}, "no", 2.7542, 22.95),
        (
            {"cable.area": 16.0, "load.current": 15.0, "cable.length": 6.0, "load.kind": "electronics"},
            "yes",
            0.2010,
            1.675,
        ),
    ],
)
def test_the_loss_and_its_verdict(facts, verdict, volts, percent):
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == verdict
    assert figures(answer)["drop"] == pytest.approx(volts, abs=0.0005)
    assert figures(answer)["drop_percent"] == pytest.approx(percent, abs=0.005)


@pytest.mark.parametrize(  # at 105 and at 75 °C 1/0 may carry 285 and 230 A, 2/0 330 and 265 A, 6 120 and 95 A
    ("facts", "verdict"),
    [
        ({"cable.gauge": "1/0", "load.current": 250.0, "cable.length": 4.0}, "information"),
        ({"cable.gauge": "1/0", "load.current": 225.0, "cable.length": 4.0}, "yes"),
        ({"cable.area": 70.0, "load.current": 300.0, "cable.length": 3.0}, "information"),
        ({"cable.gauge": "2/0", "load.current": 300.0, "cable.length": 3.0, "cable.insulation": 105.0}, "yes"),
        ({"cable.gauge": "6", "load.current": 110.0, "cable.length": 2.0}, "information"),
        ({"cable.gauge": "1/0", "load.current": 250.0, "cable.length": 8.0}, "no"),  # the loss decides before
    ],
)
def test_insulation_that_is_not_said_decides_as_it_does_for_the_size(facts, verdict):
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == verdict
    assert figures(answer)["drop"] > 0
    assert asked(answer) == (["cable.insulation"] if verdict == "information" else [])


def test_a_cable_put_up_for_approval_waits_for_its_insulation():
    facts = {"cable.gauge": "1/0", "load.current": 250.0, "cable.length": 4.0}
    answer = TOPIC.answer(case(facts, ["detail:asks_good"]))
    assert answer.verdict == "needs-facts"
    assert figures(answer)["drop"] > 0


def test_a_motor_that_nobody_named_is_shown_as_assumed():
    facts = {"cable.area": 50.0, "load.current": 150.0, "cable.length": 4.0}
    assert "for a motor (assumed)" in TOPIC.answer(case(facts)).headline
    assert "(assumed)" not in TOPIC.answer(case(facts | {"load.kind": "windlass"})).headline


def test_an_allowance_in_volts_or_percent_is_kept_to():
    facts = {"cable.area": 50.0, "load.current": 185.0, "cable.length": 5.0}
    tight = case(facts | {"cable.drop": 3.0})
    assert TOPIC.answer(tight).verdict == "no"  # loses 5.5 %


def test_all_that_is_missing_is_asked_current_first():
    assert asked(TOPIC.answer(case({}))) == ["load.current", "cable.gauge", "cable.length"]
    assert asked(TOPIC.answer(case({"cable.gauge": "2/0"}))) == ["load.current", "cable.length"]


def test_two_readings_under_load_show_the_loss():
    answer = TOPIC.answer(case({"reading.load_voltage": 11.4, "reading.load_voltage_at_load": 8.6}))
    assert answer.verdict == "no"
    assert figures(answer)["drop"] == pytest.approx(2.8)


def test_equal_ends_with_nothing_running_prove_nothing():
    answer = TOPIC.answer(case({}, ["detail:equal_ends"]))
    assert answer.verdict == "information"
    assert answer.headline.startswith("Not quite")


def test_what_may_be_lost_is_told_where_only_that_is_asked():
    answer = TOPIC.answer(case({"load.kind": "thruster"}, ["detail:allowed_loss"]))
    assert answer.verdict == "information"
    assert "1.20\u00a0V" in answer.headline


def test_the_least_change_is_a_cable_within_limit_and_ampacity():
    poor = case({"cable.gauge": "2/0", "load.current": 340.0, "cable.length": 6.096})
    found = least_change(TOPIC, poor, TOPIC.levers[0], "yes")
    assert found is not None
    assert found.value == "3/0"


def test_two_cables_side_by_side():
    answer = TOPIC.answer(case({"cable.area": (35.0, 70.0), "load.current": 160.0, "cable.length": 8.0}))
    assert [option.verdict for option in answer.compare] == ["no", "yes"]


@pytest.mark.parametrize(  # the table of the house: the Minnow takes 35 mm2 to 8 m, the Pike 70 mm2 to 8 m
    ("text", "verdict"),
    [
        ("Minnow, 35 mm2 cable, 9 m each way: how many volts do I lose?", "marginal"),
        ("Minnow, 35 mm2 cable, 7 m each way: how many volts do I lose?", "yes"),
        ("The Pike sits at the bow, 70 mm2 of 105 C, 9 m one way. How much is lost in the cable?", "marginal"),
        ("The Minnow hangs on 2 AWG, 8.5 m each way. Is that loss all right?", "marginal"),
        ("A 120 A thruster on 35 mm2, 9 m each way: how many volts are lost?", "yes"),  # no model of the house
        ("Minnow, 25 mm2 cable, 9 m each way: how many volts do I lose?", "no"),
    ],
)
def test_the_cable_that_the_catalogue_asks_for_counts_beside_the_loss(text, verdict):
    (answer,) = talk(text).answers
    assert answer.verdict == verdict
    assert ("our catalogue asks for" in answer.headline) == (verdict == "marginal")
    assert bool(answer.would_change) == (verdict in ("marginal", "no"))


def test_where_the_thruster_sits_is_not_where_the_volts_are_asked_for():
    asked = "The Minnow is at the bow, 35 mm2, 7 m each way."
    (lost,) = talk(f"{asked} How much voltage do I lose in the cables?").answers
    (left,) = talk(f"{asked} What voltage is left at the thruster?").answers
    assert lost.headline.startswith("35")
    assert "reach the motor" in left.headline


@pytest.mark.parametrize(
    ("text", "length"),
    [
        ("Pike 12 V with 3 m of 35 mm2 each way in the loop: how many volts are lost?", 3.0),
        ("Loop of 50 mm2, 4 m each way, Pike 12 V: volts lost?", 4.0),
        ("In the circuit there are 5 metres of 35 mm2 one way, 200 A, 12 V. Drop?", 5.0),
        ("35 mm2, 6 m each way, 12 m total, 200 A, 12 V. Drop?", 6.0),
        ("Loop of 12 m, 35 mm2, 200 A, 12 V. Drop?", 6.0),
        ("35 mm2, 12 m the whole loop, 200 A, 12 V. Drop?", 6.0),
        ("12 m there and back, 35 mm2, 200 A, 12 V. Drop?", 6.0),
    ],
)
def test_each_way_is_one_way_though_a_loop_is_spoken_of(text, length):
    (told,) = (item for item in talk(text).answers[0].understood if item.fact == "cable.length" and item.of == 1)
    assert told.value == pytest.approx(length)


def test_where_no_single_cable_is_enough_the_way_out_is_told():
    thread = ["900 CCA for a 340 A thruster, ok?", "17 m of 70 mm2 cable, what does it lose?"]
    found = next(item for item in talk(*thread).answers if item.topic == "voltage-drop")
    assert found.verdict == "no"
    assert plain(found.headline).endswith("it takes 2 of 95 mm² for each pole.")
    (change,) = found.would_change
    assert (change.fact, change.value) == ("cable.length", 11.8)
    assert [item["value"] for item in change.also if item["fact"] == "cable.area"] == [120]
