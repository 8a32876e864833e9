"""Independent libraries: cell models for the shape of sag and run time, two units libraries for conversions.

What the libraries gave is kept in tests/data with their versions; the scripts in tests/tools made it. The cell models
are of other batteries than a customer's, so they check shape and order, not figures.
"""

from __future__ import annotations

import json
import math
from itertools import pairwise
from pathlib import Path

import pytest

from grammar import read_quantities
from grammar.text import units
from service import reference
from service.calculators import cable, convert, peukert, sag
from service.leadsman import default_desk
from service.rules.cable import PER_MM2

DATA = Path(__file__).parent / "data"
DISCHARGES = json.loads((DATA / "discharges.json").read_text(encoding="utf-8"))
CONVERSIONS = json.loads((DATA / "conversions.json").read_text(encoding="utf-8"))
PAIRS = [
    (item["value"], item["unit"], item["to"], item["unyt"], item["astropy"]) for item in CONVERSIONS["conversions"]
]
LEAD, LITHIUM = DISCHARGES["lead"], DISCHARGES["lithium"]


def test_the_records_name_their_libraries() -> None:
    assert DISCHARGES["library"] == "PyBaMM"
    assert DISCHARGES["version"]
    assert set(CONVERSIONS["libraries"]) == {"unyt", "astropy"}


# Run time


def twenty_hour_capacity(runs: list[dict[str, float]]) -> float:
    """Amp-hours of the modelled battery at its 20-hour rate, between the recorded runs."""
    points = sorted((item["hours"], item["amps"]) for item in runs)
    above = next(number for number, (hours, _) in enumerate(points) if hours > 20)
    (h1, a1), (h2, a2) = points[above - 1], points[above]
    slope = math.log(a2 / a1) / math.log(h2 / h1)
    return 20 * a1 * (20 / h1) ** slope


def exponents(runs: list[dict[str, float]]) -> list[float]:
    """The exponent between neighbouring runs: how the time falls as the current rises."""
    return [
        math.log(slow["hours"] / fast["hours"]) / math.log(fast["amps"] / slow["amps"]) for slow, fast in pairwise(runs)
    ]


def test_modelled_lead_runs_shorter_than_its_amp_hours_over_amps_and_so_does_ours() -> None:
    """Twice the current lasts less than half as long, in the model and by Peukert's law alike."""
    assert all(exponent > 1 for exponent in exponents(LEAD["runs"]))
    k = reference.row("peukert", chemistry="flooded")["k"].value
    ours = [{"amps": item["amps"], "hours": peukert.run_time(22, item["amps"], k)} for item in LEAD["runs"]]
    assert all(exponent >= 1 for exponent in exponents(ours))
    assert exponents(ours)[-1] == pytest.approx(k)


def test_modelled_lead_has_no_one_exponent_and_the_handbook_s_range_covers_its_middle() -> None:
    """The exponent grows with the current: so the answer gives a range, and doubts Peukert beyond 1 A for each Ah."""
    found = exponents(LEAD["runs"])
    assert found == sorted(found)
    over_all = math.log(LEAD["runs"][0]["hours"] / LEAD["runs"][-1]["hours"]) / math.log(
        LEAD["runs"][-1]["amps"] / LEAD["runs"][0]["amps"]
    )
    low = min(reference.row("peukert", chemistry=kind)["k_low"].value for kind in ("agm", "gel", "lead", "flooded"))
    high = max(reference.row("peukert", chemistry=kind)["k_high"].value for kind in ("agm", "gel", "lead", "flooded"))
    assert low < over_all < high


@pytest.mark.parametrize("number", range(len(LEAD["runs"])))
def test_our_lead_run_times_lie_near_the_modelled_ones_and_not_above_at_high_current(number: int) -> None:
    run, capacity = LEAD["runs"][number], twenty_hour_capacity(LEAD["runs"])
    row = reference.row("peukert", chemistry="agm")
    ends = [peukert.run_time(capacity, run["amps"], row[name].value) for name in ("k_high", "k_low")]
    assert ends[0] * 0.95 < run["hours"] < ends[1] * 1.12
    assert capacity == pytest.approx(21.6, abs=0.3)


def test_modelled_iron_phosphate_bends_less_than_lead_at_low_rates_as_ours_does() -> None:
    lead, lithium = (min(exponents(item["runs"])) for item in (LEAD, LITHIUM))
    k = {kind: reference.row("peukert", chemistry=kind)["k"].value for kind in ("flooded", "agm", "lfp")}
    assert k["lfp"] < k["agm"] < k["flooded"]
    assert 1 < lead < 1.1
    assert 1 < lithium < 1.1
    low = LITHIUM["runs"][:2]
    predicted = low[0]["hours"] * (low[0]["amps"] / low[1]["amps"]) ** k["lfp"]
    assert predicted == pytest.approx(low[1]["hours"], rel=0.02)


def test_iron_phosphate_holds_its_volts_where_lead_falls() -> None:
    """Why resting volts tell the charge of lead and hardly that of lithium: ours has a band from 13.0 to 13.4 V."""
    lead, lithium = LEAD["runs"][0]["volts_at_share"], LITHIUM["runs"][0]["volts_at_share"]
    fall = {name: (run["0.3"] - run["0.7"]) / run["0.3"] for name, run in (("lead", lead), ("lithium", lithium))}
    assert fall["lithium"] < fall["lead"] / 2
    assert 13.0 - 0.3 < 4 * lithium["0.5"] < 13.4  # four cells, under a small load
    rows = {row["volts"].value: row["high"].value - row["low"].value for row in reference.rows("lithium_rest")}
    assert rows[13.1] > 30


# Sag


def test_modelled_volts_fall_with_current_and_on_within_a_burst() -> None:
    after_a_second = [item["volts_after"]["1"] for item in LEAD["bursts"]]
    assert after_a_second == sorted(after_a_second, reverse=True)
    for burst in LEAD["bursts"]:
        volts = list(burst["volts_after"].values())
        assert volts == sorted(volts, reverse=True)


def test_modelled_sag_grows_less_than_the_current_so_a_straight_line_is_on_the_safe_side() -> None:
    """Our sag is one resistance, taken at half the CCA; the model's resistance falls as the current rises."""
    sags = [(item["amps"], LEAD["rest"] - item["volts_after"]["5"]) for item in LEAD["bursts"]]
    ohms = [volts / amps for amps, volts in sags]
    assert ohms == sorted(ohms, reverse=True)
    anchor_amps, anchor_sag = sags[1]
    for amps, volts in sags[2:]:
        straight = LEAD["rest"] - sag.terminal_voltage(LEAD["rest"], amps, anchor_sag / anchor_amps)
        assert straight > volts


def test_a_weaker_charge_sags_to_lower_volts_in_model_and_answer() -> None:
    run = LEAD["runs"][-1]["volts_at_share"]
    assert list(run.values()) == sorted(run.values(), reverse=True)
    ohms = sag.resistance(800, 12.6, 9.6)
    ours = [sag.terminal_voltage(rest, 300, ohms) for rest in (12.6, 12.4, 12.2)]
    assert ours == sorted(ours, reverse=True)


@pytest.mark.slow
def test_the_library_gives_the_recorded_discharge_where_it_is_installed() -> None:
    pybamm = pytest.importorskip("pybamm", reason="the record was made with it; it is no part of the test extra")
    numpy = pytest.importorskip("numpy")
    parameters = pybamm.ParameterValues("Sulzer2019")
    recorded = LEAD["runs"][-1]
    parameters["Current function [A]"] = recorded["amps"]
    simulation = pybamm.Simulation(pybamm.lead_acid.Full(), parameter_values=parameters)
    run = simulation.solve(numpy.linspace(0, 1.6 * 1800, 400))
    assert run["Time [s]"].entries[-1] / 3600 == pytest.approx(recorded["hours"], rel=0.01)


# Units


@pytest.mark.parametrize(("value", "unit", "to", "by_unyt", "by_astropy"), PAIRS)
def test_both_libraries_and_ours_convert_alike(
    value: float, unit: str, to: str, by_unyt: float, by_astropy: float
) -> None:
    assert by_unyt == pytest.approx(by_astropy, rel=1e-8, abs=1e-9)
    if to == "circular mil":
        assert value * PER_MM2.value == pytest.approx(by_unyt, rel=2e-5)  # 1973.5 for 1973.53
        return
    assert units.convert(value, unit, to) == pytest.approx(by_unyt, rel=1e-8, abs=1e-9)


def recorded(unit: str, to: str) -> list[tuple[float, float]]:
    return [(value, found) for value, have, want, found, _ in PAIRS if (have, want) == (unit, to)]


@pytest.mark.parametrize(
    ("unit", "to", "ours"),
    [
        ("meter", "foot", convert.feet),
        ("foot", "meter", lambda feet: feet * cable.FOOT),
        ("kilogram", "pound", convert.pounds),
        ("pound", "kilogram", lambda pounds: pounds * convert.POUND),
        ("degree_Celsius", "degree_Fahrenheit", convert.fahrenheit),
        ("horsepower", "watt", lambda horses: horses * convert.HORSEPOWER),
    ],
)
def test_the_calculators_convert_as_the_libraries(unit: str, to: str, ours) -> None:
    pairs = recorded(unit, to)
    assert pairs
    for value, wanted in pairs:
        assert ours(value) == pytest.approx(wanted, rel=1e-8)


@pytest.mark.parametrize(
    ("text", "unit", "to"),
    [
        ("20 ft of cable", "foot", "meter"),
        ("a post of 7 in", "inch", "meter"),
        ("it weighs 66 lb", "pound", "kilogram"),
        ("a 5 hp motor", "horsepower", "watt"),
        ("a 3.4 kW thruster", "kilowatt", "watt"),
        ("1.28 kWh of lithium", "kilowatt_hour", "watt_hour"),
        ("35 mA with everything off", "milliampere", "ampere"),
        ("at 10 F in the locker", "degree_Fahrenheit", "degree_Celsius"),
        ("a box of 250 litres", "liter", "meter ** 3"),
    ],
)
def test_what_is_typed_comes_to_the_libraries_value(text: str, unit: str, to: str) -> None:
    quantity = read_quantities(text)[0]
    value, wanted = next(pair for pair in recorded(unit, to) if pair[0] == quantity.value)
    assert quantity.unit == unit
    assert units.convert(value, quantity.unit, to) == pytest.approx(wanted, rel=1e-8)


@pytest.mark.parametrize(
    ("text", "figure", "unit", "to"),
    [
        ("66 lb in kg?", "weight", "pound", "kilogram"),
        ("Convert 10 F to C", "temperature", "degree_Fahrenheit", "degree_Celsius"),
        ("-18 C in Fahrenheit?", "temperature", "degree_Celsius", "degree_Fahrenheit"),
    ],
)
def test_a_conversion_that_is_asked_for_is_the_libraries_value(text: str, figure: str, unit: str, to: str) -> None:
    answer = default_desk().ask(text).answers[0]
    value = next(item.value for item in answer.figures if item.name == figure)
    assert any(value == pytest.approx(wanted, rel=1e-6) for _, wanted in recorded(unit, to)), value
