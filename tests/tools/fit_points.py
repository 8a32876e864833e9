"""Fits the table of points (service/routing/points) to labelled messages. Not needed to run the service.

    python -m tests.tools.fit_points MESSAGES.jsonl ... [--write]

Needs numpy and scipy, which the project itself does not. Besides the files given (one case a line: id, turns with text
and expect) it reads the project's own messages, tests/reading/asked/*.toml, dangers*.toml and voices/*.jsonl. It fits
without each fifth of the authors in turn (the id up to its first dash), prints how their messages then fare, and with
--write fits to all of them and puts the table in its place. The bars are set for messages like those of the files
given: the project's own were written to be hard. They may be set by hand as well, between those that two values of COST
give (--keep-bars). The same files give the same table.
"""

from __future__ import annotations

import argparse
import collections
import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
from scipy import sparse

from service.house import load
from service.routing.goes_on import goes_on
from service.routing.route import decided
from service.routing.several import SECOND, START, Several
from service.routing.tally import FOLDER, HAZARD, MOST, QUESTIONS, SEVERAL, Bars, Tally, placed, table, tallied
from tests.tools.labelled import VOICES, Turn, dangers, labelled, outcome, own, show, tally

POINTS = 5  # points to one unit of log-odds
SMALLEST = 1  # fewer points than this are dropped
LEAST_AUTHORS, LEAST_MESSAGES, LEAST_FORMS = 2, 4, 12
LASSO, RIDGE, STEPS, REACH = 1.2, 4.0, 150, 8.0
FINE = 10  # points to one unit in the tables of several questions
OF_FORMS, OF_PLACES = 14.0, 3.0  # what their small weights cost
OF_HAZARD = 0.7  # its ridge: signs of danger are rare words
FOLDS = 5  # of authors
OF_PEOPLE = 4.0  # how many of our own examples a whole case counts for: it was written by somebody who asks
COST = 1.0  # exact messages that one wrong topic outweighs
Ranked = dict[int, list[Tally]]  # by the id() of a turn


@dataclass(slots=True)
class Data:
    """The turns as matrices: clauses by signs, messages by signs."""

    turns: Sequence[Turn]
    names: dict[str, int]
    rows: Any = None
    whole: Any = None
    owner: Any = None
    starts: Any = None

    def __post_init__(self) -> None:
        clauses = [row for turn in self.turns for row in turn.rows]
        self.owner = np.repeat(np.arange(len(self.turns)), [len(turn.rows) for turn in self.turns])
        self.starts = np.searchsorted(self.owner, np.arange(len(self.turns)))
        self.rows = self._matrix(clauses)
        self.whole = self._matrix([turn.whole for turn in self.turns])

    def _matrix(self, sets: Sequence[Iterable[str]]) -> Any:
        at = [(number, self.names[name]) for number, names in enumerate(sets) for name in names if name in self.names]
        place = np.array(at, dtype=np.int64).reshape(-1, 2)
        ones = np.ones(len(place), np.float32)
        return sparse.csr_matrix((ones, (place[:, 0], place[:, 1])), shape=(len(sets), len(self.names)))

    def scores(self, fit: Fit) -> tuple[Any, Any]:
        """The points by clause and topic, and the best of each message."""
        each = self.rows @ fit.here + (self.whole @ fit.anywhere)[self.owner] + fit.start
        return each, np.maximum.reduceat(each, self.starts, axis=0)


@dataclass(slots=True)
class Fit:
    """What is fitted: points by sign and topic, here and anywhere, and each topic's start."""

    here: Any
    anywhere: Any
    start: Any

    def whole_numbers(self) -> Fit:
        """The same as whole points, the small ones dropped."""
        here, anywhere = np.rint(self.here * POINTS), np.rint(self.anywhere * POINTS)
        here[np.abs(here) < SMALLEST] = 0
        anywhere[np.abs(anywhere) < SMALLEST] = 0
        return Fit(here, anywhere, np.rint(self.start * POINTS))


def vocabulary(turns: Sequence[Turn]) -> dict[str, int]:
    """The signs that enough messages of enough authors show."""
    authors: dict[str, set[str]] = collections.defaultdict(set)
    messages: collections.Counter[str] = collections.Counter()
    for turn in turns:
        for name in turn.whole:
            authors[name].add(turn.author)
            messages[name] += 1
    kept = sorted(n for n in authors if len(authors[n]) >= LEAST_AUTHORS and messages[n] >= LEAST_MESSAGES)
    return {name: number for number, name in enumerate(kept)}


def fitted(turns: Sequence[Turn], topics: Sequence[str]) -> tuple[Fit, dict[str, int]]:
    """Logistic weights, one topic against the rest, the best clause speaking for the message; lasso keeps them few."""
    names = vocabulary(turns)
    data = Data(turns, names)
    truth, counts, either = _labels(turns, topics)
    weight = np.array([1.0 if turn.own else OF_PEOPLE for turn in turns], np.float32)
    size = (len(names), len(topics))
    fit = Fit(np.zeros(size, np.float32), np.zeros(size, np.float32), np.full((1, len(topics)), -2.5, np.float32))
    old_here, old_anywhere, pace = fit.here, fit.anywhere, 1.0
    across, total = data.rows.T.tocsr(), data.whole.T.tocsr()
    sums = sparse.csr_matrix((np.ones(len(data.owner)), (data.owner, np.arange(len(data.owner)))))
    cost = held_less(data.whole)
    lasso = LASSO * cost
    ridge = np.array([[OF_HAZARD if topic == HAZARD else RIDGE for topic in topics]], np.float32) * cost**2
    step_here = 1 / (REACH * (np.asarray(data.rows.T @ weight[data.owner]).ravel()[:, None] / 4 + ridge))
    step_anywhere = 1 / (REACH * (np.asarray(data.whole.T @ weight).ravel()[:, None] / 4 + ridge))
    for _ in range(STEPS):
        after = (1 + np.sqrt(1 + 4 * pace * pace)) / 2
        push, pace = (pace - 1) / after, after
        ahead = Fit(
            fit.here + push * (fit.here - old_here), fit.anywhere + push * (fit.anywhere - old_anywhere), fit.start
        )
        each, best = data.scores(ahead)
        for row, columns in either:  # of "a|b" the likelier one is taken
            truth[row, columns] = counts[row, columns] = 0
            column = max(columns, key=lambda number: best[row, number])
            truth[row, column] = counts[row, column] = 1
        gap = (1 / (1 + np.exp(-best)) - truth) * counts * weight[:, None]
        share = np.exp((each - best[data.owner]) / 0.7)
        share /= (sums @ share)[data.owner]
        slope = (gap[data.owner] * share).astype(np.float32)
        old_here, old_anywhere = fit.here, fit.anywhere
        here = _shrunk(ahead.here, across @ slope, step_here, lasso, ridge)
        anywhere = _shrunk(ahead.anywhere, total @ (sums @ slope), step_anywhere, lasso, ridge)
        fit = Fit(here, anywhere, fit.start - slope.sum(0, keepdims=True) / (0.25 * len(turns)) * 0.3)
    return fit, names


def held_less(whole: Any) -> Any:
    """By sign, what its points cost beside the usual one: a rare sign tells more of its topic, and costs less."""
    messages = np.asarray(whole.sum(0)).ravel()
    rarity = np.log((whole.shape[0] + 1) / (messages + 1)) + 1
    return (np.average(rarity, weights=messages) / rarity).astype(np.float32)[:, None]


def _shrunk(weights: Any, slope: Any, step: Any, lasso: Any, ridge: Any) -> Any:
    moved = weights - step * (slope + ridge * weights)
    return (np.sign(moved) * np.maximum(np.abs(moved) - step * lasso, 0)).astype(np.float32)


def _labels(turns: Sequence[Turn], topics: Sequence[str]) -> tuple[Any, Any, list[tuple[int, list[int]]]]:
    """The truth by turn and topic, whether it counts ("may" does not), and the choices "a|b"."""
    number = {topic: place for place, topic in enumerate(topics)}
    truth = np.zeros((len(turns), len(topics)), np.float32)
    counts = np.ones_like(truth)
    either = []
    for row, turn in enumerate(turns):
        if turn.only:
            counts[row] = 0
            counts[row, number[turn.only]] = 1
        counts[row, [number[name] for name in turn.may]] = 0
        for names in turn.wanted:
            columns = sorted(number[name] for name in names)
            counts[row, columns] = truth[row, columns] = 1
            if len(columns) > 1:
                either.append((row, columns))
    return truth, counts, either


def held_out(turns: Sequence[Turn], topics: Sequence[str]) -> Ranked:
    """The ranking of every labelled turn by a fit that has not seen its author; the fits run side by side."""
    authors = sorted({turn.author for turn in turns if not turn.own})
    outs = [authors[fold::FOLDS] for fold in range(FOLDS)]
    with ProcessPoolExecutor() as pool:
        found = pool.map(without, [turns] * FOLDS, outs, [topics] * FOLDS)
        return {id(turns[place]): ranking for part in found for place, ranking in part}


def without(turns: Sequence[Turn], out: Sequence[str], topics: Sequence[str]) -> list[tuple[int, list[Tally]]]:
    """The rankings of these authors' turns, by their places, from a fit to all the others."""
    places = [place for place, turn in enumerate(turns) if turn.author in out]
    left = [turns[place] for place in places]
    points = tallies(*fitted([turn for turn in turns if turn.author not in out], topics), left, topics)
    return [(place, points[id(turn)]) for place, turn in zip(places, left, strict=True)]


def tallies(fit: Fit, names: dict[str, int], turns: Sequence[Turn], topics: Sequence[str]) -> Ranked:
    """The ranking of every turn by the whole numbers of a fit, as the service would have it."""
    fit = fit.whole_numbers()
    data = Data(turns, names)
    each, _ = data.scores(fit)
    number = {topic: place for place, topic in enumerate(topics)}

    def points(sign: str, topic: str) -> tuple[int, int]:
        row, column = names.get(sign), number[topic]
        return (0, 0) if row is None else (int(fit.here[row, column]), int(fit.anywhere[row, column]))

    split = np.split(each.astype(int), data.starts[1:])
    found = [tallied({topic: rows[:, number[topic]].tolist() for topic in topics}) for rows in split]
    return {id(turn): placed(item, turn.rows, points) for turn, item in zip(turns, found, strict=True)}


@dataclass(frozen=True, slots=True)
class Candidate:
    """A topic beside the first: who wrote of it, how it ranks and stands, what the message shows; is it asked?"""

    author: str
    number: int
    names: Sequence[str]
    asked: bool


def further(turns: Sequence[Turn], points: Ranked) -> tuple[dict[str, Several], Several]:
    """What eases a further topic: for each author by the turns of the others, and by them all."""
    some = [turn for turn in turns if turn.wanted and HAZARD not in set().union(*turn.wanted)]
    authors = sorted({turn.author for turn in some})
    outs = [set(authors[fold::FOLDS]) for fold in range(FOLDS)]
    with ProcessPoolExecutor() as pool:
        others = [[turn for turn in some if turn.author not in out] for out in outs]
        *parts, whole = pool.map(questioned, [*map(_of_people, others), _of_people(some)])
    questions = {author: part for out, part in zip(outs, parts, strict=True) for author in out}
    candidates = [item for turn in some for item in _beside(turn, points[id(turn)], questions[turn.author])]
    left: dict[str, Several] = {}
    for out in outs:
        places = eased([item for item in candidates if item.author not in out])
        left |= {author: Several(questions[author], *places) for author in out}
    return left, Several(whole, *eased(candidates))


def _of_people(turns: Iterable[Turn]) -> list[tuple[list[str], bool]]:
    """What tells how many questions each holds, and whether it holds several."""
    return [(turn.forms, len(turn.wanted) > 1) for turn in turns]


def _beside(turn: Turn, ranking: Sequence[Tally], questions: Mapping[str, int]) -> Iterator[Candidate]:
    """The topics after the first, but for those that may be answered or not."""
    first, *others = [item for item in ranking if item.topic != HAZARD]
    shown = Several(questions, {}, {}).shown(turn.forms)
    left = [names for names in turn.wanted if first.topic not in names] if len(turn.wanted) > 1 else []
    for number, item in enumerate(others[: MOST - 1], SECOND):
        if item.place and item.topic not in turn.may:
            yield Candidate(turn.author, number, [*shown, *item.place], any(item.topic in names for names in left))


def questioned(turns: Sequence[tuple[list[str], bool]]) -> dict[str, int]:
    """The points of words and marks for more than one question."""
    return logistic([names for names, _ in turns], [several for _, several in turns], OF_FORMS)


def eased(candidates: Sequence[Candidate]) -> tuple[dict[str, int], dict[str, int]]:
    """The points of a topic's place and of what its message shows: of a second topic, and of those after it."""
    seconds = [item for item in candidates if item.number == SECOND]
    others = [item for item in candidates if item.number > SECOND]
    one, other = (logistic([i.names for i in own], [i.asked for i in own], OF_PLACES) for own in (seconds, others))
    return one, other


def logistic(rows: Sequence[Sequence[str]], truth: Sequence[bool], lasso: float) -> dict[str, int]:
    """The points of names for the truth, few of them, and where they start: accelerated proximal gradient."""
    seen = collections.Counter(name for names in rows for name in names)
    names = {name: number for number, name in enumerate(sorted(n for n, times in seen.items() if times >= LEAST_FORMS))}
    at = [(row, names[name]) for row, own in enumerate(rows) for name in own if name in names]
    place = np.array(at, dtype=np.int64)
    size = (len(rows), len(names))
    matrix = sparse.csr_matrix((np.ones(len(place), np.float32), (place[:, 0], place[:, 1])), shape=size)
    across, wanted = matrix.T.tocsr(), np.array(truth, np.float32)
    step = 1 / (REACH * np.asarray(matrix.sum(0)).ravel() / 4 + 1)
    weights = old = np.zeros(len(names), np.float32)
    start, pace = 0.0, 1.0
    for _ in range(STEPS * 2):
        after = (1 + np.sqrt(1 + 4 * pace * pace)) / 2
        push, pace = (pace - 1) / after, after
        ahead = weights + push * (weights - old)
        slope = 1 / (1 + np.exp(-(matrix @ ahead + start))) - wanted
        moved = ahead - step * (across @ slope)
        old, weights = weights, np.sign(moved) * np.maximum(np.abs(moved) - step * lasso, 0)
        start -= float(slope.mean())
    whole = {name: int(np.rint(weights[number] * FINE)) for name, number in names.items()}
    return {START: int(np.rint(start * FINE)), **{name: value for name, value in whole.items() if value}}


def named(turn: Turn, ranking: Sequence[Tally], several: Several, bars: Bars) -> set[str]:
    """The topics that the service would name."""
    found = decided(turn.message, ranking, turn.context, several, bars)
    if not found and turn.context and goes_on(turn.message, ranking, bars, turn.context):
        return set(turn.context)
    return {item.topic for item in found} or {"unclear"}


def ideal(turns: Sequence[Turn], points: Ranked, size: int) -> str:
    """The share of messages with so many questions whose best topics are the wanted ones."""
    some = [turn for turn in turns if len(turn.wanted) == size and HAZARD not in set().union(*turn.wanted)]
    right = 0
    for turn in some:
        best = [item.topic for item in points[id(turn)] if item.topic != HAZARD][:size]
        right += outcome(turn, set(best)) == "exact"
    return f"{100 * right / len(some):.1f} % of {len(some)}"


def best_bars(turns: Sequence[Turn], points: Ranked, several: Mapping[str, Several]) -> Bars:
    """The bars that name most messages exactly, a wrong topic costing `COST` exact ones."""

    def worth(bars: Bars) -> float:
        got = [named(turn, points[id(turn)], several[turn.author], bars) for turn in turns]
        counts = collections.Counter(outcome(turn, names) for turn, names in zip(turns, got, strict=True))
        return counts["exact"] - COST * counts["wrong"]

    bars = Bars(first=-6, more=0, danger=0, lead=0, own=16)
    grids = {
        "first": range(-12, 5),
        "more": range(-10, 11, 2),
        "lead": range(5),
        "own": range(4, 29, 4),
        "danger": range(-4, 41, 4),
    }
    for name, values in grids.items():
        bars = max((Bars(**{**bars.as_dict(), name: value}) for value in values), key=worth)
    return bars


def written(fit: Fit, names: dict[str, int], topics: Sequence[str], several: Several, bars: Bars) -> int:
    """Write the table, a file a topic; the number of its entries."""
    for old in FOLDER.glob("*.toml"):
        old.unlink()
    entries = 0
    for column, topic in enumerate(topics):
        lines = [f"start = {int(fit.start[0, column])}", "", "[points]  # in its own clause, anywhere in the message"]
        for name, row in sorted(names.items()):
            here, anywhere = int(fit.here[row, column]), int(fit.anywhere[row, column])
            if here or anywhere:
                entries += 1
                lines.append(f"{json.dumps(name, ensure_ascii=False)} = [{here}, {anywhere}]")
        (FOLDER / f"{topic}.toml").write_text(NOTE + "\n".join(lines) + "\n", encoding="utf-8")
    parts = [NOTE.strip(), "[bars]", *(f"{name} = {value}" for name, value in bars.as_dict().items())]
    parts += ["", *_lines("second", several.second), *_lines("third", several.third)]
    (FOLDER / SEVERAL).write_text("\n".join(parts), encoding="utf-8")
    (FOLDER / QUESTIONS).write_text(NOTE + "\n".join(_lines("questions", several.questions)), encoding="utf-8")
    return entries + len(several.questions) + len(several.second) + len(several.third)


def _lines(name: str, table: Mapping[str, int]) -> list[str]:
    rows = (f"{json.dumps(name, ensure_ascii=False)} = {value}" for name, value in sorted(table.items()))
    return [f"[{name}]", *rows, ""]


NOTE = "# Fitted by tests/tools/fit_points.py; fit again rather than edit.\n"


def main() -> None:
    """Fit, print how unseen authors fare, and write the table if asked."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("files", nargs="+", type=Path)
    parser.add_argument("--write", action="store_true")
    parser.add_argument("--keep-bars", action="store_true", help="leave the bars as they stand in the table")
    options = parser.parse_args()
    models = tuple(model.name for model in load().models.values())
    given = [turn for path in options.files for turn in labelled(path, models)]
    known = given + [turn for path in sorted(VOICES.glob("*.jsonl")) for turn in labelled(path, models)]
    turns = [*known, *own(models), *dangers(models)]
    topics = sorted({name for turn in turns for names in (*turn.wanted, turn.may) for name in names})
    points = held_out(turns, topics)
    left, several = further(known, points)
    bars = best_bars(given, points, left)
    print("topics right if their number were known:", {n: ideal(known, points, n) for n in (1, 2, 3)})
    show(tally(known, [named(turn, points[id(turn)], left[turn.author], bars) for turn in known]))
    print(bars, len(several.questions), len(several.second), len(several.third))
    if options.write:
        bars = table().bars if options.keep_bars else bars
        fit, names = fitted(turns, topics)
        print(written(fit.whole_numbers(), names, topics, several, bars), "entries")


if __name__ == "__main__":
    main()
