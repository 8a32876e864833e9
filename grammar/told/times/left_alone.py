"""How long a battery had been left alone, or off its charger, before the volts beside it were read."""

from __future__ import annotations

import re

from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of

LONGEST = 31 * 86400.0  # seconds: who leaves it longer lays it up
QUIET = frozenset(
    {"silence", "quiet", "peace", "calm", "sleep", "idleness", "solitude", "stillness", "slumber", "rest"}
)
ALONE = frozenset({"alone", "untouched", "undisturbed", "asleep", "unattended", "sleeping", "slept", "dozed", "dozing"})
OWN = (["on", "own"], ["by", "itself"], ["by", "herself"], ["by", "themselves"], ["to", "itself"], ["doing", "nothing"])
WHOSE = frozenset({"its", "her", "his", "their", "my", "our", "just", "all", "completely", "totally", "sat", "quite"})
NOBODY = regex(r"\b(?:nobody|no ?one|not a soul|nothing)\b[^.?!;,\d]{0,30}$", re.IGNORECASE)
LEAVING = frozenset(
    {"leave", "leaving", "will", "ill", "going", "shall", "can", "may", "could", "should", "gone", "till"}
)
SINCE = frozenset({"ago", "back", "since", "past"})
OFF_IT = regex(  # "came off the charger an hour back", "unhooked the charger three hours ago", "last charged"
    r"\b(?:(?:came|come|took|taken|pulled|been|is|was|went|lifted)\b[^.?!;,]{0,20}\boff\b(?:[^.?!;,]{0,40}"
    r"\b(?:charg\w+|mains|shore(?: power)?))?|charger\b[^.?!;,]{0,12}\boff"
    r"|(?:unhook|unplug|disconnect|unclip|undid|remov|switched off|stopp)\w*\b[^.?!;,]{0,20}\bcharg\w+"
    r"|last (?:on )?charged?)\b[^.?!;\d]{0,24}$",
    re.IGNORECASE,
)
CHARGE = regex(r"charg|mains|shore", re.IGNORECASE)
SAT = frozenset({"sat", "stood", "sitting", "standing", "lain", "rested"})
RESTED = regex(  # "12.9, rested a day", "after it rested from the charger for a day"
    r"\b(?:rested|resting|sat|stood|relaxed|left alone|been alone)"
    r"(?: (?:off|from|away from|without) (?:the |a |its )?(?:charger|charge|mains))?"
    r"(?: for| about| around| some| all of)* $",
    re.IGNORECASE,
)
NEAR = 7  # words before a time that can tell of it
DAYS = frozenset({"day", "week", "fortnight", "month"})


def left_alone(scene: Scene, item: Item, value: float) -> bool:
    """Whether a time is how long nothing was done before a reading: "12.1 this morning, three days on her own"."""
    if value > LONGEST or not _is_read(scene):
        return False
    if rested_before(scene, item):
        return True
    if scene.word(item.end) in SINCE and _was_taken_off(scene, item):
        return True
    before = {scene.word(at) for at in range(item.start - NEAR, item.start)}
    if item.quantity.unit not in DAYS | {"hour"} or before & LEAVING:
        return False
    after = [word for at in range(item.end, item.end + 4) if (word := scene.word(at)) not in WHOSE]
    if _sat_so_long(scene, item):
        return True
    if after[:1] == ["of"] and after[1:2] and after[1] in QUIET | {"nobody", "nothing"}:
        return True
    named = ALONE.intersection([*after[:1], *(scene.word(at) for at in range(item.start - 3, item.start))])
    return bool(named) or after[:2] in OWN or NOBODY.search(ahead_of(scene, item)) is not None


def rested_before(scene: Scene, item: Item) -> bool:
    """Whether the words before a time say that nothing ran, where volts are told."""
    return _is_read(scene) and RESTED.search(ahead_of(scene, item)) is not None


def _sat_so_long(scene: Scene, item: Item) -> bool:
    """Whether it follows the reading at once, or what was off: "it's sat at 11.9 two weeks", "off for 2 days"."""
    before = [scene.word(item.start - back) for back in (1, 2, 3, 4)]
    if before[:2] == ["for", "off"]:
        return True
    after = scene.items[item.at + 1 : item.at + 3]
    if before[0] in SAT and len(after) == 2 and after[0].kind == "mark" and _is_volts(after[1]):
        return True  # "left standing a week: 12.4"
    volts = scene.at_word[item.start - 1] if item.start else item
    return volts.dim in ("NUM", "VOLT") and bool(SAT & set(before[1:]))


def _is_volts(item: Item) -> bool:
    value = item.quantity.value if item.dim in ("NUM", "VOLT") else ""
    return not isinstance(value, str) and 5 < value < 60 and bool(value % 1)


def _is_read(scene: Scene) -> bool:
    """Whether volts are told, with their decimals, or were told before."""
    return any(5 < value < 60 and value % 1 for value in scene.figures) or any(
        old.fact == "reading.voltage" for old in scene.said
    )


def _was_taken_off(scene: Scene, item: Item) -> bool:
    """Whether the charge ended then."""
    found = OFF_IT.search(ahead_of(scene, item))
    return found is not None and CHARGE.search(found[0]) is not None
