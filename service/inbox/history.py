"""Takes a message and the earlier messages in it apart: marked by ">", under "... wrote:", under a little header."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

from grammar.files import toml

WORDS = Path(__file__).with_name("words.toml")
MOST_LINES = 20_000  # of the newest words
MOST_QUOTED = 400  # lines of each earlier message: a question is shorter
DEEPEST = 12  # earlier messages in one another
ADDRESSED = re.compile(r"[<(\[]?(?:mailto:)?[\w.+-]{1,64}@[\w-]+\.[\w.-]{1,250}")
TIMED = re.compile(r"(?<!\d)(?:\d{1,2}[:.]\d{2}|(?:19|20)\d{2})(?!\d)")
COLON = re.compile(r"[:：]\s*$")
MARK = re.compile(r"^ {0,3}>")
UNMARK = re.compile(r"^ {0,3}> ?")


@dataclass(frozen=True, slots=True)
class Earlier:
    """An earlier message that is quoted: its own words, and the line that names its writer, where one does."""

    lines: tuple[str, ...]
    writer: str = ""


@dataclass(slots=True)
class Parts:
    """A message taken apart: stretches of its own lines, and the earlier messages, the nearest first."""

    own: list[list[str]] = field(default_factory=lambda: [[]])
    earlier: list[Earlier] = field(default_factory=list)
    forwarded: bool = False


@cache
def words() -> dict[str, Any]:
    """The table of words around a message."""
    return toml(WORDS)


@cache
def pattern(part: str, name: str, before: str = "", after: str = "") -> re.Pattern[str]:
    """One row of the table as a regular expression, case ignored."""
    return re.compile(f"{before}(?:{'|'.join(words()[part][name])}){after}", re.IGNORECASE)


def parts(lines: list[str], depth: int = 0) -> Parts:
    """Take the lines of a message apart."""
    found = Parts()
    marked: list[str] = []
    writer = ""
    at = 0
    while at < min(len(lines), MOST_LINES):
        line = lines[at]
        if MARK.match(line):
            marked.append(UNMARK.sub("", line, count=1))
            if found.own[-1]:
                found.own.append([])
            at += 1
            continue
        kind, length = border(lines, at)
        if kind in ("reply", "forward"):
            found.forwarded = kind == "forward"
            _add(found, lines[at + length :], "", depth)
            break
        if kind == "attribution":
            writer = " ".join(lines[at : at + length])
            if not _marked_next(lines, at + length):
                _add(found, lines[at + length :], writer, depth)
                break
        else:
            found.own[-1].append(line)
        at += length
    if marked:
        rest = found.earlier
        found.earlier = []
        _add(found, marked, writer, depth)
        found.earlier += rest
    return found


def _add(found: Parts, lines: list[str], writer: str, depth: int) -> None:
    """Add an earlier message, and those inside it, to what was found."""
    if depth >= DEEPEST:
        return
    named, lines = _headed(lines[:MOST_QUOTED])
    inner = parts(lines, depth + 1)
    found.earlier.append(Earlier(tuple(line for part in inner.own for line in part), named or writer))
    found.earlier.extend(inner.earlier)


def border(lines: list[str], at: int) -> tuple[str, int]:
    """What begins at this line (reply, forward, attribution or nothing) and over how many lines it goes."""
    line = _bare(lines[at])
    if pattern("separator", "forward").fullmatch(line):
        return "forward", 1
    if pattern("separator", "reply").fullmatch(line):
        return "reply", 1
    if _heads(lines, at):
        return "reply", 0
    length = _attribution(lines, at)
    return ("attribution", length) if length else ("", 1)


def _attribution(lines: list[str], at: int) -> int:
    """How many lines "On ... wrote:" takes here; 0 where none begins. Programs break it over two or three.

    In a language whose words we do not have, a line with an address and a time that ends with a colon is one as well.
    """
    begins = pattern("attribution", "begins", after=r"\b").match(lines[at].strip())
    whole = ""
    for count, line in enumerate(lines[at : at + (3 if begins else 1)], 1):
        if not line.strip() or MARK.match(line):
            return 0
        whole = f"{whole} {line.strip()}".strip()
        if pattern("attribution", "ends", after="$").search(whole):
            dated = begins and re.search(r"\d|@", whole)
            return count if dated or "@" in whole or _marked_next(lines, at + count) else 0
        if COLON.search(whole) and ADDRESSED.search(whole):
            return count if TIMED.search(whole) or _marked_next(lines, at + count) else 0
    return 0


def _marked_next(lines: list[str], at: int) -> bool:
    following = next((line for line in lines[at : at + 3] if line.strip()), "")
    return bool(MARK.match(following))


def _heads(lines: list[str], at: int) -> bool:
    """Whether "From: ..." begins here with a further header line under it."""
    if not pattern("header", "from", after=r"\s*[:：]").match(_bare(lines[at])):
        return False
    return any(_more(line) for line in lines[at + 1 : at + 4])


def _more(line: str) -> bool:
    return bool(pattern("header", "more", after=r"\s*[:：]").match(_bare(line)))


def _headed(lines: list[str]) -> tuple[str, list[str]]:
    """The writer that the header over an earlier message names, and the message without that header."""
    start = next((number for number, line in enumerate(lines) if line.strip()), 0)
    if start >= len(lines):
        return "", []
    first = pattern("header", "from", after=r"\s*[:：]").match(_bare(lines[start]))
    if not first and not _more(lines[start]):
        return "", lines
    end = start + 1
    while end < len(lines) and (_more(lines[end]) or lines[end].startswith((" ", "\t")) or _gap(lines, end)):
        end += 1
    return (_bare(lines[start]) if first else ""), lines[end:]


def _gap(lines: list[str], at: int) -> bool:
    """An empty line between two header lines, as some programs leave."""
    return not lines[at].strip() and at + 1 < len(lines) and _more(lines[at + 1])


def _bare(line: str) -> str:
    return line.replace("*", "").strip()
