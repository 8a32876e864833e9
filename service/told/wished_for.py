"""A lithium battery that somebody thinks of and has not got: no charger harms it yet."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

LITHIUM = r"\b(?:lithiums?|life?po4?|lfp)\b"
WISHES = (
    r"(?:\b(?:wants?|wanted|would like|like to|think(?:ing)? (?:of|about)|consider(?:ing)?|plan(?:s|ning)?|planned"
    r"|hop(?:e|ing)|tempted|fancy|(?:go|mov|chang|swapp?|switch|upgrad|convert)(?:e|ing)?|looking (?:at|for|into)"
    r"|(?:before|if|when|once|should) (?:i|we) (?:buy|get|order|fit|put|take)|(?:would|could|will|can) an?"
    r"|next (?:season|year|spring|summer|winter))\b|['’]d like\b)"
)
NOT_ITS_OWN = r"(?:(?!\b(?:charg\w+|us(?:e|ing)|my|our|the|this)\b)[^.?!;:]){0,40}?"  # "I want to charge my lithium"
WISHED = regex(rf"{WISHES}{NOT_ITS_OWN}{LITHIUM}", re.IGNORECASE)
HAS_ONE = regex(
    r"\b(?:my|our|the|this|these|first|fitted|installed|got|bought|have|has|put in|went|gone"
    r"|(?:changed|swapped|switched) to)"
    rf" (?:(?!\b(?:not|no)\b)[\w-]+ ){{0,2}}?{LITHIUM}|{LITHIUM}[^.?!;]{{0,20}}"
    r"\b(?:is|are|reads?|shows?|has|was|gets?|on|(?:we|i) (?:have|fitted|bought))\b",
    re.IGNORECASE,
)


def lithium(text: str) -> bool:
    """Whether a lithium battery is only wished for.

    >>> lithium("Want LFP up front, the charger gives 14.7 V"), lithium("I want to charge my LFP, it gives 14.7 V")
    (True, False)
    """
    return bool(WISHED.search(text)) and not HAS_ONE.search(text)
