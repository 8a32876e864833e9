"""What a topic file must hold: its name, its method, the cautions it may carry and what may turn its verdict."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace

from grammar.facts import facts
from service.case import Case, Missing, Value
from service.reply import Answer, Asked, Choice, Figure

Method = Callable[[Case], Answer]
Likely = Mapping[str, tuple[tuple[str, Value], ...]]
CIRCUIT = frozenset({"cable-size", "fuse-size", "voltage-drop"})  # the topics of one cable


@dataclass(frozen=True, slots=True)
class Lever:
    """A fact that may turn the verdict: `values` are tried in order, least change first, until the verdict is yes.

    `say` tells the change, {value} filled in; `also` gives further facts of the same change; `without` are
    stated facts that the change replaces.
    """

    fact: str
    values: Callable[[Case], Iterable[Value]]
    say: str | Callable[[Case, Value], str]
    also: Callable[[Case, Value], Mapping[str, Value]] | None = None
    without: tuple[str, ...] = ()


@dataclass
class Topic:
    """One kind of question. `likely` are the usual replies to a fact asked back; `unsure` the headline for it."""

    name: str
    title: str
    cautions: tuple[str, ...] = ()
    levers: tuple[Lever, ...] = ()
    likely: Likely = field(default_factory=dict)
    unsure: Mapping[str, str] = field(default_factory=dict)
    amps: str = ""  # the fact that amps state in such a question where nothing near them tells whose they are
    idle: Mapping[str, tuple[str, ...]] = field(
        default_factory=dict
    )  # topics that add nothing while no such fact is told
    meanwhile: str = ""  # what to do until a fact that they do not know is found out
    of_two: str = ""  # where two of a thing are told of: "best" or "worst" decides the verdict; "" compares nothing
    method: Method | None = None

    def answered_by(self, method: Method) -> Method:
        """Set the method: a Case in, an Answer out. It may raise Missing for a fact it cannot do without."""
        self.method = method
        return method

    def answer(self, case: Case) -> Answer:
        """The bare answer: verdict, headline, figures; a missing fact becomes a question."""
        assert self.method is not None, f"topic {self.name} has no method"
        try:
            return self.method(case)
        except Missing as lack:
            return self.needs(lack.fact)

    def needs(
        self,
        fact: str,
        *more: str,
        headline: str = "",
        figures: Iterable[Figure] = (),
        likely: Iterable[tuple[str, Value]] | None = None,
    ) -> Answer:
        """A needs-facts answer that asks for `fact` first, then `more`. `likely` overrides the usual replies."""
        asks = tuple(
            self.ask(name, self.likely.get(name, ()) if likely is None or number else likely)
            for number, name in enumerate((fact, *more))
        )
        head = headline or self.unsure.get(fact) or f"We can't say yet: please tell us {facts()[fact].ask}."
        return Answer(self.name, "needs-facts", head, figures=tuple(figures), asks=asks)

    def ask(self, fact: str, likely: Iterable[tuple[str, Value]] = ()) -> Asked:
        """The question for a fact, where to find it and the likely replies."""
        spec = facts()[fact]
        return Asked(fact, spec.ask, spec.where, tuple(Choice(say, value) for say, value in likely))

    def says(self, verdict: str, headline: str, *figures: Figure, **more: object) -> Answer:
        """An answer of this topic."""
        return replace(Answer(self.name, verdict, headline, figures=figures), **more)  # type: ignore[arg-type]
