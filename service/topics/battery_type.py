"""Wet-cell, AGM, gel or lithium: the kinds side by side, and which suits what the customer cares about."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.kinds import CHARGED
from service.reply import Answer, Figure, Option
from service.sentences import to_lithium, wording
from service.told import kind_by_caps, kind_purpose, kind_required, rating_counts
from service.told.to_lithium import drops_in, what_changes
from service.topic import Topic

TOPIC = Topic("battery-type", "Which kind of battery", cautions=("lithium-cut-out", "start-battery"))

MOST = "for most boats"
FROST = (
    ("agm", "flooded", "gel", "lfp"),
    "a lead battery that is full stands frost, and lithium must not be charged at 0 °C or below",
)
# What people care about, by cue, the most particular first: the order of preference and the reason in words.
CARES: Mapping[str, tuple[tuple[str, ...], str]] = {
    "detail:sleep_beside": (
        ("lfp", "agm", "gel", "flooded"),
        "in use it gives off next to no gas; a wet-cell battery gasses at every charge, and all lead when overcharged",
    ),
    "detail:care_free": (
        ("agm", "gel", "lfp", "flooded"),
        "it needs no water and cannot spill; a wet-cell battery wants both looked after",
    ),
    "detail:hold_charge": (
        ("gel", "agm", "lfp", "flooded"),
        "left alone it loses about 3 % a month at 20 °C, a wet-cell battery about 5 %",
    ),
    "detail:frost": FROST,
    "detail:seldom": (
        ("agm", "flooded", "gel", "lfp"),
        "for a few uses a year a lead battery on its charger does; lithium pays where much is used and charged often",
    ),
    "detail:cold_place": FROST,
    "detail:long_life": (
        ("lfp", "gel", "agm", "flooded"),
        "it usually lasts longest when its charger suits it",
    ),
}
TO_SUIT = "its charger must suit it, and no charge in frost"
SLOW_USE = {
    "lfp": f"about 80 % of it may be used, of lead about half; {TO_SUIT}",
    "gel": "it stands being emptied slowly and deep, and needs no water",
    "agm": "it needs no water and cannot spill",
    "flooded": "it serves as long as somebody tops it up and lets in air",
}
# What it is sought for, by purpose: the words for it, and the kinds in the order of preference, each with its reason.
PURPOSES: Mapping[str, tuple[str, Mapping[str, str]]] = {
    "house": ("for a house bank", SLOW_USE),
    "deep": ("for deep use", SLOW_USE),
    "cold": ("for the cold", dict.fromkeys(*FROST)),
    "charge": (
        "for a quick charge",
        {
            "lfp": f"it takes most amps for its Ah; {TO_SUIT}",
            "agm": "it takes more amps for its Ah than a gel or a wet-cell battery",
            "flooded": "it takes more amps for its Ah than gel",
            "gel": "but it wants a slow charge",
        },
    ),
    "life": ("for a long life", dict.fromkeys(*CARES["detail:long_life"])),
    "care": ("for little care", dict.fromkeys(*CARES["detail:care_free"])),
}
# For a thruster, where nothing else is said, in the order of preference.
THRUSTER = {
    "agm": "it gives large currents easily, and the CCA on its label decides for a thruster",
    "flooded": "it shows a CCA and gives large currents, as long as somebody tops it up and lets in air",
    "gel": "it suits slow, deep use, so look for one that shows a CCA",
}

SUITS = {  # of one kind that is put up for a thruster
    "agm": "AGM suits a thruster: it gives large currents easily, and the CCA on its label decides.",
    "flooded": (
        "A wet-cell battery suits a thruster by the CCA on its label, as long as somebody tops it up and lets in air."
    ),
    "gel": (
        "Gel suits a thruster only if its label shows the CCA for it: gel is made for slow, deep use, and AGM gives "
        "large currents more easily."
    ),
}
USABLE = regex(
    r"\b(?:can|could|may|use|used|using|possible|suitable|suits?|any good|no good|not good|do for|works?|right for"
    r"|ok for)\b",
    re.IGNORECASE,
)
DIFFERENCE = regex(r"\bdiffer\w*\b", re.IGNORECASE)
LONGEST = 30  # words of a headline
SHORT = ("'s acid is", "'s is")  # of the second of two
HOLDS = {  # what each kind is, where two are told apart
    "flooded": "a wet-cell battery's acid is loose and wants water",
    "agm": "AGM's acid is in a glass mat",
    "gel": "gel's acid is in a jelly",
    "lfp": "lithium has no acid",
}
WEIGHED = regex(r"\b(?:which|what kind|best|better|or|versus|vs|than|instead|compare\w*|difference)\b", re.IGNORECASE)
CCA_DECIDES = (
    "For a thruster the CCA decides: it tells how hard a battery may be pulled at once, amp-hours only how long it "
    "lasts."
)

FROM_OUTSIDE = "kind-from-outside"
TELLING = (
    "Look at it: caps that unscrew mean wet-cell; AGM, gel or LiFePO4 stands on the label; 12.8 V or BMS means "
    "lithium; none of these, and heavy, means sealed lead."
)
TELLING_LEAD = (
    "It is a lead battery: caps that unscrew mean wet-cell; sealed, look for AGM, gel or VRLA on the case, the "
    "receipt or the maker's sheet."
)
TOLD_APART = (("wet-cell", "flooded"), ("AGM", "agm"), ("gel", "gel"), ("sealed, no more", "lead"), ("lithium", "lfp"))

# What speaks against a kind where another is preferred.
AGAINST = {
    "flooded": "A wet-cell battery wants water and air",
    "agm": "AGM cannot be topped up, and wears out before gel or lithium",
    "gel": "Gel suits slow, deep use and often shows no CCA",
    "lfp": "Lithium is light and lasts long, but its BMS (the safety switch inside) can stop the thruster unasked",
}


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The kinds named, or all four, side by side; the one that suits best in the headline."""
    if case.says("detail:find_kind") or kind_by_caps.asked(case.text):
        return found_out(case)
    named = kinds_named(case)
    if case.says("detail:carbon"):
        return carbon()
    if swaps(case) and (also := to_lithium.besides(case)):
        return TOPIC.says("information", also)
    if rating_counts.asked(case.text, case.stated) and not named:
        return by_its_cca(case)
    shown = named if len(named) > 1 else [*named, *(kind for kind in CHARGED if kind not in named)]
    must = len(named) == 1 and kind_required.asked(case.text)
    alone = "" if must else suits_one(case)
    best, why, use = (alone, "", "") if alone else preferred(case, shown)
    options = tuple(Option(name(kind), "information", figures(case, kind)) for kind in shown)
    if not alone and swaps(case):
        return TOPIC.says("information", to_lithium.headline(case), compare=options)
    for kind in [kind for kind in shown if kind != best]:
        case.because(AGAINST[kind], "kinds-in-use")
    head = SUITS[alone] if alone else f"{name(best)} {use}: {why}."
    if len(named) == 2 and not alone and DIFFERENCE.search(case.text):
        head = set_apart(case, named, head)
    if must:
        head = f"No{', but' if best == named[0] else ':'} {name(best)} suits most boats, because {why}."
    return TOPIC.says("information", head, compare=options)


def by_its_cca(case: Case) -> Answer:
    """Which of the ratings on a label counts for a thruster."""
    for fact in rating_counts.RATINGS & case.stated.keys():
        case.known(fact)
    case.because("Amp-hours and minutes of reserve tell how long a battery lasts", "deep-cycle-rating")
    if "battery.ca" in case.stated:
        case.because("Cranking amps at 0 °C are 1.25 times the CCA of the same battery", "ca-over-cca")
    return TOPIC.says("information", CCA_DECIDES)


def set_apart(case: Case, kinds: list[str], head: str) -> str:
    """The difference between two kinds before the one that is chosen, with as much of its reason as there is room."""
    first, second = (HOLDS[kind] for kind in sorted(kinds, key=CHARGED.index))
    told = f"{say.capital(first)}, {second.replace(*SHORT, 1).replace('has no acid', 'has none')}"
    case.source("kinds-in-use")
    head = head if head[1].isupper() else f"{head[0].lower()}{head[1:]}"
    short = re.split(r", (?:and|as) |;|\.$", head)[0]
    return next(
        (both for both in (f"{told}; {head}", f"{told}; {short}.") if len(both.split()) <= LONGEST), say.capital(head)
    )


def suits_one(case: Case) -> str:
    """The one kind of which it is asked if it may feed a thruster, "" where kinds are weighed or something else counts.

    "Is it not possible to use gel?" takes nothing back: the kind is looked for by its word.
    """
    named = [kind for kind in CHARGED if case.says(f"detail:kind_{kind}")]
    thruster = case.said("load.kind") == "thruster" or case.says("detail:thruster_bank")
    other = not thruster or case.says(*CARES, "put:to_lithium") or WEIGHED.search(case.text)
    return named[0] if len(named) == 1 and named[0] in SUITS and not other and USABLE.search(case.text) else ""


def found_out(case: Case) -> Answer:
    """How the kind of a battery is found out; the kind itself where it has been told."""
    if kind_by_caps.asked(case.text):
        case.step("Caps under a strip or a sticker count too: lift it", FROM_OUTSIDE)
        return TOPIC.says("information", kind_by_caps.WET)
    kind = case.said("battery.chemistry")
    if kind is not None and kind != "lead":
        head = f"It is {wording.a_kind(case, capital=False)} battery, by what you told us."
        return TOPIC.says("information", head)
    case.because("Caps under a strip or a sticker count too: lift it", FROM_OUTSIDE)
    case.step("VRLA on the case means sealed lead, AGM or gel; Ca/Ca means lead with calcium plates", FROM_OUTSIDE)
    case.step("AGM and gel look alike: only the print, the receipt or the maker's sheet tells them apart", FROM_OUTSIDE)
    case.step("Lithium weighs about half of a lead battery of its size", "lithium-weight")
    asks = (replace(TOPIC.ask("battery.chemistry", TOLD_APART), where=""),)
    head = TELLING if kind is None else TELLING_LEAD
    return TOPIC.says("information", head, asks=asks)


def swaps(case: Case) -> bool:
    """Whether lithium in the place of lead is asked for, and nothing that settles the kind is told."""
    barred = case.house.barred(case.said("load.model")) if case.house else ()
    asked = what_changes(case.text) or drops_in(case.text)
    return (asked or (case.says("put:to_lithium") and not case.says(*CARES))) and "lfp" not in barred


def kinds_named(case: Case) -> list[str]:
    """The kinds that the message names; "lead" stands for wet-cell and AGM."""
    found: list[str] = []
    for facts in (case.stated, case.second):
        if said := facts.get("battery.chemistry"):
            case.used[("battery.chemistry", said.of)] = said
            found += ("flooded", "agm") if said.value == "lead" else (str(said.value),)
    found += [kind for kind in CHARGED if case.says(f"detail:kind_{kind}")]  # a third one is no fact
    denied = case.denied.get("battery.chemistry", ())
    return [kind for kind in dict.fromkeys(found) if kind in CHARGED and kind not in denied]


def preferred(case: Case, shown: list[str]) -> tuple[str, str, str]:
    """The kind that suits best what is cared about, why, and for what; for a thruster where nothing is said."""
    barred = case.house.barred(case.said("load.model")) if case.house and case.said("load.model") else ()
    allowed = [kind for kind in CHARGED if kind not in barred]  # where the house takes none of those that are named
    shown = [kind for kind in shown if kind not in barred] or allowed or shown
    for cue, (order, why) in CARES.items():
        if case.says(cue):
            return next(kind for kind in order if kind in shown), why, MOST
    if found := PURPOSES.get(kind_purpose.purpose(case.text)):
        use, reasons = found
        return next((kind, why, use) for kind, why in reasons.items() if kind in shown)
    return next((kind, why, MOST) for kind, why in THRUSTER.items() if kind in shown)


def name(kind: str) -> str:
    """The kind with a capital letter."""
    text = say.CHEMISTRY[kind]
    return text if kind == "agm" else text.capitalize()


def figures(case: Case, kind: str) -> tuple[Figure, ...]:
    """Usual life, usable part, charge taken and self-discharge of a kind."""
    life, family = reference.row("lives", chemistry=kind), "lithium" if kind == "lfp" else "lead"
    usable = reference.row("usable", family=family)["share"]
    charge = reference.row("kinds", chemistry=kind)["charge"]
    rate = reference.row("self_discharge", chemistry=kind)["rate"]
    low, high = float(life["low"].value), float(life["high"].value)
    case.source(life["low"].cite, usable.cite, charge.cite, rate.cite)
    return (
        Figure("life", "usual life", low, "years", low, high),
        Figure("usable_share", "usable", float(usable.value), "%"),
        Figure("charger_current_high", "charge taken, for each 100 Ah", float(charge.value), "A"),
        Figure("self_discharge", "lost in a month at 20 °C", float(rate.value), "%"),
    )


def carbon() -> Answer:
    """Lead-carbon: the label decides, no figure."""
    head = (
        "We can't say by the kind: lead-carbon batteries are made for deep, slow use, so look for the CCA that "
        "your thruster needs."
    )
    return TOPIC.says("needs-facts", head, asks=(TOPIC.ask("battery.cca"), TOPIC.ask("load.current")))
