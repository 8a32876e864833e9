"""What a conversation was told once of a battery and no fact holds: that it has no caps, how it did in a test.

It stays true in later turns, until they tell otherwise or speak of another battery.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from service.thread import Thread

NO_CAPS, HAS_CAPS = "detail:no_caps", "detail:has_caps"
PASSED, FAILED = "detail:passed_test", "detail:failed_test"
OTHERWISE = {NO_CAPS: HAS_CAPS, HAS_CAPS: NO_CAPS, PASSED: FAILED, FAILED: PASSED}
TESTED = frozenset({PASSED, FAILED})
OTHER_ONE = re.compile(r"\b(?:other|second|next) (?:one|of (?:them|the two))\b", re.IGNORECASE)


def held(thread: Thread, own: Iterable[str], text: str = "") -> tuple[str, ...]:
    """The cues of earlier turns that still hold beside a turn's own; one of a pair is tested for itself."""
    told, beside = set(own), TESTED if OTHER_ONE.search(text) else frozenset()
    kept = (cue for cue in OTHERWISE if cue in thread.cues and OTHERWISE[cue] not in told)
    return tuple(cue for cue in kept if cue not in beside)


def let_go(cues: Iterable[str]) -> tuple[str, ...]:
    """The cues of a thread without those that spoke of a battery no longer spoken of."""
    return tuple(cue for cue in cues if cue not in OTHERWISE)
