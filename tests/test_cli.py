"""The command line as a technician uses it: what it prints, how it ends, and what it says of bad input."""

from __future__ import annotations

import io
import json
import socket
import sqlite3
import sys

import pytest

from service.cli import main


@pytest.fixture
def desk(tmp_path, capsys):
    """Runs a command on a log of its own; gives its exit status, output and errors."""

    def run(*arguments):
        status = main([arguments[0], "--data", str(tmp_path / "data"), *arguments[1:]])
        said = capsys.readouterr()
        return status, said.out, said.err

    return run


def test_an_answer_ends_with_0(desk):
    status, said, _ = desk("ask", "Is 12.7 V good for my AGM after a night off charge?")
    assert status == 0
    assert said.startswith("Yes")
    assert "Sources:" in said


def test_a_question_asked_back_ends_with_3(desk):
    status, said, _ = desk("ask", "Will a marine battery run the Pike?")
    assert status == 3
    assert "Please tell us" in said


def test_words_need_no_quotes(desk):
    assert desk("ask", "is", "12.7", "V", "good")[0] == 0


def test_json_is_the_contract(desk):
    _, said, _ = desk("ask", "--json", "Is 12.7 V good for my AGM?")
    reply = json.loads(said)
    assert set(reply) == {"id", "notice", "thread", "triage", "answers"}
    assert reply["answers"][0]["topic"] == "rest-voltage"


def test_standard_input_is_read(desk, monkeypatch):
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b"is 12,7 V good for an agm")))
    assert desk("ask")[0] == 0


def test_binary_on_standard_input_is_no_traceback(desk, monkeypatch):
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(bytes(range(256)))))
    assert desk("ask")[0] in (0, 3)


@pytest.mark.parametrize(
    ("text", "word"), [("   ", "empty"), ("a" * 20_001, "20001 characters")], ids=["empty", "too long"]
)
def test_bad_input_ends_with_2_and_says_what_to_do(desk, text, word):
    status, said, fault = desk("ask", text)
    assert (status, said) == (2, "")
    assert word in fault


def test_an_unknown_command_ends_with_2(capsys):
    with pytest.raises(SystemExit) as ended:
        main(["guess"])
    assert ended.value.code == 2


def test_an_entry_is_shown_by_its_id(desk):
    assert desk("log", "show")[0] == 2


def test_a_port_in_use_is_said_and_nothing_else(capsys):
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        assert main(["serve", "--port", str(taken.getsockname()[1])]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert "choose another --port" in told.err


def test_the_log_lists_shows_and_exports(desk):
    desk("ask", "Is 12.7 V good for my AGM?")
    _, listed, _ = desk("log")
    entry = listed.split()[0]
    assert "rest-voltage" in listed
    assert "12.7 V" in desk("log", "show", entry)[1]
    row = json.loads(desk("log", "export")[1])
    assert row["text"] == "Is 12.7 V good for my AGM?"
    assert {"topics", "verdicts", "understood", "urgency", "route", "rules", "house", "ms"} <= set(row)


def test_an_entry_that_is_not_there(desk):
    status, _, fault = desk("log", "show", "nothing")
    assert status == 2
    assert "leadsman log" in fault


def test_a_data_folder_that_cannot_be_made_still_answers(tmp_path, capsys):
    (tmp_path / "file").write_text("")
    status = main(["ask", "--data", str(tmp_path / "file" / "data"), "Is 12.7 V good for my AGM?"])
    said = capsys.readouterr()
    assert status == 0
    assert "Yes" in said.out
    assert "not logged" in said.err
    assert "--data" in said.err


def test_a_busy_log_still_answers(tmp_path, capsys):
    data = str(tmp_path / "data")
    main(["ask", "--data", data, "Is 12.7 V good for my AGM?"])
    with sqlite3.connect(tmp_path / "data" / "leadsman.sqlite") as other:
        other.execute("begin immediate")
        status = main(["ask", "--data", data, "Is 12.6 V good for my AGM?"])
    said = capsys.readouterr()
    assert status == 0
    assert "busy" in said.err


def test_a_broken_house_file_is_explained(tmp_path, capsys):
    file = tmp_path / "house.toml"
    file.write_text("[house]\nname = 3\n", encoding="utf-8")
    assert main(["ask", "--house", str(file), "hello"]) == 2
    assert f"{file}:1:" in capsys.readouterr().err
    assert main(["house", "check", str(file)]) == 2


def test_why_shows_facts_points_and_steps(desk):
    _, said, _ = desk("why", "Will a 100 Ah lithium run a 340 A thruster?")
    assert "battery.capacity = 100" in said
    assert "run-check" in said
    assert "points" in said


def test_sources_name_their_kind(desk):
    _, said, _ = desk("sources")
    assert "common practice" in said
    assert "standard" in said


def test_score_counts(desk, tmp_path):
    case = {"id": "one", "turns": [{"text": "Is 12.7 V good for my AGM?", "expect": {"topics": ["rest-voltage"]}}]}
    file = tmp_path / "cases.jsonl"
    file.write_text(json.dumps(case) + "\n", encoding="utf-8")
    status, said, _ = desk("score", str(file))
    assert status == 0
    assert "right       1  100.0 %" in said
