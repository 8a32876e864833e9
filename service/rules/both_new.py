"""Whether one new battery will do beside the other one, or both must be new: "do I have to buy two?"."""

from __future__ import annotations

import re

from grammar.reading import Message
from service import reference, say
from service.case import Case
from service.rules.joining import pair

ASKED = "detail:both_new"
DEAD = re.compile(
    r"\bone\b[^.?!;]{0,30}\b(?:died|dead|failed|gone|packed up|finished|gave up|broken?|kaput|faulty)\b"
    r"|\bthe (?:dead|dud|bad|broken|failed|faulty) one\b",
    re.IGNORECASE,
)
ALONE = re.compile(
    r"\b(?:replace|change|swap|renew)\b[^.?!;]{0,16}\b(?:just|only)\b[^.?!;]{0,16}\bone\b"
    r"|\b(?:just|only) (?:replace|change|swap|renew)\b[^.?!;]{0,20}\bone\b",
    re.IGNORECASE,
)
NEWER = re.compile(r"\b(?:one|other)\b[^.?!;]{0,30}\b(?:new|newer|replaced|swapped|changed|renewed)\b", re.IGNORECASE)
MOST = next(row["value"] for row in reference.rows("mixing") if row["name"].value == "age")


def uneven(text: str) -> bool:
    """Whether one of several batteries is dead or newer than the others."""
    return bool(DEAD.search(text) or NEWER.search(text))


def asked(source: Case | Message) -> bool:
    """Whether it is asked if one new battery will do: "must I buy two", "may I replace only the failed one"."""
    return source.says(ASKED) or bool(ALONE.search(source.text))


def headline(case: Case, how: str, reason: str) -> str | None:
    """The answer where an old battery and a new one are apart in age; None where that is not asked."""
    if not asked(case):
        return None
    if how == "parallel":
        return f"Better both: {reason} work in parallel, but the weaker one wears the other."
    age = case.said("battery.age")
    if DEAD.search(case.text) and age is not None:
        years = say.quantity(float(age), "years")
        return f"Yes, both: in series a new battery does not suit one of {years}, which is emptied too far."
    return (
        "One new one may do, in place of the old one: in series both must be within a year of age, so the newer one "
        "must be that young and test well."
    )


def one_will_do(case: Case) -> str | None:
    """The answer where one is dead and the other young enough for a new one beside it; else None."""
    age = case.said("battery.age")
    if not asked(case) or not DEAD.search(case.text) or age is None or pair(case, "battery.age"):
        return None
    if float(age) > float(MOST.value) * (1 + 1e-9):
        return None
    case.step("In series a year apart is the most", MOST.cite)
    old = say.quantity(float(age), "years") if float(age) >= 1 else say.quantity(float(age) * 12, "months", 0)
    return f"One will do, of the same kind and size: the other one is {old} old, if it tests well."
