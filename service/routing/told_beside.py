"""Topics among those found whose words only tell of another one: nothing is asked of them."""

from __future__ import annotations

import re
from collections.abc import Set

from grammar.reading import Message
from grammar.text.patterns import regex
from service.judgements import new_and_old
from service.judgements.ice_first import has_it_frozen
from service.routing.as_told import HOLD, ICY, TIMES, unlike_amps
from service.routing.beside_charging import charger_only_named, made_up_for, of_no_charger, only_stays_on
from service.routing.beside_readings import only_held, told_by_a_reading
from service.routing.beside_supply import BIG, not_asked, only_told_of, rated_for_a_load, sized_already
from service.routing.motor_as_told import ANY_CABLE
from service.routing.supply_as_told import LOADS, STRENGTH, both_sized
from service.told import charged_apart, equal_cells, longest_run, loose, other_volts, two_charges, two_options

GO_BY = regex(r"\bwhich\b[^.?!]{0,30}\b(?:go by|look (?:at|for)|trust|rely on|heed)\b", re.IGNORECASE)
OWN_QUESTIONS = ("request:how_often", "detail:carry")  # of a lay-up, beside a panel
LAID_UP = regex(
    r"\b(?:left (?:aboard|on board|there)|unplugged|disconnected|how to (?:keep|store|leave)|stored?)\b", re.I
)
ALTERNATOR = regex(
    r"\balternator\b[^.?!,]{0,200}\b(?:enough|cope|up to|stand|manage)\b|\benough\b[^.?!,]{0,200}\balternator\b",
    re.IGNORECASE,
)
MEANS = regex(r"\bmeans?\b|\bstands? for\b|\bdifference\b", re.IGNORECASE)
INTO = regex(r"\bwhat(?:['’]?s| is| are| would) (?:that|it|this|they|those)(?: be)? (?:in|as)\b", re.IGNORECASE)
LOOKS = regex(r"\bhow often\b[^.?!]{0,200}\b(?:look|check|inspect|visit)\w*", re.IGNORECASE)
UPKEEP = regex(r"\b(?:water|clean|top(?:ped|ping)? up|grease|equalis|equaliz|desul)\w*", re.IGNORECASE)
LESS_CARE = regex(
    r"\b(?:kind|type|sort|one)\b[^.?!]{0,200}\b(?:less|least|no|without)\b[^.?!]{0,200}"
    r"\b(?:looking after|maintenance|upkeep|care)\b",
    re.IGNORECASE,
)
BUYS = regex(r"\bwhat (?:do|should|must|would) (?:i|we) (?:buy|get|need|fit|take)\b", re.IGNORECASE)
STORES = regex(
    r"\b(?:stor(?:e|ed|age|ing)|lay\w* (?:it |them )?up|laid up|leav\w*|left|keep\w*|how often|charger?|charging"
    r"|disconnect\w*|look after|check\w*|months?|weeks?)\b",
    re.IGNORECASE,
)
FROST_FREE = regex(r"\b(?:never|doesn'?t|does not|won'?t|no longer) freezes?\b|\bfrost[- ]?free\b", re.IGNORECASE)
ICE = regex(r"\b(?:fr[eo]ez\w*|froze\w*|frost\w*|ice|icy|minus|cold)\b|-\d", re.IGNORECASE)
LIVED_IN = regex(  # "may they live in a cabin at all", beside the holes of their box
    r"\b(?:may|can|could|should|must|allowed|ok|okay|wise|safe)\b[^.?!;]{0,40}"
    r"\b(?:live|be|stand|go|sit|stay|belong|have|keep|put|place)"
    r" (?:(?:it|them|such|the|my|these|those|things|batter\w+|agms?|gels?|lithiums?) ){0,2}"
    r"(?:in|inside|under|beneath|below|beside)(?: (?:an?|the|my|our|your))?(?: (?:sleeping|living|aft|fore|same))?"
    r" (?:cabins?|saloon|bunks?|berths?|beds?|bedroom|room|space|quarters)\b",
    re.IGNORECASE,
)
OF_A_HOLE = regex(r"\bsize\b[^.?!]{0,12}\b(?:lugs?|holes?|rings?|studs?|nuts?)\b", re.IGNORECASE)

RUNS = regex(
    r"\b(?:runs?|running|power\w*|drives?|handles?|copes?|starts?|turns?|enough for|big enough|suits?)\b", re.IGNORECASE
)
ENOUGH = regex(
    r"\b(?:enough|big|strong|adequate|suffic\w+|suit\w*|right (?:battery|size|one)|up to (?:it|the)"
    r"|(?:will|would|does|do|can|could|should) (?:it|they|this|that|these|one|a|an|the|my|two|i)\b[^.?!;]{0,40}"
    r"\b(?:run|turn|drive|power|handle|cope|work|manage|do)\b)",
    re.IGNORECASE,
)

OF_KINDS = frozenset(
    {
        "mounting",
        "ventilation",
        "charger-setting",
        "charger-size",
        "charge-time",
        "storage",
        "maintenance",
        "freeze-point",
    }
)
SAME_OF = regex(  # "May AGM lie on its side? And lithium?"
    r"\b(?:and|what about|how about|what if it (?:is|was|were))\W+(?:(?:with|for|of|in|on|an?|the|my|our) )*"
    r"(?:agm|gel|wet|flooded|lead|lithium|lifepo4|lfp)(?:[- ](?:cells?|acid|ones?|battery|batteries))*\W*(?:[?]|$)",
    re.IGNORECASE,
)
WEIGHS = regex(r"\b(?:which|better|best|versus|vs|difference|advantages?|instead|or)\b", re.IGNORECASE)
WORN = regex(
    r"\b(?:replac|last(?! (?:week|month|year|spring|summer|autumn|winter|season|easter|christmas))|chang"
    r"|scrap|retir|renew|swap|buy|dead|die|dying|fail|worn|weak|tired|kaput|bad\b|dud)\w*"
    r"|\b(?:keep|kept|gone|bin|due|done|life|lives|good|test\w*|too old|past it|had it|finished|shot|goes|going|skip"
    r"|carry on|ready|part)\b",
    re.IGNORECASE,
)
PAID = regex(
    r"\b(?:take|accept|send|pay(?:ing)?(?: \w+)? by|pay with) (?:a |an? \w+ )?(?:personal )?checks?\b", re.IGNORECASE
)
JUMP = "jump-start"  # a danger that is only ever asked about


def told_beside(message: Message, found: Set[str]) -> set[str]:
    """The topics among these whose words only tell of another one: the winter in which a panel must keep up with a
    drain, the alternator that must be big enough for a converter, the volts at which to stop."""
    told = {item.fact for item in message.stated}
    idle = set()
    if {"solar", "storage"} <= found and "drain.current" in told and "storage.time" not in told:
        own = any(map(message.says, OWN_QUESTIONS)) or LAID_UP.search(message.text)
        idle |= set() if own else {"storage"}
    if {"dc-dc", "charger-size"} <= found and "alternator.current" in told and ALTERNATOR.search(message.text):
        idle.add("charger-size")
    if "charger-setting" in found and found & TIMES and message.says("detail:stop_reading"):
        idle |= set() if message.says("thing:charger") else {"charger-setting"}  # "what volts do I stop at"
    if {"storage", "maintenance"} <= found and LOOKS.search(message.text) and not UPKEEP.search(message.text):
        idle.add("maintenance")  # "how often should somebody look at them"
    if {"battery-type", "maintenance"} <= found and LESS_CARE.search(message.text):
        idle.add("maintenance")
    if {"storage", "charger-setting"} <= found and "charger.setting" in told and only_stays_on(message):
        idle.add("charger-setting")  # "leave the charger on or unplug it: who is right?"
    if "freeze-point" in found and len(found) > 1 and _frost_free(message.text, "storage" in found):
        idle.add("freeze-point")  # "in a garage that never freezes"
    if {"storage", "freeze-point"} <= found and two_charges.told(message.text) and not STORES.search(message.text):
        idle.add("storage")  # "Winter here. Will it freeze if full? And if half empty?"
    how_full = any(map(message.says, ("request:is_good", "request:how_full")))
    if "freeze-point" in found and not how_full and has_it_frozen(message.text):
        idle |= ICY & found  # "1.110 after those nights, did it freeze?"
    idle |= charger_only_named(message, found, told)
    idle |= of_no_charger(message, found, told) | not_asked(message, found, told) | only_told_of(message, found, told)
    idle |= made_up_for(message, found) | sized_already(message, found, told) | told_by_a_reading(message, found)
    idle |= _never_joined(message, found) | _one_question(message, found, told) | _told_with_it(message, found, told)
    return idle


def _frost_free(text: str, laid_up: bool) -> bool:
    """Whether it is told that it never freezes, and beside another question than a lay-up nothing else of ice."""
    rest = FROST_FREE.sub(" ", text)
    return rest != text and (laid_up or not ICE.search(rest))


def _enough(message: Message) -> bool:
    """Whether it is asked if a battery is up to its load, and not only what its volts tell."""
    return message.says("request:enough") or message.says("request:may_i") or ENOUGH.search(message.text) is not None


def _never_joined(message: Message, found: Set[str]) -> set[str]:
    """The topics on joining, where the danger of jump leads is the answer, or one of two is to be chosen."""
    unlike = other_volts.jumped(message.text) or other_volts.linked(message.text)
    if unlike and any(item.family == "jump-start" for item in message.dangers):
        return {"bank-wiring", "dc-dc"} & found
    chosen = {"bank-wiring", "run-check"} <= found and two_options.weighed(message.text)
    return {"bank-wiring"} if chosen else set()


def _told_with_it(message: Message, found: Set[str], told: Set[str]) -> set[str]:
    """The topics that a word beside another question names: a cable that lugs are put on, amps that an adapter carries,
    a battery that is left as it lies."""
    idle = set()
    if {"run-check", "load-voltage"} <= found and "reading.load_voltage" in told and not _enough(message):
        idle.add("run-check")  # "it falls to 19 with the Sturgeon on, two of 700 CCA: what does that tell"
    if "storage" in found and "storage.time" not in told and loose.moves(message.text):
        idle.add("storage")  # "is it dangerous to leave it like that for now", of a battery that slides about
    if {"bank-wiring", "run-check"} <= found and unlike_amps(message, told):
        idle.add("run-check")
    if {"terminals", "cable-size"} <= found and not told & (ANY_CABLE | LOADS) and OF_A_HOLE.search(message.text):
        idle.add("cable-size")  # "what size of lug hole do I need", for cables that are made up
    if any(item.family == JUMP for item in message.dangers) and not message.says("request:what_get"):
        idle.add("bank-wiring")  # "plus to plus and go?" of jump leads
    charged = {"run-check", "charger-size"} <= found and not told & (STRENGTH | {"load.current", "load.peak"})
    if charged and "charger.current" in told and not RUNS.search(message.text):
        idle.add("run-check")  # "a Pike with 100 Ah of gel, and a 30 A charger. Is 30 A ok?"
    if {"other-desk", "maintenance"} <= found and PAID.search(message.text):
        idle.add("maintenance")  # "do you take checks"
    if {"terminals", "run-check"} <= found and message.says("detail:adapter") and not told & STRENGTH:
        idle.add("run-check")  # "is an adapter good enough for 250 A"
    return idle | only_held(message, found, told)


def _one_question(message: Message, found: Set[str], told: set[str]) -> set[str]:
    """The topics whose words put the question of another one: whether it can be saved, whether a lid may be tight."""
    if {"specific-gravity", "replacement"} <= found and "battery.age" not in told and equal_cells.kept(message.text):
        return {"replacement"}  # "1.225 in all cells: charge or bin"
    joins = {"bank-wiring", "replacement"} <= found
    if joins and (new_and_old.new_with_old(message.text) or not WORN.search(message.text)):
        return {"replacement"}  # "and a new AGM with one of 2 years?", "a gel of 3 years and one of 70 Ah in series?"
    if (
        "battery-type" in found
        and found & OF_KINDS
        and SAME_OF.search(message.text)
        and not WEIGHS.search(message.text)
    ):
        return {"battery-type"}  # "and lithium?" asks the same of another kind
    if (
        "bank-size" in found
        and len(found) > 1
        and charged_apart.asked(message.text)
        and not charged_apart.sized(message.text)
    ):
        return {"bank-size"}  # "will 75 Ah run it for 2 minutes, and do I need to charge it separately?"
    if {"charger-banks", "bank-size"} <= found and BUYS.search(message.text) and not BIG.search(message.text):
        return {"bank-size"}  # "one charger for two kinds, ok? and if not what do I buy"
    if "mounting" in found and longest_run.asked(message.text, told) and not HOLD.search(message.text):
        return {"mounting"}  # "how far may the battery be from it with 70 mm2"
    if {"meaning", "battery-type"} <= found and GO_BY.search(message.text):
        return {"battery-type"}  # "CCA and MCA, and which of them should I go by?"
    saved = message.says("detail:saved")
    if saved and found == {"specific-gravity", "replacement"} and "battery.age" not in told:
        return {"replacement"}  # "throw it away or can it be saved"
    if saved and found == {"rest-voltage", "replacement"} and "reading.voltage" in told:
        return {"replacement"}  # "it reads 10.1, can I save it? 3 years old"
    shut = message.says("detail:shut") and not (HOLD.search(message.text) or LIVED_IN.search(message.text))
    return {"mounting"} if shut and {"ventilation", "mounting"} <= found else set()  # "the holes, and a tight lid"


def told_by_another(message: Message, found: Set[str]) -> set[str]:
    """The topics that another answer tells as well: what CCA is, where it is asked whether so many MCA are the same."""
    into = message.says("detail:same_as") or INTO.search(message.text)
    same = {"meaning", "rating-convert"} <= found and into and not MEANS.search(message.text)
    sized = {"battery-type", "run-check"} <= found and both_sized(message)  # which kind, by what each of the two does
    idle = {name for name, told in (("meaning", same), ("battery-type", sized)) if told}
    return idle | ({"rating-convert"} if "run-check" in found and rated_for_a_load(message) else set())
