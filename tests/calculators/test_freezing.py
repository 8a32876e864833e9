"""Freezing of battery acid against the Army tables."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.calculators.freezing import judged, point
from service.judgements.frost import point_at_charge, rows


@pytest.mark.parametrize(
    ("charge", "celsius"),
    [(100, -59.4), (75, -37.2), (50, -26.1), (25, -15.0), (0, -9.4)],  # TM 5-4210-230-14&P-1, table 2
)
def test_freezing_by_charge(charge: float, celsius: float) -> None:
    assert point_at_charge(charge) == celsius


@pytest.mark.parametrize(
    ("gravity", "fahrenheit"),
    [(1.280, -90), (1.250, -62), (1.200, -16), (1.150, 5), (1.100, 19), (1.000, 32)],  # OD1002, lesson 2
)
def test_freezing_by_gravity(gravity: float, fahrenheit: float) -> None:
    assert point(gravity, rows("gravity")) == pytest.approx((fahrenheit - 32) / 1.8, abs=0.06)


def test_between_the_rows() -> None:
    assert point(1.175, rows("gravity")) == pytest.approx(-20.8, abs=0.1)  # 1.150 (+5 °F) and 1.200 (-16 °F)
    assert point_at_charge(20) == pytest.approx(-13.88)


@given(first=st.floats(0, 100), second=st.floats(0, 100))
def test_a_fuller_battery_freezes_at_a_lower_temperature(first: float, second: float) -> None:
    low, high = sorted((first, second))
    assert point_at_charge(low) >= point_at_charge(high)


@pytest.mark.parametrize(
    ("temperature", "verdict"), [(-30, "no"), (-26.1, "no"), (-26.0, "marginal"), (-21.1, "marginal"), (-21.0, "yes")]
)
def test_five_degrees_are_kept_in_hand(temperature: float, verdict: str) -> None:
    assert judged(temperature, -26.1, 5) == verdict
