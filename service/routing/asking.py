"""Whether a message asks outright: words that open a question."""

from __future__ import annotations

from grammar.reading import Message


def asks(message: Message) -> bool:
    """Whether a message asks anything: a question mark, a request of the lexicon or a word that opens a question."""
    return asks_outright(message) or any(word in OPENERS for word in message.words)


def asks_outright(message: Message) -> bool:
    """Whether it shows a question mark, a request of the lexicon or a word like "which"; "it is gel" does not."""
    words = message.words
    return not ASKING.isdisjoint(words) or any(cue.name.startswith("request:") for cue in message.cues)


ASKING = frozenset(
    ["?", "what", "whats", "which", "how", "hows", "when", "where", "why", "who", "whether", "wat", "wot", "wats"]
)
OPENERS = frozenset(
    [
        "what",
        "whats",
        "which",
        "how",
        "hows",
        "is",
        "are",
        "am",
        "do",
        "does",
        "did",
        "can",
        "could",
        "should",
        "shall",
        "will",
        "would",
        "may",
        "might",
        "must",
        "when",
        "where",
        "why",
        "who",
        "any",
        "need",
        "ok",
        "wat",
        "wot",
        "wats",
    ]
)
