"""The text of a mail's parts: the right part, its character set, its flowed lines; attachments are only counted."""

from __future__ import annotations

import codecs
from dataclasses import dataclass, field
from email.message import Message

from service.inbox.markup import text_of
from service.question import mended

LONGEST = 1_000_000  # characters of one part
MOST_PARTS = 2_000
DEEPEST = 30  # parts in one another
SAME = {  # what programs mean by a set's name
    "ascii": "utf-8",
    "us-ascii": "utf-8",
    "iso-8859-1": "cp1252",
    "latin-1": "cp1252",
    "latin1": "cp1252",
    "gb2312": "gb18030",
}
READ = ("text/plain", "text/html", "text/enriched", "text/markdown", "multipart/mixed", "multipart/alternative")
MARKED_UP = ("text/html", "text/enriched")
FILES = ("image", "audio", "video", "application")
STRANGE = frozenset(("punycode", "idna", "unicode_escape", "raw_unicode_escape", "undefined", "mbcs", "oem"))
RICH = 3  # an HTML part this many times longer than the plain one says more than it


@dataclass(slots=True)
class Contents:
    """What a mail holds: its text, the text of a message attached to it, the number of files, whether an invitation."""

    text: str = ""
    attached: str = ""
    files: int = 0
    invitation: bool = False
    _parts: int = field(default=0, repr=False)

    def of(self, part: Message, depth: int = 0) -> str:
        """The text of a part and of those in it."""
        self._parts += 1
        if self._parts > MOST_PARTS or depth > DEEPEST:
            return ""
        kind = part.get_content_type()
        if kind == "text/calendar":
            self.invitation = True
            return ""
        if kind == "message/rfc822":
            return self._message(part, depth)
        payload = part.get_payload()
        if isinstance(payload, list) and kind != "message/delivery-status":
            return self._several([item for item in payload if isinstance(item, Message)], kind, depth)
        if kind in READ and not _apart(part):
            return body(part)
        self.files += bool(part.get_filename() or part.get_content_maintype() in FILES)
        return ""

    def _message(self, part: Message, depth: int) -> str:
        inner = part.get_payload()
        if isinstance(inner, list) and inner and isinstance(inner[0], Message):
            self.attached = self.attached or Contents().of(inner[0], depth + 1)
        self.files += 1
        return ""

    def _several(self, parts: list[Message], kind: str, depth: int) -> str:
        if kind in ("multipart/related", "multipart/signed"):
            texts = [self.of(item, depth + 1) for item in parts]
            return next((text for text in texts if text.strip()), "")
        texts = [self.of(item, depth + 1) for item in parts]
        if kind != "multipart/alternative":
            return "\n".join(text for text in texts if text.strip())
        plain, *richer = [text for text in texts if text.strip()] or [""]
        return next((text for text in richer if len(text) > RICH * len(plain)), plain)


def contents(message: Message) -> Contents:
    """What a parsed mail holds."""
    found = Contents()
    found.text = found.of(message)[:LONGEST]
    return found


def _apart(part: Message) -> bool:
    return part.get_content_disposition() == "attachment" or bool(part.get_filename())


def body(part: Message) -> str:
    """The text of one part."""
    raw = part.get_payload(decode=True)
    text = decoded(raw[: 4 * LONGEST] if isinstance(raw, bytes) else b"", part.get_content_charset() or "utf-8")
    if part.get_content_type() in MARKED_UP:
        return text_of(text)
    if str(part.get_param("format", "")).lower() == "flowed":
        return unflowed(text, delete=str(part.get_param("delsp", "")).lower() == "yes")
    return text


def decoded(raw: bytes, charset: str) -> str:
    """Bytes as text: by the declared set, else UTF-8, else what western programs mean by it."""
    for name in (SAME.get(charset, charset), "utf-8"):
        try:
            known = codecs.lookup(name)
            if known._is_text_encoding and known.name not in STRANGE:
                return mended(raw.decode(known.name))  # UTF-7 lets half a character through
        except (LookupError, ValueError):
            continue
    return raw.decode("cp1252", "replace")


def unflowed(text: str, *, delete: bool = False) -> str:
    """Lines of format=flowed joined again (RFC 3676): a space at the end goes on, but for "-- "."""
    lines: list[str] = []
    before: int | None = None  # depth of quotation of a line that goes on
    for line in text.replace("\r\n", "\n").split("\n"):
        bare = line.lstrip(">")
        depth = len(line) - len(bare)
        bare = bare.removeprefix(" ")
        signature = bare == "-- "
        if before == depth and not signature:
            lines[-1] += bare
        else:
            lines.append(f"{'>' * depth} {bare}" if depth else bare)
        before = depth if bare.endswith(" ") and not signature else None
        if before is not None and delete:
            lines[-1] = lines[-1][:-1]
    return "\n".join(lines)
