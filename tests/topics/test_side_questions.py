"""Questions beside the usual one of a topic: enough hours, which water, the other of a pair, several per pole."""

from __future__ import annotations

import pytest

from tests.talks import on, plain, talk


@pytest.mark.parametrize(
    ("text", "topic", "told"),
    [
        # the hours that there are for a charge
        ("A 50 A charger, two 100 Ah AGM at 60 percent. Will they be full in four hours?", "charge-time",
         "Only just: about 3.8 hours"),
        ("A 20 A charger, 100 Ah wet from half. Is it full by tomorrow morning?", "charge-time", "Yes: about 5 hours"),
        ("12 A on 100 Ah of AGM at 55 percent, can it be full in 3 hours?", "charge-time", "No: about 6.1 hours"),
        ("How many hours to fill 100 Ah of AGM with a 20 A charger?", "charge-time", "About 4.8 hours in all from"),
        # the water's level, and which water
        ("Does it need water yet, the plates are just covered?", "maintenance", "Yes: charge it, then fill"),
        ("Top up with distilled, or will the filtered jug do?", "maintenance", "Distilled or deionised water only"),
        ("How often do I look at the water of a wet battery?", "maintenance", "Look at the water every month"),
        # the other one of a pair
        ("One of my two 12s in series failed. Do I have to change both?", "bank-wiring", "Change them as a pair"),
        ("One of my two in parallel failed. Do I change the other one as well?", "bank-wiring", "Better both"),
        ("Two 12 V batteries in series, what do they give?", "bank-wiring", "Two batteries in series"),
        # what is lifted
        ("What am I lifting with a wet group 31?", "weight", "usually weighs 27 to 34 kg"),
        ("What size is a group 31?", "group-size", "Group 31 is at most"),
        # which way the posts look
        ("Which way round do the posts go against the hull?", "terminals", "Away from metal"),
        ("Which way round do I take the clamps off the posts?", "terminals", "Minus comes off first"),
        # two cables to a pole, one charger for two batteries
        ("Can I run two thinner ones per pole instead of one fat one?", "cable-size", "Yes, if they are alike"),
        ("Two cables per pole in place of one, allowed?", "cable-size", "Yes, if they are alike"),
        ("Which cable for a 200 A thruster over 5 m?", "cable-size", "Use "),
        ("I've a 12 V charger for my 24 V pair, one at a time with the link on?", "charger-banks", "Not with the link"),
        ("One 12 V charger, two in series, can it charge one after the other?", "charger-banks", "Yes, with the link"),
        ("A charger with two outputs for a series pair, is it right?", "charger-banks", "We can't say yet"),
        # a charger that may be set too high
        ("Blue fur grows on the posts. How do I get it off, and is my charger set too high?", "charger-setting",
         "Not by itself"),
        ("The charger gives 14.9 V on my gel, is it set too high?", "charger-setting", "Yes: 14.9 V is too high"),
        # one or the other, asked in one question
        ("12.65 at rest, 9.9 while pushing, 2 AWG, 15 ft, 160 A. Tell me battery or tell me wire.", "load-voltage",
         "the cable takes 0.83 V of the 2.75 V"),
        ("A cold morning, 28 F, it limped. Is that the cold or is the battery shot, a 3 year old AGM?", "cold-cranking",
         "We can't say yet: at -2 °C (28 °F) it has about 62 %"),
        ("MCA and CCA, which of them counts at 2 degrees?", "cold-cranking", "MCA, measured at 0 °C, is the nearer"),
        ("How much of its warm power has a battery at -5?", "cold-cranking", "At -5 °C"),
        # a flat battery in the frost
        ("11.9 V, wet, minus nine tonight. Should I go out to it?", "freeze-point", "Yes: it is flat"),
        ("11.9 V, wet, minus nine. Could it freeze?", "freeze-point", "It may freeze: it is flat"),
    ],
)  # fmt: skip
def test_the_question_put_is_answered(text: str, topic: str, told: str) -> None:
    assert told in plain(on(topic, text).headline)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("A load test of 15 s ended at 9.2 V, 700 CCA. Fail?", True),
        ("Charged, 12.7 V at rest, a load test of 15 s ended at 9.2 V at 21 C, 700 CCA. Fail?", False),
    ],
)
def test_a_failed_test_says_when_a_test_counts(text: str, told: bool) -> None:
    found = on("load-voltage", text)
    assert found.verdict == "no"
    assert any("A load test counts" in step.say for step in found.working) is told
    assert not any(item.id == "cable-and-joints" for item in found.cautions)


def test_alternatives_of_one_question_get_one_answer() -> None:
    (found,) = talk("12.65 at rest, 9.9 while pushing, 2 AWG, 15 ft, 160 A. Tell me battery or tell me wire.").answers
    assert found.asks[0].fact == "reading.load_voltage"


def test_what_is_told_is_not_asked_again() -> None:
    bare = on("charger-setting", "It only says leisure on the battery. Which charger setting?")
    assert "caps" in bare.headline
    assert "caps" not in on("charger-setting", "What charger setting for my battery?").headline
    run = on("run-check", "Does a 105 Ah traction battery run a 145 A thruster? Nothing else is on the label.")
    assert "data sheet" in run.asks[0].where
    assert "data sheet" not in on("run-check", "Does a marine battery run a 145 A thruster?").asks[0].where


def test_leave_to_carry_on_is_refused_first() -> None:
    text = "Leads back to front as I jumped it, a big bang, it starts now."
    assert plain(talk(f"{text} Carry on?").answers[0].headline).startswith("No: ")
    assert not plain(talk(text).answers[0].headline).startswith("No: ")
