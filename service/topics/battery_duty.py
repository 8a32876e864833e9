"""Starting, deep-cycle or dual-purpose: what each is built for, and whether the one they have suits its work."""

from __future__ import annotations

import math
import re

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.judgements import cranking, supply
from service.reply import Answer, Figure, Option
from service.rules.load import MOTORS
from service.told import duties
from service.topic import Topic

TOPIC = Topic("battery-duty", "Starting, deep-cycle or dual-purpose", cautions=("lithium-cut-out", "start-battery"))
DUTIES = {"cranking": "starting", "dual-purpose": "dual-purpose", "deep-cycle": "deep-cycle"}
SLOW = ("electronics", "trolling motor")
SHARED = (
    "Only just: one dual-purpose battery can do both, but the thruster can leave the engine without the power to start."
)
SLOW_WORK = {
    "no": "No: slow loads wear a starting battery out, as only about {share} of it may be used; take a deep-cycle one.",
    "yes": "Yes: a {duty} battery suits slow loads, and about {share} of it may be used each time.",
}
UNRATED = (
    "No: a deep-cycle battery without a CCA on its label is made for slow loads, and {load} takes its amps in a jump."
)
MAY_BE_UNRATED = (
    "Only with enough CCA on its label: a deep-cycle battery without one is made for slow loads, and {load} takes its "
    "amps in a jump."
)
MUST_BE = (
    "It need not be a starter: any lead battery whose label gives enough CCA will do; a deep-cycle one "
    "without a CCA is made for slow loads."
)
ALONE = {
    "cranking": "A starting battery suits a thruster: both want a large current for seconds, and the CCA decides.",
    "deep-cycle": "A deep-cycle battery gives small currents for hours; for a thruster look for a CCA on its label.",
    "dual-purpose": "A dual-purpose battery is a fair compromise: it has a CCA for the thruster and stands deep use.",
}
CCA = "CCA (cold cranking amps: starting power at -18 °C)"
THE_SAME = {  # "is a thruster battery the same as a car battery"
    "cranking": f"{{theirs}} gives much current for seconds, as a thruster wants; give the thruster its own, by {CCA}.",
    "dual-purpose": f"{{theirs}} suits a thruster as well; give the thruster its own, by {CCA}.",
    "deep-cycle": f"{{theirs}} gives small currents for hours, a thruster takes much for seconds; look for {CCA}.",
}
IN_KIND = {False: "Yes in kind", True: "No, not in kind"}  # by whether they ask if it differs
NOT_ALIKE = {False: "No", True: "Yes"}
MAY_BE = {  # "can I use a car battery"
    "cranking": "Yes, if its CCA is high enough: {theirs} gives a large current for seconds, as a thruster wants.",
    "dual-purpose": "Yes, if its CCA is high enough: {theirs} serves the thruster and stands deep use.",
    "deep-cycle": "Only with a CCA on its label: {theirs} gives small currents for hours, a thruster much at once.",
}
MAY = ("request:may_i", "request:enough", "put:good", "put:leave")
USES = regex(r"\b(?:can|could|may|might)\b[^.?!;]{0,20}\buse\b", re.IGNORECASE)  # of any such battery
SIMPLY = regex(r"\b(?:just|simply|only|basically|really) an? \w+(?: \w+)? batter(?:y|ies)\b", re.IGNORECASE)
DIFFERS = regex(r"\b(?:different|differs?)\b(?! between)", re.IGNORECASE)
WEIGHED = (
    "Starting or dual-purpose for a thruster: it takes a large current for seconds, so the CCA decides; deep-cycle "
    "gives small currents for hours."
)
WORN = (
    "Not by short bursts, which take little charge: emptied deep, a starting battery wears sooner, as about {start} of "
    "it may be used, of a deep-cycle one {deep}."
)
WEIGHED_SLOW = "Deep-cycle for lights and a fridge: {deep} may be used each time, of a starting battery about {start}."

JUMP = {  # of two builds the one for large currents, and why
    ("cranking", "dual-purpose"): "for {load} alone it gives the most current for its size; dual-purpose if lights "
    "and pumps hang on it too",
    ("cranking", "deep-cycle"): "{load} takes a large current for seconds; deep-cycle gives small currents for hours",
    ("dual-purpose", "deep-cycle"): "it shows a CCA for {load} and stands deep use; deep-cycle gives small currents "
    "for hours",
}
BUILT = {  # what each is for, where two of them are set side by side
    "cranking": "a starting battery gives much current for seconds",
    "dual-purpose": "dual-purpose stands between: a CCA for a thruster's jump, and deep use as well",
    "deep-cycle": "deep-cycle gives small currents for hours, mostly with no CCA",
}
APART = regex(
    r"\bdiffer(?:s|ent|ence)?\b|\b(?:versus|vs)\b|\bcompare\w*\b|\bwhat(?:['’]?s| is| sets)\b[^.?!;]{0,20}\bapart\b",
    re.IGNORECASE,
)
START_AND_DEEP = regex(
    r"\b(?:start\w*|crank\w*)(?: batter(?:y|ies))? (?:and|vs|versus|from|to) (?:an? |the )?(?:deep|leisure|cycl)"
    r"|\b(?:deep[- ]?cycle|leisure)(?: batter(?:y|ies))? (?:and|vs|versus|from|to) (?:an? |the )?(?:start|crank)",
    re.IGNORECASE,
)
LONG = {  # what speaks against the other one, where little is taken for long
    "cranking": "{share} may be used each time, of a starting battery about {less}",
    "dual-purpose": "it is built for small currents for hours; dual-purpose is for a motor beside them",
}


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The verdict on the battery named for the work named, or the three side by side."""
    if (pair := duties.put(case.text)) and not supply.is_the_engines(case):
        return one_of_two(case, pair)
    if duties.wears(case.text) and not slow(case):
        options = tuple(Option(DUTIES[kind], "information", figures(case, kind)) for kind in ("cranking", "deep-cycle"))
        told = WORN.format(start=used("cranking"), deep=used("deep-cycle"))
        return TOPIC.says("information", told, compare=options)
    if (apart := told_apart(case)) and not supply.is_the_engines(case):
        options = tuple(Option(word, "information", figures(case, kind)) for kind, word in DUTIES.items())
        return TOPIC.says("information", apart, compare=options)
    several = "battery.duty" in case.second and not duties.MUST_BE.search(case.text)
    duty = None if several or case.says("request:versus") else case.said("battery.duty")
    verdict, head = judged(case, str(duty)) if duty else weighed(case)
    rated = duty == "deep-cycle" and verdict == "no"
    options = tuple(Option(word, "information", figures(case, kind)) for kind, word in DUTIES.items())
    return TOPIC.says(verdict, head, compare=options, asks=(TOPIC.ask("battery.cca"),) if rated else ())


def one_of_two(case: Case, pair: tuple[str, str]) -> Answer:
    """The one of two builds that suits the work, where those are the choice."""
    long = slow(case) and not jumps(case)
    best = duties.preferred(pair, long)
    other = pair[1 - pair.index(best)]
    why = LONG[other] if long else JUMP[best, other].format(load="the engine" if for_engine(case) else "the thruster")
    if not long and "load.current" in case:
        need = math.ceil(cranking.required_cca(case, float(case["load.peak"])) - 1e-6)
        why += f"; {supply.load_name(case)} needs {say.cca(need)} on its label"
    options = tuple(Option(DUTIES[duty], "information", figures(case, duty)) for duty in pair)
    head = f"{say.capital(DUTIES[best])}: {why}."
    return TOPIC.says("information", head.format(share=used(best), less=used(other)), compare=options)


def for_engine(case: Case) -> bool:
    """Whether it is the engine that is started."""
    thruster = case.says("thing:thruster", "detail:thruster_bank") or case.said("load.kind") == "thruster"
    return case.says("detail:start_bank") and not thruster and not case.get("load.model")


def slow(case: Case) -> bool:
    """Whether the load takes little for long."""
    return str(case.said("load.kind") or "") in SLOW or case.says("detail:slow_load")


def jumps(case: Case) -> bool:
    """Whether the load takes much at once."""
    kind = str(case.said("load.kind") or "")
    motor = kind in MOTORS and kind not in SLOW
    return motor or case.says("detail:as_starter") or bool(case.get("load.model"))


def judged(case: Case, duty: str) -> tuple[str, str]:
    """The battery they have against its work."""
    if supply.is_the_engines(case):
        return "marginal", SHARED
    if slow(case) and not jumps(case):
        verdict = "no" if duty == "cranking" else "yes"
        return verdict, SLOW_WORK[verdict].format(duty=duty, share=used(duty))
    if duty == "deep-cycle" and "battery.cca" in case:
        return "information", f"Its {say.cca(float(case['battery.cca']))} decide, the word deep-cycle does not."
    if duty == "deep-cycle" and jumps(case) and duties.MUST_BE.search(case.text):
        return "information", MUST_BE  # one kind against another
    if duty == "deep-cycle" and jumps(case):
        may = USES.search(case.text)
        head = (MAY_BE_UNRATED if may else UNRATED).format(load=supply.load_name(case))
        return "no", head
    return "information", asked_of_it(case, duty) or ALONE[duty]


def asked_of_it(case: Case, duty: str) -> str:
    """Yes or no and their own word for it, where they ask whether it is the same or may be used; else ""."""
    differs = bool(DIFFERS.search(case.text))
    if differs or case.says("detail:same_as") or SIMPLY.search(case.text):
        start = (NOT_ALIKE if duty == "deep-cycle" else IN_KIND)[differs]
        return f"{start}: {THE_SAME[duty].format(theirs=theirs(case, duty))}"
    return MAY_BE[duty].format(theirs=theirs(case, duty)) if case.says(*MAY) else ""


def theirs(case: Case, duty: str) -> str:
    """The battery by their own word: "a car battery"."""
    typed = case.stated["battery.duty"].text.lower() if "battery.duty" in case.stated else ""
    word = typed.replace("batteries", "battery")
    word = word if word.endswith(" battery") else f"{DUTIES[duty]} battery"
    return f"{'an' if word[0] in 'aeiou' else 'a'} {word}"


def weighed(case: Case) -> tuple[str, str]:
    """The three, by what they are to do."""
    if supply.is_the_engines(case):
        return "marginal", SHARED
    if slow(case) and not jumps(case):
        return "information", WEIGHED_SLOW.format(deep=used("deep-cycle"), start=used("cranking"))
    return "information", WEIGHED.replace("a thruster", "an engine") if for_engine(case) else WEIGHED


def told_apart(case: Case) -> str:
    """The difference between two of the builds, where it is asked; "" where it is not."""
    if not APART.search(case.text):
        return ""
    both = [str(item.value) for item in (case.stated.get("battery.duty"), case.second.get("battery.duty")) if item]
    if START_AND_DEEP.search(case.text):  # which is the name of a dual-purpose battery as well
        both = ["cranking", "deep-cycle"]
    both = [duty for duty in BUILT if duty in both]
    return "; ".join([say.capital(BUILT[both[0]]), BUILT[both[1]]]) + "." if len(both) == 2 else ""


def used(duty: str) -> str:
    """How much of such a battery is used each time, in words."""
    return say.quantity(reference.row("duties", duty=duty)["share"].value, "%")


def figures(case: Case, duty: str) -> tuple[Figure, ...]:
    """How much of it may be used each time."""
    share = reference.row("duties", duty=duty)["share"]
    case.because(
        "Starting batteries have many thin plates for large currents, deep-cycle ones few thick plates for deep use",
        "duty-by-build",
    )
    case.source(share.cite)
    return (Figure("usable_share", "usable charge each time", float(share.value), "%"),)
