"""Fits the table of points (service/points) to labelled messages. Not needed to run the service.

    python -m tests.tools.fit_points MESSAGES.jsonl ... [--report] [--write]

Needs numpy and scipy, which the project itself does not. Besides the files given (a case a line: id, turns with text
and expect, as in tests/cases) it reads the project's own messages, tests/reading/asked/*.toml. --report fits without
each author in turn (the id up to its first dash) and prints how the author's messages then fare; --write puts the
table in its place. The same files give the same table.
"""
from __future__ import annotations

import argparse
import collections
import json
import sys
import tomllib
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
from scipy import sparse

from grammar import read
from grammar.reading import Message
from service.evidence import evidence, shape
from service.house import load
from service.route import FOLDER, HANDED_OVER, SEVERAL, Bars, Table, Weight, choose, rank, ranked_from, route

OWN = Path(__file__).parents[1] / "reading" / "asked"
POINTS = 4  # points to one unit of log-odds
SMALLEST = 2  # points under this are dropped
LEAST_AUTHORS, LEAST_MESSAGES = 2, 3
LASSO, RIDGE = 0.5, 1.6
STEPS = 150
FOLDS = 3  # the cases of an author with many styles are split by their ids


@dataclass(slots=True)
class Turn:
    """A labelled message."""

    id: str
    author: str
    message: Message
    wanted: list[frozenset[str]]
    may: frozenset[str]
    context: tuple[str, ...] = ()
    own: bool = False
    rows: list[set[str]] = field(default_factory=list)
    whole: set[str] = field(default_factory=set)
    before: tuple[str, ...] = ()

    def allowed(self) -> set[str]:
        return set().union(*self.wanted, self.may, {"hazard"})
