"""Whether a message only thanks or takes leave: "ta very much", "just what we hoped to hear, thanks to you all"."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex
from service.routing.asking import ASKING, OPENERS
from service.routing.goes_on import BRIEF, POLITE

LEAVE = 30  # characters after the thanks: a name, "for the help"
HOWEVER = frozenset({"but", "still", "though", "however", "yet", "not", "cant", "wont", "doesnt", "except"})
SPEAKING = ("request:", "word:", "thing:", "about:", "detail:", "value:")  # cues of what a message is about
RELATIVE = regex(  # "that is just what we hoped", no question
    r"\b(?:is|was|it's|that's|just|exactly|precisely|quite|all|to) (?:what|who)"
    r" (?:i|we|he|she|they|my|our|it|takes?)\b",
    re.IGNORECASE,
)


def only_thanks(message: Message, *, later: bool) -> bool:
    """Whether a short message thanks or greets and says nothing else that the lexicon knows: "ta very much".

    `later`: in a conversation, where it may be longer.
    """
    if len(message.words) > BRIEF * (2 if later else 1) or not any(message.says(name) for name in POLITE):
        return False
    if message.stated or message.quantities or message.dangers:
        return False
    thanked = {at for cue in message.cues if cue.name in POLITE for at in range(*cue.span)}
    others = (cue for cue in message.cues if cue.name.startswith(SPEAKING) and not set(range(*cue.span)) <= thanked)
    return not _asks(message) and next(others, None) is None


def takes_leave(message: Message) -> bool:
    """Whether a message of a thread ends with thanks and neither asks nor tells: "leave it one more year then, ta"."""
    thanks = [cue.span[1] for cue in message.cues if cue.name in POLITE[:1]]
    if not thanks or len(message.text) - max(thanks) > LEAVE or len(message.words) > 2 * BRIEF:
        return False
    requests = any(cue.name.startswith("request:") and cue.span[0] for cue in message.cues)  # an "OK" first is none
    asked = requests or "?" in message.words or not OPENERS.isdisjoint(message.words[1:])
    return not (asked or message.stated or message.dangers) and HOWEVER.isdisjoint(message.words)


def polite(message: Message) -> bool:
    """Whether a message that asks nothing known thanks or greets."""
    return not message.quantities and any(message.says(name) for name in POLITE)


def _asks(message: Message) -> bool:
    """Whether it shows a question mark or a word like "which" that asks."""
    relative = sum(1 for _ in RELATIVE.finditer(message.text))
    return "?" in message.words or sum(word in ASKING for word in message.words) > relative
