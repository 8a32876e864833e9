"""Self-discharge by hand and against the Army rows."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.calculators.storage import charge_after, days_between, monthly_rate
from service.calculators.units import OutOfRange

MONTH = 30.4375


@pytest.mark.parametrize(
    ("rate", "celsius", "days"),
    [(5, 20, 152), (5, 30, 76), (5, 10, 304), (5, 0, 609), (5, -10, 609), (3, 20, 254)],
)  # 25 / 5 months, doubling each 10 °C, not under the rate at 0 °C
def test_days_from_full_to_75_percent(rate: float, celsius: float, days: float) -> None:
    assert days_between(100, 75, monthly_rate(rate, celsius) / MONTH) == pytest.approx(days, abs=0.5)


def test_the_army_rows_double_in_10_degrees() -> None:
    warm, mild = 20 / monthly_rate(1, 26.7), 6 / monthly_rate(1, 10.0)  # TM 9-6140-200-14: 20 and 6 % a month
    assert warm == pytest.approx(mild, rel=0.1)


@pytest.mark.parametrize(("months", "rate", "celsius", "left"), [(6, 5, 10, 85), (4, 3, 20, 88), (40, 5, 20, 0)])
def test_charge_after_some_months(months: float, rate: float, celsius: float, left: float) -> None:
    assert charge_after(100, months * MONTH, monthly_rate(rate, celsius) / MONTH) == pytest.approx(left)


def test_what_cannot_be() -> None:
    with pytest.raises(OutOfRange):
        monthly_rate(0, 20)
    with pytest.raises(OutOfRange):
        days_between(100, 75, 0)
    with pytest.raises(OutOfRange):
        charge_after(100, -1, 0.1)


@given(charge=st.floats(0, 100), until=st.floats(0, 100), rate=st.floats(0.5, 30), celsius=st.floats(-40, 45))
def test_after_those_days_that_charge_is_left(charge: float, until: float, rate: float, celsius: float) -> None:
    share = monthly_rate(rate, celsius) / MONTH
    days = days_between(charge, until, share)
    assert charge_after(charge, days, share) == pytest.approx(min(charge, until), abs=1e-6)
