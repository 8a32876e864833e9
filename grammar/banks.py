"""How many banks a charger is to serve, as they are listed by their places: "2 engine starters, 1 house, 1 bow"."""

from __future__ import annotations

import re
from itertools import pairwise

from grammar.reading import Stated
from grammar.scene import Scene

FACT = "bank.count"
NUMBERS = {"a": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0}
MANY = r"(?P<many>\b(?:a|one|two|three|four|[1-6]))"
PLACE = (
    r"(?:engines?'?(?: start(?:er|ing)?s?)?|start(?:er|ing)?s?|house|domestic|leisure|service|bow|stern|thrusters?"
    r"|windlass|generator|genset)"
)
ONE = rf"{MANY} ?(?:x )?{PLACE}(?: thrusters?)?(?:'s)?(?: (?:banks?|batter(?:y|ies)|batts?|sets?|ones?))?"
ENTRY = re.compile(ONE, re.IGNORECASE)
JOINED = re.compile(r" ?(?:,|\+|&|;|and|plus|, and)? ?", re.IGNORECASE)
SERVED = frozenset({"outputs", "output", "outlets", "legs", "channels", "banks"})


def listed_banks(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with the number of banks where they are listed; what counts some of them counts no batteries."""
    if not ("charger" in scene.heads or SERVED & scene.vocabulary) or any(item.fact == FACT for item in stated):
        return stated
    entries = list(ENTRY.finditer(scene.text))
    run = entries[:1]
    for first, second in pairwise(entries):
        if not JOINED.fullmatch(scene.text[first.end() : second.start()]):
            break
        run.append(second)
    if len(run) < 2:
        return stated
    start, end = run[0].start(), run[-1].end()
    total = sum(NUMBERS.get(one["many"].lower()) or float(one["many"]) for one in run)
    told = Stated(FACT, total, "", scene.text[start:end], (start, end), how="grammar")
    return [*(item for item in stated if item.fact != "battery.count" or not start <= item.span[0] < end), told]
