"""A choice between two ways, of which the words name one topic alone: the other way is judged as well."""

from __future__ import annotations

from collections.abc import Set

from grammar.reading import Message
from service.rules import left_or_taken

CHARGER, LAID_UP, WIRING, RUNS = "charger-setting", "storage", "bank-wiring", "run-check"
RATED = frozenset({"battery.cca", "battery.max_current"})
LOADS = frozenset({"load.current", "load.model", "load.power", "load.peak"})


def other_way(message: Message, found: Set[str]) -> set[str]:
    """The topics of the way that is weighed against the one found."""
    more = set()
    if WIRING in found and _several_for_a_load(message):
        more.add(RUNS)
    if found & {CHARGER, LAID_UP} and _left_on_or_taken(message):
        more |= {CHARGER, LAID_UP}
    return more - found


def _several_for_a_load(message: Message) -> bool:
    """Whether one large battery and several small ones, each with a rating, are to run a load."""
    rated = {item.of for item in message.stated if item.fact in RATED}
    counted = any(item.fact == "battery.count" and item.of == 2 for item in message.stated)
    return counted and rated == {1, 2} and any(item.fact in LOADS for item in message.stated)


def _left_on_or_taken(message: Message) -> bool:
    """Whether a plain charger is left on one way, and batteries are charged now and then the other way."""
    plain = any(item.fact == "charger.kind" and item.value in left_or_taken.PLAIN for item in message.stated)
    plain = plain or message.says("detail:unregulated")
    return plain and left_or_taken.weighed(message.text)
