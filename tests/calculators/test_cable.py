"""Cable sizes against the published tables of boat cable, cell for cell."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from grammar.files import toml
from service.calculators import cable
from service.calculators.units import OutOfRange
from service.rules.cable import K, ampacity, gauges, metric_sizes, nearest_gauge

PUBLISHED = toml(Path(__file__).parents[1] / "data" / "cable_tables.toml")
CELLS = [
    (table["volts"], table["percent"], table["round_trip_feet"], amps, printed)
    for table in PUBLISHED["table"]
    for amps, printed in zip(PUBLISHED["amps"], table["printed"], strict=True)
]
SIZES = gauges()


def needed(volts: float, percent: float, feet: float, amps: float) -> float:
    return cable.area_for(amps, feet * cable.FOOT / 2, volts * percent / 100, k=K.value)


@pytest.mark.parametrize(("volts", "percent", "feet", "amps", "printed"), CELLS)
def test_a_cell_of_a_published_table_gives_the_printed_size(volts, percent, feet, amps, printed):
    found = cable.smallest(SIZES, needed(volts, percent, feet, amps))
    assert found is not None
    assert found.name == printed


def test_all_156_cells_of_the_24_volt_table_are_there():
    assert len([cell for cell in CELLS if cell[:2] == (24, 3)]) == 156


@pytest.mark.parametrize("cell", PUBLISHED["cell"])
def test_a_single_cell_gives_its_circular_mils_and_its_size(cell):
    area = needed(cell["volts"], cell["percent"], cell["round_trip_feet"], cell["amps"])
    assert area == pytest.approx(cell["circular_mils"], abs=0.6)
    found = cable.smallest(SIZES, area)
    assert found is not None
    assert found.name == cell["printed"]


@pytest.mark.parametrize(  # 33 CFR 183.425, table 5, and three reprints of its 105 C columns
    ("gauge", "insulation", "engine_space", "amps"),
    [
        ("4/0", 105, False, 445),
        ("4/0", 105, True, 378.25),
        ("2", 105, True, 178.5),
        ("4", 75, False, 125),
        ("1/0", 90, False, 245),
        ("2/0", 110, False, 330),
        ("18", 60, False, 10),
    ],
)
def test_ampacity_is_that_of_table_5(gauge, insulation, engine_space, amps):
    assert ampacity(gauge, insulation, engine_space) == pytest.approx(amps)


@pytest.mark.parametrize(("gauge", "insulation"), [("5", 105), ("4", 50)])
def test_an_unknown_size_or_insulation_has_no_ampacity(gauge, insulation):
    assert ampacity(gauge, insulation) is None


@pytest.mark.parametrize(  # amperes of the largest AWG that is no thicker, table 5 at 105 C
    ("area", "amps"),
    [
        (1, 20),
        (1.5, 25),
        (2.5, 35),
        (4, 45),
        (6, 60),
        (10, 80),
        (16, 120),
        (25, 160),
        (35, 210),
        (50, 245),
        (70, 330),
        (95, 385),
        (120, 445),
    ],
)
def test_a_metric_size_carries_what_the_largest_thinner_gauge_carries(area, amps):
    assert next(size.ampacity for size in metric_sizes() if size.name == area) == amps
    assert ampacity(nearest_gauge(area)) == amps


def test_the_thinnest_metric_size_has_no_ampacity_and_is_not_proposed_for_a_current():
    assert nearest_gauge(0.75) == ""
    assert cable.smallest(metric_sizes(), current=1).name == 1.0


@pytest.mark.parametrize(  # E-11 formula by hand: 10.75 x A x ft / cmil
    ("amps", "metres", "area", "volts"),
    [(340, 6.096, 125_100, 1.1686), (120, 4.572, 77_790, 0.4975), (60, 7.62, 37_360, 0.8632)],
)
def test_the_loss_is_the_formula_the_other_way_round(amps, metres, area, volts):
    assert cable.drop(amps, metres, area, k=K.value) == pytest.approx(volts, abs=0.0001)


def test_beyond_the_thickest_the_fewest_equal_cables_are_taken():
    sizes = [size for size in SIZES if size.area >= 98_980]
    count, size = cable.conductors(sizes, area=352_690, current=600, share=0.6)
    assert (count, size.name) == (3, "3/0")  # two 4/0 have the area, but carry 534 A


def test_no_number_of_cables_is_endless():
    assert cable.conductors(SIZES, area=1e9, current=1, share=0.6) is None


@pytest.mark.parametrize(("amps", "metres", "area"), [(-1, 1, 1), (1, -1, 1), (1, 1, 0), (float("nan"), 1, 1)])
def test_impossible_values_are_refused(amps, metres, area):
    with pytest.raises(OutOfRange):
        cable.drop(amps, metres, area, k=K.value)


@given(st.floats(1, 600), st.floats(0.1, 30), st.sampled_from([0.36, 0.72, 1.2, 2.4]))
def test_the_size_found_loses_no_more_than_allowed_and_the_next_thinner_more(amps, metres, lost):
    found = cable.smallest(SIZES, cable.area_for(amps, metres, lost, k=K.value))
    if found is None:
        assert cable.drop(amps, metres, SIZES[-1].area, k=K.value) > lost
        return
    assert cable.drop(amps, metres, found.area, k=K.value) <= lost * (1 + 1e-6)
    thinner = SIZES[max(0, SIZES.index(found) - 1)]
    assert thinner is found or cable.drop(amps, metres, thinner.area, k=K.value) > lost


@given(st.floats(1, 400), st.floats(0.1, 30), st.floats(0, 400))
def test_more_current_never_asks_for_a_thinner_cable(amps, metres, more):
    thin, thick = (cable.smallest(SIZES, cable.area_for(a, metres, 1.2, k=K.value), a) for a in (amps, amps + more))
    assert thick is None or (thin is not None and thin.area <= thick.area)
