"""The log keeps what was asked over the page, HTTP and the command line, and nothing else."""

from __future__ import annotations

import json
import os
import stat

import pytest

from service.leadsman import Leadsman
from service.log import Entry, Log, LogFault

DESK = Leadsman()


def entry(text, at="2026-11-24T09:41:00+00:00"):
    return Entry(text, DESK.ask(text), at, "test", "rules", "house", 1.5)


@pytest.fixture
def log(tmp_path):
    made = Log(tmp_path / "data")
    yield made
    made.close()


def test_what_was_asked_and_answered_comes_back(log):
    told = entry("Is 12.7 V good for my AGM?")
    log.add(told)
    row = log.find(told.reply.id)
    assert row["text"] == told.text
    assert row["topics"] == "rest-voltage"
    answer = json.loads(row["answer"])
    assert answer["answers"] == told.reply.as_dict()["answers"]
    assert "thread" not in answer


def test_nothing_of_the_customer_but_the_text(log):
    log.add(entry("Is 12.7 V good?"))
    assert set(log.db["log"].columns_dict) == {
        "id", "at", "surface", "text", "understood", "topics", "verdicts", "urgency", "route", "answer", "rules",
        "house", "ms", "before",
    }  # fmt: skip


def test_newest_first_and_by_route(log):
    log.add(entry("Is 12.7 V good?", "2026-11-24T09:41:00+00:00"))
    log.add(entry("Will a marine battery run the Pike?", "2026-11-24T09:42:00+00:00"))
    assert [row["at"][11:16] for row in log.rows()] == ["09:42", "09:41"]
    assert [row["route"] for row in log.rows(route="needs-facts")] == ["needs-facts"]


def test_odd_characters_survive(log):
    told = entry("Ünïcode ' \" ; drop table log; -- \x00 \U0001f6a4 12.4 V?")
    log.add(told)
    assert log.find(told.reply.id)["text"] == told.text


def test_half_a_character_is_stored_and_looked_for(log):
    told = entry("12.4 V \udcff?")
    log.add(told)
    assert log.find(told.reply.id)["text"] == "12.4 V \ufffd?"
    assert log.find("\ud800") is None
    assert log.queue([told.reply.id], told.at, "a\ud800@b.example")


def test_the_file_is_its_owners_alone(log):
    log.add(entry("Is 12.7 V good?"))
    modes = {path.name: stat.S_IMODE(path.stat().st_mode) for path in log.path.parent.iterdir()}
    assert "leadsman.sqlite" in modes
    assert set(modes.values()) == {0o600}


def test_write_ahead_log(log):
    assert log.db.execute("pragma journal_mode").fetchone()[0] == "wal"


def test_a_folder_that_is_a_file(tmp_path):
    (tmp_path / "data").write_text("")
    with pytest.raises(LogFault, match="--data"):
        Log(tmp_path / "data")


def test_a_file_that_is_no_database(tmp_path):
    (tmp_path / "leadsman.sqlite").write_bytes(b"no database at all" * 100)
    with pytest.raises(LogFault, match="cannot be opened"):
        Log(tmp_path)


def test_a_read_only_log(tmp_path, monkeypatch):
    Log(tmp_path).close()
    os.chmod(tmp_path / "leadsman.sqlite", stat.S_IREAD)
    monkeypatch.setattr(os, "access", lambda path, mode: False)  # the tests may run as root, who may write anything
    with pytest.raises(LogFault, match="may not be written"):
        Log(tmp_path)
