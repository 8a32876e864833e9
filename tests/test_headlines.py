"""A headline gives first what was asked: a figure, a part, one of two, or a yes or no of the right way round."""

from __future__ import annotations

import pytest

from service import say
from service.leadsman import default_desk
from service.render.as_text import as_text
from service.render.figures import numbers
from service.reply import Answer
from tests.talks import talk


def last(*turns: str, topic: str) -> Answer:
    """The answer of a topic to the last of these turns."""
    return next(item for item in talk(*turns).answers if item.topic == topic)


def head(*turns: str, topic: str) -> str:
    """Its headline, with plain spaces."""
    return last(*turns, topic=topic).headline.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("turns", "topic", "opens"),
    [
        (("Sturgeon on two 12 V 720 CCA AGMs in series, enough?", "no, read it wrong, 710 each"), "run-check", "Yes:"),
        (("is a 720 cca agm too weak for a pike?", "sorry, its 480 cca"), "run-check", "Yes: your 480"),
        (("is a 480 cca agm too weak for a pike?", "sorry, its 720 cca"), "run-check", "No: your 720"),
        (("50 mm2 for 260 A at 12 V over 5 m, big enough?", "wrong number, 11 m"), "cable-size", "No: 50 mm²"),
        (("AGM 12.35 overnight, should I charge it?",), "rest-voltage", "Yes: 12.35 V"),
        (("wet battery 12.65 at rest, do I need to charge it",), "rest-voltage", "No: 12.65 V"),
        (("gel at 12.0 for two days, needs charging?",), "rest-voltage", "Yes: 12.0 V"),
        (("two gels, 110 days in a shed at 6 C, do they want charging?",), "storage", "No, but look every 90 days"),
        (("two gels, 110 days in a shed at 6 C, will they be ok?",), "storage", "Yes, but look every 90 days"),
        (("wet battery, 210 days at 20 C, do I have to charge it in between?",), "storage", "Yes: charged full"),
        (("gel batteries ashore for 18 weeks at 9 C, will they be dead by spring?",), "storage", "No, but look every"),
        (("a wet one at 12.05 after the weekend, have i killed it",), "rest-voltage", "Not by this reading: 12.05 V"),
        (("gel at 12.35 after a night, dead?",), "rest-voltage", "Not by this reading: 12.35 V"),
        (("agm 10.2 v after the winter, is it finished",), "replacement", "It may be: 10.2 V"),
        (("Yard says a 200 A fuse on 35 mm2 is over its limit for our Minnow. Is it?",), "fuse-size", "No: a 200 A"),
        (("A friend says 95 mm2 is overkill for 200 A over 4 m at 12 V. Is it?",), "cable-size", "No: 95 mm²"),
        (("does my minnow need a fuse",), "fuse-size", "Yes: fit the 175 A fuse"),
        (("They say 11.9 is too low for a wet battery at rest. Is it?",), "rest-voltage", "Yes: 11.9 V"),
        (("thats a lot to lose isnt it: 11.7 at the battery and 9.7 at the motor",), "voltage-drop", "Yes: 2.00 V"),
        (("11.4 at the posts and 10.9 at the motor while it runs, is that a lot?",), "load-voltage", "No: 0.5 V"),
        (("11.5 on the battery and 9.6 at the thruster while running, would thicker cable help?",), "load-voltage",
         "Yes, if clean joints do not: 1.9 V"),
    ],
)  # fmt: skip
def test_yes_and_no_answer_the_question_that_was_put(turns, topic, opens):
    assert head(*turns, topic=topic)[: len(opens)] == opens


@pytest.mark.parametrize(
    ("turns", "topic", "opens"),
    [
        (("R? 12.6 rest, 10.2 @ 240A, 700CCA wet",), "load-voltage", "10.0 mΩ inner resistance, a fail"),
        (("load test 700 CCA AGM at 350 A", "9.9 V, 12.7 before, 20 C", "what resistance is that?"), "load-voltage",
         "8.0 mΩ inner resistance, a pass"),
        (("12.7 rest, 9.9 @ 260A, 800CCA. pass/fail",), "load-voltage", "Fail: with 260 A"),
        (("SG 1.245 @ 50F all cells, SOC?",), "specific-gravity", "About 80 % full"),
        (("internal resistance if one goes from 12.7 to 10.6 at 210 A?",), "load-voltage", "10.0 mΩ inner resistance"),
        (("70mm2 24V 280A, max fuse?",), "fuse-size", "450 A is the most for 70 mm²"),
        (("largest fuse for 35 mm2 and a 120 A motor?",), "fuse-size", "300 A is the most for 35 mm²; fit 150 A"),
        (("fuse for the minnow",), "fuse-size", "Fit the 175 A fuse that our catalogue names"),
        (("which breaker for a 60 A windlass on 10 mm2",), "fuse-size", "Fit an 80 A breaker"),
        (("charger outputs for engine, house and a 24 V thruster bank, how many?",), "charger-banks",
         "2 outputs, for engine and house, and a 24 V charger"),
        (("12>24 10A out AGM, alternator 90A, Iin?",), "dc-dc", "It pulls about 22 A"),
        (("25 A 12 to 24 charger for the bow AGMs, alternator is 110 amps. what will it take from the 12 v side",),
         "dc-dc", "It pulls about 56 A"),
        (("80 W panel, 100 Ah AGM, 0.6 A all day in summer, enough?", "how many watts do I want then?"), "solar",
         "85 W or more"),
        (("what watts for a 0.4 A drain on a 100 ah agm in summer",), "solar", "57 W"),
        (("3x 12V 200Ah ser, what V Ah?",), "bank-wiring", "Three batteries in series (plus to minus) give 36 V"),
        (("2x 6V GC2 220Ah ser, V Ah?",), "bank-wiring", "Two batteries in series (plus to minus) give 12 V and 220"),
        (("gel 5 months at 12 C from full, how much left?",), "storage", "About 90 % full after 152 days"),
        (("LFP 150Ah in a locker at 4 C, what charger?",), "charger-size", "150 Ah of lithium takes a charger of 15 A"),
    ],
)  # fmt: skip
def test_what_and_how_many_get_their_figure_first(turns, topic, opens):
    assert head(*turns, topic=topic)[: len(opens)] == opens


@pytest.mark.parametrize(
    ("turns", "topic", "opens"),
    [
        (("wet one at 12.0, minus 12 tonight. leave it aboard or go and get it?",), "freeze-point", "Go and get it: "),
        (("agm 12.75 rested, minus 9 forecast, bring it in or leave it?",), "freeze-point", "Leave it: "),
        (("12.1 on the wet battery and minus 19 tonight, do i fetch it or can it stay",), "freeze-point", "Fetch it: "),
        (("should i fit a 150 or a 175 fuse for the minnow on 35 mm2",), "fuse-size", "Take the 175 A fuse"),
        (("gel 12.25 rested, leave it or charge it",), "rest-voltage", "Charge it today: 12.25 V"),
        (("agm 12.75 rested, plug in or leave it till Friday",), "rest-voltage", "Leave it till Friday: 12.75 V"),
        (("12.05 at rest on the wet battery. Charge it or bin it?",), "rest-voltage", "Charge it today: 12.05 V"),
        (("10 year old agm, keep it or replace it?",), "replacement", "Most likely replace it: "),
        (("12.6 rest, 9.3 at the posts with 260 A, 700 cca wet. battery or wiring?",), "load-voltage", "The battery: "),
        (("12.7 and 10.2 with the pike running, 800 cca", "so is it the battery or the cable"), "load-voltage",
         "The battery, if this was read on its posts: "),
        (("12.7 rest, 11.3 at the posts running and 9.3 at the motor. where is the fault",), "load-voltage",
         "The cable or its joints: "),
    ],
)  # fmt: skip
def test_a_choice_gets_the_one_to_take(turns, topic, opens):
    assert head(*turns, topic=topic)[: len(opens)] == opens


def test_answers_stand_in_the_order_of_the_questions():
    found = default_desk().ask("MCA 850 -> CCA? and at -12C?").answers
    assert [item.topic for item in found] == ["rating-convert", "cold-cranking"]


def test_a_loss_between_two_readings_is_told_once():
    found = default_desk().ask(
        "At the posts 22.8 V with the Sturgeon running, 19.6 V at its terminals. How much is lost?"
    )
    assert [item.topic for item in found.answers].count("voltage-drop") + [item.topic for item in found.answers].count(
        "load-voltage"
    ) == 1


def test_a_reading_that_waits_for_the_cca_is_held_against_the_model():
    found = last("12.7 rested and 10.2 with the pike running", topic="load-voltage")
    assert "a good 650\u00a0CCA battery holds 10.3\u00a0V, and yours drops to 10.2\u00a0V" in found.headline
    assert [(item.say, item.then) for item in found.asks[0].replies] == [("620 or less", "yes"), ("over 620", "no")]


def test_a_load_test_is_asked_for_in_its_own_words():
    found = last("Load test on a 760 CCA AGM, 380 A for 15 s", topic="load-voltage")
    assert "after 15 seconds at 380\u00a0A" in found.headline
    assert [item.say for item in found.asks[0].replies] == ["9.6\u00a0V or more", "under 9.6\u00a0V"]
    assert "thruster" not in found.asks[0].where


def test_a_resting_reading_is_not_taken_for_the_load_test():
    assert last("760 CCA AGM, 12.6 at rest, load test 380 A", topic="load-voltage").verdict == "needs-facts"


def test_needs_round_up_and_steps_that_change_nothing_are_left_out():
    assert (
        "51\u00a0cm² for each" in last("Vent opening for 2x 12V 150Ah flooded in series?", topic="ventilation").headline
    )
    found = last("SG 1.225/1.220/1.165/1.230/1.225/1.220 at 80F, fail?", topic="specific-gravity")
    assert not any("1.225 at 27" in step.say for step in found.working)


def test_one_battery_makes_no_bank_and_one_need_has_one_figure():
    text = as_text(default_desk().ask("Will a single 12 V 100 Ah AGM, 800 CCA, run the Pike at 20 C?"))
    assert "batteries make 12 V" not in text
    assert "CCA for a clear yes 655 A" in text
    assert "for 655 CCA" in " ".join(text.split())


def test_a_cap_in_the_cold_is_no_range():
    text = " ".join(
        as_text(default_desk().ask("What size of 24 V charger do two 12 V 150 Ah LFP in series want at 3 C?")).split()
    )
    assert "15 A at most at 3 °C (37 °F), 30 to 75 A when it is warmer than 10 °C" in text
    assert "at least" not in text


def test_the_print_on_the_cable_is_asked_with_what_it_means():
    found = last("70mm2 24V 280A, max fuse?", topic="fuse-size")
    assert [item.then for item in found.asks[0].replies] == ["information", "no"]


@pytest.mark.parametrize(
    ("text", "topic", "shown"),
    [
        ("650 CCA at plus 5, what does it give?", "cold-cranking", "812 A"),
        ("890 CCA battery at 12 C, how much is left to crank?", "cold-cranking", "1112 A"),
        ("What size of charger for a 145 Ah AGM?", "charger-size", "43.5 A"),
        ("What size of charger for a 165 Ah AGM?", "charger-size", "49.5 A"),
        ("225 mA of drain on a wet 100 Ah, when is it half empty?", "standing-drain", "9.2 days"),
        ("A 70 Ah AGM with a drain of 260 mA: how long until half?", "standing-drain", "5.6 days"),
    ],
)
def test_a_number_looks_the_same_in_the_headline_and_in_the_numbers(text: str, topic: str, shown: str) -> None:
    answer = next(item for item in default_desk().ask(text).answers if item.topic == topic)
    assert shown in answer.headline.replace(say.NB, " ")
    assert shown in "; ".join(numbers(answer)).replace(say.NB, " ")


@pytest.mark.parametrize("volts", [9.6, 9.8, 10.0, 10.2, 10.4, 10.6])
@pytest.mark.parametrize("amps", [140, 180, 260, 320])
def test_the_replies_to_a_question_for_the_cca_stand_on_both_sides_of_the_edge(volts, amps):
    asked = last(
        f"12.7 V rested, {volts} V with the thruster running at {amps} A: is it the battery?", topic="load-voltage"
    )
    assert [item.then for item in asked.asks[0].replies] == ["yes", "no"]
