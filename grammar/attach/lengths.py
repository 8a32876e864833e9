"""Which lengths are the run of a cable, and whether they were measured there and back."""

from __future__ import annotations

import re
from itertools import takewhile

from grammar.scene.claims import NOTHING, Claim, beside, by_group, close
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.text.standard import METRIC_SIZES

STUDS = frozenset({5.0, 6.0, 8.0, 10.0, 12.0})  # mm
HOLES = frozenset({"stud", "studs", "post", "posts", "bolt", "bolts", "thread"})
MEASURED_SO = frozenset({"tall", "wide", "deep", "beam", "draft", "draught"})  # a mast, a lock, the boat
BUILT = regex(  # "a Dutch barge, 1928, 17 m"
    r"\b(?:boat|barge|yacht|sloop|ketch|cruiser|launch|trawler|cutter|ship|narrowboat|tjalk),? (?:built |from |of )?"
    r"(?:in )?(?:18|19|20)\d\d,? (?:is |about )?$",
    re.IGNORECASE,
)
NUMBERED = regex(  # "hull no. 77, 9.4 m"
    r"\b(?:hull|yard|sail|build|boat|reg(?:istration|istry)?)\.? (?:no|nr|num(?:ber)?|#)\.? ?[\w/-]+[,;] $",
    re.IGNORECASE,
)
OF_YEAR = regex(
    r" ?(?:loa|long|overall)?,? (?:built |from |of |built in )?(?:19[3-9]|20[0-4])\d(?=[,.;)]|$)", re.IGNORECASE
)
METERS = regex(r"(?:two|both|three|2|3) meters", re.IGNORECASE)  # "with two meters": to read with
A_METER = regex(r"(?:one|a|the) meter", re.IGNORECASE)  # "one meter on the posts, a meter across the studs"
HELD_ON = regex(
    r" (?:was |is |held |clipped |put )?(?:on|across|at|between|over) (?!from\b)(?:the |its |my |both |each )?"
    r"(?:\w+[' ’]?s? ){0,2}"
    r"(?:posts?|poles?|terminals?|studs?|battery|bank|motor|thruster|lugs?|ends?)\b",
    re.IGNORECASE,
)
OF_OTHERS = regex(  # "the tide is 4 m", "our mast is about 14 m"; no "run to the mast is 14 m"
    r"(?<!to )(?<!from )(?<!up )(?<!down )\b(?:the|our|my|her|his|its|a)\s(?:mast|tide|tidal range|water|depth|lock"
    r"|bridge|pontoon|jetty|quay|berth|slip|pier|canal|river|waves?|swell|keel|headroom|air draught|tender|dinghy|chain"
    r"|rope|visibility)\b(?: (?:here|there|itself|outside|alone))*"
    r" (?:is|are|was|were|has|of|measures?|stands?|comes to|rises|falls)"
    r"(?: (?:about|only|just|some|over|under|nearly))* $",
    re.IGNORECASE,
)
HULLS = frozenset({"steel", "wood", "wooden", "grp", "fibreglass", "fiberglass", "aluminium", "ferro", "timber"})
OWNED = frozenset({"have", "own", "has", "bought", "shes"})
DRAUGHT = frozenset({"draw", "draws", "draught", "draft"})
RUNS = frozenset({"runs", "lengths", "cables", "lots"})
BUYS = frozenset(
    [
        *("deliver", "delivery", "delivered", "order", "ordering", "ordered"),
        *("price", "prices", "quote", "ship", "sell", "cost"),
    ]
)
DEALS_WITH = frozenset({"him", "her", "them"})
IS = ("is", "are", "for")
IN_VOLTS = frozenset({"volts", "volt", "voltage"})
COSTS = frozenset({"cost", "costs", "stock", "delivered", "shipped"})
STOCK, STOCK_REACH = frozenset({"left", "leftover", "spare", "stock", "reel", "drum", "lying"}), 7  # words
BUYING_REACH, COST_REACH, VOLTS_REACH = 5, 8, 14  # words
SENTENCE_ENDS = frozenset(".?!;")
GOING_ON = 20  # words
ONE_OR_BOTH_WAYS = ("length_one_way", "length_total")
LUGS = frozenset({"lug", "lugs", "crimp", "terminals"})
LEAST_LUG = 16.0  # mm2
THIN = 5.0  # mm2
WIRES = frozenset({"wire", "wires", "flex", "twin", "core", "cores", "cable", "bellwire", "t&e", "tri", "stranded"})
SMALLEST = 10  # mm2 that go without their unit
MEASURES = frozenset({"each", "one", "away", "long", "there", "round", "total", "foot", "feet", "ft", "m", "in", "amp"})
RUN_ON = frozenset({"of", "away", "long", "each", "from", "one", "or", "there", "apart", "to", "in", "behind"})
SHORTEST_RUN = 250.0  # mm: "690 mm away"
BY_SO_MUCH = frozenset({"nearer", "closer", "further", "farther", "shorter"})
SHORT = 4  # words: an answer to "how far is it?"


def lengths(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that a length states; `value` in its own unit. A boat's length is no fact."""
    if item.quantity.kind == "boat_length" and close(scene, item, *ONE_OR_BOTH_WAYS, reach=0.3, after=True):
        return Claim("cable.length", "role")  # "the length of the boat, 22 ft each way"
    if _is_none(scene, item):
        return NOTHING
    claim = by_group(scene, item)
    if claim is not None and claim.fact == "-" and beside(scene, item, "boat", reach=0.3):
        return claim
    cabled = close(scene, item, "cable.length", "length_total", "length_one_way", reach=3)
    if claim is None and not cabled and beside(scene, item, "boat", reach=1.6):
        return NOTHING
    if claim is not None and (claim.fact == "cable.length" or not cabled):
        return claim
    if item.dim == "INCH" and not cabled and not beside(scene, item, "cable", reach=4):
        return NOTHING
    told = scene.about("role:length_one_way", "role:length_total") and len(scene.quantities("LENGTH")) == 1
    if cabled or told:
        return Claim("cable.length", "role")
    if beside(scene, item, "cable", reach=9) or scene.quantities("GAUGE", "AREA", "AMP", "WATT", "MM"):
        return Claim("cable.length", "near")
    if (
        len(scene.tokens) <= SHORT
        or (scene.expected & {"cable.length", "load.current"} and len(scene.tokens) <= GOING_ON)
        or _goes_on(scene)
        or {"cable", "load", "battery", "fuse", "panel"} & scene.heads
        or scene.about("word:loss")
    ):
        return Claim("cable.length", "default")
    return NOTHING


def _is_none(scene: Scene, item: Item) -> bool:
    """Whether it measures the boat or something else, or is to be bought."""
    text = item.quantity.text.lower()
    if item.quantity.kind == "boat_length" or text.endswith("footer"):
        return True
    if text == "one yard" and scene.word(item.end) not in RUN_ON:  # "one yard says 25 mm2, the other 35"
        return True
    if scene.word(item.end) in BY_SO_MUCH and scene.word(item.start - 1) not in IS:
        return True  # "moved 1.5 m nearer the motor"
    if (
        scene.word(item.start - 1) in ("with", "using")
        and METERS.fullmatch(text)
        and scene.word(item.end) not in RUN_ON
    ):
        return True
    if A_METER.fullmatch(text) and HELD_ON.match(scene.text, scene.span(item.start, item.end)[1]):
        return True
    if scene.word(item.end) == "of" and _is_in_stock(scene, item):
        return True
    hull = scene.word(item.end) == "," and scene.word(item.end + 1) in HULLS  # "(10.2 m, steel, 9 tons"
    before, after = scene.ahead(scene.tokens[item.start].start), scene.text[scene.tokens[item.end - 1].end :]
    hull = hull or bool(
        BUILT.search(before) or OF_OTHERS.search(before) or NUMBERED.search(before) or OF_YEAR.match(after)
    )
    return hull or scene.word(item.end) in MEASURED_SO or _is_boats(scene, item) or _is_ordered(scene, item)


def _is_in_stock(scene: Scene, item: Item) -> bool:
    """Whether so much of a cable is left over, where another length is told: "30 m of 25 mm2 left over, 10 m away"."""
    after = {scene.word(at) for at in range(item.end + 1, item.end + STOCK_REACH)}
    return len(scene.quantities("LENGTH")) > 1 and not STOCK.isdisjoint(after)


def _goes_on(scene: Scene) -> bool:
    """Whether a short message goes on with a cable of the conversation: "and at 9.5 m?"."""
    told = any(fact.fact.startswith("cable.") for fact in scene.said)
    return told and len(scene.tokens) <= GOING_ON and len(scene.quantities("LENGTH")) == 1


def bare_area(scene: Scene, item: Item, value: float) -> Claim | None:
    """A size of cable without its unit: "8 m of 95", "the cable is 35", "300 A, 5 m on 70"."""
    if value not in METRIC_SIZES or value < SMALLEST or scene.quantities("AREA", "GAUGE", "MM"):
        return None
    if _is_section_of_runs(scene, item):  # "two runs of 50 in parallel"
        return Claim("cable.area", "grammar")
    if scene.word(item.end) in MEASURES:
        return None
    before, word = scene.before(item), scene.word(item.start - 1)
    after_length = item.at > 1 and word == "of" and scene.items[item.at - 2].dim == "LENGTH"
    sides = scene.sides.get(item.at)
    left = sides.left if sides is not None else None
    named = left is not None and left.head == "cable" and (left is before or (sides is not None and sides.tied))
    drawn = word in ("on", "in") and bool(scene.quantities("AMP") and scene.quantities("LENGTH"))
    sized = {fact.fact for fact in scene.said} & {"cable.gauge", "cable.area", "cable.length"}
    goes_on = sized and len(scene.tokens) <= GOING_ON and not {"load", "fuse", "battery", "charger"} & scene.heads
    there = word in ("is", "") or scene.word(item.end) in ("over", "under", "was")
    if goes_on and there and scene.word(item.end) in ("over", "under", "was", "is", "enough", "ok", "then"):
        return Claim("cable.area", "grammar")
    if after_length or (named and left is not None and left.name != "run") or drawn:
        return Claim("cable.area", "grammar")
    return None


def thin_wire(scene: Scene, item: Item, value: float) -> bool:
    """Whether a bare number is the section of a thin wire named beside it: "bell wire (0.75)", "2.5 twin core"."""
    if value not in METRIC_SIZES or value >= THIN or scene.quantities("AREA", "GAUGE", "MM"):
        return False
    before = [
        word for at in range(item.start - 2, item.start) if (word := scene.word(at)) not in ("(", ",", "is", "of")
    ]
    return bool(WIRES & {*before[-1:], scene.word(item.end)})


def of_cable(scene: Scene, value: float) -> bool:
    """Whether the 95 of "2 x 95" is a cable's: one was spoken of, and no battery's size."""
    told = {fact.fact for fact in scene.said}
    return value in METRIC_SIZES and "cable.area" in told and "battery.capacity" not in told


def _is_boats(scene: Scene, item: Item) -> bool:
    """Whether the words around it are of a boat, and no cable is near: "we draw 1.6 m", "she is a 9.5 m ..."."""
    if beside(scene, item, "cable", reach=3) or close(scene, item, "length_total", "length_one_way", reach=3):
        return False
    before = tuple(scene.word(at) for at in range(item.start - 3, item.start))
    return before[2] in DRAUGHT or (before[2] == "a" and (before[1] in OWNED or before[:2] == ("she", "is")))


def _is_ordered(scene: Scene, item: Item) -> bool:
    """Whether so much cable is to be bought: "can you deliver 50 m", "what would 40 ft of that cost"."""
    if close(scene, item, "length_total", "length_one_way", reach=3):
        return False
    others = (other.end for other in scene.quantities("LENGTH") if other.end <= item.start)
    begins = max(item.start - BUYING_REACH, *others, 0)
    before = [scene.word(at) for at in range(begins, item.start)]
    ends = max((at for at, word in enumerate(before, start=1) if word in SENTENCE_ENDS), default=0)
    after = list(
        takewhile(lambda word: word not in SENTENCE_ENDS, map(scene.word, range(item.end, item.end + COST_REACH)))
    )
    how_much = before[-3:-1] == ["how", "much"] and before[-1] in IS
    asked = how_much and not scene.about("word:loss")  # "how much is 50 ft of 1/0"
    ahead = [scene.word(at) for at in range(item.end, item.end + VOLTS_REACH)]
    if COSTS & set(after) and IN_VOLTS & set(ahead):  # "4 m, 250 A ought to cost me how many volts"
        return False
    told = set(before[ends:])
    dealt = "sell" in told and told & DEALS_WITH  # "what cable do I sell him, it's 9 m"
    return asked or bool(BUYS & told and not dealt) or bool(COSTS & set(after))


def counts_cables(scene: Scene, item: Item) -> bool:
    """Whether cables side by side are counted: "two runs of 50", "2 x 50 mm2 per pole"."""
    if scene.word(item.end) in RUNS and scene.word(item.end + 1) == "of":
        size = scene.at_word[item.end + 2] if item.end + 2 < len(scene.at_word) else item
        return size.dim in ("AREA", "GAUGE") or _is_section_of_runs(scene, size)
    after = scene.after(item)
    return item.kind in ("times", "count") and after is not None and after.dim in ("AREA", "GAUGE", "LENGTH")


def _is_section_of_runs(scene: Scene, item: Item) -> bool:
    """The 50 of "two runs of 50", where a cable is spoken of."""
    value = item.quantity.value if item.dim == "NUM" else ""
    spoken = "cable" in scene.heads or any(old.fact.startswith("cable.") for old in scene.said)
    runs = scene.word(item.start - 1) == "of" and scene.word(item.start - 2) in RUNS
    return spoken and runs and not isinstance(value, str) and value in METRIC_SIZES and value >= SMALLEST


def _asked_for(scene: Scene, value: float) -> bool:
    """Whether a short answer gives the cable that was asked for: "95mm"."""
    return bool(scene.expected & {"cable.area", "cable.gauge"}) and value >= SMALLEST and len(scene.tokens) <= SHORT


def millimetres(scene: Scene, item: Item, value: float) -> Claim | None:
    """Millimetres that name a size of cable: "70mm cable". Other millimetres are no fact."""
    if {scene.word(item.start - 1), scene.word(item.end)} & HOLES and value in STUDS:
        return Claim("terminal.size", "grammar")
    if value >= SHORTEST_RUN and scene.word(item.end) == "away":
        return Claim("cable.length", "role")
    if value not in METRIC_SIZES:
        return NOTHING
    if beside(scene, item, "cable", reach=3) or _asked_for(scene, value):
        return Claim("cable.area", "near")
    if "crimp" in scene.vocabulary and value >= SMALLEST:
        return Claim("cable.area", "near")
    if scene.word(item.start - 1) in ("on", "for") and "cable" in scene.heads and value >= SMALLEST:  # "a lug on 70mm"
        return Claim("cable.area", "range")
    if LUGS & {scene.word(at) for at in range(item.start - 3, item.end + 2)} and value >= LEAST_LUG:
        return Claim("cable.area", "near")  # "a lug size 70mm": no stud is so thick
    circuit = bool(scene.quantities("AMP") and scene.quantities("LENGTH"))  # "50mm for 240 A at 5 m"
    if ({"space", "terminal"} & scene.heads and not circuit) or scene.about("word:fit"):
        return NOTHING
    fused = "fuse" in scene.heads and value >= SMALLEST and scene.word(item.end) != "from"  # its distance
    if scene.quantities("AMP", "LENGTH") or {"cable", "load"} & scene.heads or fused:
        return Claim("cable.area", "range")
    return NOTHING
