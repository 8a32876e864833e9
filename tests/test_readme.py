"""What the README shows is what the desk says, and every command in it exists."""

from __future__ import annotations

import re

from service.cli import parser
from tests.demo import COMMAND, README, read_me

TEXT = README.read_text(encoding="utf-8")


def test_five_answers_are_real():
    assert len(COMMAND.findall(TEXT)) == 5
    assert read_me(TEXT) == TEXT


def test_every_command_exists():
    known = parser().format_help()
    for command in re.findall(r"leadsman ([a-z]+)", TEXT):
        assert command in known
