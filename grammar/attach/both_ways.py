"""Whether the run of a cable was measured there and back."""

from __future__ import annotations

import re

from grammar.scene.claims import close
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex

TOTAL, THERE_REACH = 3.5, 4.5  # how far the word of a total reaches: further for the only length
THERE = "there and back"
BACK = regex(
    r" ?(?:there|out|forward|going|one way)[ ,;(+&]{1,3}(?:and |then )?(?:(?:the )?same |another )?"
    r"(?P<back>\d{1,3}|two|three|four|five|six|seven|eight|nine|ten) ?(?:m|met(?:re|er)s?|ft|feet|foot)? ?"
    r"(?:back|home|return\w*|coming)\b",
    re.IGNORECASE,
)
ITS_BOTH_WAYS = regex(
    r"\b(?:that|it|this|which)(?:['’]?s| is| was| would be) (?:really |actually |in fact )?(?:the |a )?$", re.IGNORECASE
)


def there_and_back(scene: Scene, item: Item) -> bool:
    """Whether a length was measured there and back, so that half of it is the run."""
    if not isinstance(item.quantity.value, str) and _doubled(scene, item, item.quantity.value):
        return False
    if _back_again(scene, item):
        return False
    places = [item, *_told_again(scene, item)]
    if any(_is_one_way(scene, place) for place in places):
        return False
    alone = len({one.quantity.value for one in scene.quantities("LENGTH")}) == 1
    reach = THERE_REACH if alone and THERE in scene.text.lower() else TOTAL
    near = any(close(scene, place, "length_total", reach=reach) for place in places)
    if not near and not (alone and _called_both_ways(scene)):
        return False
    totals = {found.end for found in scene.roles if found.concept == "length_total"}
    return not any(found.start in totals for found in scene.roles if found.concept == "length_one_way")


def _back_again(scene: Scene, item: Item) -> bool:
    """Whether as much is told once more for the way back: "4 metres out (4 back again)"."""
    found = BACK.match(scene.text, scene.span(item.start, item.end)[1])
    return found is not None and value(found["back"].lower()) == item.quantity.value


def _told_again(scene: Scene, item: Item) -> list[Item]:
    """Where the same length is told once more: "8 m. No, hang on, 8 is there and back"."""
    after = (other for other in scene.quantities("NUM", item.dim) if other.start > item.end)
    again = (other for other in after if other.quantity.value == item.quantity.value)
    return [other for other in again if scene.word(other.start - 1) not in ("and", "plus")]  # "6 to go and 6 to return"


def _called_both_ways(scene: Scene) -> bool:
    """Whether a length told before is called the way there and back: "6 m. Sorry, that was the round trip"."""
    totals = (found.start for found in scene.roles if found.concept == "length_total")
    return any(ITS_BOTH_WAYS.search(scene.ahead(scene.tokens[start].start)) for start in totals)


def _is_one_way(scene: Scene, item: Item) -> bool:
    """Whether one way is told of it, or, where it is the only length, of the cable: "3 m of 35 mm2 each way"."""
    alone = len(scene.quantities("LENGTH")) == 1
    return close(scene, item, "length_one_way", reach=TOTAL if alone else 1.2)


def _doubled(scene: Scene, item: Item, value: float) -> bool:
    """Whether the way there and back is told beside the run itself: "25 foot run, there and back 50"."""
    bare = (other for other in scene.measured if other.at != item.at and other.dim in ("NUM", "COUNT", item.dim))
    return any(other.quantity.value == 2 * value for other in bare)


def same_run(scene: Scene, item: Item) -> bool:
    """Whether a bare number is the run once more, measured the other way: "10 m, so 20 there and back"."""
    if item.dim not in ("NUM", "COUNT") or isinstance(item.quantity.value, str):
        return False
    if not close(scene, item, "length_total", "length_one_way", reach=TOTAL):
        return False
    runs = {other.quantity.value for other in scene.quantities("LENGTH") if not isinstance(other.quantity.value, str)}
    return any(item.quantity.value in (run, 2 * run, run / 2) for run in runs)
