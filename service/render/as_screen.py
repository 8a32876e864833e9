"""A reply for a terminal: as the plain text, with the chart under each answer and colour where the terminal has it."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TextIO

from service import say
from service.render.as_text import PLAIN, WIDTH, answer_parts, as_text, said_once, wrapped
from service.render.chart import chart
from service.reply import Answer, Reply

CODES = {  # of a verdict, and of the label before a line
    "yes": "32",
    "marginal": "33",
    "needs-facts": "36",
    "no": "31",
    "stop": "1;31",
    "information": "1",
    "label": "1",
}


@dataclass(frozen=True, slots=True)
class Screen:
    """How wide the terminal is, whether it speaks Unicode, and whether it shows colour."""

    width: int = WIDTH
    unicode: bool = True
    colour: bool = False

    def paint(self, text: str, name: str) -> str:
        """A text in the colour of a verdict; as it is on a screen without colour."""
        code = CODES.get(name)
        return f"\x1b[{code}m{text}\x1b[0m" if self.colour and code else text


def screen_of(stream: TextIO, environment: Mapping[str, str] = os.environ) -> Screen:
    """The screen behind a stream. Colour on a terminal only, never where NO_COLOR is set or the terminal is dumb."""
    unicode = "utf" in (stream.encoding or "").lower()
    if not stream.isatty():
        return Screen(WIDTH, unicode)
    try:
        columns = os.get_terminal_size(stream.fileno()).columns
    except OSError:
        columns = WIDTH
    colour = not environment.get("NO_COLOR") and environment.get("TERM", "") not in ("", "dumb")
    return Screen(max(min(columns - 1 if columns else WIDTH, WIDTH), 40), unicode, colour)


def as_screen(reply: Reply, screen: Screen) -> str:
    """The whole reply; several answers are numbered in the order of the message."""
    if not reply.answers:
        return as_text(reply, screen.width, not screen.unicode)
    blocks = [reply.notice] if reply.notice else []
    several = len(reply.answers) > 1
    for number, answer in enumerate(said_once(reply.answers), 1):
        mark = f"{number}. " if several else ""
        blocks.append("\n".join(_answer(answer, screen, mark, reply.shorthand)))
    text = "\n\n".join(blocks).replace(say.NB, " ")
    return text if screen.unicode else text.replace("mΩ", "mohm").translate(PLAIN)


def _answer(answer: Answer, screen: Screen, mark: str, brief: bool) -> Iterator[str]:
    yield from (screen.paint(line, answer.verdict) for line in wrapped(mark + answer.headline, screen.width))
    drawn = chart(answer.plot, screen.width - 2, ascii_only=not screen.unicode)
    if drawn:
        yield from ("", *(f"  {line}" for line in drawn), "")
    for label, text in answer_parts(answer, brief):
        first, *rest = wrapped(f"{label}: {text}", screen.width)
        yield first.replace(f"{label}:", screen.paint(f"{label}:", "label"), 1)
        yield from rest
