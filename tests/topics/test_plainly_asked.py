"""Topics that few words ask plainly: which cable first, water in a locker, caps, how far, a choice of sizes."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from tests.talks import on, only, plain, talk


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("Must I undo the black or the red one first?", "Minus comes off first"),
        ("does the red one come off after the black one?", "Minus comes off first"),
        ("shall I disconnect plus before minus on my battery?", "Minus comes off first"),
        ("do I connect the positive or the negative first on a new battery", "Plus goes on first and minus last"),
    ],
)
def test_which_cable_comes_first(text: str, start: str) -> None:
    assert plain(only(text).headline).startswith(start)


def test_a_battery_that_is_only_disconnected_is_laid_up() -> None:
    assert only("ought I to disconnect the minus over the winter?").topic == "storage"


@pytest.mark.parametrize(
    "text",
    [
        "fresh water from the tank ran into the battery locker, wet cells, all fine?",
        "there is rain in the compartment, my flooded batteries stand in water up to the middle, may I charge?",
    ],
)
def test_a_battery_that_stands_in_water_is_for_a_technician(text: str) -> None:
    reply = talk(text)
    assert reply.triage.route == "technician"
    assert reply.answers[0].verdict in ("no", "stop")


def test_a_pump_for_fresh_water_floods_no_locker() -> None:
    assert only("may a fresh water pump go in the battery locker?").topic == "mounting"


def test_rain_water_for_the_cells_is_a_matter_of_topping_up() -> None:
    found = only("may I top up my battery in its locker with rain water?")
    assert (found.topic, found.headline.startswith("No rain water")) == ("maintenance", True)


@pytest.mark.parametrize("text", ["which sort has caps on top", "what type of battery needs topping up with water?"])
def test_caps_tell_a_wet_cell_battery(text: str) -> None:
    assert only(text).headline.startswith("Wet-cell")


def test_how_far_a_battery_may_stand_hangs_on_amps_and_cable() -> None:
    found = only("How far away can the battery bank be from the windlass?")
    assert (found.topic, [item.fact for item in found.asks]) == ("cable-size", ["load.current", "cable.gauge"])
    named = only("how far can the batteries be from a Minnow")
    assert [item.fact for item in named.asks] == ["cable.gauge"]


def test_cable_of_a_welder_is_better_not_taken() -> None:
    assert only("is welding cable fine for a bow thruster?").headline.startswith("Better not")
    assert on("cable-size", "2/0 welding cable, 260 A thruster at 4 m, ok?").verdict == "yes"  # by its size


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("24 V bank, wet, 24.6 V", "marginal"),
        ("12.2 V at the bow battery", "no"),
        ("volts at the bow bank 12.7", "yes"),
    ],
)
def test_volts_of_a_bank_alone_are_a_reading_at_rest(text: str, verdict: str) -> None:
    found = only(text)
    assert (found.topic, found.verdict) == ("rest-voltage", verdict)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("what is the difference between posts and threaded studs?", "Round posts take clamps"),
        ("it has studs and SAE posts, which do I use for the thruster?", "Studs for a thruster"),
        ("SAE posts and an M8 stud, how tight the stud?", "Tighten your M8 stud"),
    ],
)
def test_posts_beside_studs(text: str, start: str) -> None:
    assert plain(on("terminals", text).headline).startswith(start)


def test_a_floor_of_concrete_takes_no_charge() -> None:
    assert only("will a battery that stands on concrete go flat?").headline.startswith("No: a concrete floor")


@pytest.mark.parametrize(
    "text", ["6 V or 12 V batteries, which are better for the lights?", "which is better, a 12 volt or two 6 volt?"]
)
def test_batteries_of_other_volts_that_are_a_choice_are_not_joined(text: str) -> None:
    found = on("bank-wiring", text) if "6 volt" not in text else default_desk().ask(text).answers[0]
    assert found.verdict != "no"


def test_batteries_of_other_volts_that_are_joined_are_a_no() -> None:
    assert on("bank-wiring", "may I wire my 6 V battery in parallel with the 12 V one?").verdict == "no"


@pytest.mark.parametrize("text", ["a single 4D against two 24s?", "two group 24 or one 4D for my boat?"])
def test_one_large_case_is_weighed_against_several(text: str) -> None:
    found = on("group-size", text)
    assert found.verdict == "information"
    assert plain(found.headline).startswith("One group 4D usually has 850 to 1150 CCA, two group 24 in parallel")


def test_a_case_named_later_is_held_against_the_one_in_the_place() -> None:
    turns = ("would a 31 go where my 27 stands?", "and a 34?")
    assert only(*turns).headline.startswith("Yes: a group 34 is no larger than a group 27")
    assert plain(only(*turns, "which of them is stronger?").headline).startswith("Group 27 usually has")
    assert only(*turns, "on my other boat, a 34?").verdict != "yes"


def test_how_high_a_case_is_asks_nothing_of_the_place() -> None:
    assert only("would a 31 go where my 27 stands?", "how high is a 24").verdict == "information"
