"""The answer to "no idea": how to find out with what is on board, or the best that is true without the fact.

Never the same question again: facts.toml names what serves in place of a fact, and who does not know that either
is asked for photos that a technician can read.
"""

from __future__ import annotations

from dataclasses import replace

from grammar.facts import facts
from service import say
from service.case import Case
from service.reply import Answer, Asked
from service.topic import Topic

NO_IDEA = "note:no_idea"
AGAIN = "detail:no_idea_again"  # they did not know the fact before either
PHOTOS = (
    "Then send us photos of the battery, the motor's plate and the cables between them: one of our technicians will "
    "find {fact} from those."
)


def helped(topic: Topic, case: Case, answer: Answer) -> Answer:
    """A needs-facts answer to one who does not know what was asked; any other answer as it is."""
    if not (case.says(NO_IDEA) and answer.verdict == "needs-facts" and answer.asks and case.asked):
        return answer
    first = answer.asks[0].fact
    spec = facts()[first]
    if case.says(AGAIN):
        label = "out what we need" if not spec.label else f"the {spec.label}"
        return replace(answer, headline=PHOTOS.format(fact=label), asks=answer.asks[:1], route="technician")
    if first not in case.asked or not spec.unknown:
        return answer
    return replace(answer, headline=_told(case, spec.unknown), asks=_instead(topic, case, answer, spec.instead))


def _told(case: Case, unknown: str) -> str:
    draws = [model.running for model in case.house.models.values()] if case.house else []
    ours = f" Ours draw {say.between(min(draws), max(draws), 'A', 0)}." if draws else ""
    return unknown.replace("{draws}", ours)


def _instead(topic: Topic, case: Case, answer: Answer, names: tuple[str, ...]) -> tuple[Asked, ...]:
    """The facts that serve as well; where there are none, what else was asked, and the first one last."""
    serving = tuple(topic.ask(name, topic.likely.get(name, ())) for name in names if case.said(name) is None)
    return serving or (*answer.asks[1:], answer.asks[0])
