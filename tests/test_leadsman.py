"""The core: hand-overs instead of tracebacks, facts set by a program, dangers that stand, the same bytes each time."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

import service.answering
import service.turns.taken_up
from service.answering import without_idle
from service.case import Known
from service.leadsman import LONGEST, Leadsman, default_desk
from service.question import BadInput
from service.reply import Answer
from service.turns.thread import Signer, Thread

DESK = Leadsman(signer=Signer("core"))


def told(*texts):
    """The last reply of a conversation, as JSON."""
    thread = None
    for text in texts:
        reply = DESK.ask(text, thread=thread)
        thread = reply.thread
    return reply.as_dict()


def verdicts(reply):
    return [(answer["topic"], answer["verdict"]) for answer in reply["answers"]]


def test_the_example_of_the_contract():
    reply = told("Will a 100 Ah lithium run a 340 A thruster?")
    answer = reply["answers"][0]
    assert (answer["topic"], answer["verdict"]) == ("run-check", "no")
    assert {item["name"]: item["value"] for item in answer["figures"]}["inrush_current"] == 510
    capacity = next(item for item in answer["understood"] if item["fact"] == "battery.capacity")
    assert (capacity["value"], capacity["unit"], capacity["span"], capacity["from"]) == (100, "Ah", [7, 13], "message")
    assert ("load.peak", 510) in {(item["fact"], item["value"]) for item in answer["assumed"]}


@pytest.mark.parametrize("text", ["", "   ", "x" * (LONGEST + 1)], ids=["empty", "blank", "too long"])
def test_a_text_that_cannot_be_taken_is_refused(text):
    with pytest.raises(BadInput):
        DESK.ask(text)


def test_a_topic_that_fails_becomes_a_hand_over_and_the_others_stand(monkeypatch):
    faults = []
    desk = Leadsman(fault=lambda topic, error: faults.append(topic))
    real = service.answering.finished

    def failing(topic, case):
        if topic.name == "fuse-size":
            raise ZeroDivisionError
        return real(topic, case)

    monkeypatch.setattr(service.answering, "finished", failing)
    reply = desk.ask("What cable for the Pike, 5 m each way, and what fuse?")
    assert {answer.topic: answer.verdict for answer in reply.answers} == {
        "cable-size": "information",
        "fuse-size": "needs-facts",
    }
    assert reply.triage.route == "technician"
    assert faults == ["fuse-size"]


def test_a_reader_that_fails_becomes_a_hand_over(monkeypatch):
    def failing(*_, **__):
        raise RecursionError

    monkeypatch.setattr(service.turns.taken_up, "read", failing)
    reply = Leadsman().ask("Is 12.4 V good?")
    assert [answer.topic for answer in reply.answers] == ["unclear"]
    assert reply.triage.route == "technician"


def test_a_corrected_fact_answers_the_last_question_again():
    first = DESK.ask("Will my 520 CCA AGM run the Pike?")
    again = DESK.ask("", thread=first.thread, facts=[{"fact": "battery.cca", "value": 800}])
    assert verdicts(first.as_dict()) == [("run-check", "no")]
    assert verdicts(again.as_dict()) == [("run-check", "yes")]


def test_a_set_fact_may_come_in_another_unit():
    facts = [{"fact": "cable.length", "value": 20, "unit": "foot"}]
    answer = DESK.ask("What cable for the Pike?", facts=facts).as_dict()["answers"][0]
    length = next(item for item in answer["understood"] if item["fact"] == "cable.length")
    assert length["value"] == pytest.approx(6.096)


@pytest.mark.parametrize(
    "fact",
    [
        {"fact": "battery.colour", "value": 1},
        {"fact": "battery.cca", "value": "many"},
        {"fact": "battery.cca", "value": 10**9},
        {"fact": "battery.chemistry", "value": "nickel"},
        {"fact": "charger.isolated", "value": "yes"},
        {"fact": "battery.cca", "value": 800, "unit": "banana"},
        {"value": 1},
        "battery.cca",
    ],
)
def test_a_fact_that_is_none_is_refused(fact):
    with pytest.raises(BadInput):
        DESK.ask("Will it run the Pike?", facts=[fact])


def test_a_strange_thread_starts_a_new_one_and_says_so():
    reply = DESK.ask("Is 12.4 V good?", thread="none of ours")
    assert "new thread" in reply.notice


def test_while_a_danger_stands_nothing_is_approved():
    reply = told("the battery is swollen and hot", "will my 800 CCA AGM run the Pike?")
    assert verdicts(reply)[0] == ("hazard", "stop")
    assert not {verdict for _, verdict in verdicts(reply)} & {"yes", "marginal"}
    assert reply["triage"]["route"] == "technician"


def test_another_boat_ends_it():
    reply = told("the battery is swollen and hot", "on my other boat, will an 800 CCA AGM run the Pike?")
    assert verdicts(reply) == [("run-check", "yes")]


def test_a_reading_that_harms_is_a_danger():
    reply = told("my flooded battery shows 15.6 V on the charger, is that ok?")
    assert verdicts(reply)[0] == ("hazard", "stop")
    assert reply["triage"]["urgency"] == "today"


def test_thanks_is_no_question():
    reply = told("Is 12.4 V good for an AGM?", "thank you, that helps")
    assert {topic for topic, _ in verdicts(reply)} <= {"unclear"}
    assert reply["triage"]["route"] in ("answered", "other-desk")


def test_an_unused_fact_stands_in_the_first_answer():
    answer = told("Is 12.4 V good for my AGM of 62 lbs?")["answers"][0]
    assert "battery.weight" in {item["fact"] for item in answer["understood"]}


def test_the_same_text_gives_the_same_bytes_under_any_hash_seed():
    code = (
        "import json; from service.leadsman import Leadsman; "
        "print(json.dumps([Leadsman(new_id=lambda: 'x').ask(text).as_dict() for text in "
        "('AGM or gel for the Pike, and what fuse?', '12.8 all day but drops to 9 when I hit the button')]))"
    )
    said = {
        subprocess.run(
            [sys.executable, "-c", code],
            capture_output=True,
            check=True,
            cwd=Path(__file__).parent.parent,
            env=os.environ | {"PYTHONHASHSEED": seed},
        ).stdout
        for seed in ("0", "1", "77")
    }
    assert len(said) == 1


@pytest.mark.parametrize(
    ("first", "reply", "topics"),
    [
        (
            "How long will it take to charge?",
            "100 Ah AGM, 20 A charger. Also is it bad to leave it on all winter?",
            ["charge-time", "storage"],
        ),
        ("Will my battery run the Pike?", "It says 700 CCA. And which fuse do I need?", ["run-check", "fuse-size"]),
        ("Will my battery run the Pike?", "It says 700 CCA. So?", ["run-check"]),
    ],
)
def test_a_reply_that_asks_something_new_gets_both_answered(first, reply, topics):
    desk = default_desk()
    found = desk.ask(reply, thread=desk.ask(first).thread)
    assert [answer.topic for answer in found.answers] == topics


@pytest.mark.parametrize(
    "story",
    [
        "thruster turns slowly but battery says 12.7",
        "We're 4 up on a 34 footer, bow thruster is 8 years old, 12.7 this morning, weak as water. What now?",
        "My Pike groans and the battery says 12.6 with everything off. What now?",
    ],
)
def test_a_weak_motor_told_without_a_question_gets_the_two_measurements(story):
    (answer,) = default_desk().ask(story).answers
    assert (answer.topic, answer.asks[0].fact) == ("load-voltage", "reading.load_voltage")


@pytest.mark.parametrize(
    "text",
    [
        "lights about 5 amps all night, 12 hours, what size of AGM",
        "Fridge and lights, about 8 amps all night, call it 10 hours. What size of lithium?",
        "fridge about 7 amps overnight, 10 hours. which size of lithium",
    ],
)
def test_how_long_is_not_asked_back_where_it_is_asked_how_big(text):
    assert [answer.topic for answer in default_desk().ask(text).answers] == ["bank-size"]


def test_how_long_is_answered_beside_how_big_where_a_battery_is_told():
    text = "A 90 Ah AGM: how long at 8 amps? And how big a one for 24 hours?"
    assert {answer.topic for answer in default_desk().ask(text).answers} == {"run-time", "bank-size"}


def test_what_another_answer_gives_is_not_asked_back():
    desk, told = default_desk(), {"battery.capacity": 90.0}
    turn = desk.taken_up("how big a battery for 8 A over 10 hours", Thread())
    asks = Answer("run-time", "needs-facts", "We can't say yet.")
    gives = Answer("bank-size", "information", "103 Ah.")
    assert without_idle([asks, gives], turn) == [gives]
    held = {fact: Known(fact, value, "stated", "Ah") for fact, value in told.items()}
    assert without_idle([asks, gives], replace(turn, thread=replace(turn.thread, facts=held))) == [asks, gives]
