"""Outputs for banks, and batteries in series."""

import pytest

from service.topics.charger_banks import TOPIC
from tests.building import case
from tests.talks import on, only, plain

PAIR = {"bank.layout": "series", "battery.count": 2.0, "battery.nominal": 12.0, "bank.voltage": 24.0}


@pytest.mark.parametrize(
    "text",
    [
        "Three batteries, none of them joined, one charger: how many pairs of leads must it bring?",
        "Engine, house and bow batteries are kept apart. How many pairs of wires leave the charger?",
    ],
)
def test_pairs_that_are_asked_for_are_no_two_outputs(text):
    found = only(text)
    assert (found.verdict, found.figures[0].value) == ("information", 3.0)


@pytest.mark.parametrize(
    ("facts", "cues", "need"),
    [
        ({"bank.count": 4.0}, set(), 4),
        ({}, {"detail:start_bank", "detail:thruster_bank"}, 2),
        ({}, {"detail:start_bank", "detail:house_bank", "detail:thruster_bank"}, 3),
        ({"battery.count": 2.0, "bank.layout": "parallel"}, set(), 1),
        ({"battery.count": 3.0}, set(), 3),
    ],
)
def test_one_output_for_each_bank(facts, cues, need):
    answer = TOPIC.answer(case(facts, cues=cues))
    assert (answer.verdict, answer.figures[0].value) == ("information", need)


@pytest.mark.parametrize(
    ("have", "banks", "verdict"), [(1.0, 2.0, "no"), (2.0, 2.0, "yes"), (3.0, 2.0, "yes"), (2.0, 3.0, "no")]
)
def test_a_stated_charger(have, banks, verdict):
    assert TOPIC.answer(case({"charger.outputs": have, "bank.count": banks})).verdict == verdict


def test_one_output_does_for_batteries_that_stay_joined():
    facts = {"charger.outputs": 1.0, "battery.count": 2.0, "bank.layout": "parallel"}
    assert TOPIC.answer(case(facts)).verdict == "yes"


@pytest.mark.parametrize(("isolated", "verdict"), [(True, "yes"), (False, "no"), (None, "needs-facts")])
def test_two_outputs_on_batteries_in_series(isolated, verdict):
    facts = PAIR | {"charger.outputs": 2.0} | ({} if isolated is None else {"charger.isolated": isolated})
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == verdict
    if verdict == "needs-facts":
        assert answer.asks[0].fact == "charger.isolated"


def test_how_many_for_a_series_bank_is_told_with_the_condition():
    answer = TOPIC.answer(case(PAIR, cues={"request:how_many"}))
    assert answer.verdict == "information"
    assert "isolated" in answer.headline


def test_one_charger_of_the_full_voltage_is_fine():
    assert TOPIC.answer(case(PAIR | {"charger.voltage": 24.0, "charger.outputs": 1.0})).verdict == "yes"


def test_two_kinds_want_two_settings():
    facts = {"charger.outputs": 2.0, "bank.count": 2.0, "battery.chemistry": ("gel", "flooded")}
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == "marginal"
    assert "take the gel one" in answer.headline


def test_unknown_banks_are_asked_for():
    assert TOPIC.answer(case({})).asks[0].fact == "bank.count"


def test_frost_stops_lithium_here_too():
    facts = {"bank.count": 2.0, "charger.outputs": 2.0, "battery.chemistry": "lfp", "ambient.temperature": -2.0}
    assert TOPIC.answer(case(facts)).verdict == "no"


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("One 24 V charger for two 12 V batteries in series, ok?", "yes"),
        ("Is a 24 volt marine charger all right for two 12 V batteries in series?", "yes"),
        ("One 12 V charger with two outputs for two 12 V batteries in series, ok?", "needs-facts"),
    ],
)
def test_a_charger_named_by_the_volts_of_the_bank(text, verdict):
    facts = {"battery.nominal": 12.0, "battery.count": 2.0, "bank.layout": "series", "bank.voltage": 24.0}
    assert TOPIC.answer(case(facts, text=text)).verdict == verdict


@pytest.mark.parametrize(
    ("text", "theirs"),
    [
        ("Is a charger with two outputs right for two banks?", False),
        ("He says one charger with two outputs will do for two banks.", False),
        ("My charger has two outputs for two banks, ok?", True),
        ("We bought a charger with two outputs for two banks, ok?", True),
    ],
)
def test_a_charger_that_is_only_weighed_is_not_called_theirs(text, theirs):
    facts = {"bank.count": 2.0, "charger.outputs": 2.0}
    assert ("your charger" in TOPIC.answer(case(facts, text=text)).headline) == theirs


@pytest.mark.parametrize(
    "text",
    [
        "Bow bank: two 12 V AGM in series, 24 V. Engine: a 12 V start battery. One charger on sale "
        "has 2 outputs, one has 4 outputs. How many outputs do I need?",
        "How many outputs must it have? Two wet 12 V in series for the 24 V thruster and a 12 V engine battery.",
    ],
)
def test_outputs_for_a_series_and_a_battery_of_12_volts(text):
    found = only("charger-banks", text)
    assert found.verdict == "information"
    assert "a 24\u00a0V charger" in found.headline
    assert "3\u00a0isolated outputs" in found.headline


def test_chargers_that_are_on_offer_are_not_judged_where_the_number_is_asked():
    text = "Engine, house and bow battery. One charger has 2 outputs, another 4 outputs. How many outputs do I need?"
    found = only("charger-banks", text)
    assert found.verdict == "information"
    assert "3\u00a0outputs" in found.headline


def test_a_charger_of_their_own_is_judged():
    text = "Engine, house and thruster battery, and my charger has 2 outputs. Is it enough?"
    assert only("charger-banks", text).verdict == "no"


@pytest.mark.parametrize(
    "text",
    [
        "The 12 V 25 A charger or the 24 V 12 A one for my pair in series, which fills it better?",
        "We own a 24 V 20 A charger and a 12 V 20 A charger, two 90 Ah gels in series. Which one puts more in?",
        "I've a 12v 20a and a 24v 10a charger, the bank is 24 V, which do I use?",
    ],
)
def test_of_two_chargers_the_one_of_the_bank_s_volts_is_used(text: str) -> None:
    found = only(text)
    assert (found.topic, found.verdict) == ("charger-banks", "information")
    assert plain(found.headline).startswith("The 24 V charger, on the whole bank")


@pytest.mark.parametrize(
    "text",
    [
        "Can I use the 24 V charger on a single 12 V battery, watched?",
        "Is the 24 V charger ok for the 12 volt start battery?",
        "Our 24 V charger on just one of the two 12 V batteries, may I?",
        "How long does a 24 V 15 A charger take for a 12 V 110 Ah battery?",
    ],
)
def test_no_charger_of_24_v_goes_on_a_12_v_battery(text: str) -> None:
    found = only(text)
    assert found.verdict == "no"
    assert "a 24 V charger must never go on a 12 V battery" in plain(found.headline).lower().replace(" v ", " V ")


def test_unlike_kinds_in_parallel_are_parted_before_they_share_an_output() -> None:
    first = on("charger-banks", "Can I charge a gel in parallel with an AGM from one output?")
    assert (first.verdict, first.headline) == (
        "no", "No: gel and AGM batteries must not stay joined; apart they want two outputs, each with its own setting.",
    )  # fmt: skip
    assert on("charger-banks", "May two AGMs in parallel share one output of the charger?").verdict == "yes"


def test_what_somebody_swears_of_two_kinds_is_of_ours() -> None:
    swears = "Uncle swears that there's no trouble in wiring a wet battery in parallel with a gel. Is he right?"
    assert on("bank-wiring", swears).verdict == "no"
    assert only("Uncle swears by gel. Mine is an AGM, 12.5 at rest. ok?").verdict == "marginal"


def test_one_bank_of_lithium_is_not_all_of_them():
    answer = on("charger-banks", "how many charger outputs do I want?", "three banks", "one of those is lithium")
    assert "setting for lithium" in answer.headline
    assert "explosive-gas" in [item.id for item in answer.cautions]  # the other two are lead
    assert "setting for lithium" not in on("charger-banks", "how many outputs for three banks of lithium?").headline
