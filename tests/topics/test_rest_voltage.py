"""Volts at rest: charge, verdict, system, doubt."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.leadsman import default_desk
from service.reply import Answer
from service.topics.rest_voltage import TOPIC
from tests.talks import on, only, plain, talk
from tests.topics import readings
from tests.topics.readings import Facts, asks, figures


def asked(facts: Facts, *cues: str) -> Answer:
    return readings.asked(TOPIC, facts, cues)


def read(volts: float, kind: str = "flooded", **facts: object) -> Facts:
    return {"reading.voltage": volts, "battery.chemistry": kind, **{k.replace("_", "."): v for k, v in facts.items()}}


@pytest.mark.parametrize(
    ("facts", "verdict", "charge"),
    [
        (read(12.65), "yes", 100),
        (read(12.45), "yes", 75),
        (read(12.44), "marginal", 73.75),
        (read(12.24), "marginal", 50),
        (read(12.23), "no", 48.6),
        (read(11.0), "no", 0),
        (read(12.6, "agm"), "yes", 75),
        (read(12.59, "agm"), "marginal", 74.2),
        (read(12.35, "gel"), "marginal", 50),
        (read(13.1, "lfp"), "yes", 40),
        (read(13.0, "lfp"), "marginal", 30),
        (read(12.8, "lfp"), "no", 18),
        (read(25.1, "agm"), "marginal", 70.8),
        (read(37.4, bank_voltage=36), "yes", 77.1),
        (read(51.2, "lfp"), "no", 18),
        (read(6.2, battery_nominal=6), "marginal", 69),
        (read(9.6, battery_nominal=12), "no", 0),
        ({"reading.voltage": 12.58}, "yes", 91.25),  # wet-cell table decides, AGM would be marginal
        ({"battery.charge": 60}, "marginal", 60),
    ],
)
def test_charge_and_verdict(facts: Facts, verdict: str, charge: float) -> None:
    answer = asked(facts)
    assert answer.verdict == verdict
    assert figures(answer)["state_of_charge"] == pytest.approx(charge, abs=0.06)


def test_charts_of_lithium_differ_in_the_flat_part() -> None:
    def ends(volts: float) -> tuple[float | None, float | None]:
        return asked(read(volts, "lfp")).figures[0].low, asked(read(volts, "lfp")).figures[0].high

    assert ends(13.2) == (40, 77)
    assert ends(12.9) == (None, None)


@pytest.mark.parametrize(
    ("volts", "kind", "verdict"),
    [
        (12.80, "flooded", "yes"),
        (12.81, "flooded", "information"),
        (13.0, "agm", "yes"),
        (13.01, "agm", "information"),
        (13.05, "gel", "yes"),
        (13.06, "gel", "information"),
        (13.75, "lfp", "yes"),
        (13.76, "lfp", "information"),
        (14.9, "flooded", "information"),
        (15.0, "flooded", "stop"),
        (14.6, "lfp", "information"),
        (14.61, "lfp", "stop"),
        (30.6, "agm", "needs-facts"),  # 24 V not said
    ],
)
def test_surface_charge_and_overcharge(volts: float, kind: str, verdict: str) -> None:
    assert asked(read(volts, kind)).verdict == verdict


def test_overcharge_goes_to_a_technician_today() -> None:
    answer = asked(read(30.6, "agm", bank_voltage=24))
    assert (answer.verdict, answer.urgency, answer.route) == ("stop", "today", "technician")


@pytest.mark.parametrize(
    ("volts", "kind", "verdict"), [(15.6, "flooded", "information"), (16.1, "flooded", "stop"), (15.6, "agm", "stop")]
)
def test_equalising_is_for_wet_cells_to_16_volts(volts: float, kind: str, verdict: str) -> None:
    assert asked(read(volts, kind), "detail:equalising").verdict == verdict


@pytest.mark.parametrize(
    ("facts", "wanted", "said"),
    [
        ({}, "reading.voltage", "please tell us"),
        ({"reading.voltage": 128.0, "battery.nominal": 12}, "reading.voltage", "12.8"),
        ({"reading.voltage": 25.4, "battery.nominal": 12}, "bank.voltage", "24"),
        ({"reading.voltage": 18.4}, "bank.voltage", "18.4"),
        ({"reading.voltage": 4.9}, "bank.voltage", "deeply flat"),
        ({"reading.voltage": -12.6}, "reading.voltage", "swapped"),
        ({"load.current": 12.8}, "reading.voltage", "12.8"),
    ],
)
def test_what_cannot_be_is_asked_again(facts: Facts, wanted: str, said: str) -> None:
    answer = asked(facts)
    assert answer.verdict == "needs-facts"
    assert asks(answer)[0] == wanted
    assert said in answer.headline


@pytest.mark.parametrize(
    "facts",
    [
        {"reading.voltage": 12.7, "reading.gravity": 1.120, "battery.chemistry": "flooded"},
        {"reading.voltage": 12.6, "bank.voltage": 24},
        {"reading.voltage": 12.4, "battery.chemistry": "lithium-other"},
    ],
)
def test_what_contradicts_itself_goes_to_a_technician(facts: Facts) -> None:
    answer = asked(facts)
    assert (answer.verdict, answer.route) == ("needs-facts", "technician")


@pytest.mark.parametrize(
    ("facts", "urgency"),
    [
        (read(12.2), "today"),
        (read(12.3), "routine"),
        (read(12.0, "lfp"), "routine"),
        (read(9.0, "lfp", battery_nominal=12), "today"),
        ({"reading.voltage": 4.9}, "today"),
    ],
)
def test_lead_under_half_is_for_today(facts: Facts, urgency: str) -> None:
    assert asked(facts).urgency == urgency


def test_a_charging_and_a_resting_voltage_of_one_battery_cannot_both_be_at_rest() -> None:
    facts = {"reading.voltage": (12.6, 14.4)}
    answer = asked(facts, "detail:same_battery")
    assert (answer.verdict, answer.route) == ("needs-facts", "technician")
    assert asked(facts).verdict == "information"  # two batteries, one on charge
    assert asked({"reading.voltage": 12.6, "charger.voltage": 14.4}, "detail:same_battery").route == "technician"


def test_how_full_is_answered_first_where_that_is_asked() -> None:
    assert asked(read(12.5), "request:how_full").headline.startswith("About 80")
    assert asked(read(12.7), "request:how_full").headline.startswith("Full")
    assert asked(read(12.1), "request:how_full").headline.startswith("Only about 30")


def test_kind_not_said_is_asked_where_an_agm_would_be_judged_otherwise() -> None:
    assert asks(asked({"reading.voltage": 12.58})) == ["battery.chemistry"]
    assert asks(asked({"reading.voltage": 12.70})) == []


def test_of_two_batteries_the_weaker_decides_and_both_are_shown() -> None:
    answer = asked({"reading.voltage": (12.7, 12.0), "battery.chemistry": "agm"})
    assert (answer.verdict, answer.urgency) == ("no", "today")
    assert [option.verdict for option in answer.compare] == ["yes", "no"]
    assert figures(answer)["state_of_charge"] == 25


def test_two_readings_of_a_24_volt_bank_are_one_of_each_battery() -> None:
    answer = asked({"reading.voltage": (11.9, 12.3), "bank.voltage": 24, "battery.chemistry": "flooded"})
    assert [option.verdict for option in answer.compare] == ["no", "marginal"]


def test_a_good_reading_on_charge_or_just_after_tells_nothing() -> None:
    assert asked(read(12.7, reading_state="charging")).verdict == "information"
    assert asked({**read(12.7), "reading.rest_time": 0.2}).verdict == "information"
    assert asked(read(12.1, reading_state="charging")).verdict == "no"


@pytest.mark.parametrize(
    ("volts", "cues", "opening"),
    [
        (12.7, (), "Yes"),
        (12.7, ("detail:asks_bad",), "No"),
        (12.1, (), "No"),
        (12.1, ("detail:asks_bad",), "Yes"),
        (12.7, ("detail:asks_bad", "detail:asks_good"), "Yes"),
    ],
)
def test_the_opening_answers_the_question_as_put(volts: float, cues: tuple[str, ...], opening: str) -> None:
    assert asked(read(volts), *cues).headline.startswith(opening)


def test_what_a_full_one_shows_is_information() -> None:
    answer = asked({"battery.chemistry": "agm"}, "detail:reading_wanted")
    assert (answer.verdict, asks(answer)) == ("information", [])
    assert "12.80" in answer.headline


@given(
    volts=st.floats(0, 64),
    kind=st.sampled_from(["flooded", "agm", "gel", "lead", "lfp", None]),
    bank=st.sampled_from([None, 12.0, 24.0, 36.0, 48.0]),
)
def test_any_reading_has_an_answer(volts: float, kind: str | None, bank: float | None) -> None:
    facts = {"reading.voltage": volts, "battery.chemistry": kind, "bank.voltage": bank}
    answer = asked({name: value for name, value in facts.items() if value is not None})
    charge = figures(answer).get("state_of_charge", 50)
    assert 0 <= charge <= 100
    assert answer.verdict != "yes" or charge >= 40


def starts(text: str, start: str) -> bool:
    return plain(on("rest-voltage", text).headline).startswith(start)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("Battery shows 12.8. Good?", "Yes: if it is lead, 12.8 V at rest is a good reading"),
        ("Is 12.8 V bad?", "No: if it is lead, 12.8 V at rest is a good reading"),
        ("reads 25.4 V, 24 V bank, ok?", "Yes: if it is lead, 25.4 V at rest (12.7 V each)"),
        ("AGM shows 12.8. Good?", "Yes: 12.8 V at rest is a good reading for your AGM"),
        ("650 CCA battery shows 12.8. Good?", "Yes: 12.8 V at rest is a good reading for your lead"),
        ("Battery shows 13.2. Good?", "Too early to say"),
    ],
)
def test_of_an_unknown_kind_the_good_reading_is_that_of_lead(text: str, start: str) -> None:
    assert starts(text, start)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("pike. battery reads 12.8 after nite on charger. thats ok ya? and when i push button goes to 9.1",
         "Too early to say: 12.8 V on charge, or soon after"),
        ("12.8 fresh off the charger, good?", "Too early to say: 12.8 V on charge, or soon after"),
        ("AGM 12.8 at noon, ok? and when I push the button 9.1", "Yes: 12.8 V at rest"),
        ("AGM reads 12.8 with the lights on. fine?", "Yes: 12.8 V with something on"),
        ("AGM 12.8, two days after a night on the charger, ok?", "Yes: 12.8 V at rest"),
    ],
)  # fmt: skip
def test_what_is_on_and_what_was_charged_is_told_of_its_own_reading(text: str, start: str) -> None:
    assert starts(text, start)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("What voltage is a half charged AGM? And at what voltage should I stop using the thruster?",
         "About 12.30 V at rest: an AGM battery shows that at 50 %; stop at about 12.3 V"),
        ("at how many volts is a gel battery half full?", "About 12.35 V at rest: a gel battery shows that at 50 %."),
        ("voltage when battery is 30% full, agm", "About 12.06 V at rest: an AGM battery"),
        ("what voltage does a full agm show?", "An AGM battery shows about 12.80 V at rest when full"),
        ("what volts is 50 percent on a flooded?", "About 12.24 V at rest: a wet-cell battery shows that at 50 %."),
        ("what is the voltage of an AGM at 75 %", "About 12.60 V at rest: an AGM battery shows that at 75 %."),
        ("My AGM is half full, is that good?", "Only just: your battery is 50 % full"),
        ("is 12.8 V good for AGM and what's good for lifepo4?", "Yes: 12.8 V at rest is a good reading for your AGM "
         "battery, which is full; lithium is good from 13.10 V on (40 %)."),
        ("is 12.8 V good for AGM, as lithium has more?", "Yes: 12.8 V at rest is a good reading for your AGM battery, "
         "which is full."),
    ],
)  # fmt: skip
def test_volts_are_told_where_they_are_asked_for(text: str, start: str) -> None:
    assert starts(text, start)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("Left the AGM on board all winter and in spring it has 9.8 volts. what went wrong?",
         "Most likely your battery stood discharged: 9.8 V at rest is deeply flat"),
        ("why is my 12 V battery dead after the winter, shows 10.1", "Most likely your battery stood discharged"),
        ("AGM 12.4 every morning after full charge. bad battery or a drain?", "Either: charge it full, a cable off"),
        ("wet battery 12.3 in the morning, is something draining it or is it dead?", "Either: charge it full"),
        ("What is killing my batteries? always 12.1 when I come", "Most likely your battery stood discharged"),
        ("AGM at 12.1, what now?", "Charge it today: 12.1 V at rest"),
        ("AGM 12.4 in the morning. is it bad?", "A little"),
        ("AGM at 12.0 in spring, good?", "No, not yet: 12.0 V"),
        ("battery 10.2 V no load. recoverable?", "Perhaps: 10.2 V at rest is deeply flat if it is a 12 V battery"),
    ],
)  # fmt: skip
def test_what_became_of_a_low_one(text: str, start: str) -> None:
    assert starts(text, start)


@pytest.mark.parametrize(
    ("text", "change"),
    [
        ("AGM at 12.2 V, good?", "12.6 V or more at rest after charging (75 %; full is 12.80 V)"),
        ("wet battery 24.4 V, 24 V bank, good?", "24.9 V or more at rest after charging (75 %; full is 25.30 V)"),
        ("lithium 12.9 V, good?", "13.1 V or more at rest after charging (40 %; full is 13.60 V)"),
    ],
)
def test_the_least_good_reading_stands_beside_that_of_a_full_one(text: str, change: str) -> None:
    assert plain(on("rest-voltage", text).would_change[0].say) == change


@pytest.mark.parametrize(
    ("text", "lost"),
    [
        ("Is the AGM shot? It rests at 12.4 a day after charging.", True),
        ("AGM rests at 12.4, two days after the last charge, ok?", True),
        ("AGM rests at 12.7, a day after charging, ok?", False),
        ("AGM rests at 12.4, ok?", False),
    ],
)
def test_a_charge_that_is_gone_after_a_day_is_more_than_its_own_loss(text: str, lost: bool) -> None:
    steps = [step.say for step in on("rest-voltage", text).working]
    assert any("off the charger is more than it loses by itself" in step for step in steps) == lost


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("Is 12.5 V good an hour after charging, flooded?", "Only just: 12.5 V is low so soon after charging, when a "
         "wet-cell battery charged full still shows over 12.65 V"),
        ("My AGM shows 12.6 V half an hour after the charger came off, ok?", "Only just: 12.6 V is low so soon"),
        ("Gel reads 12.2 V ten minutes after the charger, is it ok?", "No, not yet: 12.2 V is low so soon"),
        ("24.8 V one hour after charging, two AGM in series. good?", "Only just: 24.8 V is low so soon after charging, "
         "when an AGM bank charged full still shows over 25.60 V"),
        ("Wet-cell shows 12.4 V after nine hours of charging, ok?", "Only just: 12.4 V is low so soon after charging"),
        ("Charged the gel for 7 hours and now it reads 12.3 V, is it ok?", "No, not yet: 12.3 V is low so soon after"),
        ("12.4 volts wet, one hour off the charger, how full?", "About 70 % full"),
        ("12.9 V an hour after charging, flooded, good?", "Too early to say: 12.9 V is more than"),
        ("12.4 V, an hour after the charger went on, flooded. good?", "Only just: 12.4 V at rest"),
        ("12.4 V flooded, an hour after motoring, good?", "Only just: 12.4 V at rest"),
        ("wet 12.5 V measured two hours after charging, is that healthy?", "Yes: 12.5 V at rest"),
    ],
)  # fmt: skip
def test_a_low_reading_soon_after_a_charge_is_low_whatever_it_reads_later(text: str, start: str) -> None:
    assert starts(text, start)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("is 12.8 volts good for a wet battery thats been off the charger since yesterday?", "Yes: 12.8 V at rest"),
        ("My AGM was taken off charge for two days and shows 12.7 V. Is that fine?", "Yes: 12.7 V at rest"),
        ("The gel has been off the charger for 8 hours and reads 12.8 V, good?", "Yes: 12.8 V at rest"),
        ("AGM came off the charger ten minutes ago and reads 12.8, good?", "Too early to say: 12.8 V on charge"),
        ("AGM has been off the charger, 12.8 V, is that good", "Too early to say: 12.8 V on charge"),
    ],
)
def test_since_when_the_charger_is_off_tells_whether_it_rested(text: str, start: str) -> None:
    assert starts(text, start)


@pytest.mark.parametrize(
    ("turns", "start"),
    [
        (("12.5 V flooded, good?", "what should it be after a night?"), "A wet-cell battery shows about 12.65 V"),
        (("12.6 V AGM, fine?", "What should it read the next morning?"), "An AGM battery shows about 12.80 V"),
        (("what should my gel show after a night of rest?",), "A gel battery shows about 12.85 V at rest when full"),
    ],
)
def test_what_it_should_show_after_a_night_is_what_a_full_one_shows(turns: tuple[str, ...], start: str) -> None:
    assert plain(talk(*turns).answers[0].headline).startswith(start)


def test_two_that_were_parted_to_be_read_are_judged_by_their_readings() -> None:
    found = only("Our two AGMs work in parallel, with the strap off one reads 12.7 and the other 12.2. What now?")
    assert (found.topic, found.verdict) == ("rest-voltage", "no")
    assert plain(found.headline).startswith("Charge the one at 12.2 V alone")


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("AGM, it reads 12.2 now, in November it had 12.8. Good?", "No, not yet: 12.2 V at rest"),
        ("Gel, 12.8 in the evening and 12.3 in the morning with nothing on. Normal?", "No: from 12.8 V to 12.3 V in "
         "1 day with nothing on is no normal loss; main switch off"),
        ("Two AGMs stood disconnected, 12.8 in October and 12.2 now. Is that normal?", "No: from 12.8 V to 12.2 V with "
         "its cables off is no normal loss; charge it today, rest it a day, and a load test"),
    ],
)  # fmt: skip
def test_volts_of_a_month_or_an_evening_before_are_no_second_battery(text: str, start: str) -> None:
    assert plain(on("rest-voltage", text).headline).startswith(start)


def test_volts_that_fell_overnight_with_nothing_on_are_no_load_test() -> None:
    assert only("It sank from 12.8 to 12.3 overnight with everything off, 100 Ah gel. Why?").topic == "standing-drain"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("How can I tell when my gel is fully charged?", "12.85 V"),
        ("When is an AGM battery full?", "12.80 V at rest when full"),
    ],
)
def test_how_one_knows_that_it_is_full_is_told_by_its_volts(text: str, told: str) -> None:
    found = only(text)
    assert (found.topic, found.verdict) == ("rest-voltage", "information")
    assert told in plain(found.headline)


def test_volts_on_charge_do_not_tell_how_full_it_is() -> None:
    found = on("rest-voltage", "The voltmeter shows 13.3, charger on float for days now, lithium. Is it full?")
    assert (found.verdict, found.headline[:16]) == ("information", "Too early to say")


def test_what_happened_to_a_battery_that_stood_is_told() -> None:
    found = on("rest-voltage", "Left the boat for 3 months, the gel shows 12.1 now. What happened?")
    assert plain(found.headline).startswith("Most likely your battery stood discharged: 12.1 V at rest")


@pytest.mark.parametrize(
    "text",
    [
        "gel at 12.9 V after charging, then pushes, later 12.4. bad?",
        "12.8 V, after a few pushes it was 12.4, gel",
    ],
)
def test_of_volts_before_and_after_a_use_the_later_ones_count(text):
    (found,) = default_desk().ask(text).answers
    assert [item.value for item in found.understood if item.fact == "reading.voltage"] == [12.4]
    assert "alone" not in found.headline


def test_volts_tell_a_charge_and_say_neither_yes_nor_no_to_a_battery_that_may_be_too_small():
    (found,) = default_desk().ask("it rests at 12.0 V, is my 80 Ah wet too small?").answers
    assert found.headline.startswith("12.0")


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("my 12 V battery reads 32.6 V on the meter, all switched off. How come?", ["rest-voltage"]),
        ("two 12 V batteries read 31.8 together", ["hazard"]),
        ("12 V battery, charger on: 31.8 V on the meter", ["hazard", "rest-voltage"]),
        ("24 V bank, 31.8 V on the tester", ["hazard"]),
    ],
)
def test_volts_that_one_battery_cannot_have_are_a_slip_and_no_charger(text: str, topics: list[str]) -> None:
    assert [item.topic for item in talk(text).answers] == topics


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("gel 12.8 V, lithium 12.8 V. Are both charged?", "at 12.8 V the gel is about 95 % full, and the lithium"),
        (
            "The wet start battery and the LFP house battery both rest at 12.7 V. Good?",
            "at 12.7 V the wet-cell is full",
        ),
        ("12.6 on the lithium and 12.6 on the AGM, so they are equally full?", "at 12.6 V the lithium is about 15 %"),
        (
            "12.1 on both, one is a gel and one is a wet battery",
            "at 12.1 V the gel is about 30 % full, and the wet-cell",
        ),
    ],
)
def test_one_reading_of_two_kinds_is_judged_for_each(text, head):
    (found,) = default_desk().ask(text).answers
    assert found.verdict == "no"
    assert f"No, not yet: {head}" in plain(found.headline)
    assert len(found.compare) == 2


@pytest.mark.parametrize(
    "text",
    [
        "my AGM rests at 12.5 V, is that good? The neighbour has lithium",
        "Our gel shows 12.6 V after a night. Is an AGM any better, both in the cold and for a thruster?",
    ],
)
def test_a_kind_without_a_reading_is_not_given_one(text):
    found = on("rest-voltage", text)
    assert found.compare == ()


def test_two_good_readings_are_full_only_where_both_are():
    (found,) = default_desk().ask("AGM 12.72 and lithium 13.2, both full?").answers
    assert found.verdict == "yes"
    assert found.headline.startswith("No: 12.72")


@pytest.mark.parametrize(
    ("text", "charge", "head"),
    [
        (
            "The dash shows 12.1 V, my hand meter on the posts 12.5 V. Who do I trust?",
            81.25,
            "The meter on the battery",
        ),
        ("gel, 12.75 V on the posts with my multimeter, 12.4 says the gauge. Which is it?", 87.5, "The meter on the"),
        ("my panel shows 12.2 but at the battery it is 12.6, is that good? It is AGM", 75, "Yes: 12.6 V at rest"),
    ],
)
def test_of_a_gauge_and_a_meter_on_the_posts_the_posts_count(text, charge, head):
    found = on("rest-voltage", text)
    assert found.verdict == "yes"
    assert figures(found)["state_of_charge"] == pytest.approx(charge)
    assert plain(found.headline).startswith(head)
    assert len({item.value for item in found.understood if item.fact == "reading.voltage"}) == 2


@pytest.mark.parametrize(
    "text",
    [
        "my gauge reads 12.4 for the house and 12.8 at the start battery, which is low?",
        "12.8 on the gauge last week, 12.3 at the battery now, which is it",
    ],
)
def test_two_batteries_and_two_days_are_no_two_meters(text):
    assert "meter on the battery" not in on("rest-voltage", text).headline


@pytest.mark.parametrize("asked", ["our gel shows 13.0 V on float", "an AGM with a float voltage of 12.8, good?"])
def test_a_low_reading_on_float_is_not_one_at_rest(asked):
    """A charger at float holds more than that: it is off, or does not hold the battery."""
    answer = on("rest-voltage", asked)
    assert answer.verdict == "needs-facts"
    assert "float" in answer.headline
    assert on("rest-voltage", "an AGM at 12.8 V, off float since yesterday and rested").verdict == "yes"


def test_two_in_parallel_do_not_read_far_apart():
    told = "they were apart when you measured"
    steps = [item.say for item in on("rest-voltage", "two AGMs in parallel rest at 12.8 and 12.3 V, good?").working]
    assert any(told in step for step in steps)
    steps = [item.say for item in on("rest-voltage", "two AGMs in series rest at 12.8 and 12.3 V each, good?").working]
    assert not any(told in step for step in steps)
