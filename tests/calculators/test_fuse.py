"""Fuse ratings against the NEC list and worked examples."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.calculators import fuse
from service.calculators.units import OutOfRange
from service.judgements.fusing import RATINGS
from service.rules.cable import ampacity


def test_the_list_is_that_of_nec_240_6():
    assert RATINGS[:8] == (1, 3, 6, 10, 15, 20, 25, 30)
    assert RATINGS[-7:] == (350, 400, 450, 500, 600, 700, 800)
    assert 425 not in RATINGS


@pytest.mark.parametrize(  # 1.25 x running, 1.5 x ampacity of 33 CFR 183.425 table 5 at 105 C
    ("running", "gauge", "least", "most"),
    [
        (100, "4", 125, 225),
        (180, "2", 225, 300),
        (340, "4/0", 450, 600),
        (340, "1", 450, 350),
        (500, "2/0", 700, 450),
        (20, "12", 25, 60),
    ],
)
def test_the_band_of_a_load_on_a_cable(running, gauge, least, most):
    assert fuse.at_least(1.25 * running, RATINGS) == least
    assert fuse.at_most(1.5 * (ampacity(gauge) or 0), RATINGS) == most


def test_a_current_beyond_the_list_has_no_rating():
    assert fuse.at_least(801, RATINGS) is None
    assert fuse.at_most(0.5, RATINGS) is None


@pytest.mark.parametrize("amps", [0, -5, float("inf")])
def test_an_impossible_current_is_refused(amps):
    with pytest.raises(OutOfRange):
        fuse.at_least(amps, RATINGS)


@given(st.floats(1, 800))
def test_the_two_ends_enclose_the_current(amps):
    assert fuse.at_most(amps, RATINGS) <= amps * (1 + 1e-9)
    assert fuse.at_least(amps, RATINGS) >= amps * (1 - 1e-9)
