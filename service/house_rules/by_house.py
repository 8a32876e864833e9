"""The one place where the house's own rules meet an answer: the stricter stands, and every surface shows the rule.

A topic answers by its method; what the house allows, asks for and says of it is laid over that here.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from service import say
from service.case import Case, Known, Value
from service.house import ALL, LEAD, House, Model, Policy
from service.house_rules.laxer import laxer
from service.house_rules.limits import tightened
from service.reply import CONTACT, HOUSE_RULES, Answer, Asked, Figure, Option, Step, strictness
from service.topic import Lever, Topic

JUDGED = ("run-check", "bank-size", "run-time", "battery-duty")  # they judge or name a battery for a load
CONCERNED = (*JUDGED, "battery-type", "replacement", "bank-wiring", "weight", "group-size")
OPENING = {"marginal": "Only just", "needs-facts": "Not yet", "no": "No"}
PREFERRED = ("agm", "flooded", "gel", "lfp")  # where the house leaves one to be proposed, as battery-type has it
WORDS = {"lithium": "lfp", "agm": "agm", "gel": "gel", "wet-cell": "flooded", "lead": "lead"}
SUMMED = {"battery.cca": "bank.cca", "battery.capacity": "bank.capacity"}  # in parallel they add up
PER_12_VOLTS = ("charger.voltage", "reading.voltage", "reading.load_voltage", "reading.load_voltage_at_load")
SMALL = re.compile(r"(?:We|On|For|The|Our|A|An|Use|Only|With|In|At|No|Please|It|This|Each|Every)\b")
NEAR = 1e-6
ADVERT = "detail:advert"


def answered(topic: Topic, case: Case) -> Answer:
    """The topic's own answer, as far as the house's rules leave it."""
    house = case.house
    if house is None or not house.policies:
        return topic.answer(case)
    fair = _fair(topic.name, case, house)
    found = topic.answer(fair)
    if fair is not case:
        case.used.update(fair.used)
        case.follow(fair)
        if case.second and not found.compare:
            found = replace(found, compare=topic.answer(case.fresh()).compare)
    return _held(topic, case, _sides(topic.name, case, found))


def notes(topic: Topic, case: Case, answer: Answer) -> Iterator[Step]:
    """What the house adds in words: its rules, where it is laxer than a source, whom to ring, its disclaimer."""
    house = case.house
    if house is None or case.says(ADVERT):
        return
    said = dict.fromkeys(item.say for item in house.policies if _told(item, topic.name, case, answer))
    places = {item.say: item.place for item in reversed(house.policies)}
    yield from (Step(text, (f"{HOUSE_RULES}@{places[text]}",)) for text in said)
    if answer.verdict == "stop":
        return
    yield from laxer(topic.name, case, answer, [item for item in house.policies if _fits(item, topic.name, case)])
    yield from _contact(house, answer)
    if (text := str(house.words.get("disclaimer", ""))) and answer.topic not in ("other-desk", "unclear"):
        yield Step(text, (f"{HOUSE_RULES}@disclaimer",))


def levers(topic: Topic, case: Case) -> tuple[Lever, ...]:
    """The topic's levers; where only the house's rules stand against a yes, the changes that would meet these."""
    if case.house is None or not any(True for _ in _binding(topic.name, case)):
        return topic.levers
    by_figures = topic.answer(case.fresh()).verdict
    found = [] if by_figures in ("yes", "information") else list(topic.levers)
    for item in _binding(topic.name, case):
        for bounds, word in ((item.least, "more"), (item.most, "less")):
            unmet = {fact: limit for fact, limit in bounds.items() if "." in fact and _unmet(case, item, fact)}
            found += [_lever(fact, limit, word) for fact, limit in unmet.items()]
    kinds = _kinds_left(topic.name, case)
    if kinds and case.said("battery.chemistry") not in kinds:
        found.append(Lever("battery.chemistry", lambda _: kinds, _kind_in_words))
    return tuple(found)


def _lever(fact: str, limit: float, word: str) -> Lever:
    return Lever(fact, lambda _: (limit,), f"{{value}} or {word}")


def _kind_in_words(case: Case, kind: Value) -> str:
    name = say.CHEMISTRY[str(kind)]
    return f"{'an' if name == 'AGM' else 'a'} {name} battery"


# What a rule goes with


def _model(name: str, case: Case) -> Model | None:
    """The house's model that the question is about; one of an earlier turn where the topic goes by it."""
    known = case.stated.get("load.model")
    current = known and (known.origin == "message" or name in JUDGED or ("load.model", 1) in case.used)
    return case.house.model(known.value) if known and current else None


def _kinds(case: Case) -> set[str]:
    """The kind of the battery that is judged: as stated, else as it was taken."""
    known = case.stated.get("battery.chemistry") or case.used.get(("battery.chemistry", 1))
    return {str(known.value)} if known else set()


def _fits(rule: Policy, name: str, case: Case, *, whatever_kind: bool = False) -> bool:
    topics = rule.topics or CONCERNED
    if name not in topics and ALL not in topics:
        return False
    model = _model(name, case) if rule.models else None
    if rule.models and (model is None or model.name.lower() not in rule.models):
        return False
    return whatever_kind or not rule.chemistries or bool(_kinds(case) & set(rule.chemistries))


def _binding(name: str, case: Case) -> Iterator[Policy]:
    """The rules that may lower the verdict here, not only be told."""
    for item in case.house.policies if case.house else ():
        binds = item.verdict or item.adviser or item.least or item.most
        if binds and (item.topics or name in JUDGED) and _fits(item, name, case):
            yield item


def _told(rule: Policy, name: str, case: Case, answer: Answer) -> bool:
    """Whether a rule is told with an answer: it fits, or a kind that the answer weighs is its kind."""
    if answer.verdict == "stop" and name not in rule.topics:
        return False  # first actions stand alone
    if _fits(rule, name, case):
        return True
    weighed = {_kind_of(item) for item in answer.compare}
    return bool(weighed & set(rule.chemistries)) and _fits(rule, name, case, whatever_kind=True)


def _kind_of(option: Option) -> str:
    words = re.findall(r"[a-z-]+", option.label.lower())
    return next((kind for word, kind in WORDS.items() if word in words), "")


# What a rule makes of an answer


def _fair(name: str, case: Case, house: House) -> Case:
    """The case without a second battery that the house does not take, and with the kind it does where one is sought."""
    model = _model(name, case)
    barred = house.barred(model.name) if model else frozenset()
    if not barred or name not in JUDGED:
        return case
    kinds = [facts.get("battery.chemistry") for facts in (case.stated, case.second)]
    first, second = (str(item.value) if item else "" for item in kinds)
    if second in barred and first not in barred:
        return _without_the_second(case)
    if first in barred and second and second not in barred:
        return _without_the_second(case.others())
    left = _kinds_left(name, case)
    if name == "bank-size" and not first and "lead" in barred and left:
        taken = case.fresh()
        taken.stated = {**case.stated, "battery.chemistry": Known("battery.chemistry", left[0], "house")}
        return taken
    return case


def _without_the_second(case: Case) -> Case:
    alone = case.fresh()
    alone.second = {name: item for name, item in case.second.items() if not name.startswith("battery.")}
    return alone


def _kinds_left(name: str, case: Case) -> tuple[str, ...]:
    """The kinds that the house takes for the model; none where it bars none."""
    model = _model(name, case)
    barred = case.house.barred(model.name) if model else frozenset()
    return tuple(kind for kind in PREFERRED if kind not in barred) if barred else ()


def _sides(name: str, case: Case, answer: Answer) -> Answer:
    """The answer with the kinds that the house does not take marked among the things that are weighed."""
    model = _model(name, case)
    barred = case.house.barred(model.name) if model else frozenset()
    if not answer.compare or not barred or name not in CONCERNED:
        return answer
    lead_is_open = not set(LEAD) <= barred
    gone = barred - {"lead"} if lead_is_open else barred
    sides = (replace(item, verdict="no") if _kind_of(item) in gone else item for item in answer.compare)
    return replace(answer, compare=tuple(sides))


def _held(topic: Topic, case: Case, answer: Answer) -> Answer:
    """The answer under the strictest of the rules that bind it."""
    if answer.verdict == "stop":
        return answer
    best, bare = ("", ""), answer
    asks: list[Asked] = []
    for rule in _binding(topic.name, case):
        verdict = _verdict(rule, case, bare)
        if verdict and (not best[0] or strictness(verdict) > strictness(best[0])):
            best = verdict, f"{OPENING[verdict]}: {_small(rule.say)}"
        if verdict == "needs-facts":
            asks += [item for item in _asks(topic, case, rule) if item.fact not in {each.fact for each in asks}]
        if rule.adviser and "no" not in (verdict, answer.verdict):
            answer = replace(answer, route="technician")
        answer = _bounded(rule, case, answer)
    return _lowered(case, answer, *best, tuple(asks)) if best[0] else answer


def _verdict(rule: Policy, case: Case, answer: Answer) -> str:
    """The best verdict that a rule leaves, "" where it leaves the answer's own."""
    if rule.least or rule.most:
        facts, best = (*rule.least, *rule.most), rule.verdict or "no"
        if any(_unmet(case, rule, fact) for fact in facts):
            return best
        approved = answer.verdict in ("yes", "marginal") and best != "marginal"
        return "needs-facts" if approved and any(_unknown(case, fact) for fact in facts) else ""
    told = "battery.chemistry" in case.stated
    if rule.asks and answer.verdict == "information" and not told:
        return ""  # what is proposed may still be of the right kind
    return rule.verdict or ("needs-facts" if rule.adviser else "")


def _unmet(case: Case, rule: Policy, fact: str) -> bool:
    """Whether what is stated of a fact does not reach the house's least, or is over its most."""
    if "." not in fact or case.said(fact) is None:
        return False
    value = case.get(SUMMED.get(fact, fact)) or case.said(fact)
    if not isinstance(value, (int, float)) or isinstance(value, bool):
        return False
    if fact in PER_12_VOLTS:
        value = value / max(1.0, float(case.get("bank.voltage", 12.0)) / 12)
    low, high = rule.least.get(fact), rule.most.get(fact)
    return (low is not None and value < low - NEAR) or (high is not None and value > high + NEAR)


def _lowered(case: Case, answer: Answer, verdict: str, headline: str, asks: tuple[Asked, ...]) -> Answer:
    """The answer with a stricter verdict and the rule in its headline; the figures' own stays in the working."""
    if strictness(verdict) <= strictness(answer.verdict) or (verdict, answer.verdict) == ("marginal", "information"):
        return answer
    case.step(f"By the figures alone: {answer.headline}", *_sources(case))
    kept = asks if verdict == "needs-facts" else ()
    return replace(answer, verdict=verdict, headline=headline, asks=kept)  # type: ignore[arg-type]


def _asks(topic: Topic, case: Case, rule: Policy) -> Iterator[Asked]:
    """What would decide: the kind of battery, or the facts that the rule holds to a value."""
    if rule.asks:
        left = _kinds_left(topic.name, case)
        others = [("another kind of lead", kind) for kind in LEAD if kind not in left][:1]
        yield topic.ask(rule.asks, [*((say.CHEMISTRY[kind], kind) for kind in left), *others])
    for bounds, word, less in ((rule.least, "more", -1), (rule.most, "less", 1)):
        for fact, limit in bounds.items():
            if _unknown(case, fact):
                beyond = ("less", "more")[less > 0], limit * (1 + less / 10)
                yield topic.ask(fact, ((f"{say.fact(fact, limit)} or {word}", limit), beyond))


def _sources(case: Case) -> tuple[str, ...]:
    """The sources of the steps so far."""
    return tuple(dict.fromkeys(name for item in case.trace for name in item.cites))


def _unknown(case: Case, fact: str) -> bool:
    return "." in fact and case.known(fact) is None


def _bounded(rule: Policy, case: Case, answer: Answer) -> Answer:
    """The answer with its figures within the house's bounds, where these are the tighter ones."""
    volts = max(1.0, float(case.get("bank.voltage", 12.0)) / 12)
    figures = tuple(tightened(item, rule.least, rule.most, volts) for item in answer.figures)
    if figures == answer.figures:
        return answer
    if answer.verdict != "information":
        return replace(answer, figures=figures, headline=_with_figures(answer, figures))
    case.step(f"By the tables alone: {answer.headline}", *_sources(case))
    return replace(answer, figures=figures, headline=rule.say)


def _with_figures(answer: Answer, figures: tuple[Figure, ...]) -> str:
    """The headline with the figures that the house's rule changed."""
    head = answer.headline
    for before, after in zip(answer.figures, figures, strict=True):
        if before.value != after.value and not isinstance(after.value, str):
            told = rf"\b{re.escape(say.number(float(before.value)))}(?={say.NB})"
            head = re.sub(told, say.number(float(after.value)), head)
    return head


# What is said


def _small(text: str) -> str:
    """A sentence as it goes on after a colon."""
    return text[:1].lower() + text[1:] if SMALL.match(text) else text


def _contact(house: House, answer: Answer) -> Iterator[Step]:
    """Whom to ring, where a person takes over."""
    telephone, hours = (str(house.words.get(name, "")) for name in ("telephone", "hours"))
    if not telephone or (answer.route != "technician" and answer.topic != "other-desk"):
        return
    at = f", {hours}" if hours else ""
    where = f"at {telephone}" if telephone.strip("+0 -/()") else "by a reply to this message"  # no number put in yet
    yield Step(f"You reach us {where}{at}.", (f"{HOUSE_RULES}@{CONTACT}",))
