"""Sources by the names a technician knows them by: "33 CFR 183.425 table 5; NEC 240.6(A); common practice"."""

from __future__ import annotations

from collections.abc import Iterable

from grammar.text.patterns import regex
from service import reference
from service.reply import CONTACT, HOUSE_RULES, Cite

LONGEST = 24  # characters of a place that is told beside the name
NAME = regex(r"[^,:;]+")
MEMORY = regex(r" \((?:partly )?from memory\)")


def short_sources(cites: Iterable[Cite]) -> str:
    """Each source once by its short name and place; the trade's habits together, as they have none."""
    cites = [item for item in cites if (item.id, item.locator) != (HOUSE_RULES, CONTACT)]
    named = dict.fromkeys(_named(item) for item in cites if item.kind != "common-practice")
    habits = ["common practice"] if any(item.kind == "common-practice" for item in cites) else []
    return "; ".join([*named, *habits])


def _named(cite: Cite) -> str:
    entry = reference.sources().get(cite.id, {})
    memory = MEMORY.search(cite.locator)
    place = _place(MEMORY.sub("", cite.locator), entry.get("locator", ""))
    name = entry.get("short") or NAME.match(cite.title)[0]  # type: ignore[index]
    return f"{name}{f' {place}' if place else ''}{memory[0] if memory else ''}"


def _place(locator: str, usual: str) -> str:
    """The place within the source; none where it is the usual one or is told in many words."""
    places = [] if locator == usual else [part.partition(": ")[0] for part in locator.split("; ")]
    return ", ".join(part for part in places if len(part) <= LONGEST)
