"""The desk as the web uses it: threads that survive a restart, a log for each worker thread."""

from __future__ import annotations

import datetime
import logging
import os
import secrets
import threading
import time
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from service import version
from service.house import House
from service.house.kept import Kept
from service.leadsman import Leadsman
from service.log import Entry, Log, LogFault
from service.reply import Reply
from service.thread import Signer

logger = logging.getLogger("leadsman")


class WebDesk:
    """One desk under one house, with its log. A changed house file is taken up; a broken one is reported, not used."""

    def __init__(self, house: Path, folder: Path) -> None:
        self.folder = folder
        self._kept = Kept(house)
        self.fault = ""  # what is wrong with the house file now, if anything
        self._local = threading.local()
        self.log()  # a folder that cannot be written is found here
        self._desk = Leadsman(self._kept.now(), Signer(secret(folder)), fault=_report)
        version.rules()

    @property
    def house(self) -> House:
        """The house in force: the last sound one."""
        self._taken_up()
        return self._desk.house

    def ask(
        self,
        text: str,
        thread: str | None = None,
        facts: Sequence[Mapping[str, Any]] | None = None,
        surface: str = "http",
        told: str = "",
    ) -> Reply:
        """Answer and log; `told` stands in the log where facts were set and the text is empty.

        A log that fails is reported and opened anew at the next question; the customer still gets the answer.
        """
        self._taken_up()
        start = time.perf_counter()
        reply = self._desk.ask(text, thread, facts)
        spent = (time.perf_counter() - start) * 1000
        at = datetime.datetime.now(datetime.UTC).isoformat(timespec="seconds")
        try:
            self.log().add(Entry(text or told, reply, at, surface, version.rules(), self._desk.house.version, spent))
        except LogFault as error:
            logger.error("not logged: %s", error)
            self.reopen()
        return reply

    def log(self) -> Log:
        """This worker thread's own log. Raises LogFault."""
        if not hasattr(self._local, "log"):
            self._local.log = Log(self.folder)
        found: Log = self._local.log
        return found

    def reopen(self) -> None:
        """Give up this thread's log after a fault, so that the next use opens it anew."""
        self._local.__dict__.pop("log", None)

    def _taken_up(self) -> None:
        self._desk.house = self._kept.now()
        if self._kept.fault and self._kept.fault != self.fault:
            logger.error("the house file is not taken up, the last sound one stays: %s", self._kept.fault)
        self.fault = self._kept.fault


def secret(folder: Path) -> str:
    """The key that signs threads, made once for a data folder and readable by its owner only."""
    path = folder / "secret"
    try:
        return path.read_text(encoding="ascii")
    except OSError:
        made = secrets.token_hex(32)
        try:
            handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
        except FileExistsError:
            return path.read_text(encoding="ascii")
        with os.fdopen(handle, "w", encoding="ascii") as file:
            file.write(made)
        return made


def _report(topic: str, error: Exception) -> None:
    logger.error("topic %s failed and was handed over", topic, exc_info=error)
