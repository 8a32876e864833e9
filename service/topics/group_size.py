"""Case sizes: how large a group is, and whether one fits in the place of another."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import replace

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.judgements import case_sizes, cranking, in_a_place, supply
from service.judgements.case_sizes import LARGER
from service.judgements.in_a_place import SIDES
from service.reference import Row, UnknownValue
from service.reply import Answer, Option
from service.sentences.cases import (
    by_side,
    either_in_place,
    figures,
    in_place,
    in_what_is_spare,
    low_enough,
    or_another,
    several_in_place,
    those_that_go_in,
    what_it_brings,
)
from service.told import tray, tray_of_whom
from service.topic import Topic

SAID = {"length": "detail:by_length", "width": "detail:by_width", "height": "detail:by_height"}
GAIN = regex(  # "does the bigger case bring anything", "what do I gain"
    r"\b(?:brings?|gains?|better|advantages?|benefits?|worth|difference|any more"
    r"|stronger|strongest|(?:more|most) (?:power|punch|capacity|cca|amps|ah))\b",
    re.IGNORECASE,
)
FITS = regex(
    r"\b(?:fits?|(?:goe?s?|drops?|slots?) (?:in\w*|where|into))\b"
    r"|\b(?:can|could|may) (?:i|we) (?:swap|replace|change|exchange)\b",
    re.IGNORECASE,
)
HOW_LONG = regex(r"\bhow (?:long|wide|high|tall)\b|\b(?:dimension|measure)s?\b", re.IGNORECASE)
HOW_BIG = regex(r"\bhow (?:big|large|long|wide|high|tall)\b|\b(?:size|dimension|measure|outline)\w*\b", re.I)
WHICH = regex(
    r"\b(?:which|what)\b[^.?!;]{0,30}\b(?:sizes?|groups?|case|batter(?:y|ies)|one|fits?)\b"
    r"|\bwhat (?:fits|will fit|goes in)\b"
    r"|\b(?:sizes?|groups?|case|batter(?:y|ies)) (?:that|to) (?:will )?(?:fits?|goe?s?)\b",
    re.IGNORECASE,
)
WHICH_ELSE = regex(
    r"\b(?:which|what)\b[^.?!;]{0,30}\b(?:would|will|does|do|could|can|else|fits?|goes|instead)\b", re.IGNORECASE
)
ROOM = f"Allow 10{say.NB}mm each way for the hold-down and 20{say.NB}mm above for the lugs"

TOPIC = Topic(
    "group-size",
    "Case size",
    cautions=("lift",),
    likely={"battery.group": (("24", "24"), ("27", "27"), ("31", "31"), ("8D", "8D"))},
    unsure={"battery.group": "We can't say yet: the case size on the label decides, such as group 24, 27 or 31."},
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The dimensions of a case, or of two side by side."""
    if names := case_sizes.listed(case.text):
        return several(case, names)
    if "battery.group" not in case and (found := without_a_group(case)):
        return found
    name = case_sizes.known_name(str(case["battery.group"]))
    try:
        row = reference.row("group_sizes", group=name)
    except UnknownValue:
        head = f"Group {name} is not in our table: please measure the battery, or tell us another case size."
        return TOPIC.needs("battery.group", headline=head)
    name = case_sizes.called(str(case["battery.group"])) if "battery.group" not in case.second else name
    note(case, name, row)
    second = case.second.get("battery.group")
    stood = case_sizes.stands(case.cues)
    if second is None and stood not in ("", name) and not in_a_place.NOT_ITS_ROOM.search(case.text.replace("CCA", "")):
        return beside_the_one_there(case, (name, row), (stood, reference.row("group_sizes", group=stood)))
    place = in_a_place.told(case)
    if second is None and place:
        found = in_place(TOPIC, name, row, place)
        return or_another(TOPIC, found, place) if WHICH_ELSE.search(case.text) else found
    if second is None and (small := too_small(case, name, row)):
        return small
    if second is None:
        head = f"Group {name} is at most {sizes(row, tray.in_centimetres(case.text))}, the height over the terminals."
        return TOPIC.says("information", head, *figures(row))
    other = case_sizes.known_name(str(second.value))
    if HOW_LONG.search(case.text) and not (FITS.search(case.text) or place or case_sizes.owner_of(case, name, other)):
        return several(case, (name, other))
    return two_cases(case, name, row, other)


def without_a_group(case: Case) -> Answer | None:
    """The answer where no group is named: what it means, what goes under or into a place, which one a battery is."""
    if case.says("detail:group_meaning"):
        case.step("A group number tells the size of the case and its terminals, not the power", "group-pages")
        head = "A group number tells the size of the case and its terminals, not the power; the label tells CCA and Ah."
        return TOPIC.says("information", head)
    if height := tray.headroom(case.text):
        return low_enough(TOPIC, height)
    if outsides := tray.of_the_case(case.text):
        return by_measures(case, outsides)
    if (place := in_a_place.told(case)) and WHICH.search(case.text):
        case.step(ROOM, "group-pages")
        return those_that_go_in(TOPIC, place)
    return None


def by_measures(case: Case, outsides: tuple[tray.Place, ...]) -> Answer:
    """The case that has the measures of a battery, in a unit that fits one, with its own as the table holds them."""
    outside = next((one for one in outsides if in_a_place.of_measures(one)), outsides[0])
    names, theirs = in_a_place.of_measures(outside), in_a_place.inside(outside)
    if not names:
        return TOPIC.needs(
            "battery.group", headline=f"No case of our table has {theirs}: the label may show its group."
        )
    row = reference.row("group_sizes", group=names[0])
    note(case, names[0], row)
    named = say.listed(names, "or")
    head = f"By its measures it is a group {named}, at most {sizes(row)}: check the side of the plus post."
    return TOPIC.says("information", head, *figures(row))


def beside_the_one_there(case: Case, new: tuple[str, Row], there: tuple[str, Row]) -> Answer:
    """A case that is named later, held against the one of which was told that it stands in the place."""
    options = tuple(Option(f"group {name}", "information", figures(row)) for name, row in (new, there))
    if GAIN.search(case.text):
        told, options = what_it_brings(case, (case_sizes.known_name(new[0].partition(" ")[0]), new[1]), there)
        return TOPIC.says("information", f"{told}; the labels decide.", compare=options)
    over = {side: float(new[1][side].value) - float(there[1][side].value) for side in SIDES}
    return in_place_of(case, new, there, over, options, known=True)


def too_small(case: Case, name: str, row: Row) -> Answer | None:
    """That a case does not go into a place whose length or height alone is told; else None."""
    long, high = tray.length_alone(case.text), tray.headroom(case.text)
    if long and too_short(row, long):
        has, wants = say.quantity(long, "mm"), say.quantity(float(row["length"].value), "mm")
        return TOPIC.says("no", f"No: a group {name} is up to {wants} long, and the place has {has}.", *figures(row))
    if high and high < float(row["height"].value):
        has, wants = say.quantity(high, "mm"), say.quantity(float(row["height"].value), "mm")
        return TOPIC.says("no", f"No: a group {name} is up to {wants} high, and the place has {has}.", *figures(row))
    return None


def too_short(row: Row, long: float) -> bool:
    """Whether a place of so many mm is shorter than the case."""
    return long < float(row["length"].value) + tray.TOLERANCE


def note(case: Case, name: str, row: Row) -> None:
    """The outline and what such a battery usually has, as steps."""
    case.step(f"Group {name}: {sizes(row)}", row["length"].cite)
    case.step(ROOM, row["length"].cite)
    usual = say.between(float(row["cca_low"].value), float(row["cca_high"].value), "CCA")
    weight = say.between(float(row["kg_low"].value), float(row["kg_high"].value), "kg")
    case.step(f"A group {name} in lead usually has {usual} and weighs {weight}, but the label decides", "typical-case")


def sizes(row: Row, centimetres: bool = False) -> str:
    """Length, width and height, in inches as well."""
    metric = [float(row[side].value) for side in SIDES]
    inches = " x ".join(say.number(side / 25.4, 1) for side in metric)
    shown = (say.number(side / 10, 1) if centimetres else say.number(side) for side in metric)
    return f"{' x '.join(shown)}{say.NB}{'cm' if centimetres else 'mm'} ({inches}{say.NB}in)"


def several(case: Case, names: tuple[str, ...]) -> Answer:
    """Three and more cases side by side: in the place that was measured, else what each usually has, or its size."""
    rows = {name: reference.row("group_sizes", group=name) for name in names}
    for name, row in rows.items():
        note(case, name, row)
    if place := in_a_place.told(case):
        return several_in_place(TOPIC, rows, place)
    if HOW_BIG.search(case.text):
        options = tuple(Option(f"group {name}", "information", figures(row)) for name, row in rows.items())
        told = ", ".join(f"group {name} is {outline(row)}" for name, row in rows.items())
        return TOPIC.says("information", f"{say.capital(told)}.", compare=options)
    return by_rating(case, rows)


def by_rating(case: Case, rows: Mapping[str, Row]) -> Answer:
    """What each of some cases usually has, and what the thruster told of needs."""
    options = tuple(
        Option(f"group {name}", "information", case_sizes.usual_figures(row, 1.0)) for name, row in rows.items()
    )
    need, end = "", "so the labels decide"
    if "load.current" in case:
        wanted = math.ceil(cranking.required_cca(case, float(case["load.peak"])) - 1e-6)
        need = f"; {supply.load_name(case)} needs {say.cca(wanted)}"
        if all(float(row["cca_low"].value) >= wanted for row in rows.values()):
            end = f"so {'either' if len(rows) == 2 else 'any of them'} will do if its label says as much"
        if all(float(row["cca_high"].value) < wanted for row in rows.values()):
            end = "so neither does alone" if len(rows) == 2 else "so none of them does alone"
            end = f"{end}: take two alike in parallel"
    ranges = (say.between(float(row["cca_low"].value), float(row["cca_high"].value), "CCA", 0) for row in rows.values())
    first, *rest = (f"{name} {has}" for name, has in zip(rows, ranges, strict=True))
    told = ", ".join((f"Group {first.replace(' ', ' usually has ', 1)}", *(f"group {one}" for one in rest)))
    return TOPIC.says("information", f"{told}{need}, {end}.", compare=options)


def outline(row: Row) -> str:
    """Length, width and height in millimetres."""
    return f"{' x '.join(say.number(float(row[side].value)) for side in SIDES)}{say.NB}mm"


def two_cases(case: Case, first: str, row: Row, second: str) -> Answer:
    """Whether one goes where the other stands: the one named first, unless it is the one aboard now."""
    try:
        other = reference.row("group_sizes", group=second)
    except UnknownValue:
        head = f"Group {second} is not in our table; group {first} is at most {sizes(row)}."
        return TOPIC.needs("battery.group", headline=head, figures=figures(row))
    case.others().known("battery.group")
    note(case, second, other)
    pair = ((first, row), (second, other))
    weighed = case_sizes.one_and_several(case)
    if weighed or case.says("detail:one_or_two"):
        one, several_of = reversed(pair) if weighed and weighed[0] == second else pair
        head, options = case_sizes.one_or_two(case, one, several_of)
        return TOPIC.says("information", head, compare=options)
    owner = case_sizes.owner_of(case, first, second)
    known = bool(owner)
    stays = case_sizes.new_and_there(case, first, second) != (first, second)
    (name, new), (named, there) = reversed(pair) if stays else pair
    options = tuple(Option(f"group {size}", "information", figures(one)) for size, one in ((name, new), (named, there)))
    over = {side: float(new[side].value) - float(there[side].value) for side in SIDES}
    fits = known and FITS.search(case.text) is not None  # "what differs, and does the 31 fit where the 27 was"
    gain = GAIN.search(case.text) and not any(case.says(cue) for cue in SAID.values())
    if gain:
        told, options = what_it_brings(case, (name, new), (named, there))
        if fits:
            case.because(f"{told}; the labels decide", "typical-case")
            gain = None
    for side in (side for side, cue in SAID.items() if case.says(cue)):
        measure = say.quantity(float(new[side].value), "mm")
        head = f"Group {name} {by_side(side, over[side])} group {named}: {measure}."
        return TOPIC.says("information", head, *figures(new), compare=options)
    if place := in_a_place.told(case):
        found = in_place(TOPIC, name, new, place) if stays or owner else either_in_place(TOPIC, place, pair)
        verdicts = {option.label: option.verdict for option in found.compare}
        if gain:
            case.because(f"{told}; the labels decide", "typical-case")
        shown = tuple(replace(option, verdict=verdicts.get(option.label, option.verdict)) for option in options)
        return replace(found, compare=shown if owner or stays or gain else found.compare)
    if gain:
        return TOPIC.says("information", f"{told}; the labels decide.", compare=options)
    if not known and "load.current" in case and tray_of_whom.is_choice(case.text, (first, second)):
        return by_rating(case, dict(pair))
    return in_place_of(case, (name, new), (named, there), over, options, known)


def in_place_of(
    case: Case,
    one: tuple[str, Row],
    other: tuple[str, Row],
    over: Mapping[str, float],
    options: tuple[Option, ...],
    known: bool,
) -> Answer:
    """Whether one case goes where the other one stands; `known`: they tell which of the two stands there."""
    (name, new), (named, there) = one, other
    if not (tray_of_whom.aboard(case.text) or FITS.search(case.text)) and case_sizes.SAME.search(case.text):
        verdict, head = case_sizes.the_same(name, named, over)
        return TOPIC.says(verdict, head, *figures(new), compare=options)
    too_big = {side: more for side, more in over.items() if more > 2}  # the tolerance of a case
    free, whole = tray.spare(case.text), tray.length_alone(case.text)
    if free is None and whole is not None:
        free = whole - float(there["length"].value)
    if "length" in too_big and free is not None:
        return replace(in_what_is_spare(TOPIC, name, named, too_big, free, new), compare=options)
    if case.says("detail:space_given") and not known:
        head = f"Group {name} is at most {sizes(new)}: it needs 10{say.NB}mm more each way for the hold-down."
        return TOPIC.says("information", head, *figures(new), compare=options)
    if too_big:
        more = say.listed([f"{say.number(size)}{say.NB}mm {LARGER[side]}" for side, size in too_big.items()])
        head = f"No: a group {name} does not fit in the place of a group {named}, as it is {more}."
        return TOPIC.says("no", head, *figures(new), compare=options)
    head = f"Yes: a group {name} is no larger than a group {named}; check the hold-down and the side of the plus post."
    if tray.in_centimetres(case.text):
        own = f"{' x '.join(say.number(float(new[side].value) / 10, 1) for side in SIDES)}{say.NB}cm"
        head = f"Group {name} is {own}, no larger than a group {named}; check hold-down and plus post."
    return TOPIC.says("yes", head, *figures(new), compare=options)
