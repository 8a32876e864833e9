"""Conversions, against definitions."""
from __future__ import annotations

import pytest

from service.calculators import convert
from service.calculators.units import OutOfRange


def test_amps_of_a_power() -> None:
    assert convert.current(2400, 12) == 200
    assert convert.current(3 * convert.HORSEPOWER, 12, 0.85) == pytest.approx(219.3, abs=0.1)


def test_the_horsepower_is_550_foot_pounds_a_second() -> None:
    """NIST SP 811, appendix B.8: 550 x 0.3048 m x 4.4482216152605 N."""
    assert pytest.approx(550 * 0.3048 * 4.4482216152605) == convert.HORSEPOWER


def test_ratings() -> None:
    assert convert.cca_from_ca(1000, 1.25) == 800  # 800 CCA is 1000 CA
    assert convert.capacity_from_energy(convert.energy(100, 12.8), 12.8) == 100


def test_no_volts_no_amps() -> None:
    with pytest.raises(OutOfRange, match="0 V"):
        convert.current(100, 0)
