"""What a thread carries on from a turn: its topics, what was asked back, cues, and what was worked out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache

from service.hazards import DANGER
from service.house import House
from service.judgements import case_sizes, in_a_place
from service.reply import Answer
from service.told import charger_settings, its_years, seasons, shared_engine
from service.topics import names
from service.turns import told_already
from service.turns.case_of import case_of
from service.turns.charged_in_thread import also
from service.turns.thread import Thread
from service.turns.turn import Turn
from service.turns.wanted import OTHER_BOAT
from service.turns.worked import kept
from service.wording import compared
from service.wording.opening import kept as kept_put
from service.wording.shorthand import STYLE


def carried_on(turn: Turn, before: Thread, answers: Sequence[Answer], house: House, said: tuple[int, bool]) -> Thread:
    """The thread after a turn. `before`: as it came in; `said`: the fingerprint of what was answered last, and whether
    it was in shorthand."""
    seen, terse = said
    left_out = told_already.stand(turn.requests, answers, turn.message, turn.thread)
    stand = map(told_already.topic_of, left_out)
    return replace(
        turn.thread,
        topics=tuple(name for name in (*(item.topic for item in answers), *stand) if name in _lasting())
        or turn.thread.topics,
        asks=tuple(dict.fromkeys(asked.fact for item in answers for asked in item.asks)),
        cues=(
            *turn.cues,
            *(f"{DANGER}{sign}" for sign in turn.signs),
            *kept_put(turn.message, turn.requests, before.cues),
            *compared.kept(answers),
            *told_already.kept(answers),
            *left_out,
            *also(tuple(item.topic for item in turn.requests), turn.thread),
            *((STYLE,) if terse else ()),
            *(() if turn.message.says(OTHER_BOAT) else charger_settings.kept(turn.message.text, turn.thread.cues)),
            *seasons.kept(turn.message.text, turn.thread.cues),
            *its_years.kept(turn.message.text, turn.thread.cues if "replacement" in turn.thread.topics else ()),
            *shared_engine.kept(turn.message.text),
            *in_a_place.kept(case_of(turn, house), (item.topic for item in answers)),
            *case_sizes.kept(case_of(turn, house), (item.topic for item in answers)),
        ),
        turns=turn.thread.turns + 1,
        answered=seen,
        worked=kept(turn.thread.worked, answers, turn.thread.facts),
    )


@cache
def _lasting() -> frozenset[str]:
    """Topics that a later turn may go on with."""
    return frozenset(names()) - {"unclear", "other-desk"}
