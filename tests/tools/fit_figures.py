"""Fits the points of figures (grammar/figures) to labelled messages. Not needed to run the service.

    python -m tests.tools.fit_figures MESSAGES.jsonl ... [--write]

Needs numpy and scipy, which the project itself does not. Besides the files given (one case a line: id, turns with text
and expect.facts) it reads tests/reading/voices/*.jsonl and the phrases of tests/reading/FACT.toml.
It fits without each fourth of the files in turn, prints what the points then make of the figures that the rules leave
open, and with --write fits to all of them. The same files give the same points.
"""

from __future__ import annotations

import argparse
import collections
import json
import tomllib
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

import numpy as np
from scipy import sparse

from grammar.attach.by_rule import can_be, converted, ruled
from grammar.facts import facts
from grammar.figures.weighed import FOLDER, START, best, signs
from grammar.reader import laid_out
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from service.commands.score import same
from service.house import load
from tests.tools.labelled import VOICES

POINTS, SMALLEST = 5, 1  # points to one unit of log-odds; fewer than the second are dropped
LEAST = 4  # messages in which a sign must stand
LASSO, RIDGE, STEPS, REACH = 2.0, 1.0, 200, 8.0
OPEN = 3.0  # what a figure that the rules leave open weighs
OF_PHRASES = 4  # how many figures of messages one of a phrase counts for: it was chosen to tell one thing from another
FOLDS = 4
SEED = -3.0
Totals = dict[str, int]
NOTE = "# Fitted by tests/tools/fit_figures.py; fit again rather than edit.\n"


@dataclass(slots=True)
class Figure:
    """A figure of a labelled message: its signs, the facts that it could state, and what the label says it states."""

    message: str
    text: str
    names: frozenset[str]
    possible: frozenset[str]
    states: frozenset[str]
    default: str  # what it is by default, "" for nothing
    open: bool  # whether the rules leave it open


def figures_of(path: Path, models: Sequence[str]) -> list[Figure]:
    """The figures of a file of cases."""
    found = []
    for line in path.read_text(encoding="utf-8").splitlines():
        case = json.loads(line)
        for number, turn in enumerate(case["turns"]):
            told = turn["expect"].get("facts")
            if told is None:
                continue
            scene, _, _ = laid_out(turn["text"], models)
            claims = ruled(scene)
            settled = {claim.fact for claim in claims.values() if claim.how != "default"}
            for item in scene.measured:
                claim = claims.get(item.at)
                weak = claim is None or claim.how == "default"
                states = _stated(scene, item, told)
                if not weak and (claim is None or claim.fact not in states):
                    continue  # the rules see another fact in it, or one that the label leaves out
                possible = frozenset(fact for fact in facts() if can_be(scene, item, fact))
                if weak:
                    possible -= settled
                states = states & possible if weak or claim is None else frozenset({claim.fact}) & possible
                found.append(
                    Figure(
                        f"{path.stem}:{case['id']}.{number}",
                        item.quantity.text,
                        frozenset(signs(scene, item, claims)),
                        possible,
                        states,
                        claim.fact if claim is not None else "",
                        weak,
                    )
                )
    return found


def phrases(models: Sequence[str]) -> list[Figure]:
    """The figures of the phrases that state one fact or nothing of it (tests/reading/FACT.toml), and tell no other."""
    found = []
    for path in sorted(VOICES.parent.glob("*.*.toml")):
        fact, table = path.name.removesuffix(".toml"), tomllib.loads(path.read_text("utf-8"))
        rows = [*table["silent"], *(row for row in table["states"] if row.get("of", 1) == 1)]
        for told, phrase in ((row.get("value"), phrase) for row in rows for phrase in row["phrases"]):
            scene, _, _ = laid_out(phrase, models)
            claims = ruled(scene)
            for item in scene.measured:
                claim = claims.get(item.at)
                if (claim is None or claim.how == "default") and can_be(scene, item, fact):
                    names = frozenset(signs(scene, item, claims))
                    states = _stated(scene, item, {} if told is None else {fact: told})
                    found.append(Figure(phrase, item.quantity.text, names, frozenset({fact}), states, "", True))
    return found * OF_PHRASES


def _stated(scene: Scene, item: Item, told: dict[str, Any]) -> frozenset[str]:
    return frozenset(fact for fact, value in told.items() if _is(scene, item, fact, value))


def _is(scene: Scene, item: Item, fact: str, value: Any) -> bool:
    if facts()[fact].kind not in ("number", "text"):
        return False
    if item.dim == "CRATE" and not scene.quantities("AH"):  # a share of a capacity that nobody tells
        return False
    wanted = value if isinstance(value, list) else [value]
    own = [converted(scene, item, fact, quantity) for quantity in item.part.quantities] if item.part else []
    return any(same(one, other, fact) for one in own if one is not None for other in wanted)


def fitted(figures: Sequence[Figure]) -> dict[str, Totals]:
    """The points by sign and fact: logistic, one fact against the rest, lasso to keep them few."""
    topics = sorted({fact for figure in figures for fact in figure.states})
    column = {fact: number for number, fact in enumerate(topics)}
    seen = collections.Counter(name for figure in figures for name in figure.names)
    names = {name: number for number, name in enumerate(sorted(n for n, times in seen.items() if times >= LEAST))}
    at = [(row, names[name]) for row, figure in enumerate(figures) for name in sorted(figure.names) if name in names]
    place = np.array(at, dtype=np.int64)
    size = (len(figures), len(names))
    matrix = sparse.csr_matrix((np.ones(len(place), np.float32), (place[:, 0], place[:, 1])), shape=size)
    truth = np.zeros((len(figures), len(topics)), np.float32)
    weight = np.zeros_like(truth)
    for row, figure in enumerate(figures):
        weight[row, [column[fact] for fact in figure.possible if fact in column]] = OPEN if figure.open else 1.0
        states = [column[fact] for fact in figure.states]
        truth[row, states] = 1
        if len(states) > 1:  # its value is that of two facts: of which it is told cannot be seen
            weight[row, states] /= len(states)
    weights = np.zeros((len(names), len(topics)), np.float32)
    old, start, pace = weights, np.full((1, len(topics)), SEED, np.float32), 1.0
    across = matrix.T.tocsr()
    counts = np.asarray(matrix.multiply(1).T @ weight)
    step = 1 / (REACH * (counts / 4 + RIDGE))
    for _ in range(STEPS):
        after = (1 + np.sqrt(1 + 4 * pace * pace)) / 2
        push, pace = (pace - 1) / after, after
        ahead = weights + push * (weights - old)
        slope = ((1 / (1 + np.exp(-(matrix @ ahead + start))) - truth) * weight).astype(np.float32)
        moved = ahead - step * (across @ slope + RIDGE * ahead)
        old, weights = weights, (np.sign(moved) * np.maximum(np.abs(moved) - step * LASSO, 0)).astype(np.float32)
        start = start - 0.3 * slope.sum(0, keepdims=True) / (0.25 * np.maximum(weight.sum(0, keepdims=True), 1))
    whole = np.rint(weights * POINTS)
    whole[np.abs(whole) < SMALLEST] = 0
    table: dict[str, Totals] = {START: {fact: int(np.rint(start[0, column[fact]] * POINTS)) for fact in topics}}
    for name, row in names.items():
        if points := {fact: int(whole[row, number]) for fact, number in column.items() if whole[row, number]}:
            table[name] = points
    return table


def judged(table: dict[str, Totals], figures: Sequence[Figure]) -> collections.Counter[str]:
    """What the points make of the figures that the rules leave open."""
    counts: collections.Counter[str] = collections.Counter()
    for figure in figures:
        if not figure.open:
            continue
        fact = best(_sums(table, figure.names), figure.possible.__contains__)
        counts[_outcome(figure, fact)] += 1
    return counts


def _sums(table: dict[str, Totals], names: frozenset[str]) -> Totals:
    totals = dict(table[START])
    for name in names:
        for fact, number in table.get(name, {}).items():
            totals[fact] += number
    return totals


def _outcome(figure: Figure, fact: str) -> str:
    before = figure.default
    if not fact or fact == before:
        return "left, rightly" if not figure.states or before in figure.states else "left, though it states a fact"
    if before and before in figure.states and fact not in figure.states:
        return "spoilt"
    if fact in figure.states:
        return "gained" if before not in figure.states else "left, rightly"
    return "wrong, though it states a fact" if figure.states else "stated, where the label has none"


def written(table: dict[str, Totals]) -> int:
    """Write the table, a file for each fact; the number of its points."""
    FOLDER.mkdir(exist_ok=True)
    for old in FOLDER.glob("*.toml"):
        old.unlink()
    entries = 0
    for fact in table[START]:
        lines = [f"{START} = {table[START][fact]}"]
        lines += [
            f"{json.dumps(name, ensure_ascii=False)} = {points[fact]}"
            for name, points in sorted(table.items())
            if fact in points and name != START
        ]
        entries += len(lines)
        (FOLDER / f"{fact}.toml").write_text(NOTE + "\n".join(lines) + "\n", encoding="utf-8")
    return entries


def main() -> None:
    """Fit, print how unseen files fare, and write the points if asked."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("files", nargs="+", type=Path)
    parser.add_argument("--write", action="store_true")
    options = parser.parse_args()
    models = tuple(model.name for model in load().models.values())
    paths = [*options.files, *sorted(VOICES.glob("*.jsonl"))]
    own = phrases(models)
    with ProcessPoolExecutor() as pool:
        files = list(pool.map(partial(figures_of, models=models), paths))
    totals: collections.Counter[str] = collections.Counter()
    for fold in range(FOLDS):
        kept = [figure for number, file in enumerate(files) if number % FOLDS != fold for figure in file] + own
        left = [figure for number, file in enumerate(files) if number % FOLDS == fold for figure in file]
        totals += judged(fitted(kept), left)
    print(dict(totals.most_common()))
    if options.write:
        print(written(fitted([figure for file in files for figure in file] + own)), "points")


if __name__ == "__main__":
    main()
