"""What a figure is that no rule settles: the points of its surroundings, added up for every fact it could state.

The rules (grammar/attach/) come first. What they leave open or settle only by default is weighed here; what leads by
too little stays as it is. The points stand in figures/, a file for each fact, and are whole numbers fitted to labelled
messages by tests/tools/fit_figures.py.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterator, Mapping
from functools import cache, partial
from pathlib import Path

from grammar.files import kept, toml
from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.standard import NOMINAL
from grammar.told.currents.fuses import FUSES

FOLDER = Path(__file__).parent
START = "start"
NEAR, FAR = 3, 6  # items to either side that are signs by name; words within which a role word is one
STEPS = (0, 0.05, 0.5, 1, 2, 3, 5, 9, 11, 12, 13.2, 15, 20, 24, 30, 36, 45, 60, 80, 100, 150, 200, 300, 400, 600, 1000)
MOST = 40  # figures; a message with more is a table, which a person reads
BARE = 3  # words and marks of a later message, "sorry, 8": what was said before tells what it is, not its surroundings
NUMBERED = frozenset({"hull", "order", "serial", "part", "berth", "house", "phone", "invoice", "account", "member"})
SHORTEST = 4  # letters of a plural; "is", "as" and "its" count nothing
BAR, LEAD = -2, 8  # the points to be named, and those over the next
HOW = "weighed"

Points = Mapping[str, Mapping[str, int]]


@cache
def points() -> Points:
    """The points: sign x fact. Raises ValueError for one that is no whole number."""
    files = sorted(FOLDER.glob("*.toml"))
    found: Points = kept(str(FOLDER), [*files, Path(__file__)], lambda: _read(files))
    return found


def _read(files: list[Path]) -> dict[str, dict[str, int]]:
    table: dict[str, dict[str, int]] = {}
    for path in files:
        for sign, number in toml(path).items():
            if not isinstance(number, int):
                raise ValueError(f"{path.name}, {sign}: it must be a whole number, not {number!r}")
            table.setdefault(sign, {})[path.stem] = number
    return table


def weighed(scene: Scene, claims: Mapping[int, Claim], can_be: Callable[[Item, str], bool]) -> dict[int, Claim]:
    """The figures that the points settle, of those without a claim or with one by default.

    `can_be`: whether a figure may state a fact.
    """
    found: dict[int, Claim] = {}
    if len(scene.measured) > MOST or (scene.said and len(scene.tokens) <= BARE):
        return found
    settled = {claim.fact for claim in claims.values() if claim.how != "default"}
    for item in scene.measured:
        claim = claims.get(item.at)
        numbered = scene.word(item.start - 1) == "number" and scene.word(item.start - 2) in NUMBERED
        if not numbered and (claim is None or claim.how == "default"):
            fact = best(sums(signs(scene, item, claims)), partial(can_be, item))
            counted = fact == "fuse.rating" and _counts(scene, item)
            if fact and not counted and fact not in settled and (claim is None or fact != claim.fact):
                found[item.at] = Claim(fact, HOW)
    return found


def _counts(scene: Scene, item: Item) -> bool:
    """Whether a bare number counts what stands behind it: the 200 of "the club has 200 members"."""
    word = scene.word(item.end)
    return item.dim == "NUM" and len(word) >= SHORTEST and word.endswith("s") and not word.endswith("ss")


def reasons(scene: Scene, claims: Mapping[int, Claim], at: int, fact: str) -> list[tuple[int, str]]:
    """What spoke for a fact of the figure at a place of the row, the strongest first: points and sign."""
    table = points()
    names = dict.fromkeys(signs(scene, scene.items[at], claims))
    found = [(table.get(name, {}).get(fact, 0), name) for name in names]
    return sorted((item for item in found if item[0] > 0), key=lambda item: (-item[0], item[1]))


def sums(names: Iterator[str]) -> dict[str, int]:
    """The points of every fact."""
    table = points()
    totals = dict(table.get(START, {}))
    for name in dict.fromkeys(names):
        for fact, number in table.get(name, {}).items():
            totals[fact] += number
    return totals


def best(totals: Mapping[str, int], can_be: Callable[[str], bool]) -> str:
    """The fact that leads by enough; "" where none does."""
    ranking = sorted(((total, fact) for fact, total in totals.items() if can_be(fact)), reverse=True)[:2]
    if not ranking or ranking[0][0] < BAR:
        return ""
    return ranking[0][1] if len(ranking) == 1 or ranking[0][0] - ranking[1][0] >= LEAD else ""


def signs(scene: Scene, item: Item, claims: Mapping[int, Claim]) -> Iterator[str]:
    """All that may speak for what a figure is: its size, the words beside it, the things and questions around it."""
    yield f"dim:{item.dim}"
    yield from _size(item)
    yield from _beside(scene, item)
    yield from _around(scene, item)
    yield from _others(item, claims)


def _size(item: Item) -> Iterator[str]:
    value = item.quantity.value
    if isinstance(value, str):
        return
    step = next((step for step in STEPS if abs(value) <= step), "more")
    yield f"size:{item.dim}:{step}"
    if value % 1:
        yield "decimal"
    if value in FUSES:
        yield "fuse-size"
    if value in NOMINAL:
        yield "nominal"


def _beside(scene: Scene, item: Item) -> Iterator[str]:
    names = {place: _name(scene, item.at + place) for place in range(-NEAR, NEAR + 1) if place}
    for place, name in names.items():
        yield f"{place:+}:{name}"
        yield f"near:{name}"
    yield f"-2-1:{names[-2]}_{names[-1]}"
    yield f"+1+2:{names[1]}_{names[2]}"
    yield f"-1+1:{names[-1]}_{names[1]}"


def _name(scene: Scene, at: int) -> str:
    if not 0 <= at < len(scene.items):
        return "$"
    item = scene.items[at]
    if item.dim:
        return f"<{item.dim}>"
    return f"{item.kind}:{item.head or item.fact}" if item.head or item.fact else item.name


def _around(scene: Scene, item: Item) -> Iterator[str]:
    place = bisect_left(scene.head_starts, item.start)
    left = scene.head_items[place - 1] if place else None
    right = scene.head_items[place] if place < len(scene.head_items) else None
    if left is not None:
        yield f"left:{left.head}"
        yield f"left:{left.head}:{min(item.at - left.at, FAR)}"
    if right is not None:
        yield f"right:{right.head}"
        yield f"right:{right.head}:{min(right.at - item.at, FAR)}"
    yield from (f"clause:{name}" for name in scene.by_clause.get(scene.clause(item.start), ()))
    yield from (f"message:{name}" for name in scene.topics)
    yield from (f"message:head:{name}" for name in scene.heads)
    for role in scene.roles[bisect_left(scene.role_starts, item.start - FAR) :]:
        if role.start > item.start + FAR:
            break
        side = "left" if role.start < item.start else "right"
        yield f"role:{role.concept}:{side}:{'near' if abs(role.start - item.start) <= NEAR else 'far'}"


def _others(item: Item, claims: Mapping[int, Claim]) -> Iterator[str]:
    yield from (f"has:{claim.fact}" for at, claim in claims.items() if at != item.at and claim.how != "default")
    before = max((at for at in claims if at < item.at), default=None)
    after = min((at for at in claims if at > item.at), default=None)
    if before is not None:
        yield f"before:{claims[before].fact}"
    if after is not None:
        yield f"after:{claims[after].fact}"
    if item.at in claims:
        yield f"default:{claims[item.at].fact}"
