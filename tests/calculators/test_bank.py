"""Sums of banks: OD1002, lesson 2, and TM 9-8000, paragraph 12-11."""

from __future__ import annotations

import pytest

from service.calculators import bank
from service.calculators.units import OutOfRange


@pytest.mark.parametrize(
    ("first", "second", "adds", "total"),
    [(12, 12, True, 24), (100, 100, False, 100), (105, 105, True, 210), (800, 800, True, 1600), (100, 140, False, 100)],
)
def test_what_two_batteries_make(first, second, adds, total):
    assert bank.together(first, second, adds=adds) == total


@pytest.mark.parametrize(
    ("first", "second", "percent"), [(100, 90, 10), (100, 110, 100 / 11), (100, 100, 0), (50, 100, 50)]
)
def test_how_far_apart_in_percent_of_the_larger(first, second, percent):
    assert bank.apart(first, second) == pytest.approx(percent)
    assert bank.apart(second, first) == pytest.approx(percent)


def test_a_battery_of_nothing_is_refused():
    with pytest.raises(OutOfRange):
        bank.apart(0, 100)
