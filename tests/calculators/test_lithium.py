"""Limits of lithium banks: common practice of the trade, and the cold limits of a 48 V module's manual."""

from __future__ import annotations

import pytest

from service.calculators import lithium

BY_LABEL = {"count_on": 0.8}
BY_AH = {"per_hour": 1.0, "too_much": 1.5, "plenty": 0.5, "count_on": 0.8}


@pytest.mark.parametrize(
    ("running", "inrush", "continuous", "peak", "parallel", "verdict"),
    [
        (340, 510, 100, None, 1, "no"),
        (180, 270, 200, None, 1, "peak"),
        (180, 270, 200, 220, 1, "no"),
        (180, 270, 200, 270, 1, "yes"),
        (120, 180, 200, None, 1, "yes"),  # the first instant within the continuous limit
        (250, 375, 300, 600, 2, "marginal"),  # 240 A of 300 A is relied on
        (150, 225, 200, 500, 2, "yes"),
        (280, 420, 300, 600, 3, "marginal"),
    ],
)
def test_by_the_label(
    running: float, inrush: float, continuous: float, peak: float | None, parallel: int, verdict: str
) -> None:
    assert lithium.stated_limits(running, inrush, continuous, peak, parallel, **BY_LABEL) == verdict


@pytest.mark.parametrize(
    ("running", "capacity", "parallel", "verdict"),
    [
        (340, 100, 1, "no"),
        (150, 100, 1, "limits"),
        (151, 100, 1, "no"),
        (80, 300, 1, "yes"),
        (50, 100, 1, "limits"),
        (120, 400, 4, "marginal"),
        (100, 400, 4, "yes"),
    ],
)
def test_by_the_capacity(running: float, capacity: float, parallel: int, verdict: str) -> None:
    assert lithium.by_capacity(running, 1.5 * running, capacity, parallel, **BY_AH) == verdict


@pytest.mark.parametrize(("celsius", "share"), [(20, 1.0), (0, 1.0), (-0.5, 0.5), (-20, 0.5), (-20.5, 0.0)])
def test_in_the_cold(celsius: float, share: float) -> None:
    assert lithium.cold_share(celsius, 0, -20, 0.5) == share
