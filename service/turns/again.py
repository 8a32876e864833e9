"""The question before, asked again with one thing changed: another kind, bank or charge, or the cable told."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex
from service.routing.asking import asks_outright
from service.turns.thread import Thread

AT_REST = frozenset({"reading.voltage", "reading.state", "reading.rest_time"})
OF_THEM = frozenset({"thing:battery", "thing:boat"})
OF_THE_BANK = frozenset({"bank.layout", "bank.voltage", "bank.count", "battery.count", "battery.nominal"})
OF_A_BANK = frozenset({"run-time", "run-check", "charger-size", "charge-time", "standing-drain", "solar"})
KIND = "battery.chemistry"
OF_SIZE = OF_THEM | {"request:what_size"}
SAME_SIZE = regex(r"\b(?:same|that|this|equal) (?:size|capacity|amp[- ]?hours?|ah)\b|\bas (?:big|large)\b", re.I)
OF_THE_SAME = frozenset({"request:is_good", "request:how_full", "request:enough"})  # "still ok?", "what if it's full"
SAME = regex(  # "same but ...", "and what if it's ..."
    r"\W*(?:(?:and|or|but|ok|now|then|so)\W+)*"
    r"(?:(?:(?:the )?same(?: again| two| thing| question| story)?|both (?:again|questions)),? "
    r"(?:but|with|for|if|on|at|only|as)\b|(?:what )?if (?:it|they|she|he|the \w+)(?:'?s|'?re| is| are| was| were)\b)",
    re.IGNORECASE,
)
STILL = regex(
    r"\bstill\b[^.?!;]{0,12}\b(?:ok(?:ay)?|good|fine|enough|turns?|runs?|works?|do|holds?|an? yes|all ?right)\b", re.I
)
HAD_IT_BEEN = regex(  # "and had it been a gel?", "were they lithium?"
    r"\W*(?:(?:and|or|but|ok|now|then|so|hm+)\W+)*(?:had (?:it|they|mine|ours|the \w+) (?:been|had|shown|read|stood at)"
    r"|were (?:it|they|mine|ours) (?!ok\b|right\b|wrong\b)"
    r"|(?:what )?if (?:it|they|mine|ours)(?:'d| had| would have) been)\b",
    re.IGNORECASE,
)
IF_IT = regex(  # "and if it only shows 12.3"
    r"\W*(?:(?:and|or|but|ok|now|then|so|what)\W+)*if (?:it|they|she|he|the (?:battery|bank))(?: only| just| then)?"
    r" (?:shows?|reads?|sits?|stands?|rests?|has|have|drops?|falls?)\b",
    re.IGNORECASE,
)


def of_another_kind(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "And a lithium one of the same size?": the last question of a battery of that kind."""
    told = {item.fact for item in message.stated if item.of == 1}
    leads = message.words[:1] in (("and",), ("or",), ("what",), ("how",))
    asks = [cue for cue in message.cues if cue.name.startswith(("request:", "thing:")) and cue.name not in OF_SIZE]
    return thread.topics if leads and told == {KIND} and SAME_SIZE.search(message.text) and not asks else ()


def joined_so(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Two and two in series for 24 V" after how long it lasts: the same of the bank that is told."""
    told = {item.fact for item in message.stated}
    bank = "bank.layout" in told <= OF_THE_BANK and set(thread.topics) <= OF_A_BANK
    return thread.topics if bank and "?" not in message.words and not asks_outright(message) else ()


def still_runs(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "50 mm2, 5 m one way. Does it still turn?" of a battery that was judged: with its cable."""
    told = {item.fact for item in message.stated}
    cabled = bool(told) and all(fact.startswith("cable.") for fact in told)
    return ("run-check",) if cabled and "run-check" in thread.topics and STILL.search(message.text) else ()


def same_again(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Same but a full AGM", "and what if it's gel?" after two questions: both of them, with what is changed."""
    told = bool(message.stated) and SAME.match(message.text) is not None
    own = any(cue.name.startswith("request:") and cue.name not in OF_THE_SAME for cue in message.cues)
    return thread.topics if len(thread.topics) > 1 and told and not own else ()


def if_only_so_full(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "And if it's only at 12.3 in the morning?" after whether it runs: whether it still does."""
    told = {item.fact for item in message.stated}
    if_so = SAME.match(message.text) or IF_IT.match(message.text)
    read = bool(told) and told <= AT_REST | {"battery.charge"} and if_so is not None
    return thread.topics if read and thread.topics in (("run-check",), ("run-time",)) else ()


def had_it_been(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "And had it been a gel?": the same question of another one, and nothing of its age."""
    own = any(cue.name.startswith("request:") and cue.name not in OF_THE_SAME for cue in message.cues)
    return thread.topics if message.stated and HAD_IT_BEEN.match(message.text) and not own else ()
