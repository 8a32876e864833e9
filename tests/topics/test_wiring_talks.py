"""Conversations about cables, fuses and cases: what the last answer says."""

from __future__ import annotations

import pytest

from service.render.as_text import as_text
from service.reply import Reply
from tests.talks import talk


def told(reply: Reply) -> str:
    return " ".join(as_text(reply).split())


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "parts"),
    [
        (("pike, battery aft, 28 foot run. what thickness of cable", "and the fuse?"), "fuse-size", "information",
         ("Fit a 350 A fuse; 500 A is the most for 3/0 AWG",)),
        (("is it ok having the fuse up by the thruster, not by the battery? 2/0 cable, 280 amps",), "fuse-size", "no",
         ("No: a 350 A fuse belongs within 7 in",)),
        (("fuse up by the thruster ok? 2/0 cable, 280 amps", "ok moved it. is 350 right then"), "fuse-size",
         "needs-facts", ("2/0 AWG takes the 350 A fuse, but with 75 °C it is too thin for 280 A",)),
        (("2/0 cable, 280 amps, what fuse", "would 300 do"), "fuse-size", "no", ("300 A fuse is too small for 280 A",)),
        (("2/0 105C cable, 240 amps, what fuse", "and at 300 amps"), "fuse-size", "information", ("Fit a 400 A fuse",)),
        (("2/0 cable, 240 amps, what fuse", "and at 300 amps"), "fuse-size", "needs-facts", ("takes a 400 A fuse",)),
        (("yard says a 200 A fuse on 35 mm2 for a 185 A windlass, I say 250. who has it",), "fuse-size", "marginal",
         ("Take 250 A, better on 50 mm²",)),
        (("do I fit the fuse near the battery or near the thruster",), "fuse-size", "information",
         ("Put the fuse within 7 in",)),
        (("size a fuse for Pike please", "50mm2", "3.5 m one way, is in engine space"), "fuse-size", "no",
         ("50 mm² may carry 208 A", "70 mm² carries it, 95 mm² suits its 350 A fuse")),
        (("340A thruster, 12V, is 2/0 enough?",), "cable-size", "no", ("2/0 AWG may carry 330 A",)),
        (("is 50mm2 ok for a 200 A thruster",), "cable-size", "needs-facts", ("length of the cable decides",)),
        (("is my 700 cca enough for the pike on 2/0",), "run-check", "yes", ("700 CCA",)),
        (('12V thruster "6 kW" no amps on plate, 4/0 at 30 ft. enough cable?',), "cable-size", "no", ("2 of 4/0",)),
        (("1/0 cable 12 ft to a 200 A thruster. what fuse",), "fuse-size", "information", ("Fit a 250 A fuse",)),
        (("petrol engine bay, fuse holder is an open one right on the post, 1/0, 200A thruster, what size fuse",),
         "fuse-size", "no", ("fit an ignition protected one, with a 250 A fuse",)),
        (("340A thruster, 22 ft each way, is 2/0 thick enough", "print on jacket says 75C"), "cable-size", "no",
         ("3/0 AWG cable with 105 °C insulation; or 4/0 AWG cable with insulation like yours",)),
        (("what mm2 does my 24 V thruster want, 420 A running, battery 7.5 m away each way?",), "cable-size",
         "information",
         ("thinnest that will do 120 mm²; in American sizes 4/0 AWG; for 10 % loss 50 mm²", "the current decides")),
        (("Minnow, 4m from batt to thruster each way, what mm2 do i buy",), "cable-size", "information",
         ("for 3 % loss 50 mm²", "the next size up leaves something in hand")),
        (("Sturgeon, bank 30 ft aft, 24 V. awg cable?", "metric?"), "cable-size", "information",
         ("Use 70 mm² (1/0 AWG in American sizes)", "for 10 % loss 50 mm²")),
        (("what does 0/4 welding cable carry, 340 amps 12 volt thruster, 25 foot run there and back 50",), "cable-size",
         "yes", ("445 A with 105 °C insulation, 360 A with 75 °C", "340 A over that run lose 0.89 V (7.4 %)")),
        (("how many amps will 70mm2 carry",), "cable-size", "information", ("330 A with 105 °C", "265 A with 75 °C")),
        (("20 ft run there and back, 200A, which cable?",), "cable-size", "information", ("over 10 ft",)),
        (("Sturgeon: bank 30 ft aft, 24 V. cable?", "two runs of 50 in parallel instead?"), "cable-size", "needs-facts",
         ("two of 50 mm² side by side may carry 294 A", "234 A with 75 °C", "0.92 V")),
        (("105C cable: two runs of 50 mm2 in parallel for 280 A 24 V 30 ft ok?",), "cable-size", "yes",
         ("two of 50 mm² side by side may carry 294 A", "electrician")),
        (("Sturgeon, 30 ft, what do 3 runs of 35mm2 in parallel lose?",), "voltage-drop", "no", ("only from 50 mm²",)),
        (("existing cable is 2 awg, 15 ft, 180 amp thruster 12v. is it losing too much or is it ok",), "voltage-drop",
         "needs-facts", ("2 AWG loses 0.93 V, 7.7 %", "170 A is all it may carry with 75 °C insulation")),
        (("how much does 2 awg lose at 180 A over 15 ft",), "voltage-drop", "information",
         ("0.93 V", "170 A is all it may carry with 75 °C insulation")),
        (("how much does 2 awg lose at 165 A over 15 ft",), "voltage-drop", "yes", ("0.85 V",)),
        (("Sturgeon with 16 mm2 on 7 metres, thats what the yard fitted. big enough?",), "cable-size", "no",
         ("280 A run in it; leave it off, and fit 70 mm²",)),
        (("group 27 tray, will a 31 go in? tray inside is 13 x 7 in",), "group-size", "no",
         ("it wants 13.4 x 7.2 in, and the place has 13.0 x 7.0 in",)),
        (("my tray is 13 x 7 inches, group 27 ok?",), "group-size", "marginal", ("12.4 x 7.2 in",)),
        (("will a group 31 go where my group 27 is sat, box has about 1/2 inch spare at each end",), "group-size", "no",
         ("24 mm longer than a group 27, and 25 mm is spare, with no room for the hold-down",)),
        (("will a group 31 go where my group 27 is, there is 2 inches spare at each end",), "group-size", "marginal",
         ("102 mm is spare",)),
        (("is a group 31 really 330 x 173 mm",), "group-size", "information", ("Group 31 is at most 330 x 173",)),
        (("will a 31 fit in a 27 tray",), "group-size", "no", ("24 mm longer",)),
    ],
)  # fmt: skip
def test_the_last_answer(turns, topic, verdict, parts):
    reply = talk(*turns)
    assert [(item.topic, item.verdict) for item in reply.answers] == [(topic, verdict)]
    for part in parts:
        assert part in told(reply)


@pytest.mark.parametrize(
    "text",
    [
        "cable 70mm2, 6 m, pike. is it ok and what fuse",
        "what cable and fuse for a pike at 20 ft",
        "70mm2 cable 10 m for 250A ok? fuse?",
    ],
)
def test_a_cable_that_is_asked_about_is_answered_beside_its_fuse(text):
    assert [item.topic for item in talk(text).answers] == ["cable-size", "fuse-size"]


def test_a_sum_that_is_asked_for_is_answered_beside_the_cable():
    reply = talk("3 kW 24V thruster how many amps and what cable for 8 m")
    assert [item.topic for item in reply.answers] == ["rating-convert", "cable-size"]


@pytest.mark.parametrize(
    "text",
    [
        "size a fuse for Pike please",
        "where does the fuse go for my Pike on 2/0",
        "Sturgeon, bank 30 ft aft, 24 V. awg cable & fuse?",
        "is the fuse ok up at the bow thruster? 50mm2 200A",
    ],
)
def test_the_place_of_a_fuse_is_told_once(text):
    assert told(talk(text)).count("within 7 in (178 mm)") == 1


def test_what_was_told_is_not_assumed():
    reply = talk("pike, 2/0 105C, 18 ft ea way, outside eng space. drop?")
    assert "(assumed: nothing else was said)" not in told(reply)
