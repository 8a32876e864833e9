"""How long a call takes, so that a busy machine and the collector do not show in it."""

from __future__ import annotations

import gc
import time
from collections.abc import Callable


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
