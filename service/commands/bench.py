"""The technician's bench: commands that put many questions to the desk, or one after the other at a terminal."""

from __future__ import annotations

import argparse
import json
import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

from service.commands.start import Trouble, desk_of, house_of, log_of

if TYPE_CHECKING:
    from service.reply import Reply

DONE, CHANGED = 0, 1
STARTING = Path(__file__).parents[1] / "house" / "new.toml"
Store = Callable[[argparse.Namespace, str, "Reply", str, float], None]


def replay(options: argparse.Namespace) -> int:
    """Ask the logged questions, or those of a file, again. 0: nothing changed; 1: something did."""
    from service.commands.progress import Progress
    from service.commands.replay import Tally, lines, replayed

    house, total, progress = house_of(options.house), Tally(), Progress("questions asked again")
    with _rows(options) as rows:
        try:
            for item in replayed(rows, house, words=not options.ignore_words):
                total.add(item)
                if options.json and (item.changes or item.lost or options.all):
                    progress.clear()
                    print(json.dumps(item.as_dict(), ensure_ascii=False))
                elif item.changes and not options.json:
                    progress.clear()
                    print("\n".join(lines(item)))
                progress.step()
        except ValueError as error:
            raise Trouble(f"{options.file}: {error}") from error
        finally:
            progress.clear()
    print("\n".join(total.report()), file=sys.stderr if options.json else sys.stdout)
    return CHANGED if total.changed else DONE


@contextmanager
def _rows(options: argparse.Namespace) -> Iterator[Iterator[dict[str, Any]]]:
    """The questions to ask again."""
    from service.commands.replay import rows_of

    if options.file is None:
        log = log_of(options.data)
        yield log.rows()
        log.close()
        return
    try:
        with options.file.open(encoding="utf-8") as file:
            yield rows_of(file)
    except OSError as error:
        raise Trouble(f"{options.file} cannot be read: {error.strerror or error}") from error


def table(options: argparse.Namespace) -> int:
    """Answer a table; to a file, else to standard output."""
    from service.commands.columns import TableFault
    from service.commands.progress import Progress
    from service.commands.table import answered, decoded, parsed

    source, target = options.source, options.target
    if target and target.exists() and source.exists() and target.samefile(source):
        raise Trouble(f"{target} is the table itself: name another file for the answers")
    try:
        text, encoding = decoded(source.read_bytes())
        asked = parsed(text)
        progress = Progress("rows answered", len(asked.rows))
        found = answered(asked, desk_of(options.house), progress.step)
        progress.clear()
    except OSError as error:
        raise Trouble(f"{source} cannot be read: {error.strerror or error}") from error
    except TableFault as error:
        raise Trouble(f"{source}: {error}") from error
    content = found.text().encode(encoding, errors="replace")
    if target is None:
        sys.stdout.buffer.write(content)
        sys.stdout.flush()
        return DONE
    part = target.with_name(f"{target.name}.part")
    try:
        part.write_bytes(content)
        part.replace(target)
    except OSError as error:
        raise Trouble(f"{target} cannot be written: {error.strerror or error}") from error
    print(f"{target}: {len(found.rows)} rows")
    return DONE


def at_a_terminal(options: argparse.Namespace) -> bool:
    """Whether `ask` has no text, and somebody who could type one."""
    return not options.text and not options.json and sys.stdin.isatty() and sys.stdout.isatty()


def talk(options: argparse.Namespace, store: Store) -> int:
    """A conversation at the terminal. `store` puts a question and its answer into the log."""
    from service.commands.prompt import Talk
    from service.commands.prompt import talk as converse
    from service.house import DEMO
    from service.house.kept import Kept
    from service.log import default_folder
    from service.render.as_screen import screen_of

    desk = desk_of(options.house, signed=True)
    kept = Kept(options.house or DEMO)

    def keep(text: str, reply: Reply, spent: float) -> None:
        store(options, text, reply, desk.house.version, spent)

    conversation = Talk(desk, screen_of(sys.stdout), None if options.no_log else keep)
    converse(conversation, None if options.no_log else options.data or default_folder(), house=kept)
    return DONE


def new_house(file: Path | None) -> int:
    """Write a commented starting house file; never over one that is there."""
    target = file or Path("house.toml")
    try:
        with target.open("x", encoding="utf-8") as made:
            made.write(STARTING.read_text(encoding="utf-8"))
    except FileExistsError as error:
        raise Trouble(f"{target} is there already: name another file, or move it away first") from error
    except OSError as error:
        raise Trouble(f"{target} cannot be written: {error.strerror or error}") from error
    print(f"{target}: change it, then `leadsman house check {os.fspath(target)}`")
    return DONE
