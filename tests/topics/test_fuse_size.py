"""Fuses by the contract's method."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.least_change import least_change
from service.topics.fuse_size import TOPIC
from tests.building import case
from tests.talks import on, plain, talk
from tests.topics import asked, figures


@pytest.mark.parametrize(
    ("facts", "verdict", "fit", "most"),
    [
        ({"load.current": 340.0}, "information", 450, None),
        ({"load.current": 340.0, "cable.gauge": "4/0"}, "information", 450, 600),
        ({"load.current": 150.0, "cable.gauge": "2"}, "information", 200, 300),
        ({"load.model": "Pike", "cable.gauge": "2/0"}, "information", 350, 450),
        ({"load.model": "Minnow"}, "information", 150, None),
        ({"load.model": "Minnow", "cable.area": 50.0}, "information", 175, 350),  # the catalogue's, the cable holds
        ({"load.power": 3000.0, "bank.voltage": 24.0}, "information", 175, None),
        ({"load.current": 340.0, "cable.gauge": "1"}, "no", 450, 350),  # no fuse suits
        ({"load.current": 500.0, "cable.gauge": "2/0"}, "no", 700, 450),
    ],
)
def test_the_rating_and_the_most(facts, verdict, fit, most):
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == verdict
    assert figures(answer).get("fuse_rating") == fit
    assert figures(answer).get("fuse_rating_high") == most


@pytest.mark.parametrize(  # 240 A on 2/0 (330 A): 300 is the least, 350 the first at the ampacity, 450 the most
    ("rated", "verdict"),
    [(250.0, "no"), (300.0, "yes"), (350.0, "yes"), (400.0, "marginal"), (450.0, "marginal"), (500.0, "no")],
)
def test_a_stated_fuse_is_judged_by_its_band(rated, verdict):
    assert TOPIC.answer(case({"load.current": 240.0, "cable.gauge": "2/0", "fuse.rating": rated})).verdict == verdict


def test_the_house_s_fuse_wins_where_the_cable_holds():
    cable = {"cable.gauge": "1/0", "cable.insulation": 105.0, "fuse.rating": 350.0}
    assert TOPIC.answer(case({"load.model": "Pike", **cable})).verdict == "yes"
    assert TOPIC.answer(case({"load.current": 260.0, **cable})).verdict == "marginal"


def test_a_stated_current_beats_the_model_and_its_fuse():
    answer = TOPIC.answer(case({"load.model": "Minnow", "load.current": 200.0, "cable.gauge": "2/0"}))
    assert figures(answer)["fuse_rating"] == 250


def test_a_rating_over_what_suits_the_cable_names_the_next_cable():
    answer = TOPIC.answer(case({"load.current": 250.0, "cable.gauge": "1/0", "cable.insulation": 105.0}))
    assert "2/0" in answer.headline
    assert "300" in answer.headline


@pytest.mark.parametrize(
    ("facts", "verdict", "first"),
    [
        ({}, "needs-facts", "load.current"),
        ({"cable.gauge": "1/0"}, "needs-facts", "load.current"),
        ({"load.current": 200.0}, "information", "cable.gauge"),
        ({"cable.gauge": "1/0", "fuse.rating": 400.0}, "needs-facts", "load.current"),
        ({"load.current": 280.0, "fuse.rating": (350.0, 400.0)}, "information", "cable.gauge"),
    ],
)
def test_what_is_missing_is_asked(facts, verdict, first):
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == verdict
    assert asked(answer)[0] == first


def test_a_fuse_too_large_for_the_cable_is_no_without_the_load():
    answer = TOPIC.answer(case({"cable.gauge": "6", "fuse.rating": 200.0}))
    assert answer.verdict == "no"
    assert figures(answer) == {"fuse_rating_high": 175}


def test_a_fuse_too_small_for_the_load_is_no_without_the_cable():
    assert TOPIC.answer(case({"load.current": 300.0, "fuse.rating": 300.0})).verdict == "no"


@pytest.mark.parametrize("cue", ["detail:no_fuse", "detail:bridged"])
def test_no_fuse_or_a_bridged_one_is_seen_to_today(cue):
    answer = TOPIC.answer(case({"load.current": 260.0, "cable.gauge": "2/0"}, [cue]))
    assert (answer.verdict, answer.urgency) == ("no", "today")
    assert figures(answer)["fuse_rating"] == 350


@pytest.mark.parametrize(
    ("cue", "verdict"),
    [("fuse_place", "information"), ("need_fuse", "information"), ("bms_instead", "no"), ("class_t", "information")],
)
def test_questions_without_numbers(cue, verdict):
    assert TOPIC.answer(case({}, [f"detail:{cue}"])).verdict == verdict


def test_every_answer_says_where_what_voltage_and_both_ends():
    known = case({"load.current": 200.0, "battery.cca": 800.0})
    TOPIC.answer(known)
    told = " ".join(step.say for step in known.trace)
    for part in ("178\u00a0mm", "at each end", "charging voltage", "3000\u00a0A"):
        assert part in told


def test_a_current_beyond_all_ratings_goes_to_a_technician():
    assert TOPIC.answer(case({"load.current": 700.0})).route == "technician"


def test_the_least_change_is_the_nearest_fuse_that_suits():
    found = least_change(
        TOPIC, case({"load.current": 240.0, "cable.gauge": "2/0", "fuse.rating": 400.0}), TOPIC.levers[0], "yes"
    )
    assert found is not None
    assert found.value == 350


def test_a_dc_to_dc_unit_is_fused_for_what_it_takes_in_at_worst():
    answer = TOPIC.answer(
        case({"charger.current": 20.0, "charger.input_voltage": 12.0, "bank.voltage": 24.0}, ["thing:dcdc"])
    )
    assert figures(answer)["fuse_rating"] == 80  # 28.8 V x 20 A / (11 V x 0.90) = 58.2 A, x 1.25 = 72.7 A


@pytest.mark.parametrize(
    ("facts", "verdict", "parts"),
    [
        ({"load.current": 185.0, "cable.area": 35.0, "fuse.rating": (200.0, 250.0)}, "marginal",
         ("Take 250 A, better on 50 mm²", "200 A is too small", "over the 225 A that suits 35 mm²")),
        ({"load.model": "Pike", "cable.gauge": "2/0", "fuse.rating": (250.0, 400.0)}, "marginal",
         ("Fit 350 A", "250 A is too small for 260 A", "400 A is over the 350 A that suits 2/0 AWG")),
        ({"load.current": 240.0, "cable.gauge": "2/0", "fuse.rating": 400.0}, "marginal", ("300 A fits better",)),
        ({"load.current": 340.0, "cable.area": 70.0, "fuse.rating": 500.0}, "no",
         ("No: take the 500 A fuse out", "95 mm² carries it, 120 mm² suits its 450 A fuse")),
        ({"load.current": 280.0, "cable.gauge": "2/0", "fuse.rating": 350.0}, "needs-facts",
         ("with 105 °C insulation 2/0 AWG takes the 350 A fuse", "with 75 °C it is too thin for 280 A")),
    ],
)  # fmt: skip
def test_a_fuse_that_does_not_suit_is_told_with_what_does(facts, verdict, parts):
    answer = TOPIC.answer(case(facts))
    assert answer.verdict == verdict
    for part in parts:
        assert part in answer.headline.replace("\u00a0", " ")


def test_a_cable_that_old_insulation_makes_too_thin_is_asked_about():
    answer = TOPIC.answer(case({"load.current": 200.0, "cable.gauge": "1/0", "cable.in_engine_space": True}))
    assert answer.verdict == "needs-facts"
    assert "with 75\u00a0°C it is too thin for 200\u00a0A" in answer.headline  # 195 A x 0.75 at 75 °C
    assert asked(answer) == ["cable.insulation"]
    known = case({"load.current": 200.0, "cable.gauge": "1/0", "cable.insulation": 105.0})
    assert not TOPIC.answer(known).asks


def test_a_fuse_at_the_wrong_end_is_no():
    facts = {"load.current": 280.0, "cable.gauge": "2/0"}
    answer = TOPIC.answer(case(facts, ["detail:fuse_far"]))
    assert answer.verdict == "no"
    assert answer.headline.startswith("No: a 350\u00a0A fuse belongs within 7\u00a0in")
    assert TOPIC.answer(case(facts, ["detail:fuse_far", "detail:fuse_near"])).verdict == "needs-facts"


def test_after_a_cable_was_proposed_its_fuse_is_told_without_asking_for_it():
    known = case({"load.model": "Pike", "cable.length": 8.5344})
    assert asked(TOPIC.answer(known)) == ["cable.gauge"]
    answer = TOPIC.answer(replace(known.fresh(), worked={"cable-size.area": 70.0}))
    assert not answer.asks
    assert figures(answer) == {"fuse_rating": 350, "fuse_rating_high": 500}  # 95 mm², as the catalogue asks for


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("AGM in the bow. Must there be a fuse close to it?", "Yes, within 7 in (178 mm) of the battery plus"),
        ("Should there be a fuse near the bow battery?", "Yes, within 7 in (178 mm) of the battery plus"),
        ("What fuse must there be at the battery?", "We can't say yet"),
        ("Which fuse for the bow battery?", "We can't say yet"),
    ],
)
def test_that_a_fuse_must_be_there_is_told_before_its_size_is_known(text: str, start: str) -> None:
    assert plain(on("fuse-size", text).headline).startswith(start)


@pytest.mark.parametrize(
    ("told", "off"),
    [
        ("The 150 A fuse is whole but has a tan patch. Thruster 200 A, 70 mm2: which fuse?", True),
        ("My 150 A fuse is whole. Thruster 200 A, 70 mm2 with a brown mark on its sheath: which fuse?", False),
    ],
)
def test_a_fuse_with_a_mark_of_heat_stays_off(told, off):
    assert ("its mark tells of heat" in on("fuse-size", told).headline) is off


@pytest.mark.parametrize(
    ("text", "opens", "verdict"),
    [
        ("How big a fuse for my trolling motor, and where do I put the fuse?", "Put the fuse within", "needs-facts"),
        ("Does a trolling motor need a fuse, and what size fuse goes on it?", "Yes, a thruster needs", "needs-facts"),
        ("which size fuse for the bow motor, battery end or motor end", "Put the fuse within", "needs-facts"),
        ("the fuse of the trolling motor, where does the fuse go", "Put the fuse within", "information"),
        ("Does a bow thruster need a fuse?", "Yes, a thruster needs", "information"),
        ("which end of the cable does the fuse go", "Put the fuse within", "information"),
    ],
)
def test_the_amps_are_asked_back_where_its_size_is_asked_beside_its_place(text: str, opens: str, verdict: str) -> None:
    (found,) = talk(text).answers
    assert found.headline.startswith(opens)
    assert (found.topic, found.verdict) == ("fuse-size", verdict)
    assert [item.fact for item in found.asks][:1] == (["load.current"] if verdict == "needs-facts" else [])


def test_no_fuse_for_a_cable_that_the_same_answer_rejects():
    """The cable that is put in place of theirs takes the fuse; one that will do keeps its own."""
    asked = "will 6 AWG do for an 80 A inverter 12 ft away, and which fuse?"
    fit = {item.name: item.value for item in on("cable-size", asked).figures}["gauge"]
    answer = on("fuse-size", asked)
    assert answer.verdict == "information"
    assert f"for {fit} AWG" in plain(answer.headline)
    kept = on("fuse-size", "will 2/0 do for a 190 A thruster 8 ft away, and which fuse?")
    assert "for 2/0 AWG" in plain(kept.headline)


@pytest.mark.parametrize(("amps", "offered"), [(80, ("8", "6", "4")), (240, ("1", "1/0", "2/0"))])
def test_cables_that_are_offered_carry_the_load(amps, offered):
    answer = on("fuse-size", f"fuse for a {amps} A windlass?")
    assert tuple(item.value for item in answer.asks[0].replies) == offered
