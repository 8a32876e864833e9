"""A technician's shorthand gets few words back as text: no why, sources by short names; the JSON stays complete."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.render.as_text import as_text
from service.wording.shorthand import STYLE, is_shorthand


@pytest.mark.parametrize(
    "text",
    [
        "240A 12V, 16 ft e/w, 105C cable. AWG + fuse?",
        "Minnow on 500 CCA AGM, ok?",
        "LFP 150Ah BMS 150A cont / 300A pk, Minnow?",
        "24V 280A 35ft rt awg",
        "SG 1.245 @ 50F. SOC?",
        "agm 110ah 12v par x2, chgr amps",
    ],
)
def test_figures_and_abbreviations_without_a_sentence_are_shorthand(text):
    assert is_shorthand(text)


@pytest.mark.parametrize(
    "text",
    [
        "Is a 500 CCA AGM enough for the Minnow?",
        "agm 12.4 overnight, should i charge it",
        "12V 100Ah AGM\nhow long at 180 A?",
        "fuse?",
        "wet battery 12.2 volts rested overnight, ok?",
    ],
)
def test_a_sentence_and_an_owners_words_are_not(text):
    assert not is_shorthand(text)


def test_a_short_turn_goes_on_in_shorthand_only_where_it_was_begun():
    assert is_shorthand("fuse?", (STYLE,))
    assert not is_shorthand("what fuse do I need for that then, and where does it go", (STYLE,))
    desk = default_desk()
    first = desk.ask("12V 240A 16ft e/w 105C, AWG?")
    assert desk.ask("fuse?", thread=first.thread).shorthand
    assert not desk.ask("450 CCA each", thread=desk.ask("will my two batteries run a Minnow?").thread).shorthand


def test_the_text_leaves_out_why_and_the_json_nothing():
    reply = default_desk().ask("50 mm2, 6 m ow, 120A 12V thruster. VD ok? fuse 175 ok?")
    text = as_text(reply)
    assert "Why:" not in text
    assert "Fit a fuse within 7 in" in text  # cautions stay
    assert "33 CFR 183.425 table 5" in text
    assert text.count("105 °C insulation (assumed)") == 1
    loss = reply.answers[0]
    assert loss.topic == "voltage-drop"
    assert "lost in the cable" not in text  # the headline tells it
    assert loss.as_dict()["working"]
    assert {item["name"] for item in loss.as_dict()["figures"]} == {"drop", "drop_percent"}


def test_a_danger_in_shorthand_is_answered_whole():
    reply = default_desk().ask("LFP 100Ah case swollen, 40C, chgr on. ok 2 use?")
    assert reply.answers[0].verdict == "stop"
    text = as_text(reply)
    assert "Do now: 1." in text
    assert "Who takes over:" in text


def test_a_sentence_gets_its_why():
    assert "Why:" in as_text(default_desk().ask("Is 35 mm2 enough for a 120 A thruster on 12 V, 9 m away?"))
