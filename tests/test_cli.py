"""The command line as a technician uses it: what it prints, how it ends, and what it says of bad input."""

from __future__ import annotations

import io
import json
import re
import socket
import sqlite3
import subprocess
import sys
import urllib.request

import pytest

from grammar.files import toml
from service.cli import main
from service.house import DEMO

LOGGED = ("ask", "log", "serve", "replay")


@pytest.fixture
def desk(tmp_path, capsys):
    """Runs a command on a log of its own; gives its exit status, output and errors."""

    def run(*arguments):
        data = ["--data", str(tmp_path / "data")] if arguments[0] in LOGGED else []
        status = main([arguments[0], *data, *arguments[1:]])
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


@pytest.mark.parametrize("command", [("ask",), ("ask", "--json"), ("why",)], ids=" ".join)
def test_half_a_character_is_answered_and_printed(desk, command):
    status, said, fault = desk(*command, "Is 12.7 V good for my \udcff AGM?")
    assert (status, fault) == (0, "")
    assert "\udcff" not in said


def test_what_the_terminal_cannot_show_is_no_fault(tmp_path, monkeypatch):
    main(["ask", "--data", str(tmp_path), "Is 12.7 V good for my AGM? \u26f5"])
    shown = io.BytesIO()
    monkeypatch.setattr(sys, "stdout", io.TextIOWrapper(shown, encoding="ascii"))
    assert main(["log", "--data", str(tmp_path)]) == 0
    sys.stdout.flush()
    assert b"AGM? ?" in shown.getvalue()


def test_an_unknown_command_ends_with_2(capsys):
    with pytest.raises(SystemExit) as ended:
        main(["guess"])
    assert ended.value.code == 2


def test_a_broken_data_file_ends_with_2_and_answers_nothing(desk, monkeypatch, tmp_path):
    (tmp_path / "broken.toml").write_text('says = ["flat')
    monkeypatch.setattr("service.leadsman.lexicon", lambda: toml(tmp_path / "broken.toml"))
    status, out, err = desk("ask", "Is 12.4 V good?")
    assert (status, out) == (2, "")
    assert "broken.toml" in err


def test_what_fails_inside_is_told_beside_the_hand_over(desk, monkeypatch):
    monkeypatch.setattr("service.answering.finished", lambda topic, case: 1 / 0)
    _, out, err = desk("ask", "Is 12.4 V good?")
    assert "technician" in out
    assert "rest-voltage failed" in err


def test_an_entry_is_shown_by_its_id(desk):
    assert desk("log", "show")[0] == 2


def test_words_and_options_stand_in_any_order(tmp_path, capsys):
    data = str(tmp_path / "data")
    assert main(["ask", "is", "--data", data, "12.7", "V", "--json", "good"]) == 0
    entry = json.loads(capsys.readouterr().out)["id"]
    assert main(["log", "show", "--data", data, entry]) == 0
    assert "is 12.7 V good" in capsys.readouterr().out
    assert main(["log", "--data", data, "show", "--", "-an-id"]) == 2
    assert "no entry has the id '-an-id'" in capsys.readouterr().err
    (tmp_path / "in.csv").write_text("question\nIs 12.7 V good?\n")
    house = str(DEMO)
    assert main(["table", str(tmp_path / "in.csv"), "--house", house, str(tmp_path / "out.csv")]) == 0
    assert (tmp_path / "out.csv").exists()


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (["sources", "--house", "x"], "usage: leadsman sources"),
        (["log", "--house", "x"], "usage: leadsman log"),
        (["house", "check", "--data", "x", "y"], "usage: leadsman house"),
        (["score", "--data", "x", "y"], "unrecognized arguments: --data"),
        (["log", "--limit", "0"], "no whole number from 1"),
        (["log", "--limit", "-3"], "no whole number from 1"),
        (["serve", "--port", "99999"], "no whole number from 0 to 65535"),
        (["serve", "--port", "http"], "no whole number from 0 to 65535"),
    ],
)
def test_what_a_command_does_not_take_is_told_under_its_own_usage(capsys, arguments, told):
    with pytest.raises(SystemExit) as ended:
        main(arguments)
    assert ended.value.code == 2
    assert told in capsys.readouterr().err


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (["list", "extra"], "log list takes no id"),
        (["queue", "--route", "answered"], "log queue takes no --route"),
        (["show", "x", "--limit", "3"], "log show takes no --limit"),
    ],
)
def test_the_log_takes_what_it_reads(desk, arguments, told):
    status, said, fault = desk("log", *arguments)
    assert (status, said) == (2, "")
    assert told in fault


@pytest.mark.parametrize("command", [["log"], ["log", "export"], ["log", "show", "x"], ["replay"]], ids=" ".join)
def test_reading_a_log_makes_none(tmp_path, capsys, command):
    assert main([*command, "--data", str(tmp_path / "nowhere")]) == 2
    assert "there is no log in" in capsys.readouterr().err
    assert not (tmp_path / "nowhere").exists()


@pytest.mark.parametrize(
    "command", [["score"], ["house", "check"], ["ask", "x", "--house"], ["serve", "--house"]], ids=" ".join
)
def test_a_file_that_is_not_there_is_told_in_words(tmp_path, capsys, command):
    assert main([*command, str(tmp_path / "nowhere")]) == 2
    fault = capsys.readouterr().err
    assert "nowhere cannot be read (No such file or directory): " in fault
    assert "Errno" not in fault


def refused(folder, *options):
    """What `serve` tells where it cannot begin, in a process of its own: a socket that fails is left to its end."""
    command = [sys.executable, "-m", "service", "serve", "--data", str(folder), *options]
    ended = subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)
    assert (ended.returncode, ended.stdout) == (2, "")
    return ended.stderr


def test_a_port_in_use_is_said_and_nothing_else(tmp_path):
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        told = refused(tmp_path, "--port", str(taken.getsockname()[1]))
    assert "choose another --port" in told
    assert "Errno" not in told


def test_an_address_of_another_machine_is_no_matter_of_the_port(tmp_path):
    assert "choose a --host" in refused(tmp_path, "--host", "192.0.2.1")


def test_a_free_port_is_the_one_that_is_told(tmp_path):
    command = [sys.executable, "-m", "service", "serve", "--data", str(tmp_path), "--port", "0"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as serving:
        told = re.search(r"http://127\.0\.0\.1:(\d+)/", serving.stdout.readline())
        try:
            with urllib.request.urlopen(f"{told[0]}healthz", timeout=30) as response:
                assert response.status == 200
        finally:
            serving.terminate()


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
    desk("ask", "Is 12.7 V good for my AGM?")
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


RIGHT = {"id": "one", "turns": [{"text": "Is 12.7 V good for my AGM?", "expect": {"topics": ["rest-voltage"]}}]}


def turn(**changed):
    return {**RIGHT, "turns": [{**RIGHT["turns"][0], **changed}]}


@pytest.mark.parametrize(
    ("case", "told"),
    [
        ({"id": "two"}, 'it needs "id", and "turns"'),
        ({**RIGHT, "turns": []}, 'it needs "id", and "turns"'),
        ({**RIGHT, "turns": "12.7 V"}, 'it needs "id", and "turns"'),
        ([], 'it needs "id", and "turns"'),
        (turn(text=5), "text must be a text"),
        (turn(text=" "), "text must be a text"),
        (turn(text="x" * 20_001), "text must be a text"),
        (turn(expect=3), "expect must be an object"),
        ({**RIGHT, "turns": [{"text": "Is 12.7 V good?"}]}, "expect must be an object"),
        (turn(expect={"topics": "rest-voltage"}), "topics must be a list of texts"),
        (turn(expect={"route": "answered"}), "route must be a list of texts"),
        (turn(expect={"verdict": {"rest-voltage": "yes"}}), "a list of texts for each topic"),
        (turn(expect={"asks": ["battery.cca"]}), "a list of texts for each topic"),
        (turn(expect={"figures": {"rest-voltage.state_of_charge": 90}}), "[value, tolerance]"),
        (turn(expect={"facts": ["battery.cca"]}), "an object of facts"),
        (turn(expect={"tpoics": []}), "a label knows no ['tpoics']"),
    ],
)
def test_a_case_that_cannot_be_judged_is_told_with_its_line(desk, tmp_path, case, told):
    file = tmp_path / "cases.jsonl"
    file.write_text(f"{json.dumps(RIGHT)}\n\n{json.dumps(case)}\n", encoding="utf-8")
    status, said, fault = desk("score", str(file))
    assert (status, said) == (2, "")
    assert f"{file}: line 3 is not a case: " in fault
    assert told in fault


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"", "no case in"),
        (b"\n \n", "no case in"),
        (b"\xff\xfe", "no text in UTF-8"),
        (b"[" * 100_000, "line 1 is not"),
    ],
    ids=["empty", "blank", "bytes", "nested"],
)
def test_a_file_without_cases_is_told(desk, tmp_path, content, told):
    file = tmp_path / "cases.jsonl"
    file.write_bytes(content)
    status, said, fault = desk("score", str(file))
    assert (status, said) == (2, "")
    assert told in fault


def test_score_says_what_it_did_not_judge_and_shows_any_text(desk, tmp_path):
    file = tmp_path / "cases.jsonl"
    case = turn(text="Is 12.7 V good for my \ud800 AGM?", expect={"topics": ["weight"], "cautions": ["acid"]})
    file.write_text(json.dumps(case), encoding="utf-8")
    status, said, _ = desk("score", "--show", "wrong", str(file))
    assert status == 0
    assert "one.0  Is 12.7 V good for my ? AGM?" in said
    assert "cautions of 1 labels are not judged" in said
    assert "two questions or more" not in said
