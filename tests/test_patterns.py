"""Regular expressions that wait until they are asked, and that each of them is one."""

from __future__ import annotations

import json
import pkgutil
import re
from importlib import import_module
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis.strategies import characters, from_regex

import grammar
import service
from grammar.text.patterns import Later, regex

READING = Path(__file__).with_name("reading")


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
    found = list(dict.fromkeys(every()))
    assert len(found) > 300
    for item in found:
        assert item.pattern


def test_it_does_what_the_compiled_one_does():
    amps = regex(r"(\d+) ?A\b", re.IGNORECASE)
    assert amps.search("200 a fuse")[1] == "200"
    assert amps.sub("x", "10 A, 20 A") == "x, x"
    assert amps.flags & re.IGNORECASE


def test_where_none_of_its_words_stand_there_is_no_match_and_nothing_is_compiled():
    frozen = regex(r"\b(?:frozen|froze)\b", re.IGNORECASE)
    text = "12.6 V at rest, is it good?"
    assert (frozen.search(text), frozen.match(text), frozen.fullmatch(text)) == (None, None, None)
    assert (list(frozen.finditer(text)), frozen.findall(text), frozen.sub("-", text)) == ([], [], text)
    assert "_compiled" not in vars(frozen)
    assert frozen.search("It FROZE solid")


@pytest.mark.parametrize("text", ["LİTHİUM", "lıthıum", "LITHIUM", "it is ſtuck: lithium"])
def test_capitals_of_any_script_are_seen_as_the_engine_sees_them(text):
    words = regex("lithium|stuck", re.IGNORECASE)
    assert re.search("lithium|stuck", text, re.IGNORECASE)
    assert words.search(text)


@pytest.mark.slow
def test_each_finds_what_it_finds_when_every_text_is_searched():
    lines = [line for path in sorted(READING.glob("*.jsonl")) for line in path.read_text(encoding="utf-8").splitlines()]
    texts = [turn["text"] for line in lines[::7] for turn in json.loads(line)["turns"]]
    for item in dict.fromkeys(every()):
        compiled = re.compile(*item.told)
        for text in texts:
            assert bool(item.search(text)) == bool(compiled.search(text)), (item.told, text)


@pytest.mark.slow
@pytest.mark.parametrize("item", [pytest.param(item, id=f"{at}") for at, item in enumerate(dict.fromkeys(every()))])
def test_what_it_matches_has_one_of_its_words(item):
    """Texts that each expression matches, made from it: none of them may be passed over."""

    @settings(max_examples=4, database=None, derandomize=True, suppress_health_check=list(HealthCheck))
    @given(from_regex(re.compile(*item.told), alphabet=characters()))
    def matches(text):
        assert bool(item.search(text)) == bool(re.search(item.told[0], text, item.told[1]))

    matches()


def test_a_mistake_shows_when_it_is_asked():
    wrong = regex("(")
    with pytest.raises(re.error):
        wrong.search("")
