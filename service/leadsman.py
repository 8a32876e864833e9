"""The core: one message in, its answers out. Every surface calls `Leadsman.ask` and nothing below it."""

from __future__ import annotations

import secrets
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from functools import cache, partial
from typing import Any

import service.rules  # noqa: F401  (declares the rules)
from grammar import read
from grammar.figures.weighed import HOW
from grammar.lexicon.vocabulary import lexicon
from grammar.reader import why_weighed
from grammar.reading import Cue, Message
from service import say
from service.case import Case, Known
from service.finish import finished, understood
from service.hazards import DANGER, UNNAMED, hazard_case, over, refused, signs, spoken_of, standing, still
from service.house import House, load
from service.judgements import in_a_place
from service.labels import label
from service.question import BadInput, denied_in, fact_of, known, stated
from service.reply import Answer, Cite, Reply
from service.routing.alarms import alarmed
from service.routing.evidence import asks, evidence
from service.routing.listed import questions
from service.routing.one_by_one import left_open, told_of
from service.routing.only_asked import only_asked
from service.routing.route import SHOWN, Request
from service.routing.tally import HAZARD, table
from service.told import another_battery, charger_settings, seasons, shared_engine
from service.topic import Topic
from service.topics import names, topic
from service.topics.unclear import UNREAD
from service.triage import handed_on, triage
from service.turns import told_already
from service.turns.amps_taken_in import as_given
from service.turns.contradicted import with_opposed
from service.turns.for_later import without_those_to_come
from service.turns.held import TESTED, aged_otherwise, let_go
from service.turns.in_thread import also
from service.turns.moments import of_its_moment
from service.turns.of_another_question import apart
from service.turns.own_facts import own
from service.turns.put_in_place import (
    VOLTS,
    bought_new,
    has_its_load,
    of_another_boat,
    of_its_own,
    puts_in,
    stands_elsewhere,
)
from service.turns.thread import Signer, Thread, fingerprint, packed
from service.turns.turn import Turn
from service.turns.undecided import by_topic, dipped, likely
from service.turns.wanted import OTHER_BOAT, lost_for_an_answer, wanted
from service.turns.which_of_two import named_by_size, spoken_of_first, with_the_other
from service.turns.worked import in_its_rating, kept
from service.wording import claims, compared, misbeliefs
from service.wording.again import READ_TOO, repeated, taken_over
from service.wording.aside import asides, harmless
from service.wording.opening import as_put
from service.wording.opening import kept as kept_put
from service.wording.shorthand import STYLE, is_shorthand
from service.wording.twice import told_once
from service.wording.withheld import KEPT_BACK, once_told, withheld

LONGEST = 20_000
NOT_ASKED = "detail:battery_unknown"  # "no idea what battery I have" asks for none
AS_IT_IS = "note:as_it_is"
POINTED_AT = "note:pointed_at"  # "two of those" on the other boat
ANOTHER = ("note:other_battery", OTHER_BOAT)


def _fresh_id() -> str:
    """An id that nobody guesses; it begins with no dash, which a command line would take for an option."""
    return secrets.token_urlsafe(12).replace("-", "_")


class Leadsman:
    """The desk. `house` may be swapped while it runs; `new_id` and `fault` are handed in, so that tests hold them."""

    def __init__(
        self,
        house: House | None = None,
        signer: Signer | None = None,
        new_id: Callable[[], str] = _fresh_id,
        fault: Callable[[str, Exception], None] = lambda topic, error: None,
    ) -> None:
        self.house = house or load()
        self.signer = signer
        self.new_id = new_id
        self.fault = fault
        lexicon()
        table()  # a broken data file stops the desk here: no message is to be blamed for it

    def ask(self, text: str, thread: str | None = None, facts: Sequence[Mapping[str, Any]] | None = None) -> Reply:
        """Answer a message. Raises BadInput for an empty or too long text and for facts that are none."""
        given = [fact_of(item) for item in facts or ()]
        if not text.strip() and not given:
            raise BadInput('The text is empty: write a question, such as "Is 12.4 V good?".')
        if len(text) > LONGEST:
            raise BadInput(f"The text has {len(text)} characters; send at most {LONGEST}, or ask in parts.")
        before = self.signer.thread(thread) if self.signer and thread else None
        lost = bool(thread) and before is None
        notice = "This is a new thread: the earlier one could not be read, so its facts are gone." if lost else None
        return self.reply(text, before or Thread(), given, notice)

    def reply(self, text: str, thread: Thread, given: Sequence[Known] = (), notice: str | None = None) -> Reply:
        """Answer a message in a thread that is at hand, as `ask` and a replay of the log do."""
        try:
            turn = self.taken_up(text, thread, given)
        except Exception as error:  # whatever a text does to the reader, a person gets it, and the thread stands
            self.fault("reading", error)
            whole = (0, len(text))
            turn = Turn(Message(text, cues=(Cue(UNREAD, text, whole),)), thread, (Request("unclear", whole),))
        answers = self.answers(turn)
        left = told_of(self.left_open(turn, answers))
        seen, terse = fingerprint(item.headline for item in answers), is_shorthand(text, thread.cues)
        again = repeated(answers, turn.requests, turn.message) if seen == thread.answered != 0 and not given else None
        chased = taken_over(answers, turn.message)
        left_out = told_already.stand(turn.requests, answers, turn.message, turn.thread)
        stand = map(told_already.topic_of, left_out)
        after = replace(
            turn.thread,
            topics=tuple(name for name in (*(item.topic for item in answers), *stand) if name in _lasting())
            or turn.thread.topics,
            asks=tuple(dict.fromkeys(asked.fact for item in answers for asked in item.asks)),
            cues=(
                *turn.cues,
                *(f"{DANGER}{sign}" for sign in turn.signs),
                *kept_put(turn.message, turn.requests, thread.cues),
                *compared.kept(answers),
                *told_already.kept(answers),
                *left_out,
                *also(tuple(item.topic for item in turn.requests), turn.thread),
                *((STYLE,) if terse else ()),
                *(() if turn.message.says(OTHER_BOAT) else charger_settings.kept(text, turn.thread.cues)),
                *seasons.kept(text, turn.thread.cues),
                *shared_engine.kept(text),
                *in_a_place.kept(self.case(turn), (item.topic for item in answers)),
            ),
            turns=turn.thread.turns + 1,
            answered=seen or thread.answered,
            worked=kept(turn.thread.worked, answers, turn.thread.facts),
        )
        token = self.signer.token(after) if self.signer else ""
        met = {"text": text, "thread": thread.as_dict(), "given": [packed(item) for item in given]}
        return Reply(
            self.new_id(),
            token,
            handed_on(triage(answers)) if left or chased or (again and again.endswith(READ_TOO)) else triage(answers),
            answers,
            " ".join(filter(None, (chased, again or notice, left))) or None,
            tuple(why(turn, answers)),
            terse,
            left,
            met if thread.turns or thread.facts or given else None,
        )

    def taken_up(self, text: str, thread: Thread, given: Sequence[Known] = ()) -> Turn:
        """Read a message into its thread and find its questions."""
        models = tuple(model.name for model in self.house.models.values())
        said = [stated(item) for item in reversed(list(thread.facts.values()))]  # "and 200?" speaks of the newest
        message = read(text, models=models, expecting=thread.asks, said=said, likely=likely(thread))
        message = in_its_rating(message, thread.worked)
        printed = label.reading(message, thread)
        beliefs = () if printed else misbeliefs.found(message)
        message, claimed = (printed, ()) if printed else claims.unclaimed(message, misbeliefs.appeals(beliefs))
        asked = partial(wanted, message, thread)
        requests = only_asked(message, lambda part: wanted(read(part, models=models, said=said), thread), asked)
        requests = requests or asked()
        beside = () if {item.topic for item in requests} - {"hazard", "unclear"} else asides(message, models, said)
        if not printed:
            message = by_topic(message, [topic(item.topic) for item in requests if item.topic in names()])
            message = as_given(dipped(message, thread), thread)
        message, thread = named_by_size(message, thread)
        in_place = not printed and puts_in(message, thread)
        if in_place:
            message, thread = of_its_own(message), self.as_built(thread)
        told = [*(known(item) for item in message.stated), *given]
        another = any(message.says(cue) for cue in ANOTHER) or stands_elsewhere(message, thread)
        joined = any(item.fact == "bank.layout" for item in message.stated)  # joined to the one aboard, which stays
        if in_place or (another and not joined):
            thread = replace(thread, cues=let_go(thread.cues))
        elif aged_otherwise(message, thread):
            thread = replace(thread, cues=let_go(thread.cues, TESTED))
        thread = bought_new(message, of_another_boat(message, thread))
        thread = spoken_of_first(message, thread)
        after = thread.told(
            told,
            another=another,
            in_place=in_place,
            alike=message.says(POINTED_AT),
            other_load=has_its_load(message, elsewhere=message.says(OTHER_BOAT)),
        )
        if not (another or in_place):
            after = with_the_other(thread, with_opposed(thread, after, message), message)
        if printed:
            requests = (Request(label.LABEL.name, (0, len(text)), evidence=("a label as it stands",)),)
        turn = Turn(message, after, requests, (), None, beside, printed is not None, beliefs, claimed)
        found = signs(self.case(turn), message, {item.topic for item in requests})
        spoken = bool(found or thread.dangers) or "hazard" in thread.topics  # danger was named, whatever its status
        if text.strip() and not printed and not spoken:
            alarm = alarmed(message, thread.topics)
            found = (*found, f"{UNNAMED}:present") if alarm else found
            turn = replace(turn, alarm=alarm)
        stands = standing(found, () if message.says(OTHER_BOAT) else still(thread.dangers, self.case(turn)))
        if over(found, (item.topic for item in requests), message) and not stands:
            on = tuple(Request(name, (0, len(text))) for name in thread.topics if name != HAZARD)
            turn = replace(turn, requests=on)
        if requests and not found and {item.topic for item in requests} <= {"hazard", "unclear"}:
            found = spoken_of(thread)  # "and the one beside it?" of a danger is no new question
        return replace(turn, thread=replace(after, dangers=stands), signs=found)

    def left_open(self, turn: Turn, answers: Sequence[Answer]) -> list[str]:
        """The questions of a message that none of its answers speaks of; beside a danger, or where none is sure of
        anything, a technician reads the whole of it."""
        topics = {item.topic for item in answers}
        if turn.label or not topics or topics & {"unclear", "hazard"} or not questions(turn.message.text):
            return []
        return left_open(turn.message, evidence(turn.message, turn.thread.topics), topics)

    def as_built(self, thread: Thread) -> Thread:
        """The thread with the volts that its batteries make together, which stay when another is put in their place."""
        volts = Case(thread.facts, self.house).get("bank.built_voltage")
        if volts is None or VOLTS in thread.facts:
            return thread
        return replace(thread, facts={**thread.facts, VOLTS: Known(VOLTS, volts, "thread", say.symbol(VOLTS))})

    def answers(self, turn: Turn) -> tuple[Answer, ...]:
        """The answers to a message in its order, hazards first, each question once."""
        if not turn.requests and not turn.signs:  # thanks, a greeting: nothing of the thread is told again
            polite = self.answer("unclear", self.case(replace(turn, thread=Thread())))
            return (polite,) if turn.message.text.strip() else ()
        hazard = hazard_case(self.case(turn), turn.signs, turn.thread.dangers, turn.thread.cues)
        found = [self.answer("hazard", hazard)] if hazard else []
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
            bars = stop and not other
            case = self.case(turn, bars, found)
            case = another_battery.own_case(case, turn.message) if other else case
            case = apart(case, request, turn.requests, turn.message)
            case = without_those_to_come(case, request, turn.requests, turn.message)
            case = of_its_moment(own(case, request, turn.requests, turn.message), request.topic)
            answer = self.answer(name, case, label.LABEL if turn.label else None)
            sums = misbeliefs.sums(turn.beliefs, turn.claimed)
            before = turn.thread.cues
            answer = as_put(queried(answer, turn.message), turn.message, request, turn.requests, sums, before)
            if answer.headline in {item.headline for item in found}:  # two readings that oppose each other, say
                continue
            found.append(withheld(answer, hazard_of(found), turn.message.text, stands) if bars else answer)
        if stop:
            below = (self.answer(item.topic, self.case(turn, hazard=True)) for item in turn.asides)
            found += [answer for answer in below if harmless(answer)]
        else:
            found = misbeliefs.answered(found, turn.beliefs, turn.message, self.case(turn))
        if lost_for_an_answer(turn.message, turn.thread):  # what asked nothing is not told again
            found = [item for item in found if item.asks or item.verdict == "stop"] or found
        found = told_already.without(without_idle(found, turn), turn.message, turn.thread)
        return _with_unused(list(once_told(told_once(found))), turn)

    def case(self, turn: Turn, hazard: bool = False, found: Sequence[Answer] = ()) -> Case:
        """A fresh case of a turn: its facts, the house, its cues, and what the answers `found` so far worked out."""
        return Case(
            stated=turn.thread.facts,
            house=self.house,
            second=turn.thread.second,
            cues=frozenset(turn.cues),
            text=turn.message.text,
            show=say.fact,
            denied=denied_in(turn.message),
            hazard=hazard,
            asked=turn.thread.asks,
            before=turn.thread.topics,
            beside=tuple(item.topic for item in turn.requests),
            worked=kept(turn.thread.worked, found, turn.thread.facts),
        )

    def answer(self, name: str, case: Case, how: Topic | None = None) -> Answer:
        """The finished answer of one topic. A topic that fails hands over to a technician; the others stand."""
        try:
            return finished(how or topic(name), case)
        except Exception as error:  # whatever it is, the customer gets a person, not a traceback
            self.fault(name, error)
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


@cache
def _lasting() -> frozenset[str]:
    """Topics that a later turn may go on with."""
    return frozenset(names()) - {"unclear", "other-desk"}


def why(turn: Turn, answers: Iterable[Answer]) -> Iterable[str]:
    """How a message was understood: facts, cues, points, and the steps of each answer."""
    for item in turn.message.stated:
        yield f"fact   {item.fact} = {item.value} ({item.how}: {item.text!r}{', second' if item.of > 1 else ''})"
        if item.how == HOW:
            yield f"       {', '.join(why_weighed(turn.message.text, item)[:SHOWN])}"
    for danger in turn.message.dangers:
        yield f"danger {danger.family}, {danger.status}: {danger.text!r}"
    if turn.alarm:
        yield f"danger unnamed, present: {turn.alarm.why()}"
    yield "cues   " + ", ".join(f"{cue.name} {cue.text!r}" for cue in turn.message.cues)
    yield from (f"belief {item.text('id')}{', denied' * item.denied}" for item in turn.beliefs)
    for request in (*turn.requests, *turn.asides):
        yield f"topic  {request.topic}: {request.why()}"
    for answer in answers:
        yield from (f"step   {answer.topic}: {step.say} [{', '.join(step.cites)}]" for step in answer.working)


@cache
def default_desk() -> Leadsman:
    """The desk under the demo house; its threads hold as long as the process lives."""
    return Leadsman(load(), Signer(secrets.token_hex(32)))
