"""What a bare number is by the words right beside it: degrees, a pause, a rating, years, a current."""

from __future__ import annotations

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.told.cold.degrees import FAHRENHEIT
from grammar.told.currents.clamped import on_clamp
from grammar.told.words import stops
from grammar.told.years.ages import is_age

SMALLEST_LOAD = 40  # bare amps beside a load
RATINGS = {"battery.cca": (200, 1500), "battery.ca": (200, 1800), "battery.reserve": (40, 400)}
LETTERS = {"cca": "battery.cca", "mca": "battery.ca", "rc": "battery.reserve"}
OF_IT = 12  # words from a rating to "of it"
COLD = frozenset({"frosty", "frost", "freeze", "freezes", "freezing", "cold", "winter"})
HEAT = frozenset({"hot", "heat", "warm", "summer", "tropics", "noon"})
CELSIUS = frozenset({"celsius", "celcius", "centigrade"})
PLACES = frozenset({"cabin", "shed", "locker", "garage", "hall", "workshop"})
IN_PLACES = frozenset({(word, place) for word in ("in",) for place in PLACES})
FRESH = 15.0  # degrees
INSULATIONS = frozenset({75.0, 90.0, 105.0, 125.0})  # C
BURSTS = frozenset({"bursts", "pushes", "nudges", "blips", "dabs", "jabs", "shoves"})
WEIGHTS = (3.0, 120.0)  # kg of a battery
OF_ONE = (8.0, 45.0)  # kg of one battery that is told without its unit
KILOS = frozenset({"kila", "kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "lighter", "lift", "lifting"})
POUNDS = frozenset({"lb", "lbs", "pound", "pounds", "stone"})
MARKED = frozenset({"stamped", "printed", "marked", "embossed", "written", "moulded", "print", "stamp", "marking"})
PRINT_REACH = 4  # words from the degrees to how they are marked
PAUSED = frozenset({"off", "rest", "pause"})
PAUSES = frozenset({"pause", "rest", "wait", "off"})
WARM = 45.0
HALF = 0.5
CHARGED = frozenset({"full", "charged", "left"})
LOWEST_VOLTS = 5.5  # a smaller bare figure is no reading of a battery
TAKES = frozenset({"takes", "taking", "take", "draws", "drawing", "draw", "pulls", "pulling", "uses", "using"})
COLDEST, HOTTEST = -40.0, 130.0


def is_share(item: Item) -> bool:
    """Whether it is a part of one, told as that: "one third", "four fifths", "2/3"."""
    typed = item.quantity.text.strip()
    return (
        item.dim == "NUM"
        and 0 < plain(item) < 1
        and ("/" in typed or typed.replace(" ", "").replace("-", "").isalpha())
    )


def _is_charge(scene: Scene, item: Item) -> bool:
    """Whether a part is how full the battery is: "one third charged", "from 2/3", "down to four fifths"."""
    before, after = scene.word(item.start - 1), scene.after(item)
    if scene.word(item.end) in CHARGED:
        return True
    there = before in ("from", "at") or (before == "to" and scene.word(item.start - 2) == "down")
    battery = "battery" in scene.heads | scene.facts or bool(scene.quantities("AH"))
    return there and battery and (after is None or after.kind == "mark" or after.name in ("to", "up", "with", "now"))


def _starts_from(scene: Scene, item: Item) -> bool:
    """Whether it is where a charge begins: "from zero, how long to charge 100 Ah"."""
    return plain(item) == 0 and scene.word(item.start - 1) == "from" and scene.about("word:charge")


def decimals_of(item: Item, value: float) -> int:
    """How many decimals a number was typed with; "ten point nought" has one."""
    typed = item.quantity.text.strip()
    point = max(typed.rfind("."), typed.rfind(","))
    if point >= 0 and value < 100:
        return len(typed) - point - 1
    return 0 if value == int(value) and " point " not in typed.lower() else 1


def by_neighbour(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that a word right beside a bare number tells."""
    if decimals_of(item, value):
        if is_share(item) and _is_charge(scene, item):
            return Claim("battery.charge", "role")
        if _taken_by_a_load(scene, item):
            return Claim("load.current", "role")
        spelt = "." not in item.name and "," not in item.name  # "three and a half now"
        return Claim("battery.age", "role") if value % 1 == HALF and spelt and is_age(scene, item) else None
    if claim := on_clamp(scene, item, value):
        return claim
    tests = {
        "battery.charge": _starts_from,
        "load.burst": _of_bursts,
        "battery.weight": _weighs,
        "load.rest": _pauses,
        "ambient.temperature": _is_degrees,
        "cable.insulation": _is_insulation,
        "load.current": _is_current,
        "reading.current": _goes_through,
        "battery.cca": _is_cold,
        "battery.ca": _labelled_ca,
    }
    if (rating := _rating_of_it(scene, item)) is not None:
        return Claim(rating, "role")
    return next((Claim(fact, "role") for fact, test in tests.items() if test(scene, item)), None)


def _taken_by_a_load(scene: Scene, item: Item) -> bool:
    """Whether a small figure is a load's amps, too low for volts: "fridge taking 3.5", "the lights draw 4.2"."""
    if not 0 < plain(item) < LOWEST_VOLTS or scene.word(item.start - 1) not in TAKES or not stops(scene, item):
        return False
    before = [head for head in scene.head_items if head.end <= item.start]
    return bool(before) and before[-1].head == "load"


def _of_bursts(scene: Scene, item: Item) -> bool:
    """Whether it is the seconds of "make it bursts of 10"."""
    told = any(old.fact == "load.burst" for old in scene.said)
    return scene.word(item.start - 1) == "of" and scene.word(item.start - 2) in BURSTS and told and not _has_unit(scene)


def _has_unit(scene: Scene) -> bool:
    return any(other.quantity.unit == "second" for other in scene.quantities("TIME"))


def _weighs(scene: Scene, item: Item) -> bool:
    """Whether it is kilograms: "weighs 32", "total kg if each is 29.5" has them in its question."""
    if _is_kilos(scene, item):
        return True
    lightest, heaviest = WEIGHTS
    weighs = scene.word(item.start - 1) in ("weighs", "weighing") or (
        scene.word(item.start - 1) in ("about", "only") and scene.word(item.start - 2) in ("weighs", "weighing")
    )
    ends = stops(scene, item)
    return weighs and ends and lightest <= plain(item) <= heaviest and not scene.heads & {"boat", "load"}


def _is_kilos(scene: Scene, item: Item) -> bool:
    """Whether it is kilograms, where those are spoken of: "how many kg less, 2 wets 27 each"."""
    low, high = OF_ONE
    if not KILOS & scene.vocabulary or POUNDS & scene.vocabulary or not low <= plain(item) <= high:
        return False
    if scene.word(item.end) in ("each", "apiece"):
        return True
    after, before = scene.after(item), scene.before(item)
    ends = after is None or after.kind == "mark"
    of_kind = before is not None and before.at > 0 and scene.items[before.at - 1].fact == "battery.chemistry"
    return ends and of_kind and scene.word(item.start - 1) in ("is", "are")


def _pauses(scene: Scene, item: Item) -> bool:
    """Whether a bare number is the pause after a burst: "3 sec on, 27 off", "push 4 sec, pause 30"."""
    near = scene.items[max(0, item.at - 5) : item.at]
    burst = any(other.dim == "TIME" and other.quantity.unit == "second" for other in near)
    return burst and (scene.word(item.end) in PAUSED or scene.word(item.start - 1) in PAUSES)


def _is_degrees(scene: Scene, item: Item) -> bool:
    """Whether a bare number is of degrees: "a frosty day, say zero", "hot noon, cabin 39", "8 above, Fahrenheit"."""
    words, value = scene.vocabulary, plain(item)
    if not COLDEST <= value <= HOTTEST:
        return False
    if scene.word(item.end) in ("of", "degrees") and scene.word(item.end + 1) in CELSIUS:  # "at the zero of Celsius"
        return True
    if value == 0 and words & COLD and scene.word(item.start - 1) in ("say", "at", "to"):
        return True
    if words & FAHRENHEIT and (scene.word(item.end) == "above" or scene.word(item.start - 1) == "at"):
        return True
    placed = scene.word(item.start - 1) in PLACES or (scene.word(item.end), scene.word(item.end + 2)) in IN_PLACES
    return placed and bool(words & HEAT) and FRESH <= value <= WARM


def _is_insulation(scene: Scene, item: Item) -> bool:
    """Whether it is what a cable's insulation stands: "insulation says 105", "a 2 gauge cable. Rated 105."."""
    if plain(item) not in INSULATIONS:
        return False
    if _is_printed(scene, item):
        return True
    named = scene.word(item.start - 1) in ("insul", "insulation", "jacket", "sheath")
    if named and ((last := scene.after(item)) is None or last.kind == "mark"):
        return True
    says = scene.word(item.start - 1) in ("says", "is", "rated", "reads", "said")
    after = scene.after(item)
    spoken = {"insulation", "jacket", "sheath"} & {scene.word(at) for at in range(item.start - 4, item.start)}
    rated = scene.word(item.start - 1) == "rated" and "cable" in scene.heads and not scene.heads & {"fuse"}
    return says and bool(spoken or rated) and (after is None or after.kind == "mark")


def _is_printed(scene: Scene, item: Item) -> bool:
    """Whether it stands on the cable named before it: "2/0, 105 stamped on it", "50 mm2 cable marked 90"."""
    ahead = [scene.word(at) for at in range(item.end, item.end + PRINT_REACH)]
    if ahead[0] in ("a", "amp", "amps") or not MARKED & {scene.word(item.start - 1), *ahead}:
        return False
    before = (other for other in reversed(scene.items[: item.at]) if other.head or other.dim in ("GAUGE", "AREA"))
    thing = next(before, None)
    return thing is not None and (thing.head == "cable" or thing.dim in ("GAUGE", "AREA"))


def _goes_through(scene: Scene, item: Item) -> bool:
    """Whether a current is told: "8.9 at the battery with 260 going through"; "half CCA, 375" is a tester's."""
    if plain(item) < SMALLEST_LOAD:
        return False
    through = scene.word(item.end) in ("going", "flowing") and scene.word(item.end + 1) == "through"
    tester = scene.about("role:tester") and scene.word(item.start - 1) in ("to", "at", "on")
    if tester and scene.word(item.start - 2) in ("set", "dialled", "adjusted"):
        return True
    half = "half" in {scene.word(at) for at in range(item.start - 4, item.start)}
    return through or (half and scene.word(item.start - 1) == "," and scene.word(item.start - 2) == "cca")


def _is_current(scene: Scene, item: Item) -> bool:
    """Whether "current" leads to it: "my cable is 2 AWG. Current 150", "current: 220"."""
    back = 2 if scene.word(item.start - 1) in (":", "is", "=") else 1
    named = scene.word(item.start - back) == "current" and plain(item) >= SMALLEST_LOAD
    return named and scene.word(item.start - back - 1) in ("", ".", ",", "the", "its", "motor", "thruster", "and")


def _labelled_ca(scene: Scene, item: Item) -> bool:
    """Whether "CA" stands before in capitals: in small letters it is "about"."""
    low, high = RATINGS["battery.ca"]
    if scene.word(item.start - 1) != "ca" or not low <= plain(item) <= high or scene.text.isupper():
        return False
    token = scene.tokens[item.start - 1]
    return scene.text[token.start : token.end] == "CA"


def _is_cold(scene: Scene, item: Item) -> bool:
    """Whether cold cranking amps are meant: "AGM 120, 800 cold"."""
    low, high = RATINGS["battery.cca"]
    return scene.word(item.end) == "cold" and low <= plain(item) <= high


def _rating_of_it(scene: Scene, item: Item) -> str | None:
    """The rating that "750 of it", "900 of them" are of: the one named last before."""
    if scene.word(item.end) != "of" or scene.word(item.end + 1) not in ("it", "them", "those", "these"):
        return None
    for at in range(item.start - 1, max(-1, item.start - OF_IT), -1):
        token = scene.tokens[at]
        capitals = scene.text[token.start : token.end] == "CA"
        if scene.word(at - 1) in ("many", "much"):  # "MCA, and how many CCA would 900 of them be"
            continue
        fact = "battery.ca" if capitals else LETTERS.get(token.word)
        if fact is not None:
            low, high = RATINGS[fact]
            return fact if low <= plain(item) <= high else None
    return None


def plain(item: Item) -> float:
    """The number; 0 for a text."""
    value = item.quantity.value
    return 0.0 if isinstance(value, str) else value
