"""Where and how a battery is fixed: which way up, cabin, engine space, petrol and gas, holding down."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from grammar.text.patterns import regex
from service import likely, say
from service.case import Case
from service.kinds import LITHIUM
from service.reply import Answer, strictness
from service.sentences import wording
from service.told import held_by, loose, stands
from service.topic import Topic

TOPIC = Topic(
    "mounting",
    "Place and fastening",
    cautions=("explosive-gas", "ignition-protected", "mains", "manual-first"),
    likely={"battery.chemistry": likely.KIND_BY_CAPS},
    of_two="worst",
    unsure={"battery.chemistry": "The kind decides: please tell us whether it is wet-cell, AGM, gel or lithium."},
)
ASKS_IF = ("put:good", "put:leave", "request:enough", "request:may_i")
SEALED = regex(r"\b(?:agms?|gels?)\b", re.IGNORECASE)  # asked of in place of the wet one
HOT = 40.0  # °C


@dataclass(frozen=True, slots=True)
class Advice:
    """What is said of one aspect: the headline and the steps with their sources."""

    verdict: str
    headline: str
    steps: tuple[tuple[str, str], ...]


def on_side(case: Case) -> Advice:
    """On its side or back."""
    kind = case["battery.chemistry"]
    if kind == "flooded":
        head = "No: a wet-cell battery stands upright only, because on its side the acid runs out of the vents"
        head += "; an AGM or gel one may usually lie on a long side." if SEALED.search(case.text) else "."
        return Advice(
            "no", head, (("Acid may not run out at a heel of 30°, in single-hull sailing boats 45°", "iso-10133"),)
        )
    if kind == "lead":
        head = "Not before you know the kind: wet-cell must stand upright, AGM or gel may usually lie on a side."
        return Advice("marginal", head, (("Caps on top that unscrew mean wet-cell", "orientation"),))
    if kind in LITHIUM:
        head = (
            "Usually yes: a lithium battery may lie on a side if its manual "
            "allows that side; some makers allow one only."
        )
        return Advice(
            "marginal", head, (("Cells may not be loaded on their faces, so the side matters", "orientation"),)
        )
    if stands.on_end(case.text):
        head = f"Only if its own manual allows it: {wording.a_kind(case, capital=False)} battery stands best upright, "
        head += "and may usually lie on a long side."
        return Advice("marginal", head, (("Makers judge an end and a side apart", "orientation"),))
    head = (
        f"Usually yes: {wording.a_kind(case, capital=False)} battery may lie on a side, if its own manual allows it, "
    )
    head += "best not on the one with the terminals."
    step = "On its side as well its valves must get air, and it is held down so that it cannot move"
    return Advice("yes", head, ((step, "orientation"),))


def upside_down(case: Case) -> Advice:
    """On its head."""
    head = (
        "No: no battery is fitted upside down; the vents and valves of "
        "lead, and the makers of lithium, do not allow it."
    )
    return Advice("no", head, (("Upright, or on a side where the battery's manual says so", "orientation"),))


def cabin(case: Case) -> Advice:
    """Where people live and sleep."""
    kind = case["battery.chemistry"]
    if kind in ("flooded", "lead"):
        head = "No: a wet-cell battery gives off gas, so in a cabin it needs a closed box with a vent led outdoors."
        if kind == "lead":
            head = (
                "Not as it is: unless it is known to be AGM or gel, a lead "
                "battery in a cabin needs a box vented outdoors."
            )
        return Advice("no", head, (("Hydrogen must have a way out of the boat", "cfr-183-420"),))
    if kind in LITHIUM:
        head = "Yes, within limits: a lithium battery may stand in a cabin, fixed, covered, dry and with its own fuse."
        return Advice(
            "yes",
            head,
            (
                ("Dry, within its temperature limits, nothing stowed on it", "battery-places"),
                ("Smoke, heat or a smell from it: off the boat", "lithium-fire-advice"),
            ),
        )
    kind_name = say.CHEMISTRY[kind]
    head = f"Yes: {wording.a_kind(case, capital=False)} battery may stand in a cabin, held down and boxed, where the "
    head += f"space is aired and the charger is set to {kind_name}."
    return Advice(
        "yes",
        head,
        (("Charged wrongly it gives off hydrogen, which must have a way out of the boat", "cfr-183-420"),),
    )


def engine(case: Case) -> Advice:
    """Beside a warm engine."""
    if case.get("battery.chemistry") in LITHIUM:
        head = "No: keep lithium out of the engine space, because the heat there goes over its temperature limits."
        return Advice("no", head, (("Charging is mostly allowed up to 45 °C at the battery", "battery-places"),))
    head = "Better not: heat halves a battery's life with each 8 °C or so, and nothing hot may be above or beside it."
    return Advice("marginal", head, (("A dry, aired place, guarded against knocks and heat", "iso-10133"),))


def petrol(case: Case) -> Advice:
    """Petrol tank or petrol engine in the same space."""
    head = "Not as it is: with petrol in the same space every switch, fuse and charger must be ignition protected."
    return Advice(
        "no",
        head,
        (
            (
                "A battery may not stand straight above or below a fuel tank, filter or fitting; metal fuel parts "
                "within 300 mm (12 in) above it are insulated",
                "cfr-183-420",
            ),
            (
                "In spaces with petrol vapour switches, fuses and battery management are ignition protected",
                "cfr-183-410",
            ),
            ("The boat's maker or yard decides on the place", "battery-places"),
        ),
    )


def gas(case: Case) -> Advice:
    """Bottled gas in the same locker."""
    head = (
        "No: a battery gets its own place, away from gas bottles, because "
        "leaking gas gathers low and a spark lights it."
    )
    return Advice("no", head, (("A gas locker holds gas bottles and nothing that can spark", "battery-places"),))


def wet(case: Case) -> Advice:
    """Rain or bilge water in the box."""
    head = (
        "No: a battery needs a dry place above the bilge water, so mend the lid and drain the box; salt water is worse."
    )
    return Advice(
        "no", head, (("Dry, aired, above the bilge water to be expected, in reach for inspection", "iso-10133"),)
    )


def hold_down(case: Case) -> Advice:
    """Straps, brackets and boxes, and what they think of holding it by."""
    if held_by.elastic(case.text):
        head = "No: an elastic cord stretches and lets it move; use a tray or box with edges, and a strap that does "
        head += "not give."
        return Advice("no", head, how_held())
    if held_by.strapped(case.text) and (case.says(*ASKS_IF) or held_by.is_asked(case.text)):
        head = "Yes, with a tray or box with edges, if it then moves no more than 10 mm under twice its weight."
        return Advice("information", head, how_held())
    head = (
        "Fix it so that it moves no more than 10 mm under twice its weight: "
        "a box or tray with edges, and a strap over it."
    )
    return Advice("information", head, how_held())


def how_held() -> tuple[tuple[str, str], ...]:
    """The rules for holding it down, with their sources."""
    return (
        (
            "The US rule allows 1 in (25 mm) under 90 lbf or twice its weight, the ISO rule 10 mm: 10 mm meets both",
            "iso-10133",
        ),
        (
            "The strap is of insulating material, and no metal can touch the terminals: boots, caps or a lid",
            "boat-safety-scheme",
        ),
        ("Tested by pulling up, fore, aft, to port and to starboard", "cfr-183-420"),
    )


def not_held(case: Case) -> Advice:
    """A battery that can move."""
    fixed = hold_down(case)
    if loose.moves(case.text):
        head = (
            "Do not go out with it like that: hold it down, 10 mm at most under twice its weight, by a tray with edges "
        )
        head += "and a strap."
        at_sea = (
            "At sea switch its main switch off until it is held: a battery that slides tears at its cables and posts"
        )
        return Advice("no", head, ((at_sea, "battery-places"), *fixed.steps))
    head = "No, it must not move: hold it down, 10 mm at most under twice its weight, by a tray with edges and a strap."
    return Advice("no", head, fixed.steps)


def hot_place(case: Case) -> Advice:
    """A place that gets hot by itself."""
    hot = say.temperature(float(case["ambient.temperature"]))
    head = f"Better not where it gets {hot}: heat halves a battery's life with each 8 °C or so."
    return Advice(
        "marginal", head, (("Charging lithium is mostly allowed up to 45 °C at the battery", "battery-places"),)
    )


def floor(case: Case) -> Advice:
    """A concrete floor."""
    head = "No: a concrete floor does not drain a battery; it only loses charge by itself, wherever it stands."
    return Advice("information", head, (("Cases of plastic leak no current to the floor", "battery-places"),))


ASPECTS: tuple[tuple[str, Callable[[Case], Advice]], ...] = (
    ("detail:upside_down", upside_down),
    ("detail:gas_bottles", gas),
    ("detail:petrol_near", petrol),
    ("detail:engine_heat", engine),
    ("detail:on_side", on_side),
    ("detail:cabin", cabin),
    ("detail:sleep_beside", cabin),
    ("detail:rained_on", wet),
    ("detail:not_held", not_held),
    ("detail:hold_down", hold_down),
    ("detail:concrete", floor),
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The advice on each aspect named, the strictest first; without one, how any battery is fixed."""
    moving = loose.moves(case.text)
    named = list(dict.fromkeys(advise for cue, advise in ASPECTS if case.says(cue)))
    if held_by.elastic(case.text) and hold_down not in named:
        named.append(hold_down)
    if moving:
        named = [not_held, *(advise for advise in named if advise not in (not_held, hold_down))]
    if float(case.said("ambient.temperature") or 0) >= HOT:
        named.append(hot_place)
    named.sort(key=lambda advise: advise is cabin)  # a place to sleep is often told of and not asked about
    advices = [advise(case) for advise in named or [hold_down]]
    first = max(advices, key=lambda item: strictness(item.verdict))
    advices = [first, *(item for item in advices if item is not first)]
    for item in advices[1:]:  # what was asked too comes before the details, of which only the first are shown
        case.step(wording.beside(item.headline), item.steps[0][1])
    for item in advices:
        for text, cite in item.steps:
            case.step(text, cite)
    return TOPIC.says(advices[0].verdict, advices[0].headline, urgency="today" if moving else "routine")
