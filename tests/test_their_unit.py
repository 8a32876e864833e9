"""A bare number of a later message is in the unit of the figure that it mends, and is shown so."""

from __future__ import annotations

import pytest

from tests.talks import talk


@pytest.mark.parametrize(
    ("turns", "run"),
    [
        (("cable for 260 A 12V, 24 ft one way?", "no, 20"), "over 20 ft (6.1 m)"),
        (("cable for 260 A 12V, 24 ft one way?", "sorry, 20 is the round trip"), "over 10 ft (3.05 m)"),
        (("cable for 260 A 12V, 24 feet each way?", "I meant 18 each way"), "over 18 ft (5.49 m)"),
        (("260A 12V, cable 22' one way?", "make that 26"), "over 26 ft (7.92 m)"),
        (("200A 12V thruster, 30 ft each way. cable?", "sorry 28 there and back"), "over 14 ft (4.27 m)"),
        (("cable for 200A at 12 V, 20 ft each way", "sorry 5 m"), "over 5 m (16.4 ft)"),
        (("cable for 200A at 12 V, 6 m each way", "sorry, 8"), "over 8 m (26.2 ft)"),
    ],
)
def test_a_length_stays_in_feet_or_metres_and_so_do_the_sizes(turns, run):
    answer = talk(*turns).answers[0]
    assert run in answer.headline.replace("\u00a0", " ")
    assert ("AWG (" in answer.headline) == run.endswith("m)")


def test_degrees_stay_of_their_scale():
    answer = talk("1.155 on the hydrometer at 50F, wet", "sorry it was 40").answers[0]
    assert next(item.value for item in answer.figures if item.name == "corrected_gravity") == pytest.approx(1.139)


def test_horsepower_stays_horsepower():
    answer = talk("cable for a 3 hp thruster at 12 V, 20 ft each way", "sorry, 4").answers[0]
    assert next(item.value for item in answer.understood if item.fact == "load.power") == pytest.approx(
        4 * 745.7, rel=1e-3
    )
