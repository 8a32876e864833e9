"""The demo conversations and the README's answers as they would be told now. `python -m tests.demo` writes them anew.

A conversation is a Markdown file: prose, then turns. "**Customer:** ..." is what a customer writes, a line of four
spaces or more is what the desk answers. In the README a block that begins with `$ leadsman ask "..."` holds what the
command prints.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from service.leadsman import Leadsman
from service.render.as_text import as_text
from service.turns.thread import Signer

FOLDER = Path(__file__).parent.parent / "demo_conversations"
README = FOLDER.parent / "README.md"
CUSTOMER = "**Customer:** "
COMMAND = re.compile(r'(```\n\$ leadsman ask "([^"\n]+)"\n)(?:(?!```).*\n)*(```)')


def conversations() -> list[Path]:
    """All of them, by name."""
    return sorted(FOLDER.glob("*.md"))


def told(text: str) -> str:
    """The same conversation with the answers of today."""
    return "\n".join(_lines(text.splitlines())) + "\n"


def read_me(text: str) -> str:
    """The README with the answers of today."""
    desk = Leadsman()
    return COMMAND.sub(lambda found: f"{found[1]}{as_text(desk.ask(found[2]))}\n{found[3]}", text)


def _lines(lines: list[str]) -> Iterator[str]:
    desk, thread = Leadsman(signer=Signer("demo")), None
    kept = [line for line in lines if not line.startswith("    ")]
    for line in _single_blanks(kept):
        yield line
        if line.startswith(CUSTOMER):
            reply = desk.ask(line.removeprefix(CUSTOMER), thread=thread)
            thread = reply.thread
            yield ""
            yield from ("    " + part if part else "    " for part in as_text(reply, width=74).split("\n"))


def _single_blanks(lines: list[str]) -> Iterator[str]:
    text = re.sub(r"\n{3,}", "\n\n", "\n".join(lines)).strip("\n")
    yield from text.split("\n")


if __name__ == "__main__":
    for path in conversations():
        path.write_text(told(path.read_text(encoding="utf-8")), encoding="utf-8")
        print(path.name)
    README.write_text(read_me(README.read_text(encoding="utf-8")), encoding="utf-8")
