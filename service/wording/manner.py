"""How one sentence asks: for the good, the bad, what to do, a remedy, or open."""

from __future__ import annotations

import re
from bisect import bisect_left
from functools import lru_cache

from grammar.reading import Cue, Message, Span
from grammar.text.patterns import regex
from grammar.text.tokens import ENDS
from service.routing.listed import OPENS
from service.wording.forms import (
    AND_IF,
    AND_WHETHER,
    DOES_HARM,
    EITHER,
    FORMS,
    LATER,
    LED_IN,
    OPEN,
    OR_ELSE,
    POLAR,
    WHETHER_ANY,
)

AUXILIARY = ("will it", "would it")  # "would it be a bad idea"
CLOSE = 9  # characters after "what" in which "will it" asks no yes or no
MENDED = ("note:correction", "detail:unregulated")  # what seems bad inside these is not asked
SPACE = 20  # characters between two clauses, at most
MOST_CLAUSES = 40  # that one sentence has
SENTENCE = 240  # characters before a cue in which its sentence begins
HAPPENED = frozenset({"cut out", "shut down"})
HAPPENS = frozenset({"cuts out", "shuts down"})  # told as well, unless the sentence asks
BEFELL = regex(  # the sentence up to it
    r"^(?![^.!?]*\b(?:will|would|does|do|did|can|could|may|might|should|if|whether|why)\b)[^.!?]*"
    r"\b(?:bms|battery|lithium|lfp|pack|bank|it|she|they)(?: (?:has|had|just|then|suddenly|already))* $",
    re.IGNORECASE,
)


def only_tells(text: str, span: Span) -> bool:
    """Whether a sentence ends in a full stop and does not open as a question does."""
    own = text[slice(*span)]
    return own.rstrip().endswith(".") and not OPENS.match(own)


def sentence_before(message: Message, start: int) -> int:
    """Where the sentence before a place begins: "Is it?" asks of what it says."""
    first = bisect_left(message.clauses, start, key=lambda clause: clause.span[0])
    for clause in reversed(message.clauses[max(0, first - MOST_CLAUSES) : first]):
        at = clause.span[0]
        if message.text[max(0, at - SPACE) : at].rstrip()[-1:] in ENDS:
            return at
    return 0


def way(message: Message, span: Span) -> str:
    """How one sentence asks; "" where it does not tell."""
    text = message.text[span[0] : span[1]]
    names = ("good", "choice", "about", "hedge")
    good, choice, about, hedge = (message.says(f"put:{name}", span) for name in names)
    bad = _says_bad(message, span)
    if bad and (
        DOES_HARM.search(text) or all(cue.text.lower() in AUXILIARY for cue in message.cues_in(span, "put:good"))
    ):
        good = False
    if message.says("detail:what_now", span):
        return "do"
    led = LED_IN.match(text)
    if led and good:  # "OK, scrap it then?"
        good = message.says("put:good", (span[0] + led.end(), span[1]))
    on = message.text[span[1] :].lstrip(" ,").lower().startswith("or ")
    either = not (about or hedge) and (on or bool(EITHER.search(text)))
    if said := _formed(text) or _or_else(message, span, text):
        return said
    if (OPEN.match(text) and not about) or (bad and either) or _asks_what(message, span, text):
        return "open"
    if needed := _needed(message, span, good, bad, either):
        return needed
    if bad and good:
        return "good"
    good = good or message.says("put:leave", span)
    if bad or good:
        return "open" if choice and not (about or hedge) else "bad" if bad else "good"
    return "open" if choice or either or hedge or WHETHER_ANY.match(text) else ""


def _or_else(message: Message, span: Span, text: str) -> str:
    """How a yes or no question asks whose other side is only its contrary: "... or will we find it flat?"."""
    contrary = OR_ELSE.search(text) if POLAR.match(text) else None
    if contrary is None:
        return ""
    return "bad" if _says_bad(message, (span[0], span[0] + contrary.start())) else "good"


@lru_cache(maxsize=8)  # a long message may be one sentence, asked for every question that it puts
def _formed(text: str) -> str:
    return next((way for form, way in FORMS if form.search(text)), "")


def _needed(message: Message, span: Span, good: bool, bad: bool, either: bool) -> str:
    """How "do I need ..." asks: after a charge, another one or one of another size; "" where it asks for neither."""
    needs = message.says("put:need", span) and not either
    if needs and message.says("put:another", span) and not good:
        return "bad"  # "must I change it": only where it is not well
    if needs and message.says("put:other_size", span) and not (good or bad):
        return "open"  # "do I need a bigger one": it may be the smaller one that is right
    charge = (needs and message.says("put:remedy", span)) or message.says("put:wants_charge", span)
    return "remedy" if charge and not either else ""


def _asks_what(message: Message, span: Span, text: str) -> bool:
    """Whether "what" or a figure's short name asks later in a sentence that asks no yes or no before it."""
    later = LATER.search(text)
    two = later and POLAR.match(text) and AND_IF.search(text, 0, later.start())  # "will it do, and if not, how many"
    if later and (two or AND_WHETHER.search(text, later.end())):
        return False
    own = (span[0] + later.end(), span[0] + later.end() + CLOSE) if later else (0, 0)  # "what will it drag"
    asked = message.cues_in(span, "put:bad", "put:good", "put:leave", "put:about")
    return all(own[0] <= cue.span[0] < own[1] for cue in asked) and bool(later or message.says("put:figure", span))


def _befell(message: Message, cue: Cue) -> bool:
    """Whether it only tells what happened: "the BMS cut out in the harbour"."""
    told = re.split(r"[.!?]", message.text[max(0, cue.span[0] - SENTENCE) : cue.span[0]])[-1]
    asks = re.match(r"[^.!?]{0,80}\?", message.text[cue.span[1] : cue.span[1] + SENTENCE]) is not None
    happened = cue.text.lower() in HAPPENED or (cue.text.lower() in HAPPENS and not asks)
    return happened and BEFELL.search(told) is not None


def _says_bad(message: Message, span: Span) -> bool:
    """Whether it asks for the bad thing; "I read that wrong" only puts something right, "does not cut out" tells."""
    bad = [cue.span[0] for cue in message.cues_in(span, "put:bad") if not _befell(message, cue)]
    mended = [cue.span for name in MENDED for cue in message.by_name.get(name, ())] if bad else []
    return any(not any(start <= at < end for start, end in mended) for at in bad)
