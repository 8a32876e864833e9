"""Regular expressions that wait until they are asked, and that each of them is one."""

from __future__ import annotations

import pkgutil
import re
from importlib import import_module

import pytest

import grammar
import service
from grammar.text.patterns import Later, regex


def every():
    """The expressions of all modules, also those in tuples and tables."""
    for package in (grammar, service):
        for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
            if "__main__" not in module.name:
                yield from within(vars(import_module(module.name)).values())


def within(values):
    for value in values:
        if isinstance(value, Later):
            yield value
        elif isinstance(value, tuple | list | dict):
            yield from within(value.values() if isinstance(value, dict) else value)


def test_each_is_an_expression():
    found = list(every())
    assert len(found) > 300
    for item in found:
        assert item.pattern


def test_it_does_what_the_compiled_one_does():
    amps = regex(r"(\d+) ?A\b", re.IGNORECASE)
    assert amps.search("200 a fuse")[1] == "200"
    assert amps.sub("x", "10 A, 20 A") == "x, x"
    assert amps.flags & re.IGNORECASE


def test_a_mistake_shows_when_it_is_asked():
    wrong = regex("(")
    with pytest.raises(re.error):
        wrong.search("")
