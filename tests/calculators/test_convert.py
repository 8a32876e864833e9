"""Conversions against definitions and published pairs."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.calculators import convert, peukert
from service.calculators.units import OutOfRange


@pytest.mark.parametrize(  # NIST SP 811, appendix B: exact definitions
    ("found", "wanted"),
    [
        (convert.feet(0.3048), 1),
        (convert.pounds(0.45359237), 1),
        (convert.fahrenheit(0), 32),
        (convert.fahrenheit(-40), -40),
        (convert.fahrenheit(-17.7777777778), 0),
        (convert.HORSEPOWER, 745.7),
    ],
)
def test_units_by_definition(found, wanted):
    assert found == pytest.approx(wanted, abs=1e-3)


@pytest.mark.parametrize(
    ("watts", "volts", "amps"), [(3000, 12, 250), (3000, 24, 125), (1500, 12, 125), (400, 12, 33.333)]
)
def test_watts_are_volts_times_amps(watts, volts, amps):
    assert convert.current(watts, volts) == pytest.approx(amps, abs=0.001)
    assert convert.power(amps, volts) == pytest.approx(watts, abs=0.1)


def test_ca_and_cca_are_1_25_apart():
    assert convert.cca_from_ca(1000, 1.25) == 800
    assert convert.ca_from_cca(800, 1.25) == 1000


@pytest.mark.parametrize(("capacity", "volts", "energy"), [(100, 12.8, 1280), (100, 12, 1200), (360, 12.8, 4608)])
def test_energy_of_a_battery(capacity, volts, energy):
    assert convert.energy(capacity, volts) == pytest.approx(energy)
    assert convert.capacity_from_energy(energy, volts) == pytest.approx(capacity)


@pytest.mark.parametrize(  # C20 = 500 x (RC / 60 / 20)^(1 / k)
    ("reserve", "k", "capacity"),
    [(180, 1.2, 102.891), (180, 1.15, 96.057), (100, 1.25, 68.490), (120, 1.2, 73.390), (200, 1.2, 112.334)],
)
def test_reserve_minutes_as_amp_hours(reserve, k, capacity):
    assert peukert.capacity_from_reserve(reserve, k) == pytest.approx(capacity, abs=0.001)


def test_power_at_no_volts_is_refused():
    with pytest.raises(OutOfRange):
        convert.current(100, 0)


@given(st.floats(20, 600), st.sampled_from([1.15, 1.2, 1.25]))
def test_reserve_and_amp_hours_go_there_and_back(reserve, k):
    assert peukert.run_time(peukert.capacity_from_reserve(reserve, k), 25, k) * 60 == pytest.approx(reserve)
