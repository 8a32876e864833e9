"""Hydrometer readings against published examples."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.calculators.gravity import corrected, spread
from service.calculators.units import OutOfRange
from service.rules.readings import corrected_gravity, gravity_charge


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8


@pytest.mark.parametrize(
    ("read", "fahrenheit", "at_80"),
    [
        (1.260, 110, 1.272),  # engine service manual, worked example
        (1.272, 0, 1.240),  # the same manual
        (1.282, 65, 1.276),  # equipment manual; it says 1.277 by 0.001 for each 3 °F
        (1.250, 40, 1.234),
        (1.225, 80, 1.225),
    ],
)
def test_gravity_at_80_fahrenheit(read: float, fahrenheit: float, at_80: float) -> None:
    assert corrected_gravity(read, celsius(fahrenheit)) == pytest.approx(at_80, abs=0.0005)


@pytest.mark.parametrize(
    ("gravity", "percent"),
    [(1.265, 100), (1.225, 75), (1.190, 50), (1.155, 25), (1.120, 0), (1.219, 70.7), (1.300, 100), (1.050, 0)],
)  # BCI table as reprinted, and between its rows
def test_charge_of_a_gravity(gravity: float, percent: float) -> None:
    assert gravity_charge(gravity) == pytest.approx(percent, abs=0.1)


def test_a_reading_on_a_row_stays_on_it_at_80_fahrenheit() -> None:
    assert gravity_charge(corrected_gravity(1.225, 26.67)) >= 75 - 1e-9


def test_no_acid_has_a_gravity_of_two() -> None:
    with pytest.raises(OutOfRange, match=r"0\.900 to 1\.400"):
        corrected(2.0, 20, 0.004, 26.67)


def test_spread_between_cells() -> None:
    assert spread([1.270, 1.270, 1.215]) == 0.055
    assert spread([1.250]) == 0


@given(read=st.floats(1.0, 1.32), warmer=st.floats(-30, 50), colder=st.floats(-30, 50))
def test_the_warmer_acid_is_corrected_upwards(read: float, warmer: float, colder: float) -> None:
    low, high = sorted((warmer, colder))
    assert corrected_gravity(read, low) <= corrected_gravity(read, high)
