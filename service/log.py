"""The log: what was asked over the page, HTTP and `ask`, and the answers, in one SQLite file of its owner alone.

Mails, tables and `score` are not logged. No cookie, no tracking, no address of a machine; an email address only in the
queue, where a customer leaves it to have an answer sent there.
"""

from __future__ import annotations

import json
import os
import sqlite3
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from service.question import mended
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
    "before": str,  # the thread that a follow-up met, so that it can be asked again; empty for a first message
}
FEEDBACK: dict[str, type] = {"id": str, "at": str, "helped": int, "word": str}
QUEUE: dict[str, type] = {"id": str, "at": str, "reply_to": str, "word": str, "entries": str, "facts": str}


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
            os.close(os.open(self.path, os.O_RDONLY | os.O_CREAT, 0o600))  # SQLite would let others read it
            connection = sqlite3.connect(self.path, timeout=WAIT_MS / 1000)
            self.db = sqlite_utils.Database(connection)
            self.db.enable_wal()
            self.db.table("log").create(COLUMNS, pk="id", not_null={"text", "at"}, if_not_exists=True)
            if "before" not in self.db.table("log").columns_dict:  # a log of an earlier version
                self.db.table("log").add_column("before", str)
            self.db.table("feedback").create(FEEDBACK, pk="id", if_not_exists=True)
            self.db.table("queue").create(QUEUE, pk="id", if_not_exists=True)
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
            "before": json.dumps(entry.reply.before, ensure_ascii=False) if entry.reply.before else "",
        }
        self._keep("log", row, replace=False)

    def find(self, id: str) -> dict[str, Any] | None:
        """One entry, or None. Raises LogFault."""
        try:
            return next(iter(self.db["log"].rows_where("id = ?", [mended(id)], limit=1)), None)
        except sqlite3.Error as error:
            raise fault(self.path, error) from error

    def probe(self) -> None:
        """Find out whether an entry could be stored now. Raises LogFault."""
        try:
            self.db.conn.execute("begin immediate")
            self.db.conn.rollback()
        except sqlite3.Error as error:
            raise fault(self.path, error) from error

    def judge(self, id: str, at: str, helped: bool, word: str = "") -> bool:
        """Keep whether an answer helped, with a free word; the last word on it stands. False for an unknown answer."""
        if self.find(id) is None:
            return False
        self._keep("feedback", {"id": id, "at": at, "helped": int(helped), "word": word})
        return True

    def queue(self, ids: Sequence[str], at: str, reply_to: str, word: str = "") -> bool:
        """Hand a conversation, by the ids of its entries, to the people of the desk. False where none is known."""
        rows = [row for row in map(self.find, ids) if row]
        if not rows:
            return False
        facts: dict[str, Any] = {}
        for row in rows:
            facts |= {f"{item['fact']} {item.get('of', '')}".strip(): item for item in json.loads(row["understood"])}
        told = json.dumps(list(facts.values()), ensure_ascii=False)
        entries = ",".join(row["id"] for row in rows)
        self._keep(
            "queue",
            {"id": rows[-1]["id"], "at": at, "reply_to": reply_to, "word": word, "entries": entries, "facts": told},
        )
        return True

    def queued(self, limit: int | None = None) -> Iterator[dict[str, Any]]:
        """Conversations that wait for a person, newest first."""
        yield from self.db["queue"].rows_where(order_by="at desc, rowid desc", limit=limit)

    def _keep(self, table: str, row: dict[str, Any], replace: bool = True) -> None:
        whole = {name: mended(value) if isinstance(value, str) else value for name, value in row.items()}
        try:
            self.db.table(table).insert(whole, replace=replace)
        except sqlite3.Error as error:
            raise fault(self.path, error) from error

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
    why = error.strerror if isinstance(error, OSError) and error.strerror else error
    return LogFault(f"The log {path} cannot be opened or written ({why}): check the folder, or name another by --data.")


def default_folder() -> Path:
    """The user's data folder."""
    from platformdirs import user_data_path

    return user_data_path("leadsman", appauthor=False)
