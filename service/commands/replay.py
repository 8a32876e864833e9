"""Asks logged questions again under the present rules and house, and shows which answers have changed.

A follow-up is asked again in the thread that it met, where the log kept that. Where it did not (a file of texts and
answers alone), an answer that leaned on the thread cannot be held against one without, and is counted, not judged.
"""

from __future__ import annotations

import json
import multiprocessing
import os
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from functools import partial
from itertools import islice
from typing import Any

from service.commands.differences import KINDS, Change, Content, changes, shown
from service.house import House
from service.leadsman import Leadsman
from service.question import BadInput
from service.turns.thread import Thread, unpacked

FEW = 200  # questions that are not worth starting processes for
AT_ONCE = 25  # questions handed to a process
BATCH = 5_000  # read from the log before more is read

Row = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Again:
    """A question asked again. `lost` says why it could not be held against the earlier answer."""

    id: str
    text: str
    answer: Content
    changes: tuple[Change, ...] = ()
    lost: str = ""

    def as_dict(self) -> dict[str, Any]:
        """A line of --json, which is itself a file to replay later."""
        changes = [change.as_dict() for change in self.changes]
        said = {"id": self.id, "text": self.text, "changes": changes, "answer": self.answer}
        return said | ({"lost": self.lost} if self.lost else {})


@dataclass
class Tally:
    """The counts over all that was asked again."""

    asked: int = 0
    changed: int = 0  # questions
    lost: Counter[str] = field(default_factory=Counter)
    kinds: Counter[tuple[str, str]] = field(default_factory=Counter)  # topic, kind: answers
    answers: Counter[str] = field(default_factory=Counter)  # topic: answers changed

    def add(self, item: Again) -> None:
        """Count one."""
        self.asked += 1
        self.changed += bool(item.changes)
        if item.lost:
            self.lost[item.lost] += 1
        self.kinds.update({(change.topic, change.kind) for change in item.changes})
        self.answers.update({change.topic for change in item.changes})

    def report(self) -> Iterator[str]:
        """The counts as lines to print."""
        answers = sum(count for topic, count in self.answers.items() if topic)
        yield f"{self.asked} questions asked again, {self.changed} changed ({answers} answers)"
        for why, count in sorted(self.lost.items()):
            yield f"{count} not compared: {why}"
        if self.answers:
            yield f"\n{'answers of':18}{'changed':>8}" + "".join(f"{kind:>8}" for kind in KINDS)
        for topic, count in sorted(self.answers.items()):
            row = "".join(f"{self.kinds[topic, kind] or '-':>8}" for kind in KINDS)
            yield f"{topic or '(whole reply)':18}{count:8}{row}"


def replayed(rows: Iterable[Row], house: House, words: bool = True, jobs: int | None = None) -> Iterator[Again]:
    """Ask each row's question again, in the order of the rows, on all cores. `words`: wording alone counts too."""
    rows, workers = iter(rows), jobs or cores()
    first = list(islice(rows, FEW))
    if workers == 1 or len(first) < FEW:
        desk = Leadsman(house)
        yield from (again(desk, row, words) for part in (first, rows) for row in part)
        return
    context = multiprocessing.get_context("spawn")  # the same on every system, and no lock is inherited
    with ProcessPoolExecutor(workers, context, _start, (house,)) as pool:
        batch = first
        while batch:
            yield from pool.map(partial(_again, words=words), batch, chunksize=AT_ONCE)
            batch = list(islice(rows, BATCH))


def cores() -> int:
    """How many processors we may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


_desks: list[Leadsman] = []  # of this process


def _start(house: House) -> None:
    _desks[:] = [Leadsman(house)]


def _again(row: Row, words: bool) -> Again:
    return again(_desks[0], row, words)


def again(desk: Leadsman, row: Row, words: bool = True) -> Again:
    """One question asked again and held against its earlier answer."""
    earlier, met = content(row.get("answer")), content(row.get("before"))
    id, text = str(row.get("id") or ""), str(row["text"])
    try:
        if met:
            given = [unpacked(item, "message") for item in met["given"]]
            now = desk.reply(str(met["text"]), Thread.from_dict(met["thread"]), given).as_dict()
        else:
            now = desk.ask(text).as_dict()
    except (BadInput, KeyError, TypeError, ValueError) as error:
        return Again(id, text, {}, lost=f"the question cannot be asked again ({error})")
    answer = {name: now[name] for name in ("triage", "answers")}
    if not earlier:
        return Again(id, text, answer, lost="no earlier answer")
    if not met and leans(earlier):
        return Again(id, text, answer, lost="a follow-up whose thread was not kept")
    found = changes(earlier, answer)
    return Again(id, text, answer, tuple(item for item in found if words or item.kind != "words"))


def content(value: Any) -> dict[str, Any]:
    """A reply's JSON, given as text (as the log holds it), as an object, or as its list of answers; {} for none."""
    found = json.loads(value) if isinstance(value, str) and value else value
    if isinstance(found, list):
        found = {"answers": found}
    return found if isinstance(found, dict) else {}


def leans(earlier: Content) -> bool:
    """Whether an answer used facts of earlier turns."""
    return any(item.get("from") == "thread" for part in earlier["answers"] for item in part.get("understood", ()))


def lines(item: Again) -> Iterator[str]:
    """A changed question as lines to print."""
    yield f"{item.id}  {' '.join(item.text.split())[:100]}".strip()
    for change in item.changes:
        was, is_ = shown(change, change.before), shown(change, change.now)
        yield f"    {change.topic or '-':18}{change.name}: {was} -> {is_}"


def rows_of(lines: Iterable[str]) -> Iterator[dict[str, Any]]:
    """The questions of a JSONL file. Raises ValueError with the line for one that is none."""
    for number, line in enumerate(lines, 1):
        if not line.strip():
            continue
        try:
            row = json.loads(line)
            if not isinstance(row["text"], str):
                raise TypeError("text must be a text")
            earlier = content(row.get("answer"))
            content(row.get("before"))
            for part in earlier["answers"] if earlier else ():
                part["topic"], part["verdict"]
        except (ValueError, KeyError, TypeError, AttributeError) as error:
            raise ValueError(
                f'line {number} is no question: it needs "text", and may have "answer" as the desk gave it ({error})'
            ) from error
        yield {"id": str(number)} | row
