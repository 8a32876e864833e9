"""The message as the rules of attachment see it: its row of items, and what else was found in it."""

from __future__ import annotations

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from grammar.lexicon.clauses import Stretch
from grammar.lexicon.vocabulary import Found
from grammar.reading import Span, Stated
from grammar.scene.items import Item
from grammar.scene.pressed import pressings
from grammar.text.tokens import Token

NAMED = frozenset({"value", "thing", "alike"})
ABOUT = frozenset({"word", "request", "role"})
DESCRIBED = frozenset({"battery.chemistry", "battery.duty"})  # said of the battery that is asked for
LITHIUM = frozenset({"lfp", "lithium-other"})
OWNERS = frozenset({"battery", "bms", "load"})
SAG = {("word", "sag"), ("role", "drop")}
SIZE = {("request", "what_size"), ("request", "which"), ("request", "how_many")}
TO_IT = frozenset({"meter", "multimeter", "voltmeter", "tester", "probes", "prods"})  # "held the meter on it"
CHARGE = ("word", "charge")
STOPS = frozenset({"past", "below", "under", "beyond", "stop", "stopping", "stops", "leaving", "leave", "leaves"})
MARKS = frozenset({"mark", "level", "line", "point", "in", "left"})
STAYS = frozenset({"remains", "remained"})  # "how much remains" asks of a share
WEAK_SAG = "down"  # "down to 12.1" says nothing of a load unless one is named

AHEAD = 120  # characters


@dataclass(slots=True)
class Sides:
    """The heads on both sides of a quantity, where its group has them; `tied`: a word ties it to the left one."""

    left: Item | None = None
    right: Item | None = None
    tied: bool = False


@dataclass
class Scene:
    """A message cut into items, with the phrases found in it and what is known of it so far."""

    text: str
    tokens: Sequence[Token]
    items: list[Item]
    found: Sequence[Found]
    clauses: Sequence[Stretch]
    expected: frozenset[str] = frozenset()  # facts that the desk asked for
    weights: list[float] = field(default_factory=list)  # scene/near.py
    sides: dict[int, Sides] = field(default_factory=dict)  # scene/groups.py
    said: tuple[Stated, ...] = ()  # facts of the conversation before
    likely: tuple[str, ...] = ()  # facts by which the things go that were asked about last
    loaded: bool = False  # a voltage was read under load
    read_at_rest: bool = False  # a voltage was read at rest
    implausible: list[Stated] = field(default_factory=list)  # values that cannot be

    def span(self, start: int, end: int) -> Span:
        """The characters that these words cover."""
        return self.tokens[start].start, self.tokens[end - 1].end

    def ahead(self, at: int) -> str:
        """The characters before a place, as many as can speak of what stands there: a text may be long."""
        return self.text[max(0, at - AHEAD) : at]

    def word(self, at: int) -> str:
        """The word at a place; "" outside the message."""
        return self.tokens[at].word if 0 <= at < len(self.tokens) else ""

    def quantities(self, *dims: str) -> list[Item]:
        """The quantity items of these dimensions, each dimension in order."""
        return [item for dim in dims for item in self.by_dim.get(dim, ())]

    def about(self, *topics: str) -> bool:
        """Whether a topic word, request or role of these stands in the message: "word:sag", "request:enough"."""
        return not self.topics.isdisjoint(topics)

    def before(self, item: Item) -> Item | None:
        """The item before."""
        return self.items[item.at - 1] if item.at else None

    def after(self, item: Item) -> Item | None:
        """The item after."""
        return self.items[item.at + 1] if item.at + 1 < len(self.items) else None

    def named(self, kind: str, concept: str) -> list[Found]:
        """The phrases of this class and concept."""
        return [item for item in self.found if item.kind == kind and item.concept == concept]

    @cached_property
    def vocabulary(self) -> frozenset[str]:
        """All words of the message."""
        return frozenset(token.word for token in self.tokens)

    @cached_property
    def by_dim(self) -> dict[str, list[Item]]:
        """The quantities by their dimension."""
        groups: dict[str, list[Item]] = {}
        for item in self.items:
            if item.dim:
                groups.setdefault(item.dim, []).append(item)
        return groups

    @cached_property
    def figures(self) -> frozenset[float]:
        """The volts and bare numbers of the message."""
        values = (item.quantity.value for item in self.quantities("VOLT", "NUM"))
        return frozenset(value for value in values if not isinstance(value, str))

    @cached_property
    def measured(self) -> list[Item]:
        """All quantities, in order."""
        return [item for item in self.items if item.dim]

    @cached_property
    def at_word(self) -> list[Item]:
        """The item that each word belongs to."""
        return [item for item in self.items for _ in range(item.start, item.end)]

    @cached_property
    def topics(self) -> frozenset[str]:
        """The topic words, requests and roles of the message."""
        return frozenset(f"{item.kind}:{item.concept}" for item in self._told if item.kind in ABOUT)

    @cached_property
    def head_items(self) -> list[Item]:
        """The items that quantities may belong to."""
        return [item for item in self.items if item.head]

    @cached_property
    def has_model(self) -> bool:
        """Whether a model of the house's is named."""
        return any(item.kind == "model" for item in self.items)

    @cached_property
    def by_place(self) -> dict[int, list[Item]]:
        """The items by their clause, in order."""
        found: dict[int, list[Item]] = defaultdict(list)
        for item in self.items:
            found[self.clause(item.start)].append(item)
        return found

    @cached_property
    def heads_by_clause(self) -> dict[int, list[Item]]:
        """The heads by their clause."""
        return {clause: [item for item in items if item.head] for clause, items in self.by_place.items()}

    @cached_property
    def heads(self) -> frozenset[str]:
        """The things named in the message."""
        return frozenset(item.head for item in self.head_items)

    @cached_property
    def facts(self) -> frozenset[str]:
        """The facts that value words state, and their subjects: "battery.chemistry", "battery"."""
        names = {item.fact for item in self.items if item.fact}
        return frozenset(names | {name.partition(".")[0] for name in names})

    def names_of(self, fact: str) -> frozenset[str]:
        """The values that the message names for a fact: the kinds of battery it speaks of."""
        return self._names.get(fact, frozenset())

    @cached_property
    def names(self) -> frozenset[str]:
        """The names of all items."""
        return frozenset(item.name for item in self.items)

    @cached_property
    def _names(self) -> dict[str, frozenset[str]]:
        names: dict[str, set[str]] = {}
        for item in self.items:
            names.setdefault(item.fact, set()).add(item.name)
        return {fact: frozenset(these) for fact, these in names.items()}

    @cached_property
    def lithium(self) -> bool:
        """Whether the message speaks of lithium."""
        return any(item.name in LITHIUM for item in self.items if item.fact)

    @cached_property
    def lithium_known(self) -> bool:
        """The same, or the conversation did and this message names no other kind."""
        named = any(item.fact == "battery.chemistry" for item in self.items)
        before = {item.value for item in self.said if item.fact == "battery.chemistry"}
        return self.lithium or (not named and not LITHIUM.isdisjoint(before))

    @cached_property
    def roles(self) -> list[Found]:
        """The role words that are no part of a longer name or of a quantity."""
        long = [item for item in self.items if item.kind in NAMED and item.end - item.start > 1]
        covered = {place: item for item in long for place in range(item.start, item.end)}
        measured = {
            at for item in self.items if item.dim and item.kind != "count" for at in range(item.start, item.end)
        }
        return [
            item
            for item in self.found
            if item.kind == "role" and not _hidden(item, covered) and measured.isdisjoint(range(item.start, item.end))
        ]

    @cached_property
    def sags(self) -> list[Found]:
        """The words of a voltage that falls under load."""
        strong = "load" in self.heads
        found: Iterable[Found] = (item for item in self.found if (item.kind, item.concept) in SAG)
        found = (item for item in found if strong or self.word(item.start) != WEAK_SAG)
        told = [item for item in found if not self._leads_to(item.end, "TEMP")]  # "it dropped to 22 F" is the weather
        told = [item for item in told if self.word(item.start) not in STAYS or self._leads_to(item.end, "NUM", "VOLT")]
        told = [item for item in told if self.word(item.start) != "held" or not self._holds_a_meter(item.end)]
        return sorted([*told, *pressings(self.tokens)], key=lambda item: item.start)

    def _holds_a_meter(self, place: int) -> bool:
        return not TO_IT.isdisjoint(self.word(at) for at in range(place, place + 3))

    def _leads_to(self, place: int, *dims: str) -> bool:
        return any(item.dim in dims for item in self.at_word[place : place + 2])

    @cached_property
    def blown(self) -> bool:
        """Whether something trips or blows; "how many trips" are outings."""
        return any(item.concept == "blown" for item in self.roles)

    @cached_property
    def denials(self) -> list[Found]:
        """The words that deny what follows."""
        return self.named("clause", "denial")

    @cached_property
    def doubts(self) -> list[Found]:
        """The words of one who does not know."""
        return self.named("note", "no_idea")

    @cached_property
    def owners(self) -> list[Item]:
        """The things whose amps a peak may be: batteries, their kinds, loads."""
        return [item for item in self.items if item.head in OWNERS or item.fact == "battery.chemistry"]

    @cached_property
    def asked(self) -> frozenset[int]:
        """The heads that are what is asked for, in or right after a request for a size: "what fuse"."""
        sizes = (item for item in self.found if (item.kind, item.concept) in SIZE)
        places = {at for item in sizes for at in range(item.start, self._described(item.end))}
        return frozenset(head.at for head in self.head_items if head.start in places)

    def _described(self, end: int) -> int:
        """How far a request for a size reaches over volts and kinds: "what size of 12 V gel battery"."""
        last = end + 2
        for item in self.items[self.at_word[end].at :] if end < len(self.at_word) else ():
            if item.start >= last:
                break
            if end <= item.start and (item.dim == "VOLT" or item.fact in DESCRIBED):
                last = item.end + 2
        return last

    @cached_property
    def by_clause(self) -> dict[int, frozenset[str]]:
        """The topic words, requests and heads of each clause: "word:charge", "head:load"."""
        names: dict[int, set[str]] = {}
        for item in self._told:
            if item.kind in ("word", "request"):
                names.setdefault(self.clause(item.start), set()).add(f"{item.kind}:{item.concept}")
        for head in self.head_items:
            names.setdefault(self.clause(head.start), set()).add(f"head:{head.head}")
        return {clause: frozenset(these) for clause, these in names.items()}

    @cached_property
    def _told(self) -> list[Found]:
        """What was found, less a charge that is only the mark to stop at: "not past the half-charge mark"."""
        return [item for item in self.found if (item.kind, item.concept) != CHARGE or not self._is_mark(item)]

    def _is_mark(self, item: Found) -> bool:
        """Whether the charge is half of one that is to be left in: "stop at half charge", "half the charge in it"."""
        before = [self.word(at) for at in range(item.start - 5, item.start)]
        half = "half" in before[-2:] and self.word(item.start) == "charge" and item.end == item.start + 1
        return half and (not STOPS.isdisjoint(before) or self.word(item.end) in MARKS)

    def clause(self, at: int) -> int:
        """The clause in which a word stands."""
        return bisect_right(self._clause_ends, at)

    @cached_property
    def _clause_ends(self) -> list[int]:
        return [clause.end for clause in self.clauses]

    @cached_property
    def role_starts(self) -> list[int]:
        """Where the role words begin; so for the others below."""
        return [item.start for item in self.roles]

    @cached_property
    def head_starts(self) -> list[int]:
        """Where the heads begin."""
        return [item.start for item in self.head_items]

    @cached_property
    def owner_starts(self) -> list[int]:
        """Where the owners begin."""
        return [item.start for item in self.owners]

    @cached_property
    def denial_starts(self) -> list[int]:
        """Where the denials begin."""
        return [item.start for item in self.denials]

    @cached_property
    def doubt_starts(self) -> list[int]:
        """Where the doubts begin."""
        return [item.start for item in self.doubts]

    @cached_property
    def sag_starts(self) -> list[int]:
        """Where the words of falling begin."""
        return [item.start for item in self.sags]


def _hidden(role: Found, covered: dict[int, Item]) -> bool:
    """Whether a role word is only a part of a longer name: "start" of "start battery"."""
    name = covered.get(role.start)
    return name is not None and role.end <= name.end and role.end - role.start < name.end - name.start
