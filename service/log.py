"""The log: every question and answer in one SQLite file. No address, no cookie, no tracking."""

from __future__ import annotations

import json
import os
import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from service.reply import Reply

FILE = "leadsman.sqlite"
WAIT_MS = 2_000  # for another writer, before we say that the log is busy
COLUMNS: dict[str, type] = {
    "id": str,
    "at": str,
    "surface": str,
    "text": str,
    "understood": str,
    "topics": str,
    "verdicts": str,
    "urgency": str,
    "route": str,
    "answer": str,
    "rules": str,
    "house": str,
    "ms": float,
}


class LogFault(OSError):
    """The log cannot be opened or written. The message says what to do."""


@dataclass(frozen=True, slots=True)
class Entry:
    """What goes into the log with a reply."""

    text: str
    reply: Reply
    at: str  # ISO 8601, UTC
    surface: str
    rules: str
    house: str
    ms: float


class Log:
    """The log of one data folder. One Log belongs to one thread, as SQLite connections do."""

    def __init__(self, folder: Path) -> None:
        import sqlite_utils

        self.path = folder / FILE
        try:
            folder.mkdir(parents=True, exist_ok=True)
            connection = sqlite3.connect(self.path, timeout=WAIT_MS / 1000)
            self.db = sqlite_utils.Database(connection)
            self.db.enable_wal()
            self.db["log"].create(COLUMNS, pk="id", not_null={"text", "at"}, if_not_exists=True)
            if not os.access(self.path, os.W_OK):
                raise PermissionError(f"{self.path} may not be written")
        except (OSError, sqlite3.Error) as error:
            raise fault(self.path, error) from error

    def add(self, entry: Entry) -> None:
        """Store a question and its answer. Raises LogFault where that is not possible."""
        content = entry.reply.as_dict()
        content.pop("thread")  # it carries facts of earlier turns and a signature: nothing to keep
        answers = entry.reply.answers
        row = {
            "id": entry.reply.id,
            "at": entry.at,
            "surface": entry.surface,
            "text": entry.text,
            "understood": json.dumps([item for part in content["answers"] for item in part["understood"]]),
            "topics": ",".join(item.topic for item in answers),
            "verdicts": ",".join(item.verdict for item in answers),
            "urgency": entry.reply.triage.urgency,
            "route": entry.reply.triage.route,
            "answer": json.dumps(content, ensure_ascii=False),
            "rules": entry.rules,
            "house": entry.house,
            "ms": round(entry.ms, 2),
        }
        try:
            self.db["log"].insert(row)
        except sqlite3.Error as error:
            raise fault(self.path, error) from error

    def find(self, id: str) -> dict[str, Any] | None:
        """One entry, or None."""
        return next(iter(self.db["log"].rows_where("id = ?", [id], limit=1)), None)

    def rows(self, limit: int | None = None, route: str | None = None) -> Iterator[dict[str, Any]]:
        """Entries, newest first; with `route` only those that went there."""
        where, values = ("route = ?", [route]) if route else (None, None)
        yield from self.db["log"].rows_where(where, values, order_by="at desc, rowid desc", limit=limit)

    def close(self) -> None:
        """Close the file."""
        self.db.close()


def fault(path: Path, error: Exception) -> LogFault:
    """The fault of a log file in words that say what to do."""
    if "locked" in str(error) or "busy" in str(error):
        return LogFault(f"The log {path} is busy: another program holds it. Try again, or end that program.")
    return LogFault(
        f"The log {path} cannot be opened or written ({error}): check the folder, or name another by --data."
    )


def default_folder() -> Path:
    """The user's data folder."""
    from platformdirs import user_data_path

    return user_data_path("leadsman", appauthor=False)
