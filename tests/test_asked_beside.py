"""A second question in few words beside the first: both are answered."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from grammar.facts import facts
from service.routing.asked_beside import ANY, rows
from service.routing.tally import table
from tests.talks import talk

READING = Path(__file__).with_name("reading")


def topics_of(text):
    return {item.topic for item in talk(text).answers}


@pytest.mark.parametrize(
    ("text", "first", "second"),
    [
        ("35 mm2, 8 m, 170 A: what is lost? And what should have been fitted?", "voltage-drop", "cable-size"),
        ("1 AWG, 20 ft each way, 140 A. Drop? Upsize?", "voltage-drop", "cable-size"),
        ("50 mm2 over 6 m for a 190 A motor, is that right, and which fuse?", "fuse-size", "cable-size"),
        ("12.3 V this morning after a quiet night, is that poor? AGM, 7 years old, is it due?", "rest-voltage",
         "replacement"),
        ("It falls from 12.7 to 8.8 V with the thruster on. Six years old, on its way out?", "load-voltage",
         "replacement"),
        ("Five cells at 1.260, one at 1.190. Trouble? And must I discard it?", "specific-gravity", "replacement"),
        ("900 MCA, how much CCA? Then will it run a 210 A thruster?", "run-check", "rating-convert"),
        ("RC 140 minutes on the label: what does it mean, and in Ah?", "rating-convert", "meaning"),
        ("12.2 V at rest and the hydrometer says 1.200: how full, and which of them is right?", "specific-gravity",
         "rest-voltage"),
        ("Gel 110 Ah: which setting on the charger, and what amps?", "charger-setting", "charger-size"),
        ("AGM 90 Ah, 9 A charger. Big enough? And how long from half?", "charger-size", "charge-time"),
        ("Hydrometer 1.220 at 8 C: corrected? And at what cold does it freeze?", "freeze-point", "specific-gravity"),
        ("What vent does a wet 120 Ah in the locker need with 20 A, and must it be strapped?", "ventilation",
         "mounting"),
        ("Measurements of a group 31, and how many kilos?", "group-size", "weight"),
        ("It lives under my berth: does it want holding down, and is its breath a danger? Wet.", "mounting",
         "ventilation"),
        ("Two 12 V 90 Ah AGM in series: what is the energy of the bank, and its run time at 150 A?", "run-time",
         "bank-wiring"),
        ("110 Ah AGM: charger amps, and the correct voltages?", "charger-size", "charger-setting"),
        ("whats cca n have i enough of it, 640 of them, for a 170 A thruster", "run-check", "meaning"),
    ],
)  # fmt: skip
def test_a_second_question_in_few_words_is_answered(text, first, second):
    assert {first, second} <= topics_of(text)


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("35 mm2, 8 m, 170 A: how many volts are lost? The yard says it should have been fine.", "cable-size"),
        ("12.6 V after a night off the charger, AGM, two years old. Is that good?", "replacement"),
        ("How long will it run a 5 A fridge? 100 Ah AGM.", "run-check"),
        ("850 MCA, what is that in CCA?", "run-check"),
        ("Hydrometer 1.255 in every cell: how full?", "freeze-point"),
        ("3 kW plate, 250 A on the clamp, 12 V, 5 m one way: which cable? 250 amps?", "rating-convert"),
        ("How long does a 20 A charger take to fill 110 Ah of AGM from half?", "charger-size"),
    ],
)
def test_what_is_not_asked_is_not_added(text, topic):
    assert topic not in topics_of(text)


def test_the_rows_name_topics_and_facts_that_there_are():
    for row in rows():
        assert {row.topic, *row.beside} - {ANY} <= set(table().start)
        assert {*row.untold, *(name for told in row.told for name in told)} <= set(facts())


def test_every_expression_stands_in_some_labelled_message():
    lines = (line for path in READING.rglob("*.jsonl") for line in path.read_text("utf-8").splitlines())
    texts = "\n".join(turn["text"] for line in lines for turn in json.loads(line)["turns"])
    idle = [words for row in rows() for words in row.expressions if not re.search(words, texts, re.IGNORECASE)]
    assert not idle
