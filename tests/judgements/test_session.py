"""A docking session in an answer: what it takes, what is left, and that it decides no verdict."""

from __future__ import annotations

from typing import Any

import pytest

from service.finish import finished
from service.reply import Answer
from service.topics import topic
from tests.building import case

BOAT: dict[str, Any] = {
    "battery.chemistry": "agm",
    "battery.capacity": 100,
    "battery.cca": 850,
    "load.kind": "thruster",
    "load.current": 340,
    "bank.voltage": 12,
}
BURSTS = {"load.burst": 5, "load.bursts": 20, "load.rest": 30}
ADDED = {
    "duty_cycle",
    "session_charge",
    "session_energy",
    "depth_of_discharge",
    "state_of_charge_left",
    "rest_voltage_after",
    "end_voltage",
}


def asked(facts: dict[str, Any], name: str = "run-check", cues: tuple[str, ...] = ()) -> Answer:
    return finished(topic(name), case(facts, cues))


def figures(answer: Answer) -> dict[str, Any]:
    return {item.name: item for item in answer.figures}


def test_what_twenty_bursts_take() -> None:
    found = figures(asked(BOAT | BURSTS))
    assert set(found) >= ADDED
    assert found["duty_cycle"].value == pytest.approx(100 * 5 / 35)
    assert found["session_charge"].value == pytest.approx(340 * 100 / 3600)
    assert found["session_energy"].value == pytest.approx(340 * 100 / 3600 * 12)
    depth = found["depth_of_discharge"]
    assert depth.value == pytest.approx(100 * 100 / (20 * 3600 * (100 / 6800) ** 1.15))  # Peukert, k 1.15
    assert depth.low == pytest.approx(340 * 100 / 3600)  # amp-hours alone
    assert depth.high == depth.value  # 1.15 is the top of the range for AGM
    assert found["state_of_charge_left"].value == pytest.approx(100 - depth.value)


def test_the_volts_at_its_end() -> None:
    found = figures(asked(BOAT | BURSTS))
    left = found["state_of_charge_left"].value
    table = 12.6 + (left - 75) / 25 * 0.2  # AGM: 12.6 V at 75 %, 12.8 V full
    rest = 12.6 - (12.8 - table)
    assert found["rest_voltage_after"].value == pytest.approx(rest)
    assert found["end_voltage"].value == pytest.approx(rest - 340 * 6.0 / 850)


def test_24_volts_are_twice_12() -> None:
    one = figures(asked(BOAT | BURSTS))
    pair = {"bank.voltage": 24, "battery.count": 2, "bank.layout": "series"}
    two = figures(asked(BOAT | BURSTS | pair))
    for name, factor in (("session_charge", 1), ("depth_of_discharge", 1), ("session_energy", 2), ("end_voltage", 2)):
        assert two[name].value == pytest.approx(factor * one[name].value), name


@pytest.mark.parametrize("name", ["run-check", "run-time"])
def test_it_changes_neither_the_verdict_nor_the_contract_s_figures(name: str) -> None:
    plain, session = asked(BOAT | {"load.burst": 5}, name), asked(BOAT | BURSTS, name)
    if name == "run-check":
        assert session.verdict == plain.verdict
    for figure in plain.figures:
        assert figures(session)[figure.name].value == figure.value


@pytest.mark.parametrize(
    "missing",
    [{"load.burst": None}, {"load.bursts": None}, {"battery.capacity": None}],
    ids=lambda item: next(iter(item)),
)
def test_nothing_is_said_without_bursts_their_number_and_amp_hours(missing: dict[str, None]) -> None:
    facts = {name: value for name, value in (BOAT | BURSTS).items() if name not in missing}
    assert not ADDED & set(figures(asked(facts)))


def test_seconds_in_all_stand_for_the_number_of_bursts() -> None:
    facts = BOAT | {"load.burst": 8, "load.time": 90}
    assert figures(asked(facts))["session_charge"].value == pytest.approx(340 * 96 / 3600)  # 12 whole bursts
    assert "duty_cycle" not in figures(asked(facts))


def test_cold_takes_a_larger_part_of_the_battery() -> None:
    warm, cold = (figures(asked(BOAT | BURSTS | more)) for more in ({}, {"ambient.temperature": -3.9}))
    assert cold["depth_of_discharge"].low == pytest.approx(warm["depth_of_discharge"].low / 0.66)
    assert cold["end_voltage"].value < warm["end_voltage"].value


def test_more_than_the_battery_holds_leaves_nothing_and_tells_so() -> None:
    found = asked(BOAT | BURSTS | {"load.bursts": 400})
    assert figures(found)["state_of_charge_left"].value == 0
    assert "end_voltage" not in figures(found)
    assert any("more than the battery holds" in step.say for step in found.working)


def test_lithium_has_no_sag_and_more_usable_volts() -> None:
    facts = {**BOAT, "battery.chemistry": "lfp", "battery.max_current": 400, "battery.peak_current": 600} | BURSTS
    del facts["battery.cca"]
    found = figures(asked(facts))
    assert found["session_energy"].value == pytest.approx(340 * 100 / 3600 * 12.8)
    assert "end_voltage" not in found
    assert found["depth_of_discharge"].high > found["depth_of_discharge"].value


ENGINE = ("detail:engine_battery",)


def test_bursts_that_leave_the_engine_its_start() -> None:
    found = asked(BOAT | BURSTS, cues=ENGINE)
    count = figures(found)["bursts_before_start_limit"].value
    assert found.verdict == "marginal"
    below, above = (
        figures(asked(BOAT | BURSTS | {"load.bursts": count + more}, cues=ENGINE))["rest_voltage_after"].value
        for more in (0, 1)
    )
    assert below >= 12.4 > above
    assert any("12.4" in step.say and "engine" in step.say for step in found.working)


def test_no_such_number_for_a_battery_of_its_own() -> None:
    assert "bursts_before_start_limit" not in figures(asked(BOAT | BURSTS))


def test_at_24_volts_the_resting_volts_are_the_bank_s() -> None:
    one = figures(asked(BOAT | BURSTS))["rest_voltage_after"].value
    pair = {"bank.voltage": 24, "battery.count": 2, "bank.layout": "series"}
    assert figures(asked(BOAT | BURSTS | pair))["rest_voltage_after"].value == pytest.approx(2 * one)


def test_a_bank_known_by_its_limits_alone_is_lithium() -> None:
    facts = {"battery.max_current": 400, "battery.peak_current": 600, "battery.capacity": 100} | BURSTS
    found = figures(asked({"load.kind": "thruster", "load.current": 340, "bank.voltage": 12} | facts))
    assert found["depth_of_discharge"].value == pytest.approx(100 * 100 / (20 * 3600 * (100 / 6800) ** 1.05))


@pytest.mark.parametrize(("burst", "shown"), [(0, False), (1, True), (0.5, True)])
def test_the_shortest_bursts(burst: float, shown: bool) -> None:
    assert ("session_charge" in figures(asked(BOAT | BURSTS | {"load.burst": burst}))) is shown


def test_one_amp_is_a_session_too() -> None:
    assert figures(asked(BOAT | BURSTS | {"load.current": 1}))["session_charge"].value == pytest.approx(100 / 3600)


def test_the_last_hundredth_still_has_its_volts() -> None:
    found = figures(asked(BOAT | BURSTS | {"load.bursts": 112}))
    assert 0 < found["state_of_charge_left"].value < 1
    assert "rest_voltage_after" in found


@pytest.mark.parametrize(("cca", "shown"), [(185, True), (150, False)])
def test_volts_under_nothing_are_not_told(cca: float, shown: bool) -> None:
    found = figures(asked(BOAT | BURSTS | {"battery.cca": cca}))
    assert ("end_voltage" in found) is shown
    assert not shown or 0 < found["end_voltage"].value < 2


def test_a_battery_that_is_low_already_leaves_the_engine_nothing() -> None:
    found = figures(asked(BOAT | BURSTS | {"battery.charge": 40}, cues=ENGINE))
    assert found["bursts_before_start_limit"].value == 0
