"""Series or parallel: what it gives, and whether these batteries may be joined."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.text.patterns import regex
from grammar.told.batteries.tapped import SERIES, asks_to_tap
from service import likely, say
from service.case import Case, Value
from service.judgements import joining, large_or_several, new_and_old, supply
from service.judgements.joining import WHICH_WAY, figures, layout, pair
from service.judgements.may_be_joined import charged_first, kinds_apart, not_allowed, strength_apart
from service.judgements.tap import both_wrong, tapped
from service.judgements.unlike import LIMITS, age_apart
from service.reply import Answer, Option
from service.sentences.bank import SAID, does_not_add_up, outcome
from service.sentences.to_more_volts import MOST_JOINED, of_two_volts
from service.sentences.wired_anew import new_together, volts_apart
from service.told import equal_cables, its_mate
from service.topic import Lever, Topic

MAY = ("request:may_i", "detail:join", "detail:wise")
ASKED_IF = regex(  # "..., fine?", "are two of them in series ok", "can two of them go in series?"
    r"\b(?:fine|ok|okay|alright|all right|possible|sensible)\W{0,2}\?|\byes or no\b|\by/n\b"
    r"|\b(?:is|are)\b[^.?!]{0,100}\b(?:fine|ok|okay|alright|all right|possible|sensible|allowed|too many)\W*$"
    r"|^(?![^.?!]{0,100}\b(?:how|what|which|or)\b)[^.?!]{0,80}"  # "six gels in parallel for a windlass?"
    r"\bfor (?:an?|the|my|our)\b[^.?!]{0,40}\?\W*$"
    r"|\b(?:can|could|may)\b[^.?!]{0,200}\b(?:go|be|sit|add|join|put|connect|hook|wire|pair|combine)\w*\b[^.?!]{0,200}(?:\?|$)",
    re.IGNORECASE,
)
JOINS = regex(  # "can I link two batteries"; nothing is told of them
    r"\b(?:can|could|may|ok to|okay to|all right to|alright to)\b[^.?!]{0,40}"
    r"\b(?:join|connect|link|wire|hook|put|combine|couple)(?:ed)?\b[^.?!]{0,40}\b(?:batter|together|up)",
    re.IGNORECASE,
)
NAMES_A_WAY = regex(r"\b(?:series|parallel|how|what|which|longer)\b", re.IGNORECASE)
LONGER = regex(r"\b(?:last|run|go|hold|keep)\w*\b[^.?!]{0,20}\blonger\b|\blonge(?:r|st)[- ]lasting\b", re.IGNORECASE)


ONE = 12.0  # volts of one battery, as a rule
RESULTS = regex(r"\bresult\w*|\bwhat (?:volts?|voltage|capacity|ah|amp)\b", re.IGNORECASE)
ONE_OF_THEM = regex(r"\bone of (?:the|those|these|them|my|our)\b|\bthe (?:other|second)\b", re.IGNORECASE)


def the_other(fact: str) -> Lever:
    """Two alike: the first battery with the second one's value."""

    def values(case: Case) -> Iterator[Value]:
        if fact in case.second:
            yield case.second[fact].value

    return Lever(fact, values, "two batteries alike: {value}")


def fewer(case: Case) -> Iterator[Value]:
    """Fewer batteries."""
    yield from (float(count) for count in range(int(case.get("battery.count", 1)) - 1, 1, -1))


TOPIC = Topic(
    "bank-wiring",
    "Series and parallel",
    cautions=("lithium-joined", "no-tap", "isolated-outputs", "start-battery", "short-circuit", "fuse-at-battery"),
    levers=(
        the_other("battery.chemistry"),
        the_other("battery.nominal"),
        the_other("battery.capacity"),
        the_other("battery.age"),
        Lever("battery.count", fewer, "{value} batteries"),
    ),
    likely={
        "battery.max_in_series": (("1: not in series", 1.0), ("2", 2.0), ("4", 4.0)),
        "battery.max_in_parallel": (("1: not in parallel", 1.0), ("2", 2.0), ("4", 4.0)),
        "battery.chemistry": likely.KIND,
        "bank.layout": (("plus to minus: in series", "series"), ("plus to plus: in parallel", "parallel")),
    },
    unsure={
        "battery.max_in_series": "We can't say yet: only the maker of a lithium battery can allow it in series.",
        "battery.max_in_parallel": "We can't say yet: only the maker of a lithium battery can allow it in parallel.",
    },
)


HOW_MUCH = regex(r"\b(?:total|how (?:many|much)|what)\b", re.IGNORECASE)
HABITS = {  # cue: verdict, headline, why, source
    "one_or_two": (
        "information",
        "Both hold the same: one large battery has fewer joints to fail; two small ones are easier to carry, and one "
        "is left if the other dies.",
        "Two halves in parallel hold the same; they must be alike, with equal cables",
        LIMITS["sums"].cite,
    ),
    "diagonal": (
        "information",
        "Take plus from the battery at one end and minus from the one at the other end, with equal links between them.",
        "So the current finds an equally long way through each battery",
        LIMITS["before_joining"].cite,
    ),
    "start_and_house": (
        "marginal",
        "Only while charging or docking, by a switch: joined all the time, a flat one costs the engine's start.",
        "A starting and a deep-cycle battery are built for unlike work",
        LIMITS["before_joining"].cite,
    ),
}


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The stricter rules first, then the sum."""
    case = joining.more_than_one(case)
    if its_mate.asked(case.text) and "battery.age" not in case.stated:  # the years apart decide where they are told
        return of_the_pair(case)
    if (
        not {"replacement"} & {*case.beside}
        and not HOW_MUCH.search(case.text)
        and (rule := new_and_old.of_one_age(case))
    ):
        return TOPIC.says("information", rule)
    if first := before_all(case):
        return first
    unlike = volts_apart(TOPIC, case) or kinds_apart(TOPIC, case) or strength_apart(TOPIC, case)
    if unlike:
        return unlike
    if weak := new_and_old.no_cure(case):
        return TOPIC.says("marginal", weak)
    if enough := new_and_old.one_will_do(case):
        return TOPIC.says("yes", enough)
    told = next((cue for cue in HABITS if case.says(f"detail:{cue}")), None)
    if told:
        return habit(case, told)
    if case.says("detail:double_time") and case.said("bank.layout") != "series-parallel":
        return twice_as_long(case)
    return new_together(TOPIC, case) or joined(case)


def of_the_pair(case: Case) -> Answer:
    """Whether the other battery goes with the one that failed, or the others."""
    case.because("Of unlike batteries the weaker one wears the other", "bank-practice")
    pair = float(case.said("battery.count") or 2) == 2
    no = "No, " if its_mate.just_one(case.text) else ""
    if case.get("bank.layout") == "parallel":
        rest = "the other one only if it is" if pair else "the others only if they are"
        tested = "passes" if pair else "pass"
        head = (
            f"{no}better {'both' if pair else 'all'}: keep {rest} of the same kind and size, and {tested} a load test."
        )
        return TOPIC.says("information", say.capital(head))
    rest = "the other one passes a load test and is" if pair else "the others pass a load test and are"
    head = (
        f"{no}change them as a {'pair' if pair else 'set'}, unless {rest} of the same kind and size, and at most a "
        "year older than the new one."
    )
    return TOPIC.says("information", say.capital(head))


def before_all(case: Case) -> Answer | None:
    """What is answered whatever the batteries are: a tap, a maker's word, a choice, volts that cannot be made."""
    if equal_cables.asked(case.text) and "cable-size" not in case.beside and not case.says("detail:join"):
        case.step(equal_cables.WHY, LIMITS["before_joining"].cite)
        return TOPIC.says("information", equal_cables.ALL_ALIKE)
    if found := of_two_volts(TOPIC, case):
        return found
    stacked = case.said("bank.layout") in SERIES or float(case.said("bank.voltage") or 0.0) > 12.0
    if case.says("detail:tap") or (stacked and asks_to_tap(case.text)):
        # the volts that are told are those of the tap
        unlike = kinds_apart(TOPIC, case) or strength_apart(TOPIC, case)
        return both_wrong(TOPIC, case, unlike) if unlike and unlike.verdict == "no" else tap_and_sum(case)
    kinds = (case.get("battery.chemistry"), *pair(case, "battery.chemistry"))
    if "lithium-other" in kinds:
        head = "One of our technicians will look at this: the maker of this lithium battery decides what may be joined."
        return TOPIC.says("needs-facts", head, asks=(TOPIC.ask("battery.max_in_series"),), route="technician")
    if "lfp" in kinds and case.says("detail:label_forbids") and case.get("bank.layout") != "parallel":
        case.step("The battery's maker decides how many may be joined; the label speaks for the maker", "bank-practice")
        return TOPIC.says("no", "No: where the label forbids it, these lithium batteries must not be joined in series.")
    if joining.alternatives(case):
        return of_unlike_years(case, large_or_several.several(case)) or one_or_several(case)
    if case.says("detail:one_or_two"):
        return of_unlike_years(case, case) or habit(case, "one_or_two")
    return TOPIC.says("no", cannot) if (cannot := does_not_add_up(case)) else None


def tap_and_sum(case: Case) -> Answer:
    """12 V from one battery of a bank, with what the bank makes where that is asked too."""
    found = tapped(TOPIC, case)
    if not found.figures or not (case.says("request:what_get") or RESULTS.search(case.text)):
        return found
    told = say.capital(outcome(case.supposing({}, ["bank.voltage"]), str(case.said("bank.layout"))))
    return replace(found, headline=f"{told}; never take 12 V from one of them: fit a 24 to 12 V converter.")


def habit(case: Case, cue: str) -> Answer:
    """What is told in words alone."""
    verdict, head, why, cite = HABITS[cue]
    case.step(why, cite)
    return TOPIC.says(verdict, head)


def one_or_several(case: Case) -> Answer:
    """One large battery or several small ones, each with what it holds."""
    head, options = large_or_several.held(case)
    case.step("Several in parallel must be alike, with equal cables", LIMITS["sums"].cite)
    return TOPIC.says("information", head, compare=options)


def of_unlike_years(case: Case, several: Case) -> Answer | None:
    """Why the several that are weighed against one large are no equal choice: "one of the two is 4 years older"."""
    if not ONE_OF_THEM.search(case.text) or not any(age_apart(several)):
        return None
    found = strength_apart(TOPIC, several)
    if several is not case:
        case.follow(several)
    return found


def joined(case: Case) -> Answer:
    """The sum, or whether they may be joined."""
    how = None if "bank.layout" in case.second else layout(case)
    may = (
        case.says(*MAY)
        or bool(ASKED_IF.search(case.text))
        or any(f"battery.max_in_{way}" in case.stated for way in SAID)
    )
    family = case.get("battery.family")
    if (first := charged_first(TOPIC, case)) and may:
        return first
    if how and (forbidden := not_allowed(TOPIC, case, how, may, family)):
        return forbidden
    if how is None:
        return either_way(case, may, family)
    shown, told = figures(case, how), outcome(case, how)
    if WHICH_WAY.search(case.text) and how in SAID:  # neither yes nor no answers a choice
        if case.said("battery.count") is None and (chosen := by_the_volts(case)):
            return TOPIC.says("information", chosen, *shown)
        told = told.replace(f" {SAID[how]}", "", 1)
        alike = "" if family == "lithium" else ", as long as they are of one kind, size and age"
        verdict = "yes" if may and family else "information"
        return TOPIC.says(verdict, f"{say.capital(SAID[how])}: {told}{alike}.", *shown)
    sum_only = case.says("request:what_get") and not case.says("detail:join", "detail:wise")
    if not may or (sum_only and not ASKED_IF.search(case.text)):
        return TOPIC.says("information", f"{say.capital(told)}.", *shown)
    sized = any(f"battery.{rating}" in case.stated for rating in ("capacity", "cca", "group", "energy"))
    unsure = family is None and not case.says("detail:join", "detail:wise")
    if unsure or (family == "lead" and not sized):  # nothing tells that they are alike
        head = f"{say.capital(told)}, if they are of one kind, size and age."
        return TOPIC.says("information", head, *shown)
    if family is None:
        head = f"We can't say yet: {told}, but the kind of battery decides if they may be joined."
        return TOPIC.needs("battery.chemistry", headline=head, figures=shown)
    alike = "" if family == "lithium" else ", as long as they are of one kind, size and age"
    return TOPIC.says("yes", f"Yes: {told}{alike}.", *shown)


def twice_as_long(case: Case) -> Answer:
    """Series doubles the volts, not the running time."""
    count = float(case.get("battery.count", 2.0))
    one = case.supposing({"bank.layout": "series", "battery.count": max(2.0, count)}, ["bank.voltage"])
    case.step("In series the volts add, in parallel the amp-hours and cranking amps", LIMITS["sums"].cite)
    volts, capacity = float(one["bank.voltage"]), one.get("bank.capacity")
    held = f"still {say.amp_hours(float(capacity))}" if capacity else "no more amp-hours"
    load = case.said("bank.voltage") or case.get("load.voltage")
    use = f", which a {say.quantity(load, 'V')} thruster cannot use" if load and load < volts else ""
    made = f"{say.quantity(volts, 'V')} and {held}{use}"
    head = f"Not quite: in series they give {made}; you are right that two hold twice the energy."
    found = figures(one, "series")
    if any(figure.name == "bank_energy" for figure in found):
        case.source("energy-volts")
    return TOPIC.says("information", head, *found)


def by_the_volts(case: Case) -> str:
    """Which way to join for a motor whose volts alone are told: "series or parallel for my 12 V thruster"; else ""."""
    volts = case.get("load.voltage") or case.said("bank.voltage")
    if not volts or not WHICH_WAY.search(case.text):
        return ""
    wanted, one = say.quantity(float(volts), "V"), say.quantity(ONE, "V")
    if float(volts) == ONE:
        return f"In parallel (plus to plus), if each battery is {one}: it stays {wanted}; in series the volts add."
    row = supply.counted(float(volts) / ONE)
    return f"In series (plus to minus), {row} of {one} for {wanted}: in parallel the volts stay those of one."


def either_way(case: Case, may: bool, family: str | None) -> Answer:
    """Not said how they are joined: both ways side by side."""
    case.step("In series the volts add, in parallel the amp-hours and cranking amps", LIMITS["sums"].cite)
    unknown = [fact for fact in MOST_JOINED if fact not in case.stated]
    if may and family == "lithium" and unknown and not case.says("request:what_get"):
        return TOPIC.needs(*unknown)
    if may and case.says("detail:join") and family is None and not case.says("request:what_get"):
        head = "We can't say yet: only batteries of one kind, size and age may be joined, so tell us the kinds."
        return TOPIC.needs("battery.chemistry", headline=head)
    if may and family is None and JOINS.search(case.text) and not NAMES_A_WAY.search(case.text):
        case.step("Of unlike batteries the weaker one wears the other", LIMITS["kind"].cite)
        head = "Yes, if they are of one kind, volts, size and age: in series the volts add, in parallel the amp-hours."
        return TOPIC.needs("battery.chemistry", headline=head)
    options = tuple(Option(SAID[how], "information", figures(case, how)) for how in ("series", "parallel"))
    head = "In series (plus to minus) the volts add, in parallel (plus to plus) the amp-hours; the energy is the same."
    if chosen := by_the_volts(case):
        head = chosen
    if LONGER.search(case.text):
        head = f"Neither lasts longer, as both hold the same energy: {head[0].lower()}{head[1:].partition(';')[0]}."
    held = [figure for figure in options[1].figures if figure.name == "bank_energy" and case.get("battery.count")]
    return TOPIC.says("information", head, *held, compare=options)
