"""Daily charge of a panel and the panel for a need."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.calculators import solar
from service.calculators.units import OutOfRange


@pytest.mark.parametrize(
    ("power", "sun", "share", "volts", "amp_hours"),
    [
        (100, 4, 0.75, 13.5, 22.2),  # worked by hand: 100 x 4 x 0.75 / 13.5
        (50, 1.5, 0.60, 13.5, 3.3),  # a small panel in winter
        (200, 5, 0.75, 27.0, 27.8),  # 24 V
        (20, 0, 0.75, 13.5, 0.0),
    ],
)
def test_daily_charge(power, sun, share, volts, amp_hours):
    assert solar.daily_charge(power, sun, share, volts) == pytest.approx(amp_hours, abs=0.05)


def test_the_share_lies_under_the_losses_of_the_reference_model():
    losses = (2, 3, 2, 2, 0.5, 1.5, 1, 3)  # PVWatts 5 manual, default losses in percent, without a battery
    left = math.prod(1 - loss / 100 for loss in losses)
    assert left == pytest.approx(1 - 0.1408, abs=0.0001)
    assert left > 0.75


def test_self_discharge_of_200_ah_at_5_percent_a_month():
    assert solar.self_discharge(200, 5) == pytest.approx(0.333, abs=0.001)


@given(st.floats(0.01, 500), st.floats(0.1, 16))
def test_the_panel_for_a_need_brings_just_that(need, sun):
    power = solar.required_power(need, sun, 0.75, 13.5)
    assert solar.daily_charge(power, sun, 0.75, 13.5) == pytest.approx(need)


@pytest.mark.parametrize(
    ("method", "values"),
    [
        (solar.daily_charge, (0, 4, 0.75, 13.5)),
        (solar.daily_charge, (100, 25, 0.75, 13.5)),
        (solar.daily_charge, (100, 4, 1.2, 13.5)),
        (solar.required_power, (5, 0, 0.75, 13.5)),
        (solar.self_discharge, (0, 5)),
    ],
)
def test_values_outside_the_limits_are_refused(method, values):
    with pytest.raises(OutOfRange):
        method(*values)
