"""Topics of supply by the facts told: whether a battery runs a load, for how long, and how many of them it takes."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex
from service.kinds import LITHIUM
from service.routing.seen import Seen
from service.topic import CIRCUIT

STRENGTH = frozenset({"battery.cca", "battery.ca", "battery.max_current"})
WHETHER = frozenset(
    (
        *("will", "would", "wants", "does", "do", "works", "work", "if", "first", "second"),
        *("should", "possible", "or", "go", "goes", "turn", "push", "runs", "mind", "any", "what"),
    )
)
RUNS = regex(r"(?:runs?|powers?|drives?|feeds?|supply|supplies|pulls?|carry) ", re.IGNORECASE)
ABLE = frozenset({"can", "could", "able", "enough", "ok", "may", "might", "let", "to"})
ORDINAL = frozenset({"", "a", "the", "and", "my", "with", "or"})  # before "second" where it counts no time
LOADS = frozenset({"load.current", "load.model", "load.power", "load.peak"})
KIND = "battery.chemistry"
SUPPLY = frozenset({"bank-size", "run-check"})  # "what CCA for it?" and then "got 2 x 500 in parallel"
SO_MANY = regex(r"\bhow many\b[^.?!]{0,200}\b(?:parallel|side by side|abreast)\b", re.IGNORECASE)
SO_MANY_BATTERIES = regex(
    r"\bhow many "
    r"(?!(?:amps?|ah|cold|cranking|cca|bursts?|times|minutes?|mins?|hours?|volts?|watts?|kilos?|pounds?)\b)"
    r"(?:[\w.-]+ ){0,6}?(?:batter(?:ies|ys)|batts|lithiums|lifepo4s|agms|gels)\b",
    re.IGNORECASE,
)
TO_HALF = regex(
    r"\brun[- ]?time\b|\b(?:minutes?|mins?|hours?|hrs?|long|time|bursts)\b[^.?!,]{0,200}\bto (?:half|empty|flat)\b",
    re.IGNORECASE,
)
LASTING = ("request:how_long", "request:how_many")
SIZING = ("request:what_size", "request:how_many")
APPROVAL = ("request:is_good", "request:enough")
MAY = (*APPROVAL, "request:may_i")
READING = regex(r"\b(?:reading|volts?|voltage|how full|charged?)\b", re.IGNORECASE)
READ_FOR = regex(  # "is 12.4 V OK for a Pike battery"
    r"\b(?:is|are|would) (?:it |that )?\d\d(?:[.,]\d+)? ?(?:v|volts?)?\b[^.?!;]{0,12}"
    r"\b(?:ok(?:ay)?|good|fine|enough|all ?right|normal|healthy)\b",
    re.IGNORECASE,
)
THEIRS_DO = regex(  # "does the battery under the bunk do?"
    r"\b(?:does|will|would|can|could|might) (?:the|my|our|this|that|his|her|its) (?:\w+[ -]){0,2}"
    r"(?:battery|batteries|bank)\b[^.?!;,]{0,40}"
    r"\b(?:do|suffice|be (?:enough|ok|fine|alright)|manage|cope|work)\W*(?:[.?!]|$)",
    re.IGNORECASE,
)
SUPPOSES = regex(r"\b(?:what if|and if|if (?:i|we|those|they|these|it)|suppose|say (?:i|we))\b", re.IGNORECASE)
STILL = regex(  # "does it still have the strength", "will it still turn it"
    r"\b(?:does|do|will|would|can|could|has|have|is|are) (?:it|they|she|that|this|the battery|the batteries|mine|ours) "
    r"(?:still |then )?(?:have|has|the|run|turn|drive|push|manage|cope|be|enough|strong|up)\b",
    re.IGNORECASE,
)
MOST_ABREAST = 4  # batteries in parallel
CUTS_OUT = "lfp-keeps-tripping"  # a danger: the lithium battery that switches itself off
UNLIKE = ("detail:mixed_age", "detail:mixed_size", "detail:mixed_kind", "detail:join")


def sized(seen: Seen) -> bool:
    """ "How many of 90 Ah and 700 CCA in parallel?", "how many 90 Ah lithium batteries for 200 A": none that are there
    are to be judged."""
    counted = bool(seen.told & LOADS) and SO_MANY_BATTERIES.search(seen.message.text) and not seen.says(*APPROVAL)
    if counted and "run-check" in seen.found and seen.found <= SUPPLY:
        return True
    return seen.found == {"run-check"} and bool(seen.told & STRENGTH and SO_MANY.search(seen.message.text))


def lasting(seen: Seen) -> bool:
    """ "How many bursts from it?", "700 CCA each. Run time to half?": not whether it runs."""
    if _whether(seen.message):
        return False
    if seen.found == {"run-check"} and "battery.capacity" in seen.told:
        return bool(TO_HALF.search(seen.message.text))
    return seen.found == {"run-check", "run-time"} and seen.says(*LASTING)


def kept_on(seen: Seen) -> bool:
    """ "Will 90 Ah run a 4 A fridge for ten hours?": of what takes no jump of current only the hours count."""
    told = {item.fact: item.value for item in seen.message.stated}
    steady = told.get("load.kind") == "electronics" and {"load.time", "battery.capacity"} <= told.keys()
    several = any(item.of == 2 for item in seen.message.stated)
    asked = "run-check" in seen.found and seen.found <= {"run-check", "run-time"}
    return steady and asked and not several and not {"load.peak", "battery.max_current"} & told.keys()


def longer(seen: Seen) -> bool:
    """ "And if I put a second one next to it, in parallel?" after it was asked how long it lasts."""
    joined = seen.found == {"bank-wiring"} and seen.context == {"run-time"}
    changed = seen.told & {"battery.count", "bank.layout", KIND} and SUPPOSES.search(seen.message.text)
    return joined and bool(changed) and not seen.says(*UNLIKE[:3])


def in_the_cold(seen: Seen) -> bool:
    """ "-7 C, 600 CCA, the thruster takes 150 A. Has it still the strength?": whether it runs it, not what is left."""
    told = bool(seen.told & STRENGTH) and bool(seen.told & LOADS) and "ambient.temperature" in seen.told
    return seen.found == {"cold-cranking"} and told and STILL.search(seen.message.text) is not None


def supplied(seen: Seen) -> bool:
    """Whether the battery will do: "800 CCA at 12.2 rested, Minnow ok now?", "got 2 x 500 in parallel" after it was
    asked what is needed, "is a 700 CCA enough"."""
    found, strong = seen.found, bool(seen.told & STRENGTH)
    read = READING.search(seen.message.text) or READ_FOR.search(seen.message.text)
    if found == {"rest-voltage"} and strong and seen.told & LOADS and not read:
        return seen.says(*MAY) and "reading.load_voltage" not in seen.told
    shared = seen.says("detail:engine_battery") and not seen.says("request:which", "request:versus", "about:duty")
    shared = shared and bool(seen.told & LOADS) and not seen.says("request:how_long", "request:how_many")
    if shared and found <= {"battery-duty", "unclear", "run-time"}:
        return seen.says("request:is_good", *MAY, *APPROVAL)  # "my Minnow shares the engine's battery, ok or not?"
    if found == {"bank-wiring"} and not seen.says("request:what_get", "request:may_i", *UNLIKE):
        together = strong or bool(seen.told & {"battery.count", "bank.layout"})
        return bool(SUPPLY & seen.context and together) or bool(CIRCUIT & seen.context and strong)
    if found == {"bank-size"} and seen.told & LOADS and THEIRS_DO.search(seen.message.text):
        return not seen.says("request:how_many", "about:how_big")
    return found == {"bank-size"} and strong and not seen.says(*SIZING) and seen.says(*APPROVAL)


def proposed(seen: Seen) -> bool:
    """ "Two gels in parallel for a 150 A thruster?": nothing else is asked than whether they do."""
    told = {"bank.layout", "battery.count", KIND} <= seen.told and bool(seen.told & (LOADS - {"load.peak"}))
    asks = seen.message.text.rstrip().endswith("?") and not seen.message.dangers
    return seen.found <= {"unclear"} and told and asks and not seen.context


def too_many(seen: Seen) -> bool:
    """ "Six gels in parallel for a 300 A thruster?": so many are not joined, whatever they run."""
    many = any(item.fact == "battery.count" and float(item.value) > MOST_ABREAST for item in seen.message.stated)
    abreast = any(item.fact == "bank.layout" and item.value == "parallel" for item in seen.message.stated)
    return proposed(seen) and many and abreast


def cut_off(seen: Seen) -> bool:
    """ "A few seconds, then nothing, then it comes back. 100 Ah lithium, Minnow. What do I tell her?"."""
    tells = any(item.family == CUTS_OUT for item in seen.message.dangers)
    rated = bool(seen.told & (STRENGTH | {"battery.capacity", "battery.peak_current"}))
    return seen.found <= {"unclear"} and tells and rated and bool(seen.told & LOADS) and is_lithium(seen.message)


def each_sized(seen: Seen) -> bool:
    """ "AGM 95 Ah or lithium 60 Ah for the Pike?": each by its own figures, not the kinds in general."""
    return seen.found == {"battery-type"} and both_sized(seen.message) and bool(seen.told & LOADS)


def both_sized(message: Message) -> bool:
    """Whether two kinds are told of, the second one with a figure of its own."""
    own = {item.fact for item in message.stated if item.of == 2}
    return KIND in own and bool(own & (STRENGTH | {"battery.capacity"}))


def is_lithium(message: Message) -> bool:
    """Whether the battery is told to be lithium."""
    return any(item.fact == "battery.chemistry" and item.value in LITHIUM for item in message.stated)


def _whether(message: Message) -> bool:
    """Whether a message also asks if something will do, in whatever way: "does it go, and how many minutes of go?".

    "Two 90s run the thruster" only tells what runs it.
    """
    words = {
        word for word, before in zip(message.words, ("", *message.words), strict=False) if not _is_unit(word, before)
    }
    if not WHETHER.isdisjoint(words) or message.says("request:may_i"):
        return True
    approval = [cue for cue in message.cues if cue.name in APPROVAL]
    return any(not RUNS.match(cue.text) for cue in approval) or (bool(approval) and not ABLE.isdisjoint(words))


def _is_unit(word: str, before: str) -> bool:
    """Whether it is the second, or the goes, of "4 second goes"."""
    if word == "goes":
        return before in ("second", "sec", "s")
    return word == "second" and before not in ORDINAL
