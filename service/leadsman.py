"""The core: one message in, its answers out. Every surface calls `Leadsman.ask` and nothing below it."""

from __future__ import annotations

import secrets
from collections.abc import Callable, Mapping, Sequence
from functools import cache
from typing import Any

from grammar.lexicon.vocabulary import lexicon
from grammar.reading import Cue, Message
from service.answering import answered, unanswered
from service.case import Known
from service.house import House, load
from service.question import BadInput, fact_of
from service.reply import Reply
from service.routing.one_by_one import told_of
from service.routing.request import Request
from service.routing.tally import table
from service.topics.unclear import UNREAD
from service.triage import handed_on, triage
from service.turns.carried_on import carried_on
from service.turns.taken_up import taken_up
from service.turns.thread import Signer, Thread, fingerprint, packed
from service.turns.turn import Turn
from service.why import why
from service.wording.again import READ_TOO, repeated, taken_over
from service.wording.shorthand import is_shorthand

LONGEST = 20_000


def _fresh_id() -> str:
    """An id that nobody guesses; it begins with no dash, which a command line would take for an option."""
    return secrets.token_urlsafe(12).replace("-", "_")


class Leadsman:
    """The desk. `house` may be swapped while it runs; `new_id` and `fault` are handed in, so that tests hold them."""

    def __init__(
        self,
        house: House | None = None,
        signer: Signer | None = None,
        new_id: Callable[[], str] = _fresh_id,
        fault: Callable[[str, Exception], None] = lambda topic, error: None,
    ) -> None:
        self.house = house or load()
        self.signer = signer
        self.new_id = new_id
        self.fault = fault
        lexicon()
        table()  # a broken data file stops the desk here: no message is to be blamed for it

    def ask(self, text: str, thread: str | None = None, facts: Sequence[Mapping[str, Any]] | None = None) -> Reply:
        """Answer a message. Raises BadInput for an empty or too long text and for facts that are none."""
        given = [fact_of(item) for item in facts or ()]
        if not text.strip() and not given:
            raise BadInput('The text is empty: write a question, such as "Is 12.4 V good?".')
        if len(text) > LONGEST:
            raise BadInput(f"The text has {len(text)} characters; send at most {LONGEST}, or ask in parts.")
        before = self.signer.thread(thread) if self.signer and thread else None
        lost = bool(thread) and before is None
        notice = "This is a new thread: the earlier one could not be read, so its facts are gone." if lost else None
        return self.reply(text, before or Thread(), given, notice)

    def reply(self, text: str, thread: Thread, given: Sequence[Known] = (), notice: str | None = None) -> Reply:
        """Answer a message in a thread that is at hand, as `ask` and a replay of the log do."""
        try:
            turn = self.taken_up(text, thread, given)
        except Exception as error:  # whatever a text does to the reader, a person gets it, and the thread stands
            self.fault("reading", error)
            whole = (0, len(text))
            turn = Turn(Message(text, cues=(Cue(UNREAD, text, whole),)), thread, (Request("unclear", whole),))
        answers = answered(turn, self.house, self.fault)
        left = told_of(unanswered(turn, answers))
        seen, terse = fingerprint(item.headline for item in answers), is_shorthand(text, thread.cues)
        again = repeated(answers, turn.requests, turn.message) if seen == thread.answered != 0 and not given else None
        chased = taken_over(answers, turn.message)
        after = carried_on(turn, thread, answers, self.house, (seen or thread.answered, terse))
        token = self.signer.token(after) if self.signer else ""
        met = {"text": text, "thread": thread.as_dict(), "given": [packed(item) for item in given]}
        return Reply(
            self.new_id(),
            token,
            handed_on(triage(answers)) if left or chased or (again and again.endswith(READ_TOO)) else triage(answers),
            answers,
            " ".join(filter(None, (chased, again or notice, left))) or None,
            tuple(why(turn, answers)),
            terse,
            left,
            met if thread.turns or thread.facts or given else None,
        )

    def taken_up(self, text: str, thread: Thread, given: Sequence[Known] = ()) -> Turn:
        """Read a message into its thread and find its questions."""
        return taken_up(self.house, text, thread, given)


@cache
def default_desk() -> Leadsman:
    """The desk under the demo house; its threads hold as long as the process lives."""
    return Leadsman(load(), Signer(secrets.token_hex(32)))
