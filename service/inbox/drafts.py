"""Drafts of replies as real messages, for a person to read and send: into a folder, never twice. Nothing is sent."""

from __future__ import annotations

import contextlib
import email
import email.policy
import hashlib
import os
import re
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from email.errors import MessageError
from email.headerregistry import Address as Written
from email.message import EmailMessage
from email.parser import BytesHeaderParser
from email.utils import format_datetime
from pathlib import Path
from typing import Protocol

from service.house import House
from service.inbox.conversation import title
from service.inbox.message import ADDRESS, Address, Mail
from service.inbox.sorting import Sorted
from service.render.as_mail import Quoted, as_mail

MOST_REFERENCES = 20
LONGEST_SUBJECT = 180
ONCE = ("from", "to", "subject", "date", "message-id")


class DraftFault(ValueError):
    """A draft would not be a sound message, now or later. The message says why."""


class TrayFault(ValueError):
    """A draft cannot be kept now. The message says what to do; the mail is to be tried again."""


class Tray(Protocol):
    """Where drafts are put."""

    def put(self, found: Sorted, content: bytes) -> str:
        """Put a draft unless one for the same mail is there, and return where it is. Raises TrayFault."""


@dataclass(frozen=True, slots=True)
class Writer:
    """Writes drafts in the house's name."""

    house: House
    sender: str  # the desk's address
    now: Callable[[], datetime]

    def write(self, found: Sorted) -> bytes:
        """The draft of a reply that is due. Raises DraftFault where it would not read back as it was meant."""
        mail = found.mail
        assert mail is not None
        quoted = Quoted(f"On {mail.headers.get('date', '')[:40]} {_writer(mail)} wrote:", found.words)
        plain, html = as_mail(found.reply, self.house.words, found.headings, found.notes, quoted)
        draft = EmailMessage(policy=email.policy.SMTP)
        try:
            draft["From"] = _written(Address(self._name(), self.sender))
            draft["To"] = [_written(item) for item in found.to]
            draft["Subject"] = f"Re: {title(mail.subject)[0][:LONGEST_SUBJECT] or 'your message'}"
            draft["Date"] = format_datetime(self.now())
            draft["Message-ID"] = f"<{mark(found)}@{self.sender.rpartition('@')[2]}>"
            if mail.message_id:
                draft["In-Reply-To"] = mail.message_id
                draft["References"] = " ".join(_references(mail.references, mail.message_id))
            draft["X-Unsent"] = "1"  # mail programs open it for writing
            draft.set_content(plain, cte="quoted-printable")
            draft.add_alternative(html, subtype="html", cte="quoted-printable")
            content = draft.as_bytes()
        except (ValueError, MessageError, UnicodeError, IndexError) as error:
            raise DraftFault(f"the draft cannot be written: {error}") from error
        check(content, {item.email for item in found.to})
        return content

    def _name(self) -> str:
        desk = str(self.house.words.get("desk", "the battery desk")).removeprefix("the ").capitalize()
        return f"{desk}, {self.house.name}"


def mark(found: Sorted) -> str:
    """What names a draft: the same for the same mail on every run."""
    mail = found.mail
    assert mail is not None
    told = mail.message_id or f"{mail.sender}\0{mail.subject}\0{mail.headers.get('date')}\0{mail.body}"
    return "draft." + hashlib.sha256(told.encode("utf-8", "replace")).hexdigest()[:24]


def check(content: bytes, to: set[str]) -> None:
    """Read a draft back. Raises DraftFault unless it is one sound message to these addresses and no others."""
    whole = email.message_from_bytes(content)  # its parts; the headers under the default policy, once
    back = BytesHeaderParser(policy=email.policy.default).parsebytes(content)
    defects = [fault for part in whole.walk() for fault in part.defects]
    defects += [fault for _, value in back.items() for fault in value.defects]
    names = [name.lower() for name in back]
    if defects or len(names) != len(set(names)) or not set(ONCE) <= set(names):
        raise DraftFault(f"the draft does not read back: {defects or sorted(names)}")
    found = {item.addr_spec.lower() for item in back["To"].addresses}
    if found != to or any(name in names for name in ("cc", "bcc", "reply-to", "sender")):
        raise DraftFault(f"the draft would go to {sorted(found)}, not to {sorted(to)}")


def _written(item: Address) -> Written:
    if not ADDRESS.fullmatch(item.email):
        raise DraftFault(f"{item.email!r} is no address")
    return Written(display_name=item.name, addr_spec=item.email)


def _writer(mail: Mail) -> str:
    return (mail.sender.name or mail.sender.email) if mail.sender else "you"


def _references(before: tuple[str, ...], last: str) -> list[str]:
    ids = [item for item in before if item != last]
    kept = ids if len(ids) <= MOST_REFERENCES else [ids[0], *ids[-MOST_REFERENCES:]]
    return [*kept, last]


@dataclass(frozen=True, slots=True)
class Folder:
    """A folder of drafts, one file each. A file that is there is left as it is: somebody may have worked on it."""

    path: Path

    def ready(self) -> None:
        """Make the folder. Raises TrayFault where it cannot be written."""
        try:
            self.path.mkdir(parents=True, exist_ok=True)
            with tempfile.TemporaryFile(dir=self.path):
                pass
        except OSError as error:
            raise self._fault(error) from error

    def put(self, found: Sorted, content: bytes) -> str:
        """Keep a draft and return its path. Raises TrayFault where the folder cannot be written."""
        name = Path(str(found.item.key).partition(":")[0]).name.removesuffix(".eml")  # a Maildir's flags change
        stem = re.sub(r"[^A-Za-z0-9_-]+", "-", name)[:50].strip("-") or "mail"
        target = self.path / f"{stem}.{mark(found).removeprefix('draft.')[:12]}.eml"
        try:
            self.path.mkdir(parents=True, exist_ok=True)
            with tempfile.NamedTemporaryFile(dir=self.path, prefix=".draft-") as file:
                file.write(content)
                file.flush()
                with contextlib.suppress(FileExistsError):
                    os.link(file.name, target)  # whole or not at all, and never over another file
            target.chmod(0o600)
        except OSError as error:
            raise self._fault(error) from error
        return str(target)

    def _fault(self, error: OSError) -> TrayFault:
        return TrayFault(f"drafts cannot be kept in {self.path} ({error.strerror}): name another folder by --drafts")
