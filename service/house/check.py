"""Explains every mistake of a house file: line, what is wrong, what to write."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from service.house import CHEMISTRIES
from service.house.check_rules import rule_mistakes, wording_mistakes

TEXTS = ("desk", "email", "telephone", "hours", "greeting", "sign_off", "disclaimer")
UNREAD = {"language": "answers are in English"}  # keys of older files: passed over, and told
PARTS = ("house", "wording", "model", "policy")
NUMBERS = {  # of a model: least, most, what it is
    "volts": (6, 96, "nominal volts, such as 12"),
    "running": (1, 3000, "amps while it runs, such as 260"),
    "inrush": (1, 6000, "amps in the first instant, such as 390"),
    "cca": (0, 3000, "the cranking amps it asks for, such as 650"),
    "run_limit": (1, 7200, "seconds on in all, such as 180"),
    "rest": (0, 86400, "seconds of rest after that, such as 900"),
    "fuse": (1, 6000, "the fuse in amps, such as 350"),
}
OPTIONAL = {"drop": (0.5, 20, "percent of the volts that its cable may lose, such as 8")}
MORE = ("cables", "chemistries", "note")
CABLE = {
    "up_to": (0.1, 150, "metres one way, such as 7"),
    "area": (0.5, 2000, "mm2, such as 95"),
}
GAUGES = ("18", "16", "14", "12", "10", "8", "6", "4", "2", "1", "1/0", "2/0", "3/0", "4/0")
ORIGIN = re.compile(r"https?://[a-z0-9.-]+(:\d+)?", re.IGNORECASE)


class HouseFault(ValueError):
    """A house file cannot be taken. The message lists every mistake with file and line."""


@dataclass(frozen=True, slots=True)
class Mistake:
    """One mistake: where it stands and what to write instead."""

    line: int
    say: str


def checked(path: Path) -> dict[str, Any]:
    """The content of a sound house file. Raises HouseFault for any other, OSError where it cannot be read."""
    text = path.read_text(encoding="utf-8", errors="replace")
    found = mistakes(text)
    if found:
        raise HouseFault("\n".join(f"{path}:{item.line}: {item.say}" for item in found))
    return tomllib.loads(text)


def mistakes(text: str) -> list[Mistake]:
    """Every mistake of a house file's text, in the order of its lines."""
    try:
        content = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        place = re.search(r"line (\d+)", str(error))
        line = int(place.group(1)) if place else text.count("\n") + 1
        return [Mistake(line, f"this is not TOML: {error}. Texts stand in quotes, lists in [ ].")]
    lines = Lines(text)
    found = [*_strange(content, lines), *_house(content, lines), *_policies(content, lines), *_wording(content, lines)]
    models = content.get("model", {})
    if not isinstance(models, dict) or not all(isinstance(spec, dict) for spec in models.values()):
        found.append(Mistake(lines.of("model"), "write each model as a part of its own: [model.pike]"))
    else:
        for key, spec in models.items():
            found += _model(key, spec, lines)
        found += _twice(models, lines)
    return sorted(found, key=lambda item: item.line)


def unread(content: dict[str, Any]) -> Iterator[str]:
    """What a sound house file holds that nothing reads."""
    return (f"{key} is not read: {why}, the line may go" for key, why in UNREAD.items() if key in content["house"])


class Lines:
    """Finds the line of a part and of a key in it."""

    def __init__(self, text: str) -> None:
        self.lines = text.splitlines()

    def of(self, part: str, key: str = "", number: int = 1) -> int:
        """The line of `key` within [part], the so-manieth of that name, else of the part itself, else 1."""
        header = re.compile(r"\s*\[+\s*" + re.escape(part) + r"\s*\]+")
        starts = [at for at, line in enumerate(self.lines) if header.match(line)]
        if len(starts) < number:
            return next((at for at, line in enumerate(self.lines, 1) if line.lstrip().startswith(f"{part}")), 1)
        start = starts[number - 1]
        written = re.compile(r"\s*[\"']?" + re.escape(key) + r"[\"']?\s*[=.]")
        for at in range(start + 1, len(self.lines)):
            if self.lines[at].lstrip().startswith("["):
                break
            if key and written.match(self.lines[at]):
                return at + 1
        return start + 1


def _strange(content: dict[str, Any], lines: Lines) -> Iterator[Mistake]:
    for part in content:
        if part not in PARTS:
            there = "[house], [wording], [model.NAME] and [[policy]]"
            yield Mistake(lines.of(part), f"{part!r} is not known here: there are {there}")


def _house(content: dict[str, Any], lines: Lines) -> Iterator[Mistake]:
    house = content.get("house")
    if not isinstance(house, dict) or not isinstance(house.get("name"), str) or not house["name"].strip():
        yield Mistake(lines.of("house"), 'write the maker\'s name: [house] and below it name = "Your name"')
        return
    for key, value in house.items():
        if key == "name" or key in UNREAD:
            continue
        if key in TEXTS:
            if not isinstance(value, str):
                yield Mistake(lines.of("house", key), f'{key} is a text: write {key} = "..."')
        elif key == "units":
            if value not in ("metric", "us"):
                yield Mistake(lines.of("house", key), 'units is "metric" or "us"')
        elif key == "origins":
            yield from _origins(value, lines)
        else:
            known = ", ".join(("name", *TEXTS, "units", "origins"))
            yield Mistake(lines.of("house", key), f"{key!r} is not known in [house]: there are {known}")


def _origins(value: Any, lines: Lines) -> Iterator[Mistake]:
    if not isinstance(value, list) or not all(isinstance(item, str) and ORIGIN.fullmatch(item) for item in value):
        yield Mistake(
            lines.of("house", "origins"), 'origins lists websites: origins = ["https://www.example.org"], no path'
        )


def _policies(content: dict[str, Any], lines: Lines) -> Iterator[Mistake]:
    policies = content.get("policy", [])
    if not isinstance(policies, list) or not all(isinstance(item, dict) for item in policies):
        yield Mistake(lines.of("policy"), "write each rule under [[policy]], with two brackets")
        return
    models = content.get("model", {})
    specs = models.values() if isinstance(models, dict) else ()
    names = [str(spec["name"]) for spec in specs if isinstance(spec, dict) and "name" in spec]
    for number, item in enumerate(policies, 1):
        for key, say in rule_mistakes(item, names):
            yield Mistake(lines.of("policy", key, number), say)


def _wording(content: dict[str, Any], lines: Lines) -> Iterator[Mistake]:
    wording = content.get("wording", {})
    if not isinstance(wording, dict):
        yield Mistake(lines.of("wording"), 'write [wording] and below it "wet-cell" = "flooded"')
        return
    yield from (Mistake(lines.of("wording", key), say) for key, say in wording_mistakes(wording))


def _twice(models: dict[str, Any], lines: Lines) -> Iterator[Mistake]:
    """Two models of one name: customers could not tell which they mean."""
    seen: dict[str, str] = {}
    for key, spec in models.items():
        name = str(spec.get("name", "")).strip().lower()
        if name and name in seen:
            yield Mistake(
                lines.of(f"model.{key}", "name"), f"[model.{seen[name]}] has this name too: give each its own"
            )
        seen.setdefault(name, key)


def _model(key: str, spec: dict[str, Any], lines: Lines) -> Iterator[Mistake]:
    part = f"model.{key}"
    if not isinstance(spec.get("name"), str):
        yield Mistake(lines.of(part), f'write the name of this model: name = "{key.title()}"')
    for name, limits in (NUMBERS | {name: OPTIONAL[name] for name in OPTIONAL if name in spec}).items():
        yield from _number(part, name, spec, limits, lines)
    for name in spec:
        if name not in (*NUMBERS, *OPTIONAL, *MORE, "name"):
            known = ", ".join(("name", *NUMBERS, *OPTIONAL, *MORE))
            yield Mistake(lines.of(part, name), f"{name!r} is not known in a model: there are {known}")
    yield from _kinds_and_note(part, spec, lines)
    yield from _cables(part, spec, lines)
    if _is_number(spec.get("running")) and _is_number(spec.get("inrush")) and spec["inrush"] < spec["running"]:
        yield Mistake(lines.of(part, "inrush"), "inrush is less than running: the first instant draws more")


def _kinds_and_note(part: str, spec: dict[str, Any], lines: Lines) -> Iterator[Mistake]:
    kinds = spec.get("chemistries", list(CHEMISTRIES))
    if not isinstance(kinds, list) or not kinds or not set(map(str, kinds)) <= set(CHEMISTRIES):
        say = f"chemistries lists the kinds allowed, out of {', '.join(CHEMISTRIES)}; leave it out to allow them all"
        yield Mistake(lines.of(part, "chemistries"), say)
    if "note" in spec:
        sayable = {"say": spec["note"], "topics": ["all"]}
        for _, say in rule_mistakes(sayable, ()):
            yield Mistake(lines.of(part, "note"), say.replace("say", "note").replace("the rule", "the note"))


def _cables(part: str, spec: dict[str, Any], lines: Lines) -> Iterator[Mistake]:
    cables = spec.get("cables", [])
    sample = '{ up_to = 7, area = 95, gauge = "2/0" }'
    if not isinstance(cables, list) or not all(
        isinstance(row, dict) and set(row) == {*CABLE, "gauge"} for row in cables
    ):
        yield Mistake(lines.of(part, "cables"), f"each row of cables is {sample}")
        return
    for row in cables:
        if row["gauge"] not in GAUGES:
            yield Mistake(lines.of(part, "cables"), f"gauge {row['gauge']!r} is not one of {', '.join(GAUGES)}")
        for name, (least, most, what) in CABLE.items():
            if not _is_number(row[name]) or not least <= row[name] <= most:
                yield Mistake(lines.of(part, "cables"), f"{name} is {row[name]!r}: write {what}")
    lengths = [row["up_to"] for row in cables if _is_number(row["up_to"])]
    if lengths != sorted(lengths):
        yield Mistake(lines.of(part, "cables"), "put the rows of cables in order, the shortest up_to first")


def _number(
    part: str, name: str, spec: dict[str, Any], limits: tuple[float, float, str], lines: Lines
) -> Iterator[Mistake]:
    least, most, what = limits
    if name not in spec:
        yield Mistake(lines.of(part), f"{name} is missing: write {name} = ... ({what})")
    elif not _is_number(spec[name]):
        yield Mistake(lines.of(part, name), f"{name} is a number without quotes: {what}")
    elif not least <= spec[name] <= most:
        yield Mistake(lines.of(part, name), f"{name} is {spec[name]}, outside {least} to {most}: {what}")


def _is_number(value: object) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool)
