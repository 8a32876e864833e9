"""Series and parallel: sums, and what may be joined."""

from __future__ import annotations

import pytest

from service.finish import finished
from service.leadsman import default_desk
from service.least_change import least_change
from service.topics.bank_wiring import TOPIC
from tests.building import case
from tests.talks import on, only, plain, talk
from tests.topics import asked, figures

PAIR = {"battery.count": 2.0, "battery.nominal": 12.0, "battery.capacity": 100.0}
MAY = ["request:may_i"]


@pytest.mark.parametrize(  # OD1002, lesson 2; TM 9-8000, paragraph 12-11
    ("facts", "wanted"),
    [
        (PAIR | {"bank.layout": "series"}, {"bank_voltage": 24, "bank_capacity": 100, "bank_energy": 2400}),
        (PAIR | {"bank.layout": "parallel"}, {"bank_voltage": 12, "bank_capacity": 200, "bank_energy": 2400}),
        (
            {"battery.count": 3.0, "battery.capacity": 120.0, "battery.chemistry": "lfp", "bank.layout": "parallel"},
            {"bank_voltage": 12, "bank_capacity": 360, "bank_energy": 4608},
        ),
        (
            {"battery.count": 4.0, "battery.nominal": 12.0, "battery.cca": 750.0, "bank.layout": "series-parallel"},
            {"bank_voltage": 24, "bank_cca": 1500},
        ),
        ({"battery.count": 2.0, "battery.cca": 700.0, "bank.layout": "series"}, {"bank_voltage": 24, "bank_cca": 700}),
        (
            {"battery.count": 4.0, "battery.nominal": 6.0, "battery.capacity": 225.0, "bank.voltage": 12.0},
            {"bank_voltage": 12, "bank_capacity": 450, "bank_energy": 5400},
        ),
        (
            {"battery.capacity": 90.0, "battery.nominal": 12.0, "bank.voltage": 24.0, "battery.count": 2.0},
            {"bank_voltage": 24, "bank_capacity": 90},
        ),
    ],
)
def test_the_sum_of_a_bank(facts, wanted):
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == "information"
    assert figures(answer) == pytest.approx(figures(answer) | wanted)


@pytest.mark.parametrize(
    ("facts", "verdict"),
    [
        ({"battery.chemistry": ("agm", "lfp"), "bank.layout": "parallel"}, "no"),
        ({"battery.chemistry": ("agm", "gel"), "bank.layout": "series"}, "no"),
        ({"battery.chemistry": ("lead", "agm"), "bank.layout": "series"}, "needs-facts"),
        ({"battery.nominal": (12.0, 24.0), "bank.layout": "parallel"}, "no"),
        ({"battery.chemistry": "agm", "battery.capacity": (100.0, 140.0), "bank.layout": "parallel"}, "marginal"),
        ({"battery.chemistry": "agm", "battery.capacity": (100.0, 140.0), "bank.layout": "series"}, "no"),
        ({"battery.chemistry": "agm", "battery.capacity": (100.0, 95.0), "bank.layout": "series"}, "yes"),
        ({"battery.chemistry": "agm", "battery.age": (1.0, 4.0), "bank.layout": "series"}, "no"),
        ({"battery.chemistry": "agm", "battery.age": (1.0, 4.0), "bank.layout": "parallel"}, "marginal"),
        ({"battery.chemistry": "agm", "battery.age": (1.0, 2.0), "bank.layout": "series"}, "information"),
        ({"battery.chemistry": "lfp", "battery.count": 2.0, "bank.layout": "series"}, "needs-facts"),
        (
            {"battery.chemistry": "lfp", "battery.count": 2.0, "bank.layout": "series", "battery.max_in_series": 4.0},
            "yes",
        ),
        (
            {
                "battery.chemistry": "lfp",
                "battery.count": 3.0,
                "bank.voltage": 36.0,
                "battery.nominal": 12.0,
                "battery.max_in_series": 2.0,
            },
            "no",
        ),
        (
            {
                "battery.chemistry": "lfp",
                "battery.count": 4.0,
                "bank.layout": "parallel",
                "battery.max_in_parallel": 4.0,
            },
            "yes",
        ),
        (
            {
                "battery.chemistry": "lfp",
                "battery.count": 5.0,
                "bank.layout": "parallel",
                "battery.max_in_parallel": 8.0,
            },
            "no",
        ),
        ({"battery.nominal": 12.0, "battery.count": 2.0, "bank.layout": "parallel", "load.model": "Sturgeon"}, "no"),
    ],
)
def test_what_may_be_joined(facts, verdict):
    assert TOPIC.answer(case(facts, MAY)).verdict == verdict


def test_unlike_capacities_in_parallel_add_up():
    answer = TOPIC.answer(case({"battery.capacity": (100.0, 140.0), "bank.layout": "parallel"}))
    assert figures(answer)["bank_capacity"] == 240


def test_lithium_is_asked_about_its_maker_s_limit():
    answer = TOPIC.answer(case({"battery.chemistry": "lfp", "battery.count": 2.0, "bank.layout": "parallel"}, MAY))
    assert asked(answer) == ["battery.max_in_parallel"]


def test_another_lithium_goes_to_a_technician_without_a_figure():
    answer = TOPIC.answer(case({"battery.chemistry": "lithium-other", "battery.count": 2.0, "bank.layout": "series"}))
    assert (answer.route, answer.figures) == ("technician", ())


@pytest.mark.parametrize(
    ("cues", "layout", "verdict"),
    [
        (["detail:tap"], "series", "no"),
        (["detail:mixed_age"], "series", "no"),
        (["detail:mixed_size"], "parallel", "marginal"),
        (["detail:mixed_kind"], "parallel", "no"),
        (["detail:one_or_two"], "parallel", "information"),
        (["detail:start_and_house"], "parallel", "marginal"),
    ],
)
def test_what_is_told_in_words_alone(cues, layout, verdict):
    assert TOPIC.answer(case({"bank.layout": layout}, cues)).verdict == verdict


def test_not_said_how_they_are_joined_both_ways_stand_side_by_side():
    answer = TOPIC.answer(case(PAIR))
    series, parallel = ({figure.name: figure.value for figure in option.figures} for option in answer.compare)
    assert (series["bank_voltage"], series["bank_capacity"]) == (24, 100)
    assert (parallel["bank_voltage"], parallel["bank_capacity"]) == (12, 200)
    assert figures(answer) == {"bank_energy": 2400}


def test_series_does_not_double_the_running_time():
    answer = TOPIC.answer(case(PAIR | {"bank.voltage": 12.0}, ["detail:double_time"]))
    assert answer.headline.startswith("Not quite: in series they give 24\u00a0V and still 100\u00a0Ah")


@pytest.mark.parametrize(
    ("facts", "fact", "value"),
    [
        (
            {"battery.chemistry": ("agm", "gel"), "battery.capacity": 90.0, "bank.layout": "series"},
            "battery.chemistry",
            "gel",
        ),
        (
            {"battery.chemistry": "agm", "battery.capacity": (100.0, 140.0), "bank.layout": "series"},
            "battery.capacity",
            140.0,
        ),
        (
            {
                "battery.chemistry": "lfp",
                "battery.count": 5.0,
                "bank.layout": "parallel",
                "battery.max_in_parallel": 4.0,
            },
            "battery.count",
            4.0,
        ),
    ],
)
def test_the_least_change_makes_them_alike_or_fewer(facts, fact, value):
    changes = [least_change(TOPIC, case(facts, MAY), lever, "yes") for lever in TOPIC.levers]
    assert (fact, value) in [(change.fact, change.value) for change in changes if change]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "4x 6V 220Ah golf cart batterys, I want 12v. how to wire and what will I have",
            "makes a string of 2",
        ),
        ("two 12 V 100 Ah wet batteries in series, how do I wire them and what do I get", "posts left at the ends"),
        ("two 12 V 100 Ah wet batteries in parallel, how do I connect them and what do I get", "Join plus to plus"),
    ],
)
def test_how_to_wire_tells_which_post_goes_to_which(text, told):
    (answer,) = (item for item in default_desk().ask(text).answers if item.topic == "bank-wiring")
    assert any(told in step.say for step in answer.working)


@pytest.mark.parametrize(
    ("facts", "says"),
    [
        ({"battery.age": (4.0, 0.0)}, "an old and a new battery"),
        ({"battery.capacity": (100.0, 80.0)}, "batteries of 100 Ah and 80 Ah"),
        ({"battery.chemistry": ("agm", "flooded")}, "AGM and wet-cell batteries"),
    ],
)
def test_a_tap_on_batteries_that_must_not_be_joined_is_wrong_twice(facts, says):
    answer = finished(TOPIC, case({**facts, "bank.layout": "series"}, cues={"detail:tap"}))
    headline = answer.headline.replace("\u00a0", " ")
    assert headline.startswith(f"No to both: {says}")
    assert "12 V from one of them ruins both" in headline


def test_a_tap_on_like_batteries_is_wrong_once():
    answer = finished(TOPIC, case({"battery.age": (2.0, 2.0), "bank.layout": "series"}, cues={"detail:tap"}))
    assert answer.headline.startswith("No: taking 12")


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("Two 12 V batteries in series for the 24 V thruster, and they want to tap the lower one: just hang the 12 V "
         "alternator on the lower one. Am I being fussy?", "never fills the other; fit a 12 to 24 V charger"),
        ("24 V bank from two 12 V AGMs in series. The yard put the alternator across the lower battery. Is that ok?",
         "never fills the other; fit a 12 to 24 V charger"),
        ("Can I take 12 V for the radio from the lower battery of my 24 V bank?", "fit a 24 to 12 V converter"),
        ("24 V bank of two 12 V. May I tap 12 V for lights off one of them?", "fit a 24 to 12 V converter"),
    ],
)  # fmt: skip
def test_an_alternator_on_one_of_two_fills_it_and_a_tap_empties_it(text, says):
    assert says in default_desk().ask(text).answers[0].headline.replace("\u00a0", " ")


def test_one_on_sale_beside_an_old_one_is_unlike_in_age_as_well():
    text = (
        "My 80 Ah AGM was bought in 2020. The chandler has a 100 Ah AGM. May I put it next to the old one in parallel?"
    )
    found = on("bank-wiring", text)
    assert found.verdict == "marginal"
    assert "one old and one new" in found.headline


def test_two_of_one_age_are_unlike_in_size_alone():
    found = on("bank-wiring", "An 80 Ah AGM and a 100 Ah AGM, both new. May I join them in parallel?")
    assert "one old" not in found.headline


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("May a new 80 Ah AGM be in parallel with an old 80 Ah one?", "marginal"),
        ("Three new 90 Ah beside an old 90 Ah, all in parallel. Ok?", "marginal"),
        ("Can I join an old 110 Ah and two new 110 Ah in parallel?", "marginal"),
        ("Can two new 90 Ah go in parallel?", "information"),
        ("If I bought two new 90 Ah instead of the old ones, in parallel?", "information"),
    ],
)
def test_new_ones_beside_an_old_one_are_unlike_in_age(text, verdict):
    assert on("bank-wiring", text).verdict == verdict


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("One of four gels has failed, may I renew only that one?", "No, change them as a set"),
        ("In parallel three wets stand, one is dead. Do all three have to go?", "Better all"),
        ("should we just swap one battery of the pair", "No, change them as a pair"),
        ("two gels of 4 years in series, one has died. only replace the dead one?", "No, both: in series"),
    ],
)
def test_a_dead_one_of_several_and_the_rest(text: str, begins: str) -> None:
    (found,) = default_desk().ask(text).answers
    assert (found.topic, found.headline[: len(begins)]) == ("bank-wiring", begins)


def test_a_start_battery_linked_to_a_house_bank_is_judged_as_such_and_not_as_a_sum() -> None:
    text = "Start battery 900 CCA plus house 2x 90 Ah, may we link them when thrusting with 250 A?"
    (found,) = default_desk().ask(text).answers
    assert (found.topic, found.verdict) == ("bank-wiring", "marginal")


def test_what_several_are_to_come_to_is_no_battery_of_its_own() -> None:
    found = on("bank-wiring", "I have 4 of 12 V 90 Ah and want 24 V 180 Ah. How do I join them?")
    assert (found.verdict, "24 V and 180 Ah" in plain(found.headline)) == ("information", True)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Two 6 V 200 Ah in series or one 12 V 200 Ah, is there a difference?", "12 V"),
        ("Six 6 V batteries or three 12 V ones in series for 36 V?", "36 V"),
    ],
)
def test_batteries_that_are_weighed_against_each_other_are_not_joined(text: str, told: str) -> None:
    headline = plain(on("bank-wiring", text).headline)
    assert told in headline
    assert "never" not in headline


def test_one_of_other_volts_that_is_to_be_joined_is_refused() -> None:
    assert on("bank-wiring", "May I join a 6 V or a 12 V battery to my 12 V one?").verdict == "no"


@pytest.mark.parametrize(
    ("turns", "verdict"),
    [
        (
            ("One 160 Ah AGM or a pair of 80 Ah in parallel?", "One of the pair is four years older"),
            "marginal",
        ),
        (("One 160 Ah AGM or two of 80 Ah in parallel, where one of the two is 3 years older?",), "marginal"),
        (("A single 210 or two 105 Ah gels side by side?", "the other of the small ones is 2 years older"), "marginal"),
        (("One 160 Ah AGM or two of 80 Ah in parallel, if the 160 is 3 years older?",), "information"),
        (("One 160 Ah AGM or two of 80 Ah in parallel?", "One of the two is ten months older"), "information"),
    ],
)
def test_several_that_are_weighed_against_one_are_judged_by_their_years(turns, verdict) -> None:
    assert on("bank-wiring", *turns).verdict == verdict


def test_a_motor_of_fewer_volts_is_not_wired_to_the_bank() -> None:
    found = on("bank-wiring", "May I connect my 12 V windlass, 90 A, to the 24 V bank?")
    assert (found.verdict, plain(found.headline)) == (
        "no",
        "No: a motor made for 12 V must not be put on 24 V; it needs a bank of its own volts.",
    )


def test_a_tap_and_the_sum_are_both_answered():
    text = "Two 12 V 80 Ah gels in series: what do I get? And can I tap 12 V for a lamp off the lower one?"
    found = only(text)
    assert (found.topic, found.verdict) == ("bank-wiring", "no")
    assert figures(found) == {"bank_voltage": 24, "bank_capacity": 80, "bank_energy": 1920}
    assert "24 V and 80 Ah; never take 12 V from one of them" in plain(found.headline)
    alone = only("24 V bank of two 12 V 80 Ah gels. May I tap 12 V for a lamp off one?")
    assert plain(alone.headline).startswith("No: taking 12 V")


def test_years_beside_last_month_ask_for_no_new_battery():
    text = "one gel 70 Ah got last spring, one gel 70 Ah 5 years old. Ok to parallel them?"
    found = only(text)
    assert (found.topic, found.verdict) == ("bank-wiring", "marginal")
    text = "AGM 70 Ah of 6 years and a new one of 70 Ah in parallel, ok? And how long will the old one last?"
    assert "replacement" in {item.topic for item in talk(text).answers}


@pytest.mark.parametrize(
    ("asked", "verdict"),
    [
        ("two 90 Ah gels, 3 years apart, in series for 24 V, fine?", "no"),
        ("my two 90 Ah AGMs are 6 months apart, in series for 24 V, fine?", "yes"),
        ("one 95 Ah gel is 3 years older than the other, ok in parallel?", "marginal"),
        ("may I add a third 90 Ah gel to my two in parallel? They are 4 years old", "marginal"),
        ("may I add a third 90 Ah gel of the same age to my two in parallel? They are 4 years old", "yes"),
        ("are six gels in parallel ok", "no"),
        ("six lithiums in parallel for a 300 A thruster?", "no"),
        ("what do five lithiums of 90 Ah in parallel give", "information"),
    ],
)
def test_years_and_number_are_those_told(asked, verdict):
    assert on("bank-wiring", asked).verdict == verdict


def test_one_and_the_other_are_two():
    answer = on("bank-wiring", "one 95 Ah gel is a year younger than the other. In series, ok?")
    assert answer.verdict == "yes"
    assert {item.name: item.value for item in answer.figures}["bank_voltage"] == 24
    assert answer.cites


@pytest.mark.parametrize("asked", ["may I link two batteries", "is it ok to hook two batteries together?"])
def test_joining_has_its_conditions(asked):
    """Nothing is told of them: what they must have in common, and the kind is asked."""
    answer = on("bank-wiring", asked)
    assert answer.verdict == "needs-facts"
    assert "one kind, volts, size and age" in answer.headline
    assert [item.fact for item in answer.asks] == ["battery.chemistry"]
    assert on("bank-wiring", "two batteries: series or parallel, what do I get?").verdict == "information"
