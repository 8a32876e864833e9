"""What a bare number is: the plausible range and its neighbours decide, else it is nothing."""

from __future__ import annotations

from grammar.attach.bare_systems import system_of
from grammar.attach.bare_volts import is_read_off, is_whole_reading
from grammar.attach.beside_numbers import SMALLEST_LOAD, by_neighbour, decimals_of, plain
from grammar.attach.counts import counts
from grammar.attach.lengths import bare_area, thin_wire
from grammar.attach.named_numbers import by_name
from grammar.attach.second_sizes import size_beside
from grammar.attach.warmth import is_warmth
from grammar.scene.claims import NOTHING, TOUCHING, Claim, close
from grammar.scene.items import Item
from grammar.scene.names import is_name
from grammar.scene.near import gap
from grammar.scene.scene import Scene
from grammar.text.standard import NOMINAL
from grammar.told.times.clock import is_an_hour

GRAVITY = (1.05, 1.35)
SPREAD = (0.01, 0.2)
FROST = (-45.0, -1.0)
ENDS = frozenset({"bow", "stern"})
LITTLE = 2.0  # amps that something left on takes
WATTS_WITHIN = 6  # words
MANY_WATTS = 500.0  # no small load takes so many amps
HAVE = frozenset({"got", "have", "ive", "found", "own"})
AT_HAND = frozenset(
    {
        *("an", "and", "but", "in", "already", "at", "here", "lying", "spare", "from", "on", "home", "one", "would"),
        *("will", "is"),
    }
)
MOST_CHARGER = 60.0  # amps


def number(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that a number without a unit states; a load's name is none."""
    if value % 1 and is_an_hour(scene.ahead(scene.tokens[item.start].start)):
        return NOTHING
    claim = _plainly(scene, item, value)
    named = claim is not None and claim.fact.startswith("load.") and is_name(scene, item)
    if claim is not None and claim.fact == "load.current" and not named and _goes_by_watts(scene, item):
        return Claim("load.power", claim.how)
    return NOTHING if named else claim


def _goes_by_watts(scene: Scene, item: Item) -> bool:
    """Whether it is of watts: "a 1500 inverter"; of a thing like the one of whose was spoken, "no kettle then. toaster
    900"."""
    small = (head for head in scene.head_items if (head.head, head.name) == ("load", "electronics"))
    if {"wattage", "watts"} & {scene.word(at) for at in range(item.start - WATTS_WITHIN, item.start)}:
        return True  # "the wattage on it says 1200"
    if plain(item) >= MANY_WATTS and any(gap(scene, item, head.start, head.end) <= TOUCHING for head in small):
        return True
    before, told = scene.before(item), {old.fact for old in scene.said}
    named = before is not None and (before.fact, before.name) == ("load.kind", "electronics")
    return named and "load.power" in told and "load.current" not in told


def _plainly(scene: Scene, item: Item, value: float) -> Claim | None:
    decimals = decimals_of(item, value)
    if (GRAVITY[0] <= value <= GRAVITY[1] and decimals in (2, 3)) or _is_gravity(scene, value):
        return Claim("reading.gravity", "range")
    if SPREAD[0] <= value <= SPREAD[1] and decimals in (2, 3) and close(scene, item, "spread", reach=3):
        return Claim("reading.gravity_spread", "role")
    if FROST[0] <= value <= FROST[1] and decimals == 0:
        return Claim("ambient.temperature", "range")
    if (told := by_neighbour(scene, item, value)) is not None:
        return told
    if value <= 12 and close(scene, item, "sun", reach=1.6, after=True):
        return Claim("solar.sun_hours", "role")
    if is_warmth(scene, item, value, decimals):
        return Claim("ambient.temperature", "role")
    if is_read_off(scene, item, value) if decimals else is_whole_reading(scene, item, value):
        return Claim("reading.voltage", "range")
    if decimals:
        return _small_figure(scene, item, value)
    if value >= SMALLEST_LOAD and (_next_load(scene, item) or _at_an_end(scene, item)):
        return Claim("load.current", "near")
    claim = system_of(scene, item, value) if value in NOMINAL else None
    claim = claim or bare_area(scene, item, value) or size_beside(scene, item, value)
    return claim or counts(scene, item, value) or by_name(scene, item, value) or _at_hand(scene, item, value)


def _small_figure(scene: Scene, item: Item, value: float) -> Claim | None:
    """What a number with decimals is, if no volts: the section of a thin wire, what something left on takes."""
    if thin_wire(scene, item, value):
        return Claim("cable.area", "grammar")
    return Claim("drain.current", "role") if value < LITTLE and _drains(scene, item) else None


def _drains(scene: Scene, item: Item) -> bool:
    """Whether a small figure is of something left on: "still draws 0.3", "what does it eat in standby. 0.06?"."""
    alone = scene.about("role:drain.current") and len(scene.measured) == 1
    return alone or close(scene, item, "drain.current", reach=6.5)


def _next_load(scene: Scene, item: Item) -> bool:
    """Whether it goes on a list of loads and their amps: the 200 of "winch 80 amp, screw 200"."""
    row = scene.items[max(0, item.at - 3) : item.at]
    after = scene.after(item)
    if (
        len(row) != 3
        or row[0].dim != "AMP"
        or row[1].name not in (",", "and", "+")
        or row[2].kind not in ("word", "thing", "value")
        or row[2].fact == "battery.chemistry"  # "lights 7 A, AGM 110"
    ):
        return False
    first = scene.before(row[0])
    return first is not None and first.head == "load" and (after is None or after.kind == "mark")


def _at_an_end(scene: Scene, item: Item) -> bool:
    """Whether it is of one of two thrusters told by their places: "bow 250 stern 200"."""
    if scene.word(item.start - 1) not in ENDS:
        return False
    return {scene.word(other.start - 1) for other in scene.quantities("NUM")} >= ENDS


def _is_gravity(scene: Scene, value: float) -> bool:
    return 1000 < value <= 1350 and ("hydrometer" in scene.heads or scene.about("word:gravity_word"))


def _at_hand(scene: Scene, item: Item, value: float) -> Claim | None:
    """A charger that goes by its amps, where its size is asked: "how many amps. got a 15 in the garage"."""
    have = scene.word(item.start - 1) in ("a", "an") and scene.word(item.start - 2) in HAVE
    after = scene.after(item)
    alone = after is None or after.kind == "mark" or scene.word(item.end) in AT_HAND
    chargers = "charger" in scene.heads and not scene.heads - {"charger", "battery"}
    found = have and alone and chargers and value <= MOST_CHARGER and not scene.quantities("AMP")
    return Claim("charger.current", "near") if found else None
