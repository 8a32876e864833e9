"""Later turns that ask of the next part, of another size, or of what was told two turns before."""

from __future__ import annotations

import pytest

from tests.talks import talk


def plain(text):
    return text.replace("\u00a0", " ")


STEP_UP = "dc-dc 12 to 24, 25 A out, cable and fuse on the 12 V side, 5 m"
TIRED = "a lithium of 90 Ah, the bow thruster stops after 4 seconds"
WORN_FUSE = "the Minnow's fuse keeps blowing, 50 mm2"
LITHIUM_PAIR = "Will two 100 Ah lithiums in parallel, 200 A each and 400 A peak, run a 260 A thruster?"
FLOATLESS = "AGM of 100 Ah, the charger puts out 14.4 V, ok?"


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "says"),
    [
        # another cable tried
        ((STEP_UP, "10 mm2 then?"), "cable-size", "no", "over the limit of 3 % for a charger"),
        (("dc-dc charger 30 A, 7 m to the bow", "would 10 mm2 do"), "cable-size", "no", "over the limit of 3 %"),
        (("150 A thruster on 24 V, 12 m, which cable?", "and what would I lose in 70 mm2"), "voltage-drop", "yes",
         "70 mm² loses"),
        # what a cable may carry
        (("95 mm2 how many amps",), "cable-size", "information", "95 mm² may carry"),
        (("50 mm2 in AWG?", "and its ampacity"), "cable-size", "information", "may carry 245 A with 105 °C"),
        (("50 mm2 in AWG?", "and its ampacity", "in the engine space"), "cable-size", "information", "208 A"),
        (("50 mm2 in AWG?", "and its ampacity", "280 A on it ok?"), "cable-size", "no", "and 280 A run in it"),
        (("50 mm2 in AWG?",), "rating-convert", "information", "1/0 AWG"),
        (("thruster 300 A, 15 ft, 75 C cable in the engine space, 2 x 2/0 ok?",), "cable-size", "no",
         "for each pole"),
        (("minnow, 5 m, 16 mm2, what drop?", "what should it be then"), "cable-size", "no", "fit"),
        (("95 mm2 for the Minnow over 4 m, too thick?",), "cable-size", "yes", "No: 95 mm²"),
        # what a fuse that blew asks for
        (("what fuse for a Sturgeon, cable is 70 mm2", "it blew, can I put a bigger one in"), "fuse-size",
         "needs-facts", "No larger fuse until the cause is known"),
        (("fuse for a Pike, 70 mm2 of 105 C", "it blew today, may I go a size up?"), "fuse-size", "no",
         "No larger fuse until the cause is known; then fit a 350 A fuse"),
        (("fuse for a Pike, 70 mm2 of 105 C", "the old one blew, which size now"), "fuse-size", "information",
         "Fit a 350 A"),
        ((WORN_FUSE, "it is a 175", "can I put a 250 in"), "fuse-size", "no",
         "No larger fuse until the cause is known"),
        ((WORN_FUSE, "it is a 175"), "fuse-size", "yes", "that it blows tells of a fault"),
        (("50 A breaker that keeps tripping", "a bigger one?"), "fuse-size", "needs-facts",
         "No larger breaker until the cause is known"),
        (("Which fuse for 120 A on 35 mm2?", "what about a 200 A breaker"), "fuse-size", "yes", "A 200 A breaker"),
        (("fuse for the Pike on 2/0?", "is the bms not enough"), "fuse-size", "no", "does not replace the fuse"),
        (("fuse for the Pike on 2/0?", "where does it go?"), "fuse-size", "information", "within 7 in"),
        (("110 Ah AGM, 60 W panel, 0.1 A drain, enough?", "fuse for the panel?"), "fuse-size", "needs-facts",
         "the panel's own amps"),
        # the cold is nothing to a fuse
        ((LITHIUM_PAIR, "and its fuse", "at -6 C?"), "run-check", "no", "at -6 °C"),
        (("70 mm2 for the Pike, 5 m, ok?", "and if it's freezing"), "cable-size", "yes", "70 mm² loses"),
        # a battery and its load told after a choice of kinds
        (("Is a dual-purpose of 100 Ah good enough?", "it's for a Pike"), "run-check", "needs-facts", "650 CCA"),
        (("AGM or lithium?", "ours is a Pike", "the label of the 80 Ah lithium says 150 A continuous"), "run-check",
         "no", "allows 150 A"),
        (("AGM or lithium?", "ours is a Pike"), "battery-type", "information", "AGM"),
        (("720 MCA in CCA?", "is that enough for the Pike then"), "run-check", "no", "650 CCA"),
        ((TIRED, "it's a Pike"), "run-check", "no", "gives about 90 A"),
        (("Will a 100 Ah lithium run a 240 A thruster?", "what bms then"), "bank-size", "information", "240 A"),
        # chargers
        (("Diode splitter or DC-DC for start and house?", "house is lithium 200 Ah", "alternator 80 A", "how big?"),
         "dc-dc", "information", "Up to 36 A"),
        (("20 A charger for 200 Ah wet, ok?", "and a 200 Ah lithium instead", "same charger ok"), "charger-setting",
         "needs-facts", "lithium setting"),
        (("12 A charger for 100 Ah AGM, ok?", "could I leave it on all winter"), "charger-setting", "needs-facts",
         "only a charger that drops to float"),
        ((FLOATLESS, "can I leave it plugged in over the winter"), "charger-setting", "needs-facts",
         "suits only as a stage that ends"),
        ((FLOATLESS, "can I leave it plugged in over the winter", "it drops to float by itself"), "charger-setting",
         "yes", "as a stage that ends by itself"),
        (("50 A charger for 80 Ah gel, ok?", "the alternator of 90 A straight on it?"), "dc-dc", "information",
         "Up to 16 A"),
        # panels
        (("60 W panel, 110 Ah AGM, 0.1 A drain, enough?", "twice that panel"), "solar", "yes", "a 120 W panel"),
        (("60 W panel, 110 Ah AGM, 0.1 A drain, enough?", "add another 40 W panel"), "solar", "yes", "a 100 W panel"),
        (("60 W panel, 110 Ah AGM, 0.1 A drain, enough?", "and an 80 W panel?"), "solar", "yes", "an 80 W panel"),
        (("60 W panel, 110 Ah AGM, 0.1 A drain, enough?", "what panel then"), "solar", "yes", "15 W or more"),
        # what to do now
        (("Four 12 V 100 Ah lithiums in series, 48 V, ok?", "the maker says 2 in series at most", "so what now"),
         "bank-wiring", "no", "Take batteries of more volts"),
        (("Load tester 500 A on 650 CCA, 9.7 V, a pass?", "it had 12.3 before"), "load-voltage", "needs-facts",
         "does not count"),
        (("Load tester 500 A on 650 CCA, 9.7 V, a pass?", "it had 12.7 before"), "load-voltage", "yes", "9.7 V"),
    ],
)  # fmt: skip
def test_what_a_later_turn_goes_on_with(turns, topic, verdict, says):
    answers = talk(*turns).answers
    found = next((item for item in answers if item.topic == topic), None)
    assert found is not None, [(item.topic, item.headline) for item in answers]
    assert (found.verdict, says in plain(found.headline)) == (verdict, True), plain(found.headline)


@pytest.mark.parametrize(
    ("text", "topic", "verdict", "says"),
    [
        ("dc-dc of 50 A into 70 Ah gel, alternator 180 A, ok?", "dc-dc", "no", "more than 70 Ah of gel takes"),
        ("dc-dc of 30 A into 100 Ah flooded, alternator 130 A, ok?", "dc-dc", "marginal", "10 to 25 A suits it"),
        ("dc-dc of 25 A into 100 Ah flooded, alternator 130 A, ok?", "dc-dc", "yes", "it pulls about 28 A"),
        ("90 A alternator, lead starter battery on it, 100 Ah lithium in the bow, how big a dc-dc?", "dc-dc",
         "information", "Up to 40.5 A"),
        ("Fuse of 175 blew on the Minnow, 50 mm2, shall I put a 225 in?", "fuse-size", "no", "No larger fuse until"),
        ("A 150 A fuse blew on a 180 A thruster, 50 mm2, shall I put a 225 in?", "fuse-size", "yes", "a 225 A fuse"),
        ("Breaker or fuse for the Pike?", "fuse-size", "information", "Either, if it can break the bank's short"),
        ("Pike on a 90 Ah lithium, it cuts out after 4 seconds", "run-check", "no", "No: your 90 Ah lithium"),
        ("Pike on a 90 Ah lithium, would it cut out?", "run-check", "no", "Yes: your 90 Ah lithium"),
        ("Windlass of 100 A, 5 % loss allowed, 25 mm2 over 8 m, ok?", "cable-size", "no", "limit of 5 % that you set"),
        ("Windlass of 100 A, 25 mm2 over 8 m, ok?", "voltage-drop", "yes", "10 % for a windlass"),
        ("The locker is 20 cm high, does a group 31 go in?", "group-size", "no", "up to 240 mm high"),
        ("The locker is 30 cm high, does a group 31 go in?", "group-size", "information", "Group 31 is at most"),
        ("Which lug for 35 mm2 cable?", "terminals", "information", "made for 35 mm² cable"),
        ("Lug for 70 mm2 on an M8 stud?", "terminals", "information", "a lug for 70 mm² cable with a hole for M8"),
        ("My bow thruster is slower than last year", "load-voltage", "needs-facts", "Read the volts twice"),
        ("My bow thruster has lost its power, 24 V", "load-voltage", "needs-facts", "Read the volts twice"),
        ("AGM 100 Ah is always flat after 3 weeks, I measured 80 mA with all off", "standing-drain", "yes",
         "does not explain it"),
        ("AGM 100 Ah, 80 mA with all off, will it last 3 weeks?", "standing-drain", "yes", "Yes: 80 mA"),
        ("200 mA on a 100 Ah AGM; I disconnected the alarm and it is 80 mA now", "standing-drain", "information",
         "from your 100 Ah."),
        ("200 mA on a 100 Ah AGM, most of it the gas alarm", "standing-drain", "information", "leave it on"),
    ],
)  # fmt: skip
def test_what_is_told_at_once(text, topic, verdict, says):
    answers = talk(text).answers
    found = next((item for item in answers if item.topic == topic), None)
    assert found is not None, [(item.topic, item.headline) for item in answers]
    assert (found.verdict, says in plain(found.headline)) == (verdict, True), plain(found.headline)
