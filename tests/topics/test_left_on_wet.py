"""A sealed battery whose charger is left on the setting for wet cells: such a programme may equalise by itself."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("can I leave our AGM on 'flooded' through the winter?", "no"),
        ("The charger has been left on wet all winter, the battery is an AGM. Is that ok?", "no"),
        ("is the wet setting all right for one charge of my AGM?", "marginal"),
        ("may I leave the AGM on AGM all winter?", "yes"),
    ],
)
def test_a_sealed_battery_left_on_wet(text, verdict):
    found = next(item for item in default_desk().ask(text).answers if item.topic == "charger-setting")
    assert found.verdict == verdict
