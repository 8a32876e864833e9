"""Whether a boat that drifted is safe again: "we drifted a bit, all safe on the pontoon now"."""

from __future__ import annotations

from collections.abc import Sequence

LAND = frozenset(
    {"pontoon", "berth", "quay", "dock", "marina", "mooring", "jetty", "harbour", "harbor", "slip", "alongside", "home"}
)
AT = frozenset(
    {"on", "at", "in", "alongside", "to", "into", "back", "the", "our", "a", "my", "safe", "safely", "tied", "moored"}
)
NOW = frozenset({"now", "safe", "safely", "again", "back"})
STILL = frozenset({"still", "drifting", "dragging", "aground", "towards", "toward", "help", "stuck", "sinking"})
LEAD, AFTER = 5, 3  # words before and after the place


def is_landed(words: Sequence[str]) -> bool:
    """Whether the boat is told to be at a place of safety now, and nothing tells that it still drifts.

    >>> is_landed("we drifted a bit but all safe on the pontoon now".split())
    True
    >>> is_landed("drifting towards the pontoon now".split()), is_landed("we drifted onto the pontoon".split())
    (False, False)
    """
    if not STILL.isdisjoint(words):
        return False
    places = (at for at, word in enumerate(words) if word in LAND and words[max(0, at - 1)] in AT)
    return any(not NOW.isdisjoint((*words[max(0, at - LEAD) : at], *words[at + 1 : at + 1 + AFTER])) for at in places)
