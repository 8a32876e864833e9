"""Asks the desk every made message and judges what it understood, by the measures of `leadsman score`."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from service.commands.score import OUTCOMES, judge, same
from service.leadsman import Leadsman
from service.turns.thread import Thread
from service.turns.turn import Turn
from tests.generator.messages import NOTHING, Made

SEVERAL = "several"


@dataclass
class Tally:
    """Outcomes by topic and by level, and what was read from words that say nothing."""

    topics: dict[str, Counter[str]] = field(default_factory=dict)
    levels: dict[str, Counter[str]] = field(default_factory=dict)
    facts: Counter[str] = field(default_factory=Counter)  # right, missed or wrong
    stray: Counter[str] = field(default_factory=Counter)  # facts, by the words they were read from
    faults: list[tuple[Made, str, list[str]]] = field(default_factory=list)

    def table(self) -> str:
        """The outcomes in percent."""
        lines = [f"{'made messages':17}{'number':>9}" + "".join(f"{name:>8}" for name in OUTCOMES)]
        for name, counts in [*self.levels.items(), *sorted(self.topics.items())]:
            shares = "".join(f"{share(counts, outcome):8.1f}" for outcome in OUTCOMES)
            lines.append(f"{name:17}{counts.total():9}{shares}")
        shares = ", ".join(f"{share(self.facts, name):.2f} % {name}" for name in ("right", "missed", "wrong"))
        lines.append(
            f"of {self.facts.total()} facts stated {shares}; {self.stray.total()} read from words that state none"
        )
        return "\n".join(lines)


def share(counts: Counter[str], outcome: str) -> float:
    """The share of an outcome, in percent."""
    return 100 * counts[outcome] / (counts.total() or 1)


def tally(desk: Leadsman, made: Iterable[Made]) -> Tally:
    """The outcomes of messages."""
    found = Tally()
    for item in made:
        turn = desk.taken_up(item.text, Thread())
        outcome, reasons = _outcome(desk, item, turn)
        topic = item.topics[0].partition("|")[0] if len(item.topics) == 1 else SEVERAL
        for counts, name in ((found.topics, topic), (found.levels, item.level)):
            counts.setdefault(name, Counter())[outcome] += 1
        if outcome != "right":
            found.faults.append((item, outcome, reasons))
        found.facts.update(_of_facts(item, turn))
        for fact in turn.message.stated:
            if any(start <= fact.span[0] and fact.span[1] <= end for start, end in item.noise):
                found.stray[f"{fact.fact} from {fact.text!r}"] += 1
    return found


def _of_facts(made: Made, turn: Turn) -> Iterator[str]:
    """How each fact that the message states was read."""
    for fact, value in made.facts.items():
        read = [item.value for item in turn.message.stated if item.fact == fact]
        yield "missed" if not read else "right" if any(same(value, one, fact) for one in read) else "wrong"


def _outcome(desk: Leadsman, made: Made, turn: Turn) -> tuple[str, list[str]]:
    """The outcome of one message; answers are worked out only where what was understood is not plainly right."""
    nothing = made.topics == (NOTHING,)
    expect = {
        "topics": [] if nothing else list(made.topics),
        "may": ["unclear"] if nothing else [],
        "facts": made.facts,
    }
    asked = [request.topic for request in turn.requests]
    if not turn.signs and _as_wanted(asked, made.topics):
        understood = [{"fact": item.fact, "value": item.value} for item in turn.message.stated]
        names = [{"topic": name, "verdict": "needs-facts", "headline": "-"} for name in asked]
        answers = [{**name, "understood": understood, "assumed": [], "cites": [], "asks": []} for name in names]
        reply = {"answers": answers, "triage": {"urgency": "", "route": ""}}
    else:
        reply = desk.ask(made.text).as_dict()
    found = judge(reply, expect)
    return found.outcome, found.reasons


def _as_wanted(asked: list[str], wanted: tuple[str, ...]) -> bool:
    return len(asked) == len(wanted) and all(one in names.split("|") for one, names in zip(asked, wanted, strict=True))
