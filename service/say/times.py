"""Times as people write them: how long something takes, and how long it lasts, which is rounded down."""

from __future__ import annotations

import math

from service.say.numbers import NB, number

NEARLY = 0.05  # minutes


def duration(minutes: float) -> str:
    """A time as people say it.

    >>> [duration(m).replace(NB, " ") for m in (0.5, 6.4, 60, 150, 3000, 20000)]
    ['30 seconds', '6 minutes', '1 hour', '2.5 hours', '50 hours', '14 days']
    """
    for size, name, places in ((1 / 60, "second", 0), (1, "minute", 0), (60, "hour", 1), (1440, "day", 0)):  # noqa: B007
        count = minutes / size
        if count < {"second": 99.5, "minute": 59.5, "hour": 71.95}.get(name, math.inf):
            break
    text = number(count, places).removesuffix(".0")
    return f"{text}{NB}{name}{'' if text == '1' else 's'}"


def lasting(minutes: float) -> str:
    """A time that something lasts, rounded down; what is a whole minute to one decimal is that minute.

    >>> [lasting(m).replace(NB, " ") for m in (7.7, 13.75, 26.997, 82.6, 59.9, 0.7)]
    ['7 minutes', '13 minutes', '27 minutes', '1.3 hours', '59 minutes', '42 seconds']
    """
    if minutes < 2:
        return duration(minutes)
    return duration(math.floor(minutes + NEARLY) if minutes < 60 else math.floor(minutes / 6 + 1e-6) * 6)


def between_times(low: float, high: float, given: bool = False) -> str:
    """Two times in minutes as people say them: "11 to 17 minutes", "42 seconds to 4 minutes"; what is `given` rounds
    down.

    >>> between_times(10.9, 17.2).replace(NB, " "), between_times(0.7, 3.8).replace(NB, " ")
    ('11 to 17 minutes', '42 seconds to 4 minutes')
    """
    first, last = (lasting(low), lasting(high)) if given else (duration(low), duration(high))
    if first == last:
        return first
    number_, _, unit = first.partition(NB)
    return f"{number_ if last.endswith(unit) else first} to {last}"
