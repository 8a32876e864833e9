"""Which of two, and who is right: each of the two is judged, and one that is ruled out is said to be."""

from __future__ import annotations

import pytest

from grammar import read
from service.leadsman import default_desk
from service.reply import Answer

MODELS = ("Minnow", "Pike", "Sturgeon")


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def first(*turns: str) -> Answer:
    thread, answers = None, ()
    for text in turns:
        reply = default_desk().ask(text, thread=thread)
        thread, answers = reply.thread, reply.answers
    return answers[0]


@pytest.mark.parametrize(
    ("text", "rated", "load"),
    [
        ("One yard says a 250 A fuse, the dealer says 350 A. 200 A thruster, 70 mm2. Who is right?", [250, 350], 200),
        ("Motor 150 A on 50 mm2. My son would fit a 200 A fuse, my wife prefers 300 A. Which of them is right?",
         [200, 300], 150),
        ("The rigger put in a 250 A breaker, our neighbour wants 400 A. Cable 95 mm2, motor 280 A. Which?",
         [250, 400], 280),
        ("Is a 225 A fuse right for the 180 A motor on 50 mm2 or must it be 300 A?", [225, 300], 180),
        ("The leaflet asks for a 200 A fuse, a friend swears by 250. The thruster takes 150 A, cable 50 mm2.",
         [200, 250], 150),
        ("a fuse for the 200 A thruster on 70 mm2: 250 A or 350 A?", [250, 350], 200),
    ],
)  # fmt: skip
def test_another_fuse_is_a_fuse_and_no_load(text: str, rated: list[float], load: float) -> None:
    found = read(text, models=MODELS).stated
    assert [item.value for item in found if item.fact == "fuse.rating"] == rated
    assert [item.value for item in found if item.fact == "load.current"] == [load]


@pytest.mark.parametrize(
    ("text", "load"),
    [
        ("There is a 300 A fuse, and my friend says it pulls 350 A. Cable 95 mm2. Ok?", 350),
        ("The dealer wants a 250 A fuse, the thruster draws 200 A, cable 70 mm2. Ok?", 200),
        ("A 175 A fuse it has, and a motor of 125 A. Ok on 35 mm2?", 125),
        ("The yard says a 250 A fuse, and the current is 200 A. Ok on 70 mm2?", 200),
        ("He says a 300 A fuse. The windlass runs at 150 A on 50 mm2.", 150),
    ],
)
def test_what_a_motor_draws_is_no_fuse(text: str, load: float) -> None:
    found = read(text, models=MODELS).stated
    assert [item.value for item in found if item.fact == "load.current"] == [load]
    assert len([item for item in found if item.fact == "fuse.rating"]) == 1


@pytest.mark.parametrize(
    ("text", "verdict", "opens"),
    [
        ("One yard says a 250 A fuse, the dealer says 350 A. 250 A thruster, 70 mm2 cable. Who is right?", "yes",
         "Take the 350 A fuse: it suits 250 A on 70 mm²; 250 A is too small"),
        ("The yard says a 300 A fuse, the shop 400 A, as that does not blow. 250 A motor, 70 mm2. Who is right?",
         "marginal", "Fit 350 A: 300 A is too small for 250 A, and 400 A is over"),
        ("My wife would take a 175 A fuse and I would take 225 A. The thruster draws 120 A over 50 mm2. Which?", "yes",
         "Take the 175 A fuse: it suits 120 A on 50 mm²; 225 A: yes"),
        ("A mate says a 225 A fuse, the other one 500 A. 180 A thruster on 70 mm2. Whom do I believe?", "yes",
         "Take the 225 A fuse: it suits 180 A on 70 mm²; 500 A is too large"),
    ],
)  # fmt: skip
def test_both_fuses_are_judged(text: str, verdict: str, opens: str) -> None:
    found = first(text)
    assert (found.topic, found.verdict, plain(found.headline)[: len(opens)]) == ("fuse-size", verdict, opens)


def test_a_fuse_that_never_blows_is_no_fuse() -> None:
    found = first("Is a 400 A fuse better on 70 mm2 for a 200 A motor, since that one does not blow?")
    assert any("too large to blow protects nothing" in step.say for step in found.working)
    blown = first("200 A motor on 70 mm2, the 250 A fuse blew again. Is a 400 A one better?")
    assert not any("protects nothing" in step.say for step in blown.working)


@pytest.mark.parametrize(
    ("turns", "verdict", "opens"),
    [
        (("One offers 50 mm2 and the other 70 mm2 for a Sturgeon, 7 m each way. Which one is right?",), "yes",
         "Take 70 mm² with 80 °C insulation or better: it loses 1.00 V (4.2 %) over 7 m"),
        (("One offers 50 mm2 and the other 70 mm2 for a Sturgeon, 7 m each way. Which is right?", "it is 11 m now"),
         "yes", "Take 70 mm² with 80 °C insulation or better: it loses 1.57 V (6.6 %) over 11 m"),
        (("25 or 35 mm2 for a 200 A thruster, 4 m? which one",), "yes",
         "Take 35 mm² with 105 °C insulation: it loses 0.82 V (6.8 %) over 4 m (13.1 ft)"),
        (("Should I take 2/0 or 4/0 for 340 A at 12 V, 12 feet?",), "yes", "Take 4/0"),
        (("10 mm2 or 16 mm2 for the Pike over 8 m?",), "no", "Neither will do: 16 mm² may carry 120 A, and 260 A run"),
        (("The yard fitted 70 mm2, a friend says 50 mm2 was enough. Sturgeon, 7 m. Who is right?",), "needs-facts",
         "Not 50 mm², which is too thin; 70 mm² will do with 80 °C insulation or better"),
        (("One yard says 25 mm2, another 35 mm2 for a Minnow, 4 m. Who is right?",), "yes",
         "Take 25 mm²: it loses 0.69 V (5.7 %) over 4 m"),
    ],
)  # fmt: skip
def test_of_two_cables_that_are_offered_one_is_named(turns: tuple[str, ...], verdict: str, opens: str) -> None:
    found = first(*turns)
    assert (found.topic, found.verdict, plain(found.headline)[: len(opens)]) == ("cable-size", verdict, opens)
    assert len(found.compare) == 2 or verdict == "needs-facts"


@pytest.mark.parametrize(
    ("text", "verdict", "opens"),
    [
        ("Both wets read apart after the night, 12.65 and 12.0. Which one is bad, or can both stay?", "no",
         "Not known yet, so keep both: charge the one at 12.0 V alone today, rest it, then a load test decides"),
        ("two AGMs read apart, 12.8 and 12.3 at rest. which one must go?", "marginal",
         "Not known yet, so keep both: charge the one at 12.3 V alone, rest it"),
        ("gel one rests at 12.1, gel two at 12.0. which is faulty?", "no",
         "Not known yet, so keep both: charge each alone"),
        ("Rested apart, one AGM shows 12.85 and the other 12.75: can both stay?", "yes",
         "Neither by these readings, so both may"),
        ("One AGM rests at 12.8, the other at 12.3. Good?", "marginal", "Only just: 12.8 V is full"),
    ],
)  # fmt: skip
def test_volts_at_rest_alone_condemn_no_battery(text: str, verdict: str, opens: str) -> None:
    found = first(text)
    assert (found.topic, found.verdict, plain(found.headline)[: len(opens)]) == ("rest-voltage", verdict, opens)


@pytest.mark.parametrize(
    ("text", "days"),
    [
        ("The bilge alarm takes 60 mA from an 80 Ah AGM, how long until it is flat?",
         "27 days until half, where to stop, and 55"),
        ("50 mA drain, 120 Ah wet, when is it empty?", "50 days until half, where to stop, and 100"),
        ("A tracker takes 20 mA, 110 Ah gel at 80 %. How many days before it is dead?",
         "68 days until half, where to stop, and 183"),
        ("0.1 A drain on a 100 Ah wet, when is it half empty?", "20 days until half: 100 mA"),
        ("80 mA drain on a 100 Ah wet, how many days to half?", "26 days until half: 80 mA"),
    ],
)  # fmt: skip
def test_who_asks_for_empty_is_told_both(text: str, days: str) -> None:
    assert plain(first(text).headline).startswith(f"About {days}")


@pytest.mark.parametrize(
    ("text", "opens", "verdict"),
    [
        (
            "Will a leisure battery do for a bow thruster or must it be a starter one?",
            "It need not be a starter",
            "information",  # one kind against another
        ),
        (
            "does a domestic battery do for the bow thruster or must it be a starting one",
            "It need not be a starter",
            "information",  # one kind against another
        ),
        (
            "may a deep-cycle one serve the thruster, or does it want one made for starting?",
            "It need not be a starter",
            "information",
        ),
        ("Is a leisure battery ok for the thruster?", "No: a deep-cycle battery without a CCA", "no"),
    ],
)
def test_the_other_half_of_a_choice_is_answered(text: str, opens: str, verdict: str) -> None:
    found = first(text)
    assert (found.topic, found.verdict) == ("battery-duty", verdict)
    assert plain(found.headline).startswith(opens)


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("we are weighing up gel against AGM for the Sturgeon", "battery-type"),
        ("two 6 V wets vs one 12 V gel for a Minnow", "battery-type"),
        ("got hold of two leisure batteries, 6 V 200 Ah wet, for the Minnow, good idea?", "run-check"),
    ],
)
def test_what_is_weighed_up_or_put_up_for_a_load_is_judged_as_such(text, topic):
    (found,) = default_desk().ask(text).answers
    assert found.topic == topic
