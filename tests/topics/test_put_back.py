"""What minutes of a motor take out, against what a charger, the engine or a panel puts back."""

import pytest

from grammar import read
from tests.talks import on, plain, talk

DAY = "100 Ah AGM, Minnow, we motor about 1 hr a day and use the thruster maybe 2 minutes"


@pytest.mark.parametrize(
    ("turns", "verdict", "told"),
    [
        (("The dc-dc charger at the bow is 20 A. Enough?", DAY), "yes",
         "2 minutes at 120 A take about 4.0 Ah, and 20 A for 1 hour puts back about 18 Ah"),
        (("Is a 10 A dc-dc enough for the Pike's 90 Ah AGM if we use it 5 minutes a day and motor for 2 hours?",), "no",
         "5 minutes at 260 A take about 22 Ah, but 10 A for 2 hours puts back about 18 Ah"),
        (("We run the engine 3 hours a day, thruster (Sturgeon) 4 minutes, dc-dc 15 A into 24 V, 100 Ah AGM. Enough?",),
         "yes", "15 A for 3 hours puts back about 41 Ah"),
    ],
)  # fmt: skip
def test_what_the_engine_puts_back_is_held_against_the_minutes(turns, verdict, told):
    found = on("dc-dc", *turns)
    assert found.verdict == verdict
    assert told in plain(found.headline)


@pytest.mark.parametrize(
    ("text", "seconds"),
    [
        (DAY, 120.0),
        ("the Pike for 3 minutes, the engine runs 2 hours", 180.0),
        ("two hours of motoring, 90 seconds of thruster", 90.0),
        ("the Pike's motor runs for 3 minutes", 180.0),
        ("Minnow on 100 Ah for 2 hours?", 7200.0),
        ("I motor for two hours with my electric outboard of 60 A, 200 Ah AGM", 7200.0),
    ],
)
def test_hours_under_engine_are_no_time_of_the_load(text, seconds):
    models = ("Minnow", "Pike", "Sturgeon")
    found = [item.value for item in read(text, models=models).stated if item.fact == "load.time"]
    assert found == [seconds]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("used the Pike 3 minutes, how long does a 20 A charger need to put that back into the 100 Ah AGM?",
         "About 2.7 hours in all for the 13 Ah of 3 minutes at 260 A: 43 minutes at 20 A, and 2 hours of absorption"),
        ("How long can I push the button with 60Ah at 300A, and how long to put it back with a 15A charger?",
         "About 2.8 to 3.4 hours if it is lead, 3.3 hours if it is lithium"),
        ("How long to charge 100 Ah AGM with 20 A?", "About 4.8 hours in all from 50 % to full"),
        ("Pike for 3 minutes a day; how long to charge the 100 Ah AGM from half with 20 A?", "from 50 % to full"),
    ],
)  # fmt: skip
def test_what_was_used_is_put_back_and_not_half_the_battery(text, told):
    assert told in plain(on("charge-time", text).headline)


@pytest.mark.parametrize(
    ("text", "verdict", "told"),
    [
        ("20 W panel, 90 Ah AGM, Pike, about 5 minutes a week. enough?", "yes",
         "the Pike and the battery's own loss take 3.2 Ah"),
        ("Minnow, 100 Ah AGM, 20 W panel, thruster used 2 minutes a day. Does the panel keep up?", "marginal",
         "the Minnow and the battery's own loss take nearly as much, 4.1 Ah"),
        ("Does a 20 W panel top up 80 Ah wet for a thruster of 200 A, 3 minutes each day?", "no",
         "your thruster and the battery's own loss take 10 Ah"),
        ("40 W of panel with a cheap PWM controller, 90 Ah thruster battery, we only use it weekends, say 3 minutes "
         "each time, on a Pike. Does it stay topped up over summer?", "yes", "take 2.0 Ah"),
        ("Can a 100 W solar panel keep my thruster battery charged? 12 V 105 Ah AGM, we use the thruster 3 minutes "
         "per weekend.", "yes", "your thruster and the battery's own loss take 2.0 Ah"),
        ("10 W solar panel on 100 Ah AGM for the Minnow, enough?", "yes", "with everything off"),
        ("60 W panel, fridge 4 A for 12 hours a day, 100 Ah AGM. enough?", "no", "the drain and the battery's own"),
    ],
)  # fmt: skip
def test_a_panel_covers_the_thruster_as_well(text, verdict, told):
    found = on("solar", text)
    assert found.verdict == verdict
    assert told in plain(found.headline)


def test_amps_that_are_not_told_are_those_of_our_largest_and_said_to_be():
    text = "Can a 100 W panel keep my 105 Ah AGM charged? I use the thruster 3 minutes per weekend."
    taken = [item for item in on("solar", text).assumed if item.fact == "load.current"]
    assert [item.value for item in taken] == [260.0]
    assert "our largest" in taken[0].why


def test_a_short_panel_question_without_minutes_is_as_before():
    found = talk("what solar panel for a 100 Ah AGM?").answers[0]
    assert found.headline.startswith("About 10")
