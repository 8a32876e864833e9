"""What later turns say of figures and batteries told before: read over a conversation, as the desk understands it."""

from __future__ import annotations

import pytest

from tests.talks import talk


def understood(*turns: str) -> dict[str, object]:
    """What the desk goes by after the last turn: stated and assumed facts, the first battery's."""
    answers = talk(*turns).answers
    found: dict[str, object] = {}
    for answer in answers:
        found |= {item.fact: item.value for item in answer.assumed}
        found |= {item.fact: item.value for item in answer.understood if item.of == 1}
    return found


@pytest.mark.parametrize(
    ("turns", "fact", "value"),
    [
        (("Pike on one AGM, 95 Ah, 750 CCA. ok?", "three of same, parallel"), "battery.count", 3.0),
        (("a Minnow on a single gel, 680 CCA?", "n if she doubles up, 2 in parallel?"), "battery.count", 2.0),
        (("how much would lithium save, the lead one is 44 kg", "it is three such leads"), "battery.count", 3.0),
        (("what is CCA?", "mine's 640. what will it give at zero degrees?"), "battery.cca", 640.0),
        (("what does CCA mean", "ours says 580, what's left at -10"), "battery.cca", 580.0),
        (
            (
                "24 V thruster, 130 A, two lithium 12 V",
                "limit of each: 100 A always, 250 a moment",
                "those of 150 always?",
            ),
            "battery.max_current",
            150.0,
        ),
        (("lithium put to bed at 70 per cent for 20 weeks, all right?", "at forty?"), "battery.charge", 40.0),
        (("lithium put to bed at 70 per cent for 20 weeks, all right?", "and at 30"), "storage.time", 140.0),
        (("lithium at -5, ok to charge?", "would they take the frost where lead did"), "battery.chemistry", "lfp"),
    ],
)
def test_a_later_turn_goes_on_with_what_was_told(turns, fact, value):
    assert understood(*turns)[fact] == value


LIMITED = ("lithium of 60 Ah for a 140 A thruster", "the label says 90 A continuous", "for two seconds 280 A it says")
FOUR_SIXES = ("four 6 V of 200 Ah as 24 V, what's that", "could I rewire the same for 12 instead")


@pytest.mark.parametrize(
    ("turns", "fact", "value"),
    [
        (("Fuse 250 ok? 70 mm2, windlass 190 A", "and if I change the 70 for a 50"), "cable.area", 50.0),
        (("Fuse 250 ok? 70 mm2, windlass 190 A", "and if I change the 70 for a 50"), "fuse.rating", 250.0),
        (("what fuse for 260 A", "cable is 95 mm2", "make that 70 instead"), "cable.area", 70.0),
        (LIMITED, "battery.peak_current", 280.0),
        (LIMITED, "battery.max_current", 90.0),
        (("one gel in series with one gel 90 Ah, ok?", "is that any better than parallel"), "bank.layout", "series"),
        (
            ("how big a hole for the air: AGM 120, charger 24 A", "if I set the charger down to 12"),
            "charger.current",
            12.0,
        ),
        (("60 W panel and a 130 Ah gel, drain 0.3 A all the time, is it enough?", "then 90"), "solar.power", 90.0),
        (
            ("two wets of 19 kg, how much lighter is lithium", "sorry, 19 is the dry weight, 27 filled"),
            "battery.weight",
            27.0,
        ),
        (("70 mm2, 180 A, 5 m: what drop", "and in per cent of 24?"), "bank.voltage", 24.0),
        (("70 mm2, 180 A, 5 m: what drop", "and in per cent of 24?"), "cable.length", 5.0),
        (FOUR_SIXES, "bank.voltage", 12.0),
        (FOUR_SIXES, "bank.layout", "series-parallel"),
        (("how many years does a gel last", "mine 7"), "battery.age", 7.0),
        (
            ("AGM of 140 for a 150 A thruster, and which charger?", "a charger I could borrow, 20 A"),
            "load.current",
            150.0,
        ),
        (
            ("12.7 rested, 10.2 with 170 A on it, AGM, ok?", "my mate's only drops to 11.1"),
            "reading.load_voltage",
            10.2,
        ),
        (("what's an agm of group 31 weigh", "would lithium shave half off"), "battery.chemistry", "agm"),
        (("what's an agm of group 31 weigh", "what about lithium"), "battery.chemistry", "lfp"),
        (
            ("lithium at minus 4, charge it?", "and if I carry it home where it's 16"),
            "ambient.temperature",
            16.0,
        ),
    ],
)
def test_a_later_turn_points_at_what_was_told(turns, fact, value):
    assert understood(*turns)[fact] == value
