"""What is said twice: repeats fall away, corrections replace, an alternative or a second battery is the second."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterable
from dataclasses import replace

from grammar.amend.guessed import without_guesses
from grammar.amend.lights import without_lights
from grammar.amend.put_right import put_right
from grammar.amend.referred import asked_again, without_references
from grammar.reading import Stated, Value
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.batteries.absent import without_absent
from grammar.told.batteries.tapped import without_taps
from grammar.told.readings.quoted import without_limits

OTHER = frozenset({"one", "other", "each"})  # "on one battery and then the other, 100 Ah each"
ONE_AND_OTHER = regex(
    r"\bone (?:battery|agm|gel|wet|lithium|accu)\b(?! (?:pegs?|posts?|terminals?|poles?|leads?|clamps?|lugs?)\b)"
    r"[^?!;]{2,60}\bthe other(?: one| battery)?"
    r"(?= ?(?:is|was|has|'s|,|\.|reads|shows|for|at|gets)\b|[,.]| \d)",
    re.IGNORECASE,
)
ONE_AND_ONE = regex(  # "one new at 100 Ah and one three years old"
    r"\bone (?:is |was )?(?:new|old|fresh|brand new|used|\w+ years?)\b[^.?!;]{0,40}?\band one (?:is |was )?"
    r"(?:new|old|fresh|used|of|\d+|\w+ years?)\b",
    re.IGNORECASE,
)
HALF = 50.0  # percent
FULL = 100.0  # percent
MOORED = regex(
    r"\b(?:fast|tied up|tied|moored|berthed|safely|back|laying|lying|lies|lay|came|come|coming|got|get|going|go)"
    r" alongside\b"
    r"|\b(?:i'?m|i am|we'?re|we are|she'?s|she is|you'?re|i was|we were|being|once) (?:just |nearly )?alongside\b"
    r"(?! (?:the|each|one|another|it)\b)"
    r"|\balongside (?:since|until|till|tonight|today|all)\b"
    r"|\balongside (?:the |a |our |my |another )?(?:\w+ )?(?:quay|pontoon|jetty|wall|pier|dock|berth|ferry|ship)\b",
    re.IGNORECASE,
)
ARROW = regex(r"(\d{1,2}) ?%? ?(?:-+>|>|→|=>) ?$")
LIKE_TO_LIKE = regex(
    r"\b(?:plus|positives?|pos|red)\b[^.?!;,]{0,20}\bto (?:the )?(?:other )?(?:plus|positives?|pos|red)\b",
    re.IGNORECASE,
)
REACHED = regex(  # what stands before a half that is the end of a wait; not before "how many hours from half"
    r"\b(?:before|until|till|when(?:'?s| is| will| does))\b[^.?!;]{0,40}"
    r"\b(?:stands?|is|it'?s|they'?re|gets?|reach(?:es)?|falls?|sits?|drops?|goes) ?(?:down|back)? ?(?:at|to|by)? ?$"
    r"|\b(?:will|would|shall|wud|wld) (?:i|we|it|they|there|she)(?: still)? (?:have|be|hold|got)(?: at least| about)? $"
    r"|\b(?:when(?:['’]ll| (?:would|will|is|are|do|shall|might))|how (?:soon|fast|quickly)"
    r"|how many (?:days|hours|weeks|nights|minutes)|how long (?:until|till|before|will it be))\b"
    r"(?:(?!\b(?:re)?(?:charg|fill)|\b(?:from|when|if|now|at|run|over|down)\b)[^.?!;]){0,50}$",
    re.IGNORECASE,
)
BY_THEN = regex(
    r" ?(?:yet|already)?,? ?by (?:then|thn|that time|the time|the (?:end|weekend|summer)"
    r"|(?:mon|tues|wednes|thurs|fri|satur|sun)day|easter|spring|april|march)\b[^.?!;]{0,30}\?",
    re.IGNORECASE,
)
TOTAL = regex(
    r"(?:\bso|total|altogether|makes|call it|in all|together|sum of|=)\W*(?:about |some |of )?$", re.IGNORECASE
)
ROUNDED = 0.02  # a sum in the head
SAME = 0.01  # values this close are one value
LOADS = frozenset({"load.current", "load.power"})  # three are told of, so that two are not taken for all
OFFERED = frozenset({"settings", "modes", "options", "positions", "choices"})
READ = frozenset({"reads", "shows", "showing", "reading", "measured", "sits", "climbs", "goes"})
SEVERAL = frozenset({"two", "three", "four", "pair", "2"})
PAUSES = frozenset({",", "?", "-", "..", "...", "–"})
HAD = frozenset({"had", "was", "were", "used"})
FROM = ("from", "v from", "volts from", "volt from")
ARROWS = ("->", "=>", "→", "-->", ">")
FALLS = ("drop", "fall", "fell", "sag", "dip", "sink", "sank", "goes", "went", "down", "plunge", "crash", "slump")


def amended(scene: Scene, stated: Iterable[Stated]) -> list[Stated]:
    """The facts of a message: each once, or twice where it tells of two."""
    weighed = scene.about("request:versus", "word:weight", "about:compare")
    stated = without_guesses(scene.text, list(stated))
    stated = stated if weighed else without_absent(scene.text, stated)
    stated = without_references(scene, _moored(scene, without_taps(scene, without_lights(scene, stated))))
    stated = _falling(scene, _chosen_from(scene, without_limits(scene, list(stated))))
    stated = _till_half(scene, _till_full(_now(scene, [_side_by_side(scene, _from(scene, item)) for item in stated])))
    mends = (found for found in scene.named("note", "correction") if not _is_no_mend(scene, found.start))
    corrections = [scene.tokens[found.start].start for found in mends]
    corrections += [token.start for at, token in enumerate(scene.tokens) if _takes_back(scene, at)]
    kept: dict[str, list[Stated]] = {}
    repeated: dict[str, list[Stated]] = {}
    for item in sorted(stated, key=lambda item: item.span):
        among = kept.setdefault(item.fact, [])
        if any(_same(item.value, other.value) for other in among):
            repeated.setdefault(item.fact, []).append(item)
            continue
        if among and any(among[-1].span[0] < at <= item.span[0] for at in corrections):
            among.clear()
        put_right(scene, item, kept)
        among.append(item)
    kept = {fact: asked_again(scene, among, repeated.get(fact, [])) for fact, among in kept.items()}
    if len(counts := kept.get("battery.count", [])) > 1:  # "one 12 V battery": an article more than a count
        kept["battery.count"] = [item for item in counts if item.value != 1.0][:1] or counts[:1]
    elif counts and counts[0].value == 1.0 and _two_are_told(scene):
        kept["battery.count"] = [replace(counts[0], value=2.0)]
    fuses = {item.value for item in kept.get("fuse.rating", [])}
    if len(amps := kept.get("load.current", [])) > 1:  # "a 600 A one is in the box": the fuse's amps
        kept["load.current"] = [item for item in amps if item.value not in fuses] or amps
    for fact in LOADS:
        kept[fact] = _without_parts(scene, kept.get(fact, []))
    found = [
        replace(item, of=number)
        for fact, among in kept.items()
        for number, item in enumerate(among[: 3 if fact in LOADS else 2], start=1)
    ]
    return sorted(found, key=lambda item: (item.span, item.fact))


def _two_are_told(scene: Scene) -> bool:
    """Whether one battery is told of and then the other: "one battery is six years old, the other is new"."""
    both = ONE_AND_OTHER.search(scene.text) or ONE_AND_ONE.search(scene.text)
    return scene.vocabulary >= OTHER or "twin" in scene.vocabulary or both is not None


def _is_no_mend(scene: Scene, at: int) -> bool:
    """Whether nothing is taken back: "by which I mean its water"; "or rather two of them" weighs several."""
    explains = scene.word(at - 1) in ("which", "what") and {scene.word(at), scene.word(at + 1)} >= {"i", "mean"}
    return explains or _rather_several(scene, at)


def _rather_several(scene: Scene, at: int) -> bool:
    """Whether "rather" weighs several against one: "the single 140 Ah or rather the pair of 75 Ah"."""
    if (scene.word(at - 1), scene.word(at)) != ("or", "rather"):
        return False
    return not SEVERAL.isdisjoint({scene.word(at + 1), scene.word(at + 2)})


def _takes_back(scene: Scene, at: int) -> bool:
    """Whether a "no" puts another figure in place of the one before: "5, no 6 years"."""
    if scene.word(at) not in ("no", "nope") or scene.word(at - 1) not in PAUSES or at + 2 > len(scene.tokens):
        return False
    at += scene.word(at + 1) in (",", ":")  # "480 minutes? no, 148"
    return at + 1 < len(scene.tokens) and bool(scene.at_word[at + 1].dim)


def _without_parts(scene: Scene, among: list[Stated]) -> list[Stated]:
    """Of several loads the sum alone, where one is told as that: "radar 28 W, plotter 22 W, call it 50 W"."""
    values = [item.value for item in among if isinstance(item.value, float)]
    if len(values) < 2 or max(values) < (1 - ROUNDED) * (sum(values) - max(values)):
        return among
    whole = [item for item in among if item.value == max(values)]
    return whole if TOTAL.search(scene.text[: whole[0].span[0]]) else among


def _chosen_from(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Without the volts that a charger only offers: "settings 14.4, 14.7 and 14.1, which one for AGM"."""
    volts = {item.value for item in stated if item.fact == "charger.voltage"}
    offered = len(volts) > 1 and bool(OFFERED & scene.vocabulary) and READ.isdisjoint(scene.vocabulary)
    return [item for item in stated if item.fact != "charger.voltage"] if offered else stated


def _now(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Without the kind of battery that there was: "I had lithium, now it's AGM"; where both are weighed it stays."""
    kinds = sorted((item for item in stated if item.fact == "battery.chemistry"), key=lambda item: item.span)
    if len(kinds) != 2 or kinds[0].value == kinds[1].value or scene.about("word:weight", "request:versus"):
        return stated
    starts = [token.start for token in scene.tokens]
    first, second = (bisect_left(starts, item.span[0]) for item in kinds)
    had = {scene.word(at) for at in range(first - 3, first)} & HAD
    return (
        [item for item in stated if item is not kinds[0]]
        if had and "now" in {scene.word(at) for at in range(first, second)}
        else stated
    )


def _till_full(stated: list[Stated]) -> list[Stated]:
    """Without the full battery that is the aim: "from 50 up to full"."""
    charges = sorted((item for item in stated if item.fact == "battery.charge"), key=lambda item: item.span)
    aim = len(charges) == 2 and charges[1].value == FULL and charges[0].value != FULL
    return [item for item in stated if item is not charges[1]] if aim else stated


def _moored(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Without the layout of "alongside", where it is the boat that lies so: "fast alongside now"."""
    beside = [item for item in stated if item.fact == "bank.layout" and item.text.lower() == "alongside"]
    return [item for item in stated if item not in beside] if beside and MOORED.search(scene.text) else stated


def _from(scene: Scene, item: Stated) -> Stated:
    """The charge that it begins with, where an arrow leads to the full battery: "20>100 %"."""
    begin = ARROW.search(scene.ahead(item.span[0])) if item.fact == "battery.charge" and item.value == FULL else None
    return replace(item, value=float(begin[1])) if begin else item


def _side_by_side(scene: Scene, item: Stated) -> Stated:
    """In parallel, where like is joined to like, post by post: "plus joined to plus and minus to minus"."""
    joined = item.fact == "bank.layout" and item.value == "series" and LIKE_TO_LIKE.search(scene.text)
    return replace(item, value="parallel") if joined else item


def _till_half(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Without the half that is only reached: "how many days before it stands at half", "half empty by then?"."""
    return [
        item for item in stated if item.fact != "battery.charge" or item.value != HALF or not _is_reached(scene, item)
    ]


def _is_reached(scene: Scene, item: Stated) -> bool:
    return bool(REACHED.search(scene.ahead(item.span[0])) or BY_THEN.match(scene.text[item.span[1] :]))


def _falling(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """ "12.8 V drops to 9 V": of two volts under load the one that falls is the volts at rest."""
    under = sorted((item for item in stated if item.fact == "reading.load_voltage"), key=lambda item: item.span)
    if len(under) != 2 or any(item.fact == "reading.voltage" for item in stated):
        return stated
    high, low = under
    between = scene.text[high.span[1] : low.span[0]].lower()
    if between.strip() in FROM and not isinstance(high.value, str) and not isinstance(low.value, str):
        if low.value > high.value:  # "dips to 12.4 from 13.3"
            return [replace(item, fact="reading.voltage") if item is low else item for item in stated]
        return stated
    falls = (any(word in between for word in FALLS) and "to" in between) or between.strip() in ARROWS
    if not falls or isinstance(high.value, str) or isinstance(low.value, str) or high.value <= low.value:
        return stated
    return [replace(item, fact="reading.voltage") if item is high else item for item in stated]


def _same(one: Value, other: Value) -> bool:
    if isinstance(one, bool | str) or isinstance(other, bool | str):
        return one == other
    return abs(one - other) <= SAME * max(abs(one), abs(other), 1e-9) and abs(one - other) < 0.005 * max(1.0, abs(one))


PAIR = 2


def lowest_kept(stated: list[Stated]) -> list[Stated]:
    """Of more than two readings of one thing the first and the lowest; where the first is that, the highest. Of cells
    the lowest and the highest: what lies between the two counts."""
    for fact in ("reading.gravity", "reading.voltage"):
        read = [item for item in stated if item.fact == fact and not isinstance(item.value, str)]
        if len(read) > PAIR:
            low, high = (pick(read, key=lambda item: float(item.value)) for pick in (min, max))
            first = high if fact == "reading.gravity" else read[0]
            second = high if low.value == first.value else low
            gone = {id(item) for item in read} - {id(first), id(second)}  # a log may hold hundreds
            stated = [item for item in stated if id(item) not in gone]
    return stated


def spread(stated: list[Stated]) -> list[Stated]:
    """With the difference between cells, where several were read."""
    cells = [item for item in stated if item.fact == "reading.gravity" and not isinstance(item.value, str)]
    values = [float(end) for item in cells for end in (item.value, item.low, item.high) if end is not None]
    if (
        any(item.fact == "reading.gravity_spread" for item in stated)
        or len(values) < 2
        or max(values) - min(values) < 0.0005
    ):
        return stated
    last = cells[-1]
    return [
        *stated,
        replace(
            last,
            fact="reading.gravity_spread",
            value=round(max(values) - min(values), 4),
            low=None,
            high=None,
            how="grammar",
        ),
    ]
