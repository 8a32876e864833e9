"""A choice between two ways: each side with its own count, figures and age, and the sentence that says which."""

from __future__ import annotations

from typing import Any

import pytest

from grammar import read
from service.leadsman import default_desk
from service.reply import Answer
from service.topics.battery_duty import TOPIC as DUTY
from tests.building import case
from tests.talks import on

MODELS = ("Minnow", "Pike", "Sturgeon")
ONE_OR_TWO = "For the Minnow: one AGM of 110 Ah with 640 CCA, or two of 70 Ah with 420 CCA each in parallel?"


def told(text: str) -> dict[tuple[str, int], Any]:
    return {(item.fact, item.of): item.value for item in read(text, models=MODELS).stated}


def answered(*texts: str) -> dict[str, Answer]:
    thread = None
    for text in texts:
        reply = default_desk().ask(text, thread=thread)
        thread = reply.thread
    return {answer.topic: answer for answer in reply.answers}


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("text", "counts", "fact", "values"),
    [
        (ONE_OR_TWO, (1, 2), "battery.cca", (640, 420)),
        ("three 70 Ah or one 210 Ah?", (3, 1), "battery.capacity", (70, 210)),
        ("a 950 CCA or a pair of 500 CCA for the Pike", (1, 2), "battery.cca", (950, 500)),
        ("is a single 800 CCA better than two 450 CCA?", (1, 2), "battery.cca", (800, 450)),
        ("two 100s or one 200?", (2, 1), "battery.capacity", (100, 200)),
        ("one 100 ah 680 cca or 2 60 ah 440 cca, minnow", (1, 2), "battery.cca", (680, 440)),
        ("2x90Ah or 1x180Ah", (2, 1), "battery.capacity", (90, 180)),
        ("700 CCA, or do I need two of 450 CCA?", (1, 2), "battery.cca", (700, 450)),
        ("one 200 Ah or two of 100 Ah, which lasts longer?", (1, 2), "battery.capacity", (200, 100)),
        ("the single 130 Ah or rather the pair of 70 Ah?", (1, 2), "battery.capacity", (130, 70)),
        ("We have one of 105 Ah. Would two of 60 Ah be better?", (1, 2), "battery.capacity", (105, 60)),
        ("two of 700 CCA in series or two of 850 CCA in series?", (2, 2), "battery.cca", (700, 850)),
    ],
)
def test_each_side_has_its_own_count_and_figure(text, counts, fact, values):
    facts = told(text)
    assert (facts["battery.count", 1], facts["battery.count", 2]) == counts
    assert (facts[fact, 1], facts[fact, 2]) == values


def test_a_figure_of_the_second_side_alone_is_none_of_the_first():
    facts = told("an 850 CCA or two 65 Ah of 450 CCA for the Pike")
    assert ("battery.capacity", 1) not in facts
    assert facts["battery.capacity", 2] == 65


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("two 60 Ah and a 100 Ah, in series or in parallel?", 2),
        ("two batteries of 700 CCA or of 900 CCA for the Pike", 2),
        ("I have a 100 Ah or bigger one next to my two 60 Ah", 2),
    ],
)
def test_batteries_that_are_joined_or_counted_once_are_no_such_choice(text, count):
    answer = default_desk().ask(text).answers[0]
    assert told(text)["battery.count", 1] == count
    assert not answer.headline.startswith(("Either", "Take", "Both hold"))


def test_one_large_or_two_small_ones_are_judged_each_and_never_mixed():
    found = answered(ONE_OR_TWO)
    check, wiring = found["run-check"], found["bank-wiring"]
    assert check.verdict == "yes"
    assert "Either will do: one 640 CCA AGM battery holds about 10.6 V" in plain(check.headline)
    assert [option.label for option in check.compare] == [
        "640\u00a0CCA AGM battery",
        "two 420\u00a0CCA AGM batteries in parallel",
    ]
    assert wiring.verdict == "information"
    assert "140 Ah against 110 Ah" in plain(wiring.headline)


@pytest.mark.parametrize(
    ("text", "verdict", "opening", "other"),
    [
        ("a 900 CCA or two 300 CCA for the Pike?", "yes", "Take the 900 CCA battery: it holds", "parallel: no"),
        ("one 500 CCA or two 450 CCA in parallel for the Pike?", "yes", "Take the two 450 CCA", "500 CCA battery: no"),
        ("one 400 CCA or two 250 CCA in parallel for the Pike?", "no", "Neither will do", "is needed"),
    ],
)
def test_where_one_side_does_it_is_the_one_to_take(text, verdict, opening, other):
    check = answered(text)["run-check"]
    assert check.verdict == verdict
    assert plain(check.headline).startswith(opening)
    assert other in plain(check.headline)


def test_amp_hours_alike_hold_the_same():
    (wiring,) = answered("two 75 Ah or one 150 Ah?").values()
    assert (wiring.topic, wiring.verdict) == ("bank-wiring", "information")
    assert wiring.headline.startswith("Both hold the same")


def test_several_of_half_the_volts_are_counted_in_rows():
    (wiring,) = answered("one 12V 220Ah or four 6V 110Ah batteries for the house?").values()
    shown = [{figure.name: figure.value for figure in option.figures} for option in wiring.compare]
    assert [(one["bank_voltage"], one["bank_capacity"]) for one in shown] == [(12, 220), (12, 220)]


def test_the_sides_of_a_choice_are_never_charged_together():
    time = answered("How long to charge with 30 A: one 200 Ah AGM or two 100 Ah AGM in parallel?")["charge-time"]
    assert time.figures[0].value == pytest.approx(50 * 2 * 1.1 / 30 + 2)


def test_how_long_each_side_lasts_is_told_by_its_count():
    time = answered("Which lasts longer at 50 A, one 200 Ah AGM or two 90 Ah AGM in parallel?")["run-time"]
    assert [plain(option.label) for option in time.compare] == ["1 x 200 Ah", "2 x 90 Ah"]


@pytest.mark.parametrize(
    ("text", "verdict", "words"),
    [
        ("My Pike has one 560 CCA AGM, 4 years old. Would a second one beside it help?", "marginal", "one alone: no"),
        ("A 650 CCA AGM for a 320 A thruster, would one more beside it be enough?", "yes", "one alone: no"),
        ("Would two batteries be better than one? 520 CCA AGM, Pike.", "yes", "one alone: no"),
        ("Is one 650 CCA enough for a 320 A thruster or do I double up with the same again?", "no", "parallel: yes"),
    ],
)
def test_one_more_like_it_is_held_against_one_alone(text, verdict, words):
    check = answered(text)["run-check"]
    assert check.verdict == verdict
    assert words in plain(check.headline)
    assert [option.label for option in check.compare] == ["one alone", "two alike in parallel"]


@pytest.mark.parametrize(
    "text",
    [
        "My 700 CCA battery dips for a second when the Pike starts, should I worry?",
        "The Sturgeon has one 12 V 800 CCA battery. Would a second one help?",
        "Our two 600 CCA AGM run the Pike in parallel. Should I add another identical one?",
    ],
)
def test_a_moment_a_row_of_24_volts_and_a_third_one_are_no_second_beside_it(text):
    assert not answered(text)["run-check"].compare


def test_a_new_one_beside_an_old_one_told_by_a_pronoun_is_only_just():
    found = answered("I have a 95 Ah gel; could I put the same again beside it? The present one is 5 years old.")
    wiring = found["bank-wiring"]
    assert wiring.verdict == "marginal"
    assert {figure.name: figure.value for figure in wiring.figures}["bank_capacity"] == 190


@pytest.mark.parametrize("then", ["And two brand new ones?", "What if I replace both with new ones?"])
def test_all_new_ones_are_no_longer_unlike_in_age(then):
    found = answered("My Pike has one 560 CCA AGM, 4 years old. Would a second one beside it help?", then)
    assert (found["run-check"].verdict, found["bank-wiring"].verdict) == ("yes", "yes")


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("My battery is lead, 80 Ah and two years old. Would the same again next to it do harm?", "bank-wiring"),
        ("My AGM is 5 years old. Is it time for a new one or would one more charge help?", "replacement"),
        ("My gel is 6 years old. Is it worth replacing it by the same again?", "replacement"),
    ],
)
def test_one_beside_it_is_joined_and_one_in_its_place_is_not(text, topic):
    assert set(answered(text)) == {topic}


def test_new_ones_beside_old_ones_stay_unlike():
    text = "I have two old 100 Ah AGM of 6 years, can I put two new ones next to them in parallel?"
    assert answered(text)["bank-wiring"].verdict == "marginal"


@pytest.mark.parametrize(
    ("text", "verdict", "label"),
    [
        ("Mine is a group 27, would a 31 go in?", "no", "group 31"),
        ("I've a 31 in there, can I put in a 27 instead?", "yes", "group 27"),
        ("Would a group 31 fit? Ours is a group 24 at the moment.", "no", "group 31"),
        ("We have group 24s. Do 27s go in their place?", "no", "group 27"),
    ],
)
def test_the_case_that_is_wanted_is_held_against_the_one_they_have(text, verdict, label):
    found = answered(text)["group-size"]
    assert (found.verdict, found.compare[0].label) == (verdict, label)


@pytest.mark.parametrize(
    "text",
    [
        "Thinking of a 31, ours is a 27 now. How much longer is it?",
        "Ours is a 27 now, thinking of a 31. How much longer?",
    ],
)
def test_how_much_longer_is_told_of_the_new_one(text):
    assert answered(text)["group-size"].headline.startswith("Group 31 is 24\u00a0mm longer than group 27")


@pytest.mark.parametrize(
    "text", ["What do I gain with a group 31 instead of a 24?", "Is a group 31 better than a group 24?"]
)
def test_what_a_larger_case_brings_is_told_of_both(text):
    found = answered(text)["group-size"]
    assert found.verdict == "information"
    assert "Group 31 usually has 95 to 125 Ah and 650 to 1150 CCA, group 24 70 to 85 Ah" in plain(found.headline)


def test_three_cases_are_weighed_together():
    for_pike = answered("Group 24, 27 or 31, which one for the Pike?")["group-size"]
    in_a_tray = answered("24, 27 or 31 in a tray of 310 x 175 mm?")["group-size"]
    assert len(for_pike.compare) == len(in_a_tray.compare) == 3
    assert "the Pike needs 650 CCA" in plain(for_pike.headline)
    assert [option.verdict for option in in_a_tray.compare] == ["marginal", "marginal", "no"]


@pytest.mark.parametrize(
    ("text", "facts", "cues", "opening"),
    [
        ("starter or deep cycle", {"load.kind": "thruster"}, [], "Starting: the thruster takes"),
        ("a dual purpose or a pure starting one", {}, [], "Starting: for the thruster alone"),
        ("deep cycle or dual purpose", {"load.model": "pike"}, [], "Dual-purpose: it shows a CCA"),
        ("a starter battery or a leisure battery", {}, ["detail:slow_load"], "Deep-cycle: 50"),
    ],
)
def test_of_two_builds_one_is_chosen(text, facts, cues, opening):
    found = DUTY.answer(case(facts, cues, text=text))
    assert found.verdict == "information"
    assert found.headline.startswith(opening)
    assert len(found.compare) == 2


@pytest.mark.parametrize(
    ("text", "verdicts"),
    [
        ("AGM 95 Ah or lithium 60 Ah for the Pike?", ["needs-facts", "no"]),
        ("gel 100 Ah 500 CCA or lithium 80 Ah for a 180 A thruster?", ["yes", "no"]),
    ],
)
def test_two_kinds_with_their_sizes_are_judged_each(text, verdicts):
    (check,) = answered(text).values()
    assert check.topic == "run-check"
    assert [option.verdict for option in check.compare] == verdicts


@pytest.mark.parametrize(
    "text",
    [
        "Leave the AGM on an old timer charger until April, or carry it home and charge it every two months?",
        "Better keep it on an unregulated charger all winter or store it in the shed and top it up every 6 weeks?",
    ],
)
def test_a_charger_left_on_and_a_charge_now_and_then_are_both_judged(text):
    found = answered(text)
    assert (found["charger-setting"].verdict, found["storage"].verdict) == ("no", "yes")
    assert found["storage"].headline.startswith("Better off the charger")


def test_a_smart_charger_is_not_advised_against():
    found = answered("Leave it on my smart charger all winter or take it home and charge it every 6 weeks? AGM")
    assert not any("Better off the charger" in answer.headline for answer in found.values())


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("Would two 60 Ah AGMs in parallel be better than a single 120?", "Both hold the same"),
        ("two 75s in parallel or one 150 Ah, which is better?", "Both hold the same"),
        ("two 55 Ah in parallel versus one 110?", "Both hold the same"),
        ("three 60s or a single 180?", "Both hold the same"),
        (
            "two 60 Ah in parallel against one 100 Ah, which has more?",
            "Two 60 Ah batteries in parallel have more, 120 Ah",
        ),
    ],
)
def test_the_larger_one_keeps_its_own_amp_hours(text, start):
    assert on("bank-wiring", text).headline.replace("\u00a0", " ").startswith(start)


def test_how_evenly_they_share_is_told_where_it_is_asked():
    text = "Two 60 Ah in parallel or one 120 Ah, and will they share the load evenly?"
    assert "several share evenly only if alike" in on("bank-wiring", text).headline
