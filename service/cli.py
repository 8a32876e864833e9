"""The command line: ask, why, serve, log, inbox, replay, table, sources, house. Nothing heavy before an answer."""

from __future__ import annotations

import argparse
import contextlib
import gc
import io
import os
import sys
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from service.commands import bench
from service.commands.start import Command, Trouble, count, desk_of, house_of, log_of, port, unreadable

if TYPE_CHECKING:
    from service.reply import Reply

ANSWERED, BAD_USAGE, ASKED_BACK = 0, 2, 3
SHARED = {
    "house": ("FILE", "the maker's own file (default: the demo house)"),
    "data": ("DIR", "folder of the log (default: your data folder)"),
}
LISTED = 20  # entries of the log, where no --limit is given
READ_BY = {"id": ("show",), "limit": ("list", "export", "queue"), "route": ("list", "export")}  # of `leadsman log`
Run = Callable[[argparse.Namespace], int]


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command and return its exit status: 0 answered, 3 asked back or handed over, 2 bad usage."""
    options = parser().parse_args(arguments)
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="replace")  # a sign that the terminal cannot show is no fault
    try:
        run: Run = options.run
        return run(options)
    except Trouble as trouble:
        print(f"leadsman: {trouble}", file=sys.stderr)
        return BAD_USAGE
    except BrokenPipeError:  # the reader of our output has gone, as `| head` does
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return ANSWERED
    except KeyboardInterrupt:
        return 130


def parser() -> argparse.ArgumentParser:
    """The commands and their options."""
    whole = argparse.ArgumentParser(prog="leadsman", description="Battery answers for thruster boats, with sources.")
    commands = whole.add_subparsers(required=True, metavar="COMMAND", parser_class=Command)

    def add(name: str, run: Run, help: str, *reads: str) -> argparse.ArgumentParser:
        command = commands.add_parser(name, help=help, description=help)
        command.set_defaults(run=run)
        for option in reads:
            metavar, told = SHARED[option]
            command.add_argument(f"--{option}", type=Path, metavar=metavar, help=told)
        return command

    about = "answer a question; without a text it talks on a terminal, else reads standard input"
    ask = add("ask", _ask, about, "house", "data")
    ask.add_argument("text", nargs="*", help="the question")
    ask.add_argument("--json", action="store_true", help="the whole answer as JSON")
    ask.add_argument("--no-log", action="store_true", help="do not store the question")
    why = add("why", _why, "show how a question is understood: facts, cues, points, steps", "house")
    why.add_argument("text", nargs="+", help="the question")
    serve = add("serve", _serve, "run the website and the HTTP service", "house", "data")
    serve.add_argument("--host", default="127.0.0.1", help="address to listen on (default: this machine only)")
    serve.add_argument("--port", type=port, default=8000, help="port to listen on, 0 for a free one (default: 8000)")
    log = add("log", _log, "list, show or export what was asked and answered; queue: what waits for a person", "data")
    what = ["list", "show", "export", "queue"]
    log.add_argument("what", nargs="?", choices=what, default="list", help="default: list")
    log.add_argument("id", nargs="?", help="the entry to show")
    log.add_argument("--limit", type=count, help=f"how many (default: {LISTED}, for export all)")
    log.add_argument("--route", choices=["answered", "needs-facts", "technician", "other-desk"], help="only these")
    score = add("score", _score, "judge the desk on a file of labelled questions", "house")
    score.add_argument("file", type=Path, help="one case a line, as JSON")
    score.add_argument("--show", choices=["asked", "missed", "wrong"], help="print the turns with this outcome")
    inbox = add("inbox", _inbox, "sort a mailbox by urgency and leave drafts of replies; nothing is sent", "house")
    inbox.add_argument("source", help="a folder of .eml files, a Maildir, an mbox, or imaps://user@server/INBOX")
    inbox.add_argument("--json", action="store_true", help="one JSON object a line for each mail")
    inbox.add_argument("--drafts", default="", metavar="FOLDER", help='a folder for drafts, or "imap" for its Drafts')
    inbox.add_argument("--watch", action="store_true", help="go on and wait for new mail (IMAP)")
    inbox.add_argument("--own", action="append", default=[], metavar="ADDRESS", help="an address of the desk's own")
    inbox.add_argument("--password-file", type=Path, metavar="FILE", help="of mode 600; else LEADSMAN_IMAP_PASSWORD")
    inbox.add_argument(
        "--ca", type=Path, metavar="FILE", help="certificates to trust; else LEADSMAN_IMAP_CA, the system's"
    )
    about = "ask the logged questions again: which answers have changed, 1 where any has"
    replay = add("replay", bench.replay, about, "house", "data")
    replay.add_argument("file", nargs="?", type=Path, help='one {"text", "answer"} a line as JSON (default: the log)')
    replay.add_argument("--json", action="store_true", help="one JSON object a line for each that changed")
    replay.add_argument("--all", action="store_true", help="with --json: for each that did not change as well")
    replay.add_argument("--ignore-words", action="store_true", help="wording alone is no change")
    table = add("table", bench.table, "answer a CSV table of questions or of readings, row by row", "house")
    table.add_argument("source", type=Path, help="the table; its first line names the columns")
    table.add_argument("target", nargs="?", type=Path, help="where the answers go (default: standard output)")
    add("sources", _sources, "list every source that answers may cite")
    house = add("house", _house, "check a house file, or begin a new one")
    house.add_argument("what", choices=["check", "new"], help="check FILE, or new [FILE]")
    house.add_argument("file", nargs="?", type=Path, help="the house file (new: house.toml)")
    return whole


def _ask(options: argparse.Namespace) -> int:
    if bench.at_a_terminal(options):
        return bench.talk(options, _store)
    with _no_collection():  # a question is over before collecting garbage pays; it would be a tenth of the time
        text, reply, house, spent = _asked(options)
    sys.stdout.flush()
    if not options.no_log:
        _store(options, text, reply, house, spent)
    return ANSWERED if reply.triage.route == "answered" else ASKED_BACK


def _asked(options: argparse.Namespace) -> tuple[str, Reply, str, float]:
    import time

    from service.question import BadInput, mended

    text = mended(" ".join(options.text)) if options.text else _standard_input()
    desk = desk_of(options.house, options.json)
    start = time.perf_counter()
    try:
        reply = desk.ask(text)
    except BadInput as error:
        raise Trouble(str(error)) from error
    spent = (time.perf_counter() - start) * 1000
    if options.json:
        import json

        print(json.dumps(reply.as_dict(), ensure_ascii=False, indent=2))
    else:
        from service.render.as_text import as_text

        print(as_text(reply, ascii_only=not _speaks_unicode()))
    return text, reply, desk.house.version, spent


@contextlib.contextmanager
def _no_collection() -> Iterator[None]:
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()  # nor does collecting at the end of the process
        gc.enable()


def _store(options: argparse.Namespace, text: str, reply: Reply, house: str, spent: float) -> None:
    import datetime

    from service import version
    from service.log import Entry, Log, LogFault, default_folder

    at = datetime.datetime.now(datetime.UTC).isoformat(timespec="seconds")
    try:
        log = Log(options.data or default_folder())
        log.add(Entry(text, reply, at, "command line", version.rules(), house, spent))
        log.close()
    except LogFault as error:  # the answer stands; what was lost is said
        print(f"leadsman: not logged: {error}", file=sys.stderr)


def _why(options: argparse.Namespace) -> int:
    from service.question import BadInput, mended

    try:
        reply = desk_of(options.house).ask(mended(" ".join(options.text)))
    except BadInput as error:
        raise Trouble(str(error)) from error
    print("\n".join(reply.why))
    return ANSWERED


def _serve(options: argparse.Namespace) -> int:
    from service.web.serving import serve

    serve(options.house, options.data, options.host, options.port)
    return ANSWERED


def _log(options: argparse.Namespace) -> int:
    what = options.what
    for name, readers in READ_BY.items():
        if getattr(options, name) is not None and what not in readers:
            option = name if name == "id" else f"--{name}"
            raise Trouble(f"leadsman log {what} takes no {option}; leadsman log {' and '.join(readers)} may be meant")
    if what == "show":
        return _show(options)
    log = log_of(options.data)
    if what == "export":
        import json

        for row in log.rows(options.limit, options.route):
            print(json.dumps(row, ensure_ascii=False))
    elif what == "queue":
        for row in log.queued(options.limit or LISTED):
            word = " ".join(row["word"].split())
            print(f"{row['id']}  {row['at'][:16]}  {row['reply_to']}  {row['entries']}  {word}")
    else:
        for row in log.rows(options.limit or LISTED, options.route):
            asked = " ".join(row["text"].split())[:60]
            print(f"{row['id']}  {row['at'][:16]}  {row['route']:11}  {row['topics'] or '-'}  {asked}")
    return ANSWERED


def _show(options: argparse.Namespace) -> int:
    import json

    if not options.id:
        raise Trouble("say which entry: leadsman log show ID; `leadsman log` lists them")
    row = log_of(options.data).find(options.id)
    if row is None:
        raise Trouble(f"no entry has the id {options.id!r}: `leadsman log` lists them")
    print(f"{row['at']}  {row['surface']}  {row['urgency']}, {row['route']}\n{row['text']}\n")
    print(json.dumps(json.loads(row["answer"]), ensure_ascii=False, indent=2))
    return ANSWERED


def _score(options: argparse.Namespace) -> int:
    from service.commands.labelled import cases_of
    from service.commands.score import score

    try:
        with options.file.open(encoding="utf-8") as lines:
            found = score(desk_of(options.house, signed=True), cases_of(lines))
    except OSError as error:
        raise unreadable(options.file, error) from error
    except UnicodeDecodeError as error:
        raise Trouble(f"{options.file} is no text in UTF-8: save it as one") from error
    except ValueError as error:
        raise Trouble(f"{options.file}: {error}") from error
    if not found.turns:
        raise Trouble(f"there is no case in {options.file}: write one a line, as JSON")
    for name, outcome, text, reasons in found.rows:
        if outcome == options.show:
            print(f"{name}  {' '.join(text.split())[:200]}\n    " + "\n    ".join(reasons))
    print("\n".join(found.report()))
    return ANSWERED


def _inbox(options: argparse.Namespace) -> int:
    from service.house import DEMO
    from service.house.kept import Kept
    from service.inbox.mailbox import SourceFault
    from service.inbox.run import Wanted, inbox

    wanted = Wanted(
        options.source,
        options.json,
        options.drafts,
        options.watch,
        tuple(options.own),
        options.password_file,
        options.ca,
    )
    desk = desk_of(options.house, signed=True)
    try:
        inbox(wanted, desk, house=Kept(options.house or DEMO))
    except SourceFault as error:
        raise Trouble(str(error)) from error
    return ANSWERED


def _sources(options: argparse.Namespace) -> int:
    from service.reference import sources

    for name, entry in sorted(sources().items()):
        print(f"{name}: {entry['title']}, {entry['publisher']}, {entry['edition']}, {entry['locator']}")
        print(f"    {entry['kind'].replace('-', ' ')}; {entry['checked']}")
    return ANSWERED


def _house(options: argparse.Namespace) -> int:
    from service.house.check import HouseFault, checked, unread

    if options.what == "new":
        return bench.new_house(options.file)
    if options.file is None:
        raise Trouble("name the file: leadsman house check FILE")
    try:
        content = checked(options.file)
    except OSError as error:
        raise unreadable(options.file, error) from error
    except HouseFault as error:
        raise Trouble(f"the house file has mistakes:\n{error}") from error
    print(f"{options.file}: sound, {len(content.get('model', {}))} models of {content['house']['name']}")
    for text in unread(content):
        print(f"  {text}")
    from service.house_rules.hints import hints

    for text in hints(house_of(options.file)):
        print(f"  answers will say: {text}")
    return ANSWERED


def _standard_input() -> str:
    if sys.stdin.isatty():
        raise Trouble('write the question after the command: leadsman ask "Is 12.4 V good?"')
    return sys.stdin.buffer.read(200_000).decode("utf-8", errors="replace")


def _speaks_unicode() -> bool:
    return "utf" in (sys.stdout.encoding or "").lower()
