"""Cranking in the cold against the Army table and the two ratings."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service import reference
from service.calculators.cold import cranking_current, share
from service.calculators.units import OutOfRange

ROWS = [(row["temperature"].value, row["share"].value) for row in reference.rows("cranking_temperature")]


@pytest.mark.parametrize(
    ("fahrenheit", "percent"),
    [(80, 100), (32, 65), (0, 40), (-20, 20), (50, 78), (16, 52.5)],  # TM 5-4210-230-14&P-1, table 3; last two between
)
def test_share_of_the_warm_power(fahrenheit: float, percent: float) -> None:
    assert share((fahrenheit - 32) / 1.8, ROWS) == pytest.approx(percent, abs=0.6)


@pytest.mark.parametrize(
    ("cca", "celsius", "amps"),
    [
        (800, -18, 800),  # SAE J537: CCA is the current at -18 °C
        (800, 0, 1000),  # CA is 1.25 x CCA, common practice
        (800, 25, 1000),
        (800, -9, 900),  # halfway
        (700, -17.8, 701.9),
    ],
)
def test_cranking_current(cca: float, celsius: float, amps: float) -> None:
    assert cranking_current(cca, celsius, 0.25) == pytest.approx(amps, abs=0.1)


@pytest.mark.parametrize(("cca", "celsius"), [(0, 0), (700, -31)])
def test_outside_the_line(cca: float, celsius: float) -> None:
    with pytest.raises(OutOfRange):
        cranking_current(cca, celsius, 0.25)


@given(cca=st.floats(50, 2500), first=st.floats(-30, 40), second=st.floats(-30, 40))
def test_colder_is_never_more(cca: float, first: float, second: float) -> None:
    low, high = sorted((first, second))
    assert cranking_current(cca, low, 0.25) <= cranking_current(cca, high, 0.25)
    assert share(low, ROWS) <= share(high, ROWS)
