"""Which setting and which volts suit which battery."""

import pytest

from service.leadsman import default_desk
from service.topics.charger_setting import TOPIC
from tests.building import case
from tests.talks import on, only, plain, talk

KINDS = ("flooded", "agm", "gel", "lfp")


@pytest.mark.parametrize(
    ("kind", "absorption", "floating"),
    [
        ("flooded", (14.2, 14.8), (13.2, 13.5)),
        ("agm", (14.2, 14.8), (13.2, 13.8)),
        ("gel", (13.8, 14.4), (13.5, 13.8)),
        ("lfp", (14.2, 14.6), (13.3, 13.6)),
    ],
)
@pytest.mark.parametrize("volts", [12.0, 24.0])
def test_the_volts_of_a_kind(kind, absorption, floating, volts):
    answer = TOPIC.answer(case({"battery.chemistry": kind, "bank.voltage": volts}))
    assert answer.verdict == "information"
    for found, (low, high) in zip(answer.figures, (absorption, floating), strict=True):
        assert (found.low, found.high) == pytest.approx((low * volts / 12, high * volts / 12))


@pytest.mark.parametrize(
    ("battery", "verdicts"),
    [  # setting: flooded, AGM, gel, lithium
        ("flooded", ("yes", "marginal", "marginal", "marginal")),
        ("agm", ("marginal", "yes", "marginal", "marginal")),
        ("gel", ("no", "no", "yes", "no")),
        ("lfp", ("no", "no", "marginal", "yes")),
    ],
)
def test_every_setting_on_every_battery(battery, verdicts):
    found = tuple(
        TOPIC.answer(case({"battery.chemistry": battery, "charger.setting": setting})).verdict for setting in KINDS
    )
    assert found == verdicts


@pytest.mark.parametrize(
    ("kind", "volts", "held", "verdict"),
    [
        ("agm", 14.4, False, "yes"),
        ("gel", 14.1, False, "yes"),
        ("lfp", 14.2, False, "yes"),
        ("gel", 14.7, False, "no"),
        ("agm", 14.9, False, "no"),
        ("lfp", 14.8, False, "no"),
        ("flooded", 14.4, True, "no"),
        ("gel", 14.4, True, "no"),
        ("lfp", 13.5, True, "yes"),
        ("gel", 13.8, True, "yes"),
        ("flooded", 13.8, True, "marginal"),
        ("agm", 14.0, False, "marginal"),
        ("flooded", 12.9, True, "marginal"),
        ("agm", 28.8, False, "yes"),
    ],
)
def test_a_voltage_as_a_stage_and_held(kind, volts, held, verdict):
    cues = {"detail:held"} if held else set()
    assert TOPIC.answer(case({"battery.chemistry": kind, "charger.voltage": volts}, cues=cues)).verdict == verdict


@pytest.mark.parametrize(("kind", "verdict"), [("flooded", "yes"), ("agm", "no"), ("gel", "no"), ("lfp", "no")])
def test_only_wet_cells_are_equalised(kind, verdict):
    assert TOPIC.answer(case({"battery.chemistry": kind}, cues={"detail:equalise"})).verdict == verdict


def test_a_programme_that_equalises_by_itself_wants_somebody_there():
    cues = {"detail:equalise", "detail:by_itself"}
    assert TOPIC.answer(case({"battery.chemistry": "flooded"}, cues=cues)).verdict == "marginal"


@pytest.mark.parametrize(
    ("kind", "cues", "verdict"),
    [
        ("timer", {"detail:left_on"}, "no"),
        ("trickle", {"detail:left_on"}, "no"),
        ("timer", {"detail:watched"}, "marginal"),
        ("timer", {"detail:watched", "detail:left_on"}, "no"),
    ],
)
@pytest.mark.parametrize("battery", [{}, {"battery.chemistry": "flooded"}])
def test_a_charger_that_cannot_see_the_battery(kind, cues, verdict, battery):
    assert TOPIC.answer(case({"charger.kind": kind} | battery, cues=cues)).verdict == verdict


@pytest.mark.parametrize("kind", ["timer", "trickle"])
def test_one_that_has_been_on_for_months_comes_off_now(kind):
    found = TOPIC.answer(case({"charger.kind": kind}, cues={"detail:since_months", "detail:left_on"}))
    assert (found.verdict, "off now" in found.headline) == ("no", True)


def test_a_desulphating_charger_on_agm_is_refused_for_agm():
    found = TOPIC.answer(case({"charger.setting": "agm", "charger.voltage": 15.0}, cues={"detail:equalise"}))
    assert (found.verdict, found.asks) == ("no", ())


def test_a_smart_charger_may_stay_on_a_lead_battery():
    facts = {"battery.chemistry": "agm", "charger.kind": "smart"}
    assert TOPIC.answer(case(facts, cues={"detail:left_on"})).verdict == "yes"


@pytest.mark.parametrize("facts", [{"charger.voltage": 24.0}, {"bank.voltage": 24.0, "battery.count": 1.0}])
def test_a_24_v_charger_never_goes_on_one_12_v_battery(facts):
    assert TOPIC.answer(case(facts | {"battery.nominal": 12.0})).verdict == "no"


@pytest.mark.parametrize(
    ("facts", "cues", "asked"),
    [
        ({}, set(), "battery.chemistry"),
        ({"battery.chemistry": "lead"}, set(), "battery.chemistry"),
        ({"charger.setting": "gel"}, set(), "battery.chemistry"),
        ({"battery.chemistry": "lithium-other"}, set(), "battery.chemistry"),
        ({"battery.chemistry": "lfp"}, {"detail:same_charger"}, "charger.setting"),
        ({"battery.chemistry": "lfp", "charger.kind": "alternator"}, set(), "charger.kind"),
    ],
)
def test_what_is_missing_is_asked(facts, cues, asked):
    answer = TOPIC.answer(case(facts, cues=cues))
    assert answer.verdict == "needs-facts"
    assert answer.asks[0].fact == asked


def test_another_lithium_gets_no_volts():
    answer = TOPIC.answer(case({"battery.chemistry": "lithium-other"}))
    assert not answer.figures
    assert not any(sign.isdigit() for sign in answer.headline)


def test_frost_comes_before_the_right_setting():
    facts = {"battery.chemistry": "lfp", "charger.setting": "lfp", "ambient.temperature": -5.0}
    assert TOPIC.answer(case(facts)).verdict == "no"


def test_a_voltage_that_is_wrong_for_every_kind_is_refused_without_the_kind():
    assert TOPIC.answer(case({"charger.voltage": 17.0})).verdict == "no"


def test_the_headline_answers_does_it_matter():
    facts = {"battery.chemistry": "gel", "charger.setting": "flooded"}
    assert TOPIC.answer(case(facts, cues={"detail:harm"})).headline.startswith("Yes, it matters")


@pytest.mark.parametrize(
    ("text", "verdict", "told"),
    [
        (
            "Charger gives 14.6 V to my AGM, the battery's label says max 14.4. Which counts?",
            "no",
            "battery's own 14.4",
        ),
        ("Gel. The booklet says never more than 14.1, the charger gives 14.4. OK?", "no", "14.4 V is over that"),
        ("lithium battery sticker: 14.2 max. charger gives 14.6. ok?", "no", "battery's own 14.2"),
        ("lithium label: max charge voltage 14.2, my charger does 14.6, ok?", "no", "battery's own 14.2"),
        ("lithium, 14.2 V max on the label, charger 14.6 ok?", "no", "battery's own 14.2"),
        ("LiFePO4, the maker allows up to 14.4, the charger pushes 14.6, alright?", "no", "battery's own 14.4"),
        ("max 14.1 by the data sheet of my gel, charger sits at 14.4, ok?", "no", "battery's own 14.1"),
        ("the charger's label says max 14.8 V, AGM. fine?", "yes", "14.8 V is inside"),
        ("Our AGMs say max charge 14.5 V but the charger goes to 14.7. OK?", "no", "keep to the battery's own 14.5 V"),
        ("The batteries state 14.5 max, the charger gives 14.7. OK?", "no", "keep to the battery's own 14.5 V"),
        ("AGM, the sticker says max 14.8 and the charger gives 14.4. OK?", "yes", "14.4 V is inside"),
        ("AGM, label: max 20 A. The charger gives 14.4 V. OK?", "yes", "14.4 V is inside"),
    ],
)
def test_the_battery_s_own_limit_comes_before_the_table(text: str, verdict: str, told: str) -> None:
    answer = next(item for item in talk(text).answers if item.topic == "charger-setting")
    assert answer.verdict == verdict
    assert told in answer.headline.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("text", "verdict", "told"),
    [
        (
            "I say the charger may stay on AGM for the lithium, she says never. Who is right?",
            "no",
            "the AGM setting goes up",
        ),
        ("Is it fine to run the charger on AGM with lithium?", "no", "takes 14.6 V at most"),
        ("I leave the charger at AGM for a lithium battery, good?", "no", "takes 14.6 V at most"),
        ("Can my charger work on wet for a gel battery?", "no", "takes 14.4 V at most"),
        ("the charger may stay on its gel setting for lithium, right?", "marginal", "the gel setting stays within"),
        ("charger for AGM, lithium in the bow, ok?", "information", "Use the AGM setting"),
        ("can I use my charger on lithium with AGM next to it?", "needs-facts", "must have a lithium setting"),
    ],
)
def test_what_a_charger_stays_on_for_another_kind_is_its_setting(text, verdict, told):
    found = on("charger-setting", text)
    assert found.verdict == verdict
    assert told in plain(found.headline)


def test_a_setting_that_goes_too_high_tells_what_would_do():
    found = on("charger-setting", "Is it fine to run the charger on AGM with lithium?")
    assert any("14.6 V or less on that setting" in plain(step.say) for step in found.working)


@pytest.mark.parametrize(
    ("turns", "told"),
    [
        (("Can I use my car battery charger for the boat battery?",), "each kind of battery has its own"),
        (("Can I use my car battery charger for the boat battery?", "It's an AGM, 100 Ah",
          "The charger is a 6 amp one for wet batteries"), "the wet-cell (flooded) setting stays within"),
        (("My charger is for gel, the battery is AGM 90 Ah. ok?",), "the gel setting stays within"),
    ],
)  # fmt: skip
def test_what_a_charger_is_made_for_is_no_battery(turns, told):
    assert told in plain(on("charger-setting", *turns).headline)


def test_a_car_battery_is_no_charger():
    assert [item.topic for item in talk("Will a car battery do for the Minnow?").answers] == ["run-check"]


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        (
            "A 10 amp car charger with a switch for 'AGM' and 'Std'. The thruster battery is a gel. Which position?",
            "Neither is made for a gel battery: AGM goes up to 14.8 V",
        ),
        ("my charger offers normal and AGM. I have a gel bow battery. Which position?", "Neither is made for a gel"),
        ("my charger has AGM and standard, the battery is lithium 100 Ah. Which?", "Neither is made for a lithium"),
        ("Charger with a switch normal / AGM, thruster battery is AGM. Which position?", "Use the AGM setting"),
        ("Charger has a switch: AGM / GEL / STD. Battery is gel. Which one?", "Use the gel setting"),
    ],
)
def test_a_position_is_no_kind_of_battery(text, opens):
    found = next(item for item in talk(text).answers if item.topic == "charger-setting")
    assert found.headline.replace("\u00a0", " ").startswith(opens)


def test_a_standard_battery_is_no_position():
    found = talk("is a standard AGM or a gel better for the thruster, the charger has a switch").answers[0]
    assert found.topic == "battery-type"


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("Is 14.7 V too high for charging an AGM? My charger shows it for hours.", "No: 14.7 V is inside"),
        ("Is 14.4 V ok for gel for a few hours?", "Yes: 14.4 V is inside"),
    ],
)
def test_volts_that_stand_for_hours_must_drop(text, opens):
    (found,) = talk(text).answers
    assert found.headline.replace("\u00a0", " ").startswith(opens)
    assert "if it drops to a float of" in found.headline


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("Is my charger ok for lithium? 14.4 V bulk and 13.8 V float. A mode I should worry about?", "No: 13.8"),
        ("14.4 absorption, 13.9 float: does that harm lithium?", "Yes, it matters: 13.9"),
        (
            "Which charger setting for a gel battery, and what happens if I leave it on AGM?",
            "Use the gel setting (13.8 to 14.4 V",
        ),
        ("charger is on agm, battery is gel, bad?", "Yes, it matters: the AGM setting goes up to 14.8 V"),
        ("Can I leave the charger on AGM with a gel battery?", "No: the AGM setting goes up to 14.8 V"),
    ],
)
def test_the_first_word_fits_the_first_question(text, opens):
    (found,) = talk(text).answers
    assert found.headline.replace("\u00a0", " ").startswith(opens)


@pytest.mark.parametrize(
    ("text", "lacks"),
    [
        ("My charger has a GEL setting and a flooded setting but no AGM. Which should I use?", True),
        ("AGM battery. The charger has modes for wet and gel, no AGM mode. Which one?", True),
        ("The charger settings are gel and wet, without AGM. Which for my AGM?", True),
        ("My charger has wet, gel and AGM settings. Which for AGM?", False),
        ("The charger has an AGM and a gel setting but no lithium. Which for my AGM?", False),
    ],
)
def test_nobody_is_sent_to_a_setting_that_the_charger_has_not(text, lacks):
    found = default_desk().ask(text).answers
    head = next(item.headline for item in found if item.topic == "charger-setting")
    assert ("use the AGM" not in head and "Use the AGM" not in head) == lacks


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        (
            "My neighbour says gel must never see more than 14.4 V, true?",
            "True: a gel battery takes 14.4 V at most",
        ),
        (
            "they say lithium must never go above 14.6 volts, right?",
            "True: a lithium battery takes 14.6 V at most",
        ),
        ("My mate says gel should not go over 14.1 V. Is that so?", "Not quite: a gel battery takes 14.4 V at most"),
        ("An AGM must not get more than 15.2 V, true?", "Less than that: an AGM battery takes 14.8 V at most"),
        ("is 14.4 V too much for gel?", "No: 14.4 V is inside"),
    ],
)
def test_a_limit_that_somebody_names_is_held_against_the_kinds_own(text, opens):
    found = on("charger-setting", text)
    assert plain(found.headline).startswith(opens)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "My charger gives 14.8 V and 50 A, two 75 Ah gels in parallel. Is that right?",
            "50\u00a0A is too much (30\u00a0A at most)",
        ),
        ("A 100 Ah gel, my 40 A charger stands on AGM. Is that fine?", "40\u00a0A is too much (20\u00a0A at most)"),
    ],
)
def test_too_many_amps_are_told_beside_the_wrong_volts(text, told):
    found = only("charger-setting", text)
    assert found.verdict == "no"
    assert told in found.headline


def test_amps_that_suit_are_not_told_beside_the_wrong_volts():
    found = only("charger-setting", "A 100 Ah gel, my 15 A charger stands on AGM. Is that fine?")
    assert "too much" not in found.headline


def test_agm_on_the_wet_setting_is_told_of_equalising():
    found = only("charger-setting", "My charger stands on the wet setting, the battery is an AGM. Is that all right?")
    assert found.verdict == "marginal"
    assert any("plain no" in step.say for step in found.working)
    assert "equalise" in [item.id for item in found.cautions]


def test_agm_on_the_gel_setting_is_not():
    found = only("charger-setting", "My charger stands on the gel setting, the battery is an AGM. Is that all right?")
    assert "equalise" not in [item.id for item in found.cautions]


@pytest.mark.parametrize(
    ("text", "start"),
    [
        (
            "My charger has only one mode, can it do a lithium battery?",
            "We can't say yet: the charger must have a lithium",
        ),
        ("Which setting for AGM on an ordinary charger?", "Use the AGM setting"),
        ("I found a lithium charger, may it go on an AGM?", "Only just: the lithium setting stays within"),
    ],
)
def test_a_charger_that_was_there_before_must_have_the_setting(text: str, start: str) -> None:
    assert plain(on("charger-setting", text).headline).startswith(start)


@pytest.mark.parametrize(
    "text",
    [
        "We left the charger on for 3 weeks, it is still on and shows 13.6 now. Is it ok?",
        "The charger is still on after a fortnight away and the display says 13.5 now, AGM. Is that fine?",
    ],
)
def test_ordinary_volts_on_charge_after_weeks_are_no_alarm(text: str) -> None:
    assert only(text).topic == "charger-setting"


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("Should I set the charger higher for the winter? AGM at 5 °C.", "A little: at 5 °C (41 °F) a sensor "
         "on the battery brings 14.4 V up to 14.8 V"),
        ("We sail to the tropics, must I change the charger's setting for the heat? Gel.", "A little: a gel battery "
         "wants 0.03 V more for each °C under 25 °C"),
        ("Do I need the temperature sensor of the charger? Wet-cell, 38 °C in there.", "It helps: at 38 °C (100 °F) a "
         "sensor on the battery brings 14.4 V down to 14.0 V; without one keep to 14.2 V"),
        ("Must I lower the charging voltage of my lithium in hot weather?", "No: leave the lithium setting as it is"),
        ("Which charging voltage for an AGM at 4 °C?", "At 4 °C (39 °F) a sensor on the battery brings"),
        ("Which charging voltage for an AGM at 20 °C?", "Use the AGM setting"),
        ("Which setting for an AGM over the winter?", "Use the AGM setting"),
    ],
)  # fmt: skip
def test_how_far_the_volts_go_with_the_warmth(text: str, start: str) -> None:
    headline = plain(on("charger-setting", text).headline)
    assert headline.startswith(start)
    assert len(headline.split()) <= 30


@pytest.mark.parametrize(
    "text",
    [
        "The charger bleeps since this morning and its lamp is red, 90 Ah wet. What is it after?",
        "our charger shows an error code, AGM 100 Ah, what now?",
    ],
)
def test_of_a_fault_lamp_the_volts_are_asked_and_no_size_is_told(text: str) -> None:
    found = only(text)
    assert (found.topic, found.verdict) == ("charger-setting", "needs-facts")
    assert found.asks[0].fact == "charger.voltage"


@pytest.mark.parametrize(
    ("text", "verdict", "start"),
    [
        ("The charger gives the AGM 14.7 V, is that too much in this heat, 36 °C?", "marginal", "A little: at 36 °C"),
        ("The charger gives the AGM 14.7 V, is it ok in this heat, 36 °C?", "marginal", "Only just: at 36 °C"),
        ("The charger gives the AGM 14.3 V, is it ok in this heat, 36 °C?", "yes", "Yes: 14.3 V is inside"),
        ("The charger gives the AGM 14.7 V, is it ok? It is 20 °C warm.", "yes", "Yes: 14.7 V is inside"),
    ],
)
def test_set_volts_in_the_heat_that_is_asked_about(text: str, verdict: str, start: str) -> None:
    found = on("charger-setting", text)
    assert (found.verdict, plain(found.headline).startswith(start)) == (verdict, True)


@pytest.mark.parametrize(
    "text", ["At what temperature may I charge LiFePO4?", "How cold is too cold to charge lithium?"]
)
def test_from_which_temperature_lithium_may_be_charged(text: str) -> None:
    headline = plain(on("charger-setting", text).headline)
    assert headline.startswith("At or below 0 °C (32 °F) never; up to 5 °C at most 10 A")


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("A supply at 14.3 volts stays on our gel battery for months. Is that bad?", "no"),
        ("The supply stays on my AGM battery the whole winter at 13.5 V, harmful?", "yes"),
        ("14.4 V: may that charger stay the whole winter on a wet battery?", "no"),
        ("My charger stays on gel, 14.1 V, and the battery is wet. Bad?", "marginal"),
    ],
)
def test_what_stays_on_a_battery_is_no_switch(text, verdict):
    assert only(text, "charger-setting").verdict == verdict


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("AGM. My charger won't come down from 14.5, is that right?", "no"),
        ("the wet one hangs on a charger that never leaves 14.4. good?", "no"),
        ("gel, an hour at 14.2 and then the charger comes off that. good?", "yes"),
    ],
)
def test_volts_that_a_charger_never_comes_off_are_held(text, verdict):
    assert on("charger-setting", text).verdict == verdict


def test_an_alternator_has_no_stage_that_ends():
    """At the top of the range it holds its volts for hours: no plain yes, as of a charger that drops to float."""
    assert on("charger-setting", "the alternator gives 14.4 V, good for our gel bow battery?").verdict == "marginal"
    assert on("charger-setting", "the alternator gives 14.0 V, good for our gel bow battery?").verdict == "yes"
    assert on("charger-setting", "a smart charger gives 14.4 V, good for our gel bow battery?").verdict == "yes"
