"""Sums of a docking session, by hand."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.calculators import session
from service.calculators.units import OutOfRange


@pytest.mark.parametrize(("burst", "rest", "percent"), [(5, 15, 25), (5, 30, 14.2857), (10, 0, 100), (8, 12, 40)])
def test_duty_cycle(burst: float, rest: float, percent: float) -> None:
    assert session.duty_cycle(burst, rest) == pytest.approx(percent, abs=0.0001)


@pytest.mark.parametrize(
    ("amps", "seconds", "amp_hours"), [(340, 100, 9.4444), (360, 100, 10), (120, 60, 2), (0, 5, 0)]
)
def test_amp_hours_drawn(amps: float, seconds: float, amp_hours: float) -> None:
    assert session.drawn(amps, seconds) == pytest.approx(amp_hours, abs=0.0001)


@pytest.mark.parametrize(("seconds", "hours", "percent"), [(180, 0.25, 20), (3600, 1, 100), (90, 0.5, 5), (0, 1, 0)])
def test_part_of_the_battery_used(seconds: float, hours: float, percent: float) -> None:
    assert session.depth(seconds, hours) == pytest.approx(percent)


@pytest.mark.parametrize(("share", "burst", "hours", "count"), [(20, 10, 0.25, 18), (19.9, 10, 0.25, 17), (0, 5, 1, 0)])
def test_whole_bursts(share: float, burst: float, hours: float, count: int) -> None:
    assert session.bursts_for(share, burst, hours) == count


@given(st.floats(0.1, 100), st.floats(1, 60), st.floats(0.05, 20))
def test_those_bursts_use_no_more_than_the_share_and_one_more_would(share: float, burst: float, hours: float) -> None:
    count = session.bursts_for(share, burst, hours)
    assert session.depth(count * burst, hours) <= share * (1 + 1e-6)
    assert session.depth((count + 1) * burst, hours) > share * (1 - 1e-6)


@pytest.mark.parametrize(
    ("method", "values"),
    [
        (session.duty_cycle, (0, 5)),
        (session.duty_cycle, (5, -1)),
        (session.drawn, (-1, 5)),
        (session.drawn, (1, -5)),
        (session.depth, (10, 0)),
        (session.depth, (-1, 1)),
    ],
)
def test_values_outside_the_limits_are_refused(method, values) -> None:
    with pytest.raises(OutOfRange):
        method(*values)
