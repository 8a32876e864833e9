"""Another battery that a later message puts in the place of those told of: theirs no longer holds."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Message, Stated
from grammar.text.patterns import regex
from service.case import Known
from service.judgements.new_and_old import all_new
from service.kinds import LEAD, LITHIUM
from service.turns.thread import OF_THE_BATTERIES, Thread

RATED = frozenset(
    ("battery.capacity", "battery.energy", "battery.cca", "battery.ca", "battery.max_current", "battery.group")
)
AGE = "battery.age"
KIND, COUNT, VOLTS = "battery.chemistry", "battery.count", "bank.voltage"
FITS = regex(r"\b(?:fit|put in|swap\w*|replac\w+|instead|change to|go for|buy)\b", re.IGNORECASE)
FEW = 9  # words that only go back to a battery
BACK = regex(
    r"\b(?:the|my|our) (?:old |first |other )?(?:agm|gel|wet\w*|flooded|lead\w*|lithium|lifepo4|lfp)\b", re.IGNORECASE
)
ELSEWHERE = regex(
    r"\b(?:the|my|our|his|her)\b[^.?!]{0,24}?(?:\bin the (?:bow|stern|cabin|locker|engine room|forepeak|lazarette)\b"
    r"|\b(?:aft|forward|up front)\b)|\b(?:the|my|our) (?:house|bow|stern|start|engine|thruster|front) one\b"
    r"|\b(?:the|my|our) (?:agm|gel|wet|flooded|lead|lithium|lifepo4)(?: one| battery)? (?:for|of|on|at)"
    r" (?:the |my |our )?(?:engine|house|bow|stern|thruster|cabin|starter)\b",
    re.IGNORECASE,
)
ONE = regex(r"\b(?:an?|one|single)\b", re.IGNORECASE)
OF_ALL = frozenset(("each", "apiece", "both", "all", "they", "theyre", "those", "these", "per", "every"))
LOADS = frozenset({"load.model", "load.current", "load.peak", "load.power"})
OTHER_LOAD = regex(  # no "another thruster as well", which may hang on the same battery
    r"\b(?:a different|(?:my|the|our) other) (?:bow |stern )?(?:thruster|windlass|winch|motor)\b", re.IGNORECASE
)
OTHER_BOAT = "note:other_boat"
CHARGER_SOUGHT = regex(  # and not whether the one that they have will do there too
    r"\bchargers? (?:for|on) (?:that|it|her|him|this|them|those|there|this one|that one)\b"
    r"|\b(?:what|which)(?: size| sort of| kind of)?(?: a)? charger\b|\bhow (?:big|large|strong|powerful) a charger\b"
    r"|(?:^|[.?!;:,]\s*)(?:and )?(?:a |the )?charger\s*\?",
    re.IGNORECASE,
)
THE_SAME = regex(r"\b(?:same|my|our|this|that|the one) (?:\w+ )?charger\b", re.IGNORECASE)
NEXT = 2  # characters between a battery's amp-hours and its volts: "200Ah 24V"
STRAIGHT = ("detail:straight", "thing:alternator")  # with nothing between: what was spoken of before charges nothing
BY_ALTERNATOR = regex(
    r"\b(?:with|by|from|off|on|and|if|about)(?: (?:an?|the|my|our))? (?:\d{2,3} ?(?:a|amps?|amp) )?alternator\b",
    re.IGNORECASE,
)


def puts_in(message: Message, thread: Thread) -> bool:
    """Whether it puts another battery in place: one of the other kind with a rating of its own, or one "instead"."""
    told = {item.fact: item.value for item in message.stated if item.of == 1}
    words = set(message.words)
    if not RATED & told.keys() or told.get(COUNT, 1.0) != 1.0 or words & OF_ALL or message.says("note:correction"):
        return False
    if any(item.of > 1 and item.fact.startswith("battery.") for item in message.stated):
        return False
    before = thread.facts[KIND].value if KIND in thread.facts else None
    now = told.get(KIND)
    if now is None or before is None:
        single = COUNT in told or bool(ONE.search(message.text))
        return single and bool(FITS.search(message.text)) and {COUNT, "bank.layout"} & thread.facts.keys() != set()
    crossed = (before in LEAD and now in LITHIUM) or (before in LITHIUM and now in LEAD)
    return crossed or (now != before and bool(FITS.search(message.text)) and bool(ONE.search(message.text)))


def goes_back(message: Message, thread: Thread) -> bool:
    """Whether it speaks of the battery again that another one took the place of: "so the AGM it is"."""
    told = {item.fact: item.value for item in message.stated if item.of == 1}
    before, now = thread.aside.get(KIND), thread.facts.get(KIND)
    if told.keys() != {KIND} or before is None or now is None or before.value != told[KIND] or now.value == told[KIND]:
        return False
    return len(message.words) <= FEW and BACK.search(message.text) is not None


def back_in(thread: Thread) -> Thread:
    """The thread with the battery that was told first in its place again, and the other one set aside."""
    facts = {name: item for name, item in thread.facts.items() if not name.startswith(OF_THE_BATTERIES)}
    return replace(thread, facts={**facts, **thread.aside}, aside=of_the_batteries(thread))


def of_the_batteries(thread: Thread) -> dict[str, Known]:
    """What was told of the batteries that another is put in place of."""
    return {name: item for name, item in thread.facts.items() if name.startswith(OF_THE_BATTERIES)}


def stands_elsewhere(message: Message, thread: Thread) -> bool:
    """Whether it speaks of another battery aboard, of another kind and in a place of its own: "and the AGM aft?"."""
    now = next((item.value for item in message.stated if item.fact == KIND and item.of == 1), None)
    before = thread.facts[KIND].value if KIND in thread.facts else None
    if before is not None and any((item.fact, item.value) == (KIND, before) for item in message.denied):
        return False  # "the start one is gel, not wet" puts theirs right
    return now is not None and before is not None and now != before and bool(ELSEWHERE.search(message.text))


def has_its_load(message: Message, *, elsewhere: bool) -> bool:
    """Whether it tells the load of another boat (`elsewhere`), or another load: nothing of the one before holds."""
    told = LOADS & {item.fact for item in message.stated if item.of == 1}
    return bool(told) and (elsewhere or OTHER_LOAD.search(message.text) is not None)


def bought_new(message: Message, thread: Thread) -> Thread:
    """The thread without the age of the batteries, where all of them are to be bought new."""
    if AGE not in thread.facts or not all_new(message.text) or any(item.fact == AGE for item in message.stated):
        return thread
    return replace(thread, facts={fact: known for fact, known in thread.facts.items() if fact != AGE})


def by_the_alternator(message: Message, thread: Thread) -> Thread:
    """The thread without its charger, where the alternator takes its place: "and with a 70 A alternator?", "or the
    alternator straight on it?"."""
    told = {item.fact for item in message.stated}
    instead = not any(fact.startswith("charger.") for fact in told)
    charges = "alternator.current" in told and "charge-time" in thread.topics and BY_ALTERNATOR.search(message.text)
    straight = all(map(message.says, STRAIGHT)) and not message.says("thing:dcdc")
    if not instead or not (charges or straight):
        return thread
    kept = {fact: known for fact, known in thread.facts.items() if not fact.startswith("charger.")}
    return replace(thread, facts=kept)


def of_another_boat(message: Message, thread: Thread) -> Thread:
    """The thread without the first boat's charger, where one is sought: "my other boat has 80 Ah. Charger for it?"."""
    sought = message.says(OTHER_BOAT) and CHARGER_SOUGHT.search(message.text)
    if not sought or THE_SAME.search(message.text):
        return thread
    kept = {fact: known for fact, known in thread.facts.items() if not fact.startswith("charger.")}
    return replace(thread, facts=kept)


def of_its_own(message: Message) -> Message:
    """The message with the volts that stand beside the amp-hours of the battery as those of that battery."""
    sizes = [item.span for item in message.stated if item.fact in ("battery.capacity", "battery.energy")]
    if any(item.fact in ("battery.nominal", COUNT) for item in message.stated):
        return message
    return replace(message, stated=tuple(_nominal(item, sizes) for item in message.stated))


def _nominal(item: Stated, sizes: list[tuple[int, int]]) -> Stated:
    beside = any(0 <= item.span[0] - end <= NEXT or 0 <= start - item.span[1] <= NEXT for start, end in sizes)
    return replace(item, fact="battery.nominal") if item.fact == VOLTS and beside else item
