"""Signs of danger: found when present, and told from look-alikes, denials, the past and general questions."""

from __future__ import annotations

import random
import tomllib
from pathlib import Path

import pytest

from grammar.dangers.find import find_dangers
from grammar.reader import read
from service.leadsman import Leadsman
from service.reference import rows
from service.render.as_text import answer_parts
from service.turns.thread import Signer
from tests.timing import seconds

READING = Path(__file__).parent / "reading"
TABLE = tomllib.loads((READING / "dangers.toml").read_text(encoding="utf-8"))
FRESH = [tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(READING.glob("dangers_fresh*.toml"))]
PRESENT = [(family, phrase) for family, phrases in TABLE["present"].items() for phrase in phrases]
VOICES = [(family, text) for table in FRESH for family, texts in table["present"].items() for text in texts]
QUIET = [
    text
    for table in FRESH
    for name in ("denied", "past", "general", "silent")
    for text in table.get(name, {}).get("phrases", ())
]
SECOND = [messages for table in FRESH for messages in table.get("second", {}).get("threads", ())]
RANK = {row["id"].value: ("routine", "today", "stop-now").index(row["urgency"].value) for row in rows("hazards")}


@pytest.mark.parametrize(("family", "phrase"), PRESENT)
def test_a_sign_that_is_there_is_present(family: str, phrase: str) -> None:
    assert (family, "present") in {(item.family, item.status) for item in find_dangers(phrase)}


@pytest.mark.parametrize("phrase", TABLE["silent"]["phrases"])
def test_a_look_alike_is_no_sign(phrase: str) -> None:
    assert find_dangers(phrase) == ()


@pytest.mark.parametrize(
    ("status", "phrase"),
    [(name, phrase) for name in ("denied", "past", "general") for phrase in TABLE[name]["phrases"]],
)
def test_what_is_not_so_now_is_not_present(status: str, phrase: str) -> None:
    assert {item.status for item in find_dangers(phrase)} == {status}


@pytest.mark.parametrize(("family", "phrase"), PRESENT)
def test_the_span_holds_the_words(family: str, phrase: str) -> None:
    for item in find_dangers(phrase):
        assert phrase[slice(*item.span)] == item.text != ""


@pytest.mark.parametrize("phrase", TABLE["now"]["phrases"])
def test_nothing_hides_a_sign_that_is_there(phrase: str) -> None:
    assert "present" in {item.status for item in find_dangers(phrase)}


@pytest.mark.parametrize("phrase", TABLE["witnessed"]["phrases"])
def test_what_was_seen_or_heard_is_no_general_question(phrase: str) -> None:
    assert "present" in {item.status for item in find_dangers(phrase)}


@pytest.mark.parametrize("phrase", TABLE["witnessed"]["asked"])
def test_what_is_only_heard_of_stays_a_general_question(phrase: str) -> None:
    assert {item.status for item in find_dangers(phrase)} <= {"general"}


@pytest.mark.parametrize(
    ("family", "phrase"),
    [(name, phrase) for name in ("thruster-runs-on", "shore-shock") for phrase in TABLE["subject"][name]],
)
def test_a_sign_of_the_thruster_or_of_shore_power_is_present(family: str, phrase: str) -> None:
    assert (family, "present") in {(item.family, item.status) for item in find_dangers(phrase)}


@pytest.mark.parametrize("phrase", TABLE["subject"]["silent"])
def test_what_another_machine_does_is_no_sign(phrase: str) -> None:
    assert find_dangers(phrase) == ()


@pytest.mark.parametrize(("family", "text"), VOICES)
def test_a_strange_voice_is_stopped(family: str, text: str) -> None:
    found = {item.family for item in find_dangers(text) if item.status == "present"}
    assert any(RANK[other] >= RANK[family] for other in found) or family == "overcharging-voltage"  # of its figures
    assert ("hazard", "stop") in [(item.topic, item.verdict) for item in Leadsman().ask(text).answers]


@pytest.mark.parametrize("text", QUIET)
def test_what_is_harmless_is_not_stopped(text: str) -> None:
    assert "present" not in {item.status for item in find_dangers(text)}
    assert "stop" not in {item.verdict for item in Leadsman().ask(text).answers}


@pytest.mark.parametrize(
    "text",
    [
        "reading was 9.8 at rest, lfp, boat stood since spring",
        "lithium sat unused since september, shows 9.4 V",
        "12v lithium reads 9.6 V, been laid up for five months",
        "lfp bank 24V at 19.2 V after 6 months ashore",
    ],
)
def test_lithium_that_stood_flat_is_stopped(text: str) -> None:
    first, *others = Leadsman().ask(text).answers
    assert (first.topic, first.verdict, first.urgency) == ("hazard", "stop", "today")
    assert "long flat" in first.headline
    assert all(item.verdict == "no" for item in others)


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("splash of acid in my eye. Also what size is a group 31?", "group-size"),
        ("the agm is swollen! separate thing, how many amps is a 3 kW 12V motor?", "rating-convert"),
        ("acid splash in my eye, stings a bit. also do I use 1.265 or 1.280 for full", "specific-gravity"),
        ("How many kg is a lithium in place of a 30 kg agm? oh, and there is smoke from the charger", "weight"),
    ],
)
def test_a_harmless_question_is_answered_below(text: str, topic: str) -> None:
    assert [(item.topic, item.verdict) for item in Leadsman().ask(text).answers][1:] == [(topic, "information")]


@pytest.mark.parametrize(
    "text", ["smoke from the battery. can I still use it?", "battery is hissing. what charger current for lithium?"]
)
def test_what_sends_somebody_to_the_battery_is_not_answered_below(text: str) -> None:
    assert {item.verdict for item in Leadsman().ask(text).answers} <= {"stop", "no"}


@pytest.mark.parametrize(
    "text",
    [
        "my agm is hissing, it reads 12.1 V at rest. is that good?",  # no "charge it today" below
        "how long should a 110ah wet take on a 20A charger. oh and it stinks of eggs down below",
    ],
)
def test_what_is_refused_is_one_line(text: str) -> None:
    _, refused = Leadsman().ask(text).answers
    assert [label for label, _ in answer_parts(refused)] == []
    assert "charge it" not in refused.headline


def test_a_splash_in_the_eye_is_no_vapour() -> None:
    text = "topped up the battery and got a splash in my eye, stings a bit"
    assert {item.family for item in find_dangers(text)} == {"acid-in-eyes"}


@pytest.mark.parametrize(
    ("text", "family"),
    [
        ("the fuse holder by the lithium, i cannot keep a finger on it", "burnt-cable"),
        ("cant keep my finger on the lug on the battery", "burnt-cable"),
        ("cant keep my finger on the side of the battery", "hot-to-touch"),
        ("the fuse is a 250 and i heard a pop from the battery", "hissing-venting"),
    ],
)
def test_a_sign_is_of_its_own_subject(text: str, family: str) -> None:
    assert {item.family for item in find_dangers(text)} == {family}


def test_the_volts_that_harm_are_named() -> None:
    (first, *_) = Leadsman().ask("they said the charger should put out 14.4 but it reads 15.5, agm").answers
    assert "15.5" in first.headline


def test_any_text_is_read() -> None:
    chance = random.Random(1)
    letters = "ab hot battery acid'’`.,-\n0159é°²☠️ smoke not " + chr(0) + chr(0x130)
    for _ in range(2000):
        find_dangers("".join(chance.choice(letters) for _ in range(chance.randrange(80))))


@pytest.mark.parametrize(
    "words", ["the battery is not", "lithium charged below freezing", "hot battery cable smoke lithium", "battery hot"]
)
def test_a_long_text_takes_no_time_to_speak_of(words: str) -> None:
    text = (words + " ") * (20_000 // len(words))
    find_dangers("the tables are read first")
    assert seconds(lambda: find_dangers(text)) < 0.5  # a fifth of that on a quiet machine


@pytest.mark.parametrize(
    ("messages", "stands"),
    [
        (["one of the four AGMs is swollen", "can the others stay in use?"], True),
        (["smoke from the battery", "it has stopped now, may I charge it?"], True),
        (["my hand hurts, the battery was that hot", "next day. the second battery looks normal, use that one?"], True),
        (["charged my lifepo4 at -8 last night", "it reads 13.3 V, all good?"], True),
        (["the flooded battery shows 15.4 V on the charger"], True),
        (["my lithium is at 14.8 V on the charger"], True),
        (["one of the AGMs is swollen", "the swollen one has been replaced, 12.7 V good?"], False),
        (["battery is hissing", "sorry, it is not hissing, it was the kettle", "12.7 V AGM good?"], False),
        (["the thruster wont stop, it is still running", "killed it at the switch. safe to try again?"], True),
        (["battery is hissing", "on my other boat the AGM reads 12.7 V, good?"], False),
        (["one of the AGMs is swollen", "it's scrapped now, fitted a new gel. float volts?"], False),
        (["our wet one is bulging", "It's been taken away, we have a new AGM, 12.8 V at rest. good?"], False),
        (["one of the AGMs is swollen", "shall I take it to the tip and buy a new one? 12.7 V"], True),
        (["our wet one is bulging", "It will be taken away on Monday and a new AGM comes. 12.8 V good?"], True),
        (["the charger gives 15.6 V, agm", "it's at the tip, got a new gel. how long at 10 A, 90 Ah?"], True),
    ],
)
def test_a_danger_stands_until_it_is_mended(messages: list[str], stands: bool) -> None:
    desk = Leadsman(signer=Signer("a key"))
    thread = None
    for message in messages:
        reply = desk.ask(message, thread=thread)
        thread = reply.thread
    assert (("hazard", "stop") in [(item.topic, item.verdict) for item in reply.answers]) is stands


@pytest.mark.parametrize("messages", SECOND)
def test_a_danger_that_comes_second_is_stopped(messages: list[str]) -> None:
    desk = Leadsman(signer=Signer("a key"))
    first = desk.ask(messages[0])
    second = desk.ask(messages[1], thread=first.thread)
    stops = [("hazard", "stop") in [(item.topic, item.verdict) for item in reply.answers] for reply in (first, second)]
    assert stops == [False, True]


def test_what_a_conversation_has_named_need_not_be_named_again() -> None:
    said = read("a lithium battery of 100 Ah").stated
    text = "it was -7 all last night and it has been on since yesterday"
    assert find_dangers(text) == ()
    assert [(item.family, item.status) for item in find_dangers(text, said)] == [
        ("lfp-charged-below-freezing", "present")
    ]


def test_what_was_asked_of_a_danger_goes_on() -> None:
    desk = Leadsman(signer=Signer("a key"))
    first = desk.ask("What do you do with a lithium battery that has been under salt water?")
    (answer,) = desk.ask("and the one that sat next to it", thread=first.thread).answers
    assert (answer.topic, answer.verdict) == ("hazard", "information")


def test_a_standing_danger_answers_for_the_other_batteries() -> None:
    desk = Leadsman(signer=Signer("a key"))
    first = desk.ask("one of the AGMs is swollen")
    (answer,) = desk.ask("it is off now, can I use the other one?", thread=first.thread).answers
    assert "batteries beside it too" in answer.headline


def test_that_lead_may_freeze_is_the_answer_and_no_danger_beside_it() -> None:
    reply = Leadsman().ask("It is going to be -6 here: will a fully charged wet one be a block of ice?")
    assert [item.topic for item in reply.answers] == ["freeze-point"]


UNNAMED = [
    "it hums like a beehive when nobody's aboard and the lid is warm as bread",
    "the case sort of breathes in and out",
    "there's a see-saw wobble in the casing now, it used to stand flat, and it pongs",
]


@pytest.mark.parametrize("text", UNNAMED)
def test_points_tell_of_a_danger_that_no_word_names(text: str) -> None:
    reply = Leadsman().ask(text)
    assert find_dangers(text) == ()
    assert reply.answers[0].verdict == "stop"
    assert reply.answers[0].headline.startswith("This may be a danger")
    assert any(line.startswith("danger unnamed, present: ") for line in reply.why)


def test_an_unnamed_danger_stands_until_dangers_are_denied() -> None:
    desk = Leadsman(signer=Signer("a key"))
    first = desk.ask(UNNAMED[0])
    again = desk.ask("how long does a 20 A charger need for 100 Ah?", thread=first.thread)
    assert again.answers[0].verdict == "stop"
    over = desk.ask("no smell, no heat, no swelling, it was the kettle. How long does it need?", thread=again.thread)
    assert all(answer.verdict != "stop" for answer in over.answers)


def test_figures_alone_raise_no_unnamed_danger() -> None:
    assert not any(
        item.topic == "hazard" for item in Leadsman().ask("charger shows 14.6 V on the flooded bank").answers
    )


@pytest.mark.parametrize(
    "text", ["why does my thruster cut out after two seconds on the lithium", "BMS trips as I push"]
)
def test_a_lithium_that_cuts_out_is_named_and_no_thruster_that_runs_on(text: str) -> None:
    assert {item.family for item in find_dangers(text)} == {"lfp-keeps-tripping"}


@pytest.mark.parametrize(
    ("text", "families"),
    [
        ("the cable lug gets too hot to touch after a minute", {"burnt-cable"}),
        ("one battery post is very hot, the other cold", {"burnt-cable"}),
        ("the battery gets too hot to touch", {"hot-to-touch"}),
    ],
)
def test_a_hot_joint_is_no_hot_battery(text: str, families: set[str]) -> None:
    assert {item.family for item in find_dangers(text) if item.status == "present"} == families


@pytest.mark.parametrize(
    "text",
    [
        "one side of the battery looks a bit fat and its warm. Anyway my question was which fuse for 340 A thruster",
        "my agm is swollen. which cable for a 300 A thruster, 5 m?",
        "lithium pack is hissing. which fuse size for my 60 A dc-dc, 16 mm2",
        "smoke from the battery box. how many charger outputs for two banks in series?",
        "agm is swollen and hot! how much torque on the M8 studs?",
    ],
)
def test_nothing_below_tells_how_to_wire_fuse_or_charge(text: str) -> None:
    first, *below = Leadsman().ask(text).answers
    assert first.verdict == "stop"
    assert not any(item.figures or item.asks or item.verdict != "no" for item in below)


@pytest.mark.parametrize(
    "messages",
    [
        ["charging volts 15.3 on the gauge while motoring, agm. fine?",
         "how long can it stay like that, we're 3 hours from home"],
        ["alternator puts 15.6 V into the wet battery", "can I leave it like this till we are home, 2 hours"],
        ["gel reads 15.2 V under way", "how long may it stay as it is?"],
    ],
)  # fmt: skip
def test_under_way_the_engine_is_spoken_of_and_nothing_is_answered_below(messages: list[str]) -> None:
    desk = Leadsman(signer=Signer("a key"))
    first = desk.ask(messages[0])
    (answer,) = desk.ask(messages[1], thread=first.thread).answers
    assert answer.headline.startswith("Not for hours: stop the engine")
    assert any("nearest shelter" in step.say for step in answer.steps)
    assert not any("shore end" in step.say for step in answer.steps)


def test_on_a_charger_no_engine_is_spoken_of() -> None:
    desk = Leadsman(signer=Signer("a key"))
    first = desk.ask("charger shows 15.5 on my agm")
    (answer,) = desk.ask("can it stay like that overnight", thread=first.thread).answers
    assert answer.headline.startswith("No use and no charging")
    assert not any("engine" in step.say for step in answer.steps)


@pytest.mark.parametrize(
    "text",
    [
        "gravity 1.160 and minus 20 is promised. Will it freeze, or does the case split?",
        "wet battery at 12.1 V, minus 18 coming: will the case burst?",
        "minus 15 tonight, 12.2 V on the wet one: freezes, or could its sides crack?",
        "would a wet one of 1.190 freeze at -12, or might the case break?",
    ],
)
def test_whether_frost_will_split_the_case_is_no_danger_beside_the_answer(text: str) -> None:
    assert [item.topic for item in Leadsman().ask(text).answers if item.topic == "hazard"] == []


@pytest.mark.parametrize(
    "text",
    [
        "may I charge a lithium with a charger that gives 14.8 V?",
        "can I use my old charger on the new lithium? it gives 14.9 V",
        "Is it ok to charge my lithium with the charger of the wet ones, 14.9 V?",
        "am I allowed to charge lithium with what served the wets until now, it has 14.8 V",
    ],
)
def test_too_many_volts_that_are_only_planned_are_refused(text: str) -> None:
    assert [(item.topic, item.verdict) for item in Leadsman().ask(text).answers] == [("charger-setting", "no")]
