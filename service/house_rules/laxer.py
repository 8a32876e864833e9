"""Where a value of the house's is laxer than a source that an answer cites: it says so, and the stricter stands."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from service import reference, say
from service.case import Case
from service.house import Model, Policy
from service.house_rules.limits import BOUNDS, Bound
from service.reply import HOUSE_RULES, Answer, Figure, Step
from service.rules.cable import MOTOR_LIMIT, TABLE_5, K, gauges, metric_sizes

NEAR = 1e-6
WHOLE = 0.5  # A of CCA: ratings are printed whole
OWN_LOAD = ("load.current", "load.peak", "load.power")  # stated, the catalogue's table is for another current
LOAD_TEST, MARGIN = "load-test-resistance", "cfr-183-455"


def laxer(topic: str, case: Case, answer: Answer, rules: Iterable[Policy]) -> Iterator[Step]:
    """A step for each value of the house that the answer's sources are stricter than."""
    figures = {item.name: item for item in answer.figures}
    model = case.house.model(case.stated["load.model"].value) if "load.model" in case.stated else None
    if model and not any(fact in case.stated for fact in OWN_LOAD):
        yield from _of_the_model(topic, case, model, figures)
    for rule in rules:
        for way, bounds in (("least", rule.least), ("most", rule.most)):
            for name, own in bounds.items():
                if name in BOUNDS and name in figures:
                    yield from _of_a_rule(answer, figures[name], own * _times(case, BOUNDS[name]), way, rule.place)


def _of_the_model(topic: str, case: Case, model: Model, figures: dict[str, Figure]) -> Iterator[Step]:
    need, most = _number(figures.get("required_cca")), _number(figures.get("fuse_rating_high"))
    if need and 0 < model.cca < need - WHOLE:
        yield _step(
            f"Our catalogue asks for {say.cca(model.cca)} for the {model.name}, and {_named(LOAD_TEST)} for "
            f"{say.cca(math.ceil(need - NEAR))}: the higher one stands.",
            f"CCA of the {model.name}",
            LOAD_TEST,
        )
    if topic == "fuse-size" and most and model.fuse > most + NEAR:
        yield _step(
            f"Our catalogue names a {say.amps(model.fuse)} fuse for the {model.name}, and {_named(MARGIN)} allows "
            f"{say.amps(most)} at most on this cable: the lower one stands.",
            f"fuse of the {model.name}",
            MARGIN,
        )
    if model.drop and model.drop > float(MOTOR_LIMIT.value) + NEAR and topic in ("cable-size", "voltage-drop"):
        yield _step(
            f"Our catalogue lets the cable of the {model.name} lose {say.quantity(model.drop, '%')}, and "
            f"{_named(MOTOR_LIMIT.cite)} {say.quantity(float(MOTOR_LIMIT.value), '%')}: the lower one stands.",
            f"loss of the {model.name}",
            MOTOR_LIMIT.cite,
        )
    if topic == "cable-size" and case.said("cable.drop") is None:
        yield from _cable(case, model, figures)


def _cable(case: Case, model: Model, figures: dict[str, Figure]) -> Iterator[Step]:
    """The catalogue's row for this length against the size that the formula and the table of ampacities give."""
    length = case.said("cable.length")
    row = next((run for run in model.cables if length is not None and length <= run.up_to), None)
    if row is None or "gauge" not in figures or "area" not in figures:
        return
    sizes = {size.name: size.area for size in (*gauges(), *metric_sizes())}
    gauge, area = str(figures["gauge"].value), _number(figures["area"]) or 0.0
    thin = [say.gauge(row.gauge)] if sizes[row.gauge] < sizes[gauge] - NEAR else []
    thin += [say.quantity(row.area, "mm2")] if row.area < area - NEAR else []
    if thin:
        fit = f"{say.gauge(gauge)} or {say.quantity(area, 'mm2')}"
        yield _step(
            f"Our catalogue names {' or '.join(thin)} for the {model.name} up to {say.quantity(row.up_to, 'm')}, and "
            f"the cited formula and table ask for {fit}: the thicker one stands.",
            f"cables of the {model.name}",
            K.cite,
            TABLE_5,
        )


def _of_a_rule(answer: Answer, figure: Figure, own: float, way: str, place: str) -> Iterator[Step]:
    """A bound of a rule against the figure, which already stands within every bound that is stricter."""
    low, high = (figure.value if end is None else end for end in (figure.low, figure.high))
    assert isinstance(low, (int, float))
    assert isinstance(high, (int, float))
    if (own >= low - NEAR if way == "least" else own <= high + NEAR) and low - NEAR <= own <= high + NEAR:
        return
    bound = BOUNDS[figure.name]
    source = _cited(answer, bound)
    span = say.between(low, high, bound.unit) if high > low + NEAR else say.quantity(high, bound.unit)
    whose = _named(source) if source else "the table that we cite"
    named = f"\u201c{figure.label.partition(' (')[0]}\u201d"
    yield _step(
        f"Our own rule has {say.quantity(own, bound.unit)} at {way} for {named}, and {whose} {span}: the stricter "
        "stands.",
        place,
        *([source] if source else []),
    )


def _cited(answer: Answer, bound: Bound) -> str:
    known = {item.id for item in answer.cites}
    return next((name for name in bound.sources if name in known), "")


def _named(cite: str) -> str:
    """A source in a sentence: a standard by its publisher and clause, another by its title."""
    entry = reference.sources()[cite.partition("@")[0]]
    if entry["kind"] == "standard":
        return f"{entry['publisher']}, {cite.partition('@')[2] or entry['locator']},"
    return f"our source ({entry['title'].partition(':')[0]}; {entry['kind'].replace('-', ' ')})"


def _times(case: Case, bound: Bound) -> float:
    return max(1.0, float(case.get("bank.voltage", 12.0)) / 12) if bound.per_12_volts else 1.0


def _number(figure: Figure | None) -> float | None:
    return float(figure.value) if figure and isinstance(figure.value, (int, float)) else None


def _step(text: str, place: str, *sources: str) -> Step:
    return Step(text, (f"{HOUSE_RULES}@{place}", *sources))
