"""How a reading under load is put into words: the verdict, the part at fault, the resistance, what is asked back."""

from __future__ import annotations

import math
import re
from dataclasses import replace

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import circuit, load_reading, supply
from service.judgements.doubt import shown
from service.judgements.load_reading import UnderLoad
from service.reference import value
from service.reply import Answer
from service.rules.battery import lowest_at
from service.rules.cable import K
from service.rules.readings import NEAR, cite, limit
from service.sentences import wording
from service.told import culprit
from service.told.culprit import asks_why, either, parts_in, which_first

WEAK = ", so the battery is the weak part"
WEAK_MOTOR = ("detail:weak_motor", "detail:dead_motor")
PART = "detail:which_part"  # "the cable or the battery?"
AT_BATTERY = "role:at_battery"
RESISTANCE = "detail:resistance"  # "R?"
WHAT_NOW = "detail:what_now"  # "so what do I do?"
DEEDS = {  # what to do about a low reading: of a battery too small for its load, of volts alone, and else
    "small": "Fit a battery of more CCA, or a second one like it in parallel: {}.",
    "alone": "Read the volts at the motor's own terminals too, while it runs: {}.",
    "": "Charge it fully, let it rest and test again before you buy: {}; if it still drops so far, replace it.",
}
TWO_PLACES = (  # of a weak motor, which part is at fault
    "Read the volts twice while it runs: low on the battery posts means the battery, low at the motor alone the "
    "cable, good at both the motor itself."
)
TWO_PLACES_OF_DEAD = (  # of one that only clicks or does nothing
    "Read the volts twice while the lever is held: low on the battery posts means the battery, low at the motor alone "
    "its fuse, relay or cable, good at both the motor itself."
)
ONE_WAY = (
    "Look at the relay and control of the weak direction first: battery and cables feed both directions alike; if both "
    "are weak, read the volts while it runs."
)
ON_POSTS = regex(
    r"\b(?:at|on|across|over|from) (?:the |its |both |two )*(?:battery(?:'s)? )?(?:posts?|poles|battery terminals)\b",
    re.IGNORECASE,
)
STEP = 0.1  # volts
TRIED = 100.0  # amps
FIRST_WORDS = frozenset({"Yes", "No", "We can't say yet", "A little", "Only just", "Too low"})


def headline(case: Case, under: UnderLoad, verdict: str, lost: float | None = None) -> str:
    """The verdict on a lead battery in one sentence. `lost`: volts that the cable takes too much."""
    start, told = _start(case, under, verdict, lost), _told(case, under, verdict)
    if PART in case.cues:
        told = told.removesuffix(WEAK)
    more = f"; cable and joints lose {say.volts(lost)} more" if lost else ""
    if verdict == "yes" and at_the_motor_next(case):
        return f"Not the battery: {told}; next read the motor's own terminals."
    if verdict == "no" and under.basis == "alone" and not lost and (sought := _by_two_readings(case, under)):
        return sought
    if verdict == "no" and case.says(WHAT_NOW):
        small = under.small and (under.read or 0) >= _own_lowest(case, under) - NEAR
        return DEEDS["small" if small else under.basis if under.basis == "alone" else ""].format(
            f"{told.removesuffix(WEAK)}{more}"
        )
    return f"{start}: {told.removesuffix(WEAK) if lost else told}{more}."


CABLE = r"\b(?:cables?|wires?|wiring|leads?)\b[^.?!;]{0,24}"
TOO_THIN = regex(rf"{CABLE}\b(?:too (?:thin|small|long|light)|undersized)\b", re.IGNORECASE)
THICK = regex(rf"{CABLE}\b(?:(?:thick|big|heavy|large) enough|enough)\b", re.IGNORECASE)


def at_the_motor_next(case: Case) -> bool:
    """Whether a motor is weak though its battery holds, and the volts at the motor are not known."""
    weak = culprit.is_weak(case.text, str(case.said("load.model") or "")) or case.says(*WEAK_MOTOR)
    return weak and case.said("reading.load_voltage_at_load") is None


def on_posts(text: str) -> bool:
    """Whether the volts are told to be read on the battery's own posts.

    >>> on_posts("9.1 at the battery posts"), on_posts("it falls to 9.1")
    (True, False)
    """
    return ON_POSTS.search(text) is not None


def place_is_open(case: Case, under: UnderLoad) -> bool:
    """ "Battery or cable?" of one low reading that may have been taken at either end."""
    told = case.says(AT_BATTERY) or on_posts(case.text)
    if told or not case.says(PART) or not {"battery", "cable"} <= asked_of(case):
        return False
    return case.said("reading.load_voltage_at_load") is None and under.basis in ("current", "alone") and not under.small


def asked_of(case: Case) -> set[str]:
    """The parts of which it is asked which one is at fault."""
    found = culprit.EITHER.search(case.text)
    return parts_in(found[0]) if found else set()


def at_the_motor_at_least(case: Case, under: UnderLoad) -> None:
    """What the motor's own terminals should show beside a good battery."""
    least = math.ceil(round(under.lowest * (1 - limit("cable-share") / 100) / STEP, 6)) * STEP
    case.because(
        f"Beside {say.volts(under.lowest)} on the posts the motor's own terminals should show {say.volts(least)} or "
        "more: with less, cable or joints lose it",
        cite("cable-share"),
    )


def either_way(under: UnderLoad) -> str:
    """What the volts at a weak motor tell: with over a tenth less than on the posts they are lost on the way."""
    edge = math.ceil(round(float(under.read or 0) * (1 - limit("cable-share") / 100) / STEP, 6)) * STEP
    return f"Under {say.volts(edge)}: cable, joints or relay. {say.volts(edge)} or more: the motor itself."


def _by_two_readings(case: Case, under: UnderLoad) -> str | None:
    """The answer to "why?" and to "which first?" of one low reading: the likely cause, and where to read once more."""
    read = shown(float(under.read or 0))
    if which_first(case.text):
        return (
            f"The cables and joints first, as they cost least: read the posts and the motor's own terminals while it "
            f"runs; {read} on the posts means the battery."
        )
    if asks_why(case.text) and case.said("reading.load_voltage_at_load") is None:
        return (
            f"A low or worn battery, if {read} was read on its posts, so charge it fully and repeat; if only the motor "
            "has so little, cable or joints lose it."
        )
    return None


def _start(case: Case, under: UnderLoad, verdict: str, lost: float | None) -> str:
    """The first word: yes or no, or the part at fault where that is what they ask."""
    if verdict == "no" and either(case.text) and "battery" not in parts_in(case.text):
        return "The battery comes first"
    if not case.says(PART):
        return wording.opening(case, verdict).removesuffix(", not yet")
    if verdict == "no" and not lost and (place_is_open(case, under) or under.basis == "alone"):
        return "The battery" if on_posts(case.text) else "The battery, if this was read on its posts"
    if verdict == "yes":
        return "Not the battery" if case.said("reading.load_voltage_at_load") is None else "Neither battery nor cable"
    if under.small and (under.read or 0) >= _own_lowest(case, under) - NEAR:
        return "Neither"
    return "Both" if lost else "The battery"


def _told(case: Case, under: UnderLoad, verdict: str) -> str:
    """The sentence after the first word."""
    lowest, read = say.volts(under.lowest), float(under.read or 0)
    if under.basis == "test":
        word = "passes" if verdict == "yes" else "fails"
        return f"{shown(read)} {word} the load test; a good battery holds {lowest} or more at half its CCA"
    if under.basis == "alone":
        told = f"a lead battery in good order holds {lowest} under load, and yours drops to {shown(read)}"
        settled = verdict == "no" and on_posts(case.text) and not either(case.text)
        return f"{told} on its posts, so it is too weak or too small" if settled else told
    amps = say.amps(float(under.current or 0))
    running = f"{supply.load_name(case)} running" if "load.model" in case else amps
    own = f"a good {say.cca(float(case['bank.cca']))} battery"
    if verdict == "yes" and under.small:
        small = "but its CCA is small for that"
        return f"with {running} yours holds {shown(read)}, and {lowest} is the least, {small}"
    if verdict == "yes":
        return f"with {running}, {own} holds {lowest} or more, and yours holds {shown(read)}"
    if under.small and read >= _own_lowest(case, under) - NEAR:
        return f"{shown(read)} is what {own} gives at {amps}, so it is in order but too small for the load"
    return f"with {running}, {own} holds {lowest}, and yours drops to {shown(read)}{WEAK}"


def _own_lowest(case: Case, under: UnderLoad) -> float:
    """What a battery of this CCA holds at this current, under 9.0 V though it be."""
    ohms = load_reading.ohms_of(case)
    return (load_reading.start_of(case, under.count) - float(under.current or 0) * ohms) * under.count


def cable_blamed(case: Case, told: str, sure: bool) -> str:
    """The sentence where the battery holds and the volts are lost on the way. `sure`: the battery is proven."""
    if case.says(WHAT_NOW):
        return f"Clean and tighten the joints, then measure again: {told}; if so much is still lost, fit thicker cable."
    if case.says("detail:thicker_helps"):
        return f"Yes, if clean joints do not: {told}, so look at the joints first, then fit thicker cable."
    if case.says(PART):
        return f"The cable or its joints: {told}."
    if case.says("detail:lost_much") or not sure:
        start = "Yes" if case.says("detail:lost_much") else "No"
        return f"{start}: {told}, so look at the cable and its joints, plus and minus, first."
    return f"No: {told}, so the cable or its joints are at fault."


def explained_at(case: Case, lost: float) -> float | None:
    """The amps at which the cable told of loses so much by itself; None where their amps are known, or no cable is."""
    if not circuit.has_cable(case) or case.said("cable.length") is None or "load.current" in case:
        return None
    amps = lost / circuit.loss(case, TRIED).volts * TRIED  # the loss grows with the amps
    case.step(f"{circuit.name(case)} loses {say.volts(lost, 2)} at {say.amps(amps)}", K.cite)
    return amps


def cable_asked(text: str) -> bool:
    """Whether it is asked if the cable is thick enough.

    >>> cable_asked("11.2 at the thruster, 12.1 on the posts, is the cable too thin?"), cable_asked("battery or cable?")
    (True, False)
    """
    return TOO_THIN.search(text) is not None or THICK.search(text) is not None


def little_lost(case: Case, under: UnderLoad) -> str | None:
    """The sentence where they ask if much is lost on the way, and no more is than suits a motor."""
    far = case.said("reading.load_voltage_at_load")
    if far is None or not under.holds or not under.read:
        return None
    lost, most = under.read - float(far), say.quantity(limit("cable-share"), "%")
    case.step(f"{shown(under.read)} - {shown(float(far))} = {say.volts(lost, 2)}", cite("cable-share"))
    share = say.quantity(max(lost, 0.0) / under.read * 100, "%", 0)
    start = "No" if TOO_THIN.search(case.text) else "Yes"
    return f"{start}: {say.volts(lost)} ({share}) is lost between battery and motor, and a motor may lose {most}."


def by_resistance(case: Case, under: UnderLoad, answer: Answer) -> Answer:
    """The answer opened with the inner resistance, where that is what they ask and it is known."""
    first, mark, rest = answer.headline.partition(": ")
    if not case.says(RESISTANCE) or under.milliohms is None or not mark or first not in FIRST_WORDS:
        return answer
    ohms = f"{say.number(under.milliohms, 1)}{say.NB}mΩ inner resistance"
    asks_cca = answer.verdict == "needs-facts" and answer.asks[:1] and answer.asks[0].fact == "battery.cca"
    if asks_cca and (edge := cca_edge(case, under)):
        told = f"{ohms}: as much as a battery of {say.cca(edge)} may have; with more on its label yours is weak"
        return replace(answer, headline=f"{told}, with less it is in order.")
    passes = {"yes": ", a pass", "no": ", a fail"}.get(answer.verdict, "")
    return replace(answer, headline=f"{ohms}{passes}: {rest}")


def replies(under: UnderLoad) -> tuple[tuple[str, float], ...]:
    """The likely volts under load: from the lowest good reading on, or under it."""
    lowest = math.ceil(round(under.lowest / STEP, 6)) * STEP
    told = say.volts(lowest)
    return ((f"{told} or more", round(lowest, 1)), (f"under {told}", round(lowest - STEP, 1)))


def at_the_tester(case: Case, asked: Answer) -> Answer:
    """What asks for the volts of a load test: no thruster is run for it."""
    amps = load_reading.current_of(case)
    load = f"at {say.amps(amps)}" if amps else "at half its CCA"
    wanted = f"the volts at the end of the load test, after 15 seconds {load}"
    first = replace(asked.asks[0], say=wanted, where="Read them on the tester or the posts while its load is still on.")
    return replace(asked, headline=f"We can't say yet: please tell us {wanted}.", asks=(first, *asked.asks[1:]))


def by_its_cca(case: Case, under: UnderLoad) -> str | None:
    """The sentence that holds a reading against a battery of the model's own CCA; None where none is named."""
    wanted = case.get("load.cca")
    if not wanted or "load.model" not in case:
        return None
    lowest = _lowest_of(case, under, float(wanted))
    own = f"with {supply.load_name(case)} running, a good {say.cca(float(wanted))} battery holds {say.volts(lowest)}"
    read = shown(float(under.read or 0))
    if float(under.read or 0) >= lowest - NEAR:
        return f"We can't say yet: {own}, and yours holds {read}; a larger one would hold more, so its CCA decides."
    return f"We can't say yet: {own}, and yours drops to {read}, so its CCA decides."


def cca_edge(case: Case, under: UnderLoad) -> float | None:
    """The CCA, in tens, of a battery that just passes the load test and drops as far; None where no drop is known."""
    start, read = load_reading.start_of(case, under.count), float(under.read or 0) / under.count
    if start <= read or not under.current:
        return None
    return _tens(2 * _fall(case) * float(under.current) / (start - read))


def cca_replies(case: Case, under: UnderLoad) -> tuple[tuple[str, float], ...]:
    """The CCA up to which the reading is as it should be, and more, with which the battery is weak."""
    edge, read = cca_edge(case, under), float(under.read or 0) / under.count
    if edge is None:
        return ()
    passes = read >= float(value("ratings", "full").value) - _fall(case) - NEAR
    amps = float(under.current or 0)
    if passes:  # about half the CCA is a load test, which it passes
        edge = max(edge, _tens(amps / limit("test-share-low")))
    else:
        edge = min(edge, _tens(amps / limit("test-share-high") - 10))
    return ((f"{say.number(edge)} or less", edge), (f"over {say.number(edge)}", edge + 20.0))


def _fall(case: Case) -> float:
    """Volts from full to the least of a load test at this temperature."""
    table = lowest_at(case.said("ambient.temperature"))
    return float(value("ratings", "full").value) - float(table.value)


def _tens(cca: float) -> float:
    return float(math.floor(cca / 10) * 10)


def _lowest_of(case: Case, under: UnderLoad, cca: float) -> float:
    """What a good battery of so much CCA holds at this current, in the volts of what was read."""
    return load_reading.read_under_load(case.supposing({"battery.cca": cca})).lowest
