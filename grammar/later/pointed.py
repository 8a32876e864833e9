"""Which figure of before a later message points at: "swap the 70 for 35", "turn the charger down to 13", "ours 6"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from grammar.facts import facts
from grammar.later.alike import VOLTS, as_typed, read_as
from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex
from grammar.text.standard import NOMINAL

FIGURE = r"\d{1,4}(?:[.,]\d{1,2})?"
ENDS = r"(?![.,]?\d)"
SWAPPED = regex(
    r"\b(?:swap|change|replace|exchange|trade|switch)(?:ped|d|s)? (?:the|my|that|those|our) "
    rf"(?P<old>{FIGURE}){ENDS}(?: \w{{1,6}})? (?:for|with|by|to|against) (?:an? |the )?(?P<new>{FIGURE}){ENDS}",
    re.IGNORECASE,
)
DRY = regex(  # "21 is the dry weight, 29 with acid"
    rf"\b(?P<old>{FIGURE})(?: ?kg| ?kilos?)? (?:is|was|are) (?:the |its |their )?"
    rf"(?:dry|empty|unfilled|shipping)\b[^.?!;\d]{{0,20}}"
    rf"\b(?P<new>{FIGURE})(?: ?kg| ?kilos?)?,? (?:with|wet|filled|full|once)\b",
    re.IGNORECASE,
)
TURNED = regex(
    r"\b(?:turn|set|dial|wind|throttle|limit|cut|reduce|lower)\w* (?:the |my |our |that )?(?:charger|it|box)"
    rf" (?:down |back |up )?to (?:about |only |just )?(?P<new>{FIGURE}){ENDS}(?! ?v)",
    re.IGNORECASE,
)
OF_ANOTHER_SIZE = regex(  # of a motor whose amps were told: "he wants the bigger one, 220 A"
    r"\b(?:bigger|larger|smaller|stronger|weaker|big|small|next)(?: one| model| size| thruster| unit)(?: up| down)?\b"
    rf"[^.?!;\d]{{0,16}}(?<![\d.,])(?P<new>{FIGURE}){ENDS} ?a(?:mps?|mperes?)?\b(?! ?h)",
    re.IGNORECASE,
)
THE_ONE = regex(  # "back to the 24 one", where volts were spoken of
    rf"\bthe (?P<new>12|24|36|48){ENDS}(?: ?v(?:olts?)?)? (?:one|system|set-?up|version|case)\b", re.IGNORECASE
)
ONE_CELL = regex(  # "one is 1.180", after a gravity of all the cells
    r"\b(?:(?:only |just |but )?one(?: cell| of (?:them|the (?:six|cells)))?"
    r"|(?:the )?(?:first|second|third|fourth|fifth|last|end|middle)(?: one| cell)?)"
    r"(?: only| just)? (?:is|was|reads?|shows?|at|has|gives?|came (?:out )?at)(?: only| just)?"
    r" (?:at )?(?P<new>1[.,]\d{2,3})\b",
    re.IGNORECASE,
)
OTHER_AMPS = frozenset({"charger.current", "alternator.current", "fuse.rating"})
WIRED = regex(
    r"\b(?:(?:re)?arrang\w*|re-?wir\w*|wired?|join\w*|still|run|same|all)\b[^.?!;\d]{0,24}"
    rf"\b(?:for|on|as|to make|into) (?P<new>12|24|36|48){ENDS}"
    r"(?: ?v(?:olts?)?\b)?(?=\W*$| (?:instead|then|now)\b|[?,])",
    re.IGNORECASE,
)
SAME_CAPACITY = regex(  # "go to 24 V, same Ah": so many more batteries as it has more volts
    r"\b(?:(?:the )?same|equal|as many|identical) (?:ah|amp[- ]?hours?|capacity)\b", re.IGNORECASE
)
BESIDE_IT = regex(r"\b(?:add\w*|another|second|third|charger|converter|thruster|motor|windlass)\b", re.IGNORECASE)
OURS = regex(
    rf"^\W*(?:and )?(?:ours|mine|his|hers|the battery|this one)(?:'?s| is| are|,)? (?:about |now )?(?P<new>\w+){ENDS}"
    r"(?: years?)?\W*$",
    re.IGNORECASE,
)
JOIN = regex(  # "two of these side by side, maker says up to four"
    r"\b(?:maker|manufacturer|manual|label|sheet|leaflet|they|supplier)\b[^.?!;\d]{0,12}\b(?:says?|allows?|permits?|takes?|lets?)"
    r" (?:up to|at most|max(?:imum)?|no more than) (?P<new>\w+)(?= ?(?:$|[.,;?!)]|of them|in|together))",
    re.IGNORECASE,
)
LIGHTER = regex(  # what a kind named before is to save
    r"\w+ (?:then )?(?:have been |be |is |been |weigh(?:s|ed)? |come (?:out )?(?:at|to) )?(?:about |only |just )?"
    r"(?:(?:knock|shave|take|cut|lop)s? \w+ (?:\w+ )?off\b|(?:save|spare)s?\b"
    r"|(?:half|a third|a quarter|less|lighter)\b)",
    re.IGNORECASE,
)
KIND = "battery.chemistry"
MOST_APART = 0.2  # of the gravities of two cells
MOMENT = 30.0  # seconds for which a peak is allowed
OLDEST = 20.0
MOST_JOINED = 16.0
ONE_BATTERY = 12.0  # volts
MOST_CHARGE = 100.0  # amps
DRAWN, FALL, TIRED = 40.0, 1.0, 11.6  # amps of a motor; volts that they take; what no rested battery shows


def pointed_at(scene: Scene, stated: Sequence[Stated], said: Sequence[Stated]) -> list[Stated]:
    """The facts of a later message with those that its words point at, in the place of what they seemed."""
    told = {old.fact: old for old in said}
    found = [
        *_swapped(scene, said),
        *_not_dry(scene, told),
        *_turned(scene, told),
        *_of_another_size(scene, told),
        *_of_these_volts(scene, told),
        *_of_one_cell(scene, told),
        *_wired(scene, told),
        *_at_other_volts(scene, stated, told),
        *_its_years(scene, told),
        *_joined_at_most(scene, stated, told),
    ]
    if not found:
        return _under_load(scene, _for_a_moment(scene, stated, told), told)
    spans, names = [item.span for item in found], {item.fact for item in found}
    kept = (one for one in stated if not any(start <= one.span[0] < end for start, end in spans))
    return [*(one for one in kept if one.fact not in names), *found]


def _of_another_size(scene: Scene, told: dict[str, Stated]) -> Iterator[Stated]:
    found = OF_ANOTHER_SIZE.search(scene.text)
    plain = "load.current" in told and OTHER_AMPS.isdisjoint(told) and not {"battery", "charger", "fuse"} & scene.heads
    if found is not None and plain:
        yield _stated(found, "load.current", _number(found["new"]))


def _of_these_volts(scene: Scene, told: dict[str, Stated]) -> Iterator[Stated]:
    found = THE_ONE.search(scene.text)
    if found is not None and "bank.voltage" in told and not {"battery.group", "battery.capacity"} & told.keys():
        yield _stated(found, "bank.voltage", _number(found["new"]))


def _of_one_cell(scene: Scene, told: dict[str, Stated]) -> Iterator[Stated]:
    found, all_of_them = ONE_CELL.search(scene.text), told.get("reading.gravity")
    if found is None or all_of_them is None or "reading.gravity_spread" in told:
        return
    spread = round(abs(float(all_of_them.value) - _number(found["new"])), 3)
    if spread <= MOST_APART:
        yield _stated(found, "reading.gravity_spread", spread)


def held_against(scene: Scene, stated: Sequence[Stated]) -> list[Stated]:
    """The facts with a kind second that is only held against theirs by its weight: "would lithium knock half off?"."""
    theirs = next((old.value for old in scene.said if old.fact == KIND), None)
    return [
        replace(one, of=2) if one.fact == KIND and theirs not in (None, one.value) and _is_lighter(scene, one) else one
        for one in stated
    ]


def _is_lighter(scene: Scene, one: Stated) -> bool:
    return LIGHTER.match(scene.text, one.span[0]) is not None


def _stated(found: re.Match[str], fact: str, number: float | str) -> Stated:
    return Stated(fact, number, facts()[fact].unit, found["new"], found.span(), how="asked")


def _number(typed: str) -> float:
    return float(typed.replace(",", "."))


def _swapped(scene: Scene, said: Sequence[Stated]) -> Iterator[Stated]:
    """The figure that is to take the place of one said before: "what if I swap the 70 for 35"."""
    if (found := SWAPPED.search(scene.text)) is None:
        return
    for old in said:
        typed, new = as_typed(old.text), as_typed(found["new"])
        if typed is None or new is None or typed.value != _number(found["old"]):
            continue
        if (number := read_as(old, new)) is not None:
            yield _stated(found, old.fact, number)
            return


def _not_dry(scene: Scene, told: dict[str, Stated]) -> Iterator[Stated]:
    found = DRY.search(scene.text) if "battery.weight" in told else None
    new = as_typed(found["new"]) if found else None
    number = read_as(told["battery.weight"], new) if new else None
    if found is not None and number is not None:
        yield _stated(found, "battery.weight", number)


def _turned(scene: Scene, told: dict[str, Stated]) -> Iterator[Stated]:
    """A charger's amps that are turned down; where its volts were told it may be those."""
    found = TURNED.search(scene.text) if "charger.current" in told and "charger.voltage" not in told else None
    if found is not None and 0 < _number(found["new"]) <= MOST_CHARGE:
        yield _stated(found, "charger.current", _number(found["new"]))


def _joined_for(told: dict[str, Stated], volts: float) -> str | None:
    """How batteries told of are joined for so many volts; None where their number or volts are not known."""
    count, each = (told[name].value if name in told else 0.0 for name in ("battery.count", "battery.nominal"))
    if isinstance(count, str) or isinstance(each, str) or not count or not each or volts % each or volts > count * each:
        return None
    return "series" if volts == count * each else "parallel" if volts == each else "series-parallel"


def _wired(scene: Scene, told: dict[str, Stated]) -> Iterator[Stated]:
    """Another voltage of the same bank: "the same four for 12 instead", "still on 12"."""
    found = WIRED.search(scene.text) if "bank.voltage" in told else None
    if found is not None and not scene.quantities("AMP", "LENGTH", "AREA"):
        volts = _number(found["new"])
        yield _stated(found, "bank.voltage", volts)
        if volts != told["bank.voltage"].value and (layout := _joined_for(told, volts)):
            yield _stated(found, "bank.layout", layout)


def _at_other_volts(scene: Scene, stated: Sequence[Stated], told: dict[str, Stated]) -> Iterator[Stated]:
    """How many batteries make a bank of other volts with the amp-hours of theirs: "24 V then, same Ah"."""
    found = SAME_CAPACITY.search(scene.text)
    if found is None or BESIDE_IT.search(scene.text) or any(one.fact == "battery.count" for one in stated):
        return
    count, layout = told.get("battery.count"), told.get("bank.layout")
    each = float(told["battery.nominal"].value) if "battery.nominal" in told else ONE_BATTERY
    after = next((one for one in stated if one.fact in VOLTS), None)
    in_series = layout is not None and layout.value != "parallel"
    if after is None or count is None or (in_series and "bank.voltage" not in told):
        return
    before, volts = (float(told["bank.voltage"].value) if "bank.voltage" in told else each), float(after.value)
    many = float(count.value) * volts / before
    if volts == before or many < 2 or many != int(many) or volts not in NOMINAL:
        return
    yield replace(after, fact="bank.voltage", how="asked")
    yield Stated("battery.count", many, "", found[0], found.span(), how="asked")
    bank = {"battery.count": replace(count, value=many), "battery.nominal": replace(count, value=each)}
    if layout is not None and (joined := _joined_for(bank, volts)):
        yield Stated("bank.layout", joined, "", found[0], found.span(), how="asked")


def _joined_at_most(scene: Scene, stated: Sequence[Stated], told: dict[str, Stated]) -> Iterator[Stated]:
    """How many the maker lets join, as they are joined here."""
    layout = next((one.value for one in stated if one.fact == "bank.layout"), None)
    found = JOIN.search(scene.text) if layout in ("series", "parallel") and "battery.chemistry" in told else None
    if found is not None and 1 <= (many := value(found["new"].lower())) <= MOST_JOINED:
        yield _stated(found, f"battery.max_in_{layout}", many)


def _its_years(scene: Scene, told: dict[str, Stated]) -> Iterator[Stated]:
    """The years of their own battery, where nothing but its kind was told: "ours 6"."""
    figures = any(not isinstance(old.value, str) and old.fact != "battery.count" for old in told.values())
    if figures or scene.likely or scene.expected - {"battery.age"} or "battery.chemistry" not in told:
        return
    if (found := OURS.match(scene.text)) is not None and 0 < (years := value(found["new"].lower())) <= OLDEST:
        yield _stated(found, "battery.age", years)


def _for_a_moment(scene: Scene, stated: Sequence[Stated], told: dict[str, Stated]) -> list[Stated]:
    """Amps for some seconds, more than a battery gives for good as told before, are its peak: "three seconds 300 A"."""
    steady = told.get("battery.max_current")
    times = [item for item in scene.quantities("TIME") if item.quantity.unit == "second"]
    if (
        steady is None
        or "battery.peak_current" in told
        or not any(float(one.quantity.value) <= MOMENT for one in times)
    ):
        return list(stated)
    limit = float(steady.value)
    short = {one.fact for one in stated if one.unit == "ampere" and one.fact in LIMITED and float(one.value) > limit}
    stated = [one for one in stated if not short or one.fact not in ("load.time", "load.burst")]
    return [
        replace(one, fact="battery.peak_current", how="asked")
        if one.unit == "ampere" and one.fact in LIMITED and float(one.value) > limit
        else one
        for one in stated
    ]


LIMITED = frozenset({"battery.max_current", "load.current", "load.peak", "reading.current"})


def _under_load(scene: Scene, stated: list[Stated], told: dict[str, Stated]) -> list[Stated]:
    """Volts read beside a motor's amps, well under those of rest told before: "10.9 at the posts then, 240 A"."""
    rest = told.get("reading.voltage")
    amps = any(one.unit == "ampere" and one.fact in LIMITED and float(one.value) >= DRAWN for one in stated)
    if rest is None or not amps or "reading.load_voltage" in told:
        return stated
    whole = max(1, round(float(rest.value) / 12.6))
    return [
        replace(one, fact="reading.load_voltage", how="asked")
        if one.fact == "reading.voltage" and float(one.value) < min(TIRED * whole, float(rest.value) - FALL)
        else one
        for one in stated
    ]
