"""Later turns of the same question: colder, put right, of another boat, of other volts, of one battery more."""

from __future__ import annotations

import pytest

from tests.talks import on, only, plain, talk

PIKE = "Would an 850 CCA gel turn a Pike?"
AMPS = "Is a 750 CCA wet battery enough for a thruster of 190 A?"
FREEZES = "At how many degrees does a battery at 12.3 V freeze?"
SAGS = "700 CCA, it falls to 9.8 V with 260 A running. Good?"
TRAY = "My tray measures 318 mm long and 184 mm wide inside. Does a group 31 go in?"


@pytest.mark.parametrize(
    "last",
    [
        "At Easter we are out as well. Same thing at minus 9?",
        "Thanks! And if it's minus 9?",
        "ok great. what about when it is nine below",
        "Our harbour is an icy one. Still fine at -9?",
        "and at -9 °C?",
        "suppose it drops to minus 9",
    ],
)
@pytest.mark.parametrize(
    ("first", "topic"), [(PIKE, "run-check"), (AMPS, "run-check"), (FREEZES, "freeze-point"), (SAGS, "load-voltage")]
)
def test_degrees_alone_ask_the_last_question_again(first: str, topic: str, last: str) -> None:
    found = only(first, last)
    assert found.topic == topic
    assert ("ambient.temperature", -9.0) in {(item.fact, item.value) for item in found.understood}


def test_a_word_asked_between_leaves_the_battery_and_its_load() -> None:
    assert only(AMPS, "what is CCA?", "what if it's minus 9").topic == "run-check"
    assert only("what is CCA?", "what if it's minus 9").topic != "run-check"


@pytest.mark.parametrize(
    ("last", "topic"),
    [
        ("Will it freeze at minus 9?", "freeze-point"),
        ("How do I store it over winter? And at minus 9?", "storage"),
        ("What does minus 9 do to its power?", "cold-cranking"),
    ],
)
def test_degrees_beside_a_question_of_their_own_ask_that(last: str, topic: str) -> None:
    assert topic in {item.topic for item in talk(AMPS, last).answers}


@pytest.mark.parametrize(
    "last",
    [
        "Read it again in the light: it's 130 minutes, not 170",
        "it is 130 min and not 170",
        "130 not 170, my eyes",
        "make that 130 minutes instead of 170",
        "the sheet says 130, oops, not 170",
        "should be 130 minutes rather than 170",
    ],
)
def test_a_figure_put_right_takes_the_unit_of_the_other(last: str) -> None:
    found = only("The label gives a reserve capacity of 170 minutes. How many Ah is that?", last)
    assert plain(found.headline).startswith("130 min of reserve")


def test_a_time_that_puts_nothing_right_leaves_the_reserve() -> None:
    found = talk("Reserve capacity 170 minutes, in Ah?", "and I want to run 4 A for 3 hours").answers
    assert ("battery.reserve", 170.0) in {(item.fact, item.value) for one in found for item in one.understood}


@pytest.mark.parametrize(
    ("turns", "air"),
    [
        (("Two 95 Ah gels, 12 V: how much air?", "and at 24 V with the same Ah?"), 0.912),
        (("Two 95 Ah gels in parallel, how much air?", "what air if we change to 24 V, same capacity?"), 0.912),
        (("A 95 Ah gel, 12 V: how much air?", "the airflow for 24 V and the same amp-hours?"), 0.456),
        (("Two 95 Ah gels, 12 V: how much air?", "and on a 24 V boat?"), 0.456),  # the same two, in series
        (("Two 95 Ah gels, 12 V: how much air?", "and AGMs of the same Ah?"), 0.456),
    ],
)
def test_the_air_goes_with_the_cells(turns: tuple[str, ...], air: float) -> None:
    assert on("ventilation", *turns).figures[0].value == pytest.approx(air)


def test_a_bank_of_other_volts_and_the_same_amp_hours_has_more_batteries() -> None:
    found = only("Two 95 Ah gels in parallel, what do they make?", "and if we go to 24 V, same Ah?")
    assert [figure.value for figure in found.figures[:2]] == [24.0, 190.0]


@pytest.mark.parametrize(
    "last",
    [
        "Then would the 900 MCA one push a thruster of 220 amps",
        "would that 900 MCA one turn my 220 A thruster?",
        "and is the 900 MCA one enough for 220 A of thruster?",
    ],
)
def test_a_rating_told_with_its_load_is_not_counted_over(last: str) -> None:
    assert only("How many CCA is 900 MCA?", last).topic == "run-check"


def test_a_rating_that_is_asked_beside_its_load_is_counted() -> None:
    found = talk("How many CCA are 900 MCA, and does that run a 220 A thruster?").answers
    assert {item.topic for item in found} == {"rating-convert", "run-check"}


@pytest.mark.parametrize(
    "last",
    [
        "a new battery then, or can I live with it?",
        "put up with it or buy a new one?",
        "so do we keep it, or is it a new battery",
        "new one, or carry on with this?",
        "replacement battery or make do?",
    ],
)
@pytest.mark.parametrize("age", ["", " It is 6 years old."])
def test_a_new_one_or_not_after_a_reading(age: str, last: str) -> None:
    assert only(f"It drops to 8.8 V with the thruster running, good?{age}", last).topic == "replacement"


def test_a_new_charger_or_the_old_is_no_question_of_the_battery() -> None:
    found = talk("It drops to 8.8 V with the thruster running, good?", "new cable, or live with it?").answers
    assert "replacement" not in {item.topic for item in found}


@pytest.mark.parametrize(
    "second",
    [
        "My other boat has a 450 CCA wet one and a thruster of 150 A. How about that?",
        "my mates boat: 450 CCA wet, thruster 150 A. does that do?",
        "my brothers boat has a 150 A thruster on a 450 CCA wet",
        "dads boat has a 450 CCA wet and a 150 amp bow thruster",
    ],
)
def test_another_boat_with_its_own_load_drops_the_first(second: str) -> None:
    for turns in ((PIKE, second), (PIKE, second, "and with a 420 CCA fitted there")):
        found = on("run-check", *turns)
        assert "Pike" not in found.headline
        assert "load.model" not in {item.fact for item in found.understood}


def test_another_thruster_drops_the_first_and_its_own_amps_do_not() -> None:
    facts = [
        {item.fact for item in on("run-check", PIKE, last).understood}
        for last in ("and for my other thruster, 150 A?", "it draws 280 A at the clamp. still ok?")
    ]
    assert ["load.model" in told for told in facts] == [False, True]


def test_another_boat_without_a_load_of_its_own_keeps_the_load() -> None:
    assert "Pike" in on("run-check", PIKE, "and on the other boat with a 500 CCA gel?").headline


@pytest.mark.parametrize(
    ("turns", "amp_hours"),
    [
        (("Two 80 Ah gels in parallel, and we want to add a third like those: what does it give?",), 240),
        (("We have a pair of 80 Ah gels in parallel and add one more of the same, what do we get?",), 240),
        (("Three 80 Ah wets in parallel. May I add a fourth just like them, what would that make?",), 320),
        (("Two 80 Ah gels in parallel, what do they make?", "and one more of the same?"), 240),
        (("Two 80 Ah gels in parallel. And a third one, what do they make?",), 240),
        (("Two 80 Ah gels in parallel for the house. And another for the engine: what have the first?",), 160),
        (("What do three 80 Ah as 3p give?",), 240),
        (("Can I put a second one exactly like it, same age, 80 Ah, in parallel? What does that make?",), 160),
        (("Our gel is 80 Ah. Could we add a second one just like it in parallel, what do they give?",), 160),
        (("What do my two 80 Ah gels in parallel give?", "I meant a second one just like it, in parallel"), 160),
    ],
)
def test_how_many_there_are_with_a_further_one(turns: tuple[str, ...], amp_hours: float) -> None:
    figures = {figure.name: figure.value for figure in on("bank-wiring", *turns).figures}
    assert figures["bank_capacity"] == amp_hours


@pytest.mark.parametrize(
    ("turns", "verdict", "says"),
    [
        ((TRAY, "a 27?"), "yes", "318 x 184 mm"),
        ((TRAY, "and a group 24"), "yes", "318 x 184 mm"),
        ((TRAY, "what about a 27 then", "or a 24?"), "yes", "318 x 184 mm"),
        ((TRAY, "then which would go in?"), "no", "group 27"),
        ((TRAY, "and with a tray of 350 x 185 mm inside?", "and a 27?"), "yes", "350 x 185 mm"),
        ((TRAY, "how big is a 27?"), "information", "Group 27 is at most"),
        ((TRAY, "would a 27 go into the other tray"), "information", "Group 27 is at most"),
        ((TRAY, "on the second boat, a 27?"), "information", "Group 27 is at most"),
        ((TRAY, "would a 31 go where a 27 was?"), "no", "in the place of a group 27"),
    ],
)
def test_a_place_that_was_measured_stays(turns: tuple[str, ...], verdict: str, says: str) -> None:
    found = on("group-size", *turns)
    assert (found.verdict, says in plain(found.headline)) == (verdict, True)


UNLIKE = "Could a 70 Ah and a 120 Ah gel sit in parallel?"


@pytest.mark.parametrize(
    ("last", "verdict"),
    [
        ("and if the 120 were an AGM", "no"),
        ("what if the 70 Ah one is a wet one?", "no"),
        ("suppose the 120Ah battery was lithium", "no"),
    ],
)
def test_one_of_two_is_named_by_its_size(last: str, verdict: str) -> None:
    found = only(UNLIKE, last)
    assert (found.topic, found.verdict) == ("bank-wiring", verdict)


def test_ratings_too_far_apart_for_series_need_no_kind() -> None:
    assert only("65 Ah gel and a 95 Ah lead one in series?").verdict == "no"
    assert only("65 Ah gel and a 95 Ah lead one in parallel?").verdict == "needs-facts"


@pytest.mark.parametrize("last", ["both again, for gel", "both questions but with a gel", "same two for gel please"])
def test_both_questions_are_asked_again_of_another_kind(last: str) -> None:
    first = "Is 12.5 V good for a wet one, and which amps of charger for 80 Ah?"
    assert [item.topic for item in talk(first, last).answers] == ["rest-voltage", "charger-size"]


@pytest.mark.parametrize(
    ("first", "last", "topic"),
    [
        ("90 Ah wet, how long at 6 A?", "four of them, two and two in series for 24 V", "run-time"),
        ("charger for 90 Ah of gel?", "two in parallel", "charger-size"),
        ("90 Ah wet, how long at 6 A?", "two in parallel, what do I get?", "bank-wiring"),  # asks of the bank
    ],
)
def test_a_bank_that_is_only_told_goes_on_with_the_question(first: str, last: str, topic: str) -> None:
    assert only(first, last).topic == topic


JOINED = ("Two 90 Ah LiFePO4 side by side in parallel, may I?", "the leaflet allows up to 3")


@pytest.mark.parametrize("last", ["and four?", "four instead", "I'd rather take four, then", "say we go for four"])
def test_so_many_more_are_batteries_and_not_what_their_maker_allows(last: str) -> None:
    found = only(*JOINED, last)
    told = {item.fact: item.value for item in found.understood}
    assert (told["battery.count"], told["battery.max_in_parallel"], found.verdict) == (4.0, 3.0, "no")


@pytest.mark.parametrize("last", ["sorry, 4", "the leaflet says 4 is the most"])
def test_what_a_maker_allows_is_put_right(last: str) -> None:
    told = {item.fact: item.value for item in only(*JOINED, last).understood}
    assert (told["battery.count"], told["battery.max_in_parallel"]) == (2.0, 4.0)


@pytest.mark.parametrize(
    "last", ["Cheers, that spared me a fuse!", "You just saved me a battery", "glad I asked first"]
)
def test_thanks_for_what_was_saved_ask_nothing(last: str) -> None:
    assert {item.topic for item in talk(AMPS, last).answers} == {"unclear"}


@pytest.mark.parametrize(
    "last", ["Glad I asked. And with 240 A?", "cheers, but it is gel", "it never saved me: 650 CCA"]
)
def test_thanks_beside_a_figure_go_on(last: str) -> None:
    assert only(AMPS, last).topic == "run-check"


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "says"),
    [
        (("A 20 Ah wet, 5 A timer charger, left on all week. Fine?", "and if I stay by it and unplug it myself?"),
         "charger-setting", "marginal", "somebody watches"),
        (("Which setting for a gel of 70 Ah?", "and the amps please?"), "charger-size", "information", "7 to 14 A"),
        (("Which setting for a gel of 70 Ah?", "and amps at the thruster?"), "charger-setting", "", "gel"),
        (("Charger for 70 Ah of lithium?", "it seems there are two of those side by side, both on the same charger"),
         "charger-size", "information", "140 Ah"),
        (("Will a 600 CCA wet run a 160 A thruster?", "and if it only shows 12.2 in the morning?"),
         "run-check", "no", ""),
        (("Will a 600 CCA wet run a 160 A thruster?", "and if they are only at 12.3?"),
         "run-check", "marginal", "12.3 V"),
        (("Will a 700 CCA wet run a 160 A thruster?", "she would rather have the larger model, 190 amps"),
         "run-check", "yes", "10.2 V"),
        (("750 MCA, in CCA please", "does 600 drive a 200 A thruster?"), "run-check", "yes", "600 CCA"),
        (("750 MCA, in CCA please", "does 700 drive a 200 A thruster?"), "run-check", "yes", "560 CCA"),
    ],
)  # fmt: skip
def test_few_words_go_on_with_the_answer(turns: tuple[str, ...], topic: str, verdict: str, says: str) -> None:
    found = on(topic, *turns)
    assert (found.verdict if verdict else "", says in plain(found.headline)) == (verdict, True), found.headline
