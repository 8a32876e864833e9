"""Air for a battery space."""

import pytest

from service.finish import finished
from service.topics.ventilation import TOPIC
from tests.building import case
from tests.talks import talk

WET = {"battery.chemistry": "flooded"}


@pytest.mark.parametrize(
    ("facts", "air"),
    [
        (WET | {"battery.capacity": 200.0, "battery.count": 2.0, "battery.nominal": 12.0}, 2.4),
        (WET | {"battery.capacity": 110.0, "battery.count": 2.0}, 1.32),
        ({"battery.chemistry": "agm", "battery.capacity": 100.0, "bank.voltage": 24.0}, 0.48),
        ({"battery.chemistry": "gel", "battery.capacity": 100.0}, 0.24),
        ({"battery.chemistry": "lead", "battery.capacity": 100.0}, 0.6),  # as wet-cell, which needs most
        (WET | {"battery.capacity": 220.0, "battery.count": 4.0, "battery.nominal": 6.0}, 2.64),
    ],
)
def test_airflow_and_opening(facts, air):
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == "information"
    assert [figure.value for figure in answer.figures] == pytest.approx([air, 28 * air])


def test_float_alone_needs_less():
    facts = {"battery.chemistry": "flooded", "battery.capacity": 100.0}
    assert TOPIC.answer(case(facts, cues={"detail:float_only"})).figures[0].value == pytest.approx(0.15)


@pytest.mark.parametrize(
    "text",
    [
        "What size holes for two wet 110 Ah in a box, and may the lid be airtight?",
        "Box for a 100 Ah AGM: how large the openings, and can I use a tight lid?",
        "Is a sealed plastic box without any holes allowed for two wet batteries?",
        "Is a watertight battery box with a gasket on the lid fine for a 90 Ah gel?",
        "May I close the vents of the box in winter, 120 Ah wet?",
        "Would a lid without gaps do harm on the box of my 110 Ah wet battery?",
    ],
)
def test_an_airtight_box_or_lid_is_answered_no(text):
    (answer,) = talk(text).answers
    assert (answer.topic, answer.verdict) == ("ventilation", "no")
    assert answer.headline.startswith(("No: ", "No, never a closed space or an airtight lid: "))


def test_openings_of_a_closed_locker_are_a_matter_of_size():
    (answer,) = talk("They stand in a closed locker, 200 Ah wet: how large must the openings be?").answers
    assert (answer.verdict, answer.figures[0].name) == ("information", "airflow")


@pytest.mark.parametrize("kind", ["lfp", "lithium-other"])
def test_lithium_gets_no_figure(kind):
    answer = TOPIC.answer(case({"battery.chemistry": kind, "battery.capacity": 300.0}, cues={"detail:closed_space"}))
    assert (answer.verdict, answer.figures) == ("information", ())
    assert "no ventilation" not in answer.headline


@pytest.mark.parametrize(
    ("facts", "cues", "verdict"),
    [
        ({"battery.chemistry": "flooded", "battery.count": 2.0}, set(), "information"),
        ({"battery.chemistry": "agm"}, {"detail:closed_space"}, "no"),
        ({"battery.chemistry": "flooded"}, {"request:what_size"}, "needs-facts"),
        ({}, set(), "information"),
        ({}, {"detail:where_openings"}, "information"),
        ({}, {"detail:how_much_air"}, "needs-facts"),
        ({"battery.capacity": 100.0}, set(), "needs-facts"),
    ],
)
def test_without_all_facts(facts, cues, verdict):
    answer = TOPIC.answer(case(facts, cues=cues))
    assert (answer.verdict, answer.figures) == (verdict, ())


def test_two_openings_want_no_fan():
    facts = {"battery.chemistry": "flooded", "battery.capacity": 100.0}
    answer = finished(TOPIC, case(facts, cues={"detail:fan"}))
    assert "wants no fan" in answer.headline
    assert "makes no spark" in answer.working[0].say
    assert TOPIC.answer(case({"battery.chemistry": "agm"}, cues={"detail:fan"})).headline.startswith("No fan where")


@pytest.mark.parametrize(("where", "told"), [("in a sealed box", True), ("in a locker", False)])
def test_a_sealed_box_may_not_stay_sealed(where: str, told: bool) -> None:
    (found,) = talk(f"Two 12 V 110 Ah flooded ones {where}. How big must the vents be?").answers
    assert any(item.say.startswith("A box that is sealed may not stay so") for item in found.working) is told


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("A chap says boxes want air or they explode. How big must the holes be for a 100 Ah wet?", ["ventilation"]),
        ("I read that the gas can blow up, what opening for two 110 Ah wets at 20 A?", ["ventilation"]),
        ("How big a vent so that they don't explode, 100 Ah wet, 10 A?", ["ventilation"]),
        ("Friends told us lithium may catch fire. Which charger for a 100 Ah LFP?", ["charger-size"]),
        ("Can a wet battery explode with no vent?", ["hazard", "ventilation"]),
        ("I hear they can explode", ["hazard"]),
        ("My pal says the AGM could blow up at 40 A. May I charge it with that, 100 Ah?", ["hazard", "charger-size"]),
        ("Does a wet one explode in a box? How big a vent for 100 Ah, 10 A?", ["hazard", "ventilation"]),
    ],
)
def test_what_somebody_warns_of_is_no_danger_beside_the_question(text: str, topics: list[str]) -> None:
    assert [item.topic for item in talk(text).answers] == topics


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        (
            "My brother's box has no holes. How large must mine be for two 80 Ah gels, and may they stand in a saloon?",
            {"ventilation", "mounting"},
        ),
        (
            "How much air for an 80 Ah AGM, its box has no openings? Is it wise to keep it under the bunk?",
            {"ventilation", "mounting"},
        ),
        ("80 Ah wet in a box under the bunk: how large the vent holes, or a tight lid?", {"ventilation"}),
    ],
)
def test_a_box_without_holes_and_whether_it_may_stand_in_a_cabin(text, topics):
    assert {item.topic for item in talk(text).answers} == topics


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("a chest with four 12 V 90 Ah gels wired for 24 V, two strings of two. Need the air flow.", ["ventilation"]),
        ("Two 12 V 80 Ah AGMs joined in series in a box: what do they give, and how much air do they want?",
         ["bank-wiring", "ventilation"]),
    ],
)  # fmt: skip
def test_how_batteries_in_a_box_are_joined_is_only_told(text, topics):
    assert [item.topic for item in talk(text).answers] == topics
