"""Care in season: water, cleaning, equalising, checks, additives; each aspect asked about gives its own advice."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from grammar.text.patterns import regex
from service import likely
from service.case import Case
from service.judgements import cells, equalising_due
from service.reply import Answer, Figure, strictness
from service.sentences import weak_joint
from service.sentences.watering import ONE_ADULT, Advice, care, interval, sealed, stood_dry, water
from service.told import fresh_water, water_level, who
from service.topic import Topic

TOPIC = Topic(
    "maintenance",
    "Care and checks",
    cautions=("explosive-gas", "acid", "equalise", "thruster-off"),
    likely={"battery.chemistry": likely.KIND_BY_CAPS},
)
IN_WATER = (
    "No, not yet: switch the charger off at the shore end, pump the water out, and have the batteries looked at before "
    "you charge or use them."
)
WATER = ("detail:plates_dry", "detail:water", "detail:tap_water")


def acid(case: Case) -> Advice:
    """Somebody wants to add acid."""
    head = "No, no acid goes in: only distilled or deionised water does, as water is what leaves the cell and the "
    head += "acid stays."
    return Advice("no", head, (("More acid makes a wrong gravity and harms the plates", "watering"),))


def opened(case: Case) -> Advice:
    """Somebody wants to open a sealed battery."""
    head = "No: a sealed battery stays closed, as its valve and its fixed acid do not stand being opened."
    return Advice("no", head, (("Water cannot be added to a sealed battery", "care-practice"),))


def equalise(case: Case) -> Advice | None:
    """Equalising or desulphating on purpose; None where the kind decides and is not said."""
    if sealed(case):
        head = f"No: never equalise or desulphate {sealed(case)}, because the gas it makes cannot be put back."
        if case.get("battery.chemistry") in ("lfp", "lithium-other"):
            head = "No: never equalise or desulphate lithium, because its cells are harmed by that voltage."
        return Advice("no", head, (("Only wet-cell batteries with caps are equalised", "no-equalising"),))
    if case.get("battery.chemistry") != "flooded" and not has_caps(case):
        return None
    often, cite = care("equalise-interval")
    head = equalising_due.told(case, cells.spread_of(case)) or f"Equalise a wet-cell battery {often}."
    if who.is_asked(case.text):
        head = f"{ONE_ADULT} nobody else near: equalise {often}."
    return Advice(
        "information",
        head,
        (
            (
                "Until the gravity of all cells stays the same, mostly 1 to 8 hours, plates covered, caps on, aired",
                cite,
            ),
            ("Disconnect electronics first, and somebody stays about", "care-practice"),
        ),
        (interval("equalise-interval", "equalise"),),
    )


def has_caps(case: Case) -> bool:
    """Whether a hydrometer was used: only a battery with caps lets one in."""
    return case.said("reading.gravity") is not None or case.said("reading.gravity_spread") is not None


def desulphate(case: Case) -> Advice | None:
    """Pulse gadgets and hopes for a sulphated battery."""
    if sealed(case):
        return equalise(case)
    often, cite = care("desulphate-interval")
    passes = (f"A charger's own desulphating pass is run {often} on wet-cell batteries with caps, watched", cite)
    head = "Expect little: no gadget brings back hard sulphate; a long equalising charge can help a wet-cell battery."
    if case.says("request:how_often") and not case.says(*WATER):  # "how often do I top up, and do pulsers work"
        head = f"On a wet-cell battery with caps {often}, watched; never on AGM, gel or lithium."
    test = ("Charge it full, let it rest, and test it under load: if it fails, it is replaced", "desulphators")
    return Advice("information", head, (passes, test), (interval("desulphate-interval", "desulphating pass"),))


def additive(case: Case) -> Advice:
    """Powders and drops."""
    head = "Save the money: we know of no proof that an additive helps a worn battery, and it may harm a good one."
    return Advice("information", head, (("A battery is kept well by charging it full soon after use", "desulphators"),))


GREASE = regex(r"\b(?:grease|greased|vaseline|petroleum jelly)\b", re.IGNORECASE)
DIRTY = regex(r"\b(?:clean\w*|corro\w*|dirt\w*|crust\w*|powder\w*|fuzz|white|green|blue|furr\w*)\b", re.IGNORECASE)


def dirt(case: Case) -> Advice:
    """Cleaning posts and top."""
    often, _ = care("clean-interval")
    soda, cite = care("soda")
    way = "rinse, dry, tighten"
    head = f"Brush it off, wash with soda water (caps closed, none into the cells), {way}, grease the joint."
    harm: tuple[tuple[str, str], ...] = ()
    if GREASE.search(case.text) and not DIRTY.search(case.text):
        head = "Yes, grease it: over the joint once it is tight, never between the faces; petroleum jelly does."
    if case.says("detail:growth") and case.says("detail:harm"):
        head = f"Treat the growth as acid, with goggles and gloves: brush it off, wash with soda water, {way}."
        harm = (("It is salt of the acid: it burns skin and eyes, and a joint with it runs hot", "care-practice"),)
    if found := weak_joint.headline(case):
        harm, head = ((head.removesuffix("."), "care-practice"), weak_joint.MEASURE, weak_joint.HEAT), found
    return Advice(
        "information",
        head,
        (
            *harm,
            (f"About {soda} of baking soda in a litre for a heavy crust, a quarter of that for wiping", cite),
            ("No vinegar: it is an acid itself", "care-practice"),
            (
                "Charger, loads and main switch off first; negative (earthed side) off first and on last",
                "disconnecting",
            ),
            ("Grease or petroleum jelly over the joint, not between the faces", "tm-55-2210-224"),
        ),
        (Figure("clean_interval", "clean", often), interval("joint-interval", "tighten")),
    )


def bubbles(case: Case) -> Advice:
    """Gentle gassing near the end of a charge."""
    head = (
        "A few bubbles near the end of a charge belong to a wet-cell battery; a sealed one must make no noise at all."
    )
    often, cite = care("water-interval")
    steps = (
        ("Hard bubbling, heat or a smell: charger off at the shore end, and tell us", "indg139"),
        (f"Bubbles use up water, so look {often}", cite),
    )
    return Advice("information", head, steps, (interval("water-interval", "look at the water"),))


def concrete(case: Case) -> Advice:
    """The old story of the concrete floor."""
    head = "No: a concrete floor does not drain a battery; it only loses charge by itself, wherever it stands."
    return Advice(
        "information",
        head,
        (("Old wooden cases leaked current on damp floors; cases of plastic do not", "battery-places"),),
    )


def check_list(case: Case) -> Advice:
    """What to look at, by kind."""
    if case.get("battery.chemistry") in ("lfp", "lithium-other"):
        head = (
            "Little: clean tight joints once a year, a full charge every 1 "
            "to 3 months, and no charging at or below 0 °C."
        )
        return Advice(
            "information",
            head,
            (care("lithium-balance"), ("Laid up: about half full, disconnected, and looked at", "lithium-store")),
            (interval("joint-interval", "tighten"), interval("lithium-balance", "full charge")),
        )
    wet = not sealed(case)
    head = "Before the season: charge full, read the volts at rest, look at case, posts, cables and hold-down"
    head += ", and at the water." if wet else "."
    steps = [
        ("Then run the thruster and read the volts at the posts under load", "test-under-load"),
        (f"Joints: {care('joint-interval')[0]}; clean {care('clean-interval')[0]}", "care-practice"),
    ]
    figures = [interval("clean-interval", "clean"), interval("joint-interval", "tighten")]
    if wet:
        steps.append((f"Water (with caps): {care('water-interval')[0]}", care("water-interval")[1]))
        figures.insert(0, interval("water-interval", "look at the water"))
    return Advice("information", head, tuple(steps), tuple(figures))


# The aspects in the order in which they are looked for, by the cues that ask for them.
ASPECTS: tuple[tuple[tuple[str, ...], Callable[[Case], Advice | None]], ...] = (
    (("detail:check_list",), check_list),
    (("detail:open_sealed",), opened),
    (("detail:add_acid",), acid),
    (("detail:equalise", "detail:equalising"), lambda case: desulphate(case) if gadget(case) else equalise(case)),
    (("detail:desulphate",), desulphate),
    (("detail:additive",), additive),
    (("detail:concrete",), concrete),
    (WATER, water),
    (("detail:dirt", "detail:growth"), dirt),
    (("detail:bubbles",), bubbles),
)


def gadget(case: Case) -> bool:
    """Whether desulphating is meant rather than equalising."""
    return case.says("detail:desulphate") and not case.says("detail:equalising")


def asked(case: Case) -> Iterator[Callable[[Case], Advice | None]]:
    """The aspects the question names; the check list where it names none."""
    if water_level.filled_since(case.text):
        yield stood_dry
        return
    found = [advise for cues, advise in ASPECTS if case.says(*cues)]
    if who.equalises(case.text) and not case.says("detail:equalise", "detail:equalising"):
        found.append(equalise)
    yield from sorted(dict.fromkeys(found or [check_list]), key=lambda advise: advise is check_list)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The advice on each aspect, the strictest first; a battery that stands in fresh water is for a technician."""
    if fresh_water.stands(case.text):
        case.step("Water that joins the posts leaks current, and a charger may put mains on it", "care-practice")
        return TOPIC.says("no", IN_WATER, urgency="today", route="technician")
    found = [advise(case) for advise in asked(case)]
    advices = sorted((item for item in found if item), key=lambda item: -strictness(item.verdict))
    if len(advices) < len(found) and not advices:
        head = "Only wet-cell batteries with caps are equalised: please tell us which kind yours is."
        return TOPIC.needs("battery.chemistry", headline=head)
    for item in advices[1:]:  # what was asked too comes before the details, of which only the first are shown
        if item.headline != advices[0].headline:
            case.step(item.headline.removesuffix("."), item.steps[0][1])
    for item in advices:
        for text, cite in item.steps:
            case.step(text, cite)
    first = advices[0]
    figures = {figure.name: figure for item in advices for figure in item.figures}
    return TOPIC.says(
        first.verdict,
        first.headline,
        *figures.values(),
        urgency="today" if any(item.today for item in advices) else "routine",
    )
