"""What may claim a figure, in a written order: unit, role word, group, plausible range, nearest head.

The rules of the dimensions (grammar/attach/) share this.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import NamedTuple

from grammar.files import TABLES, toml
from grammar.lexicon.vocabulary import Found
from grammar.scene.denied import is_missing
from grammar.scene.items import Item
from grammar.scene.near import around, gap
from grammar.scene.scene import Scene

FIGURES = ("AMP", "NUM")
RATINGS = frozenset({"battery.cca", "battery.ca", "battery.reserve"})
ASKING = frozenset({"what", "which", "much", "many", "whatever"})  # "what CCA for 180 A": the amps are no CCA
LACKING = frozenset({"no", "without"})  # "no CCA on the label"
TILL = frozenset({"until", "till", "til", "how", "what", "ages", "forever", "overnight"})
CLAIMED = 1.5  # a figure this close before a word has it
TOUCHING = 0.3
BEFORE_IT = 0.1  # of two places named, the one after a reading is its own
NOT_OURS = "-"
SMALL_LOAD = 40.0  # amps of a pump or a fridge
IN_USE = 1.0  # amps: what is left on by mistake takes less
SURELY_USED = 2.0  # amps that nobody leaves on unawares
LASTING = frozenset(
    {"round the clock", "night and day", "day and night", "24 7", "all the time", "constantly", "nonstop"}
)
PLACES = frozenset({"bow", "house", "stern", "leisure", "domestic"})
SOURCES = frozenset({"alternator", "charger", "dcdc"})
BESIDE_IT = frozenset({"to", "beside", "by", "near", "off", "from", "with", "behind"})
SAID_SO = frozenset({"is", "s", "are", "its", "was", "only", "just", "(", ",", "thats", "which"})
NEAREST = 7.0  # a head further away than this has nothing to do with a quantity


class Claim(NamedTuple):
    """What a quantity was found to be, and what settled it."""

    fact: str
    how: str


UNSURE = frozenset({"default", "near", "range", "weighed"})  # settled so, a claim gives way to plainer words
NOTHING = Claim(NOT_OURS, "grammar")


@cache
def heads() -> dict[str, dict[str, str]]:
    """Thing x dimension -> fact."""
    return toml(TABLES / "heads.toml")


@dataclass(frozen=True, slots=True)
class Role:
    """What the role words of a fact may claim; `rank` is its place in roles.toml."""

    rank: int
    dims: tuple[str, ...]
    reach: float
    most: float = float("inf")
    weak: bool = False


@cache
def roles() -> dict[str, Role]:
    """The roles by fact. Raises TypeError for a row with an unknown key."""
    rows = toml(TABLES / "roles.toml")
    return {fact: Role(rank, tuple(row.pop("dims")), **row) for rank, (fact, row) in enumerate(rows.items())}


def row_of(head: Item | None, dim: str) -> str:
    """The fact that a quantity of this dimension states beside a head; "" for none."""
    return heads().get(head.head, {}).get(dim, "") if head else ""


def by_role(scene: Scene, item: Item, value: float, *, weak: bool = False) -> Claim | None:
    """The role word in reach that is nearest; of two as near the one first in roles.toml.

    Strong words claim before a group does, unless its head stands nearer on the right; `weak` ones only after.
    """
    best = float("inf"), 0
    claim = None
    for found in around(scene.roles, item, scene.role_starts):
        role = roles().get(found.concept)
        if role is None or role.weak is not weak or item.dim not in role.dims or value > role.most:
            continue
        if found.concept in RATINGS and (_rating_asked(scene, found) or scene.word(found.start - 1) in LACKING):
            continue
        if found.concept == "load.peak" and _is_no_peak(scene, found, value):
            continue
        if found.concept == "load.current" and _takes_time(scene, found):
            continue
        source = _rated_source(scene, item, found) if found.concept == "load.current" else ""
        if is_missing(scene, found):
            continue
        if found.concept == "drain.current" and (
            _is_in_use(scene, item, value, found) or beside_tiny(scene, item, value)
        ):
            continue
        far = gap(scene, item, found.start, found.end)
        if far > role.reach or _of_another(scene, item, found) or (far > 0 and not weak and _headed(scene, item, far)):
            continue
        if (far, role.rank) < best:
            best, claim = (far, role.rank), Claim(source or found.concept, "role")
    return claim


def _rated_source(scene: Scene, item: Item, found: Found) -> str:
    """What a "rated" makes of a figure that follows it where a source stands before: "the alternator's rated 80"."""
    if scene.word(found.start) != "rated" or found.end > item.start:
        return ""
    before = [head for head in scene.head_items if head.end <= found.start]
    between = {scene.word(at) for at in range(before[-1].end, found.start)} if before else set()
    aside = before and BESIDE_IT & {scene.word(before[-1].start - back) for back in (1, 2)}
    named = before and before[-1].head in SOURCES and between <= SAID_SO and not aside
    return row_of(before[-1], "AMP") if named else ""


def _is_in_use(scene: Scene, item: Item, value: float, found: Found) -> bool:
    """Whether a load that is named is on, all the time perhaps: "the fridge nicks 3.5 A round the clock"."""
    if beside(scene, item, "load", reach=TOUCHING):
        return True
    words = " ".join(scene.word(at) for at in range(found.start, found.end))
    if value >= SURELY_USED and words in LASTING and not {"drain", "charger", "alternator", "panel"} & scene.heads:
        return not scene.about("role:off") and not any(
            old.fact == "drain.current" for old in scene.said
        )  # "2.5 amps round the clock"
    return (
        value >= IN_USE and words in LASTING and "drain" not in scene.heads and beside(scene, item, "load", reach=2.0)
    )


def beside_tiny(scene: Scene, item: Item, value: float) -> bool:
    """Whether milliamps tell of a drain, so that whole amps are something else's: "panel gives 5 A, alarm 20 mA"."""
    return value >= SURELY_USED and any(
        other is not item and other.quantity.unit == "milliampere" for other in scene.quantities("AMP")
    )


def _rating_asked(scene: Scene, found: Found) -> bool:
    """Whether a rating is asked for, and the amps are what it is for: "what CCA for 180 A", "the CCA for 240 A"."""
    return scene.word(found.start - 1) in ASKING or scene.word(found.end) == "for"


def _is_no_peak(scene: Scene, found: Found, value: float) -> bool:
    """Whether it names a battery ("start 70 and bow 90", "start side lead") or a rating, or a small load comes on."""
    return _is_duty(scene, found) or _is_rating(scene, found) or (value <= SMALL_LOAD and _comes_on(scene, found))


def _is_rating(scene: Scene, found: Found) -> bool:
    """Whether the start is a part of a rating's name, which claims the amps itself: "cold start 720 A"."""
    named = found.end == found.start + 1 and scene.word(found.start - 1) == "cold"
    return named and not at_a_cold_start(scene, found.start - 1)


def at_a_cold_start(scene: Scene, at: int) -> bool:
    """Whether the "cold" that stands there tells of a moment: "400 A at a cold start", not "720 A cold start"."""
    before = scene.at_word[at - 1] if at else None
    return scene.word(at - 1) in ("a", "the") and (before is None or before.dim != "AMP")


def _comes_on(scene: Scene, found: Found) -> bool:
    """Whether a small load only comes on: "9 amps when the bilge kicks in"."""
    return scene.word(found.start) in ("kick", "kicks") and "in" in (scene.word(found.end - 1), scene.word(found.end))


def _takes_time(scene: Scene, found: Found) -> bool:
    """Whether a time is taken, no amps: "how long would it take at 4 amps", "a 70 Ah wet should take how long"."""
    if scene.word(found.start) not in ("take", "takes"):
        return False
    if scene.word(found.end) in TILL and found.start and scene.at_word[found.start - 1].dim == "AMP":
        return True  # "picking it all up again with 10 A takes until when"
    if not scene.about("request:how_long"):
        return False
    if found.start and scene.at_word[found.start - 1].dim == "AMP":  # "how long would 15 amps take"
        return True
    return scene.word(found.start - 1) in ("it", "that", "this", "they", "would", "will") or scene.word(found.end) in (
        "on",
        "at",
        "with",
        "then",
    )


def _is_duty(scene: Scene, found: Found) -> bool:
    """Whether a word of starting names a battery: others are told by their places, or "bat" or "side" follows."""
    if scene.word(found.start) not in ("start", "starter", "starting") or found.end != found.start + 1:
        return False
    if scene.word(found.end) in ("bat", "batt", "battery", "side", "bank"):
        return True
    return (
        bool(PLACES & scene.vocabulary)
        and "load" not in scene.heads
        and scene.word(found.start - 1) not in ("at", "to", "on")
    )


def _of_another(scene: Scene, item: Item, found: Found) -> bool:
    """Whether another figure of the kind touches the word or stands between: the word is that one's."""
    for place in (found.start - 1, found.start - 2):
        other = scene.at_word[place] if place >= 0 else item
        if other.end < found.start and scene.word(found.start - 1) == "and" and 0 <= item.start - found.end <= 1:
            continue  # "runs 275 and kicks 430"
        if other is not item and other.dim in FIGURES and gap(scene, other, found.start, found.end) <= CLAIMED:
            return item.end != found.start
    first, last = (item.end, found.start) if found.start >= item.end else (found.end, item.start)
    return any(scene.at_word[place].dim in FIGURES for place in range(first, last))


def _headed(scene: Scene, item: Item, far: float) -> bool:
    """Whether a head with a row for the quantity follows it more closely than that."""
    sides = scene.sides.get(item.at)
    if sides is None or sides.right is None or not row_of(sides.right, item.dim):
        return False
    return gap(scene, item, sides.right.start, sides.right.end) < far


def by_group(scene: Scene, item: Item) -> Claim | None:
    """The head of the item's group: the one it is tied to, else the right one, else the left one."""
    sides = scene.sides.get(item.at)
    if sides is None:
        return None
    left = None if asked(scene, sides.left) else sides.left
    closer = (
        left is not None
        and sides.right is not None
        and _touches(scene, item, left)
        and not _touches(scene, item, sides.right)
    )
    fuse = sides.right is not None and sides.right.head == "fuse" and _touches(scene, item, sides.right)
    order = (left, sides.right) if (sides.tied and not fuse) or closer else (sides.right, left)
    return next((Claim(fact, "grammar") for head in order if (fact := row_of(head, item.dim))), None)


def _touches(scene: Scene, item: Item, head: Item) -> bool:
    return gap(scene, item, head.start, head.end) <= TOUCHING


def by_nearness(scene: Scene, item: Item, reach: float = NEAREST, but: frozenset[str] = frozenset()) -> Claim | None:
    """The nearest head with a row for this dimension; one before the quantity is preferred."""
    best, claim = reach, None
    for head in around(scene.head_items, item, scene.head_starts):
        fact = row_of(head, item.dim)
        if not fact or head.head in but or asked(scene, head):
            continue
        if fact == "drain.current" and beside_tiny(scene, item, float(item.quantity.value)):
            continue
        far = gap(scene, item, head.start, head.end) + (0.5 if head.start > item.start else 0.0)
        if far < best:
            best, claim = far, Claim(fact, "near")
    return claim


def asked(scene: Scene, head: Item | None) -> bool:
    """Whether the head is what is asked for: a value beside "what fuse" is not the fuse's."""
    return head is not None and head.at in scene.asked


def names_its_battery(scene: Scene, load: Item) -> bool:
    """Whether a load only says whose battery it is: "two 12 V thruster batteries"."""
    after = scene.after(load)
    return load.head == "load" and after is not None and after.head == "battery"


def close(scene: Scene, item: Item, *concepts: str, reach: float = 3.0, after: bool = False) -> bool:
    """Whether a role word of one of these concepts stands within reach; `after`: only if it follows."""
    return any(
        found.concept in concepts
        and (found.start >= item.end or not after)
        and gap(scene, item, found.start, found.end) <= reach
        for found in around(scene.roles, item, scene.role_starts)
    )


def nearest(scene: Scene, item: Item, concept: str) -> float:
    """How far the nearest role word of a concept stands; 99 where there is none."""
    found = (found for found in around(scene.roles, item, scene.role_starts) if found.concept == concept)
    return min(
        (gap(scene, item, other.start, other.end) + (BEFORE_IT if other.end <= item.start else 0.0) for other in found),
        default=99.0,
    )


def beside(scene: Scene, item: Item, *names: str, reach: float = 3.0) -> bool:
    """Whether a head of one of these names stands within reach."""
    return any(
        head.head in names and gap(scene, item, head.start, head.end) <= reach
        for head in around(scene.head_items, item, scene.head_starts)
    )
