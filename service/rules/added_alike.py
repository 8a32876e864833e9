"""One like the one aboard put beside it, "would two be better than one", "the same again next to it"; or all new."""

from __future__ import annotations

import re

from service import reference
from service.case import Case

COUNT, AGE, LAYOUT = "battery.count", "battery.age", "bank.layout"
AGAIN = re.compile(
    r"\b(?:(?:the )?same again"
    r"|another (?:identical|equal|similar|like it|(?:of )?the same|one (?:like|beside|next|just))"
    r"|an? (?:second|identical|equal|matching)(?: identical| equal| matching)? (?:one|battery)\b"
    r"|one more(?=\W*$|\W*[?.,;]| (?:battery|beside|next|alongside|like|of (?:them|those|these)|in parallel)\b)"
    r"|a twin|its twin"
    r"|doubl(?:e|ing) (?:it |them )?up|add(?:ing)? (?:another|a second|one more)"
    r"|two (?:\w+ ){0,5}?better than one)\b",
    re.IGNORECASE,
)
BESIDE = re.compile(r"\b(?:beside|next to|alongside|side by side|in parallel|joined|along with)\b", re.IGNORECASE)
REPLACES = re.compile(r"\b(?:replac|swap|exchang|renew)\w*\b|\bin its place\b", re.IGNORECASE)
TWO_NOW = re.compile(r"(?:same )?again\b|\bthan one\b", re.IGNORECASE)  # two that are only thought of
TOLD_SO = re.compile(
    r"\b(?:second|another|more|twin|same|add\w*|identical)\b", re.IGNORECASE
)  # in the count's own words
PLANS = re.compile(
    r"\b(?:would|should|shall|could|can|may|might|if|thinking|think|plan\w*|want|help|better|worth|gain|need|or do)\b",
    re.IGNORECASE,
)
NO_NEWER = re.compile(
    r"\b(?:second[- ]?hand|used|(?:same|equal|similar) (?:age|year|batch)|(?:just|equally) as old|as old as)\b",
    re.IGNORECASE,
)
ALL_NEW = re.compile(
    r"\b(?:two|three|four|both|all|a pair|[2-4])\b[^.?!;,]{0,24}?\b(?:brand )?new\b|\bnew (?:pair|set)\b"
    r"|\b(?:replac\w+|renew\w*|chang\w+|swap\w*) (?:both|them both|all|the pair|the two)\b",
    re.IGNORECASE,
)
MIXED = re.compile(
    r"\b(?:beside|next to|alongside|existing|add\w*|more|older|old one"
    r"|(?:to|with|and) (?:my|the|our) (?:old|present|other|first))\b",
    re.IGNORECASE,
)
TWELVE = 12.0  # volts
MOST = next(row["value"] for row in reference.rows("mixing") if row["name"].value == "age")


def thought_of(text: str) -> bool:
    """Whether one more like the one aboard is thought of.

    >>> thought_of("would the same again beside it help?"), thought_of("would one more charge help?")
    (True, False)
    >>> thought_of("should I replace it with the same again?")
    False
    """
    if REPLACES.search(text) and not BESIDE.search(text):
        return False
    return AGAIN.search(text) is not None and PLANS.search(text) is not None


def planned(case: Case) -> bool:
    """Whether one more like the one they have is thought of, side by side with it."""
    if any(fact.startswith("battery.") for fact in case.second) or case.said(LAYOUT) in ("series", "series-parallel"):
        return False
    count = case.said(COUNT)
    if of_more_volts(case):  # a second one in the row of a 24 V bank is none beside it
        return False
    if count == 2 and not (TWO_NOW.search(case.text) or TOLD_SO.search(case.stated[COUNT].text)):  # a third one
        return False
    return count in (None, 1.0, 2.0) and thought_of(case.text)


def unlike_in_age(case: Case) -> bool:
    """Whether the one they have is too old for a new one beside it."""
    age = case.said(AGE)
    return age is not None and float(age) > float(MOST.value) * (1 + 1e-9) and not NO_NEWER.search(case.text)


def alone(case: Case) -> Case:
    """The case of the one that they have."""
    return case.supposing({COUNT: 1.0}, (LAYOUT,))


def side_by_side(case: Case) -> Case:
    """The case of the two together."""
    return case.supposing({COUNT: 2.0, LAYOUT: "parallel"})


def all_new(text: str) -> bool:
    """Whether all batteries are to be bought new: "and if I bought two new ones instead?".

    >>> all_new("OK and if I bought two new identical ones?"), all_new("and a new one beside it?")
    (True, False)
    """
    return ALL_NEW.search(text) is not None and MIXED.search(text) is None


def of_more_volts(case: Case) -> bool:
    """Whether the load or the bank takes more volts than one battery has."""
    wanted = case.get("load.voltage") or case.said("bank.voltage") or TWELVE
    return float(wanted) > float(case.said("battery.nominal") or TWELVE)
