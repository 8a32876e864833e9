"""A program at a pseudo-terminal of 80 columns, driven as somebody types."""

from __future__ import annotations

import fcntl
import os
import pty
import re
import select
import struct
import subprocess
import termios
import time
from collections.abc import Mapping, Sequence

CONTROL = re.compile(r"\x1b\[[0-9;?]*[a-zA-Z]|\x1b[=>]|\r")
COLOUR = re.compile(r"\x1b\[[0-9;]+m")


class Terminal:
    """A running program and all that it has written. `columns`: the width that it is told."""

    def __init__(self, command: Sequence[str], environment: Mapping[str, str], columns: int = 80) -> None:
        self.master, slave = pty.openpty()
        fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
        told = {**os.environ, "TERM": "xterm-256color", "PROMPT_TOOLKIT_NO_CPR": "1", **environment}
        self.program = subprocess.Popen(
            command, stdin=slave, stdout=slave, stderr=slave, env=told, start_new_session=True
        )
        os.close(slave)
        self.raw = ""
        self.closed = False

    def type(self, text: str) -> None:
        """Type a text; "\\r" is the enter key."""
        os.write(self.master, text.encode())

    def until(self, wanted: str, seconds: float = 30) -> str:
        """What is written up to a text that must come; it is taken off."""
        end = time.monotonic() + seconds
        while wanted not in self.text:
            ready = select.select([self.master], [], [], max(end - time.monotonic(), 0))[0]
            try:
                more = os.read(self.master, 65536) if ready else b""
            except OSError:  # the program has ended
                more = b""
            if not more:
                raise AssertionError(f"{wanted!r} did not come; there is {self.text!r}")
            self.raw += more.decode(errors="replace")
        at = self.raw.find(wanted)  # what follows it is kept: the next prompt may have come along
        end_of = at + len(wanted) if at >= 0 else len(self.raw)
        found, self.raw = self.raw[:end_of], self.raw[end_of:]
        return found

    @property
    def text(self) -> str:
        """What is written, without the marks that move the cursor and set colours."""
        return CONTROL.sub("", self.raw)

    def close(self) -> int:
        """End the program if it has not ended by itself; its exit status."""
        try:
            return self.program.wait(5)
        except subprocess.TimeoutExpired:
            self.program.kill()
            return self.program.wait()
        finally:
            if not self.closed:
                os.close(self.master)
                self.closed = True
