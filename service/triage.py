"""How urgent a message is and who sees to it, from its answers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from service.reply import Answer, Route, Triage, Urgency

URGENCIES: tuple[Urgency, ...] = ("routine", "today", "stop-now")
ROUTES: tuple[Route, ...] = ("answered", "other-desk", "needs-facts", "technician")  # the later wins


def route_of(answer: Answer) -> Route:
    """Where one answer goes: what its topic says, else by its verdict."""
    if answer.route:
        return answer.route
    if answer.verdict == "stop":
        return "technician"
    if answer.verdict == "needs-facts":
        return "needs-facts"
    return "other-desk" if answer.topic == "other-desk" else "answered"


def triage(answers: Sequence[Answer]) -> Triage:
    """The highest urgency and the route that needs a person most. No answer at all is answered, routine."""
    urgencies = {item.urgency for item in answers}
    routes = {route_of(item) for item in answers}
    urgency = next((one for one in reversed(URGENCIES) if one in urgencies), URGENCIES[0])
    route = next((one for one in reversed(ROUTES) if one in routes), ROUTES[0])
    return Triage(urgency, route)


def handed_on(found: Triage) -> Triage:
    """The same urgency, and a technician, as the notice says that one reads it."""
    return replace(found, route="technician")
