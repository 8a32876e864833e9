"""Years that somebody did a thing, no age of a battery: "kept a log for 23 years", "30 years in the navy"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

ABOUT = r"(?: (?:about|over|nearly|almost|some|more than|at least|the last|the past|these|all of))*"
SPAN = rf"\b(?:for|over|these|those|during|in|the last|the past){ABOUT} $"
OTHERS = (
    r"(?:he|she|they|everybody|everyone|people|others|(?:man|woman|neighbou?r|mate|friend|brother|sister|cousin|uncle"
    r"|father|dad|son|chap|bloke|guy|fellow|skipper|couple|lady|colleague|husband|wife)\b(?: \w+){0,4}?)"
)
DONE = regex(
    r"\b(?:kept|keeps|written|wrote|filled in) (?:an?|his|her|the|their) (?:\w+ )?"
    rf"(?:log\w*|diary|notes|journal|record)\b[^.?!;]{{0,20}}{SPAN}"
    r"|\b(?:done|did|doing|do|does) (?:it|that|this|so|the same|exactly that|just that)\b"
    rf"[^.?!;,]{{0,24}}{SPAN}"
    rf"|\b{OTHERS} (?:has|have|had|'s|'ve)(?: (?:been|always|now))* (?:\w+ ){{0,3}}?(?:his|hers|theirs)\b"
    rf"[^.?!;,]{{0,24}}{SPAN}"
    rf"|\b(?:taught|studied|fished|raced|rowed|commuted|practi[sc]ed|campaigned)\b[^.?!;,]{{0,30}}{SPAN}",
    re.IGNORECASE,
)
CALLING = regex(
    r"^ ?(?:in|with|at|for) (?:the|a|an|our|my) (?:\w+ ){0,2}?(?:brigade|navy|army|forces?|police|trade|business"
    r"|company|firm|office|school|coast ?guard|lifeboat|profession|job|railways?|hospital|factory)\b"
    r"|^ ?of (?:marriage|teaching|sailing|boating|racing)\b|^ ?behind a desk\b"
    r"|^ ?as an? (?:\w+ )?(?:teacher|engineer|nurse|skipper|captain|sailor|fisherman|electrician|mechanic|surveyor"
    r"|instructor|baker|doctor|carpenter|boat ?builder|pilot|fireman|farmer)\b",
    re.IGNORECASE,
)
FAR = 90  # characters before the years


def of_a_deed(ahead: str, after: str) -> bool:
    """Whether the words before or after so many years tell what somebody did, and of no battery."""
    return DONE.search(ahead[-FAR:]) is not None or CALLING.match(after) is not None
