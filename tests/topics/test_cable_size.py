"""Which cable: the contract's method on cases by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.judgements import circuit
from service.least_change import least_change
from service.say import NB
from service.topics.cable_size import TOPIC
from tests.building import case
from tests.talks import on, plain
from tests.topics import asked, figures

FEET_20, FEET_15, FEET_10 = 6.096, 4.572, 3.048


@pytest.mark.parametrize(
    ("facts", "wanted"),
    [
        # 10 % for a motor asks for 2/0, the current for 3/0: the larger counts
        (
            {"load.current": 340.0, "cable.length": FEET_20},
            {"gauge": "3/0", "area": 95.0, "gauge_at_10_percent": "2/0", "gauge_for_ampacity": "3/0"},
        ),
        (
            {"load.current": 120.0, "cable.length": FEET_10},
            {"gauge": "6", "gauge_at_3_percent": "1", "gauge_at_10_percent": "6"},
        ),
        (
            {"load.current": 60.0, "bank.voltage": 24.0, "cable.length": FEET_20},
            {"gauge": "8", "gauge_at_3_percent": "4", "gauge_at_10_percent": "8"},
        ),
        # a charger's cable takes 3 %
        ({"charger.current": 20.0, "cable.length": 7.62}, {"gauge": "4", "gauge_at_10_percent": "10"}),
        ({"load.current": 5.0, "cable.length": 11.0, "load.kind": "electronics"}, {"gauge": "8", "area": 6.0}),
        ({"load.model": "Sturgeon", "cable.length": FEET_10}, {"gauge": "1/0", "gauge_at_10_percent": "4"}),
        # in the engine space 2 AWG carries 178.5 A only
        ({"load.current": 180.0, "cable.length": 2.0, "cable.in_engine_space": True}, {"gauge": "1", "area": 50.0}),
    ],
)
def test_a_size_is_proposed(facts, wanted):
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == "information"
    assert figures(answer).items() >= wanted.items()
    assert "conductors_per_pole" not in figures(answer)


def test_beyond_one_cable_equal_ones_for_each_pole_and_a_technician():
    answer = TOPIC.answer(case({"load.current": 600.0, "cable.length": 10.0}))
    assert answer.route == "technician"
    assert figures(answer).items() >= {"conductors_per_pole": 3, "gauge": "3/0", "area": 95.0}.items()


@pytest.mark.parametrize(
    ("facts", "verdict"),
    [
        ({"cable.gauge": "1/0", "load.current": 300.0, "cable.length": FEET_15}, "no"),  # carries 285 A
        ({"cable.area": 70.0, "load.current": 240.0, "cable.length": 9.0, "bank.voltage": 12.0}, "yes"),
        ({"cable.area": 50.0, "load.current": 230.0, "cable.length": 9.0}, "no"),  # 12.3 %
        ({"cable.area": 50.0, "load.current": 200.0, "cable.length": 5.0}, "needs-facts"),  # 195 A at 75 °C
        ({"cable.area": 50.0, "load.current": 200.0, "cable.length": 5.0, "cable.insulation": 105.0}, "yes"),
        ({"cable.area": 50.0, "load.current": 200.0, "cable.length": 5.0, "cable.insulation": 75.0}, "no"),
        ({"cable.gauge": "2/0", "load.current": 260.0, "cable.length": 3.658}, "yes"),
        ({"cable.gauge": "2", "load.current": 250.0}, "no"),  # too thin whatever the length
    ],
)
def test_a_cable_at_hand_is_judged(facts, verdict):
    assert TOPIC.answer(case(facts)).verdict == verdict


@pytest.mark.parametrize(
    ("facts", "first"),
    [
        ({}, "load.current"),
        ({"cable.length": 5.0}, "load.current"),
        ({"load.current": 200.0}, "cable.length"),
        ({"cable.area": 50.0, "load.current": 200.0, "cable.length": 5.0}, "cable.insulation"),
    ],
)
def test_what_is_missing_is_asked(facts, first):
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == "needs-facts"
    assert asked(answer)[0] == first


def test_of_two_cables_the_thinner_that_will_do_is_named():
    answer = TOPIC.answer(case({"cable.area": (70.0, 95.0), "load.current": 260.0, "cable.length": 7.0}))
    assert [option.label for option in answer.compare] == ["70\u00a0mm²", "95\u00a0mm²"]
    assert answer.verdict == "yes"
    assert "70\u00a0mm²" in answer.headline


def test_a_second_cable_of_another_system_is_kept_apart():
    both = case({"cable.gauge": "2/0", "load.current": 200.0, "cable.length": 3.0})
    both.second = {"cable.area": case({"cable.area": 35.0}).stated["cable.area"]}
    other = circuit.second_cable(both)
    assert other is not None
    assert other["cable.cmil"] == pytest.approx(35 * 1973.5)


def test_the_hull_is_no_cable():
    answer = TOPIC.answer(case({"load.current": 150.0, "cable.length": 3.0}, ["detail:hull_negative"]))
    assert answer.verdict == "no"


@pytest.mark.parametrize(
    ("facts", "value"),
    [
        ({"cable.gauge": "1/0", "load.current": 300.0, "cable.length": FEET_15}, "2/0"),
        ({"cable.area": 35.0, "load.current": 160.0, "cable.length": 8.0}, 50.0),
    ],
)
def test_the_least_change_is_the_next_thicker_cable_that_will_do(facts, value):
    found = [least_change(TOPIC, case(facts), lever, "yes") for lever in TOPIC.levers]
    assert [change.value for change in found if change] == [value]


def test_the_catalogue_is_named_where_it_asks_for_more():
    answer = TOPIC.answer(case({"load.model": "Minnow", "cable.length": 4.0}))
    assert (figures(answer)["area"], figures(answer)["area_at_10_percent"]) == (25.0, 16.0)
    assert answer.headline.startswith(f"Use 25{NB}mm²")
    assert f"catalogue asks for it for the Minnow over 4{NB}m (13.1{NB}ft)" in answer.headline


def test_the_catalogue_counts_in_both_systems():
    answer = TOPIC.answer(case({"load.model": "Pike", "cable.length": 6.4}))
    assert (figures(answer)["gauge"], figures(answer)["area"]) == ("2/0", 70.0)


def test_the_picture_marks_the_size_to_fit():
    plot = TOPIC.answer(case({"load.current": 120.0, "cable.length": 5.0})).plot
    assert plot is not None
    assert plot["mark"]["x"] in plot["x"]["values"]
    assert plot["series"][0]["values"] == sorted(plot["series"][0]["values"], reverse=True)


def test_two_runs_stand_side_by_side():
    answer = TOPIC.answer(case({"load.current": 200.0, "cable.length": (0.8, 10.0)}))
    assert [{item.name: item.value for item in option.figures}["area"] for option in answer.compare] == [35.0, 70.0]


@pytest.mark.parametrize(
    ("length", "told"),
    [("four metres", False), ("4 m", False), ("13 ft", True), ("13'", True), ("thirteen feet", True)],
)
def test_a_length_in_words_is_in_the_unit_it_names(length, told):
    found = case({"load.current": 120.0, "cable.length": 4.0})
    found.stated = {**found.stated, "cable.length": replace(found.stated["cable.length"], text=length)}
    assert circuit.in_feet(found) is told


@pytest.mark.parametrize(
    ("text", "limit"),
    [
        (
            "It's a light old boat. What cable size for a 12 V thruster of 200 A, 5 m away?",
            "10 % that suits a thruster",
        ),
        ("She's a light 7 metre cruiser. Cable for a 12 V thruster, 200 A, 5 m?", "10 % that suits a thruster"),
        ("What cable to my Pike at 5 metres? It should be light to carry.", "10 % that suits a motor"),
        ("The lights go dim when I push the thruster, 180 A, 6 m one way, 12 V. What cable?", "suits a thruster"),
        ("Cabin lights flicker with the Pike. Which cable do I need over 4 m?", "10 % that suits a motor"),
        ("Cable size for nav lights, 5 A, 12 V, 8 m?", "3 % that suits navigation lights"),
        ("LED lights draw 4 A, 9 m, 12 V. Which cable?", "3 % that suits electronics"),
        (
            "The lights are dim. They draw 4 A over 9 m at 12 V. What cable size do I need?",
            "3 % that suits electronics",
        ),
    ],
)
def test_a_light_boat_and_lights_that_dim_are_no_load_of_the_cable(text, limit):
    assert limit in plain(on("cable-size", text).headline)


def test_the_loss_is_told_of_the_size_it_belongs_to():
    told = plain(" ".join(step.say for step in on("cable-size", "Minnow 12 V, 4 m from battery, what cable?").working))
    assert "16 mm² loses 1.07 V" in told
    assert "That size" not in told


def test_what_a_cable_may_carry_rounds_down():
    told = plain(on("cable-size", "a thruster of 281 A on 2/0, 3 m away through the engine room, ok?").headline)
    assert "may carry 280 A" in told


def test_amps_of_a_cable_carry_their_unit_once():
    steps = [plain(item.say) for item in on("cable-size", "is 2 AWG ok for a 90 A windlass 10 ft away?").working]
    assert any("may carry" in step for step in steps)
    assert not any("A A" in step for step in steps)
