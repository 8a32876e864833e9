"""Entries of the lexicon that no text of the tests holds: `python -m tests.tools.dead [CASES.jsonl ...] [--delete]`.

Lists them by file, those apart that stand in no message of the given files either; --delete takes these out.
"""

from __future__ import annotations

import argparse
import ast
import json
import re
import tomllib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from grammar import reader
from grammar.dangers import find as danger_finder
from grammar.dangers import table as danger_table
from grammar.dangers import text as danger_text
from grammar.files import TABLES
from grammar.lexicon import slips, vocabulary
from grammar.lexicon.phrases import Hit, Phrases, compiled
from grammar.lexicon.slips import mended
from grammar.lexicon.vocabulary import Found, Trie
from grammar.text.tokens import cut
from tests.generator.messages import LEVELS, messages

TESTS = Path(__file__).parents[1]
WORDS = TABLES / "words"
CONTEXT = "danger_context.toml"  # what signs of danger are told apart by
MADE = 600  # messages of each level of the generator


class Entry(NamedTuple):
    """A phrase of the lexicon: its file, the table that holds it, the phrase; how a sign of danger counts."""

    file: str
    table: str
    phrase: str
    how: str = ""


def strings(content: Any) -> Iterator[str]:
    """Every string in a parsed file."""
    if isinstance(content, str):
        yield content
    elif isinstance(content, dict | list):
        for part in content.values() if isinstance(content, dict) else content:
            yield from strings(part)


@cache
def texts() -> frozenset[str]:
    """The messages that the tests own: examples, cases, mails, conversations, what test files ask, what is made."""
    found: set[str] = set()
    for folder in ("reading", "cases", "rules", "inbox"):
        for path in (TESTS / folder).rglob("*.toml"):
            found.update(strings(tomllib.loads(path.read_text(encoding="utf-8"))))
    for path in TESTS.rglob("*.py"):
        nodes = ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        found.update(node.value for node in nodes if isinstance(node, ast.Constant) and isinstance(node.value, str))
    for path in (*(TESTS / "inbox").glob("*.eml"), *(TESTS.parent / "demo_conversations").glob("*.md")):
        found.add(path.read_text(encoding="utf-8", errors="replace"))
    found.update(made.text for level in LEVELS for made in messages(MADE, level))
    return frozenset(found)


def asked_in(path: Path) -> Iterator[str]:
    """The messages of a file of labelled cases."""
    for line in path.read_text(encoding="utf-8").splitlines():
        yield from (turn["text"] for turn in json.loads(line)["turns"])


def lexicon() -> tuple[Trie, frozenset[Entry]]:
    """A trie that tells which phrase was found, and all its entries."""
    trie, entries = Trie(), []
    for path in sorted(WORDS.glob("*.toml")):
        entries += [Entry(path.name, concept, phrase) for _, concept, phrase in vocabulary.entries(path)]
    entries += [Entry("values.toml", f"{fact[1:]} = {value}", phrase) for fact, value, phrase in vocabulary.values()]
    for entry in entries:
        trie.add(entry.phrase, (entry.file, f"{entry.table}\t{entry.phrase}"))
    return trie, frozenset(entries)


@cache
def classes() -> dict[str, tuple[str, ...]]:
    """The classes of words that signs of danger are made of."""
    content = tomllib.loads((WORDS / "danger_words.toml").read_text(encoding="utf-8"))
    return {name: tuple(words.split()) for name, words in content["classes"].items()}


def dangers() -> tuple[Phrases, frozenset[Entry]]:
    """The same for the tables of dangers."""
    entries = []
    for path in sorted(WORDS.glob("danger*.toml")):
        for table, spec in tomllib.loads(path.read_text(encoding="utf-8")).items():
            if table not in ("class", "classes"):
                entries += [Entry(path.name, table, phrase, how) for how, phrase in _phrases(spec)]
    named = {"\t".join(entry): [entry.phrase] for entry in entries}
    return Phrases(*compiled(named, classes())), frozenset(entries)


def _phrases(spec: Any, how: str = "") -> Iterator[tuple[str, str]]:
    """The phrases of a table of dangers; "a b" among its pairs are two classes in a row, the sign first or last.

    How they count is "" for what is enough by itself, "short", "beside/battery" or the name of their list.
    """
    for name, part in spec.items():
        if name == "pairs":
            yield from (("", f"<{sign}> ** <{place}>") for sign, place in map(str.split, part))
            yield from (("last", f"<{place}> ** <{sign}>") for sign, place in map(str.split, part))
        elif isinstance(part, dict):
            yield from _phrases(part, name)
        elif isinstance(part, list) and name not in ("needs", "instead"):
            yield from (("/".join(filter(None, (how, "" if name == "says" else name))), phrase) for phrase in part)


@cache
def families() -> dict[str, dict[str, Any]]:
    """The families of danger as their files hold them."""
    tables = (tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(WORDS.glob("dangers*.toml")))
    return {name: spec for table in tables for name, spec in table.items() if name != "class"}


class Tables:
    """The tables of the reader, built so that entries can be left out: what is read without one is not its effect."""

    def __init__(self) -> None:
        self.out: frozenset[str] = frozenset()  # the marks of the entries left out
        self.marks: dict[tuple[str, Entry], str] = {}  # by class and entry
        self.trie = _Trie(self)
        lines = [(path.name, line) for path in sorted(WORDS.glob("*.toml")) for line in vocabulary.entries(path)]
        for file, (kind, concept, phrase) in (*lines, *(("values.toml", line) for line in vocabulary.values())):
            mark = self._mark(kind, Entry(file, concept, phrase))
            self.trie.add(phrase, (kind, f"{concept}\t{mark}"))
        named: dict[str, dict[str, tuple[str, str]]] = {"sign": {}, "context": {}, "look-alike": {}}
        for entry in sorted(dangers()[1]):
            if entry.file != CONTEXT:
                kind, name = "sign", "/".join(filter(None, (entry.table, entry.how)))
            elif entry.table == "look-alikes":
                kind = name = "look-alike"
            else:
                kind, name = "context", "other-boat" if entry.how == "boat" else entry.how or entry.table
            named[kind][self._mark(kind, entry)] = name, entry.phrase
        found = {kind: _Marked(self, entries) for kind, entries in named.items()}
        self.signs: Any = replace(
            danger_table.signs(), signs=found["sign"], context=found["context"], masks=found["look-alike"]
        )

    def _mark(self, kind: str, entry: Entry) -> str:
        return self.marks.setdefault((kind, entry), str(len(self.marks)))

    def put_in(self, patch: Any) -> None:
        """Have the reader use these tables; `patch` is pytest's monkeypatch."""
        for module in (reader, slips, danger_text):
            patch.setattr(module, "lexicon", lambda: self.trie)
        patch.setattr(danger_finder, "signs", lambda: self.signs)

    @contextmanager
    def without(self, *lines: tuple[str, Entry]) -> Iterator[None]:
        """Leave these out for a while, each given with its class."""
        self.out = frozenset(self.marks[line] for line in lines)
        try:
            yield
        finally:
            self.out = frozenset()


class _Trie(Trie):
    """A trie whose names end in the mark of their entry."""

    def __init__(self, tables: Tables) -> None:
        super().__init__()
        self.tables = tables

    def find(self, words: Sequence[str]) -> list[Found]:
        found: dict[Found, None] = {}
        for hit in super().find(words):
            concept, _, mark = hit.concept.partition("\t")
            if mark not in self.tables.out:
                found[Found(hit.kind, concept, hit.start, hit.end)] = None
        return list(found)


class _Marked:
    """Phrases of danger, each with a name of its own until it is found."""

    def __init__(self, tables: Tables, named: Mapping[str, tuple[str, str]]) -> None:
        self.tables, self.named = tables, named
        self.phrases = Phrases(*compiled({mark: [phrase] for mark, (_, phrase) in named.items()}, classes()))

    def find(self, words: Sequence[str]) -> list[Hit]:
        hits = (hit for hit in self.phrases.find(words) if hit.name not in self.tables.out)
        return list(dict.fromkeys(Hit(self.named[hit.name][0], hit.at) for hit in hits))


def used(messages: Iterable[str]) -> set[Entry]:
    """The entries that some message exercises."""
    trie, _ = lexicon()
    table, _ = dangers()
    found: set[Entry] = set()
    for text in messages:
        for hit in trie.find([token.word for token in mended(cut(text))]):
            found.add(Entry(hit.kind, *hit.concept.split("\t")))
        found.update(Entry(*hit.name.split("\t")) for hit in table.find(danger_text.read(text).words))
    return found


def dead(met: set[Entry] | None = None) -> list[Entry]:
    """The entries that no text of the tests exercises, in the order of their files. `met`: those that are."""
    _, phrases = lexicon()
    _, signs = dangers()
    return sorted((phrases | signs) - (used(texts()) if met is None else met))


def delete(entries: Iterable[Entry]) -> None:
    """Take phrases out of the lexicon files, as text, so that all else in them stays as it is."""
    for entry in entries:
        path = TABLES / entry.file if entry.file == "values.toml" else WORDS / entry.file
        text = path.read_text(encoding="utf-8")
        head, _, value = entry.table.partition(" = ")
        begin = text.index(f'["{head}"]') if f'["{head}"]' in text else text.index(f"[{head}]")
        if value:
            begin = re.compile(rf'^"?{re.escape(value)}"? = \[', re.MULTILINE).search(text, begin).start()  # type: ignore[union-attr]
        elif not entry.how and "\nsays = [" in text[begin:]:  # the table's own phrases, not those of a list beside them
            begin = text.index("\nsays = [", begin)
        quoted = json.dumps(entry.phrase, ensure_ascii=False)
        at = re.compile(rf"{re.escape(quoted)},? ?").search(text, begin)
        assert at is not None, entry
        path.write_text(text[: at.start()] + text[at.end() :], encoding="utf-8")


def main() -> None:
    """List the dead entries; take out those that stand in none of the files given."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("cases", nargs="*", type=Path)
    parser.add_argument("--delete", action="store_true")
    options = parser.parse_args()
    met = used(text for path in options.cases for text in asked_in(path))
    unmet = dead()
    gone = [entry for entry in unmet if entry not in met and not entry.file.startswith("danger")]
    for entry in unmet:
        print(entry.file, f"[{entry.table}]", entry.phrase, "" if entry in gone else "(kept)", sep="  ")
    if options.delete:
        delete(gone)


if __name__ == "__main__":
    main()
