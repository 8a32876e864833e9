"""Which of the volts on offer suits the battery, and what a charger that goes by warmth puts out."""

import pytest

from tests.talks import only, plain


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("wich charger setting for gel batery, 14.4 or 14.1", "Take 14.1 V: a gel battery takes 13.8 to 14.4 V"),
        ("14.4 V or 14.7 V for AGM, which is right?", "Take 14.4 V: an AGM battery takes 14.2 to 14.8 V"),
        ("gel battery: should I pick 14.1 or 14.4 volts?", "Take 14.1 V:"),
        ("should I charge lithium at 14.6 or 14.2 volts", "Take 14.2 V: a lithium battery takes 14.2 to 14.6 V"),
        ("I can set it to 14.7 or 14.9 V, both on gel. Which one for charging?", "Neither is right: a gel battery"),
    ],
)
def test_of_two_voltages_the_one_nearest_the_best(text, opens):
    assert plain(only(text).headline).startswith(opens)


def test_of_three_the_one_that_goes_too_high_is_named():
    found = only("charger has 14.1, 14.4 and 14.8: which for gel?")
    assert plain(found.headline).endswith("best 14.1 V; 14.8 V is too high.")
    assert [side.verdict for side in found.compare] == ["yes", "yes", "no"]


@pytest.mark.parametrize(
    "text",
    [
        "could I use 14.4 absorption and 13.5 float on AGM",  # two stages are no choice
        "could I use 14.7 volt on gel, the only setting apart from 14.1",
        "is 14.4 V right for gel",
        "charger puts out 14.7 V on my AGM, good?",
        "14.4 or 14.1, which setting?",  # the kind is not told
    ],
)
def test_no_choice_is_made_where_none_is_put(text):
    assert not only(text).headline.startswith("Take")


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("Temp comp -30mV/C, charger set 14.4 at 25, batt at 5C: what V", "15.0 V: 20 °C colder than 25 °C is 0.60 V"),
        (
            "My charger compensates 18 mV per degree C, it's set to 13.8 V at 25 °C. What will it give when the AGM "
            "battery is at 35 degrees?",
            "13.6 V: 10 °C warmer than 25 °C is 0.18 V less than 13.8 V.",
        ),
        (
            "compensation of -4 mV/°C per cell, 14.4 V at 20 °C, battery is 0 °C, flooded. What should the charger "
            "put out?",
            "14.9 V: 20 °C colder than 20 °C is 0.48 V more than 14.4 V; hold it to the 14.8 V",
        ),
    ],
)
def test_the_rule_of_a_charger_with_a_sensor_is_worked_out(text, opens):
    assert plain(only(text).headline).startswith(opens)


@pytest.mark.parametrize(
    "text",
    [
        "charger 14.4 V, battery at 5 °C, AGM. ok?",
        "charger set to 14.4 V for AGM, it compensates 30 mV per degree, is that setting right?",
        "14.4 V on AGM, is that right at 25 °C",
    ],
)
def test_without_a_rule_or_a_warmth_nothing_is_worked_out(text):
    assert "colder than" not in plain(only(text).headline)
