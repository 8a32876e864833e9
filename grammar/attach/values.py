"""The facts that words state: kinds, duties, layouts, models, yes and no."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from grammar.facts import facts
from grammar.lexicon.vocabulary import Found
from grammar.reading import Stated, Value
from grammar.scene.claims import close
from grammar.scene.items import Item
from grammar.scene.near import around, gap
from grammar.scene.scene import Scene
from grammar.told.avoided import avoided
from grammar.told.chargers.switch import on_the_switch, stands_on
from grammar.told.refused import refused_after

DENIED_WITHIN = 1.3  # a denial holds over the value that is this near after it
SETTING_WITHIN = 0.6
LEADS_TO = frozenset({"on", "at", "to", "for", "says"})  # what is set follows them
LIST = 3
ADJACENT = 0.1
UNSURE_WITHIN = 4.0
CHOICE = 3  # items back to the other value of a choice
OF_WHETHER = 7  # words between "whether" and what is not known
SUBJECT = 4  # words between "are" and what is asked: "are the two outputs of it isolated"
ASKS_OF = frozenset({"is", "are", "does", "do", "can"})
BEGINS = frozenset({"and", "or", "so", "but", "well"})
MUST = (["mustnt"], ["must"], ["should"], ["shouldnt"], ["may"], ["cannot"])  # "outlets mustn't share a minus"
WITH = frozenset({"with", "that", "without", "which", "having", "has", "use", "connect", "ok", "fine"})
TELLS = frozenset(
    {"says", "said", "gives", "gave", "promises", "promised", "forecasts", "warns", "warned", "announced"}
)
BEGINNING = frozenset(
    {"by", "on", "itself", "again", "every", "automatically", "with", "when", "to", "at", "in", "after"}
)
WEIGHED = re.compile(r"\b(?:or|vs|versus|than)\b|[/?]")
OPEN_CHOICE = frozenset(
    {"bank.layout", "charger.isolated", "battery.duty", "reading.state"}
)  # "series or parallel?" states neither
SPEAKS = frozenset(
    [
        "wait",
        "sorry",
        "actually",
        "hang",
        "hold",
        "theyd",
        "they",
        "theyre",
        "its",
        "it",
        "im",
        "i",
        "we",
        "were",
        "thats",
        "mines",
        "ours",
    ]
)  # "no they'd be in parallel"
IS = frozenset({"is", "are", "was"})
THAT = frozenset({"that", "it", "this", "they", "these", "she", "battery", "batteries"})
WIRES = frozenset(
    [
        "spare",
        "shore",
        "red",
        "black",
        "positive",
        "negative",
        "plus",
        "minus",
        "charging",
        "jumper",
        "jump",
        "bare",
        "long",
        "short",
        "thick",
    ]
)
OUT_OF_LINE = frozenset({"with", "fuse", "fuses", "breaker", "holder", "filter"})  # "two AGMs in line with the price"
ABROAD = frozenset({"para"})  # "2 x 105 AGM para" is parallel; in Spanish the word is "for"
USING = frozenset({"use", "used", "using", "put", "try", "run", "connect"})  # "can I use my charger on lithium"
FITS = frozenset({"ok", "okay", "fine", "good", "safe", "alright"})  # "charger ok on gel?"
OUTPUTS = frozenset({"outputs", "outs", "legs"})  # a converter has one of them
DID = frozenset({"did", "does", "do", "could", "can", "was", "would", "used", "took", "takes", "managed"})
PLUSES = frozenset({"pluses", "plusses", "positives"})
IT_IS = frozenset({"is", "its"})
STILL = frozenset({"is", "was", "s", "still", "left", "always", "has", "been", "yet", "sits", "stays", "set"})
JUST_BEFORE = 3  # words: "setting if it is on AGM"
HELD = frozenset({"it", "its", "sat", "set", "got", "left", "knob", "dial", "selector"})  # "... on gel"
POSITIONS = frozenset({"user", "custom", "supply", "program"})  # of a charger's switch, beside kinds of battery
OWN_MAKE = re.compile(r"home|self|diy", re.IGNORECASE)  # a pack whose cells are not told, unless they are named:
PHOSPHATE = re.compile(r"\bl(?:i|ife)? ?fe? ?p|phosphate", re.IGNORECASE)
SHARES = frozenset({"third", "thirds", "fifth", "fifths", "tenth"})
AFTER_SHARE = frozenset(
    {
        *("to", "up", "with", "on", "by", "at", "in", "and", "or", "how", "when", "using", "is", "now", "so", "but"),
        *("then", "if", "does", "will", "can", "what", "tonight", "today"),
    }
)
GENERIC = {"battery.chemistry": "lead"}  # "sealed AGM" is AGM


@dataclass(frozen=True, slots=True)
class Words:
    """The facts stated by words, and those denied."""

    stated: tuple[Stated, ...]
    denied: tuple[Stated, ...]


def words_of(scene: Scene) -> Words:
    """What the value words and model names of a message state, each value once, and what they deny."""
    offered = on_the_switch(scene)
    listed = _listed(scene, offered)
    stated: list[Stated] = []
    denied: list[Stated] = []
    doubted: set[int] = set()
    for item in scene.items:
        if item.kind not in ("value", "model") or item.at in listed:
            continue
        fact, value = _meaning(scene, item, offered)
        refused = refused_after(scene, item)
        turned = isinstance(value, bool) and (refused or avoided(scene, item))
        if turned:  # "engine room: no", "it does not pass through the engine room"
            value, refused = not value, False
        other = _before_or(scene, item)
        if _unsure(scene, item) or (other is not None and other.at in doubted):
            doubted.add(item.at)
            continue
        only = _either(scene, item) or _counts_things(scene, item) or _as_before(scene, item)
        if not fact or _is_wire(scene, item) or only:
            continue
        if (isinstance(value, bool) and _asked_of(scene, item)) or _is_wanted(scene, item):
            continue
        span = scene.span(item.start, item.end)
        found = Stated(fact, value, "", scene.text[slice(*span)], span, how="token")
        if refused or (_denied(scene, item) and not turned):
            denied.append(found)
        elif not any(other.fact == fact and other.value == value for other in stated):
            stated.append(found)
            house = scene.word(item.end) == "house" or _is_deep_cycle(scene, item.end)
            if fact == "battery.chemistry" and house:  # "200 Ah AGM house", "a flooded DC"
                stated.append(Stated("battery.duty", "deep-cycle", "", found.text, span, how="token"))
    return Words(tuple(_settled(scene, stated)), tuple(denied))


def _either(scene: Scene, item: Item) -> bool:
    """Whether it is one side of a choice: "isolated or non isolated", "isolated or not isolated"."""
    return item.fact == "charger.isolated" and (
        scene.word(item.start - 1) == "or"
        or (scene.word(item.start - 2) == "or" and scene.word(item.start - 1) == "not")
    )


def _as_before(scene: Scene, item: Item) -> bool:
    """Whether a kind is only what the new one is held against: "would they take the frost where lead did"."""
    told = any(old.fact == item.fact and old.value != item.name for old in scene.said)
    against = scene.word(item.start - 1) in ("where", "as", "like", "than", "what", "way")
    return told and against and scene.word(item.end) in DID


def _is_wire(scene: Scene, item: Item) -> bool:
    """Whether a lead is a wire: "a 20 mm2 lead", "the spare lead", "is the lead ok running past the engine"."""
    if item.fact != "battery.chemistry" or scene.word(item.start) not in ("lead", "leads"):
        return False
    if item.end > item.start + 1:
        return scene.word(item.end - 1) in ("one", "ones") and _of_charger_wire(scene, item)
    before = scene.before(item)
    sized = before is not None and before.dim in ("AREA", "GAUGE", "LENGTH", "MM")
    ahead = {scene.word(item.end), scene.word(item.end + 1)}
    after = scene.after(item)
    goes = scene.word(item.start - 1) == "which" and bool(ahead & {"goes", "go"})  # "which lead goes where"
    ends = after is None or after.kind == "mark"
    that = goes or (scene.word(item.start - 1) in ("that", "this", "its") and ends)
    return (
        sized
        or that
        or scene.word(item.start - 1) in WIRES
        or _of_charger_wire(scene, item)
        or bool(ahead & {"running", "runs", "carries", "coming", "comes", "going", "leading", "out"})
    )


def _of_charger_wire(scene: Scene, item: Item) -> bool:
    """Whether it is the one lead of a charger: "a charger of one lead", "my charger is a single-lead one"."""
    if scene.word(item.start - 1) not in ("one", "single", "1"):
        return False
    return any(head.head == "charger" and 0 < item.start - head.end <= LIST + 1 for head in scene.head_items)


def _listed(scene: Scene, offered: set[int]) -> set[int]:
    """Kinds in a list of three and more: a charger's switch or a comparison, not what they have."""
    listed = set(offered)
    run: list[Item] = []
    for item in scene.items:
        if item.fact == "battery.chemistry":
            run.append(item)
        elif item.name not in ("/", ",", "or", "v", "vs", "and", "&", "+"):
            if len({other.name for other in run}) + (item.name in POSITIONS) >= LIST:
                listed.update(other.at for other in run)
            run = []
    if len({other.name for other in run}) >= LIST:
        listed.update(other.at for other in run)
    return listed


def _follows_figure(scene: Scene, item: Item) -> bool:
    """Whether a battery's figure, kind or number stands right before a word that is short for another."""
    before = scene.before(item)
    return before is not None and bool(before.dim or before.fact)


def _is_no_kind(scene: Scene, item: Item) -> bool:
    """Whether a word is another one here: the motor of "the starter won't turn", a charger without electronics."""
    word, alone = scene.word(item.start), item.end == item.start + 1
    if word == "starter" and alone and not _beside_its_figure(scene, item):
        return True
    if scene.word(item.end - 1) == "caps" and scene.word(item.end) in ("on", "over"):  # "has caps on the terminals"
        return not {"terminals", "posts", "poles", "lugs", "studs"}.isdisjoint(
            scene.word(at) for at in range(item.end, item.end + 4)
        )
    if word == "radio" and alone and _is_news(scene, item):
        return True
    if word == "starts" and alone and scene.word(item.end) in BEGINNING:
        return True  # "the programme starts by itself"
    return word == "electronics" and scene.word(item.start - 1) in ("no", "without")


def _is_deep_cycle(scene: Scene, at: int) -> bool:
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
    figures = [other for other in (scene.before(item), after) if other is not None]
    return any(other.dim in ("CCA", "CA", "AH") or other.fact == "battery.chemistry" for other in figures)


def _only_looks_so(scene: Scene, item: Item) -> bool:
    """Whether a word of a layout says something else: "para" in Spanish, what fuse goes "in line"."""
    if scene.word(item.start) in ABROAD and item.end - item.start == 1:
        return not _follows_figure(scene, item)
    if [scene.word(item.start), scene.word(item.start + 1)] != ["in", "line"] or item.fact != "bank.layout":
        return False
    before = scene.before(item)
    ones = before is not None and before.head in ("battery", "") and (_follows_figure(scene, item) or before.head)
    volts = scene.items[item.at + 2 : item.at + 4]
    waits = scene.word(item.end) == "for" and not any(other.dim or other.head for other in volts)
    return not ones or waits or scene.word(item.end) in OUT_OF_LINE


def _meaning(scene: Scene, item: Item, offered: set[int]) -> tuple[str, Value]:
    if item.kind == "model":
        return "load.model", item.name
    if item.fact == "cable.in_engine_space" and not (
        scene.quantities("LENGTH", "GAUGE", "AREA")
        or "cable" in scene.heads
        or any(fact.fact.startswith("cable.") for fact in scene.said)
    ):
        return "", ""
    if scene.word(item.start) == "start" and item.end == item.start + 1 and scene.word(item.start - 1) in ("at", "on"):
        return "", ""  # "240 A at start"
    if _is_no_kind(scene, item):
        return "", ""
    if item.name == "smart" and item.end == item.start + 1 and not _charges(scene, item):
        return "", ""
    if _only_looks_so(scene, item):
        return "", ""
    kind = facts()[item.fact].kind
    if kind == "flag":
        return _flag(scene, item)
    if kind == "number":
        return item.fact, float(item.name)
    if item.fact == "battery.chemistry" and (
        _is_setting(scene, item) or _of_charger(scene, item) or stands_on(scene, item, offered)
    ):
        return "charger.setting", "flooded" if item.name == "lead" else item.name
    return item.fact, item.name


def _counts_things(scene: Scene, item: Item) -> bool:
    """Whether a share of the charge is none, as a thing follows: "from a third battery", "mine is full of jelly"."""
    after = scene.after(item)
    if item.fact == "battery.charge" and [scene.word(item.end - 1), scene.word(item.end)] == ["full", "of"]:
        return True
    if item.fact != "battery.charge" or scene.word(item.end - 1) not in SHARES or after is None or after.kind == "mark":
        return False
    return after.name not in AFTER_SHARE


def _charges(scene: Scene, item: Item) -> bool:
    """Whether "smart" is said of a charger: "10 amps, smart", "the charger is smart"; not "smart BMS"."""
    after = scene.after(item)
    if after is not None and after.kind in ("word", "thing") and after.head not in ("charger", "dcdc"):
        return False
    return "charger" in scene.heads or scene.likely[:1] == ("charger.current",)


def _of_charger(scene: Scene, item: Item) -> bool:
    """Whether a charger is for this kind, and the battery's own is told besides: "my gel charger, can it do AGM"."""
    after = scene.after(item)
    others = any(other.fact == item.fact and other.name != item.name for other in scene.items)
    before = scene.before(item)
    mine = scene.word(item.start - 1) in ("my", "our", "the", "old", "his", "this", "their", "her", "your") or (
        before and before.dim == "AMP"
    )
    return after is not None and after.head == "charger" and others and bool(mine) and item.name != "lfp"


def _flag(scene: Scene, item: Item) -> tuple[str, Value]:
    """A yes or no. One negative is a converter's two sides', or else that of a charger's outputs."""
    true = item.name == "true"
    if item.fact == "converter.common_negative" and "dcdc" not in scene.heads and PLUSES & scene.vocabulary:
        return "bank.layout", "parallel"  # "pluses joined, minuses joined"
    asked = "charger.isolated" in scene.expected
    steps = {12.0, 24.0} <= scene.figures  # "a 12 to 24 charger"
    charges = "charger" in scene.heads and "dcdc" not in scene.heads and not steps
    if item.fact == "converter.common_negative" and (asked or charges):
        return "charger.isolated", not true
    if item.fact == "charger.isolated" and not true and "converter.common_negative" in scene.expected:
        words = {scene.word(at) for at in range(item.start, item.end)}
        if {"common", "shared", "share"} & words:
            return "converter.common_negative", True
    shares = not true and {"common", "shared", "share"} & {scene.word(at) for at in range(item.start, item.end)}
    alone = OUTPUTS.isdisjoint(scene.word(at) for at in range(item.start, item.end))
    converter = "dcdc" in scene.heads or ("charger" not in scene.heads and alone)
    if item.fact == "charger.isolated" and shares and converter and not asked and _converts(scene):
        return "converter.common_negative", True
    return item.fact, true


def _converts(scene: Scene) -> bool:
    return "dcdc" in scene.heads or scene.about("word:boost") or bool(scene.quantities("VOLT"))


def _is_setting(scene: Scene, item: Item) -> bool:
    """Whether the kind is that of a charger's switch: "AGM setting", "set to gel"."""
    for found in around(scene.roles, item, scene.role_starts):
        far = gap(scene, item, found.start, found.end)
        if found.start >= item.end and scene.word(found.end - 1) in LEADS_TO:
            continue  # "lithium stays on the boat"
        if found.concept == "charger.setting" and far <= SETTING_WITHIN and not _lacking(scene, item, found):
            return True
        before = found.concept == "left_on" and found.end <= item.start and far <= ADJACENT
        if before and _is_put_on(scene, item, found):
            return True
    at = item.start - 1
    return scene.word(at) in ("at", "in") and scene.word(at - 1) in STILL and _charger_before(scene, item, at)


def _of_a_setting(scene: Scene, found: Found) -> bool:
    """Whether a setting is spoken of just before: "right setting if it is on AGM"."""
    return any(role.concept == "charger.setting" and 0 <= found.start - role.end <= JUST_BEFORE for role in scene.roles)


def _is_put_on(scene: Scene, item: Item, found: Found) -> bool:
    """Whether a charger was put on this kind: "the charger is on gel", "left it on gel"."""
    follows = scene.after(item)
    if follows is not None and follows.head == "battery":
        return False
    if scene.word(found.start - 1) in FITS:
        return False
    if USING & {scene.word(found.start - back) for back in (2, 3, 4, 5)} and scene.word(found.start - 1) == "charger":
        return False
    spoken = "charger" in scene.heads or scene.likely[:1] == ("charger.current",)
    if spoken and scene.word(found.start - 1) in IT_IS and _of_a_setting(scene, found):
        return True
    if spoken and (found.end - found.start > 1 or scene.word(found.start - 1) in HELD):
        return True
    return _charger_before(scene, item, found.start)


def _charger_before(scene: Scene, item: Item, end: int) -> bool:
    """Whether a charger ends there, or is said to be there still: "the charger is still on wet"."""
    return any(
        head.head == "charger"
        and head.end <= end
        and (end - head.end <= 1 or all(scene.word(at) in STILL for at in range(head.end, end)))
        for head in around(scene.head_items, item, scene.head_starts)
    )


def _lacking(scene: Scene, item: Item, found: Found) -> bool:
    """Whether the setting is asked for or missing: "which charger setting", "no lithium mode"."""
    words = {scene.word(at) for at in (*range(found.start - 2, found.start), item.start - 1)}
    return not words.isdisjoint(("which", "what", "no", "without"))


def _denied(scene: Scene, item: Item) -> bool:
    """Whether the value does not hold; "no lithium mode" denies a switch's position, not the battery."""
    follows = scene.after(item)
    if follows is not None and (
        follows.head == "charger" or close(scene, item, "charger.setting", reach=SETTING_WITHIN)
    ):
        return False
    return any(
        found.end <= item.start
        and gap(scene, item, found.start, found.end) <= DENIED_WITHIN
        and scene.word(found.start - 1) != "why"
        and not _or_not(scene, found)
        and not (found.start == 0 and scene.word(1) in SPEAKS)
        for found in around(scene.denials, item, scene.denial_starts)
    )


def _or_not(scene: Scene, denial: Found) -> bool:
    """Whether it ends a question that what follows is put to: "fair match or not: lithium of 150 Ah"."""
    after = scene.word(denial.end)
    return scene.word(denial.start - 1) == "or" and bool(after) and not after[:1].isalnum()


def _unsure(scene: Scene, item: Item) -> bool:
    """Whether the writer does not know: "no idea if AGM or gel", "is that fully charged"."""
    last, second, third = (scene.word(item.start - back) for back in (1, 2, 3))
    if item.fact == "battery.charge" and (
        (last in THAT and second in IS)
        or "whens" in (last, second)
        or (last in IS and second in THAT and third in ("if", "whether", "when"))
    ):
        return True
    for found in around(scene.doubts, item, scene.doubt_starts):
        if found.end <= item.start and gap(scene, item, found.start, found.end) <= UNSURE_WITHIN:
            between = [scene.word(at) for at in range(found.end, item.start)]
            return bool({"if", "whether", "which"} & set(between)) or len(between) <= 1
    return False


def _is_wanted(scene: Scene, item: Item) -> bool:
    """Whether a state is what is to come: "should I put it on charge", "it wants charging"."""
    before = {scene.word(at) for at in range(item.start - 4, item.start)}
    wanted = scene.word(item.start - 1) in ("wants", "want", "needs", "need", "about", "for")
    return (item.fact, item.name) == ("reading.state", "charging") and (wanted or "put" in before)


def _before_or(scene: Scene, item: Item) -> Item | None:
    """The other value of a choice: AGM of "no idea if the battery is AGM or gel", "a gel or an AGM"."""
    if item.at < CHOICE or "or" not in (scene.word(item.start - 1), scene.word(item.start - 2)):
        return None
    near = scene.items[item.at - CHOICE : item.at]
    return next((other for other in near if other.kind == "value" and other.fact == item.fact), None)


def _asked_of(scene: Scene, item: Item) -> bool:
    """Whether a yes or no is what is asked: "are the outputs isolated?", "doesn't say whether they're isolated"."""
    clause = scene.clauses[scene.clause(item.start)]
    before = [scene.word(at) for at in range(clause.start, item.start)]
    first = next((at for at, word in enumerate(before) if word not in BEGINS), len(before))
    subject = before[first + 1 :]
    return (
        "whether" in before[-OF_WHETHER:]
        or before[-1:] in MUST
        or (
            before[first : first + 1] != []
            and before[first] in ASKS_OF
            and WITH.isdisjoint(subject)
            and len(subject) <= SUBJECT
        )
    )


def _settled(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """Without open choices ("series or parallel?") and without a general kind beside its exact one."""
    values: dict[str, list[Stated]] = {}
    for item in stated:
        values.setdefault(item.fact, []).append(item)
    for item in stated:
        among = values[item.fact]
        if len(among) > 1 and item.fact in OPEN_CHOICE and _weighed(scene, among):
            continue
        if (
            len(among) > 1
            and item.value == GENERIC.get(item.fact)
            and (_touches(item, among) or all(other.value in ("lead", "flooded") for other in among))
        ):
            continue
        if item.value == "lithium-other" and OWN_MAKE.search(item.text) and _of_phosphate(among):
            continue
        yield item


def _of_phosphate(among: list[Stated]) -> bool:
    """Whether the cells are told to be of the iron phosphate kind."""
    return any(PHOSPHATE.search(item.text) for item in among)


def _weighed(scene: Scene, among: list[Stated]) -> bool:
    """Whether "or" stands between the two: then it is asked, not told."""
    between = scene.text[among[0].span[1] : among[1].span[0]].lower()
    return len(between) < 30 and bool(WEIGHED.search(between))


def _touches(item: Stated, among: list[Stated]) -> bool:
    return any(
        0 <= max(item.span[0] - other.span[1], other.span[0] - item.span[1]) <= 3
        for other in among
        if other is not item
    )
