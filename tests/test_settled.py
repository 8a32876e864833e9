"""Messages that tell of one thing as settled and ask of another: only that one is answered."""

from __future__ import annotations

import pytest

from service.routing.settled import asked_behind, asked_by_itself
from tests.talks import talk


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("The fuse is no longer a worry, the cable is 70 mm2. How heavy is a 100 Ah gel?", "weight"),
        ("12.7 every morning, all well there. what fuse for a 120 A windlass on 2 AWG", "fuse-size"),
        ("Charging is all taken care of: 40 A, gel setting. I wonder how long a 110 Ah gel would run a 6 A fridge.",
         "run-time"),
        ("Forget that, the 100 W panel works a treat. How full is 12.35 on an AGM?", "rest-voltage"),
        ("Not asking whether the panel copes, 80 W. Which cable for a 90 A windlass, 8 m away?", "cable-size"),
        ("The panel is 70 W and does what it should. Hours from half with 20 A into 110 Ah of gel?", "charge-time"),
        ("Cable is 50 mm2, fuse 200, don't go on about those, will a 750 CCA wet one turn a 170 A thruster",
         "run-check"),
        ("Thruster in, 200 A breaker in, both working. 50 mm2 lugs for M10 studs, tinned or bare?", "terminals"),
        ("My brother went lithium and saved 20 kilos, good for him. How full is 12.35 on a wet one", "rest-voltage"),
        ("We fitted 95 mm2 and strapped it, lovely, but the studs are M8 and carry 240 amps, big enough are they",
         "terminals"),
        ("Fuse is a 150 and the wire is 2/0 which I'm not touching what stud is on a group 31 case", "terminals"),
    ],
)  # fmt: skip
def test_what_is_called_settled_asks_nothing(text, topic):
    assert [item.topic for item in talk(text).answers] == [topic]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("Charger is a 20 A. What I'm unsure of is whether a 100 Ah gel may lie on its side", "mounting"),
        ("70 mm2, a 250 A fuse, 12.7 at rest. All she wants to know is how heavy a 100 Ah lithium is", "weight"),
        ("My uncle had 100 W of panel and never went ashore. Mine's a 95 Ah wet, how many hours at 4 A?", "run-time"),
        ("the panel is 60 W, keeps up. q is may i join a 95 ah n a 110 ah agm in parallel", "bank-wiring"),
        (
            "Tested last spring, five years, no new one. I want to know how long 95 Ah runs a 3 A light",
            "run-time",
        ),
        ("Sizes I know (group 31), studs I know (M8). What remains: may an AGM lie on its side?", "mounting"),
        (
            "How long charging takes I know, 8 hours at 25 A. I ask about the switch, it is on wet and mine is gel.",
            "charger-setting",
        ),
        ("Motor 175 A, 50 mm2 laid already, 7 m. The fuse is what we're missing. What should it be?", "fuse-size"),
        ("The weight I have, 30 kg. What nobody tells me is whether an AGM may lie on its side. May it?", "mounting"),
    ],
)
def test_what_stands_before_the_words_that_name_the_question_asks_nothing(text, topic):
    assert [item.topic for item in talk(text).answers] == [topic]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("fuse 250 in, cable 70mm2 in, done. is 11.9 at rest bad for a gel", "rest-voltage"),
        ("Solar is fitted and keeps up nicely, 100 W. May I put two 12 V batteries of different age in parallel?",
         "bank-wiring"),
        ("14.7 absorption, AGM, correct per the manual, I checked. What does CCA mean?", "meaning"),
        ("I topped up the cells and cleaned the terminals. What's the freezing point of a half charged wet battery?",
         "freeze-point"),
        ("cold as it is, our shed never freezes. how oft do i top up wet cells", "maintenance"),
    ],
)  # fmt: skip
def test_what_is_done_asks_nothing_beside_a_question_that_stands_for_itself(text, topic):
    assert [item.topic for item in talk(text).answers] == [topic]


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("My invoice for the new ones never arrived. How often do I top up wet cells?", {"other-desk", "maintenance"}),
        ("Is it all fine at 12.1? And what does a 90 Ah AGM weigh?", {"rest-voltage", "weight"}),
        ("how cold can it get before a wet one freezes, here it never freezes. How often do I top up?",
         {"freeze-point", "maintenance"}),
    ],
)  # fmt: skip
def test_what_is_asked_is_answered_beside_it(text, topics):
    assert {item.topic for item in talk(text).answers} == topics


@pytest.mark.parametrize(
    "text",
    [
        "Is the fuse all fine? What cable for 150 A?",
        "Is that all right, and does it want a vent?",
        "800 CCA at -10, what is left of it, and what fuse for 2/0?",
        "The fuse is all fine. Is the first one healthy, and is the second.",
        "I hope 12.3 is fine. What cable for 150 A?",
        "The yard says the fuse is fine. Does a gel freeze?",
        "The fuse is fine. Does a gel freeze, and how much does it weigh?",
        "What fuse do I need, the cable is sorted.",
        "the cable is sorted",
    ],
)
def test_doubts_and_two_questions_leave_all_as_it_is(text):
    assert asked_behind(text) is None


@pytest.mark.parametrize(
    "text",
    [
        "12.1 after a night, a new battery. Is it finished?",
        "What is CCA, I never knew. What fuse for 2 AWG?",
        "Two matters, the fuse is new. What does a gel weigh?",
    ],
)
def test_a_question_that_points_back_does_not_stand_for_itself(text):
    assert asked_by_itself(text) is None


def test_a_danger_is_told_whatever_is_called_settled():
    first, *_ = talk("The battery is swollen, the fuse is all fine. What charger for 100 Ah?").answers
    assert first.verdict == "stop"
