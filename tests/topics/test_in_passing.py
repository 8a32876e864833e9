"""What is only told opens no answer: an age, a cable, a bank, a place; nor does what the customer rules out."""

from __future__ import annotations

import pytest

from tests.talks import plain, talk


def topics(text: str) -> list[str]:
    return [item.topic for item in talk(text).answers]


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        # an age beside a reading, and another man's
        ("Battery is two years old AGM, drops to 10.6 V when I push. Should I worry about 10.6?", ["load-voltage"]),
        ("9.9 V at the posts while it runs and 12.7 before, gel of 4 years. Is the battery to blame or the wire?",
         ["load-voltage"]),
        ("Should I top up my flooded battery with tap water? The neighbour does and his have lasted six years.",
         ["maintenance"]),
        # a cable whose loss alone is asked
        ("From the battery to the motor it's 4 metres, the motor takes 300 A and I've got 70 mm2. "
         "How many volts will I lose?", ["voltage-drop"]),
        # where it stands, beside the air it needs
        ("An AGM goes under the bunk where our daughter sleeps. Do I still need to ventilate it?",
         ["ventilation"]),
        ("Our thruster draws 190 A at 12 V. What size fuse do we need, and where should it sit?", ["fuse-size"]),
        ("Three flooded batteries, each five years of age. How often should I top up the water?", ["maintenance"]),
        # a reading whose ice alone is asked
        ("s.g. 1.150 in the wet ones, minus eleven tonight. Ice or no ice", ["freeze-point"]),
        ("Hydrometer says 1.200. How full is that, and will it freeze at -20?", ["specific-gravity", "freeze-point"]),
        # the parts of a circuit that one of them is asked by
        ("5 percent loss allowed, 24 V, 40 A, 10 m each way. which mm2", ["cable-size"]),
        ("volts lost: 2 awg, 20 ft each way, 140 amps, 12 V", ["voltage-drop"]),
        ("fuse for the windlass please. 35 mm2, 105 A, 3 m off the battery", ["fuse-size"]),
        # a unit that is counted in another one, and no word explained
        ("50mm2 is wot awg.. do batts need a strap", ["rating-convert", "mounting"]),
        # so many banks or outputs, beside amps
        ("charger amps for 2 by 110ah gels both on one output", ["charger-size"]),
        ("Can two 110 Ah gels both charge off one output, and how many amps should the charger be?",
         ["charger-banks", "charger-size"]),
        ("Our charger is 40 A for three banks, the bow battery is 75 Ah AGM. Not too much for it?", ["charger-size"]),
        # what is read now, beside what it will read
        ("Flooded battery, 12.65 V now, six months without charge. What will the meter say in April?", ["storage"]),
        # one of two charged alone, with no charger spoken of
        ("One reads 12.7 and one 12.2, in series for 24 V. Do I charge each by itself first?", ["rest-voltage"]),
        # a test that was not done
        ("Gel at rest 12.8 V, good? And it is seven years old: new one? We did no load test.",
         ["rest-voltage", "replacement"]),
        ("12.7 V on our AGM after a day's rest, fine? I haven't had it load-tested.", ["rest-voltage"]),
        ("No load tester aboard. Is 12.65 V at rest good for a wet cell?", ["rest-voltage"]),
        # a distance in another unit, and no figure to convert
        ("How near to the battery must the fuse be, in cm? My son says I ask too much.", ["fuse-size"]),
        # weather that has been, and a small load that does well
        ("We had 29 degrees last weekend. How hefty must an AGM be for 200 A of bow thruster?", ["bank-size"]),
        ("The lights work fine. How beefy a battery for the Minnow?", ["bank-size"]),
        # ruled out
        ("I don't need to know about fuses. Just cable: 5 m each way, 350 A, 12 V, 95 or 120 mm2?", ["cable-size"]),
        ("Not asking about the charger, that is fine. How long do 100 Ah of AGM take from half full at 20 A?",
         ["charge-time"]),
    ],
)  # fmt: skip
def test_what_is_only_told_is_not_answered(text: str, asked: list[str]) -> None:
    assert topics(text) == asked


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("AGM of 7 years, drops to 9.2 V under load at 250 A. Is it finished?", {"load-voltage", "replacement"}),
        ("Rests at 12.6 V, five years old, AGM. Is that ok and is it time for a new one?",
         {"rest-voltage", "replacement"}),
        ("4 m each way, 300 A, 70 mm2. Is that cable thick enough, and how many volts are lost?",
         {"cable-size", "voltage-drop"}),
        ("May an AGM stand under the berth, and must the locker be aired?", {"mounting", "ventilation"}),
        ("Which fuse for 200 A and how must the battery be held down?", {"fuse-size", "mounting"}),
        ("40 A charger, three banks. Does each bank need an output of its own and is 40 A too big for 75 Ah AGM?",
         {"charger-banks", "charger-size"}),
        ("12.7 V now, AGM. Is that full, and can I leave it for 4 months?", {"rest-voltage", "storage"}),
        ("I don't know what fuse to take for 250 A.", {"fuse-size"}),
    ],
)  # fmt: skip
def test_what_is_asked_as_well_is_answered(text: str, asked: set[str]) -> None:
    assert set(topics(text)) == asked


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("AGM in the locker. Do I still need to ventilate it or is that only for flooded?", "Yes, an AGM battery"),
        ("Gel in the locker. Does it need vents or only with wet batteries?", "Yes, a gel battery needs air"),
        ("180 A, 35 mm2. Fuse at the battery end or the motor end?", "Put the fuse within 7 in (178 mm)"),
        ("What fuse for 180 A on 35 mm2?", "We can't say yet: with 105"),
        ("can the kids top up the batteries", "No, not children:"),
        ("Is topping up something the children can do, flooded battery?", "No, not children:"),
        ("Is 800 CCA the same as 80 Ah?", "No: cranking amps are the power of seconds"),
        ("Owner insists 1000 MCA battery = 100 Ah. Told him no. Right?", "Yes: cranking amps are the power of seconds"),
        ("A 700 CCA 100 Ah AGM, is it ok for 250 A?", "Yes: your 700 CCA AGM battery"),
        ("Hydrometer says 1.225 all cells, flooded. Charge or bin?", "Charge it: a gravity of 1.225"),
        ("250 A for 3 minutes, how many amp hours is that?", "About 12.5 Ah: 250 A for 3 minutes."),
        ("Thruster runs 4 min per docking, draws 200A. 12V 70Ah AGM. How many Ah does one docking take?",
         "About 13.3 Ah: 200 A for 4 minutes; your 70 Ah AGM battery lasts about 5 minutes"),
        ("how many Ah do I need for 250 A, 3 minutes?", "Look for a lead battery"),
        ("The thruster is 24 V but everything aboard is 12 V. How do I get 24 V up there?",
         "Give the motor a 24 V bank of its own"),
        ("Our new unit is 24 V, the boat is 12 V. Can we just tap off the house bank?", "No: 12 V cannot run"),
        ("My boat is 24 V and the thruster 12 V, can I tap 12 V off one battery?", "No: taking 12 V from one"),
        ("New thruster is 24 V, the old was 12 V. Do the 70 mm2 cables still do and must I change the charger?",
         "The charger must change"),
    ],
)  # fmt: skip
def test_the_question_that_is_put_is_answered_first(text: str, opens: str) -> None:
    assert plain(talk(text).answers[0].headline).startswith(opens)


@pytest.mark.parametrize(
    ("text", "ends"),
    [
        ("What's the difference between CCA and MCA, and which of them should I go by for a thruster?",
         "; go by the CCA for a thruster."),
        ("what is the difference between CCA and MCA", "about a quarter higher."),
        ("1.220 in all six. How full is that, and is it bad that the cells are all the same?",
         "; that all cells read alike is as it should be."),
        ("1.220 in all the cells. How full is the battery?", "charge it soon."),
        ("Mix AGM and flooded in parallel, no go, right? And a new AGM with a 2 yr old AGM?",
         "a new one and an old one of the same kind only just do in parallel."),
        ("Mix AGM and flooded in parallel, no go, right?", "each with its own charging."),
    ],
)  # fmt: skip
def test_a_short_second_question_has_its_words(text: str, ends: str) -> None:
    (answer,) = talk(text).answers
    assert plain(answer.headline).endswith(ends)


@pytest.mark.parametrize(
    "text",
    [
        "The isolator off for winter, yes or no? And is 10 A trickle with no auto cutoff safe to leave?",
        "Lay-up until April: main switch off? And may the old 8 A charger with no cut-off stay on?",
        "can I leave an old 8 A charger on that does not cut out by itself?",
    ],
)
def test_a_charger_that_does_not_stop_by_itself_is_a_no(text: str) -> None:
    found = {item.topic: item for item in talk(text).answers}
    assert found["charger-setting"].headline.startswith("No: a charger that does not regulate its voltage")


def test_a_small_load_that_does_well_asks_no_time_of_a_model() -> None:
    (found,) = talk("How many CCA for a Minnow? Our radio works fine.").answers
    assert (found.topic, found.verdict) == ("bank-size", "information")


def test_figures_that_are_told_are_still_converted() -> None:
    assert "rating-convert" in topics("How long is 25 feet in metres?")


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        # a kind that is only told to be not known
        ("How many amps of charger? I've no idea what type of battery it is, 100 Ah.", ["charger-size"]),
        ("Not sure what sort we have, a grey box. Which mode do I set the charger to?", ["charger-setting"]),
        ("I don't know what kind of battery it is, how do I find out? And which charger setting?",
         ["battery-type", "charger-setting"]),
        ("Which setting for the charger, and I don't know what kind of battery to buy?",
         ["charger-setting", "battery-type"]),
        # a drain that a panel is to make up for
        ("A tracker draws 0.1 A day and night, 50 W panel, 3 hours of sun. Will the panel keep up?", ["solar"]),
        ("0.2 A goes missing day and night. Is the panel of 60 W enough, 4 h of sun? And what could be taking it?",
         ["solar", "standing-drain"]),
        ("0.1 A day and night, 120 Ah. Will a 50 W panel keep up with 3 hours of sun? And days to half without?",
         ["solar", "standing-drain"]),
        # whether volts at rest mean the end of it
        ("AGM 11.9 after a night alone. kaput?", ["rest-voltage"]),
        ("AGM 11.9 after a night alone, 7 years old. Kaput?", ["rest-voltage", "replacement"]),
        # the rule of lithium in frost, beside what tells nothing of it
        ("How heavy is a 100 Ah lithium, and can it be charged below freezing?", ["weight", "charger-setting"]),
        ("How heavy is a 100 Ah lithium, and does it freeze?", ["weight", "freeze-point"]),
    ],
)  # fmt: skip
def test_what_is_told_beside_a_question_asks_nothing(text: str, asked: list[str]) -> None:
    assert sorted(topics(text)) == sorted(asked)


def test_a_rule_that_forbids_is_affirmed() -> None:
    (answer,) = talk("Must lithium be kept from charging in frost?").answers
    assert answer.headline.startswith("Yes: a lithium battery may not be charged")
    (answer,) = talk("May lithium be charged in frost?").answers
    assert (answer.verdict, answer.headline[:3]) == ("no", "No:")


@pytest.mark.parametrize("word", ["toast", "scrap", "stuffed", "kaput"])
def test_low_volts_do_not_prove_the_end_of_it(word: str) -> None:
    (answer,) = talk(f"gel reads 12.0 after a night. {word}?").answers
    assert answer.headline.startswith("Not by this reading")


def test_a_choice_between_good_and_dead_is_not_opened_by_how_likely_it_is() -> None:
    (answer,) = talk("800 CCA gel, 12.7 V rested, 9.1 V on its posts at 310 A. Good or shot?").answers
    assert not answer.headline.startswith("Most likely")
