"""Facts of use that other figures of a message give: the power at the shaft, a part of the time, a meter."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from grammar.attach.by_rule import HOUR
from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text import numbers
from grammar.text.patterns import regex

METERS = frozenset({"gauge", "monitor", "meter", "multimeter", "voltmeter", "dash", "dial", "posts"})
SHOWN = regex(  # "hers shows 15.3 whenever the charger is in"
    r"\b(?:battery|bank|agm|gel|lithium|wet|hers|his|mine|ours|theirs|she|he|it)(?: \w+)? (?:shows?|showed|reads?) $"
    r"|[,.;] (?:and |but |now )?(?:shows?|reads?|showing|reading) $|\bbeen (?:reading|showing) $",
    re.IGNORECASE,
)
SET_AT = regex(
    r"\b(?:set|preset|adjusted|turned|dialled) (?:at|to|on|for) $", re.IGNORECASE
)  # "set at 14.8 by the dial"
PART_OF_TIME = regex(
    r"\b(?:(?P<word>half|third|two thirds|quarter)|(?P<percent>\d{1,2}) ?(?:%|per ?cent))"
    r" (?:of )?the (?:day|time)\b"
    r"|\b(?P<minutes>[1-5]\d|five|ten|fifteen|twenty|thirty|forty|fifty) ?(?:minutes|mins?)"
    r" (?:an|(?:(?:out )?of|in|each|every|per) ?(?:an|the|every|each)?) ?hour\b",
    re.IGNORECASE,
)
SHAFT = regex(r"\bshaft\b", re.IGNORECASE)
SHAFT_WITHIN = 16  # characters between
AVERAGED = regex(r"\b(?:so )?call it|\baverag|\bmakes it\b", re.IGNORECASE)  # the amps allow for it already
PARTS = {"half": 1 / 2, "third": 1 / 3, "thirds": 2 / 3, "quarter": 1 / 4}


def running(scene: Scene, found: list[Stated]) -> list[Stated]:
    """The amps of a reading are the load's too, unless a tester drew them, and the other way round."""
    drawn = [item for item in found if item.fact == "reading.current"]
    running = [item for item in found if item.fact == "load.current"]
    if drawn and not running and not scene.about("role:tester"):
        return [replace(item, fact="load.current", how="default") for item in drawn]
    if len(running) == 1 and not drawn and any(item.fact == "reading.load_voltage" for item in found):
        return [replace(item, fact="reading.current", how="default") for item in running]
    return []


def on_a_meter(scene: Scene, found: list[Stated]) -> list[Stated]:
    """The volts of a charger that a meter at the battery shows are a reading too: "saw 15.6 on the gauge"."""
    told = (item for item in found if item.fact == "charger.voltage")
    volts = [item for item in told if not SET_AT.search(scene.ahead(item.span[0]))]
    if not volts or any(item.fact == "reading.voltage" for item in found):
        return []
    if not METERS & scene.vocabulary and not any(SHOWN.search(scene.ahead(item.span[0])) for item in found):
        return []
    return [replace(item, fact="reading.voltage", how="default") for item in volts[:1]]


def at_the_shaft(scene: Scene, stated: Stated) -> Stated:
    """A power that is told to be the shaft's, with that word: "3 kW shaft power", "shaft power 3 kW"."""
    if stated.fact != "load.power":
        return stated
    start, end = stated.span
    for near in SHAFT.finditer(scene.text):
        first, last = min(start, near.start()), max(end, near.end())
        if last - first - (end - start) - len(near[0]) <= SHAFT_WITHIN:
            return replace(stated, text=scene.text[first:last], span=(first, last))
    return stated


def part_of_the_time(scene: Scene, found: list[Stated]) -> list[Stated]:
    """A load that is on for a share of the time: less of the hours told, else so long on and off in every hour."""
    told = PART_OF_TIME.search(scene.text)
    if told is None or AVERAGED.search(scene.text) or {"load.burst", "load.rest"} <= {item.fact for item in found}:
        return found  # "half the time, 5 s on and 5 off" says it twice
    if told["word"]:
        share = PARTS[told["word"].lower().split()[-1]]
    else:
        share = float(told["percent"]) / 100 if told["percent"] else numbers.value(told["minutes"].lower()) / 60
    if not 0 < share < 1:
        return found
    start, end = told.span()
    found = [item for item in found if item.span[1] <= start or item.span[0] >= end]
    hours = [item for item in found if item.fact == "load.time"]
    if any(isinstance(item.value, float) and item.value > HOUR for item in hours):
        return [replace(item, value=float(item.value) * share) if item in hours else item for item in found]
    if hours:
        return found
    on, off = ((HOUR * part, f"load.{name}") for part, name in ((share, "burst"), (1 - share, "rest")))
    return [*found, *(Stated(fact, value, "second", told[0], told.span(), how="token") for value, fact in (on, off))]


def drawn_then(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> list[Stated]:
    """Amps told after the volts under load: those that were drawn then are the load's, and the other way round."""
    now, before = {item.fact: item for item in stated}, {item.fact for item in said}
    if "reading.load_voltage" not in before | now.keys() or scene.about("role:tester"):
        return []
    for fact, other in (("reading.current", "load.current"), ("load.current", "reading.current")):
        if fact in now and other not in before | now.keys():
            return [replace(now[fact], fact=other, how="default")]
    return []
