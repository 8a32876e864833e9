"""Every calculator takes the values at its limits, refuses those beyond, and names what is wrong with them."""

from __future__ import annotations

import math

import pytest

from service.calculators import bank, cable, charging, convert, dc_dc, drain, gravity, peukert, solar, ventilation
from service.calculators.units import OutOfRange

K = 10.75  # ohm circular mil / ft, E-11

BEYOND = [
    (lambda: solar.daily_charge(0, 4, 0.75, 13.5), r"^the panel's watts \(or the need\) and the charging volts must"),
    (lambda: solar.daily_charge(100, 4, 0.75, 0), r"^the panel's watts"),
    (lambda: solar.daily_charge(100, 4, 0, 13.5), r"^a share of 0 is outside 0 to 1$"),
    (lambda: solar.daily_charge(100, 25, 0.75, 13.5), r"^25 h of full sun a day is outside 0 to 24 h$"),
    (lambda: solar.required_power(10, 0, 0.75, 13.5), r"^0 h of full sun a day must be above 0, at most 24 h$"),
    (lambda: solar.self_discharge(0, 5), r"^0 Ah at 5 % a month: the first must be above 0"),
    (lambda: peukert.run_time(0, 5, 1.2), r"^0 Ah and 5 A must be above 0, and k 1.2 at least 1$"),
    (lambda: peukert.run_time(100, 5, 0.99), r"k 0.99 at least 1$"),
    (lambda: peukert.required_capacity(0, 5, 1.2, 0.5), r"^0 h, 5 A, k 1.2, share 0.5: above 0, and share at most 1$"),
    (lambda: peukert.required_capacity(1, 0, 1.2, 0.5), r"^1 h, 0 A"),
    (lambda: peukert.required_capacity(1, 5, 0.9, 0.5), r"k 0.9"),
    (lambda: peukert.required_capacity(1, 5, 1.2, 1.01), r"share 1.01"),
    (lambda: peukert.capacity_from_reserve(0, 1.2), r"^reserve 0 min must be above 0, and k 1.2 at least 1$"),
    (lambda: dc_dc.input_current(24, 0, 12, 0.9), r"^volts, amps and efficiency of a converter must be above 0$"),
    (lambda: dc_dc.output_current(12, 30, 24, 1.1), r"^an efficiency of 1.1 must be at most 1$"),
    (lambda: charging.current(0, 0.1), r"^a capacity of 0 must be above 0$"),
    (lambda: charging.current(100, -0.1), r"^a share of -0.1 must be 0 or more$"),
    (lambda: charging.to_return(0, 50, 1.15), r"^a capacity of 0 must be above 0$"),
    (lambda: charging.to_return(100, -0.5, 1.15), r"^a charge of -0.5 % is outside 0 to 100 %$"),
    (lambda: charging.to_return(100, 101, 1.15), r"^a charge of 101 % is outside 0 to 100 %$"),
    (lambda: charging.to_return(100, 50, 0.9), r"^a charge factor of 0.9 must be 1 or more$"),
    (lambda: charging.time(50, 0), r"^a charging current of 0 must be above 0$"),
    (lambda: charging.time(-1, 10), r"^-1 Ah and 0 h must be 0 or more$"),
    (lambda: charging.time(50, 10, -2), r"^50 Ah and -2 h must be 0 or more$"),
    (lambda: cable.drop(-1, 3, 100_000, k=K), r"^current is -1: it must be 0 or more$"),
    (lambda: cable.drop(100, math.nan, 100_000, k=K), r"^length is nan: it must be 0 or more$"),
    (lambda: cable.drop(100, 3, 0, k=K), r"^area is 0: it must be above 0$"),
    (lambda: bank.apart(0, 100), r"^0 and 100: both must be above 0$"),
    (lambda: bank.apart(100, 0), r"^100 and 0: both must be above 0$"),
    (lambda: drain.daily_loss(-0.1), r"^a drain of -0.1 A must be 0 or more$"),
    (lambda: drain.days_between(100, 50, 0, 0.1), r"^0 Ah and 0.1 A must be above 0$"),
    (lambda: drain.days_between(100, 50, 100, 0), r"^100 Ah and 0 A must be above 0$"),
    (lambda: drain.current_for(100, 50, 100, 0), r"^0 days must be above 0$"),
    (lambda: gravity.corrected(0.89, 20, 0.004, 26.7), r"^a gravity of 0.89 is outside 0.900 to 1.400$"),
    (lambda: gravity.corrected(1.41, 20, 0.004, 26.7), r"^a gravity of 1.41 is outside"),
    (lambda: ventilation.airflow(0, 20, 100), r"^0 cells, 20 mA/Ah and 100 Ah must all be above 0$"),
    (lambda: ventilation.opening_area(0), r"^an airflow of 0 m3/h must be above 0$"),
    (lambda: convert.current(1200, 0), r"^0 V must be above 0, and efficiency 1 between 0 and 1$"),
    (lambda: convert.current(1200, 12, 1.1), r"efficiency 1.1 between 0 and 1$"),
    (lambda: convert.current(1200, 12, 0), r"efficiency 0 between 0 and 1$"),
    (lambda: convert.current(1200, 12, -0.5), r"efficiency -0.5 between 0 and 1$"),
    (lambda: convert.current(1200, -0.5), r"^-0.5 V must be above 0"),
    (lambda: solar.daily_charge(100, -0.5, 0.75, 13.5), r"^-0.5 h of full sun a day is outside 0 to 24 h$"),
    (lambda: solar.self_discharge(100, -0.5), r"at -0.5 % a month: .* the second 0 or more$"),
]

AT = [
    (lambda: solar.daily_charge(100, 24, 1, 1), 2400),
    (lambda: solar.daily_charge(100, 0, 1, 1), 0),
    (lambda: solar.required_power(24, 24, 1, 1), 1),
    (lambda: solar.self_discharge(1, 0), 0),
    (lambda: solar.self_discharge(1, 0.5) * 30, 0.005),
    (lambda: peukert.run_time(20, 1, 1), 20),
    (lambda: peukert.required_capacity(20, 1, 1, 1), 20),
    (lambda: peukert.required_capacity(20, 0.5, 1, 1), 10),
    (lambda: dc_dc.input_current(12, 30, 12, 1), 30),
    (lambda: charging.current(1, 0), 0),
    (lambda: charging.to_return(100, 0, 1), 100),
    (lambda: charging.to_return(100, 100, 1), 0),
    (lambda: charging.time(0, 0.5), 0),
    (lambda: cable.drop(0, 0, 1, k=K), 0),
    (lambda: bank.apart(0.5, 0.5), 0),
    (lambda: drain.daily_loss(0), 0),
    (lambda: drain.days_between(100, 50, 0.5, 0.25) * 24, 1),
    (lambda: gravity.corrected(0.9, 0, 0, 26.7), 0.9),
    (lambda: gravity.corrected(1.4, 0, 0, 26.7), 1.4),
    (lambda: ventilation.opening_area(0.5), 14),  # 28 x Q, IEC 62485-2
    (lambda: convert.current(12, 0.5, 1), 24),
    (lambda: gravity.spread([1.2500, 1.2005]), 0.0495),  # not yet the 0.050 of a bad cell
]


@pytest.mark.parametrize(("call", "said"), BEYOND)
def test_beyond_its_limits_a_calculator_refuses_and_says_why(call, said):
    with pytest.raises(OutOfRange, match=said):
        call()


@pytest.mark.parametrize(("call", "value"), AT)
def test_at_its_limits_a_calculator_answers(call, value):
    assert call() == pytest.approx(value, abs=1e-4)


def test_the_smallest_size_is_one_that_just_fits():
    sizes = [cable.Size("a", 100.0, 10.0), cable.Size("b", 200.0, 20.0)]
    assert cable.smallest(sizes).name == "a"
    assert cable.smallest(sizes, area=100.0, current=10.0).name == "a"
    assert cable.smallest(sizes, area=100.1).name == "b"
    assert cable.smallest(sizes, current=10.1).name == "b"
    assert cable.smallest(sizes, current=15.0, share=0.6) is None
