"""Sorts mail: what each one asks, how urgent it is, who sees to it, whether a reply is due."""

from __future__ import annotations

import hashlib
import re
from collections import OrderedDict
from collections.abc import Callable, Collection
from dataclasses import dataclass, field, replace
from typing import Any

from service.inbox import conversation, questions, reply_due
from service.inbox.conversation import title
from service.inbox.mailbox import Item
from service.inbox.message import Address, Mail, read_mail
from service.leadsman import Leadsman
from service.reply import Reply, Triage
from service.triage import triage

REMEMBERED = 50_000  # messages of a run, for duplicates and threads
CUT = "We read the first 20,000 characters of your message; please send what else you need to know by itself."
FILES = "We have not opened the attached files; if they show a number that matters, please write it to us."
DANGER = "; it tells of a danger: a person must look"
LOOKED_AT = (
    reply_due.AUTOMATIC,
    reply_due.INVITATION,
    reply_due.NO_REPLY,
    reply_due.SPAM,
    reply_due.NOBODY,
)  # a danger in these counts


@dataclass(frozen=True, slots=True)
class Sorted:
    """One mail, sorted. `why` tells why no reply is due, or why it has no draft; `draft` where one was put."""

    item: Item
    mail: Mail | None
    triage: Triage
    reply: Reply | None = None
    headings: tuple[str, ...] = ()
    to: tuple[Address, ...] = ()
    why: str = ""
    draft: str | None = None
    words: str = ""  # what was answered
    notes: tuple[str, ...] = ()
    broken: bool = False  # set aside, as it could not be read or worked out
    left: bool = False  # for the next run, as its draft cannot be kept now

    @property
    def due(self) -> bool:
        """Whether a reply is due."""
        return not self.why or self.left

    def as_dict(self) -> dict[str, Any]:
        """The mail as one line of JSON."""
        mail = self.mail
        return {
            self.item.kind: self.item.key,
            "message_id": mail.message_id if mail else None,
            "from": mail.sender.email if mail and mail.sender else None,
            "subject": mail.subject if mail else None,
            "urgency": self.triage.urgency,
            "route": self.triage.route,
            "reply": self.due,
            "draft": self.draft,
            "why": self.why or None,
            "answers": [answer.as_dict() for answer in self.reply.answers] if self.reply else [],
        }


@dataclass(slots=True)
class Known:
    """What a run remembers of a message: its writer, its name in the mailbox, and the thread after it."""

    writer: str
    item: str | int
    thread: str = ""


@dataclass(slots=True)
class Sorter:
    """Sorts the mails of one run. `find` reads an earlier message of the mailbox by its Message-ID; `answered` tells
    whether another of the same Message-ID was seen to on an earlier run.
    """

    desk: Leadsman
    own: Collection[str] = ()
    find: Callable[[str], bytes | None] = lambda message_id: None
    answered: Callable[[Item, str], bool] = lambda item, message_id: False
    _ids: OrderedDict[str, Known] = field(default_factory=OrderedDict)
    _texts: OrderedDict[bytes, str | int] = field(default_factory=OrderedDict)

    def sort(self, item: Item) -> Sorted:
        """Sort one mail. Whatever it holds, something is returned: a broken one goes to a person."""
        try:
            mail = read_mail(item.read())
        except (ValueError, LookupError, TypeError, AttributeError, RecursionError) as error:
            return self._aside(item, None, f"broken, set aside for a person: {error or type(error).__name__}")
        try:
            return self._sort(item, mail)
        except OSError:  # the mailbox itself
            raise
        except Exception as error:  # the next mail must not wait for a fault of this one
            self.desk.fault("inbox", error)
            return self._aside(item, mail, f"not worked out, set aside for a person: {type(error).__name__}")

    @staticmethod
    def _aside(item: Item, mail: Mail | None, why: str) -> Sorted:
        return Sorted(item, mail, Triage("routine", "technician"), why=why, broken=True)

    def _sort(self, item: Item, mail: Mail) -> Sorted:
        asked = conversation.asked(self.desk, mail)
        if duplicate := self._seen(item, mail, asked.text):
            return Sorted(item, mail, Triage("routine", "answered"), why=duplicate)
        why = reply_due.why_not(mail, self.own)
        if why and why not in LOOKED_AT:
            return Sorted(item, mail, Triage("routine", "answered"), why=why)
        found = self._ask(mail, asked)
        answers = found.reply.answers if found else ()
        known = any(part.understood for part in answers if part.topic not in ("unclear", "other-desk"))
        if not why and reply_due.unwanted(f"{mail.subject}\n{asked.text}", answered=known):
            why = reply_due.SPAM
        danger = any(answer.topic == "hazard" for answer in answers)
        if why and why != reply_due.NOBODY and not danger:
            return Sorted(item, mail, Triage("routine", "other-desk"), why=why)
        unsettled = triage(answers).route != "answered" or any(answer.asks for answer in answers)
        seen_to = triage(answers) if found or not mail.files else Triage("routine", "technician")  # pictures alone
        notes = (CUT,) * asked.cut + (FILES,) * bool(mail.files and unsettled)
        return Sorted(
            item,
            mail,
            replace(seen_to, route="technician") if why else seen_to,  # nobody else can reply
            found.reply if found else None,
            found.headings if found else (),
            () if why else reply_due.recipients(mail, self.own),
            why + DANGER * bool(why and danger),
            words=asked.text,
            notes=notes,
        )

    def _ask(self, mail: Mail, asked: conversation.Asked) -> questions.Answered | None:
        """The desk's answers, in the thread that the mail goes on with; None where it holds no words."""
        if not asked.text.strip():
            return None
        thread = self._thread(mail)
        if thread is None and asked.answers and conversation.bare(self.desk, asked.text):
            thread = conversation.before(self.desk, asked)
        found = questions.ask(self.desk, asked.text, thread)
        if mail.message_id in self._ids:
            self._ids[mail.message_id].thread = found.reply.thread
        return found

    def _thread(self, mail: Mail, depth: int = 0) -> str | None:
        """The thread of the message that this one refers to, where the same person wrote it."""
        if mail.sender is None:
            return None
        for message_id in reversed(mail.references[-10:]):
            known = self._ids.get(message_id)
            if known:
                if known.thread and known.writer == mail.sender.email:
                    return known.thread
                continue
            content = self.find(message_id) if depth < 1 else None
            earlier = read_mail(content) if content else None
            if earlier and earlier.sender and earlier.sender.email == mail.sender.email:
                text = conversation.asked(self.desk, earlier).text
                before = self._thread(earlier, depth + 1)
                return questions.ask(self.desk, text, before).reply.thread if text.strip() else None
        return None

    def _seen(self, item: Item, mail: Mail, text: str) -> str:
        """Why a mail is a duplicate of another before it, or ""; it is remembered. One that was left is none."""
        writer = mail.sender.email if mail.sender else ""
        known = self._ids.get(mail.message_id)
        before = bool(mail.message_id) and not known and self.answered(item, mail.message_id)
        if before or (known and known.writer == writer and known.item != item.key):
            return "a duplicate: its Message-ID was seen before"
        words = "".join(re.findall(r"\w+", f"{title(mail.subject)[0]} {text}".lower()))
        answered = mail.references[-1] if mail.references else ""
        mark = hashlib.sha256(f"{writer}\0{answered}\0{words}".encode("utf-8", "replace")).digest()
        if words and self._texts.setdefault(mark, item.key) != item.key:
            return "a duplicate: the same words from the same address"
        if mail.message_id and not known:
            self._ids[mail.message_id] = Known(writer, item.key)
        for kept in (self._ids, self._texts):
            while len(kept) > REMEMBERED:
                kept.popitem(last=False)
        return ""
