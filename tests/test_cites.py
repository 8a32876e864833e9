"""Walks every figure, step and source of every answer: the demo conversations, the tests' dialogues, their messages."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from grammar.files import toml
from service import reference
from service.leadsman import Leadsman
from service.reply import Answer, Figure, Step
from service.turns.thread import Signer
from tests.cites import expected, unsourced
from tests.demo import CUSTOMER, conversations

HERE = Path(__file__).parent
DESK = Leadsman(signer=Signer("cites"))
MANY = 4  # every fourth: all of them take minutes
SAMPLE = 20  # one message of so many in the quick walk


def walked(turns: Iterable[str]) -> Iterator[tuple[str, Answer]]:
    """Each turn of a conversation with each of its answers."""
    thread = None
    for text in turns:
        reply = DESK.ask(text, thread=thread)
        thread = reply.thread
        yield from ((text, answer) for answer in reply.answers)


def lacking(conversation: Iterable[str]) -> list[str]:
    return [f"{text} ({answer.topic}): {found}" for text, answer in walked(conversation) for found in unsourced(answer)]


@pytest.mark.parametrize("path", conversations(), ids=lambda path: path.stem)
def test_every_figure_and_step_of_the_demo_conversations_has_its_source(path: Path) -> None:
    lines = path.read_text(encoding="utf-8").splitlines()
    turns = [line.removeprefix(CUSTOMER) for line in lines if line.startswith(CUSTOMER)]
    assert turns
    assert lacking(turns) == []


@pytest.mark.parametrize("path", sorted((HERE / "cases").glob("*.toml")), ids=lambda path: path.stem)
def test_every_figure_and_step_of_the_tests_dialogues_has_its_source(path: Path) -> None:
    assert [found for case in toml(path)["case"] for found in lacking(turn["text"] for turn in case["turns"])] == []


@cache
def messages() -> tuple[str, ...]:
    """The messages written for this project in many voices."""
    return tuple(_texts(toml(path) for path in sorted((HERE / "reading" / "asked").glob("*.toml"))))


def _texts(part: object) -> Iterator[str]:
    if isinstance(part, str):
        yield part
    elif isinstance(part, dict):
        yield from _texts(part.values())
    elif isinstance(part, Iterable):
        for item in part:
            yield from _texts(item)


def test_every_figure_and_step_of_a_sample_of_messages_has_its_source() -> None:
    assert len(messages()) > 4000
    assert [found for text in messages()[::SAMPLE] for found in lacking([text])] == []


@pytest.mark.slow
def test_every_figure_and_step_of_many_messages_has_its_source() -> None:
    assert [found for text in messages()[::MANY] for found in lacking([text])] == []


def test_the_walk_names_sources_that_exist() -> None:
    named = {name for figures in expected().values() for names in figures.values() for name in names}
    assert named - set(reference.sources()) - {"house"} == set()


def of_the_pike() -> Answer:
    return DESK.ask("Will an 800 CCA AGM run the Pike?").answers[0]


@pytest.mark.parametrize(
    ("spoilt", "found"),
    [
        (lambda answer: replace(answer, cites=()), "figure required_cca"),
        (lambda answer: replace(answer, working=(*answer.working, Step("As we know"))), "step As we know"),
        (lambda answer: replace(answer, working=(Step("Ohm", ("ohms-law",)),)), "step of ohms-law: Ohm"),
        (lambda answer: replace(answer, cites=(replace(answer.cites[0], id="hearsay"),)), "source hearsay"),
        (lambda answer: replace(answer, cites=(replace(answer.cites[0], locator=""),)), "without words"),
    ],
)
def test_the_walk_finds_what_has_no_source(spoilt, found: str) -> None:
    assert unsourced(of_the_pike()) == []
    assert any(found in item for item in unsourced(spoilt(of_the_pike())))


def test_the_walk_refuses_a_figure_that_it_does_not_know() -> None:
    strange = replace(of_the_pike(), figures=(Figure("luck", "luck", 1.0),))
    with pytest.raises(LookupError, match="luck"):
        unsourced(strange)


def test_what_nobody_saw_is_marked_wherever_it_is_cited() -> None:
    marked = {name: reference.from_memory(name) for name in reference.sources()}
    assert {name for name, mark in marked.items() if mark} == {
        name for name, entry in reference.sources().items() if "from memory" in entry["checked"]
    }
    assert marked["cfr-183-425-factors"] == "partly from memory"
    assert marked["self-discharge-sealed"] == "from memory"
    answer = DESK.ask("How long can a full AGM battery stand unused?").answers[0]
    cite = next(item for item in answer.cites if item.id == "self-discharge-sealed")
    assert cite.locator.endswith("(from memory)")
