"""A sentence that says nothing to the point, before or behind a message that was answered right: what it changes.

The sentences are of the kind that letters hold: the weather, the family, the boat, the work.
"""

from __future__ import annotations

import json
from pathlib import Path
from random import Random
from typing import Any

import pytest

from service.commands.score import judge
from service.leadsman import Leadsman, default_desk

READING = Path(__file__).with_name("reading")
MESSAGES, EACH = 500, 2
MOST_CHANGED = 3.6  # of 100; a second question in few words is easily lost
MOST_ALARMS = 2  # that the sentences may raise or take away in the whole sample
SENTENCES = [
    "Hope you had a nice weekend.",
    "My brother-in-law gave me your number.",
    "I am writing this on the train.",
    "Sorry for the bother.",
    "I did look on your website first.",
    "I was a nurse for thirty years.",
    "My wife says I ask too much.",
    "We paid 4000 for the refit.",
    "The neighbour laughed at me.",
    "No rush with this.",
    "The anchor is 16 kg.",
    "The yard is closed until Monday.",
    "I painted the hull in the spring.",
    "You were a great help last time.",
    "Somebody on a forum was rude to me about it.",
    "My friend Peter has the same boat.",
    "There is a café on the quay with good cake.",
    "I bought new fenders too.",
    "The toilet pump is new as well.",
    "I am no electrician.",
    "Greetings from a very wet Sunday.",
    "The surveyor comes next Thursday.",
    "She was built in 1987.",
    "I have read the leaflet twice.",
    "The cat sleeps on the chart table.",
    "It was blowing 25 knots.",
    "Three of us crew her.",
    "We spent 200 on paint.",
    "The windows leak a bit.",
    "I work nights, so mail is best.",
    "The boat next to us has gone.",
    "The locker lid is heavy.",
    "I hope the picture comes through.",
    "The heater was mended in May.",
    "We are four aboard with the baby.",
    "The lift-out is booked for October.",
    "The jetty lights are off.",
    "The chandler was no help.",
    "I am not in a hurry, but she is.",
    "We draw 1.4 m.",
]


def right(desk: Leadsman, cases: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """The first turns that are answered right as they stand."""
    turns = [case["turns"][0] for case in cases]
    return [turn for turn in turns if outcome(desk, turn["text"], turn["expect"]) == "right"]


def outcome(desk: Leadsman, text: str, expect: dict[str, Any]) -> str:
    return judge(desk.ask(text).as_dict(), expect).outcome


@pytest.mark.slow
def test_an_idle_sentence_seldom_changes_what_is_answered(tell) -> None:
    desk, rng = default_desk(), Random("idle")
    lines = [line for path in sorted(READING.glob("*.jsonl")) for line in path.read_text(encoding="utf-8").splitlines()]
    turns = right(desk, [json.loads(line) for line in rng.sample(lines, MESSAGES)])
    pairs = [(turn, sentence) for turn in turns for sentence in rng.sample(SENTENCES, EACH)]
    changed = alarms = 0
    for turn, sentence in pairs:
        text = turn["text"].rstrip()
        both = [f"{sentence} {text}", f"{text}{'' if text[-1] in '.?!' else '.'} {sentence}"]
        found = [desk.ask(each).as_dict() for each in both]
        changed += sum(judge(reply, turn["expect"]).outcome != "right" for reply in found)
        named = {part for topic in turn["expect"].get("topics", []) for part in topic.split("|")}
        wanted = "hazard" in named or "hazard" in turn["expect"].get("may", [])
        told = [any(answer["verdict"] == "stop" for answer in reply["answers"]) for reply in found]
        alarms += sum(seen and not wanted for seen in told)
    share = 100 * changed / (2 * len(pairs))
    tell(f"idle sentences: {share:.1f} % of {2 * len(pairs)} answers changed, {alarms} false alarms")
    assert share <= MOST_CHANGED
    assert alarms <= MOST_ALARMS
