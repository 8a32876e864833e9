"""Years of a battery told as people tell their own: birthdays, candles, and "my daughter is six and so's the gel"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.years.served import so_long, worn_at, years_served

FACT = "battery.age"
ORDINALS = {
    name: float(number)
    for number, name in enumerate(
        (
            *("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"),
            *("eleventh", "twelfth", "thirteenth", "fourteenth", "fifteenth"),
        ),
        start=1,
    )
}
ITS = regex(
    rf"\b(?:its|their|her|his|the|a) ({'|'.join(ORDINALS)}|\d{{1,2}}(?:st|nd|rd|th))"
    r" (?:birthday|season|summer|winter)\b",
    re.IGNORECASE,
)
IN_YEAR = regex(
    rf"\bin(?:to)? (?:its|their|her|his) ({'|'.join(ORDINALS)}|\d{{1,2}}(?:st|nd|rd|th)) year(?! of)\b", re.IGNORECASE
)
BIRTHDAY = regex(rf"\b({'|'.join(ORDINALS)}|\d{{1,2}}(?:st|nd|rd|th)) birthday\b", re.IGNORECASE)
PAST_IT = regex(
    rf"\b(?:past|beyond|after|over) (?:its|the|her|his|their) ({'|'.join(ORDINALS)}|\d{{1,2}}(?:st|nd|rd|th))(?=\W|$)"
    r"(?! (?:week|month|day|hour|minute|time|season|floor|lock|bridge|buoy)\b)",
    re.IGNORECASE,
)
PERSON = (
    r"(?:daughter|son|wife|husband|child|kid|boy|girl|grand\w+|mother|father|mum|dad|nephew|niece|sister|brother|dog|cat"
    r"|boat|marriage)"
)
OF_PERSON = regex(rf"\b(?:my|our|the|his|her|your)(?: \w+)? {PERSON}(?:'?s)?\W+(?:\w+\W+){{0,3}}$", re.IGNORECASE)
SAME = regex(  # what stands after the years of somebody
    r"^(?: years?(?: old)?)?,? (?:and|as) (?:so(?:'?s| is| are)|(?:the|my|our) [^.?!,]{0,24} is the same age)\b"
    r"(?P<whose>[^.?!,;]{0,30})",
    re.IGNORECASE,
)
BATTERY = regex(r"\b(?:batter\w*|agms?|gels?|wets?|flooded|lithiums?|lead|lfp|lifepo\w*)\b", re.IGNORECASE)
APART = regex(r" (?:older|younger|newer)\b", re.IGNORECASE)  # than another, so that no age is told yet
COUNTED = frozenset({"candles", "springs", "autumns", "christmases", "easters"})
COUNTS = frozenset({"counts", "has", "have", "had", "seen", "on", "behind", "lived", "its", "for"})
CAKE = frozenset({"cake", "blew", "blow", "blown", "birthday", "lit"})
NEAR = 3  # words
OLDEST = 30.0
AHEAD = 60  # characters


def years_told(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """The age of a battery, where no words of age tell it."""
    if any(item.fact == FACT and not APART.match(scene.text, item.span[1]) for item in stated):
        return
    for find in (_birthday, _counted, _same_as, worn_at, years_served, so_long):
        if (found := find(scene)) is not None:
            yield found
            return


def _birthday(scene: Scene) -> Stated | None:
    """ "Their fifth birthday", "in its 6th season"; a person's is no battery's."""
    named = "battery" in scene.facts | scene.heads
    found = ITS.search(scene.text) or IN_YEAR.search(scene.text) or (BIRTHDAY.search(scene.text) if named else None)
    if found is None or OF_PERSON.search(scene.ahead(found.start())):
        return None
    later = PAST_IT.search(scene.text, found.end(), found.end() + AHEAD)
    found = later or found  # "slow since its sixth birthday, now past the seventh"
    told = found[1].lower()
    return _stated(found, ORDINALS.get(told) or float(re.sub(r"\D", "", told)))


def _counted(scene: Scene) -> Stated | None:
    """ "Nine candles on the AGM's cake", "four springs he counts"."""
    if not COUNTED & scene.vocabulary or not _of_battery(scene):
        return None
    for item in scene.quantities("NUM", "COUNT"):
        if scene.word(item.end) not in COUNTED or not 1 <= _plain(item) <= OLDEST:
            continue
        near = {scene.word(at) for at in (*range(item.start - NEAR, item.start), *range(item.end, item.end + NEAR + 1))}
        if near & COUNTS or (
            scene.word(item.end) == "candles" and (CAKE & scene.vocabulary or scene.word(item.start - 1) == "with")
        ):
            return _at(scene, item)
    return None


def _same_as(scene: Scene) -> Stated | None:
    """ "My daughter's six, and so's the wet battery"."""
    for item in scene.quantities("NUM", "COUNT", "TIME"):
        years = item.dim != "TIME" or item.quantity.unit == "year"
        end = scene.span(item.start, item.end)[1]
        found = SAME.match(scene.text[end : end + AHEAD]) if years and 1 <= _plain(item) <= OLDEST else None
        if found is not None and BATTERY.search(found[0]):
            return _at(scene, item)
    return None


def _of_battery(scene: Scene) -> bool:
    """Whether a battery is spoken of, here or before."""
    return "battery" in scene.facts | scene.heads or any(old.fact.startswith("battery.") for old in scene.said)


def _plain(item: Item) -> float:
    return 0.0 if isinstance(item.quantity.value, str) else float(item.quantity.value)


def _at(scene: Scene, item: Item) -> Stated:
    span = scene.span(item.start, item.end)
    return Stated(FACT, _plain(item), "year", scene.text[slice(*span)], span, how="default")


def _stated(found: re.Match[str], years: float) -> Stated:
    return Stated(FACT, years, "year", found[0], found.span(), how="default")
