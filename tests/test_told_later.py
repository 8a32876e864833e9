"""Figures of a later message that its own few words leave open: what was told before settles them."""

from __future__ import annotations

from typing import Any

import pytest

from tests.talks import talk


def told(*turns: str) -> dict[str, Any]:
    """The facts in force after the last turn, of the first of each kind."""
    answers = talk(*turns).answers
    return {item.fact: item.value for answer in answers for item in answer.understood if item.of == 1}


@pytest.mark.parametrize(
    ("turns", "fact", "value"),
    [
        (("3 A drain with all off, 90 Ah, how many days?", "a tenth?"), "drain.current", 3.0),
        (
            ("60 mA tracker, everything off, 100 Ah. Days to half?", "found another 0.1 A, so 0.16"),
            "drain.current",
            0.16,
        ),
        (
            ("0.3 A drain with all off, 90 Ah, how many days?", "found another 0.2 A, altogether 0.5 A"),
            "drain.current",
            0.5,
        ),
        (("studs are M10, which lug?", "5/16?"), "terminal.size", "5/16"),
        (("studs are M10, which lug?", "three-eighths?"), "terminal.size", "3/8"),
        (("30 W panel, 3 h sun, 50 mA alarm, ok?", "in december, one hour"), "solar.sun_hours", 1.0),
        (("30 W panel, 3 h sun, 50 mA alarm, ok?", "two hours of lamps at 3 A then?"), "solar.sun_hours", 3.0),
        (("drops to 9.8 when the thruster runs, past it?", "12.6 before, 190 amps"), "reading.voltage", 12.6),
        (("fridge and plotter 6 A, 100 Ah AGM, how long?", "8 amps when the pump kicks in"), "load.current", 8.0),
        (("fuse 4 120a on 35mm2", "if 50?"), "load.current", 120.0),
        (("thruster 200 A on 90 Ah AGM, enough?", "300 when it kicks in"), "load.peak", 300.0),
        (("12 V windlass 90 A, what cable?", "8 metres each way, that's 16 there and back"), "load.current", 90.0),
        (("12 V windlass 90 A, what cable?", "it is 8 metres, 16 all told"), "cable.length", 8.0),
        (("12 V windlass 90 A, what cable?", "16 there and back so 8 metres one way"), "cable.length", 8.0),
        (("12 V windlass 90 A, what cable?", "8 metres, and 110 A"), "load.current", 110.0),
        (("is 720 CCA enough for the bow thruster?", "no idea", "there's a label. 190"), "load.current", 190.0),
        (("is 720 CCA enough for the bow thruster?", "no idea", "1900"), "load.power", 1900.0),
        (("is 720 CCA enough for my fridge?", "no idea", "60"), "load.power", 60.0),
        (("converter from 24 to 12 V, isolated, fine?", "18 A out. what's lost on the 24 side"), "bank.voltage", 12.0),
        (
            ("converter from 12 to 24 V, isolated, fine?", "8 A out, the twelve side gives how much"),
            "bank.voltage",
            24.0,
        ),
        (("two 12 V 80 Ah LFP in series for 24 V, may I?", "2 in series, the lid says"), "battery.max_in_series", 2.0),
        (("two 12 V 80 Ah LFP in series for 24 V, may I?", "and 3 in series?"), "battery.count", 3.0),
        (
            ("160 A windlass, 225 A fuse on 50 mm2, ok?", "and the sister ship, someone fitted 400"),
            "fuse.rating",
            400.0,
        ),
        (("160 A windlass, 225 A fuse on 50 mm2, ok?", "point 6: they've put in 350."), "fuse.rating", 350.0),
        (("160 A windlass, 225 A fuse on 50 mm2, ok?", "they've put in 70"), "fuse.rating", 225.0),  # a cable
        (("220 A thruster, what fuse?", "1/0 with 105 printed along it"), "cable.insulation", 105.0),
    ],
)
def test_a_later_figure_is_what_the_talk_makes_of_it(turns: tuple[str, ...], fact: str, value: object) -> None:
    assert told(*turns)[fact] == (pytest.approx(value) if isinstance(value, float) else value)


@pytest.mark.parametrize("number", ["2.2", "3"])
def test_a_motor_s_power_without_its_unit_is_no_figure(number: str) -> None:
    reply = talk("is 720 CCA enough for the bow thruster?", "no idea", number)  # kilowatts, or horsepower
    assert [item.verdict for item in reply.answers] == ["needs-facts"]


def test_volts_before_a_load_are_no_age_that_was_asked_for() -> None:
    assert "battery.age" not in told("drops to 9.8 when the thruster runs. Past it?", "12.6 before, 190 amps, 700 CCA")


@pytest.mark.parametrize(
    ("again", "rest", "loaded"),
    [
        ("Filled it up, left it till it showed 12.7, and put 350 A on it once more: 10.1", 12.7, 10.1),
        ("Night on the charger, 12.8 before this time and 10.9 with the same load on", 12.8, 10.9),
        ("today it rests at 12.6", 12.6, 9.2),
    ],
)
def test_a_test_that_is_done_again_has_its_own_readings(again: str, rest: float, loaded: float) -> None:
    first = "With 350 A from the tester my 700 CCA AGM sank to 9.2 V after 15 s, and it had rested at 12.25. Dead?"
    known = {item.fact: item.value for item in talk(first, again).answers[0].understood}
    assert known["reading.voltage"] == rest
    assert known.get("reading.load_voltage", loaded) == loaded


@pytest.mark.parametrize(
    ("last", "days"),
    [("as it turns out she'll stand for 4 months", 121.75), ("that turned out to be 15 weeks", 105.0)],
)
def test_a_stay_that_turns_out_longer_is_no_age(last: str, days: float) -> None:
    found = told("away for 6 weeks, AGM, charged full, all off. Is that fine?", last)
    assert found["storage.time"] == pytest.approx(days)
    assert "battery.age" not in found


@pytest.mark.parametrize(
    "last",
    [
        "he thinks one will do it. Will it?",
        "could just one cope?",
        "can we make do with the one?",
        "one alone, enough?",
    ],
)
def test_one_of_two_batteries_is_weighed_alone(last: str) -> None:
    assert told("Will two 700 CCA gels in parallel turn a thruster of 300 A?", last)["battery.count"] == 1.0


@pytest.mark.parametrize("first", ["two 90 Ah gels in parallel, which charger?", "two 90 Ah gels, 20 A charger, ok?"])
def test_one_charger_is_no_battery(first: str) -> None:
    assert told(first, "will one do?")["battery.count"] == 2.0


def test_a_scale_put_right_goes_on_with_the_cold_that_was_asked_about() -> None:
    turns = ("how many amps does 620 CCA give at minus 5", "C or F? Fahrenheit, I meant")
    (found,) = talk(*turns).answers
    assert found.topic == "cold-cranking"
    assert {figure.name: figure.value for figure in found.figures}["cranking_current"] == pytest.approx(597.9, abs=0.1)
