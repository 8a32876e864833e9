"""Case sizes put into words: one in the place of another, two side by side."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from service import reference, say
from service.case import Case
from service.judgements import case_sizes, in_a_place
from service.judgements.case_sizes import LARGER, SMALLER
from service.judgements.in_a_place import SIDES
from service.reference import Row
from service.reply import Answer, Figure, Option, strictness
from service.told import tray
from service.topic import Topic

AS = {"length": "long", "width": "wide", "height": "high"}
MOST_NAMED = 4


def by_side(side: str, more: float) -> str:
    """How one side of a case compares, in words."""
    if not more:
        return f"is as {AS[side]} as"
    return f"is {say.number(abs(more))}{say.NB}mm {(LARGER if more > 0 else SMALLER)[side]} than"


def in_place(topic: Topic, name: str, row: Row, place: tray.Place) -> Answer:
    """Whether a case goes into a place that was measured, and leaves room for its hold-down and lugs."""
    fits = in_a_place.fits(row, place)
    has, alone = fits.has, fits.alone
    told = f"with its hold-down it wants {in_a_place.across(fits.wanted, place.inches)}, and the place has "
    told += in_a_place.across(has.values(), place.inches)
    if fits.verdict == "no":
        short = say.listed([AS[side] for side in fits.short], "or")
        head = f"No: a group {name} does not go in: {told}, not {short} enough."
        return topic.says("no", head, *figures(row))
    high = "" if "height" in has else f"; it is {say.quantity(alone['height'], 'mm')} high"
    if fits.verdict == "marginal":
        return topic.says("marginal", f"Only just: a group {name} goes in, but {told}{high}.", *figures(row))
    return topic.says("yes", f"Yes: a group {name} goes in: {told}{high}.", *figures(row))


def either_in_place(topic: Topic, place: tray.Place, pair: tuple[tuple[str, Row], ...]) -> Answer:
    """Two sizes for one place that was measured: the first, and beside it how the other fares."""
    (first, other), names = [in_place(topic, name, row, place) for name, row in pair], [name for name, _ in pair]
    options = tuple(Option(f"group {name}", one.verdict) for name, one in zip(names, (first, other), strict=True))
    fares = {
        "yes": "goes in",
        "marginal": "only just",
        "no": "does not either" if first.verdict == "no" else "does not",
    }
    head = f"{first.headline.removesuffix('.')}; a group {names[1]}: {fares[other.verdict]}."
    return replace(first, headline=head, compare=options)


def in_what_is_spare(topic: Topic, name: str, named: str, over: dict[str, float], free: float, row: Row) -> Answer:
    """Whether a longer case goes where another stands with so much free along it."""
    longer = over["length"]
    rest = [f"{say.number(more)}{say.NB}mm {LARGER[side]}" for side, more in over.items() if side != "length"]
    also = f"; it is also {say.listed(rest)}" if rest else ""
    spare = f"{say.number(free)}{say.NB}mm is spare"
    told = f"it is {say.number(longer)}{say.NB}mm longer than a group {named}, and {spare}"
    if free < longer + tray.TOLERANCE:
        lacking = "which is too little" if free < longer else "with no room for the hold-down"
        return topic.says("no", f"No: a group {name} does not fit: {told}, {lacking}{also}.", *figures(row))
    return topic.says("marginal", f"Only just: a group {name} may fit: {told}{also}.", *figures(row))


def what_it_brings(case: Case, one: tuple[str, Row], other: tuple[str, Row]) -> tuple[str, tuple[Option, ...]]:
    """What one case has over another, as a sentence, and both side by side."""
    pair = sorted((one, other), key=lambda item: -float(item[1]["cca_high"].value))
    (first, _), (second, _) = pair
    told = f"Group {first} usually has {case_sizes.usual(first)}, group {second} {case_sizes.usual(second)}"
    options = tuple(
        Option(f"group {name}", "information", (*case_sizes.usual_figures(row, 1.0),)) for name, row in (one, other)
    )
    return told, options


def several_in_place(topic: Topic, rows: Mapping[str, Row], place: tray.Place) -> Answer:
    """Which of several cases go into a place that was measured; the best one's verdict stands."""
    found = {name: in_place(topic, name, row, place) for name, row in rows.items()}
    fares = {"yes": "goes in", "marginal": "only just goes in", "no": "does not go in"}
    told = ", ".join(f"a group {name} {fares[one.verdict]}" for name, one in found.items())
    best = min(found.values(), key=lambda one: strictness(one.verdict))
    options = tuple(Option(f"group {name}", one.verdict, figures(rows[name])) for name, one in found.items())
    has = f"the place has {in_a_place.inside(place)}"
    return topic.says(best.verdict, f"{say.capital(told)}: {has}, hold-down counted.", compare=options)


def low_enough(topic: Topic, height: float) -> Answer:
    """The cases that go under so many mm with their lugs, or the lowest there are."""
    rows = sorted(reference.rows("group_sizes"), key=lambda row: float(row["height"].value))
    room, lugs = say.quantity(height, "mm"), say.quantity(tray.LUGS, "mm")
    low = [str(row["group"].value) for row in rows if float(row["height"].value) + tray.LUGS <= height]
    least = float(rows[0]["height"].value)
    if low:
        named = say.listed([f"group {name}" for name in low[:MOST_NAMED]], "or")
        head = f"With {lugs} above for the lugs {room} takes {named}: the lowest is {say.quantity(least, 'mm')} high."
    else:
        lowest = [f"group {row['group'].value}" for row in rows if float(row["height"].value) == least]
        head = f"None in our table leaves {lugs} for the lugs under {room}: {say.listed(lowest)}, the lowest, "
        head += f"{'have' if len(lowest) > 1 else 'has'} {say.quantity(least, 'mm')}."
    return topic.says("information", head, asks=(topic.ask("battery.group"),))


def those_that_go_in(topic: Topic, place: tray.Place) -> Answer:
    """The cases that go into a place that was measured; with no height told, each one's own."""
    found = {str(row["group"].value): row for row in reference.rows("group_sizes")}
    fit, tight = in_a_place.those_that_go_in(place)
    inside = in_a_place.inside(place)
    low = "" if place.height is not None else ", if it is high enough"
    if fit:
        also = f"; only just: {say.listed(tight[:MOST_NAMED])}" if tight else ""
        head = f"Group {say.listed(fit[:MOST_NAMED], 'or')} goes into {inside} with its hold-down and lugs{low}{also}."
    elif tight:
        named = say.listed(tight[:MOST_NAMED])
        head = f"None of our table with room for hold-down and lugs: {inside} takes group {named} only just{low}."
    else:
        head = f"None of our table goes into {inside}: look for a smaller or lower one by its measures."
    verdict = "yes" if fit else "marginal"
    options = tuple(Option(f"group {name}", verdict, figures(found[name])) for name in (fit or tight)[:MOST_NAMED])
    return topic.says("information", head, compare=options)


def or_another(topic: Topic, found: Answer, place: tray.Place) -> Answer:
    """The no to one case with those that do go in, where that is asked: "and if it won't, which size would?"."""
    if found.verdict != "no":
        return found
    others = those_that_go_in(topic, place)
    named = [option.label for option in others.compare]
    only = " only just" if any(option.verdict == "marginal" for option in others.compare) else ""
    told = f"{say.listed(named, 'or')} goes in{only}" if named else "none in our table does"
    return replace(found, headline=f"{found.headline.removesuffix('.')}; {told}.", compare=others.compare)


def figures(row: Row) -> tuple[Figure, ...]:
    """Length, width and height."""
    return tuple(Figure(side, side, float(row[side].value), "mm") for side in SIDES)
