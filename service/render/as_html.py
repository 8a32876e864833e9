"""A reply's JSON as the page needs it: words, marks and texts for each part. The markup is in the templates."""
from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from service import say
from service.render.as_text import MOST_CAUTIONS, THEN, places, shown
from service.reply import Figure

BANDS = {
    "yes": ("Fine", "yes"),
    "marginal": ("Only just", "marginal"),
    "no": ("Won’t do", "no"),
    "needs-facts": ("One fact short", "needs"),
    "information": ("For reference", "info"),
    "stop": ("Stop", "stop"),
}
PASSED = {"unclear": "For a person", "other-desk": "Another desk"}
FROM = {"message": "You said", "thread": "Said before", "house": "Our catalogue says"}
COUNTED = {1: "One fact short", 2: "Two facts short", 3: "Three facts short"}


def views(reply: Mapping[str, Any]) -> list[dict[str, Any]]:
    """One view for each answer of a reply, given as the contract's JSON."""
    return [view(answer) for answer in reply["answers"]]


def view(answer: Mapping[str, Any]) -> dict[str, Any]:
    """What the page shows of one answer."""
    word, band = BANDS[answer["verdict"]]
    if answer["topic"] in PASSED:
        word, band = PASSED[answer["topic"]], "passed"
    elif answer["verdict"] == "needs-facts":
        word = COUNTED.get(len(answer["asks"]), "Some facts short") if answer["asks"] else "For a person"
    figures = [_figure(item) for item in answer["figures"]]
    return {
        **answer,
        "word": word,
        "band": band,
        "headline": _joined(answer["headline"]),
        "figures": figures,
        "first_cautions": answer["cautions"][:MOST_CAUTIONS],
        "more_cautions": answer["cautions"][MOST_CAUTIONS:],
        "facts": list(_facts(answer)),
        "do": [item["say"] for item in answer["steps"] if item["kind"] == "do"],
        "do_not": [item["say"] for item in answer["steps"] if item["kind"] == "do-not"],
        "who": [item["say"] for item in answer["steps"] if item["kind"] == "who"],
        "asks": [_asked(item) for item in answer["asks"]],
        "numbers": {cite["id"]: number for number, cite in enumerate(answer["cites"], 1)},
        "compare": [{**item, "figures": [_figure(part) for part in item["figures"]]} for item in answer["compare"]],
    }


def _figure(item: Mapping[str, Any]) -> dict[str, Any]:
    figure = Figure(**item)
    low, high = figure.low, figure.high
    ends = say.between(low, high, figure.unit, places(figure)) if low is not None and high is not None else ""
    text = say.fact(figure.name, figure.value) if isinstance(figure.value, (str, bool)) else shown(figure)
    return {"label": figure.label, "text": text, "range": ends, "name": figure.name}


def _facts(answer: Mapping[str, Any]) -> Iterator[tuple[str, list[dict[str, Any]]]]:
    groups: dict[str, list[dict[str, Any]]] = {}
    for item in answer["understood"]:
        groups.setdefault(FROM[item["from"]], []).append(_tag(item))
    for item in answer["assumed"]:
        groups.setdefault("We assume", []).append({**_tag(item), "guess": True, "why": item["why"]})
    yield from groups.items()


def _tag(item: Mapping[str, Any]) -> dict[str, Any]:
    from grammar.facts import facts

    spec = facts().get(item["fact"])
    return {
        "fact": item["fact"],
        "text": say.fact(item["fact"], item["value"]),
        "label": spec.label if spec else item["fact"],
        "value": say.significant(item["value"], 6) if isinstance(item["value"], float) else item["value"],
        "unit": say.SHOWN.get(item["unit"], item["unit"]),
        "values": [(value, say.fact(item["fact"], value)) for value in spec.values] if spec else [],
        "kind": spec.kind if spec else "text",
        "of": item.get("of", 1),
        "guess": False,
        "why": "",
    }


def _asked(item: Mapping[str, Any]) -> dict[str, Any]:
    from grammar.facts import facts

    spec = facts()[item["fact"]]
    replies = [
        {**reply, "then": "" if reply["then"] == "information" else THEN.get(reply["then"], reply["then"])}
        for reply in item["replies"]
    ]
    shown = {"label": spec.label, "unit": say.symbol(item["fact"]), "kind": spec.kind}
    return {**item, **shown, "replies": replies, "values": [(value, say.fact(item["fact"], value)) for value in spec.values]}


def _joined(text: str) -> str:
    """Numbers and their units on one line."""
    import re

    units = "|".join((*say.SHOWN.values(), "V", "A", "Ah", "Wh", "W", "%", "CCA", "kg", "m", "ft", "AWG", "min", "mm"))
    return re.sub(rf"(?<=\d) (?=(?:{units})\b|%|°)", say.NB, text)
