"""What is asked of a boat that goes over to lithium: what else must change with it, and whether it just drops in."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

CHANGE = r"(?:chang\w*|swap\w*|replac\w*|upgrad\w*|renew\w*|adapt\w*|alter\w*|modif\w*|redo\w*|consider\w*|buy)"
MUST = r"(?:needs?|has|have|must|should|ought|wants?|do i|do we|will i|will we|to)"
LITHIUM = regex(r"\b(?:lithium\w*|lifepo4?|lfp|li)\b", re.IGNORECASE)
ELSE = regex(
    rf"\b(?:what|anything|something|whatever)\b(?: else| other \w+)?\b[^.?!]{{0,30}}\b{MUST}\b[^.?!]{{0,20}}\b{CHANGE}"
    rf"|\b(?:what|anything) else\b[^.?!]{{0,40}}\b(?:{MUST}|is (?:needed|involved|required))\b",
    re.IGNORECASE,
)
OF_ONE = regex(r"\b(?:what|which) (?:size|cable|fuse|gauge|charger|setting|battery)\b", re.IGNORECASE)
DROPS_IN = regex(
    r"\b(?:just|simply|straight|direct(?:ly)?|really|a|is it|true|as a|be) ?(?:just |a )?drop(?:ped|s)?[- ]?in\b"
    r"|\b(?:just|simply) (?:drop|put|fit|swap|slot|stick|pop|exchange|replace|change)\b"
    r"|\bstraight swap\b|\blike for like\b|\bplug and play\b",
    re.IGNORECASE,
)
WORTH = regex(r"\bworth\b|\bworthwhile\b|\bpays? off\b|\bmakes? (?:any )?sense\b", re.IGNORECASE)


def what_changes(text: str) -> bool:
    """Whether it is asked what else has to change where lithium comes in.

    >>> what_changes("going to lithium, what else has to be changed?"), what_changes("what else needs changing?")
    (True, False)
    """
    return LITHIUM.search(text) is not None and ELSE.search(text) is not None and OF_ONE.search(text) is None


def drops_in(text: str) -> bool:
    """Whether it is asked if lithium may come in the place of lead as it stands.

    >>> drops_in("can I just drop a lithium in?"), drops_in("I dropped the lithium, is it ok?")
    (True, False)
    """
    return LITHIUM.search(text) is not None and DROPS_IN.search(text) is not None


def worth_it(text: str) -> bool:
    """Whether it is asked if the change pays.

    >>> worth_it("lithium instead of AGM, is it worth it?"), worth_it("may I fit lithium instead of AGM?")
    (True, False)
    """
    return WORTH.search(text) is not None
