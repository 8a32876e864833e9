"""The desk as the web uses it: threads that survive a restart, a log for each worker thread, one house a request."""

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

from flask import current_app, g

from service import version
from service.house import House
from service.house.kept import Kept
from service.leadsman import Leadsman
from service.log import Entry, Log, LogFault
from service.reply import Reply
from service.turns.thread import Signer

logger = logging.getLogger("leadsman")


class WebDesk:
    """One log and one key for threads, under a house file. A changed file is taken up; a broken one is reported, not
    used.
    """

    def __init__(self, house: Path, folder: Path) -> None:
        self.folder = folder
        self._kept = Kept(house)
        self.fault = ""  # what is wrong with the house file now, if anything
        self._local = threading.local()
        self.log()  # a folder that cannot be written is found here
        self._signer = Signer(secret(folder))
        self._desk = self._under(self._kept.now())
        version.rules()
        self._desk.ask("Is 12.4 V good?")  # the words and rules are taken in now: the first customer need not wait

    def now(self) -> Leadsman:
        """The desk under the house in force, the last sound one. Its house stays: a changed file makes another desk."""
        house, desk = self._kept.now(), self._desk
        if desk.house is not house:
            desk = self._desk = self._under(house)
        if self._kept.fault and self._kept.fault != self.fault:
            logger.error("the house file is not taken up, the last sound one stays: %s", self._kept.fault)
        self.fault = self._kept.fault
        return desk

    def ask(
        self,
        desk: Leadsman,
        text: str,
        thread: str | None = None,
        facts: Sequence[Mapping[str, Any]] | None = None,
        surface: str = "http",
        told: str = "",
    ) -> Reply:
        """Answer and log; `told` stands in the log where facts were set and the text is empty.

        A log that fails is reported and opened anew at the next question; the customer still gets the answer.
        """
        start = time.perf_counter()
        reply = desk.ask(text, thread, facts)
        spent = (time.perf_counter() - start) * 1000
        at = datetime.datetime.now(datetime.UTC).isoformat(timespec="seconds")
        try:
            self.log().add(Entry(text or told, reply, at, surface, version.rules(), desk.house.version, spent))
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

    def _under(self, house: House) -> Leadsman:
        return Leadsman(house, self._signer, fault=_report)


def shared() -> WebDesk:
    """The application's desk: its log, its house file."""
    found: WebDesk = current_app.extensions["desk"]
    return found


def desk() -> Leadsman:
    """The desk of this request, under one house from its start to its end."""
    if "desk" not in g:
        g.desk = shared().now()
    found: Leadsman = g.desk
    return found


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
