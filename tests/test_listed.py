"""The items of a message: numbered lists, several questions, lists of wants; and what each of them is answered."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.routing.listed import items, numbered, wants


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("1) cable? 2) fuse? 3) drop", ["cable?", "fuse?", "drop"]),
        ("Two. 1. Is 12.4 V ok? 2. May it lie on a side? Thanks, Jo", ["Is 12.4 V ok?", "May it lie on a side?"]),
        ("a) will it turn b) breaker rating", ["will it turn", "breaker rating"]),
        ("Question 1, which lugs? Question 2, which fuse?", ["which lugs?", "which fuse?"]),
        ("(i) how full? (ii) what charger?", ["how full?", "what charger?"]),
        ("How full? And is 10 A right?", ["How full?", "And is 10 A right?"]),
        ("Should it be AGM? Yes. Which CCA then? And the fuse?", ["Which CCA then?", "And the fuse?"]),
        ("a) charger's broken b) solar's ashore. Does it keep?", []),  # it tells, and asks once
        ("12.4 V. ok?", []),
        ("Can it freeze? At -10? And at -20?", []),  # one question of several values
        ("Why? " * 20, []),  # no list that somebody wants answered
    ],
)  # fmt: skip
def test_a_message_is_cut_into_its_items(text: str, parts: list[str]) -> None:
    assert [text[start:end].strip() for start, end in items(text)] == parts


def test_the_last_item_ends_with_its_sentence() -> None:
    text = "1) Is it full? 2) May I charge it? Kind regards, the mate"
    start, end = numbered(text)[-1]
    assert text[start:end] == " May I charge it?"


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("what cable, fuse and lugs for 90 A?", ["what cable", "fuse", "lugs"]),
        ("Wire size & breaker please", ["Wire size", "breaker please"]),
        ("need the lowest CCA for a 24 V unit, and a fuse", ["need the lowest CCA", "a fuse"]),
        ("The fuse, the switch and the box are here. What cable?", []),
        ("Same fuse, new cable, 7 m. Which?", []),
        ("we run a fridge, lights and a radio", []),  # nothing is wanted
    ],
)
def test_wants_are_things_that_are_only_named(text: str, named: list[str]) -> None:
    assert [part.strip(" ?") for part in wants(text)] == named


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("1) does an 800 CCA AGM turn the Pike? 2) which fuse? 3) how often is it charged over winter?",
         ["run-check", "fuse-size", "storage"]),
        ("120 Ah gel, 15 A charger with AGM and gel on it. 1. which setting 2. is 15 A enough 3. how long from half",
         ["charger-setting", "charger-size", "charge-time"]),
        ("150 Ah LiFePO4, old 20 A charger. 1) Is its AGM setting ok? 2) Is 20 A enough? 3) Can the alternator charge "
         "it straight?", ["charger-setting", "charger-size", "dc-dc"]),
        ("Minnow into a launch, lead, 4 m one way. Battery, cable, fuse: all three sizes on a postcard please",
         ["bank-size", "cable-size", "fuse-size"]),
        ("24 V motor of 140 A, 5 m one way. I need the battery, the copper and the breaker on one order.",
         ["bank-size", "cable-size", "fuse-size"]),
        ("Three blanks: fuse / cable / charger. 24 V, 175 A, 5 m one way, 2x 110 Ah AGM in series",
         ["fuse-size", "cable-size", "charger-size"]),
        ("For a quote: Minnow, 12 V, 4 m each way. Cable in mm2, breaker, smallest CCA.",
         ["cable-size", "fuse-size", "bank-size"]),
        ("need cable, fuse and lowest cca for a 24 V thruster of 240 A, 7 m one way",
         ["cable-size", "fuse-size", "bank-size"]),
        ("Two batteries, AGM 95 Ah thruster and flooded 190 Ah house, charger with 3 outputs, 28 A. Outputs enough, "
         "amps right, AGM setting ok for both?", ["charger-banks", "charger-size", "charger-setting"]),
        ("LiFePO4 120 Ah 12 V rested at 13.2 V, -2 C. SOC? And can I use the 30 A charger?",
         ["rest-voltage", "charger-size"]),
        ("AGM 12.4 V after a night. How full? And is 9 A right for its 80 Ah?", ["rest-voltage", "charger-size"]),
        # one question with what it tells beside it
        ("Tracker pulls 40 mA, 110 Ah gel. how long until half, and does a 30 W panel keep her up over the winter?",
         ["standing-drain", "solar"]),
        ("12.5 before, 9.4 with the thruster on, 650 CCA, 200 A. Is 9.4 poor? And full again by when, 10 A on 85 Ah?",
         ["load-voltage", "charge-time"]),
        ("Everything new, 160 A, 12 V, 50 mm2, 9 m one way. How many volts stay on the road?", ["voltage-drop"]),
        ("11.3 V at the posts while the Pike runs, 9.7 V at its terminals: what is wrong, and how much is lost?",
         ["load-voltage"]),
        ("24 V from 2x 12 V LFP 150 Ah, isolated DC-DC 20 A from 12 V, 115 A alternator. Input amps, and is the "
         "alternator big enough?", ["dc-dc"]),
        ("80 Ah AGM, lights 4 A. How long does it last, and what volts do I stop at?", ["run-time"]),
        ("one cell 1.180, the other five 1.250. throw it away or can it be saved?", ["specific-gravity"]),
        ("Minnow on an AGM of 95 Ah, 750 CCA. Run time to half?", ["run-time"]),
        ("Sturgeon, two 12 V 120 Ah AGM 750 CCA in series: minutes to half?", ["run-time"]),
        ("170 amps, 20 ft each way, 12 volt. AWG, and that in mm2 please", ["cable-size"]),
    ],
)  # fmt: skip
def test_every_item_is_answered_and_nothing_else(text: str, topics: list[str]) -> None:
    assert [answer.topic for answer in default_desk().ask(text).answers] == topics


def test_a_season_alone_goes_on_with_the_panel() -> None:
    desk = default_desk()
    first = desk.ask("50 W panel against 30 mA on an 80 Ah flooded battery, does it cover it?")
    then = desk.ask("and in lay-up?", thread=first.thread)
    assert [answer.topic for answer in then.answers] == ["solar"]
    assert then.answers[0].figures[0].value == pytest.approx(50 * 0.75 / 13.5)
