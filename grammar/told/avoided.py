"""A place that something does not pass: "it does not run through the engine room", "no part of it is in there"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

PLACES = frozenset({"cable.in_engine_space"})
ASKING = frozenset(
    {"doesnt", "doesn't", "isnt", "isn't", "wont", "won't", "dont", "don't"}
)  # where one begins a question
NOT = ASKING | {"not", "never", "avoids", "nowhere", "none"}
PARTS = frozenset({"part", "bit", "piece", "section", "metre", "meter", "foot"})  # "no part of it"
BETWEEN = PARTS | {  # what may stand between: ways of going there, and what goes
    *(
        "pass",
        "passes",
        "passing",
        "run",
        "runs",
        "running",
        "go",
        "goes",
        "going",
        "come",
        "comes",
        "lead",
        "leads",
        "led",
    ),
    *(
        "touch",
        "touches",
        "cross",
        "crosses",
        "enter",
        "enters",
        "lie",
        "lies",
        "laid",
        "routed",
        "taken",
        "see",
        "sees",
    ),
    *(
        "through",
        "thru",
        "into",
        "in",
        "inside",
        "near",
        "anywhere",
        "across",
        "past",
        "along",
        "via",
        "by",
        "to",
        "from",
    ),
    *("is", "be", "been", "even", "actually", "at", "all", "of", "it", "them", "the", "our", "cable", "cables", "wire"),
}
REACH = 8  # words before the place


def avoided(scene: Scene, item: Item) -> bool:
    """Whether the words straight before a place say that it is not passed; a question that begins so says nothing."""
    if item.fact not in PLACES or item.name != "true":
        return False
    for at in range(item.start - 1, max(item.start - 1 - REACH, -1), -1):
        word = scene.word(at)
        if word in NOT:
            begins = at == 0 or not scene.word(at - 1)[:1].isalnum()
            return not (begins and word in ASKING)
        if word == "no":
            return scene.word(at + 1) in PARTS
        if word not in BETWEEN:
            return False
    return False
