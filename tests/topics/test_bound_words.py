"""Whole messages in which a number or a word stands beside two things and belongs to one of them."""

from __future__ import annotations

import pytest

from service.reply import Answer
from service.say import NB
from tests.talks import talk


def answers(text: str) -> tuple[Answer, ...]:
    """The answers to the last of these turns, parted by " >> "."""
    return talk(*text.split(" >> ")).answers


@pytest.mark.parametrize(
    ("text", "topic", "verdict", "told"),
    [
        # a "no" after its noun denies it
        ("240 A 12 V, 16 ft each way, 105C, engine room: no. AWG?", "cable-size", "information", "Use 1 AWG"),
        ("240 A 12 V, 16 ft each way, 105C, engine room: yes. AWG?", "cable-size", "information", "Use 1/0 AWG"),
        ("240A 12V 16 ft e/w 105C, thru eng room - no. awg", "cable-size", "information", "Use 1 AWG"),
        ("gel: no, AGM: yes. 12.4 V rested, how full?", "rest-voltage", "marginal", "for your AGM battery"),
        ("340 A thruster, no 24 V aboard, 12 V only, 900 cca agm. ok?", "run-check", "yes", "about 9.2 V"),
        # amp-hours to put back tell the charge
        ("60 Ah to put back, 150 Ah AGM, 20 A charger: hours?", "charge-time", "information", "from 60 % to full"),
        ("how long to get 45 Ah back into a 90 Ah gel, 15 A", "charge-time", "information", "from 50 % to full"),
        ("LFP 160 Ah is 80 Ah down, 40 A charger, how long", "charge-time", "information", "from 50 % to full"),
        ("2 x 110Ah AGM parallel, 44 Ah gone, 20 A charger, how long", "charge-time",
         "information", "from 80 % to full"),
        ("2 x 110Ah AGM in series, 44 Ah gone, 20 A charger, how long", "charge-time",
         "information", "from 60 % to full"),
        # so many times some seconds are bursts, and may be counted in trips
        ("240A, 100Ah wet, 6 x 12s bursts a trip. trips to half?", "run-time", "information", "3 trips of 6 bursts"),
        ("150 A on a 90 Ah gel, 20 x 3 sec per docking, how many dockings", "run-time", "information", "10 trips of"),
        ("how many trips to 50 %: 12 pushes of 5 s each, 200 A, 2 x 95Ah AGM parallel", "run-time", "information",
         "18 trips of 12 bursts of 5 seconds"),
        ("how many days does a 100 Ah agm last, 8 x 10 s pushes a day at 200 A", "run-time", "information",
         "6 days of 8 bursts"),
        ("3 x 30s runs at 200A, 95Ah wet, long enough?", "run-time", "yes", "3 bursts of 30 seconds take 90 seconds"),
        ("two 90s agm in parallel, 260 A, how long", "run-time", "information", "about 12 minutes"),
        # numbers as they are spoken off a float or a meter
        ("hydrometer floats at twelve forty, 10 C in the garage, wet. how full", "specific-gravity", "yes", "1.228"),
        ("the float stands at twelve fifteen, 40F, wet cells, how full", "specific-gravity", "marginal", "1.199"),
        ("each cell twelve fourteen to twelve forty, 80F", "specific-gravity", "marginal", "1.214"),
        ("meter says twelve eleven on the wet one, rested. how full", "rest-voltage", "no", "12.11 V"),
        # years of a battery
        ("our gel is seven this summer, fine so far, husband wants it out", "replacement", "marginal", "at 7 years"),
        ("the wet ones were four in may. keep?", "replacement", "marginal", "at 4 years"),
        ("agms, eight last winter. bin them?", "replacement", "no", "at 8 years"),
        # a figure that is widened or taken back afterwards
        ("wet battery, four years old, four or six, keep it?", "replacement", "no", "at 6 years"),
        ("gel, seven years, could be nine. replace?", "replacement", "no", "at 9 years"),
        ("agm is 5, no 8 years old. replace?", "replacement", "no", "at 8 years"),
        ("thruster takes 200 amps, maybe 240. 580 cca agm, enough?", "run-check", "marginal", "drops to about 8.9 V"),
        ("100 Ah agm, maybe 2 of them, thruster 150 A. how long", "run-time", "information", "about 26 minutes"),
        # settings that a charger offers are not what the battery is
        ("only modes on it are flooded and agm. batteries are gel, been on agm since june. keep going?",
         "charger-setting", "no", "the AGM setting goes up to 14.8 V, and a gel battery takes 14.4 V at most"),
        ("my charger just does agm or wet. i've got gels", "charger-setting", "no", "None of them"),
        ("the charger gives gel and wet only. batteries are agm, i use the wet one. fine?", "charger-setting",
         "marginal", "made for another kind, as all of yours are"),
        ("charger has agm and wet settings. we have agm, its on wet. fine?", "charger-setting", "marginal",
         "use the AGM one"),
        ("charger settings are agm and wet, mine's an agm battery, set on agm. fine?", "charger-setting", "yes",
         "the AGM setting, 14.2 to 14.8 V in absorption, suits"),
        # another battery like the first, and when each was bought
        ("my 90ah agm is from 2020 and last month i bought another just like it. parallel ok?", "bank-wiring",
         "marginal", "an old and a new battery work in parallel"),
        ("my 90ah agm is from 2020 and i bought another just like it yesterday. parallel ok? >> and in series?",
         "bank-wiring", "no", "an old and a new battery must not be joined in series"),
        ("one 80ah gel, fitted in 2021, and its twin just bought. series for 24 V?", "bank-wiring", "no",
         "an old and a new"),
        ("one 110ah wet and another the same, both bought in may. parallel?", "bank-wiring", "information", "220 Ah"),
        ("two 100ah agms bought last week. parallel?", "bank-wiring", "information", "200 Ah"),
        # of two case sizes one is the place, whichever is named first
        ("the tray was made for a group 27, they only stock 31s. will it go in?", "group-size", "no",
         "a group 31 does not fit in the place of a group 27"),
        ("battery box takes a 24. could i use a group 27", "group-size", "no", "a group 27 does not fit"),
        ("hold-down is for a 31, offered a group 27, ok?", "group-size", "yes", "a group 27 is no larger"),
        ("will the tray take a group 31 instead of a 27", "group-size", "no", "a group 31 does not fit"),
        ("group 31 where a 27 stood, how much heavier", "weight", "information",
         "group 31 is heavier: usually 27 to 34 kg, a group 27 22 to 29 kg"),
        # what is no motor takes no jump of current, and is no thruster
        ("toaster 1200 W on the inverter, 12 V 100 Ah lithium, BMS 100 A. will it do?", "run-check", "yes",
         "allows 100 A, and your load takes 100 A."),
        ("kettle 2200 watts off a 12v 200ah lithium, will it take that", "run-check", "needs-facts",
         "your load draws 183 A: the label decides"),
        ("2400 W inverter, 12 V, lithium 200Ah, bms 150 A. enough?", "run-check", "no", "and your load draws 200 A"),
        ("inverter 1000 W, 12 V, two 400 cca wets in parallel, enough?", "run-check", "yes", "12.0 V under that load"),
        ("vacuum cleaner 1000 W, 12 V 200 Ah lithium, BMS 200 A. ok?", "run-check", "yes", "83.3 A and 125 A at first"),
        # what is supposed in one question is not told for the other
        ("3 gels, full, laid up 120 days at 5 C. will they last, and can they freeze at -20 C if they drop to half?",
         "freeze-point", "yes", "not freeze at -20 °C (-4 °F): it is about 50 % full"),
        ("3 gels, full, laid up 120 days at 5 C. will they last, and can they freeze at -20 C if they drop to half?",
         "storage", "yes", "charged full, your gel battery is still 95 % full after 120 days at 5 °C"),
        ("2 agm stored full 100 days at 8 C. fine? do they freeze at -18 if they fall to 40%?", "freeze-point",
         "marginal", "about 40 % full"),
        ("wet battery reads 12.6 V rested. if it went down to a quarter, would it freeze at -15?", "freeze-point",
         "no", "25 % full"),
        ("gel battery, does it freeze at -15 C once it sinks to half", "freeze-point", "yes", "about 50 % full"),
        ("agm, full. does it freeze at -30?", "freeze-point", "yes", "it is full"),
        # a converter stands between two circuits, each with its own fuse
        ("12>24 conv 15A out, fuse?", "fuse-size", "information", "60 A at the 12 V battery and 20 A at the 24 V one"),
        ("24 to 12 V converter, 20 A out, fuse size?", "fuse-size", "information",
         "20 A at the 24 V battery and 25 A at the 12 V one"),
        ("12 V 20 A dc-dc charger to a 12V AGM, what fuse each end", "fuse-size", "information",
         "40 A at the battery it takes from and 25 A at the one it charges"),
        # volts that differ are told of packs of another lithium as well
        ("four scooter NMC packs here, 36v, could they run the sturgeon?", "run-check", "no",
         "36 V packs do not suit the Sturgeon, which takes 24 V"),
        ("two e-bike batteries of 36 V each, good for the Pike?", "run-check", "no", "which takes 12 V"),
        ("home made NMC pack 36V 20Ah, run a 12 V thruster of 100 A?", "run-check", "no", "36 V packs"),
        ("lipo pack 24V, for the sturgeon, ok?", "run-check", "needs-facts", "not of the iron phosphate kind"),
        # cranking amps held against CCA beside another question
        ("is 700 mca the same as 700 cca, and will it run the Minnow?", "run-check", "yes", "your 560 CCA battery"),
        ("is 700 mca the same as 700 cca, and will it run the Minnow? >> and the pike?", "run-check", "no",
         "your 560 CCA battery drops"),
        ("750 MCA on the label, is that the same as CCA? and will it do for a 150 A thruster", "rating-convert",
         "information", "No: 750 cranking amps"),
        ("CCA 700, MCA 800 on the label, pike ok?", "run-check", "yes", "your 700 CCA battery"),
        # years of a guarantee are no age, and a part of the time that is told twice is one
        ("guaranteed for 6 years, my agm. replace it?", "replacement", "needs-facts", "how old the battery is"),
        ("it came with a 2 year warranty and is 6 years old, wet. replace?", "replacement", "no", "at 6 years"),
        ("thruster on half the time, 4 s on 4 s off, 150 A, 100Ah agm. how long?", "run-time", "information",
         "bursts of 4 seconds"),
        # a second temperature without its unit
        ("700 CCA wet at -10 C, and at 5 above?", "cold-cranking", "information", "and 875 A at 5 °C"),
        # limits that are only quoted
        ("Minnow, 25 mm2, 4 m. one book says 3 %, another says 10 %. what do I lose, which counts?", "voltage-drop",
         "yes", "5.7 %); 10 % counts for a motor, 3 % is for electronics"),
        ("do you go by 3% or 10% on an anchor windlass", "voltage-drop", "information", "10 % counts for a windlass"),
        ("plotter wire, is it 3 or 10 percent", "voltage-drop", "information", "3 % counts for electronics"),
        ("Minnow, 25 mm2, 4 m, I allow 3 % loss. what do I lose?", "voltage-drop", "no", "over the limit of 3 %"),
    ],
)  # fmt: skip
def test_the_number_is_the_right_things(text, topic, verdict, told):
    found = next(item for item in answers(text) if item.topic == topic)
    assert found.verdict == verdict
    assert told in found.headline.replace(NB, " ")


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        # what runs what is told, how long is asked
        ("one 95ah gel feeds the stern thruster, it pulls 160. how many 5 second goes till half", ["run-time"]),
        ("two 100s agm in parallel run the thruster, 200 A. how long", ["run-time"]),
        ("a second 100ah agm powers the thruster, 180 a. minutes to half?", ["run-time"]),
        ("can two 100s agm run the thruster, 200 A, and how long", ["run-check", "run-time"]),
        (
            "750 MCA on the label, is that the same as CCA? and will it do for a 150 A thruster",
            ["rating-convert", "run-check"],
        ),
        ("one 100ah agm, thruster 180 amps, does it run, and how long?", ["run-check", "run-time"]),
    ],
)
def test_only_what_is_asked_is_answered(text, topics):
    assert [item.topic for item in answers(text)] == topics


@pytest.mark.parametrize("text", ["kettle 2400 W at 12 V on a 200 Ah lithium, BMS 150 A. enough?"])
def test_no_thruster_is_spoken_of_where_another_load_is_named(text):
    found = next(item for item in answers(text) if item.topic == "run-check")
    told = [found.headline, *(step.say for step in found.working), *(item.say for item in found.cautions)]
    assert not [words for words in told if "thruster" in words.replace("the thruster's, charger's or battery's", "")]


def test_the_least_cca_counts_what_the_cable_takes():
    found = next(item for item in answers("Pike, 70 mm2 6 m one way, 655 CCA wet. ok?") if item.topic == "run-check")
    change = next(item for item in found.would_change if item.fact == "battery.cca")
    assert found.verdict == "marginal"
    assert change.value < 700
    enough = answers(f"Pike, 70 mm2 6 m one way, {change.value:g} CCA wet. ok?")
    assert enough[0].verdict == "yes"
