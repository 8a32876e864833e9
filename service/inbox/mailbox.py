"""Where mail comes from: a folder of .eml files, a single one, an mbox, a Maildir. They are only read."""

from __future__ import annotations

import mailbox
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from service.inbox.message import LONGEST


class SourceFault(OSError):
    """The mailbox cannot be used. The message says what to do."""


@dataclass(frozen=True, slots=True)
class Item:
    """A mail of a source: "file" or "uid", its name there, and how to read it."""

    kind: str
    key: str | int
    read: Callable[[], bytes]


class Source(Protocol):
    """A mailbox."""

    def items(self) -> Iterator[Item]:
        """The mails to be sorted, one by one."""

    def find(self, message_id: str) -> bytes | None:
        """An earlier mail by its Message-ID, where the mailbox can tell."""

    def answered(self, item: Item, message_id: str) -> bool:
        """Whether another mail with this Message-ID was seen to on an earlier run."""

    def done(self, item: Item, *, broken: bool) -> None:
        """Mark a mail as seen to, where the mailbox can."""

    def left(self, item: Item) -> None:
        """Leave a mail to be tried again."""

    def close(self) -> None:
        """Leave the mailbox."""


@dataclass(frozen=True, slots=True)
class Files:
    """Mails of files on this machine. Nothing about them is changed."""

    path: Path

    def items(self) -> Iterator[Item]:
        """The mails in the order of their names, in an mbox as they stand."""
        if not self.path.exists():
            raise SourceFault(
                f"{self.path} does not exist: name a folder of .eml files, a Maildir, an mbox or imaps://"
            )
        if not self.path.is_dir():
            return self._box() if self._is_box() else iter([self._file(self.path, self.path.name)])
        if (self.path / "cur").is_dir() and (self.path / "new").is_dir():
            found = sorted(
                (path for part in ("cur", "new") for path in (self.path / part).iterdir()), key=lambda path: path.name
            )
            return (self._file(path, f"{path.parent.name}/{path.name}") for path in found)
        found = [path for path in self.path.iterdir() if path.suffix.lower() == ".eml"]
        return (self._file(path, path.name) for path in sorted(found))

    def find(self, message_id: str) -> bytes | None:
        """None: what stands before in the files was sorted before."""

    def answered(self, item: Item, message_id: str) -> bool:
        """False: files carry no mark of an earlier run; drafts are never doubled all the same."""
        return False

    def done(self, item: Item, *, broken: bool) -> None:
        """Nothing is marked."""

    def left(self, item: Item) -> None:
        """Nothing is marked: the next run sorts all of them."""

    def close(self) -> None:
        """Nothing is open."""

    def _file(self, path: Path, name: str) -> Item:
        def read() -> bytes:
            try:
                with path.open("rb") as file:
                    return file.read(LONGEST + 1)
            except OSError as error:
                raise ValueError(f"it cannot be read ({error.strerror})") from error

        return Item("file", name, read)

    def _is_box(self) -> bool:
        try:
            with self.path.open("rb") as file:
                return file.read(5) == b"From "
        except OSError as error:
            raise SourceFault(f"{self.path} cannot be read ({error.strerror}): check its owner and mode") from error

    def _box(self) -> Iterator[Item]:
        box = mailbox.mbox(self.path, create=False)
        try:
            for number, key in enumerate(box.iterkeys(), 1):
                yield Item("file", f"{self.path.name}:{number}", lambda key=key: box.get_bytes(key))  # type: ignore[misc]
        finally:
            box.close()
