"""So much cable that is to be bought: a message that asks its price or delivery goes to the other desk alone."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex

LENGTH = r"\d+(?:[.,]\d+)? ?(?:m|metres?|meters?|ft|feet|foot)\b"
BUYS = r"\b(?:deliver\w*|order\w*|prices?|quote|ship(?:ped|ping)?|sell|costs?|in stock|how much (?:is|are|for))\b"
ORDERED = regex(rf"{BUYS}[^.?!]*?\b{LENGTH}|\b{LENGTH}[^.?!]*?{BUYS}", re.IGNORECASE)
OF_A_CIRCUIT = ("load.", "cable.length", "cable.in_engine_space", "battery.", "charger.", "reading.")
ASKED = ("thing:fuse", "about:fuse", "word:loss", "about:loss", "request:what_size")


def orders(message: Message) -> bool:
    """Whether a length of cable is to be bought, and nothing of a circuit is told or asked beside it."""
    told = any(item.fact.startswith(OF_A_CIRCUIT) for item in message.stated)
    return not told and not any(map(message.says, ASKED)) and bool(ORDERED.search(message.text))
