"""Hours from one time of the day to another, in which a load runs: "from six until midnight", "22:00 to 06:30"."""

from __future__ import annotations

import re
from dataclasses import dataclass

from grammar.reading import Span
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

HOURS = (
    *("one", "two", "three", "four", "five", "six", "seven"),
    *("eight", "nine", "ten", "eleven", "twelve"),
)
NAMED = {"noon": 12.0, "midday": 12.0, "midnight": 24.0}
PAST = {"half past": 0.5, "half": 0.5, "quarter past": 0.25, "quarter to": -0.25}
BEFORE_NOON, AFTER_NOON = (
    r"a\.?m\b\.?|(?:in|of) the (?:early )?morning",
    r"p\.?m\b\.?|in the (?:afternoon|evening)|at night",
)
TIME = (
    rf"(?:(?P<{{0}}four>(?:[01][0-9]|2[0-3])[0-5][0-9])(?: ?(?:h|hrs|hours))?\b"
    rf"|(?P<{{0}}named>{'|'.join(NAMED)})\b"
    rf"|(?P<{{0}}part>(?:a )?(?:half past|quarter past|quarter to|half) )?"
    rf"(?P<{{0}}hour>[0-2]?[0-9](?![0-9])|(?:{'|'.join(HOURS)})\b)"
    rf"(?:(?P<{{0}}colon>[:h])(?P<{{0}}minutes>[0-5][0-9])\b)?(?![.,/]?[0-9])"
    rf"(?P<{{0}}clock> ?(?:o'?clock|hrs?\b))?(?: ?(?P<{{0}}am>{BEFORE_NOON})| ?(?P<{{0}}pm>{AFTER_NOON}))?)"
)
STRETCH = regex(
    rf"(?P<begins>\b(?:from|between) (?:about )?)?(?<![\w.,/-]){TIME.format('a')}"
    rf"(?: ?[-–] ?| (?P<joint>to|till?|until|untill|and|through to) )(?:about )?{TIME.format('b')}"
    r"(?! ?(?:%|a\b|amps?|ah\b|v\b|volts?|w\b|watts?|days?|weeks?|months?|years?|min|sec|per ?cent|m\b|met|feet|ft|kg"
    r"|mm|times))",
    re.IGNORECASE,
)
OPEN_FOR = regex(  # "open 9 till 5", "visitors 10 till 4"
    r"\b(?:open(?:s|ing hours)?|visitors|customers|guests|trad(?:e|es|ing)|hours|on duty|on watch|show"
    r"|serv(?:e|es|ing))"
    r"(?: are| is|,|:)?(?: daily| every day| from)? $",
    re.IGNORECASE,
)
AT_THE_HOUR = regex(  # "the shop closes at 5.30", "the ferry of"
    r"\b(?:(?:shop|yard|office|club|chandler\w*|store|lock|bridge|gate|marina|we|they|you) (?:clos\w+|opens?|shuts?)"
    r"|ferry|train|bus|appointment|lunch|dinner|meeting)\b[^.?!;,\d]{0,16}"
    r"\b(?:at|by|until|till|from|before|after|of) $",
    re.IGNORECASE,
)
UNTIL = frozenset({"till", "til", "until", "untill"})
FALLS = regex(r"\b(?:fall|drop|go|sag|sink|dip|pull|sank|fell|went|down|charg|fill)\w*[^.?!;]{0,16}$", re.IGNORECASE)
PAST_IT = regex(r"\W+past\b", re.IGNORECASE)
ABED = regex(r"\b(?:sleep\w*|asleep|in bed|cpap|at night|evenings?|telly)\b", re.IGNORECASE)
LOOKED_AT = 24  # characters before a stretch
DAY, HALF_DAY = 24.0, 12.0
DIMS = frozenset({"TIME", "LENGTH", "AMP"})
SHARES = {"half": 0.5, "quarter": 0.25, "two": 0.2, "five": 0.5, "seven": 0.7, "eight": 0.8}
FOLLOWS = regex(
    r" and (?:an? )?(half|quarter)(?=\W*$|[.,;:?!)]| (?:old|ago|now|long|of|each|one|in|is|it|they|she|the|for"
    r"|from)\b)",
    re.IGNORECASE,
)
TENTHS = regex(r" (two|five|seven|eight)(?=\W*$|[.,;:?!)]| (?:for|from|of|in|on|is|and)\b)", re.IGNORECASE)
AMPERES = regex(r"\bamperes?$", re.IGNORECASE)  # "2 ampere five"


@dataclass(frozen=True, slots=True)
class Time:
    """A time of the day in hours; `sure` where it is told which half of the day it is in."""

    hour: float
    marked: bool
    sure: bool


def is_an_hour(ahead: str) -> bool:
    """Whether a figure behind these words is an hour of the day.

    >>> is_an_hour("the yard closes at "), is_an_hour("the lamp goes out at ")
    (True, False)
    """
    return AT_THE_HOUR.search(ahead) is not None


def hours_told(text: str) -> tuple[float, Span] | None:
    """The hours between two times of the day, and where they stand; None where none are told.

    Two bare numbers are times only as "from seven until eleven". Of two times, of which one tells no half of the day,
    the shorter stretch is meant.
    """
    for found in STRETCH.finditer(text):
        first, last = _time(found, "a"), _time(found, "b")
        if first is None or last is None or not _are_times(text, found, first, last):
            continue
        whole = DAY if first.sure and last.sure else HALF_DAY
        return (last.hour - first.hour) % whole or whole, found.span()
    return None


def is_half_past(text: str, span: Span) -> bool:
    """Whether a "half" is that of "half past nine"."""
    return text[span[0] : span[1]].lower().endswith("half") and PAST_IT.match(text, span[1]) is not None


def _are_times(text: str, found: re.Match[str], first: Time, last: Time) -> bool:
    joint = (found["joint"] or "").lower()
    if joint == "and" and not (found["begins"] or "").lower().startswith("between"):
        return False
    if FALLS.search(text[max(0, found.start() - LOOKED_AT) : found.start()]):
        return False
    fours = [found["afour"], found["bfour"]]
    if any(fours):  # "from 0900 to 1700", not "from 1100 to 1300 watts"
        return all(fours) and bool(found["begins"]) and any(four[0] == "0" for four in fours)
    open_for = OPEN_FOR.search(text[max(0, found.start() - LOOKED_AT) : found.start()]) is not None
    if open_for and (last.hour - first.hour) % HALF_DAY > 0 and max(first.hour, last.hour) <= HALF_DAY:
        return True
    bare = bool(found["begins"]) and (joint in UNTIL or (joint == "to" and ABED.search(text) is not None))
    return first.marked or last.marked or bare


def _time(found: re.Match[str], name: str) -> Time | None:
    if four := found[f"{name}four"]:
        return Time(int(four[:2]) + int(four[2:]) / 60, True, True)
    if named := found[f"{name}named"]:
        return Time(NAMED[named.lower()], True, True)
    said = found[f"{name}hour"].lower()
    hour = float(said) if said.isdigit() else HOURS.index(said) + 1.0
    if hour > DAY:
        return None
    part = (found[f"{name}part"] or "").lower().strip().removeprefix("a ")
    minutes = float(found[f"{name}minutes"] or 0) / 60
    morning, evening = found[f"{name}am"], found[f"{name}pm"]
    sure = bool(morning or evening) or hour > HALF_DAY or (bool(found[f"{name}colon"]) and said.startswith("0"))
    marked = bool(morning or evening or part or found[f"{name}colon"] or found[f"{name}clock"])
    hour = hour % HALF_DAY if morning or evening else hour
    return Time(hour + (HALF_DAY if evening else 0) + PAST.get(part, 0) + minutes, marked, sure)


def share_after(scene: Scene, item: Item) -> float:
    """The part of one unit that is told behind a figure; 0 for none. "Four years and half full" has none."""
    if item.dim not in DIMS or item.part is None or len(item.part.quantities) != 1:
        return 0.0
    found = FOLLOWS.match(scene.text, item.part.span[1])
    if found is None and AMPERES.search(item.quantity.text):
        found = TENTHS.match(scene.text, item.part.span[1])
    return SHARES[found[1].lower()] if found else 0.0
