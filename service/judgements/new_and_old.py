"""One new battery: beside the one aboard ("the same again next to it"), for a dead one of two, or all of them new."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.judgements import joining, load_reading
from service.told import its_mate, no_second

COUNT, AGE, LAYOUT = "battery.count", "battery.age", "bank.layout"
AGAIN = regex(
    r"\b(?:(?:the )?same again"
    r"|another (?:identical|equal|similar|like it|(?:of )?the same|one (?:like|beside|next|just))"
    r"|an? (?:second|identical|equal|matching)(?: identical| equal| matching)? (?:one|battery)\b"
    r"|one more(?=\W*$|\W*[?.,;]| (?:battery|beside|next|alongside|like|of (?:them|those|these)|in parallel)\b)"
    r"|a twin|its twin"
    r"|doubl(?:e|ing) (?:it |them )?up|add(?:ing)? (?:another|a second|one more)"
    r"|two (?:\w+ ){0,5}?better than one)\b",
    re.IGNORECASE,
)
BESIDE = regex(r"\b(?:beside|next to|alongside|side by side|in parallel|joined|along with)\b", re.IGNORECASE)
CURES = regex(  # "would a second one in parallel be a cure?"
    r"\b(?:second|another|one more|extra|new)\b[^.?!;]{0,40}\b(?:in parallel|beside|next to|alongside)\b[^.?!;]{0,30}"
    r"\b(?:cure|help|fix|solve|sort|mend|save|do the trick|better)\w*"
    r"|\b(?:cure|help|fix|solve|sort|mend|save)\w*\b[^.?!;]{0,40}\b(?:second|another|one more)\b[^.?!;]{0,20}"
    r"\b(?:parallel|beside|next to|alongside|battery)\b",
    re.IGNORECASE,
)
REPLACES = regex(r"\b(?:replac|swap|exchang|renew)\w*\b|\bin its place\b", re.IGNORECASE)
TWO_NOW = regex(r"(?:same )?again\b|\bthan one\b", re.IGNORECASE)  # two that are only thought of
TOLD_SO = regex(r"\b(?:second|another|more|twin|same|add\w*|identical)\b", re.IGNORECASE)  # in the count's own words
PLANS = regex(
    r"\b(?:would|should|shall|could|can|may|might|if|thinking|think|plan\w*|want|help|better|worth|gain|need|or do)\b",
    re.IGNORECASE,
)
NO_NEWER = regex(
    r"\b(?:second[- ]?hand|used|(?:same|equal|similar) (?:age|year|batch)|(?:just|equally) as old|as old as)\b",
    re.IGNORECASE,
)
ALL_NEW = regex(
    r"\b(?:two|three|four|both|all|a pair|[2-4])\b[^.?!;,]{0,24}?\b(?:brand )?new\b|\bnew (?:pair|set)\b"
    r"|\b(?:replac\w+|renew\w*|chang\w+|swap\w*) (?:both|them both|all|the pair|the two)\b",
    re.IGNORECASE,
)
MIXED = regex(
    r"\b(?:beside|next to|alongside|existing|add\w*|more|older|old one"
    r"|(?:to|with|and) (?:my|the|our) (?:old|present|other|first)"
    r"|(?:with|and) (?:an?|one) old|an? old\b[^.?!;]{0,24}\b(?:beside|and))\b",
    re.IGNORECASE,
)
NEW_WITH_OLD = regex(
    r"\bnew\b(?: \w+){0,2} (?:with|to|and|beside|next to|alongside|onto)\b[^.?!;,]{0,20}?"
    r"\b(?:\d+|old|two|three|four|five)\b",
    re.IGNORECASE,
)
SINCE = regex(  # "one bought last month, the other three years old"
    r"\b(?:bought|got|fitted|installed|purchased|from|renewed|replaced|new)\b[^.?!;,\d]{0,16}"
    r"\blast (?:(?P<year>year)|week|month|spring|summer|autumn|fall|winter|season|easter|christmas)\b",
    re.IGNORECASE,
)
LASTS = regex(r"\b(?:replac|last|chang|scrap|retir|renew|swap)\w*|\bkeep\b(?! them apart)", re.IGNORECASE)
TWELVE = 12.0  # volts
MOST = next(row["value"] for row in reference.rows("mixing") if row["name"].value == "age")


def thought_of(text: str) -> bool:
    """Whether one more like the one aboard is thought of.

    >>> thought_of("would the same again beside it help?"), thought_of("would one more charge help?")
    (True, False)
    >>> thought_of("should I replace it with the same again?")
    False
    """
    if (REPLACES.search(text) and not BESIDE.search(text)) or no_second.saved(text):
        return False
    return AGAIN.search(text) is not None and PLANS.search(text) is not None


def new_with_old(text: str) -> bool:
    """Whether it is asked of a new battery beside an old one: no question of how long either lasts.

    >>> new_with_old("And new AGM with 2 yr old AGM?"), new_with_old("It is 2 years old, a new one?")
    (True, False)
    """
    return NEW_WITH_OLD.search(text) is not None and LASTS.search(text) is None


def bought_since(text: str) -> float | None:
    """The years, at most, since one battery was bought, where only the season tells it.

    >>> bought_since("one bought last month"), bought_since("one from last year"), bought_since("they last a year")
    (0.0, 1.0, None)
    """
    found = SINCE.search(text)
    return None if found is None else 1.0 if found["year"] else 0.0


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


def no_cure(case: Case) -> str | None:
    """What is said of a second battery beside one that falls too far under its load; None where none is thought of."""
    if case.said("reading.load_voltage") is None or not CURES.search(case.text):
        return None
    under = load_reading.read_under_load(case)
    if under.holds or under.small or under.basis == "lithium":
        return None
    case.step("Of unlike batteries the weaker one wears the other", "bank-practice")
    return "Only if yours is sound but too small: a weak one wears a new one beside it, so charge and test it first."


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


BOTH_NEW = "detail:both_new"
DEAD = regex(
    r"\bone\b[^.?!;]{0,30}\b(?:died|dead|failed|gone|packed up|finished|gave up|broken?|kaput|faulty)\b"
    r"|\bthe (?:dead|dud|bad|broken|failed|faulty) one\b",
    re.IGNORECASE,
)
ONLY_ONE = regex(
    r"\b(?:replace|change|swap|renew)\b[^.?!;]{0,16}\b(?:just|only)\b[^.?!;]{0,16}\bone\b"
    r"|\b(?:just|only) (?:replace|change|swap|renew)\b[^.?!;]{0,20}\bone\b"
    r"|\b(?:just|only)(?: the| that)?(?: dead| bad| failed| faulty| weak| dud| broken)? one\b[^.?!;]{0,12}"
    r"\b(?:replaced|changed|swapped|renewed)\b",
    re.IGNORECASE,
)
SAME_AGE = regex(
    r"\b(?:need|needs|must|have to|has to|should|do|does|ought|better)\b[^.?!;]{0,40}"
    r"\b(?:(?:same|equal|one) age\b|equally old\b|as old as each)",
    re.IGNORECASE,
)
NEWER = regex(r"\b(?:one|other)\b[^.?!;]{0,30}\b(?:new|newer|replaced|swapped|changed|renewed)\b", re.IGNORECASE)

ONE_RENEWED = regex(  # "I replaced the other in the pair because it died", "one died and we changed it"
    r"\b(?:i|i['’]ve|we|we['’]ve|he|she|they|yard|just|already|have|had|got)\b[^.?!;,]{0,12}"
    r"\b(?:replaced|changed|swapped|renewed)\b[^.?!;]{0,12}\b(?:the other|(?:just |only )?one (?:of|in))\b"
    r"|\bone\b[^.?!;]{0,40}\b(?:died|failed|packed up|gave up|went)\b[^.?!;]{0,24}"
    r"\b(?:replaced|changed|swapped|renewed) (?:it|that one)\b",
    re.IGNORECASE,
)

ADDED = regex(  # "can I add a third one to my two", "put a fourth beside the three"
    r"\b(?:add|put|hang|connect|join|wire|fit)(?:ing)?\b (?:in )?(?:an?|one|another) "
    r"(?:second|third|fourth|extra|further|more|new|\d{2,3} ?ah)\b[^.?!;]{0,40}"
    r"\b(?:to|beside|with|alongside|next to) (?:my|our|the|those|these|his|her|\d|two|three)\b",
    re.IGNORECASE,
)


def one_added(text: str) -> bool:
    """Whether a battery more is put to those that they have, and it is not told to be as old.

    >>> one_added("can I add a third 90 Ah gel to my two"), one_added("add a third one of the same age to my two?")
    (True, False)
    """
    return ADDED.search(text) is not None and NO_NEWER.search(text) is None


def one_renewed(text: str) -> bool:
    """Whether one battery of several was changed for a new one.

    >>> one_renewed("I replaced the other in the pair because it died"), one_renewed("should I replace the other one?")
    (True, False)
    """
    return ONE_RENEWED.search(text) is not None


def uneven(text: str) -> bool:
    """Whether one of several batteries is dead or newer than the others."""
    return bool(DEAD.search(text) or NEWER.search(text))


def both_asked(source: Case | Message) -> bool:
    """Whether it is asked if one new battery will do: "must I buy two", "may I replace only the failed one"."""
    return source.says(BOTH_NEW) or bool(ONLY_ONE.search(source.text)) or its_mate.just_one(source.text)


def of_one_age(case: Case) -> str | None:
    """The rule where it is asked if batteries that are joined must be of one age; None where their ages are told."""
    if AGE in case.stated or not SAME_AGE.search(case.text):
        return None
    case.step(f"In series {say.quantity(float(MOST.value), 'year')} apart is the most", MOST.cite)
    case.step("Of unlike batteries the weaker one wears the other", "bank-practice")
    head = "Yes, of one age, kind and size: in series a year apart is the most, and in parallel the weaker one wears "
    return f"{head}the other."


def both_or_one(case: Case, how: str, reason: str) -> str | None:
    """The answer where an old battery and a new one are apart in age; None where that is not asked."""
    if not both_asked(case):
        return None
    if how == "parallel":
        return f"Better both: {reason} work in parallel, but the weaker one wears the other."
    age = case.said("battery.age")
    if DEAD.search(case.text) and age is not None:
        years = say.quantity(float(age), "years")
        opening = "No" if ONLY_ONE.search(case.text) or its_mate.just_one(case.text) else "Yes"
        return f"{opening}, both: in series a new battery does not suit one of {years}, which is emptied too far."
    return (
        "One new one may do, in place of the old one: in series both must be within a year of age, so the newer one "
        "must be that young and test well."
    )


def one_will_do(case: Case) -> str | None:
    """The answer where one is dead and the other young enough for a new one beside it; else None."""
    age = case.said("battery.age")
    if not both_asked(case) or not DEAD.search(case.text) or age is None or joining.pair(case, "battery.age"):
        return None
    if float(age) > float(MOST.value) * (1 + 1e-9):
        return None
    case.step("In series a year apart is the most", MOST.cite)
    old = say.quantity(float(age), "years") if float(age) >= 1 else say.quantity(float(age) * 12, "months", 0)
    return f"One will do, of the same kind and size: the other one is {old} old, if it tests well."


def layout_meant(case: Case) -> str | None:
    """How they are joined; one put beside another like it, or all bought new, for a load of one battery's volts: in
    parallel."""
    meant = planned(case) or all_new(case.text)
    return joining.layout(case) or ("parallel" if meant and not of_more_volts(case) else None)
