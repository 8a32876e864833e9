"""Charging current, time and volts against published and worked examples."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.calculators import charging
from service.calculators.units import OutOfRange

SIZES = st.floats(1, 2000)


@pytest.mark.parametrize(
    ("capacity", "share", "amps"),
    [
        (200, 0.10, 20),
        (200, 0.30, 60),  # a boat owner's charging notes: 200 Ah AGM, 20 to 60 A
        (100, 0.10, 10),
        (100, 0.25, 25),  # the same notes: 10 A for 100 Ah is the old trade rule
        (100, 0.50, 50),  # handling guide of lithium iron phosphate: 0.5 C
    ],
)
def test_charging_current_is_a_share_of_the_capacity(capacity, share, amps):
    assert charging.current(capacity, share) == pytest.approx(amps)


@pytest.mark.parametrize(
    ("capacity", "charge", "factor", "charger", "absorption", "hours"),
    [
        (100, 50, 1.20, 20, 2.0, 5.0),  # wet-cell: 50 x 1.2 / 20 + 2
        (100, 20, 1.03, 30, 0.0, 2.75),  # lithium: 80 x 1.03 / 30, no absorption
        (210, 0, 1.20, 20, 2.0, 14.6),  # two wet 105 Ah, dead flat
    ],
)
def test_time_is_what_is_gone_over_the_amps_and_the_absorption(capacity, charge, factor, charger, absorption, hours):
    back = charging.to_return(capacity, charge, factor)
    assert charging.time(back, charger, absorption) == pytest.approx(hours, abs=0.01)


@pytest.mark.parametrize(
    ("volts", "celsius", "by_degree", "expected"),
    [
        (2.30, 35, 0.003, 2.27),  # published for float, a cell: 2.30 V becomes 2.27 V at 35 C
        (14.4, 5, 0.030, 15.0),  # 14.4 + 6 cells x 5 mV x 20
        (14.4, 25, 0.030, 14.4),
    ],
)
def test_volts_fall_with_warmth(volts, celsius, by_degree, expected):
    assert charging.compensated(volts, celsius, by_degree) == pytest.approx(expected, abs=0.005)


def test_a_full_battery_takes_no_time_not_even_absorption():
    assert charging.time(charging.to_return(100, 100, 1.2), 10, 2.0) == 0


@given(SIZES, st.floats(0, 99), st.floats(0.1, 500))
def test_a_larger_charger_is_never_slower(capacity, charge, amps):
    back = charging.to_return(capacity, charge, 1.1)
    assert charging.time(back, amps * 2, 2.0) <= charging.time(back, amps, 2.0)


@pytest.mark.parametrize(
    ("method", "values"),
    [
        (charging.current, (0, 0.1)),
        (charging.current, (100, -0.1)),
        (charging.to_return, (100, 101, 1.1)),
        (charging.to_return, (100, 50, 0.9)),
        (charging.time, (50, 0)),
        (charging.time, (-1, 10)),
    ],
)
def test_values_outside_the_limits_are_refused(method, values):
    with pytest.raises(OutOfRange):
        method(*values)
