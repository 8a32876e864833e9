"""The questions that the page at rest offers, grouped by need."""

from __future__ import annotations

import re

from service import say

EXAMPLES = {
    "Will it do?": (
        "Will my 520 CCA AGM start battery run the Pike?",
        "Can a 200 Ah lithium run the Pike?",
        "AGM or lithium for the Pike?",
    ),
    "My meter says": (
        "12.4 V at rest on an AGM. Is that good?",
        "It falls to 8.9 V when I run the Minnow",
        "13.1 V on a lithium: how full is it?",
    ),
    "Cable, fuse and charger": (
        "What cable for a Pike, 5 m each way?",
        "What fuse for a Sturgeon on 70 mm² cable?",
        "How many amps of charger for two 100 Ah AGMs?",
    ),
    "Laying up": (
        "How do I store a wet battery over winter?",
        "Will a half-charged battery freeze at −20?",
        "Is a five-year-old AGM due?",
    ),
}


def unbroken(text: str) -> str:
    """A text as the page shows it: no line ends between a number and its unit.

    >>> unbroken("What cable for a Pike, 5 m each way?")
    'What cable for a Pike, 5\\xa0m each way?'
    """
    return re.sub(r"(?<=\d) (?=\S)", say.NB, text)
