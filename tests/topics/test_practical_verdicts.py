"""A practical question gets its practical verdict: may it be left, must I have it, which one fits, will it help.

Beside each stands a message that only looks alike.
"""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.reply import Answer
from service.say import NB


def told(text: str, topic: str) -> Answer:
    """The answer of one topic to a message."""
    return next(item for item in default_desk().ask(text).answers if item.topic == topic)


def opens(text: str, topic: str, verdict: str, first: str) -> None:
    """Asserts a verdict and how its headline begins."""
    found = told(text, topic)
    assert (found.verdict, found.headline.replace(NB, " ")[: len(first)]) == (verdict, first)


@pytest.mark.parametrize(
    ("text", "verdict", "first"),
    [
        ("Laying up for four months, gel bow battery. Must it be disconnected?", "yes", "Yes, disconnect it, charged"),
        ("Should I switch the isolator off for the winter? AGM.", "information", "Yes, isolator off and cables off"),
        ("We leave her for seven months, flooded. Should we disconnect the battery?", "marginal",
         "Yes, disconnect it, charged full: after 213 days it is down to 65 %"),
        ("Lithium in the bow, away for 3 months. Do I disconnect it?", "yes", "Yes, disconnect it, about half full"),
        ("Is it best to take the leads off over winter or leave them on?", "information", "Disconnect it, charged"),
        ("How do I disconnect the battery for winter?", "information", "Charge it full, take the cables off"),
        ("Does it go flat over the winter if I disconnect it? AGM full, 5 months", "yes", "No, but look every"),
        # without power, and not to be carried home
        ("On the hard Nov-Apr, flooded, no shore power. I can't carry them home. OK if disconnected?", "marginal",
         "Only just, so bring a charger there in between"),
        ("Ashore December to March, no shore power, AGM. All right?", "yes", "Yes: charge it full before you leave"),
        # what it will read
        ("Flooded, full, laid up for 5 months. What will it read in spring?", "yes", "About 12.45 V at rest after"),
        ("Wet battery, full, laid up 6 months. What should the meter show then?", "marginal", "About 12.41 V at rest"),
        ("Laid up for five months. At what voltage should I charge it?", "yes", "Look every 90 days"),
        # whether it wants a charge in between
        ("Must I charge the AGM in the middle of winter? It is full, 5 months.", "yes", "No, not in between"),
        ("Do I need to charge a flooded battery during the winter?", "information", "No, not as a rule"),
    ],
)  # fmt: skip
def test_a_battery_that_is_laid_up(text: str, verdict: str, first: str) -> None:
    opens(text, "storage", verdict, first)


def test_a_charger_that_must_not_stay_on_is_named_beside_the_isolator() -> None:
    text = "The isolator off for winter, yes or no? He also asks is {} A trickle with no auto cutoff safe to leave."
    for amps in (4, 10):
        said = " ".join(item.headline for item in default_desk().ask(text.format(amps)).answers)
        assert "does not regulate" in said


def test_a_pump_that_hangs_on_the_battery_is_not_cut_off() -> None:
    found = told("Do I disconnect the battery when I leave her for a month? The bilge pump hangs on it.", "storage")
    assert not found.headline.startswith("Yes, disconnect")


@pytest.mark.parametrize(
    ("text", "verdict", "first"),
    [
        ("Full battery at -25 C. Will it freeze? And must I charge it in the middle of winter?", "yes", "No, it will"),
        ("-20 here, battery at full. Will it freeze? And may I charge it?", "yes", "No, it will not freeze"),
        ("Wet battery at 50 %, -10 outside. Is it frozen? Should I charge it?", "yes", "Yes, charge it"),
        ("Is it frozen at -14 with a gravity of 1.12? Can I charge it?", "no", "No charger yet"),
    ],
)
def test_whether_it_freezes_comes_before_whether_it_is_charged(text: str, verdict: str, first: str) -> None:
    opens(text, "freeze-point", verdict, first)


@pytest.mark.parametrize(
    ("text", "topic", "verdict", "first"),
    [
        ("Is a separate charger necessary for the bow battery, or will one of the 2 outputs of mine do?",
         "charger-banks", "needs-facts", "Yours can do it, if one of its 2 outputs is free"),
        ("My charger has 3 outputs and I have 3 banks. Do I need an extra charger for the bow?", "charger-banks",
         "yes", "No, not another: your charger has 3"),
        ("2 outputs, 3 banks. Do I need another charger?", "charger-banks", "no", "Yes, or one of more outputs"),
        ("Do I really have to have a second charger for the bow if I fit a dc-dc off the alternator?", "dc-dc",
         "information", "No, while the engine runs long enough"),
        ("Is a second charger of 30 A too much for 100 Ah AGM?", "charger-size", "yes", "No, it fits"),
        ("I don't fancy a battery in the bow, the run is 14 m. Is it a must to have one there?", "cable-size",
         "needs-facts", "No, but over 14 m"),
        ("Must there be a battery in the bow? The thruster draws 250 A and the house bank is 9 m away.", "cable-size",
         "information", "No, not with 70 mm²"),
        ("I need 14 m of cable to the battery in the bow, what size?", "cable-size", "needs-facts", "We can't say yet"),
        # apart instead of joined
        ("Can I mix one AGM and one wet battery in parallel in the bow? If not, could I use them in two "
         "separate places, one for the bow and one for the stern?", "charger-banks", "information", "Yes, one at each"),
    ],
)  # fmt: skip
def test_whether_something_is_a_must(text: str, topic: str, verdict: str, first: str) -> None:
    opens(text, topic, verdict, first)


@pytest.mark.parametrize(
    ("text", "verdict", "first"),
    [
        ("How many amp hours is an 800 CCA battery?", "information", "Cranking amps (power for seconds)"),
        ("A 720 CCA (EN) battery, how many amp hours is that?", "information", "Cranking amps (power"),
        ("Owner insists 1000 MCA = 100 Ah. Told him no. Right?", "information", "Yes: cranking amps are the power"),
        ("RC 120 and 800 CCA, how many Ah?", "information", "120 min of reserve is about 73 Ah"),
        ("800 CCA EN, what is that in CCA?", "information", "Take it as 800 CCA at most"),
        ("RC 120: is that any use for a bow thruster?", "information", "Little: 120 min of reserve"),
        ("RC 120 in Ah?", "information", "120 min of reserve is about 73 Ah"),
    ],
)
def test_what_a_rating_tells(text: str, verdict: str, first: str) -> None:
    opens(text, "rating-convert", verdict, first)


@pytest.mark.parametrize(
    ("text", "verdict", "first"),
    [
        ("Battery bay is 350 x 190 mm by 260 high, what size of battery fits in there?", "information", "Group 31, 27"),
        ("Box is 340 x 175 x 225 mm inside. 12V. Which group size fits?", "information", "None of our table with room"),
        ("The box is 250 x 150 x 180 mm inside. Which group fits?", "information", "None of our table goes into"),
        ("Will a group 31 go into a box of 340 x 175 x 225 mm inside?", "no", "No: a group 31 does not go in"),
        ("27 vs 31 case, which for an 8 hp bow thruster?", "information",
         "Group 27 usually has 600 to 900 CCA, group 31 650 to 1150 CCA; your thruster needs 1463 CCA, so neither"),
        ("Group 24 vs 27, which for a thruster of 150 A?", "information", "Group 24 usually has 500 to 800 CCA"),
    ],
)  # fmt: skip
def test_which_case(text: str, verdict: str, first: str) -> None:
    opens(text, "group-size", verdict, first)


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("Is it not possible to use a gel battery for a thruster? My seller says no.", "Gel suits a thruster only if"),
        ("My shop says AGM is no good for a thruster. Right?", "AGM suits a thruster"),
        ("Are flooded batteries any good for a bow thruster?", "A wet-cell battery suits a thruster"),
        ("Is gel better than AGM for a thruster?", "AGM for most boats"),
        ("Which kind of battery is best for a thruster?", "AGM for most boats"),
    ],
)
def test_one_kind_that_is_put_up_for_a_thruster(text: str, first: str) -> None:
    opens(text, "battery-type", "information", first)


@pytest.mark.parametrize(
    ("text", "topic", "verdict", "first"),
    [
        ("Plates are dry in two cells, tap water just this once?", "maintenance", "no", "No tap water, not for once"),
        ("Plates dry. What goes in?", "maintenance", "no", "Cover the plates with distilled water"),
        ("250 A fuse blew on a 300 A thruster, 95 mm2. Go 400?", "fuse-size", "yes", "Yes: a 400 A fuse"),
        ("My 250 A fuse blew on a 180 A thruster with 35 mm2. Go up to 400?", "fuse-size", "no", "No: a 400 A fuse is"),
        ("Fuse blew. 300 A thruster, I go 400 m out every day", "fuse-size", "information", "Fit a 400 A fuse"),
        ("Is a 250 A fuse right for a 250 A thruster?", "fuse-size", "no",
         "No: a 250 A fuse is too small for 250 A running, which takes 350 A, if the cable allows it"),
        ("Stud or post on the battery for a thruster?", "terminals", "information", "Studs for a thruster"),
        ("Thruster draws 200 A for 4 min a docking, 70 Ah AGM. How many Ah does one docking take?", "run-time", "yes",
         "About 13.3 Ah: 200 A for 4 minutes"),
        ("How many Ah do I need for 4 minutes at 200 A?", "bank-size", "information", "Look for a lead battery"),
        ("30 mA on a 110 Ah battery, how many weeks until it is flat?", "standing-drain", "information",
         "About 11 weeks until half, where to stop, and 22 weeks until empty"),
        ("30 mA on a 110 Ah battery, how long until it is flat?", "standing-drain", "information", "About 76 days"),
        ("4 A charger enough for a 90 Ah gel? It is plugged in all week.", "charger-size", "marginal",
         "Only just: 9 to 18 A suits 90 Ah of gel, but left on for days 4 A fills it from 50 %"),
        ("I charge once a week with 5 A, 120 Ah AGM, too small?", "charger-size", "marginal", "Yes, rather small: for"),
    ],
)  # fmt: skip
def test_a_plain_question(text: str, topic: str, verdict: str, first: str) -> None:
    opens(text, topic, verdict, first)


@pytest.mark.parametrize(
    ("text", "topic", "verdict", "first"),
    [
        ("Batt 12.6. Is it worn out or not? And should I load test it?", "replacement", "information", "Yes, test it"),
        ("AGM falls to 9.3 under load. Is it done for?", "replacement", "needs-facts", "Not for sure: it falls"),
        ("It passed the load test last week, AGM, 6 years old. Replace it?", "replacement", "marginal", "Keep it for"),
        ("Load test at 400 A for 15 s on an 800 CCA: 9.9 V. Ok?", "load-voltage", "yes", "Yes: 9.9 V passes"),
        ("How many years does an AGM live as a rule, and how do I see its end?", "replacement", "information",
         "AGM batteries usually last 4 to 7 years; near its end"),
        ("How long do gel batteries last?", "replacement", "information",
         "Gel batteries usually last 5 to 8 years; replace one when it fails a load test."),
        ("How long do flooded batteries last?", "replacement", "information",
         "Wet-cell batteries usually last 3 to 5 years; replace one when it fails a load test, or when one cell"),
        ("AGM 2 years old and a flooded one, must I replace them?", "replacement", "yes", "No: at 2 years your AGM"),
        ("Can I join gel and wet in parallel? And a new gel with a 3 year old one?", "bank-wiring", "no",
         "No: gel and wet-cell batteries must not be joined; a new one and an old one of the same kind only just do"),
        ("AGM falls to 9.3 under load. Is it done for? Would another one beside it help?", "bank-wiring", "marginal",
         "Only if yours is sound but too small"),
        ("Would a second 100 Ah AGM in parallel help the thruster?", "bank-wiring", "information", "Two batteries in"),
    ],
)  # fmt: skip
def test_nothing_is_taken_as_told_that_is_only_asked(text: str, topic: str, verdict: str, first: str) -> None:
    opens(text, topic, verdict, first)


@pytest.mark.parametrize(
    ("text", "topic", "verdict", "first"),
    [
        ("Thruster works to port but not to starboard, 12.7 at rest. Is it the battery?", "rest-voltage", "yes",
         "Not the battery by this: 12.7 V"),
        ("Bow thruster weak in one direction only, AGM at 12.8 at rest. What is wrong?", "load-voltage", "needs-facts",
         "Look at the relay and control"),
        ("Only pushes to the left. AGM at 12.0 at rest, battery?", "rest-voltage", "no", "No, not yet: 12.0 V"),
        ("Thruster weak both ways, 12.7 at rest. Battery?", "load-voltage", "needs-facts", "Read the volts twice"),
        ("How long do AGMs last? Ours are 7, the yard wants them out.", "replacement", "marginal",
         "Perhaps soon: at 7 years"),
    ],
)  # fmt: skip
def test_what_is_weak_one_way_is_not_the_battery(text: str, topic: str, verdict: str, first: str) -> None:
    opens(text, topic, verdict, first)


def test_volts_that_are_lost_at_a_joint_are_called_heat() -> None:
    found = told("12.3 V on the posts with the thruster on, 8.9 V at the motor. What is wrong?", "load-voltage")
    assert "hot-joint" in {item.id for item in found.cautions}
    held = told("12.3 V on the posts with the thruster on, 11.9 V at the motor. Fine?", "load-voltage")
    assert "hot-joint" not in {item.id for item in held.cautions}


def test_a_cable_whose_amps_are_not_told_is_held_against_what_is_lost() -> None:
    found = told("11.8 V on the posts under load, 9.6 V at the motor, 50 mm2, 14 m each way. Why?", "load-voltage")
    assert "takes as much at 220" in found.headline.replace(NB, " ")
    assert [item.fact for item in found.asks] == ["load.current"]


def test_a_low_reading_on_the_posts_asks_for_the_cca_and_not_for_another_place() -> None:
    found = told("Rests at 12.8, falls to 8.9 on the posts at 300 A. Is the battery bad?", "load-voltage")
    assert [item.fact for item in found.asks] == ["battery.cca"]
    other = told("Rests at 12.8, falls to 8.9 at 300 A. Is the battery bad?", "load-voltage")
    assert [item.fact for item in other.asks] == ["reading.load_voltage_at_load"]


def test_more_lost_off_the_charger_than_a_battery_loses_by_itself_is_named() -> None:
    steps = [
        item.say for item in told("AGM, charger was off for three days, rests at 12.1. ok?", "rest-voltage").working
    ]
    assert any("more than it loses by itself" in item for item in steps)
    iced = told("AGM, charger was off for three days, rests at 12.1 at -8 C. ok?", "rest-voltage").working
    assert not any("more than it loses by itself" in item.say for item in iced)
    kept = told("AGM, charger was off for three days, rests at 12.75. ok?", "rest-voltage").working
    assert not any("more than it loses by itself" in item.say for item in kept)


def test_a_state_of_charge_is_told_to_a_whole_percent() -> None:
    steps = [
        item.say for item in told("11.9 V at rest, wet, 100 Ah. How long to charge it at 20 A?", "charge-time").working
    ]
    assert any("is about 1\u00a0% of charge" in item for item in steps)


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        (
            "Must I fit a gel battery for the thruster? The chap next to us swears nothing else will do.",
            "No: AGM suits",
        ),
        ("Does it have to be a gel battery for a bow thruster?", "No: AGM suits"),
        ("Must it be lithium for a thruster?", "No: AGM suits"),
        ("Do we have to use AGM for the bow thruster?", "No, but AGM suits"),
        ("May a gel battery stand in the cabin?", "Yes: a gel battery may stand"),
        ("Must I use a lithium charger for my lithium battery?", "Use the lithium setting"),
    ],
)
def test_no_one_kind_is_a_must(text, opens):
    assert default_desk().ask(text).answers[0].headline.replace("\u00a0", " ").startswith(opens)
