"""Follow-ups that keep what was asked: both questions, the open one, the new place, the new charge."""

from __future__ import annotations

import pytest

from tests.talks import talk


def plain(text):
    return text.replace("\u00a0", " ")


def told(*turns):
    return [(item.topic, item.verdict) for item in talk(*turns).answers]


def heads(*turns):
    return [plain(item.headline) for item in talk(*turns).answers]


TWO = "storing a 100ah lithium at 70% for 5 months, fine? and does it matter if the shed gets to -8"


@pytest.mark.parametrize("changed", ["same but a full agm", "same but with a full gel", "and what if it's a full agm"])
def test_same_but_repeats_both_questions_with_the_new_charge(changed):
    assert told(TWO, changed) == [("storage", "yes"), ("freeze-point", "yes")]
    assert "charged full" in heads(TWO, changed)[0]


@pytest.mark.parametrize("changed", ["what if it is full", "and fully charged?", "same but with a full one"])
def test_a_later_full_takes_the_place_of_the_charge_before(changed):
    assert "charged full" in heads("storing a 100ah lithium at 70% for 5 months, fine?", changed)[0]


def test_one_left_full_is_told_so_and_a_full_one_in_general_is_not():
    assert "charged full" in heads("leaving a full wet battery aboard for 3 months, ok?")[0]
    assert told("what should a full agm read")[0][0] == "rest-voltage"


@pytest.mark.parametrize(
    ("turns", "says"),
    [
        (("agm on its side ok?", "and under my bunk"), "Yes: an AGM battery may stand in a cabin, held down and boxed"),
        (("can a gel lie on its side?", "and in the saloon?"), "Yes: a gel battery may stand in a cabin"),
        (("gel battery in the cabin ok?", "and on its side?"), "Usually yes: a gel battery may lie on a side"),
        (("can a wet battery go on its side", "and next to the engine?"), "Better not: heat halves"),
        (("is a wet battery ok on its side?", "and under the berth?"), "No: a wet-cell battery gives off gas"),
    ],
)
def test_a_new_place_is_a_new_question(turns, says):
    assert heads(*turns)[0].startswith(says)


def test_what_eats_it_keeps_the_days_to_half():
    reply = talk("my 90ah wet battery is flat in a week, whats eating it", "0.3 amps with everything off")
    (found,) = reply.answers
    assert plain(found.headline).startswith("Most likely a float switch")
    assert plain(found.headline).endswith("takes your 90 Ah to half in about 6.2 days.")
    assert found.figures[0].name == "days_to_half"


@pytest.mark.parametrize(
    ("turns", "verdicts"),
    [
        (("5 year old agm, buy new or wait?", "load tested it: 800 CCA, 400 A for 15 s, fell to 8.6"), ["no", "no"]),
        (("agm 6 years old, swap it?", "load test: 700 CCA, 350 A 15 s, 10.2 V"), ["yes", "marginal"]),
        (("wet one is 4, time for a new one?", "hydrometer: best cell 1.265, worst 1.200"), ["no", "no"]),
    ],
)
def test_a_test_answers_the_open_question_of_a_new_one(turns, verdicts):
    answers = talk(*turns).answers
    assert [item.verdict for item in answers] == verdicts
    assert answers[1].topic == "replacement"
    assert not answers[1].compare


@pytest.mark.parametrize(
    ("asked", "test", "says"),
    [
        ("I have a 7-year-old gel and a 5-year-old AGM. Which of them must be replaced?",
         "the AGM had a load test: 800 CCA, 400 A for 15 s, it fell to 9.1 V", "gel: only just"),
        ("agm is 3 years and gel 6 years, which to change?", "the gel: 600 cca, 300 A for 15 s, down to 9.0",
         "AGM: yes"),
    ],
)  # fmt: skip
def test_of_two_the_one_that_failed_is_replaced_and_the_other_judged_by_its_age(asked, test, says):
    (_, found) = talk(asked, test).answers
    assert (found.topic, found.verdict) == ("replacement", "no")
    assert "failed a load test" in found.headline
    assert says in found.headline


def test_the_volts_of_a_charger_are_its_setting():
    turns = ("what charger for a 100 ah agm?", "it may become gel next year. what would the voltages be then?")
    (found,) = talk(*turns).answers
    assert found.topic == "charger-setting"
    assert plain(found.headline).startswith("Use the gel setting: absorption 13.8 to 14.4 V")


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("where is my order 5812", "order 5812 is noted"),
        ("order no. AB-20931 has not arrived", "order AB-20931 is noted"),
        ("invoice for order number 88-1234 please", "order 88-1234 is noted"),
        ("warranty claim, serial number P26-00417", "serial number P26-00417 is noted"),
        ("when does my order ship", "please have the order number ready"),
        ("I'd like to order 100 m of cable, what is the price", "please have the order number ready"),
    ],
)
def test_an_order_number_that_was_told_is_not_asked_for(text, says):
    assert says in heads(text)[0]


LITHIUM = "100 Ah lithium, 150 A continuous: will it run a 120 A thruster? And how big a charger for it?"


@pytest.mark.parametrize(
    ("turns", "topics"),
    [
        ((LITHIUM, "peak is 300 A for 5 s"), ["run-check"]),
        (("AGM under a bunk: which air holes, and how is it held down?", "30 A charger, 120 Ah"), ["ventilation"]),
        # a no stands beside whatever is told then
        (("2-bank charger with one negative on two 12s in series, ok? And how many amps for 90 Ah?", "it is gel"),
         ["charger-banks", "charger-size"]),
        # what the fact changes is told again, and so is all of it where nothing was open
        (("Which charger for 90 Ah, and how long from half at 9 A?", "it is gel"), ["charger-size", "charge-time"]),
        ((LITHIUM, "sorry, it is 200 Ah, and the peak is 300 A"), ["run-check", "charger-size"]),
    ],
)  # fmt: skip
def test_a_reply_brings_what_was_open_and_what_it_changes(turns, topics):
    assert [topic for topic, _ in told(*turns)] == topics
