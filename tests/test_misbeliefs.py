"""Misbeliefs are answered: the true thing first, then the fair part of the idea. Each row is found by its own words."""

from __future__ import annotations

import pytest

from grammar import read
from service import reference
from service.leadsman import Leadsman
from service.reply import HOUSE_RULES, Answer
from service.topics import names
from service.turns.thread import Signer
from service.wording.misbeliefs import LONGEST, TABLE, found

ROWS = {str(row["id"].value): row for row in reference.rows(TABLE)}
SAID = {  # each at least twice: by somebody, and asked outright
    "series-adds-cca": [
        "my dealer reckons two 350 CCA AGMs in series make 700 CCA. is that correct?",
        "do the cranking amps add up in series?",
        "does wiring in series double the cca",
    ],
    "reserve-is-amp-hours": ["Seller says RC 90 means 90 Ah. True?", "is reserve capacity the same as amp hours"],
    "mca-is-cca": ["Shop told me that MCA and CCA are the same figure. Right?", "are mca and cca the same thing?"],
    "cca-is-amp-hours": ["Is 800 CCA the same as 80 Ah?", "Dealer says a 900 MCA battery = 90 Ah. Right?"],
    "that-gives-amp-hours": [
        "Label only says 720 A EN. Can I work the Ah out from that?",
        "The battery shows 640 A (EN) and nothing else. Can the capacity be calculated from it?",
    ],
    "full-at-12": [
        "so a 12v battery is full at 12 volts?",
        "he reckons 12.0 V is full for a 12 V battery. is he right?",
    ],
    "lithium-reads-as-lead": [
        "She says her lithium is full at 12.9 V, like her old AGM was. True?",
        "is 12.8 v full on lithium like on lead?",
    ],
    "rest-proves-strength": [
        "Customer says 12.7 V at rest proves his AGM is strong. Is that right?",
        "does a good resting voltage mean the battery is healthy",
        "I was told that anything over 12.6 V means the battery is full and healthy, so the slow thruster can't be it.",
        "Battery reads 12.7 at rest so it must be strong, the weak thruster has to be the motor, right?",
        "The meter says 12.7, so the battery can't be the problem, can it?",
        "It shows 12.7 volts, so it cannot be the battery, can it?",
    ],
    "equal-ends-prove-cable": [
        "He says it reads 12.6 at both ends with nothing running so the cable is good. True?",
        "both ends read the same with nothing on, so is the cable fine?",
    ],
    "large-battery-harms-motor": [
        "My father in law says a bigger battery will burn out the thruster motor. Is that true?",
        "can a battery with too much cca damage the motor?",
    ],
    "cca-wears-alternator": [
        "Forum says a battery with more CCA wears out the alternator. True?",
        "will a bigger battery ruin my alternator?",
    ],
    "fuse-guards-motor": [
        "Chandler told us that a fuse is there for the motor. Correct?",
        "does the fuse protect the motor",
    ],
    "fuse-above-motor": [
        "The rigger tells me 400 A on 50 mm2 is a fine fuse for 200 A since it is larger than the motor. True?",
        "He says 300 A on 1 AWG is fine for 180 A because the fuse is bigger than the motor. Right?",
    ],
    "fuse-guards-people": [
        "will a fuse stop me getting electrocuted",
        "Dad says the fuse saves us from a shock. True?",
    ],
    "motor-needs-no-fuse": [
        "Mechanic reckons a bow thruster needs no fuse, same as a starter motor. Is he right?",
        "is it right that a windlass needs no fuse?",
    ],
    "blown-wants-bigger": [
        "Neighbour says a fuse that blows wants a bigger one. Is that right?",
        "it keeps blowing, so should i fit a bigger fuse?",
    ],
    "bms-is-fuse": [
        "Skipper thinks a BMS makes the fuse unnecessary on 2 x 100 Ah lithium. Right?",
        "does a battery management system do the same job as a fuse?",
        "we have a bms so can we skip the main fuse",
    ],
    "bms-always-trips": [
        "my mate reckons lithium is a no go for a bow thruster cos the bms just trips when you press the stick. true?",
        "They say a lithium switches itself off under a thruster. Would that happen with a Minnow?",
        "dealer reckons lithium is useless for thrusters because the bms trips every time. Sturgeon. your view?",
    ],
    "fuse-left-out": ["so i can leave the fuse out then", "can i do without the fuse then?"],
    "three-percent-for-motors": [
        "Surveyor insists a thruster cable may lose no more than 3 %. Is that so?",
        "does the 3 % rule count for a windlass?",
    ],
    "concrete-drains": ["Grandad says a concrete floor drains batteries. Right?", "does concrete flatten a battery"],
    "green-means-healthy": [
        "Customer says the charger light is green so the battery is healthy. Is that right?",
        "green light on the charger, so the battery is good?",
    ],
    "maintainer-refills": [
        "He reckons any small maintainer will refill a flat bank. true?",
        "will a trickle charger fill my flat 220 ah bank",
    ],
    "sealed-needs-no-air": [
        "Dealer says gel batteries need no vent in a closed box. Correct?",
        "Sealed AGM, so no air needed, right?",
    ],
    "cool-cable-is-enough": [
        "He says 50 mm2 is plenty for 340 A over 4 m because the cable stays cool to the touch. True?",
        "my cable stays cool when i use it, so is it ok?",
    ],
    "acid-lifts-gravity": [
        "Cells read 1.200. Shall I put some acid in?",
        "he says raise the gravity with acid. right?",
        "1.225 in all cells. Does it want charging? My colleague wants to pour in a drop of acid, yes or no?",
    ],
    "switch-is-fuse": [
        "does the main switch replace the fuse?",
        "My mate says the isolator does the job of a fuse. right?",
    ],
    "fuse-beside-switch": [
        "There is an isolator 20 cm from the battery. Must I still put a fuse in the plus?",
        "With a battery switch fitted, is a fuse still needed?",
    ],
    "thin-link": [
        "Can the jumper between two batteries be smaller than the main cable?",
        "Two 12 V in series. Link cable between them, can it be thinner than the mains, it is only 25 cm?",
    ],
    "hydrometer-on-sealed": [
        "can i use a hydrometer on a gel battery?",
        "does the hydrometer thing work on my agm or did i waste my money",
    ],
}


def ids(text: str) -> list[str]:
    return [item.text("id") for item in found(read(text))]


def first(text: str) -> Answer:
    return Leadsman().ask(text).answers[0]


def test_every_row_has_its_examples() -> None:
    assert list(SAID) == list(ROWS)


@pytest.mark.parametrize(("name", "text"), [(name, text) for name, texts in SAID.items() for text in texts])
def test_it_is_found_and_answered(name: str, text: str) -> None:
    assert name in ids(text)
    said = " ".join(
        [item.headline + " ".join(step.say for step in item.working) for item in Leadsman().ask(text).answers]
    )
    truth = str(ROWS[name]["truth"].value)
    told = truth.partition("one battery")[0].removesuffix("that of ")
    own_words = f"{ROWS[name]['opens'].value}, "  # "No, the fuse stays in: every feed needs one"
    assert told[1:] in said.replace("\u00a0", " ") or said.startswith(own_words)


@pytest.mark.parametrize("name", ROWS)
def test_a_row_can_be_read_out(name: str) -> None:
    row = ROWS[name]
    assert set(row["topics"].value) <= set(names())
    assert len(f"{row['opens'].value}: {row['truth'].value}".split()) <= LONGEST
    assert not {"wrong", "myth", "actually", "!"} & set(str(row["truth"].value).split())


@pytest.mark.parametrize(
    "text",
    [
        "what fuse does a bms need for 200 A on 1/0",
        "how do i wire two 400 cca in series for the sturgeon",
        "will two 400 CCA in series run the sturgeon",
        "the bms is fine and the fuse is 250 A. what cable for 200 A?",
        "my battery is full. 12.8 V at rest on agm, good?",
        "is a green cable good for minus",
        "does a 2 A trickle charger keep my full 100 ah agm up over winter",
        "10 A plotter over 6 m at 12 V, 3 % allowed, what cable",
        "is a 250 A fuse bigger than the motor needs? 200 A on 1/0",
        "put the float in the acid and it reads 1.250, good?",
        "A bit of acid came out of the caps, is that normal?",
        "what fuse do I need? there is a switch in the plus too, 200 A on 50 mm2",
        "160 min reserve, can I work the Ah out from that?",
        "Hydrometer says 1.265 on my wet one and the AGM rests at 12.8. Both good?",
        "what cable for 200 A over 6 m, can it be thinner on the minus?",
    ],
)
def test_an_ordinary_question_is_none(text: str) -> None:
    assert ids(text) == []


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("The installer wrote that a BMS does not replace the fuse. Correct?", "Yes: "),
        ("My cousin swears two 500 CCA in series still give 500 CCA. Is that right?", "Yes: "),
        ("Is he wrong to say a BMS replaces the fuse?", "Yes: "),
        ("Surveyor insists a thruster cable may lose no more than 3 %. Is that so?", "No: "),
        ("is 3% or 10% the one for a thruster", "10"),
    ],
)
def test_the_opening_word_goes_by_how_it_is_said(text: str, opens: str) -> None:
    assert first(text).headline.startswith(opens)


def test_what_figures_decide_keeps_its_headline() -> None:
    answer = first(
        "He says 300 A on 1 AWG is fine for a 180 A thruster because the fuse is bigger than the motor. Right?"
    )
    assert (answer.verdict, answer.headline.partition(":")[0]) == ("marginal", "Only just")
    assert answer.working[0].say.startswith("A fuse guards the cable")


def test_figures_stand_beside_it() -> None:
    answer = first("Fitter says the BMS does the job of a fuse, so none for the Pike. Is that right?")
    assert answer.headline.replace("\u00a0", " ").endswith(
        "guards the cable; fit a 350 A fuse, if the cable allows it."
    )


def test_what_the_figures_say_is_told_first_among_the_reasons() -> None:
    answer = first("He says two 400 CCA in series make 800 CCA for the Sturgeon. True?")
    assert answer.working[0].say.startswith("Your two 400")
    assert HOUSE_RULES not in answer.working[0].cites  # it is no rule of the house's


def test_a_conclusion_in_a_later_turn_is_answered() -> None:
    desk = Leadsman(signer=Signer("k"))
    before = desk.ask("what is a bms")
    (answer,) = desk.ask("so i can leave the fuse out then", thread=before.thread).answers
    assert (answer.topic, answer.headline.partition(":")[0]) == ("fuse-size", "No, the fuse stays in")


def test_another_question_beside_it_keeps_its_answer() -> None:
    text = "Yard says the BMS replaces the fuse. True? And what cable for 200 A over 5 m at 12 V?"
    assert [item.topic for item in Leadsman().ask(text).answers] == ["fuse-size", "cable-size"]


def test_a_danger_comes_before_all_beliefs() -> None:
    text = "the agm is hissing. does a bms replace the fuse?"
    assert first(text).verdict == "stop"
    assert "BMS" not in first(text).headline
