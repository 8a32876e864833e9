"""Which charger suits how many amp-hours of which kind."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.topics.charger_size import TOPIC
from tests.building import case
from tests.talks import on, plain, talk
from tests.topics import figures


def bank(kind, capacity=100.0, **facts):
    return {"battery.chemistry": kind, "battery.capacity": capacity} | {
        name.replace("_", ".", 1): value for name, value in facts.items()
    }


def figure(answer, name):
    return next(item.value for item in answer.figures if item.name == name)


@pytest.mark.parametrize(
    ("kind", "low", "high"),
    [("flooded", 10, 25), ("lead", 10, 25), ("gel", 10, 20), ("agm", 10, 30), ("lfp", 20, 50)],
)
def test_the_range_for_100_ah(kind, low, high):
    answer = TOPIC.answer(case(bank(kind)))
    assert answer.verdict == "information"
    assert figure(answer, "charger_current_low") == pytest.approx(low)
    assert figure(answer, "charger_current_high") == pytest.approx(high)


@pytest.mark.parametrize(
    ("kind", "amps", "verdict"),
    [
        ("flooded", 25, "yes"),
        ("flooded", 9.5, "yes"),
        ("flooded", 9, "marginal"),
        ("flooded", 4, "marginal"),
        ("flooded", 30, "marginal"),
        ("flooded", 37.5, "marginal"),
        ("flooded", 38, "no"),
        ("agm", 30, "yes"),
        ("agm", 40, "marginal"),
        ("agm", 46, "no"),
        ("gel", 20, "yes"),
        ("gel", 21, "no"),
        ("gel", 25, "no"),
        ("lfp", 50, "yes"),
        ("lfp", 51, "no"),
        ("lfp", 10, "marginal"),
        ("lead", 30, "marginal"),
    ],
)
def test_a_stated_charger_against_the_range(kind, amps, verdict):
    assert TOPIC.answer(case(bank(kind, charger_current=amps))).verdict == verdict


def test_an_unregulated_charger_may_not_be_over_the_range():
    facts = bank("agm", charger_current=40.0)
    assert TOPIC.answer(case(facts, cues={"detail:unregulated"})).verdict == "no"


@pytest.mark.parametrize(
    ("facts", "low"),
    [
        (bank("gel", 110.0, battery_count=2.0, bank_layout="parallel"), 22),  # both on one output
        (bank("agm", 110.0, battery_count=2.0, bank_layout="series", bank_voltage=24.0), 11),
        (bank("flooded", 225.0, battery_count=4.0, battery_nominal=6.0, bank_layout="series"), 22.5),
        (bank("flooded", 90.0, bank_count=3.0), 9),  # each bank by its own output
    ],
)
def test_all_that_one_output_charges_counts(facts, low):
    assert figure(TOPIC.answer(case(facts)), "charger_current_low") == pytest.approx(low)


def test_unlike_batteries_in_parallel_add_up():
    facts = {"battery.chemistry": "agm", "battery.capacity": (70.0, 110.0), "bank.layout": "parallel"}
    answer = TOPIC.answer(case(facts))
    assert figure(answer, "charger_current_high") == pytest.approx(54)
    assert [option.label.replace("\u00a0", " ") for option in answer.compare] == ["70 Ah alone", "110 Ah alone"]


@pytest.mark.parametrize(
    ("celsius", "amps", "verdict"),
    [
        (-1.0, None, "no"),
        (0.0, 20.0, "no"),
        (3.0, 10.0, "yes"),
        (3.0, 11.0, "no"),
        (8.0, 20.0, "yes"),
        (8.0, 21.0, "no"),
    ],
)
def test_lithium_in_the_cold(celsius, amps, verdict):
    facts = bank("lfp", ambient_temperature=celsius) | ({"charger.current": amps} if amps else {})
    assert TOPIC.answer(case(facts)).verdict == verdict


def test_the_headline_answers_the_question_as_it_was_put():
    facts = bank("gel", charger_current=25.0)
    assert TOPIC.answer(case(facts)).headline.startswith("No: 25")
    assert TOPIC.answer(case(facts, cues={"detail:too_big"})).headline.startswith("Yes, too big: 25")


@pytest.mark.parametrize(
    ("facts", "asked"),
    [
        ({}, "battery.capacity"),
        ({"battery.chemistry": "agm"}, "battery.capacity"),
        ({"battery.capacity": 100.0}, "battery.chemistry"),
        ({"battery.chemistry": "lithium-other", "battery.capacity": 100.0}, "battery.chemistry"),
        ({"battery.chemistry": "lfp", "battery.capacity": 200.0, "alternator.current": 90.0}, "charger.kind"),
    ],
)
def test_what_is_missing_is_asked(facts, asked):
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == "needs-facts"
    assert answer.asks[0].fact == asked
    assert not answer.figures


def test_a_kind_not_said_is_answered_only_where_all_kinds_agree():
    small = TOPIC.answer(case({"battery.capacity": 110.0, "charger.current": 2.0}))
    assert (small.verdict, len(small.compare)) == ("marginal", 4)
    assert TOPIC.answer(case({"battery.capacity": 110.0, "charger.current": 30.0})).verdict == "needs-facts"


@given(st.sampled_from(["flooded", "agm", "gel", "lead", "lfp"]), st.floats(5, 1000), st.floats(0.1, 500))
def test_the_named_range_is_itself_a_yes(kind, capacity, amps):
    answer = TOPIC.answer(case(bank(kind, capacity, charger_current=amps)))
    for end in ("charger_current_low", "charger_current_high"):
        again = TOPIC.answer(case(bank(kind, capacity, charger_current=figure(answer, end))))
        assert again.verdict == "yes"


@pytest.mark.parametrize(
    ("text", "verdict", "start"),
    [
        (
            "Can I keep my 30 A charger for the new 120 Ah lithium?",
            "needs-facts",
            "Only if it has a lithium setting: 30 A",
        ),
        (
            "120 Ah of lithium and a 30 A charger from 2011, ok?",
            "needs-facts",
            "Only if it has a lithium setting: 30 A",
        ),
        ("Is a 30 A charger ok for 120 Ah of lithium?", "yes", "Yes: 30 A suits"),
        ("Can I keep my 20 A charger for the new 120 Ah AGM?", "yes", "Yes: 20 A suits"),
        ("Can I keep my 90 A charger for the new 120 Ah lithium?", "no", "No: 90 A"),
    ],
)
def test_of_a_charger_from_before_the_lithium_the_setting_decides(text: str, verdict: str, start: str) -> None:
    found = on("charger-size", text)
    assert (found.verdict, plain(found.headline).startswith(start)) == (verdict, True)


def test_a_thruster_that_is_only_named_beside_a_charger_is_not_checked() -> None:
    text = "Our Pike has a 90 Ah gel. My cousin gave us a 25 A charger for wet cells. May I use it, and is 25 A ok?"
    assert {item.topic for item in talk(text).answers} == {"charger-setting", "charger-size"}


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("Bow: one 80 Ah gel. House: three 105 Ah wets in parallel. How many charger amps for the house?", 31.5, 78.75),
        ("Bow: one 80 Ah gel. House: three 105 Ah wets in parallel. How many charger amps for the gel?", 8, 16),
        ("A wet of 105 Ah for the engine, two AGMs of 80 Ah for the fridge. Amps for the starter?", 10.5, 26.25),
        ("Two 80 Ah AGMs serve the thruster and a 105 Ah wet the house, what amps must the charger have?", 16, 48),
    ],
)
def test_two_banks_of_unlike_kinds_take_each_their_own(text, low, high):
    found = on("charger-size", text)
    assert [figure.value for figure in found.figures] == pytest.approx([low, high])
    assert len(found.compare) == 2
    assert "of its own" in found.headline


@pytest.mark.parametrize(
    "text",
    [
        "One 80 Ah gel or three 105 Ah wets, how many amps of charger would each take?",
        "Two 105 Ah wets in parallel, how many amps of charger?",
    ],
)
def test_a_choice_and_one_bank_are_no_two_banks(text):
    assert "of its own" not in on("charger-size", text).headline


def test_a_single_battery_that_is_asked_of_by_itself_leaves_the_others_out():
    text = (
        "Start battery: wet. House: two AGMs in parallel that are never taken apart. In the bow a single 90 Ah gel for "
        "the thruster. {} How many amps for the bow battery{}?"
    )
    found = on("charger-size", text.format("How many outputs must a charger have?", " on its own"))
    assert figures(found) == {"charger_current_low": 9, "charger_current_high": 18}
    beside = on("charger-banks", text.format("How many outputs must a charger have?", " on its own"))
    assert figures(beside) == {"charger_outputs": 3}
    pair = on("charger-size", "two 90 Ah gels in parallel. How many amps of charger for the pair?")
    assert figures(pair) == {"charger_current_low": 18, "charger_current_high": 36}


def test_lithium_need_not_be_charged_full():
    slow = "loses strength"
    steps = [item.say for item in on("charger-size", "is 25 A enough to charge 180 Ah of lithium?").working]
    assert not any(slow in step for step in steps)
    assert any(slow in item.say for item in on("charger-size", "is 8 A enough to charge 180 Ah of AGM?").working)
