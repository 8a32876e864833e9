"""The house: a maker's own models, rules and words, from one TOML file."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from grammar.files import toml

DEMO = Path(__file__).with_name("otterholm.toml")
CHEMISTRIES = ("flooded", "agm", "gel", "lead", "lfp")
LEAD = ("flooded", "agm", "gel")
KINDS = {"flooded": "wet-cell", "agm": "AGM", "gel": "gel", "lfp": "lithium"}
ALL = "all"  # a rule for every answer


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
    drop: float = 0.0  # percent of the volts that its cable may lose; 0: as for any motor


@dataclass(frozen=True, slots=True)
class Policy:
    """A rule of the house: its words, the answers it goes with, and what it makes of them. Empty means any.

    `least` and `most` hold facts ("battery.age") or figures ("check_interval") to a value; `verdict` is the best that
    is left where they are not met, or wherever the rule applies if there are none; `adviser`: a person looks first.
    """

    say: str
    topics: tuple[str, ...] = ()
    models: tuple[str, ...] = ()  # lower case
    chemistries: tuple[str, ...] = ()
    least: Mapping[str, float] = field(default_factory=dict)
    most: Mapping[str, float] = field(default_factory=dict)
    verdict: str = ""
    adviser: bool = False
    asks: str = ""  # the fact that would decide
    place: str = ""  # in the house file: "rule 2", "kinds for the Pike"


@dataclass(frozen=True, slots=True)
class House:
    """One maker's catalogue and rules."""

    name: str
    models: dict[str, Model] = field(default_factory=dict)  # by name, lower case
    policies: tuple[Policy, ...] = ()
    words: dict[str, Any] = field(default_factory=dict)  # desk, email, telephone, hours, sign_off, units, ...
    version: str = ""
    wording: dict[str, str] = field(default_factory=dict)  # our word: the house's

    def model(self, name: object) -> Model | None:
        """The model of that name, whatever its case, or None."""
        return self.models.get(str(name).strip().lower())

    def barred(self, model: object) -> frozenset[str]:
        """The kinds of battery that the house does not take for a model, or not before its adviser has looked."""
        name = str(model).strip().lower()
        rules = (item for item in self.policies if name in item.models and (item.verdict or item.adviser))
        return frozenset(kind for item in rules if not (item.least or item.most) for kind in item.chemistries)

    def least(self, model: object, fact: str) -> float:
        """The most that rules ask of a fact for a model, whatever the kind of battery; 0 where none does."""
        name = str(model).strip().lower()
        rules = (item for item in self.policies if name in item.models and not item.chemistries)
        return max((item.least.get(fact, 0.0) for item in rules), default=0.0)


def load(path: Path = DEMO) -> House:
    """The house of a file. Raises HouseFault with every mistake, OSError where the file cannot be read."""
    if path == DEMO:  # ours is held sound by a test: the parsed copy will do
        content = toml(path)
    else:
        from service.house.check import checked

        content = checked(path)
    models = [_model(key, spec) for key, spec in content.get("model", {}).items()]
    policies = [_policy(number, item) for number, item in enumerate(content.get("policy", ()), 1)]
    policies += [rule for model in models for rule in _of_the_model(model)]
    words = dict(content["house"])
    return House(
        words.pop("name"),
        {item.name.lower(): item for item in models},
        tuple(policies),
        words,
        hashlib.sha256(path.read_bytes()).hexdigest()[:12],
        dict(content.get("wording", {})),
    )


def _model(key: str, spec: dict[str, Any]) -> Model:
    cables = tuple(Run(**run) for run in spec.get("cables", ()))
    return Model(key, **{**spec, "cables": cables, "chemistries": tuple(spec.get("chemistries", ()))})


def _policy(number: int, spec: dict[str, Any]) -> Policy:
    plain = {name: spec[name] for name in ("least", "most", "verdict", "adviser") if name in spec}
    return Policy(
        spec["say"],
        tuple(spec.get("topics", ())),
        tuple(name.lower() for name in spec.get("models", ())),
        tuple(spec.get("chemistries", ())),
        **plain,
        place=f"rule {number}",
    )


def _of_the_model(model: Model) -> Iterator[Policy]:
    """What follows from a model's own lines: the kinds of battery it may have, and a word on it."""
    own, kinds = (model.name.lower(),), expanded(model.chemistries)
    say, place = f"For the {model.name} we allow {in_words(kinds)} batteries only.", f"kinds for the {model.name}"
    barred = [kind for kind in CHEMISTRIES if kinds and kind not in kinds]
    if "lead" in barred and set(LEAD) & set(kinds):  # which kind of lead it is decides
        barred.remove("lead")
        yield Policy(
            say, models=own, chemistries=("lead",), verdict="needs-facts", asks="battery.chemistry", place=place
        )
    if barred:
        yield Policy(say, models=own, chemistries=tuple(barred), verdict="no", place=place)
    if model.note:
        yield Policy(model.note, topics=(ALL,), models=own, place=f"note on the {model.name}")


def expanded(kinds: tuple[str, ...]) -> tuple[str, ...]:
    """The kinds with those of lead, where "lead" stands for them all."""
    return (*kinds, *LEAD) if "lead" in kinds and not set(LEAD) & set(kinds) else kinds


def in_words(kinds: tuple[str, ...]) -> str:
    """Kinds of battery in words: "AGM and gel"."""
    names = [name for kind, name in KINDS.items() if kind in kinds]
    if set(LEAD) <= set(kinds):
        names = ["lead", *(name for name in names if name == KINDS["lfp"])]
    return f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else "".join(names)
