"""A topic that the words of a message put plainly, though the table of points does not tell it from others."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import NamedTuple

from grammar.reading import Message
from grammar.text.patterns import regex
from grammar.told.times import motoring
from service.judgements import long_bulk, standing_loss, warmth_asked
from service.told import (
    amp_hours_taken,
    amps_asked,
    charger_fault,
    charging_relay,
    deadline,
    equal_cables,
    hydrometer_way,
    its_years,
    kind_required,
    longest_run,
    lugs_asked,
    more_volts,
    other_volts,
    pictured,
    price_asked,
    rating_counts,
    switch_asked,
    to_buy,
    to_lithium,
    two_chargers,
    volts_of_charge,
    who,
)
from service.told.straight_in import straight_in
from service.topic import CIRCUIT

CHARGING = frozenset({"dc-dc", "charger-size", "charge-time"})
CAR_CHARGER = regex(
    r"\bcar(?:['’]?s)? (?:battery )?charger\b|\bcharger (?:of|from|for) (?:the|my|a) car\b", re.IGNORECASE
)
PARTED = regex(
    r"\b(?:link|strap|jumper|lead|cable|bridge|bar)s? (?:was |is |were )?(?:off|out|removed|undone|disconnected)\b"
    r"|\b(?:took|taken|take|removed|undid|disconnected|pulled) (?:off )?(?:the |a |one )?(?:link|strap|jumper|bridge)"
    r"|\b(?:apart|separated?(?:ly)?|parted|each (?:alone|by itself)|on (?:its|their) own)\b",
    re.IGNORECASE,
)
BY_ITSELF = regex(
    r"\b(?:overnight|over night|by (?:the )?morning|in (?:the|a|one) night|by itself"
    r"|(?:after|in|within|over) (?:\d+|an?|one|two|three|four|five|six|a few|some) (?:days?|nights?|weeks?))\b",
    re.IGNORECASE,
)
LAMPS = regex(r"\b(?:lights?|lamps?|leds?)\b", re.IGNORECASE)
LOADS = frozenset({"load.current", "load.model"})
BATTERY = frozenset({"battery.cca", "battery.capacity", "battery.max_current", "battery.count"})
CABLES = frozenset({"cable.gauge", "cable.area"})
QUOTED = regex(
    r"\b(?:catalogue|brochure|manual|sheet)\b[^.?!;]{0,12}\b(?:says?|has|names?|asks?|gives?|lists?)\b", re.I
)
JOINS = regex(
    r"\b(?:series|parallel|join\w*|mix\w*|together|beside|alongside|link\w*|connect\w*|wir(?:e|ing)|and an?)\b",
    re.IGNORECASE,
)
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


class Seen(NamedTuple):
    """A message, the topics its words point to, the facts it tells and the topics of the turn before."""

    message: Message
    found: frozenset[str]
    told: frozenset[str]
    context: frozenset[str]

    def says(self, *cues: str) -> bool:
        """Whether the message says one of these."""
        return any(map(self.message.says, cues))


def _by_children(seen: Seen) -> bool:
    """ "Can the kids top up the batteries?"."""
    present = any(item.status == "present" for item in seen.message.dangers)
    return seen.found <= {"unclear"} and not present and who.children_may(seen.message.text)


def _taken(seen: Seen) -> bool:
    """ "250 A for 3 minutes, how many amp hours is that?": no battery is sought for it."""
    others = seen.found - {"run-time", "run-check", "bank-size", "rating-convert", "unclear"}
    return (
        not others
        and seen.told >= amp_hours_taken.FACTS
        and amp_hours_taken.asked(seen.message.text)
        and not seen.message.dangers
    )


def _of_more_volts(seen: Seen) -> bool:
    """ "Going 12 to 24 V thruster, must the charger change?"."""
    text, told = seen.message.text, seen.told - MORE_VOLTS
    about = seen.found <= {"bank-wiring", "unclear", "dc-dc", "battery-type"} and not seen.message.dangers
    return about and more_volts.changes(text) and seen.says("thing:charger") and told <= CABLES


def _one_kind_a_must(seen: Seen) -> bool:
    """ "Must I fit a gel battery for the thruster?"."""
    about = seen.found <= {"battery-type", "mounting", "unclear"} and not seen.message.dangers
    return about and seen.told <= {"battery.chemistry", "load.kind"} and kind_required.asked(seen.message.text)


def _to_lithium(seen: Seen) -> bool:
    """ "I swap my wets for lithium, what else must change?", "does it just drop in?"."""
    about = {"battery-type", "replacement", "bank-wiring", "mounting", "unclear"}
    text, judged = seen.message.text, seen.told & BATTERY and seen.told & LOADS
    others = seen.found - about - (set() if judged else {"run-check", "bank-size"})
    if others - {"charger-setting"} or seen.message.dangers:
        return False
    return to_lithium.what_changes(text) or (not others and to_lithium.drops_in(text))


def _relay_between(seen: Seen) -> bool:
    """ "Would a VSR do between my lithium house bank and the AGM at the bow?"."""
    about = seen.found <= {"bank-wiring", "charger-banks", "dc-dc", "meaning", "unclear"} and not seen.message.dangers
    text = seen.message.text
    return about and charging_relay.weighed(text) and not other_volts.linked(text)


def _kinds_weighed(seen: Seen) -> bool:
    """ "2 x 6 V wet vs 1 x 12 V AGM for the Minnow": one of two, and none that are joined."""
    kinds = {item.value for item in seen.message.stated if item.fact == "battery.chemistry"}
    weighed = seen.found == {"bank-wiring"} and len(kinds) > 1 and seen.says("request:versus")
    return weighed and not JOINS.search(seen.message.text) and not seen.message.dangers


def _start_linked(seen: Seen) -> bool:
    """ "Start battery 1000 CCA plus house 2 x 100 Ah, can I link them?": two banks joined, before what they run."""
    about = seen.found <= {"run-check", "bank-wiring", "unclear"} and not seen.message.dangers
    return (
        about
        and seen.says("detail:start_and_house")
        and seen.says("word:mix")
        and seen.says("request:may_i", "put:leave")
    )


def _rating_counts(seen: Seen) -> bool:
    """ "1000 CA, 800 CCA and RC 180: which number counts for a thruster?": none that is to be converted."""
    about = {"rating-convert", "meaning", "battery-type", "unclear"}
    text, plain = seen.message.text, seen.found <= about and not seen.message.dangers
    return plain and rating_counts.COUNTS.search(text) is not None and rating_counts.asked(text, seen.told)


def _good_idea(seen: Seen) -> bool:
    """ "Got two golf cart batteries of 6 V for the Pike, good idea?": a battery and a load, and leave."""
    read = any(fact.startswith(("reading.", "charger.", "cable.", "fuse.")) for fact in seen.told)
    plain = seen.found <= {"unclear"} and not seen.message.dangers and not read
    return plain and bool(LOADS & seen.told and BATTERY & seen.told) and seen.says("request:is_good", "put:good")


def _cheapest(seen: Seen) -> bool:
    """ "What is the cheapest kind that will do for a Minnow?": one to choose, none that they have."""
    own = any(fact.startswith(("battery.", "reading.")) for fact in seen.told)
    about = seen.found <= {"run-check", "battery-type", "battery-duty", "unclear"} and not seen.message.dangers
    return about and not own and bool(LOADS & seen.told) and to_buy.cheapest(seen.message.text)


def _battery_for(seen: Seen) -> bool:
    """ "Battery for the Pike, 8 m away": which one, as no cable and no battery of theirs is told of."""
    about = seen.found <= {"cable-size", "voltage-drop", "run-check", "battery-type", "battery-duty", "unclear"}
    other = seen.says("thing:cable", "about:cable", "thing:fuse") or BATTERY & seen.told
    load = {"load.model", "load.current", "load.power"} & seen.told
    return about and not other and bool(load) and to_buy.named_first(seen.message.text) and not seen.message.dangers


def _switch(seen: Seen) -> bool:
    """ "What size isolator for a Pike?": a part of the circuit, no battery."""
    about = seen.found <= {
        "bank-size",
        "charger-size",
        "run-check",
        "rating-convert",
        "terminals",
        "unclear",
        "meaning",
    }
    load = LOADS | {"load.power"}
    return about and bool(load & seen.told) and switch_asked.asked(seen.message.text) and not seen.message.dangers


def _both_on(seen: Seen) -> bool:
    """ "A 1-2-both switch, on both when docking?"."""
    about = seen.found <= {"charger-setting", "charger-banks", "unclear", "run-check"} and seen.told <= {
        "battery.count"
    }
    return about and seen.says("detail:start_and_house") and not seen.message.dangers


def _by_the_catalogue(seen: Seen) -> bool:
    """ "My fuse is 250 A, the catalogue says 350, must I change it?": no price is asked."""
    quoted = QUOTED.search(seen.message.text) is not None
    return seen.found == {"other-desk"} and quoted and "fuse.rating" in seen.told and not seen.message.dangers


def _covered(seen: Seen) -> bool:
    """ "How are the terminals covered?"."""
    about = seen.found <= {"maintenance", "mounting", "terminals", "unclear"}
    return (
        about
        and lugs_asked.cover(seen.message.text)
        and not any(item.status == "present" for item in seen.message.dangers)
    )


def _of_the_minus(seen: Seen) -> bool:
    """ "Must the minus lead be as thick?"."""
    about = seen.found <= {"terminals", "cable-size", "bank-wiring", "unclear"} and not seen.told
    return about and equal_cables.of_the_minus(seen.message.text) and not seen.message.dangers


def _spliced(seen: Seen) -> bool:
    """ "Can I lengthen the cable with a butt splice?"."""
    about = seen.found <= {"terminals", "cable-size", "bank-wiring", "unclear"} and seen.told <= {
        "battery.count",
        "load.kind",
    }
    return about and lugs_asked.spliced(seen.message.text) and not seen.message.dangers


def _cable_alone(seen: Seen) -> bool:
    """ "Is 35 mm2 ok?", before anything else is told."""
    only = bool(seen.told) and seen.told <= CABLES and seen.found <= {"unclear"} and not seen.message.dangers
    return only and seen.says("request:is_good", "request:enough", "request:may_i", "put:good")


def _car_charger(seen: Seen) -> bool:
    """ "Can I use my car battery charger for it?": a charger, not a car battery."""
    about = seen.found <= {"battery-duty", "battery-type", "unclear"} and not seen.message.dangers
    return about and CAR_CHARGER.search(seen.message.text) is not None


def _put_back(seen: Seen) -> bool:
    """ "20 A DC-to-DC, we motor an hour a day and thrust for 2 minutes": whether it puts back what is taken."""
    about = {"run-time", "run-check", "charge-time", "charger-size", "dc-dc", "unclear", "bank-size"}
    load = LOADS & seen.told or seen.context
    told = "load.time" in seen.told and bool(load) and motoring.hours(seen.message.text) is not None
    charged = (
        "charger.current" in seen.told or CHARGING & seen.context or seen.says("thing:alternator", "thing:charger")
    )
    return seen.found <= about and told and bool(charged) and not seen.message.dangers


def _by_a_converter(seen: Seen) -> bool:
    """The same where a DC-to-DC charger is what charges."""
    named = "dc-dc" in seen.context or seen.says("thing:dcdc")
    return named and _put_back(seen)


def _straight_in(seen: Seen) -> bool:
    """ "The boat has 12 V. Could a converter run the 24 V thruster?": no battery is put up for it."""
    return seen.found <= {"run-check", "unclear"} and not seen.told & BATTERY and straight_in(seen.message.text)


def _fuse_of_a_converter(seen: Seen) -> bool:
    """ "Is a 15 A fuse right for the 12 V side of a 12-to-24 V charger, 10 A?": the fuse, not what it pulls."""
    told = {"fuse.rating", "charger.current"} <= seen.told and seen.says("thing:fuse")
    judged = seen.says("request:is_good", "request:enough", "request:may_i", "put:good")
    return seen.found <= {"dc-dc", "unclear"} and told and judged and not seen.message.dangers


def _by_hydrometer(seen: Seen) -> bool:
    """ "How do I test the cells with a hydrometer?"."""
    about = {"maintenance", "specific-gravity", "meaning", "replacement", "load-voltage", "unclear"}
    return seen.found <= about and not seen.message.dangers and hydrometer_way.asked(seen.message.text)


def _longest_run(seen: Seen) -> bool:
    """ "How far can I go with 70 mm2 to a Pike?"."""
    others = seen.found - CIRCUIT - {"mounting", "run-time", "rating-convert", "unclear"}
    return not others and not seen.message.dangers and longest_run.asked(seen.message.text, seen.told)


def _by_the_hull(seen: Seen) -> bool:
    """ "Can the engine block be the way back, with a plus cable only?"."""
    others = seen.found - CIRCUIT - {"bank-wiring", "dc-dc", "unclear"}
    return not others and not seen.message.dangers and seen.says("detail:hull_negative")


def _of_a_picture(seen: Seen) -> bool:
    """ "Photo attached, is it right like that?": nothing in words that could be judged."""
    plain = not seen.told and "other-desk" not in seen.found and not seen.message.dangers
    return plain and pictured.shown(seen.message.text)


def _priced(seen: Seen) -> bool:
    """ "How much is the 250 A fuse?": not which one it should be."""
    return price_asked.alone(seen.message.text) and not seen.message.dangers


def _amps_of_a_model(seen: Seen) -> bool:
    """ "How many amps does the Pike draw?": its demand, by the catalogue."""
    about = seen.found <= {"unclear", "bank-size", "rating-convert", "run-check", "meaning"}
    plain = "load.model" in seen.told and not seen.told & (BATTERY | {"load.current", "load.peak"})
    return about and plain and amps_asked.running(seen.message.text) and not seen.message.dangers


def _of_its_years(seen: Seen) -> bool:
    """ "Does hot weather ruin batteries faster?", "made in 2020, still ok?"."""
    text, plain = seen.message.text, seen.told <= {"battery.chemistry", "battery.capacity", "ambient.temperature"}
    battery = seen.says("thing:battery", "about:kind_word")
    if not seen.found <= {"unclear"} or not battery or not plain or seen.message.dangers:
        return False
    of_now = seen.says("request:is_good", "put:good", "word:age")
    return its_years.asks_of_heat(text) or (of_now and its_years.of_year(text) is not None)


def _volts_of_a_charge(seen: Seen) -> bool:
    """ "What volts is 50 percent on a flooded?"."""
    about = seen.found <= {"unclear", "meaning", "charger-setting", "replacement"} and not seen.message.dangers
    plain = seen.told <= {"battery.chemistry", "battery.charge", "battery.nominal", "bank.voltage", "battery.count"}
    battery = seen.says("thing:battery", "about:kind_word", "thing:bank")
    return about and plain and battery and volts_of_charge.of_a_charge(seen.message.text)


def _stays_in_a_stage(seen: Seen) -> bool:
    """ "The charger's lamp says absorption, three days now": its stage, not its size."""
    about = seen.found <= {"charger-size", "charge-time", "storage", "unclear"} and not seen.message.dangers
    return about and seen.says("thing:charger") and long_bulk.told(seen.message.text)


def _set_for_the_season(seen: Seen) -> bool:
    """ "Shall I set the charger higher for the winter?": its volts, and nothing is laid up."""
    about = seen.found <= {"storage", "charger-size", "unclear"} and not seen.message.dangers
    return about and warmth_asked.told_to_set(seen.message.text)


def _one_of_two_chargers(seen: Seen) -> bool:
    """ "The 12 V 20 A charger or the 24 V 10 A one for the two in series?": which, not what they give together."""
    about = {"bank-wiring", "dc-dc", "charger-size", "charger-setting", "charger-banks", "unclear"}
    if not seen.found <= about or seen.message.dangers or not two_chargers.chosen_of(seen.message.text):
        return False
    whole = {"24", "36", "48", "series"}
    told = (item for item in seen.message.stated if item.fact in ("bank.voltage", "bank.layout"))
    return any((f"{item.value:g}" if isinstance(item.value, float) else str(item.value)) in whole for item in told)


def _fell_by_itself(seen: Seen) -> bool:
    """ "From 12.7 to 12.3 overnight with nothing on": no load drew it down."""
    under = seen.found == {"load-voltage"} and "reading.load_voltage" in seen.told and not seen.message.dangers
    text = seen.message.text
    alone = standing_loss.LEFT_ALONE.search(text) and BY_ITSELF.search(text) and not seen.told & LOADS
    return under and bool(alone) and not seen.says("thing:thruster")


def _lamps_of_stages(seen: Seen) -> bool:
    """ "What do the lamps bulk and float on the charger mean?": the words, not a setting to choose."""
    stages = [seen.says(name) for name in ("term:bulk", "term:absorption", "term:float")]
    asked = seen.says("about:meaning") and LAMPS.search(seen.message.text) is not None
    plain = not seen.told - {"charger.setting", "load.kind"}
    return seen.found == {"charger-setting"} and sum(stages) > 1 and asked and plain


def _lamp_of_a_fault(seen: Seen) -> bool:
    """ "Woke to the charger beeping with a red light, what does it want?": no size."""
    about = seen.found <= {"charger-size", "charge-time", "maintenance", "meaning", "unclear"}
    return about and not seen.message.dangers and charger_fault.told(seen.message.text)


def _full_in_time(seen: Seen) -> bool:
    """ "Will the 70 A alternator fully charge 105 Ah in a 2 hour trip?": the hours, not its volts or a box between."""
    about = seen.found <= {"charger-setting", "dc-dc", "charger-size", "unclear"} and not seen.message.dangers
    told = "battery.capacity" in seen.told and seen.told & {"charger.current", "alternator.current"}
    return about and bool(told) and deadline.fills(seen.message.text)


def _volts_on_charge(seen: Seen) -> bool:
    """ "On charge for two weeks and 13.4 V now, is it ok?": what the charger gives."""
    judged = seen.says("request:is_good", "request:may_i", "put:good", "put:bad")
    told = "charger.voltage" in seen.told and seen.says("thing:charger") and judged
    return seen.found <= {"unclear"} and told and not seen.message.dangers


def _read_apart(seen: Seen) -> bool:
    """ "12.6 and 12.1 with the link off, they are in parallel": what each reads, not what they give together."""
    both = any(item.fact == "reading.voltage" and item.of == 2 for item in seen.message.stated)
    asks = seen.says("request:may_i", "request:what_get", "request:which", "request:versus")
    apart = both and seen.found == {"bank-wiring"} and not asks and not seen.message.dangers
    return apart and PARTED.search(seen.message.text) is not None


IN_WORDS: tuple[tuple[str, Callable[[Seen], bool]], ...] = (
    ("other-desk", _priced),
    ("unclear", _of_a_picture),
    ("maintenance", _by_children),
    ("run-time", _taken),
    ("cable-size", _longest_run),
    ("cable-size", _by_the_hull),
    ("cable-size", _cable_alone),
    ("cable-size", _of_the_minus),
    ("fuse-size", _switch),
    ("terminals", _covered),
    ("terminals", _spliced),
    ("bank-wiring", _both_on),
    ("fuse-size", _by_the_catalogue),
    ("specific-gravity", _by_hydrometer),
    ("fuse-size", _fuse_of_a_converter),
    ("dc-dc", _of_more_volts),
    ("dc-dc", _relay_between),
    ("bank-wiring", _start_linked),
    ("battery-type", _rating_counts),
    ("battery-type", _kinds_weighed),
    ("run-check", _good_idea),
    ("bank-size", _cheapest),
    ("bank-size", _amps_of_a_model),
    ("bank-size", _battery_for),
    ("charger-setting", _car_charger),
    ("dc-dc", _by_a_converter),
    ("dc-dc", _straight_in),
    ("charge-time", _put_back),
    ("battery-type", _one_kind_a_must),
    ("battery-type", _to_lithium),
    ("replacement", _of_its_years),
    ("rest-voltage", _volts_of_a_charge),
    ("rest-voltage", _read_apart),
    ("charger-setting", _stays_in_a_stage),
    ("charger-setting", _volts_on_charge),
    ("charger-banks", _one_of_two_chargers),
    ("meaning", _lamps_of_stages),
    ("charge-time", _full_in_time),
    ("charger-setting", _lamp_of_a_fault),
    ("standing-drain", _fell_by_itself),
    ("charger-setting", _set_for_the_season),
)
