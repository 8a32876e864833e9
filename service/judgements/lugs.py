"""Which lug goes on which stud: by the stud's name, by millimetres, of two sizes, or on any of the usual studs."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.judgements import circuit
from service.reference import UnknownValue
from service.reply import Answer, Figure
from service.told import lugs_asked
from service.topic import Topic

PRACTICE = "terminal-practice@studs and lug holes"
WASHER = reference.row("terminals", chart="rule", name="washer")["value"]
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
LUG_ASKED = regex(r"\blugs?\b|\bcable (?:shoes?|ends?)\b", re.IGNORECASE)
OF_A_LUG = regex(r"(?:[- ]size)? (?:ring |cable |copper |tinned |hole |crimp )*lugs?\b", re.IGNORECASE)
FRACTION, MM_PER_INCH = regex(r"(\d{1,2})/([1-9]\d?)\b"), 25.4
INCH = {"1/4": "1/4-20", "5/16": "5/16-18", "3/8": "3/8-16"}


def fitting(topic: Topic, case: Case, size: str) -> Answer:
    """The lug for a stud, or what is usual where no stud is named."""
    if size:
        holes = lug_holes(size)
        case.step(f"The hole of the lug is the size of the stud: {holes} for {size}", PRACTICE)
        of_it = f" for {circuit.name(case)} cable" if circuit.has_cable(case) else ""
        head = f"Use a lug{of_it} with a hole for {holes} on your {size} stud."
        return topic.says("information", head, *lug(case, size))
    if case.says("detail:posts") and not THREADED.search(case.text):
        case.step("Plus post 17.5 mm, minus post 15.9 mm across the top: clamps cannot be swapped", "post-sizes")
        head = "Round posts take clamps, not ring lugs; plus is thicker; thruster cables belong under a nut on a stud."
        if lugs_asked.which_is_plus(case.text):
            head = "The thicker of two round posts is plus; go by the mark + on the case before you connect anything."
        return topic.says("information", head)
    case.step("Marine batteries with studs usually have 3/8-16 on plus and 5/16-18 on minus", PRACTICE)
    head = "Marine batteries with studs usually have 3/8-16 on plus and 5/16-18 on minus: measure before you order."
    if circuit.has_cable(case) and LUG_ASKED.search(case.text):
        usual = f"usually {USUAL} on plus, {USUAL_MINUS} on minus, so measure before you order"
        head = f"Take a lug made for {circuit.name(case)} cable, its hole the size of your stud: {usual}."
    return topic.says("information", head, *lug(case, USUAL))


def in_millimetres(topic: Topic, case: Case, size: str, hole: float) -> Answer:
    """Whether a hole of so many millimetres suits the stud."""
    across = diameter("stud", size)
    if across is None:
        return fitting(topic, case, size)
    told, use = say.quantity(hole, "mm"), f"use a lug for {lug_holes(size)}"
    case.step(
        f"The stud {size} is {say.quantity(across, 'mm')} and the hole {told}: the hole is the stud's size, and "
        "nothing goes under the lug",
        PRACTICE,
        WASHER.cite,
    )
    if hole < across and case.says("detail:drill"):
        return topic.says("no", drilled(case, size), *lug(case, size))
    if hole < across:
        head = f"No: a hole of {told} does not go over your {size} stud; {use}."
        return topic.says("no", head, *lug(case, size))
    if hole - across > LOOSE:
        head = f"No: a hole of {told} {TOO_LOOSE} your {size} stud, and a washer does not mend that; {use}."
        return topic.says("no", head, *lug(case, size))
    head = f"Yes: a hole of {told} fits your {size} stud, if the lug lies flat and the nut holds it all round."
    return topic.says("yes", head, *lug(case, size))


def two_sizes(topic: Topic, case: Case, size: str, other: str) -> Answer:
    """Whether the lug of one size suits the stud of the other."""
    case.others().known("terminal.size")
    across, hole = diameter("stud", size), diameter("hole", other)
    if across is None or hole is None:
        return fitting(topic, case, size)
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
        return topic.says("no", drilled(case, size, other), *lug(case, size))
    if hole < across:
        return topic.says("no", f"No: a lug for {other} does not go over your {size} stud; {use}.", *lug(case, size))
    if hole - across > LOOSE:
        head = f"No: a lug for {other} is too loose on your {size} stud, and a washer does not mend that; {use}."
        return topic.says("no", head, *lug(case, size))
    head = f"Yes: a lug for {other} fits your {size} stud, if it lies flat and the nut holds it all round."
    return topic.says("yes", head, *lug(case, size))


def each_its_own(topic: Topic, case: Case, size: str, other: str) -> Answer | None:
    """The lugs for two studs, one at each end of a cable; None where one of the sizes is a lug's, or none is asked."""
    spans = (case.stated["terminal.size"].span, case.second["terminal.size"].span)
    if not lugs_asked.for_studs(case.text, *spans):
        return None
    case.others().known("terminal.size")
    first, second = sorted(((spans[0] or (0, 0), size), (spans[1] or (0, 0), other)))
    pair = [f"{lug_holes(name)} on your {name} stud" for _, name in (first, second)]
    case.step("The hole of a lug is the size of its stud, so that a cable may have two kinds of lug", PRACTICE)
    cable = f" for {circuit.name(case)} cable" if circuit.has_cable(case) else ""
    head = f"Use lugs{cable} with a hole for {pair[0]}, and for {pair[1]}."
    return topic.says("information", head, *lug(case, size), *lug(case, other))


def any_stud(topic: Topic, case: Case, size: str) -> Answer:
    """On which of the usual studs a lug goes, where nobody told what stud there is."""
    hole = diameter("hole", size)
    across = [diameter("stud", name) for name in (USUAL, USUAL_MINUS)]
    case.step(f"Marine batteries with studs usually have {USUAL} on plus and {USUAL_MINUS} on minus", PRACTICE)
    if hole is None or across[0] is None or across[1] is None:
        return topic.says("information", "The hole of the lug must be the size of the stud: measure both studs.")
    plus, minus = (goes_on(hole, one) for one in across if one is not None)
    head = f"The {size} lug {plus} a {USUAL} stud, usual on plus, and {minus} a {USUAL_MINUS}, usual on minus"
    wants = f"; the thinner one wants a lug for {lug_holes(USUAL_MINUS)}" if minus == TOO_LOOSE else ""
    return topic.says("information", f"{head}{wants}: measure yours.", *lug(case, USUAL))


def goes_on(hole: float, across: float) -> str:
    """How a hole suits a stud, in words."""
    if hole < across:
        return "does not go over"
    return TOO_LOOSE if hole - across > LOOSE else "fits"


def drilled(case: Case, size: str, other: str = "") -> str:
    """The sentence on a hole that somebody means to drill wider, with its cause as a step."""
    case.step("The rim round the hole carries the current: a thin one runs hot and tears", PRACTICE)
    whose = f"the lug for {other}" if other else "the lug"
    new = f"crimp on one for {lug_holes(size)}, which fits your {size} stud" if size else "crimp on one for your stud"
    return f"No: do not drill {whose} wider, as the rim left is too thin for the current; {new}."


def lug_alone(case: Case) -> bool:
    """Whether the one size that is told is a lug's, and it is asked whether it fits: "M10 lugs, do they go on?"."""
    span = case.stated["terminal.size"].span
    if span is None or not FITS.search(case.text):
        return False
    first, last = span
    return bool(THEIR_LUGS.search(case.text[:first]) or OF_A_LUG.match(case.text[last:]))


def hole_told(text: str) -> float | None:
    """Millimetres of the hole in a lug, where they are told: "lugs with 10 mm holes"."""
    found = HOLE.search(text)
    return float((found["before"] or found["after"]).replace(",", ".")) if found else None


def lug(case: Case, size: str) -> tuple[Figure, ...]:
    """The lug as a figure, with the source of its size."""
    if not size:
        return ()
    case.source(PRACTICE)
    whose = "a" if size == USUAL else "your"
    return (Figure("lug_hole", f"lug for {whose} {size} stud", lug_holes(size), ""),)


def lug_holes(size: str) -> str:
    """The lugs that fit a stud."""
    try:
        return str(reference.row("terminals", chart="stud", name=size)["lug"].value)
    except UnknownValue:
        return size


def diameter(chart: str, size: str) -> float | None:
    """Millimetres across a stud or a lug hole, by the table or as a fraction of an inch; None where neither tells."""
    for name in (chart, "stud"):
        try:
            return float(reference.row("terminals", chart=name, name=size)["diameter"].value)
        except UnknownValue:
            continue
    whole = FRACTION.match(size)
    return MM_PER_INCH * int(whole[1]) / int(whole[2]) if whole else None


def stud(case: Case) -> str:
    """The stud named, "" for none."""
    return standard(str(case["terminal.size"])) if "terminal.size" in case else ""


def standard(size: str) -> str:
    """A stud as the table writes it: "3/8" is "3/8-16"."""
    name = size.strip().upper().removesuffix("IN").strip().rstrip('"')
    return INCH.get(name.partition("-")[0].strip(), name)
