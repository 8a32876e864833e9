"""Converter currents against the power balance."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.calculators import dc_dc
from service.calculators.units import OutOfRange


@pytest.mark.parametrize(
    ("volts_out", "amps_out", "volts_in", "amps_in"),
    [
        (24, 30, 12, 66.7),  # worked by hand: 24 x 30 / (12 x 0.9)
        (28.8, 30, 11, 87.3),  # the same at charging volts from a sagging battery: 31 % more
        (12, 30, 12, 33.3),
    ],
)
def test_input_current_is_power_over_volts_and_efficiency(volts_out, amps_out, volts_in, amps_in):
    assert dc_dc.input_current(volts_out, amps_out, volts_in, 0.90) == pytest.approx(amps_in, abs=0.05)


@given(st.floats(1, 200), st.sampled_from([12, 24, 36, 48]), st.sampled_from([12, 24]))
def test_output_undoes_input(amps, out, into):
    taken = dc_dc.input_current(out, amps, into, 0.9)
    assert dc_dc.output_current(into, taken, out, 0.9) == pytest.approx(amps)


@pytest.mark.parametrize("values", [(24, 30, 0, 0.9), (24, -1, 12, 0.9), (24, 30, 12, 1.1)])
def test_values_outside_the_limits_are_refused(values):
    with pytest.raises(OutOfRange):
        dc_dc.input_current(*values)
