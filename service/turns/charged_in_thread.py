"""What a later turn asks of charging and of chargers that its own words do not tell."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex
from service.kinds import LITHIUM
from service.routing.asking import asks_outright
from service.told import charger_left_on, warmed_up
from service.turns.again import KIND
from service.turns.thread import Thread
from service.wording.opening import WAY

CHARGES = ("thing:panel", "thing:charger", "thing:dcdc", "about:solar")  # another way to keep it charged
CHARGING = frozenset({"charger-size", "charge-time", "charger-setting", "charger-banks"})
HOW_CHARGED = regex(
    r"\bhow (?:do|does|should|would|can|could|must|am|are) (?:i|we|one|you|they|these|those)\b[^.?!]{0,16}"
    r"\b(?:charged? (?:them|those|these|both|it|that)|(?:be|get) charged)\b",
    re.IGNORECASE,
)
AND_AMPS = regex(  # "and amps?", after the setting
    r"\W*(?:(?:and|ok|so|then|right|thanks|ta|also)\W+)*(?:(?:how many|what|which|the|in) )*"
    r"(?:amps?|amperes|amperage|a)(?: (?:then|for it|for that|please|pls))*\W*",
    re.IGNORECASE,
)
WHAT_VOLTS = regex(
    r"\b(?:what|which)\b[^.?!]{0,24}\b(?:voltages?|volts)\b(?![^.?!]{0,200}\b(?:full|empty|rest)\b)", re.I
)
OF_A_CHARGER = frozenset({KIND, "battery.age", "charger.kind", "charger.current"})
CHARGER_ON, LEFT_ON = frozenset({"thing:charger", "detail:on_charge"}), "detail:left_on"
SETTING = "role:charger.setting"
COLD = frozenset({"storage", "cold-cranking", "run-check", "run-time", "freeze-point", "charger-setting"})
MAY_IT = (  # "so can't I charge it there too", "so it can't be charged", "when can i"
    r"(?:can|may|could|should)(?:n?['’]?t)? (?:i|we) (?:not |still |then )?charge(?: (?:it|them|that))?"
    r"|(?:can['’]?t|cannot|can not|may not|must not|mustn['’]?t) (?:i |we )?charge(?: (?:it|them|that))?"
    r"|(?:it|they|i|we) (?:can['’]?t|cannot|can not|may not|must not) (?:be )?charged?(?: (?:it|them|that))?"
    r"|when (?:can|may|could) (?:i|we|it|they)(?: (?:be )?charged?(?: (?:it|them|that))?)?"
    r"|(?:can|may|could) (?:it|they) be charged|charge (?:it|them|that) (?:too|as well|now)"
    r"|ok(?:ay)? to charge(?: it| them)?"
)
LEADS, TRAILS = (
    r"\W*(?:(?:and|so|but|ok|okay|then|right|also)\W+)*",
    r"(?: (?:then|there|too|as well|at all|now|in that|in the cold|like that|also))*\W*",
)
CHARGED_TOO = regex(
    r"\W*(?:(?:and|so|but|ok|then) )*(?:(?:what|how) about|and) (?:the )?charging(?: (?:it|them))?(?: then)?\W*"
    rf"|(?:{LEADS}(?:{MAY_IT}){TRAILS}){{1,2}}",
    re.IGNORECASE,
)
CHILLY = 10.0  # °C up to which lithium takes less, or nothing
WARMED = regex(
    r"\b(?:heat(?:ing|er|ed)?|warm(?:ing|ed)?|insulat\w+)\b[^.?!;]{0,40}\b(?:help|do|solve|enough|allow\w*|charge)\b",
    re.IGNORECASE,
)
FULLNESS = frozenset({"reading.voltage", "reading.gravity", "battery.charge"})
MAY_LEAVE = regex(
    r"\b(?:can|may|could|ok to|okay to|safe to)\b(?: (?:i|we|it|they|now|then))*(?: be)? (?:leave|left|stay)\b",
    re.IGNORECASE,
)
ALSO = "also:charger-setting"  # cue of a thread: the setting is told as well, once the kind of battery is known


def left_so_full(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Charged it, 12.8 now. May I leave it?" after whether it can be left for the winter: the same question."""
    full = FULLNESS & {item.fact for item in message.stated}
    asks = thread.topics == ("storage",) and MAY_LEAVE.search(message.text) is not None
    return thread.topics if full and asks and not any(map(message.says, CHARGER_ON)) else ()


def laid_up_without_power(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "There's no shore power there" of a boat that is laid up, whatever was asked since."""
    laid_up = "storage" in thread.topics or "storage.time" in thread.facts
    tells = message.says("detail:no_power") and not asks_outright(message) and not any(map(message.says, CHARGES))
    return ("storage",) if laid_up and tells else ()


def kind_of_its_charger(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "It's an old one without float, flooded" after whether the charger may stay on: the same question."""
    stays = thread.topics == ("storage",) and CHARGER_ON & set(thread.cues) and LEFT_ON in thread.cues
    told = {item.fact for item in message.stated}
    tells = "charger.kind" in told or any(map(message.says, charger_left_on.KINDS))
    return thread.topics if stays and tells and told <= OF_A_CHARGER and not asks_outright(message) else ()


def amps_of_charging(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "And amps?" after the setting of a charger: how many it should give."""
    set_so = thread.topics == ("charger-setting",) and "charger.current" not in thread.facts and not message.stated
    return ("charger-size",) if set_so and AND_AMPS.fullmatch(message.text) else ()


def volts_of_charging(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "It may become gel next year. What would the voltages be then?" of a charger: its volts, not its amps."""
    read = any(item.fact.startswith("reading.") for item in message.stated)
    charging = bool(thread.topics) and CHARGING.issuperset(thread.topics)
    return ("charger-setting",) if charging and not read and WHAT_VOLTS.search(message.text) else ()


def charged_too(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "What about charging?", "would heating the box help?" after whether lithium may be used in the cold."""
    lithium = thread.facts.get(KIND)
    told = thread.facts.get("ambient.temperature")
    here = next((item for item in message.stated if item.fact == "ambient.temperature"), None)
    chilly = here is not None and isinstance(here.value, float) and here.value <= CHILLY
    cold = chilly or COLD & set(thread.topics) or (told is not None and float(told.value) <= CHILLY)
    asked = re.split(r"[.!;,]", message.text)[-1] if chilly else message.text  # "it's 4 degrees here. charge it now?"
    asks_it = CHARGED_TOO.fullmatch(asked) or WARMED.search(message.text)
    return ("charger-setting",) if lithium and lithium.value in LITHIUM and cold and asks_it else ()


def warmed_since(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "It's warmed up to 13 now" of lithium that was too cold: the same question, at what it has now."""
    lithium, told = thread.facts.get(KIND), {item.fact for item in message.stated}
    now = told == {"ambient.temperature"} and warmed_up.told(message.text) and "?" not in message.words
    return thread.topics if lithium and lithium.value in LITHIUM and now and "hazard" not in thread.topics else ()


def amps_of_the_charger(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "10 amps" where it was asked whether a charger suits: its size as well as its setting, once both may be told."""
    told = {item.fact for item in message.stated}
    kind = "battery.chemistry" in told | thread.facts.keys()
    amps = "charger.current" in told | thread.facts.keys()
    set_so = {"charger.setting", "charger.voltage"} & (told | thread.facts.keys()) or SETTING in thread.cues
    suits = f"{WAY}charger-setting:good" in thread.cues and not set_so
    if thread.topics == ("charger-setting",) and amps and told and suits:
        return ("charger-size", "charger-setting") if kind else ("charger-size",)
    if thread.topics == ("charger-size",) and ALSO in thread.cues and told and kind:
        return ("charger-size", "charger-setting")
    return ()


def charged_then(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "And how do I charge them then?" of batteries that are joined: by how many chargers, of which volts."""
    joined = thread.topics == ("bank-wiring",) and not message.stated
    return ("charger-banks",) if joined and HOW_CHARGED.search(message.text) else ()


def left_on(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Could I leave it on all winter?" of a charger that was judged: whether it may stay on, by its kind."""
    told = {item.fact for item in message.stated}
    charged = bool(thread.topics) and {"charger-size", "charge-time", "charger-setting"}.issuperset(thread.topics)
    asks = charger_left_on.asked_of_it(message.text) and told <= {"storage.time"}
    return ("charger-setting",) if charged and asks else ()


def also(topics: tuple[str, ...], thread: Thread) -> tuple[str, ...]:
    """The cue for the next turn where a charger's amps are told and the kind of its battery is not."""
    return (ALSO,) if topics == ("charger-size",) and thread.topics == ("charger-setting",) else ()
