"""Dialogues as data: every case of tests/cases/ is answered as its label says."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from service.commands.score import judge
from service.leadsman import Leadsman
from service.turns.thread import Signer

FOLDER = Path(__file__).parent / "cases"
DESK = Leadsman(signer=Signer("cases"))


def cases():
    for path in sorted(FOLDER.glob("*.toml")):
        for case in tomllib.loads(path.read_text(encoding="utf-8"))["case"]:
            yield pytest.param(case, id=f"{path.stem}: {case['name']}")


@pytest.mark.parametrize("case", list(cases()))
def test_case(case):
    assert set(case) <= {"name", "turns"}
    thread = None
    for turn in case["turns"]:
        reply = DESK.ask(turn["text"], thread=thread).as_dict()
        thread = reply["thread"]
        found = judge(reply, turn["expect"])
        assert found.outcome == "right", (turn["text"], found.reasons)
