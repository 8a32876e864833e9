"""`leadsman inbox`: sorts a mailbox, prints what it found, and leaves drafts where they are asked for."""

from __future__ import annotations

import getpass
import json
import os
import stat
import sys
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, TextIO

from service.inbox.drafts import DraftFault, Folder, Tray, Writer
from service.inbox.mailbox import Files, Source, SourceFault
from service.inbox.sorting import Sorted, Sorter
from service.leadsman import Leadsman
from service.triage import URGENCIES

if TYPE_CHECKING:
    from service.inbox.imap import Imap

SCHEMES = ("imap://", "imaps://")
IN_MAILBOX = "imap"  # --drafts: into the mailbox's own Drafts
PASSWORD = "LEADSMAN_IMAP_PASSWORD"
ROW = "{:8}  {:11}  {:5}  {:28.28}  {:36.36}  {}"


@dataclass(frozen=True, slots=True)
class Wanted:
    """What the command line asks for."""

    source: str
    json: bool = False
    drafts: str = ""
    watch: bool = False
    own: tuple[str, ...] = ()
    password_file: Path | None = None


@dataclass(frozen=True, slots=True)
class Run:
    """A run over a mailbox: what sorts, what writes, and where drafts go."""

    sorter: Sorter
    source: Source
    writer: Writer
    tray: Tray | None

    def sorted(self) -> Iterator[Sorted]:
        """Sort every mail that waits, leave its draft, mark it as seen to."""
        for item in self.source.items():
            found = self._drafted(self.sorter.sort(item))
            if self.tray:
                self.source.done(item, broken=found.broken)
            yield found

    def _drafted(self, found: Sorted) -> Sorted:
        if not self.tray or not found.due:
            return found
        try:
            return replace(found, draft=self.tray.put(found, self.writer.write(found)))
        except DraftFault as error:
            return replace(found, why=str(error))


def inbox(wanted: Wanted, desk: Leadsman, out: TextIO | None = None, err: TextIO | None = None) -> None:
    """Run the command. Raises SourceFault where the mailbox or the drafts cannot be used."""
    out, err = out or sys.stdout, err or sys.stderr
    remote = _remote(wanted) if wanted.source.lower().startswith(SCHEMES) else None
    source: Source = remote or Files(Path(wanted.source))
    tray = _tray(wanted, remote)
    if wanted.watch and remote is None:
        raise SourceFault("--watch needs a mailbox on a server, imaps://user@server/INBOX")
    ours = [*wanted.own, desk.house.words.get("email", "")]
    own = {address.strip().lower() for address in (*ours, remote.place.user if remote else "") if "@" in address}
    sender = next((address.strip().lower() for address in ours if "@" in address), "desk@localhost")
    sorter = Sorter(desk, own, source.find, source.answered)
    run = Run(sorter, source, Writer(desk.house, sender, lambda: datetime.now(UTC)), tray)
    try:
        (_as_json if wanted.json else _as_table)(run.sorted(), out, err)
        if wanted.watch and remote:
            remote.watch(lambda: (_as_json if wanted.json else _as_rows)(run.sorted(), out, err))
    finally:
        source.close()


def _remote(wanted: Wanted) -> Imap:
    from service.inbox.imap import Imap, place

    where = place(wanted.source)
    return Imap(where, password(wanted.password_file, where.user), marks=bool(wanted.drafts))


def _tray(wanted: Wanted, remote: Imap | None) -> Tray | None:
    if not wanted.drafts:
        return None
    if wanted.drafts != IN_MAILBOX:
        return Folder(Path(wanted.drafts))
    if remote is None:
        raise SourceFault("--drafts imap needs a mailbox on a server; name a folder for the drafts of files")
    return remote


def password(file: Path | None, user: str) -> str:
    """The mailbox's password: of a file that only its owner can read, the environment, or a prompt."""
    if file:
        try:
            if stat.S_IMODE(file.stat().st_mode) & 0o077:
                raise SourceFault(f"others can read {file}: run chmod 600 {file}")
            return file.read_text(encoding="utf-8").strip("\r\n")
        except OSError as error:
            raise error if isinstance(error, SourceFault) else SourceFault(f"{file}: {error.strerror}") from error
    if kept := os.environ.get(PASSWORD):
        return kept
    if not sys.stdin.isatty():
        raise SourceFault(f"no password: set {PASSWORD}, or name a file of mode 600 by --password-file")
    return getpass.getpass(f"Password of {user}: ")


def _as_json(sorted_mails: Iterator[Sorted], out: TextIO, err: TextIO) -> None:
    for found in sorted_mails:
        print(json.dumps(found.as_dict(), ensure_ascii=True), file=out, flush=True)
        _report(found, err)


def _as_rows(sorted_mails: Iterator[Sorted], out: TextIO, err: TextIO) -> None:
    for found in sorted_mails:
        print(_row(found), file=out, flush=True)
        _report(found, err)


def _as_table(sorted_mails: Iterator[Sorted], out: TextIO, err: TextIO) -> None:
    """A table for people, the most urgent first."""
    rows: list[tuple[int, str]] = []
    for found in sorted_mails:
        rows.append((-URGENCIES.index(found.triage.urgency), _row(found)))
        _report(found, err)
    print(ROW.format("urgency", "route", "reply", "from", "subject", "answer").rstrip(), file=out)
    for _, row in sorted(rows, key=lambda item: item[0]):
        print(row, file=out)
    out.flush()


def _row(found: Sorted) -> str:
    mail, answers = found.mail, found.reply.answers if found.reply else ()
    sender = mail.sender.email if mail and mail.sender else "-"
    told = found.why or (answers[0].headline if answers else "no question in it")
    subject = mail.subject if mail and mail.subject else str(found.item.key)
    columns = (found.triage.urgency, found.triage.route, "due" if found.due else "-", sender, subject, told)
    return ROW.format(*(text.replace("\u00a0", " ") for text in columns))


def _report(found: Sorted, err: TextIO) -> None:
    if found.broken:
        print(f"leadsman: {found.item.kind} {found.item.key}: {found.why}", file=err, flush=True)
