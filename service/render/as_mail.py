"""A reply as the two bodies of a mail: plain text, and the same as simple HTML."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from html import escape
from typing import Any

from service import say
from service.render.as_text import answer_parts, backed, said_once, sources
from service.reply import Answer, Reply

WIDTH = 74
LONGEST_HEADING = 90
MOST_QUOTED = 1_500  # characters
NO_WORDS = "Your message reached us without words. What can we do for you? Write what you have and what it should do."
NUMBERS = ("", "", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
FRAME = '<div style="font-family: sans-serif; line-height: 1.45; max-width: 42em">\n{}\n</div>\n'
HEADING = '<h3 style="font-size: 1em; margin: 1.6em 0 0.4em; border-top: 1px solid #ccc; padding-top: 0.8em">{}</h3>'


@dataclass(frozen=True, slots=True)
class Block:
    """One piece of a mail: its kind (heading, says, part, plain), its label and its words."""

    kind: str
    text: str
    label: str = ""


@dataclass(frozen=True, slots=True)
class Quoted:
    """What is answered: the line that names its writer, and the words."""

    over: str
    words: str


def as_mail(
    reply: Reply | None,
    words: Mapping[str, Any],
    headings: Sequence[str] = (),
    notes: Iterable[str] = (),
    quoted: Quoted | None = None,
) -> tuple[str, str]:
    """The text and the HTML of a mail. `reply` None: the mail had no words. `headings`: what asked for each answer."""
    blocks = list(_blocks(reply, words, headings, notes))
    plain, html = _plain(blocks), "\n".join(_html(block) for block in blocks)
    if quoted and quoted.words.strip():
        told = quoted.words[:MOST_QUOTED] + " ..." * (len(quoted.words) > MOST_QUOTED)
        lines = [part for line in told.splitlines() for part in (textwrap.wrap(line, WIDTH) or [""])]
        plain += "\n".join(["", quoted.over, *(f"> {line}".rstrip() for line in lines)]) + "\n"
        marked = "<br>".join(escape(line) for line in told.splitlines())
        html += f"\n<p>{escape(quoted.over)}</p>\n<blockquote>{marked}</blockquote>"
    return plain, FRAME.format(html)


def _blocks(
    reply: Reply | None, words: Mapping[str, Any], headings: Sequence[str], notes: Iterable[str]
) -> Iterator[Block]:
    answers = tuple(said_once(reply.answers)) if reply else ()
    yield Block("plain", str(words.get("greeting", "Hello,")))
    yield from _opening(reply, answers)
    if reply and (left := reply.left_open):
        yield Block("plain", left)
    several = len(answers) > 1
    for number, answer in enumerate(answers, 1):
        if several:
            asked = headings[number - 1] if number <= len(headings) else ""
            asked = asked or answer.topic.replace("-", " ").capitalize()
            yield Block("heading", f"{number}. {textwrap.shorten(asked, LONGEST_HEADING, placeholder=' ...')}")
        yield Block("says", answer.headline)
        yield from (Block("part", text, label) for label, text in answer_parts(answer) if label != "Sources")
    if listed := sources(cite for item in answers for cite in backed(item)):
        yield Block("plain", listed, "Sources")
    yield from (Block("plain", note) for note in notes)
    yield Block("plain", str(words.get("sign_off", "Kind regards, the battery desk")))


def _opening(reply: Reply | None, answers: Sequence[Answer]) -> Iterator[Block]:
    if reply is None:
        yield Block("plain", NO_WORDS)
    elif len(answers) > 1 and answers[0].verdict == "stop":
        return  # the action comes first
    elif len(answers) > 1:
        counted = NUMBERS[len(answers)] if len(answers) < len(NUMBERS) else str(len(answers))
        yield Block("plain", f"thank you for writing. Your {counted} questions in order:")
    elif answers[0].verdict != "stop" and not (answers[0].topic == "unclear" and answers[0].route == "answered"):
        yield Block("plain", "thank you for writing.")


def _plain(blocks: Iterable[Block]) -> str:
    pieces: list[str] = []
    for block in blocks:
        text = f"{block.label}: {block.text}" if block.label else block.text
        space = "\n" if block.kind == "part" or (block.kind == "says" and pieces[-1].endswith("\v")) else "\n\n"
        hanging = "  " if block.label else ""
        lines = textwrap.wrap(text, WIDTH, subsequent_indent=hanging, break_long_words=False, break_on_hyphens=False)
        pieces.append((space if pieces else "") + "\n".join(lines) + ("\v" if block.kind == "heading" else ""))
    return "".join(pieces).replace("\v", "").replace(say.NB, " ") + "\n"


def _html(block: Block) -> str:
    text = escape(block.text)
    if block.kind == "heading":
        return HEADING.format(text)
    if block.kind == "says":
        return f"<p><strong>{text}</strong></p>"
    return f"<p><em>{escape(block.label)}:</em> {text}</p>" if block.label else f"<p>{text}</p>"
