"""How many banks a charger is to serve, as they are listed by their places: "2 engine starters, 1 house, 1 bow"."""

from __future__ import annotations

import re
from itertools import pairwise

from grammar.reading import Stated
from grammar.scene.scene import Scene

FACT = "bank.count"
NUMBERS = {"one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0}
MANY = r"(?P<many>\b(?:one|two|three|four|[1-6]))"
STARTS = r"engines?'?(?: start(?:er|ing)?s?)?|start(?:er|ing)?s?|house|domestic|leisure|service"
PLACE = rf"(?:(?P<first>{STARTS})|bow|stern|thrusters?|windlass|generator|genset)"
ONE = rf"{MANY} ?(?:x )?{PLACE}(?: thrusters?)?(?:'s)?(?: (?:banks?|batter(?:y|ies)|batts?|sets?|ones?))?"
ENTRY = re.compile(ONE, re.IGNORECASE)
JOINED = re.compile(r" ?(?:,|\+|&|;|and|plus|, and)? ?", re.IGNORECASE)
GOES_ON = re.compile(
    r"[^\w.?!]*(?:and|plus|connected|joined|in|[+&])\b|[^\w.?!]*(?:an?|the|one|two|\d)\b", re.IGNORECASE
)
SEVERAL = re.compile(r"engine|start|banks?\b|sets?\b", re.IGNORECASE)  # two of these are never one bank
BEGUN = re.compile(r"(?:\w,|\band|\bplus|[+&]) *$", re.IGNORECASE)  # "bow pair joined, one start, one house"
SERVED = frozenset({"outputs", "output", "outlets", "legs", "channels", "banks"})


def listed_banks(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with the number of banks where they are listed; what counts some of them counts no batteries."""
    told = any(item.fact == FACT and item.how != "default" for item in stated)
    if told or not ("charger" in scene.heads or SERVED & scene.vocabulary):
        return stated
    entries = list(ENTRY.finditer(scene.text))
    run = entries[:1]
    for first, second in pairwise(entries):
        if not JOINED.fullmatch(scene.text[first.end() : second.start()]):
            break
        run.append(second)
    if len(run) < 2 or not any(one["first"] for one in run) or _is_more(scene, run):
        return stated
    start, end = run[0].start(), run[-1].end()
    total = sum(NUMBERS.get(one["many"].lower()) or float(one["many"]) for one in run)
    found = Stated(FACT, total, "", scene.text[start:end], (start, end), how="grammar")
    counts = [item for item in stated if item.fact == "battery.count" and start <= item.span[0] < end]
    return [*(item for item in stated if item.fact != FACT and item not in counts), found]


def _is_more(scene: Scene, run: list[re.Match[str]]) -> bool:
    """Whether the list begins before or goes on in other words, or counts batteries that may be one bank: "2 bow"."""
    joined = any(one["many"].lower() not in ("one", "1") and not SEVERAL.search(one[0]) for one in run)
    begun = BEGUN.search(scene.text[: run[0].start()]) is not None
    return joined or begun or GOES_ON.match(scene.text[run[-1].end() :]) is not None
