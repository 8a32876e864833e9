"""Air for a battery space, by the formula of IEC 62485-2, clause 7.2, and its openings, clause 7.3."""

import pytest

from service.calculators import ventilation
from service.calculators.units import OutOfRange


@pytest.mark.parametrize(
    ("cells", "gas", "capacity", "air", "opening"),
    [
        (6, 20, 100, 0.6, 16.8),  # one wet-cell 12 V 100 Ah on boost
        (6, 5, 100, 0.15, 4.2),  # on float
        (6, 8, 100, 0.24, 6.72),  # AGM or gel on boost
        (12, 20, 100, 1.2, 33.6),  # two wet-cell in series
        (6, 20, 200, 1.2, 33.6),  # two wet-cell in parallel
        (12, 8, 210, 1.008, 28.224),  # four AGM of 105 Ah, two strings of two
    ],
)
def test_airflow_and_opening(cells, gas, capacity, air, opening):
    found = ventilation.airflow(cells, gas, capacity)
    assert found == pytest.approx(air)
    assert ventilation.opening_area(found) == pytest.approx(opening)


def test_the_factor_is_dilution_times_gas_times_safety():
    published = (100 - 4) / 4 * 0.42e-3 * 5  # 4 % hydrogen, 0.42e-3 m3 for each Ah and cell, five times
    assert pytest.approx(published, rel=0.01) == ventilation.DILUTION


@pytest.mark.parametrize("values", [(0, 20, 100), (6, 0, 100), (6, 20, 0)])
def test_values_outside_the_limits_are_refused(values):
    with pytest.raises(OutOfRange):
        ventilation.airflow(*values)


@pytest.mark.parametrize(
    ("space", "air", "roomy"),
    [(1.5, 0.6, True), (1.49, 0.6, False), (6.0, 2.4, True), (5.0, 2.4, False), (0.3, 0.12, True)],
)  # 2.5 m3 for each m3/h, IEC 62485-2
def test_a_space_is_roomy_from_two_and_a_half_hours_of_its_air(space, air, roomy):
    assert ventilation.roomy(space, air) is roomy
