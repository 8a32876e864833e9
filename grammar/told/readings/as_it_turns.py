"""Volts read as a motor runs, told by what turns or by the deed: "9.4 as the screw turns", "at the time of pushing
9.9", "key down: 13.0 at the posts but 11.2 at the rig".
"""

from __future__ import annotations

import re
from bisect import bisect_left
from functools import lru_cache
from itertools import takewhile

from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

WHILE = r"(?:as|when|whenever|while|whilst|with|so long as|as long as|once|every time|each time)"
MOTOR = (
    r"(?:(?:the|my|our|its|your|this) )?(?:(?:bow|stern|side|little|big|electric) )?"
    r"(?:screw|prop|propeller|motor|thruster|windlass|winch|capstan|hauler)"
)
TURNS = r"(?:turn|spin|push|shov|thrust|pull|heav|haul|go|work|run|churn|hum|whirr?)(?:e?s|ing)?"
PUSHES = r"(?:push|shov|thrust|heav)(?:e?s|ing)"
SOMEBODY = r"(?:(?:my|our|the|his|her) )?(?:[a-z]+(?:-[a-z]+)* ){0,2}?(?!which|it)[a-z]+"  # "my wife", "somebody"
WORKS = (  # "my wife works the windlass", "somebody leans on the button"
    r"(?:work|use|operate|press|push|hold|drive|hit|touch|try|play|lean|fire)(?:e?s|ing)?(?: down)?(?: with)?"
    r"(?:(?<!work)(?<!works)(?<!working) on)?"
)
HANDLE = (
    r"(?:(?:the|its|that|his|her) (?:thruster |bow |windlass |motor )?"
    r"(?:button|lever|joystick|stick|switch|control|remote)s?)"
)
RUNS = regex(
    rf"\b{WHILE} {MOTOR}(?:'s| is)? {TURNS}\b(?! (?:freely|by hand|well|better|badly|again|cold))"
    rf"|\b{WHILE} (?:(?:she|he|it)(?:'s| is)?|they|i|we) {PUSHES}\b(?! (?:off|up|away|back|past|the boat))"
    rf"|\b(?:{WHILE}|if) {SOMEBODY} {WORKS} (?:{MOTOR}|{HANDLE})\b(?! (?:batter|cable|fuse|a lot|much|often))"
    rf"|\bwith {SOMEBODY} on (?:{MOTOR}|{HANDLE})\b(?! (?:battery|circuit|side|bank))"
    r"|\b(?:at|in|during|for) the (?:time|moment|instant|act|second) of (?:the )?"
    r"(?:push(?:ing)?|shov(?:e|ing)|thrust(?:ing)?|turning|heaving|hauling)\b",
    re.IGNORECASE,
)
BEGINS = regex(r"(?:^|[.,;:?!(]|\b(?:and|but|then|now))\s*$", re.IGNORECASE)  # a clause begins with it
REACH = 48  # characters between what runs and its volts
BETWEEN = regex(rf"^[^.?!;\d]{{0,{REACH}}}$")
KEYED = regex(
    r"\b(?:key(?:ed)? down|transmitting|on transmit|while keying|on full (?:thrust|load|throttle))\b", re.IGNORECASE
)
ONE_MOMENT = regex(
    r"\b(?:in|at) (?:the|that|one and the)(?: very)? (?:same|selfsame) (?:second|moment|instant)\b"
    r"|\bsame (?:second|moment|instant)\b",
    re.IGNORECASE,
)
LEAST, MOST = 5.0, 60.0  # volts


@lru_cache(maxsize=4)  # each figure of a text asks it
def _runs(text: str) -> tuple[re.Match[str], ...]:
    return tuple(RUNS.finditer(text))


def turning(scene: Scene) -> bool:
    """Whether a motor or a set is told to run, by such words."""
    return RUNS.search(scene.text) is not None or KEYED.search(scene.text) is not None


def as_it_turns(scene: Scene, item: Item) -> bool:
    """Whether these volts are those that such words speak of: before them, or after them where they begin a clause."""
    start, end = scene.span(item.start, item.end)
    runs = _runs(scene.text)
    first = bisect_left(runs, start - REACH, key=re.Match[str].end)
    near = takewhile(lambda found: found.start() <= end + REACH, runs[first:])
    return any(_spoken_of(scene, found) is item for found in near)


def at_one_moment(scene: Scene, items: list[Item]) -> bool:
    """Whether readings were taken as something ran, by words that stand ahead of them all, or at the same moment."""
    if ONE_MOMENT.search(scene.text):
        return True
    first = min(scene.span(item.start, item.end)[0] for item in items)
    return any(
        found.end() <= first and not scene.text[found.end() : first].count(".")
        for pattern in (KEYED, RUNS)
        for found in pattern.finditer(scene.text)
    )


def _spoken_of(scene: Scene, found: re.Match[str]) -> Item | None:
    begins_at = bisect_left(scene.tokens, found.start() - REACH, key=lambda token: token.end)
    words = takewhile(lambda at: scene.tokens[at].start <= found.end() + REACH, range(begins_at, len(scene.tokens)))
    near = {item.at: item for item in map(scene.at_word.__getitem__, words)}.values()
    volts = [item for dim in ("VOLT", "NUM") for item in near if item.dim == dim and _is_read(item)]
    spans = [(scene.span(item.start, item.end), item) for item in volts]
    ahead = [
        item for (_, end), item in spans if end <= found.start() and BETWEEN.match(scene.text[end : found.start()])
    ]
    after = [item for (at, _), item in spans if at >= found.end() and BETWEEN.match(scene.text[found.end() : at])]
    begins = BEGINS.search(scene.ahead(found.start())) is not None
    first, second = (after[:1], ahead[-1:]) if begins else (ahead[-1:], after[:1])
    return next(iter([*first, *second]), None)


def _is_read(item: Item) -> bool:
    return not isinstance(item.quantity.value, str) and LEAST <= item.quantity.value <= MOST
