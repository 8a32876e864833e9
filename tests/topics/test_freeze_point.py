"""Freezing by charge and by gravity."""

from __future__ import annotations

import pytest

from service.finish import finished
from service.leadsman import default_desk
from service.reply import Answer
from service.topics.freeze_point import TOPIC
from tests.building import case
from tests.talks import on, plain
from tests.topics import readings
from tests.topics.readings import Facts, asks, figures


def asked(facts: Facts, *cues: str) -> Answer:
    return readings.asked(TOPIC, facts, cues)


@pytest.mark.parametrize(
    ("facts", "verdict", "freezes"),
    [
        ({"battery.charge": 50}, "information", -26.1),
        ({"battery.charge": 50, "ambient.temperature": -20}, "yes", -26.1),
        ({"battery.charge": 50, "ambient.temperature": -21.1}, "marginal", -26.1),
        ({"battery.charge": 50, "ambient.temperature": -26.1}, "no", -26.1),
        ({"battery.charge": 20, "ambient.temperature": -15}, "no", -13.9),
        ({"reading.voltage": 12.0, "battery.chemistry": "flooded", "ambient.temperature": -10}, "marginal", -13.0),
        ({"reading.voltage": 12.1, "battery.chemistry": "agm", "ambient.temperature": -8}, "yes", -18.7),
        ({"reading.gravity": 1.225}, "information", -37.2),
        ({"reading.gravity": 1.225, "ambient.temperature": 26.7}, "information", -37.2),  # the acid's temperature
        ({"reading.gravity": 1.200, "ambient.temperature": -12}, "yes", -26.7),
    ],
)
def test_freezing_temperature(facts: Facts, verdict: str, freezes: float) -> None:
    answer = asked(facts)
    assert answer.verdict == verdict
    assert figures(answer)["freezing_temperature"] == pytest.approx(freezes, abs=0.1)


@pytest.mark.parametrize(
    ("cue", "verdict"), [("detail:flat_one", "no"), ("detail:half_charged", "yes"), ("detail:full_one", "yes")]
)
def test_a_charge_told_in_words(cue: str, verdict: str) -> None:
    assert asked({"ambient.temperature": -10}, cue).verdict == verdict


def test_without_a_charge_it_is_asked_unless_even_a_flat_one_stands_it() -> None:
    assert asks(asked({"ambient.temperature": -10}))[0] == "battery.charge"
    assert asked({"ambient.temperature": -4}).verdict == "yes"
    assert asked({}).verdict == "information"


def test_lithium_does_not_freeze_but_must_not_be_charged() -> None:
    answer = asked({"battery.chemistry": "lfp", "ambient.temperature": -20})
    assert (answer.verdict, answer.figures) == ("yes", ())
    assert "must not be charged" in answer.headline
    assert asked({"battery.chemistry": "lfp"}).verdict == "information"


@pytest.mark.parametrize(
    ("text", "first"),
    [
        (
            "Is it right that a fully charged battery freezes at minus 60ish, and a flat one at about minus 8?",
            "Nearly so",
        ),
        ("leaflet says a full battery freezes at -59 C and a flat one at -9 C, true?", "Nearly so"),
        ("a mate says a full lead battery freezes at -20 and a flat one at -2. correct?", "Not quite"),
    ],
)
def test_what_is_said_of_a_full_and_a_flat_one_is_held_against_the_table(text: str, first: str) -> None:
    (found,) = default_desk().ask(text).answers
    assert (found.topic, found.verdict) == ("freeze-point", "information")
    assert found.headline.startswith(f"{first}: by the table a full one freezes near -59")


def test_weather_that_is_to_come_is_no_claim() -> None:
    (found,) = default_desk().ask("will my flat battery freeze at -8?").answers
    assert found.verdict == "marginal"


def test_a_flat_battery_in_frost_is_for_today() -> None:
    assert asked({"battery.charge": 20, "ambient.temperature": -15}).urgency == "today"


@pytest.mark.parametrize(
    ("text", "urgency"),
    [
        ("Our wet battery is down to 25 percent, they give -12 for tonight. Does it freeze?", "today"),
        ("My gel one sits at 30 % and it gets to -14 here. Will that freeze?", "today"),
        ("Would a battery with 25 % in it freeze at -12?", "routine"),
        ("My wet battery is at 70 %, it gets to -38. Will it freeze?", "routine"),
    ],
)
def test_one_that_is_there_and_under_half_near_its_frost_is_for_today(text: str, urgency: str) -> None:
    assert on("freeze-point", text).urgency == urgency


def test_lithium_in_the_frost_is_fine_until_it_is_to_be_charged() -> None:
    frost: Facts = {"battery.chemistry": "lfp", "ambient.temperature": -5}
    assert asked(frost).verdict == "yes"
    assert asked(frost, "word:charge").verdict == "no"


@pytest.mark.parametrize(("celsius", "looks"), [(-20, False), (-25, True), (-30, True)])
def test_one_that_may_have_frozen_is_looked_at_before_it_is_charged(celsius: float, looks: bool) -> None:
    found = finished(TOPIC, case({"battery.charge": 50, "ambient.temperature": celsius}))
    assert any(step.say.startswith("Ice or a bulge") for step in found.working) is looks


@pytest.mark.parametrize(
    ("text", "opening"),
    [
        ("May our lithium stay in the bow over a winter of -15?", "Yes, it may stay"),
        ("Does a lithium battery freeze at -15?", "No, lithium does not freeze"),
    ],
)
def test_whether_lithium_may_stay_in_the_frost_is_answered_as_it_is_asked(text: str, opening: str) -> None:
    (found,) = default_desk().ask(text).answers
    assert found.headline.startswith(opening)


@pytest.mark.parametrize(
    ("text", "verdict", "start"),
    [
        ("It gets to minus 20 here. The AGM stays aboard. If it is full nothing can freeze, but what if it has dropped "
         "to 12.0 V?", "no", "Yes, it can freeze at -20 °C (-4 °F): it is about 25 % full"),
        ("At -18, full AGM cannot freeze, but at 11.9 V?", "no", "Yes, it can freeze at -18 °C (0 °F): it is about 15"),
        ("minus 12 tonight and my flooded has fallen to 12.1 volts, will it freeze?", "yes", "No, it will not freeze"),
        ("My full AGM, at -18, can it freeze?", "yes", "No, it will not freeze at -18 °C (0 °F): it is full"),
        ("-25 C. Will the battery freeze if full? if half empty?", "marginal", "At -25 °C (-13 °F) a full one does not "
         "freeze, a half-full one may freeze"),
        ("AGM at minus 15 all winter, can it freeze or not?", "needs-facts", "Not while your battery is half full or "
         "more: then its acid freezes near -26 °C (-15 °F)"),
        ("can my battery freeze at minus 30?", "needs-facts", "We can't say yet"),
        ("will the wet battery freeze at -3 C", "yes", "No, it will not freeze at -3"),
    ],
)  # fmt: skip
def test_it_freezes_by_what_is_told_last_of_its_charge(text: str, verdict: str, start: str) -> None:
    found = on("freeze-point", text)
    assert (found.verdict, plain(found.headline)[: len(start)]) == (verdict, start)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("Our AGM is full, minus 22 °C here. Is it safe from freezing?", "Yes, it stands -22"),
        ("Is a full gel frost proof at -22 °C?", "Yes, it stands -22"),
        ("Wet battery at 30 %, -22 °C. Is it safe from frost?", "No"),
    ],
)
def test_safe_from_freezing_asks_whether_it_stands_the_cold(text: str, start: str) -> None:
    assert plain(on("freeze-point", text).headline).startswith(start)


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("1.165 in each cell: what share of charge is that, and will it freeze at -15?", "marginal"),
        ("Hydrometer 1.170. How much charge does that mean? -16 C is forecast, is ice likely?", "marginal"),
        ("1.165 in each cell. May I charge it? And will it freeze at -15 tonight?", "no"),  # charging itself is asked
    ],
)
def test_the_charge_that_is_in_it_asks_for_no_charging(text: str, verdict: str) -> None:
    assert on("freeze-point", text).verdict == verdict
