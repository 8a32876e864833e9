"""Settles what a quantity is the value of, in a written order: unit, role word, group, plausible range, nearest head.

Each dimension has its own rules in an attach_*.py; this file holds what they share and calls them.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import NamedTuple

from grammar.files import toml
from grammar.near import around, gap
from grammar.items import Item
from grammar.scene import Scene
from grammar.vocabulary import Found

ROLE_KEYS = {"dims", "reach", "most", "weak"}
TOUCHING = 0.3
NOT_OURS = "-"
NEAREST = 7.0  # a head further away than this has nothing to do with a quantity


class Claim(NamedTuple):
    """What a quantity was found to be, and what settled it."""

    fact: str
    how: str


NOTHING = Claim(NOT_OURS, "grammar")


@cache
def heads() -> dict[str, dict[str, str]]:
    """Thing x dimension -> fact."""
    return toml(Path(__file__).with_name("heads.toml"))


@cache
def roles() -> dict[str, dict[str, float | list[str]]]:
    """The role words' facts and what they may claim. Raises ValueError for a row of another shape."""
    rows = toml(Path(__file__).with_name("roles.toml"))
    for fact, row in rows.items():
        if not set(row) <= ROLE_KEYS or "dims" not in row or "reach" not in row:
            raise ValueError(f"roles.toml, {fact}: it must hold dims and reach, may hold most, and nothing else")
    return rows


def row_of(head: Item | None, dim: str) -> str:
    """The fact that a quantity of this dimension states beside a head; "" for none."""
    return heads().get(head.head, {}).get(dim, "") if head else ""


def by_role(scene: Scene, item: Item, value: float, *, weak: bool = False) -> Claim | None:
    """The role word in reach that is nearest; of two as near the one first in roles.toml.

    Strong words claim before a group does, unless its head stands nearer on the right; `weak` ones only after.
    """
    best: tuple[float, int] | None = None
    claim = None
    table = roles()
    order = list(table)
    for found in around(scene.roles, item, scene.role_starts):
        row = table.get(found.concept)
        if (
            row is None
            or bool(row.get("weak")) is not weak
            or item.dim not in row["dims"]
            or value > row.get("most", value)
        ):  # type: ignore[operator]
            continue
        far = gap(scene, item, found.start, found.end)
        if far > row["reach"] or _of_another(scene, item, found):  # type: ignore[operator]
            continue
        rank = (far, order.index(found.concept))
        if far > 0 and not weak and _headed(scene, item, far):
            continue
        if best is None or rank < best:
            best, claim = rank, Claim(found.concept, "role")
    return claim


def _of_another(scene: Scene, item: Item, found: Found) -> bool:
    """Whether another figure of the kind touches the word or stands before it: it is that one's."""
    for other in scene.quantities("AMP", "NUM"):
        if (
            other is not item
            and found.start in (other.end, other.end + 1)
            and gap(scene, other, found.start, found.end) <= 1.5
        ):
            return item.end != found.start
    step = 1 if found.start >= item.end else -1
    place = item.at + step
    while 0 <= place < len(scene.items):
        other = scene.items[place]
        if other.end > found.start if step > 0 else other.start < found.end:
            return False
        if other.dim in ("AMP", "NUM"):
            return True
        place += step
    return False


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
    order = (left, sides.right) if sides.tied or closer else (sides.right, left)
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
        far = gap(scene, item, head.start, head.end) + (0.5 if head.start > item.start else 0.0)
        if far < best:
            best, claim = far, Claim(fact, "near")
    return claim


def asked(scene: Scene, head: Item | None) -> bool:
    """Whether the head is what is asked for: a value beside "what fuse" is not the fuse's."""
    return head is not None and head.at in scene.asked


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
    return min((gap(scene, item, other.start, other.end) for other in found), default=99.0)


def beside(scene: Scene, item: Item, *names: str, reach: float = 3.0) -> bool:
    """Whether a head of one of these names stands within reach."""
    return any(
        head.head in names and gap(scene, item, head.start, head.end) <= reach
        for head in around(scene.head_items, item, scene.head_starts)
    )
