"""Whether a reply is due: none to machines, lists, ourselves, duplicates and spam (RFC 3834, RFC 2919, RFC 3464)."""

from __future__ import annotations

from collections.abc import Collection

from service.inbox.history import pattern
from service.inbox.message import Address, Mail

SPAM_BAR, SPAM_BAR_ANSWERED = 2, 3  # points: a strong phrase 2, a weak one 1; the second where the desk has answers
SPAM_READ = 8_000  # characters
LISTS = ("list-id", "list-post", "list-unsubscribe", "list-help", "list-owner", "x-mailing-list")
MACHINES = ("x-autoreply", "x-autorespond", "x-autoresponder", "x-auto-reply", "x-failed-recipients")
REPORTS = ("multipart/report", "message/delivery-status", "message/disposition-notification")
AUTOMATIC, INVITATION, BOUNCE, LIST, OWN, NO_REPLY, SPAM, NOBODY = (
    "an automatic message",
    "an invitation of a calendar: for a person",
    "a bounce or a receipt",
    "from a mailing list",
    "from our own address",
    "from an address that takes no reply",
    "spam",
    "nobody to reply to: for a person",
)


def why_not(mail: Mail, own: Collection[str]) -> str:
    """Why no reply is due by the headers alone; "" where one is. `own` are the desk's addresses."""
    headers = mail.headers
    if mail.kind in REPORTS or headers.get("return-path") == "<>" or _local(mail, "bounce"):
        return BOUNCE
    if headers.get("auto-submitted", "no").partition(";")[0].strip().lower() != "no" or _set(headers, MACHINES):
        return AUTOMATIC
    if headers.get("precedence", "").lower() in ("auto_reply", "auto-reply"):
        return AUTOMATIC
    if any(name in headers for name in LISTS) or headers.get("precedence", "").lower() in ("bulk", "list", "junk"):
        return LIST
    if pattern("automatic", "subject").match(mail.subject) or pattern("automatic", "body").search(mail.body[:600]):
        return AUTOMATIC
    if mail.invitation:
        return INVITATION
    if _marked_as_spam(headers):
        return SPAM
    if recipients(mail, own):
        return ""
    if mail.sender is None:
        return NOBODY
    return OWN if ours(mail.sender, mail, own) else NO_REPLY


def recipients(mail: Mail, own: Collection[str]) -> tuple[Address, ...]:
    """Whom a reply goes to: Reply-To where it names a person, else the sender; nobody for ourselves and machines."""
    for candidates in (mail.reply_to[:3], (mail.sender,) if mail.sender else ()):
        people = tuple(item for item in candidates if not ours(item, mail, own) and not machine(item))
        if people:
            return people
    return ()


def ours(address: Address, mail: Mail, own: Collection[str]) -> bool:
    """Whether an address is the desk's: one of its own, or the very one that the mail came to."""
    return address.email in own or any(item.email == address.email for item in mail.to)


def machine(address: Address) -> bool:
    """Whether nobody reads what is sent there."""
    local = address.email.rpartition("@")[0]
    return bool(pattern("automatic", "local").fullmatch(local) or pattern("automatic", "bounce").fullmatch(local))


def unwanted(text: str, *, answered: bool) -> bool:
    """Whether the words are those of spam. `answered`: the desk read facts of a battery in them and has an answer."""
    text = text[:SPAM_READ]
    weak = {found.group().lower() for found in pattern("spam", "weak").finditer(text)}
    strong = {found.group().lower() for found in pattern("spam", "strong").finditer(text)}
    return len(weak) + 2 * len(strong) >= (SPAM_BAR_ANSWERED if answered else SPAM_BAR)


def _marked_as_spam(headers: dict[str, str]) -> bool:
    flag = headers.get("x-spam-flag", "") or headers.get("x-spam-status", "") or headers.get("x-spam", "")
    return flag.lower().startswith(("yes", "true"))


def _set(headers: dict[str, str], names: Collection[str]) -> bool:
    return any(headers.get(name, "no").lower() not in ("no", "none", "false", "") for name in names)


def _local(mail: Mail, row: str) -> bool:
    return mail.sender is not None and bool(pattern("automatic", row).fullmatch(mail.sender.email.rpartition("@")[0]))
