"""The charge that a battery has by "full" or "flat", and the one that it is supposed to fall to: "75 Ah, full."."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.amend.supposed import fallen_to, is_supposed
from grammar.reading import Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import stated_at

IF_FILLED = regex(  # "what if I charge them right up first"
    r"\bif (?:i|we|you|he|they) (?:fully )?(?:charged?|fill(?:ed)?|topp?(?:ed)?)(?: up)?"
    r" (?:it|them|her|both|the battery)\b(?: (?:right|fully|all the way|up|full|first))*",
    re.IGNORECASE,
)
OF_BATTERY = {"battery.capacity", "battery.chemistry", "battery.cca", "reading.load_voltage"}
IF_FULL = regex(  # "how cold may it get before it is ice, if it is full"
    r"\b(?:if|when|while|provided) (?:it|she|they|the battery|one) (?:is|are|be)"
    r" (?:completely |fully |quite )?(?:full|charged)\b(?! of\b)",
    re.IGNORECASE,
)
NOT_QUITE = frozenset(
    {"half", "quarter", "quarters", "third", "thirds", "fifth", "fifths", "not", "nearly", "almost", "never", "how"}
)
STANDS_SO = frozenset({"with", "disconnected", "unplugged", "both", "isolated", "its", "the", "leads", "cables"})
IS_SO = frozenset({"its", "shes", "theyre", "is", "are"})
TOLD_SO = regex(r"(?:^|[,.;(?!] ?)(?:it'?s|she'?s|they'?re|it is|she is|they are)(?: \w+ed)? $", re.IGNORECASE)
BATTERY_SO = regex(  # "our AGM is full, minus 20 here"
    r"(?:^|[,.;(!] ?)(?:(?:the|my|our|his|her|both|all|two|bow|house|start|starter|thruster) )*"
    r"(?:(?:agm|gel|wet|flooded|lead|lithium) )?(?:batter(?:y|ies)|bank|accu|agms?|gels?|wets?) (?:is|are)(?: now)? $",
    re.IGNORECASE,
)
EMPTY = frozenset({"flat", "empty", "dead"})


def charges(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The charge that a battery has, and the one that it is supposed to fall to."""
    supposed = list(fallen_to(scene))
    told = [item for item in stated if item.fact == "battery.charge"]
    found = [*_full(scene, [*stated, *supposed]), *supposed]
    return [*told, *found] if found else []


def _full(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "75 Ah, full.", "a flat 110 Ah battery": a battery said to be full or flat, where nothing asks whether it is."""
    told = {item.fact for item in stated if not is_supposed(scene.text, item.span)}
    filled = IF_FILLED.search(scene.text)
    if filled and scene.said and "battery.charge" not in told and not scene.about("request:how_long"):
        span = filled.span()
        yield Stated("battery.charge", 100.0, "percent", scene.text[slice(*span)], span, how="default")
        return
    if (
        "battery.charge" not in told
        and scene.about("about:freeze", "word:freeze")
        and (full := IF_FULL.search(scene.text))
    ):
        yield Stated("battery.charge", 100.0, "percent", full[0], full.span(), how="default")
        return
    if "battery.charge" in told or not told & OF_BATTERY:
        return
    for item in scene.items:
        before, after = scene.before(item), scene.after(item)
        if item.name in EMPTY and before is not None and before.name in ("a", "my", "our") and _sized(after):
            yield replace(stated_at(scene, "battery.charge", 0.0, item.start, item.end), unit="percent")
            return
        ends = after is None or (after.name in (",", ".", "end", ")") and scene.word(after.start) != "?")
        cold = scene.about("about:freeze", "word:freeze") or "ambient.temperature" in told
        ends = ends or (item.name == "full" and (_goes_on(scene, item) or (cold and scene.word(item.end) == "and")))
        owned = (
            item.name == "full"
            and after is not None
            and after.fact == "battery.chemistry"
            and before is not None
            and before.name in ("with", ",")
        )
        of_kind = before is not None and before.fact == "battery.chemistry"  # "lithium full, 20 °C"
        listed = before is not None and before.name in (",", "thats", "(", "aboard", "stays", "stay", "stands")
        listed = listed or (scene.word(item.start - 1) in IS_SO and _is_told(scene, item, cold))
        share = before is not None and (bool(before.dim) or before.name in NOT_QUITE)
        frozen = item.name == "full" and cold and _sized(after) and not share
        if owned or frozen or (item.name == "full" and (listed or of_kind) and ends):
            yield replace(stated_at(scene, "battery.charge", 100.0, item.start, item.end), unit="percent")
            return


def _is_told(scene: Scene, item: Item, cold: bool) -> bool:
    """Whether "it's full" tells how the battery is: it begins what is said, no "when it's full". In the cold so does
    "the AGM is full", which elsewhere may be what a light or somebody says."""
    ahead = scene.ahead(scene.span(item.start, item.end)[0])
    if cold and BATTERY_SO.search(ahead):
        return True
    return TOLD_SO.search(ahead) is not None and not scene.about("word:charge") and "charger" not in scene.heads


def _goes_on(scene: Scene, item: Item) -> bool:
    """Whether more is told of how it stands: "full and with both leads off", "full with its cables off"."""
    return scene.word(item.end) in ("and", "with") and scene.word(item.end + 1) in STANDS_SO


def _sized(item: Item | None) -> bool:
    """Whether a battery's figure or kind stands there: the "110 Ah" of "a flat 110 Ah battery"."""
    return item is not None and (item.dim in ("AH", "VOLT") or item.fact == "battery.chemistry")
