"""Two loads of one message that run at the same time: their amps add up on the battery and in a cable they share."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service import say
from service.case import Case, Known
from service.rules.load import MOTORS
from service.told import twin_thrusters
from service.topic import CIRCUIT

AT_ONCE, APART, ONE_CABLE = "detail:at_once", "detail:in_turn", "detail:one_cable"
PAIR = "pair of motors"
SUPPLY = frozenset({"run-check", "bank-size", "run-time", "load-voltage", *CIRCUIT})
STEADY = frozenset({"run-time", "bank-size", "solar", "standing-drain"})
MORE = "detail:three_loads"
LOADS = ("load.current", "load.power")
SECOND = frozenset({*LOADS, "load.model"})
COUNTED = r"(?:two|2|twin|(?:a|our|the) pair of|both)"  # of the thrusters: "two of your Pikes", "both our Minnows"
DESCRIBED = r"(?: (?:of|12|24|v|volts?|new|old|identical|equal|bow|stern|my|our|your|the|these|those))*"
SUCH = r"(?: (?:are|is|of|them|the|a|an|our|your|my|12|24|v|volts?|bow|stern|one|model))*"  # "both are the Pike"
TWINS = (
    rf"\b{COUNTED}{DESCRIBED} {{model}}s\b"
    rf"|\b{{model}}s\b[^.?!;]{{{{0,30}}}}\b(?:both(?! (?:batter|bank|agm|gel))|two of (?:them|those)|as a pair)\b"
    rf"|\bboth\b[^.?!;]{{{{0,20}}}}\b{{model}}s\b"
    rf"|\bboth\b{SUCH} {{model}}s?\b(?! (?:batter|bank))"
    rf"|\b(?:bow|stern) {{model}}\b[^.?!;]{{{{0,20}}}}\b(?:bow|stern) {{model}}\b"
)
ONE_OF = r"\b(?:one|1|each) of (?:\w+ ){{0,3}}{model}s\b"
CHOICE = regex(r"\b(?:or|vs|versus|then|instead|if|what about|say)\b", re.IGNORECASE)
MOST_STEADY = 50.0  # amps: what stays on draws less
TIMES = ("load.time", "load.burst", "load.bursts", "load.rest")


def merged(topic: str, case: Case) -> Case:
    """The case with the two loads as one where they draw together, else the case as it is."""
    case = with_twin(case)
    return joined(topic, case) if draw_together(topic, case) else case


def with_twin(case: Case) -> Case:
    """The case with the second of two equal loads: "two Minnows", "bow and stern thruster, 200 A each"."""
    if twin_thrusters.told(case.text) and "load.current" in case.stated and SECOND.isdisjoint(case.second):
        return _with_its_like(case)
    model = case.stated.get("load.model")
    if model is None or not SECOND.isdisjoint(case.second) or not two_of(str(model.value), case.text):
        return case
    twin = case.fresh()
    twin.second = {**case.second, "load.model": replace(model, of=2)}
    count = case.stated.get("battery.count")
    if count is not None and count.text.lower() == "both":  # of the thrusters
        twin.stated = {fact: known for fact, known in case.stated.items() if fact != "battery.count"}
    return twin


def _with_its_like(case: Case) -> Case:
    """The case with a second thruster of the same amps where both draw on its one battery at once."""
    if case.says(APART) or not (case.says(AT_ONCE) or twin_thrusters.on_one_battery(case.text)):
        return case
    twin = case.fresh()
    twin.second = {**case.second, "load.current": replace(case.stated["load.current"], of=2)}
    if twin_thrusters.on_one_battery(case.text):  # "could one battery feed both": the thrusters are counted
        twin.stated = {fact: known for fact, known in case.stated.items() if fact != "battery.count"}
    return twin


def two_of(model: str, text: str) -> bool:
    """Whether two thrusters of one model are counted; "one of your Pikes, two years old" is one thruster."""
    one, twins = (re.compile(form.format(model=re.escape(model)), re.IGNORECASE) for form in (ONE_OF, TWINS))
    return not one.search(text) and twins.search(text) is not None


def joined(topic: str, case: Case) -> Case:
    """The case with its two loads as one: the sum of what they run at, and of what they take in the first instant."""
    sides = (case, case.others())
    amps = [float(side["load.current"]) for side in sides]
    motors = [is_motor(side) for side in sides]
    first_instant = sum(
        float(side["load.peak"]) if motor else running for side, motor, running in zip(sides, motors, amps, strict=True)
    )
    if all(motors):
        kind = PAIR
    elif any(motors) and topic not in CIRCUIT:
        kind = "motor"
    else:  # what may lose less in its cable decides
        kind = str(sides[motors.index(False)]["load.kind"])
    one = case.fresh()
    for side in sides:
        one.follow(side)
        one.used.update({(fact, known.of): known for (fact, _), known in side.used.items() if known.stated})
    total = sum(amps)
    one.stated = {
        **{fact: known for fact, known in case.stated.items() if not fact.startswith("load.") or fact in TIMES},
        "load.current": Known("load.current", total, "derived", "A"),
        "load.kind": Known("load.kind", kind, "derived"),
    }
    if any(motors):
        one.stated["load.peak"] = Known("load.peak", first_instant, "derived", "A")
    one.second = {fact: known for fact, known in case.second.items() if not fact.startswith("load.")}
    one.step(f"Both at once: {' + '.join(say.amps(part) for part in amps)} = {say.amps(total)}", "drain-arithmetic")
    return one


def draw_together(topic: str, case: Case) -> bool:
    """Whether two loads draw at the same time from what the question is about."""
    if SECOND.isdisjoint(case.second) or case.says(APART) or topic not in SUPPLY | STEADY:
        return False
    case = case.fresh()  # what is looked up here is no part of the answer
    if "load.current" not in case or "load.current" not in case.others():
        return False
    if topic in SUPPLY and case.says(AT_ONCE):
        return True
    if topic in CIRCUIT:
        return case.says(ONE_CABLE)
    return topic in STEADY and steady(case)


def steady(case: Case) -> bool:
    """Whether two loads are told of that stay on side by side, as a fridge and lights do: no motors, no choice."""
    if case.says("request:which", "request:versus") or "load.time" in case.second:
        return False
    sides = (case, case.others())
    kinds = [side.get("load.kind") for side in sides]
    return (
        "electronics" in kinds
        and not any(str(kind).lower() in MOTORS for kind in kinds)
        and all(float(side["load.current"]) < MOST_STEADY for side in sides)
        and not CHOICE.search(between(case))
    )


def between(case: Case) -> str:
    """What stands between the two currents, where both are in the message."""
    fact = next((name for name in LOADS if name in case.stated and name in case.second), "")
    spans = sorted(known.span for known in (case.stated.get(fact), case.second.get(fact)) if known and known.span)
    return case.text[spans[0][1] : spans[1][0]] if len(spans) == 2 else ""


def is_motor(case: Case) -> bool:
    """Whether a load takes a jump of current; one of which nothing is said is a thruster."""
    kind = case.get("load.kind")
    return kind is None or str(kind).lower() in MOTORS
