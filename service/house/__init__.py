"""The house: a maker's own models, rules and words, from one TOML file."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from grammar.files import toml

DEMO = Path(__file__).with_name("otterholm.toml")


@dataclass(frozen=True, slots=True)
class Run:
    """A row of a model's cable table: this size up to so many metres one way."""

    up_to: float
    area: float
    gauge: str


@dataclass(frozen=True, slots=True)
class Model:
    """A thruster of the house: volts, amps running and in the first instant, and what it asks for."""

    key: str
    name: str
    volts: float
    running: float
    inrush: float
    cca: float
    run_limit: float
    rest: float
    fuse: float
    cables: tuple[Run, ...] = ()
    chemistries: tuple[str, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True)
class Policy:
    """A house rule in words, for the answers of its topics."""

    topics: tuple[str, ...]
    say: str


@dataclass(frozen=True, slots=True)
class House:
    """One maker's catalogue and rules."""

    name: str
    models: dict[str, Model] = field(default_factory=dict)  # by name, lower case
    policies: tuple[Policy, ...] = ()
    words: dict[str, Any] = field(default_factory=dict)  # desk, email, telephone, hours, sign_off, units, ...
    version: str = ""

    def model(self, name: object) -> Model | None:
        """The model of that name, whatever its case, or None."""
        return self.models.get(str(name).strip().lower())

    def policy(self, topic: str) -> tuple[str, ...]:
        """The house's own words for a topic."""
        return tuple(item.say for item in self.policies if topic in item.topics)


def load(path: Path = DEMO) -> House:
    """The house of a file. Raises HouseFault with every mistake, OSError where the file cannot be read."""
    if path == DEMO:  # ours is held sound by a test: the parsed copy will do
        content = toml(path)
    else:
        from service.house.check import checked

        content = checked(path)
    models = [_model(key, spec) for key, spec in content.get("model", {}).items()]
    policies = tuple(Policy(tuple(item["topics"]), item["say"]) for item in content.get("policy", ()))
    words = dict(content["house"])
    version = hashlib.sha256(path.read_bytes()).hexdigest()[:12]
    return House(words.pop("name"), {item.name.lower(): item for item in models}, policies, words, version)


def _model(key: str, spec: dict[str, Any]) -> Model:
    cables = tuple(Run(**run) for run in spec.get("cables", ()))
    return Model(key, **{**spec, "cables": cables, "chemistries": tuple(spec.get("chemistries", ()))})
