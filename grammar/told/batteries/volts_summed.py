"""Volts of a bank told as a sum, or by the boat's name for itself: "four sixes in a string is 24", "a 12-volter"."""

from __future__ import annotations

import re

from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of, stops

BANK, NOMINAL = Claim("bank.voltage", "grammar"), "battery.nominal"
SUM = regex(
    r"\b(?:is|are|makes?|making|gives?|giving|that'?s|comes? to|sums? to|adds? up to|equals?|totals?|for|[=])"
    r"(?: me| us| you| my| our)?(?: the)? $|\b(?:in )?series,? $|\bin (?:a row|a string|line),? $",
    re.IGNORECASE,
)
VOLTER = regex(r"[- ]volter$", re.IGNORECASE)
SHE_IS = regex(r"\b(?:she|he|ours|the boat|boat|my boat|the old girl)(?:'s| is| being)? an? $", re.IGNORECASE)
AS_AMPS = regex(  # "express that in amperes at twelve volts"
    r"\b(?:in|into|as|how many|what) (?:amps|amperes|a)\b(?! hours)[^.?!;,\d]{0,24}\b(?:at|on) $", re.IGNORECASE
)
IN_ALL = regex(r" ?(?:in all|altogether|all told|all together|in total|between them)\b", re.IGNORECASE)
SHARE = regex(r"(?:\bper ?cent|%) (?:of|at|on) (?:the |a |my )?$", re.IGNORECASE)
SYSTEMS = frozenset({12.0, 24.0, 36.0, 48.0})
OPEN = frozenset({"battery.count", "charger.outputs", "bank.count", "load.bursts", "battery.group", NOTHING.fact})


def adds_up(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of volts that are the whole bank's or the boat's."""
    if any(claim.fact == BANK.fact for claim in claims.values()):
        return {}
    each = [at for at, claim in claims.items() if claim.fact == NOMINAL]
    if "series" in {item.name for item in scene.items if item.fact == "bank.layout"}:
        least = min((float(scene.items[at].quantity.value) for at in each), default=0.0)
        sums = (item for item in scene.quantities("NUM", "COUNT") if _is_sum(scene, claims, item, least))
        return {item.at: BANK for item in sums}
    if shared := [item for item in scene.quantities("NUM") if _is_share_of(scene, item)]:
        return {shared[0].at: BANK}
    if whole := [item for item in scene.quantities("NUM", "COUNT") if _is_whole(scene, claims, item, each)]:
        return {whole[0].at: BANK}
    loads = (at for at in each if _is_volter(scene, scene.items[at]) or _is_for_amps(scene, scene.items[at]))
    return {at: BANK for at in loads if len(each) == 1}


def _is_for_amps(scene: Scene, item: Item) -> bool:
    """Whether watts are to be told as amps at these volts, though a battery is named next."""
    return item.dim == "VOLT" and bool(scene.quantities("WATT")) and AS_AMPS.search(ahead_of(scene, item)) is not None


def _is_sum(scene: Scene, claims: dict[int, Claim], item: Item, least: float) -> bool:
    """Whether it is what batteries in series come to: more than one has, and a multiple of it."""
    value, claim = item.quantity.value, claims.get(item.at)
    if isinstance(value, str) or value not in SYSTEMS or value <= least or (claim and claim.fact not in OPEN):
        return False
    if least and value % least:
        return False
    after = scene.after(item)
    ends = stops(scene, item, ("in", "and", "or", "then", "so", "with", "for"))
    ends = ends or (after is not None and (after.fact == "bank.layout" or after.name in ("volt", "volts")))
    return ends and SUM.search(ahead_of(scene, item)) is not None


def _is_whole(scene: Scene, claims: dict[int, Claim], item: Item, each: list[int]) -> bool:
    """Whether it is what two of them are told to have together: "two 12 V batteries (24 in all)"."""
    value, claim = item.quantity.value, claims.get(item.at)
    if isinstance(value, str) or value not in SYSTEMS or len(each) != 1 or (claim and claim.fact not in OPEN):
        return False
    one = float(scene.items[each[0]].quantity.value)
    end = scene.span(item.start, item.end)[1]
    return value > one and value % one == 0 and IN_ALL.match(scene.text, end) is not None


def _is_share_of(scene: Scene, item: Item) -> bool:
    """Whether a loss is told as a share of it: "per cent of 24?", "3 % of 12"."""
    return (
        item.quantity.value in SYSTEMS
        and stops(scene, item, ("is", "and"))
        and SHARE.search(ahead_of(scene, item)) is not None
    )


def _is_volter(scene: Scene, item: Item) -> bool:
    """Whether a boat or a load goes by its volts: "a capstan, 900 W, twelve-volter"; a battery's are its own."""
    if VOLTER.search(item.quantity.text) is None:
        return False
    if SHE_IS.search(ahead_of(scene, item)):
        return True
    if not {"load", "boat"} & scene.heads:
        return False
    before = [other for other in scene.items[: item.at] if other.head or other.fact == "battery.chemistry"]
    after = scene.after(item)
    owned = after is not None and (after.head == "battery" or after.fact == "battery.chemistry")
    return bool(before) and before[-1].head in ("load", "boat") and not owned
