"""Which hits of the words of danger stand as signs: not look-alikes, lists, other things."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Collection, Iterable, Mapping, Sequence
from itertools import pairwise

from grammar.dangers import charger_on
from grammar.dangers.dips import is_a_dip
from grammar.dangers.elsewhere import is_of_a_thing_ashore
from grammar.dangers.feared import is_feared
from grammar.dangers.galley import is_of_the_galley
from grammar.dangers.meant import is_of_a_price
from grammar.dangers.noises import is_traced_noise
from grammar.dangers.of_a_kind import is_of_a_kind
from grammar.dangers.owner import owned
from grammar.dangers.parted_bank import is_of_a_parted_bank
from grammar.dangers.sized import is_of_size
from grammar.dangers.subject import is_of_another
from grammar.dangers.table import Signs
from grammar.dangers.text import Text
from grammar.dangers.weather import is_weather
from grammar.dangers.wet_cells import is_of_a_size
from grammar.dangers.woodwork import is_of_wood
from grammar.lexicon.phrases import QUESTION, Hit
from grammar.reading import Stated

BESIDE = 8  # words between a sign and what it must stand by
SHORT = 4  # words of a message so short that one word of danger is enough
FAR = 3  # words between two of a sign that a comma makes too many
ASKED = ("who", "which")  # begin another item of a list
LIST_COMMAS = 3  # commas and such words that make a list of different things
PARTS = frozenset({"or", "whether", "if", "unless", "then", "which", "but"})  # words that begin another clause
THINGS = ("battery", "fuse", "joint", "posts")  # classes of words that are no sign by themselves
OF_A_BATTERY = ("battery.", "bank.", "reading.", "storage.")  # facts that only a battery has
LITHIUM = ("lfp", "lithium-other")
HEAT = "hot-to-touch"
BANG = "explosion"
TRIPS = "lfp-keeps-tripping"
SPLIT = "leaking-case"
GASSING = "hissing-venting"
SMOKES = ("smoke", "lithium-vapour-breathed")
CIRCUIT = ("electric", "wiring", "locker", "charge", "machine")  # classes of words of what could smoke
WARMTH = (HEAT, GASSING)  # "boiling" is of both
ASHORE = (*SMOKES, *WARMTH)


def spoken_of(said: Iterable[Stated]) -> frozenset[str]:
    """The classes of words that a conversation with these facts has spoken of."""
    told = list(said)
    battery = any(item.fact.startswith(OF_A_BATTERY) for item in told)
    lithium = any(item.fact == "battery.chemistry" and item.value in LITHIUM for item in told)
    return frozenset((*(("battery", "aboard", "electric") if battery else ()), *(("lithium",) if lithium else ())))


def standing(words: Text, table: Signs, about: frozenset[str] = frozenset()) -> list[Hit]:
    """The signs that have by them what they need and are no look-alike."""
    hits = table.signs.find(words.words)
    if not hits:
        return []
    near: dict[str, list[int]] = {}
    for hit in table.places.find(words.words):
        near.setdefault(hit.name, []).append(hit.start)
    near["charging"] = sorted((*near.get("charging", ()), *charger_on.on(words.words, near.get("chargers", ()))))
    things = frozenset(at for name in THINGS for at in near.get(name, ()))
    circuit = frozenset(at for name in CIRCUIT for at in near.get(name, ()))
    masks = [mask for mask in table.masks.find(words.words) if not _is_parted(mask, things, words)]
    masked: dict[int, list[Hit]] = {}
    for mask in masks:
        for at in mask.at:
            masked.setdefault(at, []).append(mask)
    standing = [
        hit
        for hit in hits
        if not _is_look_alike(hit, masked, things)
        and _has_place(hit, near, words, table, about)
        and not (_is_list(hit, words) if hit.name.split("/")[0] in table.loose else _is_strained(hit, words))
        and not _is_of_another(hit, table, near, words)
        and not (hit.name.startswith(HEAT) and is_of_size(hit, words))
        and not (hit.name.startswith(ASHORE) and is_of_a_thing_ashore(hit, near.get("battery", ()), words))
        and not is_of_a_price(hit, words)
        and not is_of_wood(hit, words)
        and not is_of_a_kind(hit, near.get("battery", ()), words)
        and not is_of_a_size(hit, words)
        and not (hit.name.startswith(BANG) and is_traced_noise(hit, words))
        and not (hit.name.startswith(SMOKES) and is_of_the_galley(hit, circuit, words))
        and not (hit.name.startswith(TRIPS) and is_a_dip(hit, words))
        and not (hit.name.startswith(SPLIT) and is_of_a_parted_bank(hit, words))
        and not (hit.name.startswith(GASSING) and is_feared(hit, words))
        and not (hit.name.startswith(WARMTH) and is_weather(hit, near.get("locker", ()), words))
    ]
    ours = frozenset(near.get("battery", ())) - {at - 1 for at in near.get("joint", ())}  # not a "battery post"
    held = {name: frozenset(found) for name, found in near.items()}  # searched for each sign
    standing = [own for hit in standing if (own := owned(hit, table.of_wiring, held, words)) is not None]
    taken: dict[str, set[int]] = {}
    for hit in standing:
        for other in table.instead.get(hit.name.split("/")[0], ()):
            taken.setdefault(other, set()).update(hit.at)
    return [hit for hit in standing if ours & set(hit.at) or not taken.get(hit.name.split("/")[0], set()) & set(hit.at)]


def _is_of_another(hit: Hit, table: Signs, near: dict[str, list[int]], words: Text) -> bool:
    of = table.machines.get(hit.name.split("/")[0])
    return of is not None and is_of_another(hit, of, near, words)


def _is_parted(mask: Hit, things: Collection[int], words: Text) -> bool:
    """Whether a comma parts its words, and the rest says something else: "it popped, the battery did".

    So does one before its second word, or before a battery or a figure: "the thruster is stuck on, gel battery".
    """
    parted = [after for before, after in pairwise(mask.at) if after == before + 1 and after in words.commas]
    return any(at == mask.at[1] or at in things or words.words[at][:1].isdigit() for at in parted)


def _is_strained(hit: Hit, words: Text) -> bool:
    """Whether its words stand in two clauses, one of which says something else: "an AGM, or is it money in the sea"."""
    for after, before in pairwise(hit.at):
        between = range(after + 1, before)
        if not PARTS.isdisjoint(words.words[at] for at in between):
            return True
        if len(between) >= FAR and any(at in words.commas for at in range(after + 1, before + 1)):
            return True
    return False


def _is_list(hit: Hit, words: Text) -> bool:
    """Whether its words stand in as many items of a list: "LFP 100, who's lighter, who takes frost, a charger"."""
    asked = sum(words.words[at] in ASKED for at in range(hit.start + 1, hit.end))
    return asked + sum(at in words.commas for at in range(hit.start + 1, hit.end)) >= LIST_COMMAS


def _is_look_alike(hit: Hit, masked: Mapping[int, list[Hit]], things: frozenset[int]) -> bool:
    """Whether it has a word in a look-alike; one whose words are all its own ("gas bottle leaks") is none.

    Nor is one that shares no more with it than a word for the battery: "the lithium got hot and shut itself down".
    """
    signs_of = [at for at in hit.at if at not in things] or hit.at
    around = (mask for at in signs_of for mask in masked.get(at, ()))
    return any(len(mask.at) == 1 or mask.at == hit.at or not set(mask.at) <= set(hit.at) for mask in around)


def _has_place(
    hit: Hit, near: dict[str, list[int]], words: Text, table: Signs, about: frozenset[str] = frozenset()
) -> bool:
    family, how, place = (*hit.name.split("/"), "", "")[:3]
    if how != "alone" and any(not near.get(need) and need not in about for need in table.needs.get(family, ())):
        return False
    if how == "short":
        first, last = words.sentences[hit.start]
        alone = (hit.start, hit.end) == (first, last) and words.words[last : last + 1] != (QUESTION,)
        return words.size <= SHORT or alone  # "Smoke. It comes from the bow."
    if how == "anywhere":
        return bool(near.get(place)) or place in about or words.size <= SHORT
    if how == "with":
        return bool(near.get(place))
    if how == "without":
        return not near.get(place)
    if how == "beside":
        first, last = words.sentences[hit.start]
        found = near.get(place, [])
        if place in about and any_in(near.get("it", []), first, last):  # it is the battery that was spoken of
            return True
        return any_in(found, max(first, hit.start - BESIDE), hit.start) or any_in(
            found, hit.end, min(last, hit.end + BESIDE)
        )
    return True


def any_in(places: Sequence[int], first: int, last: int) -> bool:
    """Whether one of these sorted places stands from `first` to before `last`."""
    at = bisect_left(places, first)
    return at < len(places) and places[at] < last
