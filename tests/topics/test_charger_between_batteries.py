"""A charger that takes from another battery, told with no word for a converter: its fuse goes by the side it is on."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk


def fuses(text: str) -> list[tuple[str, float]]:
    reply = default_desk().ask(text)
    found = next(item for item in reply.answers if item.topic == "fuse-size")
    return [(one.name, one.value) for one in found.figures if one.name.startswith("fuse_rating")]


@pytest.mark.parametrize(
    ("text", "into", "out"),
    [
        ("12 to 24 volt charger, 15 amps output. fuse for the 12v feed?", 60, 20),
        ("what fuse at the engine end of a 12 V-to-12 V charger, 20 A", 40, 25),
        ("24v to 12v charger 30 amps, fuse at the 24v battery?", 30, 40),
        ("charger, 24 V to 12 V, 30 A. fuse?", 30, 40),
        ("12V-24V battery charger rated 20A output, what size fuse on the input?", 80, 25),
        ("20 amp charger fed from the starter battery to the bow battery both 12 volts. fuse?", 40, 25),
        ("The charger takes its power from the engine battery, 30 amps at 12 V. What fuse?", 60, 40),
        ("twelve to twenty-four volt smart charger making 10 amps, which fuse on the twelve side", 40, 15),
        ("My bow charger runs off the house battery, 12 v, 25 amps. Which fuse at the house battery?", 50, 35),
        ("booster from the 12 V engine battery gives the 24 V bank 10 A. which fuses?", 40, 15),
        ("converter 12 to 24, 15 amps come out of it. fuse where it goes in?", 60, 20),
    ],
)
def test_each_side_has_the_fuse_of_its_own_amps(text, into, out):
    assert fuses(text) == [("fuse_rating", into), ("fuse_rating_out", out)]


@pytest.mark.parametrize(
    ("text", "rating"),
    [
        ("40 amp shore charger 12v, what fuse at the battery?", 50),
        ("charger of 20 amps on a 24v bank, fuse?", 25),
        ("my mains charger does 12/24v, 20 amps. what fuse at the starter battery end?", 25),
        ("I have a 12/24v charger from the shop, 20 amps. fuse?", 25),
        ("two 12v chargers of 10 A on a 24v bank, what fuse?", 15),
    ],
)
def test_a_charger_on_shore_power_has_one(text, rating):
    assert fuses(text) == [("fuse_rating", rating)]


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("is a 15 amp fuse ok on the 12v feed of a 12v to 24v charger, 10 A out", "no"),
        ("would a 40 A fuse be right for the 12 V end of my 12 to 24 V charger of 10 amps?", "information"),
    ],
)
def test_a_fuse_that_they_have_is_judged_by_what_goes_in(text, verdict):
    first = default_desk().ask(text).answers[0]
    assert (first.topic, first.verdict) == ("fuse-size", verdict)
