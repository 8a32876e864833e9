"""What was told once of a battery stays true in the turns that follow, and is not asked back."""

from __future__ import annotations

import pytest

from service.say import NB
from tests.talks import talk

SEALED_SWITCH = "The switch has gel, agm, wet. Mine is sealed and has no caps, which one?"


@pytest.mark.parametrize(
    ("turns", "verdict", "told"),
    [
        # a battery without caps is never equalised, whatever its kind turns out to be
        ((SEALED_SWITCH, "it says calcium", "and the equalise button, good for it?"), "no", "without caps"),
        (
            ("maintenance free battery, which setting?", "wet cell by the sheet", "may I desulphate it?"),
            "no",
            "without",
        ),
        (("Flooded, nothing to unscrew. Is the equalise mode ok for it?",), "no", "without caps"),
        (("Is the desulphate mode ok for a VRLA?",), "no", "without caps"),
        (("A calcium battery: may I run the equalise programme?",), "marginal", "Only if it has caps"),
        # told otherwise, the later word counts
        (
            ("Sealed battery, which setting?", "a wet one, caps under the label", "is the equalise mode ok?"),
            "yes",
            "caps",
        ),
        (("Wet battery with caps, may I run the equalise programme?",), "yes", "may be equalised"),
    ],
)
def test_no_caps_no_equalising(turns: tuple[str, ...], verdict: str, told: str) -> None:
    (answer,) = talk(*turns).answers
    assert (answer.topic, answer.verdict) == ("charger-setting", verdict)
    assert told in answer.headline


def test_caps_are_not_looked_for_on_a_battery_without() -> None:
    first, second = talk(SEALED_SWITCH).answers[0], talk(SEALED_SWITCH, "no idea, the label is gone").answers[0]
    assert "caps" not in first.asks[0].where.lower()
    assert "caps" not in second.headline.lower()
    assert second.asks[0].where == ""  # never the same question word for word


@pytest.mark.parametrize(
    ("turns", "verdict", "opens"),
    [
        (("Wet batteries, 6 years. Should we swap them?",), "no", "Test first: at 6 years"),
        (
            ("Wet batteries, 4 years, am I wasting money on new ones? Should I renew them?",),
            "marginal",
            "Test first: at 4",
        ),
        (("AGM, 2 years old, should I get a new one?",), "yes", "Keep it: at 2 years"),
        (
            ("Wet, 6 years. Should we swap them?", "the garage tested them, they passed"),
            "marginal",
            "Keep it for now: ",
        ),
        (("AGM of 8 years, the load test was fine. Time for a new one?",), "marginal", "Keep it for now: "),
        (("Gel, 3 years, it passed a load test. Keep it?",), "yes", "Keep it: it passed its load test"),
        (("AGM of 8 years, it passed the test", "so is it time for a new one?"), "marginal", "Keep it for now: "),
        (("Wet, 7 years, it passed the test, replace?", "it has now failed the load test"), "no", "Yes: it failed"),
        (("AGM, 6 years, it passed the test, keep it?", "and the gel aft, 9 years"), "no", "Not for much longer: at 9"),
        (
            (
                "12 V AGM, 8 years, 700 CCA: load test at 350 A, 21 C, held 10.2 V. Keep it?",
                "the gel aft, 9 years, never tested",
            ),
            "no",
            "Not for much longer: at 9",
        ),
        (("Wet, 6 years, it passed the test, replace?", "and the other one, 8 years, wet"), "no", "Most likely: at 8"),
        (
            ("Wet, 6 years, it passed the test, replace?", "another battery: AGM of 9 years, replace?"),
            "no",
            "Most likely",
        ),
    ],
)
def test_a_test_that_was_told_says_more_than_the_age(turns: tuple[str, ...], verdict: str, opens: str) -> None:
    (answer,) = talk(*turns).answers
    assert (answer.topic, answer.verdict) == ("replacement", verdict)
    assert answer.headline.replace(NB, " ").startswith(opens)


@pytest.mark.parametrize("told", ["it's the isolated type", "the box says isolated", "mine is an isolated one"])
def test_no_caution_of_plain_converters_for_an_isolated_one(told: str) -> None:
    asked = "12 to 24 V dc-dc of 20 A, alternator 70 A, AGM. Will the alternator cope?"
    plain, isolated = talk(asked).answers[0], talk(asked, told).answers[0]
    assert [item.verdict for item in (plain, isolated)] == ["yes", "yes"]
    assert "one-negative" in {item.id for item in plain.cautions}
    assert "one-negative" not in {item.id for item in isolated.cautions}


@pytest.mark.parametrize(
    "told", ["and in winter with the cover on?", "and once the cover goes on in October?", "with the tarp on?"]
)
def test_a_panel_under_its_cover_brings_nothing(told: str) -> None:
    (answer,) = talk("Does a 40 W panel keep up with a 30 mA tracker on an 80 Ah AGM?", told).answers
    assert (answer.topic, answer.verdict) == ("solar", "no")
    assert "under a cover" in answer.headline


@pytest.mark.parametrize(
    ("turn", "verdict"),
    [
        ("would an 80 W one be enough then?", "no"),
        ("would the panel be enough with the cover off?", "yes"),
        ("is it enough in summer?", "yes"),
    ],
)
def test_the_cover_stays_on_until_it_is_told_off(turn: str, verdict: str) -> None:
    asked = "Does a 40 W panel keep up with a 30 mA tracker on an 80 Ah AGM with the cover on?"
    (answer,) = talk(asked, turn).answers
    assert (answer.topic, answer.verdict) == ("solar", verdict)


def test_a_wet_setting_for_a_battery_without_caps_must_never_equalise() -> None:
    (answer,) = talk("sealed battery, no caps: which setting?", "calcium it says").answers
    assert "if it never equalises" in answer.headline


def test_a_winter_holds_until_another_season_is_named() -> None:
    turns = ("50 W panel, 0.2 A drain, 100 Ah AGM: enough in winter?", "And a 100 W one?", "What of summer?")
    verdicts = [talk(*turns[: number + 1]).answers[0].verdict for number in range(len(turns))]
    assert verdicts == ["no", "marginal", "yes"]


def test_a_fridge_is_asked_for_as_a_load() -> None:
    (asked, *_) = talk("How long will my battery run the fridge?").answers[0].asks
    assert "thruster" not in asked.say + asked.where


SMALL = "0.2 A drain, 100 Ah AGM, 50 W panel"


@pytest.mark.parametrize(
    ("turns", "hours"),
    [
        ((f"{SMALL}: does it keep up in summer?", "and over the winter?", "80 W?"), 1.0),
        ((f"{SMALL}, in June?", "what about December?", "80 W?", "and 120 W?"), 1.0),
        ((f"Laid up for the winter, {SMALL}: keeps up?", "and in summer?", "30 W?"), 4.0),
        ((f"The boat stands for 5 months. {SMALL}: keeps up?", "and in July?", "20 W?"), 4.0),
        ((f"{SMALL}: does it keep up in summer only?", "20 W?"), 4.0),
        ((f"{SMALL} in January?", "and in August?", "and at Christmas?", "80 W?"), 1.0),
        ((f"{SMALL}: does it keep up?", "80 W?"), 4.0),
    ],
)
def test_the_season_that_was_said_last_holds(turns: tuple[str, ...], hours: float) -> None:
    (answer,) = talk(*turns).answers
    assert {item.fact: item.value for item in answer.assumed}["solar.sun_hours"] == hours


@pytest.mark.parametrize(
    ("turns", "verdict", "opens"),
    [
        (("The charger's dial offers WET, GEL and AGM: which for mine?", "label is gone", "the bill says agm"),
         "information", "Use the AGM setting"),
        (("Charger with settings gel, agm and wet. Which setting?", "it may be lithium"), "marginal", "None is made"),
        (("The charger has AGM and wet. Which one for the old battery?", "it is gel"), "no", "None of them: each goes"),
        (("The charger has gel and wet. Mine is wet", "and if I get an AGM?"), "marginal", "None is made for an AGM"),
        # a newer list counts, and volts that are asked about are judged by themselves
        (("Charger with gel and wet, which setting?", "no, the dial has AGM, gel and lithium", "and mine is lithium"),
         "information", "Use the lithium setting"),
        (("Charger with gel, wet and AGM, which setting?", "it is gel", "is 14.4 V ok for it?"), "yes", "Yes: 14.4 V"),
    ],
)  # fmt: skip
def test_the_settings_that_a_charger_has_are_known_in_later_turns(
    turns: tuple[str, ...], verdict: str, opens: str
) -> None:
    (answer,) = talk(*turns).answers
    assert (answer.topic, answer.verdict) == ("charger-setting", verdict)
    assert answer.headline.replace(NB, " ").startswith(opens)
