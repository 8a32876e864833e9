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

from service.commands.progress import Progress
from service.house import DEMO
from service.house.kept import Kept
from service.inbox.drafts import DraftFault, Folder, Tray, TrayFault, Writer
from service.inbox.mailbox import Files, Source, SourceFault
from service.inbox.sorting import Sorted, Sorter
from service.leadsman import Leadsman
from service.triage import URGENCIES

if TYPE_CHECKING:
    from service.inbox.imap import Imap

SCHEMES = ("imap://", "imaps://")
IN_MAILBOX = "imap"  # --drafts: into the mailbox's own Drafts
PASSWORD = "LEADSMAN_IMAP_PASSWORD"
AUTHORITY = "LEADSMAN_IMAP_CA"
ROW = "{:8}  {:11}  {:5}  {:28.28}  {:36.36}  {}"
NARROW_ROW = "{:8}  {:11}  {:5}  {:20.20}  {}"
ROOMY = 120  # columns; on a narrower terminal the answer stands in a line of its own


@dataclass(frozen=True, slots=True)
class Wanted:
    """What the command line asks for."""

    source: str
    json: bool = False
    drafts: str = ""
    watch: bool = False
    own: tuple[str, ...] = ()
    password_file: Path | None = None
    ca: Path | None = None


@dataclass(frozen=True, slots=True)
class Run:
    """A run over a mailbox: what sorts, what writes, and where drafts go."""

    sorter: Sorter
    source: Source
    writer: Writer
    tray: Tray | None

    def sorted(self) -> Iterator[Sorted]:
        """Sort every mail that waits, leave its draft, mark it as seen to; where that fails now it waits on."""
        for item in self.source.items():
            found = self._drafted(self.sorter.sort(item))
            if found.left:
                self.source.left(item)
            elif self.tray:
                self.source.done(item, broken=found.broken)
            yield found

    def _drafted(self, found: Sorted) -> Sorted:
        if not self.tray or not found.due:
            return found
        try:
            return replace(found, draft=self.tray.put(found, self.writer.write(found)))
        except TrayFault as error:
            return replace(found, why=f"{error}; this mail is tried again in the next run", left=True)
        except DraftFault as error:
            person = replace(found.triage, route="technician")
            return replace(found, triage=person, why=f"{error}; set aside for a person", broken=True)


def inbox(
    wanted: Wanted,
    desk: Leadsman,
    out: TextIO | None = None,
    err: TextIO | None = None,
    house: Kept | None = None,
) -> None:
    """Run the command. `house`: taken up anew when it changes. Raises SourceFault for an unusable mailbox or tray."""
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
        if not (_as_json if wanted.json else _as_table)(run.sorted(), out, err):
            eml = "" if remote else ": a folder of mails is a Maildir, or holds files named .eml"
            print(f"leadsman: no mail waits in {wanted.source}{eml}", file=err, flush=True)
        if wanted.watch and remote:
            kept = house or Kept(DEMO)
            remote.watch(lambda: (_as_json if wanted.json else _as_rows)(under(kept, run, err).sorted(), out, err))
    finally:
        source.close()


def under(kept: Kept, run: Run, err: TextIO) -> Run:
    """The run under the house as its file stands; a fault in it is told, and the last sound one stays."""
    before = kept.fault
    house = kept.now()
    if kept.fault and kept.fault != before:
        print(f"leadsman: the house file is not taken up, the last sound one stays: {kept.fault}", file=err, flush=True)
    run.sorter.desk.house = house
    return replace(run, writer=replace(run.writer, house=house))


def _remote(wanted: Wanted) -> Imap:
    from service.inbox.imap import Imap, place

    where, named = place(wanted.source), os.environ.get(AUTHORITY)
    authority = wanted.ca or (Path(named) if named else None)
    return Imap(where, password(wanted.password_file, where.user), marks=bool(wanted.drafts), ca=authority, say=_told)


def _told(fault: str) -> None:
    print(f"leadsman: {fault}", file=sys.stderr, flush=True)


def _tray(wanted: Wanted, remote: Imap | None) -> Tray | None:
    if not wanted.drafts:
        return None
    if wanted.drafts != IN_MAILBOX:
        folder = Folder(Path(wanted.drafts))
        try:
            folder.ready()
        except TrayFault as error:  # better before the first mail than at each
            raise SourceFault(str(error)) from error
        return folder
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
        except UnicodeDecodeError as error:
            raise SourceFault(f"{file} is no text in UTF-8: write the password into it anew") from error
    if kept := os.environ.get(PASSWORD):
        return kept
    if not sys.stdin.isatty():
        raise SourceFault(f"no password: set {PASSWORD}, or name a file of mode 600 by --password-file")
    return getpass.getpass(f"Password of {user}: ")


def _as_json(sorted_mails: Iterator[Sorted], out: TextIO, err: TextIO) -> int:
    """A line for each mail, and how many there were."""
    count = 0
    for found in sorted_mails:
        print(json.dumps(found.as_dict(), ensure_ascii=True), file=out, flush=True)
        _report(found, err)
        count += 1
    return count


def _as_rows(sorted_mails: Iterator[Sorted], out: TextIO, err: TextIO) -> None:
    for found in sorted_mails:
        print(_row(_cells(found), _width(out)), file=out, flush=True)
        _report(found, err)


def _as_table(sorted_mails: Iterator[Sorted], out: TextIO, err: TextIO) -> int:
    """A table for people, the most urgent first, and how many mails stand in it."""
    width, progress = _width(out), Progress("mails sorted", stream=err)
    rows: list[tuple[int, str]] = []
    for found in sorted_mails:
        rows.append((-URGENCIES.index(found.triage.urgency), _row(_cells(found), width)))
        if found.broken or found.left:
            progress.clear()
        _report(found, err)
        progress.step()
    progress.clear()
    if rows:
        print(_row(("urgency", "route", "reply", "from", "subject", "answer"), width), file=out)
    for _, row in sorted(rows, key=lambda item: item[0]):
        print(row, file=out)
    out.flush()
    return len(rows)


def _width(out: TextIO) -> int:
    """The columns of the terminal behind a stream, 0 for a file or a pipe."""
    try:
        return os.get_terminal_size(out.fileno()).columns if out.isatty() else 0
    except (OSError, ValueError):
        return 0


def _cells(found: Sorted) -> tuple[str, ...]:
    mail, answers = found.mail, found.reply.answers if found.reply else ()
    sender = mail.sender.email if mail and mail.sender else "-"
    told = found.why or (answers[0].headline if answers else "no question in it")
    subject = mail.subject if mail and mail.subject else str(found.item.key)
    cells = (found.triage.urgency, found.triage.route, "due" if found.due else "-", sender, subject, told)
    return tuple(text.replace("\u00a0", " ") for text in cells)


def _row(cells: tuple[str, ...], width: int) -> str:
    """A row as one line, on a narrow terminal as two."""
    if not 0 < width < ROOMY:
        return ROW.format(*cells).rstrip()
    return f"{NARROW_ROW.format(*cells[:5])[:width].rstrip()}\n    {cells[5][: max(width - 4, 20)]}"


def _report(found: Sorted, err: TextIO) -> None:
    if found.broken or found.left:
        print(f"leadsman: {found.item.kind} {found.item.key}: {found.why}", file=err, flush=True)
