"""Peukert in the 20-hour form, against published worked examples and the definition of the 20-hour rate."""

from __future__ import annotations

import pytest

from service.calculators import peukert
from service.calculators.units import OutOfRange


@pytest.mark.parametrize(
    ("c20", "current", "k", "hours"),
    [
        (100, 10, 1.2, 8.706),  # 20 x (100 / 200)^1.2, delivers 87 Ah
        (250, 20, 1.3, 10.856),  # a published tutorial's battery; its own 5.09 h takes C20 for the 1 A capacity
        (100, 10, 1.1, 9.33),  # delivers 93.3 Ah, a published table says 89
        (200, 340, 1.15, 20.796 / 60),
    ],
)
def test_worked_examples(c20: float, current: float, k: float, hours: float) -> None:
    assert peukert.run_time(c20, current, k) == pytest.approx(hours, abs=0.005)


@pytest.mark.parametrize("k", [1.0, 1.05, 1.2, 1.4])
def test_the_20_hour_current_lasts_20_hours_whatever_k(k: float) -> None:
    assert peukert.run_time(100, 5, k) == pytest.approx(20)


def test_small_currents_never_last_longer_than_capacity_over_current() -> None:
    assert peukert.run_time(90, 4, 1.2) == pytest.approx(22.5)


@pytest.mark.parametrize(("current", "k", "share"), [(340, 1.15, 0.5), (60, 1.25, 0.5), (8, 1.05, 0.8), (2, 1.2, 0.5)])
def test_the_required_capacity_lasts_just_the_time(current: float, k: float, share: float) -> None:
    for hours in (0.05, 0.5, 3, 14):
        need = peukert.required_capacity(hours, current, k, share)
        assert peukert.run_time(need, current, k) * share == pytest.approx(hours)


@pytest.mark.parametrize(("reserve", "k", "c20"), [(180, 1.2, 102.891), (180, 1.15, 96.057), (100, 1.25, 68.49)])
def test_capacity_from_reserve_minutes(reserve: float, k: float, c20: float) -> None:
    """500 x (RC / 1200)^(1/k); the linear rule RC / 2 + 15.5 gives 105.5 for 180 min."""
    assert peukert.capacity_from_reserve(reserve, k) == pytest.approx(c20, abs=0.01)


def test_values_outside_the_method_are_refused() -> None:
    with pytest.raises(OutOfRange, match="above 0"):
        peukert.run_time(100, 0, 1.2)
    with pytest.raises(OutOfRange, match="at least 1"):
        peukert.run_time(100, 5, 0.9)
    with pytest.raises(OutOfRange, match="share 0"):
        peukert.required_capacity(1, 5, 1.2, 0)
    with pytest.raises(OutOfRange, match="reserve"):
        peukert.capacity_from_reserve(0, 1.2)
