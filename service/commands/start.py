"""What every command begins with: its arguments, the desk under its house file, the log in its folder, faults that can
be mended.
"""

from __future__ import annotations

import argparse
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:  # nothing heavy before an answer is printed
    from service.house import House
    from service.leadsman import Leadsman
    from service.log import Log


class Trouble(Exception):
    """A fault that the user can mend. The message says how; the exit status is 2."""


class Command(argparse.ArgumentParser):
    """A command whose options and words stand in any order. What it does not know is told under its own usage."""

    _mixing = False

    def parse_known_args(self, args: Any = None, namespace: Any = None) -> Any:
        """Options and words; nothing else is left over."""
        if self._mixing:  # the method below comes back here
            return super().parse_known_args(args, namespace)
        self._mixing = True
        try:
            ordered = "--" in (args or ())  # what follows are words, such as an id that begins with a dash
            parse = super().parse_known_args if ordered else self.parse_known_intermixed_args
            found, unknown = parse(args, namespace)
        finally:
            self._mixing = False
        if unknown:
            self.error(f"unrecognized arguments: {' '.join(unknown)}")
        return found, unknown


def port(text: str) -> int:
    """A port to listen on, 0 for any that is free."""
    return _whole(text, 0, 65_535)


def count(text: str) -> int:
    """How many, one at least."""
    return _whole(text, 1, 10**9)


def _whole(text: str, least: int, most: int) -> int:
    if not text.isdecimal() or not least <= int(text[:20]) <= most:
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is no whole number from {least} to {most}")
    return int(text)


def unreadable(file: Path, error: OSError, do: str = "check its name and its mode") -> Trouble:
    """The fault of a file in words, without the number that the system gives it."""
    return Trouble(f"{file} cannot be read ({error.strerror or error}): {do}")


def house_of(file: Path | None) -> House:
    """The house of a file, the demo house without one. Raises Trouble."""
    from service.house import DEMO, load

    try:
        return load(file or DEMO)
    except OSError as error:
        raise unreadable(file or DEMO, error, "name another house file by --house") from error
    except ValueError as error:
        raise Trouble(f"the house file has mistakes:\n{error}") from error


def desk_of(file: Path | None, signed: bool = False) -> Leadsman:
    """The desk under a house file; `signed`: its threads can be gone on with. Raises Trouble."""
    from service.leadsman import Leadsman

    house = house_of(file)
    signer = None
    if signed:
        import secrets

        from service.turns.thread import Signer

        signer = Signer(secrets.token_hex(32))
    try:
        return Leadsman(house, signer, fault=_report)
    except ValueError as error:
        raise Trouble(f"a data file of the desk itself has a mistake, install it anew: {error}") from error


def _report(name: str, error: Exception) -> None:
    """Say on standard error what failed inside; the customer's own answer says that a technician will look."""
    print(f"leadsman: {name} failed, please report it: {type(error).__name__}: {error}", file=sys.stderr)


def log_of(folder: Path | None) -> Log:
    """The log in a folder, else in the user's data folder, to be read. Raises Trouble where there is none."""
    from service.log import FILE, Log, LogFault, default_folder

    folder = folder or default_folder()
    if not os.path.exists(folder / FILE):  # to open it would make one
        raise Trouble(f"there is no log in {folder} yet: ask a question first, or name another folder by --data")
    try:
        return Log(folder)
    except LogFault as error:
        raise Trouble(str(error)) from error
