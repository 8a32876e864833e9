"""Sag of a lead battery, against the load test chart (half the CCA for 15 s, 9.6 V at 21 °C, 8.5 V at -18 °C)."""

from __future__ import annotations

import pytest

from service.calculators import sag
from service.calculators.units import OutOfRange


def test_a_battery_that_just_passes_holds_the_chart_s_volts_at_half_its_cca() -> None:
    for cca in (350, 520, 800, 1200):  # 520 and 600 CCA stand in workshop manuals as 260 and 300 A
        for lowest in (9.6, 9.1, 8.5):
            assert sag.terminal_voltage(12.6, cca / 2, sag.resistance(cca, 12.6, lowest)) == pytest.approx(lowest)


@pytest.mark.parametrize(
    ("cca", "current", "parallel", "volts"),
    [
        (800, 500, 1, 8.85),  # the worked example of the reference tables: 12.6 - 500 x 6.0 / 800
        (800, 510, 2, 10.6875),
        (750, 600, 2, 10.2),
        (300, 375, 1, 5.1),
    ],
)
def test_volts_at_the_posts(cca: float, current: float, parallel: int, volts: float) -> None:
    assert sag.terminal_voltage(12.6, current, sag.resistance(cca, 12.6, 9.6), parallel) == pytest.approx(volts)


@pytest.mark.parametrize(("inrush", "cca"), [(500, 833.3), (510, 850), (390, 650), (210, 350), (420, 700)])
def test_the_cca_for_a_clear_yes_at_21_c(inrush: float, cca: float) -> None:
    """The trade says 850 for 500 A; the catalogue's own demands are 650, 350 and 700 for these currents."""
    assert sag.required_cca(inrush, 12.6, 9.6, 9.0) == pytest.approx(cca, abs=0.05)


def test_the_required_cca_gives_just_the_limit() -> None:
    need = sag.required_cca(333, 12.6, 9.1, 9.0)
    assert sag.terminal_voltage(12.6, 333, sag.resistance(need, 12.6, 9.1)) == pytest.approx(9.0)


def test_values_outside_the_method_are_refused() -> None:
    with pytest.raises(OutOfRange, match="CCA 0 A"):
        sag.resistance(0, 12.6, 9.6)
    with pytest.raises(OutOfRange, match="negative"):
        sag.terminal_voltage(12.6, -1, 0.01)
    with pytest.raises(OutOfRange, match=r"under 12\.6"):
        sag.required_cca(500, 12.6, 9.6, 12.6)
