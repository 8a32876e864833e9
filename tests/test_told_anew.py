"""What a later turn makes of what was told before it, and what its figures mean by what was spoken of."""

from __future__ import annotations

import pytest

from tests.talks import on, plain, talk

SHARED = "charger for a 24 v series pair, its outputs share one negative"
DRAIN = "my wet 90 ah battery loses 0.6 amps with all off, days to half?"
LFP = "thruster 220 A on a 150 Ah lithium, continuous limit 180 A"
PAIR = "start battery wet 80 Ah, house battery agm 120 Ah, is a 20 A charger ok for both?"
COLD = "700 cca agm and a pike at -12 C, ok?"
FROST = "lead battery half charged, will it freeze at -22"
TWO = "agm 780 cca for the pike?"


@pytest.mark.parametrize(
    ("turns", "fact", "value"),
    [
        (("the fuse of my thruster has blown", "it was a 200"), "fuse.rating", 200.0),
        (("the fuse of my thruster has blown", "it was a 200", "shall i go up to 250 then"), "fuse.rating", 250.0),
        (("what fuse for my thruster", "it draws 200"), "load.current", 200.0),
        ((LFP, "peak 300 A"), "battery.peak_current", 300.0),
        ((LFP, "thruster peak 300 A"), "load.peak", 300.0),
        (("what about an 100 ah lithium for the minnow, 150 a continuous",), "battery.max_current", 150.0),
        (("lithium 130 ah, bms 160 A, no peak given, thruster 110 A",), "battery.max_current", 160.0),
        (("lithium 130 ah, bms 160 A, peak not known, thruster 110 A",), "battery.max_current", 160.0),
        ((DRAIN, "the radio off and it falls by 0.2"), "drain.current", 0.4),
        ((DRAIN, "minus the clock, 0.1"), "drain.current", 0.5),
        ((DRAIN, "pulled the heater fuse out, that was 0.4 of it"), "drain.current", 0.2),
        ((DRAIN, "it is 0.25 less now"), "drain.current", 0.35),
        ((DRAIN, "the radio off and it falls to 0.2"), "drain.current", 0.2),
        (("36 Ah agm, clock draws 80 mA all the time, days to half?", "it drops by 30"), "drain.current", 0.05),
        ((DRAIN, "minus the radio its 0.2"), "drain.current", 0.2),
        ((SHARED, "no wait, they are isolated"), "charger.isolated", True),
        ((SHARED, "isolated ones then"), "charger.isolated", True),
        ((SHARED, "so not isolated"), "charger.isolated", False),
        (("two 6 v 200 ah in series?", "four of them, 12 V"), "battery.nominal", 6.0),
        (("two 6 v 200 ah in series?", "four of them, 12 V"), "bank.layout", "series-parallel"),
        (("70 mm2 cable, an 80 amp fuse, 60 amps",), "load.current", 60.0),
        (("pike on a 700 cca wet, 9.2 while running", "that was at the motor, 11.1 at the posts"),
         "reading.load_voltage_at_load", 9.2),
        (("pike on a 700 cca wet, 9.2 while running", "that was at the motor, 11.1 at the posts"),
         "reading.load_voltage", 11.1),
        (("sturgeon on two 850 cca wets in series", "running 19.8 at the batteries"), "reading.load_voltage", 19.8),
    ],
)  # fmt: skip
def test_what_a_later_figure_is(turns, fact, value):
    told = {item.fact: item.value for answer in talk(*turns).answers for item in answer.understood if item.of == 1}
    assert told.get(fact) == (pytest.approx(value) if isinstance(value, float) else value)


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "says"),
    [
        (("starter batt 760 cca, turn a minnow?",), "run-check", "marginal", "without the power to start"),
        (("a starter battery of 760 cca, will it run a minnow?",), "run-check", "yes", "holds about"),
        (("must the thruster have its own battery or may i use the engine battery, 760 cca, minnow",),
         "run-check", "marginal", "without the power to start"),
        (("engine battery 760 cca agm for the minnow?", "then i save the money for a second battery?"),
         "run-check", "marginal", "without the power to start"),
        ((COLD, "and in august?"), "run-check", "yes", "holds about 9.3 V"),
        ((COLD, "and when it gets warm"), "run-check", "yes", "holds about 9.3 V"),
        ((COLD, "and with 800 cca?"), "run-check", "marginal", "8.8 V"),
        (("700 cca agm and a pike, ok?", "and if it's cold, say freezing?"), "run-check", "marginal", "8.7 V"),
        ((FROST, "it reads 11.8"), "freeze-point", "no", "it can freeze"),
        ((FROST, "and at -10?"), "freeze-point", "yes", "about 50 % full"),
        (("gel 80ah, how often to look at it in winter", "and if its half full", "ok its full. how often then"),
         "storage", "information", "every 90 days"),
        ((PAIR, "the house one is gel, not agm"), "charger-size", "yes", "wet-cell 80 Ah and gel 120 Ah"),
        ((PAIR, "the start one is gel, not wet"), "charger-size", "no", "80 Ah of gel"),
        (("24 v bank agm, the alternator gives 14.3 V at it, ok?",), "charger-setting", "needs-facts", "whole bank"),
        (("24 v bank agm, charger gives 14.3 V to each battery, ok?",), "charger-setting", "yes", "is inside"),
        ((TWO, "and a 90ah lithium instead?", "ok back to the agm"), "run-check", "yes", "780 CCA AGM"),
        ((TWO, "and a 90ah lithium instead?", "what about a gel of 500 cca"), "run-check", "no", "500 CCA gel"),
        (("minnow, 600 cca agm, 7.1 at the posts with it running, ok?", "is it worth buying lithium instead"),
         "battery-type", "information", "large currents"),
        (("two wets 12.6 both, a 100 ah and a 60 ah", "in series then"), "bank-wiring", "no", "100 Ah and 60 Ah"),
        (("two 12 v 95 ah of different ages, can i put them in series", "same age but one has 88 ah"),
         "bank-wiring", "information", "24 V and 88 Ah"),
        (("two agms in series for the sturgeon, 25.2 v rested", "12.6 on one and 12.6 on the other"),
         "rest-voltage", "yes", "second, 12.6 V"),
        (("my bow battery is from 2015, too old?", "it is a gel"), "replacement", "information", "from 2015"),
        (("60 mm run of 70mm2, minnow, ok?", "6 m i mean", "10.4 at the thruster and 11.7 at the battery, running"),
         "load-voltage", "no", "is lost between battery and motor"),
        (("my charger works on another lead. how long to charge a 95 ah agm at 20 A",), "charge-time", "information",
         "About 4.6 hours"),
        (("2/0 pair, 20 ft, 300 A at 24 v, ok?", "3 per pole"), "cable-size", "yes", "three of 2/0"),
        (("70mm2 for 5 m at 12 v, 240 A motor, loss?", "2 x 50 then"), "voltage-drop", "needs-facts", "two of 50 mm²"),
    ],
)  # fmt: skip
def test_what_a_later_turn_makes_of_it(turns, topic, verdict, says):
    found = talk(*turns).answers[0]
    assert (found.topic, found.verdict) == (topic, verdict)
    assert says in plain(found.headline)


def test_a_reading_of_a_later_day_has_rested_as_long_as_it_says_itself() -> None:
    turns = ("12.8 V half an hour after charging, AGM", "the following morning: 12.5")
    assert "reading.rest_time" not in {item.fact for item in on("rest-voltage", *turns).understood}
    mended = on("rest-voltage", turns[0], "no, 12.7")  # the same reading, put right
    assert "reading.rest_time" in {item.fact for item in mended.understood}
