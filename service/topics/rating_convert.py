"""One rating or unit put into another: RC to Ah, CA to CCA, W to A, AWG to mm2, F to C."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise

from grammar.text.patterns import regex
from service import say
from service.calculators import convert
from service.case import Case, Known
from service.judgements.conversions import CONVERSIONS, RATIO, Conversion
from service.reply import Answer, Figure, Option
from service.topic import Topic

ALIKE = 0.05  # of a rating: no nearer is meant
NAMES = (  # of units as they stand in a list of wants, by the detail that asks for each
    ("to_ah", r"ah|amp[- ]?hours?"),
    ("to_cca", r"cca|cold cranking amps"),
    ("to_ca", r"mca|ca"),
    ("to_rc", r"rc|reserve minutes"),
    ("to_wh", r"k?wh|watt[- ]?hours?"),
    ("to_mm2", r"mm2|mm²|sq(?:uare)? mm"),
    ("to_awg", r"awg"),
    ("to_watts", r"watts"),
    ("to_amps", r"amps"),
    ("to_metres", r"met(?:re|er)s"),
    ("to_feet", r"feet"),
)
ANY = "|".join(rf"(?P<{name}>{words})" for name, words in NAMES)
NAMED = regex(rf"(?<![\d\w.])(?<!\d )(?:{ANY})(?![\w.]*\d| \d)(?!\w)", re.IGNORECASE)  # "900 CCA", "RC 160" are told
AMP_HOURS = regex(
    r"\b(?:how many|work out|calculate|what|get|into|in|tell)\b[^.?!;,]{0,30}\b(?:ah|amp[- ]?hours?)\b", re.IGNORECASE
)
AS_CAPACITY = regex(  # "1000 MCA = 100 Ah"
    r"\d ?(?:mca|cca|ca|cranking amps?)\b(?: \w+){0,2}? ?(?:=|equals?|is|are|means?|makes?|gives?|the same as|same as)"
    r" ?(?:about |the same as |roughly )?\d+ ?(?:ah\b|amp[- ]?hours?)",
    re.IGNORECASE,
)
DENIED = regex(
    r"\b(?:told|said|say)(?: to)?(?: him| her| them)? (?:no|not|it isn['’]?t|it is not|otherwise)\b", re.IGNORECASE
)
FOR_A_MOTOR = regex(  # "what does this tell me for a thruster"
    r"\b(?:what|anything|much|any use|useful|matter\w*|relevant|help\w*)\b[^.?!;]{0,40}\b(?:thruster|windlass)\b",
    re.IGNORECASE,
)
BETWEEN = regex(r"\s*(?:,|&|\+|/|\band\b|\bplus\b)(?:\s*(?:and|the|in|to|into))*\s*", re.IGNORECASE)

WORKED = {  # what an earlier answer of the conversation may have worked out, the fact that it is one of
    "battery.cca": ("bank-size.required_cca", "run-check.required_cca", "rating-convert.cca"),
    "battery.ca": ("rating-convert.ca",),
    "battery.capacity": ("rating-convert.capacity",),
    "battery.reserve": ("rating-convert.reserve",),
    "battery.energy": ("rating-convert.energy",),
}

TOPIC = Topic(
    "rating-convert",
    "One rating in another",
    likely={"battery.reserve": (("90 min", 90.0), ("120 min", 120.0), ("180 min", 180.0))},
    unsure={
        "battery.cca": "We can't work it out: only CA (cranking amps at 0 °C) can be turned into CCA, not amp-hours.",
        "bank.voltage": "We can't say yet: watts are amps times volts, so the volts decide.",
    },
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Every conversion that the stated ratings and the words ask for."""
    if "battery.reserve" not in case.stated and capacity_of_cranking(case):
        return of_unlike_ratings(case)
    if case.says("detail:en_rating") and "battery.cca" in case.stated:
        return of_another_test(case)
    case = with_the_last(case)
    told = [item for item in CONVERSIONS if item.fact in case.stated]
    fresh = ("message", "derived")  # "and 50 F?" is the newest alone
    told = [item for item in told if case.origin(item.fact) in fresh] or told
    wanted = [item for item in told if asked(case, item)]
    chosen = wanted or [item for item in told if item.usual]
    if not chosen:
        rest = [item for item in told if not item.targets[0].endswith("_rc")][:1]
        chosen = [] if named(case) else rest
    if not chosen:
        return lacking(case)
    made = [item.make(case) for item in chosen]
    if len(made) == 1 and chosen[0].fact == "battery.reserve" and FOR_A_MOTOR.search(case.text):
        minutes = say.quantity(float(case["battery.reserve"]), "min")
        holds = say.quantity(float(made[0][0].value), "Ah", 0)
        means = f"{minutes} of reserve, a slow test at 25 A, means about {holds}"
        head = f"Little: {means}; the CCA tells if a thruster runs."
        return TOPIC.says("information", head, made[0][0])
    head = made[0][1] if len(made) == 1 else "; ".join(short(text) for _, text in made)
    if len(made) == 1 and case.stated[chosen[0].fact].origin == "derived" and chosen[0].fact in case.second:
        head = f"{head}; {short(chosen[0].make(case.others())[1])}"
    return TOPIC.says(
        "information",
        f"{compared(case)}{head if compared(case) else say.capital(head)}.",
        *(figure for figure, _ in made),
        compare=tuple(both(case, chosen)),
    )


def with_the_last(case: Case) -> Case:
    """The same case, in place, with the figure that the desk worked out last where the words ask for that: "how many
    MCA is that?". What this message tells goes before it; a rating told earlier stands beside it as the second."""
    for item in CONVERSIONS:
        told = case.stated.get(item.fact)
        names = (name for name in WORKED.get(item.fact, ()) if name in case.worked)
        if not asked(case, item) or (name := next(names, None)) is None or (told and told.origin == "message"):
            continue
        value = float(case.worked[name])
        value = float(math.ceil(value - 1e-6)) if name.endswith("required_cca") else value  # what is needed rounds up
        if told and told.value != value:
            case.second = {**case.second, item.fact: replace(told, of=2)}
        case.stated = {**case.stated, item.fact: Known(item.fact, value, "derived", say.symbol(item.fact))}
    return case


def capacity_of_cranking(case: Case) -> bool:
    """Whether amp-hours are wanted of cranking amps, or somebody puts the two as one."""
    if not {"battery.cca", "battery.ca"} & set(case.stated):
        return False
    wanted = "battery.capacity" not in case.stated and (case.says("detail:to_ah") or AMP_HOURS.search(case.text))
    return bool(wanted) or AS_CAPACITY.search(case.text) is not None


def of_unlike_ratings(case: Case) -> Answer:
    """Cranking amps and amp-hours: neither follows from the other."""
    fact = next(item for item in ("battery.cca", "battery.ca") if item in case.stated)
    for used in (fact, "battery.capacity"):
        case.known(used)
    case.step("Cranking amps are a test of seconds in the cold, amp-hours one of 20 hours", "trade-terms", "sae-j537")
    start = "You are right" if DENIED.search(case.text) else "No"
    head = (
        f"{start}: cranking amps (power for seconds) and amp-hours (what it holds) are unlike ratings with no fixed "
        "ratio; look for Ah or RC on the label."
    )
    return TOPIC.says("information", head)


def of_another_test(case: Case) -> Answer:
    """A rating by EN, DIN or JIS: other tests than that of CCA, which give no fixed ratio."""
    amps = float(case["battery.cca"])
    case.step("EN, DIN and JIS test in other ways than CCA, so no fixed ratio turns one into the other", "en-rating")
    head = f"Take it as {say.cca(amps)} at most: such a test is not that of CCA, and there is no fixed ratio."
    return TOPIC.says("information", head, Figure("cca", "cold cranking amps, at most", amps, "A"))


WARM, COLD = regex(r"\bm?ca\b", re.IGNORECASE), regex(r"\bcca\b", re.IGNORECASE)


def compared(case: Case) -> str:
    """The direct word where they ask whether so many CA are so many CCA; else nothing."""
    told = {"battery.ca", "battery.cca"} & set(case.stated)
    if not case.says("detail:same_as") or not told:
        return ""
    if len(told) == 1:  # "650 MCA, is that the same as CCA?"
        return "No: " if WARM.search(case.text) and COLD.search(case.text) else ""
    as_cca = convert.cca_from_ca(float(case["battery.ca"]), RATIO.value)
    return "These two are alike: " if abs(as_cca - float(case["battery.cca"])) < ALIKE * as_cca else "No: "


def short(text: str) -> str:
    """A conversion without its further remarks, for several in one sentence."""
    return re.sub(r" \([^)]*\)", "", text).partition("; ")[0].partition(", ")[0]


def asked(case: Case, item: Conversion) -> bool:
    """Whether the words ask for this conversion, alone or in a list of units."""
    return case.says(*(f"detail:{target}" for target in item.targets)) or not in_a_list(case.text).isdisjoint(
        item.targets
    )


@lru_cache(maxsize=4)  # asked for each conversion
def in_a_list(text: str) -> frozenset[str]:
    """The units that are only named, one after the other: "Ah and CCA please"."""
    found = list(NAMED.finditer(text))
    pairs = [(one, two) for one, two in pairwise(found) if BETWEEN.fullmatch(text, one.end(), two.start())]
    return frozenset(str(item.lastgroup) for pair in pairs for item in pair)


def named(case: Case) -> bool:
    """Whether the words name any target at all."""
    return any(asked(case, item) for item in CONVERSIONS)


def lacking(case: Case) -> Answer:
    """The fact that the wanted conversion starts from."""
    if case.says("detail:to_cca", "detail:to_ca") and "battery.capacity" in case.stated:
        return TOPIC.needs("battery.cca")
    sources = [item.fact for item in CONVERSIONS if asked(case, item)]
    return TOPIC.needs(sources[0] if sources else "battery.reserve")


def both(case: Case, chosen: list[Conversion]) -> Iterator[Option]:
    """The same conversions for a second value, side by side."""
    for item in chosen:
        varied = item.fact if item.fact in case.second else "bank.voltage"
        if varied in case.second and (varied == item.fact or item.fact.startswith("load.")):
            for one in (case, case.others()):
                yield Option(say.fact(varied, one[varied]), "information", (item.make(one)[0],))
