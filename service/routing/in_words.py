"""A topic that the words of a message put plainly, though the table of points does not tell it from others."""

from __future__ import annotations

import re
from collections.abc import Callable

from grammar.text.patterns import regex
from service.judgements import standing_loss
from service.routing import charging_in_words, circuit_in_words, plainly_asked, running_in_words
from service.routing.seen import BATTERY, LOADS, Seen
from service.routing.supply_as_told import is_lithium
from service.told import (
    amps_asked,
    does_the_load,
    hydrometer_way,
    its_years,
    kind_required,
    pictured,
    price_asked,
    rating_counts,
    to_buy,
    to_lithium,
    under_charge,
    volts_of_charge,
    water_level,
    who,
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
CLEANS = regex(
    r"\b(?:rid of|clean\w*|remov\w*|wash(?:e[sd]|ing)?|get(?:s|ting)? (?:it |that |them )?off|scrub\w*|brush\w*)\b",
    re.IGNORECASE,
)
FROST = regex(r"\b(?:frost|rime|snow)\b[^.?!;]{0,12}\b(?:on|over)\b[^.?!;]{0,24}\bbatter", re.IGNORECASE)
IN_WINTER = regex(
    r"\b(?:use|using|run|work|works|sail|cruise|go out)\b[^.?!;]{0,30}\b(?:in|during|through|over)"
    r" (?:the )?(?:winter|cold|frost)\b",
    re.IGNORECASE,
)
TOGETHER = regex(
    r"\b(?:ok(?:ay)?|fine|all ?right|good|bad|safe|wise|allowed|may they|can they|do they) (?:stay |stand |live |work "
    r"|be |get on |go )?(?:together|side by side)\b|\btogether,? (?:ok(?:ay)?|fine|all ?right|allowed)\b",
    re.IGNORECASE,
)
JOINS = regex(
    r"\b(?:series|parallel|join\w*|mix\w*|together|beside|alongside|link\w*|connect\w*|wir(?:e|ing)|and an?)\b",
    re.IGNORECASE,
)


OFF_IT = regex(  # "will a trolling motor be ok off my 100 Ah deep cycle"
    r"\b(?:ok(?:ay)?|fine|alright|all right|happy|run|work) (?:off|from) (?:my|our|the|this|a|an)\b"
    r"[^.?!;]{0,12}\d{2,3} ?ah\b",
    re.IGNORECASE,
)


def _by_children(seen: Seen) -> bool:
    """ "Can the kids top up the batteries?"."""
    present = any(item.status == "present" for item in seen.message.dangers)
    return seen.found <= {"unclear"} and not present and who.children_may(seen.message.text)


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


def _kinds_weighed(seen: Seen) -> bool:
    """ "2 x 6 V wet vs 1 x 12 V AGM for the Minnow": one of two, and none that are joined."""
    kinds = {item.value for item in seen.message.stated if item.fact == "battery.chemistry"}
    weighed = seen.found == {"bank-wiring"} and len(kinds) > 1 and seen.says("request:versus")
    return weighed and not JOINS.search(seen.message.text) and not seen.message.dangers


def _dirty_posts(seen: Seen) -> bool:
    """ "Green fluff on the M8 posts, what gets rid of it?": they are to be cleaned, and no lug is looked for."""
    return (
        seen.found <= {"terminals", "unclear"}
        and not any(item.status == "present" for item in seen.message.dangers)
        and seen.says("about:dirt")
        and CLEANS.search(seen.message.text) is not None
    )


def _used_in_winter(seen: Seen) -> bool:
    """ "Can I use my lithium in winter?": what it gives in the cold, and how it is laid up is not asked."""
    about = seen.found <= {"storage", "unclear", "run-check"} and is_lithium(seen.message)
    return about and not seen.told - {"battery.chemistry"} and IN_WINTER.search(seen.message.text) is not None


def _well_together(seen: Seen) -> bool:
    """ "One is AGM, one has caps, 5 and 3 years old. Ok together?": whether these kinds may be joined."""
    kinds = {item.value for item in seen.message.stated if item.fact == "battery.chemistry"}
    about = seen.found <= {"replacement", "battery-type", "charger-banks", "unclear"}
    return about and len(kinds) > 1 and TOGETHER.search(seen.message.text) is not None


def _rating_counts(seen: Seen) -> bool:
    """ "1000 CA, 800 CCA and RC 180: which number counts for a thruster?": none that is to be converted."""
    about = {"rating-convert", "meaning", "battery-type", "unclear"}
    text, plain = seen.message.text, seen.found <= about and not seen.message.dangers
    return plain and rating_counts.COUNTS.search(text) is not None and rating_counts.asked(text, seen.told)


def _beside_its_load(seen: Seen) -> bool:
    """ "24 V stern motor, one 12 V battery, ok?": whether the one runs off the other."""
    judged = seen.says("request:is_good", "request:may_i", "request:enough", "put:good")
    both = "load.kind" in seen.told and {"battery.nominal", "battery.count"} & seen.told
    apart = seen.message.dangers or seen.says("thing:charger", "thing:dcdc", "thing:cable", "thing:fuse")
    off = {"load.kind", "battery.capacity"} <= seen.told and OFF_IT.search(seen.message.text) is not None
    named = bool(both) if seen.found <= {"unclear"} else seen.found == {"battery-duty"} and off
    return named and judged and not apart


def _does_the_load(seen: Seen) -> bool:
    """ "Will the standard battery do the new thruster?": theirs is asked of, no size."""
    plain = seen.found <= {"unclear", "bank-size"} and not seen.message.dangers
    return plain and not seen.says("request:what_size", "request:how_many") and does_the_load.asked(seen.message.text)


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


def _by_hydrometer(seen: Seen) -> bool:
    """ "How do I test the cells with a hydrometer?"."""
    about = {"maintenance", "specific-gravity", "meaning", "replacement", "load-voltage", "unclear"}
    return seen.found <= about and not seen.message.dangers and hydrometer_way.asked(seen.message.text)


def _filled_since(seen: Seen) -> bool:
    """ "It ran dry last year, I topped it up": what is left of it."""
    return seen.found <= {"unclear"} and water_level.filled_since(seen.message.text)


def _of_a_picture(seen: Seen) -> bool:
    """ "Photo attached, is it right like that?": nothing in words that could be judged."""
    plain = not seen.told and "other-desk" not in seen.found and not seen.message.dangers
    return plain and pictured.shown(seen.message.text)


def _priced(seen: Seen) -> bool:
    """ "How much is the 250 A fuse?": not which one it should be."""
    return price_asked.alone(seen.message.text) and not seen.message.dangers


def _under_charge(seen: Seen) -> bool:
    """ "Can I take the clamps off with the charger on?": the charger comes off first."""
    return under_charge.asked(seen.message.text) and not seen.message.dangers


def _frosted(seen: Seen) -> bool:
    """ "Frost on the lid of my battery, has it had it?"."""
    return seen.found <= {"unclear"} and not seen.message.dangers and bool(FROST.search(seen.message.text))


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


def _fell_by_itself(seen: Seen) -> bool:
    """ "From 12.7 to 12.3 overnight with nothing on": no load drew it down."""
    under = seen.found == {"load-voltage"} and "reading.load_voltage" in seen.told and not seen.message.dangers
    text = seen.message.text
    alone = standing_loss.LEFT_ALONE.search(text) and BY_ITSELF.search(text) and not seen.told & LOADS
    return under and bool(alone) and not seen.says("thing:thruster")


def _read_apart(seen: Seen) -> bool:
    """ "12.6 and 12.1 with the link off, they are in parallel": what each reads, not what they give together."""
    both = any(item.fact == "reading.voltage" and item.of == 2 for item in seen.message.stated)
    asks = seen.says("request:may_i", "request:what_get", "request:which", "request:versus")
    apart = both and seen.found == {"bank-wiring"} and not asks and not seen.message.dangers
    return apart and PARTED.search(seen.message.text) is not None


IN_WORDS: tuple[tuple[str, Callable[[Seen], bool]], ...] = (
    ("other-desk", _priced),
    ("unclear", _of_a_picture),
    ("terminals", _under_charge),
    ("freeze-point", _frosted),
    ("maintenance", _filled_since),
    ("maintenance", _by_children),
    ("maintenance", _dirty_posts),
    ("run-time", running_in_words.hours_left),
    ("run-time", running_in_words.taken),
    ("run-time", running_in_words.runs_so_long),
    ("cable-size", circuit_in_words.longest_way),
    ("cable-size", circuit_in_words.by_the_hull),
    ("cable-size", circuit_in_words.cable_alone),
    ("cable-size", circuit_in_words.of_the_minus),
    ("fuse-size", circuit_in_words.switch),
    ("terminals", circuit_in_words.covered),
    ("terminals", circuit_in_words.spliced),
    ("bank-wiring", circuit_in_words.both_on),
    ("fuse-size", circuit_in_words.by_the_catalogue),
    ("specific-gravity", _by_hydrometer),
    ("fuse-size", charging_in_words.fuse_of_a_converter),
    ("dc-dc", charging_in_words.of_more_volts),
    ("dc-dc", charging_in_words.relay_between),
    ("bank-wiring", circuit_in_words.start_linked),
    ("bank-wiring", _well_together),
    ("bank-wiring", circuit_in_words.tapped),
    ("charger-setting", charging_in_words.charged_in_frost),
    ("cold-cranking", _used_in_winter),
    ("battery-type", _rating_counts),
    ("battery-type", _kinds_weighed),
    ("run-check", _good_idea),
    ("run-check", _does_the_load),
    ("run-check", _beside_its_load),
    ("bank-size", _cheapest),
    ("bank-size", _amps_of_a_model),
    ("bank-size", _battery_for),
    ("charger-setting", charging_in_words.car_charger),
    ("solar", charging_in_words.lithium_on_a_panel),
    ("dc-dc", charging_in_words.by_a_converter),
    ("dc-dc", charging_in_words.without_a_battery),
    ("charge-time", charging_in_words.put_back),
    ("battery-type", _one_kind_a_must),
    ("battery-type", _to_lithium),
    ("replacement", _of_its_years),
    ("rest-voltage", _volts_of_a_charge),
    ("rest-voltage", _read_apart),
    ("charger-setting", charging_in_words.stays_in_a_stage),
    ("charger-setting", charging_in_words.volts_on_charge),
    ("charger-banks", charging_in_words.one_of_two_chargers),
    ("meaning", charging_in_words.lamps_of_stages),
    ("charge-time", charging_in_words.full_in_time),
    ("charger-setting", charging_in_words.lamp_of_a_fault),
    ("standing-drain", _fell_by_itself),
    ("charger-setting", charging_in_words.set_for_the_season),
    *plainly_asked.PLAINLY,
)
