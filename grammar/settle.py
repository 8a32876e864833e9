"""From a scene to the facts that a message states: each quantity settled, then doubles, corrections, bare replies."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import partial

from grammar.amend.combine import combined
from grammar.amend.corrected import corrected
from grammar.amend.in_use import at_the_shaft, drawn_then, on_a_meter, part_of_the_time, running
from grammar.amend.repeats import amended, lowest_kept, spread
from grammar.amend.second_look import looked_again
from grammar.amend.weighed_sizes import each_size
from grammar.amend.whose_load import by_its_amps, of_its_battery
from grammar.amend.widened import widened_by
from grammar.attach import volts as attach_volts
from grammar.attach.by_rule import HOUR, can_be, converted, in_range, ruled
from grammar.attach.short_layouts import joined
from grammar.attach.values import Words
from grammar.facts import facts
from grammar.figures.weighed import weighed
from grammar.later.answers import answered
from grammar.later.meant import as_meant
from grammar.later.pointed import held_against
from grammar.later.recall import goes_back, recalled
from grammar.later.their_unit import in_their_unit
from grammar.reading import Quantity, Stated
from grammar.scene.claims import NOT_OURS, NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.batteries.absent import without_theirs
from grammar.told.batteries.cca_demanded import asked_for
from grammar.told.batteries.further import added, further
from grammar.told.batteries.kind_asked import without_kinds_asked
from grammar.told.batteries.lithium_limits import label_limits
from grammar.told.batteries.old_and_new import old_and_new
from grammar.told.batteries.one_or_several import either
from grammar.told.batteries.replaced import new_model, new_ones
from grammar.told.batteries.unlike import unlike
from grammar.told.cables.as_laid import way_laid
from grammar.told.cables.sizes_listed import sizes_listed
from grammar.told.cables.studs import studs_first
from grammar.told.chargers.listed_settings import beside_the_list
from grammar.told.cold.weather import at_freezing
from grammar.told.currents.old_motor import of_the_new
from grammar.told.currents.products import many_short
from grammar.told.readings.dated import after_use, last_counts
from grammar.told.readings.resting import without_rest
from grammar.told.times.clock import hours_told, is_half_past
from grammar.told.times.dates import stretch

CHANGED = frozenset({"battery.capacity", "battery.count", "battery.cca"})  # "from 70 to 110 Ah": it is 110 now
DAYS_BEFORE = regex(r"\b(?:days|nights|weeks|hours|times)\W*$", re.IGNORECASE)
RUNNING = frozenset({"load.current", "load.power"})
HALF, NEARBY = 50.0, 13  # percent; characters
SAYING = frozenset({"label", "sticker", "manual", "leaflet", "booklet", "maker", "manufacturer"})
FORBIDDING = frozenset({"says", "do", "dont", "never", "for", "no"})
NEVER = frozenset({"not", "never"})
FORBIDS = 4  # words before a layout that may forbid it


def settled(scene: Scene, words: Words, expecting: Sequence[str] = (), said: Sequence[Stated] = ()) -> list[Stated]:
    """The facts that the quantities and words of a message state, in its order."""
    claims = corrected(scene, ruled(scene))
    by_points = weighed(scene, claims, partial(can_be, scene))
    claims |= {at: claim for at, claim in by_points.items() if not goes_back(scene, scene.items[at], said)}
    claims = looked_again(scene, claims)
    _drop_seconds(scene, claims)
    wider = {at: other for at in claims if (other := widened_by(scene, scene.items[at]))}
    for other in wider.values():
        claims.pop(other.at, None)
    found = [fact for at, claim in claims.items() if (fact := _stated(scene, scene.items[at], claim, wider.get(at)))]
    found = [at_the_shaft(scene, item) for item in many_short(found)]
    found += running(scene, found)
    found += on_a_meter(scene, found)
    found = part_of_the_time(scene, found)
    found += _between_dates(scene, found)
    found = _by_the_clock(scene, found)
    found += _lithium_by_volts(found, words)
    for item in scene.items:
        if item.kind == "series" or (item.kind == "quantity" and claims.get(item.at, NOTHING).fact == "bank.layout"):
            found += joined(scene, item, [*found, *words.stated])
    several = sum(item.fact == "bank.layout" for item in words.stated) > 1
    told = [item for item in words.stated if not (several and _of_limit(scene, claims, item))]
    told = [item for item in told if not is_half_past(scene.text, item.span) and not _days_on_end(scene, item)]
    told = [_forbidden(scene, item, NEVER) or item for item in told if not _half_of_cca(scene, item)]
    told += [limit for item in words.denied if (limit := _forbidden(scene, item, FORBIDDING))]
    in_unit = in_their_unit(recalled(scene, answered(scene, [*told, *found], expecting), said), said)
    replied = as_meant(scene, list(in_unit), said)
    replied = asked_for(scene, [*replied, *drawn_then(scene, replied, said)])
    stated = further(scene, added(scene, amended(scene, lowest_kept(spread(combined(scene, replied))))))
    stated = list(each_size(studs_first(scene, label_limits(scene, either(scene, unlike(scene, stated))))))
    if not any(item.fact.startswith("reading.") and item.fact != "reading.state" for item in stated):
        stated = [item for item in stated if item.fact != "reading.state"]
    for of_the_text in (
        beside_the_list,
        new_ones,
        new_model,
        of_the_new,
        last_counts,
        after_use,
        way_laid,
        old_and_new,
        sizes_listed,
        without_theirs,
    ):
        stated = of_the_text(scene.text, stated)
    stated = held_against(scene, of_its_battery(scene, by_its_amps(scene, stated)))
    return at_freezing(scene, without_kinds_asked(scene, without_rest(scene, stated, said)))


def _between_dates(scene: Scene, found: list[Stated]) -> list[Stated]:
    """The days that a battery stands from one date to another: "1 Nov to 15 Apr"."""
    days = None if any(item.fact == "storage.time" for item in found) else stretch(scene.text)
    if days is None:
        return []
    return [Stated("storage.time", float(days[0]), "day", scene.text[slice(*days[1])], days[1], how="grammar")]


def _by_the_clock(scene: Scene, found: list[Stated]) -> list[Stated]:
    """The facts with the time of a load from one hour of the day to another: "3 A from six until midnight"."""
    facts_told = {item.fact for item in (*found, *scene.said)}
    if not facts_told & RUNNING or any(item.fact == "load.time" for item in found):
        return found
    told = hours_told(scene.text)
    if told is None or scene.about("word:charge"):
        return found
    hours, (start, end) = told
    kept = [item for item in found if item.span[1] <= start or item.span[0] >= end]
    return [*kept, Stated("load.time", hours * HOUR, "second", scene.text[start:end], (start, end), how="grammar")]


def _days_on_end(scene: Scene, stated: Stated) -> bool:
    """Whether "in a row" is said of days, not of batteries."""
    return stated.fact == "bank.layout" and DAYS_BEFORE.search(scene.ahead(stated.span[0])) is not None


def _of_limit(scene: Scene, claims: dict[int, Claim], stated: Stated) -> bool:
    """Whether a layout is only what a maker allows or forbids: "max 4 in series", "series not allowed"."""
    if stated.fact != "bank.layout":
        return False
    item = next(
        (one for one in scene.items if one.kind == "value" and scene.span(one.start, one.end) == stated.span), None
    )
    if item is None:
        return False
    before = claims.get(item.at - 1, NOTHING).fact
    forbidden = scene.word(item.end) == "not" and scene.word(item.end + 1) in ("allowed", "permitted", "possible")
    return before.startswith("battery.max_in_") or forbidden


def _forbidden(scene: Scene, denied: Stated, words: frozenset[str]) -> Stated | None:
    """A layout that the maker forbids is a limit of one: "the label says do not connect in series"."""
    if denied.value not in ("series", "parallel") or not SAYING & scene.vocabulary:
        return None
    start = next((at for at, token in enumerate(scene.tokens) if token.start >= denied.span[0]), 0)
    before = {scene.word(at) for at in range(start - FORBIDS, start)}
    if not words & before or "but" in before:
        return None
    return replace(denied, fact=f"battery.max_in_{denied.value}", value=1.0, how="grammar")


def _half_of_cca(scene: Scene, stated: Stated) -> bool:
    """Whether it is half of a rating, as in a load test, no half charge: "held at half its 760 CCA"."""
    if stated.fact != "battery.charge" or stated.value != HALF:
        return False
    after = re.split(r"[,;]", scene.text[stated.span[1] : stated.span[1] + NEARBY].lower())[0]
    return "cca" in after


def _drop_seconds(scene: Scene, claims: dict[int, Claim]) -> None:
    """The seconds that a peak is allowed for are no burst of the load."""
    for at, claim in list(claims.items()):
        if claim.fact == "battery.peak_current":
            for later in scene.items[max(0, at - 1) : at + 3]:
                if later.dim == "TIME":
                    claims.pop(later.at, None)


def _lithium_by_volts(found: list[Stated], words: Words) -> list[Stated]:
    """A battery named by 12.8 V is a lithium one."""
    if any(item.fact == "battery.chemistry" for item in words.stated):
        return []
    named = (item for item in found if item.fact == "battery.nominal")
    cells = (item for item in named if any(f"{volts:g}" in item.text for volts in attach_volts.LITHIUM_NOMINAL))
    return [replace(item, fact="battery.chemistry", value="lfp", unit="", how="range") for item in cells][:1]


def _stated(scene: Scene, item: Item, claim: Claim, wider: Item | None = None) -> Stated | None:
    """The fact in its own unit; a range stands once, at its safe end."""
    if claim.fact == NOT_OURS:
        return None
    assert item.part is not None
    if claim.fact == "bank.layout":
        return None
    spec = facts()[claim.fact]
    more = wider.part.quantities if wider is not None and wider.part is not None else ()
    quantities = [*item.part.quantities, *(replace(one, unit=item.quantity.unit) for one in more)]
    amounts = [_canonical(scene, item, claim.fact, quantity) for quantity in quantities]
    values = [amount for amount in amounts if amount is not None]
    if not values:
        return None
    value = values[0]
    numbers = [amount for amount in values if isinstance(amount, float)]
    low, high = (min(numbers), max(numbers)) if len(numbers) > 1 else (None, None)
    if low is not None and high is not None:
        value = high if spec.safe == "high" else low
        if claim.fact in CHANGED and scene.word(item.start - 1) == "from":
            value, low, high = values[-1], None, None
    span = item.part.span
    unit = "volt" if claim.fact == "cable.drop" and item.dim == "VOLT" else spec.unit
    return Stated(claim.fact, value, unit, scene.text[slice(*span)], span, 1, claim.how, low, high)


def _canonical(scene: Scene, item: Item, fact: str, quantity: Quantity) -> float | str | None:
    """A quantity in the fact's unit; None where it cannot be that fact. One out of range is noted as implausible."""
    value = converted(scene, item, fact, quantity)
    spec = facts()[fact]
    if isinstance(value, float) and not in_range(spec, value):
        if quantity.unit or item.dim != "NUM":
            scene.implausible.append(Stated(fact, value, spec.unit, quantity.text.strip(), quantity.span, how="range"))
        return None
    return value
