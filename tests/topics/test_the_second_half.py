"""The second question of a message, and the first word that fits the question as it is put."""

import pytest

from tests.talks import on, plain, talk


@pytest.mark.parametrize(
    ("topic", "turns", "opens"),
    [
        (
            "specific-gravity",
            ("hydrometer reads 1.210 in all cells what does that mean", "it was about 5 degrees, does that matter"),
            "Yes, it does: a gravity of 1.194 (corrected)",
        ),
        ("specific-gravity", ("gravity 1.230 at 10 °C, does the temperature matter?",), "Yes, it does: a gravity of"),
        ("specific-gravity", ("gravity 1.260 at 27 °C, does the temperature matter?",), "Hardly: a gravity of 1.260"),
        ("specific-gravity", ("gravity 1.260 at 27 °C, is it good?",), "Yes: a gravity of 1.260"),
        (
            "cold-cranking",
            ("Does the temperature make a difference? In spring it is 2 degrees and the thruster is much weaker.",),
            "Yes: at 2 °C (36 °F) a full lead battery has about 68 % of its warm power",
        ),
        ("cold-cranking", ("my battery has how much power at 2 degrees",), "We can't say the amps yet"),
    ],
)
def test_whether_a_temperature_matters(topic, turns, opens):
    assert plain(on(topic, *turns).headline).startswith(opens)


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("can I use a deep cycle battery for a thruster?", "Only with enough CCA on its label:"),
        ("could we use a leisure battery for the Pike", "Only with enough CCA on its label:"),
        ("is a deep cycle battery good for the thruster", "No: a deep-cycle battery without a CCA"),
    ],
)
def test_whether_a_deep_cycle_battery_may_be_used(text, opens):
    assert on("battery-duty", text).headline.startswith(opens)


@pytest.mark.parametrize(
    ("turns", "opens"),
    [
        (
            (
                "do I need one charger or two? I have an engine start battery, a house bank and the bow battery.",
                "The bow one is AGM 100 Ah, the rest are flooded.",
            ),
            "A charger with 3 outputs, one for each bank",
        ),
        (("One charger or several? Engine, house and bow.",), "A charger with 3 outputs"),
        (("Can one charger do engine, house and bow?",), "Yes, with 3 outputs"),
    ],
)
def test_one_charger_or_two_is_no_yes_or_no(turns, opens):
    assert plain(on("charger-banks", *turns).headline).startswith(opens)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("My battery is 7 years old. When to replace and should I change both house and bow at same time", True),
        ("AGM 5 years. Replace the house and the thruster battery together?", True),
        ("The thruster battery is 7 years old. Replace it?", False),
        ("My house battery is 5 years old, AGM. Replace it?", False),
    ],
)
def test_two_banks_are_not_replaced_by_one_age(text, told):
    assert ("house and bow each go by their own test" in on("replacement", text).headline) == told


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("What means CCA and is 800 CCA better than 100 Ah for thruster?", "For a thruster the CCA decides:"),
        ("AGM or gel for a bow thruster?", "AGM for most boats:"),
    ],
)
def test_cca_against_amp_hours(text, opens):
    assert on("battery-type", text).headline.startswith(opens)


def test_how_tight_and_whether_to_grease():
    text = "How tight should the terminal nuts be, should I grease the terminals, and which cable comes off first?"
    assert on("maintenance", text).headline.startswith("Yes, grease it: over the joint once it is tight")
    assert "usual for M8 is 6.6 to 8.5 Nm" in plain(on("terminals", text).headline)


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("should I put vaseline on the battery terminals?", "Yes, grease it:"),
        ("white crust on the terminals, grease it?", "Brush it off"),
        ("how do I clean dirty terminals and grease them", "Brush it off"),
    ],
)
def test_grease_is_no_cleaning(text, opens):
    assert on("maintenance", text).headline.startswith(opens)


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("charger 40 A on 16 mm2, a fuse at each end?", "Yes, one at each end, as both can feed the cable: fit a 50 A"),
        ("Pike with 70 mm2, do I need a fuse at both ends?", "One, at the battery, as a motor feeds nothing back: fit"),
        ("which fuse for a Pike on 70 mm2?", "Fit a 350 A fuse"),
        (
            "the main fuse belongs at the thruster end, I was told. Our Minnow battery is aft.",
            "No: a 175 A fuse belongs within 7 in (178 mm) of the battery plus",
        ),
        ("fuse at the thruster end, Pike, 70 mm2, ok?", "No: a 350 A fuse belongs"),
    ],
)
def test_at_which_end_a_fuse_is_fitted(text, opens):
    assert plain(on("fuse-size", text).headline).startswith(opens)


def test_no_word_of_a_second_question_is_lost():
    topics = [item.topic for item in talk("What means CCA and is 800 CCA better than 100 Ah for thruster?").answers]
    assert topics == ["meaning", "battery-type"]


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("Can I mix one old and one new battery in parallel?", "Only just: an old and a new battery work in parallel"),
        ("can i put a new AGM in parallel with my old one?", "Only just: an old and a new battery work in parallel"),
        ("Can I wire an old battery and a new one in series?", "No: an old and a new battery must not be joined"),
        ("two new batteries in parallel, ok?", "Two batteries in parallel"),
        ("can two 100 Ah AGMs go in parallel on the new thruster, and the old charger stay?", "Yes: two batteries"),
    ],
)
def test_an_old_and_a_new_one_are_unlike(text, opens):
    assert on("bank-wiring", text).headline.startswith(opens)


@pytest.mark.parametrize(
    ("topic", "text"),
    [
        (
            "bank-wiring",
            "Can I mix old and new in parallel? Should the cables between them be the same length?",
        ),
        ("bank-wiring", "two AGMs in parallel: must the cables be equally long?"),
        ("cable-size", "should the cables between parallel batteries be the same length and thickness"),
    ],
)
def test_cables_of_batteries_in_parallel_are_alike(topic, text):
    assert on(topic, text).headline.startswith("Yes, of one length and size, with plus taken at one end")


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("50 mm² on 183 A at 12 V, 4 m, what voltage drop should I expect?", ["voltage-drop"]),
        ("is 50 mm2 enough over 4 m for 183 A and what drop do I get?", ["cable-size", "voltage-drop"]),
    ],
)
def test_a_loss_alone_is_told_once(text, topics):
    assert [item.topic for item in talk(text).answers] == topics


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("AGM resting 12.2 V: how full is it, is it damaged?", True),
        ("12.1 V at rest, flooded. How full is it and any damage?", True),
        ("AGM 12.2 V, how full?", False),
    ],
)
def test_volts_tell_no_damage(text, told):
    assert on("rest-voltage", text).headline.endswith("; a load test then tells of damage.") == told


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        (
            "is a maintenance charger of 1 A plenty for a 140 Ah lead battery?",
            "No: for 140 Ah of lead 1 A only keeps it full",
        ),
        ("2 A is more than enough for a 100 Ah AGM, right?", "No: for 100 Ah of AGM 2 A only keeps it full"),
        ("is 2 A enough for a 100 Ah AGM", "Only just: for 100 Ah of AGM 2 A only keeps it full"),
        ("is 8 A enough for a 100 Ah AGM", "Only just: for 100 Ah of AGM 8 A fills it slowly"),
        ("2 A charger for 100 Ah AGM?", "Only just: for 100 Ah of AGM 2 A only keeps it full"),
    ],
)
def test_a_charger_that_only_keeps_it_full_is_not_plenty(text, opens):
    assert plain(on("charger-size", text).headline).startswith(opens)


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        (
            "Winter here -25C. Will battery freeze if full? And if it is half empty?",
            "At -25 °C (-13 °F) a full one does not freeze, a half-full one may freeze",
        ),
        ("Freezing here to -30. Does the battery freeze when full? when flat?", "At -30 °C (-22 °F) a full one does"),
        ("at minus 20, does a full battery freeze, and a half charged one?", "No, neither at -20 °C"),
        ("my battery is full and then it goes half empty in winter, does it freeze at -20?", "No, it will not freeze"),
    ],
)
def test_full_and_half_empty_in_the_frost(text, opens):
    (found,) = talk(text).answers
    assert plain(found.headline).startswith(opens)


def test_how_it_is_stored_is_a_question_of_its_own():
    topics = [item.topic for item in talk("Winter here -20C. Store it full? Will it freeze if half empty?").answers]
    assert topics == ["storage", "freeze-point"]


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        (
            "12.74 V open circuit, 9.6 V at the posts at 310 A. What internal resistance is that, is it reasonable?",
            "10.1 mΩ inner resistance: as much as a battery of 590 CCA may have; with more on its label yours is weak",
        ),
        ("12.6 to 9.9 V at 280 A: what is the internal resistance", "9.6 mΩ inner resistance: as much as a battery"),
    ],
)
def test_whether_a_resistance_is_reasonable_hangs_on_the_cca(text, opens):
    assert plain(on("load-voltage", text).headline).startswith(opens)


@pytest.mark.parametrize(
    "text",
    [
        "Will a single 75Ah AGM run our Minnow, and do I need to charge it separately from the house bank?",
        "will an 800 CCA AGM run the Pike, and must it be charged separately?",
        "Pike, 100 Ah AGM: how big must it be, and should it be charged on its own?",
    ],
)
def test_whether_it_is_charged_by_itself(text):
    assert on("charger-banks", text).headline.startswith("Yes, on an output or a charger of its own")


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("one charger for AGM house and lithium bow ok? and if not what do I buy", ["charger-banks"]),
        (
            "one charger for engine and bow battery? and what size of battery do I buy for a Minnow",
            ["charger-banks", "bank-size"],
        ),
        ("can I charge both batteries together with one charger?", ["charger-banks"]),
    ],
)
def test_what_is_bought_is_what_was_asked_about(text, topics):
    assert [item.topic for item in talk(text).answers] == topics


@pytest.mark.parametrize(
    ("turns", "ends"),
    [
        (
            ("I'd like to run the Pike off the house bank", "It is 3 x 110 Ah AGM and it's 9 metres to the bow"),
            "; 9 m of cable wants 95 mm².",
        ),
        (("Minnow, 70 Ah AGM, 6 m from the bow. Will the battery run it?",), "; 6 m of cable wants 35 mm²."),
        (("Minnow, 70 Ah AGM. will it run?",), "is not known."),
    ],
)
def test_a_run_that_is_told_asks_for_its_cable(turns, ends):
    assert plain(on("run-check", *turns).headline).endswith(ends)
