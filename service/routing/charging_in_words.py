"""Topics that words about charging put plainly: chargers, what they show, what stands between two batteries."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from grammar.told.times import motoring
from service.judgements import long_bulk, warmth_asked
from service.routing.seen import BATTERY, CABLES, LOADS, Seen
from service.routing.supply_as_told import is_lithium
from service.told import charger_fault, charging_relay, deadline, in_frost, more_volts, other_volts, two_chargers
from service.told.straight_in import straight_in

CHARGING = frozenset({"dc-dc", "charger-size", "charge-time"})
CAR_CHARGER = regex(
    r"\bcar(?:['’]?s)? (?:battery )?charger\b|\bcharger (?:of|from|for) (?:the|my|a) car\b", re.IGNORECASE
)
MAY_BE_CHARGED = regex(
    r"\b(?:can|may|could|should|is|are|be|ok(?:ay)?|safe|allowed)\b[^.?!;]{0,40}\b(?:charged?|charging|on charge)\b",
    re.IGNORECASE,
)
FREEZES = regex(r"\b(?:freez\w*|frozen?|ice|icy|solid)\b", re.IGNORECASE)
PANEL_TOPICS = frozenset({"freeze-point", "storage", "solar", "charger-setting", "unclear"})
LAMPS = regex(r"\b(?:lights?|lamps?|leds?)\b", re.IGNORECASE)
MORE_VOLTS = frozenset(
    (
        "load.kind",
        "load.model",
        "load.voltage",
        "bank.voltage",
        "bank.count",
        "battery.nominal",
        "charger.input_voltage",
    )
)


def of_more_volts(seen: Seen) -> bool:
    """ "Going 12 to 24 V thruster, must the charger change?"."""
    text, told = seen.message.text, seen.told - MORE_VOLTS
    about = seen.found <= {"bank-wiring", "unclear", "dc-dc", "battery-type"} and not seen.message.dangers
    return about and more_volts.changes(text) and seen.says("thing:charger") and told <= CABLES


def charged_in_frost(seen: Seen) -> bool:
    """ "Can the lithium be charged when it is minus 3 in there?": not whether it freezes."""
    about = seen.found <= {"freeze-point", "cold-cranking", "unclear"} and "ambient.temperature" in seen.told
    about = about and is_lithium(seen.message) and not any(item.status == "present" for item in seen.message.dangers)
    text = seen.message.text
    return about and MAY_BE_CHARGED.search(text) is not None and not FREEZES.search(text)


def relay_between(seen: Seen) -> bool:
    """ "Would a VSR do between my lithium house bank and the AGM at the bow?"."""
    about = seen.found <= {"bank-wiring", "charger-banks", "dc-dc", "meaning", "unclear"} and not seen.message.dangers
    text = seen.message.text
    return about and charging_relay.weighed(text) and not other_volts.linked(text)


def lithium_on_a_panel(seen: Seen) -> bool:
    """ "May my lithium stay on the solar all winter at -5?": a charge in frost, not a lay-up nor whether it freezes."""
    about = seen.found <= PANEL_TOPICS and not seen.message.dangers
    panel = seen.says("thing:panel", "about:solar") and not seen.told & {"battery.charge", "reading.voltage"}
    asked = seen.says("request:is_good", "request:may_i", "put:good", "detail:asks_good")
    return about and panel and asked and is_lithium(seen.message) and in_frost.told(seen.message)


def car_charger(seen: Seen) -> bool:
    """ "Can I use my car battery charger for it?": a charger, not a car battery."""
    about = seen.found <= {"battery-duty", "battery-type", "unclear"} and not seen.message.dangers
    return about and CAR_CHARGER.search(seen.message.text) is not None


def put_back(seen: Seen) -> bool:
    """ "20 A DC-to-DC, we motor an hour a day and thrust for 2 minutes": whether it puts back what is taken."""
    about = {"run-time", "run-check", "charge-time", "charger-size", "dc-dc", "unclear", "bank-size"}
    load = LOADS & seen.told or seen.context
    told = "load.time" in seen.told and bool(load) and motoring.hours(seen.message.text) is not None
    charged = (
        "charger.current" in seen.told or CHARGING & seen.context or seen.says("thing:alternator", "thing:charger")
    )
    return seen.found <= about and told and bool(charged) and not seen.message.dangers


def by_a_converter(seen: Seen) -> bool:
    """The same where a DC-to-DC charger is what charges."""
    named = "dc-dc" in seen.context or seen.says("thing:dcdc")
    return named and put_back(seen)


def without_a_battery(seen: Seen) -> bool:
    """ "The boat has 12 V. Could a converter run the 24 V thruster?": no battery is put up for it."""
    return seen.found <= {"run-check", "unclear"} and not seen.told & BATTERY and straight_in(seen.message.text)


def fuse_of_a_converter(seen: Seen) -> bool:
    """ "Is a 15 A fuse right for the 12 V side of a 12-to-24 V charger, 10 A?": the fuse, not what it pulls."""
    told = {"fuse.rating", "charger.current"} <= seen.told and seen.says("thing:fuse")
    judged = seen.says("request:is_good", "request:enough", "request:may_i", "put:good")
    return seen.found <= {"dc-dc", "unclear"} and told and judged and not seen.message.dangers


def stays_in_a_stage(seen: Seen) -> bool:
    """ "The charger's lamp says absorption, three days now": its stage, not its size."""
    about = seen.found <= {"charger-size", "charge-time", "storage", "unclear"} and not seen.message.dangers
    return about and seen.says("thing:charger") and long_bulk.told(seen.message.text)


def volts_on_charge(seen: Seen) -> bool:
    """ "On charge for two weeks and 13.4 V now, is it ok?": what the charger gives."""
    judged = seen.says("request:is_good", "request:may_i", "put:good", "put:bad")
    told = "charger.voltage" in seen.told and seen.says("thing:charger") and judged
    return seen.found <= {"unclear"} and told and not seen.message.dangers


def set_for_the_season(seen: Seen) -> bool:
    """ "Shall I set the charger higher for the winter?": its volts, and nothing is laid up."""
    about = seen.found <= {"storage", "charger-size", "unclear"} and not seen.message.dangers
    return about and warmth_asked.told_to_set(seen.message.text)


def one_of_two_chargers(seen: Seen) -> bool:
    """ "The 12 V 20 A charger or the 24 V 10 A one for the two in series?": which, not what they give together."""
    about = {"bank-wiring", "dc-dc", "charger-size", "charger-setting", "charger-banks", "unclear"}
    if not seen.found <= about or seen.message.dangers or not two_chargers.chosen_of(seen.message.text):
        return False
    whole = {"24", "36", "48", "series"}
    told = (item for item in seen.message.stated if item.fact in ("bank.voltage", "bank.layout"))
    return any((f"{item.value:g}" if isinstance(item.value, float) else str(item.value)) in whole for item in told)


def lamps_of_stages(seen: Seen) -> bool:
    """ "What do the lamps bulk and float on the charger mean?": the words, not a setting to choose."""
    stages = [seen.says(name) for name in ("term:bulk", "term:absorption", "term:float")]
    asked = seen.says("about:meaning") and LAMPS.search(seen.message.text) is not None
    plain = not seen.told - {"charger.setting", "load.kind"}
    return seen.found == {"charger-setting"} and sum(stages) > 1 and asked and plain


def lamp_of_a_fault(seen: Seen) -> bool:
    """ "Woke to the charger beeping with a red light, what does it want?": no size."""
    about = seen.found <= {"charger-size", "charge-time", "maintenance", "meaning", "unclear"}
    return about and not seen.message.dangers and charger_fault.told(seen.message.text)


def full_in_time(seen: Seen) -> bool:
    """ "Will the 70 A alternator fully charge 105 Ah in a 2 hour trip?": the hours, not its volts or a box between."""
    about = seen.found <= {"charger-setting", "dc-dc", "charger-size", "unclear"} and not seen.message.dangers
    told = "battery.capacity" in seen.told and seen.told & {"charger.current", "alternator.current"}
    return about and bool(told) and deadline.fills(seen.message.text)
