"""What every command begins with: the desk under its house file, the log in its folder, faults that can be mended."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:  # nothing heavy before an answer is printed
    from service.house import House
    from service.leadsman import Leadsman
    from service.log import Log


class Trouble(Exception):
    """A fault that the user can mend. The message says how; the exit status is 2."""


def house_of(file: Path | None) -> House:
    """The house of a file, the demo house without one. Raises Trouble."""
    from service.house import DEMO, load

    try:
        return load(file or DEMO)
    except OSError as error:
        raise Trouble(f"the house file cannot be read ({error}): name another by --house") from error
    except ValueError as error:
        raise Trouble(f"the house file has mistakes:\n{error}") from error


def desk_of(file: Path | None, signed: bool = False) -> Leadsman:
    """The desk under a house file; `signed`: its threads can be gone on with. Raises Trouble."""
    from service.leadsman import Leadsman

    house = house_of(file)
    if not signed:
        return Leadsman(house)
    import secrets

    from service.thread import Signer

    return Leadsman(house, Signer(secrets.token_hex(32)))


def log_of(folder: Path | None) -> Log:
    """The log in a folder, else in the user's data folder. Raises Trouble."""
    from service.log import Log, LogFault, default_folder

    try:
        return Log(folder or default_folder())
    except LogFault as error:
        raise Trouble(str(error)) from error
