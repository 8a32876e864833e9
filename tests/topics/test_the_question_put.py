"""The question that is put is answered, and not the topic's own; beside each a message that does not put it."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.say import NB


@pytest.mark.parametrize(
    ("text", "topic", "verdict", "told"),
    [
        # what it is held by, and which way up it stands
        ("Is a bungee over the battery box good enough?", "mounting", "no", "No: an elastic cord stretches"),
        ("Shock cord on a 28 kg AGM in a fast dinghy, fine?", "mounting", "no", "No: an elastic cord"),
        ("Do ratchet straps do to hold the battery down?", "mounting", "information", "Yes, with a tray or box"),
        ("How do I hold the battery down?", "mounting", "information", "Fix it so"),
        ("May an AGM stand on its end in the locker?", "mounting", "marginal", "Only if its own manual"),
        ("May a gel lie on the long side?", "mounting", "yes", "Usually yes: a gel battery may lie"),
        ("May a wet battery lie flat?", "mounting", "no", "No: a wet-cell battery stands upright only"),
        ("Which side may a gel battery lie on?", "mounting", "yes", "A gel battery may lie"),
        # openings told against the air that is needed
        ("Are two 30 mm holes enough for two 90 Ah wet batteries?", "ventilation", "no", "No: each has 7.1 cm²"),
        (
            "Two round vents of 90 mm for 2 x 90 Ah wet, ok?",
            "ventilation",
            "yes",
            "Yes, if one is low and one high: each",
        ),
        ("One vent of 60 cm2 for a 100 Ah wet battery, fine?", "ventilation", "no", "No: one is not enough; 60 cm²"),
        ("How large must the vents be for two 90 Ah wet batteries?", "ventilation", "information", "The space needs"),
        ("Two 100 Ah wets: top or bottom, and how many cm2?", "ventilation", "information", "The space needs"),
        (
            "The door is slatted top and bottom, two 90 Ah AGMs, how much air?",
            "ventilation",
            "information",
            "The space",
        ),
        ("Must the vent go low or high?", "ventilation", "information", "Both: one low"),
        ("Do the vents go one low, one high?", "ventilation", "information", "Yes, one low"),
        ("Is a single vent enough for the battery cupboard?", "ventilation", "no", "No, it takes two: one low"),
        # who does it
        (
            "Wet batteries with caps: who equalises them, and when?",
            "maintenance",
            "information",
            "One adult with goggles",
        ),
        (
            "Wet batteries with caps, and it's me who waters them: how often?",
            "maintenance",
            "information",
            "Look at the",
        ),
        ("Wet batteries with caps: when do I equalise them?", "maintenance", "information", "Equalise a wet-cell"),
        # whether it wears, or which to buy
        (
            "Does the bow thruster wear out a starter battery sooner than a leisure one?",
            "battery-duty",
            "information",
            "Not by short bursts",
        ),
        ("Starter or leisure battery for the bow thruster?", "battery-duty", "information", "Starting: the thruster"),
        # sizes in the unit asked for, and how low a case can be
        ("What is a group 31 in cm?", "group-size", "information", "Group 31 is at most 33.0 x 17.3 x 24.0 cm"),
        ("What size is a group 31?", "group-size", "information", "Group 31 is at most 330 x 173 x 240 mm"),
        ("Headroom is only 18 cm, is there a lower battery case?", "group-size", "information", "None in our table"),
        (
            "Headroom is 21 cm, is there a lower battery case?",
            "group-size",
            "information",
            "With 20 mm above for the lugs 210 mm takes group 49 or group 94R",
        ),
        (
            "My space is 270 x 175 x 220 mm high. Which case goes in?",
            "group-size",
            "information",
            "None of our table with room for hold-down and lugs: 270 x 175 x 220 mm takes group 34 only just.",
        ),
        # a knob without names
        (
            "The charger's knob has 1 to 6 and no text. Which volts must an AGM get?",
            "charger-setting",
            "information",
            "Look for 14.2 to 14.8 V at the posts",
        ),
        ("Which setting for an AGM?", "charger-setting", "information", "Use the AGM setting"),
        # how to find out
        ("It falls to 8.0 V, cable or battery. How do I tell which?", "load-voltage", "no", "Read the volts twice"),
        ("It falls to 8.0 V, is it the cable or the battery?", "load-voltage", "no", "The battery, if"),
        # a claim that begins in the middle of what it says
        (
            "It stands on the concrete floor, father swears that sucks it flat, is that so",
            "storage",
            "information",
            "No: a concrete floor does not drain",
        ),
    ],
)
def test_the_headline_answers_what_is_put(text: str, topic: str, verdict: str, told: str) -> None:
    found = next(item for item in default_desk().ask(text).answers if item.topic == topic)
    assert (found.verdict, found.headline.replace(NB, " ")[: len(told)]) == (verdict, told)
