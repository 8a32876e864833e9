"""The newest words of a message: what its sender wrote now, without quotations, signature and notices."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from service.inbox.history import Earlier, parts, pattern, words

SIGNATURE_LINES = 10  # more than this under "Kind regards" is no signature
SIGNATURE_WIDTH = 90
UNSEEN = re.compile(
    "[\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2064\u2066-\u206f\ufeff\ufffc\x00-\x08\x0b\x0c\x0e-\x1f\x7f]"
)
BREAK = re.compile("\r\n?|[\u0085\u2028\u2029]")
LINK = re.compile(r"<?\b(?:https?://|mailto:|www\.)[^\s<>]+>?|\[(?:cid|image|inline image)\b[^\]\n]{0,200}\]", re.I)
SIGNED_HEAD = re.compile(r"^-----BEGIN PGP SIGNED MESSAGE-----\n(?:\w+: .*\n)*", re.MULTILINE)
SIGNED_TAIL = re.compile(r"^-----BEGIN PGP SIGNATURE-----\n.*?(?:^-----END PGP SIGNATURE-----$|\Z)", re.M | re.S)
ENCODED = re.compile(r"begin [0-7]{3,4} \S")
RULED = re.compile(r"^\s*[_=*~-]{5,}\s*$")
DASHES = re.compile(r"^(?:--|—) ?$")
GREETING = re.compile(
    r"\W*(?:hi|hello|hey|dear|good (?:morning|day|afternoon|evening)|ahoy|hallo|bonjour|hola)\b(?:\s+[\w.]+){0,4}\W*$",
    re.IGNORECASE,
)
NAME = r"[,.!\s–-]*(?:[^\W\d_a-z][\w.'’-]*\s*){0,3}[,.!]*"


@dataclass(frozen=True, slots=True)
class Newest:
    """A message taken apart: its newest words, and the earlier messages in it, the nearest first."""

    text: str
    earlier: tuple[Earlier, ...] = ()
    forwarded: bool = False  # the first of `earlier` was passed on, not answered


def newest(text: str, name: str = "") -> Newest:
    """Take the plain text of a message apart. `name` is its sender's: alone at the end it is a signature."""
    found = parts(list(_without_files(cleaned(text).split("\n"))))
    own = "\n\n".join(words for lines in found.own if (words := own_words(lines, name)))
    return Newest(own, tuple(found.earlier), found.forwarded)


def cleaned(text: str) -> str:
    """The text without what nobody reads: unseen characters, encoded files, a machine's signature."""
    text = UNSEEN.sub("", BREAK.sub("\n", text)).replace("\u00a0", " ")
    return SIGNED_TAIL.sub("", SIGNED_HEAD.sub("", text))


def _without_files(lines: list[str]) -> Iterator[str]:
    """Without files written into the text, from "begin 644 name" to "end"."""
    inside = False
    ends = {number for number, line in enumerate(lines) if line.rstrip() == "end"}
    last = max(ends, default=-1)
    for number, line in enumerate(lines):
        inside = inside or bool(ENCODED.match(line) and number < last)
        if not inside:
            yield line
        inside = inside and number not in ends


def own_words(lines: list[str] | tuple[str, ...], name: str = "") -> str:
    """A stretch of a message without signature, notices, links and names of files."""
    kept = _before_dashes([line.rstrip() for line in lines if not RULED.match(line)])
    kept = _before_device(_before_closing(kept))
    kept = list(_without_notices(kept))
    kept = _without_contacts(_without_name(kept, name), name)
    file = _file()
    text = pattern("talk", "says").sub("", "\n".join(file.sub("", LINK.sub("", line)).strip() for line in kept))
    return re.sub(r"\n{3,}", "\n\n", text).strip()


@cache
def _file() -> re.Pattern[str]:
    """The name of a file."""
    endings = "|".join(words()["files"]["ends"])
    return re.compile(rf"(?<![\w()%+.-])[\w()%+.-]{{0,200}}\.(?:{endings})\b", re.IGNORECASE)


@cache
def _closing() -> re.Pattern[str]:
    """The line with which people end, with a name at most."""
    said = "|".join(re.escape(text) for text in words()["closing"]["says"])
    return re.compile(rf"\W*(?i:{said})(?:[ ,]+(?i:{said}))?{NAME}")


@cache
def _postscript() -> re.Pattern[str]:
    """The mark of a postscript."""
    after = "|".join(re.escape(text) for text in words()["closing"]["after"])
    return re.compile(rf"\s*(?:{after})\b[\s:.,-]*", re.IGNORECASE)


def _before_dashes(lines: list[str]) -> list[str]:
    for at, line in enumerate(lines):
        if DASHES.match(line) and (line == "-- " or _short(lines[at + 1 :])):
            return [*lines[:at], *_added(lines[at + 1 :])]
    return lines


def _before_closing(lines: list[str]) -> list[str]:
    """Without the closing ("Kind regards") and what follows it, but for a postscript."""
    closing = _closing()
    spoken = False
    for at, line in enumerate(lines):
        if spoken and closing.fullmatch(line) and _short(lines[at + 1 :]):
            return [*lines[:at], *_added(lines[at + 1 :])]
        spoken = spoken or bool(line.strip() and not GREETING.match(line) and not closing.fullmatch(line))
    return lines


def _before_device(lines: list[str]) -> list[str]:
    """Without "Sent from my ..." and the line or two that people have under it."""
    for at, line in enumerate(lines):
        if at and _is_device(line.strip()) and _short(lines[at + 1 :]):
            return [*lines[:at], *_added(lines[at + 1 :])]
    return lines


def _short(lines: list[str]) -> bool:
    """Whether these lines can be a signature: few, short, and nothing asked."""
    kept = [line for line in lines[: len(lines) - len(_added(lines))] if line.strip()]
    named = [line for line in kept if not _notice(line)]
    return len(named) <= SIGNATURE_LINES and not any("?" in line or len(line) > SIGNATURE_WIDTH for line in named)


def _added(lines: list[str]) -> list[str]:
    """A postscript, which people write under their name."""
    mark = _postscript()
    return next((lines[at:] for at, line in enumerate(lines) if mark.match(line)), [])


def _notice(line: str) -> bool:
    return bool(pattern("notice", "disclaimer").search(line))


def _without_notices(lines: list[str]) -> Iterator[str]:
    """Without banners, "Sent from my ..." and disclaimers; these go on to the end of their paragraph."""
    legal = False
    for line in lines:
        legal = legal and bool(line.strip())
        found = None if legal else pattern("notice", "disclaimer").search(line)
        if found:
            legal = True
            yield line[: max(line.rfind(". ", 0, found.start()) + 1, line.rfind("? ", 0, found.start()) + 1)]
        elif not legal and not _machine(line.strip()):
            yield line


def _machine(line: str) -> bool:
    return bool(pattern("notice", "banner").fullmatch(line)) or _is_device(line)


def _is_device(line: str) -> bool:
    return bool(pattern("closing", "device").fullmatch(line.rstrip(".")))


def _without_name(lines: list[str], name: str) -> list[str]:
    """Without the sender's own name alone on the last line, or the whole name and the short lines under it."""
    known = set(re.findall(r"\w+", name.lower()))
    filled = [at for at, line in enumerate(lines) if line.strip()]
    for at in filled[1:] if known else []:
        said = set(re.findall(r"\w+", lines[at].lower()))
        if said == known and _signature(lines[at + 1 :]):
            return [*lines[:at], *_added(lines[at + 1 :])]
    last = filled[-1] if len(filled) > 1 else None
    return lines[:last] if last and known >= set(re.findall(r"\w+", lines[last].lower())) else lines


def _signature(lines: list[str]) -> bool:
    """Whether the lines under a name are its signature: short and few, a list in one paragraph or with a contact."""
    filled = [line for line in lines if line.strip()]
    rings = any(pattern("closing", "contact").search(line) for line in filled)
    return _short(lines) and (rings or (_listed(filled) and "" not in [line.strip() for line in lines[: len(filled)]]))


def _without_contacts(lines: list[str], name: str) -> list[str]:
    """Without a last paragraph of names and numbers to ring, no sentence in it: two lines, or one with the name."""
    start, end = _last_paragraph(lines)
    last = lines[start:end]
    rings = any(pattern("closing", "contact").search(line) for line in last)
    known = set(re.findall(r"\w+", name.lower()))
    named = bool(known) and known <= set(re.findall(r"\w+", " ".join(last).lower()))
    return lines[:start] if start and rings and (len(last) > 1 or named) and _listed(last) else lines


def _last_paragraph(lines: list[str]) -> tuple[int, int]:
    """Where the last lines that stand together begin and end."""
    end = len(lines)
    while end and not lines[end - 1].strip():
        end -= 1
    start = end
    while start and lines[start - 1].strip():
        start -= 1
    return start, end


def _listed(lines: list[str]) -> bool:
    """Whether lines are a list of names and numbers: short, and no sentence."""
    return not any(line.rstrip().endswith((".", "!", "?")) or len(line) > SIGNATURE_WIDTH for line in lines)
