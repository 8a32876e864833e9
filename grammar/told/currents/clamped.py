"""Amps that a clamp meter or an ammeter shows, or that are told to flow: with their unit or without."""

from __future__ import annotations

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.standard import NOMINAL

SHOWS = frozenset(
    {"says", "said", "say", "shows", "showed", "showing", "show", "reads", "read", "reading"}
) | frozenset({"at", ":", "=", "gives", "gave", "give", "swears"})
METERS = frozenset({"clamp", "clampmeter", "ammeter", "ampmeter", "tongs"})
METER_WORDS = frozenset({"meter", "metre", "amp", "current", "dc"})  # "on the dc clamp meter"
SHOWN_ON = frozenset({"on", "in", "by", "through", "off", "from", "with", "per", "under", "inside"})
WHOSE = frozenset({"the", "a", "my", "his", "her", "our", "your", "their", "its", "that"})
TOLD = frozenset({"amps", "amp", "a", "showing", "reading", "read", "steady", "or", "so", "there", "odd"})
FLOW = frozenset({"flowing", "coursing", "passing", "pouring", "rushing"})
FED = frozenset({"in", "into", "back", "from"})  # "30 flowing in" fills the battery
FILLERS = 3  # words between amps and the "on" of "on the clamp"
BEFORE = 3
AFTER_PEAK = 8  # words from "inrush" to its amps
PEAKS = ("load.peak", "battery.peak_current")
SMALLEST = 40.0  # amps of a motor: smaller ones on a clamp are what something left on takes
LEAST_VOLTS, MOST_VOLTS = 6.0, 32.0  # of a battery or two


def on_clamp(scene: Scene, item: Item, value: float) -> Claim | None:
    """The claim of amps that a clamp shows: drawn as volts were read, where volts are told; else a load's."""
    if _is_first_instant(scene, item, value):
        return Claim("load.peak", "role")
    if not clamped(scene, item, value):
        return None
    return Claim("reading.current" if _volts_are_told(scene) else "load.current", "role")


def _volts_are_told(scene: Scene) -> bool:
    read = any(LEAST_VOLTS < value < MOST_VOLTS and value not in NOMINAL for value in scene.figures)
    return read or any(old.fact.startswith("reading.") for old in scene.said) or "reading.current" in scene.expected


def clamped(scene: Scene, item: Item, value: float) -> bool:
    """Whether a clamp shows these amps as a motor runs: "the clamp says 260", "240 on the clamp", "180 flowing"."""
    if value < SMALLEST or "alternator" in scene.heads or _of_a_peak(scene, item):
        return False
    return _says(scene, item) or _stands_on(scene, item) or _flows(scene, item)


def _is_first_instant(scene: Scene, item: Item, value: float) -> bool:
    """Whether a clamp caught them as the motor started: "inrush by the clamp: 520", "peak measured on a clamp, 480"."""
    if value < SMALLEST or not _of_a_peak(scene, item, ("load.peak",)):
        return False
    lead = {scene.word(at) for at in range(max(0, item.start - AFTER_PEAK), item.start)}
    return bool(METERS & lead)


def _says(scene: Scene, item: Item) -> bool:
    """ "the clamp says 260", "clamp meter shows 150 A", "clamp: 240", "the ammeter 310"."""
    before = [scene.word(at) for at in range(max(0, item.start - BEFORE), item.start)]
    named = METERS & set(before)
    if not before or not named:
        return False
    return before[-1] in SHOWS | METERS or (before[-1] in METER_WORDS and before[-2] in METERS)


def _stands_on(scene: Scene, item: Item) -> bool:
    """ "240 on the clamp", "180 A in my clamp meter", "215 amps by clamp"."""
    at = item.end
    while at < item.end + FILLERS and scene.word(at) in TOLD:
        at += 1
    if scene.word(at) not in SHOWN_ON:
        return False
    at += 1
    while at < item.end + 2 * FILLERS and scene.word(at) in WHOSE | METER_WORDS:
        at += 1
    return scene.word(at) in METERS


def _flows(scene: Scene, item: Item) -> bool:
    """ "with 240 flowing", not "30 flowing in"."""
    at = item.end + 1 if scene.word(item.end) in ("amps", "a") else item.end
    return scene.word(at) in FLOW and scene.word(at + 1) not in FED


def _of_a_peak(scene: Scene, item: Item, roles: tuple[str, ...] = PEAKS) -> bool:
    """Whether what leads to the figure, up to a comma, tells of a first instant: "the kick is 780 by the clamp"."""
    peaks = [found.end for found in scene.roles if found.concept in roles]
    lead = [end for end in peaks if end <= item.start]
    if not lead or any(lead[-1] <= other.start < item.start for other in scene.measured):
        return False
    return not {",", ";", "."} & {scene.word(at) for at in range(lead[-1], item.start)}
