"""One mail as the desk needs it: who wrote, about what, in which words. Broken mail gives what can be read of it."""

from __future__ import annotations

import email
import email.policy
import re
from dataclasses import dataclass
from email.errors import HeaderParseError
from email.header import decode_header
from email.utils import getaddresses

from service.inbox import bodies

LONGEST = 40_000_000  # bytes; of a larger mail only so much is read
LONGEST_HEADER = 20_000
ADDRESS = re.compile(
    r"(?![^@]*(?:^\.|\.\.|\.@))[^\s<>()\[\]\\,;:@\"\x80-\uffff]{1,64}"  # dots stand between other characters
    r"@[a-z0-9](?:[a-z0-9.-]{0,250}[a-z0-9])?"
)
MESSAGE_ID = re.compile(r"<[!-;=?-~]{1,250}>")
UNWANTED = re.compile("[\x00-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff]+")
NEEDED = frozenset(("from", "to", "subject", "date", "message-id", "received", "reply-to"))


@dataclass(frozen=True, slots=True)
class Address:
    """A name and an address. The address is lower case."""

    name: str
    email: str


@dataclass(frozen=True, slots=True)
class Mail:
    """A mail that was read. `headers` holds the first of each by its lower-case name, decoded, on one line."""

    message_id: str
    sender: Address | None
    reply_to: tuple[Address, ...]
    to: tuple[Address, ...]
    subject: str
    references: tuple[str, ...]  # of References and In-Reply-To, the nearest last
    headers: dict[str, str]
    kind: str  # content type of the whole
    body: str
    attached: str  # the text of an attached message
    files: int  # attachments, which nobody has read
    cut: bool = False
    invitation: bool = False  # of a calendar, or the answer to one


def read_mail(content: bytes) -> Mail:
    """Take a mail up. Raises ValueError where the bytes are no mail."""
    message = email.message_from_bytes(content[:LONGEST], policy=email.policy.compat32)
    raw: dict[str, str] = {}
    for name, value in message.raw_items():  # bytes that nobody declared stay as they came
        raw.setdefault(name.lower(), str(value)[:LONGEST_HEADER])
    if not NEEDED & set(raw):
        raise ValueError("it has no header of a mail")
    headers = {name: decoded(value) for name, value in raw.items()}
    inside = bodies.contents(message)
    senders = addresses(raw.get("from", "")) or addresses(raw.get("sender", ""))
    own = MESSAGE_ID.search(headers.get("message-id", ""))
    referred = MESSAGE_ID.findall(f"{headers.get('references', '')} {headers.get('in-reply-to', '')}")
    return Mail(
        own[0] if own else "",
        senders[0] if senders else None,
        addresses(raw.get("reply-to", "")),
        tuple(item for name in ("to", "cc", "delivered-to") for item in addresses(raw.get(name, ""))),
        headers.get("subject", "")[:500],
        tuple(reversed(dict.fromkeys(reversed(referred)))),
        headers,
        message.get_content_type(),
        inside.text,
        inside.attached,
        inside.files,
        len(content) > LONGEST,
        inside.invitation,
    )


def decoded(value: str) -> str:
    """A header on one line: encoded words and raw bytes decoded, line breaks and control characters gone."""
    try:
        pieces = [_piece(piece, charset) for piece, charset in decode_header(value)]
    except (HeaderParseError, ValueError):
        pieces = [_piece(value, None)]
    return re.sub(r"\s+", " ", UNWANTED.sub(" ", "".join(pieces))).strip()


def _piece(piece: bytes | str, charset: str | None) -> str:
    if isinstance(piece, str):  # bytes that nobody declared come as surrogates
        piece = piece.encode("utf-8", "surrogateescape")
    return bodies.decoded(piece, (charset or "utf-8").lower())


def addresses(value: str) -> tuple[Address, ...]:
    """The sound addresses of a raw header, in order. What is none is left out; names are decoded afterwards."""
    pairs = getaddresses([re.sub("[\x00-\x1f\x7f]+", " ", value)])
    found = ((decoded(name)[:120], _plain(address)) for name, address in pairs)
    return tuple(dict.fromkeys(Address(name, address) for name, address in found if ADDRESS.fullmatch(address)))


def _plain(address: str) -> str:
    """An address in lower case, its domain as computers write it."""
    local, _, domain = address.strip().lower().rpartition("@")
    try:
        return f"{local}@{domain.encode('idna').decode('ascii')}"
    except UnicodeError:
        return ""
