"""Another battery in the place of those told of: their number, layout and readings go, the volts stay."""

from __future__ import annotations

import pytest

from service.reply import Answer
from tests.talks import on, plain, talk


def last(*turns: str) -> Answer:
    return talk(*turns).answers[0]


FOUR = "Sturgeon on four 12V 95Ah AGM, two strings of two in series, 700 CCA each, ok?"


@pytest.mark.parametrize(
    ("turns", "verdict", "amps"),
    [
        ((FOUR, "what if I fit LFP 220Ah 24V, 250A cont"), "no", 250.0),
        ((FOUR, "what if I fit LFP 220Ah 24V, 300A cont, 450A peak"), "yes", 300.0),
        ((FOUR, "or one 24V LFP 150Ah, 200A continuous 400A peak"), "no", 200.0),
        (("Pike with two 100Ah agm 700 cca parallel", "swap them for a 300Ah lithium 12V with 300A BMS, 500 peak"),
         "yes", 300.0),
        (("two 12V 450 CCA wet in parallel on the Pike ok?", "or a single 12V 200Ah LiFePO4, 200 A continuous"),
         "no", 200.0),
        (("two 12V 100Ah AGM 750 CCA in series, 280A thruster ok?", "what if I fit LFP 200Ah, 300A cont, 450 peak"),
         "yes", 300.0),  # 24 V stays: two of 12 V are taken
    ],
)  # fmt: skip
def test_the_new_battery_is_judged_by_its_own_limit(turns, verdict, amps):
    answer = last(*turns)
    assert answer.verdict == verdict
    assert next(item.value for item in answer.figures if item.name == "limit_current") == amps


def test_lead_in_the_place_of_lithium_counts_once_too():
    answer = last("LFP 100Ah x2 parallel, BMS 100/200 each, Pike ok?", "what about an AGM 120Ah 900 CCA instead")
    volts = next(item.value for item in answer.figures if item.name == "terminal_voltage_at_inrush")
    assert volts == pytest.approx(12.6 - 390 * 6 / 900)


def test_a_single_one_of_the_same_kind_counts_once():
    answer = last("two 12 V 450 CCA wet in parallel, 200 A 12V thruster ok?", "a single 8D with 1100 CCA instead?")
    volts = next(item.value for item in answer.figures if item.name == "terminal_voltage_at_inrush")
    assert volts == pytest.approx(12.6 - 300 * 6 / 1100)


@pytest.mark.parametrize(
    "later",
    [
        "and if they were LFP 100Ah, 150A cont 200 peak each",
        "what about two LFP 100Ah, 150A cont 200 peak",
        "sorry, it's LFP 100Ah, 150A cont 200 peak",
    ],
)
def test_the_number_stays_where_the_words_are_of_all_of_them(later):
    answer = last("two 12V 100Ah AGM in parallel, 500 CCA each, will they run the Pike?", later)
    assert next(item.value for item in answer.figures if item.name == "limit_current") == 300.0


def test_a_reading_of_the_old_battery_is_none_of_the_new_one():
    answer = last(
        "AGM reads 11.9 V at rest, 800 CCA, will it run the Pike?", "what if I fit LFP 200Ah, 300A cont 500 peak"
    )
    assert answer.verdict == "yes"
    assert "reading.voltage" not in {item.fact for item in answer.understood}


def test_a_charger_that_is_sought_for_another_boat_is_not_that_of_the_first() -> None:
    first = "Is a 30 A charger enough for three 90 Ah wets in parallel?"
    sought = on("charger-size", first, "My second boat has one gel of 90 Ah. Which charger for her?")
    assert (sought.verdict, plain(sought.headline)) == ("information", "90 Ah of gel takes a charger of 9 to 18 A.")
    there = on("charger-size", first, "On my second boat there is a 90 Ah gel. Is that charger right for it?")
    assert there.verdict == "no"
