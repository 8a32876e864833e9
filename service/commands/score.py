"""Judges replies against labelled questions, and counts: right, asked, missed, wrong; by topic, with a confusion table.

A case is {"id", "style", "turns": [{"text", "expect": {...}}]}. `expect` holds topics ("a|b": either), may (further
topics that are fine), facts, verdict {topic: [accepted]}, figures {"topic.figure": [value, relative tolerance] or
[text, ...]}, asks {topic: [facts, one of which is asked back]}, urgency [...], route [...], and cautions [...]: words
for whoever reads the label, which are counted and not judged; no other key.
"""

from __future__ import annotations

import math
import time
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from service.commands.labelled import check
from service.leadsman import Leadsman

HANDED_OVER = {"other-desk", "unclear"}
OUTCOMES = ("right", "asked", "missed", "wrong")
VOLTS = {"reading.voltage", "reading.load_voltage", "reading.load_voltage_at_load", "charger.voltage"}
GRAVITY = {"reading.gravity", "reading.gravity_spread"}
FACT_TOLERANCE = 0.02


@dataclass
class Findings:
    """What a label found wrong with one reply, by weight."""

    wrong: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)
    missed: list[str] = field(default_factory=list)

    @property
    def outcome(self) -> str:
        """The heaviest of them; right where there is none."""
        return "wrong" if self.wrong else "asked" if self.asked else "missed" if self.missed else "right"

    @property
    def reasons(self) -> list[str]:
        """All of them, the heaviest first."""
        return [*self.wrong, *self.asked, *self.missed]


def judge(reply: Mapping[str, Any], expect: Mapping[str, Any]) -> Findings:
    """Hold a reply (the contract's JSON) against a label. Raises ValueError for a label of another shape."""
    check(expect)
    found = Findings()
    answers: dict[str, Mapping[str, Any]] = {}
    for answer in reply["answers"]:
        answers.setdefault(answer["topic"], answer)
    _topics(answers, expect, found)
    for topic in _wanted(expect, set(answers)):
        if topic in answers:
            _answer(topic, answers[topic], expect, found)
    _hazard(answers, expect, found)
    _figures(answers, expect, found)
    _facts(reply["answers"], expect, found)
    for key in ("urgency", "route"):
        accepted, given = expect.get(key), reply["triage"][key]
        if accepted and given not in accepted:
            heavy = key == "urgency" and accepted == ["stop-now"]
            (found.wrong if heavy else found.missed).append(f"{key} {given}, {accepted} expected")
    return found


def _allowed(expect: Mapping[str, Any]) -> set[str]:
    named = {part for topic in expect.get("topics", []) for part in topic.split("|")}
    return named | set(expect.get("may", []))


def _wanted(expect: Mapping[str, Any], given: set[str]) -> list[str]:
    choices = (topic.split("|") for topic in expect.get("topics", []))
    return [next((name for name in names if name in given), names[0]) for names in choices]


def _topics(answers: Mapping[str, Any], expect: Mapping[str, Any], found: Findings) -> None:
    allowed, given = _allowed(expect), set(answers)
    for topic in given - allowed:
        if topic in HANDED_OVER or answers[topic]["verdict"] == "needs-facts":
            found.asked.append(f"handed over or asked back as {topic}")
        else:
            found.wrong.append(f"answered {topic}, which was not asked")
    for topic in _wanted(expect, given):
        if topic in given:
            continue
        if topic == "hazard":
            found.wrong.append("hazard not seen")
        elif topic not in HANDED_OVER and (given & HANDED_OVER or not given):
            found.asked.append(f"{topic} not answered, handed over")
        elif not (topic in HANDED_OVER and given - allowed):
            found.missed.append(f"{topic} not answered")


def _answer(topic: str, answer: Mapping[str, Any], expect: Mapping[str, Any], found: Findings) -> None:
    accepted = expect.get("verdict", {}).get(topic)
    verdict = answer["verdict"]
    if accepted and verdict not in accepted:
        kind = found.asked if verdict == "needs-facts" else found.wrong
        kind.append(f"{topic}: verdict {verdict}, {accepted} expected")
    wanted = expect.get("asks", {}).get(topic)
    if wanted and not {item["fact"] for item in answer["asks"]} & set(wanted):
        found.missed.append(f"{topic}: none of {wanted} asked back")
    if not answer["headline"]:
        found.missed.append(f"{topic}: no headline")
    if topic not in HANDED_OVER and verdict != "needs-facts" and not answer["cites"]:
        found.missed.append(f"{topic}: no citation")


def _hazard(answers: Mapping[str, Any], expect: Mapping[str, Any], found: Findings) -> None:
    verdicts = expect.get("verdict", {})
    if verdicts.get("hazard") != ["stop"]:
        return
    for topic, answer in answers.items():
        if answer["verdict"] in ("yes", "marginal") and answer["verdict"] not in verdicts.get(topic, []):
            found.wrong.append(f"{topic}: {answer['verdict']} while a hazard stands")


def _figures(answers: Mapping[str, Any], expect: Mapping[str, Any], found: Findings) -> None:
    for name, target in expect.get("figures", {}).items():
        topic, _, wanted = name.partition(".")
        answer = answers.get(topic)
        if answer is None:
            continue
        if answer["verdict"] == "needs-facts":
            found.asked.append(f"{name}: asked back")
            continue
        figure = next((item for item in answer["figures"] if item["name"] == wanted), None)
        if figure is None:
            found.missed.append(f"{name} missing")
        elif not _holds(figure, target):
            found.wrong.append(f"{name} is {figure['value']}, {target} expected")


def _holds(figure: Mapping[str, Any], target: list[Any]) -> bool:
    value = figure["value"]
    if len(target) != 2 or any(isinstance(part, str) for part in target):
        return any(same(value, option) for option in target)
    wanted, tolerance = target
    slack = 1e-9 + (0.005 * abs(wanted) if tolerance >= 0.02 else 0.0)
    if isinstance(value, (int, float)) and math.isclose(value, wanted, rel_tol=tolerance, abs_tol=slack):
        return True
    low, high = figure.get("low"), figure.get("high")
    narrow = low is not None and high is not None and high - low <= 0.5 * abs(wanted) + 1e-9
    return narrow and low <= wanted <= high


def _facts(answers: Iterable[Mapping[str, Any]], expect: Mapping[str, Any], found: Findings) -> None:
    stated: dict[str, list[Any]] = defaultdict(list)
    assumed: dict[str, list[Any]] = defaultdict(list)
    for answer in answers:
        for item in answer["understood"]:
            stated[item["fact"]].append(item["value"])
        for item in answer["assumed"]:
            assumed[item["fact"]].append(item["value"])
    for fact, wanted in expect.get("facts", {}).items():
        options = wanted if isinstance(wanted, list) else [wanted]
        values = stated[fact] + assumed[fact]
        if not values:
            found.missed.append(f"fact {fact} not understood")
        elif not any(same(value, option, fact) for value in values for option in options):
            kind = found.wrong if stated[fact] else found.missed
            kind.append(f"fact {fact} is {values}, {wanted} expected")


def same(value: Any, wanted: Any, fact: str = "") -> bool:
    """Whether a value is the one wanted, within what its fact is read to."""
    if isinstance(wanted, bool) or isinstance(value, bool):
        return bool(value == wanted)
    if isinstance(wanted, (int, float)):
        try:
            number = float(value)
        except (TypeError, ValueError):
            return False
        slack = 0.005 if fact in VOLTS else 0.0006 if fact in GRAVITY else 0
        close = math.isclose(number, wanted, rel_tol=FACT_TOLERANCE, abs_tol=1e-9 + 0.005 * abs(wanted))
        return abs(number - wanted) <= slack if slack else close
    return str(value).strip().lower() == str(wanted).strip().lower()


@dataclass
class Score:
    """The counts over a file of cases."""

    outcomes: Counter[str] = field(default_factory=Counter)
    topics: dict[str, Counter[str]] = field(default_factory=lambda: defaultdict(Counter))
    confusion: Counter[tuple[str, str]] = field(default_factory=Counter)  # wanted, given instead
    several: Counter[str] = field(default_factory=Counter)
    cautions: int = 0  # labels that tell some
    exact: int = 0
    turns: int = 0
    milliseconds: list[float] = field(default_factory=list)
    rows: list[tuple[str, str, str, list[str]]] = field(default_factory=list)  # id.turn, outcome, text, reasons

    def share(self, outcome: str) -> float:
        """The share of turns with an outcome, in percent."""
        return 100 * self.outcomes[outcome] / (self.turns or 1)

    def report(self) -> Iterator[str]:
        """The counts as lines to print."""
        yield f"{self.turns} turns"
        for outcome in OUTCOMES:
            yield f"  {outcome:7}{self.outcomes[outcome]:6}  {self.share(outcome):5.1f} %"
        yield f"  topics exact {100 * self.exact / (self.turns or 1):.1f} %"
        if total := sum(self.several.values()):
            yield f"  two questions or more: {100 * self.several['right'] / total:.1f} % right of {total}"
        if self.cautions:
            yield f"  cautions of {self.cautions} labels are not judged"
        times = sorted(self.milliseconds) or [0.0]
        slowest = times[min(len(times) - 1, int(0.99 * len(times)))]
        yield f"  time per turn: median {times[len(times) // 2]:.1f} ms, 99th percentile {slowest:.1f} ms"
        yield f"\n{'topic':18}" + "".join(f"{name:>8}" for name in OUTCOMES)
        for topic, counts in sorted(self.topics.items()):
            yield f"{topic:18}" + "".join(f"{counts[name]:8}" for name in OUTCOMES)
        if self.confusion:
            yield "\nwanted             given instead"
        for (wanted, given), count in self.confusion.most_common(30):
            yield f"{wanted:18} {given:18} {count}"


def score(desk: Leadsman, cases: Iterable[Mapping[str, Any]]) -> Score:
    """Ask every turn of every case and judge it. The desk needs a signer, for threads."""
    total = Score()
    for case in cases:
        thread: str | None = None
        for number, turn in enumerate(case["turns"]):
            start = time.perf_counter()
            reply = desk.ask(turn["text"], thread=thread).as_dict()
            total.milliseconds.append((time.perf_counter() - start) * 1000)
            thread = reply["thread"]
            _count(total, f"{case['id']}.{number}", turn, reply)
    return total


def _count(total: Score, name: str, turn: Mapping[str, Any], reply: Mapping[str, Any]) -> None:
    expect = turn["expect"]
    found = judge(reply, expect)
    given = {item["topic"] for item in reply["answers"]}
    wanted = set(_wanted(expect, given))
    total.turns += 1
    total.cautions += bool(expect.get("cautions"))
    total.outcomes[found.outcome] += 1
    total.exact += wanted <= given <= _allowed(expect)
    if len(wanted) > 1:
        total.several[found.outcome] += 1
    for topic in wanted:
        total.topics[topic][found.outcome] += 1
    for topic in wanted - given:
        for other in sorted(given - _allowed(expect)) or ["-"]:
            total.confusion[topic, other] += 1
    total.rows.append((name, found.outcome, turn["text"], found.reasons))
