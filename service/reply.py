"""What the desk says: an Answer for each question, a Reply for each message, as the contract has them."""

from __future__ import annotations

from dataclasses import dataclass, field, fields, is_dataclass
from typing import Any, Literal, TypeVar

Verdict = Literal["yes", "no", "marginal", "needs-facts", "information", "stop"]
STRICTNESS: tuple[str, ...] = ("information", "yes", "marginal", "needs-facts", "no", "stop")  # the mildest first
Urgency = Literal["stop-now", "today", "routine"]
Route = Literal["answered", "needs-facts", "technician", "other-desk"]
Value = float | str | bool
Judged = TypeVar("Judged", bound=str)
CONTACT = "telephone and hours"  # the place of the house's contact in its file
HOUSE_RULES = "house-rules"  # the source of what the house adds in words: its rules, its contact, its disclaimer


def strictness(verdict: str) -> int:
    """How strict a verdict is beside others."""
    return STRICTNESS.index(verdict)


def strictest(*verdicts: Judged) -> Judged:
    """The verdict that stands between several."""
    return max(verdicts, key=strictness)


@dataclass(frozen=True, slots=True)
class Figure:
    """One number of an answer. `low` and `high` only where a range is honest."""

    name: str
    label: str
    value: Value
    unit: str = ""
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the working, with the ids of its sources."""

    say: str
    cites: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Cite:
    """A source as an answer names it."""

    id: str
    title: str
    publisher: str
    edition: str
    locator: str
    kind: str


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution by its id in safety's list."""

    id: str
    say: str


@dataclass(frozen=True, slots=True)
class Choice:
    """A likely reply to a question asked back; `then` is the verdict that it would give."""

    say: str
    value: Value | None = None
    unit: str = ""
    then: str = ""


@dataclass(frozen=True, slots=True)
class Asked:
    """A fact that is asked back."""

    fact: str
    say: str
    where: str = ""
    replies: tuple[Choice, ...] = ()


@dataclass(frozen=True, slots=True)
class Understood:
    """A stated fact as an answer used it. `source` is shown as "from"."""

    fact: str
    value: Value
    unit: str
    text: str
    span: tuple[int, int] | None
    source: str
    of: int = 1
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True, slots=True)
class Assumed:
    """A value that nobody stated, and why it was taken."""

    fact: str
    value: Value
    unit: str
    why: str


@dataclass(frozen=True, slots=True)
class Change:
    """The least change of one fact (and of `also`) that turns the verdict."""

    fact: str
    value: Value
    unit: str
    say: str
    also: tuple[dict[str, Any], ...] = ()


@dataclass(frozen=True, slots=True)
class Act:
    """A first action of a hazard: do, do-not or who."""

    kind: Literal["do", "do-not", "who"]
    say: str


@dataclass(frozen=True, slots=True)
class Option:
    """One side of a comparison."""

    label: str
    verdict: str
    figures: tuple[Figure, ...] = ()


@dataclass(frozen=True, slots=True)
class Answer:
    """The answer to one question. Topics fill it; the desk adds sources, cautions, facts and changes."""

    topic: str
    verdict: Verdict
    headline: str
    figures: tuple[Figure, ...] = ()
    working: tuple[Step, ...] = ()
    cites: tuple[Cite, ...] = ()
    cautions: tuple[Caution, ...] = ()
    asks: tuple[Asked, ...] = ()
    understood: tuple[Understood, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    would_change: tuple[Change, ...] = ()
    steps: tuple[Act, ...] = ()
    compare: tuple[Option, ...] = ()
    plot: dict[str, Any] | None = None
    urgency: Urgency = "routine"  # the topic's own view; triage takes the highest. Not part of the JSON
    route: Route | None = None  # where the topic itself knows, e.g. technician. Not part of the JSON

    def as_dict(self) -> dict[str, Any]:
        """The answer as the JSON of /api/ask."""
        return {
            item.name: plain(getattr(self, item.name)) for item in fields(self) if item.name not in ("urgency", "route")
        }


@dataclass(frozen=True, slots=True)
class Triage:
    """How urgent a message is and who sees to it."""

    urgency: Urgency
    route: Route


@dataclass(frozen=True, slots=True)
class Reply:
    """All the desk says to one message."""

    id: str
    thread: str
    triage: Triage
    answers: tuple[Answer, ...]
    notice: str | None = None
    why: tuple[str, ...] = field(default=())  # the trace that `leadsman why` prints. Not part of the JSON
    shorthand: bool = False  # asked in a technician's shorthand: answered in few words as text. Not part of the JSON
    left_open: str | None = None  # what the notice says of a question without an answer. Not part of the JSON
    before: dict[str, Any] | None = None  # what it takes to ask a follow-up again: the thread it met. Not in the JSON

    def as_dict(self) -> dict[str, Any]:
        """The reply as the JSON of /api/ask."""
        return {
            "id": self.id,
            "notice": self.notice,
            "thread": self.thread,
            "triage": {"urgency": self.triage.urgency, "route": self.triage.route},
            "answers": [item.as_dict() for item in self.answers],
        }


def plain(item: Any) -> Any:
    """Dataclasses and tuples as dicts and lists, in the contract's names, with plain spaces in the texts."""
    if isinstance(item, str):
        return item.replace("\u00a0", " ")
    if isinstance(item, (tuple, list)):
        return [plain(part) for part in item]
    if isinstance(item, Understood):
        shown: dict[str, Any] = {"fact": item.fact, "value": item.value, "unit": item.unit, "text": item.text}
        shown |= {"span": list(item.span) if item.span else None, "from": item.source}
        shown |= {"of": item.of} if item.of != 1 else {}
        return shown | _ends(item)
    if isinstance(item, Figure):
        label = item.label.replace("\u00a0", " ")
        return {"name": item.name, "label": label, "value": item.value, "unit": item.unit, **_ends(item)}
    if is_dataclass(item) and not isinstance(item, type):
        return {part.name: plain(getattr(item, part.name)) for part in fields(item)}
    if isinstance(item, dict):
        return {key: plain(value) for key, value in item.items()}
    return item


def _ends(item: Figure | Understood) -> dict[str, float]:
    ends = {"low": item.low, "high": item.high}
    return {name: value for name, value in ends.items() if value is not None}
