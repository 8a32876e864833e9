"""Volts of two sides that do not go together; beside each a message in which they do."""

from __future__ import annotations

import pytest

from tests.talks import on, plain


@pytest.mark.parametrize(
    ("text", "topic", "told"),
    [
        (
            "Can I jump start my 24 volt bow bank from the 12 v car battery?",
            "hazard",
            "No: never join batteries of unlike",
        ),
        ("24V bank flat. Could I use jump leads from my 12V engine battery?", "hazard", "No: never join batteries of"),
        ("May I jump my 12 V bow battery from a 12V van?", "hazard", "Jump leads go plus to plus first"),
        ("The 24V bank is dead, can I jump it from a 24V lorry?", "hazard", "Jump leads go plus to plus first"),
        ("Can I charge my 24 V bank with a 12 V charger?", "charger-banks", "No: a 12 V charger cannot charge a 24 V"),
        ("A 12 volt charger stays on one battery of my 24 V pair, ok?", "charger-banks", "No: charging one battery"),
        ("24 V bank, charger is 12 V and clipped to the first battery only. ok?", "charger-banks", "No: charging one"),
        ("Can I put my 12V charger on one of the two batteries of the 24V bank", "charger-banks", "No: charging one"),
        ("24 V bank, two 12 V chargers, one on each battery. ok?", "charger-banks", "We can't say yet: in series each"),
        (
            "Can I charge the 24V bank straight from the 12V house battery?",
            "dc-dc",
            "No, not straight from 12 V to 24 V",
        ),
        ("How do I charge a 24V bank from a 12V house bank?", "dc-dc", "With a DC-to-DC charger"),
        ("Could I link my 12V house to the 24V bow bank with a VSR?", "bank-wiring", "No: batteries of unlike volts"),
        ("Connect 12V engine battery and 24 V bow bank in parallel?", "bank-wiring", "No: batteries of unlike volts"),
        ("Connect the two 12 V in series to make 24V, ok?", "bank-wiring", "Yes: two batteries in series"),
        (
            "Is a 12V 10A charger enough for a 24 V 100 Ah bank?",
            "charger-size",
            "No: a 12 V charger cannot charge a 24 V",
        ),
        ("12-to-24 V charger of 15 A for 24 V 75 Ah AGM, big enough?", "charger-size", "Yes: 15 A suits 75 Ah"),
        ("Can I charge my 12 V battery with a 24 V charger?", "charger-setting", "No: a 24 V charger must never go on"),
    ],
)
def test_volts_of_unlike_sides_are_not_joined(text, topic, told):
    assert plain(on(topic, text).headline).startswith(told)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Customer ordered a 24 V unit, boat is 12 V. Can we tap off the house?", "No: 12 V cannot run a 24 V motor"),
        ("24V thruster, 12V house bank. Do I need another bank or can I tap the house?", "No: 12 V cannot run a 24 V"),
        ("Owner bought a 24 V windlass for a 12 V boat, feed from house ok?", "No: 12 V cannot run a 24 V motor"),
        ("24 V bank for the thruster, can I tap 12 V off one battery for the radio?", "No: taking 12 V from one"),
        ("12V thruster, 24 V boat. Tap off one battery of the 24?", "No: taking 12 V from one battery"),
    ],
)
def test_which_side_has_which_volts(text, told):
    assert plain(on("bank-wiring", text).headline).startswith(told)
