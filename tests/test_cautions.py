"""Each caution appears where its row says so, and stays away where the facts rule it out."""

from __future__ import annotations

from typing import Any

import pytest

from service import reference
from service.cautions import NONE, ROWS, cautions
from service.leadsman import default_desk
from service.reply import Answer, Figure
from service.topic import Topic
from tests.building import case

VOLT = (Figure("terminal_voltage_at_inrush", "at the battery", 9.2, "V"),)
LOW = (Figure("voltage_per_battery", "each battery", 10.1, "V"),)
PAIR = (Figure("conductors_per_pole", "cables side by side", 2),)
LFP: dict[str, Any] = {"battery.chemistry": "lfp"}
AGM: dict[str, Any] = {"battery.chemistry": "agm"}
WET: dict[str, Any] = {"battery.chemistry": "flooded"}
THRUSTER = {"load.kind": "thruster"}
BANK24 = {"bank.voltage": 24}


def shown(
    topic: str, facts: dict[str, Any], *cues: str, verdict: str = "information", figures: tuple[Figure, ...] = ()
) -> set[str]:
    answer = Answer(topic, verdict, "", figures=figures)  # type: ignore[arg-type]
    return {item.id for item in cautions(Topic(topic, ""), case(facts, cues), answer)}


@pytest.mark.parametrize(
    ("name", "there", "away"),
    [
        ("lithium-cold", shown("charger-size", LFP), shown("charger-size", AGM)),
        ("lithium-cold", shown("run-check", LFP | {"ambient.temperature": -4}), shown("run-check", LFP)),
        ("lithium-kind", shown("run-check", LFP, figures=VOLT), shown("run-check", AGM, figures=VOLT)),
        ("lithium-cut-out", shown("run-time", LFP), shown("run-time", WET)),
        (
            "lithium-joined",
            shown("bank-wiring", LFP | {"battery.count": 2}),
            shown("bank-wiring", LFP | {"battery.count": 1}),
        ),
        ("alternator-lithium", shown("charge-time", LFP | {"alternator.current": 90}), shown("charge-time", LFP)),
        ("alternator-lithium", shown("dc-dc", LFP), shown("dc-dc", AGM)),
        ("isolated-outputs", shown("charger-banks", BANK24), shown("charger-banks", {"bank.voltage": 12})),
        ("no-tap", shown("dc-dc", BANK24), shown("dc-dc", {"bank.voltage": 12})),
        ("one-negative", shown("dc-dc", {}), shown("dc-dc", {"charger.isolated": True})),
        ("fuse-at-battery", shown("run-check", {"cable.gauge": "2/0"}), shown("run-check", {})),
        ("fuse-at-battery", shown("cable-size", {}), shown("rest-voltage", {})),
        ("fuse-breaks-fault", shown("bank-wiring", LFP), shown("bank-wiring", AGM)),
        ("manual-first", shown("fuse-size", {}), shown("solar", {})),
        (
            "cable-assumed",
            shown("voltage-drop", {"cable.gauge": "1/0"}),
            shown("voltage-drop", {"cable.gauge": "1/0", "cable.insulation": 105, "cable.in_engine_space": False}),
        ),
        (
            "cable-and-joints",
            shown("run-check", AGM, figures=VOLT),
            shown("run-check", AGM | {"cable.gauge": "4"}, figures=VOLT),
        ),
        ("parallel-cables", shown("cable-size", {}, figures=PAIR), shown("cable-size", {})),
        ("charge-not-strength", shown("rest-voltage", AGM, verdict="yes"), shown("rest-voltage", AGM, verdict="no")),
        ("measure-each", shown("rest-voltage", BANK24), shown("rest-voltage", {"bank.voltage": 12})),
        ("start-battery", shown("run-check", {}, "detail:engine_battery"), shown("run-check", {})),
        ("motor-duty", shown("run-time", THRUSTER), shown("run-time", {"load.kind": "fridge"})),
        ("motor-duty", shown("run-time", {"load.model": "Pike"}), shown("run-time", {"load.current": 6})),
        ("thruster-off", shown("terminals", THRUSTER), shown("terminals", {"load.kind": "windlass"})),
        ("explosive-gas", shown("ventilation", WET), shown("ventilation", LFP)),
        ("acid", shown("maintenance", WET), shown("maintenance", AGM)),
        ("acid", shown("maintenance", {}), shown("maintenance", LFP)),
        ("short-circuit", shown("terminals", {}), shown("rest-voltage", {})),
        ("frost", shown("storage", AGM), shown("storage", LFP)),
        (
            "frost",
            shown("storage", AGM | {"ambient.temperature": -10}),
            shown("storage", AGM | {"ambient.temperature": 18}),
        ),
        ("check-date", shown("storage", {}), shown("run-check", {})),
        ("equalise", shown("charger-setting", AGM, "detail:equalise"), shown("charger-setting", AGM)),
        ("equalise", shown("specific-gravity", {"reading.gravity_spread": 0.03}), shown("specific-gravity", {})),
        ("deep-flat", shown("rest-voltage", AGM, figures=LOW), shown("rest-voltage", LFP, figures=LOW)),
        ("ignition-protected", shown("mounting", {}, "detail:petrol_space"), shown("mounting", {})),
        ("mains", shown("charger-size", {}), shown("charger-size", {"charger.kind": "alternator"})),
        ("lift", shown("replacement", {}, verdict="no"), shown("replacement", {}, verdict="yes")),
        ("lift", shown("storage", {}, "detail:carry"), shown("storage", {})),
        ("estimate", shown("run-check", {}, verdict="yes"), shown("run-check", {}, verdict="marginal")),
    ],
)
def test_a_caution_follows_its_row(name: str, there: set[str], away: set[str]) -> None:
    assert name in there
    assert name not in away


def test_every_row_has_a_sentence_and_every_sentence_a_row() -> None:
    assert set(ROWS) == {row["id"].value for row in reference.rows("cautions")}


def test_the_topics_order_rules_and_what_it_does_not_list_comes_first() -> None:
    topic = Topic("run-check", "", cautions=("manual-first", "lithium-cut-out", "estimate"))
    found = cautions(topic, case(LFP | BANK24), Answer("run-check", "yes", ""))
    assert [item.id for item in found] == ["no-tap", "thruster-off", "manual-first", "lithium-cut-out", "estimate"]


@pytest.mark.parametrize("topic", sorted(NONE))
def test_some_answers_carry_none(topic: str) -> None:
    assert shown(topic, LFP, verdict="yes") == set()


def test_a_stop_carries_none() -> None:
    assert shown("rest-voltage", AGM, verdict="stop") == set()


@pytest.mark.parametrize(
    ("text", "said", "not_said"),
    [
        ("What cable for 200 A over 5 m?", "outside the engine space", "-"),
        ("What cable for 200 A, 5 m through the engine room?", "105 °C", "outside"),
        ("75 C cable for 200 A, 5 m, which size?", "engine heat", "105"),
    ],
)
def test_what_was_told_of_a_cable_is_not_called_assumed(text: str, said: str, not_said: str) -> None:
    (answer,) = default_desk().ask(text).answers
    (sentence,) = [item.say for item in answer.cautions if item.id == "cable-assumed"]
    assert said in sentence
    assert not_said not in sentence


def test_a_full_pair_of_6_v_batteries_is_not_deeply_flat() -> None:
    full = (Figure("voltage_per_battery", "each battery", 6.3, "V"),)
    flat = (Figure("voltage_per_battery", "each battery", 4.9, "V"),)
    assert "deep-flat" not in shown("rest-voltage", WET | {"battery.nominal": 6}, figures=full)
    assert "deep-flat" in shown("rest-voltage", WET | {"battery.nominal": 6}, figures=flat)


@pytest.mark.parametrize(
    ("text", "there"),
    [
        ("2 x 120 Ah on the 24 V bow bank, 300 A. How long can he hold the button?", True),
        ("105 Ah AGM, 240 A, how long may I keep pushing the joystick", True),
        ("How many 4 second bursts at 220 A from a 110 Ah AGM?", True),
        ("A 100 Ah AGM and a bow drive of 120 A, how many minutes in one go?", True),
        ("How long does a 5 A fridge run on 100 Ah?", False),
        ("How long does the windlass run in one go, 90 A, 100 Ah AGM?", False),
    ],
)
def test_a_motor_held_by_its_button_must_cool_whatever_it_is_called(text: str, there: bool) -> None:
    answers = {found.topic: found for found in default_desk().ask(text).answers}
    assert ("motor-duty" in {item.id for item in answers["run-time"].cautions}) is there


@pytest.mark.parametrize(
    ("text", "there"),
    [
        ("how many hours does a 30 A charger take for 150 Ah of lithium at 3 degrees?", True),
        ("which charger amps suit a lithium of 150 Ah?", True),
        ("40 mA flows with all off, lithium of 80 Ah, how many days?", False),
        ("40 ft there and back of 2/0 on a lithium bank at 200 A, volts lost?", False),
    ],
)
def test_which_lithium_it_is_counts_where_its_volts_or_amps_are_told(text: str, there: bool) -> None:
    (found,) = default_desk().ask(text).answers
    assert ("lithium-kind" in [item.id for item in found.cautions]) == there
