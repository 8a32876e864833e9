"""What is told of batteries together: one more, strings of a bank, half the current of before."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from math import prod

from grammar.amend.supposed import fallen_to, is_supposed
from grammar.lexicon.vocabulary import Found
from grammar.reading import Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.canonical import in_unit
from grammar.text.numbers import value
from grammar.told.batteries.banks import banks_named
from grammar.told.batteries.counted import counted_so, plurals, without_choice
from grammar.told.batteries.drawn import drawn
from grammar.told.batteries.how_full import charge_so
from grammar.told.batteries.rows import in_rows
from grammar.told.batteries.two_cases import two_cases
from grammar.told.batteries.watered import watered
from grammar.told.batteries.weights import kilos_of_them
from grammar.told.cables.studs import inch_sizes
from grammar.told.chargers.outlets import floating, outlets
from grammar.told.chargers.serves import serves
from grammar.told.chargers.two_sides import two_sides
from grammar.told.readings.points import points
from grammar.told.years.birthdays import years_told
from grammar.told.years.said_to_be import age_said, made_up

IF_FILLED = re.compile(  # "what if I charge them right up first"
    r"\bif (?:i|we|you|he|they) (?:fully )?(?:charged?|fill(?:ed)?|topp?(?:ed)?)(?: up)?"
    r" (?:it|them|her|both|the battery)\b(?: (?:right|fully|all the way|up|full|first))*",
    re.IGNORECASE,
)
NOT_QUITE = frozenset(
    {"half", "quarter", "quarters", "third", "thirds", "fifth", "fifths", "not", "nearly", "almost", "never", "how"}
)
STANDS_SO = frozenset({"with", "disconnected", "unplugged", "both", "isolated", "its", "the", "leads", "cables"})
EMPTY = frozenset({"flat", "empty", "dead"})
TIMES = {"half_of_it": 0.5, "twice_it": 2.0}  # "half the amps" of what was said before
MAIN = re.compile(r"\W*(?:main|house|engine|boat|sys)")  # what gives
APART = re.compile(r"\b(?:or|vs|versus|then|now|instead|not|was|without|to|down)\b|[?]")
JOINED_AGAIN = re.compile(  # "two in a row, then the rows side by side"
    r"\bthen (?:the |those |these |both |join the )*(?:rows|pairs|strings|two|sets|halves|lots|them)\b", re.IGNORECASE
)
ADDED = re.compile(r"\b(?:and|plus|also|alarm|tracker|monitor|pump|radio)\b|[+&]")
MADE_OF = re.compile(r" ?(?:bank|set-?up|set|system|pair) (?:made )?(?:up )?(?:of|from) (?:two|2)\b")
BY = frozenset({"x", "by", "*", "×"})
FAR = 40  # characters
WHOLE = ("space.volume", "battery.nominal", "charger.outputs", "battery.weight")  # no figure in their span is another
SYSTEM = 12.0  # volts of the usual battery
THERE_ARE = re.compile(
    r"\b(?:there are|there're|i have|we have) (two|three|four|[2-8])(?: of them)?(?=\W*(?:$|[.?!,;]))", re.I
)
EACH = re.compile(r"\beach\b|\bapiece\b", re.IGNORECASE)
TWO_BY_TWO = re.compile(r"\b(?:two|2) (?:by|and) (?:two|2)\b", re.IGNORECASE)
FOR_ONE_LOAD = re.compile(
    r"\b(?:(?:just|only|solely|purely) for (?:the |our |my )?(?:bow|stern|thruster|windlass)"
    r"|for (?:the |our |my )?(?:bow |stern )?(?:thruster|bow|stern|windlass) (?:alone|only|by itself))\b",
    re.IGNORECASE,
)
MOST = 12  # batteries of one string
NO_BATTERIES = frozenset(
    {"year", "season", "winter", "summer", "go", "time", "thing", "question", "month", "week", "trip"}
)
STRINGS = 4  # the fewest batteries in series and in parallel


def combined(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with those that speak of several batteries, or of what was said, as a whole."""
    stated = two_cases(scene, without_choice(scene, stated))
    stated = two_sides(scene, _sides(scene, _sums(scene, stated)))
    stated = in_rows(scene, drawn(scene, stated))
    stated = made_up(scene, serves(scene, plurals(scene, stated)))
    found = [
        *_volume(scene),
        *(list(_strings(scene)) or list(_in_strings(scene, stated)) or _both_ways(scene, stated)),
        *_one_more(scene, stated),
        *_shares(scene, stated),
        *_two_by_two(scene, stated),
        *_wired_for(scene, stated),
        *_charges(scene, stated),
        *banks_named(scene),
        *(list(years_told(scene, stated)) or age_said(scene, stated)),
        *inch_sizes(scene, stated),
        *_there_are(scene, stated),
        *outlets(scene, stated),
        *floating(scene, stated),
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
        if not any(start <= item.span[0] < end for start, end in (banks if item.fact == "battery.count" else boxes))
    )
    return [*(item for item in kept if item.fact not in told), *found]


def _fact(scene: Scene, fact: str, value: float | str, start: int, end: int) -> Stated:
    span = scene.span(start, end)
    unit = "ampere" if fact == "load.current" else ""
    return Stated(fact, value, unit, scene.text[slice(*span)], span, how="default")


def _strings(scene: Scene) -> Iterator[Stated]:
    """ "Two and two in series", "2 in series, 2 strings": the counts of a bank in strings."""
    layouts = {item.start: item for item in scene.items if item.fact == "bank.layout" and item.name == "series"}
    counts = [item for item in scene.measured if item.dim in ("NUM", "COUNT") and _small(item)] if layouts else []
    for first, second in pairwise(counts):
        if (
            first.quantity.value == SYSTEM == second.quantity.value and scene.word(first.end) == "+"
        ):  # "12+12 in series"
            yield _fact(scene, "battery.count", 2.0, first.start, second.end)
            yield _fact(scene, "battery.nominal", SYSTEM, first.start, second.end)
            return
        if first.quantity.value != second.quantity.value:
            continue
        value, ends = float(first.quantity.value), second.end
        if second.at - first.at == 2 and scene.word(first.end) == "and" and ends in layouts:
            count = 2 * value
        elif scene.word(ends) in ("strings", "string") and first.end in layouts:
            count = value**2
        else:
            continue
        yield _fact(scene, "bank.layout", "series-parallel", first.start, ends)
        yield _fact(scene, "battery.count", count, first.start, ends)
        return


def _in_strings(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Four in two strings", "two strings of two", "four ..., in two pairs": series-parallel."""
    told = next((item.value for item in stated if item.fact == "battery.count"), 0.0)
    for item in scene.measured:
        word, value = scene.word(item.end), item.quantity.value
        if word not in ("strings", "pairs") or not _small(item) or isinstance(value, str):
            continue
        of = next((other for other in scene.measured if other.start == item.end + 2), None)
        if word == "strings" and scene.word(item.end + 1) == "of" and of is not None and _small(of):
            yield _fact(scene, "battery.count", value * float(of.quantity.value), item.start, of.end)
        elif not isinstance(told, float) or told <= value or (word == "pairs" and scene.word(item.start - 1) != "in"):
            continue
        yield _fact(scene, "bank.layout", "series-parallel", item.start, item.end + 1)
        return


def _both_ways(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Four batteries, two in series and two of those in parallel": series-parallel, where no choice is put."""
    ways = {item.value: item for item in stated if item.fact == "bank.layout"}
    counts = [item for item in stated if item.fact == "battery.count" and isinstance(item.value, float)]
    most = max(counts, key=lambda item: float(item.value), default=None)  # "two in a row, ...: four golf cart wets"
    if ways.keys() != {"series", "parallel"} or most is None or float(most.value) < STRINGS or float(most.value) % 2:
        return
    first, last = sorted(item.span for item in ways.values())
    if not APART.search(JOINED_AGAIN.sub(" ", scene.text[first[1] : last[0]])):
        text = scene.text[first[0] : last[1]]
        yield Stated("bank.layout", "series-parallel", "", text, (first[0], last[1]), how="default")
        if len(counts) > 1:
            yield most


def _small(item: Item) -> bool:
    value = item.quantity.value
    return not isinstance(value, str) and 2 <= value <= MOST and value == int(value)


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
    yield _fact(scene, "battery.count", next(before, 1.0) + 1.0, more[0].start, more[0].end)


def _charges(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The charge that a battery has, and the one that it is supposed to fall to."""
    supposed = list(fallen_to(scene))
    told = [item for item in stated if item.fact == "battery.charge"]
    found = [*_full(scene, [*stated, *supposed]), *supposed]
    return [*told, *found] if found else []


def _full(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "75 Ah, full.", "a flat 110 Ah battery": a battery said to be full or flat, where nothing asks whether it is."""
    told = {item.fact for item in stated if not is_supposed(scene.text, item.span)}
    filled = IF_FILLED.search(scene.text)
    if filled and scene.said and "battery.charge" not in told and not scene.about("request:how_long"):
        span = filled.span()
        yield Stated("battery.charge", 100.0, "percent", scene.text[slice(*span)], span, how="default")
        return
    if "battery.charge" in told or not told & {"battery.capacity", "battery.chemistry"}:
        return
    for item in scene.items:
        before, after = scene.before(item), scene.after(item)
        if item.name in EMPTY and before is not None and before.name in ("a", "my", "our") and _sized(after):
            yield replace(_fact(scene, "battery.charge", 0.0, item.start, item.end), unit="percent")
            return
        ends = after is None or (after.name in (",", ".", "end", ")") and scene.word(after.start) != "?")
        ends = ends or (item.name == "full" and _goes_on(scene, item))
        owned = (
            item.name == "full"
            and after is not None
            and after.fact == "battery.chemistry"
            and before is not None
            and before.name in ("with", ",")
        )
        of_kind = before is not None and before.fact == "battery.chemistry"  # "lithium full, 20 °C"
        listed = before is not None and before.name in (",", "thats", "(", "aboard", "stays", "stay", "stands")
        cold = scene.about("about:freeze", "word:freeze") or "ambient.temperature" in told
        share = before is not None and (bool(before.dim) or before.name in NOT_QUITE)
        frozen = item.name == "full" and cold and _sized(after) and not share
        if owned or frozen or (item.name == "full" and (listed or of_kind) and ends):
            yield replace(_fact(scene, "battery.charge", 100.0, item.start, item.end), unit="percent")
            return


def _goes_on(scene: Scene, item: Item) -> bool:
    """Whether more is told of how it stands: "full and with both leads off", "full with its cables off"."""
    return scene.word(item.end) in ("and", "with") and scene.word(item.end + 1) in STANDS_SO


def _sized(item: Item | None) -> bool:
    """Whether a battery's figure or kind stands there: the "110 Ah" of "a flat 110 Ah battery"."""
    return item is not None and (item.dim in ("AH", "VOLT") or item.fact == "battery.chemistry")


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
        half = _fact(scene, "load.power", watts[0] / 2, halved[0].start, halved[0].end)
        yield replace(half, unit="watt")
    shares: list[Found] = [found for found in scene.roles if found.concept in TIMES]
    before = [item.value for item in scene.said if item.fact == "load.current"]
    if not shares or not before or isinstance(before[0], str) or any(item.fact == "load.current" for item in stated):
        return
    share = shares[0]
    yield _fact(scene, "load.current", float(before[0]) * TIMES[share.concept], share.start, share.end)


def _two_by_two(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Four of them, two by two, for 24 volts": strings side by side."""
    found = TWO_BY_TWO.search(scene.text)
    if found and any(item.fact == "battery.count" and item.value == STRINGS for item in stated):
        yield Stated("bank.layout", "series-parallel", "", found[0], found.span(), how="default")


def _wired_for(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Two twelves wired for 24": in series, as the volts tell."""
    wired = scene.named("role", "wired_for")
    values = {item.fact: item.value for item in stated}
    count = values.get("battery.count", 0.0)
    volts = [item for item in stated if item.fact == "bank.voltage"]
    nominal = values.get("battery.nominal", SYSTEM if wired else 0.0)
    if any(item.fact == "bank.layout" for item in scene.items):  # told, or asked: "series or parallel?"
        return
    pair = _made_of_two(scene, volts) if "battery.nominal" not in values and "bank.layout" not in values else None
    if pair is not None:
        yield replace(pair, fact="bank.layout", value="series", unit="", how="default")
    if "bank.layout" in values or not isinstance(count, float) or not isinstance(nominal, float) or count < 2:
        return
    if (made := next((item for item in volts if item.value == count * nominal), None)) is not None:
        yield replace(made, fact="bank.layout", value="series", unit="", how="default")


def _made_of_two(scene: Scene, volts: list[Stated]) -> Stated | None:
    """The volts of "a 24 V bank of two": of the usual 12 V batteries, in series."""
    for item in volts:
        after = scene.text[item.span[1] : item.span[1] + FAR].lower()
        if item.value == 2 * SYSTEM and re.match(MADE_OF, after):
            return item
    return None


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
            yield replace(_fact(scene, "space.volume", value, first.start, third.end), unit="meter ** 3")
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
    return len(between) < FAR and not re.search(APART, between) and bool(re.search(ADDED, between))


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
