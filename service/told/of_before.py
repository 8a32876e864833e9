"""Whether a message names nothing and only points back: "it did it again, worse than before. Any thoughts?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

BACK = regex(r"\b(?:again|same|before|last|still|worse|earlier|back|previous(?:ly)?|once more)\b", re.IGNORECASE)
WORDS = regex(r"[a-z]+")
VAGUE = frozenset(  # beside the words of those who greet and thank: what happens, to whom, when, how it may be called
    (
        *("advice", "already", "always", "any", "anything", "back", "bad", "be", "because", "been", "before", "being"),
        *(
            "better",
            "came",
            "come",
            "comes",
            "day",
            "days",
            "done",
            "earlier",
            "even",
            "every",
            "fault",
            "few",
            "first",
        ),
        *("fix", "go", "goes", "going", "gone", "had", "happen", "happened", "happening", "happens", "has", "hasn"),
        *("he", "her", "him", "his", "if", "idea", "ideas", "isn", "issue", "keep", "keeps", "last", "late", "message"),
        *("month", "more", "never", "new", "next", "night", "nothing", "once", "only", "or", "other", "our", "out"),
        *("over", "post", "previous", "previously", "problem", "problems", "said", "same", "say", "says", "season"),
        *(
            "she",
            "since",
            "still",
            "story",
            "stuff",
            "such",
            "suggestions",
            "symptom",
            "symptoms",
            "tell",
            "than",
            "then",
        ),
        *(
            "these",
            "things",
            "think",
            "thoughts",
            "thread",
            "time",
            "times",
            "told",
            "too",
            "tried",
            "trouble",
            "twice",
        ),
        *("up", "us", "ve", "week", "went", "wrong", "worse", "worst", "year", "yesterday", "yet"),
    )
)


def told(text: str, plain: frozenset[str]) -> bool:
    """Whether it points back and has no word that is neither one of these nor a vague one.

    >>> plain = frozenset({"it", "did", "will", "what", "is", "again"})
    >>> [told(text, plain) for text in ("It did it again, worse. Thoughts?", "Will it rain again?", "What is it?")]
    [True, False, False]
    """
    return BACK.search(text) is not None and (plain | VAGUE).issuperset(WORDS.findall(text.lower()))
