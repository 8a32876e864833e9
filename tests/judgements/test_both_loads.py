"""Two loads of their own times on one battery that is to be bought."""

from __future__ import annotations

import pytest

from tests.talks import only, plain


@pytest.mark.parametrize(
    ("text", "capacity", "head"),
    [
        # 20 h x (C / 1800)^1.15 / 2 = 4 min: 22.4 Ah; 4 A for 12 h from half of it: 96 Ah
        (
            "Windlass 90 A for 4 minutes plus a fridge of 4 A for 12 hours: what size of AGM?",
            119.07,
            "Look for an AGM battery of 225 CCA and 120 Ah or more: 23.1 Ah for your windlass and 96 Ah",
        ),
        ("How many Ah of gel for a fridge of 4 A for 12 h and lamps of 2 A for 20 h?", 176, "gel battery of 176 Ah"),
        ("how big a bank for a fridge, 4 A for 24 h, and a plotter, 2 A for 20 h?", 272, "a lead battery of 272 Ah"),
        (
            "24 V gel bank: thruster 150 A for 3 minutes and a fridge of 3 A for 20 hours. How many Ah?",
            149.9,
            "two gel batteries in series for 24 V, each of 375 CCA and 150 Ah or more",
        ),
        # 1 A for each Ah asks less than both together
        ("How big a lithium carries a 90 A windlass for 5 minutes and a fridge, 4 A for 24 h?", 132.04, "of 133 Ah"),
    ],
)
def test_one_battery_carries_both_loads(text, capacity, head):
    found = only(text)
    figures = {item.name: item.value for item in found.figures}
    assert figures["required_capacity"] == pytest.approx(capacity, rel=0.003)
    assert head in plain(found.headline)
    assert len(found.headline.split()) <= 30


def test_two_loads_that_are_a_choice_each_have_their_own_size():
    found = only("what size AGM for a 90 A windlass for 4 minutes or a 180 A thruster for 3 minutes")
    assert "225 CCA and 24 Ah; 180 A thruster 3 minutes: 450 CCA and 36 Ah" in plain(found.headline)


def test_what_stays_on_takes_no_first_instant():
    found = only("fridge 4 A for 12 hours, lamps 2 A for 10 hours, how many Ah of gel?")
    assert all(item.fact != "load.peak" for item in found.assumed)
    assert not any("First instant" in item.say for item in found.working)
