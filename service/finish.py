"""Completes a topic's bare answer: its working, sources, facts, ranges, likely replies and what would change it.

All of it comes from running the topic's own method again on the same case with other facts, and from the trace of
what really fired; there is no second set of formulas.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from service import reference, say
from service.case import Case, Known
from service.cautions import cautions
from service.house_rules.by_house import answered, notes
from service.judgements import catalogue_volts
from service.judgements.at_once import MORE, merged
from service.judgements.joining import as_joined, each_alone, one_bank, rated_alone
from service.judgements.timed_load import its_load
from service.kinds import says_iron
from service.least_change import BETTER, all_changes
from service.reply import (
    HOUSE_RULES,
    Answer,
    Asked,
    Assumed,
    Choice,
    Cite,
    Figure,
    Option,
    Step,
    Understood,
    strictest,
    strictness,
)
from service.routing.told_beside import SAME_OF
from service.topic import Topic
from service.turns.no_idea import helped, not_told
from service.wording.both import LONGEST_HEADLINE, of_both
from service.wording.own_words import rewritten, worded

UNVOUCHED = ("hazard", "other-desk", "unclear", "meaning")  # topics that judge no installation
VOUCH = "We cannot write that an installation is safe or meets a standard: a surveyor or marine electrician does that"


def finished(topic: Topic, case: Case) -> Answer:
    """The whole answer of a topic to a case."""
    case = its_load(topic.name, as_joined(case))
    case = one_bank(topic.name, rated_alone(topic.name, each_alone(topic.name, merged(topic.name, case))))
    if case.says("detail:vouch") and topic.name not in UNVOUCHED:
        case.because(VOUCH, "desk-scope")
    first = all_told(topic, case) or catalogue_volts.asked_back(topic, case)
    bare = helped(topic, case, first or answered(topic, case))
    if VOUCH in [item.say for item in case.trace] and bare.headline.startswith("Yes: "):
        bare = replace(bare, headline=f"As far as figures go, yes: {bare.headline.removeprefix('Yes: ')}")
    ranged = either(topic, case, weighed(topic, case, with_ranges(topic, case, bare)))
    stated, assumed = _facts(case)
    told = (of_the_load(case, not_told(case, item)) for item in ranged.asks)
    asks = tuple(replace(item, replies=tuple(_outcomes(topic, case, item))) for item in told)
    changes = tuple(all_changes(topic, case, bare)) if bare.verdict in BETTER and not bare.would_change else ()
    whole = replace(
        ranged,
        working=ranged.working or tuple(steps(case)),
        cites=ranged.cites or tuple(cited(case, (name for item in case.trace for name in item.cites))),
        asks=asks,
        understood=stated,
        assumed=(*ranged.assumed, *assumed),
        would_change=ranged.would_change or changes,
    )
    whole = replace(whole, cautions=whole.cautions or tuple(cautions(topic, case, whole)))
    whole = rewritten(by_the_house(topic, case, whole), say.with_articles)
    return worded(whole, case.house.wording if case.house else {})


def of_the_load(case: Case, asked: Asked) -> Asked:
    """A question as it is put for a load that is no thruster: a fridge has a plate and a manual as well."""
    if not asked.fact.startswith("load.") or case.said("load.kind") in (None, "thruster"):
        return asked
    say, where = (text.replace("the thruster", "the load") for text in (asked.say, asked.where))
    return replace(asked, say=say, where=where)


def all_told(topic: Topic, case: Case) -> Answer | None:
    """What asks back where three loads or more run together, of which a case holds two; else None."""
    if not case.says(MORE) or "load.current" not in case.stated or case.stated["load.current"].stated:
        return None
    head = "We can't say yet: please add up the amps of all that runs at the same time, and tell us the sum."
    return topic.needs("load.current", headline=head)


def by_the_house(topic: Topic, case: Case, whole: Answer) -> Answer:
    """The answer with what the house adds in words, cited as the house's."""
    added = tuple(notes(topic, case, whole))
    if not added:
        return whole
    named = {item.id for item in whole.cites}
    fresh = tuple(item for item in cited(case, (name for step in added for name in step.cites)) if item.id not in named)
    plain = (Step(step.say, tuple(_ids(step.cites))) for step in added)
    return replace(whole, working=(*whole.working, *plain), cites=(*whole.cites, *fresh))


SOONEST = ("cause", "derived", "assumed")


def steps(case: Case) -> Iterator[Step]:
    """The steps that were taken: why it is so, the sums, what was assumed, and last what the catalogue says."""
    for kind in SOONEST:
        yield from (Step(item.say, tuple(_ids(item.cites))) for item in case.trace if item.kind == kind)
    catalogue: dict[str, list[str]] = {}
    for item in case.trace:
        if item.kind == "house":
            model, _, piece = item.say.partition(": ")
            catalogue.setdefault(model, []).append(piece)
    for model, pieces in catalogue.items():
        yield Step(f"The catalogue says of the {model}: {say.listed(pieces)}", ("house",))


def with_ranges(topic: Topic, case: Case, answer: Answer) -> Answer:
    """The answer with low and high on each figure that follows from a fact stated as a range."""
    ranged = [item for item in case.used.values() if item.low is not None and item.high is not None]
    if not ranged or not answer.figures:
        return answer
    ends = [
        answered(topic, case.supposing({item.fact: end for item in ranged for end in [getattr(item, side)]}))
        for side in ("low", "high")
    ]
    return replace(answer, figures=tuple(_ranged(figure, ends) for figure in answer.figures))


OF_A_READING = {"reading.state"}  # of one battery at two times: read at rest, then "how long must it be on charge"
WHICH, ABOUT = "put:choice", "put:about"  # "which of them"; "and what if it was a wet one"


def weighed(topic: Topic, case: Case, answer: Answer) -> Answer:
    """The answer for two batteries, loads or cables side by side, where the message tells of two."""
    told = [fact for fact in case.second if (fact, 1) in case.used and fact in case.stated]
    if not topic.of_two or not set(told) - OF_A_READING or answer.compare:
        return answer
    other = case.others()
    second = with_ranges(topic, other, answered(topic, other))
    case.used.update({key: item for key, item in other.used.items() if item.of == 2})
    apart = [item for item in other.used.values() if item.origin == "assumed" and item not in case.used.values()]
    case.used.update({(item.fact, 2): replace(item, of=2) for item in apart})
    case.trace.extend(item for item in other.trace if item not in case.trace)
    labels = [_label(told, facts) for facts in (case.stated, case.second)]
    both = (answer, second)
    sides = tuple(Option(label, item.verdict, item.figures) for label, item in zip(labels, both, strict=True))
    pick = min if topic.of_two == "best" else max
    leading = pick(both, key=lambda item: (strictness(item.verdict), bool(item.figures) == (pick is max)))
    about = case.says(ABOUT) or SAME_OF.search(case.text) is not None
    head = of_both(labels, both, leading, case.says(WHICH), about)
    return replace(leading, headline=head, compare=sides)


CHOSEN = (  # what one buys: "20 A or 40 A" is a choice between two, not a value that is not known well
    "battery.ca",
    "battery.capacity",
    "battery.cca",
    "battery.max_current",
    "cable.area",
    "charger.current",
    "fuse.rating",
    "solar.power",
)


def either(topic: Topic, case: Case, answer: Answer) -> Answer:
    """Two sizes put as a choice ("800 CCA or 1000 CCA") side by side; the verdict stays that of the safe one."""
    put = [item for item in case.used.values() if item.fact in CHOSEN and item.of == 1 and _is_choice(item)]
    if answer.compare or not answer.figures or len(put) != 1:
        return answer
    fact = put[0].fact
    ends = [end for end in (put[0].low, put[0].high) if end is not None]
    cases = [case.supposing({fact: end}) for end in ends]
    both = [answered(topic, one) for one in cases]
    case.trace.extend(item for one in cases for item in one.trace if item not in case.trace)
    labels = [say.cca(end) if fact == "battery.cca" else say.fact(fact, end) for end in ends]
    sides = tuple(Option(label, item.verdict, item.figures) for label, item in zip(labels, both, strict=True))
    other = next((side for side in sides if side.verdict != answer.verdict and side.verdict in say.VERDICT), None)
    head = answer.headline.removesuffix(".")
    head = f"{head}; {other.label}: {say.VERDICT[other.verdict]}." if other else answer.headline
    short = head if len(head.replace(say.NB, " ").split()) <= LONGEST_HEADLINE else answer.headline
    return replace(answer, headline=short, compare=sides)


def _is_choice(item: Known) -> bool:
    return item.low is not None and item.high is not None and " or " in item.text.lower()


def _label(told: list[str], facts: Mapping[str, Known]) -> str:
    """One of two things by what tells it from the other: "100 Ah AGM", "AGM of 5 years"."""
    words = [say.fact(fact, facts[fact].value) for fact in told if fact not in ("battery.age", "battery.count")]
    if "battery.count" in told and words:
        words.insert(0, f"{say.number(float(facts['battery.count'].value))}{say.NB}x")
    aged = [say.fact(fact, facts[fact].value) for fact in told if fact == "battery.age"]
    return " of ".join(part for part in (" ".join(words) or "one" * bool(aged), *aged) if part)


def _ranged(figure: Figure, ends: Iterable[Answer]) -> Figure:
    values = [
        bound
        for answer in ends
        for other in answer.figures
        if other.name == figure.name
        for bound in (other.low, other.value, other.high)
        if isinstance(bound, (int, float))
    ]
    if not isinstance(figure.value, (int, float)) or not values:
        return figure
    low, high = min(*values, figure.value), max(*values, figure.value)
    return replace(figure, low=low, high=high) if high - low > 1e-9 * abs(high) else figure


def _outcomes(topic: Topic, case: Case, asked: Asked) -> Iterator[Choice]:
    for choice in asked.replies:
        if choice.value is None or choice.then:
            yield choice
            continue
        supposed = {asked.fact: choice.value}
        told = [answered(topic, one.supposing(supposed)).verdict for one in (case, *_others(topic, case))]
        yield replace(choice, unit=choice.unit or say.symbol(asked.fact), then=strictest(*told))


def _others(topic: Topic, case: Case) -> tuple[Case, ...]:
    """The second of two things that are weighed: a reply counts for both."""
    return (case.others(),) if topic.of_two and any((fact, 1) in case.used for fact in case.second) else ()


def _facts(case: Case) -> tuple[tuple[Understood, ...], tuple[Assumed, ...]]:
    stated = tuple(understood(item) for item in case.used.values() if item.stated or item.origin == "house")
    assumed = [
        Assumed(item.fact, item.value, item.unit or say.symbol(item.fact), item.why)
        for item in case.used.values()
        if item.origin == "assumed"
    ]
    kind = case.used.get(("battery.chemistry", 1))
    if kind and kind.value == "lfp" and kind.stated and not says_iron(kind.text):
        assumed.append(Assumed("battery.chemistry", "lfp", "", "lithium taken as lithium iron phosphate, 12.8 V"))
    return stated, tuple(assumed)


def understood(item: Known) -> Understood:
    """A known fact as the JSON shows it."""
    origin = item.origin if item.origin in ("message", "thread", "house") else "message"
    unit = item.unit or say.symbol(item.fact)
    span = item.span if origin == "message" else None
    return Understood(item.fact, item.value, unit, item.text, span, origin, item.of, item.low, item.high)


def cited(case: Case, names: Iterable[str]) -> Iterator[Cite]:
    """The sources of these ids ("id" or "id@locator"), each once, all its places in one locator."""
    places: dict[str, list[str]] = {}
    for name in names:
        source, _, locator = name.partition("@")
        known = places.setdefault(source, [])
        if locator and locator not in known:
            known.append(locator)
    for source, locators in places.items():
        if source in ("house", HOUSE_RULES):
            yield _house(case, source, locators)
            continue
        entry = reference.sources()[source]
        place = "; ".join(locators) or entry["locator"]
        if remembered := reference.from_memory(source):
            place = f"{place} ({remembered})"
        yield Cite(source, entry["title"], entry["publisher"], entry["edition"], place, entry["kind"])


def _house(case: Case, source: str, locators: list[str]) -> Cite:
    model = case.house.model(case.get("load.model", "")) if case.house else None
    place = ", ".join(locators) or (model.name if model else "house rules")
    maker = case.house.name if case.house else "the house"
    title = f"{maker} {'house rules' if source == HOUSE_RULES else 'catalogue'}"
    return Cite(source, title, maker, "house file", place, "house")


def _ids(names: Iterable[str]) -> Iterator[str]:
    return iter(dict.fromkeys(name.partition("@")[0] for name in names))
