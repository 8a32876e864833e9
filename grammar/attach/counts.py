"""How many: batteries, banks, outputs, bursts, and how many a maker allows."""

from __future__ import annotations

import re
from itertools import dropwhile

from grammar.attach.allowed import allowed_as
from grammar.attach.before_battery import COUNTED
from grammar.attach.counted_batteries import MOST_BATTERIES, _is_pair, _rated_next, batteries_counted, is_numbered
from grammar.attach.lengths import counts_cables
from grammar.attach.pairs import steps_up
from grammar.scene.claims import NOTHING, Claim, close
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.text.standard import NOMINAL
from grammar.told.batteries.counted import of_other_things
from grammar.told.batteries.counted_apart import of_each_one
from grammar.told.words import ahead_of
from grammar.told.years.ages import is_age, of_people

NO_ROUNDS = frozenset(
    {"volts", "amps", "is", "was", "as", "minutes", "mins", "seconds", "secs", "hours", "watts", "has", "this", "its"}
    | {"batteries", "times", "percent", "agms", "gels", "wets", "lithiums", "thrusters", "motors", "does", "us"}
)
OUTPUTS = frozenset({"output", "outputs", "outlet", "outlets", "channel", "channels", "leg", "legs"})
NUMBERED = ("COUNT", "NUM")
FIRST = frozenset({"one", "two", "three", "single"})
PAUSES = frozenset({"on", "off", "rest", "pause"})
ROUNDS_AFTER = 9  # pieces
MOST_MINUTES = 1.5  # of one of many runs: "a dozen lifts of half a minute"
COUNTS = {"charger.outputs": 1.8, "bank.count": 0.6, "battery.max_in_series": 0.6, "battery.max_in_parallel": 0.6}
SHOWN_BY = frozenset(
    {"lights", "lamps", "leds", "stages", "buttons", "words", "screens", "flavours", "flavors", "tunes"}
)  # of a charger, no outputs
MOST_PLACES = 12
OF_SYSTEM = frozenset({"thruster", "windlass", "motor", "bank", "boat", "system", "side"})
FORCEFUL = 60.0  # what "kicks with 260" are amps, not so many kicks
TO_DO = frozenset({"keep", "charge", "run", "go", "be", "do", "get", "fit", "make", "power", "hold", "fill", "give"})
OF_THEM = frozenset({("of", "them"), ("of", "these"), ("of", "those")})
NEED = frozenset({"need", "needs", "needed", "want", "require", "should", "must", "ought"})
PEOPLE = frozenset(  # who tells something, and what they tell: "two fitters", "three different answers"
    {
        "people",
        "persons",
        "folk",
        "folks",
        "men",
        "guys",
        "lads",
        "blokes",
        "friends",
        "mates",
        "neighbours",
        "neighbors",
    }
    | {"dealers", "fitters", "electricians", "engineers", "mechanics", "experts", "shops", "yards", "chandlers"}
    | {"skippers", "sailors", "owners", "salesmen", "sellers", "forums", "websites", "sites", "books", "manuals"}
    | {"answers", "opinions", "stories", "things", "questions"}
)
BOATS = frozenset(  # "three pontoon boats each with two batteries"
    {
        "boats",
        "yachts",
        "trawlers",
        "barges",
        "launches",
        "cruisers",
        "ribs",
        "skiffs",
        "vessels",
        "ferries",
        "dinghies",
    }
    | {"sloops", "ketches", "catamarans", "cats", "narrowboats", "motorboats", "sailboats", "workboats", "tenders"}
)
OF_A_BOAT = frozenset({"pontoon", "hire", "charter", "club", "sailing", "motor", "fishing", "small", "little", "big"})
THE_PEOPLE = frozenset({"of", "my", "our", "the", "other", "different", "local", "old", "more"})  # "two of my friends"
FLAT = frozenset({"flat", "dead", "empty", "drained", "killed", "emptied"})
ARTICLES = frozenset({"a", "the", "my", "our", "another", "this", "that", "old", "new"})
COUPLED = frozenset({"them", "these", "those", "the", "my", "our", "it", "all", "up", "together", "one"})
COUPLING = frozenset({"to", "i", "we", "you", "must", "can", "should", "shall", "may", "how", "could"})
MOST_BURSTS = 1000
ALL_OUTPUTS = regex(
    r"\b(?:outputs|outlets|legs|channels)\b(?:(?!batter)[^.?!;\d]){0,40}\b(?:all|both)(?: the)? $", re.IGNORECASE
)


def counts(scene: Scene, item: Item, value: float) -> Claim | None:
    """How many batteries, banks, outputs or bursts: a small whole number right before what it counts."""
    if value <= 12 and close(scene, item, "sun", reach=1.6, after=True):
        return Claim("solar.sun_hours", "role")
    if value <= 30 and item.kind not in ("count", "times") and is_age(scene, item):
        return Claim("battery.age", "role")
    if counts_cables(scene, item) or of_people(scene, item) or _shows(scene, item) or _counts_nothing(scene, item):
        return NOTHING
    if value != int(value) or not 1 <= value <= MOST_BURSTS:
        return None
    if value in NOMINAL and (side := "battery.nominal" if of_each_one(scene, item) else steps_up(scene, item)):
        return Claim(side, "grammar")
    if value in NOMINAL and value > MOST_PLACES and scene.word(item.end) in OF_SYSTEM:
        return Claim("bank.voltage", "grammar")  # one load or bank of 24 V, not 24 of them
    kicks = "to" in (scene.word(item.start - 1), scene.word(item.start - 2))  # "kicks to about 400"
    kicks = kicks or (value >= FORCEFUL and "kicks" in (scene.word(item.start - 1), scene.word(item.start - 2)))
    kicks = kicks or _kicks_in(scene, item)
    after = scene.after(item)
    kicks = kicks or (after is not None and after.fact == "battery.chemistry")  # "goes out of a 90 AGM"
    if close(scene, item, "load.bursts", reach=1.3) and not kicks and not _rated_next(scene, item):
        return Claim("battery.count" if _priced_each(scene, item) else "load.bursts", "role")
    if _of_rounds(scene, item):
        return Claim("load.bursts", "role")
    if value <= 12 and (found := "charger.outputs" if _of_charger(scene, item) else allowed_as(scene, item)):
        return Claim(found, "grammar")
    return _by_word_after(scene, item, value) or batteries_counted(scene, item, value)


def _of_a_choice(scene: Scene, item: Item) -> bool:
    """Whether it is one side of "one output or two", "two or three outputs", or the number of a question before it."""
    after = scene.items[item.at + 1 : item.at + 4]
    if scene.word(item.end) in OUTPUTS:
        before = scene.items[max(0, item.at - 2) : item.at]
        either = len(before) == 2 and before[1].name == "or" and before[0].dim in NUMBERED
        either = either or " or " in item.quantity.text  # one range of two numbers
        return either or (len(after) == 3 and after[1].name == "or" and after[2].dim in NUMBERED)
    if scene.word(item.end) in FIRST and scene.word(item.end + 1) in OUTPUTS:
        return True  # "3 one output or two": the third question
    return len(after) == 3 and after[0].name == "or" and scene.word(after[1].end) in OUTPUTS


def _counts_nothing(scene: Scene, item: Item) -> bool:
    """Whether it is short for "to", "enough 2 keep it up", is only called for, or tells how often one was "dragged flat
    four times"; or is one side of a choice, or asked for: "how many pairs"."""
    if [scene.word(item.start - 2), scene.word(item.start - 1)] == ["how", "many"] or _couples(scene, item):
        return True
    if item.quantity.value == 1 and scene.word(item.start - 1) == "each":  # "four, each one thirty kilos"
        return True
    if _of_a_choice(scene, item) or _of_people(scene, item) or is_numbered(scene, item):
        return True
    if (scene.word(item.end), scene.word(item.end + 1)) in OF_THEM:  # "he says I need two of them": none that are there
        needed = bool(NEED & {scene.word(at) for at in range(item.start - 3, item.start)})
        return needed or of_other_things(ahead_of(scene, item))
    if scene.word(item.end) == "times":
        return bool(FLAT & {scene.word(at) for at in range(item.start - 5, item.start)})
    if item.quantity.text.strip() == "4" and scene.quantities("AMP"):  # "what size 4 fridge 4.5 A"
        return any(head.head == "load" and head.start == item.end for head in scene.head_items) and not (
            scene.word(item.end).endswith("s")
        )
    return item.quantity.text.strip() == "2" and scene.word(item.end) in TO_DO


def _couples(scene: Scene, item: Item) -> bool:
    """Whether batteries are to be coupled, not counted: "how do I couple them", "to couple the four for 12 V"."""
    if scene.word(item.start) not in ("couple", "couples") or scene.word(item.start - 1) in ARTICLES:
        return False
    return scene.word(item.end) in COUPLED or scene.word(item.start - 1) in COUPLING


def _of_people(scene: Scene, item: Item) -> bool:
    """Whether people are counted, what they say or their boats: "two of my friends", "three other answers"."""
    words = dropwhile((THE_PEOPLE | OF_A_BOAT).__contains__, map(scene.word, range(item.end, item.end + 4)))
    return item.kind != "times" and next(words, "") in PEOPLE | BOATS


def _kicks_in(scene: Scene, item: Item) -> bool:
    """Whether a motor kicks in, so that amps are told: "300 when it kicks in"."""
    words = [scene.word(at) for at in range(item.end, item.end + 5)]
    return "kicks" in words and (words[words.index("kicks") + 1 :][:1] == ["in"] or words[0] in ("when", "as", "once"))


def _of_rounds(scene: Scene, item: Item) -> bool:
    """Whether runs of some seconds are counted, whatever they are called: "a dozen choruses of five seconds"."""
    row = scene.items[item.at + 1 : item.at + 4]
    if len(row) > 1 and (row[0].name, row[1].name) == ("of", "them"):  # "five seconds on, twenty off, forty of them"
        near = scene.items[max(0, item.at - ROUNDS_AFTER) : item.at]
        return any(_in_seconds(one) for one in near) and not PAUSES.isdisjoint({one.name for one in near})
    if not row or row[0].kind != "word" or not row[0].name.endswith("s") or row[0].name in NO_ROUNDS:
        return False
    if len(row) == 3 and row[1].name in ("of", "at", "x") and _in_seconds(row[2]):
        return True
    before = scene.items[max(0, item.at - ROUNDS_AFTER) : item.at]  # "5 s on, ten off, a dozen choruses"
    paused = {"on", "off", "rest", "pause", "between"} & {one.name for one in before}
    return bool(paused) and any(_in_seconds(one) for one in before)


def _in_seconds(item: Item) -> bool:
    if item.dim != "TIME" or isinstance(item.quantity.value, str):
        return False
    unit = item.quantity.unit
    return unit == "second" or (unit == "minute" and item.quantity.value <= MOST_MINUTES)


def _shows(scene: Scene, item: Item) -> bool:
    """Whether lamps and buttons are counted, as a charger has them: "a charger with two green lights"."""
    return not SHOWN_BY.isdisjoint((scene.word(item.end), scene.word(item.end + 1))) and "charger" in scene.heads


def _by_word_after(scene: Scene, item: Item, value: float) -> Claim | None:
    """What the word after a small number says that it counts: "three outputs", "2 banks"."""
    if scene.word(item.end) == "of" and ALL_OUTPUTS.search(scene.ahead(scene.span(item.start, item.end)[0])):
        return Claim("charger.outputs", "grammar")  # "the outputs are isolated, all three of them"
    found = (role for role, reach in COUNTS.items() if close(scene, item, role, reach=reach, after=True))
    legs = "legs" in scene.vocabulary and not _of_outputs(scene)  # "has the pair still got the legs for it"
    if legs or _is_pair(scene, item):
        found = (role for role in found if role != "charger.outputs")
    role = next(found, None) if value <= 12 else None
    return Claim(role, "role") if role else None


def _priced_each(scene: Scene, item: Item) -> bool:
    """Whether a battery's figure is told times so many: "62 lb each times four"."""
    before = scene.items[max(0, item.at - 3) : item.at]
    if scene.word(item.start - 1) != "times" or isinstance(item.quantity.value, str):
        return False
    return any(other.dim in COUNTED for other in before) and item.quantity.value <= MOST_BATTERIES


def _of_charger(scene: Scene, item: Item) -> bool:
    """Whether a charger's outputs are counted: "a two bank charger", "2 bank 6 A charger", "twin output"."""
    if scene.word(item.end) in ("leads", "lead"):  # "my charger has three leads", "a charger of one lead"
        near = item.at > 1 and scene.items[item.at - 2].head == "charger"
        return near or (scene.word(item.start - 1) in ("has", "with", "got") and "charger" in scene.heads)
    if scene.word(item.end) == "isolated" and scene.word(item.end + 1) in ("outputs", "output", "channels"):
        return True
    if scene.word(item.end) not in ("bank", "output", "way", "channel", "out"):
        return False
    if scene.word(item.end) == "bank" and scene.word(item.end + 1) in ("one", "unit") and _of_outputs(scene):
        return True  # "I have a two bank one"
    later = scene.items[item.at + 1 : item.at + 5]
    named = scene.word(item.start - 1) in ("a", "the") and "charger" in scene.heads
    return scene.word(item.end) == "output" or named or any(other.head == "charger" for other in later)


def _of_outputs(scene: Scene) -> bool:
    """Whether a charger and its outputs are spoken of, here or before."""
    return "charger" in scene.heads or "charger.current" in scene.likely or scene.about("word:outputs")
