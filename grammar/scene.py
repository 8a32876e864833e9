"""The message as the phrase grammar sees it: quantities, names, words and marks in one row, each with its place."""
from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from grammar.clauses import Stretch
from grammar.reading import Part, Quantity, Span
from grammar.tokens import Token, ends
from grammar.vocabulary import Found

NAMED = frozenset({"value", "thing", "alike"})
ABOUT = frozenset({"word", "request", "role"})
JOINERS = frozenset({"or", "not", "vs", "instead", "/", "than"})
WEIGHED = JOINERS | {"a", "an", "of", "rather"}
UNSHARED = frozenset({"NUM", "COUNT", "PERCENT", "TIME"})
OWNERS = frozenset({"battery", "bms", "load", "motor"})
SAG = {("word", "sag"), ("role", "drop")}
SIZE = {("request", "what_size"), ("request", "which"), ("request", "how_many")}
NAMES = frozenset({"thing", "alike", "model", "count"})
CHARGERS = {"dc-dc": "dcdc", "alternator": "alternator", "solar": "panel"}
HEAD_OF_VALUE = {  # a value word that is also the thing it speaks of
    "load.kind": "load",
}


@dataclass(slots=True)
class Item:
    """One piece of the row. `kind`: quantity, times, series, noise, thing, value, model, alike, word or mark."""

    kind: str
    start: int  # in words of the message; end not included
    end: int
    name: str = ""  # a thing's concept, a value, a model's name, a word
    fact: str = ""  # of a value
    head: str = ""  # what a quantity beside it may belong to
    part: Part | None = None
    dim: str = ""
    at: int = 0  # place in the row
    clause: int = 0
    sentence: int = 0

    @property
    def quantity(self) -> Quantity:
        """The (first) quantity of a part. Only for items that hold one."""
        assert self.part is not None
        return self.part.quantities[0]


@dataclass(slots=True)
class Sides:
    """The heads on both sides of a quantity, where its group has them; `tied`: a word ties it to the left one."""

    left: Item | None = None
    right: Item | None = None
    tied: bool = False


@dataclass(slots=True)
class Scene:
    """A message cut into items, with the role words found in it."""

    text: str
    tokens: list[Token]
    items: list[Item]
    roles: list[Found]
    notes: list[Found]
    clauses: list[Stretch]
    topics: frozenset[str] = frozenset()  # topic words that stand in the message: "sag", "charge"
    sags: list[Found] = field(default_factory=list)  # the topic and role words of a voltage that falls
    denials: list[Found] = field(default_factory=list)
    heads: frozenset[str] = frozenset()
    kinds: frozenset[str] = frozenset()  # the values that words state: "lfp", "series"
    stated: frozenset[str] = frozenset()  # the facts of the value words
    facts: frozenset[str] = frozenset()  # the subjects of the value words: "battery", "bank", "load"
    head_items: list[Item] = field(default_factory=list)
    by_clause: dict[int, frozenset[str]] = field(default_factory=dict)  # topic words, requests and heads of each clause
    owners: list[Item] = field(default_factory=list)  # whose amps a peak may be: batteries, their kinds, loads
    owner_starts: list[int] = field(default_factory=list)
    asked: frozenset[int] = frozenset()  # places of the heads that are what is asked for: "what fuse"
    words: list[str] = field(default_factory=list)
    weights: list[float] = field(default_factory=list)  # grammar/near.py
    sides: dict[int, Sides] = field(default_factory=dict)  # grammar/groups.py
    read: bool = False  # the volts have been settled
    loaded: bool = False  # one of them is under load
    read_at_rest: bool = False  # one of them is at rest
    role_starts: list[int] = field(default_factory=list)
    head_starts: list[int] = field(default_factory=list)
    sag_starts: list[int] = field(default_factory=list)

    @property
    def lithium(self) -> bool:
        """Whether the message speaks of lithium."""
        return not self.kinds.isdisjoint(("lfp", "lithium-other"))

    def about(self, *topics: str) -> bool:
        """Whether a word of one of these topics stands in the message."""
        return not self.topics.isdisjoint(topics)

    def span(self, start: int, end: int) -> Span:
        """The characters that these words cover."""
        return self.tokens[start].start, self.tokens[end - 1].end

    def says(self, start: int, end: int) -> str:
        """The text of these words as it was typed."""
        return self.text[slice(*self.span(start, end))]

    def quantities(self, *dims: str) -> list[Item]:
        """The quantity items of these dimensions, in order; all of them where none is named."""
        return [item for item in self.items if item.dim and (not dims or item.dim in dims)]

    def word(self, at: int) -> str:
        """The word at a place; "" outside the message."""
        return self.words[at] if 0 <= at < len(self.words) else ""

    def note(self, concept: str) -> list[Found]:
        """The notes of this concept."""
        return [item for item in self.notes if item.concept == concept]


def scene_of(
    text: str, tokens: list[Token], found: Sequence[Found], parts: Sequence[Part], clauses: list[Stretch]
) -> Scene:
    """The scene of a message from its words, the phrases found in them and the parts of the quantities grammar."""
    taken = _quantity_items(tokens, parts)
    names = _name_items(found, taken, tokens, text)
    items = []
    at = clause = sentence = 0
    while at < len(tokens):
        item = taken.get(at) or names.get(at) or _plain(tokens, at, text)
        item.at = len(items)
        while clause + 1 < len(clauses) and at >= clauses[clause].end:
            clause += 1
        item.clause, item.sentence = clause, sentence
        if item.kind == "mark" and item.name == "end":
            sentence += 1
        items.append(item)
        at = item.end
    _share_units(items)
    heads = [item for item in items if item.head]
    long = [item for item in items if item.kind in NAMED and item.end - item.start > 1]
    covered = {place: item for item in long for place in range(item.start, item.end)}
    roles = [item for item in found if item.kind == "role" and not _hidden(item, covered)]
    sags = [item for item in found if (item.kind, item.concept) in SAG]
    owners = [item for item in items if item.head in OWNERS or item.fact == "battery.chemistry"]
    return Scene(
        text,
        tokens,
        items,
        roles,
        [item for item in found if item.kind == "note"],
        clauses,
        topics=frozenset(f"{item.kind}:{item.concept}" for item in found if item.kind in ABOUT),
        sags=sags,
        denials=[item for item in found if (item.kind, item.concept) == ("clause", "denial")],
        heads=frozenset(item.head for item in heads),
        stated=frozenset(item.fact for item in items if item.fact),
        kinds=frozenset(item.name for item in items if item.fact),
        facts=frozenset(item.fact.partition(".")[0] for item in items if item.fact),
        head_items=heads,
        by_clause=_by_clause(found, heads, clauses),
        owners=owners,
        owner_starts=[item.start for item in owners],
        asked=_asked(found, heads),
        words=[token.word for token in tokens],
        role_starts=[item.start for item in roles],
        head_starts=[item.start for item in heads],
        sag_starts=[item.start for item in sags],
    )


def _share_units(items: list[Item]) -> None:
    """A bare number takes the unit of the one it is weighed against: "350 or 400 A", "24 not 12 volts"."""
    for item in items:
        if item.dim != "NUM" or item.part is None or len(item.part.quantities) != 1:
            continue
        for place in (item.at + 2, item.at + 3, item.at - 2):
            other = items[place] if 0 <= place < len(items) else None
            between = items[min(item.at, place) + 1 : max(item.at, place)]
            if other is None or not other.dim or other.dim in UNSHARED or other.part is None:
                continue
            names = {word.name for word in between}
            if names & JOINERS and names <= WEIGHED:
                unit, kind = other.quantity.unit, other.quantity.kind
                quantity = replace(item.quantity, unit=unit, kind=kind)
                if isinstance(other.quantity.value, str):
                    quantity = replace(quantity, value=f"{float(item.quantity.value):g}")
                item.part, item.dim = replace(item.part, dim=other.dim, quantities=(quantity,)), other.dim
                break


def _hidden(role: Found, covered: dict[int, Item]) -> bool:
    """Whether a role word is only a part of a longer name: "start" of "start battery"."""
    name = covered.get(role.start)
    return name is not None and role.end <= name.end and role.end - role.start < name.end - name.start


def _by_clause(found: Sequence[Found], heads: Sequence[Item], clauses: Sequence[Stretch]) -> dict[int, frozenset[str]]:
    names: dict[int, set[str]] = {}
    ends = [clause.end for clause in clauses]
    for item in found:
        if item.kind in ("word", "request"):
            names.setdefault(bisect_right(ends, item.start), set()).add(f"{item.kind}:{item.concept}")
    for head in heads:
        names.setdefault(head.clause, set()).add(f"head:{head.head}")
    return {clause: frozenset(these) for clause, these in names.items()}


def _asked(found: Sequence[Found], heads: Sequence[Item]) -> frozenset[int]:
    """The heads that stand in or right after a request for a size: "what fuse", "what size of charger"."""
    places = {at for item in found if (item.kind, item.concept) in SIZE for at in range(item.start, item.end + 2)}
    return frozenset(head.at for head in heads if head.start in places)


def _quantity_items(tokens: Sequence[Token], parts: Sequence[Part]) -> dict[int, Item]:
    items: dict[int, Item] = {}
    at = 0
    for part in parts:
        if part.kind in ("word", "mark"):
            continue
        while at < len(tokens) and tokens[at].end <= part.span[0]:
            at += 1
        end = at
        while end < len(tokens) and tokens[end].start < part.span[1]:
            end += 1
        if end > at:
            dim = part.dim if part.quantities else ""
            items[at] = Item(part.kind, at, end, part.text.lower(), part=part, dim=dim)
            at = end
    return items


def _name_items(
    found: Sequence[Found], taken: dict[int, Item], tokens: Sequence[Token], text: str
) -> dict[int, Item]:
    """The names, longest first, one per word; a word of a quantity is no name."""
    busy = {place for item in taken.values() for place in range(item.start, item.end)}
    named = [item for item in found if item.kind in NAMES or item.kind.startswith("=")]
    things = {(item.start, item.end): item.concept for item in named if item.kind == "thing"}
    items: dict[int, Item] = {}
    for item in sorted(named, key=lambda item: (item.start, -item.end, item.kind != "alike")):
        places = range(item.start, item.end)
        if busy.isdisjoint(places):
            busy.update(places)
            counted = item.kind == "count"
            items[item.start] = _counted(item, tokens, text) if counted else _named(item, things)
    return items


def _named(found: Found, things: dict[tuple[int, int], str]) -> Item:
    fact = found.kind[1:] if found.kind.startswith("=") else ""
    places = range(found.start, found.end)
    inside = [things[start, end + 1] for end in places for start in places if (start, end + 1) in things]
    if found.kind == "thing":
        head = found.concept
    elif found.kind == "alike":
        head = ""
    elif found.kind == "model":
        head = "load"
    else:
        head = CHARGERS.get(found.concept, "charger") if fact == "charger.kind" else HEAD_OF_VALUE.get(fact, "") or (inside[-1] if inside else "")
    if fact == "load.kind" and found.concept == "engine":
        head = "engine"
    kind = "value" if fact else found.kind
    return Item(kind, found.start, found.end, found.concept, fact, head)


def _counted(found: Found, tokens: Sequence[Token], text: str) -> Item:
    """A word that counts: "both", "a pair of"."""
    span = tokens[found.start].start, tokens[found.end - 1].end
    typed = text[slice(*span)]
    quantity = Quantity(float(found.concept), "", "count", typed, span)
    return Item("count", found.start, found.end, typed.lower(), part=Part("count", typed, span, "COUNT", (quantity,)), dim="COUNT")


def _plain(tokens: list[Token], at: int, text: str) -> Item:
    word = tokens[at].word
    if word[:1].isalnum():
        return Item("word", at, at + 1, word)
    return Item("mark", at, at + 1, "end" if ends(tokens, at, text) else word)
