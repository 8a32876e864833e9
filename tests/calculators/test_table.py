"""Reading between rows, and never beyond them."""

from __future__ import annotations

import pytest

from service.calculators.table import between, within
from service.calculators.units import OutOfRange

CHARGE = [(12.65, 100), (12.45, 75), (12.24, 50)]  # BCI, volts at rest against charge


def test_on_a_row_and_between_rows() -> None:
    assert between(12.45, CHARGE) == 75
    assert between(12.40, CHARGE) == pytest.approx(69.05, abs=0.01)


def test_beyond_the_rows() -> None:
    with pytest.raises(OutOfRange, match=r"12.24 to 12.65"):
        between(12.0, CHARGE)
    assert within(12.0, CHARGE) == 50
    assert within(13.0, CHARGE) == 100
