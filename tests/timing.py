"""How long a call takes, so that a busy machine and the collector do not show in it."""

from __future__ import annotations

import gc
import time
from collections.abc import Callable

QUIET = 0.035  # seconds that the reference takes on a quiet machine of ours


def seconds(call: Callable[[], object], times: int = 3) -> float:
    """The processor time of the quickest of a few calls, garbage collection off."""
    took = []
    gc.collect()
    gc.disable()
    try:
        for _ in range(times):
            begin = time.process_time()
            call()
            took.append(time.process_time() - begin)
    finally:
        gc.enable()
    return min(took)


def pace() -> float:
    """How much slower this machine is just now than a quiet one; 1 where it is not."""
    return max(1.0, seconds(_reference) / QUIET)


def _reference() -> int:
    seen, total = {}, 0
    for number in range(200_000):
        seen[number & 1023] = number
        total += seen.get((number * 7) & 1023, 0) & 3
    return total
