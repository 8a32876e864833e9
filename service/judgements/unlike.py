"""Why two batteries are unlike: by capacity, by the work they are made for, by age."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.text import numbers
from grammar.text.patterns import regex
from service import reference, say
from service.calculators import bank
from service.case import Case
from service.judgements import new_and_old
from service.judgements.joining import pair

LIMITS = {str(row["name"].value): row["value"] for row in reference.rows("mixing")}
MADE = regex(r"(?<![\d.,])(?:19[89]|20[0-4])\d(?![\d.,]\d| ?(?:v|a|ah|cca|amps?|watts?|w|mm)\b)", re.IGNORECASE)
BETWEEN = regex(
    r"(?<!at least )(?<!at most )(?<!than )\b(?P<years>\d{1,2}|an?|one|two|three|four|five|six|seven) (?:years?|yrs?)"
    r" (?:(?:older|younger|newer)\b(?! than (?:\d|it|mine|my boat))|apart\b|between (?:them|the two|the batteries))"
    r"|\bage (?:gap|difference) (?:is |of |between them is )?(?P<gap>\d{1,2}|two|three|four|five) (?:years?|yrs?)\b",
    re.IGNORECASE,
)
BUYS = regex(r"\bbuy(?:ing)?\s+(?:a\s+)?new\b", re.IGNORECASE)  # in place of the old ones, not beside them

BESIDE = r"(?:and|with|beside|to) (?:an?|one|two|three|the|my|our)"
NO_BATTERY = r"(?! (?:\w+ )?(?:thruster|charger|cables?|motor|fuse|boat|engine|alternator|box|switch)\b)"
OLD_AND_NEW = regex(  # "one old and one new battery", "a new one in parallel with my old one"
    rf"\bold(?:er)?\b(?: [a-z\d]+){{0,3}} {BESIDE} (?:brand )?new\b{NO_BATTERY}"
    rf"|\bnew(?:er)?\b{NO_BATTERY}(?: (?!or\b)[a-z\d]+){{0,6}} {BESIDE} old(?:er)?\b",
    re.IGNORECASE,
)
IN_STOCK = regex(  # a new one that is on sale: "the shop has a 100 Ah one"
    r"\bin stock\b|\bon (?:sale|offer)\b"
    r"|\b(?:dealer|shop|chandlery?|chandler|store|supplier|seller|yard|salesman)\b(?: \w+){0,2} "
    r"(?:has|have|had|offers?|sells?|stocks?|keeps?)\b",
    re.IGNORECASE,
)
OF_THE_BOAT = regex(
    r"\b(?:built|launched|boat|yacht|hull|engine|moved|married|owned)\W+(?:\w+\W+){0,2}$", re.IGNORECASE
)
OLD_BESIDE_NEW = "an old and a new battery"


def in_words(reasons: list[str]) -> str:
    """Why they are unlike, in words: the first reason, with the ages where they are apart as well."""
    ages = ", one old and one new," if OLD_BESIDE_NEW in reasons[1:] else ""
    return f"{reasons[0]}{ages}"


def capacity_apart(case: Case) -> Iterator[str]:
    """The reason, where capacities are over 10 % apart."""
    both, most = pair(case, "battery.capacity"), LIMITS["capacity"]
    if both and bank.apart(float(both[0]), float(both[1])) > float(most.value) * (1 + 1e-9):
        apart = bank.apart(float(both[0]), float(both[1]))
        case.step(f"{say.number(apart)}{say.NB}% apart in capacity; 10{say.NB}% is the most in series", most.cite)
        yield f"batteries of {say.amp_hours(float(both[0]))} and {say.amp_hours(float(both[1]))}"
    elif not both and case.says("detail:mixed_size"):
        case.step(f"More than 10{say.NB}% apart in capacity is too much in series", most.cite)
        yield "batteries of unlike capacity"


def duty_apart(case: Case) -> Iterator[str]:
    """The reason, where one is made for starting and the other one for deep use."""
    both = pair(case, "battery.duty")
    if both and set(both) == {"cranking", "deep-cycle"}:
        case.step("They are made for unlike work: alike ones only, if it can be", LIMITS["kind"].cite)
        yield "a starting and a deep-cycle battery"


def age_apart(case: Case) -> Iterator[str]:
    """The reason, where ages are over 1 year apart."""
    both, most = pair(case, "battery.age"), LIMITS["age"]
    if new_and_old.all_new(case.text) and "battery.age" not in case.stated:
        return
    another_is_new = case.says("detail:new_one", "detail:just_bought") and not BUYS.search(case.text)
    another_is_new = another_is_new or (new_and_old.both_asked(case) and new_and_old.uneven(case.text))
    another_is_new = another_is_new or bool(IN_STOCK.search(case.text) and new_and_old.BESIDE.search(case.text))
    another_is_new = another_is_new or (new_and_old.planned(case) and new_and_old.unlike_in_age(case))
    another_is_new = another_is_new or new_and_old.one_renewed(case.text) or new_and_old.one_added(case.text)
    if not both and "battery.age" in case.stated and another_is_new:
        both = (case["battery.age"], 0.0)
    since = new_and_old.bought_since(case.text)
    if not both and "battery.age" in case.stated and since is not None:
        both = (case["battery.age"], since)
    mixed = case.says("detail:mixed_age") or OLD_AND_NEW.search(case.text)
    between = years_between(case.text)
    apart = abs(float(both[0]) - float(both[1])) if both else made_apart(case) or between or 0.0
    if apart > float(most.value) * (1 + 1e-9):
        old = f"A new one beside one of {say.quantity(apart, 'years')}"
        beside = old if both and both[1] == 0 else f"{say.quantity(apart, 'years')} apart"
        case.step(f"{beside}; 1 year is the most in series", most.cite)
        yield OLD_BESIDE_NEW
    elif not both and between is None and (mixed or (another_is_new and case.says("detail:of_a_year"))):
        case.step("More than 1 year apart is too much in series", most.cite)
        yield OLD_BESIDE_NEW


def years_between(text: str) -> float | None:
    """The years told to lie between batteries: "is the third ok if it's 2 years older", "3 years apart"; else None."""
    found = BETWEEN.search(text)
    if found is None:
        return None
    told = (found["years"] or found["gap"]).lower()
    return 1.0 if told in ("a", "an") else numbers.value(told)


def made_apart(case: Case) -> float:
    """The years between two batteries that are told by the years they were made: "one 2022, one 2025"."""
    found = (item for item in MADE.finditer(case.text) if not OF_THE_BOAT.search(case.text[: item.start()]))
    years = sorted({int(item[0]) for item in found})
    return float(years[-1] - years[0]) if len(years) == 2 else 0.0
