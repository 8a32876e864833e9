"""Posts, studs and lugs: what fits on what, how tight, how many, and in which order."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.judgements import circuit
from service.judgements.lugs import (
    PRACTICE,
    USUAL,
    WASHER,
    any_stud,
    drilled,
    each_its_own,
    fitting,
    hole_told,
    in_millimetres,
    lug,
    lug_alone,
    lug_holes,
    standard,
    stud,
    two_sizes,
)
from service.reference import UnknownValue
from service.reply import Answer
from service.sentences import weak_joint
from service.told import lugs_asked, off_first, posts_way, under_charge
from service.topic import Topic

TORQUE = "torque-tables"
RINGS = reference.row("terminals", chart="rule", name="rings")["value"]
WING = reference.row("terminals", chart="rule", name="wing-nut")["value"]
STUDS = r"(?:studs?|bolts?(?: ones)?|bolted|screw(?:s|ed)?|thread(?:s|ed)?)"
POSTS = r"(?:posts?|tapered|conical|sae|automotive|round ones)"
BETWEEN = r"\b[^.?!;]{0,16}\b(?:or|vs?|versus|against|rather than)\b[^.?!;]{0,16}\b"
BESIDE = BETWEEN.replace("or|", "and|", 1)
STUD_AND_POST = regex(rf"\b{STUDS}{BESIDE}{POSTS}\b|\b{POSTS}{BESIDE}{STUDS}\b", re.IGNORECASE)
WHICH = regex(r"\b(?:which|both|between|what do i use)\b", re.IGNORECASE)
STUD_OR_POST = regex(rf"\b{STUDS}{BETWEEN}{POSTS}\b|\b{POSTS}{BETWEEN}{STUDS}\b", re.IGNORECASE)
DIFFER = regex(r"\bdiffer(?:s|ent|ence)?\b|\bcompare\w*\b", re.IGNORECASE)
OF_LUGS = regex(
    r"\b(?:lugs?|holes?|rings?|eyes?|cable ends?|adapt[eo]rs?|washers?|fits?|go(?:es)? (?:on|over))\b|\bdrill",
    re.IGNORECASE,
)

HABITS = {  # cue: headline, why, source
    "stacked": (
        "At most four rings go on one stud, the largest at the bottom; for more, fit a busbar.",
        "Each further ring makes the joint looser and warmer",
        RINGS.cite,
    ),
    "order": (
        "Minus comes off first and goes on last, so that a slipping spanner makes no spark.",
        "With the earthed side off, a spanner that touches metal closes no circuit",
        "disconnecting",
    ),
    "adapter": (
        "An adapter works if it is full-size metal rated for the current; a battery with the right terminal is better.",
        "Each adapter is a further joint that can loosen and heat: never stack two",
        PRACTICE,
    ),
    "joint": (
        "Crimp the lugs with the tool made for them and seal them with heat shrink; solder alone does not hold them.",
        "Solder softens when a joint runs hot",
        PRACTICE,
    ),
    "growth": (
        "Wash the growth off with baking soda in water, dry and tighten the joint, then smear petroleum jelly on it.",
        "Baking soda makes the acid harmless: keep it out of the cells",
        PRACTICE,
    ),
    "spark": (
        "A small spark means that something is still on: switch all off and let gas clear before you connect.",
        "A load or a charger that is on closes the circuit at the last joint",
        "disconnecting",
    ),
}

ON_LAST = "Plus goes on first and minus last, so that a slipping spanner makes no spark; minus comes off first."
COVERED = "With insulating boots or caps on the posts, or a lid over them: no metal may come between them."
CHARGER_OFF = (
    "No: switch the charger off first, at the shore end, and let the gas clear; only then the minus comes off, then "
    "the plus."
)
POSTS_WAY = (
    "Away from metal: the posts look where no tool, lid or hull of metal can bridge them, and are covered; the boat's "
    "maker decides the rest."
)
TOPIC = Topic(
    "terminals",
    "Posts, studs and lugs",
    cautions=("short-circuit", "explosive-gas", "ignition-protected", "thruster-off", "manual-first"),
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """What was asked of the joint; the stricter first. Everything else stands in the working."""
    if under_charge.asked(case.text):
        case.step("A charge gives off gas, and a joint that opens under current makes a spark", "disconnecting")
        return TOPIC.says("no", CHARGER_OFF, urgency="today")
    size, second = stud(case), case.second.get("terminal.size")
    onto_posts = case.says("detail:adapter") and case.says("detail:posts")  # the lug is told, and that it does not fit
    if second is None and size and lug_alone(case) and not onto_posts:
        return any_stud(TOPIC, case, size)
    if whatever := of_any_size(case):
        return whatever
    tightness(case, size)
    if kind := of_the_kind(case, size, second is None):
        return kind
    if second is not None and size:
        return of_two(case, size, standard(str(second.value)), second.origin == "thread")
    if size and (hole := hole_told(case.text)):
        return in_millimetres(TOPIC, case, size, hole)
    if never := not_so(case, size):
        return never
    return of_habit(case, size)


def of_habit(case: Case, size: str) -> Answer:
    """What the trade does, where that is asked; else how tight the joint wants to be, or which lug fits."""
    told = next(
        (cue for cue in HABITS if case.says(f"detail:{cue}") and not (cue == "order" and lugs_asked.bought(case.text))),
        "",
    )
    if told == "joint" and size and lugs_asked.which(case.text):
        return lug_and_joint(case, size)
    if off_first.asked(case.text):
        told = "order"
    found = HABITS.get(told)
    if found is None and case.says("detail:torque"):
        case.source(PRACTICE)
        return TOPIC.says("information", how_tight(size), *lug(case, size))
    if found is None:
        return fitting(TOPIC, case, size)
    head, why, cite = found
    if told == "order" and off_first.goes_on(case.text):
        head = ON_LAST
    if case.says("detail:torque"):
        case.source(PRACTICE, TORQUE)
        named = size if size and torque(size) else "M8"
        head = f"{head.partition(', so that')[0].removesuffix('.')}; tighten by the label, usual for {named} is "
        head += f"{torque(named)}."
    case.step(why, cite)
    return TOPIC.says("information", head, *lug(case, size))


def lug_and_joint(case: Case, size: str) -> Answer:
    """The lug for a stud and how it is put on the cable, where both are asked."""
    _, why, cite = HABITS["joint"]
    case.step(why, cite)
    cable = f" and {circuit.name(case)} cable" if circuit.has_cable(case) else ""
    head = f"Lugs for {lug_holes(size)}{cable}, crimped with the tool made for them: solder alone does not hold them."
    return TOPIC.says("information", head, *lug(case, size))


def of_two(case: Case, size: str, other: str, told_before: bool) -> Answer:
    """Two sizes: how tight each wants to be, the lug for each, or whether that of one suits the stud of the other."""
    if not told_before and (each := both_tight(case, size, other)):
        return each
    if not told_before and (pair := each_its_own(TOPIC, case, size, other)):
        return pair
    fits = two_sizes(TOPIC, case, size, other)
    return tightened(case, size, fits) if told_before and case.says("detail:torque") else fits


def of_the_kind(case: Case, size: str, one_size: bool) -> Answer | None:
    """Studs against posts, and a wing nut; None where neither is spoken of."""
    if one_size and (STUD_OR_POST.search(case.text) or of_both(case)):
        return stud_or_post(case, size)
    if case.says("detail:wing_nut"):
        case.step("A wing nut is no permanent connector for heavy cables", WING.cite)
        head = "No: use a hex nut with a lock washer on thruster cables, never a wing nut."
        return TOPIC.says("no", head, *lug(case, size))
    return None


def of_both(case: Case) -> bool:
    """Whether a battery that has posts and studs is asked about, or how they differ: "both posts and studs, which"."""
    both = STUD_AND_POST.search(case.text) and WHICH.search(case.text)
    return both is not None and not case.says("detail:torque")


def not_so(case: Case, size: str) -> Answer | None:
    """What is not done to a lug: a washer under it, a hole drilled wider; None where neither is meant."""
    if case.says("detail:washer"):
        case.step("Nothing lies between lug and terminal; washers go on top, under the nut", WASHER.cite)
        head = "No: no washer goes under the lug; the lug lies flat on the terminal, and washers go on top."
        if size:
            own = f"a lug for {lug_holes(size)}, which lies flat on your {size} stud"
            head = f"No: no washer goes under the lug; have {own}, crimped on."
        if case.says("detail:torque") and size and (found := torque(size)):
            head = f"No washer under the lug; tighten your {size} stud to {found}, unless the label says otherwise."
        return TOPIC.says("no", head, *lug(case, size))
    if case.says("detail:drill"):
        return TOPIC.says("no", drilled(case, size), *lug(case, size))
    return None


def stud_or_post(case: Case, size: str) -> Answer:
    """Which of the two to take for a thruster, and how tight where that is asked."""
    case.step("Plus post 17.5 mm, minus post 15.9 mm across the top: clamps cannot be swapped", "post-sizes")
    case.source(PRACTICE)
    head = "Studs for a thruster: its cables belong under a nut on a stud; round posts take clamps, not ring lugs"
    if DIFFER.search(case.text) and case.said("load.kind") is None:
        head = "Round posts take clamps; a stud takes ring lugs under its nut, which is where thruster cables belong"
    if not case.says("detail:torque"):
        return TOPIC.says("information", f"{head}.", *lug(case, size))
    named = size if size and torque(size) else USUAL
    case.source(TORQUE)
    tight = f"; tighten {named} to {torque(named)}, unless the label says otherwise"
    return TOPIC.says("information", f"{head.partition('; round')[0]}{tight}.", *lug(case, size))


def tightened(case: Case, size: str, found: Answer) -> Answer:
    """How tight the stud wants to be, where it was asked before whether the lug suits it."""
    once = f", once a lug for {lug_holes(size)} is on it" if found.verdict == "no" else ""
    case.source(PRACTICE)
    return TOPIC.says("information", f"{how_tight(size).removesuffix('.')}{once}.", *lug(case, size))


def of_any_size(case: Case) -> Answer | None:
    """Which way the posts look, or what a bad joint does to a motor, where that is asked."""
    if posts_way.asked(case.text):
        case.step("No metal may touch the terminals: boots, caps or a lid", "boat-safety-scheme")
        return TOPIC.says("information", POSTS_WAY)
    if lugs_asked.cover(case.text):
        case.step("No metal may touch the terminals: boots, caps or a lid", "boat-safety-scheme")
        return TOPIC.says("information", COVERED)
    if lugs_asked.spliced(case.text):
        case.step("Each further joint can loosen and heat", PRACTICE)
        return TOPIC.says("information", lugs_asked.ONE_LENGTH)
    head = weak_joint.headline(case)
    if not head:
        return None
    for why, cite in (weak_joint.MEASURE, weak_joint.HEAT):
        case.step(why, cite)
    return TOPIC.says("information", head)


def tightness(case: Case, size: str) -> None:
    """How tight, as a step, for a stud in the table."""
    if size and (found := torque(size)):
        case.step(f"Tighten {size} to {found}, unless the label says otherwise", TORQUE)
    elif case.says("detail:torque"):
        case.step("Makers print different tightenings for the same stud, so the label comes first", TORQUE)


def torque(name: str) -> str:
    """The tightening of a stud or post, "" where none is known."""
    try:
        row = reference.row("terminals", chart="torque", name=name)
    except UnknownValue:
        return ""
    return say.between(float(row["nm_low"].value), float(row["nm_high"].value), "Nm")


def both_tight(case: Case, size: str, other: str) -> Answer | None:
    """How tight two terminals want to be, where that is asked and no lug of one is put on the other."""
    if not case.says("detail:torque") or OF_LUGS.search(case.text):
        return None
    case.others().known("terminal.size")
    spans = {size: case.stated["terminal.size"].span, other: case.second["terminal.size"].span}
    told = dict(sorted(((name, torque(name)) for name in spans), key=lambda item: spans[item[0]] or (0, 0)))
    known = [f"{name} to {nm}" for name, nm in told.items() if nm]
    open_ones = [name for name, nm in told.items() if not nm]
    if not known:
        return None
    tightness(case, other)
    case.source(TORQUE, PRACTICE)
    by_label = f"; for {open_ones[0]} go by its maker's figure" if open_ones else ""
    return TOPIC.says(
        "information", f"Tighten {say.listed(known)}, unless the label or manual says otherwise{by_label}."
    )


def how_tight(size: str) -> str:
    """The sentence on tightening."""
    if size and (found := torque(size)):
        return f"Tighten your {size} stud to {found}, unless the battery's label says otherwise."
    usual = f"{torque('post')} for a post clamp, {torque('M8')} for M8 and {torque('3/8-16')} for 3/8-16 studs"
    return f"The battery's label decides; usual are {usual}."
