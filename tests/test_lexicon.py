"""Every concept, row and rule of the grammar is exercised by a text of the tests; phrases that are not, are counted."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest
from lark import Lark, Token, Transformer

from grammar import attach, groups, parts, read
from tests.tools.dead import dangers, dead, lexicon, strings, texts, used

READING = Path(__file__).with_name("reading")
DETAILS = tomllib.loads((READING / "details.toml").read_text(encoding="utf-8"))
MODELS = ("Minnow", "Pike", "Sturgeon")
MOST_UNMET = 23.0  # phrases in a hundred that no text of the tests holds; python -m tests.tools.dead lists them
UNMET_DANGERS = 30.0  # a phrase of danger stands for many: "hot|warm to|for"


def examples() -> Iterator[str]:
    """The texts of the tests, those that are examples of reading first."""
    for path in (*sorted(READING.glob("*.toml")), *sorted(READING.rglob("*/*.toml"))):
        yield from strings(tomllib.loads(path.read_text(encoding="utf-8")))
    yield from sorted(texts())


@pytest.mark.slow
def test_the_entries_of_the_lexicon_are_exercised(tell):
    met = used(texts())
    unmet = dead(met)
    for name, entries, most in (("lexicon", lexicon()[1], MOST_UNMET), ("dangers", dangers()[1], UNMET_DANGERS)):
        concepts = {entry[:2] for entry in entries} - {entry[:2] for entry in met}
        assert concepts == set(), "no text of the tests holds a phrase of these: write one, or take them out"
        share = 100 * sum(entry in entries for entry in unmet) / len(entries)
        tell(f"{name}: of {len(entries)} phrases {share:.1f} % stand in no text of the tests")
        assert share <= most


@pytest.mark.parametrize(("detail", "text"), [(name, text) for name, said in DETAILS.items() for text in said])
def test_a_detail_is_found(detail, text):
    assert read(text).says(detail)


class Rows(dict):
    """A table that notes which of its keys were asked for and found, here or in the tables that it holds."""

    def __init__(self, content, seen: set, name: tuple = ()) -> None:
        super().__init__(content)
        self.seen, self.name = seen, name

    def get(self, key, default=None):
        found = super().get(key, default)
        if isinstance(found, dict):
            return Rows(found, self.seen, (*self.name, key))
        if key in self:
            self.seen.add((*self.name, key))
        return found


@pytest.mark.slow
def test_every_row_of_heads_is_used(monkeypatch):
    table, seen = attach.heads(), set()
    rows = {(thing, dim) for thing, facts in table.items() for dim in facts}
    monkeypatch.setattr(attach, "heads", lambda: Rows(table, seen))
    for text in examples():
        read(text, MODELS)
        if seen >= rows:
            break
    assert rows - seen == set()


@pytest.mark.slow
def test_every_row_of_roles_states_its_fact():
    left = set(attach.roles())
    for text in examples():
        left -= {item.fact for item in read(text, MODELS).stated if item.how == "role"}
        if not left:
            break
    assert left == set()


class Used(Transformer):
    """Notes the rules and terminals of a grammar that a text uses."""

    def __init__(self) -> None:
        super().__init__()
        self.seen: set[str] = set()

    def __default__(self, data, children, meta):
        self.seen |= {str(data), *(child.type for child in children if isinstance(child, Token))}
        return super().__default__(data, children, meta)


@pytest.mark.slow
def test_every_terminal_of_the_quantities_is_used():
    notes = Used()
    parser = Lark(parts.grammar(), parser="lalr", transformer=notes, maybe_placeholders=False)
    wanted = {item.name for item in parser.terminals} - {"WS"} | {"amounts", "labelled", "share", "reading", "amount"}
    for text in examples():
        parser.parse(parts.lowered(text))
        if notes.seen >= wanted:
            break
    assert wanted - notes.seen == set()


class Noting:
    """The callbacks of the group grammar, which note that they were called."""

    def __init__(self) -> None:
        self.seen: set[str] = set()
        for name in self.rules():
            setattr(self, name, self._noting(name, getattr(groups.Build(), name)))

    @staticmethod
    def rules() -> set[str]:
        return {name for name in vars(groups.Build) if not name.startswith("_")}

    def _noting(self, name, call):
        def noted(children):
            self.seen.add(name)
            return call(children)

        return noted


def test_every_rule_of_the_groups_is_used(monkeypatch):
    noting = Noting()
    parser = Lark(groups.rules(), parser="lalr", transformer=noting, maybe_placeholders=False)
    monkeypatch.setattr(groups, "_parser", lambda: parser)
    for text in examples():
        read(text, MODELS)
        if noting.seen >= noting.rules():
            break
    assert noting.rules() - noting.seen == set()
