"""A mailbox on an IMAP server: read unseen, marked with keywords of our own, drafts left in its Drafts."""

from __future__ import annotations

import contextlib
import re
import ssl
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar
from urllib.parse import unquote, urlsplit

from imapclient import DRAFT, IMAPClient, SocketTimeout
from imapclient.exceptions import IMAPClientAbortError, IMAPClientError, LoginError

from service.inbox.mailbox import Item, SourceFault
from service.inbox.message import LONGEST

if TYPE_CHECKING:
    from service.inbox.sorting import Sorted

SEEN, ASIDE = "$LeadsmanSeen", "$LeadsmanAside"
WAITING = ["UNKEYWORD", SEEN, "UNKEYWORD", ASIDE, "UNDELETED", "UNDRAFT"]
TIMEOUT = SocketTimeout(connect=15, read=90)
TRIES = (0, 1, 3, 9)  # seconds before each
IDLE = 9 * 60  # seconds; servers hang up after 30 minutes of silence, routers sooner
POLL = 60
LONGEST_WAIT = 300
GONE = (IMAPClientAbortError, OSError)
LOOPBACK = ("localhost", "127.0.0.1", "::1")
T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Place:
    """Where a mailbox is: imaps://user@server/folder."""

    host: str
    port: int
    user: str
    folder: str
    tls: bool


def place(url: str) -> Place:
    """The parts of an IMAP address. Raises SourceFault for one without a user, or with a password in it."""
    try:
        parts = urlsplit(url)
        port = parts.port
    except ValueError as error:
        raise SourceFault(f"{url} is no address of a mailbox: write imaps://user@server/INBOX") from error
    if parts.password is not None:
        raise SourceFault(
            "a password does not belong into the address: others can read it. "
            "Set LEADSMAN_IMAP_PASSWORD, or name a file by --password-file"
        )
    if not parts.hostname or not parts.username:
        raise SourceFault(f"{url} names no user or no server: write imaps://user@server/INBOX")
    tls = parts.scheme == "imaps"
    folder = unquote(parts.path.strip("/")) or "INBOX"
    return Place(parts.hostname, port or (993 if tls else 143), unquote(parts.username), folder, tls)


@dataclass(slots=True)
class Imap:
    """A mailbox and its Drafts. `marks`: mails that were seen to get a keyword; without it the mailbox is only read."""

    place: Place
    password: str = field(repr=False)
    marks: bool = False
    pause: Callable[[float], None] = time.sleep
    ca: Path | None = None  # the file of the certificate authority to trust, None: those of this machine
    say: Callable[[str], None] = lambda fault: None  # told of each new fault while it watches
    _client: IMAPClient | None = None
    _folder: str = ""
    _validity: Any = None
    _handled: set[int] = field(default_factory=set)
    _left: set[str | int] = field(default_factory=set)

    def items(self) -> Iterator[Item]:
        """The mails that wait, the oldest first, and those that come in meanwhile; first those that were left."""
        self._handled -= self._left
        self._left.clear()
        while uids := [uid for uid in self._waiting() if uid not in self._handled]:
            for uid in sorted(uids):
                self._handled.add(uid)
                yield Item("uid", uid, lambda uid=uid: self._read(uid))  # type: ignore[misc]

    def find(self, message_id: str) -> bytes | None:
        """An earlier mail of the folder by its Message-ID."""
        found = self._do(lambda client: client.search(["HEADER", "Message-ID", message_id]))
        return self._read(found[0]) if found else None

    def answered(self, item: Item, message_id: str) -> bool:
        """Whether another mail with this Message-ID was seen to on an earlier run."""
        found = self._do(lambda client: client.search(["KEYWORD", SEEN, "HEADER", "Message-ID", message_id]))
        return any(uid != item.key for uid in found)

    def done(self, item: Item, *, broken: bool) -> None:
        """Mark a mail as seen to, or as set aside. It stays unread."""
        mark = ASIDE if broken else SEEN
        with contextlib.suppress(IMAPClientError):  # a server without keywords: drafts are still never doubled
            self._do(lambda client: client.add_flags([item.key], [mark], silent=True))

    def left(self, item: Item) -> None:
        """Leave a mail to be tried again: in the next run, or when mail comes in."""
        self._left.add(item.key)

    def put(self, found: Sorted, content: bytes) -> str:
        """Put a draft into Drafts, unless one for the same mail is there; return the folder and its number.

        Raises TrayFault where the server does not take it.
        """
        from service.inbox.drafts import TrayFault, mark

        message_id = found.mail.message_id if found.mail else ""
        name = mark(found)

        def append(client: IMAPClient) -> str:
            folder = self._drafts(client)
            ours: list[Any] = ["HEADER", "Message-ID", name]
            criteria = ["OR", ours, ["HEADER", "In-Reply-To", message_id]] if message_id else ours
            there = client.search(["UNDELETED", *criteria])
            if there:
                return f"{folder};UID={there[0]}"
            answer = client.append(folder, content, [DRAFT])
            uid = re.search(rb"APPENDUID \d+ (\d+)", answer if isinstance(answer, bytes) else str(answer).encode())
            return f"{folder};UID={uid[1].decode()}" if uid else folder

        try:
            return self._do(append, folder="")
        except IMAPClientError as error:
            raise TrayFault(f"the server does not take the draft ({error}): name a folder by --drafts") from error

    def watch(self, run: Callable[[], object]) -> None:
        """Wait for mail and run again, until interrupted. A lost connection is made anew; a fault is told once."""
        wait, told = 1.0, ""
        while True:
            try:
                self._wait()
                run()
                wait, told = 1.0, ""
            except SourceFault as fault:
                if str(fault) != told:
                    told = str(fault)
                    self.say(told)
                self.pause(wait)
                wait = min(2 * wait, LONGEST_WAIT)

    def close(self) -> None:
        """Log out."""
        client, self._client = self._client, None
        if client is not None:
            with contextlib.suppress(*GONE, IMAPClientError):
                client.logout()

    def _waiting(self) -> list[int]:
        def search(client: IMAPClient) -> list[int]:
            client.noop()  # a server tells of new mail after some commands only
            return list(client.search(WAITING))

        return self._do(search)

    def _read(self, uid: int) -> bytes:
        key = f"BODY.PEEK[]<0.{LONGEST + 1}>"
        try:
            answer = self._do(lambda client: client.fetch([uid], [key]))
        except IMAPClientError as error:
            raise ValueError(f"the server does not give it ({error})") from error
        found = next((value for name, value in answer.get(uid, {}).items() if name.startswith(b"BODY[]")), None)
        if not isinstance(found, bytes):
            raise ValueError("it is no longer in the mailbox")
        return found

    def _wait(self) -> None:
        def listen(client: IMAPClient) -> None:
            if not client.has_capability("IDLE"):
                self.pause(POLL)
                client.noop()
                return
            client.idle()
            end = time.monotonic() + IDLE
            while time.monotonic() < end:
                if any(b"EXISTS" in answer for answer in client.idle_check(timeout=end - time.monotonic())):
                    break
            client.idle_done()

        self._do(listen)

    def _drafts(self, client: IMAPClient) -> str:
        folder = client.find_special_folder(b"\\Drafts") or "Drafts"
        name = folder.decode() if isinstance(folder, bytes) else str(folder)
        self._folder = ""
        client.select_folder(name, readonly=True)
        return name

    def _do(self, action: Callable[[IMAPClient], T], folder: str | None = None) -> T:
        """Carry an action out in the mailbox's folder, over a new connection where the old one is gone."""
        fault: Exception | None = None
        for wait in TRIES:
            self.pause(wait) if wait else None
            try:
                client = self._client or self._connect()
                self._client = client
                self._select(client, self.place.folder if folder is None else folder)
                return action(client)
            except SourceFault:
                raise
            except GONE as error:
                fault = error
                self._drop()
        raise SourceFault(f"no connection to {self.place.host}:{self.place.port} ({fault}): check it and start again")

    def _select(self, client: IMAPClient, folder: str) -> None:
        if not folder or folder == self._folder:
            return
        try:
            told = client.select_folder(folder, readonly=not self.marks)
        except IMAPClientAbortError:
            raise
        except IMAPClientError as error:
            raise SourceFault(f"the folder {folder} cannot be opened ({error}): name one after the server") from error
        validity = told.get(b"UIDVALIDITY")
        if self._validity not in (None, validity):
            raise SourceFault(f"the server has renumbered the folder {folder}: start again")
        self._folder, self._validity = folder, validity

    def _connect(self) -> IMAPClient:
        where, context = self.place, self._trusted()
        try:
            client = IMAPClient(where.host, where.port, ssl=where.tls, ssl_context=context, timeout=TIMEOUT)
            self._folder = ""
            try:
                self._login(client, context)
            except BaseException:
                with contextlib.suppress(*GONE, IMAPClientError):
                    client.shutdown()
                raise
        except ssl.SSLEOFError:  # hung up on: worth another try
            raise
        except ssl.SSLError as error:  # to try again would not mend it
            raise _distrusted(where, error) from error
        return client

    def _trusted(self) -> ssl.SSLContext:
        try:
            return ssl.create_default_context(cafile=str(self.ca) if self.ca else None)
        except (OSError, ssl.SSLError) as error:
            why = f"{self.ca} is no file of certificates ({error}): name one in PEM form by --ca"
            raise SourceFault(why) from error

    def _login(self, client: IMAPClient, context: ssl.SSLContext) -> None:
        where = self.place
        try:
            if not where.tls and client.has_capability("STARTTLS"):
                client.starttls(context)
            elif not where.tls and where.host not in LOOPBACK:
                raise SourceFault(f"{where.host} offers no encryption: write imaps://, or ask its keeper for it")
            client.login(where.user, self.password)
        except LoginError as error:
            why = f"{where.host} does not let {where.user} in ({error}): check the user and the password"
            raise SourceFault(why) from error

    def _drop(self) -> None:
        client, self._client, self._folder = self._client, None, ""
        if client is not None:
            with contextlib.suppress(*GONE, IMAPClientError):
                client.shutdown()


def _distrusted(where: Place, error: ssl.SSLError) -> SourceFault:
    """Why an encrypted connection was refused, and what to do. Nothing was sent over it."""
    if isinstance(error, ssl.SSLCertVerificationError):
        return SourceFault(
            f"the certificate of {where.host} is not trusted ({error.verify_message}), so no password was sent: ask "
            "its keeper, and name the file of its certificate authority by --ca or LEADSMAN_IMAP_CA"
        )
    return SourceFault(f"{where.host}:{where.port} does not speak TLS as it should ({error.reason}): check the port")
