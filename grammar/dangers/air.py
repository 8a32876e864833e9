"""Degrees that are of the air: "85 degrees outside", "the garage is at 80 degrees", "in a barn, 90 degrees F"."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from grammar.lexicon.phrases import ENDS

UNNAMED = frozenset({"deg", "degree", "degrees"})  # of either scale, as long as no other word tells which
FAHRENHEIT = frozenset({"f", "fahrenheit", "farenheit", "fahrenheight"})
SEASONS = frozenset({"summer", "summers", "summertime", "july", "august"})
SPOT = frozenset({"there", "where"})  # the place just spoken of: "next to the exhaust, there it gets 50 degrees"
SOURCES = frozenset(  # of heat, beside which a place is that warm
    (
        *("exhaust", "engine", "engines", "manifold", "boiler", "stove", "heater", "radiator", "calorifier", "turbo"),
        *("silencer", "muffler", "generator", "chimney", "furnace", "motor"),
    )
)
BESIDE = frozenset(
    {"beside", "near", "next", "behind", "by", "above", "under", "over", "against", "close", "alongside"}
)
LEAD = 4  # words that lead from "beside" to a source
SPOT_WARM = 70.0  # C that a place in the sun or by an engine gets
WARM = 110.0  # degrees that no weather passes, on the American scale: in Celsius no place where people stand is at 50
OPEN = frozenset({"outside", "outdoors", "out", "here", "today", "tonight", "shade", "weather", "ambient", "ashore"})
INDOORS = frozenset({"garage", "barn", "workshop", "boathouse", "hangar", "basement", "cellar", "attic", "hall"})
ABOARD = frozenset({"room", "bay", "locker", "compartment", "shed"})  # beside an engine or in the sun so hot in Celsius
STANDS = frozenset({"box", "boat", "cabin", "cupboard"})  # in a summer so warm; "the battery box" is that battery's
PRONOUNS = frozenset({"it", "they"})
BATTERY = frozenset(
    (
        *("battery", "batteries", "batt", "bank", "accu", "lithium", "lifepo4", "lfp", "agm", "agms", "gel", "gels"),
        *("wet", "cell", "cells", "case", "casing", "lid", "charger", "cable", "lug", "post", "terminal"),
    )
)
VERBS = frozenset({"is", "was", "its", "reads", "shows", "gets", "got", "reached", "reaches", "hit", "hits", "feels"})
TOUCHED = frozenset({"touch", "hand", "surface"})
AFTER, BEFORE = 5, 6  # words from the figure within which the place is named
SPOKEN = 40  # words before it that are looked at


def in_celsius(value: float, words: Sequence[str], at: int) -> float | None:
    """The degrees of "80 degrees F" in Celsius; None where no such scale is told."""
    unnamed, scale = (words[at + 1 : at + 2], words[at + 2 : at + 3])
    told = not UNNAMED.isdisjoint(unnamed) and not FAHRENHEIT.isdisjoint(scale)
    return (value - 32) / 1.8 if told else None


def of_the_air(value: float, words: Sequence[str], at: int, commas: Collection[int]) -> bool:
    """Whether these degrees are those of a place, as no place where people stand is so hot in Celsius.

    A battery that stands before them in their clause may be what is hot: "the battery in the garage is at 80 degrees".
    """
    weather = value <= WARM and not UNNAMED.isdisjoint(words[at + 1 : at + 2])
    first = _first(words, at, commas)
    if not TOUCHED.isdisjoint(words[at + 2 : at + AFTER]):
        return False
    return (
        _after_a_place(words[first:at], (OPEN | INDOORS | ABOARD) if weather else ABOARD)
        or (weather and _before_a_place(words, first, at, commas))
        or (value <= SPOT_WARM and _of_a_season(words, first, at, commas))
        or (value <= SPOT_WARM and _by_a_source(words, first, at, commas))
    )


def _of_a_season(words: Sequence[str], first: int, at: int, commas: Collection[int]) -> bool:
    """Whether a place has them in a season, and no battery of the same clause: "it gets 50 degrees there in summer"."""
    clause = words[first : _last(words, at + 2, commas)]
    place = SPOT | ABOARD | OPEN | STANDS
    return BATTERY.isdisjoint(clause) and not SEASONS.isdisjoint(clause) and not place.isdisjoint(clause)


def _by_a_source(words: Sequence[str], first: int, at: int, commas: Collection[int]) -> bool:
    """Whether they are those "there", beside what gives heat: "AGMs beside the exhaust, 50 C there"."""
    clause = words[first : _last(words, at + 2, commas)]
    if not BATTERY.isdisjoint(clause) or SPOT.isdisjoint(words[at + 2 : at + AFTER]):
        return False
    ends = [row for row in range(first - 1, -1, -1) if words[row] in ENDS]
    begins = ends[1] + 1 if len(ends) > 1 else 0  # the sentence before it as well
    ahead = words[begins:at]
    return any(
        word in BESIDE and not SOURCES.isdisjoint(ahead[row + 1 : row + 1 + LEAD]) for row, word in enumerate(ahead)
    )


def _after_a_place(ahead: Sequence[str], places: Collection[str]) -> bool:
    """Whether the words before a figure lead from a place to it: "in the garage at", "the engine room reaches"."""
    place = next((row for row, word in enumerate(ahead) if word in places and len(ahead) - row <= BEFORE), None)
    if place is None or not BATTERY.isdisjoint(ahead[place + 1 :]):
        return False
    named = place if ahead[place] in OPEN else max(place - 1, 0)  # "the battery locker" is a place
    return VERBS.isdisjoint(ahead[place:]) or BATTERY.isdisjoint(ahead[:named])


def _before_a_place(words: Sequence[str], first: int, at: int, commas: Collection[int]) -> bool:
    """Whether the place follows the figure: "it is 85 degrees outside", where "it" is no battery spoken of before."""
    ahead, behind = words[first:at], words[at + 2 : _last(words, at + 2, commas)]
    if not BATTERY.isdisjoint(ahead):
        return False
    battery = not PRONOUNS.isdisjoint(ahead) and not BATTERY.isdisjoint(words[max(0, first - SPOKEN) : first])
    return not OPEN.isdisjoint(behind) or (not INDOORS.isdisjoint(behind) and not battery)


def _first(words: Sequence[str], at: int, commas: Collection[int]) -> int:
    """Where the clause of this word begins, or what is looked at of it."""
    least = max(at - SPOKEN, 0)
    begins = (row for row in range(at, least, -1) if row in commas or words[row - 1] in ENDS)
    return next(begins, least)


def _last(words: Sequence[str], at: int, commas: Collection[int]) -> int:
    """Where the clause of this word ends, or what is looked at of it."""
    ends = (row for row in range(at, min(at + AFTER, len(words))) if row in commas or words[row] in ENDS)
    return next(ends, at + AFTER)
