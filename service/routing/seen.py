"""A message as the rules of words and facts see it, beside the topics found in it and those of the turn before."""

from __future__ import annotations

from typing import NamedTuple

from grammar.reading import Message

LOADS = frozenset({"load.current", "load.model"})
BATTERY = frozenset({"battery.cca", "battery.capacity", "battery.max_current", "battery.count"})
CABLES = frozenset({"cable.gauge", "cable.area"})


class Seen(NamedTuple):
    """A message, the topics its words point to, the facts it tells and the topics of the turn before."""

    message: Message
    found: frozenset[str]
    told: frozenset[str]
    context: frozenset[str]

    def says(self, *cues: str) -> bool:
        """Whether the message says one of these."""
        return any(map(self.message.says, cues))
