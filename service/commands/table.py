"""A table of questions or of readings in, the same table with the desk's answers beside it out.

Rows keep their order and their cells. A row holds a question, or readings under named columns, or both.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field

from grammar.text.patterns import regex
from service import say
from service.case import Known
from service.commands.columns import Columns, TableFault, columns
from service.commands.typed import typed
from service.leadsman import LONGEST, Leadsman
from service.question import BadInput
from service.reply import Answer, strictest
from service.turns.thread import Thread

OURS = "leadsman "  # before each column that we add; on the way in such columns are ours of an earlier run
FIXED = ("verdict", "answers", "headline", "urgency", "asks", "note")
EMPTY = {"", "-", "--", "n/a", "na", "?", "none", "unknown", "."}
DECIMAL_COMMA = regex(r"[-+]?\d+,\d+")
# The topics of a row without a question: the facts that call for one, any of which will do, and a fact it needs beside.
CALLED_FOR = (
    ("rest-voltage", ("reading.voltage",), ""),
    ("load-voltage", ("reading.load_voltage", "reading.load_voltage_at_load"), ""),
    ("specific-gravity", ("reading.gravity", "reading.gravity_spread"), ""),
    ("standing-drain", ("drain.current",), ""),
    ("replacement", ("battery.age",), ""),
    ("charger-size", ("charger.current",), ""),
    ("charger-setting", ("charger.setting", "charger.voltage"), ""),
    ("solar", ("solar.power",), ""),
    ("fuse-size", ("fuse.rating",), ""),
    ("voltage-drop", ("cable.gauge", "cable.area"), "cable.length"),
    ("cable-size", ("cable.length",), ""),
    ("storage", ("storage.time",), ""),
    ("ventilation", ("space.volume",), ""),
    ("run-check", ("load.model", "load.current", "load.power", "load.peak"), ""),
    ("freeze-point", ("battery.charge",), "ambient.temperature"),
)
LAST_RESORT = ("cable-size", "run-check", "freeze-point")  # only where nothing before them is called for


@dataclass
class Table:
    """A table as it was read: its header, its rows, what stood between its cells."""

    header: list[str]
    rows: list[list[str]]
    delimiter: str = ","
    added: list[dict[str, str]] = field(default_factory=list)

    def text(self) -> str:
        """The table with what was added, the columns of figures in the order in which they came up."""
        figures = [name for row in self.added for name in row if name not in FIXED]
        names = [*FIXED, *dict.fromkeys(figures)]
        out = io.StringIO()
        writer = csv.writer(out, delimiter=self.delimiter, lineterminator="\n")
        writer.writerow([*self.header, *(OURS + name for name in names)])
        for row, added in zip(self.rows, self.added, strict=True):
            writer.writerow([*row, *(added.get(name, "") for name in names)])
        return out.getvalue()


def decoded(content: bytes) -> tuple[str, str]:
    """The text of a file and the encoding to write it back in. Spreadsheets mark UTF-8 and UTF-16 at the start."""
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return content.decode("utf-16", errors="replace"), "utf-8-sig"
    try:
        return content.decode("utf-8-sig"), "utf-8-sig" if content.startswith(b"\xef\xbb\xbf") else "utf-8"
    except UnicodeDecodeError:
        return content.decode("cp1252", errors="replace"), "utf-8-sig"


def parsed(text: str) -> Table:
    """The table of a text. Raises TableFault."""
    if not text.strip():
        raise TableFault("the table is empty: its first line must name the columns, such as question, or rest volts")
    delimiter = max(",;\t", key=lambda sign: len(next(csv.reader([text.lstrip().partition("\n")[0]], delimiter=sign))))
    try:
        reader = csv.reader(io.StringIO(text.lstrip("\r\n"), newline=""), delimiter=delimiter)
        header, *rows = [(reader.line_num, row) for row in reader]
    except csv.Error as error:
        raise TableFault(f"this is not a table of cells: {error}") from error
    ours = {at for at, name in enumerate(header[1]) if name.startswith(OURS)}
    names = [name for at, name in enumerate(header[1]) if at not in ours]
    kept = [_fitted(line, row, len(header[1]), delimiter) for line, row in rows if row]
    return Table(names, [[cell for at, cell in enumerate(row) if at not in ours] for row in kept], delimiter)


def _fitted(line: int, row: list[str], width: int, delimiter: str) -> list[str]:
    """A row as wide as the header. In a table of one column a delimiter is a sign of the text."""
    if width == 1:
        return [delimiter.join(row)]
    if any(cell.strip() for cell in row[width:]):
        raise TableFault(
            f"line {line} has {len(row)} cells and the header {width}: put a cell that holds {delimiter!r} in quotes"
        )
    return [*row[:width], *[""] * (width - len(row))]


def answered(table: Table, desk: Leadsman, done: Callable[[], None] = lambda: None) -> Table:
    """The table with the desk's answers beside it; `done` is called after each row. Raises TableFault."""
    held = columns(table.header)
    commas = table.delimiter == ";" and any(
        DECIMAL_COMMA.fullmatch(row[at].strip()) for row in table.rows for at in held.facts
    )
    for row in table.rows:
        added = dict(_answers(row, held, table.header, desk))
        if commas:  # as the rest of the sheet writes its numbers
            added = {name: text if name in FIXED else text.replace(".", ",") for name, text in added.items()}
        table.added.append(added)
        done()
    return table


def _answers(row: Sequence[str], held: Columns, header: Sequence[str], desk: Leadsman) -> Iterator[tuple[str, str]]:
    text = row[held.question].strip() if held.question is not None else ""
    given, notes = stated(row, held, header)
    topics = called_for(item.fact for item in given)
    if len(text) > LONGEST:
        notes.append(f"the text has {len(text)} characters, {LONGEST} at most")
    elif text or topics:
        reply = desk.reply(text, Thread(topics=() if text else topics), given)
        yield from told(reply.answers)
        yield "urgency", reply.triage.urgency
    elif given:
        notes.append("no reading to judge in this row")
    yield "note", " ".join(notes)


def stated(row: Sequence[str], held: Columns, header: Sequence[str]) -> tuple[list[Known], list[str]]:
    """The facts of a row, and what could not be read: such a cell is left out and said."""
    given, notes = [], []
    for at, (fact, unit) in held.facts.items():
        cell = row[at].strip()
        if cell.lower() in EMPTY:
            continue
        try:
            given.append(typed(fact, cell, unit))
        except BadInput as error:
            notes.append(f"{header[at]} left out: {error}")
    return given, notes


def called_for(stated: Iterable[str]) -> tuple[str, ...]:
    """The topics that the facts of a row call for."""
    known = set(stated)
    found = [topic for topic, any_of, beside in CALLED_FOR if known & set(any_of) and (not beside or beside in known)]
    first = [topic for topic in found if topic not in LAST_RESORT]
    return tuple(first or found[:1])


def told(answers: Sequence[Answer]) -> Iterator[tuple[str, str]]:
    """What stands beside a row: the strictest verdict, each answer's own, headlines, what is asked, figures."""
    if not answers:
        return
    yield "verdict", strictest(*(item.verdict for item in answers))
    yield "answers", "; ".join(f"{item.topic}: {item.verdict}" for item in answers)
    yield "headline", " ".join(item.headline for item in answers).replace(say.NB, " ")
    yield "asks", "; ".join(dict.fromkeys(asked.fact for item in answers for asked in item.asks))
    for answer in answers:
        for item in answer.figures:
            unit = f" ({item.unit})" if item.unit else ""
            number = isinstance(item.value, float | int) and not isinstance(item.value, bool)
            yield f"{answer.topic} {item.name}{unit}", f"{item.value:.6g}" if number else str(item.value)
