"""Later turns: what they go on with, what they take back, and what follows on the answer before."""

from __future__ import annotations

import pytest

from service.wording.again import AGAIN, NOTHING_NEW, READ_TOO
from tests.talks import on, talk


def plain(text):
    return text.replace("\u00a0", " ")


def told(reply):
    return [(item.topic, item.verdict) for item in reply.answers]


PIKE = "will a 700 cca agm run a pike?"
BURSTS = "100ah agm at 180 amps, how many 5 second bursts to half?"
WEAK = "pike drops my 650 cca wet from 12.7 to 9.0 at the posts"
RESTED = "agm reads 12.3 after 8 hours rest"
THREE = "how many outputs: engine battery, house battery, and a thruster pair that is wired as 24 V"
LAID_UP = "wet batteries left aboard, 150 days, 5 C, do i need to charge them"


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "opens"),
    [
        ((PIKE, "my mistake i got that wrong, it's 600 not 700"), "run-check", "no", "No: the Pike asks for 650"),
        (("20 amp charger for a 100ah agm ok?", "wrong, it's 30 amps"), "charger-size", "yes", "Yes: 30"),
        (("pike on 2/0, 6 m. any good?", "i had that wrong, it is 4 m"), "cable-size", "yes", "Yes: 2/0"),
        (("is 12.7 v on my agm too low?", "i read that wrong, its 12.2 not 12.7"), "rest-voltage", "no", "Yes: 12.2"),
        (("is 12.2 v too low?", "it's gel"), "rest-voltage", "no", "Yes: 12.2"),
        (("two 500 cca wets in parallel for 260 A at 12 V. enough?", "i gave you the wrong number, they're 450 each"),
         "run-check", "yes", "Yes: your two 450"),
    ],
)  # fmt: skip
def test_what_is_put_right_is_answered_as_the_question_was_put(turns, topic, verdict, opens):
    (found,) = talk(*turns).answers
    assert (found.topic, found.verdict, plain(found.headline)[: len(opens)]) == (topic, verdict, opens)


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "says"),
    [
        ((BURSTS, "and if it's freezing out, minus 2?"), "run-time", "information", "about 75 bursts"),
        (("how long does a 200ah wet run 100 amps", "and on a freezing morning, 0 C"), "run-time", "information",
         "about 22 minutes"),
        (("650 cca flooded with the pike, ok?", "and on an icy morning"), "run-check", "no", "8.4 V"),
        (("650 cca flooded with the pike, ok?", "and in a freezing locker at minus 8"), "run-check", "no", "8.1 V"),
        (("charger 20 A for 100 Ah lfp ok?", "and if its freezing"), "charger-size", "no", "0 °C"),
        (("100 Ah lithium, 30 A charger, how long from 20 %?", "and if it's frosty, 3 degrees"), "charge-time", "no",
         "at 3 °C lithium takes 10 A"),
        (("2/0 6 m pike ok?", "and if its freezing"), "cable-size", "yes", "2/0 AWG loses"),
        (("200 ah gel at 100 A, how long", "and say it's freezing, minus 5"), "run-time", "information", "half empty"),
        ((PIKE, "will it freeze at minus 20?"), "freeze-point", "needs-facts", "Not while your battery is half full"),
    ],
)  # fmt: skip
def test_the_cold_as_a_condition_repeats_the_last_question(turns, topic, verdict, says):
    (found,) = talk(*turns).answers
    assert (found.topic, found.verdict) == (topic, verdict)
    assert says in plain(found.headline)


@pytest.mark.parametrize(
    ("turns", "opens"),
    [
        (("agm 12.3 rested overnight", "so what should i do with it"), "Charge it soon: 12.3"),
        (("flooded 11.9 after resting", "so what now"), "Charge it today: 11.9"),
        (("gel 12.8 v rested, good?", "so what do i do with it"), "Nothing needs doing: 12.8"),
        (("two wets, one at 12.7 and one at 12.2 after a night", "ok and what do i do now"),
         "Charge the one at 12.2 V alone, let it rest"),
        (("12.2 and 12.1 on two agms, rested. what do i do?",), "Charge each alone, let both rest"),
        (("agm 7 years old, new one?", "what do i do"), "Test it under load: at 7 years"),
        ((WEAK, "what next"), "Charge it fully, let it rest and test again before you buy"),
        (("11.9 at the battery and 9.4 at the motor with the thruster on", "so what do we do"), "Clean and tighten"),
        (("rested 12.7, 9.2 when the thruster runs", "what to do"), "Read the volts at the motor's own"),
        (("charged 400 cca agm, 12.7, then 8.5 on the posts at 300 A", "what can i do"), "Fit a battery of more"),
        ((WEAK, "is it the battery or the wiring"), "The battery: with the Pike"),
        ((WEAK, "is it the cable or the motor"), "The battery comes first"),
        (("11.9 at the battery and 9.4 at the motor with the thruster on", "so is it the cable or the battery"),
         "The cable or its joints: 2.5"),
        (("800 cca, 12.7 rested, 9.0 on the posts, 7.1 at the motor with the pike on", "which is it, battery or cable"),
         "Both: with the Pike"),
        (("rested 12.7, 9.2 when the thruster runs", "cable or battery?"), "The battery, if this was read"),
        (("12.7 then 11.3 with the pike running, 1000 cca, at the posts", "battery or cable then?"), "Not the battery"),
    ],
)  # fmt: skip
def test_what_to_do_and_which_part_are_answered_first(turns, opens):
    reply = talk(*turns)
    assert plain(reply.answers[0].headline)[: len(opens)] == opens
    assert reply.notice is None


@pytest.mark.parametrize(
    ("turns", "verdict", "says"),
    [
        ((RESTED, "actually i had the fridge on"), "information", "is no reading at rest"),
        ((RESTED, "pump was running the whole time"), "information", "is no reading at rest"),
        (("agm 12.7 rested", "the engine was just switched off when i measured"), "information", "reads high"),
        (("agm 12.7 rested", "it had just come off the charger"), "information", "reads high"),
        (("agm 12.6, good?", "read straight after charging"), "information", "reads high"),
        (("agm 12.2 rested, ok?", "it wasnt rested, the heater was running"), "information", "no reading at rest"),
        (("gel 12.3, nothing on for a day", "i found the lights were on"), "information", "no reading at rest"),
        (("flooded 12.2 with the fridge on",), "information", "no reading at rest"),
        (("wet 12.7 after a night", "hang on the charger was on till this morning"), "information", "reads high"),
        (("agm 12.7 rested, ok?", "the radio was on"), "yes", "12.7 V with something on is a good reading"),
        (("two wets 12.6 and 12.2 rested", "the fridge was on"), "information", "read both again"),
        (("agm 12.2 rested overnight, ok?", "no fridge was on"), "no", "12.2 V at rest"),
    ],
)  # fmt: skip
def test_a_rest_that_is_taken_back_changes_the_answer(turns, verdict, says):
    (found,) = talk(*turns).answers
    assert (found.topic, found.verdict) == ("rest-voltage", verdict)
    assert says in plain(found.headline)


def test_what_was_on_while_it_was_read_is_no_load_of_theirs():
    reply = talk("bow thruster 200 A, agm 12.3 rested, is that good?", "the fridge was on")
    kept = {item.fact: item.value for item in reply.answers[0].understood}
    assert (kept["load.kind"], kept["load.current"], kept["reading.state"]) == ("thruster", 200.0, "load")


@pytest.mark.parametrize("last", ["the outputs arent isolated", "the book says they share a negative, the outputs"])
def test_outputs_that_are_not_isolated_decide_of_a_series_bank(last):
    (found,) = talk(THREE, last).answers
    assert (found.topic, found.verdict) == ("charger-banks", "no")
    assert "short a battery of the 24 V bank" in plain(found.headline)


@pytest.mark.parametrize("last", ["theres no shore power there", "i cant get power to the boat", "no mains down there"])
def test_a_berth_without_power_goes_back_to_the_lay_up(last):
    (found,) = talk(LAID_UP, "will they freeze at -15", last).answers
    assert (found.topic, found.verdict) == ("storage", "yes")
    assert plain(found.headline).startswith("Charge it full before you leave her and take the cables off")


def test_without_power_a_battery_that_does_not_last_is_taken_home():
    ask = "half full agm, 200 days at 20 C, ok?"
    assert plain(talk(ask, "no shore power").answers[0].headline).startswith("Charge it full before you leave her, or")
    long = "wet battery charged full, 400 days at 25 C, all right?"
    assert plain(talk(long, "no electricity on that pontoon").answers[0].headline).startswith("Take it home or bring")
    lithium = talk("100ah lithium laid up all winter", "no mains there").answers[0].headline
    assert plain(lithium).startswith("Leave it about half full")


@pytest.mark.parametrize("last", ["so i can leave the fuse out then", "so the fuse can go", "then i dont need a fuse"])
def test_a_bms_is_no_reason_to_leave_the_fuse_out(last):
    (found,) = talk("whats a bms", last).answers
    assert (found.topic, found.verdict) == ("fuse-size", "no")
    assert found.headline.startswith("No, the fuse stays in")


@pytest.mark.parametrize(
    ("turns", "topics"),
    [
        (("agm 6 years old, time for a new one? the boat has a pike", "what do i get instead"), ["bank-size"]),
        (("wet 12.1 after a week, ruined?", "what do i replace it with, its a minnow"), ["bank-size"]),
        (("my agm is 9 years old, pike, done?", "which one should i get then"), ["bank-size"]),
        (("two 12v 100 ah in series, ok?", "what do i get then"), ["bank-wiring"]),
        (("pike on a 700 cca 95 ah agm, ok?", "bursts of 10 s?"), ["run-time"]),
        (("pike, 100 ah lithium 300 A bms, will it run?", "and for 3 minutes?"), ["run-check", "run-time"]),
        (("does my charger suit", "10 amps"), ["charger-size"]),
        (("does my charger suit", "10 amps", "gel, 220ah all in"), ["charger-size", "charger-setting"]),
        (("is my charger ok", "it's agm", "30 a charger, 200 ah"), ["charger-size", "charger-setting"]),
        (("is the charger big enough", "15 amps", "two 110 wets"), ["charger-size"]),
        (("which setting for my charger", "its 20 amps"), ["charger-setting"]),
        (("pike here, two 12v batteries in parallel, ok?", "450 cca each"), ["bank-wiring", "run-check"]),
        ((PIKE, "what do i do with the old one"), ["unclear"]),
    ],
)
def test_a_new_question_in_a_later_turn_is_answered(turns, topics):
    assert [item.topic for item in talk(*turns).answers] == topics


def test_when_it_wants_a_charge_is_told_first():
    ask = "100 ah gel, 200 days laid up at 20 C"
    told = "After 180 days at most, or as soon as it rests under 12.65 V; look every 90 days."
    assert plain(talk(ask, "so when do i have to charge it").answers[0].headline) == told
    low = talk("agm at 60 %, laid up 100 days", "by when does it need a charge").answers[0].headline
    assert low.startswith("Now, before it is laid up")
    flat = talk("storage of a wet battery over winter", "when does it want charging").answers[0].headline
    assert plain(flat).startswith("After 152 days at most")


def test_what_the_maker_allows_is_no_number_of_batteries():
    for last in ("only one", "the leaflet says not more than one", "it says none", "max one", "1"):
        (found,) = talk("may i join two lithiums in series?", last).answers
        assert (found.topic, found.verdict) == ("bank-wiring", "no")
        assert plain(found.headline) == "No: the maker allows 1 in series, and you would join 2."
    (found,) = talk("may i join two lithiums in series?", "four").answers
    assert found.verdict == "yes"


def test_why_not_a_larger_fuse_names_one():
    (found,) = talk("fuse for the pike on 70mm2?", "so why not a 500").answers
    assert (found.topic, found.verdict) == ("fuse-size", "no")


@pytest.mark.parametrize("last", ["forget the agm its wet", "forget agm, wet cells"])
def test_a_kind_that_is_to_be_forgotten_goes(last):
    assert "wet-cell" in talk(PIKE, last).answers[0].headline


@pytest.mark.parametrize(
    ("turns", "says"),
    [
        (("how big in mm is 2/0", "and 50F in proper degrees"), "50 °F is 10 °C."),
        (("rc 160 in ah", "and 900 mca in cca"), "900 cranking amps (0 °C) are about 720 CCA (-18 °C)."),
        (("750 W at 12 v how many amps", "and at 24 V"), "750 W at 24 V is 31 A."),
    ],
)
def test_a_further_conversion_is_of_the_newest_alone(turns, says):
    (found,) = talk(*turns).answers
    assert plain(found.headline) == says


@pytest.mark.parametrize(
    ("turns", "figure"),
    [
        (("pike here, i want to wire my two 12v batteries as 24", "and in parallel?"), 12.0),
        (("two 12v 100 ah in series for 24, what do i get", "and in parallel?"), 12.0),
        (("24v system, two 12 v 100 ah, what have i got", "parallel?"), 12.0),
        (("four 6 volts as 24v", "side by side?"), 6.0),
    ],
)
def test_another_way_of_joining_drops_the_volts_that_the_first_should_give(turns, figure):
    (found,) = talk(*turns).answers
    assert (found.topic, found.verdict, found.figures[0].value) == ("bank-wiring", "information", figure)


def test_the_volts_that_a_load_needs_stay():
    (found,) = talk("24 v thruster 100 amps, two 12 v 600 cca in series, ok?", "and in parallel").answers
    assert (found.verdict, plain(found.headline)) == (
        "no",
        "No: your batteries give 12 V, and your thruster needs 24 V.",
    )


@pytest.mark.parametrize(
    ("turns", "verdict", "says"),
    [
        (("Minnow on a 400 cca agm. good?", "the other boat is a pike with two of those in parallel"), "yes",
         "your two 400 CCA AGM"),
        (("700 cca wet with a pike, ok?", "my friends boat has a pike and three of them in parallel"), "yes",
         "your three 700 CCA wet"),
        (("600 cca gel with a minnow, ok?", "the other boat has the same battery and a pike"), "no",
         "your gel battery has 600 CCA"),
        (("pike on 650 cca agm ok?", "other boat has a minnow"), "needs-facts", "the CCA of yours is not known"),
    ],
)  # fmt: skip
def test_a_battery_that_is_pointed_at_is_kept_on_another_boat(turns, verdict, says):
    (found,) = talk(*turns).answers
    assert (found.topic, found.verdict) == ("run-check", verdict)
    assert says in plain(found.headline)


def test_an_age_or_a_reading_does_not_go_with_it():
    reply = talk("minnow, 400 cca agm, 5 years old, 12.7 rested, ok?", "other boat: pike with two of those in parallel")
    names = {item.fact for answer in reply.answers for item in answer.understood}
    assert "battery.cca" in names
    assert {"battery.age", "reading.voltage"}.isdisjoint(names)


@pytest.mark.parametrize(
    ("turns", "notice"),
    [
        (("fuse 350 for the pike on 70 mm2 ok?", "insulation says 75 degrees"),
         "We have noted 75 °C insulation: with that the answer stays as it was."),
        (("is the charger big enough", "15 amps"),
         "We have noted 15 A (charger amps); what is asked below still decides."),
        (("how many outputs for engine and thruster, both 12 V", "outputs arent isolated"),
         'We have noted "outputs arent isolated": with that the answer stays as it was.'),
    ],
)  # fmt: skip
def test_a_fact_that_changes_nothing_is_named(turns, notice):
    assert plain(talk(*turns).notice) == notice


def test_a_conclusion_that_finds_no_answer_is_asked_in_other_words():
    assert talk("what size cable for the pike over 6 m?", "so i can use welding cable then").notice == AGAIN
    assert [item.topic for item in talk("can i leave it", "120 days").answers] == ["storage"]


def test_a_technician_who_is_promised_is_on_the_route():
    reply = talk("will a wet battery freeze at -15", "well it blows a lot round here")
    assert reply.notice == NOTHING_NEW + READ_TOO
    assert (reply.answers[0].verdict, reply.triage.route) == ("needs-facts", "technician")


@pytest.mark.parametrize(
    ("turns", "topic", "verdict"),
    [
        (("My wet battery rests at 12.4, is that ok?", "were it an AGM?"), "rest-voltage", "marginal"),
        (("My wet battery rests at 12.6, is that ok?", "and had it shown 12.1?"), "rest-voltage", "no"),
        (("How big a charger for 90 Ah of gel?", "had they been lithium?"), "charger-size", "information"),
        (("12.6 at rest on a wet one, ok?", "after 9 years, has it had it?"), "replacement", "no"),
    ],
)
def test_had_it_been_another_one_asks_the_same_of_that(turns, topic, verdict):
    assert verdict == on(topic, *turns).verdict
    assert not on(topic, *turns).headline.startswith("Not by this reading")


SUPPLY = "bow motor 240 A, AGM of 950 CCA. strong enough?"


@pytest.mark.parametrize(
    ("turns", "topic"),
    [
        ((SUPPLY, "cable is 2/0, 105 C. fuse?", "and the battery, is that still ok"), "run-check"),
        ((SUPPLY, "cable is 2/0, 105 C. fuse?", "back to our battery. will it do?"), "run-check"),
        ((SUPPLY, "cable is 2/0, 105 C. fuse?", "how old may the battery be?"), "replacement"),
        (
            ("90 or 130 Ah gel for 40 A over 25 minutes, which", "the large one then. charger to suit it?"),
            "charger-size",
        ),
        (("a plotter takes 3 A, 90 Ah gel, how long?", "charger for that battery?"), "charger-size"),
        (("12 V windlass 140 A, 5 m run, which cable?", "good. fuse for that one?"), "fuse-size"),
    ],
)
def test_the_next_part_of_the_same_boat_is_asked_of_in_few_words(turns, topic):
    assert [item.topic for item in talk(*turns).answers] == [topic]


CONVERTER = "A DC-DC unit, 12 to 24, puts out 15 A. It is 3 m from the start battery. What cable for its input?"


@pytest.mark.parametrize(
    ("turns", "topic", "says"),
    [
        (("How fast does a 70 A alternator fill my 120 Ah AGM from 50 %?", "correction, the alternator is a 45"),
         "charge-time", "at 36 A"),
        (("900 MCA, what is that in CCA?", "and at minus five?"), "cold-cranking", "720 CCA battery gives about"),
        (("900 MCA, what is that in CCA?", "and at -12 C"), "cold-cranking", "720 CCA battery gives about"),
        ((CONVERTER, "and does the alternator cope, it's a 60 A"), "dc-dc",
         "it pulls about 33 A, and the alternator gives 48 A for lead"),
        (("25 or 35 mm2 for a 100 A windlass, 5 m?", "our surveyor allows 3 percent, size then?"), "cable-size", "3 %"),
        (("One battery is AGM, one is wet. Fine together?", "which charger programme if the AGM is scrapped?"),
         "charger-setting", "Use the wet-cell (flooded) setting: "),
        (("3 kW at 24 V, how many amps?", "and on 12?", "the 24 one then: 4 m each way, which cable?"),
         "cable-size", "over 4 m"),
    ],
)  # fmt: skip
def test_what_a_later_turn_puts_right_or_takes_up(turns, topic, says):
    found = next(item for item in talk(*turns).answers if item.topic == topic)
    assert says in plain(found.headline)


def test_the_cable_of_a_converter_carries_what_it_takes_in():
    cable = next(item for item in talk(CONVERTER).answers if item.topic == "cable-size")
    assert {item.name: item.value for item in cable.figures}["area"] >= 10  # 15 A at 24 V are some 44 A at 12 V


def test_a_fact_that_changes_one_answer_brings_that_one():
    turns = ("Crimp or solder the lugs? And will 50 mm2 do for 175 A over 5 m?", "it runs through the engine room")
    assert [item.topic for item in talk(*turns).answers] == ["cable-size"]


@pytest.mark.parametrize(
    "text",
    [
        "One AGM and one wet cell aboard. Which charger setting?",
        "What setting for an AGM, and for the wet one?",
    ],
)
def test_two_kinds_get_the_setting_of_each(text):
    (found,) = talk(text).answers
    assert "the AGM setting for one" in found.headline
    assert "the wet-cell (flooded) setting for the other" in found.headline


def test_somebody_who_is_hurt_gets_the_first_aid_again_until_a_doctor_has_looked():
    hurt = "I got battery acid on my hand"
    assert talk(hurt, "it itches a bit now").answers[0].headline.startswith("Rinse")
    after = talk(hurt, "the doctor says it is all fine. Is 12.4 V at rest good?").answers
    assert [item.topic for item in after] == ["rest-voltage"]
    assert talk(hurt, "should I see a doctor, or is it fine?").answers[0].verdict == "stop"


TOO_HIGH = "15.4 V on the gel with the shore charger on, is that right?"


def test_volts_too_high_stand_until_another_charger_is_there():
    (stands,) = talk(TOO_HIGH, "unplugged it, now 12.9. All right?").answers
    assert (stands.topic, stands.verdict) == ("hazard", "stop")
    assert "Switch the charger off" not in stands.headline  # it is off
    after = talk(TOO_HIGH, "New charger, 20 A, on gel. Is 14.2 normal?").answers
    assert [(item.topic, item.verdict) for item in after] == [("charger-setting", "yes")]
    assert talk(TOO_HIGH, "do I need a new charger?").answers[0].verdict == "stop"


def test_dirt_on_a_post_is_to_be_cleaned():
    assert [item.topic for item in talk("Green powder on the M8 posts. What gets rid of it?").answers] == [
        "maintenance"
    ]


def test_the_cable_of_a_converter_that_we_sized():
    turns = (
        "Can I charge a 24 V bow bank from the alternator while motoring?",
        "60 A alternator, what size converter?",
    )
    cable = talk(*turns, "and the cable for it, 6 m").answers[0]
    assert (cable.topic, cable.verdict) == ("cable-size", "information")
    assert "suits a charger" in cable.headline
    assert talk(*turns, "what cable for the Pike, 6 m?").answers[0].figures[0].value == 70.0


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("12 V start battery and 24 V bow bank. One charger or two?", "Two: one for the engine battery and a 24 V one"),
        ("Two 12 V in series for the bow, one charger or two?", "One 24 V charger for the whole bank"),
    ],
)
def test_one_charger_or_two(text, says):
    assert plain(talk(text).answers[0].headline).startswith(says)


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "says"),
    [
        (("Can I use my lithium in winter?", "-8 at night", "what about charging"), "charger-setting", "no",
         "may not be charged at or below 0 °C"),
        (("150 Ah lithium, how long on a 40 A charger?", "and with a 70 A alternator?"), "charge-time", "needs-facts",
         "Not straight from the alternator"),
        (("100 Ah AGM, how long on a 10 A charger from half?", "and with a 70 A alternator?"), "charge-time",
         "information", "at 30 A"),
        (("200 A thruster on 70 mm2, what fuse?", "and do I need a switch as well"), "fuse-size", "information",
         "Yes: one that carries 200 A all the time"),
        (("110 Ah, 60 mA with all off, flat when?", "so what can be the reason"), "standing-drain", "information",
         "Most likely a float switch"),
        (("12.6 V on the posts with the thruster running, 5 V at the motor", "so it's the cable then?"), "load-voltage",
         "no", "Yes: 7.6 V"),
        (("12.6 V on the posts with the thruster running, 5 V at the motor", "so it's the battery?"), "load-voltage",
         "no", "No, not the battery: 7.6 V"),
    ],
)  # fmt: skip
def test_what_follows_on_an_answer(turns, topic, verdict, says):
    (found,) = talk(*turns).answers
    assert (found.topic, found.verdict) == (topic, verdict)
    assert says in plain(found.headline)
