"""Topics of a weak motor, its cable and its battery, by the facts of a message."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service.routing.seen import Seen
from service.routing.supply_as_told import LOADS, MAY, SIZING, STRENGTH
from service.told import culprit, lost_volts
from service.topic import CIRCUIT

ANY_CABLE = frozenset({"cable.area", "cable.gauge", "cable.length", "cable.drop"})

BOTH_ENDS = frozenset({"reading.load_voltage", "reading.load_voltage_at_load"})
MOTOR = ("detail:weak_motor", "detail:dead_motor")
CHARGED = ((12.5, 13.4), (25.0, 26.8))  # volts at rest of a good battery and of two in series
WHY = regex(r"\bwhy\b|\bwhat(?: now| next|'?s wrong| is wrong)\b|\bmeasure\b|\bwhere (?:do|to|should)\b", re.IGNORECASE)
FADING = regex(
    r"\b(?:weak\w*|slow\w*|sluggish\w*|tired|lazy|lazily|faint\w*|feebl\w*|fades?|fading|groans?)\b", re.IGNORECASE
)
LIFTED = regex(
    r"\b(?:what|how much|how many kilos?)\b[^.?!;]{0,20}\b(?:lift\w*|carry\w*|heav\w*|weigh\w*)\b|\bhow heavy\b", re.I
)
SIZE_TOO = regex(
    r"\b(?:what|which) (?:size|gauge|section|mm2|awg)\b|\bhow thick\b", re.IGNORECASE
)  # "and if so what size?"


def story_of_a_motor(seen: Seen) -> bool:
    """ "The thruster only clicks and I've no idea what battery it is": where the volts go, not which to buy."""
    sizes = seen.says("request:which", "request:versus", *SIZING) and not seen.says("detail:battery_unknown")
    figures = seen.told & (STRENGTH | LOADS - {"load.model"}) or any(name.startswith("reading.") for name in seen.told)
    own = seen.found <= {"bank-size", "run-check", "unclear"} and seen.says(*MOTOR)
    return own and not sizes and not figures and not seen.message.dangers


def weak_though_full(seen: Seen) -> bool:
    """ "Our Pike goes weak after a minute, the battery rests at 12.7. What do I measure?": the commonest story, where
    volts at rest say nothing yet."""
    volts = [float(item.value) for item in seen.message.stated if item.fact == "reading.voltage"]
    full = len(volts) == 1 and any(low <= volts[0] < high for low, high in CHARGED)
    others = seen.told & {"reading.load_voltage", "reading.gravity", "battery.age"} or seen.context
    motor = seen.says("thing:thruster") or bool(seen.told & {"load.model", "load.kind"})
    weak = seen.says(*MOTOR) or (motor and FADING.search(seen.message.text))
    asks = WHY.search(seen.message.text) or culprit.where_to_look(seen.message.text)
    return seen.found == {"rest-voltage"} and full and bool(weak and asks) and not others


def volts_lost(seen: Seen) -> bool:
    """ "0.8 V gone between battery and windlass, a drama?": a loss that was measured."""
    read = any(name.startswith("reading.") for name in seen.told) or seen.message.dangers
    return seen.found <= {"unclear"} and not read and lost_volts.told(seen.message.text) is not None


def lifted(seen: Seen) -> bool:
    """ "What am I lifting with a group 31?": its weight, not its measures."""
    sized = seen.found <= {"group-size", "unclear"} and "battery.group" in seen.told
    return sized and LIFTED.search(seen.message.text) is not None


def wire_or_battery(seen: Seen) -> bool:
    """ "12.65 at rest, 9.9 pushing, 2 AWG, 15 ft, 160 A. Battery or wire?": one question."""
    circuit = seen.found <= {*CIRCUIT, "load-voltage"} and "load-voltage" in seen.found and len(seen.found) > 1
    return circuit and culprit.either(seen.message.text) and SIZE_TOO.search(seen.message.text) is None


def cold_or_battery(seen: Seen) -> bool:
    """ "Is that the cold or is the battery shot?": one question."""
    about = seen.found <= {"cold-cranking", "replacement", "load-voltage", "unclear"} and not seen.message.dangers
    read = any(name.startswith("reading.") for name in seen.told)
    return about and not read and culprit.cold_or_battery(seen.message.text)


def loaded(seen: Seen) -> bool:
    """ "12.8 at rest and 9.0 with the thruster on, is it good?": the volts at rest alone would call it good."""
    under = "reading.load_voltage" in seen.told and seen.says("role:run_on", "about:under_load")
    return (seen.found == {"rest-voltage"} and under) or _both_ends_read(seen)


def _both_ends_read(seen: Seen) -> bool:
    """ "New fuse, still 8.1 at the motor and 11.6 at the battery": a fuse that is only told of asks for none."""
    sized = seen.says(*SIZING, *MAY) or {"fuse.rating", *ANY_CABLE} & seen.told
    return seen.found == {"fuse-size"} and seen.told >= BOTH_ENDS and not sized
