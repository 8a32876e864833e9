"""How much lighter a lithium battery is than the lead one it replaces."""

from __future__ import annotations

import math
import re

from grammar.text.patterns import regex
from service import reference, say
from service.calculators import convert
from service.case import Case
from service.judgements import case_sizes, lithium, supply
from service.reference import Row
from service.reply import Answer, Figure
from service.topic import Topic

OUT_OF = regex(  # "how many kilos out of 22?": their own weight, though no unit tells it
    r"\b(?:out of|off|against|than) (?:my |the |a )?\d{2}\b(?! ?(?:a|amps?|ah|v|mm2?|m)\b)", re.IGNORECASE
)
LIMIT = regex(  # asked of a battery, and not told of one: "will it weigh less than 25 kg?"
    r"(?:^|[.?!,;:] |\b(?:and|or|but) )(?:will|would|does|do|is|are|can|could|might)\b[^.?!;]{0,50}"
    r"\b(?:(?:less|lighter|no more) than|under|below|at most|(?P<over>more than|over|heavier than)) (?=\d)",
    re.IGNORECASE,
)
WEIGHS = regex(r"\b(?:what|how much)\b[^.?!;]{0,60}\bweigh\w*\b", re.IGNORECASE)  # "what would lithium weigh"
SAVES = regex(r"\b(?:sav(?:e|es|ed|ing)|lighter|less|lose)\b", re.IGNORECASE)
NEAR_HALF = 0.05  # lb
CLOSE = 12  # characters of a figure with its unit
IN_POUNDS = regex(r"\b(?:lbs?|pounds?)\b", re.IGNORECASE)
ONE_ONLY = regex(r"\b(?:one|single|1 ?x?)\b[^.?!;,\d]{0,24}(?:\d+ ?(?:ah|v)\b[^.?!;,\d]{0,12}){0,2}$", re.IGNORECASE)
EACH = regex(r"^ ?(?:each|apiece)\b", re.IGNORECASE)
OF_ONE = regex(
    r"\b(?:each|apiece|per battery|a single one|(?:does|would|will|is|should) (?:just |only )?one)\b",
    re.IGNORECASE,
)
MANY = {"one": 1, "two": 2, "three": 3, "four": 4, "pair of": 2}
BEFORE_THEM = regex(  # "2 x 12 V 100 Ah"
    rf"\b(?P<many>[1-9]|{'|'.join(MANY)})(?: ?[x×*] ?| )(?:\d{{1,2}} ?v(?:olts?)? )?$", re.IGNORECASE
)
LITHIUM = ("lfp", "lithium-other")
HALF = reference.value("weights", "lithium-share")

TOPIC = Topic(
    "weight",
    "Weight",
    cautions=("lift",),
    unsure={"battery.weight": "A lithium battery weighs about half as much: tell us what yours weighs."},
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The saving of two weights, or of half the lead battery's weight."""
    if "battery.weight" not in case:
        return without_weight(case)
    if within := under_a_limit(case):
        return within
    count = max(1.0, float(case.get("battery.count", 1.0)))
    old = float(case["battery.weight"]) * count
    if "battery.weight" in case.second:
        return two_weights(case, old, count)
    share = float(HALF.value)
    case.step(f"{shown(case, old)} of lead x {share} = {shown(case, old * share)} of lithium", HALF.cite)
    whose = "the battery" if count == 1 else f"the {say.number(count)} batteries"
    saved, left = shown(case, old * (1 - share)), shown(case, old * share)
    head = f"About {saved} lighter: lithium in place of {whose} weighs about {left}."
    if WEIGHS.search(case.text) and not SAVES.search(case.text):
        head = f"About {left}: lithium weighs about half of {whose} it replaces, which saves {saved}."
    return TOPIC.says("information", head, *figures(old * (1 - share), old * share))


def under_a_limit(case: Case) -> Answer | None:
    """ "Will an 80 Ah weigh less than 25 kg?": a limit is no weight of theirs; None where none is put."""
    put = LIMIT.search(case.text)
    told = case.stated.get("battery.weight")
    if put is None or told is None or told.span is None or not put.start() < told.span[1] <= put.end() + CLOSE:
        return None
    kind, most = case.said("battery.chemistry"), float(told.value)
    if case.said("battery.capacity") is None or case.said("battery.nominal") not in (None, 12.0):
        return None
    found = usual(float(case["battery.capacity"]))
    if found is None:
        return None
    share = float(HALF.value) if kind in LITHIUM else 1.0
    low, high = (weight * share for weight in found)
    case.step("By the usual amp-hours and weights of the case sizes of lead batteries", "typical-case")
    if kind in LITHIUM:
        case.step(f"Lithium weighs about {share} of lead of as many amp-hours", HALF.cite)
    name = f"{say.amp_hours(float(case['battery.capacity']))} {say.CHEMISTRY[str(kind)] if kind else 'lead'} battery"
    over = put["over"] is not None
    sure = "Usually yes" if (low >= most if over else high <= most) else "Hardly"
    start = sure if low >= most or high <= most else "Perhaps"
    head = f"{start}: {_article(name).lower()} {name} usually weighs {say.between(low, high, 'kg')}; the label decides."
    return TOPIC.says("information", head)


def two_weights(case: Case, old: float, count: float) -> Answer:
    """Two weights that were stated, the lithium one taken as the new one."""
    kinds = (case.get("battery.chemistry"), case.second.get("battery.chemistry"))
    new = float(case.second["battery.weight"].value) * (1 if is_single(case) else count)
    if kinds[0] == "lfp" and kinds[1] and kinds[1].value != "lfp":
        old, new = new, old
    case.others().known("battery.weight")
    case.step(f"{shown(case, old)} - {shown(case, new)} = {shown(case, old - new)}", "unit-definitions")
    saved = old - new
    how = "lighter" if saved >= 0 else "heavier"
    head = f"{shown(case, abs(saved))} {how}: {shown(case, new)} in place of {shown(case, old)}."
    return TOPIC.says("information", head, *figures(saved, new))


def is_single(case: Case) -> bool:
    """Whether one battery is told to take the place of several: "two of 27 kg with one of 14 kg"."""
    first, second = case.stated["battery.weight"].span, case.second["battery.weight"].span
    between = case.text[first[1] : second[0]] if first and second else ""
    return ONE_ONLY.search(between) is not None and not EACH.match(case.text[second[1] :] if second else "")


def without_weight(case: Case) -> Answer:
    """The rule alone, with what a case of that size, or a battery of so many amp-hours, usually weighs; for a motor,
    what lithium must be for it."""
    if for_a_motor := of_the_same_use(case):
        return TOPIC.says("information", for_a_motor)
    if alike := two_leads(case):
        return TOPIC.says("information", alike)
    group = str(case.get("battery.group", ""))
    try:
        row = reference.row("group_sizes", group=group)
    except reference.UnknownValue:
        return by_capacity(case) or TOPIC.needs("battery.weight")
    low, high = float(row["kg_low"].value), float(row["kg_high"].value)
    usual = f"A lead battery of group {group} usually weighs {say.between(low, high, 'kg')}"
    if other := of_other_size(case, group):
        return TOPIC.says("information", other)
    case.step(usual, "typical-case")
    if case.get("battery.chemistry") != "lfp" and not case.says("word:type", "detail:lithium"):
        return TOPIC.says("information", f"{usual}; the label decides.")
    return TOPIC.needs("battery.weight", headline=f"{usual}, and lithium about half: tell us what yours weighs.")


def two_leads(case: Case) -> str:
    """That two kinds of lead battery of one size weigh alike; "" where lithium, or one kind alone, is told."""
    second = case.second.get("battery.chemistry")
    kinds = [str(kind) for kind in (case.said("battery.chemistry"), second and second.value) if kind]
    sizes = {"battery.capacity", "battery.group"} & {*case.second}
    if second is None or len(set(kinds)) < 2 or not {*kinds} <= {"flooded", "agm", "gel"} or sizes:
        return ""
    case.others().known("battery.chemistry")
    case.step("What a case usually weighs is no promise: the label decides", "typical-case")
    names = say.capital(say.listed([say.CHEMISTRY[kind] for kind in kinds]))
    size = case.said("battery.capacity")
    found = usual(float(size)) if size else None
    told = f": usually {say.between(*found, 'kg')} at {say.amp_hours(float(size))}" if size and found else ""
    return f"{names} of one size weigh about the same{told}; the label decides."


def of_the_same_use(case: Case) -> str:
    """That lithium for the same motor may weigh as much, as its limit decides; "" where no motor is told."""
    told = case.get("battery.chemistry") == "lfp" or case.says("detail:lithium", "detail:kind_lfp")
    sized = {"battery.capacity", "battery.group", "battery.cca"} & set(case.stated)
    if not told or sized or OUT_OF.search(case.text) or "load.current" not in case.fresh() or not supply.is_motor(case):
        return ""
    running, per_hour = float(case["load.current"]), lithium.value("per-hour")
    case.step(f"At 1 A for each Ah {say.amps(running)} want {say.amp_hours(running / per_hour)}", "lithium-limits")
    case.source(HALF.cite)
    name, usual = supply.load_name(case), say.amp_hours(running / per_hour)
    return (
        f"Perhaps little saved for {name}: lithium must allow {say.amps(running)}, usually {usual} of it; Ah for Ah it "
        "weighs about half, but lead goes by its CCA."
    )


def by_capacity(case: Case) -> Answer | None:
    """What batteries of so many amp-hours usually weigh, lithium as half of lead; None where no case has as many."""
    second = case.second.get("battery.chemistry")
    kinds = [str(value) for value in (case.said("battery.chemistry"), second and second.value) if value]
    leads = [kind for kind in kinds if kind not in LITHIUM]
    light_too = any(kind == "lfp" for kind in kinds)
    if case.said("battery.capacity") is None or len(leads) > 1 or case.said("battery.nominal") not in (None, 12.0):
        return None
    sizes = {kind: float(case["battery.capacity"]) for kind in kinds}
    if second and (other := case.second.get("battery.capacity")):
        sizes[str(second.value)] = float(other.value)
        case.others().known("battery.capacity")
    lead = usual(sizes[leads[0]] if leads else float(case["battery.capacity"]))
    half = usual(sizes["lfp"]) if light_too else lead
    if not lead or not half:
        return None
    if second:
        case.others().known("battery.chemistry")
    case.step("By the usual amp-hours and weights of the case sizes of lead batteries", "typical-case")
    many = {kind: counted(case, of) for of, kind in enumerate(kinds, start=1)}
    heavy = leads[0] if leads else ""
    told = usually(
        float(sizes.get(heavy, case["battery.capacity"])), heavy or "lead", lead, many.get(heavy, counted(case))
    )
    if not light_too:
        return TOPIC.says("information", f"{told}; the label decides.")
    share = float(HALF.value)
    case.step(f"Lithium weighs about {share} of lead of as many amp-hours", HALF.cite)
    times, of = many["lfp"], say.amp_hours(sizes["lfp"])
    light = say.between(half[0] * share * times, half[1] * share * times, "kg", 0)
    if not leads:
        some = f"{_article(of)} {of} lithium battery usually weighs about {light}, half of a lead one"
        if times > 1:
            some = f"{_many(times)} {of} lithium batteries usually weigh about {light} together, half of lead ones"
        return TOPIC.says("information", f"{some}; the label decides.")
    same = sizes["lfp"] == sizes[heavy] and times == many[heavy]
    those = f"lithium of {of}" if times == 1 else f"{supply.counted(times)} of {of} lithium"
    beside = (
        f"{'a lithium one' if times == 1 else 'lithium ones'} about half, {light}" if same else f"{those} about {light}"
    )
    return TOPIC.says("information", f"{told}, {beside}; the labels decide.")


def usually(amp_hours: float, kind: str, each: tuple[float, float], many: float) -> str:
    """What so many lead batteries usually weigh, as the begin of a sentence."""
    named = f"{say.amp_hours(amp_hours)} {say.CHEMISTRY.get(kind, kind)}"
    weigh = say.between(each[0] * many, each[1] * many, "kg")
    if many > 1:
        return f"{_many(many)} {named} batteries usually weigh {weigh} together"
    return f"{_article(named)} {named} battery usually weighs {weigh}"


def counted(case: Case, of: int = 1) -> float:
    """How many batteries of the first or second size this message tells of; 1 where the weight of each is asked."""
    if OF_ONE.search(case.text):
        return 1.0
    size = (case.stated if of == 1 else case.second).get("battery.capacity")
    if size is None:
        return counted(case) if of > 1 else 1.0
    if found := BEFORE_THEM.search(case.text[: size.span[0]] if size.span else ""):
        return float(MANY.get(found["many"].lower()) or found["many"])
    told = case.stated.get("battery.count")
    alone = not {"battery.capacity", "battery.chemistry", "battery.count"} & set(case.second)
    return float(told.value) if told and told.span and alone else 1.0


def _many(count: float) -> str:
    return say.capital(supply.counted(count))


def usual(amp_hours: float) -> tuple[float, float] | None:
    """The kg of the lightest and the heaviest case of 12 V that usually has so many amp-hours."""
    cases = [row["group"].value for row in reference.rows("typical_cases") if _holds(row, amp_hours)]
    rows = [row for row in reference.rows("group_sizes") if row["group"].value in cases and row["volts"].value == 12]
    if not rows:
        return None
    return min(float(row["kg_low"].value) for row in rows), max(float(row["kg_high"].value) for row in rows)


def _article(amp_hours: str) -> str:
    return "An" if amp_hours.startswith("8") else "A"


def _holds(row: Row, amp_hours: float) -> bool:
    return float(row["low"].value) <= amp_hours <= float(row["high"].value)


def of_other_size(case: Case, group: str) -> str:
    """What two sizes of case usually weigh, the one that is to go in first; "" where one alone is told."""
    second = case.second.get("battery.group")
    names = [case_sizes.known_name(str(value)) for value in (group, second.value if second else "")]
    if second is None or names[0] == names[1]:
        return ""
    try:
        rows = {name: reference.row("group_sizes", group=name) for name in names}
    except reference.UnknownValue:
        return ""
    case.others().known("battery.group")
    new, there = case_sizes.new_and_there(case, *names)
    weighs = {
        name: say.between(float(row["kg_low"].value), float(row["kg_high"].value), "kg") for name, row in rows.items()
    }
    case.step("What a case usually weighs is no promise: the label decides", "typical-case")
    more = float(rows[new]["kg_low"].value) - float(rows[there]["kg_low"].value)
    how = "heavier" if more > 0 else "lighter"
    both = f"usually {weighs[new]}, a group {there} {weighs[there]}"
    return f"A lead battery of group {new} is {how}: {both}; the label decides."


def figures(saved: float, after: float) -> tuple[Figure, Figure]:
    """The weight of lithium instead, and what it saves."""
    return Figure("weight_saved", "saved", saved, "kg"), Figure("weight_after", "weight then", after, "kg")


def is_half(pounds: float) -> bool:
    """Whether pounds are so near a half that two of them would not add up to the whole as it is shown: 32.5 of 65."""
    return abs(pounds - math.floor(pounds) - 0.5) < NEAR_HALF


def shown(case: Case, kilograms: float) -> str:
    """Kilograms, and pounds first where the customer wrote or asked for pounds."""
    pounds = convert.pounds(kilograms)
    metric, imperial = say.quantity(kilograms, "kg"), say.quantity(pounds, "lb", 1 if is_half(pounds) else 0)
    typed = case.stated["battery.weight"].text.lower() if "battery.weight" in case.stated else ""
    asked = IN_POUNDS.search(case.text)
    return f"{imperial} ({metric})" if asked or "lb" in typed or "pound" in typed else metric
