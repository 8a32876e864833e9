"""One message as it was taken up, and the cues that it goes by in its conversation."""

from __future__ import annotations

from dataclasses import dataclass

from grammar.dangers.unbuilt import to_be_wired
from grammar.reading import Message, Stated
from service.judgements.at_once import MORE
from service.routing.request import Request
from service.told import its_years, no_second
from service.turns.held import elsewhere, held, let_go, of_its_charger, of_its_place, still_told
from service.turns.no_idea import NO_IDEA, not_known, unknown
from service.turns.thread import Thread
from service.turns.wanted import OTHER_SIZES, lost_for_an_answer
from service.wording.misbeliefs import Belief

NO_FUSE = "detail:no_fuse"  # of a circuit that is there
OWN = "detail:own_battery"  # and none that is only saved
KIND = "detail:kind_"  # of the batteries that are weighed


@dataclass(frozen=True, slots=True)
class Turn:
    """One message as it was taken up: what was read, the thread it met, and the questions found in it."""

    message: Message
    thread: Thread
    requests: tuple[Request, ...]
    signs: tuple[str, ...] = ()  # of danger, as "family:status"
    alarm: Request | None = None  # the clause that tells of a danger which none of its words names
    asides: tuple[Request, ...] = ()  # questions beside a danger, answered where the answer harms nobody
    label: bool = False  # the message is a battery's label and asks nothing
    beliefs: tuple[Belief, ...] = ()  # what many believe, where the message asks of it
    claimed: tuple[Stated, ...] = ()  # figures that somebody claims, and that are no facts

    @property
    def cues(self) -> tuple[str, ...]:
        """The cues of the message; where it only goes on with the last question, that one's details as well."""
        own = tuple(self.message.by_name)
        if NO_FUSE in own and to_be_wired(self.message.text):
            own = tuple(name for name in own if name != NO_FUSE)
        if OWN in own and no_second.saved(self.message.text):
            own = tuple(name for name in own if name != OWN)
        own = (*own, *((MORE,) if any(item.of > 2 for item in self.message.stated) else ()))
        if lost_for_an_answer(self.message, self.thread):  # "not sure how many it allows" asks for nothing
            own = tuple(name for name in own if not name.startswith("request:"))
        own = (*own, *((NO_IDEA,) if not_known(self.message, self.thread) and NO_IDEA not in own else ()))
        own = (*own, *unknown(self.thread, own))
        own = (*own, *held(self.thread, own, self.message.text), *still_told(self.thread, own))
        own = tuple(dict.fromkeys((*own, *of_its_charger(self.thread), *of_its_place(self.thread, own))))
        if "battery.chemistry" not in self.thread.facts and not any(name.startswith(KIND) for name in own):
            own = (*own, *(name for name in self.thread.cues if name.startswith(KIND)))  # "which charges fastest?"
        own = (*own, *its_years.kept("", self.thread.cues))
        goes_on = {item.topic for item in self.requests} <= set(self.thread.topics)
        if not goes_on or any(name.startswith("request:") for name in own):
            return own
        old = (name for name in let_go(self.thread.cues) if name.startswith(("detail:", "request:")))
        if not OTHER_SIZES.isdisjoint(own):  # "in mm2?" after "which AWG"
            old = (name for name in old if name not in OTHER_SIZES)
        return tuple(dict.fromkeys((*own, *elsewhere(own, old, self.message.text))))
