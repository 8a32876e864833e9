"""Whole messages whose facts stand in an unusual way: what is told decides, and not what is usual."""

from __future__ import annotations

from typing import Any

import pytest

from service.leadsman import default_desk
from service.render.as_text import as_text
from service.reply import Answer
from tests.talks import talk

TWO_BANKS = "friend jumped the bow bank 24v onto the 12v engine, loud bang, one batt split. what cca to buy for Pike"


def answer(text: str, topic: str) -> Answer:
    return next(item for item in default_desk().ask(text).answers if item.topic == topic)


def after(turns: tuple[str, ...], topic: str) -> Answer:
    """The answer on a topic to the last turn of a conversation."""
    return next(item for item in talk(*turns).answers if item.topic == topic)


def figure(found: Answer, name: str) -> Any:
    return next(item.value for item in found.figures if item.name == name)


@pytest.mark.parametrize(
    ("text", "topic", "verdict"),
    [
        ("One battery rests at 12.6, the other at 11.9, both wet 800 CCA in parallel. Run a 200 A thruster?",
         "run-check", "no"),  # the emptier one decides
        ("24 V system: 12.7 and 12.1 resting on the two batteries, AGM 900 CCA each, thruster 200 A ok?", "run-check",
         "no"),
        ("650 CCA engine start battery, a 90 A bow thruster on it as well. Will it run it?", "run-check", "marginal"),
        ("A 650 CCA and an 850 CCA flooded in parallel, thruster pulls 380 A, will they run it?", "run-check",
         "marginal"),  # 1500 CCA together hold 10.3 V, but they are unlike
        ("Group 27 out, want a group 31 in the same tray, does it fit?", "group-size", "no"),
        ("Swapping a group 31 for a group 27, will the 27 fit in the 31 tray?", "group-size", "yes"),
        ("24 V bank, can I take 12 V for the radio off the bottom battery?", "bank-wiring", "no"),
        ("Charger has AGM and GEL buttons, it's on AGM now and the battery is a gel. Matter?", "charger-setting", "no"),
        ("I leave a bench supply set at 14.4 on my AGM all winter, all right?", "charger-setting", "no"),
        ("Lithium at 9.2 V, can I charge it?", "charger-setting", "no"),  # its maker decides
        ("Old antimony wets, 30 °C all summer, standing 3 months unplugged. Still alive after?", "storage", "no"),
        ("Battery A is 1.265 in every cell, battery B is 1.190 in every cell. Both ok?", "specific-gravity",
         "marginal"),
    ],
)  # fmt: skip
def test_the_verdict_follows_what_is_told(text, topic, verdict):
    assert answer(text, topic).verdict == verdict


@pytest.mark.parametrize(
    ("text", "topic", "name", "value"),
    [
        ("AGM 200 Ah, 25 A charger, from 50 to 80 percent, how long?", "charge-time", "charge_time", 60 * 1.1 / 25),
        ("LFP 150 Ah, up to 90 percent on a 40 A charger, how long?", "charge-time", "charge_time", 105 * 1.03 / 40),
        ("I drew 60 amp hours from my 200 Ah AGM. 20 A charger, how long?", "charge-time", "charge_time",
         60 * 1.1 / 20 + 2),
        ("2560 Wh 24 volt lithium, what size charger?", "charger-size", "charger_current_high", 50),  # 25.6 V: 100 Ah
        ("24 V thruster, 150 A running, 400 at kick-in, what CCA must I look for?", "bank-size", "required_cca",
         400 * 6 / 3.6),
        ("Cable for a 12 V thruster of 3 kW shaft power, 6 metres one way, in mm2?", "cable-size", "gauge", "2/0"),
        ("Sealed box for one 12 V 100 Ah AGM that's only ever on float, what airflow?", "ventilation", "airflow", 0.03),
        ("Hydrometer 1.150, minus 17 forecast tonight. How full is it?", "specific-gravity", "corrected_gravity", 1.15),
        ("Battery 750 EN amps, what is that in CCA?", "rating-convert", "cca", 750),
        ("4 x 12 V 100 Ah 600 CCA, two in series and two of those in parallel, what do I get?", "bank-wiring",
         "bank_cca", 1200),
    ],
)  # fmt: skip
def test_the_figure_follows_what_is_told(text, topic, name, value):
    found = figure(answer(text, topic), name)
    assert found == (value if isinstance(value, str) else pytest.approx(value, rel=0.02))


@pytest.mark.parametrize("ask", ["How long to charge from half with 20 A?", "What charger does it want?"])
def test_nothing_tells_how_to_charge_a_battery_that_is_a_danger(ask):
    first, *others = default_desk().ask(f"100 Ah AGM, it is swollen. {ask}").answers
    assert first.verdict == "stop"
    assert others
    assert all(item.verdict == "no" and not item.figures for item in others)


def test_the_volts_of_the_second_battery_are_not_those_of_the_first():
    found = answer("12 V 100 Ah AGM and a 24 V pair of 60 Ah gels: what size charger for each?", "charger-size")
    assert "AGM takes a charger" in found.headline


@pytest.mark.parametrize(
    ("text", "topic", "verdict", "says"),
    [
        ("Minnow on the start battery, 90 Ah 800 CCA, ok for a weekend?", "run-check", "marginal",
         "leave the engine without the power to start"),
        ("Owner wants start + thruster off one 110 Ah wet battery, 700 CCA, Minnow.", "run-check", "marginal",
         "leave the engine without the power to start"),
        ("A start battery type, 800 CCA, only for the Minnow, in the bow. Will it run it?", "run-check", "yes", "11.0"),
        ("Battery is a 100 Ah lithium with 100 A on the sticker. Pike. Ever going to work?", "run-check", "no",
         "allows 100 A, and the Pike draws 260 A"),
        ("100 Ah lithium, 260 A on the thruster's label, ok?", "run-check", "no", "your thruster draws 260 A"),
        ("A 12 volt battery with \"1000 A\" on it and nothing else, Pike ok?", "run-check", "yes", "800 CCA"),
        ("How many amps does a 3 kW 24 V thruster pull?", "rating-convert", "information", "125 A"),
        ("A 6 kW shaft thruster at 24 V, what does it draw?", "rating-convert", "information", "6 kW at the shaft"),
        ("What's the RC of a 100 Ah flooded battery?", "rating-convert", "information", "160 min"),
        ("How many minutes of reserve capacity is a 90 Ah gel?", "rating-convert", "information", "167 min"),
        ("How many 800 CCA AGMs in parallel for a 900 A thruster?", "bank-size", "information", "Three 800 CCA"),
        ("3 kW thruster on 24 V, will 700 CCA do?", "run-check", "yes", "700 CCA"),
        ("12.45 V on 1 Nov, 12.20 V on 1 Dec, 11.95 V on 3 Jan, a wet one, nothing on. Ok?", "rest-voltage", "no",
         "11.95 V"),
        ("My battery says 19.2 on the meter, it's a 12 V.", "rest-voltage", "needs-facts", "cannot read 19.2 V"),
        ("Flat in about 10 days, 0.35 A with all off, 100 Ah AGM. Does that add up?", "standing-drain", "information",
         "5.9 days"),
        ("0.1 A drain, 100 Ah wet, away for 30 days. Ok?", "standing-drain", "no", "away for 30 days"),
        ("Every cell 1.210, charged overnight. Ok?", "specific-gravity", "marginal", "no longer fills"),
        ("1.235 1.240 1.235 1.180 1.235 1.240 at 15 C, one dead?", "specific-gravity", "no", "the one at 1.180"),
        ("Gel, full, laid up 1 Nov to 15 Apr at 5 C. All right?", "storage", "yes", "after 165 days"),
        ("24.7 at rest after 14 h, 2 x 12 V AGM in series. OK to leave over Christmas?", "storage", "marginal",
         "charge it full first"),
        ("Two 12 V wets in series, one is new, one is from 2019, for my Sturgeon. Ok?", "bank-wiring", "no",
         "an old and a new battery"),
        ("Two 12 V 100 Ah wets for my Sturgeon, series or parallel?", "bank-wiring", "information", "In series"),
        ("110 Ah flooded, 180 A motor, how long before it's dead if I hold the button?", "run-time", "information",
         "15 minutes until it is empty"),
    ],
)  # fmt: skip
def test_what_is_told_loosely_counts(text, topic, verdict, says):
    found = answer(text, topic)
    assert (found.verdict, says in found.headline.replace("\u00a0", " ")) == (verdict, True), found.headline


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "says"),
    [
        (("2 x 6 V 220 Ah GC2 in series. Volts, Ah?", "can I add a 12 V 100 Ah AGM in parallel"), "bank-wiring", "no",
         "never be joined"),
        (("12.2 on the wet one, overnight", "and the other one is 12.6, same age. Can I link them?"), "rest-voltage",
         "no", "charge the low one"),
        (("12.4, AGM, sat 2 days", "and the other one says 11.7"), "rest-voltage", "no", "11.7 V"),
        (("Gel, full, 1 Nov to 15 Apr at 5 C, ok?", "same but wet ones"), "storage", "yes", "wet-cell"),
        (("1/0 for 260 A at 12 V over 20 ft each way at 10 %, ok?", "he used 10.8 not 10.75"), "cable-size",
         "needs-facts", "1/0"),
    ],
)  # fmt: skip
def test_a_follow_up_counts_as_told(turns, topic, verdict, says):
    found = after(turns, topic)
    assert (found.verdict, says in found.headline.replace("\u00a0", " ")) == (verdict, True), found.headline


@pytest.mark.parametrize(
    "text", ["do i use 1.265 or 1.280 for full", "1.250 or 1.280 counts as full on a wet battery?"]
)
def test_which_gravity_is_full_is_no_reading(text):
    found = answer(text, "specific-gravity")
    assert (found.verdict, found.figures) == ("information", ())
    assert found.headline.startswith("Take 1.265 for full")


def test_a_choice_of_cells_is_a_reading():
    assert answer("cells read 1.265 or 1.280, is it full?", "specific-gravity").verdict == "yes"


def test_sides_that_are_all_alike_are_not_told():
    reply = default_desk().ask(TWO_BANKS)
    assert "as above" not in as_text(reply)


@pytest.mark.parametrize(
    ("turns", "topic", "says"),
    [
        (("Minnow on the start battery, 90 Ah 800 CCA, ok?",
          "what about my other boat, 24 V Sturgeon and two 600 CCA wets", "and the first one at minus 5"),
         "unclear", "one boat at a time"),
        (("Battery says RC 180, how many amp hours?", "and how long would it do a Minnow then"), "run-time",
         "about 13 minutes"),  # rounded down
        (("Pike and one 850 CCA wet battery, it just groans lately. Is that enough?",), "run-check", "another cause"),
        (("Out at the end of October, back in April, two wet 110s, shed at 4 C. Will they be ok?",), "storage",
         "after 152 days"),
        (("Laid up from October to April, AGM, how often do I look?",), "storage", "look every 90 days"),
        (("What is a BMS and do I need one?",), "meaning", "safety switch"),
        (("He swaps the twin 105 Ah AGMs feeding his Pike for one 200 Ah lithium, 200 A continuous. Does that work?",),
         "run-check", "your 200 Ah lithium battery allows 200 A"),  # what comes in is judged
        (("upgrading from one 500 CCA flooded to two 100 Ah lithium in parallel, 150 A continuous each. Pike?",),
         "run-check", "over the 300 A allowed"),
        (("lithium 200 Ah out, replacing it with an 800 CCA AGM. Will it run the Pike?",), "run-check",
         "your 800 CCA AGM battery holds"),
        (("18650 pack 12v 60ah home made from ebike cells for the minnow, owner wants our blessing + charge voltage",),
         "run-check", "until then we give no charging volts"),
    ],
)  # fmt: skip
def test_what_is_asked_beside_it_counts(turns, topic, says):
    found = after(turns, topic)
    assert says in found.headline.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "says"),
    [
        (("0.18 A with everything off, 110 Ah. How many days before it's half down?",), "standing-drain", "information",
         "12 days"),
        (("12.1 on battery one, 12.75 on battery two, joined as 24 V, both AGM, nothing on for a day. What's wrong?",),
         "rest-voltage", "no", "12.1 V is about 35 %"),
        (("Lithium, 150 A continuous, 300 A for 5 seconds. Pike. Works?", "and a second one the same in parallel"),
         "run-check", "marginal", "240 A can be relied on"),
        (("Minus 25, wet, half charged. Will it freeze?", "what if I charge them right up first"), "freeze-point",
         "yes", "it is full"),
        (("Hydrometer 1.240 in all cells at 5 C, charged?", "actually one cell is 1.180"), "specific-gravity", "no",
         "differ by 0.060"),
        (("Two Minnows share one 850 CCA AGM, used together. Ok?",), "run-check", "yes", "9.6 V"),  # 420 A at first
        (("Two Pikes on one 1000 CCA battery, ok?",), "run-check", "needs-facts", "both Pikes"),
        (("His lithium at 13.2 V means it is full, as lead never goes over 12.8. Right?",), "rest-voltage", "yes",
         "No: 13.2 V"),
        (("Two AGM 100 Ah, one 2022 and one 2025, in series ok?",), "bank-wiring", "no", "an old and a new"),
        (("100 bursts of 3 s a day, Sturgeon, 2 x 12 V 120 Ah AGM in series, enough?",), "run-time", "yes",
         "in any one hour"),
        (("20 hp trolling motor on a 100 Ah, how long at full?",), "run-time", "needs-facts", "cannot be right"),
        (("340 A bow unit, 12 V. What CCA?", "got 2 x 500 CCA parallel"), "run-check", "yes", "9.5 V"),
        (("12.35 V, AGM. Good or bad?",), "rest-voltage", "marginal", "In between: 12.35 V"),
    ],
)  # fmt: skip
def test_the_figure_that_is_meant_decides(turns, topic, verdict, says):
    found = after(turns, topic)
    assert (found.verdict, says in found.headline.replace("\u00a0", " ")) == (verdict, True), found.headline


@pytest.mark.parametrize(
    ("text", "topic", "first"),
    [
        ('The insurer asks: "confirm the lithium installation is safe and complies". 12 V 200 Ah, Pike, 300 A class T. '
         "Can you write that?", "fuse-size", "No: a 300 A fuse is too small"),
        ("Can you certify that 70 mm2 over 5 m is right for the Pike?", "cable-size", "As far as figures go, yes: 70"),
        ("will my 800 CCA AGM run the Pike, it's a coded vessel", "run-check", "As far as figures go, yes: your 800"),
    ],
)  # fmt: skip
def test_the_desk_vouches_for_no_installation(text, topic, first):
    found = answer(text, topic)
    assert found.headline.replace("\u00a0", " ").startswith(first)
    assert found.working[0].say.startswith("We cannot write that an installation is safe")
    plain = answer("will my 800 CCA AGM run the Pike?", "run-check")
    assert plain.headline.startswith("Yes: ")


@pytest.mark.parametrize("text", ["thks that sorted it", "tks, all clear now", "thanx, will do"])
def test_short_thanks_wants_no_technician(text):
    reply = default_desk().ask(text)
    assert reply.triage.route != "technician"


@pytest.mark.parametrize(
    "text",
    [
        "battery flat. only 8.2 volts!! agm, stood all winter with the heater clock connected. can it be saved?",
        "flat as a pancake, 9.1 V on the wet cell, any hope?",
        "agm reads 8.2 volts at rest",
    ],
)
def test_a_deeply_flat_battery_is_told_so_today(text):
    desk = default_desk()
    reply = desk.ask(text)
    assert [(item.topic, item.verdict) for item in reply.answers] == [("rest-voltage", "needs-facts")]
    assert "deeply flat if it is a 12\u00a0V battery" in reply.answers[0].headline
    assert reply.triage.urgency == "today"
    (after,) = desk.ask("12 volt", thread=reply.thread).answers
    assert after.verdict == "no"
    assert not after.headline.startswith("Yes")


@pytest.mark.parametrize(
    "text",
    [
        "how much water to top up & how often, also is the white fluff on the terminals dangerous",
        "white fluff on the terminals, dangerous?",
    ],
)
def test_growth_on_the_terminals_is_answered_beside_the_water(text):
    assert "Treat the growth as acid, with goggles and gloves" in " ".join(as_text(default_desk().ask(text)).split())


@pytest.mark.parametrize(
    ("first", "then", "verdict", "told"),
    [
        ("can i charge lifepo4 direct from alternator? 70 amp alternator, 100 ah",
         "its about 4 degrees here most mornings, does that matter", "information", "takes 10\u00a0A at most"),
        ("Straight from the alternator into a 200 Ah lithium, all right?",
         "its about 8 degrees here most mornings, does that matter",
         "information", "takes 40\u00a0A at most"),
        ("can i charge lifepo4 direct from alternator? 70 amp alternator, 100 ah",
         "mornings are about -3 degrees here, does that matter", "no", "none at or below"),
    ],
)  # fmt: skip
def test_cold_after_a_question_on_charging_is_about_charging(first, then, verdict, told):
    desk = default_desk()
    (answer,) = desk.ask(then, thread=desk.ask(first).thread).answers
    assert answer.verdict == verdict
    assert told in answer.headline


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("my batt reads 1270 volts lol", "12.70\u00a0V"),
        ("battery shows 1255 V at rest, good?", "12.55\u00a0V"),
        ("wet battery at rest shows 1243 volts, how full", "12.43\u00a0V"),
        ("my agm reads 1268 volts at rest", "12.68\u00a0V"),
    ],
)
def test_a_point_left_out_is_named(text, meant):
    found = answer(text, "rest-voltage")
    assert found.verdict == "needs-facts"
    assert f"we think you mean {meant}" in found.headline
    assert [item.fact for item in found.asks] == ["reading.voltage"]
