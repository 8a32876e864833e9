"""What a later turn asks that its own words do not tell: the question before, with what is new, or what follows on it.

Each rule looks at one way of going on; the first that finds topics speaks for the whole message, before any points.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from grammar.reading import Message
from grammar.text.patterns import regex
from grammar.told.cold.weather import is_condition
from grammar.told.words import SENTENCE
from service.judgements.new_and_old import all_new
from service.routing.asking import asks, asks_outright
from service.told.culprit import either
from service.topic import CIRCUIT
from service.turns import circuit_in_thread, of_the_rest, sized_in_thread, supply_in_thread
from service.turns.again import (
    AT_REST,
    KIND,
    OF_THEM,
    SAME,
    STILL,
    had_it_been,
    if_only_so_full,
    joined_so,
    of_another_kind,
    same_again,
    still_runs,
)
from service.turns.charged_in_thread import (
    WHAT_VOLTS,
    amps_of_charging,
    amps_of_the_charger,
    charged_then,
    charged_too,
    kind_of_its_charger,
    laid_up_without_power,
    left_on,
    left_so_full,
    volts_of_charging,
    warmed_since,
)
from service.turns.thread import Thread

FEW = 12  # words of a turn that goes on with what was spoken of
MORE = 20  # the same, where what it tells is plain
READINGS = frozenset({"rest-voltage", "specific-gravity", "load-voltage"})
WORN = frozenset({*READINGS, "replacement", "run-check"})
SIZE = regex(r"\b(?:size|gauge|awg|mm2?|square|cable|wire)\b", re.IGNORECASE)
THINGS = ("alternator.", "charger.", "solar.", "fuse.", "cable.", "drain.")
OF_ITSELF = frozenset(  # topics after which the cold asks whether it will freeze
    ("rest-voltage", "specific-gravity", "standing-drain", "storage", "battery-type", "replacement", "meaning")
)
SECONDS = frozenset({"load.burst", "load.bursts", "load.time", "load.rest"})
STRENGTH = frozenset({"battery.cca", "battery.ca", "battery.max_current"})
OF_A_LABEL = frozenset({"battery.max_current", "battery.peak_current"})
LOADS = frozenset({"load.model", "load.current"})
ANEW = ("request:what_size", "request:which", "request:versus", "request:what_is", "request:convert")
METER = frozenset({"meter", "multimeter", "volts", "volt", "voltage"})
SKIP = regex(r"\b(?:in(?:to)?|for|to) the (?:skip|bin|tip|scrap(?:yard|heap)?|dump|dustbin|recycling|scrappie)\b", re.I)
AT_DEGREES = regex(  # what may stand about degrees alone: a season, "same thing at", "thanks"
    r"\W*(?:(?:and|or|but|ok|okay|so|then|now|what|how|about|if|when|its?|it's|is|was|be|gets?|goes|falls|drops?|hits"
    r"|in|at|the|a|on|for|with|during|over|winter|summer|cold|frost|weather|mornings?|nights?|days?|out|outside|there"
    r"|here|minus|below|zero|degrees?|deg|c|celsius|say|suppose|like|around|down|to|same|again|thing|question|story"
    r"|still|good|fine|enough|hold|true|does|will|would|do|that|this|thanks?|thank|you|cheers|ta|great|perfect|right|well|hm+"
    r"|i|we|we're|are)\b\W*)*",
    re.IGNORECASE,
)
A_NEW_ONE = r"\b(?:new|replacement) (?:batter\w+|batts?|accu|ones?|set|pair|bank)\b"
LEFT_AS_IT_IS = (
    r"\b(?:live with|put up with|carry on with|soldier on|keep (?:it|them|this|these|the old|using|going)"
    r"|make do|hang on to|leave (?:it|them|things) (?:as|be|alone)|get away with)\b"
)
NEW_OR_KEPT = regex(  # a charger that may be new is another matter
    rf"{A_NEW_ONE}[^.?!]{{0,200}}(?:\bor\b|,)[^.?!]{{0,200}}{LEFT_AS_IT_IS}|{LEFT_AS_IT_IS}[^.?!]{{0,200}}\bor\b[^.?!]{{0,200}}{A_NEW_ONE}",
    re.IGNORECASE,
)
HAS = regex(r"\W*(?:(?:i|we)(?:'?ve)? ?)?(?:got|have)\b|\W*there (?:is|are)\b|\W*mine (?:is|are)\b", re.IGNORECASE)
AGE, OF_IT = "battery.age", ("battery.", "reading.")
OF_NEW = frozenset({"battery.count", "bank.layout", AGE})
TAP = "detail:tap"


def goes_on_with(message: Message, thread: Thread) -> tuple[str, ...]:
    """The topics of a later turn by the rules below; none where its own words decide."""
    degrees = at_other_degrees(message)
    several = asks_outright(message) and sum(clause.asks for clause in message.clauses) > 1 and not degrees
    danger = message.dangers or thread.dangers or "hazard" in thread.topics
    plain = message.says(TAP) or any(item.fact == AGE for item in message.stated) or WHAT_VOLTS.search(message.text)
    joined = any(item.fact == "bank.layout" for item in message.stated)
    plain = plain or SAME.match(message.text) or STILL.search(message.text)
    few = MORE if plain or joined else FEW
    long = len(message.words) > few and not degrees
    if thread.topics and not danger and (left := left_so_full(message, thread)):
        return left
    if not thread.topics or long or danger or several:
        return ()
    return next((topics for rule in RULES if (topics := rule(message, thread))), ())


def colder(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "And if it's freezing, say 0 degrees?", "and in winter at -5?": the last question in the cold."""
    condition = (at_other_degrees(message) or is_condition(message.text)) and not any(map(message.says, ANEW))
    if condition and thread.topics == ("meaning",) and STRENGTH & thread.facts.keys() and LOADS & thread.facts.keys():
        return ("run-check",)  # what a word means was asked between
    if condition and "rating-convert" in thread.topics and {"battery.cca", "battery.ca"} & thread.facts.keys():
        return ("cold-cranking",)  # "840 MCA, how many real cold amps?", "and at minus ten?"
    rated = thread.facts.keys() & (STRENGTH | {"battery.capacity"}) and LOADS & thread.facts.keys()
    if condition and rated and set(thread.topics) <= CIRCUIT:
        return ("run-check",)  # the cold is nothing to a fuse or a cable, and much to the battery that was told of
    return thread.topics if condition and not OF_ITSELF & set(thread.topics) else ()


def at_other_degrees(message: Message) -> bool:
    """Whether a message, or its last sentence after others that only tell, is degrees and no more: "We sail at
    Christmas. Same thing at minus 8?"."""
    if {item.fact for item in message.stated} != {"ambient.temperature"}:
        return False
    start, end = min(item.span[0] for item in message.stated), max(item.span[1] for item in message.stated)
    ends = [found.end() for found in SENTENCE.finditer(message.text, 0, start)]
    last = ends[-1] if ends else 0
    if "?" in message.text[:last] or AT_DEGREES.fullmatch(message.text, end) is None:
        return False
    return AT_DEGREES.fullmatch(message.text, last, start) is not None


def put_right(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Correction, the alternator is a 50": the last questions, with the figure put right."""
    told = {item.fact for item in message.stated}
    again = bool(told) and told <= thread.facts.keys() and message.says("note:correction")
    again = again and all(fact.startswith(THINGS) for fact in told)  # each of these has a topic of its own
    return thread.topics if again and not asks_outright(message) else ()


def by_this_loss(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "The builder allows 5 percent, size then?" of a run that was told."""
    told = {item.fact for item in message.stated}
    run = "cable.length" in thread.facts and CIRCUIT & set(thread.topics)
    return ("cable-size",) if told == {"cable.drop"} and run and SIZE.search(message.text) else ()


def what_now(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "So what do I do with them?": the last answer, by what it says to do."""
    if not message.says("detail:what_now") or message.stated or message.says("note:past"):
        return ()
    other = (cue for cue in message.cues if cue.name.startswith(("thing:", "word:")) and cue.name not in OF_THEM)
    return () if any(other) else thread.topics


def which_part(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Is it the cable or the battery?" of a reading under load."""
    return ("load-voltage",) if "load-voltage" in thread.topics and either(message.text) else ()


def read_otherwise(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "The engine had only just stopped" of volts that were read: how good they are then."""
    told = {item.fact for item in message.stated}
    volts = "rest-voltage" in thread.topics and "reading.voltage" in thread.facts
    return ("rest-voltage",) if volts and told == {"reading.state"} and "?" not in message.words else ()


def rested_before_the_test(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "It showed 12.6 at rest" of a battery that was read under load: the same test, with what it fell from."""
    told = {item.fact for item in message.stated}
    tested = thread.topics == ("load-voltage",) and "reading.load_voltage" in thread.facts
    return thread.topics if tested and "reading.voltage" in told <= AT_REST and not asks_outright(message) else ()


def thrown_away(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Does that one go in the skip then?" of a battery that was read or tested: whether it is worn out."""
    judged = (WORN - {"run-check"}) & set(thread.topics) and not message.stated
    return ("replacement",) if judged and SKIP.search(message.text) else ()


def bought_instead(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "What do I get instead?" of a battery that was judged: how big the next one must be."""
    reads = message.says("about:reading_word") or not METER.isdisjoint(message.words)
    bought = WORN & set(thread.topics) and message.says("detail:instead_of_it") and not reads
    return ("bank-size",) if bought else ()


def for_so_long(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Bursts of 10 s?" after whether it runs: for how long it does."""
    told = {item.fact for item in message.stated}
    if not told or not told <= SECONDS or "run-check" not in thread.topics or "run-time" in thread.topics:
        return ()
    open_now = thread.asks or not ("?" in message.words or message.says("note:ellipsis"))
    return ("run-check", "run-time") if open_now else ("run-time",)  # what is not decided yet stands before it


def without_the_fuse(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "So I can leave the fuse out then": never, whatever was spoken of."""
    return ("fuse-size",) if message.says("detail:fuse_left_out") else ()


def strong_enough(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "450 CCA each" of batteries joined for a load that was named: what they make, and whether that will do."""
    told = {item.fact for item in message.stated}
    rated = thread.topics == ("bank-wiring",) and told & STRENGTH and LOADS & thread.facts.keys()
    return ("bank-wiring", "run-check") if rated and not asks_outright(message) else ()


def has_one(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Got 2 x 500 CCA in parallel" after how big it must be: whether that will do."""
    told = {item.fact for item in message.stated}
    there = thread.topics == ("bank-size",) and told & STRENGTH and LOADS & thread.facts.keys()
    return ("run-check",) if there and HAS.match(message.text) and not asks_outright(message) else ()


def allowed_by_the_label(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "200 A continuous, 400 peak" where it was asked how long a lithium battery lasts: the same, by its label."""
    told = {item.fact for item in message.stated}
    return thread.topics if told and told <= OF_A_LABEL and "run-time" in thread.topics else ()


def one_of_another_sort(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "One is lithium", or in series "one has 60 Ah", of batteries that are joined: whether those may be at all."""
    first, second = ({item.fact for item in message.stated if item.of == of} for of in (1, 2))
    layout = thread.facts.get("bank.layout")
    unlike = KIND in second - first or ("battery.capacity" in second and layout and layout.value != "parallel")
    apart = {"charger-banks", "bank-wiring"} & set(thread.topics)
    return ("bank-wiring",) if unlike and layout and not apart and not asks_outright(message) else ()


def told_on_the_way(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "On the posts, it's a 600 CCA wet one, 4 years old": the same question, whatever age is told with the rest."""
    told = {item.fact for item in message.stated}
    rest = told - {AGE}
    known = READINGS | {"run-check", "run-time", "charger-size", "charge-time"}
    passing = (
        AGE in told and rest - {"battery.count"} and all(fact.startswith(("battery.", "reading.")) for fact in rest)
    )
    wears = "replacement" in thread.topics
    return thread.topics if passing and not wears and not asks(message) and known & set(thread.topics) else ()


def tapped_off(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "And if the 12 V is just tapped off the lower battery?" of a converter: what that does to both batteries."""
    return ("bank-wiring",) if message.says(TAP) and thread.topics == ("dc-dc",) else ()


def bought_new(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "And if I bought two new ones instead?" of one beside an old one: the same questions, of new ones."""
    known = set(thread.topics) & {"run-check", "bank-wiring"} and AGE in thread.facts
    told = {item.fact for item in message.stated}
    if not known or not told <= OF_NEW or not all_new(message.text):
        return ()
    return ("bank-wiring", *(topic for topic in thread.topics if topic != "bank-wiring"))


def new_or_kept(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "New battery then, or live with it?" of volts that were judged: whether it is time for a new one."""
    judged = READINGS & set(thread.topics) and not message.stated
    return ("replacement",) if judged and NEW_OR_KEPT.search(message.text) else ()


RULES: tuple[Callable[[Message, Thread], tuple[str, ...]], ...] = (
    without_the_fuse,
    colder,
    put_right,
    by_this_loss,
    what_now,
    kind_of_its_charger,
    which_part,
    read_otherwise,
    rested_before_the_test,
    thrown_away,
    bought_instead,
    for_so_long,
    of_another_kind,
    same_again,
    had_it_been,
    joined_so,
    still_runs,
    if_only_so_full,
    amps_of_charging,
    volts_of_charging,
    charged_too,
    warmed_since,
    laid_up_without_power,
    strong_enough,
    has_one,
    allowed_by_the_label,
    tapped_off,
    told_on_the_way,
    one_of_another_sort,
    amps_of_the_charger,
    bought_new,
    charged_then,
    left_on,
    new_or_kept,
    *of_the_rest.RULES,
    *circuit_in_thread.RULES,
    *supply_in_thread.RULES,
    *sized_in_thread.RULES,
)
