"""Long work tells a terminal how far it is, and a file or a pipe nothing."""

from __future__ import annotations

import io
import os
import sys

import pytest

from service.cli import main
from service.commands.progress import EVERY, WIPE, Progress
from tests.inbox_desk import mail
from tests.terminal import Terminal


class Screen(io.StringIO):
    def isatty(self):
        return True


def test_it_is_shown_now_and_then_and_wiped_away():
    now, screen = [0.0], Screen()
    progress = Progress("mails sorted", 9, screen, lambda: now[0])
    for _ in range(9):
        now[0] += 0.4 * EVERY
        progress.step()
    assert screen.getvalue() == "".join(f"{WIPE}{count} of 9 mails sorted" for count in (3, 6, 9))
    progress.clear()
    progress.clear()
    assert screen.getvalue().endswith(f"9 of 9 mails sorted{WIPE}")


def test_a_file_gets_none_of_it():
    plain = io.StringIO()
    progress = Progress("mails sorted", stream=plain, clock=iter(range(0, 1000, 10)).__next__)
    for _ in range(9):
        progress.step()
    progress.clear()
    assert (plain.getvalue(), progress.count) == ("", 9)


@pytest.mark.parametrize("command", ["inbox", "replay", "table"])
def test_piped_output_is_as_it_was(tmp_path, capsys, command):
    (tmp_path / "one.eml").write_bytes(mail("Is 12.4 V good for an AGM?"))
    (tmp_path / "texts.jsonl").write_text('{"text": "Is 12.4 V good?"}\n')
    (tmp_path / "table.csv").write_text("question\nIs 12.4 V good?\n")
    source = {"inbox": "one.eml", "replay": "texts.jsonl", "table": "table.csv"}[command]
    assert main([command, str(tmp_path / source)]) == 0
    said = capsys.readouterr()
    assert "\x1b" not in said.out + said.err


@pytest.mark.slow
def test_a_long_run_at_a_terminal_shows_how_far_it_is(tmp_path):
    for number in range(900):
        (tmp_path / f"{number}.eml").write_bytes(
            mail(f"Is 12.{number} V good for an AGM?", sender=f"{number}@x.example")
        )
    terminal = Terminal([sys.executable, "-m", "service", "inbox", str(tmp_path)], dict(os.environ))
    terminal.until(" mails sorted")
    assert "due" in terminal.until("0@x.example")
    terminal.close()
