"""A house file that is taken up anew when it changes; the last sound one stays in force."""

from __future__ import annotations

import threading
from pathlib import Path

from service.house import House, load


class Kept:
    """The house of a file, for what runs long. Raises HouseFault or OSError where it is not sound at the start."""

    def __init__(self, file: Path) -> None:
        self.file = file
        self.fault = ""  # what is wrong with the file now, if anything
        self._stamp: tuple[int, ...] | None = self._stamped()
        self._house = load(file)
        self._one = threading.Lock()  # an older file that is read slowly must not replace a newer one

    def now(self) -> House:
        """The house in force: of the file as it stands, else the last sound one."""
        with self._one:
            try:
                stamp = self._stamped()
                if stamp != self._stamp:
                    self._stamp = stamp
                    self._house = load(self.file)
                    self.fault = ""
            except OSError as error:
                self._stamp = None  # the same file may come back, or be let read
                self.fault = f"{self.file} cannot be read ({error.strerror}): put it back, or look at its mode"
            except ValueError as error:
                self.fault = str(error)
            return self._house

    def _stamped(self) -> tuple[int, ...]:
        status = self.file.stat()
        return status.st_ino, status.st_mtime_ns, status.st_size
