"""Rows of batteries told twice over, sums told with their parts, and the volts that batteries are joined for."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

COUNT, LAYOUT, VOLTS, NOMINAL = "battery.count", "bank.layout", "bank.voltage", "battery.nominal"
TWO = r"(?:two|2)"
ROW = r"(?:in )?(?:series|a row|a line|a string|line)"
PAIR = r"(?:pair|two|2|couple)"
TWICE_OVER = regex(  # "two in a row, twice over", "two-two series then the pairs together"
    rf"\b{TWO}(?:(?: and |-| by |\+| \+ | plus ){TWO})?(?: (?:of them|batteries))? {ROW}\b,? ?[^.?!;:\d]{{0,16}}?"
    r"(?:\btwice(?: over)?\b(?! as\b)|\btwo (?:times|lots)\b|\btimes two\b|\bx ?2\b|\bdoubled\b"
    r"|\b(?:then|and)(?: then)? (?:the |those |these |both )*(?:pairs|rows|strings|twos|sets)(?: are| go)?"
    r" (?:together|parallel|in parallel|side by side|joined|paralleled|alongside))"
    rf"|\b(?:{PAIR}|2 ?x ?\d{{1,2}} ?v?)\b[^.?!;]{{0,40}}?\b{ROW}\b[^.?!;]{{0,24}}?"
    rf"\b(?:another|(?:a |the )?(?:second|other)) {PAIR}\b"
    rf"[^.?!;]{{0,24}}?\b(?:{ROW}|(?:the )?same(?: way)?|alike|likewise|ditto|as well|too|like (?:it|that|them))\b"
    r"[^.?!;]{0,60}?"  # "a pair in a row, another pair in a row next to it", "... another pair the same, in parallel"
    r"\b(?:next to|alongside|beside|side by side|parallel|across|plus\w*|positives?)\b",
    re.IGNORECASE,
)
FOUR = 4.0
IN_SERIES = regex(r"(?:'?s|olts?)? (?:\w+ )?in series\b", re.IGNORECASE)
LIMITS, NEXT = ("battery.max_in_series", "battery.max_in_parallel"), 2  # characters from a limit to its "in series"
OF_TWO = regex(r"\b2 ?s ?(?:2 ?p)?\b|\b2 ?p ?2 ?s\b", re.IGNORECASE)
TWELVE = 12.0
OF_ONE = (NOMINAL, "battery.capacity", "battery.cca", "battery.chemistry")  # told among the rows, they stay
SUM = regex(  # "twice 550 is 1100 CCA"
    r"\b(?:twice|two times|2 ?x|double|two lots of) (?P<part>\d{2,4})(?: ?(?:cca|ah|amp[- ]hours?|a))?"
    r" ?(?:is|are|makes?|gives?|equals?|=|comes to|adds up to) ?(?P<sum>\d{2,4}) ?(?:cca|ah|amp[- ]hours?|cold)\b"
    r"|\b(?P<one>\d{2,4})(?: ?(?:cca|ah))? ?(?:plus|and|\+) ?(?P<other>\d{2,4})(?: ?(?:cca|ah))?"
    r" ?(?:is|are|makes?|gives?|equals?|=|comes to) ?(?P<both>\d{2,4}) ?(?:cca|ah|amp[- ]hours?|cold)\b",
    re.IGNORECASE,
)
SUMMED = ("battery.cca", "battery.capacity", "battery.ca")
V = r"(?:[ -]?v(?:olts?)?)?"
HIGH = r"(?P<high>24|36|48|twenty[- ]four|thirty[- ]six|forty[- ]eight)"
MANY = r"(?:(?:a |an |my |our |some |those |these )?(?:pair of |two |three |four |six |eight |[2-8] ?x? ))"
OUT_OF = regex(  # "24 off two twelves", "36 V out of three 12s", "24 from 6"
    rf"(?<![\d.,/])\b{HIGH}{V} (?:off|from|out of|outta|outa|made (?:of|from)|using) {MANY}?"
    r"(?P<low>sixes|twelves|six|twelve|6|12)(?:'?s\b|[ -]?v(?:olt(?:er)?s?)?\b|(?<=s)\b"
    r"|(?=[.,;?!)](?!\d)|$| (?:batter|wets?\b|agms?\b|gels?\b|lithiums?\b|ones\b|in series)))",
    re.IGNORECASE,
)
JOINED_AS = regex(  # "two batteries joined as 24", "wired to a 12"
    r"\b(?:joined|wired|linked|strung|chained|connected|coupled|hooked|arranged)(?: up| together)?"
    r" (?:as|to|into|for|to make|to give) (?:an? )?"
    r"(?P<high>12|24|36|48|twenty[- ]four|thirty[- ]six|forty[- ]eight)(?:[ -]?v(?:olts?)?)?"
    r"(?=[.,;?!)]|$| (?:system|bank|pair|set|and|but|for|for the)\b)",
    re.IGNORECASE,
)
WORKING_AS = regex(  # "two 12 V wets to work as one 24", "four sixes that make together 12"
    r"\b(?:(?:work|act|serve|behave)(?:s|ing)?(?: together)?|set up|used) as (?:an? |one |the )?"
    r"(?P<high>12|24|36|48|twenty[- ]four)(?:[ -]?v(?:olts?)?)?(?=[.,;?!)]|$| (?:system|bank|and|but|so|how)\b)"
    r"|\b(?:mak(?:e|es|ing) (?:together|between them|up)|made (?:up )?into) (?:an? |one )?"
    r"(?P<sum>12|24|36|48|twenty[- ]four)(?:[ -]?v(?:olts?)?)?(?=[.,;?!)]|$| (?:system|bank|and|but|so|how)\b)",
    re.IGNORECASE,
)
WANTED = regex(
    r"\b(?:wants?|need(?:s|ed)?|would like|i'?d like|looking for|aim(?:ing)? (?:at|for)|to (?:get|make|give|have))\b"
    r"[^.?!;]{0,24}$",
    re.IGNORECASE,
)
VALUES = {"twenty": 24.0, "thirty": 36.0, "forty": 48.0, "six": 6.0, "sixe": 6.0, "twelve": 12.0}
CONVERTING = frozenset({"dcdc", "alternator", "charger"})


def in_rows(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with those that tell of batteries in rows."""
    stated = _without_goal(scene, stated)
    return _volts_joined(scene, _parts_of_sums(scene, _twice_over(scene, _of_each(scene, _without_limits(stated)))))


def _without_goal(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Without the amp-hours that several equal batteries are to come to: "4 of 12 V 100 Ah, want 24 V 200 Ah"."""
    sizes = [item for item in stated if item.fact == "battery.capacity" and isinstance(item.value, float)]
    counts = [item.value for item in stated if item.fact == COUNT and isinstance(item.value, float)]
    if len(sizes) != 2 or not counts or WANTED.search(scene.ahead(sizes[1].span[0])) is None:
        return stated
    times = float(sizes[1].value) / float(sizes[0].value)
    return [item for item in stated if item is not sizes[1]] if 1 < times <= max(counts) and not times % 1 else stated


def _without_limits(stated: list[Stated]) -> list[Stated]:
    """Without the "in series" of "max 2 in series", where it is told how they are to be joined: "..., I want 2s2p"."""
    limits = {item.span[1] for item in stated if item.fact in LIMITS}
    ways = [item for item in stated if item.fact == LAYOUT]
    kept = [item for item in ways if not any(0 <= item.span[0] - end <= NEXT for end in limits)]
    if not kept or len(kept) == len(ways):
        return stated
    return [
        *(item for item in stated if item.fact != LAYOUT),
        *(replace(item, of=at) for at, item in enumerate(kept, 1)),
    ]


def _of_each(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """A bare 12 V beside "2S2P" or before "in series" as that of one battery, as two of them in a row have more."""
    if any(item.fact == NOMINAL for item in stated):
        return stated
    twos = OF_TWO.search(scene.text) is not None
    bare = [item for item in stated if (item.fact, item.value, item.how) == (VOLTS, TWELVE, "default")]
    own = [item for item in bare if twos or IN_SERIES.match(scene.text[item.span[1] :])]
    return [replace(item, fact=NOMINAL) if item in own else item for item in stated]


def _twice_over(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Series-parallel, where a row of two is told twice and no other number of batteries is."""
    counts = {item.value for item in stated if item.fact == COUNT}
    if not counts <= {2.0, FOUR} or (found := TWICE_OVER.search(scene.text)) is None:
        return stated
    told = Stated(LAYOUT, "series-parallel", "", found[0], found.span(), how="grammar")
    many = replace(told, fact=COUNT, value=FOUR)
    start, end = told.span
    inside = (item for item in stated if start <= item.span[0] < end and item.fact not in OF_ONE)
    gone = [*inside, *(item for item in stated if item.fact in (LAYOUT, COUNT))]
    kept = [item for item in stated if item not in gone]
    return [*kept, told, many]


def _parts_of_sums(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """One battery's figure in place of the sum of two that is told with it."""
    found = SUM.search(scene.text)
    if found is None:
        return stated
    part, other, total = (
        float(found[one] or found[two]) for one, two in (("part", "one"), ("part", "other"), ("sum", "both"))
    )
    if part != other or total != 2 * part:
        return stated
    sums = [item for item in stated if item.fact in SUMMED and item.value == total]
    if not sums:
        return stated
    span = found.span("part" if found["part"] else "one")
    own = Stated(sums[0].fact, part, sums[0].unit, scene.text[slice(*span)], span, how="grammar")
    kept = [item for item in stated if item not in sums and not found.start() <= item.span[0] < found.end()]
    kept = [item for item in kept if item.fact != own.fact]
    many = [] if any(item.fact == COUNT for item in kept) else [Stated(COUNT, 2.0, "", found[0], found.span())]
    return [*kept, own, *many]


def _volts_joined(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The volts of the bank, told by what it is made of or what it is joined as."""
    if any(item.fact == VOLTS for item in stated):
        return stated
    found = None if CONVERTING - {"charger"} & scene.heads else OUT_OF.search(scene.text)
    if found is not None and _volts(found["high"]) % _volts(found["low"]):
        found = None
    found = found or (None if "load" in scene.heads else JOINED_AS.search(scene.text))
    found, name = (found, "high") if found is not None else _worked_as(scene, stated)
    if found is None:
        return stated
    start, end = found.span(name)
    own = [item for item in stated if item.span[0] >= end or item.span[1] <= start]
    told = Stated(VOLTS, _volts(found[name]), "volt", found[name], (start, end), how="grammar")
    return [*own, told, *_series(scene, own, told)]


def _worked_as(scene: Scene, stated: list[Stated]) -> tuple[re.Match[str] | None, str]:
    """What several batteries work as, where each has fewer volts and they go into it; and which group holds it."""
    values = {item.fact: item.value for item in stated}
    each = values.get(NOMINAL)
    if not isinstance(each, float) or values.get(COUNT, 2.0) == 1.0 or (found := WORKING_AS.search(scene.text)) is None:
        return None, ""
    name = "high" if found["high"] else "sum"
    volts = _volts(found[name])
    return (found, name) if volts > each and not volts % each else (None, "")


def _series(scene: Scene, stated: list[Stated], told: Stated) -> list[Stated]:
    """In series, where so many of so many volts make the bank's and no layout is told or asked."""
    values = {item.fact: item.value for item in stated}
    count, nominal = values.get(COUNT), values.get(NOMINAL, 12.0)
    if LAYOUT in values or any(item.fact == LAYOUT for item in scene.items):
        return []
    joined = isinstance(count, float) and isinstance(nominal, float) and count > 1 and count * nominal == told.value
    return [replace(told, fact=LAYOUT, value="series", unit="")] if joined else []


def _volts(said: str) -> float:
    name = said.lower().replace("-", " ").split()[0].removesuffix("s")
    return VALUES.get(name) or float(name)
