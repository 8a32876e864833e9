"""A message taken up: read into its thread, its questions and its signs of danger found."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import partial

from grammar import read
from grammar.reading import Message
from service import say
from service.case import Case, Known
from service.hazards import UNNAMED, over, signs, spoken_of, standing, still
from service.house import House
from service.labels import label
from service.question import known, stated
from service.routing.alarms import alarmed
from service.routing.only_asked import only_asked
from service.routing.request import Request
from service.routing.tally import HAZARD
from service.told import gone, no_second
from service.topics import names, topic
from service.turns.amps_taken_in import as_given
from service.turns.case_of import case_of
from service.turns.contradicted import with_opposed
from service.turns.converter_sized import with_the_converter
from service.turns.held import TESTED, aged_otherwise, let_go
from service.turns.more_panels import more_of_it
from service.turns.no_danger import is_light_gassing, without_look_alikes
from service.turns.put_in_place import (
    VOLTS,
    back_in,
    bought_new,
    by_the_alternator,
    goes_back,
    has_its_load,
    of_another_boat,
    of_its_own,
    of_the_batteries,
    puts_in,
    stands_elsewhere,
)
from service.turns.thread import Thread
from service.turns.told_anew import in_its_season, meant, read_another_day, read_at_the_motor
from service.turns.turn import Turn
from service.turns.undecided import by_topic, dipped, likely
from service.turns.wanted import OTHER_BOAT, wanted
from service.turns.which_of_two import (
    asked_of,
    named_by_size,
    spoken_of_first,
    with_the_other,
    without_the_one_gone,
)
from service.turns.worked import in_its_rating
from service.wording import claims, misbeliefs
from service.wording.aside import asides

POINTED_AT = "note:pointed_at"  # "two of those" on the other boat
ANOTHER = ("note:other_battery", OTHER_BOAT)


def taken_up(house: House, text: str, thread: Thread, given: Sequence[Known] = ()) -> Turn:
    """Read a message into its thread and find its questions."""
    models = tuple(model.name for model in house.models.values())
    said = [stated(item) for item in reversed(list(thread.facts.values()))]  # "and 200?" speaks of the newest
    message = read(text, models=models, expecting=thread.asks, said=said, likely=likely(thread))
    message = in_its_rating(message, thread.worked)
    named = message.dangers
    message = without_look_alikes(message, thread.facts, house)
    printed = label.reading(message, thread)
    beliefs = () if printed else misbeliefs.found(message)
    message, claimed = (printed, ()) if printed else claims.unclaimed(message, misbeliefs.appeals(beliefs))
    asked = partial(wanted, message, thread)
    requests = only_asked(message, lambda part: wanted(read(part, models=models, said=said), thread), asked)
    requests = requests or asked()
    beside = () if {item.topic for item in requests} - {"hazard", "unclear"} else asides(message, models, said)
    if not printed:
        message = by_topic(message, [topic(item.topic) for item in requests if item.topic in names()])
        message = more_of_it(as_given(dipped(message, thread), thread), thread)
    message = message if printed else meant(message, thread)
    thread = read_another_day(message, read_at_the_motor(message, in_its_season(message, thread)))
    message, thread = asked_of(*without_the_one_gone(*named_by_size(message, thread)))
    in_place = not printed and (puts_in(message, thread) or in_its_stead(text, thread))
    message, thread = _of_its_battery(house, message, thread, in_place)
    told = [*(known(item) for item in message.stated), *given]
    another = (any(message.says(cue) for cue in ANOTHER) and not no_second.saved(text)) or stands_elsewhere(
        message, thread
    )
    joined = any(item.fact == "bank.layout" for item in message.stated)  # joined to the one aboard, which stays
    if in_place or (another and not joined):
        thread = replace(thread, cues=let_go(thread.cues))
    elif aged_otherwise(message, thread):
        thread = replace(thread, cues=let_go(thread.cues, TESTED))
    thread = bought_new(message, of_another_boat(message, by_the_alternator(message, thread)))
    thread = with_the_converter(spoken_of_first(message, thread), [item.topic for item in requests])
    after = thread.told(
        told,
        another=another,
        in_place=in_place,
        alike=message.says(POINTED_AT),
        other_load=has_its_load(message, elsewhere=message.says(OTHER_BOAT)),
    )
    if not (another or in_place):
        after = with_the_other(thread, with_opposed(thread, after, message), message)
    if printed:
        requests = (Request(label.LABEL.name, (0, len(text)), evidence=("a label as it stands",)),)
    turn = Turn(message, after, requests, (), None, beside, printed is not None, beliefs, claimed)
    found = signs(case_of(turn, house), message, {item.topic for item in requests})
    spoken = (
        bool(found or thread.dangers or named) or "hazard" in thread.topics
    )  # danger was named, whatever its status
    spoken = spoken or is_light_gassing(message, thread.facts)
    if text.strip() and not printed and not spoken:
        alarm = alarmed(message, thread.topics)
        found = (*found, f"{UNNAMED}:present") if alarm else found
        turn = replace(turn, alarm=alarm)
    stands = standing(found, () if message.says(OTHER_BOAT) else still(thread.dangers, case_of(turn, house)))
    if over(found, (item.topic for item in requests), message) and not stands:
        on = tuple(Request(name, (0, len(text))) for name in thread.topics if name != HAZARD)
        turn = replace(turn, requests=on)
    if requests and not found and {item.topic for item in requests} <= {"hazard", "unclear"}:
        found = spoken_of(thread)  # "and the one beside it?" of a danger is no new question
    return replace(turn, thread=replace(after, dangers=stands), signs=found)


def _of_its_battery(house: House, message: Message, thread: Thread, in_place: bool) -> tuple[Message, Thread]:
    """Both for a battery that takes the place of those told of, or for one of these that is spoken of again."""
    if in_place:
        return of_its_own(message), replace(_as_built(house, thread), aside=of_the_batteries(thread))
    return message, back_in(thread) if goes_back(message, thread) else thread


def in_its_stead(text: str, thread: Thread) -> bool:
    """Whether a new battery stands in the place of the one with a danger, or is asked about: none of its facts hold."""
    return bool(thread.dangers) and (gone.swapped(text) or gone.another_asked(text))


def _as_built(house: House, thread: Thread) -> Thread:
    """The thread with the volts that its batteries make together, which stay when another is put in their place."""
    volts = Case(thread.facts, house).get("bank.built_voltage")
    if volts is None or VOLTS in thread.facts:
        return thread
    return replace(thread, facts={**thread.facts, VOLTS: Known(VOLTS, volts, "thread", say.symbol(VOLTS))})
