"""The cable of a panel, a controller or a charger: 3 % may be lost in it; 10 % suits a motor alone."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk


@pytest.mark.parametrize(
    ("text", "topic", "limit"),
    [
        ("How thick a wire from a solar panel, 6 m, 7 A?", "cable-size", 3.0),
        ("Controller to battery, solar, 3 m, 15 A: which cable?", "cable-size", 3.0),
        ("MPPT to bank, 20 A, 2.5 m, mm2?", "cable-size", 3.0),
        ("Which cable from the charger to the battery, 3 m, 30 A?", "cable-size", 3.0),
        ("What is lost in 4 mm2 between panel and regulator, 8 A 5 m?", "voltage-drop", 3.0),
        ("Which cable for a thruster of 250 A, 6 m? There is a solar panel as well.", "cable-size", 10.0),
        ("The bow motor draws 180 A over 5 m and we have solar. Which cable?", "cable-size", 10.0),
        ("150 A over 4 m, which cable?", "cable-size", 10.0),
    ],
)
def test_the_limit_is_that_of_what_the_cable_feeds(text: str, topic: str, limit: float) -> None:
    found = next(item for item in default_desk().ask(text).answers if item.topic == topic)
    assert next(item.value for item in found.assumed if item.fact == "cable.drop") == limit


def test_what_the_loss_does_is_told_of_the_load_it_feeds() -> None:
    told = "Is 2.5 mm2 enough from the solar panel, 6 A over 5 m?"
    found = next(item for item in default_desk().ask(told).answers if item.topic == "cable-size")
    assert found.verdict == "no"
    assert any("it charges slowly" in step.say for step in found.working)
    assert not any("motor" in step.say for step in found.working)
