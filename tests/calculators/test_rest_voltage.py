"""Volts at rest against the published tables."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.calculators.rest_voltage import band, charge, volts_at
from service.calculators.units import OutOfRange
from service.rules.readings import band_rows, rest_rows

KINDS = ("flooded", "agm", "gel", "lfp")


@pytest.mark.parametrize(
    ("kind", "volts", "percent"),
    [
        ("flooded", 12.65, 100),  # BCI table as reprinted, every row
        ("flooded", 12.45, 75),
        ("flooded", 12.24, 50),
        ("flooded", 12.06, 25),
        ("flooded", 11.89, 0),
        ("flooded", 12.40, 69.0),  # between 12.24 and 12.45
        ("flooded", 12.30, 57.1),  # a 24 V bank of 24.6 V
        ("agm", 12.8, 100),  # vehicle maker's AGM table
        ("agm", 12.6, 75),
        ("agm", 12.3, 50),
        ("gel", 12.35, 50),  # widely reprinted chart, from memory
    ],
)
def test_charge_of_the_published_rows(kind: str, volts: float, percent: float) -> None:
    assert charge(volts, rest_rows(kind)) == pytest.approx(percent, abs=0.05)


@pytest.mark.parametrize(("volts", "percent"), [(13.2, 100), (11.0, 0), (0.0, 0)])
def test_beyond_the_table_it_is_full_or_empty(volts: float, percent: float) -> None:
    assert charge(volts, rest_rows("flooded")) == percent


def test_five_charts_differ_by_33_points_at_13_1_volts() -> None:
    assert band(13.1, band_rows()) == (29, 40, 62)


def test_no_negative_volts() -> None:
    with pytest.raises(OutOfRange, match="0 or more"):
        charge(-0.1, rest_rows("flooded"))
    with pytest.raises(OutOfRange, match="0 or more"):
        band(-0.1, band_rows())
    with pytest.raises(OutOfRange, match="0 to 100"):
        volts_at(101, rest_rows("agm"))


@pytest.mark.parametrize("kind", KINDS)
@given(first=st.floats(0, 16), second=st.floats(0, 16))
def test_more_volts_are_never_less_charge(kind: str, first: float, second: float) -> None:
    low, high = sorted((first, second))
    assert charge(low, rest_rows(kind)) <= charge(high, rest_rows(kind)) + 1e-9


@pytest.mark.parametrize("kind", ["flooded", "agm", "gel"])
@given(percent=st.floats(0, 100))
def test_the_table_reads_both_ways(kind: str, percent: float) -> None:
    assert charge(volts_at(percent, rest_rows(kind)), rest_rows(kind)) == pytest.approx(percent, abs=1e-6)


@given(volts=st.floats(0, 16))
def test_the_middle_of_the_band_lies_within_it(volts: float) -> None:
    low, middle, high = band(volts, band_rows())
    assert low <= middle <= high
