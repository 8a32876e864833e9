"""Which dangers stand, in a message and in its thread, and the case of the hazard answer."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace

from grammar.dangers.find import advised
from grammar.reading import Danger, Message
from service import reference
from service.case import Case
from service.judgements.harm import equalised, lithium_left_flat, mistaken, overvoltage
from service.told import charged_in_frost, gone, may_i, other_volts, seen_by_doctor, seen_to, taken_back, warned
from service.turns.thread import Thread

TOLD = ("present", "general")
OVERCHARGED = "overcharging-voltage"
JUMP, JUMP_UNLIKE = "jump-start", "jump-unlike-volts"
UNNAMED = "unnamed"  # the family of what only the points of a message tell
DANGER = "danger:"  # begins the cues that tell of signs
LONG_FLAT = "lithium-dropped-or-holed"
TRIPPING, FUEL, SMELL = "lfp-keeps-tripping", "fuel-vapour", "rotten-egg-smell"
FLAT = ("reading.voltage", "battery.chemistry", "storage.time")  # what a lithium battery that stood flat is told by
FROZEN = "frozen-lead"
FROSTED = "lfp-charged-below-freezing"
THAWED = ("thaw", "unfreez", "unfroz", "defrost")
OF_ITSELF = frozenset(  # signs of one battery, which leave the boat with it; volts too high are the charger's
    (
        *("swollen-case", "hissing-venting", "hot-to-touch", "rotten-egg-smell", "leaking-case", "explosion"),
        *(FROSTED, FROZEN, LONG_FLAT),
    )
)
OF_ACID = frozenset({"acid-on-skin", "acid-in-eyes", "acid-swallowed"})  # somebody was hurt, and is well again
OF_THE_HURT = frozenset({"electrolyte-on-skin", "lithium-vapour-breathed", "lifting"})
REVERSED = "reversed-polarity"
LITHIUM = ("lfp", "lithium-other")
CARRIED = ("thing:alternator", "about:alternator", "thing:charger", "term:shore-power", "detail:alone")  # hold on
METER = "reading.voltage"
MEASURED = (METER, "charger.voltage")
SPLIT = "leaking-case"


def signs(case: Case, message: Message, asked: Collection[str] = ()) -> tuple[str, ...]:
    """The dangers of a message as "family:status", those it tells and those that follow from its readings.

    `asked` are its topics: that lead may freeze and split is the answer to whether it will, not a danger beside it.
    """
    allowed = equalised(case.fresh()) or mistaken(case.fresh())
    dangers = [item for item in message.dangers if not (allowed and item.family == OVERCHARGED)]
    if "freeze-point" in asked:
        dangers = [item for item in dangers if item.family not in (FROZEN, SPLIT) or item.status != "general"]
    if set(asked) - warned.ELSE and not may_i.asked(message.text):  # leave to charge it is refused
        dangers = [item for item in dangers if not warned.is_only_warned(message.text, item)]
    thawed = thawed_lithium(case.fresh())
    found = [f"{_family(item, case)}:{'past' if thawed and _only_thawed(item) else item.status}" for item in dangers]
    told_now = [case.stated[fact] for fact in MEASURED if fact in case.stated and case.stated[fact].origin == "message"]
    measured = any(item.span is None or not advised(message.text, item.span) for item in told_now)
    measured = measured and not (_is_refused_mode(case) and may_i.of_a_mode(message.text))
    measured = measured and not (METER not in {item.fact for item in told_now} and may_i.only_planned(message.text))
    told = {item.status for item in message.dangers if item.family == OVERCHARGED}
    if measured and told <= {"present"} and overvoltage(_told_now(case)):  # not where the words only suppose it
        found.append(f"{OVERCHARGED}:present")
    if any(item.fact in FLAT for item in message.stated) and lithium_left_flat(case.fresh()):
        found.append(f"{LONG_FLAT}:present")
    if FROSTED not in {item.family for item in message.dangers} and _charged_in_frost(case, message):
        found.append(f"{FROSTED}:present")
    return tuple(dict.fromkeys(found))


def _family(item: Danger, case: Case) -> str:
    """The family of a sign; a jump between unlike volts is one of its own, which a later turn holds on to."""
    unlike = item.family == JUMP and (other_volts.jumped(case.text) or other_volts.linked(case.text))
    return JUMP_UNLIKE if unlike else item.family


def _told_now(case: Case) -> Case:
    """The case without volts of turns before, which stand as they stood: "unplugged it, now 12.9"."""
    kept = {fact: item for fact, item in case.stated.items() if fact not in MEASURED or item.origin == "message"}
    return replace(case.fresh(), stated=kept)


def _charged_in_frost(case: Case, message: Message) -> bool:
    """Whether a lithium battery is told to have been charged where it freezes."""
    frost = [item for item in message.stated if item.fact == "ambient.temperature"]
    cold = bool(frost) and all(not isinstance(item.value, str) and item.value <= 0.0 for item in frost)
    return cold and case.said("battery.chemistry") in LITHIUM and charged_in_frost.told(message.text)


def _is_refused_mode(case: Case) -> bool:
    """Whether a mode that equalises is named for a battery that must never be: then the answer itself says no."""
    return case.says("detail:equalise") and case.said("battery.chemistry") in ("agm", "gel")


def thawed_lithium(case: Case) -> bool:
    """Whether a lithium battery is above freezing, as this message tells: it holds nothing that froze."""
    told = case.stated.get("ambient.temperature")
    now = told is not None and told.origin == "message" and float(told.value) > 0.0
    return now and case.said("battery.chemistry") in LITHIUM


def _only_thawed(item: Danger) -> bool:
    return item.family == FROZEN and item.text.lower().startswith(THAWED)


def over(found: Iterable[str], topics: Iterable[str], message: Message) -> bool:
    """Whether a message that asks nothing else tells of a danger that is over: "thawed, 4 °C now"."""
    return bool(message.stated) and set(topics) <= {"hazard"} and {sign.split(":")[1] for sign in found} == {"past"}


def still(families: Collection[str], case: Case) -> tuple[str, ...]:
    """The families that stood before and go on, after what this message tells: warmth, another battery, a doctor."""
    over = {FROZEN} if thawed_lithium(case.fresh()) else set()
    if gone.replaced(case.text) or gone.swapped(case.text) or gone.off_the_boat(case.text):
        over |= OF_ITSELF | {TRIPPING, UNNAMED}
    if gone.charger_replaced(case.text):
        over |= {OVERCHARGED}
    if seen_by_doctor.is_well(case.text):
        over |= OF_ACID | OF_THE_HURT
    if seen_to.is_passed(case.text):
        over |= OF_ITSELF | {TRIPPING, UNNAMED, OVERCHARGED, REVERSED}
    over |= seen_to.over(case.text) | taken_back.over(case.text, case.stated.keys(), OF_ITSELF)
    if FUEL in over and FUEL in families:
        over.add(SMELL)  # which the same words tell of
    return tuple(family for family in families if family not in over)


def standing(now: Iterable[str], before: Iterable[str]) -> tuple[str, ...]:
    """The families that stand after a message with these signs; one that is denied or mended no longer does."""
    status: dict[str, str] = {}
    for family, found in (sign.split(":") for sign in now):
        status[family] = "present" if status.get(family) == "present" else found  # told and denied: the stricter
    over = {"denied", "past"} & set(status.values())
    kept = (family for family in before if status.get(family) not in ("denied", "past"))
    kept = (family for family in kept if family != UNNAMED or not over)  # whatever is denied may have been meant
    added = (family for family, found in status.items() if found == "present" and _stops(family))
    return tuple(dict.fromkeys((*kept, *added)))


def spoken_of(thread: Thread) -> tuple[str, ...]:
    """The signs that the turn before was asked about in general, where it was about a danger."""
    told = (cue.removeprefix(DANGER) for cue in thread.cues if cue.startswith(DANGER) and cue.endswith(":general"))
    return tuple(told) if "hazard" in thread.topics else ()


def hazard_case(case: Case, now: Iterable[str], stands: Iterable[str], before: Iterable[str] = ()) -> Case | None:
    """The case of a hazard answer: signs of this message and families that still stand; None without any.

    Of the cues of the turn before those hold on that tell where people are and what charges the battery.
    """
    cues = {f"{DANGER}{sign}" for sign in now if sign.split(":")[1] in TOLD}
    cues |= {f"{DANGER}{family}:standing" for family in stands if f"{DANGER}{family}:present" not in cues}
    if not cues:
        return None
    if any(sign.endswith(":standing") for sign in cues):
        cues |= set(CARRIED) & set(before)
    case.cues = case.cues | cues
    case.hazard = True
    return case


def refused(now: Iterable[str], text: str) -> bool:
    """Whether leave is asked to charge or use a battery with a sign that is only asked about: the answer is no."""
    return bool(may_i.asked(text)) and any(_stops(sign.split(":")[0]) for sign in now if sign.endswith(":general"))


def _stops(family: str) -> bool:
    return family not in set(_explained())


def _explained() -> Iterator[str]:
    for row in reference.rows("hazards"):
        if "verdict" in row and row["verdict"].value == "information":
            yield str(row["id"].value)
