"""A sign of danger: the first action before anything else, then what to do, what not to do and who takes over."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from service import reference, say
from service.case import Case
from service.kinds import LEAD, LITHIUM
from service.reply import Act, Answer, Urgency
from service.topic import Topic

TOPIC = Topic("hazard", "Danger")

URGENCIES: tuple[Urgency, ...] = ("routine", "today", "stop-now")
STATUS = ("present", "standing", "general")  # the first of these that any sign has decides
MOST_OTHERS = 2  # further signs whose first action is said beside the leading one
OTHERS = "use the other batteries either: they had the same charger, and are tested first"
STANDING = "It still counts: leave it off and keep away until somebody who knows batteries has looked at it."
STANDING_ALL = (
    "It still counts, for the batteries beside it too: leave them all off until somebody who knows batteries has "
    "tested them."
)
UNNAMED = "Keep away from it and use nothing there until one of our technicians has looked at this."

Row = Mapping[str, Any]


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The first actions for the gravest sign and those beside it; stop, or information where nothing is wrong yet."""
    signs = {status: families(case, status) for status in STATUS}
    status = next((name for name in STATUS if signs[name]), "")
    rows = sorted((row(name) for name in signs.get(status, ())), key=lambda item: item["rank"])
    if not rows:
        who = Act("who", "one of our technicians, who has this message now")
        return TOPIC.says("stop", UNNAMED, steps=(who,), urgency="today", route="technician")
    leading = rows[0]
    verdict = "information" if status == "general" else verdict_of(rows)
    note(case, rows)
    return TOPIC.says(
        verdict,
        headline(case, leading, status),
        steps=tuple(steps(case, leading, rows[1:])),
        urgency=urgency(case, rows) if verdict == "stop" else "routine",
        route="technician" if verdict == "stop" else None,
    )


def families(case: Case, status: str) -> list[str]:
    """The families of danger that the case holds with this status; those that the table has not are left out."""
    known = {item["id"].value for item in reference.rows("hazards")}
    parts = (cue.split(":") for cue in case.cues if cue.startswith("danger:"))
    return sorted(part[1] for part in parts if len(part) == 3 and part[2] == status and part[1] in known)


def row(family: str) -> Row:
    """A row of the table as plain values, with its source as "cite"."""
    found = reference.row("hazards", id=family)
    return {**{name: cell.value for name, cell in found.items()}, "cite": found["id"].cite}


def of_kind(case: Case, found: Row, name: str) -> Any:
    """A column of a row for the battery's kind; not known, the plain one, which is the stricter."""
    kind = case.get("battery.chemistry")
    suffix = "_lead" if kind in LEAD else "_lithium" if kind in LITHIUM else ""
    return found.get(name + suffix, found[name])


def verdict_of(rows: Iterable[Row]) -> str:
    """Stop, unless every sign is one that only wants explaining."""
    return "information" if all(item.get("verdict") == "information" for item in rows) else "stop"


def urgency(case: Case, rows: Iterable[Row]) -> Urgency:
    """The highest of the signs; a sign may be more urgent beside what its row names."""
    found: list[Urgency] = ["stop-now" if case.says(*item.get("sooner", ())) else item["urgency"] for item in rows]
    return max(found, key=URGENCIES.index)


def headline(case: Case, leading: Row, status: str) -> str:
    """The first action, standing alone."""
    if status == "standing":
        return STANDING_ALL if leading.get("battery") and case.says("detail:the_others") else STANDING
    first: str = of_kind(case, leading, "first")
    measured = case.said("charger.voltage") or case.said("reading.voltage")
    if leading["id"] == "overcharging-voltage" and measured:
        first = first.replace("the charging voltage", say.volts(float(measured)))
    if status == "general" and leading.get("verdict") != "information":
        return f"If it happens: {first[0].lower()}{first[1:]}"
    return first


def steps(case: Case, leading: Row, others: list[Row]) -> Iterator[Act]:
    """Do, do not, who: of the leading sign, with the first action of the next ones."""
    beside = [item for item in others if item.get("people") or not leading.get("alone")]
    said = {of_kind(case, leading, "first")}
    yield from (Act("do", text) for text in of_kind(case, leading, "do"))
    for item in beside[:MOST_OTHERS]:
        first = of_kind(case, item, "first")
        if first not in said and not (item.get("battery") and leading.get("battery")):
            said.add(first)
            yield Act("do", first)
    yield from (Act("do-not", text) for text in of_kind(case, leading, "do_not"))
    if any(item.get("battery") for item in (leading, *others)) and several(case):
        yield Act("do-not", OTHERS)
    who = dict.fromkeys(text for item in (leading, *beside[:MOST_OTHERS]) for text in of_kind(case, item, "who"))
    yield from (Act("who", text) for text in who)


def several(case: Case) -> bool:
    """Whether there are other batteries to ask about."""
    return case.get("battery.count", 1) > 1 or case.says("detail:the_others")


def note(case: Case, rows: Iterable[Row]) -> None:
    """Notes where the sign and its first actions come from."""
    for item in rows:
        case.step(f"First action: {of_kind(case, item, 'first')}", item["cite"], *item.get("also", ()))
