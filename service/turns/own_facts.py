"""Which of two values a question goes by, where a message asks several: the one that stands in its own clause.

"Stored at 5 °C, full: does it last, and can it freeze at -15 °C if it drops to half": two questions, two of each.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Set
from dataclasses import replace

from grammar.amend.supposed import is_supposed
from grammar.reading import Message, Span
from grammar.text.patterns import regex
from service.case import Case, Known
from service.kinds import LITHIUM
from service.routing.request import Request
from service.routing.told_beside import SAME_OF
from service.told import longest_run
from service.topic import CIRCUIT
from service.wording.forms import AND_ASKS

APART = ("ambient.temperature", "battery.charge")
ONE_RUN = frozenset({"run-time", "run-check"})  # the cold of the one is the cold of the other
CONVERTING = "rating-convert"
OF_ONE_KIND = frozenset({"mounting", "ventilation"})  # asked of the battery that is named in the question
KIND, DUTY = "battery.chemistry", "battery.duty"
STAYS = "detail:same_charger"
WISH, THEIRS = "bank-size", "run-check"  # "what does it need, and are mine enough": the first is not of theirs
OF_THEIRS = ("battery.", "bank.layout")
SIZED = ("request:what_size", "request:which", "about:how_big")
CHARGES = ("thing:charger", "thing:dcdc", "word:charge")  # of a circuit that may lose less than a motor's
LOADED = frozenset({"load.current", "load.peak", "load.power", "load.model", "load.kind"})
SHARED = dict.fromkeys(("battery-duty", "run-check"), ("detail:engine_battery",))  # "and can it share the engine's?"
MEANING, TERM = "meaning", "term:"
MEAN = regex(r"\W*what (?:is|are|do|does)\b[^.?!;,]{0,200}\bmeans?\b", re.IGNORECASE)
TO_LITHIUM = regex(  # "moving from AGM to LiFePO4": the lithium is what will be charged
    r"\b(?:from|swap\w*|replac\w*|chang\w*|switch\w*|mov\w*|going|go|upgrad\w*|convert\w*)\b[^.?!;]{0,40}"
    r"\b(?:to|for|with|by)\b[^.?!;]{0,16}\b(?:lithium|lifepo4|lfp)\b",
    re.IGNORECASE,
)
STARTS = regex(  # "lead starter on it, lithium in the bow with a dc-dc": the one that starts is not what is charged
    r"\b(?:lead|agm|wet|flooded|gel)\b(?: \w+){0,2}? (?:start(?:er|ing)?|engine|crank\w*)\b"
    r"|\b(?:start(?:er|ing)?|engine|crank\w*) (?:batt\w* )?(?:is |= ?)?(?:a |an )?(?:lead|agm|wet|flooded|gel)\b",
    re.IGNORECASE,
)
POINTS_BACK = regex(  # "and can a full one freeze at that?": at what the question before told
    r"\b(?:at|in|by|with|for) (?:that|this|those|these|such)\b(?! (?:case|way|price)\b)|\bthat (?:cold|hot|warm)\b",
    re.IGNORECASE,
)
IN_THEIR_PLACE = regex(  # "AGM comes out, two lithiums go in their place. May I join those in series?"
    r"\bin (?:its|their) (?:place|stead)\b|\binstead\b|\b(?:replac|swap|exchang|chang|convert|upgrad|switch)\w*\b"
    r"|\b(?:goes?|going|comes?|coming|gets?|taken?|took) out\b",
    re.IGNORECASE,
)
NEW_ONES = regex(r"\b(?:those|these|they|them|the new (?:ones|pair|batteries))\b", re.IGNORECASE)
MIXES = regex(
    r"\b(?:mix|beside|alongside|together with|next to|combine|keep one|one (?:agm|gel|lead|wet|lithium))\w*",
    re.IGNORECASE,
)
ONLY_FOR = regex(r"\b(?:only|just)(?: (?:for|with|a|an|of|in|the|something))* $", re.IGNORECASE)
INSTEAD = {"battery.charge": ("reading.voltage", "reading.gravity")}  # what a charge that is supposed leaves behind


def own(case: Case, request: Request, requests: Iterable[Request], message: Message) -> Case:
    """The case with the values of this question alone, where those of another one stand beside them."""
    others = [
        other.span
        for other in requests
        if other.topic != request.topic and other.span != request.span and not {other.topic, request.topic} <= ONE_RUN
    ]
    stated, second = dict(case.stated), dict(case.second)
    for fact in (*APART, *((DUTY,) if request.topic in SHARED else ())):
        if fact == "ambient.temperature" and "reading.gravity" in stated:
            continue  # the acid's own temperature counts wherever it is told
        if fact == "ambient.temperature" and request.topic == "freeze-point" and fact not in second:
            continue  # the only one is the frost that is asked of
        told = [item for held in (stated, second) if (item := held.get(fact)) is not None]
        if not others and len(told) > 1 and all(_is_asked(item, message) for item in told):
            continue  # "how many amps at -24 °C, and how much is left at 0 °F?"
        kept = _kept(told, request.span, others, message.text)
        if kept is None:
            continue
        stated.pop(fact, None)
        second.pop(fact, None)
        for here in kept:
            stated[fact] = here
            if here.span and is_supposed(message.text, here.span):
                stated = {name: item for name, item in stated.items() if name not in INSTEAD.get(fact, ())}
    _of_the_thing_asked(case, request, {other.topic for other in requests}, message, stated, second)
    case = replace(case, cues=_own_cues(case, request, others, message))
    if request.topic == WISH and any(other.topic == THEIRS for other in requests):
        stated, second = _without(stated, OF_THEIRS), _without(second, OF_THEIRS)
    if request.topic != CONVERTING and _quoted_as_cold(case):
        stated.pop("battery.cca", None)
    return replace(case, stated=stated, second=second) if _changed(case, stated, second) else case


def _of_the_thing_asked(
    case: Case, request: Request, topics: Set[str], message: Message, stated: dict[str, Known], second: dict[str, Known]
) -> None:
    """Leaves the battery, or the cable, of which this question asks."""
    if request.topic in OF_ONE_KIND:
        _one_kind(stated, second, request.span, message)
    if request.topic == "bank-wiring" and IN_THEIR_PLACE.search(message.text) and not MIXES.search(message.text):
        _one_kind(stated, second, request.span, message)
        if NEW_ONES.search(message.text, *request.span):
            _to_lithium(stated, second)
    if request.topic == "charger-setting" and case.says(STAYS) and "charger.voltage" not in stated:
        _to_lithium(stated, second)
    if request.topic == "dc-dc" and (TO_LITHIUM.search(message.text) or STARTS.search(message.text)):
        _to_lithium(stated, second)
    if request.topic == "cable-size" and topics & CIRCUIT - {"cable-size"}:
        _no_cable_of_another(stated, message)


def _one_kind(stated: dict[str, Known], second: dict[str, Known], span: Span, message: Message) -> None:
    """Leaves the kind that the question itself names: "AGM comes out, lithium goes in. May the lithium lie down?"."""
    told = [item for held in (stated, second) if (item := held.get(KIND)) is not None]
    inside = [item for item in told if any(message.says(cue, span) for cue in _cues_of(item))]
    apart = [item for item in told if item.span and ONLY_FOR.search(message.text[: item.span[0]])]
    if len(apart) == 1:  # "must the AGM be aired, or is that only for wet ones"
        inside = [item for item in told if item is not apart[0]]
    if len(told) > 1 and len(inside) == 1 and not SAME_OF.search(message.text, span[0]):
        stated[KIND] = inside[0]
        second.pop(KIND)


def _to_lithium(stated: dict[str, Known], second: dict[str, Known]) -> None:
    """Leaves the lithium: "AGM or lithium, and can the old charger stay?" asks of the kind that wants another one."""
    told = [item for held in (stated, second) if (item := held.get(KIND)) is not None]
    if len(told) > 1 and sum(item.value in LITHIUM for item in told) == 1:
        stated[KIND] = replace(next(item for item in told if item.value in LITHIUM), of=1)
        second.pop(KIND)


def _no_cable_of_another(stated: dict[str, Known], message: Message) -> None:
    """Leaves out a cable that only a later question names: "what size do I need, and how much would 50 mm2 lose?"."""
    sized = min((cue.span[0] for cue in message.cues if cue.name in SIZED), default=None)
    if sized is None or longest_run.asked(message.text, set(stated)):
        return
    later = [clause.span for clause in message.clauses if clause.asks and clause.span[0] > sized]
    if cut := AND_ASKS.search(message.text, sized):
        end = next((clause.span[1] for clause in message.clauses if clause.span[1] > cut.end()), len(message.text))
        later.append((cut.start(), end))
    for fact in ("cable.area", "cable.gauge"):
        item = stated.get(fact)
        if item and any(_within(item, span) for span in later):
            stated.pop(fact)


def _cues_of(kind: Known) -> tuple[str, ...]:
    """The cues that name a kind of battery."""
    return (f"detail:kind_{kind.value}", *(("detail:lithium",) if kind.value in LITHIUM else ()))


def _own_terms(case: Case, span: Span, message: Message) -> frozenset[str]:
    """The cues without the terms that only another question names: "800 MCA in CCA? And what is a BMS?"."""
    listed = MEAN.match(message.text, span[0])  # "what is absorption and float mean" asks of both
    span = (span[0], max(span[1], listed.end() if listed else 0))
    terms = {cue.name: message.says(cue.name, span) for cue in message.cues if cue.name.startswith(TERM)}
    gone = {name for name, here in terms.items() if not here} if any(terms.values()) else set()
    return frozenset(case.cues) - gone


def _without_others(case: Case, names: Iterable[str], others: list[Span], message: Message) -> frozenset[str]:
    """The cues without those of `names` that stand in another question alone: "Cable for 90 A? And which charger?"."""
    places = [(cue.name, cue.span[0]) for cue in message.cues if cue.name in names]
    kept = {name for name, at in places if not any(start <= at < end for start, end in others)}
    return frozenset(case.cues) - ({name for name, _ in places} - kept)


def _own_cues(case: Case, request: Request, others: list[Span], message: Message) -> frozenset[str]:
    """The cues that this question may go by: of a term its own, of a circuit no charger of another question."""
    if request.topic == MEANING and others:
        return _own_terms(case, request.span, message)
    if request.topic in CIRCUIT and "charger.current" in case.stated and not LOADED & set(case.stated):
        return frozenset(case.cues)  # the charger's own circuit, wherever it is named
    names = CHARGES if request.topic in CIRCUIT or request.topic == "mounting" else SHARED.get(request.topic, ())
    return _without_others(case, names, others, message) if names else frozenset(case.cues)


def _without(held: Mapping[str, Known], starts: tuple[str, ...]) -> dict[str, Known]:
    """The facts without those whose names begin so; lithium stays, as its limits are no matter of CCA."""
    lithium = {name: item for name, item in held.items() if name == KIND and item.value in LITHIUM}
    return lithium | {name: item for name, item in held.items() if not name.startswith(starts)}


def _quoted_as_cold(case: Case) -> bool:
    """Whether CCA is only what cranking amps were held against: "is 800 MCA the same as 800 CCA, and will it do"."""
    warm, cold = (case.stated.get(fact) for fact in ("battery.ca", "battery.cca"))
    return warm is not None and cold is not None and warm.value == cold.value


def _changed(case: Case, stated: Mapping[str, Known], second: Mapping[str, Known]) -> bool:
    return stated != dict(case.stated) or second != dict(case.second)


def _kept(told: list[Known], span: Span, others: list[Span], text: str) -> list[Known] | None:
    """The value of this question, none where only another one has any; None where nothing tells them apart."""
    told = [item for item in told if item.span is not None]
    inside = [item for item in told if _within(item, span)]
    supposed = [item for item in inside if item.span and is_supposed(text, item.span)]
    if len(inside) == 1 or len(supposed) == 1:
        return supposed or inside
    if inside or not others:
        return None
    free = [item for item in told if not any(_within(item, other) for other in others)]
    if len(free) == 1:
        return free
    alone = len(told) == 1 and not free and told[0].span and is_supposed(text, told[0].span)
    return [] if alone and not POINTS_BACK.search(text, *span) else None


def _is_asked(item: Known, message: Message) -> bool:
    return any(clause.asks and _within(item, clause.span) for clause in message.clauses)


def _within(item: Known, span: Span) -> bool:
    return item.span is not None and span[0] <= item.span[0] < span[1]
