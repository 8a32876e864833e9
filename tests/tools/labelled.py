"""Messages with the topics they ask about: read from files, and what the routing made of them."""

from __future__ import annotations

import collections
import hashlib
import json
import tomllib
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path

from grammar import read
from grammar.reading import Message
from service.routing.evidence import evidence
from service.routing.request import HANDED_OVER
from service.routing.several import forms
from service.routing.tally import HAZARD, rows_of

OWN = Path(__file__).parents[1] / "reading" / "asked"  # messages by what they ask
VOICES = OWN.with_name("voices")  # whole cases, one a line
NONE = "nothing"  # heads what asks nothing: thanks, a greeting
FOLDS = 3  # the cases of a file without voices are split by their ids


@dataclass(slots=True)
class Turn:
    """A labelled message with its signs: `rows` for each clause, with their places, `whole` for the message."""

    id: str
    message: Message
    wanted: list[frozenset[str]]
    may: frozenset[str]
    context: tuple[str, ...] = ()
    own: bool = False
    only: str = ""  # the one topic of which the label tells, "" for all
    rows: list[dict[str, int]] = field(default_factory=list)
    whole: set[str] = field(default_factory=set)
    forms: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.rows = rows_of(self.message, evidence(self.message, self.context))
        self.whole = set().union(*self.rows)
        self.forms = forms(self.message)

    @property
    def author(self) -> str:
        """Who wrote it, and with whom it is left out together."""
        name = self.id.partition("-")[0]
        if name.startswith(("v", "w")) or self.own:
            return name
        return f"dev{int(hashlib.md5(self.id.encode()).hexdigest(), 16) % FOLDS}"


def labelled(path: Path, models: Sequence[str]) -> list[Turn]:
    """The turns of a file of cases; a turn's context is what was asked in the one before."""
    turns = []
    for line in path.read_text(encoding="utf-8").splitlines():
        case = json.loads(line)
        context: tuple[str, ...] = ()
        for turn in case["turns"]:
            expect = turn["expect"]
            wanted = [frozenset(item.split("|")) for item in expect["topics"]]
            message = read(turn["text"], models=models)
            turns.append(Turn(case["id"], message, wanted, frozenset(expect.get("may", ())), context))
            named = [item.split("|")[0] for item in expect["topics"]]
            context = tuple(name for name in named if name not in HANDED_OVER) or context
    return turns


def own(models: Sequence[str]) -> list[Turn]:
    """The project's own messages under what they ask: "topic + topic", "before > topic", "topic (may as well, may)"."""
    turns = []
    for path in sorted(OWN.glob("*.toml")):
        for heading, texts in tomllib.loads(path.read_text(encoding="utf-8")).items():
            before, _, asked = heading.rpartition(" > ")
            asked, _, may = asked.rstrip(")").partition(" (")
            wanted = [frozenset(name.split("|")) for name in asked.split(" + ") if name != NONE]
            also = frozenset(may.split(", ")) if may else frozenset()
            context = tuple(before.split(" + ")) if before else ()
            turns += [
                Turn(f"{path.stem}-{heading}-{number}", read(text, models=models), wanted, also, context, own=True)
                for number, text in enumerate(texts)
            ]
    return turns


def dangers(models: Sequence[str]) -> list[Turn]:
    """The signs of danger and what looks like them: their labels tell of a hazard or none, and of no other topic."""
    turns = []
    for path in sorted(OWN.parent.glob("dangers*.toml")):
        author = path.stem.replace("_", "")
        for status, families in tomllib.loads(path.read_text(encoding="utf-8")).items():
            wanted = [frozenset({HAZARD})] if status in ("present", "now") else []
            texts = [text for name, found in families.items() if name != "threads" for text in found]
            turns += [
                Turn(f"{author}-{status}-{n}", read(text, models=models), wanted, frozenset(), own=True, only=HAZARD)
                for n, text in enumerate(texts)
            ]
    return turns


def outcome(turn: Turn, got: set[str]) -> str:
    """exact, wrong, asked or missed; hazards, which are found elsewhere, left aside."""
    wanted = [names for names in turn.wanted if HAZARD not in names]
    got = got - {HAZARD}
    if len(wanted) < len(turn.wanted):  # beside the hazard's own answer a hand-over says nothing
        got = got - set(HANDED_OVER)
    allowed = set().union(*wanted, turn.may, {HAZARD})
    if all(names & got for names in wanted) and got <= allowed:
        return "exact"
    if got - allowed - set(HANDED_OVER):
        return "wrong"
    return "asked" if got & set(HANDED_OVER) or not got else "missed"


def tally(turns: Sequence[Turn], got: Sequence[set[str]]) -> dict[str, collections.Counter[str]]:
    """Outcomes by group: each author, one or several questions, out of scope, and with a hazard."""
    groups: dict[str, collections.Counter[str]] = collections.defaultdict(collections.Counter)
    for turn, names in zip(turns, got, strict=True):
        result = outcome(turn, names)
        wanted = [item for item in turn.wanted if HAZARD not in item]
        if len(wanted) < len(turn.wanted):
            groups["hazard"][result] += 1
        elif not wanted or all(item <= set(HANDED_OVER) for item in wanted):
            groups["out of scope"]["exact" if names <= {*HANDED_OVER, *turn.may} else "wrong"] += 1
        else:
            groups[turn.author][result] += 1
            groups["voices" if turn.author.startswith("v") else "dev"][result] += 1
            groups["one question" if len(wanted) == 1 else "several"][result] += 1
            groups["follow-up" if turn.context else "first turn"][result] += 1
    return groups


def show(groups: dict[str, collections.Counter[str]]) -> None:
    """Print the outcomes."""
    for name, counts in sorted(groups.items()):
        total = sum(counts.values())
        shares = "  ".join(f"{key} {100 * counts[key] / total:5.1f}" for key in ("exact", "wrong", "asked", "missed"))
        print(f"{name:14}{total:5}  {shares}")
