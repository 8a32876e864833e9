"""A topic that is asked about, as the routing hands it on."""

from __future__ import annotations

from dataclasses import dataclass

from grammar.reading import Span

HANDED_OVER = ("other-desk", "unclear")


@dataclass(frozen=True, slots=True)
class Request:
    """A topic that is asked about, the clause that asks, its points, its lead over the next and why."""

    topic: str
    span: Span
    points: int = 0
    lead: int = 0
    evidence: tuple[str, ...] = ()

    def why(self) -> str:
        """The points in words, for `leadsman why`."""
        if not self.evidence:
            return "the thread goes on" if self.topic not in HANDED_OVER else "nothing over the bar"
        return f"{self.points} points, {self.lead} over the next; " + ", ".join(self.evidence)
