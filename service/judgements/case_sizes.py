"""Batteries told by the size of their case: its name in the table, and one large one beside several small ones."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.judgements import cranking, supply
from service.reference import Row, UnknownValue
from service.reply import Figure, Option, Verdict
from service.told import tray_of_whom

ALIAS = {  # European cases with the same outline
    **dict.fromkeys(("H8", "L5", "LN5"), "49"),
    **dict.fromkeys(("H7", "L4", "LN4"), "94R"),
}
LARGER = {"length": "longer", "width": "wider", "height": "higher"}
SMALLER = {"length": "shorter", "width": "narrower", "height": "lower"}
SIZE = r"(?:sizes?|room|space|footprint|dimensions|measures|measurements|outline|case)"
SAME = regex(  # whether two cases are alike: "the same room as a 31", "do they share a footprint"
    rf"\b(?:same|equal|identical)(?: (?:overall|outer|case))? {SIZE}\b|\bshares? (?:a|the|one) {SIZE}\b"
    rf"|\b(?:identical|alike|equal) in {SIZE}\b|\bas (?:big|large) as\b",
    re.IGNORECASE,
)
GROUP = r"(?:(?:bci )?(?:group|grp|gp|size)s? )?(?P<{name}>\d{{2}}[a-z]?|[48]d|gc2)(?:'?s)?\b"
ONE = rf"\b(?:one|1|an?|an? single|single)(?: big| large)? {GROUP.format(name='large')}"
MANY = rf"\b(?P<many>two|three|four|[2-4])(?: x| smaller| small)? {GROUP.format(name='small')}"
OR = r"[^.?!;]{0,16}\b(?:or|vs?|versus|against|instead of|rather than|than)\b[^.?!;]{0,12}?"
ONE_OR_MANY = regex(f"{ONE}{OR}{MANY}", re.IGNORECASE)
MANY_OR_ONE = regex(f"{MANY}{OR}{ONE}", re.IGNORECASE)
NUMBERS = {"two": 2.0, "three": 3.0, "four": 4.0}
STANDS = "case:"  # begins the cue of the case for which the place is made
TOLERANCE = 2.0  # mm by which cases of one size differ


def the_same(name: str, named: str, over: Mapping[str, float]) -> tuple[Verdict, str]:
    """Whether two cases are of one size: the verdict and the sentence. `over`: by how much the first is larger."""
    apart = {side: more for side, more in over.items() if abs(more) > TOLERANCE}
    if not apart:
        return "yes", f"Yes: a group {name} is as large as a group {named}; check the side of the plus post."
    told = [
        f"{say.quantity(abs(more), 'mm')} {(LARGER if more > 0 else SMALLER)[side]}" for side, more in apart.items()
    ]
    goes_in = "" if max(apart.values()) > 0 else ", so it goes where that one stands"
    return "no", f"No: a group {name} is {say.listed(told)} than a group {named}{goes_in}."


def known_name(group: str) -> str:
    """A case as the table writes it: "group 24" is 24, H8 is 49; 31S and 27M have the outline of 31 and 27."""
    name = group.strip().upper().removeprefix("GROUP").strip()
    name = ALIAS.get(name, name)
    plain = name.rstrip("AMPST")
    listed = {str(row["group"].value) for row in reference.rows("group_sizes")}
    return plain if name not in listed and plain in listed else name.removeprefix("G") if name not in listed else name


def called(typed: str) -> str:
    """A case by its name in the table, with theirs beside it: "49 (L5)"."""
    own = typed.strip().upper()
    return f"{ALIAS[own]} ({own})" if own in ALIAS else known_name(typed)


def new_and_there(case: Case, first: str, second: str) -> tuple[str, str]:
    """Of two sizes the one that is to go in, and the one whose place it is: the first named, unless it stays."""
    owner = owner_of(case, first, second)
    stays = owner == first if owner else case.says("detail:aboard_now")
    return (second, first) if stays else (first, second)


def owner_of(case: Case, first: str, second: str) -> str:
    """The one of two sizes that stands there, or for which the place is made; "" where it is not told."""
    pair = (first, second)
    for name in (tray_of_whom.whose(case.text), tray_of_whom.aboard(case.text)):
        if known_name(name) in pair:
            return known_name(name)
    wanted = "" if tray_of_whom.is_choice(case.text, pair) else known_name(tray_of_whom.to_go_in(case.text))
    return pair[1 - pair.index(wanted)] if wanted in pair else ""


def kept(case: Case, topics: Iterable[str]) -> tuple[str, ...]:
    """The cue of the case for which the place is made, or that of the turn before, for the turns that follow."""
    if "group-size" not in topics:
        return ()
    second = case.second.get("battery.group")
    first = known_name(str(case.said("battery.group") or ""))
    stood = owner_of(case, first, known_name(str(second.value))) if second else stands(case.cues)
    return (f"{STANDS}{stood}",) if stood else ()


def stands(cues: Iterable[str]) -> str:
    """The case that an earlier turn told to stand in the place, by the cues of its thread; "" for none."""
    return next((name.removeprefix(STANDS) for name in cues if name.startswith(STANDS)), "")


def one_and_several(case: Case) -> tuple[str, str, float] | None:
    """The large case of which one is weighed against several of another, that one and how many: "one 8D or two 31s"."""
    found = ONE_OR_MANY.search(case.text) or MANY_OR_ONE.search(case.text)
    if found is None or tray_of_whom.whose(case.text):  # "a 31 where a 27 is, or two 24s"
        return None
    counted = NUMBERS.get(found["many"].lower()) or float(found["many"])
    return known_name(found["large"]), known_name(found["small"]), counted


def told(case: Case) -> tuple[str, tuple[Option, ...]] | None:
    """The two of "one 31 or two 24s", where the message holds such a choice and the table both."""
    second = case.second.get("battery.group")
    weighed = one_and_several(case)
    if second is None or not (weighed or case.says("detail:one_or_two")):
        return None
    both = weighed[:2] if weighed else (str(case["battery.group"]), str(second.value))
    names = [known_name(name) for name in both]
    try:
        rows = [reference.row("group_sizes", group=name) for name in names]
    except UnknownValue:
        return None
    case.others().known("battery.group")
    case.step("What a case usually has is no promise: the label decides", "typical-case", rows[0]["length"].cite)
    return one_or_two(case, (names[0], rows[0]), (names[1], rows[1]))


def one_or_two(case: Case, one: tuple[str, Row], smaller: tuple[str, Row]) -> tuple[str, tuple[Option, ...]]:
    """One large case or several smaller ones: the sentence, and what they usually have, side by side."""
    weighed = one_and_several(case)
    count = weighed[2] if weighed else max(2.0, float(case.get("battery.count", 2.0)))
    sides = ((one[0], one[1], 1.0), (smaller[0], smaller[1], count))
    names = [
        f"one group {size}" if number == 1 else f"{supply.counted(number)} group {size} in parallel"
        for size, _, number in sides
    ]
    options = tuple(
        Option(name, "information", usual_figures(row, number))
        for name, (_, row, number) in zip(names, sides, strict=True)
    )
    case.step("In parallel the amp-hours and cranking amps of alike batteries add up", "od1002")
    ranges = [
        say.between(float(row["cca_low"].value) * number, float(row["cca_high"].value) * number, "CCA", 0)
        for _, row, number in sides
    ]
    need = ""
    if "load.current" in case:
        wanted = cranking.required_cca(case, float(case["load.peak"]))
        need = f"; {supply.load_name(case)} needs {say.cca(math.ceil(wanted - 1e-6))}"
    head = f"{say.capital(names[0])} usually has {ranges[0]}, {names[1]} {ranges[1]}{need}, so the labels decide."
    return head, options


def usual(name: str) -> str:
    """What a lead battery of a case usually has: "95 to 125 Ah and 650 to 1150 CCA"."""
    case = reference.row("group_sizes", group=name)
    cca = say.between(float(case["cca_low"].value), float(case["cca_high"].value), "CCA")
    try:
        row = reference.row("typical_cases", group=name)
    except UnknownValue:
        return cca
    return f"{say.between(float(row['low'].value), float(row['high'].value), 'Ah')} and {cca}"


def listed(text: str) -> tuple[str, ...]:
    """Three and more cases of one message, by their names in the table; none where one is not there."""
    names = tuple(dict.fromkeys(known_name(name) for name in tray_of_whom.row(text)))
    known = {str(row["group"].value) for row in reference.rows("group_sizes")}
    return names if len(names) > 2 and set(names) <= known else ()


def usual_figures(row: Row, count: float) -> tuple[Figure, ...]:
    """What so many batteries of a case usually have together, and the room that they take side by side."""
    cca, weight = ([float(row[f"{name}_{end}"].value) * count for end in ("low", "high")] for name in ("cca", "kg"))
    return (
        Figure("usual_cca", "usual CCA", cca[0], "A", *cca),
        Figure("usual_weight", "usual weight", weight[0], "kg", *weight),
        Figure("length", "length", float(row["length"].value), "mm"),
        Figure("width", "width side by side" if count > 1 else "width", float(row["width"].value) * count, "mm"),
        Figure("height", "height", float(row["height"].value), "mm"),
    )
