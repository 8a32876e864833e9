"""Puts what the speller mends into the words of a message: each keeps its place in the text as typed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar.lexicon.vocabulary import lexicon
from grammar.text import spelling
from grammar.text.tokens import Token

SPELLED, MOST_SPELLED = 3, 12  # letters of what is spelled out: "b m s", "c c a"
FUSED = frozenset({"fuse", "breaker"})  # behind these a 4 is "for"; "gauge 4", "cable 4" are sizes
ASKED = frozenset({"cable", "wire", "charger", "battery", "batt", "lug", "cca", "ah"})
ASKING = frozenset({"what", "which", "wot", "wat", "whats", "how", "many", "much", "need"})
WHOSE = frozenset({"my", "the", "our", "this", "that", "an", "bow", "thruster", "windlass"})
AMPS = frozenset({"a", "amp", "amps", "w", "watt", "watts"})
BEGIN = frozenset(  # before these words of a question an "an" is "and"
    {"what", "whats", "which", "wot", "wots", "wat", "where", "how", "why", "is", "are", "can", "could", "do", "does"}
    | {"dose", "will", "would", "should", "must", "may"}
)
SHORTEST_NAME = 5  # letters of a model's name that a slip is mended towards


def mended(tokens: Sequence[Token], models: Sequence[str] = ()) -> list[Token]:
    """The words with slips mended; one that was two words makes two."""
    names = tuple(word for model in models for word in model.lower().split() if len(word) >= SHORTEST_NAME)
    return [word for token in joined(_with_for(_with_and(tokens))) for word in _words(token, names)]


def _with_and(tokens: Sequence[Token]) -> list[Token]:
    """The words with the "an" of "a bms an can i", "plus an how much" as "and": no thing has such a name."""
    return [
        Token("and", token.start, token.end, mended=True)
        if token.word == "an" and at + 1 < len(tokens) and tokens[at + 1].word in BEGIN
        else token
        for at, token in enumerate(tokens)
    ]


def _with_for(tokens: Sequence[Token]) -> list[Token]:
    """The words with the 4 of "fuse 4 155a" and "what cable 4 the windlass" as "for"."""
    words = [token.word for token in tokens]
    return [
        Token("for", token.start, token.end, mended=True) if token.word == "4" and _is_for(words, at) else token
        for at, token in enumerate(tokens)
    ]


def _is_for(words: Sequence[str], at: int) -> bool:
    asked = words[max(0, at - 2) : at]
    after = [*words[at + 1 : at + 4], "", "", ""]
    if not asked or not (asked[-1] in FUSED or (asked[-1] in ASKED and asked[0] in ASKING)):
        return False
    if after[0] == "a":  # "fuse 4 a" may be a fuse of 4 A
        return after[1][:1].isdigit()
    return after[0] in WHOSE or (after[0][:1].isdigit() and after[1] in AMPS)


def joined(tokens: Sequence[Token]) -> Iterator[Token]:
    """The words with what was spelled out as one: "b m s", as a telephone takes it down."""
    at = end = 0
    while at < len(tokens):
        end = max(at, end)
        while end < len(tokens) and len(tokens[end].word) == 1 and tokens[end].word.isalpha():
            end += 1
        whole = "".join(token.word for token in tokens[at:end]) if SPELLED <= end - at <= MOST_SPELLED else ""
        if whole in lexicon().words:
            yield Token(whole, tokens[at].start, tokens[end - 1].end, mended=True)
            at = end
        else:
            yield tokens[at]
            at += 1


def _words(token: Token, names: tuple[str, ...]) -> Iterator[Token]:
    meant = spelling.mended(token.word, lexicon().words, names)
    left, space, right = meant.partition(" ")
    if meant == token.word or (space and token.end - token.start != len(token.word)):  # with an apostrophe: no matter
        yield token
    elif space:
        middle = token.start + len(left)
        yield Token(left, token.start, middle, mended=True)
        yield Token(right, middle, token.end, mended=True)
    else:
        yield Token(meant, token.start, token.end, mended=True)
