"""Which cautions an answer carries, in the order of its topic: each only where its own row fits the facts."""

from __future__ import annotations

from collections.abc import Callable

from service import reference
from service.case import Case
from service.caution_facts import SEALED, Facts
from service.judgements import supply
from service.judgements.fusing import PLACED
from service.reply import Answer, Caution
from service.told import pump_left_on
from service.topic import Topic

NONE = frozenset({"hazard", "meaning", "rating-convert", "other-desk", "unclear"})
UNEVEN = 0.015  # difference of gravity between cells from which one equalises
KNOWN = {"cable-assumed": ("cable.in_engine_space", "cable.insulation")}  # one of them told, the other is assumed
OF_THE_LOAD = (
    "lithium-cut-out",
    "cable-and-joints",
    "estimate",
)  # they speak of a thruster, or of what else hangs on the battery


Row = Callable[[Facts], bool]
CHARGING = ("charger-size", "charge-time", "charger-setting")

# A row for each caution of reference/cautions.toml: when it must appear.
ROWS: dict[str, Row] = {
    "lithium-cold": lambda f: (
        f.lithium
        and (
            f.about(*CHARGING, "dc-dc", "solar", "storage", "freeze-point", "cold-cranking")
            or (f.about("run-check", "bank-size") and f.freezing)
        )
    ),
    "lithium-kind": lambda f: f.taken_as_iron and f.tells_a_limit,
    "lithium-cut-out": lambda f: (
        f.lithium and f.about("run-check", "bank-size", "run-time", "battery-type", "battery-duty")
    ),
    "lithium-joined": lambda f: f.lithium and f.several and f.about("bank-wiring", "bank-size", "run-check"),
    "alternator-lithium": lambda f: (
        f.lithium
        and (
            f.about("dc-dc")
            or (f.about(*CHARGING) and (f.get("charger.kind") == "alternator" or f.number("alternator.current") > 0))
        )
    ),
    "isolated-outputs": lambda f: (
        f.volts >= 24 and f.about("charger-banks", "charger-size", "charger-setting", "bank-wiring")
    ),
    "no-tap": lambda f: (
        f.volts >= 24 and f.about("bank-wiring", "dc-dc", "run-check") and not f.case.says("detail:stepped")
    ),
    "one-negative": lambda f: f.about("dc-dc") and f.get("charger.isolated") is not True and not f.no_converter,
    "fuse-at-battery": lambda f: (
        f.about("fuse-size", "cable-size", "dc-dc", "bank-wiring", "solar") or (f.about("run-check") and f.cable_known)
    ),
    "fuse-breaks-fault": lambda f: (
        f.about("fuse-size") or (f.about("cable-size", "bank-wiring") and (f.lithium or f.volts >= 36))
    ),
    "manual-first": lambda f: (
        not f.nothing_yet
        and f.about(
            "run-check",
            "bank-size",
            "cable-size",
            "fuse-size",
            "charger-setting",
            "charger-size",
            "mounting",
            "ventilation",
            "terminals",
        )
    ),
    "cable-assumed": lambda f: (
        not f.nothing_yet
        and (f.about("cable-size") or (f.about("fuse-size", "voltage-drop") and f.cable_known))
        and (f.case.said("cable.insulation") is None or f.case.said("cable.in_engine_space") is None)
    ),
    "cable-and-joints": lambda f: (
        f.about("run-check", "load-voltage")
        and not f.cable_known
        and f.case.said("reading.load_voltage_at_load") is None
        and not (f.about("load-voltage") and f.case.says("detail:load_test"))
        and any(item.unit == "V" for item in f.answer.figures)
    ),
    "hot-joint": lambda f: f.about("load-voltage") and (f.figure("drop") or 0) > 0,
    "parallel-cables": lambda f: (f.figure("conductors_per_pole") or 0) > 1,
    "charge-not-strength": lambda f: (
        f.about("rest-voltage", "specific-gravity", "replacement") and f.answer.verdict == "yes"
    ),
    "measure-each": lambda f: (
        f.about("rest-voltage", "load-voltage")
        and (f.volts >= 24 or f.get("bank.layout") == "parallel" or f.number("battery.count") >= 2)
    ),
    "start-battery": lambda f: (
        f.about("run-check", "bank-size", "bank-wiring", "battery-type", "battery-duty", "run-time")
        and (
            f.case.says("detail:engine_battery", "detail:start_and_house")
            or supply.is_the_engines(f.case)
            or supply.is_their_starter(f.case)
            or (f.about("run-check") and f.is_a_starter)
        )
    ),
    "motor-duty": lambda f: not f.nothing_yet and f.about("run-time", "bank-size") and f.names_a_thruster,
    "thruster-off": lambda f: f.about("run-check", "terminals", "maintenance") and f.thruster,
    "explosive-gas": lambda f: (
        f.lead and f.about(*CHARGING, "charger-banks", "ventilation", "maintenance", "mounting", "terminals")
    ),
    "acid": lambda f: f.liquid_acid and f.about("specific-gravity", "maintenance"),
    "short-circuit": lambda f: not f.nothing_yet and f.about("terminals", "bank-wiring", "replacement", "storage"),
    "frost": lambda f: f.lead and not f.warm and f.about("freeze-point", "storage", "cold-cranking"),
    "check-date": lambda f: f.about("storage", "standing-drain", "solar"),
    "equalise": lambda f: (
        (f.about("maintenance", "charger-setting") and f.case.says("detail:equalise", "detail:equalising"))
        or (
            f.about("charger-setting")
            and f.get("charger.setting") == "flooded"
            and f.get("battery.chemistry") in SEALED
        )
        or (f.about("specific-gravity") and f.number("reading.gravity_spread") >= UNEVEN)
    ),
    "deep-flat": lambda f: (
        f.answer.route != "technician"
        and f.deeply_flat
        and f.about("rest-voltage", "load-voltage", "replacement", "standing-drain", *CHARGING)
    ),
    "ignition-protected": lambda f: (
        (
            f.about("mounting", "ventilation", "fuse-size", "terminals")
            and (f.case.says("detail:petrol_space") or f.get("cable.in_engine_space") is True)
        )
        or (f.about("charger-size", "charger-setting") and f.case.says("detail:petrol_near", "detail:gas_bottles"))
    ),
    "mains": lambda f: (
        (f.about("charger-setting", "charger-size", "charger-banks") and f.mains)
        or (f.about("dc-dc") and f.case.says("detail:isolation", "detail:isolated_or_not"))
        or (f.about("mounting") and f.case.says("thing:charger"))
    ),
    "lift": lambda f: (
        f.about("weight", "group-size")
        or (f.about("replacement") and f.answer.verdict != "yes" and not f.nothing_yet)
        or (f.about("storage") and f.case.says("detail:carry"))
    ),
    "estimate": lambda f: f.about("run-check", "run-time") and f.answer.verdict == "yes",
}


def cautions(topic: Topic, case: Case, answer: Answer) -> tuple[Caution, ...]:
    """Those whose row fits, in the topic's order; one that the topic does not list comes first."""
    if topic.name in NONE or answer.verdict == "stop":
        return ()
    facts = Facts(topic.name, case, answer)
    fitting = [name for name, row in ROWS.items() if row(facts)]
    ordered = [name for name in fitting if name not in topic.cautions]
    ordered += [name for name in topic.cautions if name in fitting]
    return tuple(Caution(name, sentence(name, case, answer)) for name in ordered)


def sentence(name: str, case: Case, answer: Answer) -> str:
    """The sentence of a caution, as `say_known` has it where one of its two facts was told.

    A fuse's place is not told again where the headline tells it, and a pump or an alarm is never to be switched off.
    Raises UnknownValue for one that the table has not.
    """
    row = reference.row("cautions", id=name)
    if name == "fuse-at-battery" and PLACED in answer.headline:
        return str(row["say_placed"].value)
    drain = case.stated.get("drain.current")
    fed = answer.topic == "solar" and drain is not None and drain.origin == "thread"  # not named again
    if name == "check-date" and (fed or pump_left_on.is_told(case.text)):
        return str(row["say_stays"].value)
    if name in OF_THE_LOAD and case.get("load.kind") == "electronics":
        return str(row["say_load"].value)
    told = next((fact for fact in KNOWN.get(name, ()) if case.said(fact) is not None), None)
    return str(row[f"say_{told.rpartition('.')[2]}" if told else "say"].value)
