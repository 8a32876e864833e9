"""Explains every mistake of a house's own rules and wording: what is wrong and what to write."""

from __future__ import annotations

import difflib
from collections.abc import Collection, Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

from grammar.facts import facts
from service.house import ALL, CHEMISTRIES
from service.house_rules.limits import BOUNDS

RULE = ("say", "topics", "models", "chemistries", "least", "most", "verdict", "adviser")
BEST = ("marginal", "needs-facts", "no")
MOST_WORDS = 25  # of a rule: it may become a headline
LONGEST = 60  # characters of a word
TERMS = (  # of ours that a house may call otherwise; no figure hangs on them
    "absorption", "AGM", "catalogue", "charger", "electrician", "first instant", "float", "fuse", "gel", "lithium",
    "marine electrician", "motor", "office", "orders desk", "technician", "technicians", "thruster", "wet-cell",
)  # fmt: skip

Found = Iterator[tuple[str, str]]  # the key that the mistake is in, and what to write


@cache
def topics() -> tuple[str, ...]:
    """Every topic, by its file."""
    folder = Path(__file__).parent.parent / "topics"
    return tuple(sorted(path.stem.replace("_", "-") for path in folder.glob("[a-z]*.py")))


def rule_mistakes(rule: Mapping[str, Any], models: Collection[str]) -> Found:
    """The mistakes of one rule; `models` are the names of the file's own."""
    for key in rule:
        if key not in RULE:
            yield key, f"{key!r} is not known in a [[policy]]{_near(key, RULE)}: there are {', '.join(RULE)}"
    yield from _say(rule)
    yield from _names(rule, "topics", (*topics(), ALL), f"topics as answers name them, such as run-check, or {ALL!r}")
    yield from _names(rule, "models", models, "the names of models of this file")
    yield from _names(rule, "chemistries", CHEMISTRIES, "kinds of battery")
    for way in ("least", "most"):
        yield from _bounds(rule, way)
    yield from _ends(rule)
    if rule.get("verdict", "no") not in BEST:
        yield "verdict", f"verdict is {rule['verdict']!r}: write the best that is left, one of {', '.join(BEST)}"
    if not isinstance(rule.get("adviser", False), bool):
        yield "adviser", "adviser is true or false, without quotes: true where your adviser looks first"
    if not any(rule.get(key) for key in ("topics", "models", "chemistries", "least", "most")):
        yield "", 'say where this rule applies: topics = ["run-check"], models = ["..."] or chemistries = ["lfp"]'


def wording_mistakes(wording: Mapping[str, Any]) -> Found:
    """The mistakes of the house's own words for ours."""
    known = {term.lower() for term in TERMS}
    for ours, theirs in wording.items():
        if ours.lower() not in known:
            yield ours, f"{ours!r} is no word of ours that can be changed{_near(ours, TERMS)}: {', '.join(TERMS)}"
        elif not isinstance(theirs, str) or not theirs.strip() or len(theirs) > LONGEST:
            yield ours, f'write your word in quotes, at most {LONGEST} characters: "{ours}" = "..."'
        elif any(mark in theirs for mark in "<>\n\r{}") or any(letter.isdigit() for letter in theirs):
            yield ours, f"{theirs!r} holds a number or a mark: a word of yours is words alone"


def _say(rule: Mapping[str, Any]) -> Found:
    say = rule.get("say")
    if not isinstance(say, str) or not say.strip():
        yield "say", 'write the rule in one sentence, as customers are to read it: say = "We ask for ..."'
    elif say.strip()[-1] not in ".!?" or say != say.strip() or "\n" in say:
        yield "say", "write say as one sentence on one line that ends with a full stop"
    elif len(say.split()) > MOST_WORDS:
        yield "say", f"say has {len(say.split())} words: write at most {MOST_WORDS}, as it may become a headline"


def _names(rule: Mapping[str, Any], key: str, known: Collection[str], what: str) -> Found:
    given = rule.get(key, [])
    if not isinstance(given, list) or not all(isinstance(item, str) for item in given) or (key in rule and not given):
        yield key, f'{key} lists {what}: {key} = ["{next(iter(known), "...")}"]'
        return
    lower = {name.lower() for name in known}
    for item in given:
        if item.lower() not in lower:
            listed = ", ".join(known) or "none in this file"
            yield key, f"{key} has {item!r}, which is not known{_near(item, known)}: there are {listed}"


def _bounds(rule: Mapping[str, Any], way: str) -> Found:
    bounds = rule.get(way, {})
    if not isinstance(bounds, dict) or (way in rule and not bounds):
        yield way, f'{way} holds facts or figures to a value: {way} = {{ "battery.capacity" = 100 }}'
        return
    for name, value in bounds.items():
        spec = facts().get(name)
        fits = spec.kind == "number" if spec else name in BOUNDS
        if isinstance(value, dict):
            yield (
                way,
                f'put the name in quotes, as it holds a dot: {way} = {{ "{name}.{next(iter(value), "")}" = ... }}',
            )
        elif not fits:
            numbers = [fact for fact, each in facts().items() if each.kind == "number"]
            near = _near(name, (*numbers, *BOUNDS)) or f": a fact such as battery.age, or one of {', '.join(BOUNDS)}"
            yield way, f"{way} has {name!r}, which is no number of an answer{near}"
        elif not isinstance(value, (int, float)) or isinstance(value, bool):
            yield way, f"{name} in {way} is a number without quotes"
        elif spec and spec.low is not None and spec.high is not None and not spec.low <= value <= spec.high:
            yield way, f"{name} in {way} is {value}, outside {spec.low:g} to {spec.high:g} {spec.unit}".rstrip()
        elif not spec and way not in BOUNDS[name].ways:
            yield way, f"{name} can only be made stricter: write it under {' or '.join(BOUNDS[name].ways)}"
        elif not spec and value <= 0:
            yield way, f"{name} in {way} is {value}: write a number above 0, in {BOUNDS[name].unit}"


def _ends(rule: Mapping[str, Any]) -> Found:
    """A least over the most of the same name."""
    least, most = (rule.get(way) for way in ("least", "most"))
    if not isinstance(least, dict) or not isinstance(most, dict):
        return
    for name in set(least) & set(most):
        ends = least[name], most[name]
        if all(isinstance(end, (int, float)) for end in ends) and ends[0] > ends[1]:
            yield "least", f"{name}: the least, {ends[0]}, is over the most, {ends[1]}"


def _near(word: str, known: Collection[str]) -> str:
    found = difflib.get_close_matches(str(word).lower(), [name.lower() for name in known], 1)
    return f" (do you mean {found[0]!r}?)" if found else ""
