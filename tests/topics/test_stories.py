"""Long tales: what only tells the story states nothing, and what the closing question names is what it is about."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.reply import Answer


def last(*turns: str) -> tuple[Answer, ...]:
    """The answers to the last turn of a conversation."""
    desk, thread, reply = default_desk(), None, None
    for turn in turns:
        reply = desk.ask(turn, thread=thread)
        thread = reply.thread
    assert reply is not None
    return reply.answers


def told(text: str) -> dict[str, object]:
    """The facts that an answer stands on, those of the message alone."""
    found = default_desk().ask(text).as_dict()["answers"]
    return {
        item["fact"] + ("#2" if item.get("of", 1) > 1 else ""): item["value"]
        for answer in found
        for item in answer["understood"]
        if item["from"] == "message"
    }


@pytest.mark.parametrize(
    ("text", "verdict", "says"),
    [
        ("The yard fitted one of your Minnows. Its battery is wet, 420 CCA, two winters old. Enough for the Minnow?",
         "yes", "9.6 V"),  # 12.6 - 210 A x 6 / 420
        ("We bought one of the Pikes at the show with both our sons. AGM, 850 CCA. Is it up to it?", "yes", "9.8 V"),
        ("Ours is one of your older Pikes, on a wet 560 CCA with two posts each side. Will it do?", "no", "8.4 V"),
        ("There are two of your Minnows aboard, on one 850 CCA AGM. Enough?", "needs-facts", "both Minnows"),
        ("Pikes bow and stern, both at the same time, on one wet 1600 CCA. Enough?", "yes", "9.7 V"),
    ],
)  # fmt: skip
def test_one_of_a_model_is_one_thruster(text, verdict, says):
    answer = next(item for item in last(text) if item.topic == "run-check")
    assert answer.verdict == verdict
    assert says in answer.headline.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("text", "topic", "verdict", "says"),
    [
        ("It showed 12.7 at breakfast and 8.8 while she held the lever over. Wet, 550 CCA, a Minnow. What I want to "
         "know is whether 8.8 is too low for it or am I fussing?", "load-voltage", "no", "11.4 V"),
        ("12.8 beforehand, 10.1 under the Pike, AGM of 850 CCA. Would you call 10.1 healthy?", "load-voltage", "no",
         "11.0 V"),
        ("Resting 12.9, under our Minnow 11.9. Wet, 640 CCA. My only question is whether 11.9 is fine.",
         "load-voltage", "yes", "11.7 V"),
        ("12.1 at rest, 11.2 under the Minnow, wet, 640 CCA. I just want to know if 12.1 is fine.", "rest-voltage",
         "no", "12.1 V at rest"),
        ("The AGM under the thruster shows 12.2 in the morning. Is 12.2 fine?", "rest-voltage", "no", "12.2 V"),
        ("They rate CCA colder than 0 C, I hear. Ours has 760 and we sit at -10 at worst. How much is there at -10?",
         "cold-cranking", "information", "at -10"),
        ("20 C in summer, and the coldest night was -8, mostly it is -2. 650 CCA: how much is there at -8?",
         "cold-cranking", "information", "740 A"),  # 650 x (1 + 0.25 x 10 / 18)
    ],
)  # fmt: skip
def test_the_closing_question_says_which_value_it_is_about(text, topic, verdict, says):
    answers = [item for item in last(text) if item.topic == topic]
    assert [item.verdict for item in answers] == [verdict]
    assert says in answers[0].headline.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("text", "verdict", "says"),
    [
        ("It was full when we went on Sunday, and today it is completely flat. 0.9 A with everything off, 90 Ah wet. "
         "How "
         "many days to half?", "information", "About 2 days"),
        ("The 90 Ah wet is completely flat today, 0.2 A flow with everything off. How many days to half?",
         "information",
         "already under half"),
        ("It is always full when we lock up. 0.3 A drain with all off, 80 Ah wet. How long until it is half?",
         "information",
         "About 5.5 days"),
    ],
)  # fmt: skip
def test_a_drain_begins_with_the_charge_at_which_it_was_left(text, verdict, says):
    (answer,) = last(text)
    assert (answer.topic, answer.verdict) == ("standing-drain", verdict)
    assert says in answer.headline.replace("\u00a0", " ")
    assert not any("0 hours" in step.say.replace("\u00a0", " ") for step in answer.working)


def test_a_charge_begins_with_what_is_there_now():
    (answer,) = last("It was full when I left and now it is completely flat, 90 Ah wet. How long on a 10 A charger?")
    assert "12.8 hours" in answer.headline.replace("\u00a0", " ")


NO_POWER = "The 110 Ah gel stays aboard full with both leads off, it is too heavy for me to lift. No electricity. "


@pytest.mark.parametrize(
    ("text", "verdict", "says"),
    [
        (NO_POWER + "Into the barn each October, out again at the end of March, five months at 12 C. Can it stand "
         "there "
         "untouched?", "yes", "Yes, but look every 90 days: charged full, your gel battery is still 90 % full"),
        ("Our wet 100 Ah stays in the boat for 4 months, no mains there, I cannot lift it. Is that all right?", "yes",
         "Yes: charge it full before you leave her and take the cables off; look every 90 days"),
        ("The 90 Ah AGM stays aboard 5 months with the leads off, no mains there. Is that all right?", "yes",
         "Yes: charge it full before you leave her, or take it home; look every 90 days"),
        ("A wet 90 Ah, charged full, stands 400 days at 25 C, no mains, and we can't lift it. All right?", "no",
         "No: bring a charger there in between"),
        ("The 80 Ah AGM, half full, stands 200 days at 20 C. There is no shore power and I can't carry it. OK?", "no",
         "No: charge it full before you leave her: from 50 %, your AGM battery is down to"),
    ],
)  # fmt: skip
def test_what_is_told_of_a_lay_up_is_not_advised_again(text, verdict, says):
    (answer,) = last(text)
    assert (answer.topic, answer.verdict) == ("storage", verdict)
    assert answer.headline.replace("\u00a0", " ").startswith(says)


def test_the_end_of_a_lay_up_is_not_its_start():
    (answer,) = last(NO_POWER + "In the barn, it comes out at the end of March after five months. Can it stand there?")
    assert not any("Laid up on" in step.say for step in answer.working)
    (answer,) = last(NO_POWER + "It goes into the barn each October and out in March, five months. Can it stand there?")
    assert any(step.say.startswith("Laid up on 1 October") for step in answer.working)


@pytest.mark.parametrize(
    ("text", "verdict", "says"),
    [
        ("Sturgeon on two 640 CCA wets in series. Enough? And may I take 12 volts for the radio from one of them?",
         "no",
         "asks for 700 CCA"),
        ("Two 12 V AGM of 760 CCA in series for the Sturgeon. Will it run, and can I tap 12 V off the first for a "
         "lamp?",
         "yes", "in series hold about 18.6 V"),
        ("24 V bank of two 820 CCA AGM in series, Sturgeon. Is it enough, and may the 12 V plotter hang on half of it?",
         "yes", "19.1 V"),
        ("Sturgeon, two gels of 900 CCA in series. Is it up to it? Could a 12 V pump run off just one of the pair?",
         "yes",
         "19.6 V"),
        ("The Sturgeon hangs on two 12 V AGM in parallel, 900 CCA each. Enough?", "no", "give 12 V, and the Sturgeon"),
        ("Sturgeon on a 12 V bank of 1200 CCA AGM, ok?", "no", "give 12 V, and the Sturgeon"),
    ],
)  # fmt: skip
def test_a_tap_does_not_change_how_the_batteries_are_joined(text, verdict, says):
    answers = {item.topic: item for item in last(text)}
    assert answers["run-check"].verdict == verdict
    assert says in answers["run-check"].headline.replace("\u00a0", " ")
    assert "bank-wiring" not in answers or answers["bank-wiring"].verdict == "no"


@pytest.mark.parametrize(
    ("text", "topic", "facts"),
    [
        ("Six locks a day and three pushes of 4 seconds in each lock, 90 Ah AGM, 240 A. How many minutes does it have?",
         "run-time", {"load.burst": 4.0}),
        ("100 Ah AGM, 250 A, 5 s a push. Does it do 8 pushes? Or 12 pushes?", "run-time",
         {"load.bursts": 8.0, "load.bursts#2": 12.0}),
        ("What charger in amps for a 100 Ah AGM, and how long from half empty if I take a 20 A one?", "charge-time",
         {"charger.current": 20.0}),
        ("Charger for a 90 Ah wet? I would pick the 15 A unit. Ok?", "charger-size", {"charger.current": 15.0}),
        ("Which fuse for the Pike, and may I fit a 350 A one?", "fuse-size", {"fuse.rating": 350.0}),
        ("If I take a 20 A pump onto the 100 Ah AGM, how long does it run?", "run-time", {"load.current": 20.0}),
    ],
)  # fmt: skip
def test_each_figure_has_its_own_noun(text, topic, facts):
    assert topic in {item.topic for item in last(text)}
    found = told(text)
    assert {name: found.get(name) for name in facts} == facts
    assert ("load.bursts#2" in found) == ("load.bursts#2" in facts)


AGM_READS = " The AGM reads 12.4 today, rested. Is that ok?"


@pytest.mark.parametrize(
    "tale",
    [
        "The boat is 50 minutes' drive from our house.", "We live an hour away by car.", "It is half an hour's walk "
        "there.",
        "My mate was a ship's cook for thirty years.", "I have worked as a teacher for 22 years.", "My son is nine "
        "years old.",
        "He paid 160 pounds for it.", "It was bought from the shop for 140 pounds.", "She does 30 or so races a year.",
        "The thruster is used ten times a season.", "The belt squeals for half an hour.",
        "The wheelhouse smelled of diesel for twenty minutes.", "The radio says minus 15 for Friday.",
        "They gave frost on the radio.", "The programme starts by itself every month.",
        "The shore lead had been in for two days.", "We are fast alongside the quay now.", "She lies alongside since "
        "Monday.",
    ],
)  # fmt: skip
def test_what_only_tells_the_tale_states_nothing(tale):
    found = told(tale + AGM_READS)
    assert set(found) - {"ambient.temperature", "load.kind"} <= {
        "battery.chemistry", "reading.voltage", "reading.state"
    }  # fmt: skip
    assert found.get("load.kind") != "electronics"


@pytest.mark.parametrize(
    ("text", "fact", "value"),
    [
        ("The AGM weighs 60 pounds, how much is saved by lithium?", "battery.weight", 27.2),
        ("I have had this wet one for six years. Replace it?", "battery.age", 6.0),
        ("The gel was fitted when we married, nine years ago. Time for another?", "battery.age", 9.0),
        ("The AGM is a year old and reads 12.4, ok?", "battery.age", 1.0),
        ("The radio draws 2 A for 8 hours, 100 Ah AGM, does it last?", "load.time", 28800.0),
        ("The AGM has rested for two hours and reads 12.7, ok?", "reading.rest_time", 2.0),
        ("Two 100 Ah AGM alongside each other, what do I get?", "bank.layout", "parallel"),
    ],
)
def test_the_same_words_of_the_boat_itself_still_count(text, fact, value):
    found = told(text)[fact]
    assert found == (value if isinstance(value, str) else pytest.approx(value, rel=0.01))


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("My neighbour swears by lithium, mine is a flooded DC of 100 Ah. Which amps of charger?", "flooded"),
        ("I dropped my lithium drill on it, the battery is a wet 90 Ah. What charger in amps?", "flooded"),
        ("We had lithium in the old boat. This one has a gel of 100 Ah. What charger in amps?", "gel"),
        ("The yard sold us lithium of 100 Ah. What charger in amps?", "lfp"),
    ],
)
def test_another_boats_battery_is_not_ours(text, kind):
    found = told(text)
    assert found["battery.chemistry"] == kind
    assert "battery.chemistry#2" not in found


def test_kinds_that_are_weighed_both_stand():
    found = told("My brother fitted gel, I have AGM: which of them suits a Pike?")
    assert {found["battery.chemistry"], found["battery.chemistry#2"]} == {"agm", "gel"}


def test_sea_water_for_an_hour_is_still_a_danger():
    first = last("The bay was under sea water for an hour, the lithium is dry again and shows 13.2 V. Is it full?")[0]
    assert (first.topic, first.verdict) == ("hazard", "stop")


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("It is too heavy for me. The 110 Ah gel stays aboard full with both leads off, five months at 12 C. My "
         "question is "
         "only whether it can stand there untouched.", "Yes, but look every 90 days"),
        ("We lay her up in May. The wet 90 Ah is full, leads off, three months at 5 C. Just wondering whether it may "
         "stay so.",
         "Yes"),
    ],
)  # fmt: skip
def test_whether_it_can_is_a_question_of_yes_or_no(text, opens):
    assert last(text)[0].headline.replace("\u00a0", " ").startswith(opens)


def test_years_since_another_thing_was_fitted_are_no_age():
    found = told("Two summers ago I had a new stereo fitted. The wet battery is at 12.4, rested. Is that ok?")
    assert "battery.age" not in found
    assert told("Two summers ago I had a new battery fitted, a gel. Time for another?")["battery.age"] == 2.0
