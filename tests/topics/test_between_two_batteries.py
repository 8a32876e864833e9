"""What stands between two batteries: a relay or a DC-to-DC charger, how large, and what it must never run itself."""

import pytest

from tests.talks import on, only, plain, talk

STRAIGHT = "a relay joins lithium straight to the other battery"


@pytest.mark.parametrize(
    ("text", "verdict", "start"),
    [
        ("dc-dc is a waste of money, thick cable and a vsr do the same. bow AGM 90 Ah, house lithium 300 Ah", "no",
         "No, not with lithium"),
        ("VSR or DC-DC for the bow bank? The house is LiFePO4", "information", "The DC-to-DC charger"),
        ("Would a voltage sensitive relay do between my LiFePO4 house bank and the AGM thruster battery?", "no",
         "No, not with lithium"),
        ("Couldn't a simple relay charge my gel thruster battery from the lithium bank?", "no", "No, not with lithium"),
        ("Both AGM: VSR or dc-dc for the bow battery?", "information", "Either will do"),
        ("dc-dc or vsr for the bow battery?", "needs-facts", "We can't say yet: with lithium on either side"),
    ],
)  # fmt: skip
def test_a_relay_is_judged_by_the_kinds_on_its_two_sides(text, verdict, start):
    found = only(text)
    assert (found.topic, found.verdict) == ("dc-dc", verdict)
    assert found.headline.startswith(start)
    assert (STRAIGHT in found.headline) is (start in ("No, not with lithium", "The DC-to-DC charger"))


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("What is a VSR?", "meaning"),
        ("The relay of the thruster clicks but nothing turns, lithium 100 Ah", "load-voltage"),
        ("Could I link my 12V house to the 24V bow bank with a VSR?", "bank-wiring"),
    ],
)
def test_another_question_with_a_relay_in_it_stays(text, topic):
    assert [item.topic for item in talk(text).answers] == [topic]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("What size of dc-dc for a 100 Ah lithium at the bow, and do I still need a shore charger?",
         "20 to 50 A suits 100 Ah of lithium; a shore charger as well"),
        ("What size of dc-dc for a 60 Ah lithium at the bow, the alternator is 120 A?",
         "Up to 30 A at 12 V, the most for 60 Ah of lithium"),
        ("what dc-dc do I need, alternator 60 A, bow lithium 100 Ah", "Up to 27 A at 12 V: that pulls 30 A"),
        ("do I need a dc-dc charger for a lithium bow battery if the alternator has 90 A?", "Yes, one of up to 40.5 A"),
        ("Must I have a b2b charger for the LiFePO4 in the bow?", "Yes: lithium takes all that an alternator gives"),
        ("dc-dc 30A, bow battery 110 Ah agm. big enough?", "Yes: 30 A suits 110 Ah of AGM, which takes 11 to 33 A"),
        ("5 A dc-dc on 110 Ah AGM, does that suffice?", "Only just: 5 A fills 110 Ah of AGM slowly"),
        ("The dc-dc charger at the bow is 20 A. Enough?", "the battery's Ah and kind decide if 20 A is enough"),
        ("How many amps does a 20 A 12 to 24 converter pull?", "It pulls about 44 A"),
    ],
)  # fmt: skip
def test_its_size_follows_from_alternator_and_battery(text, told):
    assert told in plain(on("dc-dc", text).headline)


@pytest.mark.parametrize(
    "text",
    [
        "Our boat is 12 V but the Sturgeon is 24 V. The fitter says tap it off with a converter 12 to 24 of 20 A.",
        "Can I run the Sturgeon from my 12 V house bank through a 30 A 12-24 converter?",
        "A 25 A 24 to 12 converter to power the Pike from the 24 V bank, ok?",
        "12 to 24 V dc-dc converter of 40 A, would that feed a 200 A 24V thruster?",
    ],
)
def test_a_converter_of_a_few_amps_runs_no_thruster(text):
    found = on("dc-dc", text)
    assert found.verdict == "no"
    assert "converter cannot run" in found.headline


@pytest.mark.parametrize(
    "text",
    [
        "20 A 12 to 24 dc-dc charger for the Sturgeon's own 24 V bank, what does it pull?",
        "Can a 30 A 24 to 12 converter run a 10 A fridge?",
        "12 to 24 converter of 20 amps to charge the Sturgeon batteries, what fuse?",
    ],
)
def test_one_that_charges_a_bank_or_has_amps_enough_is_asked_for_its_pull(text):
    assert on("dc-dc", text).headline.startswith("It pulls about")


def test_the_alternator_beside_a_charger():
    text = "How long to put it back with a 15 A charger, 60 Ah at 300 A, and does the alternator do it too?"
    assert on("dc-dc", text).headline.startswith("Only while the engine runs")
