"""What the thruster trade knows: facts of common practice, none of them with a published source.

Each is asked as a customer would, through the one door of the core, and the answer must agree with it. Where a
standard or the desk's own method is stricter than the habit, the answer holds the stricter one and names the habit.
"""

from __future__ import annotations

from typing import Any

import pytest

from service import answer, reference

Answer = dict[str, Any]


def told(text: str, topic: str) -> Answer:
    """The answer on that topic."""
    found = [item for item in answer(text).as_dict()["answers"] if item["topic"] == topic]
    assert found, f"{text}: {[item['topic'] for item in answer(text).as_dict()['answers']]}, not {topic}"
    return found[0]


def figures(item: Answer) -> dict[str, Any]:
    return {figure["name"]: figure["value"] for figure in item["figures"]}


def figure(item: Answer, name: str) -> dict[str, Any]:
    return next(found for found in item["figures"] if found["name"] == name)


def words(item: Answer) -> str:
    return " ".join([item["headline"], *(step["say"] for step in item["working"])])


def is_common_practice(item: Answer, source: str) -> bool:
    """Whether the answer cites this source, and as a habit of the trade rather than a standard."""
    return any(cite["id"] == source and cite["kind"] == "common-practice" for cite in item["cites"])


def test_340_a_running_is_about_500_a_in_the_first_instant() -> None:
    found = told("Which battery for a 340 A thruster?", "bank-size")
    assert figures(found)["running_current"] == 340
    assert figures(found)["inrush_current"] == pytest.approx(500, rel=0.05)
    assert is_common_practice(found, "inrush-practice")


@pytest.mark.parametrize(
    "text", ["Which battery for a 340 A thruster?", "What CCA do I need for a 340 amp bow thruster?"]
)
def test_such_a_thruster_is_paired_with_850_cca_or_more(text: str) -> None:
    assert figures(told(text, "bank-size"))["required_cca"] == pytest.approx(850)


@pytest.mark.parametrize(("cca", "verdict"), [(850, "yes"), (900, "yes"), (800, "marginal"), (700, "no")])
def test_850_cca_is_where_a_clear_yes_begins(cca: int, verdict: str) -> None:
    assert told(f"Will an {cca} CCA AGM battery run a 340 A thruster?", "run-check")["verdict"] == verdict


def test_a_100_ah_lithium_battery_allows_about_100_a() -> None:
    found = told("Will a 100 Ah lithium run a 340 A thruster?", "run-check")
    assert figures(found)["limit_current"] == 100
    assert found["verdict"] == "no"
    assert is_common_practice(found, "lithium-limits")


@pytest.mark.parametrize(
    "text",
    [
        "My 12.8 V battery drops to 9 V when the thruster runs. Good?",
        "Battery shows 12.8 V at rest and 9.0 V on the posts with the thruster running",
    ],
)
def test_a_good_battery_that_falls_to_9_v_points_to_charging_or_a_bad_cell(text: str) -> None:
    found = told(text, "load-voltage")
    assert found["verdict"] == "no"
    assert "charge" in words(found)
    assert "bad cell" in words(found)
    assert is_common_practice(found, "falls-under-load")


@pytest.mark.parametrize("kind", ["flooded", "AGM", "gel", "lead", "lithium"])
@pytest.mark.parametrize("at", ["", " at 20 C", " at 25 C"])
def test_a_disconnected_battery_loses_3_to_15_percent_a_month(kind: str, at: str) -> None:
    found = told(f"How long can a full {kind} battery stand disconnected{at} before it needs charging?", "storage")
    lost = figure(found, "self_discharge")
    assert 3 <= lost["value"] <= 15
    assert lost["low"] <= lost["value"] <= lost["high"]
    assert is_common_practice(found, "self-discharge-range")


def test_the_range_of_a_lead_battery_is_that_of_the_trade() -> None:
    lost = figure(
        told("How long can a full lead battery stand disconnected before it needs charging?", "storage"),
        "self_discharge",
    )
    assert (lost["low"], lost["high"]) == (3, 15)


def test_in_storage_it_is_recharged_at_about_12_2_v_and_here_a_little_sooner() -> None:
    """The desk recharges at 75 %, 12.45 V: half full, where the habit waits, already harms the plates."""
    found = told("How do I store a flooded battery over the winter?", "storage")
    assert 12.2 <= figures(found)["recharge_voltage"] <= 12.45
    assert "12.2" in words(found)
    assert is_common_practice(found, "recharge-habit")


@pytest.mark.parametrize(("volts", "verdict"), [("12.2", "no"), ("12.5", "yes")])
def test_a_stored_battery_at_12_2_v_is_charged(volts: str, verdict: str) -> None:
    found = told(f"My stored flooded battery reads {volts} V at rest. Is that good?", "rest-voltage")
    assert found["verdict"] == verdict
    assert verdict == "yes" or "charge it" in found["headline"]


@pytest.mark.parametrize("kind", ["flooded", "AGM", "gel", "lithium"])
def test_a_stored_battery_is_looked_at_every_three_months(kind: str) -> None:
    found = told(f"How often should I check a {kind} battery in storage?", "storage")
    assert figures(found)["check_interval"] == pytest.approx(90, abs=2)
    assert is_common_practice(found, "check-interval")


def test_water_every_six_months_at_the_least() -> None:
    found = told("How often do I top up the water in my flooded battery?", "maintenance")
    assert figures(found)["water_least"] == "every six months at the least"
    assert is_common_practice(found, "care-intervals")


def test_a_desulphating_pass_every_three_to_six_months_on_wet_cells_only() -> None:
    found = told("How often should I run the desulphation mode on my wet cell battery?", "maintenance")
    assert figures(found)["desulphate_interval"] == "every three to six months"
    assert "never on AGM, gel or lithium" in found["headline"]
    assert is_common_practice(found, "care-intervals")


@pytest.mark.parametrize("kind", ["AGM", "gel", "lithium"])
def test_no_desulphating_pass_on_other_kinds(kind: str) -> None:
    found = answer(f"How often should I run the desulphation mode on my {kind} battery?").as_dict()["answers"]
    assert {item["verdict"] for item in found} == {"no"}  # as care or as a setting of the charger
    assert all("desulphate_interval" not in figures(item) for item in found)


@pytest.mark.parametrize("seconds", [5, 10])
def test_bursts_of_5_to_10_s_go_on_for_some_minutes(seconds: int) -> None:
    found = told(f"How many {seconds} second bursts of a 340 A thruster will a 100 Ah AGM battery give?", "run-time")
    minutes = figures(found)["burst_count"] * seconds / 60
    assert 3 <= minutes <= 10
    assert minutes == pytest.approx(figures(found)["time_to_usable_limit"], abs=seconds / 60)


@pytest.mark.parametrize("weight", [20, 30, 40])
def test_lithium_is_about_half_the_weight(weight: int) -> None:
    found = told(f"How much lighter is lithium than my {weight} kg lead battery?", "weight")
    assert figures(found) == {"weight_saved": weight / 2, "weight_after": weight / 2}
    assert is_common_practice(found, "lithium-weight")


@pytest.mark.parametrize("kind", ["flooded", "AGM", "gel"])
def test_each_of_two_12_v_batteries_of_a_24_v_bank_sees_12_v_of_charging(kind: str) -> None:
    whole = told(f"Two 12 V {kind} batteries in series on a 24 V charger: what absorption voltage?", "charger-setting")
    one = told(f"What absorption voltage for one 12 V {kind} battery?", "charger-setting")
    for name in ("absorption_voltage", "float_voltage"):
        bank, single = figure(whole, name), figure(one, name)
        assert [bank[end] / 2 for end in ("low", "high")] == pytest.approx([single[end] for end in ("low", "high")])


def test_all_of_it_is_marked_as_habit_where_the_sources_are_listed() -> None:
    habits = (
        "inrush-practice",
        "lithium-limits",
        "falls-under-load",
        "self-discharge-range",
        "recharge-habit",
        "check-interval",
        "care-intervals",
        "lithium-weight",
    )
    assert {reference.sources()[name]["kind"] for name in habits} == {"common-practice"}
