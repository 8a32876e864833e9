"""What is charged together, and what may not be charged at all."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.judgements import charging
from service.topics import topic
from tests.building import case

FROST = {
    "battery.chemistry": "lfp",
    "battery.capacity": 100.0,
    "ambient.temperature": 0.0,
    "charger.current": 10.0,
    "solar.power": 50.0,
    "bank.count": 2.0,
    "charger.outputs": 2.0,
}


@pytest.mark.parametrize("name", ["charger-size", "charge-time", "charger-setting", "charger-banks", "dc-dc", "solar"])
def test_no_charging_topic_charges_lithium_at_0_c(name):
    assert topic(name).answer(case(FROST)).verdict == "no"


@pytest.mark.parametrize(
    ("charge", "celsius", "is_frozen"),
    [(50.0, -26.1, True), (50.0, -26.0, False), (0.0, -9.4, True), (100.0, -50.0, False)],
)
def test_lead_at_its_freezing_point(charge, celsius, is_frozen):
    facts = {"battery.chemistry": "flooded", "battery.charge": charge, "ambient.temperature": celsius}
    assert charging.frozen(case(facts)) is is_frozen


def test_without_a_charge_or_a_temperature_nothing_is_known_to_be_frozen():
    assert not charging.frozen(case({"battery.chemistry": "flooded", "ambient.temperature": -40.0}))
    assert not charging.frozen(case({"battery.chemistry": "flooded", "battery.charge": 0.0}))


def test_a_rate_gives_the_amps():
    assert case({"charger.rate": 0.1, "battery.capacity": 210.0})["charger.current"] == pytest.approx(21)


def test_a_kind_not_said_is_never_assumed_for_charging():
    assert charging.known_kind(case({"battery.cca": 800.0})) is None


FACTS = {
    "battery.chemistry": ["flooded", "agm", "gel", "lead", "lfp", "lithium-other"],
    "battery.capacity": [7.0, 100.0, 420.0],
    "battery.count": [1.0, 2.0, 4.0],
    "battery.nominal": [6.0, 12.0],
    "battery.charge": [0.0, 40.0, 100.0],
    "bank.layout": ["series", "parallel", "series-parallel"],
    "bank.voltage": [12.0, 24.0, 48.0],
    "bank.count": [2.0, 3.0],
    "charger.current": [1.0, 20.0, 90.0],
    "charger.setting": ["flooded", "agm", "gel", "lfp"],
    "charger.kind": ["smart", "timer", "trickle", "dc-dc", "alternator", "solar"],
    "charger.outputs": [1.0, 2.0],
    "charger.voltage": [12.0, 13.6, 14.4, 15.2, 28.8, 33.0],
    "charger.isolated": [True, False],
    "charger.input_voltage": [12.0, 24.0],
    "converter.common_negative": [True, False],
    "alternator.current": [60.0, 120.0],
    "ambient.temperature": [-30.0, 0.0, 4.0, 20.0, 35.0],
    "reading.voltage": [4.9, 12.4, 25.0],
    "solar.power": [5.0, 200.0],
    "solar.sun_hours": [0.0, 4.0],
    "drain.current": [0.03, 5.0],
    "storage.time": [120.0],
    "space.volume": [0.3, 3.0],
}
CUES = [
    "detail:equalise",
    "detail:by_itself",
    "detail:left_on",
    "detail:held",
    "detail:harm",
    "detail:too_big",
    "detail:same_charger",
    "detail:part_of_bank",
    "detail:isolation",
    "detail:under_cover",
    "detail:no_controller",
    "detail:closed_space",
    "request:enough",
    "request:how_many",
    "request:may_i",
    "thing:dcdc",
    "thing:alternator",
]
NAMES = ["charger-size", "charge-time", "charger-setting", "charger-banks", "dc-dc", "solar", "ventilation"]
STATED = st.fixed_dictionaries({}, optional={name: st.sampled_from(values) for name, values in FACTS.items()})


@pytest.mark.parametrize("name", NAMES)
@given(facts=STATED, cues=st.sets(st.sampled_from(CUES), max_size=4))
def test_any_facts_get_a_short_answer(name, facts, cues):
    answer = topic(name).answer(case(facts, cues=cues))
    assert 0 < len(answer.headline.split()) <= 30
    assert bool(answer.asks) >= (answer.verdict == "needs-facts")
    assert all(figure.low is None or figure.low <= figure.value <= figure.high for figure in answer.figures)


@pytest.mark.parametrize("name", NAMES[:6])
@given(facts=STATED, cues=st.sets(st.sampled_from(CUES), max_size=4))
def test_frost_and_lithium_never_get_a_yes(name, facts, cues):
    cold = facts | {"battery.chemistry": "lfp", "ambient.temperature": -1.0}
    assert topic(name).answer(case(cold, cues=cues)).verdict not in ("yes", "marginal", "information")


@pytest.mark.parametrize("name", NAMES[:5])
@given(facts=STATED, cues=st.sets(st.sampled_from(CUES), max_size=4))
def test_lithium_straight_from_an_alternator_never_gets_a_yes(name, facts, cues):
    straight = facts | {"battery.chemistry": "lfp", "charger.kind": "alternator"}
    assert topic(name).answer(case(straight, cues=cues)).verdict != "yes"
