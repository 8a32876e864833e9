"""The conversation at a terminal: first line by line, then at a real pseudo-terminal."""

from __future__ import annotations

import os
import sqlite3
import stat
import sys

import pytest
from prompt_toolkit.completion import CompleteEvent
from prompt_toolkit.document import Document

from service.commands.prompt import Talk, TradeWords, history, trade_words
from service.leadsman import Leadsman
from service.render.as_screen import Screen
from service.turns.thread import Signer
from tests.terminal import COLOUR, CONTROL, Terminal

ASK = [sys.executable, "-m", "service", "ask", "--data"]


@pytest.fixture
def talk():
    return Talk(Leadsman(signer=Signer("test")), Screen())


def test_the_conversation_goes_on(talk):
    assert talk.answer("Will it run the Pike?").startswith("We can't say yet")
    assert talk.answer("700 CCA AGM").startswith("Yes: your 700 CCA AGM battery")
    facts = talk.answer("facts").splitlines()
    assert [line.split() for line in facts] == [
        ["load.model", "Pike"], ["battery.cca", "700", "A"], ["battery.chemistry", "AGM"]]  # fmt: skip


def test_a_fact_is_set_and_the_question_answered_again(talk):
    talk.answer("Will a 700 CCA AGM run the Pike?")
    assert talk.answer("set battery.cca 400").startswith("No: ")
    assert "battery.cca                  400 A" in talk.answer("facts")
    assert talk.answer("set cca 1,000 A").startswith("Yes: ")


def test_a_fact_set_first_waits_for_the_question(talk):
    assert talk.answer("set battery.cca 700") == "battery.cca = 700 A"
    assert talk.answer("will it run the Pike?").startswith("Yes: your 700 CCA battery")


@pytest.mark.parametrize(
    ("line", "word"), [("set battery.cca", "Write the value"), ("set battery.cca many", "no such number")]
)
def test_what_cannot_be_set_is_said(talk, line, word):
    talk.answer("Will a 700 CCA AGM run the Pike?")
    assert word in talk.answer(line)
    assert "700 A" in talk.answer("facts")


def test_new_forgets(talk):
    talk.answer("Will a 700 CCA AGM run the Pike?")
    assert talk.answer("new") == "A new conversation."
    assert talk.answer("facts") == "No facts so far."
    assert talk.answer("why") == talk.answer("sources") == "Nothing has been asked yet."


def test_why_and_sources_speak_of_the_last_answer(talk):
    talk.answer("Is 12.4 V good for my AGM?")
    assert "rest-voltage" in talk.answer("why")
    assert "handbook" in talk.answer("sources")


def test_a_question_that_begins_like_a_command_is_a_question(talk):
    assert "gel" in talk.answer("set for AGM, is that right for my gel?")
    assert talk.answer("new battery: is 12.7 V good for an AGM?").startswith("Yes")


@pytest.mark.parametrize("word", ["quit", "exit", " QUIT "])
def test_quit_ends(talk, word):
    assert talk.answer(word) is None


def test_the_chart_stands_in_the_answer_and_all_fits_80_columns(talk):
    said = talk.answer("Is 12.4 V good for an AGM?")
    assert "Volts at rest and charge" in said
    assert "◆ yours: 12.4 V" in said
    assert max(map(len, said.splitlines())) <= 80


def test_plain_characters_where_the_terminal_has_no_others():
    said = Talk(Leadsman(signer=Signer("test")), Screen(unicode=False)).answer("Is 12.4 V good for an AGM?")
    assert said.isascii()


def completed(line):
    words = TradeWords(["Pike", "Minnow"]).get_completions(Document(line), CompleteEvent())
    return [line[: len(line) + item.start_position] + item.text for item in words]


@pytest.mark.parametrize(
    ("line", "wanted"),
    [
        ("will it run the pi", "will it run the Pike"),
        ("my alter", "my alternator"),
        ("so", "sources"),
        ("set battery.cc", "set battery.cca"),
        ("is my ag", "is my AGM"),
    ],
)
def test_completion(line, wanted):
    assert wanted in completed(line)


def test_a_letter_is_too_little_to_complete():
    assert completed("will it run the p") == []


def test_trade_words_are_the_reader_s_own():
    assert {"AGM", "alternator", "hydrometer", "windlass"} <= trade_words()
    assert "battry" not in trade_words()


def test_the_history_is_its_owner_s_alone(tmp_path):
    history(tmp_path / "data").append_string("Is 12.4 V good?")
    assert stat.S_IMODE(os.stat(tmp_path / "data" / "history").st_mode) == 0o600
    (tmp_path / "file").write_text("")
    history(tmp_path / "file" / "data").append_string("no place, no fault")


@pytest.fixture
def terminal(tmp_path):
    """Starts `leadsman ask` at a terminal of 80 columns."""
    started = []

    def start(*more, **environment):
        started.append(Terminal([*ASK, str(tmp_path), *more], environment))
        started[-1].until(">")
        return started[-1]

    yield start
    for each in started:
        each.close()


def test_at_a_terminal(terminal, tmp_path):
    screen = terminal()
    screen.type("Will a 700 CCA AGM run the Pik")
    screen.until("Pik")
    screen.type("\t")
    screen.until("e")
    screen.type("?\r")
    said = screen.until("Sources:")
    assert "Yes: your 700 CCA AGM" in CONTROL.sub("", said)
    assert COLOUR.search(said)
    screen.until(">")
    screen.type("set battery.cca 400\x7f\x7f\x7f300\r")
    assert "your 300 CCA AGM" in CONTROL.sub("", screen.until("Sources:"))
    screen.until(">")
    screen.type("facts\r")
    screen.until("battery.cca                  300 A")
    screen.type("quit\r")
    assert screen.close() == 0
    lines = (tmp_path / "history").read_text(encoding="utf-8")
    assert "Will a 700 CCA AGM run the Pike?" in lines
    with sqlite3.connect(tmp_path / "leadsman.sqlite") as log:
        rows = log.execute("select text, verdicts from log order by rowid").fetchall()
    assert rows == [("Will a 700 CCA AGM run the Pike?", "yes"), ("battery.cca = 300 A", "no")]


def test_no_colour_no_log_and_ctrl_d(terminal, tmp_path):
    screen = terminal("--no-log", NO_COLOR="1")
    screen.type("Is 12.4 V good for an AGM?\r")
    said = screen.until("Sources:")
    answer = said[said.index("Only just") :].partition("\x1b[?2004h")[0]  # the prompt's own drawing comes after it
    assert not COLOUR.search(answer)
    assert max(map(len, CONTROL.sub("", answer).splitlines())) <= 80
    screen.until(">")
    screen.type("\x04")
    assert screen.close() == 0
    assert list(tmp_path.iterdir()) == []
