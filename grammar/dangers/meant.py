"""What a sign without a subject is then said to be of: "it's exploded, the price of copper I mean" harms nobody."""

from __future__ import annotations

from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

PRONOUNS = frozenset({"it", "its", "they", "theyre", "theyve", "thats"})
NOTHING = PRONOUNS | {  # all that may stand before the sign: a pronoun and what goes with it
    *("has", "have", "is", "are", "been", "gone", "got", "just", "really", "totally", "completely", "simply"),
    *("absolutely", "so", "well", "and", "again", "lately", "now", "quite", "ok", "hi", "hello", "oh", "wow"),
    *("through", "the", "roof"),
}
MONEY = frozenset(
    (
        *("price", "prices", "cost", "costs", "bill", "bills", "invoice", "quote", "quotes", "budget", "market", "fee"),
        *("fees", "rent", "demand", "sales", "mailbox", "inbox", "mails", "emails"),
    )
)
ARTICLES = frozenset({"the", "its", "their", "our", "my", "these", "those", "all", "this", "that", "copper"})
PARTS = frozenset({"and", "or", "but", "with", "while"})  # after them another thing is named
MEANT = (("i", "mean"), ("i", "meant"), ("we", "mean"), ("that", "is"))
LEAD = 8  # words before the sign
REACH = 3  # words from the sign to the thing: "the new copper price"
AFTER = 5  # words from the thing to "I mean": "the price of copper I mean"


def is_of_a_price(hit: Hit, words: Text) -> bool:
    """Whether a sign has only a pronoun before it, and what follows its comma is a price or the like, as is said."""
    first, last = words.sentences[hit.start]
    if hit.end not in words.commas or hit.start - first > LEAD:
        return False
    before = words.words[first : hit.start]
    if not NOTHING.issuperset(before) or PRONOUNS.isdisjoint((*before, *words.words[hit.start : hit.end])):
        return False
    thing = next((at for at in range(hit.end, min(hit.end + 1 + REACH, last)) if words.words[at] in MONEY), None)
    between = words.words[hit.end : thing]
    if thing is None or not PARTS.isdisjoint(between) or not ARTICLES.issuperset(between[:1]):
        return False
    said = range(thing + 1, min(thing + 1 + AFTER, last))
    return any(words.words[at : at + 2] in MEANT and (at + 2 == last or at + 2 in words.commas) for at in said)
