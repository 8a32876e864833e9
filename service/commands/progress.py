"""How far long work is, in one line of a terminal that is wiped away at the end; nothing for a file or a pipe."""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from typing import TextIO

EVERY = 0.5  # seconds between two showings: a slow line is not to be filled with them
WIPE = "\r\x1b[K"  # to the start of the line, and nothing after it


class Progress:
    """A count that is shown while work goes on. Clear it before anything else is printed."""

    def __init__(
        self,
        what: str,
        total: int = 0,
        stream: TextIO | None = None,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        self.what, self.total, self.clock = what, total, clock
        self.stream = stream or sys.stderr
        self.count = 0
        self._last = clock()
        self._shown = False
        self._seen = self.stream.isatty()

    def step(self) -> None:
        """One more is done."""
        self.count += 1
        if self._seen and self.clock() - self._last >= EVERY:
            self._last, self._shown = self.clock(), True
            of = f" of {self.total}" if self.total else ""
            self.stream.write(f"{WIPE}{self.count}{of} {self.what}")
            self.stream.flush()

    def clear(self) -> None:
        """Wipe the line away, as something else is to be printed or the work is done."""
        if self._shown:
            self._shown = False
            self.stream.write(WIPE)
            self.stream.flush()
