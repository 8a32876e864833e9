"""The answer to "no idea": how to find out with what is on board, or the best that is true without the fact.

Never the same question again: facts.toml names what serves in place of a fact, and who does not know that either
is asked for photos that a technician can read.
"""

from __future__ import annotations

from dataclasses import replace

from grammar.facts import facts
from grammar.reading import Message
from service import say
from service.case import Case
from service.reply import Answer, Asked
from service.topic import Topic
from service.turns.thread import Thread

NO_IDEA = "note:no_idea"
GONE = "detail:label_gone"  # where they were sent to look
AGAIN = "detail:no_idea_again"  # they did not know the fact before either
UNKNOWN = "unknown:"
FEW = 12  # words of a message that says no more than that something is not known
DENIALS = frozenset(
    ("no", "not", "none", "nothing", "nowhere", "isnt", "arent", "doesnt", "dont", "didnt", "cant", "cannot", "couldnt")
)
LOOKED_AT = frozenset(  # where it would stand, how it would, and what it would be
    (
        *("label", "labels", "sticker", "plate", "anywhere", "nowhere", "printed", "marked", "stamped", "written"),
        *("stated", "listed", "say", "says", "show", "shows", "give", "gives", "find", "see", "read"),
        *("cca", "ca", "mca", "ah", "rating", "ratings", "figure", "number", "date", "limit", "limits"),
    )
)
LOAD_TEST, ONE = 9.6, 12.0  # volts: the least for each 12 V of a lead battery in order, at 21 °C
PHOTOS = (
    "Then send us photos of the battery, the motor's plate and the cables between them: one of our technicians will "
    "find {fact} from those."
)


def not_known(message: Message, thread: Thread) -> bool:
    """Whether a message says that what the desk asked for is not known, or does not stand where it was looked for:
    "no CCA on the label", "it doesn't say"."""
    if message.says(NO_IDEA):
        return True
    if thread.asks and message.says(GONE) and "?" not in message.words and len(message.words) <= FEW:
        return True
    words, told = set(message.words), {item.fact for item in message.stated}
    if not thread.asks or "?" in words or len(message.words) > FEW or not told.isdisjoint(thread.asks):
        return False
    named = {word for fact in thread.asks for word in facts()[fact].label.lower().split()}
    return bool(words & DENIALS) and bool(words & (named if told else named | LOOKED_AT))


def unknown(thread: Thread, cues: tuple[str, ...]) -> tuple[str, ...]:
    """The cues of what they do not know, such as "unknown:battery.cca", for the rest of the thread."""
    known = tuple(cue for cue in thread.cues if cue.startswith(UNKNOWN))
    if NO_IDEA not in cues or not thread.asks:
        return known
    again = (AGAIN,) if NO_IDEA in thread.cues else ()
    return (*known, f"{UNKNOWN}{thread.asks[0]}", *again)


def helped(topic: Topic, case: Case, answer: Answer) -> Answer:
    """The answer to one who does not know what was asked; any other answer as it is."""
    open_now = answer.verdict in ("needs-facts", "no", "information") and answer.asks and case.asked
    if not (case.says(NO_IDEA) and open_now):
        return _unasked(case, answer)
    lacking = _spoken_of(case, answer)
    spec = facts()[lacking]
    if case.says(AGAIN):
        label = facts()[_on_photos(case, lacking)].label
        head = PHOTOS.format(fact=f"the {label}")
        head = f"{head.removesuffix('.')}; {topic.meanwhile}." if topic.meanwhile else head
        return replace(answer, headline=head, asks=_asked_before(answer), route="technician")
    if lacking not in case.asked or not spec.unknown:
        return answer
    if spec.instead and all(case.said(name) is not None for name in spec.instead):
        return answer  # what serves in its place is told already
    unknown = spec.unknown_told if spec.told and case.says(spec.told) else spec.unknown
    return replace(answer, headline=_told(case, unknown), asks=_instead(topic, case, answer, lacking))


def not_told(case: Case, asked: Asked) -> Asked:
    """The question for a fact without what was told of it already: no caps are looked for on a sealed battery."""
    spec = facts()[asked.fact]
    anew = spec.told and case.says(spec.told) and asked.where == spec.where
    return replace(asked, where=spec.where_told) if anew else asked


def _on_photos(case: Case, lacking: str) -> str:
    """What photos can show of all that they do not know: a label, not a reading."""
    names = sorted(cue.removeprefix(UNKNOWN) for cue in case.cues if cue.startswith(UNKNOWN))
    shown = (name for name in (lacking, *names) if not name.startswith("reading."))
    return next(shown, lacking)


def _unasked(case: Case, answer: Answer) -> Answer:
    """The answer without a question that they could not answer before; a technician where nothing else is asked."""
    left = tuple(item for item in answer.asks if not case.says(f"{UNKNOWN}{item.fact}"))
    if left == answer.asks or answer.verdict != "needs-facts":
        return answer
    return replace(answer, asks=left) if left else replace(answer, asks=(), route="technician")


def _spoken_of(case: Case, answer: Answer) -> str:
    """The fact that they do not know: one that they name ("dunno the CCA"), else the first that is asked for."""
    words = set(case.text.lower().split())
    named = (item.fact for item in answer.asks if words & set(facts()[item.fact].label.lower().split()))
    return next(named, answer.asks[0].fact)


def _told(case: Case, unknown: str) -> str:
    draws = [model.running for model in case.house.models.values()] if case.house else []
    ours = f" Ours draw {say.between(min(draws), max(draws), 'A', 0)}." if draws else ""
    if "{floor}" in unknown:
        unknown = unknown.replace("{floor}", say.volts(LOAD_TEST * float(case.get("bank.voltage", ONE)) / ONE))
    return unknown.replace("{draws}", ours)


def _instead(topic: Topic, case: Case, answer: Answer, lacking: str) -> tuple[Asked, ...]:
    """The facts that serve as well, then what else was asked; where there is neither, the fact itself."""
    names = [name for name in facts()[lacking].instead if case.said(name) is None]
    serving = tuple(topic.ask(name, topic.likely.get(name, ())) for name in names)
    others = tuple(item for item in answer.asks if item.fact != lacking and item.fact not in names)
    return (*serving, *others) or _asked_before(answer)


def _asked_before(answer: Answer) -> tuple[Asked, ...]:
    """What is still open, without where to look: they have looked there, or the headline tells it."""
    return tuple(replace(item, where="") for item in answer.asks)
