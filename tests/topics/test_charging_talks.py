"""Conversations on charging: the last turn's answer follows all that was told before it."""

from __future__ import annotations

import pytest

from tests.talks import talk

COLD = "charger 20a lfp mode, 100ah lfp, cabin 3c tonight. leave on?"

CONVERTER = "12v house charging a 24v thruster bank thru 20a converter, non isolated. alternator 90a. ok?"
BOW = "common neg yes, and the 24 bank is two separate agms in the bow"

PANEL = "what sun do i want for 2 x agm 100 ah on a mooring all summer, bilge float avg 0.15A, panel is 20W"


def last(turns, topic):
    reply = talk(*turns)
    found = next((item for item in reply.answers if item.topic == topic), None)
    assert found, [item.topic for item in reply.answers]
    return found


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "says"),
    [
        ((COLD,), "charger-setting", "no", "takes 10 A at most at 3 °C"),  # the right setting is not all
        ((COLD, "ok what about when its 12"), "charger-setting", "yes", "20 A suits 100 Ah"),
        ((COLD, "and once it's 14 out there?"), "charger-setting", "yes", "20 A suits 100 Ah"),
        ((COLD, "ok what about when its 12", "correction the charger is 60a"), "charger-setting", "no",
         "takes 50 A at most"),
        (("60 A charger on the gel setting, 100 Ah gel. all right?",), "charger-setting", "no", "takes 20 A at most"),
        (("lithium mode on the charger, lithium battery, 4 degrees in the boat. leave it on?",), "charger-setting",
         "needs-facts", "10 A for each 100 Ah"),
        (("200 Ah lifepo4, 30 A charger on its lithium profile, 8 C in the locker, all right to leave connected?",),
         "charger-setting", "yes", "at 8 °C"),
        (("3 banks (start agm, house 2x agm parallel, thruster 24v 2 in series). how many outputs",), "charger-banks",
         "information", "a 24 V charger for the 24 V bank"),
        (("start, house, two in series for the thruster. how many outputs?",), "charger-banks", "information",
         "a 24 V charger for the 24 V bank"),
        (("start agm, house agms, and two 12s in series up front for the bow. one charger, 3 outputs, ok?",),
         "charger-banks", "no", "Use 2 outputs for engine and house"),
        (("start battery, house 2 in parallel and thruster 2 in parallel, how many outputs?",), "charger-banks",
         "information", "A charger with 3 outputs"),
        ((CONVERTER,), "dc-dc", "needs-facts", "44 A of the 45 A available"),
        ((CONVERTER, BOW), "dc-dc", "yes", "44 A of the 72 A available"),
        ((CONVERTER, BOW, "what about making it 30a"), "dc-dc", "yes", "67 A of the 72 A"),
        ((CONVERTER, BOW, "and a 110 A alternator"), "dc-dc", "yes", "44 A of the 88 A"),
        ((CONVERTER, BOW, "sorry 130 A"), "dc-dc", "yes", "44 A of the 104 A"),  # nearer to 90 than to 20
        ((CONVERTER, "one negative, and the 24 V is two separate batteries, the 12 V is one of the two"), "dc-dc", "no",
         "part of the 24 V bank"),
        ((PANEL, "covered by the boom tent mon to fri"), "solar", "no", "about 1.3 Ah a day"),
        ((PANEL, "covered by the boom tent mon to fri", "ok so w/o tent but 40w"), "solar", "yes", "8.9 Ah a day"),
        (("20 W panel, 0.1 A drain, 100 Ah agm, boat under a cover during the week. ok?", "and with a 60 W?"), "solar",
         "yes", "about 3.8 Ah a day"),
        (("20 W panel, 0.1 A drain, 100 Ah agm, boom tent always on. enough?",), "solar", "no", "brings nothing"),
        (("is a 0.1 A drain covered by a 20 W panel, 100 Ah agm?",), "solar", "yes", "about 4.4 Ah a day"),
        (("115 A alternator and a 200 Ah lithium, will it run the Pike?",), "run-check", "needs-facts", "the label"),
        (("charger 40a on 4 x 100ah gel parallel, ok?", "they are agm, label was wrong"), "charger-size", "yes",
         "Yes: 40 A suits 400 Ah of AGM"),
        (("12 V 100 Ah agm, 20A charger ok?", "and when it's 12"), "charger-size", "yes", "12 A suits"),  # no degrees
    ],
)  # fmt: skip
def test_the_last_turn_counts_with_all_that_was_told(turns, topic, verdict, says):
    found = last(turns, topic)
    assert (found.verdict, says in found.headline.replace("\u00a0", " ")) == (verdict, True), found.headline
