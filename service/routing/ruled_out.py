"""Stretches of a message that open no topic, as the customer rules them out: "I don't need to know about fuses"; or
whose words are no word of the trade there: "weighing up AGM against gel"."""

from __future__ import annotations

import re

from grammar.reading import Message, Span
from grammar.text.patterns import regex

NOT_ASKED = (
    r"(?:don['’]?t|do not|didn['’]?t|needn['’]?t) (?:really )?(?:need|want|wish|have|care)"
    r" (?:to (?:know|hear|be told|read|talk) )?(?:anything )?about"
    r"|not (?:asking|enquiring|talking|writing) (?:here )?(?:about|for|after)|not interested in"
    r"|no (?:need|wish) (?:to (?:know|talk|hear) )?about"
    r"|(?:never mind|forget(?: about)?|leave aside|leaving aside) (?=the|my|our|a)"
)
RULED_OUT = regex(rf"\b(?:{NOT_ASKED})\b[^.?!;:,\n]{{0,200}}?(?=[.?!;:,\n]|\bbut\b|$)", re.IGNORECASE)

WEIGHED = regex(
    r"\bweigh(?:ing|ed|s)? (?:(?:it|this|that|them|things) )?up\b|\bweighing (?:the )?(?:options|pros)\b", re.I
)


def ruled_out(message: Message) -> list[Span]:
    """The stretches whose words speak for no topic.

    >>> [message.text[slice(*span)] for message in [Message("Not asking about the charger, only the fuse")]
    ...  for span in ruled_out(message)]
    ['Not asking about the charger']
    >>> ruled_out(Message("weighing up gel against AGM")), ruled_out(Message("what does it weigh, 30 kg?"))
    ([(0, 11)], [])
    """
    return [item.span() for words in (RULED_OUT, WEIGHED) for item in words.finditer(message.text)]
