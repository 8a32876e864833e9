"""Which topics a message asks about, in its order: points of the table, added up clause by clause.

What stays under the bar is not guessed: the thread's topic goes on, or a technician is asked.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from grammar.reading import Message
from service.routing.as_told import by_what_is_told
from service.routing.asked_beside import asked_beside
from service.routing.evidence import Sign, evidence
from service.routing.farewell import only_thanks, polite, takes_leave
from service.routing.goes_on import (
    best_of,
    goes_on,
    leads_on,
    replies,
    reply_first,
    still_asked,
    still_open,
)
from service.routing.in_order import in_order, places_of
from service.routing.in_passing import in_passing
from service.routing.listed import asking, in_a_row, items, numbered, wanted_too
from service.routing.of_the_last import by_the_last, counted_otherwise, explains
from service.routing.one_by_one import ORDERS, asked_in, beside, clear, one_by_one
from service.routing.one_circuit import far_end, of_the_cable, unasked
from service.routing.request import Request
from service.routing.several import Several, forms
from service.routing.somebody_else import for_somebody_else
from service.routing.stands_apart import stands_apart
from service.routing.tally import HAZARD, MOST, Bars, Tally, chosen, ranked, rows_of, table
from service.routing.told_beside import told_beside, told_by_another
from service.routing.two_ways import other_way

WEAK = ("detail:weak_motor", "detail:dead_motor")
CHARGE = "word:charge"
COLD = frozenset({"battery.chemistry", "ambient.temperature"})  # "can I charge LFP at minus 5"
BATTERY = frozenset({"battery.capacity", "battery.energy", "battery.cca", "battery.reserve", "battery.group"})
STORY = frozenset({"rest-voltage", "load-voltage", "specific-gravity"})  # beside a danger a reading is only told
READING = ("about:reading_word", "request:is_good")  # "is the reading good?" with a picture of it
ITEM = 0  # points of a topic in one item of a list from which the item asks it
ITEM_LEAD = (9, 3)  # over the next topic of the item: of a sentence that asks, and of a numbered item
ABOUT_ALL = ("fact:", "thing:")  # signs told ahead of a numbered list, which count for each of its items
SPOKEN = frozenset({HAZARD, "unclear", "meaning", "other-desk"})  # no item of a list is these alone: "SOC?", "what?"


def route(message: Message, *, context: tuple[str, ...] = (), asked: Iterable[str] = ()) -> list[Request]:
    """The topics asked, in the order of the message.

    `context`: the topics of the turn before; `asked`: the facts that it asked back.

    Thanks, greetings and marks alone ask nothing. What is not understood is one request, `unclear`.
    """
    if not any(word[0].isalnum() for word in message.words) or only_thanks(message, later=bool(context)):
        return []
    if context and takes_leave(message):
        return []
    whole = (0, len(message.text))
    danger = any(item.status == "present" for item in message.dangers)  # it alone is answered where no more is asked
    if context and replies(message, asked):
        return [] if danger else [Request(topic, whole) for topic in still_open(context)]
    if (elsewhere := for_somebody_else(message)) and not danger:
        return [elsewhere]
    points = table()
    signs_of = evidence(message, context)
    rows = rows_of(message, signs_of)
    told = reply_first(message, asked) if len(context) == 1 else 0
    for row in rows[:told]:  # they speak for the question before, not for the one that follows
        row.clear()
    ranking = ranked(rows)
    found = decided(message, ranking, context, points.several, points.bars)
    if found:
        asking = in_items(message, signs_of)
        found = [*found, *(() if danger else listed(message, asking, found, ranking))]
        found = [*found, *(() if danger else further(message, signs_of, found, ranking))]
        halves = [(one.span[0], one.ranking) for one in one_by_one(message, signs_of)]
        places = {**places_of(asking or halves, found), **in_a_row(message.text)}
        own = in_order(message, rows, found, ranking, places)
        names = {item.topic for item in own}
        goes = [topic for topic in context if topic not in names | told_by_another(message, names | {topic})]
        if not told:
            goes = [topic for topic in goes if still_asked(message, ranking, topic)]
        return [*(Request(topic, whole) for topic in goes), *own]
    if told or (context and goes_on(message, ranking, points.bars, context)):
        return [] if danger else [Request(topic, whole) for topic in still_open(context)]
    if not danger and leads_on(message, ranking, context):
        return [Request(best_of(ranking), whole)]
    return under_the_bar(message, ranking, signs_of if danger else ())


def held_back(message: Message, signs: Sequence[Sign]) -> Request | None:
    """What is asked outright beside a danger, in a sentence that holds no sign of it: "is the 20 A charger right?"."""
    for start, end in asking(message.text) if signs else ():
        apart = not any(start <= item.span[0] < end for item in message.dangers)
        told = any(start <= item.span[0] < end for item in message.stated)  # a question of figures, not of the danger
        if not (apart and told):
            continue
        ranking = asked_in(message, [sign for sign in signs if start <= sign.at < end])
        if ranking[0].topic not in STORY and _asks_one(ranking, in_a_list=False):
            shown = ("asked beside a danger",)
            return Request(ranking[0].topic, (start, end), ranking[0].total, evidence=shown)
    return None


def under_the_bar(message: Message, ranking: Sequence[Tally], signs: Sequence[Sign] = ()) -> list[Request]:
    """What a message with too few points for any topic still asks: its words say what, or nothing, or it is unclear."""
    whole, best = (0, len(message.text)), best_of(ranking)
    danger = any(item.status == "present" for item in message.dangers)
    weak = () if danger else tuple(filter(message.says, WEAK))
    if weak:  # the commonest story, often told without a question
        return [Request("load-voltage", whole, evidence=weak)]
    if held := held_back(message, signs):
        return [held]
    if danger and ORDERS in asked_beside(message, {HAZARD}):
        return [Request(ORDERS, whole, evidence=("asked beside a danger",))]
    if best == "rest-voltage" and all(message.says(name) for name in READING):
        return [Request("rest-voltage", whole, evidence=READING)]
    if message.says(CHARGE) and {item.fact for item in message.stated} >= COLD:
        return [Request("charger-setting", whole, evidence=(CHARGE,))]
    return [] if polite(message) else [Request("unclear", whole)]


def decided(
    message: Message,
    ranking: Sequence[Tally],
    context: tuple[str, ...],
    several: Several,
    bars: Bars,
) -> list[Tally]:
    """The topics that a message names itself; none where it goes on with the thread or too little speaks."""
    if context and goes_on(message, ranking, bars, context):
        return []
    danger = any(item.status == "present" for item in message.dangers)
    found = chosen(ranking, several.shown(forms(message)), danger, several, bars)
    if (
        [item.topic for item in found] == ["rest-voltage"]
        and any(map(message.says, WEAK))
        and not _of_a_reading(message)
    ):
        return []  # a weak motor and a good resting voltage: not asked is how full it is
    if of_the_cable(message, [item.topic for item in found if item.topic != "unclear"]):
        return [item for item in ranking if item.topic == "cable-size"]
    found = _converted(message, ranking, found)
    named = {item.topic for item in found}
    idle = (
        unasked(message, named)
        | told_beside(message, named)
        | told_by_another(message, named)
        | in_passing(message, named)
    )
    found = [item for item in found if item.topic not in idle]
    told = by_the_last(message, context) or by_what_is_told(message, {item.topic for item in found}, context)
    if found and found[0].topic == "unclear" and not told:
        return []
    found = _by_size(message, ranking, bars.first) or [item for item in ranking if item.topic == told] or found
    more = set() if danger else other_way(message, {item.topic for item in found})
    return [*found, *(item for item in ranking if item.topic in more)]


def _converted(message: Message, ranking: Sequence[Tally], found: list[Tally]) -> list[Tally]:
    """The topics, a rating that is to be counted in another one in the place of its meaning, or after that."""
    names = {item.topic for item in found}
    if "meaning" not in names or not counted_otherwise(message):
        return found
    gone = {"rating-convert"} if explains(message) else {"rating-convert", "meaning"}
    made = (item for item in ranking if item.topic == "rating-convert")
    return [*(item for item in found if item.topic not in gone), *made]


def in_items(message: Message, signs: Sequence[Sign]) -> list[tuple[int, list[Tally]]]:
    """Where each item of a message begins, and the topics by what it says: alone, else with what a numbered list is
    told of first ("15 A charger. ... 2) is 15 A enough")."""
    found = []
    spans = items(message.text)
    ahead = spans[0][0] if spans and numbered(message.text) else 0
    told = [sign for sign in signs if sign.at < ahead and sign.name.startswith(ABOUT_ALL)]
    for start, end in spans:
        own = [sign for sign in signs if start <= sign.at < end]
        alone = asked_in(message, own)
        beside = alone if _asks_one(alone, bool(ahead)) or not told else asked_in(message, [*told, *own])
        found.append((start, beside))
    return found


def _asks_one(ranking: Sequence[Tally], in_a_list: bool) -> bool:
    """Whether an item asks its best topic clearly enough to stand for itself."""
    first, second = ranking[:2]
    clear = first.total >= ITEM and first.total - second.total >= ITEM_LEAD[in_a_list]
    return clear and first.topic not in SPOKEN


def listed(
    message: Message,
    asking: Sequence[tuple[int, Sequence[Tally]]],
    found: Sequence[Tally],
    ranking: Sequence[Tally],
) -> list[Tally]:
    """The topics of items that ask one more than those found: the third of "1) ... 2) ... 3) ...", "cable, fuse"."""
    names, in_a_list = {item.topic for item in found}, bool(numbered(message.text))
    more = wanted_too(message, names)
    if len(names) < len(asking):
        more |= {own[0].topic for _, own in asking if _asks_one(own, in_a_list)}
    both = names | more
    more -= names | told_beside(message, both) | in_passing(message, both) | far_end(message, both)
    return [item for item in ranking if item.topic in more][: MOST - len(names)]


def further(message: Message, signs: Sequence[Sign], found: Sequence[Tally], ranking: Sequence[Tally]) -> list[Tally]:
    """The topics of questions that stand beside those found and ask clearly: ", and how often do I top it up?"."""
    names = {item.topic for item in found}
    more = {one.topic for one in beside(one_by_one(message, signs), names) if clear(message, one, names, ranking)}
    more |= set() if more else stands_apart(message, signs, names)
    more -= told_beside(message, names | more) | in_passing(message, names | more)
    if not more:
        more = asked_beside(message, names)
    return [item for item in ranking if item.topic in more][: max(MOST - len(names), 0)]


def _by_size(message: Message, ranking: Sequence[Tally], bar: int) -> list[Tally]:
    """How big a battery must be, where a size is asked for and no battery is told that could last so long."""
    two = {item.topic: item for item in [item for item in ranking if item.topic != HAZARD][:2]}
    size = two.get("bank-size")
    if (
        size is None
        or "run-time" not in two
        or size.total < bar
        or any(item.fact in BATTERY for item in message.stated)
    ):
        return []
    return [size] if message.says("request:what_size") else []


def _of_a_reading(message: Message) -> bool:
    """Whether a message asks whether a reading is good or how full a battery is; "weak" of the motor asks neither."""
    weak = {at for cue in message.cues if cue.name in WEAK for at in range(*cue.span)}
    asked = (cue for cue in message.cues if cue.name in ("request:is_good", "request:how_full"))
    return any(weak.isdisjoint(range(*cue.span)) for cue in asked)
