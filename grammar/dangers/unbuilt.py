"""A fuse that somebody says none needs, for what is yet to be wired: "he swears boats go without; which fuse for my new
winch?" No circuit is without one there, and the fuse is what is asked."""

from __future__ import annotations

from grammar.dangers.hearsay import SAYS
from grammar.dangers.text import Text, read
from grammar.lexicon.phrases import ENDS, Hit
from grammar.text.patterns import regex

ASKS = regex(
    r"\b(?:what|which|how (?:big|large|many amps?))\b[^.?]{0,30}\bfuses?\b|\bfuse size\b|\bsize (?:of )?fuse\b"
)
PLANS = regex(  # "wiring up a new one", "about to wire", "fitting it next month"
    r"\b(?:wiring|fitting|installing|planning|adding|buying|choosing)\b"
    r"|\b(?:about|going|want|wants|plan|hope|wish|need|have) to (?:wire|fit|install|add|connect|put|run)\b"
    r"|\b(?:is|are|was|were) to (?:put|fit|wire|install)\b|\b(?:kit|(?:bag|box) of (?:parts|bits)|parcel)\b"
    r"|\b(?:brand new|new) (?:\w+ ){0,3}(?:windlass|winch|thruster|pump|one|motor|inverter|circuit)\b"
)
DONE = frozenset(  # something is wired, or was used as it is
    (
        *("wired", "fitted", "installed", "hooked", "connected", "found", "already", "years", "year", "season"),
        *("since", "still", "did", "ive", "weve", "mine", "ours", "used", "ran", "went", "old", "months", "blew"),
        *("hot", "warm", "melted", "far", "today", "yesterday", "currently", "works", "worked", "running", "moment"),
        *("seasons", "blown"),
    )
)
OF_ALL = frozenset(  # what is said to go without one
    (
        *("starters", "starter", "thrusters", "windlasses", "winches", "boats", "motors", "engines", "they", "you"),
        *("people", "nobody", "everybody", "everyone", "most", "all", "none", "anyone"),
    )
)
OF_ONES_OWN = frozenset(("my", "our", "his", "her", "its", "it", "this", "that", "the", "we", "i", "he", "she"))
BEFORE = 3  # words before the sign in which what goes without is named


def is_only_said(hit: Hit, words: Text) -> bool:
    """Whether no fuse is only what somebody says of all such things, and the fuse of one yet to be wired is asked."""
    first, _ = words.sentences[hit.start]
    said = [at for at in range(first, hit.start) if words.words[at] in SAYS]
    if not said or not is_to_be_wired(words):
        return False
    around = words.words[max(said[-1] + 1, hit.start - BEFORE) : hit.end]
    return not OF_ALL.isdisjoint(around) and OF_ONES_OWN.isdisjoint(around)


def is_to_be_wired(words: Text) -> bool:
    """Whether a message asks which fuse something takes that is yet to be wired, and tells of nothing that is."""
    if not DONE.isdisjoint(words.words):
        return False
    told = " ".join("." if word in ENDS else word for word in words.words)
    return PLANS.search(told) is not None and ASKS.search(told) is not None


def to_be_wired(text: str) -> bool:
    """Whether a text asks which fuse something takes that is yet to be wired.

    >>> to_be_wired("about to wire a new winch, which fuse?"), to_be_wired("wired a new winch, which fuse?")
    (True, False)
    """
    return is_to_be_wired(read(text))
