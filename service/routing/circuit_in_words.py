"""Topics of cables, fuses, joints and terminals that the words of a message put plainly."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from grammar.told.batteries.tapped import asks_to_tap
from service.routing.seen import CABLES, LOADS, Seen
from service.told import (
    equal_cables,
    longest_run,
    lugs_asked,
    switch_asked,
)
from service.topic import CIRCUIT

ON_BOTH = regex(r"\b(?:switch(?:ed)?|selector)\b[^.?!;]{0,24}\b(?:on|to|at) [\"'“]?both\b", re.IGNORECASE)
INSTEAD = regex(r"\b(?:rather than|instead of)\b[^.?!;]{0,16}\b(?:off|from|the mid)", re.IGNORECASE)  # no tap is meant
QUOTED = regex(
    r"\b(?:catalogue|brochure|manual|sheet)\b[^.?!;]{0,12}\b(?:says?|has|names?|asks?|gives?|lists?)\b", re.I
)


def start_linked(seen: Seen) -> bool:
    """ "Start battery 1000 CCA plus house 2 x 100 Ah, can I link them?": two banks joined, before what they run."""
    about = seen.found <= {"run-check", "bank-wiring", "unclear"} and not seen.message.dangers
    return (
        about
        and seen.says("detail:start_and_house")
        and seen.says("word:mix")
        and seen.says("request:may_i", "put:leave")
    )


def switch(seen: Seen) -> bool:
    """ "What size isolator for a Pike?": a part of the circuit, no battery."""
    about = seen.found <= {
        "bank-size",
        "charger-size",
        "run-check",
        "rating-convert",
        "terminals",
        "unclear",
        "meaning",
    }
    load = LOADS | {"load.power"}
    return about and bool(load & seen.told) and switch_asked.asked(seen.message.text) and not seen.message.dangers


def both_on(seen: Seen) -> bool:
    """ "A 1-2-both switch, on both when docking?"."""
    about = seen.found <= {"charger-setting", "charger-banks", "unclear", "run-check"}
    named = about and seen.told <= {"battery.count"} and seen.says("detail:start_and_house")
    about = seen.found <= {"battery-duty", "unclear"} and seen.told <= {"battery.count", "battery.duty"}
    switched = about and ON_BOTH.search(seen.message.text) is not None
    return (named or switched) and not seen.message.dangers


def by_the_catalogue(seen: Seen) -> bool:
    """ "My fuse is 250 A, the catalogue says 350, must I change it?": no price is asked."""
    quoted = QUOTED.search(seen.message.text) is not None
    return seen.found == {"other-desk"} and quoted and "fuse.rating" in seen.told and not seen.message.dangers


def covered(seen: Seen) -> bool:
    """ "How are the terminals covered?"."""
    about = seen.found <= {"maintenance", "mounting", "terminals", "unclear"}
    return (
        about
        and lugs_asked.cover(seen.message.text)
        and not any(item.status == "present" for item in seen.message.dangers)
    )


def tapped(seen: Seen) -> bool:
    """ "24 V bank with the 12 V radio taken from the mid-point: right?": a tap, though a converter may be named."""
    high = "bank.voltage" in seen.told or seen.says("about:series")
    apart = {"charger.current", "charger.isolated", "converter.common_negative"} & seen.told
    about = seen.found <= {"dc-dc", "unclear"} and high and not apart and not INSTEAD.search(seen.message.text)
    return about and (seen.says("detail:tap") or asks_to_tap(seen.message.text)) and not seen.message.dangers


def of_the_minus(seen: Seen) -> bool:
    """ "Must the minus lead be as thick?"."""
    about = seen.found <= {"terminals", "cable-size", "bank-wiring", "unclear"} and not seen.told
    return about and equal_cables.of_the_minus(seen.message.text) and not seen.message.dangers


def spliced(seen: Seen) -> bool:
    """ "Can I lengthen the cable with a butt splice?"."""
    about = seen.found <= {"terminals", "cable-size", "bank-wiring", "unclear"} and seen.told <= {
        "battery.count",
        "load.kind",
    }
    return about and lugs_asked.spliced(seen.message.text) and not seen.message.dangers


def cable_alone(seen: Seen) -> bool:
    """ "Is 35 mm2 ok?", before anything else is told."""
    only = bool(seen.told) and seen.told <= CABLES and seen.found <= {"unclear"} and not seen.message.dangers
    return only and seen.says("request:is_good", "request:enough", "request:may_i", "put:good")


def longest_way(seen: Seen) -> bool:
    """ "How far can I go with 70 mm2 to a Pike?"."""
    others = seen.found - CIRCUIT - {"mounting", "run-time", "rating-convert", "unclear"}
    return not others and not seen.message.dangers and longest_run.asked(seen.message.text, seen.told)


def by_the_hull(seen: Seen) -> bool:
    """ "Can the engine block be the way back, with a plus cable only?"."""
    others = seen.found - CIRCUIT - {"bank-wiring", "dc-dc", "unclear"}
    return not others and not seen.message.dangers and seen.says("detail:hull_negative")
