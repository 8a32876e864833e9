"""What a later message says of figures that were said before: "not 420, 240", "24 was there and back", "and 300"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from grammar.later.alike import as_typed, free_figures, ratio_of, read_as, stated_so
from grammar.later.answers import MOST_JOINED
from grammar.later.bare_numbers import mentioned_again, told_by_words
from grammar.later.gone_on import BARE, FEW, SIZES, goes_on_from, opening_of
from grammar.later.pointed import pointed_at
from grammar.later.same_dimension import ALIKE, of_same_dimension
from grammar.reading import Stated
from grammar.scene.claims import UNSURE
from grammar.scene.denied import denied
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.canonical import in_unit
from grammar.text.patterns import regex
from grammar.told.batteries.how_full import charge_again
from grammar.told.cold.scales import scale_meant

LONGEST = 24  # words: a longer message speaks for itself
ONLY_ONE = regex(
    r"\b(?:just|only|with|a single) one\b[^a-z]*(?:then|only|alone|instead|of them|of those|$)"
    r"|\bone of (?:them|those) (?:only|alone)\b"
)
ONE_WILL_DO = regex(  # "my wife says one will do, will just one do?"
    r"\b(?:will|would|could|can|does|do|is|might)(?: just| only)? (?:the )?one"
    r" (?:do(?: it)?|be enough|enough|manage|cope|suffice|serve|handle it|run it|turn it|push it|alone|on its own)\b"
    r"|\bone (?:will|would|can|could|might)(?: surely| just)?"
    r" (?:do(?: it)?|be enough|manage|cope|suffice|run it|turn it)\b"
    r"|\b(?:get away|manage|make do|cope|do) with (?:just |only )?(?:the )?one\b"
    r"(?! (?:of (?:the|my)|charger|fuse|cable))"
    r"|\bone (?:on its own|by itself|alone)\b|\b(?:just|only) the one(?=\W*$)"
)
LOADS = frozenset({"load.model", "load.current", "load.peak", "load.power"})
OF_OTHER_THINGS = ("charger.", "fuse.", "solar.", "cable.", "alternator.")
MORE = 14  # words of a message that puts up one alone
NEXT = 4  # pieces between a figure and the one that takes its place
ASKING = frozenset({"what", "whats", "how"})
PAIR = frozenset({"charger.setting", "battery.chemistry"})
OTHER_RATING = {"battery.cca": "battery.ca", "battery.ca": "battery.cca"}
SOME_CELLS = frozenset({"end", "other", "others", "last", "first", "middle", "rest", "two", "third", "fourth"})
SAME = 0.01  # degrees
MOST_DRAIN = 5.0  # amps that flow with all switched off


def goes_back(scene: Scene, item: Item, said: Sequence[Stated]) -> bool:
    """Whether a bare number goes on with what was spoken of, so that nothing else about it counts: "and 31?"."""
    value = item.quantity.value
    if item.dim != "NUM" or isinstance(value, str) or not said:
        return False
    sizes = any(f"{value:g}" in SIZES.get(old.fact, ()) for old in said) and len(scene.tokens) <= BARE
    return sizes or bool(told_by_words(scene, item, float(value), said))


def recalled(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> list[Stated]:
    """The facts with those that speak of figures said before; `said` has the newest first."""
    if not said:
        return stated
    if len(scene.tokens) > LONGEST:
        return [*stated, *(goes_on_from(scene, stated, said) if opening_of(scene) else ())]
    stated = pointed_at(scene, stated, said)
    again = list(mentioned_again(scene, said))
    gone = {item.part.span for item, _ in again if item.part}
    stated = of_same_dimension(scene, [item for item in stated if item.span not in gone], said)
    found = [
        *_told_again(scene, again, stated),
        *_rescaled(scene, said),
        *charge_again(scene, said),
        *_corrected(scene, stated, said),
        *_renamed(scene, stated, said),
        *_measured_so(scene, stated, said),
        *_turned_about(scene, stated, said),
        *_read_there(scene, said),
        *_drained(scene, stated, said),
        *_cells_apart(scene, stated, said),
        *_one_of_them(scene, said),
    ]
    if not found:
        found = list(goes_on_from(scene, stated, said))
    spans = {item.span for item in found}
    told = {item.fact for item in found if item.fact == "reading.gravity"}
    kept = (item for item in stated if item.fact not in told and (item.span not in spans or item.how not in UNSURE))
    return [*kept, *found]


def _told_again(scene: Scene, again: list[tuple[Item, Stated]], stated: list[Stated]) -> Iterator[Stated]:
    """ "22.1 was at the fuse board, at the battery 23.9": the figure beside one said before takes its place."""
    for item, old in again:
        free = [other for other in free_figures(scene, stated) if other.dim in (item.dim, "NUM") and other is not item]
        free = [other for other in free if all(other is not one for one, _ in again)]
        if len(free) == 1 and (value := read_as(old, free[0].quantity)) is not None:
            yield stated_so(scene, free[0], old.fact, value)


def _corrected(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "Not 420, 240": the figure that takes the place of one said before."""
    for item in scene.measured:
        old = _said_as(item, said) if denied(scene, item) else None
        if old is None:
            continue
        free = [other for other in free_figures(scene, stated) if not denied(scene, other)]
        free = [other for other in free if 0 < abs(other.at - item.at) <= NEXT]
        new = next((other for other in free if other.dim == item.dim), None)
        new = new or next((other for other in free if _as_it_was_told(old, item, other)), None)
        if new is not None and (value := read_as(old, new.quantity)) is not None:
            yield stated_so(scene, new, old.fact, value)


def _as_it_was_told(old: Stated, gone: Item, new: Item) -> bool:
    """Whether one of two figures stands without the unit of the other: "it's 120 minutes, not 160"."""
    value = read_as(old, new.quantity) if "NUM" in (gone.dim, new.dim) else None
    return isinstance(value, float) and isinstance(old.value, float) and ratio_of(value, old.value) <= ALIKE


def _said_as(item: Item, said: Sequence[Stated]) -> Stated | None:
    """The fact that was typed with this number."""
    for old in said:
        typed = as_typed(old.text)
        if typed is not None and typed.value == item.quantity.value:
            return old
    return None


def _rescaled(scene: Scene, said: Sequence[Stated]) -> Iterator[Stated]:
    """ "Fahrenheit, of course": the degrees said before are of that scale."""
    old = next((item for item in said if item.fact == "ambient.temperature"), None)
    if old is None or scene.quantities("TEMP"):
        return
    typed, scale = as_typed(old.text), scale_meant(scene)
    if typed is None or isinstance(typed.value, str) or not scale:
        return
    value = typed.value if scale == "C" else (typed.value - 32) / 1.8
    if isinstance(old.value, float) and abs(old.value - value) > SAME:
        yield replace(old, value=value, text=f"{typed.value:g} {scale}", how="asked")


def _renamed(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "It says MCA, not CCA": a figure said before is that of another rating."""
    if any(item.fact in OTHER_RATING for item in stated):
        return
    named = [found for found in scene.roles if found.concept in OTHER_RATING]
    now = [found for found in named if not _denies(scene, found.start)]
    for old in said:
        new = next((found for found in now if found.concept == OTHER_RATING.get(old.fact)), None)
        if new is not None and scene.about("role:" + new.concept) and not _asks(scene):
            span = scene.span(new.start, new.end)
            yield replace(old, fact=new.concept, text=scene.text[slice(*span)], span=span, how="asked")
            return


def _turned_about(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "Other way round?": the charger's kind and the battery's change places."""
    told = {old.fact: old for old in said}
    words = [token.word for token in scene.tokens]
    at = next((at for at, word in enumerate(words[:-1]) if (word, words[at + 1]) == ("other", "way")), None)
    setting, kind = told.get("charger.setting"), told.get("battery.chemistry")
    if at is None or setting is None or kind is None or len(words) > FEW or any(item.fact in PAIR for item in stated):
        return
    span = scene.span(at, at + 2)
    yield replace(setting, value=kind.value, span=span, how="asked")
    yield replace(kind, value=setting.value, span=span, how="asked")


def _read_there(scene: Scene, said: Sequence[Stated]) -> Iterator[Stated]:
    """ "It was measured at the thruster, not at the battery": the volts under load said before, read elsewhere."""
    told = {old.fact: old for old in said}
    old = told.get("reading.load_voltage")
    there = [found for found in scene.roles if found.concept == "at_load" and not _denies(scene, found.start)]
    if old is None or "reading.load_voltage_at_load" in told or not there or scene.measured or _asks(scene):
        return
    if {"measured", "read", "taken", "was", "took"} & scene.vocabulary:
        span = scene.span(there[0].start, there[0].end)
        yield replace(old, fact="reading.load_voltage_at_load", span=span, how="asked")


def _drained(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "Nothing on, I mean, all off": the few amps said before are what is drawn with all switched off."""
    off = scene.named("role", "drain.current")
    told = {old.fact: old for old in said}
    amps = told.get("load.current")
    here = any(item.unit == "ampere" for item in stated) or scene.quantities("AMP", "NUM")
    if not off or amps is None or here or "drain.current" in told or isinstance(amps.value, str):
        return
    if amps.value <= MOST_DRAIN and scene.named("note", "correction"):
        yield replace(amps, fact="drain.current", span=scene.span(off[0].start, off[0].end), how="asked")


def _cells_apart(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "The two end cells are 1.24 though": other cells than those read before, which differ by so much."""
    old = next((item for item in said if item.fact == "reading.gravity"), None)
    new = [item for item in stated if item.fact == "reading.gravity"]
    one_cell = any((scene.word(at), scene.word(at + 1)) == ("one", "cell") for at in range(len(scene.tokens)))
    if (
        old is None
        or len(new) != 1
        or isinstance(old.value, str)
        or (scene.named("note", "correction") and not one_cell)
    ):
        return
    value = new[0].value
    some = one_cell or (SOME_CELLS & scene.vocabulary and {"cell", "cells", "one", "ones"} & scene.vocabulary)
    if isinstance(value, str) or not some or value == old.value:
        return
    yield replace(new[0], value=min(value, old.value), how="asked")
    yield replace(
        new[0], fact="reading.gravity_spread", value=round(abs(value - old.value), 4), low=None, high=None, how="asked"
    )


def _asks(scene: Scene) -> bool:
    asking = bool(ASKING & scene.vocabulary)
    return asking or "?" in scene.text or scene.about("request:convert", "request:what_is")


def _denies(scene: Scene, start: int) -> bool:
    return any(start - found.end in (0, 1) for found in scene.denials)


def _one_of_them(scene: Scene, said: Sequence[Stated]) -> Iterator[Stated]:
    """ "Just the stern one", of two batteries said before: one battery."""
    if scene.expected & MOST_JOINED:  # "only one" is what the maker allows
        return
    count = next((item for item in said if item.fact == "battery.count"), None)
    alone = len(scene.tokens) <= MORE and not scene.quantities("NUM", "AH", "VOLT")
    if count is not None and alone and (_says_single(scene) or _one_is_named(scene, said)):
        yield replace(count, value=1.0, span=scene.span(0, 1), how="asked")
        return
    if count is None or scene.word(0) not in ("just", "only") or scene.word(1) != "the":
        return
    if any(scene.word(at) in ("one", "battery") for at in range(2, 5)):
        yield replace(count, value=1.0, span=scene.span(0, 2), how="asked")


def _one_is_named(scene: Scene, said: Sequence[Stated]) -> bool:
    """Whether one of the batteries is put up alone; "will one do" only where a load was told, and no charger or fuse of
    which there might be one."""
    text = scene.text.lower()
    if ONLY_ONE.search(text) is not None:
        return True
    others = any(item.fact.startswith(OF_OTHER_THINGS) for item in said) or scene.heads - {"battery", "load"}
    loaded = any(item.fact in LOADS for item in said) and not others
    return loaded and ONE_WILL_DO.search(text) is not None


def _says_single(scene: Scene) -> bool:
    return scene.word(len(scene.tokens) - 1 - _ends(scene)) == "single"


def _ends(scene: Scene) -> int:
    """How many marks end the message."""
    return int(bool(scene.items) and scene.items[-1].kind == "mark")


def _measured_so(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "24 was there and back", "that was one way": the length said before, measured otherwise."""
    old = next((item for item in said if item.fact == "cable.length"), None)
    total = [found for found in scene.roles if found.concept == "length_total"]
    single = [found for found in scene.roles if found.concept == "length_one_way"]
    if old is None or not (total or single) or scene.quantities("LENGTH") or isinstance(old.value, str):
        return
    if any(item.fact == "cable.length" for item in stated):
        return
    typed = as_typed(old.text)
    full = in_unit(float(typed.value), typed.unit, "meter") if typed and not isinstance(typed.value, str) else None
    if full is None or any(
        item.quantity.value != typed.value for item in scene.measured if typed and item.part and item.kind != "count"
    ):
        return
    found = (single or total)[0]
    span = scene.span(found.start, found.end)
    yield replace(old, value=full if single else full / 2, span=span, how="asked")
