"""Everyday wording: numbers in words, lists of readings, what is not known, what came in another's place."""

from __future__ import annotations

import pytest

from grammar import read
from tests.topics.test_as_told import after, answer, figure


@pytest.mark.parametrize(
    ("text", "topic", "verdict"),
    [
        ("24 V bank, charger with two outputs, the leaflet doesn't tell whether they are isolated. One on each?",
         "charger-banks", "needs-facts"),
        ("Are the outputs isolated? Two of them, and my bank is 24 V.", "charger-banks", "needs-facts"),
        ("if both outputs are isolated may I put one on each battery of the 24 V pair?", "charger-banks", "yes"),
        ("Put a LiFePO4 in where the AGM used to be. Leave the charger on wet?", "charger-setting", "no"),
        ("the alternator charges the battery directly; if I change the gel for lithium, is that still fine?",
         "charger-setting", "needs-facts"),
        ("It is minus 4 in the shed. May I leave my 10 A charger on the LiFePO4?", "charger-setting", "no"),
        ("wet battery at 11.9 V and it is -13 in the boat, should I put it on charge?", "freeze-point", "no"),
        ("flooded, 12.6 V, at -10 now. ok to charge, or can it freeze?", "freeze-point", "yes"),
        ("Five 90 Ah LFPs in parallel, all new. Okay?", "bank-wiring", "no"),
        ("can two 12 V lithiums of 100 Ah go in series?", "bank-wiring", "needs-facts"),
        ("two 110 Ah gels in parallel, what does that make?", "bank-wiring", "information"),
        ("a 24 V windlass and one 12 V 90 Ah agm of 700 CCA, does it run?", "run-check", "no"),
        ("The battery isn't strapped and slides about in the locker. A problem?", "mounting", "no"),
        ("Rested since Friday, with caps: 12.7, 12.6 and the bow one 11.8. Good?", "rest-voltage", "no"),
        ("Float readings today: 1.260 1.265 1.255 1.195 1.260 1.265. All right?", "specific-gravity", "no"),
        ("load test at 400 A held 10.0 from 12.7, 800 CCA, 20 C. Time for a new one?", "replacement", "yes"),
        ("our agms have their sixth birthday in June, new ones?", "replacement", "marginal"),
        ("all negatives go to one busbar, engine battery apart from the 24 V bow bank, non-isolated converter ok?",
         "dc-dc", "yes"),
        ("is an eighty amp fuse ok on number eight wire, the winch takes sixty amps", "fuse-size", "yes"),
        ("charger holds 14.7 V in absorption, good for my battery?", "charger-setting", "needs-facts"),
        ("lithium on a charger fixed at 14.4 V that then drops to 13.5, no desulphating. Fine?", "charger-setting",
         "yes"),
        ("windlass 100 A, 35 mm2, 105 C cable, fuse at the battery 250 A. Would you pass it?", "fuse-size", "marginal"),
        ("100 Ah lithium, BMS 150 A peak 300 A, will it run the Minnow?", "run-check", "yes"),
        ("The thruster (160 A) hangs on the same accumulator as the starter of the engine, 640 CCA. Enough?",
         "run-check", "marginal"),
        ("Bow thruster 170 A shares the battery with the engine's starter, 800 CCA. ok?", "run-check", "marginal"),
        ("My 160 A thruster has its own battery, 640 CCA, not the same battery as the starter. ok?",
         "run-check", "yes"),
        ("New fuse, new relay, still at the moter only 7.4 V and the battery says 11.9, same moment. Thruster 165 A.",
         "load-voltage", "no"),
        ("two 100 Ah lithiums in parallel, each may give 60 A. Minnow?", "run-check", "needs-facts"),
        ("May I bypass the BMS for one race?", "hazard", "no"),
        ("three 12 V batteries of 90 Ah, can they make 24 V?", "bank-wiring", "no"),
        ("is it bad to charge my lithium when it is minus 4 aboard?", "charger-setting", "no"),
        ("The fuse of the windlass went again, 150 A. A 250 instead? 25 mm2, 105 C, motor 100 A.", "fuse-size", "no"),
        ("CCA at -12C of a 700 CCA battery?", "cold-cranking", "information"),
        ("fuse is gone; a five hundred amp one lies here, 2/0 cable, thruster runs at 240 amps. Put it in?",
         "fuse-size", "no"),
        ("one for the engine, one for the lights, one for the bow. How many outputs? Mine is a two-bank charger.",
         "charger-banks", "no"),
    ],
)  # fmt: skip
def test_the_verdict_on_what_is_plainly_told(text, topic, verdict):
    assert answer(text, topic).verdict == verdict


@pytest.mark.parametrize(
    ("text", "topic", "name", "value"),
    [
        ("what gauge for a winch of 80 A, 12 V, 18 ft each way?", "cable-size", "gauge", "4"),  # a motor: 10 %
        ("flooded 12.28 / 14h rest, soc?", "rest-voltage", "state_of_charge", pytest.approx(54.76, abs=0.1)),
        ("a five hundred c c a battery, thruster of 150 amps, will it run", "run-check", "required_cca",
         pytest.approx(375)),
        ("with the Minnow pushing I read 11.9 at the posts, 600 CCA. Good?", "load-voltage",
         "lowest_acceptable_voltage", pytest.approx(11.4)),
        ("12.7 at rest, 9.0 with the pike on, is the battery ok", "load-voltage", "lowest_acceptable_voltage", 9.6),
        ("agm 12.8 resting and 9.0 with the pike on. is it good?", "load-voltage", "lowest_acceptable_voltage", 9.6),
        ("reads 12.7 resting and 9 with thruster on is it still good", "load-voltage", "lowest_acceptable_voltage",
         9.6),
        ("Two flooded, full and disconnected. Frozen at -25?", "freeze-point", "freezing_temperature",
         pytest.approx(-59.4)),
        ("2 AWG in mm2? ampacity I know", "rating-convert", "area", pytest.approx(33.62, abs=0.1)),
        ("for a fish finder of 1 A and a pump of 2 A, both for 8 hours, how big in lithium?", "bank-size",
         "required_capacity", pytest.approx(31.0, abs=0.1)),
        ("600 CCA @ -5 C? and = ? MCA", "rating-convert", "ca", 750.0),
        ("9A 100Ah agm runtime", "run-time", "time_to_usable_limit", pytest.approx(305, abs=5)),
        ("one for the engine, one for the fridge and one for the bow: how many charger outputs?", "charger-banks",
         "charger_outputs", 3.0),
    ],
)  # fmt: skip
def test_the_figures_of_what_is_plainly_told(text, topic, name, value):
    assert figure(answer(text, topic), name) == value


@pytest.mark.parametrize(
    ("turns", "topic", "verdict"),
    [
        (("500 CCA, 160 A thruster, two in parallel: ok?", "may they be of different age, one is 4 years old"),
         "bank-wiring", "marginal"),
        (("what fuse for a windlass of 100 A at 12 V?", "the cable is number two, 9 ft each way. what do I lose?"),
         "voltage-drop", "yes"),
        (("105 Ah AGM, 50 A load, how long?", "and a lithium one of the same size?"), "run-time", "information"),
        (("Minnow on the engine battery, 700 CCA, ok?", "what if it is a separate one of 600 cca"), "run-check", "yes"),
        (("two 12 volt 105s in parallel, what do I get?", "and four of them, two by two, for 24 volts?"),
         "bank-wiring", "information"),
    ],
)  # fmt: skip
def test_a_later_turn_plainly_told(turns, topic, verdict):
    assert after(turns, topic).verdict == verdict


def topics(text: str) -> list[str]:
    from service.leadsman import default_desk

    return [item.topic for item in default_desk().ask(text).answers]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Will a 750 CCA battery run a 220 amp thruster? 70 mm2 cable, 4 m one way.", ["run-check"]),
        ("160 A thruster, number two wire marked 105, 20 ft each way. What do I lose?", ["voltage-drop"]),
        ("Can it run the Minnow all on its own? 420 CCA flooded.", ["run-check"]),
        ("We dropped a new LiFePO4 in where the wet one was. What setting?", ["charger-setting"]),
        ("Last year a lithium was dropped on the quay and the yard people fetched it. How long does my 100 Ah one "
         "run a 20 A load?", ["run-time"]),
        ("Wets in the cold shed for 4 months, full, nothing connected. How often should I look at them?", ["storage"]),
        ("Lay-up of a lithium in a garage that never freezes: at what charge, and how often to look?", ["storage"]),
        ("The AGM is 5 years old, buy another? And is there a kind that wants less looking after?",
         ["replacement", "battery-type"]),
        ("Wet battery at 12.3 volts, nights of minus 16. Could the frost get it?", ["freeze-point"]),
        ("2 x 95 Ah gel in series: chgr amps, absorb volts", ["charger-size", "charger-setting"]),
        ("sg 1.240 all cells: soc, freeze c", ["specific-gravity", "freeze-point"]),
        ("600 CCA, a starting battery kept just for a 90 A thruster, ok? Which fuse?", ["run-check", "fuse-size"]),
        ("sick thx mate", ["unclear"]),
        ("It's white and has two posts, 12.6 V rested. Good?", ["rest-voltage"]),
    ],
)  # fmt: skip
def test_nothing_is_answered_that_was_only_told(text, found):
    assert topics(text) == found


@pytest.mark.parametrize(
    ("text", "fact", "value"),
    [
        ("no idea if mine is AGM or gel, 12.4 rested", "battery.chemistry", None),
        ("not sure if it is a gel or an agm, reads 12.5", "battery.chemistry", None),
        ("the lithium stays on board till May at 60 percent", "battery.chemistry", "lfp"),
        ("the switch stays on gel", "charger.setting", "gel"),
        ("what on earth is an a g m", "battery.chemistry", "agm"),
        ("Sturgeon, 2x 12v 640cca ser", "bank.layout", "series"),
        ("how long do lights and phone charging, 2 amps, last on 75 Ah", "load.current", 2.0),
        ("engine pushing us along, battery 12.6 at rest", "reading.voltage", 12.6),
        ("Pike turning: 11.9 on the posts", "reading.load_voltage", 11.9),
        ("the meter says twelve point four two, its the acid one", "reading.voltage", 12.42),
        ("is 5 C there and minus ten at night", "ambient.temperature", 5.0),
    ],
)
def test_what_is_read(text, fact, value):
    stated = {item.fact: item.value for item in reversed(read(text, models=("Sturgeon", "Pike")).stated)}
    assert stated.get(fact) == value


def test_of_two_kinds_the_lives_of_both_are_told():
    head = answer("wet or AGM for the bow, and how many years should I expect of each?", "replacement").headline
    assert "3 to 5" in head
    assert "4 to 7" in head
