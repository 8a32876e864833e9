"""A text as the danger finder sees it: its words, with what counts as a sign among its figures."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from grammar.dangers.figures import figures
from grammar.lexicon.phrases import BREAK, ENDS, QUESTION
from grammar.lexicon.vocabulary import lexicon
from grammar.reading import Span
from grammar.text import spelling
from grammar.text.patterns import regex

TOKEN = regex(
    r"""(?P<without>(?i:\bw/o(?:ut)?\b))
    |(?P<abbreviated>(?<![^\W_])[^\W\d_](?=\.\s))\.            # "v. hot" ends no sentence
    |(?P<number>[0-9]+(?:[.,][0-9]+)?)
    |(?P<word>[^\W\d_][^\W_]*(?:['’`´][^\W_]+)*)
    |(?P<comma>[,:()]|!+(?=\s+[a-z]))                         # "smoke!! from the bow" goes on
    |(?P<question>\?)
    |(?P<stop>[.!…;\n])
    |(?P<percent>%)
    |(?P<equals>(?<=\s)=(?=\s))
    |(?P<plus>\+(?![0-9]))
    |(?P<pole>(?<=\band\ )[-−–](?!\S)|(?<=\bto\ )[-−–](?!\S)|(?<=[&+/]\ )[-−–](?!\S)|(?<=[&+/])[-−–](?!\S))
    |(?P<minus>(?<![\w)])[-−–](?=[0-9]))""",
    re.VERBOSE,
)
LONGEST_PRONOUN = 5  # it's, that's, she's, there's
CONTRACTED = {
    "is": "isnt",
    "are": "arent",
    "was": "wasnt",
    "were": "werent",
    "does": "doesnt",
    "do": "dont",
    "did": "didnt",
    "has": "hasnt",
    "have": "havent",
    "will": "wont",
    "would": "wouldnt",
    "can": "cant",
    "could": "couldnt",
}
DIALECT = {  # words of the north that a sign of danger or what takes it back hangs on: "nae fuse", "smoke fae the box"
    "nae": "no",
    "isnae": "isnt",
    "arenae": "arent",
    "wasnae": "wasnt",
    "doesnae": "doesnt",
    "disnae": "doesnt",
    "dinnae": "dont",
    "didnae": "didnt",
    "hasnae": "hasnt",
    "havenae": "havent",
    "wouldnae": "wouldnt",
    "willnae": "wont",
    "winnae": "wont",
    "cannae": "cant",
    "couldnae": "couldnt",
    "fae": "from",
    "frae": "from",
    "doon": "down",
    "oot": "out",
    "aff": "off",
    "oan": "on",
    "tae": "to",
    "wi": "with",
    "intae": "into",
}
FOREIGN = "_"  # before a word with an accent: a place or a name, of which no sign is the beginning ("gasp", Gaspé)
NAMED = {
    **{"stop": BREAK, "question": QUESTION, "without": "without", "percent": "percent", "equals": "equals"},
    **{"minus": "#-", "plus": "plus", "pole": "minus"},
}


@dataclass(frozen=True, slots=True)
class Text:
    """The words of a text in order, each with its place; a sentence's end is a BREAK or a QUESTION."""

    words: tuple[str, ...]
    spans: tuple[Span, ...]
    commas: frozenset[int]  # the words that stand after a comma, colon or bracket
    sentences: tuple[Span, ...]  # for each word, the stretch of words without an end around it
    size: int  # how many words

    def begins(self, at: int) -> bool:
        """Whether a clause begins with this word."""
        return at in self.commas or at == self.sentences[at][0]


@lru_cache(maxsize=2)  # signs, what looks like them and what is held against them are sought in the same text
def read(text: str) -> Text:
    """Cut a text into words. Any text will do."""
    words: list[str] = []
    spans: list[Span] = []
    commas: set[int] = set()
    plain = sum(letters.islower() for letters in text.split()) > len(text.split()) / 2  # no text all in capitals
    for match in TOKEN.finditer(text):
        if match.lastgroup == "comma":
            commas.add(len(words))
            continue
        word = _word(match)
        if not word.isascii():
            word = FOREIGN + word
        elif not (plain and words and words[-1] not in ENDS and match.group()[:2].istitle()):  # "Den Helder"
            word = DIALECT.get(word) or _mended(word)
        if word == "not" and words and words[-1] in CONTRACTED:  # "does not" is "doesnt"
            words[-1], spans[-1] = CONTRACTED[words[-1]], (spans[-1][0], match.end())
            continue
        words.append(CONTRACTED["can"] if word == "cannot" else word)
        spans.append(match.span())
    size = sum(word not in ENDS for word in words)
    return Text(tuple(figures(words, commas)), tuple(spans), frozenset(commas), tuple(_sentences(words)), size)


@lru_cache(maxsize=4096)  # most texts are made of the same words
def _mended(word: str) -> str:
    """A word of danger or of the trade without its slip; a space left out is not put back."""
    meant = spelling.mended(word, lexicon().words)
    return word if " " in meant else meant


def _word(match: re.Match[str]) -> str:
    if match.lastgroup == "abbreviated":
        return match["abbreviated"].lower()
    return NAMED.get(match.lastgroup or "") or _plain(match.group().lower())


def _plain(word: str) -> str:
    """A word without apostrophes; "battery's" is "battery", but "it's" is "its"."""
    if word.isalnum():
        return word
    base, _, ending = re.sub(r"[’`´]", "'", word).partition("'")
    if (base, ending) in (("i", "ll"), ("so", "s")):  # nobody is ill, and "so's" is no distress call
        return base
    return base if ending == "s" and len(base) > LONGEST_PRONOUN else base + ending.replace("'", "")


def _sentences(words: Sequence[str]) -> list[Span]:
    """For each word its sentence; an end belongs to the sentence that it ends."""
    found: list[Span] = []
    first = 0
    for at, word in enumerate([*words, BREAK]):
        if word in ENDS:
            found += [(first, at)] * (at + 1 - first)
            first = at + 1
    return found
