"""Each name of a module stands for one thing: bound twice, the first is hidden from the functions that meant it."""

from __future__ import annotations

import ast
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
MODULES = sorted(path for folder in ("grammar", "service") for path in (ROOT / folder).rglob("*.py"))


def bound(source: str) -> Iterator[str]:
    """The names that the top level of a module binds, as often as it does; imports and branches aside."""
    for node in ast.parse(source).body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            yield node.name
        elif isinstance(node, ast.Assign | ast.AnnAssign):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            yield from (name.id for target in targets for name in ast.walk(target) if isinstance(name, ast.Name))


@pytest.mark.parametrize("path", MODULES, ids=[str(path.relative_to(ROOT)) for path in MODULES])
def test_no_name_is_bound_twice(path):
    assert [name for name, times in Counter(bound(path.read_text("utf-8"))).items() if times > 1] == []


def test_the_guard_sees_a_name_that_is_bound_twice():
    assert Counter(bound('READ = {"a"}\ndef f(): return READ\nREAD = {"b"}\n'))["READ"] == 2
