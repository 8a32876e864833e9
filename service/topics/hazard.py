"""A sign of danger: the first action before anything else, then what to do, what not to do and who takes over."""

from __future__ import annotations

import re
from collections.abc import Iterable

from grammar.text.patterns import regex
from service import reference
from service.case import Case
from service.reply import Act, Answer, Urgency
from service.sentences.first_actions import (
    EGGS,
    FUSED,
    HEAT,
    SMELL,
    UNNAMED,
    WISHED,
    Row,
    beside,
    note,
    of_kind,
    rescue,
    settled,
    steps,
    with_volts,
)
from service.told import may_i, other_volts, put_of_a_danger
from service.topic import Topic

TOPIC = Topic("hazard", "Danger")

URGENCIES: tuple[Urgency, ...] = ("routine", "today", "stop-now")
STATUS = ("present", "standing", "general")  # the first of these that any sign has decides
STANDING = (
    "No use and no charging, keep away: {named} still counts as a danger until somebody who knows batteries has looked "
    "at it."
)
STANDING_ALL = (
    "No use and no charging: {named} still counts, for the batteries beside it too, until somebody who knows batteries "
    "has tested them all."
)
REFUSED = {  # in the place of the first words, where leave is asked
    "No use and no charging, keep away": "No, do not {deed} it, and keep away",
    "No use and no charging": "No, do not {deed} them",
}
FIRST_AID = frozenset({"acid-on-skin", "acid-in-eyes", "acid-swallowed", "electrolyte-on-skin"})
TOLD = "what you told us"  # what still counts, where the row has no name for it
NUMBERS = (
    "the emergency number is 112 in Europe, 999 in the UK, 911 in North America; "
    "at sea VHF 16, Mayday for danger to life"
)

JUMP, JUMP_UNLIKE = "jump-start", "jump-unlike-volts"
WARM, SIGNS, TOO_WARM = "warm-on-charge", "warning-signs", 45.0  # °C
LONG_FLAT, TRIPPING = "lithium-dropped-or-holed", "lfp-keeps-tripping"
BURST, VAPOUR, IN_EYES = "explosion", "lithium-vapour-breathed", "acid-in-eyes"

CAN_IT = regex(  # "could an AGM explode?", "do lithium batteries catch fire?"
    r"(?:^|[.?!;,:] ?|\b(?:and|but|so) )(?:can|could|may|might|do|does|will) (?:an? |the |my |our )?(?:\w+ ){0,2}"
    r"(?:agm|gel|lithium|lifepo4|lead|batter(?:y|ies)|ones?|it|they)\b[^.?!;]{0,16}"
    r"\b(?:explode|burst|blow up|catch fire|burn|swell|leak|go up in)\b",
    re.IGNORECASE,
)
EYE = regex(
    r"\beyes?\b[^.?!;]{0,30}\b(?:red|sore|sting\w*|burn\w*|hurt\w*|water\w*|itch\w*|weep\w*|swollen|blurr\w*|gritty|bad)\b"
    r"|\b(?:red|sore|stinging|burning|watering|bad) eyes?\b",
    re.IGNORECASE,
)
COOLED = regex(r"\b(?:cooled|(?:cool|cold) (?:now|again)|(?:no longer|not) (?:hot|warm))\b", re.IGNORECASE)
SHOCK, PROPELLER = "shore-shock", "person-near-propeller"
SWIMS = regex(
    r"\b(?:sw[aiu]m\w*|bath(?:e|er|ing)\w*|snorkel\w*|div(?:e|er|ing)\w*|in(?:to)? the water)\b", re.IGNORECASE
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The first actions for the gravest sign and those beside it; stop, or information where nothing is wrong yet."""
    signs = {status: families(case, status) for status in STATUS}
    status = next((name for name in STATUS if signs[name]), "")
    if has_cooled(case, signs):
        status = "standing"  # a swollen case does not go with the heat
    rows = sorted((row(name) for name in signs.get(status, ())), key=lambda item: item["rank"])
    rows = in_order(case, rows)
    if not rows:
        who = Act("who", "one of our technicians, who has this message now")
        return TOPIC.says("stop", UNNAMED, steps=(who,), urgency="today", route="technician")
    leading = rows[0]
    asked_about = "no" if leading.get("forbids") else "information"  # "can I bypass the BMS": no, whatever for
    verdict = asked_about if status == "general" else verdict_of(rows)
    note(case, [leading, *(item for item, _ in beside(case, leading, rows[1:]))])
    first, then = headline(case, leading, status), tuple(steps(case, leading, rows[1:]))
    if verdict == "stop" and status == "present" and rescue(first, *(act.say for act in then)):
        then = (*then, Act("who", NUMBERS))
    return TOPIC.says(
        verdict,
        first,
        steps=then,
        urgency=urgency(case, rows) if verdict == "stop" else "routine",
        route="technician" if verdict == "stop" else None,
    )


def families(case: Case, status: str) -> list[str]:
    """The families of danger that the case holds with this status; those that the table has not are left out."""
    known = {item["id"].value for item in reference.rows("hazards")}
    parts = (cue.split(":") for cue in case.cues if cue.startswith("danger:"))
    found = {part[1] for part in parts if len(part) == 3 and part[2] == status and part[1] in known}
    if WARM in found and put_of_a_danger.hottest(case.text) > TOO_WARM:
        found = {*(found - {WARM}), SIGNS}
    if JUMP in found and (other_volts.jumped(case.text) or other_volts.linked(case.text)):
        found = {*(found - {JUMP}), JUMP_UNLIKE}
    if {LONG_FLAT, TRIPPING} <= found:
        found -= {TRIPPING}  # it stood flat: it did not trip
    return sorted(hurt_by_a_burst(case, found) if status == "present" else found)


def has_cooled(case: Case, signs: dict[str, list[str]]) -> bool:
    """Whether all that is told now is that it has cooled, and another sign of the battery still stands."""
    return signs["present"] == [HEAT] and bool(set(signs["standing"]) - {HEAT}) and COOLED.search(case.text) is not None


def in_order(case: Case, rows: list[Row]) -> list[Row]:
    """The signs in their order; the smell of rotten eggs is of lead charged too hard, and stands before its heat.

    A shock that swimmers feel stands before the propeller: what hurts them in the water is the current in it.
    """
    told = {item["id"] for item in rows}
    if {SHOCK, PROPELLER} <= told and SWIMS.search(case.text):
        after = row(SHOCK)["rank"] + 0.5
        return sorted(rows, key=lambda item: after if item["id"] == PROPELLER else item["rank"])
    if not {SMELL, HEAT} <= told or rows[0]["id"] != HEAT or EGGS not in settled(case):
        return rows
    return sorted(rows, key=lambda item: item["id"] != SMELL)


def hurt_by_a_burst(case: Case, found: set[str]) -> set[str]:
    """The signs where an eye is hurt: acid first after a burst, and of a lead battery no vapour of lithium."""
    told = settled(case)
    if not found & {BURST, VAPOUR} or not EYE.search(case.text) or "lithium" in told:
        return found
    if "lead" in told:
        return {*(found - {VAPOUR}), IN_EYES}
    return {*found, IN_EYES} if BURST in found else found


def row(family: str) -> Row:
    """A row of the table as plain values, with its source as "cite"."""
    found = reference.row("hazards", id=family)
    return {**{name: cell.value for name, cell in found.items()}, "cite": found["id"].cite}


def verdict_of(rows: Iterable[Row]) -> str:
    """Stop, unless every sign is one that only wants explaining."""
    return "information" if all(item.get("verdict") == "information" for item in rows) else "stop"


def urgency(case: Case, rows: Iterable[Row]) -> Urgency:
    """The highest of the signs; a sign may be more urgent beside what its row names."""
    planned = WISHED in settled(case)  # the charger is no more than asked about
    sooner = [not planned and case.says(*item.get("sooner", ())) for item in rows]
    found: list[Urgency] = ["stop-now" if now else item["urgency"] for now, item in zip(sooner, rows, strict=True)]
    return max(found, key=URGENCIES.index)


def headline(case: Case, leading: Row, status: str) -> str:
    """The first action, standing alone."""
    if status == "standing":
        still = next((leading[f"still_{word}"] for word in settled(case) if f"still_{word}" in leading), None)
        if still:
            return str(still)
        if "still" in leading:
            told = str(leading["still"])
            return f"No: {told[0].lower()}{told[1:]}" if may_i.asked(case.text) else told
        if leading["id"] in FIRST_AID and not may_i.asked(case.text):
            return str(of_kind(case, leading, "first"))  # "it itches a bit now": the same again
        all_off = leading.get("battery") and case.says("detail:the_others")
        told = (STANDING_ALL if all_off else STANDING).format(named=leading.get("named", TOLD))
        return refused(told, may_i.asked(case.text))
    first: str = with_volts(case, of_kind(case, leading, "first"))
    asked = put_of_a_danger.carry_on(case.text) or (not leading.get("people") and put_of_a_danger.forbidden(case.text))
    asked = asked or ("first_wished" in leading and first == leading["first_wished"])
    if status == "present" and leading.get("verdict") != "information" and asked:
        fuse = leading["id"] in FUSED and put_of_a_danger.larger_fuse_asked(case.text)
        return f"No{' larger fuse' if fuse else ''}: {first[0].lower()}{first[1:]}"
    if leading["id"] == WARM and put_of_a_danger.normal(case.text):
        return f"Yes, within the limits: {first[0].lower()}{first[1:]}"
    if status == "general" and leading.get("verdict") != "information" and not leading.get("forbids"):
        deed = may_i.asked(case.text) if leading.get("battery") else ""
        opening = f"No, do not {deed} it" if deed else "If it happens"
        if not deed and CAN_IT.search(case.text):
            opening = "Yes, that can happen; if it does"
        return f"{opening}: {first[0].lower()}{first[1:]}"
    return first


def refused(told: str, deed: str) -> str:
    """What still counts, opened with the answer to whether it may be charged or used."""
    first, mark, rest = told.partition(": ")
    return f"{REFUSED[first].format(deed=deed)}{mark}{rest}" if deed else told
