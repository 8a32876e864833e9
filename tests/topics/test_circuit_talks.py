"""Conversations about cables, fuses, studs and banks: the question that was put is the one that is answered."""

from __future__ import annotations

import pytest

from service.render.as_text import as_text
from tests.talks import talk

IN_PARALLEL = "two 12 V 90 Ah AGMs in parallel now, I want to go to 24 V, only move a link?"


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "parts"),
    [
        (("is 50 mm2 enough for the Pike, 9.5 m away from its battery",), "cable-size", "no", ("fit 95 mm² (3/0 AWG",)),
        (("Will 1 AWG or 2 AWG do for my Pike 30 ft away?",), "cable-size", "no", ("fit 3/0 AWG (95 mm²",)),
        (("May I use the engine block as the minus of my windlass and lay only a plus?",), "cable-size", "no",
         ("No: neither hull nor engine may carry it",)),
        (("my Pike hangs on 9 m of 50mm2. which fuse?",), "fuse-size", "no", ("260 A; fit 95 mm²",)),
        (("1/0 cable to the Pike, there's a 500 A fuse, I think of 250. which?",), "fuse-size", "no",
         ("Neither: 250 A is too small for 260 A, 500 A too large for 1/0 AWG; fit 350 A",)),
        (("fuse for a 12 V thruster of 420 amps?",), "fuse-size", "information",
         ("Fit a 600 A fuse", "a slow bolt-down one, or class T", "the manual's stands")),
        (("which fuse has a 6 kW 12 V thruster",), "fuse-size", "information",
         ("700 A in all: no single cable carries 500 A", "each with a fuse of its own")),
        (("2S2P 12V",), "bank-wiring", "information",
         ("Four 12 V batteries, in pairs in series and the pairs in parallel, give 24 V and twice the amp-hours",)),
        (("a 12 V bank, 2s2p",), "bank-wiring", "information", ("give 12 V and twice the amp-hours of one",)),
        (("A pair of 6 V 210 Ah wets in a row and a second pair likewise, everything in parallel: what does it make?",),
         "bank-wiring", "information", ("Four 6 V batteries", "12 V and 420 Ah")),
        (("four 6 V AGMs of 180 Ah, two in series then in parallel, what's that?",), "bank-wiring", "information",
         ("12 V and 360 Ah", "makes a string of 2; then plus to plus")),
        (("Two 12 V 90 Ah gels in series feed my Sturgeon. May I add two more for double the Ah?",), "bank-wiring",
         "yes", ("24 V and 180 Ah",)),
        (("two 12 V 110 Ah AGM in series, what do I get", "and if I add another pair?"), "bank-wiring", "information",
         ("24 V and 220 Ah",)),
        (("two 12s in series, adding two more for 48 V, ok?",), "bank-wiring", "information", ("give 48 V",)),
        (("My two 12 V 90 Ah AGMs are in parallel now. I want 24 V, do I only move the links?",), "bank-wiring", "yes",
         ("Yes: two batteries in series (plus to minus) give 24 V and 90 Ah", "take the old links off first")),
        (("got 2x12v in series, 24v, want to go back to 12, just swap the link?",), "bank-wiring", "yes",
         ("in parallel (plus to plus) give 12 V",)),
        (("two lithium 100ah in parallel, can I change them to 24 V?",), "bank-wiring", "needs-facts",
         ("only the maker of a lithium battery can allow it in series",)),
        (("Two 12 V AGMs in series, 24 V. My radio is 12 V, how do I power it?",), "bank-wiring", "information",
         ("through a 24 to 12 V converter",)),
        (("do two 12 V 90 Ah last longer in series or in parallel",), "bank-wiring", "information",
         ("Neither lasts longer",)),
        (("The relay hung on once in May, key off, it stopped, not since. Do I need a bigger fuse?",), "hazard", "stop",
         ("No larger fuse: leave the thruster's main switch off until a technician has looked at its relay",
          "If it starts by itself: main switch off at once")),
        (("The relay hangs, the thruster won't stop, it hung once before!!",), "hazard", "stop",
         ("Turn the thruster's main switch off now",)),
        (("battery gets warm when charging, is that normal? gel 90 Ah",), "hazard", "information", ("lukewarm",)),
        (("I want to order lugs, which ones for 50 mm2 cable and an M8 stud? Crimped or soldered?",), "terminals",
         "information", ("Lugs for M8 or 5/16 in and 50 mm² cable, crimped with the tool made for them",)),
        (("what lugs should I order for an M10 stud",), "terminals", "information", ("Use a lug with a hole for M10",)),
        (("in which order do I undo the lugs of my M8 studs",), "terminals", "information", ("Minus comes off first",)),
        (("12 V Pike: which fuse and how long may the cable be with 70 mm2?",), "cable-size", "information",
         ("At most 8 m (26.2 ft) one way",)),
        (("12 V Pike: which fuse and how long may the cable be with 70 mm2?",), "fuse-size", "information",
         ("350 A",)),
        (("what does the 200 A breaker cost",), "other-desk", "information", ("orders desk",)),
        (("whats the price of a fuse for the Minnow?",), "other-desk", "information", ("orders desk",)),
        (("I got the wrong holder and want my money back. How much is the 300A one?",), "other-desk", "information",
         ("orders desk",)),
        (("how much is a 90 Ah AGM battery?",), "other-desk", "information", ("orders desk",)),
        (("which breaker has the Minnow and what does it cost",), "fuse-size", "information", ("175 A",)),
        (("What is the running current of the Pike?",), "bank-size", "information", ("260 A running",)),
        (("How many amps has the Minnow?",), "bank-size", "information", ("120 A running",)),
        (("Battery for my Minnow, 12 V, 6 m off?", "what about lithium?"), "bank-size", "information",
         ("Look for a lithium battery of 120 Ah",)),
        (("two 12 V AGMs as 24, how?", "Photo attached, is it right like that?"), "unclear", "information",
         ("will look at your picture",)),
        (("I replaced one of the pair, 24 V. The other AGM is 4 years old, ok?",), "bank-wiring", "no",
         ("an old and a new battery must not be joined in series",)),
        (("We replaced the other one in March, is this one at 5 years due?",), "replacement", "marginal", ("5 years",)),
        (("cable for a Minnow, 4 m", "And if I take 35 mm2, how long may it be?"), "cable-size", "information",
         ("At most 8 m",)),
        (("A 200 A fuse pops every week, 150 A windlass, 50 mm2 of 105 C. Right size?",), "fuse-size", "yes",
         ("that it blows tells of a fault, so have motor and cable looked at",)),
        (("May charger, windlass and lights be on the same stud?",), "terminals", "information",
         ("At most four rings",)),
        (("Two 12 V 75 Ah for a Minnow, parallel or series?",), "bank-wiring", "information",
         ("In parallel (plus to plus): two batteries give 12 V", "The Minnow takes 12 V, so they go in parallel")),
        (("the lithium label says max 2 in series, I want 2s2p, ok?",), "bank-wiring", "needs-facts",
         ("only the maker of a lithium battery can allow it in parallel",)),
        ((IN_PARALLEL, "my lamps are 12 V, how are they fed?"), "bank-wiring", "information",
         ("through a 24 to 12 V converter",)),
        ((IN_PARALLEL, "no idea what year they are of"), "bank-wiring", "yes",
         ("in series (plus to minus) give 24 V",)),
        (("12.1 on the posts and 11.3 at the motor as it runs. Are my cables too thin?",), "load-voltage", "yes",
         ("No: 0.8 V (7 %) is lost between battery and motor",)),
        (("Gel bank beside the engine, would that do? It gets 55 degrees there",), "mounting", "marginal",
         ("Better not",)),
        (("What happens if my fuse is too weak?",), "fuse-size", "information", ("blows while the motor works",)),
        (("what if the breaker is too big",), "fuse-size", "information", ("can burn before the breaker blows",)),
        (("Would household wire do for the thruster, 6 mm2?",), "cable-size", "no", ("stranded copper",)),
        (("three 100 Ah lithium in parallel for my Pike, each 100 A continuous?",), "run-check", "needs-facts",
         ("390 A in the first instant, over the 300 A allowed all the time",)),
        (("6 x 2 V cells of 300 Ah in series make what?",), "bank-wiring", "information", ("give 12 V and 300 Ah",)),
        (("what is lost in 2 lots of 70mm2 at 250 A, 12 V, 8 m, 105 C cable",), "voltage-drop", "yes",
         ("Two of 70 mm²",)),
        (("Can an 80 A windlass and a 200 A thruster share one fuse?",), "fuse-size", "no",
         ("No, one fuse for each cable: 100 A for 80 A and 250 A for 200 A",)),
        (("They say 3 % voltage drop at most and your sheet has 10, which now?",), "voltage-drop", "information",
         ("10 % counts for a motor, 3 % is for electronics",)),
        (("does the fuse go in the plus or minus",), "fuse-size", "information", ("of the battery plus",)),
        (("The two posts of my battery are not equally thick, is one the plus?",), "terminals", "information",
         ("The thicker of two round posts is plus",)),
        (("What torque on M8 studs, and a washer under the lug?",), "terminals", "no",
         ("No washer under the lug; tighten your M8 stud to 6.6 to 8.5 Nm",)),
        (("can five cable lugs sit on top of each other",), "terminals", "information", ("At most four rings",)),
        (("two gel 90 Ah 12 V in parallel", "and a third one?"), "bank-wiring", "information", ("12 V and 270 Ah",)),
        (("two gel 90 Ah 12 V in parallel", "does it matter that one is 3 years older?"), "bank-wiring", "marginal",
         ("the weaker one wears the other",)),
        (("How do I wire four 6 V 180 Ah for a Minnow?",), "bank-wiring", "information", ("12 V and 360 Ah",)),
        (("A fuse within 7 in cannot be, 12 inches ok?",), "fuse-size", "no", ("305 mm (12 in) away",)),
        (("What size of main switch does a Minnow want?",), "fuse-size", "information",
         ("carries 120 A all the time and 210 A in the first instant",)),
        (("is 50 mm2 any good", "10 m, 24 V, 180 amps, 105 C"), "cable-size", "yes", ("50 mm² loses",)),
        (("Gel in the petrol engine's bay?", "sorry, it's a diesel"), "mounting", "marginal", ("Better not",)),
        (("With what should the terminals be covered?",), "terminals", "information", ("boots or caps",)),
        (("12 V in series, what comes out?",), "bank-wiring", "information", ("give 24 V",)),
        (("a 6 V beside a 6 V of another brand in series?",), "bank-wiring", "information", ("give 12 V",)),
        (("25 m of 50 mm2 left over: two for plus and two for minus, 24 V 150 A, 10 m away, 105 C?",), "cable-size",
         "yes", ("two of 50 mm² side by side", "over 10 m")),
        (("A 900 CCA starting one and a 90 Ah deep cycle in parallel for the Pike, ok?",), "run-check", "yes",
         ("your 900 CCA battery holds",)),
        (("Must the minus lead be the same size?",), "cable-size", "information", ("carries the same current",)),
        (("may I take aluminium cable to the bow?",), "cable-size", "no", ("stranded copper",)),
        (("1 2 both switch, on both when mooring, fine?",), "bank-wiring", "marginal",
         ("Only while charging or docking",)),
        (("The fuse of my Pike is 250 A, the catalogue says 350: must I change it?",), "fuse-size", "no",
         ("Yes: a 250 A fuse is too small for 260 A",)),
        (("four 12 V 90 Ah AGM: two in the bow for 24 V, two aft for 12 V. What chargers?",), "charger-size",
         "information", ("24 V charger",)),
        (("two 12 V in a row for 24. May I take 12 for the vhf off one? Or a 24 to 12 converter instead?",),
         "bank-wiring", "no", ("fit a 24 to 12 V converter",)),
        (("May I lengthen the thruster cable with a butt splice?",), "terminals", "information",
         ("Better one length of cable",)),
        (("can I join two cables under the floor?",), "terminals", "information", ("Better one length of cable",)),
    ],
)  # fmt: skip
def test_the_last_answer_tells(turns, topic, verdict, parts):
    reply = talk(*turns)
    found = [(item.topic, item.verdict) for item in reply.answers]
    assert (topic, verdict) in found
    text = " ".join(as_text(reply).split()).replace("\u00a0", " ")
    for part in parts:
        assert part in text


def test_a_picture_of_a_broken_part_is_the_orders_desk_s():
    reply = talk("My joystick came broken, photos attached. Please send a new one, no refund")
    assert [item.topic for item in reply.answers] == ["other-desk"]


def test_a_price_is_no_question_of_the_size():
    reply = talk("I got the wrong holder and want my money back. How much is the 300A one?")
    assert [item.topic for item in reply.answers] == ["other-desk"]


def test_a_battery_at_the_end_of_a_cable_is_none_to_be_sized():
    reply = talk("5 kW thruster on 12 V, 9 m from the house bank, cable and fuse")
    assert {item.topic for item in reply.answers} == {"cable-size", "fuse-size"}
