"""Every concept, row and rule of the grammar is exercised by a text of the tests; phrases that are not, are counted."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from itertools import islice
from pathlib import Path

import pytest
from lark import Lark, Token, Transformer

from grammar import read
from grammar.attach import bare_systems, before_battery
from grammar.dangers.find import find_dangers
from grammar.facts import facts
from grammar.figures.weighed import HOW
from grammar.later import answers, gone_on
from grammar.reading import Message, Stated
from grammar.scene import claims as attach
from grammar.scene import groups, near
from grammar.text import parts
from tests.generator import phrases
from tests.tools.dead import Entry, Tables, dangers, dead, families, lexicon, strings, texts, used

READING = Path(__file__).with_name("reading")
DETAILS = tomllib.loads((READING / "details.toml").read_text(encoding="utf-8"))
MODELS = ("Minnow", "Pike", "Sturgeon")
MOST_UNMET = 23.0  # phrases in a hundred that no text of the tests holds; python -m tests.tools.dead lists them
MOST_NEEDLESS = 9.0  # signs of danger in a hundred that add nothing to the others
CUES = ("about", "detail", "note", "request", "term", "thing", "word")
NEUTRAL = "zq"  # a word that means nothing
OF_CONVERSATION = re.compile(r"([a-z]+\.[a-z_]+)(?:\?|=(\d+);) ")
SMALL_WORDS = {
    "filler": ((groups, "FILLERS"), (near, "FILLERS"), (gone_on, "FILLERS")),
    "link": ((groups, "LINKS"), (near, "LINKS")),
    "follows": ((answers, "FOLLOWS"), (gone_on, "FOLLOWS")),
    "counted": ((before_battery, "small_words"),),
    "between": ((before_battery, "small_words"),),
    "leading": ((bare_systems, "small_words"),),
}
MOST_TRIED = {"sign": 400, "context": 6000, "look-alike": 3000}  # messages for one phrase
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


@pytest.fixture
def tables(monkeypatch) -> Tables:
    """The reader's tables, of which entries can be left out."""
    made = Tables()
    made.put_in(monkeypatch)
    return made


def asked(text: str) -> Message:
    """What is read in a text. "fact? ..." answers the question for it, "fact=300; ..." comes after that was said."""
    match = OF_CONVERSATION.match(text)
    if match is None:
        return read(text, MODELS)
    if match[2] is None:
        return read(text[match.end() :], MODELS, (match[1],))
    return read(text[match.end() :], MODELS, said=(Stated(match[1], float(match[2]), "", match[2], (0, 1)),))


def facts_of(message: Message) -> list[list[tuple]]:
    """What a message states, what it denies and what cannot be."""
    read_so = message.stated, message.denied, message.implausible
    return [[(item.fact, item.value, item.of, item.how == HOW) for item in items] for items in read_so]


def understood(message: Message) -> tuple:
    """What a message states, and its clauses."""
    return facts_of(message), [(clause.span, clause.asks) for clause in message.clauses]


def signs_of(message: Message) -> list[tuple[str, str]]:
    """The signs of danger of a message."""
    return [(danger.family, danger.status) for danger in message.dangers]


def found_in(text: str) -> list[tuple[str, str]]:
    """The same of a text of which nothing else is read: many are tried."""
    return [(danger.family, danger.status) for danger in find_dangers(text)]


@contextmanager
def without_small_word(entry: Entry) -> Iterator[None]:
    """Leave one of the small words out of all places that look for it."""
    with pytest.MonkeyPatch.context() as patch:
        for module, name in SMALL_WORDS[entry.table]:
            kept = getattr(module, name)
            less = (lambda asked, kept=kept: kept(asked) - {entry.phrase}) if callable(kept) else kept - {entry.phrase}
            patch.setattr(module, name, less)
        yield


def named(entries: Iterable[Entry]) -> str:
    """The entries, to be looked at: each needs a frame in tests/generator/frames.toml, or is to be taken out."""
    return "without effect:\n" + "\n".join(f"{entry.file} [{entry.table}] {entry.phrase!r}" for entry in entries)


def states(message: Message, fact: str, value: str, words: str) -> bool:
    """Whether these words state this value."""
    kind = facts()[fact].kind
    wanted = value == "true" if kind == "flag" else float(value) if kind == "number" else value
    return any((item.fact, item.value, item.text.lower()) == (fact, wanted, words) for item in message.stated)


def has_effect(tables: Tables, kind: str, entry: Entry, frame: str, words: str) -> bool:
    """Whether a phrase in this frame does what its class is for."""
    text = frame.replace("{}", words)
    message = asked(text)
    if kind in CUES:
        return message.says(f"{kind}:{entry.table}")
    if kind == "role":
        if not message.says(f"role:{entry.table}"):
            return False
        if any((item.fact, item.how) == (entry.table, "role") for item in message.stated):
            return True
        bare = frame.replace("{}", " ".join(NEUTRAL for _ in words.split()))
        if facts_of(asked(bare)) != facts_of(message):  # as where another concept has the phrase too
            return True
    if kind.startswith("="):
        return states(message, kind[1:], entry.table, words)
    if kind == "filler":
        with without_small_word(entry):
            return facts_of(asked(text)) != facts_of(message)
    concept = [line for line in tables.marks if line[0] == kind and line[1].table == entry.table]
    left_out = concept if kind in ("count", "role") else [(kind, entry)]  # "a pair of" has "pair" beside it
    with tables.without(*left_out):
        return understood(asked(text)) != understood(message)


def works(tables: Tables, kind: str, entry: Entry, first: list[str]) -> bool:
    """Whether a phrase has an effect in some frame; `first` are those in which others of its concept had one."""
    for frame in dict.fromkeys((*first, *phrases.around(kind, entry.table))):
        if any(has_effect(tables, kind, entry, frame, words) for words in phrases.spelled(entry.phrase)):
            first[:] = [frame, *(other for other in first if other != frame)]
            return True
    return False


@pytest.mark.slow
@pytest.mark.parametrize("kinds", [("value",), ("role",), ("alike", "count", "clause", "filler"), CUES], ids="/".join)
def test_every_phrase_has_an_effect(kinds, tables, tell):
    lines = [line for line in tables.marks if line[0] in kinds or (line[0].startswith("=") and "value" in kinds)]
    first: dict[tuple[str, str], list[str]] = {}
    without = [
        entry for kind, entry in lines if not works(tables, kind, entry, first.setdefault((kind, entry.table), []))
    ]
    tell(f"phrases of {', '.join(kinds)}: {len(lines) - len(without)} of {len(lines)} have an effect in a made message")
    assert not without, named(without)


@pytest.mark.slow
def test_every_sign_of_danger_has_an_effect(tables, tell):
    lines = [line for line in tables.marks if line[0] == "sign"]
    without, needless = [], []
    for line in lines:
        entry = line[1]
        sign = entry.table, "general" if families()[entry.table].get("general") else "present"
        found = ""
        for text in islice(phrases.sign_messages(entry), MOST_TRIED["sign"]):
            if sign in found_in(text):
                found = found or text
                with tables.without(line):
                    if sign not in found_in(text):
                        break
        else:
            needless += [entry] if found else []
        if not found or sign not in signs_of(read(found)):
            without.append(entry)
    tell(f"signs of danger: {len(lines) - len(without)} of {len(lines)} are found, {len(needless)} by others too")
    assert not without, named(without)
    assert 100 * len(needless) / len(lines) <= MOST_NEEDLESS


@pytest.mark.slow
@pytest.mark.parametrize("kind", ["context", "look-alike"])
def test_what_signs_are_told_apart_by_has_an_effect(kind, tables, tell):
    """A phrase that takes a sign away or changes how it counts, and that no other phrase does it for."""
    lines = [line for line in tables.marks if line[0] == kind]
    signs = sorted(entry for of, entry in tables.marks if of == "sign")
    without = []
    for line in lines:
        made = phrases.context_messages(line[1]) if kind == "context" else phrases.look_alike_messages(line[1], signs)
        for text in islice(made, MOST_TRIED[kind]):
            with tables.without(line):
                bare = found_in(text)
            if bare != found_in(text) == signs_of(read(text)):
                break
        else:
            without.append(line[1])
    tell(f"phrases of {kind}: {len(lines) - len(without)} of {len(lines)} change a sign in a made message")
    assert not without, named(without)


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
