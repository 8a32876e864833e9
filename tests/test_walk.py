"""Walks every answer to some hundreds of generated questions: what must hold of each, whatever was asked."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from functools import cache
from random import Random

import pytest

from service.leadsman import default_desk
from service.reference import sources
from service.reply import HOUSE_RULES, Answer
from tests.never_say import faults
from tests.second import METHODS
from tests.second.questions import questions

EACH = 12  # questions of a topic
HANDED_OVER = ("unclear", "other-desk", "meaning")
LONGEST_COMPARED = 40  # words
UNSETTLED = ("needs-facts", "stop")


@cache
def answers() -> tuple[tuple[str, Answer], ...]:
    """Texts with their answers; a few texts are two questions in one message."""
    texts = [item.text for topic in METHODS for item in questions(topic, EACH, seed=7)]
    pairs = Random(7)
    texts += [f"{pairs.choice(texts)} {pairs.choice(texts)}" for _ in range(60)]
    return tuple((text, answer) for text in texts for answer in default_desk().ask(text).answers)


def broken(rule) -> list[str]:
    """The questions whose answers break a rule, with what is wrong."""
    return [f"{text} ({answer.topic}): {found}" for text, answer in answers() if (found := rule(answer))]


def test_questions_are_many():
    assert len(answers()) > 300


def test_every_figure_is_finite():
    def rule(answer):
        numbers = [(item.name, end) for item in answer.figures for end in (item.value, item.low, item.high)]
        return [pair for pair in numbers if isinstance(pair[1], int | float) and not math.isfinite(pair[1])]

    assert broken(rule) == []


def test_every_low_lies_under_its_high():
    def rule(answer):
        ranged = [item for item in answer.figures if item.low is not None and item.high is not None]
        return [item.name for item in ranged if not item.low <= item.value <= item.high + 1e-9]

    assert broken(rule) == []


def test_every_settled_answer_has_a_source_that_exists():
    def rule(answer):
        unknown = [item.id for item in answer.cites if item.id not in (*sources(), "house", HOUSE_RULES)]
        return unknown or (not answer.cites and answer.verdict not in UNSETTLED and answer.topic not in HANDED_OVER)

    assert broken(rule) == []


def test_every_source_of_a_step_stands_among_the_sources():
    def rule(answer):
        return {name for step in answer.working for name in step.cites} - {item.id for item in answer.cites}

    assert broken(rule) == []


def test_headlines_are_short_and_nothing_is_said_that_must_not_be():
    def rule(answer):
        words = len(answer.headline.split())
        found = [fault for fault in faults(answer) if not (answer.compare and fault.startswith("headline: "))]
        return found or (answer.compare and words > LONGEST_COMPARED and f"headline of {words} words")

    assert broken(rule) == []


def test_every_answer_that_asks_back_says_what_for():
    def rule(answer):
        return answer.verdict == "needs-facts" and answer.route != "technician" and not answer.asks

    assert broken(rule) == []


@pytest.mark.parametrize("part", ["figures", "cites", "cautions"])
def test_nothing_stands_twice(part):
    def rule(answer):
        names = [getattr(item, "name", None) or item.id for item in getattr(answer, part)]
        return {name for name in names if names.count(name) > 1}

    assert broken(rule) == []


FIRST_WORDS = (  # how a headline opens, and the verdicts that may stand beside it
    (("Yes", "Take "), {"yes"}),
    (("No:", "No,", "Neither "), {"no", "stop", "yes"}),  # "No, it will not freeze" is good news
    (("Only just", "Just enough"), {"marginal"}),
    (("We can't say", "It depends", "Not known"), {"needs-facts", "information"}),
    (("Too early",), {"information"}),
)
TURNED = ("bad", "wrong", "harm", "too ", "problem", "freeze", "old", "need", "replace", "worn")


def test_no_headline_opens_against_its_verdict():
    """ "Yes" never stands over a no: but for a question whether something is bad, whose words are turned round."""
    against = []
    for text, answer in answers():
        if any(word in text.lower() for word in TURNED):
            continue
        allowed = next((verdicts for words, verdicts in FIRST_WORDS if answer.headline.startswith(words)), None)
        if allowed and answer.verdict not in allowed | ({"no"} if answer.compare else set()):
            against.append(f"{text} ({answer.topic}): {answer.verdict}: {answer.headline}")
        if answer.headline.startswith("No:") and answer.verdict not in ("no", "stop"):
            against.append(f"{text} ({answer.topic}): {answer.verdict}: {answer.headline}")
    assert against == []


NUMBER = re.compile(r"(?<![\w/.])-?\d+(?:\.\d+)?(?![\d/]|-hour)")
OTHER_UNITS = (1, 1 / 60, 1 / 3600, 1 / 86400, 24, 1 / 24, 1 / 0.3048, 2.20462, 1000, 1 / 1000, 1 / 2, 1 / 3, 1 / 4)
ROUNDED = 0.05  # the charge is told to 5 %, a count of bursts to tens


def numbers(text: str) -> list[float]:
    return [float(item) for item in NUMBER.findall(text)]


def values(answer: Answer) -> Iterator[float]:
    """Every number of an answer outside its headline: figures, facts, working."""
    told = [end for item in answer.figures for end in (item.value, item.low, item.high)]
    told += [item.value for item in (*answer.understood, *answer.assumed)]
    told += [item.text for item in answer.understood] + [item.say for item in answer.working]
    told += [item.locator for item in answer.cites] if answer.topic == "meaning" else []  # a definition's own clause
    for value in told:
        if isinstance(value, str):
            yield from numbers(value)
        elif value is not None and not isinstance(value, bool):
            yield from (value, value * 1.8 + 32)


def test_numbers_of_the_headline_stand_among_figures_facts_and_working():
    def rule(answer):
        known = [value * factor for value in values(answer) for factor in OTHER_UNITS]
        told = numbers(answer.headline) if answer.verdict != "needs-facts" else []
        near = {number: max(ROUNDED * abs(number), 0.5 if number == int(number) else ROUNDED) for number in told}
        return [number for number in told if not any(abs(value - number) <= near[number] for value in known)]

    assert broken(rule) == []
