"""Finds signs of danger in a text and how far each counts: present, past, denied or only asked about in general.

The words are in words/dangers*.toml, danger_words.toml and danger_context.toml. Look-alikes ("boiling hot weather",
"lead acid") are taken out first.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Collection, Iterable, Mapping, Sequence
from functools import lru_cache
from itertools import pairwise

from grammar.dangers import charger_on
from grammar.dangers.answered import is_answered_no
from grammar.dangers.chosen import is_chosen, may_be_chosen
from grammar.dangers.context import Context
from grammar.dangers.elsewhere import is_of_a_thing_ashore
from grammar.dangers.feared import is_feared
from grammar.dangers.galley import is_of_the_galley
from grammar.dangers.hearsay import is_hearsay
from grammar.dangers.landed import is_landed
from grammar.dangers.listed import is_listed
from grammar.dangers.meant import is_of_a_price
from grammar.dangers.mended import was_mended
from grammar.dangers.noises import is_traced_noise
from grammar.dangers.of_a_kind import is_of_a_kind
from grammar.dangers.owner import owned
from grammar.dangers.sized import is_of_size
from grammar.dangers.subject import is_of_another
from grammar.dangers.table import Signs, signs
from grammar.dangers.text import Text, read
from grammar.dangers.to_come import is_to_come
from grammar.dangers.traced import is_traced
from grammar.dangers.unbuilt import is_only_said
from grammar.dangers.weather import is_weather
from grammar.dangers.wet_cells import is_of_a_size
from grammar.dangers.witnessed import is_witnessed
from grammar.dangers.woodwork import is_of_wood
from grammar.lexicon.phrases import QUESTION, Hit
from grammar.reading import Danger, Span, Stated

BESIDE = 8  # words between a sign and what it must stand by
SHORT = 4  # words of a message so short that one word of danger is enough
DENIES = 4  # words over which a "not" reaches
FAR = 3  # words between two of a sign that a comma makes too many
ASKED = ("who", "which")  # begin another item of a list
LIST_COMMAS = 3  # commas and such words that make a list of different things
PARTS = frozenset({"or", "whether", "if", "unless", "then", "which", "but"})  # words that begin another clause
TENSE = 3  # words before a sign in which its verb is looked for
THINGS = ("battery", "fuse", "joint", "posts")  # classes of words that are no sign by themselves
OF_A_BATTERY = ("battery.", "bank.", "reading.", "storage.")  # facts that only a battery has
LITHIUM = ("lfp", "lithium-other")
HEAT = "hot-to-touch"
BANG = "explosion"
GASSING = "hissing-venting"
ADRIFT = "boat-disabled"
SMELL, UNFUSED = "rotten-egg-smell", "no-fuse"
SMOKES = ("smoke", "lithium-vapour-breathed")
CIRCUIT = ("electric", "wiring", "locker", "charge", "machine")  # classes of words of what could smoke
WARMTH = (HEAT, GASSING)  # "boiling" is of both
ASHORE = (*SMOKES, *WARMTH)
AM_I = ("am", "i")  # asked by the battery of a riddle of itself
TELLING = frozenset(  # words of what is so, whatever was advised before them
    (
        *("is", "its", "are", "was", "now", "shows", "reads", "says", "sits", "goes", "went", "climbs", "has"),
        *("but", "yet", "though", "gives", "puts", "pushes", "pumps", "mine", "ours", "got", "while", "when"),
    )
)
AFFIRMED = 4  # words of a next sentence in which "mine does" is looked for
JOINS = frozenset({"or", "nor", "and", "either", "is", "it", "any", "even", "no", "not"})


def find_dangers(text: str, said: Iterable[Stated] = (), rated: Sequence[Span] = ()) -> tuple[Danger, ...]:
    """The signs of danger in a text, in its order; of each family and status the first. Any text will do.

    `said` are the facts of the conversation: what it speaks of need not be named again. `rated` are the degrees that a
    cable stands: alone they are no heat of a battery.
    """
    words = read(text)
    table = signs()
    hits = [hit for hit in _standing(words, table, _spoken_of(said)) if not _is_rated(hit, words, rated)]
    if not hits:
        return ()
    context = Context(table.context.find(words.words), words)
    lithium = frozenset(hit.start for hit in table.places.find(words.words) if hit.name == "lithium")
    found: dict[tuple[str, str], Danger] = {}
    denied: Hit | None = None
    weighed = may_be_chosen(words) and is_chosen(lithium, words)
    for hit in sorted(hits, key=lambda item: (item.start, -item.end)):
        if context.riddle and words.words[hit.start : hit.start + 2] == AM_I:
            continue
        family = hit.name.split("/")[0]
        keeps = family in table.keeps and not (family in table.unmended and was_mended(words.words))
        status = _status(hit, keeps, words, context, denied)
        asked = family in table.general or (family in table.advised and _is_advised(hit, words, context))
        if status == "present" and asked:
            status = "general"
        if status in ("present", "general") and family in table.planned:
            only_thought_of = weighed or _is_advised(hit, words, context) or (status == "present" and is_to_come(words))
            status = "planned" if only_thought_of else status
        status = _as_told(hit, family, status, words, lithium)
        if status == "denied":
            denied = hit
        if (family, status) not in found:
            span = words.spans[hit.start][0], words.spans[hit.end - 1][1]
            found[family, status] = Danger(family, status, text[slice(*span)], span)
    return tuple(found.values())


def _as_told(hit: Hit, family: str, status: str, words: Text, lithium: frozenset[int]) -> str:
    """The status after what the rest of the message makes of it: only said, landed since, a smell that was traced."""
    if status == "present" and family in signs().hearsay and is_hearsay(hit, lithium, words):
        return "planned"
    if status in ("present", "general") and family == UNFUSED and is_only_said(hit, words):
        return "planned"
    over = (family == ADRIFT and is_landed(words.words)) or (family == SMELL and is_traced(hit, words))
    return "past" if status == "present" and over else status


@lru_cache(maxsize=2)  # each figure that is told may ask for it
def _context(text: str) -> Context:
    words = read(text)
    return Context(signs().context.find(words.words), words)


def _is_rated(hit: Hit, words: Text, rated: Sequence[Span]) -> bool:
    """Whether a sign is nothing but degrees that a cable stands: "90C insulation"."""
    spans = (words.spans[at] for at in hit.at)
    return bool(rated) and all(any(first <= start and end <= last for first, last in rated) for start, end in spans)


def advised(text: str, span: Span) -> bool:
    """Whether what stands at this place is only what somebody advises, or what is asked of as such advice."""
    words = read(text)
    at = bisect_right(words.spans, span[0], key=lambda place: place[1])
    return at < len(words.words) and _is_advised(Hit("", (at,)), words, _context(text))


def look_alikes(text: str) -> list[Span]:
    """Where a text has phrases that only sound like a danger: "slightly warm after charging"."""
    words = read(text)
    hits = [
        *signs().masks.find(words.words),
        *(hit for hit in signs().signs.find(words.words) if is_of_wood(hit, words)),
    ]
    return [(words.spans[hit.start][0], words.spans[hit.end - 1][1]) for hit in hits]


def _spoken_of(said: Iterable[Stated]) -> frozenset[str]:
    """The classes of words that a conversation with these facts has spoken of."""
    told = list(said)
    battery = any(item.fact.startswith(OF_A_BATTERY) for item in told)
    lithium = any(item.fact == "battery.chemistry" and item.value in LITHIUM for item in told)
    return frozenset((*(("battery", "aboard", "electric") if battery else ()), *(("lithium",) if lithium else ())))


def _standing(words: Text, table: Signs, about: frozenset[str] = frozenset()) -> list[Hit]:
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
        if place in about and _any(near.get("it", []), first, last):  # it is the battery that was spoken of
            return True
        return _any(found, max(first, hit.start - BESIDE), hit.start) or _any(
            found, hit.end, min(last, hit.end + BESIDE)
        )
    return True


def _any(places: Sequence[int], first: int, last: int) -> bool:
    """Whether one of these sorted places stands from `first` to before `last`."""
    at = bisect_left(places, first)
    return at < len(places) and places[at] < last


def _status(hit: Hit, keeps: bool, words: Text, context: Context, denied: Hit | None) -> str:
    first, last = words.sentences[hit.start]
    if _is_denied(hit, first, words, context, denied):
        return "denied"
    if is_feared(hit, words):
        return "general"
    if _is_general(hit, first, words, context) and not _is_affirmed(hit, last, context):
        return "general"
    if context.rid.get(hit.start, 0) >= hit.end:  # "binned the swollen one", "to the tip with its bulge"
        return "past"
    if _is_now(hit, first, words, context):
        return "present"
    after = words.sentences[min(last + 1, len(words.words) - 1)][1]
    if context.gone.get(hit.start, 0) >= hit.end or _any(context.mended, hit.start, after):
        return "past"
    gone_by = _any(context.other_boat, first, last) or (not keeps and _any(context.past, first, last))
    return "past" if gone_by else "present"


def _is_now(hit: Hit, first: int, words: Text, context: Context) -> bool:
    """Whether it is told in the present, which nothing that was mended or long ago makes past."""
    reach = range(max(first, hit.start - TENSE), hit.start + 1)
    return _any(context.now, max((at for at in reach if at in words.commas), default=reach.start), hit.end)


def _is_affirmed(hit: Hit, last: int, context: Context) -> bool:
    """Whether what is asked in general is then said to be so: "what if it swells? Mine has"."""
    return any(hit.end <= at <= last + AFFIRMED for at in context.affirmed)


def _is_denied(hit: Hit, first: int, words: Text, context: Context, denied: Hit | None) -> bool:
    if words.words[hit.end : hit.end + 1] == ("not",) and hit.end not in words.commas:
        return True
    if is_answered_no(hit, words):
        return True
    if denied and hit.start < denied.end:  # inside or overlapping what was denied
        return True
    if denied and all(words.words[at] in JOINS for at in range(denied.end, hit.start)):
        return True  # "not swollen, hot or leaking"
    sign = _sign(hit)
    gaps = ((after, before + 1) for before, after in pairwise(hit.at) if after > before + 1)
    inside = () if context.denying & set(hit.at) else gaps  # "won't stop" is a sign, and "no engine ... no wind" too
    return any(_reached(at, since, words, context) for at, since in ((sign, first), *inside))


def _sign(hit: Hit) -> int:
    """The word that is the sign itself, beside what it stands by."""
    return hit.end - 1 if hit.name.endswith("/last") else hit.start


def _reached(sign: int, since: int, words: Text, context: Context) -> bool:
    """Whether a denial that begins at `since` or later reaches this word."""
    return any(
        since <= item.start
        and "but" not in words.words[item.end : sign]
        and not any(at in words.commas for at in range(item.end, sign + 1))
        for end in range(sign - DENIES, sign + 1)
        for item in context.denials.get(end, ())
    ) or is_listed(sign, since, words, context)


def _is_advised(hit: Hit, words: Text, context: Context) -> bool:
    first, last = words.sentences[hit.start]
    told = any(
        first <= item.start and item.end <= hit.end and not _is_told_between(item.end, hit.end, words)
        for item in context.advised
    )
    return told and not _is_affirmed(hit, last, context)


def _is_told_between(start: int, end: int, words: Text) -> bool:
    """Whether something that is so stands there: "he said we can charge it, it is at 15.5 V now"."""
    return any(at in words.commas for at in range(start, end)) or not TELLING.isdisjoint(words.words[start:end])


def _is_general(hit: Hit, first: int, words: Text, context: Context) -> bool:
    sign = _sign(hit)
    if context.supposed or context.weighed.get(hit.start, 0) >= hit.end:
        return True
    for at in range(bisect_left(context.general_starts, first), len(context.general)):
        item = context.general[at]
        if item.start > sign:
            return False
        if item.end <= hit.end and not is_witnessed(hit, item, words, context):
            return True
    return False
