"""Figures of a sum and of many short runs: "1.25 times 190 is 237.5", "six-second nudges at 170"."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from itertools import combinations

from grammar.reading import Stated
from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.numbers import value as number_of
from grammar.text.patterns import regex

FACTORS = frozenset({1.1, 1.2, 1.25, 1.3, 1.35, 1.4, 1.5})  # by which a fuse is made larger than its load
TIMES = frozenset({"times", "x", "by", "*"})
MAKES = frozenset({"is", "=", "makes", "gives", "equals"})
MORE = frozenset({"another", "more", "extra", "further", "plus", "additional"})
SO = frozenset({"so", "makes", "making", "total", "altogether", "now"})
A_DAY = (["a", "day"], ["per", "day"], ["each", "day"], ["every", "day"], ["in", "a"])
TOO_MUCH = frozenset({("too", "much"), ("too", "many"), ("too", "little"), ("too", "few")})
OVER = frozenset({"over", "short", "more", "less", "extra", "above", "difference"})
SAME = 0.5  # amps
LEAST_LOAD = 20.0  # amps
LEAST_AT = 40.0  # amps at which pushes are made
MANY_SHORT = regex(
    r"(ten|twenty|thirty|forty|fifty|sixty) ((?:two|three|four|five|six|seven|eight|nine)-?) ?-?sec\w*", re.I
)


def summed(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of a load's amps in a sum for its fuse, of the sum, and of the amps at which pushes are made."""
    found: dict[int, Claim] = {}
    fused = "fuse" in scene.heads or scene.likely[:1] == ("fuse.rating",)
    for item in scene.quantities("NUM", "AMP"):
        if fused and item.quantity.value in FACTORS and scene.word(item.end) in TIMES:
            found |= _sum(scene, item)
        elif claims.get(item.at, NOTHING).fact == "load.bursts" and _at_so_many(scene, item, claims):
            found[item.at] = Claim("load.current", "near")
    found |= _difference(scene)
    found |= {
        item.at: Claim("load.time", "role")
        for item in scene.quantities("TIME")
        if claims.get(item.at, NOTHING).fact == "load.burst" and _all_day(scene, item)
    }
    found |= {
        item.at: Claim("load.bursts", "near")
        for item in scene.quantities("COUNT")
        if item.at not in claims and _counts_pushes(scene, item, claims)
    }
    if not any(claim.fact == "load.current" for claim in claims.values()):
        bare = [item for item in scene.quantities("NUM") if item.at not in claims and _in_brackets(scene, item)]
        found |= {item.at: Claim("load.current", "near") for item in bare[:1]}
    return found | _with_another(scene, claims)


def _difference(scene: Scene) -> dict[int, Claim]:
    """The claim of amps that are only how far two others are apart: the 10 of "200 A allowed, 210 drawn, 10 over"."""
    amps = [item for item in scene.quantities("AMP", "NUM") if not isinstance(item.quantity.value, str)]
    for item in amps[2:]:
        if (scene.word(item.end), scene.word(item.end + 1)) not in TOO_MUCH and scene.word(item.end) not in OVER:
            continue
        others = {float(other.quantity.value) for other in amps if other.at < item.at}
        if any(abs(abs(one - two) - float(item.quantity.value)) < SAME for one, two in combinations(others, 2)):
            return {item.at: NOTHING}
    return {}


def _in_brackets(scene: Scene, item: Item) -> bool:
    """Whether it tells a number of amps once more: "a hundred and ten (110) amps through it"."""
    around = scene.word(item.start - 1), scene.word(item.end), scene.word(item.end + 1)
    amps = around[:2] == ("(", ")") and around[2] in ("amps", "amp", "amperes", "a")
    return amps and not {"charger", "dcdc", "fuse", "alternator"} & scene.heads


def _counts_pushes(scene: Scene, item: Item, claims: dict[int, Claim]) -> bool:
    """Whether so many pushes are told right before their seconds: "a dozen five-second pushes"."""
    after = scene.after(item)
    if after is None or after.dim != "TIME" or "sec" not in after.quantity.text.lower():  # "twin 5.7s" are engines
        return False
    return claims.get(after.at, NOTHING).fact == "load.burst"


def _all_day(scene: Scene, item: Item) -> bool:
    """Whether minutes are those of a whole day: "I nudge it perhaps a minute in a day"."""
    after = [scene.word(item.end + ahead) for ahead in range(3)]
    told = after[0] == "daily" or (after[:2] in A_DAY and (after[0] != "in" or after[2] == "day"))
    return item.quantity.unit == "minute" and told


def _with_another(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The sum of a drain told before and of another one: the 0.16 of "found another 0.1 A, so 0.16"."""
    drains = [scene.items[at] for at, claim in claims.items() if claim.fact == "drain.current"]
    more = next((item for item in drains if scene.word(item.start - 1) in MORE), None)
    if more is None or not any(old.fact == "drain.current" for old in scene.said):
        return {}
    sums = [item for item in scene.quantities("NUM", "AMP") if item.at > more.at and _is_sum(scene, item, more)]
    return {more.at: NOTHING, sums[0].at: Claim("drain.current", "role")} if sums else {}


def _is_sum(scene: Scene, item: Item, part: Item) -> bool:
    value = item.quantity.value
    before = {scene.word(item.start - 1), scene.word(item.start - 2)}
    return not isinstance(value, str) and value > float(part.quantity.value) and bool(SO & before)


def _sum(scene: Scene, factor: Item) -> dict[int, Claim]:
    """ "1.25 times 190 is 237.5": the second figure is the load's, the others are nothing told."""
    at = factor.end + 1
    load = scene.at_word[at] if at < len(scene.at_word) else factor
    if load.dim not in ("NUM", "AMP") or isinstance(load.quantity.value, str) or load.quantity.value < LEAST_LOAD:
        return {}
    found = {factor.at: NOTHING, load.at: Claim("load.current", "role")}
    if scene.word(load.end) in MAKES and load.end + 1 < len(scene.at_word) and scene.at_word[load.end + 1].dim:
        found[scene.at_word[load.end + 1].at] = NOTHING
    return found


def _at_so_many(scene: Scene, item: Item, claims: dict[int, Claim]) -> bool:
    """Whether pushes are made at so many amps: the 170 of "how many six-second nudges at 170"."""
    if isinstance(item.quantity.value, str) or item.quantity.value < LEAST_AT or scene.word(item.start - 1) != "at":
        return False
    earlier = [claim.fact for at, claim in claims.items() if at < item.at]
    return "load.burst" in earlier and not any(claim.fact == "load.current" for claim in claims.values())


def many_short(found: Iterable[Stated]) -> list[Stated]:
    """The facts with "twenty two-second shoves" as twenty of two seconds: the hyphen joins what belongs together."""
    told: list[Stated] = []
    for item in found:
        match = MANY_SHORT.fullmatch(item.text) if item.fact == "load.burst" else None
        if match is None:
            told.append(item)
            continue
        start, middle = item.span[0], item.span[0] + len(match[1])
        told.append(
            replace(
                item,
                fact="load.bursts",
                value=number_of(match[1].lower()),
                unit="",
                text=match[1],
                span=(start, middle),
            )
        )
        told.append(
            replace(
                item,
                value=number_of(match[2].lower().strip("-")),
                text=item.text[len(match[1]) + 1 :],
                span=(middle + 1, item.span[1]),
            )
        )
    return told
