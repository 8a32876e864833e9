"""Volts that a model of the house's is not made for: asked back before any cable or fuse, and no minutes at all."""

import pytest

from tests.talks import on, plain


@pytest.mark.parametrize(
    ("topic", "turns"),
    [
        ("fuse-size", ("wat size fuse for the pike 24v and were do i put it",)),
        ("cable-size", ("How thick cable for the Minnow at 24 volts, 5 m one way?",)),
        ("voltage-drop", ("Voltage drop of the 24 V Minnow over 4 m of 25 mm2?",)),
        ("bank-size", ("What battery for the 24V Minnow?",)),
        ("cable-size", ("How thick cable for Sturgeon?", "24V, 7 m away", "and if I had the 12V one")),
        ("fuse-size", ("Fuse for Minnow?", "and for the 24 V one?")),
    ],
)  # fmt: skip
def test_other_volts_than_the_catalogue_s_are_asked_back(topic, turns):
    found = on(topic, *turns)
    assert found.verdict == "needs-facts"
    assert found.headline.startswith("Our ")
    assert "please read its plate first" in found.headline
    assert not found.figures


@pytest.mark.parametrize(
    ("topic", "text"),
    [
        ("fuse-size", "What fuse for the Pike 12v with 95 mm2 of 105 C?"),
        ("fuse-size", "boat is 24 V, what fuse for the Pike on its own 12 V battery?"),
        ("cable-size", "24 V Sturgeon on two 12 V batteries in series, 7 m: which cable?"),
        ("cable-size", "a thruster of 200 A at 24 V, 5 m, which cable?"),
    ],
)
def test_volts_that_fit_the_catalogue_are_worked_with(topic, text):
    assert on(topic, text).verdict == "information"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("battery 12 V 100 Ah AGM, how many minutes can the Sturgeon run on it?",
         "one 12 V battery cannot run the Sturgeon, which needs 24 V"),
        ("How many 5 s bursts for the Sturgeon from a 12V 110 Ah gel?", "one 12 V battery cannot run the Sturgeon"),
        ("How long does the Pike run from my 24 V bank of 100 Ah?", "give 24 V, and the Pike needs 12 V"),
    ],
)  # fmt: skip
def test_there_are_no_minutes_at_other_volts(text, told):
    found = on("run-time", text)
    assert (found.verdict, found.figures) == ("no", ())
    assert told in plain(found.headline)


@pytest.mark.parametrize(
    "text",
    [
        "2 x 12 V 100 Ah AGM in series, Sturgeon, how many minutes?",
        "How many minutes of Sturgeon from 100 Ah AGM?",
        "Pike, 12 V 100 Ah AGM how long?",
        "4 x 6 V 200 Ah in series, how many minutes will the Sturgeon run?",
    ],
)
def test_volts_that_suit_or_are_not_told_give_minutes(text):
    assert on("run-time", text).verdict == "information"


BOAT = "I have a 12 volt boat but the Sturgeon I was offered is 24 volt. How do I get 24 V for it?"
PAIR = "I have two 12V 100Ah AGM batteries. Can I use those?"


def test_two_batteries_for_a_model_of_twice_their_volts_go_in_series():
    assert "in series (plus to minus) give 24 V and 100 Ah" in plain(on("bank-wiring", BOAT, PAIR).headline)
    charged = on("charger-banks", BOAT, PAIR, "And how do I charge them then?")
    assert plain(charged.headline).startswith("One 24 V charger for the whole bank")


def test_those_of_a_12_volt_model_stay_in_parallel():
    text = "12 V boat. Two 12 V 110 Ah in parallel for the Pike, what do I get?"
    assert "in parallel (plus to plus) give 12 V and 220 Ah" in plain(on("bank-wiring", text).headline)


@pytest.mark.parametrize(
    "text",
    [
        "can I run my 12 V Minnow on 24 V for more push?",
        "Does a Pike run on a 24 V bank?",
        "Could I put the Minnow onto 24V?",
    ],
)
def test_a_12_volt_model_is_never_put_on_24(text):
    found = on("run-check", text)
    assert found.verdict == "no"
    assert "is made for 12 V and must not be put on 24 V" in plain(found.headline)


def test_more_power_from_more_volts_takes_another_thruster():
    text = "I want more power, can I go from 12 to 24V?"
    assert on("dc-dc", text).headline.startswith("Only with a thruster made for 24")
    assert on("dc-dc", "what charger goes from 12 to 24 V?").headline.startswith("With a DC-to-DC charger")


def test_a_24_volt_model_on_its_own_volts_is_judged():
    assert on("run-check", "Sturgeon on 24 V, two 800 CCA AGMs in series, ok?").verdict == "yes"
