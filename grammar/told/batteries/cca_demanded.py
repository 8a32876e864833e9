"""The CCA that a load or its manual asks for: "my thruster needs 650 CCA" tells of no battery."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

CCA, DEMAND = "battery.cca", "load.cca"
ASKS = frozenset(
    {"need", "needs", "needed", "want", "wants", "require", "requires", "demand", "demands", "specify", "specifies"}
    | {"recommends", "prescribes", "stipulates", "asks", "calls"}
)
SAYS, LEAST = frozenset({"says", "states", "reads", "say"}), frozenset({"min", "minimum", "least"})
SUBJECTS = frozenset(
    {
        *("engine", "motor", "manual", "handbook", "leaflet", "booklet", "datasheet", "maker", "manufacturer"),
        *("instructions",),
    }
)
SUBJECT, FIGURE, NEXT = 6, 7, 2  # words before the verb, from it to the figure, from a second subject to its figure
ANEW = frozenset({",", "it", "its", "is", "has", "have", "mine", "ours", "my", "our"})  # between: of something else
STOPS = frozenset({".", "?", "!", ";", ":"})
BY = regex(  # "650 CCA is needed for the thruster", "650 CCA required by the manual"
    r"[ ,(]*(?:(?:is|are|as|at least|min(?:imum)?\.?)\W+)*(?:needed|required|wanted|asked for|prescribed|demanded"
    r"|recommended|specified)\b(?: (?:by|for|in|of|as) (?:\w+ ){0,3}?(?:thruster|windlass|winch|capstan|engine|motor"
    r"|manual|handbook|maker|manufacturer)\b|(?=\W*(?:$|[.,;?!])))",
    re.IGNORECASE,
)


def asked_for(scene: Scene, stated: Sequence[Stated]) -> list[Stated]:
    """The facts, a CCA that is only asked for as the load's demand: of two loads the larger, which serves both."""
    rated = {item.span: item for item in stated if item.fact == CCA}
    figures = [item for item in scene.measured if item.part is not None and item.part.span in rated] if rated else []
    demands: list[Item] = []
    for item in figures:
        if _is_demand(scene, item, bool(demands)):
            demands.append(item)
    if not demands:
        return list(stated)
    spans = {item.part.span for item in demands if item.part is not None}
    most = max((rated[span] for span in spans), key=lambda one: float(one.value))
    kept = [item for item in stated if not (item.fact == CCA and item.span in spans)]
    return [*kept, replace(most, fact=DEMAND, of=1)]


def _is_demand(scene: Scene, item: Item, others: bool) -> bool:
    """Whether a load or its papers ask for it, or stand right before it after such a demand: "and the thruster 650"."""
    if BY.match(scene.text, scene.span(item.start, item.end)[1]):
        return True
    words = [scene.word(at) for at in range(max(0, item.start - FIGURE), item.start)]
    begin = item.start - len(words)
    stop = max((at for at, word in enumerate(words) if word in STOPS), default=-1)
    verb = max((at for at, word in enumerate(words) if at > stop and _asks(words, at)), default=-1)
    between = (one for one in scene.measured if begin + verb < one.start < item.start and one.dim != "VOLT")
    if verb < 0 or any(between) or not ANEW.isdisjoint(words[verb + 1 :]):
        return others and _subject(scene, item.start, NEXT)
    return _subject(scene, begin + verb, SUBJECT)


def _asks(words: Sequence[str], at: int) -> bool:
    return words[at] in ASKS or (words[at] in SAYS and not LEAST.isdisjoint(words[at:]))


def _subject(scene: Scene, end: int, most: int) -> bool:
    """Whether what stands nearest before this word is a load, an engine or a paper, and no battery."""
    for at in range(end - 1, max(-1, end - 1 - most), -1):
        word = scene.word(at)
        if word in STOPS:
            return False
        head = scene.at_word[at].head if at < len(scene.at_word) else ""
        if word in SUBJECTS or head in ("load", "engine"):
            return not (scene.word(at - 2) == "of" and _is_battery(scene, at - 3))  # "the battery of the thruster"
        if head:
            return False
    return False


def _is_battery(scene: Scene, at: int) -> bool:
    return 0 <= at < len(scene.at_word) and scene.at_word[at].head == "battery"
