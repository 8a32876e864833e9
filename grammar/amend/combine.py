"""What is told of batteries together: one more, strings of a bank, half the current of before."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from math import prod

from grammar.amend.how_full import charges
from grammar.amend.strings import APART, FAR, SYSTEM, both_ways, in_strings, strings_of, two_by_two, wired_for
from grammar.lexicon.vocabulary import Found
from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.canonical import in_unit
from grammar.text.numbers import value
from grammar.text.patterns import regex
from grammar.told.batteries.banks import banks_named
from grammar.told.batteries.counted import counted_so, plurals, without_choice
from grammar.told.batteries.drawn import drawn
from grammar.told.batteries.how_full import charge_so
from grammar.told.batteries.left_of import left_of
from grammar.told.batteries.rows import in_rows
from grammar.told.batteries.two_cases import two_cases
from grammar.told.batteries.watered import watered
from grammar.told.batteries.weights import kilos_of_them
from grammar.told.cables.studs import inch_sizes
from grammar.told.chargers.between_batteries import between_batteries
from grammar.told.chargers.outlets import floating, outlets, unparted
from grammar.told.chargers.serves import serves
from grammar.told.chargers.stages import staged
from grammar.told.chargers.straight import straight
from grammar.told.chargers.two_sides import two_sides
from grammar.told.currents.occasions import on_each_occasion
from grammar.told.readings.points import points
from grammar.told.words import stated_at
from grammar.told.years.birthdays import years_told
from grammar.told.years.said_to_be import age_said, made_up

TIMES = {"half_of_it": 0.5, "twice_it": 2.0}  # "half the amps" of what was said before
MAIN = regex(r"\W*(?:main|house|engine|boat|sys)")  # what gives
ADDED = regex(r"\b(?:and|plus|also|alarm|tracker|monitor|pump|radio)\b|[+&]")
BY = frozenset({"x", "by", "*", "×"})
WHOLE = ("space.volume", "battery.nominal", "charger.outputs", "battery.weight")  # no figure in their span is another
THERE_ARE = regex(
    r"\b(?:there are|there're|i have|we have) (two|three|four|[2-8])(?: of them)?(?=\W*(?:$|[.?!,;]))", re.I
)
EACH = regex(r"\beach\b|\bapiece\b", re.IGNORECASE)
FOR_ONE_LOAD = regex(
    r"\b(?:(?:just|only|solely|purely) for (?:the |our |my )?(?:bow|stern|thruster|windlass)"
    r"|for (?:the |our |my )?(?:bow |stern )?(?:thruster|bow|stern|windlass) (?:alone|only|by itself))\b",
    re.IGNORECASE,
)
NO_BATTERIES = frozenset(
    {"year", "season", "winter", "summer", "go", "time", "thing", "question", "month", "week", "trip"}
)


def combined(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with those that speak of several batteries, or of what was said, as a whole."""
    stated = two_cases(scene, without_choice(scene, stated))
    stated = between_batteries(scene, two_sides(scene, _sides(scene, _sums(scene, stated))))
    stated = in_rows(scene, drawn(scene, on_each_occasion(scene, stated)))
    stated = left_of(scene, made_up(scene, serves(scene, plurals(scene, stated))))
    found = [
        *_volume(scene),
        *(list(in_strings(scene)) or list(strings_of(scene, stated)) or both_ways(scene, stated)),
        *_one_more(scene, stated),
        *_shares(scene, stated),
        *two_by_two(scene, stated),
        *wired_for(scene, stated),
        *charges(scene, stated),
        *banks_named(scene),
        *(list(years_told(scene, stated)) or age_said(scene, stated)),
        *inch_sizes(scene, stated),
        *_there_are(scene, stated),
        *outlets(scene, stated),
        *floating(scene, stated),
        *staged(scene, stated),
        *unparted(scene, stated),
        *straight(scene, stated),
        *counted_so(scene, stated),
        *charge_so(scene, stated),
        *kilos_of_them(scene, stated),
        *watered(scene, stated),
        *points(scene, stated),
    ]
    told = {item.fact for item in found}
    boxes = [item.span for item in found if item.fact in WHOLE]
    banks = [item.span for item in found if item.fact == "bank.count"]  # "1 house" among them counts no battery
    kept = (
        item
        for item in stated
        if not any(
            start <= item.span[0] < end for start, end in (boxes + banks if item.fact == "battery.count" else boxes)
        )
    )
    return [*(item for item in kept if item.fact not in told), *found]


def _one_more(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "A second identical one next to it": one more than there were."""
    more = [
        found
        for found in scene.named("role", "one_more")
        if found.end >= len(scene.tokens) or not (scene.at_word[found.end].dim or scene.word(found.end) in NO_BATTERIES)
    ]
    if not more or any(item.fact == "battery.count" and item.value != 1.0 for item in stated):
        return
    if FOR_ONE_LOAD.search(scene.text):  # "a second one for the thruster alone" stands apart from the first
        return
    before = (item.value for item in scene.said if item.fact == "battery.count" and isinstance(item.value, float))
    second = any("second" in map(scene.word, range(found.start, found.end)) for found in more)  # with it there are two
    count = 2.0 if second else next(before, 1.0) + 1.0
    yield stated_at(scene, "battery.count", count, more[0].start, more[0].end)


def _there_are(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """Their number told after them: "the old ones are 30 kg each and there are two"."""
    found = THERE_ARE.search(scene.text)
    if found and EACH.search(scene.text) and not any(item.fact == "battery.count" for item in stated):
        yield Stated("battery.count", value(found[1].lower()), "", found[0], found.span(), how="default")


def _shares(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Half the amps": a share of the current said before."""
    halved = scene.named("role", "half_the_watts")
    watts = [item.value for item in scene.said if item.fact == "load.power"]
    if halved and watts and isinstance(watts[0], float) and not any(item.fact == "load.power" for item in stated):
        half = stated_at(scene, "load.power", watts[0] / 2, halved[0].start, halved[0].end)
        yield replace(half, unit="watt")
    shares: list[Found] = [found for found in scene.roles if found.concept in TIMES]
    before = [item.value for item in scene.said if item.fact == "load.current"]
    if not shares or not before or isinstance(before[0], str) or any(item.fact == "load.current" for item in stated):
        return
    share = shares[0]
    yield stated_at(scene, "load.current", float(before[0]) * TIMES[share.concept], share.start, share.end)


def _volume(scene: Scene) -> Iterator[Stated]:
    """The volume of a locker told by its three sides: "0.6 x 0.5 x 0.4 m"."""
    if "space" not in scene.heads:
        return
    for first, second, third in zip(scene.items, scene.items[2:], scene.items[4:], strict=False):
        sides = (first, second, third)
        joined = {scene.items[first.at + 1].name, scene.items[second.at + 1].name} <= BY
        if not joined or not all(side.dim in ("LENGTH", "INCH", "MM") for side in sides):
            continue
        metres = [in_unit(float(side.quantity.value), side.quantity.unit, "meter") for side in sides]
        if all(metres):
            value = prod(side for side in metres if side is not None)
            yield replace(stated_at(scene, "space.volume", value, first.start, third.end), unit="meter ** 3")
            return


def _sums(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Drains that flow together as one, panels that are counted as all their watts: "2 x 50 W"."""
    drains = [item for item in stated if item.fact == "drain.current" and isinstance(item.value, float)]
    if len(drains) == 2 and drains[0].value != drains[1].value and _together(scene, *drains):
        total = sum(float(item.value) for item in drains)
        stated = [item for item in stated if item not in drains] + [replace(drains[0], value=total)]
    return [_counted(scene, item) for item in stated]


def _together(scene: Scene, one: Stated, other: Stated) -> bool:
    """Whether two drains are told as two things that draw: "the monitor takes 3 mA, the alarm 15"."""
    first, last = sorted((one.span, other.span))
    between = scene.text[first[1] : last[0]].lower()
    return len(between) < FAR and not APART.search(between) and bool(ADDED.search(between))


def _counted(scene: Scene, item: Stated) -> Stated:
    lamps = item.fact == "load.power" and any(other.name == "electronics" for other in scene.items)
    if (item.fact != "solar.power" and not lamps) or not isinstance(item.value, float):
        return item
    found = next((piece for piece in scene.quantities("WATT") if piece.part and piece.part.span == item.span), None)
    before = scene.before(found) if found is not None else None
    if before is None or before.dim != "COUNT" or isinstance(before.quantity.value, str):
        return item
    return replace(item, value=item.value * before.quantity.value)


def _sides(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Of two systems with a converter between them the one that gives: "12 V boat, 24 V thruster, one alternator"."""
    volts = [item for item in stated if item.fact == "bank.voltage"]
    known = any(item.fact == "charger.input_voltage" for item in stated)
    if known or {item.value for item in volts} != {12.0, 24.0} or not {"dcdc", "alternator"} & scene.heads:
        return stated
    given = next((item for item in volts if MAIN.match(scene.text[item.span[1] :].lower())), None)
    given = given or next(item for item in volts if item.value == SYSTEM)
    side = replace(given, fact="charger.input_voltage", how="default")
    return [*(item for item in stated if item not in volts or item.value != given.value), side]
