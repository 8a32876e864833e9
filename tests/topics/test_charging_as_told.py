"""Whole messages about chargers: what is told of the charger, its settings and the season decides."""

from __future__ import annotations

import pytest

from service.reply import Answer
from service.say import NB
from tests.talks import talk


def answers(text: str) -> tuple[Answer, ...]:
    """The answers to the last of these turns, parted by " >> "."""
    return talk(*text.split(" >> ")).answers


@pytest.mark.parametrize(
    ("text", "topic", "verdict", "told"),
    [
        # both sides of a converter, its worst, and isolation
        ("Alternator 70 A at 12 V. 12 to 24 dc-dc, 20 A out, 24 V AGM bank. Big enough?", "dc-dc", "yes",
         "pulls about 44 A, within the 56 A that a 70 A alternator gives for hours; cable and fuse are for 58 A"),
        ("12v alternator 90 amp, 24v bow bank, agms. we bought a 12 to 24 charger thats 20 amps. alternator cope?",
         "dc-dc", "yes", "44 A"),
        ("12 to 24 dc-dc of 20 A, does it have to be isolated, and the amps in?", "dc-dc", "needs-facts",
         "pulls about 44 A (58 A at worst); an isolated one fits every boat"),
        ("isolated dc-dc 12 to 24, 20 A: amps in?", "dc-dc", "information", "up to 58 A"),
        # an offer of settings
        ("2 x 100 ah agm in parallel, charger amps? >> it only has settings wet and gel. which one", "charger-setting",
         "marginal", "None is made for an AGM battery: take the gel one, up to 14.4 V"),
        ("my lithium, charger only has wet and gel modes, which", "charger-setting", "marginal", "take the gel one"),
        ("gel battery, the charger only has wet and AGM settings. which", "charger-setting", "no", "None of them"),
        ("AGM battery; the switch offers gel, agm, wet. which one do i pick", "charger-setting", "information",
         "Use the AGM setting"),
        ("charger has AGM1 14.7 and AGM2 14.4 and GEL 14.2, batt sheet says max 14.4 (gel). which", "charger-setting",
         "information", "Use the GEL setting: its 14.2 V suits"),
        ("sealed battery, kind not known. the charger has agm, gel and wet on a switch. which", "charger-setting",
         "needs-facts", "leave the switch alone until the kind is known, because gel takes 14.4 V at most"),
        ("sealed, no idea what battery. charger has agm, gel, wet on a switch. which >> 14.6 written on its side",
         "charger-setting", "needs-facts", "14.6 V printed on it rules out gel alone"),
        ("What absorption and float for: gel, AGM, LFP", "charger-setting", "information",
         "gel 13.8 to 14.4 V, 13.5 to 13.8 V; lithium 14.2 to 14.6 V, 13.3 to 13.6 V"),
        # a bank of 24 V by the charger's volts
        ("charger output 27.6 constant on a 24 gel bank. fine?", "charger-setting", "yes", "27.6 V is a good float"),
        ("charger 27.6 constant on a 24 gel bank. fine? >> never switches down", "charger-setting", "yes",
         "at 27.6 V it need not switch down"),
        ("charger puts out 28.8, agm, ok?", "charger-setting", "yes", "28.8 V is inside the 28.4 to 29.6 V"),
        # amps of a charger
        ("charger for 2 x 100ah agm in parallel, how many amps. got a 15 in the garage", "charger-size", "marginal",
         "your 15 A fills it slowly"),
        ("20 A charger for two 105 Ah floodeds joined in parallel, big enough?", "charger-size", "yes",
         "just under the 21 to 52.5 A"),
        ("100Ah lithium at 30%, 20A charger, how long til full. about 3 degrees in the boat", "charge-time", "no",
         "Not at 20 A: at 3 °C lithium takes 10 A at most, which is 7.2 hours; above 10 °C it takes 3.6 hours"),
        ("agm vs gel vs lfp for a thruster? >> which charges fastest off 60 A, each 120ah?", "charge-time",
         "information", "Fastest is lithium, 1.6 h to full; AGM 3.8 h, gel 4.9 h"),
        # a bank of 24 V beside others
        ("one charger two outputs, got engine batt, house batt and 24v thruster pair up front. how do i do it",
         "charger-banks", "no", "Use 2 outputs for engine and house; the 24 V bank wants a 24 V charger of its own"),
        ("4 isolated outputs for engine, house and a 24 V thruster pair ok?", "charger-banks", "yes", "4 isolated"),
        # the season of a panel
        ("solar 100 W on 24V lead bank, drain 0.1A, self discharge ignored, 2x 100 Ah. ok in summer?", "solar", "yes",
         "11 Ah a day, and the drain takes 2.4 Ah"),
        ("solar 100 W, 24V lead, drain 0.1A, self discharge ignored, 2x 100 Ah. ok in summer? >> winter?", "solar",
         "marginal", "2.8 Ah a day"),
        ("gel agm or lithium for the thruster, 3 weekends a month, gets frosty", "battery-type", "information",
         "lithium must not be charged at 0 °C or below"),
        ("4x 12V lfp 100Ah in series, 48 V, how many volts full", "bank-wiring", "information", "56.8 to 58.4 V"),
        ("3 x 12 V wet 100 Ah in series, what does the bank read full", "rest-voltage", "information", "37.95 V"),
    ],
)  # fmt: skip
def test_the_answer_follows_what_is_told(text, topic, verdict, told):
    found = next(item for item in answers(text) if item.topic == topic)
    assert found.verdict == verdict
    assert told in found.headline.replace(NB, " ")


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("no idea what battery i have, sealed. charger has agm, gel and wet on a switch. which", ["charger-setting"]),
        ("agm vs gel vs lfp? >> which charges fastest off 60 A if all are 120ah?", ["charge-time"]),
    ],
)
def test_nothing_else_is_asked_back(text, topics):
    assert [item.topic for item in answers(text)] == topics


def test_what_stands_between_an_alternator_and_lithium_is_asked():
    found = answers("can i just run a wire from the alternator to the new lithium up front? 100ah")[0]
    assert "between the alternator and the battery" in found.asks[0].say
    assert [item.id for item in found.cautions[:2]] == ["alternator-lithium", "lithium-cold"]


def test_a_kind_that_was_told_is_not_asked_again():
    found = answers("e-bike pack 36V 10S, what absorption voltage for the trolling motor bank")[0]
    assert "LiFePO4 (LFP) after all" in found.asks[0].say
    assert not any(item.fact == "load.burst" for item in found.understood)


def test_limits_of_one_bank_that_differ_have_names_of_their_own():
    text = "Two 12 V 100 Ah LiFePO4 in series, Sturgeon, BMS 100 A each. Boss says limits add up, so 200 A continuous"
    found = next(item for item in answers(text) if item.topic == "run-check")
    labels = [side.label for side in found.compare]
    assert len(set(labels)) == len(labels) == 2
    assert "In series limits do not add up" in " ".join(step.say for step in found.working)


def test_no_change_is_proposed_that_is_there_or_too_many():
    text = "4 x 12v 100ah lithium, 100A bms each, side by side. pike on 12v, is it a go"
    found = next(item for item in answers(text) if item.topic == "run-check")
    assert {item.fact for item in found.would_change} <= {"battery.peak_current", "battery.cca"}
