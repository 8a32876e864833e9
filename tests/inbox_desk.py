"""What the tests of the inbox share: a desk, mails by hand, and drafts read back."""

from __future__ import annotations

import email
import email.policy
import io
import json
from collections.abc import Iterator
from contextlib import contextmanager
from email.message import EmailMessage
from functools import cache
from pathlib import Path
from typing import Any

from service.house import load
from service.inbox.run import Wanted, inbox
from service.leadsman import Leadsman
from service.turns.thread import Signer

MAILS = Path(__file__).parent / "inbox"


@cache
def desk() -> Leadsman:
    return Leadsman(load(), Signer("for the tests alone"))


def mail(text: str, *, sender: str = "Ann Low <ann@post.example>", subject: str = "", **headers: str) -> bytes:
    """A plain mail; `message_id` and other headers by their names with "_" for "-"."""
    given = {"From": sender, "To": "desk@otterholm.example", "Subject": subject} | {
        name.replace("_", "-"): value for name, value in headers.items()
    }
    head = "".join(f"{name}: {value}\n" for name, value in given.items())
    head += "MIME-Version: 1.0\nContent-Type: text/plain; charset=utf-8\n"
    return f"{head}\n{text}\n".encode("utf-8", "surrogateescape")


def run(source: Path | str, **wanted: Any) -> list[dict[str, Any]]:
    """The lines of `leadsman inbox SOURCE --json`."""
    out = io.StringIO()
    inbox(Wanted(str(source), json=True, **wanted), desk(), out, io.StringIO())
    return [json.loads(line) for line in out.getvalue().splitlines()]


def sorted_one(folder: Path, content: bytes, **wanted: Any) -> dict[str, Any]:
    """The line of one mail alone in a folder."""
    (folder / "one.eml").write_bytes(content)
    (found,) = run(folder / "one.eml", **wanted)
    return found


def read_back(path: str | Path | bytes) -> EmailMessage:
    content = path if isinstance(path, bytes) else Path(path).read_bytes()
    message = email.message_from_bytes(content, policy=email.policy.default)
    assert isinstance(message, EmailMessage)
    return message


def plain_of(message: EmailMessage) -> str:
    part = message.get_body(("plain",))
    assert part is not None
    return str(part.get_content()).replace("\r\n", "\n")


@contextmanager
def folder_of(folder: Path, *mails: bytes) -> Iterator[Path]:
    for number, content in enumerate(mails, 1):
        (folder / f"{number:03}.eml").write_bytes(content)
    yield folder
