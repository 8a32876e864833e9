"""A reply's JSON as the page needs it: words, marks and texts for each part. The markup is in the templates."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from grammar.text.patterns import regex
from service import say
from service.render.as_text import MOST_CAUTIONS, words
from service.render.fields import field, tag
from service.render.figures import places, shown
from service.render.outcomes import outcomes
from service.render.units import american
from service.reply import HOUSE_RULES, Figure

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
ASSUMED = "We assume"
COUNTED = {1: "One fact short", 2: "Two facts short", 3: "Three facts short"}
DECIDES = {  # the figure that the verdict hangs on, where it is not the first; of several names those present
    "run-check": ("terminal_voltage_at_inrush", "voltage_at_load", "limit_current"),
    "bank-size": ("required_cca", "required_limit_current", "required_capacity"),
    "load-voltage": ("lowest_acceptable_voltage",),
    "voltage-drop": ("drop_percent",),
    "cable-size": ("gauge", "area"),
    "charger-size": ("charger_current_low", "charger_current_high"),
    "charger-setting": ("absorption_voltage",),
}
OWN = {  # the customer's own value that is held against a figure
    "required_cca": "battery.cca",
    "required_capacity": "battery.capacity",
    "required_limit_current": "battery.max_current",
    "required_peak_current": "battery.peak_current",
    "lowest_acceptable_voltage": "reading.load_voltage",
    "fuse_rating": "fuse.rating",
    "charger_current_low": "charger.current",
    "charger_outputs": "charger.outputs",
    "required_power": "solar.power",
}
UNITS = "|".join((*say.SHOWN.values(), "V", "A", "Ah", "Wh", "W", "kW", "kg", "CCA", "m", "ft", "AWG", "min", "mm"))
LOOSE = regex(rf"(?<=\d) (?=(?:{UNITS})\b|%|°)")


def views(reply: Mapping[str, Any], models: Sequence[str] = ()) -> list[dict[str, Any]]:
    """One view for each answer of a reply's JSON; a caution stands with the first that has it."""
    said: set[str] = set()
    found = []
    for answer in reply["answers"]:
        fresh = [item for item in answer["cautions"] if item["id"] not in said]
        working = [item for item in answer["working"] if not (_of_the_house(item) and item["say"] in said)]
        said.update(item["id"] for item in fresh)
        said.update(item["say"] for item in working if _of_the_house(item))
        found.append(view({**answer, "cautions": fresh, "working": working}, models))
    return found


def _of_the_house(step: Mapping[str, Any]) -> bool:
    return HOUSE_RULES in step["cites"]


def _steps(answer: Mapping[str, Any], *, house: bool) -> list[dict[str, Any]]:
    """The steps of the working, or what the house adds in words, but for what the headline says already."""
    headline = words(answer["headline"])
    steps = [item for item in answer["working"] if _of_the_house(item) is house]
    fresh = [item for item in steps if not house or not words(item["say"]) <= headline]
    return [{**item, "say": joined(item["say"])} for item in fresh]


def view(answer: Mapping[str, Any], models: Sequence[str] = ()) -> dict[str, Any]:
    """What the page shows of one answer."""
    word, band = _band(answer)
    compare, sides = [_option(item) for item in answer["compare"]], answer["compare"]
    figures = [] if any(item["figures"] for item in sides) else list(_figures(answer))
    return {
        **answer,
        "word": word,
        "band": band,
        "headline": joined(answer["headline"]),
        "figures": figures,
        "two_systems": any(item["us"] for item in figures),
        "first_cautions": [joined(item["say"]) for item in answer["cautions"][:MOST_CAUTIONS]],
        "more_cautions": [joined(item["say"]) for item in answer["cautions"][MOST_CAUTIONS:]],
        "working": _steps(answer, house=False),
        "notes": _steps(answer, house=True),
        "facts": list(_facts(answer, models)),
        "would_change": [_change(item) for item in answer["would_change"]],
        **{name: list(_acts(answer, kind)) for name, kind in (("do", "do"), ("do_not", "do-not"), ("who", "who"))},
        "asks": [_asked(item, answer["topic"], models) for item in answer["asks"]],
        "numbers": {cite["id"]: number for number, cite in enumerate(answer["cites"], 1)},
        "compare": compare,
        "compared": list(_compared(compare)),
    }


def joined(text: str) -> str:
    """A sentence with each number and its unit on one line.

    >>> joined("it falls to 8.1 V at 390 A").count(say.NB)
    2
    """
    return LOOSE.sub(say.NB, text)


def told(facts: Sequence[Mapping[str, Any]], asked: bool) -> str:
    """The question that setting facts stands for: "Same, with 600 A", or the reply to what was asked back."""
    texts = [_as_typed(item) for item in facts]
    if asked:
        labels = [field(item["fact"], ())["label"] for item in facts]
        replies = [f"{label}: {text}" for label, text in zip(labels, texts, strict=True)]
        return say.capital(say.listed(replies))
    return f"Same, with {say.listed(texts)}"


def _as_typed(item: Mapping[str, Any]) -> str:
    """A fact set by a form, in the unit that was chosen there."""
    if item.get("shown"):
        return f"{say.significant(item['value'], 6)}{say.NB}{item['shown']}"
    return say.fact(item["fact"], item["value"])


def _band(answer: Mapping[str, Any]) -> tuple[str, str]:
    if answer["topic"] in PASSED:
        return PASSED[answer["topic"]], "passed"
    if answer["verdict"] != "needs-facts":
        return BANDS[answer["verdict"]]
    if not answer["asks"]:
        return "For a person", "passed"
    return COUNTED.get(len(answer["asks"]), "Some facts short"), "needs"


def _acts(answer: Mapping[str, Any], kind: str) -> Iterator[str]:
    for item in answer["steps"]:
        if item["kind"] == kind:
            text = say.capital(item["say"])
            yield text if text.endswith((".", "!", "?")) else f"{text}."


def _figures(answer: Mapping[str, Any]) -> Iterator[dict[str, Any]]:
    names = [item["name"] for item in answer["figures"]]
    telling = DECIDES.get(answer["topic"], names[:1])
    found = [
        _figure(item) | {"telling": item["name"] in telling, "note": _note(item, answer)} for item in answer["figures"]
    ]
    for item in sorted(found, key=lambda item: not item["telling"]):
        yield item | {"system": _system(item["name"], names)}


def _system(name: str, names: Sequence[str]) -> str:
    """A cable is a gauge or an area: where an answer has both, each is shown in its own system of units."""
    if name.startswith("gauge") and name.replace("gauge", "area", 1) in names:
        return "us"
    return "metric" if name.startswith("area") and name.replace("area", "gauge", 1) in names else ""


def _figure(item: Mapping[str, Any]) -> dict[str, Any]:
    figure = Figure(**item)
    low, high = figure.low, figure.high
    label = say.capital(figure.label)
    part: dict[str, Any] = {"label": label, "name": figure.name, "range": "", "range_us": "", "at": None}
    if isinstance(figure.value, (str, bool)):
        text = f"{figure.value}{say.NB}{figure.unit}" if figure.unit == "AWG" else say.fact(figure.name, figure.value)
        return part | {"text": text, "us": ""}
    if low is not None and high is not None:
        part["range"] = say.between(low, high, figure.unit, places(figure))
        ends = [american(end, figure.unit) for end in (low, high)]
        part["range_us"] = " to ".join(ends) if all(ends) else ""
        part["at"] = round(10 + 124 * (figure.value - low) / (high - low)) if high > low else None
    return part | {"text": shown(figure), "us": american(figure.value, figure.unit)}


def _note(item: Mapping[str, Any], answer: Mapping[str, Any]) -> str:
    """What the customer has of it, or by how much a reading falls short of the first limit of the picture."""
    stated = {part["fact"]: part for part in answer["understood"] if part["from"] != "house" and part.get("of", 1) == 1}
    own = stated.get(OWN.get(item["name"], ""))
    if own and stated.get("battery.count", {"value": 1})["value"] == 1:
        return f"yours: {say.fact(own['fact'], own['value'])}"
    plot = answer["plot"] or {}
    mark, limits = plot.get("mark") or {}, plot.get("limits") or []
    if answer["verdict"] in ("no", "marginal") and limits and item["unit"] == plot["y"].get("unit") == "V":
        short = limits[0]["value"] - item["value"]
        if mark.get("y") == item["value"] and short > 0.04:
            return f"{say.volts(short)} short of enough"
    return ""


def _option(item: Mapping[str, Any]) -> dict[str, Any]:
    word, band = BANDS.get(item["verdict"], ("", ""))
    word = "" if band == "info" else word
    return {**item, "word": word, "band": band, "figures": [_figure(part) for part in item["figures"]]}


def _compared(options: Sequence[Mapping[str, Any]]) -> Iterator[tuple[str, list[dict[str, Any] | None]]]:
    """For each figure that an option has: its label and the cell of each option."""
    for name in dict.fromkeys(part["name"] for item in options for part in item["figures"]):
        cells = [next((part for part in item["figures"] if part["name"] == name), None) for item in options]
        yield next(cell["label"] for cell in cells if cell), cells


def _facts(answer: Mapping[str, Any], models: Sequence[str]) -> Iterator[tuple[str, list[dict[str, Any]]]]:
    groups: dict[str, list[dict[str, Any]]] = {}
    two = any(item.get("of", 1) == 2 for item in answer["understood"])
    for item in answer["understood"]:
        name = FROM[item["from"]]
        if two and item["from"] != "house":
            name += ", the second" if item.get("of", 1) == 2 else ", the first"
        groups.setdefault(name, []).append(tag(item, models))
    for item in answer["assumed"]:
        groups.setdefault(ASSUMED, []).append(tag(item, models) | {"guess": True, "why": item["why"]})
    order = [*FROM.values(), ASSUMED]
    yield from sorted(groups.items(), key=lambda group: order.index(group[0].split(",")[0]))


def _change(item: Mapping[str, Any]) -> dict[str, Any]:
    """A change with its facts as form fields, and its words without the brackets that explain them."""
    facts = [(part["fact"], _posted(part["value"])) for part in (item, *item["also"])]
    return {**item, "facts": facts, "short": re.sub(r" \([^)]*\)$", "", item["say"])}


def _asked(item: Mapping[str, Any], topic: str, models: Sequence[str]) -> dict[str, Any]:
    own = field(item["fact"], models)
    then = outcomes([reply["then"] for reply in item["replies"]], topic)
    replies = [
        {**reply, "then": word, "posted": _posted(reply["value"])}
        for reply, word in zip(item["replies"], then, strict=True)
    ]
    return {**item, **own, "value": None, "replies": replies}


def _posted(value: Any) -> str | None:
    """A value as a form sends it."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return say.significant(value, 9) if isinstance(value, float) else None if value is None else str(value)
