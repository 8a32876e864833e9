"""What a figure belongs to: a sum, a day, an old and a new one, a limit for seconds; beside each a look-alike."""

from __future__ import annotations

import pytest

from tests.talks import on, plain, talk


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("I've two 12 V 75 Ah in series, so that makes 150 Ah, correct?", "No: two batteries in series"),
        ("2 x 12V 65Ah in parallel: 12 V, 130 Ah. Yes?", "Yes: two batteries in parallel"),
        ("Two 6V 180Ah in series. Is that 12V 180Ah?", "Yes: two batteries in series (plus to minus) give 12 V"),
        ("Three 12V 70Ah in parallel = 210 Ah, true?", "Yes: three batteries in parallel"),
        ("Do two 12 V 95 Ah batteries in series come to 190 Ah?", "No: two batteries in series"),
        ("Two 12 V 60 Ah in series make 24 V and 120 Ah, right?", "No: two batteries in series"),
        ("2 x 650 CCA in parallel, I end up with 1300 CCA, yes?", "Yes: two batteries in parallel"),
        (
            "Would two 12V 85Ah in parallel give me 24 V?",
            "No: two batteries in parallel (plus to plus) give 12 V and 170",
        ),
        ("Would two 55 Ah in parallel replace my 110 Ah, yes?", "Yes: two batteries in parallel"),
        ("Two 12V 110 in series as 24: how many volts and Ah?", "Two batteries in series (plus to minus) give 24 V"),
        ("Two 12s in a row make 24, but do the amp hours go up too, 110 each?", "Two batteries in series"),
        ("The skipper counts two 80 Ah in series as 160 Ah. Correct?", "No: two batteries in series"),
        ("My brother adds up two 70 Ah in parallel to 140 Ah. True?", "Yes: two batteries in parallel"),
        ("Two 12 V 85 Ah in series, so that's 170 Ah altogether?", "No: two batteries in series"),
        # a second battery, volts that are wanted
        ("He counts on two 90 Ah in series and a 180 Ah, may they be joined?", "No: batteries of 90 Ah and 180 Ah"),
        ("One 100 Ah and one 200 Ah in series, ok?", "No: batteries of 100 Ah and 200 Ah must not be joined"),
        ("I have a 90 Ah and want to add a 180 Ah in parallel, is that right?", "Only just: batteries of 90 Ah"),
        ("2 x 12V 100Ah in series, my other bank is 200 Ah. Can I join them?", "No: batteries of 100 Ah and 200 Ah"),
        ("I need 24 V. Two 12 V 80 Ah in parallel, ok?", "No: in parallel (plus to plus) they make 12 V, and 24 V"),
        ("May a 6V 220Ah and a 12V 220Ah be joined?", "No: a 6 V and a 12 V battery"),
    ],
)
def test_a_claimed_sum_is_no_second_battery(text, told):
    assert plain(on("bank-wiring", text).headline).startswith(told)


def test_a_sum_told_beside_another_question_is_the_bank():
    text = "Two 100 Ah AGM in parallel: can I charge the 200 Ah with a 20 A charger?"
    assert plain(on("charger-size", text).headline).startswith("Yes: 20 A suits 200 Ah")


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("12.7 Fri, 12.0 Sun, nothing on. Isolator off first, or hunt it?", "From 12.7 V to 12.0 V in 2 days"),
        (
            "Bow battery was 12.75 on Monday and 12.1 today with nothing on, is it ok?",
            "No: from 12.75 V to 12.1 V with",
        ),
        ("12.6 on the 2nd, 11.9 on the 9th, all off. Is the battery good?", "No: from 12.6 V to 11.9 V in 7 days"),
        ("It read 12.7 V last week, now it reads 12.0 V, nothing on. Should I worry?", "Yes: from 12.7 V to 12.0 V"),
        ("AGM 12.75 Friday night, 12.3 Sunday, charger off, all off. Normal?", "No: from 12.75 V to 12.3 V in 2 days"),
        (
            "Tuesday 12.8, Sunday 11.7, nothing connected. Battery dead?",
            "Not by this reading: from 12.8 V to 11.7 V in 5",
        ),
        # the later one counts, but nothing fell, or it was used
        ("The battery sat at 12.7 all Friday, 12.1 on Sunday, nothing on. ok?", "No: from 12.7 V to 12.1 V in 2 days"),
        ("12.7 on the 1st battery, 12.1 on the 2nd. ok?", "No, not yet: 12.7 V is full, and 12.1 V"),
        ("12.7V yesterday, 12.7V today, nothing on. ok?", "Yes: if it is lead, 12.7 V at rest is a good"),
        ("12.1 V yesterday, charged all night, 12.7 V today. good?", "Yes: if it is lead, 12.7 V at rest is a good"),
        ("It read 12.7 on Friday, sailed all weekend, and 12.3 on Monday. ok?", "Only just: 12.3 V at rest"),
        ("Starboard battery 12.7, port battery 12.1. ok?", "No, not yet: 12.7 V is full, and 12.1 V"),
    ],
)
def test_of_readings_on_several_days_the_last_counts(text, told):
    assert plain(on("rest-voltage", text).headline).startswith(told)


@pytest.mark.parametrize(
    "text",
    [
        "Volts at motor 9.1 while running, 12.7 at rest. Battery or cable?",
        "12.8 V at rest, 9.4 V at the thruster when it runs. Cable or battery?",
        "Thruster terminals show 8.9 V running, battery rests at 12.6. Which is bad?",
    ],
)
def test_volts_at_rest_beside_those_at_the_motor_are_no_loss_in_the_cable(text):
    answer = on("load-voltage", text)
    assert "is at the motor; please tell us the volts on the battery posts" in plain(answer.headline)


def test_volts_on_the_posts_and_at_the_motor_while_it_runs_are_one():
    answer = on("load-voltage", "Battery posts 12.0 V running, 9.5 V at the motor. Cable or battery?")
    assert "2.5 V (21 %) is lost" in plain(answer.headline)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Have 1/0 lugs with 3/8 hole, battery studs M8. Will that do or must I change lugs?", "No: a lug for 3/8-16"),
        (
            "The motor terminal is M8 and my lugs have 10 mm holes. No problem with that, right?",
            "That is a problem: a hole of 10 mm is",
        ),
        ("Lugs with an 8 mm hole on an M10 stud, ok?", "No: a hole of 8 mm does not go over your M10 stud"),
        ("4/0 lugs with 1/2 hole on 3/8 studs, will that do?", "No: a lug for 1/2 is too loose on your 3/8-16 stud"),
        ("Lugs with 8 mm holes on M8 studs, ok?", "Yes: a hole of 8 mm fits your M8 stud"),
        ("1/0 lugs with a 5/16 hole for M8 studs, ok?", "Yes: a lug for 5/16-18 fits your M8 stud"),
        ("2/0 lugs, M10 stud, which hole?", "Use a lug for 2/0 AWG cable with a hole for M10"),
        ("Is a washer under the lug ok on an M8 stud?", "No: no washer goes under the lug"),
    ],
)
def test_the_hole_of_a_lug_is_no_stud_and_its_cable_is_neither(text, told):
    assert plain(on("terminals", text).headline).startswith(told)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "The 200 A fuse trips after about a second, thruster 180 A, 50 mm2. May I put in 300 A?",
            "No larger fuse until",
        ),
        ("A 250 A fuse pops the moment I press, thruster 190 A. Fit 350 A?", "No larger fuse until the cause is found"),
        (
            "Fuse 250 blew as soon as the thruster kicked in, it draws 200 A, cable 70mm2. Is 300 A ok?",
            "No larger fuse",
        ),
        ("My windlass fuse (100 A) trips right away, motor is 80 A. A 150 A fuse?", "No larger fuse until the cause"),
        # too small for its load, or nothing blew
        (
            "A fuse of 200A blew after two minutes of use, thruster 180 A, 70 mm2. is 250 A ok?",
            "Yes: a 250 A fuse suits",
        ),
        ("A 150 A fuse blows at once on a 180 A thruster, 70 mm2. Go 225 A?", "Yes: a 225 A fuse suits"),
        ("Can I fit a 300 A fuse on 50 mm2 with a 180 A thruster?", "Only just: a 300 A fuse is over the 250 A"),
        ("What fuse for a 180 A thruster that runs for a second at a time?", "Fit a 225 A fuse"),
    ],
)
def test_a_fuse_that_blows_at_once_has_a_cause(text, told):
    assert plain(on("fuse-size", text).headline).startswith(told)


@pytest.mark.parametrize(
    ("text", "topic", "told"),
    [
        (
            "I swapped my 90 Ah AGM for a 150 Ah AGM. Is the 20 A charger enough?",
            "charger-size",
            "Yes: 20 A suits 150 Ah",
        ),
        ("Replaced 70 Ah with 110 Ah AGM, same 12 A charger, fine?", "charger-size", "Yes: 12 A suits 110 Ah"),
        (
            "Put a 200Ah lithium in place of the 120 Ah AGM. Charger 20A ok?",
            "charger-size",
            "Only just: for 200 Ah of lith",
        ),
        (
            "Upgraded from a 12 A charger to 30 A for my 120 Ah AGM. Too much?",
            "charger-size",
            "No, it fits: 30 A suits 120",
        ),
        (
            "Replaced the 650 CCA battery by one of 900 CCA, thruster draws 300 A. ok now?",
            "run-check",
            "Yes: your 900 CCA",
        ),
        ("He replaced his 80Ah by 120 Ah. My charger has 10 A, ok?", "charger-size", "We can't say yet: the amp-hours"),
        # only thought of, or joined
        (
            "Should I replace my 80 Ah AGM with a 120 Ah AGM? Charger 15 A",
            "charger-size",
            "Yes in both cases, 80 Ah and",
        ),
        ("80 Ah AGM with a 120 Ah AGM in parallel, charger 15A fine?", "charger-size", "Only just: for 200 Ah of AGM"),
    ],
)
def test_of_what_was_changed_the_new_one_counts(text, topic, told):
    assert plain(on(topic, text).headline).startswith(told)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "90 Ah lithium, BMS 100 A continuous, 200 A for 10 s, thruster 270 A. ok?",
            "No: your 90 Ah lithium battery allows 200 A at most, even for 10 s",
        ),
        (
            "100 Ah lithium, 100 A continuous and 300 A for 5 s, thruster 250 A. ok?",
            "No: your 100 Ah lithium battery allows 300 A and only 100 A after 5 s",
        ),
        (
            "LFP 200 Ah: 150 A cont, 400 A peak 10 s. Thruster draws 250 A. Will it do?",
            "No: your 200 Ah lithium battery allows 400 A at first but only 150 A after 10 s",
        ),
        ("Lithium, limit 100 A, thruster 280 A ok?", "No: your lithium battery allows 100 A, and your thruster draws"),
        ("Lithium bms 300 A continuous, thruster 200 A ok?", "Yes: your lithium battery allows 300 A"),
    ],
)
def test_the_seconds_of_a_limit_are_weighed(text, told):
    assert plain(on("run-check", text).headline).startswith(told)


def test_further_batteries_tell_what_of_their_limit_counts():
    answer = on("run-check", "100 Ah lithium, BMS 100 A continuous, 200 A for 10 s, thruster 280 A. ok?")
    assert any("of which 320 A is relied on" in plain(change.say) for change in answer.would_change)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "The box is 358 mm long inside, 178 wide and 195 high. Will an L5 case go in?",
            "Only just: a group 49 (L5) goes",
        ),
        ("Box 330 x 190 x 220 mm inside. Does an L4 battery fit?", "Yes: a group 94R (L4) goes in"),
        ("H8 battery into a 340 x 180 x 200 mm box?", "No: a group 49 (H8) does not go in"),
        ("What size is an LN5 case?", "Group 49 (LN5) is at most 354 x 175 x 190 mm"),
        ("What size is a group 31 case?", "Group 31 is at most 330"),
    ],
)
def test_european_names_of_cases_are_known(text, told):
    assert plain(on("group-size", text).headline).startswith(told)


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("Should I top up my flooded battery with tap water? My neighbour does, and his have lasted six years.", False),
        ("My neighbour's AGM batteries are 9 years old and still fine. Is gel better than AGM for me?", False),
        ("My brother's batteries are seven years old. Is my 10 A charger ok for 100 Ah AGM?", False),
        ("My husband says our batteries are six years old. Replace them?", True),
        ("The previous owner's batteries, 9 years old, are still aboard. Should I replace them?", True),
        ("Customer's AGM: his battery is 6 years old, replace?", True),
    ],
)
def test_the_age_of_another_mans_batteries_is_not_theirs(text, asked):
    assert any(item.topic == "replacement" for item in talk(text).answers) is asked


def test_of_his_and_mine_mine_is_judged():
    text = "His batteries lasted 12 years, mine are 3 years old, flooded. Replace?"
    assert plain(on("replacement", text).headline).startswith("Perhaps soon: at 3 years")


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("My charger has a switch: 1 gel, 2 agm, 3 wet. Batteries are agm. Which?", "Use position 2, the AGM setting"),
        (
            "Charger positions: A wet, B AGM, C gel, D lithium. I have gel batteries. Which one?",
            "Use position C, the gel",
        ),
        ("Settings are gel, agm, calcium and lithium; mine is a LiFePO4. Which do I use?", "Use the lithium setting"),
        (
            "Charger for my AGM has settings: GEL 14.1, AGM 14.7, FLOODED 14.4, EQ 15.5. Which?",
            "Use the AGM setting: its 14.7",
        ),
        (
            "Dial has 1 = flooded 14.4, 2 = AGM 14.7, 3 = gel 14.1. Gel battery. Which?",
            "Use position 3, the GEL setting",
        ),
        ("Charger has only a gel and a wet setting. Battery is AGM. Which?", "None is made for an AGM battery"),
        ("Charger has gel, agm and wet settings. Which one do I take?", "We can't say yet: leave the switch alone"),
        ("Charger on agm setting, battery agm, ok?", "Yes: the AGM setting"),
    ],
)
def test_of_listed_settings_the_batterys_own_is_named(text, told):
    assert plain(on("charger-setting", text).headline).startswith(told)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Will a full wet battery freeze at -20 C, and will a half empty one?", "No, neither at -20"),
        (
            "Does a full AGM freeze at -25 C? And a flat one?",
            "At -25 °C (-13 °F) a full one does not freeze, a flat one can",
        ),
        ("At -15 °C will a half charged battery freeze, and a fully charged one?", "No, neither at -15"),
        (
            "Freezing point of a full and of an empty lead battery?",
            "A full one freezes near -59 °C (-75 °F), a flat one",
        ),
        (
            "Will a half empty flooded battery freeze at -20 C?",
            "No, it will not freeze at -20 °C (-4 °F): it is about 50 %",
        ),
        ("Full flooded battery, -30 C, will it freeze?", "No, it will not freeze at -30 °C (-22 °F): it is full"),
    ],
)
def test_two_charges_are_both_answered(text, told):
    assert plain(on("freeze-point", text).headline).startswith(told)


@pytest.mark.parametrize(
    ("text", "over"),
    [
        ("My cable run is 6 metres, 8 with the bends, 300 A at 12 V. What size?", "over 8 m"),
        ("5 m straight line, 6.5 m along the hull, 200 A. Cable size?", "over 6.5 m"),
        ("It's 4 m to the thruster, or 6 m if I follow the bilge. 250 A, what cable?", "over 6 m"),
        ("10 feet direct, 14 feet round the locker, 300 A. Gauge?", "over 14 ft"),
        ("7 m out and 7 m back, 300 A 12 V. What size of cable?", "over 7 m"),
        ("7 m each way, 14 m in all, 300 A. Cable?", "over 7 m"),
    ],
)
def test_a_cable_is_as_long_as_it_is_laid(text, over):
    assert over in plain(on("cable-size", text).headline)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "Alt 60 A, bow bank 180 Ah AGM + house 400. DC-DC 30A to bow. Enough?",
            "Only just: it pulls about 33 A of the 48 A",
        ),
        (
            "70 A alternator, a 350 Ah house bank, and a 30 A dc-dc for my AGM bow battery. ok?",
            "Only just: it pulls about 33",
        ),
        ("115 A alternator, house 300 Ah, dc-dc 30 A to the AGM at the bow, ok?", "Yes: it pulls about 33 A, within"),
        ("Alternator 60 A, dc-dc 30 A to the AGM bow bank. ok?", "Yes: it pulls about 33 A, within the 48 A"),
    ],
)
def test_a_house_bank_on_the_same_alternator_is_counted(text, told):
    assert plain(on("dc-dc", text).headline).startswith(told)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "Is it better to use two 6 volt golf batteries, 220 Ah, in series than one 12 V starter with 900 CCA for a "
            "400 A thruster?",
            "The 900 CCA battery only just: it drops to about 8.6 V",
        ),
        (
            "Two 6V 220 Ah in series or one 12 V AGM 800 CCA for a 300 A thruster?",
            "Take the 800 CCA AGM battery: it holds",
        ),
        (
            "Which is better for my 250 A thruster, two 12V 100Ah in parallel or one 12V 850 CCA?",
            "Take the 850 CCA battery",
        ),
        (
            "For a 350 A thruster: one 12V 900 CCA or two 12V 500 CCA in parallel?",
            "Either will do: one 900 CCA battery holds",
        ),
        (
            "Two 6 V batteries with 900 CCA in series for a 12 V 400 A thruster. Enough?",
            "Just enough: your two 900 CCA",
        ),
    ],
)
def test_two_supplies_are_compared_and_not_merged(text, told):
    (answer,) = talk(text).answers
    assert plain(answer.headline).startswith(told)


@pytest.mark.parametrize(
    ("text", "amps"),
    [
        ("Our old motor took 280 A on 12 V; its successor takes 150 A on 24 V, 7 m one way. Which cable?", 150.0),
        (
            "we go over to 24 V: the previous thruster pulled 300 A, its successor 160 A. 6 m each way, which cable?",
            160.0,
        ),
        ("the new thruster draws 260 A, the old cable is 6 m of 70 mm2. Is the cable enough?", 260.0),
    ],
)
def test_the_motor_that_goes_sizes_no_cable(text: str, amps: float) -> None:
    found = on("cable-size", text)
    assert {item.value for item in found.understood if item.fact == "load.current"} == {amps}
