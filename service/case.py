"""One question's knowledge: what was stated, what the house says, and what rules make of both.

A fact is resolved in one order: stated, else house, else derived, else assumed; else it is missing and the
topic asks for it. Whatever is resolved leaves a trace, so an answer shows the rules that really fired.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any, Literal

Value = float | str | bool
Origin = Literal["message", "thread", "house", "derived", "assumed"]
STATED: tuple[Origin, ...] = ("message", "thread")
WEIGHED = (
    "request:which",
    "request:versus",
    "about:compare",
)  # cues of a choice: of two things told of nothing is joined


class Missing(Exception):
    """A fact is needed and nothing gives it. `fact` names it."""

    def __init__(self, fact: str) -> None:
        super().__init__(fact)
        self.fact = fact


@dataclass(frozen=True, slots=True)
class Known:
    """A value of a fact, in canonical units, and where it comes from."""

    fact: str
    value: Value
    origin: Origin
    unit: str = ""
    text: str = ""
    span: tuple[int, int] | None = None
    low: float | None = None
    high: float | None = None
    why: str = ""
    cites: tuple[str, ...] = ()
    of: int = 1

    @property
    def stated(self) -> bool:
        """Whether the customer said it."""
        return self.origin in STATED


@dataclass(frozen=True, slots=True)
class Rule:
    """Gives a fact from others. `needs` are passed to `how` in order; a need that begins with "?" may be None.

    `how` takes plain values and returns one, or None where it does not apply. `say` is the step shown, with
    {value} and the needed facts in braces; `why` is the reason shown for an assumption.
    """

    gives: str
    needs: tuple[str, ...]
    how: Callable[..., Value | None]
    kind: Literal["house", "derived", "assumed"]
    say: str
    cites: tuple[str, ...] = ()
    why: str = ""
    unit: str = ""


ORDER = {"house": 0, "derived": 1, "assumed": 2}
RULES: dict[str, list[Rule]] = {}


def rule(
    gives: str,
    needs: Iterable[str] = (),
    *,
    kind: Literal["house", "derived", "assumed"] = "derived",
    say: str,
    cites: Iterable[str] = (),
    why: str = "",
    unit: str = "",
) -> Callable[[Callable[..., Value | None]], Callable[..., Value | None]]:
    """Declare a rule. Raises ValueError where the same function is declared twice for a fact."""

    def declare(how: Callable[..., Value | None]) -> Callable[..., Value | None]:
        known = RULES.setdefault(gives, [])
        if any(other.how.__name__ == how.__name__ for other in known):
            raise ValueError(f"a rule called {how.__name__} already gives {gives}: rename one of them")
        known.append(Rule(gives, tuple(needs), how, kind, say, tuple(cites), why, unit))
        known.sort(key=lambda item: ORDER[item.kind])  # stable: file order within a kind
        return how

    return declare


@dataclass(frozen=True, slots=True)
class Fired:
    """A step that was taken: its words, its sources, and whether it is a cause, a sum, assumed or the house's.

    The house's steps are pieces ("260 A running"), put together to one when the answer is finished.
    """

    say: str
    cites: tuple[str, ...] = ()
    kind: Literal["cause", "derived", "assumed", "house", "source"] = "derived"


Format = Callable[[str, Value], str]


@dataclass
class Case:
    """What is known of one question. Reading a fact resolves it and notes that it was used."""

    stated: Mapping[str, Known]
    house: Any = None  # service.house.House
    second: Mapping[str, Known] = field(default_factory=dict)  # facts of the second battery, load or cable
    cues: frozenset[str] = frozenset()  # cue names of this question: "request:enough", "word:winter"
    text: str = ""
    show: Format = lambda fact, value: f"{value}"
    denied: Mapping[str, tuple[Value, ...]] = field(default_factory=dict)  # "not lithium"
    hazard: bool = False  # a hazard stands in this thread
    asked: tuple[str, ...] = ()  # the facts that the desk asked for in its last answer
    before: tuple[str, ...] = ()  # the topics of that answer
    beside: tuple[str, ...] = ()  # the topics that the message asks about
    worked: Mapping[str, Value] = field(default_factory=dict)  # what the desk itself worked out, "topic.figure"
    used: dict[tuple[str, int], Known] = field(default_factory=dict)
    trace: list[Fired] = field(default_factory=list)
    _memo: dict[str, Known | None] = field(default_factory=dict)
    _open: list[str] = field(default_factory=list)

    def known(self, fact: str) -> Known | None:
        """The fact as it is known, resolved now if need be; None if nothing gives it.

        "text:load.power" is how the customer typed that fact, for rules to which the unit matters.
        """
        if fact.startswith("text:"):
            typed = self.stated.get(fact.removeprefix("text:"))
            return Known(fact, typed.text, "derived") if typed and typed.text else None
        if fact in self.stated:
            found: Known | None = self.stated[fact]
        elif fact in self._memo:
            found = self._memo[fact]
        elif fact in self._open:  # a rule that needs its own result: not this way
            return None
        else:
            found = self._resolve(fact)
            if found is not None or not self._open:  # inside another rule a cycle may have hidden the way
                self._memo[fact] = found
        if found is not None:
            self.used.setdefault((fact, found.of), found)
        return found

    def get(self, fact: str, default: Any = None) -> Any:
        """The value of a fact, or `default`."""
        found = self.known(fact)
        return default if found is None else found.value

    def __getitem__(self, fact: str) -> Any:
        """The value of a fact. Raises Missing, which becomes a question to the customer."""
        found = self.known(fact)
        if found is None:
            raise Missing(fact)
        return found.value

    def __contains__(self, fact: str) -> bool:
        """Whether a fact is known, by whatever way."""
        return self.known(fact) is not None

    def said(self, fact: str) -> Any:
        """The value the customer stated, or None: never a derived or an assumed one."""
        return self.get(fact) if fact in self.stated else None

    def origin(self, fact: str) -> str:
        """Where a fact comes from: message, thread, house, derived, assumed, or "" if it is not known."""
        found = self.known(fact)
        return "" if found is None else found.origin

    def says(self, *names: str) -> bool:
        """Whether any of these cues stands in the question."""
        return any(name in self.cues for name in names)

    def step(self, say: str, *cites: str) -> None:
        """Note a step that was just taken, with its sources."""
        self._note(Fired(say, tuple(cites)))

    def because(self, cause: str, *cites: str) -> None:
        """Note why the answer is so, in everyday words: it stands first among the steps."""
        self._note(Fired(cause, tuple(cites), "cause"))

    def source(self, *cites: str) -> None:
        """Note sources of figures that need no words of their own."""
        self._note(Fired("", tuple(cites), "source"))

    def follow(self, other: Case) -> None:
        """Take over the steps of another case, for an answer to two things."""
        for fired in other.trace:
            self._note(fired)

    def follow_other(self, other: Case) -> None:
        """Take over the steps of the case of the second battery or cable, and what it used as of the second."""
        for (fact, _), item in other.used.items():
            if fact in self.second:
                self.used.setdefault((fact, 2), replace(item, of=2))
        self.follow(other)

    def _note(self, fired: Fired) -> None:
        told = fired.say or fired.kind == "source"  # a rule that has nothing to tell has an empty `say`
        if told and fired not in self.trace:
            self.trace.append(fired)

    def assume(self, fact: str, value: Any, why: str, *cites: str, unit: str = "") -> Any:
        """The stated or derived value, else `value`, noted as an assumption."""
        found = self.known(fact)
        if found is not None:
            return found.value
        taken = Known(fact, value, "assumed", unit, why=why, cites=cites)
        self._memo[fact] = taken
        self.used.setdefault((fact, 1), taken)
        self._note(Fired(f"{self.show(fact, value)} is assumed: {why}", tuple(cites), "assumed"))
        return value

    def others(self) -> Case:
        """The same question for the second battery, load or cable; facts it shares are kept."""
        again = self.fresh()
        again.stated = {**self.stated, **{name: replace(item, of=2) for name, item in self.second.items()}}
        again.second = {}
        return again

    def fresh(self) -> Case:
        """The same question with nothing resolved yet."""
        stated, second = dict(self.stated), dict(self.second)
        return replace(self, stated=stated, second=second, used={}, trace=[], _memo={}, _open=[])

    def supposing(self, changes: Mapping[str, Value], without: Iterable[str] = ()) -> Case:
        """The same question with other facts: for "what would change it", ranges and likely replies."""
        again = self.fresh()
        gone = set(without)
        again.stated = {name: item for name, item in self.stated.items() if name not in gone} | {
            name: Known(name, value, "message", text=str(value)) for name, value in changes.items()
        }
        return again

    def _resolve(self, fact: str) -> Known | None:
        self._open.append(fact)
        try:
            return next((found for item in RULES.get(fact, ()) if (found := self._fire(item))), None)
        finally:
            self._open.pop()

    def _fire(self, item: Rule) -> Known | None:
        before = dict(self.used), list(self.trace)
        values: dict[str, Known] = {}
        for need in item.needs:
            found = self.known(need.lstrip("?"))
            if found is None and not need.startswith("?"):
                self.used, self.trace = before
                return None
            if found is not None:
                values[need.lstrip("?")] = found
        given = [values[name].value if (name := need.lstrip("?")) in values else None for need in item.needs]
        value = item.how(*([self.house, *given] if item.kind == "house" else given))
        if value is None:
            self.used, self.trace = before
            return None
        cites = item.cites or (("house",) if item.kind == "house" else ())
        words = {name: self.show(name, part.value) for name, part in values.items()}
        words["value"] = self.show(item.gives, value)
        self._note(Fired(_fill(item.say, words), cites, item.kind))
        why = _fill(item.why or item.say, words)
        return Known(item.gives, value, item.kind, item.unit, why=why, cites=cites)


def _fill(template: str, words: Mapping[str, str]) -> str:
    for name, text in words.items():  # fact names hold dots, which str.format would take apart
        template = template.replace("{" + name + "}", text)
    return template
