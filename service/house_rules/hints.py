"""Where a sound house file is laxer than our sources: found by asking the desk, so the check says what answers will."""

from __future__ import annotations

from collections.abc import Iterator

from service.answering import answer_of
from service.case import Case, Known, Value
from service.house import ALL, KINDS, House, Model, Policy
from service.house_rules.limits import BOUNDS
from service.reply import HOUSE_RULES
from service.topics import names

Asked = tuple[str, dict[str, Value]]  # topic, facts
PLAIN: dict[str, Value] = {"battery.capacity": 100.0, "reading.load_voltage": 10.0, "reading.current": 200.0}


def hints(house: House) -> Iterator[str]:
    """What answers under this house will say of its own values that are laxer than a source, each once."""
    asked = [item for model in house.models.values() for item in _of_the_model(model)]
    asked += [item for rule in house.policies for item in _of_a_rule(house, rule)]
    seen: set[str] = set()
    for topic, facts in asked:
        stated = {name: Known(name, value, "message") for name, value in facts.items()}
        for step in answer_of(topic, Case(stated, house), _passed_over).working:
            if HOUSE_RULES in step.cites and len(step.cites) > 1 and step.say not in seen:
                seen.add(step.say)
                yield step.say.replace("\u00a0", " ")


def _passed_over(topic: str, error: Exception) -> None:
    """A topic that fails has no hint to give."""


def _of_the_model(model: Model) -> Iterator[Asked]:
    named: dict[str, Value] = {"load.model": model.name}
    yield "bank-size", named | {"battery.chemistry": "lead"}
    for row in model.cables:
        yield "cable-size", named | {"cable.length": row.up_to}
        yield "fuse-size", named | {"cable.gauge": row.gauge}


def _of_a_rule(house: House, rule: Policy) -> Iterator[Asked]:
    """The questions that show the figures which a rule holds to a value."""
    if not any(name in BOUNDS for name in (*rule.least, *rule.most)):
        return
    topics = names() if ALL in rule.topics else rule.topics
    models = [model.name for model in house.models.values() if model.name.lower() in rule.models]
    for topic in topics:
        for model in models or [""]:
            for kind in rule.chemistries or KINDS:
                named: dict[str, Value] = {"load.model": model} if model else {}
                yield topic, named | PLAIN | {"battery.chemistry": kind}
