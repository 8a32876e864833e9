"""Whether words that look like a kind of battery tell one."""

from __future__ import annotations

import re

from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.chargers.lamps import is_its_lamp

LIST = 3
FOLLOWING = 60  # characters
DOES_WELL = regex(  # "the radio works fine.", no question and nothing that it is compared with
    r"^ (?:still |all |both )?(?:works?|working|is|are|runs?|plays?) (?:still |just |perfectly |quite |all |working )?"
    r"(?:fine|ok(?:ay)?|well|good|perfectly|great|al+ ?right|new)(?: (?:as well|too|again|now|though))?[ ]?(?:[.!]|$)",
    re.IGNORECASE,
)
TELLS = frozenset(
    {"says", "said", "gives", "gave", "promises", "promised", "forecasts", "warns", "warned", "announced"}
)
BEGINNING = frozenset(
    {"by", "on", "itself", "again", "every", "automatically", "with", "when", "to", "at", "in", "after"}
)
WIRES = frozenset(
    [
        "spare",
        "shore",
        "mains",
        "red",
        "black",
        "positive",
        "negative",
        "plus",
        "minus",
        "charging",
        "jumper",
        "jump",
        "twin",
        "double",
        "bare",
        "long",
        "short",
        "thick",
        "dc",
        "power",
        "feed",
        "supply",
    ]
)
WHO = frozenset(
    {"i", "we", "he", "she", "they", "you", "ive", "weve", "have", "has", "had", "was", "dad", "also", "then"}
)
OF_A_RATING = frozenset(  # "the cranking number on the case" tells no duty
    {"number", "figure", "figures", "value", "rating", "amps", "amperes", "power", "current", "ability", "capacity"}
)
LAMPS = frozenset({"light", "lights", "lamp", "lamps", "led", "leds", "display", "screen"})
FORMER = frozenset({"old", "former", "previous", "last", "scrapped", "dead", "late"})
WHOSE = frozenset({"the", "my", "our", "his", "an", "her", "their"})
SHUT = frozenset({"it", "them", "the", "that", "this", "up", "my", "our", "every", "all", "off", "shut", "over"})
SIZE_NEXT = frozenset({"with", "w", "in", "for", "to", "by", "of"})
COATS = frozenset({"insulation", "plastic", "plastics", "sheath", "sheathing", "jacket", "coating", "pvc"})
COATED_WITHIN = 6  # words
OUT_OF_LINE = frozenset({"with", "fuse", "fuses", "breaker", "holder", "filter"})  # "two AGMs in line with the price"
JOINED = frozenset({"battery.chemistry", "battery.nominal"})
SIZED = frozenset({"VOLT", "AH", "COUNT", "NICKNAME", "NUM"})  # "we do the canal end to end" joins none of them
FOR_VOLTS = frozenset({"for", "to", "as", "into", "making"})
SEVERAL = frozenset({12.0, 24.0, 36.0, 48.0})  # volts that batteries are joined to
READS = frozenset({"read", "reads", "reading", "shows", "showed"})
AT_REST = (12.0, 13.2)
ABROAD = frozenset({"para"})  # "2 x 105 AGM para" is parallel; in Spanish the word is "for"


def is_wire(scene: Scene, item: Item) -> bool:
    """Whether a lead is a wire: "a 20 mm2 lead", "the spare lead", "is the lead ok running past the engine"."""
    if item.fact != "battery.chemistry" or scene.word(item.start) not in ("lead", "leads"):
        return False
    if item.end > item.start + 1:
        return scene.word(item.end - 1) in ("one", "ones") and _of_charger_wire(scene, item)
    before = scene.before(item)
    after = scene.after(item)
    sized = before is not None and before.dim in ("AREA", "GAUGE", "LENGTH", "MM")
    sized = sized or (after is not None and after.dim in ("AREA", "GAUGE"))  # "eleven metres, lead 70 square"
    ahead = {scene.word(item.end), scene.word(item.end + 1)}
    goes = scene.word(item.start - 1) == "which" and bool(ahead & {"goes", "go"})  # "which lead goes where"
    ends = after is None or after.kind == "mark"
    that = goes or (scene.word(item.start - 1) in ("that", "this", "its") and ends)
    return (
        sized
        or that
        or scene.word(item.start - 1) in WIRES
        or _of_charger_wire(scene, item)
        or _sized_next(scene, item)
        or _is_coated(scene, item)
        or bool(ahead & {"running", "runs", "carries", "coming", "comes", "going", "leading", "out"})
    )


def _sized_next(scene: Scene, item: Item) -> bool:
    """Whether the size of a cable follows: "replace the lead with 50 mm", "a new lead in 35mm2"."""
    follows = scene.items[item.at + 2] if item.at + 2 < len(scene.items) else None
    return scene.word(item.end) in SIZE_NEXT and follows is not None and follows.dim in ("AREA", "GAUGE", "MM")


def _is_coated(scene: Scene, item: Item) -> bool:
    """Whether its plastic is spoken of: "the plastic melted on the lead", "insulation on one of the leads"."""
    before = {scene.word(at) for at in range(item.start - COATED_WITHIN, item.start)}
    return bool(before & COATS) and scene.word(item.start - 1) != "of"


def _of_charger_wire(scene: Scene, item: Item) -> bool:
    """Whether it is the one lead of a charger: "a charger of one lead", "my charger is a single-lead one"."""
    if scene.word(item.start - 1) not in ("one", "single", "1"):
        return False
    return any(head.head == "charger" and 0 < item.start - head.end <= LIST + 1 for head in scene.head_items)


def _follows_figure(scene: Scene, item: Item) -> bool:
    """Whether a battery's figure, kind or number stands right before a word that is short for another."""
    before = scene.before(item)
    return before is not None and bool(before.dim or before.fact)


def is_no_kind(scene: Scene, item: Item) -> bool:
    """Whether a word is another one here: the motor of "the starter won't turn", a charger without electronics."""
    word, alone = scene.word(item.start), item.end == item.start + 1
    if word == "cranking" and alone and (scene.word(item.start - 1) == "cold" or scene.word(item.end) in OF_A_RATING):
        return True
    if word == "starter" and alone and not _beside_its_figure(scene, item):
        return True
    if scene.word(item.end - 1) == "caps" and scene.word(item.end) in ("on", "over"):  # "has caps on the terminals"
        return not {"terminals", "posts", "poles", "lugs", "studs"}.isdisjoint(
            scene.word(at) for at in range(item.end, item.end + 4)
        )
    if item.fact == "load.kind" and scene.word(item.start - 1) in FORMER and scene.word(item.start - 2) in WHOSE:
        return scene.word(item.start - 3) in ("off", "from", "of")  # "a fuse off the old windlass"
    if word == "sealed" and alone and scene.word(item.start - 1) in WHO and scene.word(item.end) in SHUT:
        return True  # "I sealed it with tape"
    if word in ("radio", "vhf") and alone and _is_news(scene, item):
        return True
    if word in LAMPS and is_its_lamp(scene, item):
        return True  # "the little light says AGM"
    if word == "starts" and alone and scene.word(item.end) in BEGINNING:
        return True  # "the programme starts by itself"
    return _is_aside(scene, item) or (word == "electronics" and scene.word(item.start - 1) in ("no", "without"))


def _is_aside(scene: Scene, item: Item) -> bool:
    """Whether nothing is asked of a small load: "the radio works fine", or one beside a model with its own kind."""
    if (item.fact, item.name) != ("load.kind", "electronics"):
        return False
    end = scene.span(item.start, item.end)[1]
    well = DOES_WELL.match(scene.text[end : end + FOLLOWING]) is not None
    return well or (scene.has_model and not scene.quantities("AMP", "WATT"))


def is_deep_cycle(scene: Scene, at: int) -> bool:
    """Whether "DC" is short for deep cycle: "a flooded DC of 105 Ah"; "AGM, DC-DC charger" has a converter."""
    follows = scene.at_word[at + 1] if at + 1 < len(scene.at_word) else None
    alone = follows is None or not (follows.head or follows.name in ("dc", "-", "to", "charger", "side", "system"))
    return scene.word(at) == "dc" and scene.at_word[at].end == at + 1 and alone


def _is_news(scene: Scene, item: Item) -> bool:
    """Whether the radio only tells the weather: "the radio says minus 15", "they gave frost on the radio"."""
    on_it = [scene.word(item.start - 2), scene.word(item.start - 1)] in (["on", "the"], ["by", "the"])
    return scene.word(item.end) in TELLS or (on_it and not scene.quantities("AMP", "WATT"))


def _beside_its_figure(scene: Scene, item: Item) -> bool:
    """Whether a starter is a battery: "my 600 CCA starter", "a wet starter", "starter, 95 Ah"."""
    after = scene.after(item)
    if after is not None and after.name in (",", ":", "(", "is"):
        after = scene.after(after)
    if after is not None and after.name in READS and _rests(scene.after(after)):  # "the starter read 12.5 at dawn"
        return True
    figures = [other for other in (scene.before(item), after) if other is not None]
    return any(other.dim in ("CCA", "CA", "AH") or other.fact == "battery.chemistry" for other in figures)


def _volts_next(scene: Scene, item: Item) -> bool:
    """Whether the volts of several batteries are told right after: "for 24 volts"."""
    follows = scene.items[item.at + 2] if item.at + 2 < len(scene.items) else None
    return follows is not None and follows.dim in ("VOLT", "NUM") and follows.quantity.value in SEVERAL


def _rests(item: Item | None) -> bool:
    """Whether these are volts of a 12 V battery at rest."""
    if item is None or item.dim not in ("VOLT", "NUM") or isinstance(item.quantity.value, str):
        return False
    return AT_REST[0] <= item.quantity.value <= AT_REST[1]


def only_looks_so(scene: Scene, item: Item) -> bool:
    """Whether a word of a layout says something else: "para" in Spanish, what fuse goes "in line"."""
    if scene.word(item.start) in ABROAD and item.end - item.start == 1:
        return not _follows_figure(scene, item)
    words = [scene.word(at) for at in range(item.start, item.end)]
    if words in (["string"], ["strings"]) and any(
        one.dim == "TIME" and scene.word(one.end + 1) == "string" for one in scene.items
    ):
        return True  # "25 minutes a string" of pots
    if words == ["end", "to", "end"]:
        own = scene.clause(item.start)
        if scene.word(item.end) in FOR_VOLTS and _volts_next(scene, item):  # "I'd have them end to end for 24 volts"
            return False
        here = [one for one in scene.items[: item.at] if scene.clause(one.start) == own]
        return item.at > 1 and not any(one.head == "battery" or one.fact in JOINED or one.dim in SIZED for one in here)
    if words[:2] != ["in", "line"] or item.fact != "bank.layout":
        return False
    before = scene.before(item)
    ones = before is not None and before.head in ("battery", "") and (_follows_figure(scene, item) or before.head)
    volts = scene.items[item.at + 2 : item.at + 4]
    waits = scene.word(item.end) == "for" and not any(other.dim or other.head for other in volts)
    return not ones or waits or scene.word(item.end) in OUT_OF_LINE
