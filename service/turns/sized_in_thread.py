"""What a later turn asks of case sizes that its own words do not tell: "and a 24?", "which has more CCA?"."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex
from service.judgements import case_sizes
from service.turns.thread import Thread

MORE = regex(
    r"\bwhich (?:one |of (?:them|these|those|the two) )?(?:has|have|gives?|is|would|usually)\b[^.?!;]{0,20}"
    r"\b(?:more|most|stronger|strongest|higher|highest|better|best)\b",
    re.IGNORECASE,
)


def stronger(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Which has more CCA?" of the two cases that were spoken of."""
    both = case_sizes.stands(thread.cues) and thread.topics == ("group-size",)
    return ("group-size",) if both and not message.stated and MORE.search(message.text) else ()


RULES = (stronger,)
