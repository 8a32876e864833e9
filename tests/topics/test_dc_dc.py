"""Converters: currents, the alternator, isolation."""

import pytest

from service.judgements import converter
from service.leadsman import default_desk
from service.say import NB
from service.topics.dc_dc import TOPIC
from tests.building import case
from tests.talks import on, plain

STEP_UP = {"charger.input_voltage": 12.0, "bank.voltage": 24.0}


@pytest.mark.parametrize(
    ("facts", "amps", "taken", "worst"),
    [
        (STEP_UP, 15.0, 33.33, 43.64),
        (STEP_UP, 30.0, 66.67, 87.27),
        ({}, 30.0, 33.33, 43.64),  # 12 V on both sides, as on most boats
        ({"charger.voltage": 28.8}, 15.0, 33.33, 43.64),
    ],
)
def test_what_it_pulls(facts, amps, taken, worst):
    answer = TOPIC.answer(case(facts | {"charger.current": amps}))
    assert answer.verdict == "information"
    assert answer.figures[0].value == pytest.approx(taken, abs=0.01)
    assert answer.figures[0].high == pytest.approx(worst, abs=0.01)
    assert answer.figures[1].value == amps


@pytest.mark.parametrize(
    ("kind", "alternator", "verdict"),
    [
        ("lfp", 100.0, "marginal"),
        ("lfp", 140.0, "yes"),
        ("agm", 100.0, "yes"),
        ("agm", 80.0, "marginal"),
        (None, 140.0, "yes"),
        (None, 100.0, "needs-facts"),
        (None, 70.0, "marginal"),
    ],
)
def test_66_7_a_from_an_alternator(kind, alternator, verdict):
    facts = STEP_UP | {"charger.current": 30.0, "alternator.current": alternator}
    answer = TOPIC.answer(case(facts | ({"battery.chemistry": kind} if kind else {})))
    assert answer.verdict == verdict
    assert answer.figures


def test_the_largest_converter_for_an_alternator():
    facts = {"alternator.current": 35.0, "battery.chemistry": "agm", "charger.kind": "dc-dc"}
    answer = TOPIC.answer(case(facts, cues={"thing:dcdc"}))
    assert [figure.value for figure in answer.figures[:2]] == pytest.approx([28.0, 25.2])


@pytest.mark.parametrize(
    ("facts", "cues", "verdict"),
    [
        ({"charger.isolated": False}, set(), "needs-facts"),
        ({"charger.isolated": False, "converter.common_negative": False}, set(), "no"),
        ({"charger.isolated": False, "converter.common_negative": True}, {"detail:not_part"}, "yes"),
        ({"charger.isolated": False, "converter.common_negative": True}, set(), "needs-facts"),
        ({"charger.isolated": False, "converter.common_negative": True}, {"detail:part_of_bank"}, "no"),
        (
            {"charger.isolated": False, "converter.common_negative": True},
            {"detail:part_of_bank", "detail:not_part"},
            "yes",
        ),
        ({"converter.common_negative": True}, {"detail:isolation"}, "information"),
    ],
)
def test_isolated_or_not(facts, cues, verdict):
    assert TOPIC.answer(case(STEP_UP | facts, cues=cues)).verdict == verdict


def test_a_non_isolated_one_between_equal_volts_needs_only_the_common_negative():
    facts = {
        "charger.input_voltage": 12.0,
        "bank.voltage": 12.0,
        "charger.isolated": False,
        "converter.common_negative": True,
    }
    assert TOPIC.answer(case(facts)).verdict == "yes"


def test_nothing_known_is_asked_for():
    assert TOPIC.answer(case({})).asks[0].fact == "charger.current"


@pytest.mark.parametrize(
    ("facts", "verdict"),
    [({"ambient.temperature": -1.0, "charger.current": 20.0}, "no"), ({"charger.kind": "alternator"}, "needs-facts")],
)
def test_lithium_in_frost_and_straight_from_an_alternator(facts, verdict):
    assert TOPIC.answer(case(facts | {"battery.chemistry": "lfp"})).verdict == verdict


@pytest.mark.parametrize(
    ("first", "second", "taken_in", "sides"),
    [
        (12.0, 24.0, 12.0, (12.0, 24.0)),  # the alternator's 12 V are told as well
        (24.0, 12.0, 12.0, (12.0, 24.0)),
        (24.0, 12.0, 24.0, (24.0, 12.0)),
        (24.0, 12.0, None, (12.0, 24.0)),
        (24.0, 24.0, 12.0, (12.0, 24.0)),
    ],
)
def test_each_side_has_its_own_volts(first, second, taken_in, sides):
    taken = {} if taken_in is None else {"charger.input_voltage": taken_in}
    assert converter.volts(case({"bank.voltage": (first, second)} | taken)) == sides


@pytest.mark.parametrize(
    ("amps", "alternator", "told"),
    [
        (20.0, 70.0, "cable and fuse are for 58 A at worst."),
        (15.0, 70.0, "44 A at worst."),
        (40.0, 70.0, "116 A at worst"),
    ],
)
def test_what_it_takes_at_worst_stands_beside_the_alternator(amps, alternator, told):
    facts = STEP_UP | {"charger.current": amps, "alternator.current": alternator, "battery.chemistry": "agm"}
    assert told in TOPIC.answer(case(facts)).headline.replace(NB, " ")


@pytest.mark.parametrize("alternator", [{}, {"alternator.current": 70.0, "battery.chemistry": "agm"}])
def test_isolated_or_not_is_answered_beside_the_amps(alternator):
    answer = TOPIC.answer(case(STEP_UP | {"charger.current": 20.0} | alternator, cues={"detail:isolated_or_not"}))
    assert answer.verdict == "needs-facts"
    assert answer.asks[0].fact == "converter.common_negative"
    assert "solated one fits every boat" in answer.headline
    assert "44" in answer.headline
    assert "58" in answer.headline


def test_a_converter_that_is_called_isolated_is_not_asked_about():
    told = case(STEP_UP | {"charger.current": 20.0}, cues={"detail:isolation"})
    assert TOPIC.answer(told).verdict == "information"


@pytest.mark.parametrize(("cues", "asks"), [({"about:charging"}, True), ({"thing:alternator"}, True), (set(), False)])
def test_the_alternator_is_asked_for_only_where_a_battery_is_charged(cues, asks):
    assert ("alternator.current" in [item.fact for item in TOPIC.answer(case({}, cues=cues)).asks]) is asks


@pytest.mark.parametrize(
    ("text", "opening"),
    [
        ("How would I fill a 24 V pair from the 12 V alternator?", f"With a DC-to-DC charger, 12{NB}V to 24{NB}V"),
        ("What does a 12 to 24 V converter pull?", "We can't say yet"),
    ],
)
def test_how_it_is_done_is_told_before_its_amps_are_known(text, opening):
    (found,) = default_desk().ask(text).answers
    assert found.headline.startswith(opening)
    assert found.verdict == "needs-facts"


@pytest.mark.parametrize(
    ("text", "taken"),
    [
        ("DC-DC 12->24, 30 A in, alternator 110 A, bow bank 2x100 Ah AGM. Sized OK? Also fuse both ends?", 30),
        ("12 to 24 V dc-dc, alternator 90 A, takes 25 A in, bank 2 x 80 Ah AGM in series, ok?", 25),
        ("My dc-dc draws 40 A on the 12 V side, alternator of 120 A, 24 V bow bank of 110 Ah AGM. Is that fine?", 40),
        ("B2B 12 to 24, input 20 A, alternator 70 A, 24 V 75 Ah AGM bank. Fits?", 20),
        ("Alternator 100A; converter 12/24 pulls 35 A from the 12 V side; two 90 Ah AGM for 24V. OK?", 35),
        ("dc-dc 12->24, 10 A out, alternator 80 A, 2 x 100 Ah AGM in series. ok?", 22),
        ("dc-dc 12 to 24, 15 A in series bank of AGM 100 Ah, alternator 90 A ok?", 33),
        ("DC-DC 12->12, 30 A, in the bow locker, alternator 90 A, 100 Ah AGM: ok?", 33),
    ],
)
def test_amps_that_go_in_are_not_those_that_come_out(text, taken):
    assert f"it pulls about {taken} A" in plain(on("dc-dc", text).headline)


def test_amps_told_of_the_side_taken_from_stay_so_in_the_conversation():
    told = ("My dc-dc 12 to 24 takes 25 A in.", "Bank is 2x100 Ah AGM in series, alternator 90 A. ok?")
    assert "it pulls about 25 A, within the 72 A" in plain(on("dc-dc", *told).headline)


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("The house side is 12 V, the thruster 24 V. Can I feed it from a converter or not?", "no"),
        ("The boat has 12 V. Could a converter run the 24 V Sturgeon thruster?", "no"),
        ("Can I power the 24 V thruster with a 12 to 24 V converter of 30 A?", "no"),
        ("Can I charge the 24 V thruster bank from 12 V with a converter?", "information"),
        ("My thruster bank is 24 V, can I feed it from a 12 V converter?", "information"),
    ],
)
def test_no_converter_feeds_a_thruster_itself(text, verdict):
    (found,) = default_desk().ask(text).answers
    assert (found.topic, found.verdict) == ("dc-dc", verdict)
    assert found.headline.startswith("No: each 100") == (verdict == "no")


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("Non-isolated 12 to 24 V dc-dc, 15 A out, one negative, the banks are separate. Ok?", "yes"),
        ("Non-isolated 12-24 dc-dc, 15 A out, one negative, 24 V bank not separate from the 12. Ok?", "needs-facts"),
    ],
)
def test_banks_told_to_be_separate_are_not_part_of_each_other(text, verdict):
    assert on("dc-dc", text).verdict == verdict


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Non-isolated 12-24 charger, 12 A, one negative for both. Is it ok, and how many amps go in?", "about 27 A"),
        ("25 A DC-to-DC, we motor 2 hours and run the Pike 3 minutes. Enough, and what does it draw?", "about 28 A"),
        ("Non-isolated 12-24 charger, 12 A, one negative for both. Is it ok?", ""),
        ("Non-isolated 12-24 charger, 12 A, each side has its own negative. Is it ok, and what does it draw?", ""),
    ],
)
def test_what_it_pulls_is_told_beside_another_answer_where_it_is_asked(text: str, told: str) -> None:
    headline = plain(on("dc-dc", text).headline)
    assert (told in headline) if told else ("pulls" not in headline)


@pytest.mark.parametrize(
    ("text", "taken"),
    [
        ("12 to 24 V converter, 18 A on the 24 volt side. How much off the engine's 12 V?", 40),
        ("converter 24 to 12 V giving 16 A on the 12 V end, what leaves the 24 V end", 8.89),
    ],
)
def test_amps_on_the_side_that_is_charged_come_out(text, taken):
    assert f"It pulls about {taken} A" in plain(on("dc-dc", text).headline)


@pytest.mark.parametrize(
    "asked",
    [
        "May I take the non-isolated sort? 12 to 24 V, 8 A out, alternator 80 A, AGM",
        "is a non-isolated 12-24 step-up acceptable at 12 A? the alternator gives 110 A, gel bank",
        "12 to 24 V, 8 A, 100 A alternator; non isolated, any harm?",
    ],
)
def test_one_that_joins_the_negatives_is_never_approved_by_its_amps(asked):
    """Whether both sides share a negative decides, however much the alternator has to spare."""
    answer = on("dc-dc", asked)
    assert answer.verdict == "needs-facts"
    assert answer.asks[0].fact == "converter.common_negative"
    assert on("dc-dc", "12 to 24 V, 8 A, isolated converter, 100 A alternator, AGM, ok?").verdict == "yes"


@pytest.mark.parametrize("asked", ["how many amps of DC-DC for a 24 V gel bank", "what size b2b for our lithium bank?"])
def test_its_size_is_not_asked_back(asked):
    """Who asks how large it must be is asked what decides that, and not for its amps."""
    answer = on("dc-dc", asked)
    assert [item.fact for item in answer.asks] == ["battery.capacity", "alternator.current"]
    assert on("dc-dc", asked, "120 Ah").verdict == "information"
    assert on("dc-dc", "how many amps does a 12 to 24 V b2b pull").asks[0].fact == "charger.current"
    assert on("dc-dc", "a b2b for our lithium: what size alternator?").asks[0].fact == "charger.current"
