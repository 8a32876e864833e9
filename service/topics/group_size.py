"""Case sizes: how large a group is, and whether one fits in the place of another."""

from __future__ import annotations

import math

from service import reference, say
from service.case import Case
from service.reference import Row, UnknownValue
from service.reply import Answer, Figure, Option
from service.rules import cranking, supply
from service.topic import Topic

SIDES = ("length", "width", "height")
LARGER = {"length": "longer", "width": "wider", "height": "higher"}
ALIAS = {"H8": "49", "L5": "49", "H7": "94R", "L4": "94R"}  # European cases with the same outline

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
    if "battery.group" not in case and case.says("detail:group_meaning"):
        case.step("A group number tells the size of the case and its terminals, not the power", "group-pages")
        head = "A group number tells the size of the case and its terminals, not the power; the label tells CCA and Ah."
        return TOPIC.says("information", head)
    name = known_name(str(case["battery.group"]))
    try:
        row = reference.row("group_sizes", group=name)
    except UnknownValue:
        head = f"Group {name} is not in our table: please measure the battery, or tell us another case size."
        return TOPIC.needs("battery.group", headline=head)
    note(case, name, row)
    second = case.second.get("battery.group")
    if second is None:
        head = f"Group {name} is at most {sizes(row)}, the height over the terminals."
        return TOPIC.says("information", head, *figures(row))
    return two_cases(case, name, row, known_name(str(second.value)))


def known_name(group: str) -> str:
    """A case as the table writes it: "group 24" is 24, H8 is 49; 31S and 27M have the outline of 31 and 27."""
    name = group.strip().upper().removeprefix("GROUP").strip()
    name = ALIAS.get(name, name)
    plain = name.rstrip("AMPST")
    listed = {str(row["group"].value) for row in reference.rows("group_sizes")}
    return plain if name not in listed and plain in listed else name.removeprefix("G") if name not in listed else name


def note(case: Case, name: str, row: Row) -> None:
    """The outline and what such a battery usually has, as steps."""
    room = f"Allow 10{say.NB}mm each way for the hold-down and 20{say.NB}mm above for the lugs"
    case.step(f"Group {name}: {sizes(row)}", row["length"].cite)
    case.step(room, row["length"].cite)
    usual = say.between(float(row["cca_low"].value), float(row["cca_high"].value), "CCA")
    weight = say.between(float(row["kg_low"].value), float(row["kg_high"].value), "kg")
    case.step(f"A group {name} in lead usually has {usual} and weighs {weight}, but the label decides", "typical-case")


def sizes(row: Row) -> str:
    """Length, width and height, in inches as well."""
    metric = [float(row[side].value) for side in SIDES]
    inches = " x ".join(say.number(side / 25.4, 1) for side in metric)
    return f"{' x '.join(say.number(side) for side in metric)}{say.NB}mm ({inches}{say.NB}in)"


def figures(row: Row) -> tuple[Figure, ...]:
    """The contract's three."""
    return tuple(Figure(side, side, float(row[side].value), "mm") for side in SIDES)


def two_cases(case: Case, first: str, row: Row, second: str) -> Answer:
    """Whether one goes where the other stands: the one named first, unless it is the one aboard now."""
    try:
        other = reference.row("group_sizes", group=second)
    except UnknownValue:
        head = f"Group {second} is not in our table; group {first} is at most {sizes(row)}."
        return TOPIC.needs("battery.group", headline=head, figures=figures(row))
    case.others().known("battery.group")
    note(case, second, other)
    if case.says("detail:one_or_two"):
        return one_or_two(case, (first, row), (second, other))
    pair = ((first, row), (second, other))
    (name, new), (named, there) = reversed(pair) if case.says("detail:aboard_now") else pair
    options = tuple(Option(f"group {size}", "information", figures(one)) for size, one in ((name, new), (named, there)))
    over = {side: float(new[side].value) - float(there[side].value) for side in SIDES}
    too_big = {side: more for side, more in over.items() if more > 2}  # the tolerance of a case
    if case.says("detail:space_given"):
        head = f"Group {name} is at most {sizes(new)}: it needs 10{say.NB}mm more each way for the hold-down."
        return TOPIC.says("information", head, *figures(new), compare=options)
    if too_big:
        more = say.listed([f"{say.number(size)}{say.NB}mm {LARGER[side]}" for side, size in too_big.items()])
        head = f"No: a group {name} does not fit in the place of a group {named}, as it is {more}."
        return TOPIC.says("no", head, *figures(new), compare=options)
    head = f"Yes: a group {name} is no larger than a group {named}; check the hold-down and the side of the plus post."
    return TOPIC.says("yes", head, *figures(new), compare=options)


def one_or_two(case: Case, one: tuple[str, Row], smaller: tuple[str, Row]) -> Answer:
    """One large case or several smaller ones: what they usually have, side by side; the labels decide."""
    count = max(2.0, float(case.get("battery.count", 2.0)))
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
    head = f"{names[0].capitalize()} usually has {ranges[0]}, {names[1]} {ranges[1]}{need}, so the labels decide."
    return TOPIC.says("information", head, compare=options)


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
