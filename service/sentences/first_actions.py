"""The first actions beside a danger: what to do, what not to do, and who takes over."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache
from typing import Any

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements.harm import harmful
from service.kinds import LITHIUM
from service.reply import Act
from service.told import charger_hot, has_stopped, put_of_a_danger, which_water, wished

ENGINE, SHORE = ("thing:alternator", "about:alternator"), ("thing:charger", "term:shore-power")
NO_SHORE = "detail:no_power"
EITHER = ("thing:dcdc", "about:converter")  # a charger between two batteries runs off the alternator
ROTTEN = regex(r"\b(?:rotten|eggs?|eggy|egs|sul(?:ph|f)\w*|h2s)\b", re.IGNORECASE)
OVER = "over"  # of a thruster that has stopped
THAWED = "thawed"
FRESH, FRESH_LEAD, CHARGER_HOT = "fresh", "fresh_lead", "charger_hot"
WISHED = "wished"  # a charge or a jump is only asked about

MOST_OTHERS = 2  # further signs whose first action is said beside the leading one
ALTERNATIVES = (
    ("lithium", "lead"),
    ("charger", "alternator"),
    ("alone",),
)  # what a step can hang on
LARGER = "fit a larger fuse"
NO_LARGER = f"{LARGER}: it may let the cable burn"
FUSED = frozenset(
    {"smoke", "fire", "burnt-cable", "no-fuse", "spark-big", "hot-to-touch", "unnamed", "thruster-runs-on"}
)
HAS_THAWED = regex(  # told, and not asked
    r"\b(?:(?:has|have|is|are|it['’]?s|they['’]?re|been|now|since|and|all|fully|completely) )+"
    r"(?:thawed|defrosted|unfrozen)\b(?! ?\?)|\bthawed (?:out|since|now|again|by now)\b(?! ?\?)",
    re.IGNORECASE,
)
SHORE_END = regex(  # of the charger; where the engine charges, that is stopped
    r"\bcharger off at the shore end(?:, (?:without going near|from afar|away from the battery))?", re.IGNORECASE
)
ENGINE_OFF = "engine off as soon as that is safe"
NO_QUAY = regex(r"^shore power off on the quay(?:, and )?", re.IGNORECASE)

ITS_BATTERY = "detail:start_bank"  # the engine is named, running or not
UNNAMED = "Keep away from it and use nothing there until one of our technicians has looked at this."
SMELL, HEAT, EGGS = "rotten-egg-smell", "hot-to-touch", "eggs"
Row = Mapping[str, Any]

OTHERS = "use the other batteries either: they had the same charger, and are tested first"
MEASURED = "go by the {volts}: no reading changes this"
PARTIES = (
    "emergency services",
    "fire service",
    "coast guard",
    "lock or harbour",
    "doctor",
    "poison line",
    "electrician",
    "engineer",
    "specialist",
    "carrier",
    "technician",
    "maker",
    "manual",
)
RESCUE = ("emergency services", "fire service", "coast guard", "Mayday")
LOOKS_GOOD = 12.0  # V: who reads that much may take it that all is well
OVERCHARGED = "overcharging-voltage"


def steps(case: Case, leading: Row, others: list[Row]) -> Iterator[Act]:
    """Do, do not, who: of the leading sign, with the first action of the next ones."""
    own = [Act("do", text) for text in of_kind(case, leading, "do")]
    next_to = [(item, Act("do", text)) for item, text in beside(case, leading, others)]
    soon = [act for item, act in next_to if at_once(leading, item)]
    yield from (*soon, *own, *(act for _, act in next_to if act not in soon))
    yield from (Act("do-not", text) for text in against(case, leading))
    read = case.said("reading.voltage")
    if leading.get("battery") and leading["id"] != OVERCHARGED and read and float(read) >= LOOKS_GOOD:
        yield Act("do-not", MEASURED.format(volts=say.volts(float(read))))
    if any(item.get("battery") for item in (leading, *others)) and several(case):
        yield Act("do-not", OTHERS)
    yield from (Act("who", text) for text in takes_over(case, leading, others))


def at_once(leading: Row, item: Row) -> bool:
    """Whether what is said of another sign cannot wait: the hand beside the eye, heat beside the smell."""
    return bool(item.get("people") and leading.get("people")) or (leading["id"], item["id"]) == (SMELL, HEAT)


def takes_over(case: Case, leading: Row, others: list[Row]) -> Iterator[str]:
    """Who takes over: those of the leading sign, and of the next ones whoever is not named yet."""
    named: set[tuple[str, bool]] = set()
    for item in (leading, *near(leading, others)):
        for text in of_kind(case, item, "who"):
            fresh = parties(text) - named
            if item is leading or fresh or not parties(text):
                yield text
            named |= parties(text)


def parties(text: str) -> set[tuple[str, bool]]:
    """Those whom a text names, and whether only under a condition; who is named without one is named under any."""
    found: set[tuple[str, bool]] = set()
    for clause in text.split(";"):
        only = " if " in clause or " for " in clause.replace(" for the battery", "")
        found |= {(name, way) for name in PARTIES if name in clause for way in ((True,) if only else (True, False))}
    return found


def rescue(*texts: str) -> bool:
    """Whether any of these texts sends for the emergency services or their like, whose numbers are then given."""
    return any(name in text for text in texts for name in RESCUE)


def several(case: Case) -> bool:
    """Whether there are other batteries to ask about."""
    return case.get("battery.count", 1) > 1 or case.says("detail:the_others")


def note(case: Case, rows: Iterable[Row]) -> None:
    """Notes where the sign and its first actions come from."""
    for item in rows:
        also = of_kind(case, item, "also") if "also" in item else ()
        case.step(f"First action: {of_kind(case, item, 'first')}", item["cite"], *also)


def settled(case: Case) -> frozenset[str]:
    """What is told of what the steps hang on: the kind of battery, what charges it, that nobody else is there."""
    named = {facts["battery.chemistry"].value for facts in (case.stated, case.second) if "battery.chemistry" in facts}
    kinds = {"lithium" if kind in LITHIUM else "lead" for kind in named or {case.get("battery.chemistry")} - {None}}
    engine, shore = case.says(*ENGINE), case.says(*SHORE) and not case.says(NO_SHORE)
    open_yet = case.says(*EITHER) or (engine and shore)
    chargers = () if open_yet else ("alternator",) * engine + ("charger",) * (shore and not case.says(ITS_BATTERY))
    alone = ("alone",) * case.says("detail:alone")
    against = {*((EGGS,) * ("lithium" in kinds)), *((THAWED,) * case.says("detail:left_on"))}
    words = told_in_words(case.text) - against
    if FRESH in words and kinds == {"lead"}:
        words = frozenset({*(words - {FRESH}), FRESH_LEAD})
    return frozenset({*(kinds if len(kinds) == 1 else ()), *chargers, *alone, *words})


@lru_cache(maxsize=4)  # asked for each part of an answer
def told_in_words(text: str) -> frozenset[str]:
    """What of the words that steps hang on the text itself tells."""
    told = {
        **{OVER: has_stopped.told(text), EGGS: ROTTEN.search(text), THAWED: HAS_THAWED.search(text)},
        **{WISHED: wished.only_asked(text), FRESH: which_water.is_fresh(text), CHARGER_HOT: charger_hot.told(text)},
    }
    return frozenset(name for name, found in told.items() if found)


def of_kind(case: Case, found: Row, name: str) -> Any:
    """A column of a row as it fits what is told; where that is open the plain one, which is the stricter."""
    told = settled(case)
    whole = next((found[f"{name}_{word}"] for word in sorted(told) if f"{name}_{word}" in found), found[name])
    if isinstance(whole, str):
        return at_source(whole, told)
    return [text for item in whole if (text := at_source(fitted(item, told), told))]


def at_source(text: str, told: frozenset[str]) -> str:
    """A step as it fits what charges: at sea the engine is stopped, as there is no charger at a shore end."""
    if "alternator" not in told:
        return text
    fits = SHORE_END.sub(ENGINE_OFF, NO_QUAY.sub("", text))
    return say.capital(fits) if text[:1].isupper() else fits


def fitted(step: str | Mapping[str, str], told: frozenset[str]) -> str:
    """The words of a step for what is told; empty where that leaves nothing to do."""
    if isinstance(step, str):
        return step
    hangs_on = {word for pair in ALTERNATIVES if set(pair) & set(step) for word in pair} & told
    return next((step.get(word, "") for word in sorted(hangs_on)), step["open"])


def against(case: Case, leading: Row) -> list[str]:
    """What not to do; a larger fuse comes first where one is thought of."""
    found: list[str] = of_kind(case, leading, "do_not")
    if leading["id"] not in FUSED or not put_of_a_danger.larger_fuse(case.text):
        return found
    case.step("A larger fuse may let the cable burn", "cfr-183-455")
    return [NO_LARGER, *(text for text in found if not text.startswith(LARGER))]


def beside(case: Case, leading: Row, others: list[Row]) -> Iterator[tuple[Row, str]]:
    """The next signs with what is said of each beside the leading one: another sign of a battery only adds its own."""
    said = {act_of(of_kind(case, leading, "first"))}
    for item in near(leading, others):
        twice = item.get("battery") and leading.get("battery")
        beside_smell = item.get("with_eggs", "") if leading["id"] == SMELL else ""
        text = item.get("with", beside_smell) if twice else of_kind(case, item, "first")
        if text and act_of(text) not in said:
            said.add(act_of(text))
            yield item, with_volts(case, text)


def act_of(first: str) -> str:
    """What a first action has somebody do at once: a short circuit and a spark have them step back alike."""
    return re.split("[:;]", first, maxsplit=1)[0]


def near(leading: Row, others: list[Row]) -> list[Row]:
    """The signs that may be spoken of beside the leading one."""
    return [item for item in others if item.get("people") or not leading.get("alone")][:MOST_OTHERS]


def with_volts(case: Case, text: str) -> str:
    """A sentence of too high a charging voltage, with the volts where they were measured."""
    measured = harmful(case) or case.said("charger.voltage") or case.said("reading.voltage")
    return text.replace("the charging voltage", say.volts(float(measured))) if measured else text
