"""Standing drains by hand."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.calculators.drain import current_for, daily_loss, days_between
from service.calculators.units import OutOfRange


@pytest.mark.parametrize(
    ("charge", "capacity", "amps", "days"),
    [
        (100, 100, 0.020, 104.17),  # 50 Ah / 0.48 Ah a day
        (100, 110, 0.5, 4.583),
        (75, 100, 0.5, 2.083),
        (50, 100, 0.5, 0),
        (20, 100, 0.5, 0),
    ],
)
def test_days_to_half(charge: float, capacity: float, amps: float, days: float) -> None:
    assert days_between(charge, 50, capacity, amps) == pytest.approx(days, abs=0.01)


def test_20_milliamps_are_14_amp_hours_a_month() -> None:
    assert daily_loss(0.020) * 30 == pytest.approx(14.4)


@pytest.mark.parametrize(("capacity", "amps"), [(0, 1), (100, 0), (-1, 1)])
def test_nothing_to_reckon_with(capacity: float, amps: float) -> None:
    with pytest.raises(OutOfRange):
        days_between(100, 50, capacity, amps)


def test_negative_drain_and_no_time() -> None:
    with pytest.raises(OutOfRange):
        daily_loss(-0.1)
    with pytest.raises(OutOfRange):
        current_for(100, 50, 100, 0)


@given(capacity=st.floats(1, 3000), amps=st.floats(0.001, 50), charge=st.floats(51, 100))
def test_the_drain_of_those_days_is_the_drain(capacity: float, amps: float, charge: float) -> None:
    days = days_between(charge, 50, capacity, amps)
    assert current_for(charge, 50, capacity, days) == pytest.approx(amps)
