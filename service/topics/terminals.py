"""Posts, studs and lugs: what fits on what, how tight, how many, and in which order."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.judgements import circuit
from service.reference import UnknownValue
from service.reply import Answer, Figure
from service.sentences import weak_joint
from service.told import lugs_asked, posts_way
from service.topic import Topic

PRACTICE, TORQUE = "terminal-practice@studs and lug holes", "torque-tables"
RINGS = reference.row("terminals", chart="rule", name="rings")["value"]
WASHER = reference.row("terminals", chart="rule", name="washer")["value"]
WING = reference.row("terminals", chart="rule", name="wing-nut")["value"]
USUAL, USUAL_MINUS = "3/8-16", "5/16-18"
TOO_LOOSE = "is too loose on"
LOOSE = 1.2  # mm: an M10 lug on a 3/8 in stud has 1 mm of play and is used; an M10 lug on M8 has 2.5 mm
FITS = regex(r"\b(?:fit|fits|go on|go over|suit|right|ok|okay|good|work|any good)\b", re.IGNORECASE)
THEIR_LUGS = regex(  # "M10 lugs", "lugs with an M10 hole"
    r"\blugs? (?:with (?:an? )?)?$|\blugs? (?:are|is|of)(?: an?)? $", re.IGNORECASE
)
THREADED = regex(r"\b(?:studs?|threads?|threaded|nuts?)\b", re.IGNORECASE)  # "the posts with studs", "what nut"
HOLE = regex(
    r"\b(?P<before>\d{1,2}(?:[.,]\d)?) ?mm(?: wide| big)? (?:\w+ )?(?:holes?|eyes?)\b"
    r"|\bholes? (?:(?:of|is|are|in them is|measures?) )?(?:about )?(?P<after>\d{1,2}(?:[.,]\d)?) ?mm\b",
    re.IGNORECASE,
)
STUDS = r"(?:studs?|bolts?(?: ones)?|bolted|screw(?:s|ed)?|thread(?:s|ed)?)"
POSTS = r"(?:posts?|tapered|conical|sae|automotive|round ones)"
BETWEEN = r"\b[^.?!;]{0,16}\b(?:or|vs?|versus|against|rather than)\b[^.?!;]{0,16}\b"
STUD_OR_POST = regex(rf"\b{STUDS}{BETWEEN}{POSTS}\b|\b{POSTS}{BETWEEN}{STUDS}\b", re.IGNORECASE)
OF_A_LUG = regex(r"(?:[- ]size)? (?:ring |cable |copper |tinned |hole |crimp )*lugs?\b", re.IGNORECASE)
OF_LUGS = regex(
    r"\b(?:lugs?|holes?|rings?|eyes?|cable ends?|adapt[eo]rs?|washers?|fits?|go(?:es)? (?:on|over))\b|\bdrill",
    re.IGNORECASE,
)
FRACTION, MM_PER_INCH = regex(r"(\d{1,2})/([1-9]\d?)\b"), 25.4
INCH = {"1/4": "1/4-20", "5/16": "5/16-18", "3/8": "3/8-16"}

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

COVERED = "With insulating boots or caps on the posts, or a lid over them: no metal may come between them."
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
    size, second = stud(case), case.second.get("terminal.size")
    onto_posts = case.says("detail:adapter") and case.says("detail:posts")  # the lug is told, and that it does not fit
    if second is None and size and lug_alone(case) and not onto_posts:
        return any_stud(case, size)
    if whatever := of_any_size(case):
        return whatever
    tightness(case, size)
    if kind := of_the_kind(case, size, second is None):
        return kind
    if second is not None and size:
        return of_two(case, size, standard(str(second.value)), second.origin == "thread")
    if size and (hole := hole_told(case.text)):
        return in_millimetres(case, size, hole)
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
    found = HABITS.get(told)
    if found is None and case.says("detail:torque"):
        case.source(PRACTICE)
        return TOPIC.says("information", how_tight(size), *lug(case, size))
    if found is None:
        return fitting(case, size)
    head, why, cite = found
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
    """Two sizes: how tight each wants to be, or whether the lug of one suits the stud of the other."""
    if not told_before and (each := both_tight(case, size, other)):
        return each
    fits = two_sizes(case, size, other)
    return tightened(case, size, fits) if told_before and case.says("detail:torque") else fits


def of_the_kind(case: Case, size: str, one_size: bool) -> Answer | None:
    """Studs against posts, and a wing nut; None where neither is spoken of."""
    if one_size and STUD_OR_POST.search(case.text):
        return stud_or_post(case, size)
    if case.says("detail:wing_nut"):
        case.step("A wing nut is no permanent connector for heavy cables", WING.cite)
        head = "No: use a hex nut with a lock washer on thruster cables, never a wing nut."
        return TOPIC.says("no", head, *lug(case, size))
    return None


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


def drilled(case: Case, size: str, other: str = "") -> str:
    """The sentence on a hole that somebody means to drill wider, with its cause as a step."""
    case.step("The rim round the hole carries the current: a thin one runs hot and tears", PRACTICE)
    whose = f"the lug for {other}" if other else "the lug"
    new = f"crimp on one for {lug_holes(size)}, which fits your {size} stud" if size else "crimp on one for your stud"
    return f"No: do not drill {whose} wider, as the rim left is too thin for the current; {new}."


def stud_or_post(case: Case, size: str) -> Answer:
    """Which of the two to take for a thruster, and how tight where that is asked."""
    case.step("Plus post 17.5 mm, minus post 15.9 mm across the top: clamps cannot be swapped", "post-sizes")
    case.source(PRACTICE)
    head = "Studs for a thruster: its cables belong under a nut on a stud; round posts take clamps, not ring lugs"
    if not case.says("detail:torque"):
        return TOPIC.says("information", f"{head}.", *lug(case, size))
    named = size if size and torque(size) else USUAL
    case.source(TORQUE)
    tight = f"; tighten {named} to {torque(named)}, unless the label says otherwise"
    return TOPIC.says("information", f"{head.partition('; round')[0]}{tight}.", *lug(case, size))


def fitting(case: Case, size: str) -> Answer:
    """The lug for a stud, or what is usual where no stud is named."""
    if size:
        holes = lug_holes(size)
        case.step(f"The hole of the lug is the size of the stud: {holes} for {size}", PRACTICE)
        return TOPIC.says("information", f"Use a lug with a hole for {holes} on your {size} stud.", *lug(case, size))
    if case.says("detail:posts") and not THREADED.search(case.text):
        case.step("Plus post 17.5 mm, minus post 15.9 mm across the top: clamps cannot be swapped", "post-sizes")
        head = "Round posts take clamps, not ring lugs; plus is thicker; thruster cables belong under a nut on a stud."
        if lugs_asked.which_is_plus(case.text):
            head = "The thicker of two round posts is plus; go by the mark + on the case before you connect anything."
        return TOPIC.says("information", head)
    case.step("Marine batteries with studs usually have 3/8-16 on plus and 5/16-18 on minus", PRACTICE)
    head = "Marine batteries with studs usually have 3/8-16 on plus and 5/16-18 on minus: measure before you order."
    return TOPIC.says("information", head, *lug(case, USUAL))


def standard(size: str) -> str:
    """A stud as the table writes it: "3/8" is "3/8-16"."""
    name = size.strip().upper().removesuffix("IN").strip().rstrip('"')
    return INCH.get(name.partition("-")[0].strip(), name)


def stud(case: Case) -> str:
    """The stud named, "" for none."""
    return standard(str(case["terminal.size"])) if "terminal.size" in case else ""


def lug_holes(size: str) -> str:
    """The lugs that fit a stud."""
    try:
        return str(reference.row("terminals", chart="stud", name=size)["lug"].value)
    except UnknownValue:
        return size


def lug(case: Case, size: str) -> tuple[Figure, ...]:
    """The lug as a figure, with the source of its size."""
    if not size:
        return ()
    case.source(PRACTICE)
    whose = "a" if size == USUAL else "your"
    return (Figure("lug_hole", f"lug for {whose} {size} stud", lug_holes(size), ""),)


def diameter(chart: str, size: str) -> float | None:
    """Millimetres across a stud or a lug hole, by the table or as a fraction of an inch; None where neither tells."""
    for name in (chart, "stud"):
        try:
            return float(reference.row("terminals", chart=name, name=size)["diameter"].value)
        except UnknownValue:
            continue
    whole = FRACTION.match(size)
    return MM_PER_INCH * int(whole[1]) / int(whole[2]) if whole else None


def hole_told(text: str) -> float | None:
    """Millimetres of the hole in a lug, where they are told: "lugs with 10 mm holes"."""
    found = HOLE.search(text)
    return float((found["before"] or found["after"]).replace(",", ".")) if found else None


def in_millimetres(case: Case, size: str, hole: float) -> Answer:
    """Whether a hole of so many millimetres suits the stud."""
    across = diameter("stud", size)
    if across is None:
        return fitting(case, size)
    told, use = say.quantity(hole, "mm"), f"use a lug for {lug_holes(size)}"
    case.step(
        f"The stud {size} is {say.quantity(across, 'mm')} and the hole {told}: the hole is the stud's size, and "
        "nothing goes under the lug",
        PRACTICE,
        WASHER.cite,
    )
    if hole < across and case.says("detail:drill"):
        return TOPIC.says("no", drilled(case, size), *lug(case, size))
    if hole < across:
        head = f"No: a hole of {told} does not go over your {size} stud; {use}."
        return TOPIC.says("no", head, *lug(case, size))
    if hole - across > LOOSE:
        head = f"No: a hole of {told} {TOO_LOOSE} your {size} stud, and a washer does not mend that; {use}."
        return TOPIC.says("no", head, *lug(case, size))
    head = f"Yes: a hole of {told} fits your {size} stud, if the lug lies flat and the nut holds it all round."
    return TOPIC.says("yes", head, *lug(case, size))


def lug_alone(case: Case) -> bool:
    """Whether the one size that is told is a lug's, and it is asked whether it fits: "M10 lugs, do they go on?"."""
    span = case.stated["terminal.size"].span
    if span is None or not FITS.search(case.text):
        return False
    first, last = span
    return bool(THEIR_LUGS.search(case.text[:first]) or OF_A_LUG.match(case.text[last:]))


def any_stud(case: Case, size: str) -> Answer:
    """On which of the usual studs a lug goes, where nobody told what stud there is."""
    hole = diameter("hole", size)
    across = [diameter("stud", name) for name in (USUAL, USUAL_MINUS)]
    case.step(f"Marine batteries with studs usually have {USUAL} on plus and {USUAL_MINUS} on minus", PRACTICE)
    if hole is None or across[0] is None or across[1] is None:
        return TOPIC.says("information", "The hole of the lug must be the size of the stud: measure both studs.")
    plus, minus = (goes_on(hole, one) for one in across if one is not None)
    head = f"The {size} lug {plus} a {USUAL} stud, usual on plus, and {minus} a {USUAL_MINUS}, usual on minus"
    wants = f"; the thinner one wants a lug for {lug_holes(USUAL_MINUS)}" if minus == TOO_LOOSE else ""
    return TOPIC.says("information", f"{head}{wants}: measure yours.", *lug(case, USUAL))


def goes_on(hole: float, across: float) -> str:
    """How a hole suits a stud, in words."""
    if hole < across:
        return "does not go over"
    return TOO_LOOSE if hole - across > LOOSE else "fits"


def tightened(case: Case, size: str, found: Answer) -> Answer:
    """How tight the stud wants to be, where it was asked before whether the lug suits it."""
    once = f", once a lug for {lug_holes(size)} is on it" if found.verdict == "no" else ""
    case.source(PRACTICE)
    return TOPIC.says("information", f"{how_tight(size).removesuffix('.')}{once}.", *lug(case, size))


def two_sizes(case: Case, size: str, other: str) -> Answer:
    """Whether the lug of one size suits the stud of the other."""
    case.others().known("terminal.size")
    across, hole = diameter("stud", size), diameter("hole", other)
    if across is None or hole is None:
        return fitting(case, size)
    case.step(
        f"The stud {size} is {say.quantity(across, 'mm')}, a hole for {other} {say.quantity(hole, 'mm')}; "
        "the hole is the stud's size, and nothing goes under the lug",
        PRACTICE,
        WASHER.cite,
    )
    use = f"use a lug for {lug_holes(size)}"
    if other.partition("-")[0] in re.findall(r"[M\d/]+", lug_holes(size)):  # a 5/16 lug goes over an M8 stud
        hole = max(hole, across)
    if hole < across and case.says("detail:drill"):
        return TOPIC.says("no", drilled(case, size, other), *lug(case, size))
    if hole < across:
        return TOPIC.says("no", f"No: a lug for {other} does not go over your {size} stud; {use}.", *lug(case, size))
    if hole - across > LOOSE:
        head = f"No: a lug for {other} is too loose on your {size} stud, and a washer does not mend that; {use}."
        return TOPIC.says("no", head, *lug(case, size))
    head = f"Yes: a lug for {other} fits your {size} stud, if it lies flat and the nut holds it all round."
    return TOPIC.says("yes", head, *lug(case, size))


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
