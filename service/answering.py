"""The answers to a turn: each of its questions once, hazards first, and only what a danger leaves to be said."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

import service.rules  # noqa: F401  (declares the rules)
from grammar.reading import Message
from service.case import Case
from service.finish import finished, understood
from service.hazards import OF_ITSELF, hazard_case, refused
from service.house import House
from service.labels import label
from service.question import known
from service.reply import Answer, Cite
from service.routing.asking import asks
from service.routing.evidence import evidence
from service.routing.listed import questions
from service.routing.one_by_one import left_open
from service.told import another_battery, gone
from service.topic import Topic
from service.topics import names, topic
from service.turns import told_already
from service.turns.case_of import case_of
from service.turns.for_later import without_those_to_come
from service.turns.moments import of_its_moment
from service.turns.of_another_question import apart
from service.turns.own_facts import own
from service.turns.thread import Thread
from service.turns.turn import Turn
from service.turns.wanted import lost_for_an_answer
from service.wording import misbeliefs
from service.wording.aside import harmless
from service.wording.hot_charger import without_its_yes
from service.wording.opening import as_put
from service.wording.twice import told_once
from service.wording.withheld import KEPT_BACK, once_told, withheld

NOT_ASKED = "detail:battery_unknown"  # "no idea what battery I have" asks for none
AS_IT_IS = "note:as_it_is"
Fault = Callable[[str, Exception], None]  # is told the topic, and what it raised


def answered(turn: Turn, house: House, fault: Fault) -> tuple[Answer, ...]:
    """The answers to a message in its order, hazards first, each question once."""
    if not turn.requests and not turn.signs:  # thanks, a greeting: nothing of the thread is told again
        endangered = bool(turn.thread.dangers)
        polite = answer_of("unclear", case_of(replace(turn, thread=Thread()), house, hazard=endangered), fault)
        return (polite,) if turn.message.text.strip() else ()
    hazard = hazard_case(case_of(turn, house), turn.signs, turn.thread.dangers, turn.thread.cues)
    found = [answer_of("hazard", hazard, fault)] if hazard else []
    stands = tuple(dict.fromkeys((*turn.thread.dangers, *(sign.split(":")[0] for sign in turn.signs))))
    stop = bool(turn.thread.dangers) or any(item.verdict == "stop" for item in found)
    stop = stop or refused(turn.signs, turn.message.text)
    first = {item.topic: item for item in reversed(turn.requests)}
    for name in dict.fromkeys(request.topic for request in turn.requests):
        request = first[name]
        if name == "hazard" and not turn.signs and not found:  # taken up from the thread, but it stands no longer
            name = "unclear"
        if name not in names() or name == "hazard" or (found and name == "unclear"):
            continue
        if hazard and name in KEPT_BACK and not turn.signs and turn.message.says(AS_IT_IS):
            continue  # "how long can it stay like that" asks of the danger that stands
        other = turn.thread.turns == 0 and another_battery.asked_about(turn.message, request.span, stands)
        other = other or (OF_ITSELF.issuperset(stands) and gone.another_asked(turn.message.text))
        bars = stop and not other
        case = case_of(turn, house, bars, found)
        case = another_battery.own_case(case, turn.message) if other else case
        case = apart(case, request, turn.requests, turn.message)
        case = without_those_to_come(case, request, turn.requests, turn.message)
        case = of_its_moment(own(case, request, turn.requests, turn.message), request.topic)
        answer = answer_of(name, case, fault, label.LABEL if turn.label else None)
        sums = misbeliefs.sums(turn.beliefs, turn.claimed)
        before = turn.thread.cues
        answer = as_put(queried(answer, turn.message), turn.message, request, turn.requests, sums, before)
        answer = without_its_yes(answer, turn.message.text)
        same = next((at for at, item in enumerate(found) if item.headline == answer.headline), None)
        if same is not None:  # two readings that oppose each other, say; it stands under what speaks for it most
            found[same] = answer if request.points > first[found[same].topic].points else found[same]
            continue
        found.append(withheld(answer, hazard_of(found), turn.message.text, stands) if bars else answer)
    if stop:
        below = (answer_of(item.topic, case_of(turn, house, hazard=True), fault) for item in turn.asides)
        found += [answer for answer in below if harmless(answer)]
    else:
        found = misbeliefs.answered(found, turn.beliefs, turn.message, case_of(turn, house))
    if lost_for_an_answer(turn.message, turn.thread):  # what asked nothing is not told again
        found = [item for item in found if item.asks or item.verdict == "stop"] or found
    found = told_already.without(without_idle(found, turn), turn.message, turn.thread)
    return _with_unused(list(once_told(told_once(found))), turn)


def answer_of(name: str, case: Case, fault: Fault, how: Topic | None = None) -> Answer:
    """The finished answer of one topic. A topic that fails hands over to a technician; the others stand."""
    try:
        return finished(how or topic(name), case)
    except Exception as error:  # whatever it is, the customer gets a person, not a traceback
        fault(name, error)
        return Answer(
            name,
            "needs-facts",
            "One of our technicians will look at this question: we could not work it out here.",
            route="technician",
        )


def without_idle(found: list[Answer], turn: Turn) -> list[Answer]:
    """The answers without those that only ask back what another one gives: how long, beside how big it must be."""
    told = turn.thread.facts
    idle = {
        name
        for answer in found
        if answer.topic in names() and (answer.verdict != "needs-facts" or turn.message.says(NOT_ASKED))
        for name, facts in topic(answer.topic).idle.items()
        if not any(fact in told for fact in facts)
    }
    found = [item for item in found if item.verdict != "needs-facts" or item.topic not in idle]
    failed = any((item.topic, item.verdict) == ("load-voltage", "no") for item in found)
    if failed and not asks(turn.message):  # facts that were asked back; what was measured counts before the label
        return [item for item in found if (item.topic, item.verdict) != ("run-check", "yes")]
    return found


def queried(answer: Answer, message: Message) -> Answer:
    """An answer that asks for a fact of which the message gave a value that cannot be: it is named."""
    odd = {item.fact: item.text for item in message.implausible}
    if answer.verdict != "needs-facts" or not answer.asks or answer.asks[0].fact not in odd:
        return answer
    asked = answer.asks[0]
    return replace(answer, headline=f"{odd[asked.fact]} cannot be right, so please look again: tell us {asked.say}.")


def hazard_of(answers: Iterable[Answer]) -> tuple[Cite, ...]:
    """The source of the danger that is told first, which keeps other answers back."""
    return next((item.cites[:1] for item in answers if item.topic == "hazard"), ())


def _with_unused(answers: list[Answer], turn: Turn) -> tuple[Answer, ...]:
    """Facts in force that no answer used stand in the first answer: those of this message, then those of the thread."""
    if not answers:
        return ()
    seen = {(item.fact, item.of) for answer in answers for item in answer.understood}
    carried = [item for held in (turn.thread.facts, turn.thread.second) for item in held.values()]
    in_force = {(item.fact, item.of): item for item in (*map(known, turn.message.stated), *carried)}
    unused = [understood(item) for key, item in in_force.items() if key not in seen]
    first = replace(answers[0], understood=(*answers[0].understood, *unused))
    return (first, *answers[1:])


def unanswered(turn: Turn, answers: Sequence[Answer]) -> list[str]:
    """The questions of a message that none of its answers speaks of; beside a danger, or where none is sure of
    anything, a technician reads the whole of it."""
    topics = {item.topic for item in answers}
    if turn.label or not topics or topics & {"unclear", "hazard"} or not questions(turn.message.text):
        return []
    return left_open(turn.message, evidence(turn.message, turn.thread.topics), topics)
