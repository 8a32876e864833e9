"""What a lithium bank may give, against what a motor takes: the limits of its management systems."""

from __future__ import annotations

from service.calculators.units import Ampere, AmpereHour, Celsius


def in_reserve(limit: Ampere, parallel: int, count_on: float) -> Ampere:
    """The part of a bank's limit that may be relied on: all of one battery's, `count_on` of several in parallel.

    >>> in_reserve(200, 1, 0.8), in_reserve(200, 2, 0.8)
    (200, 160.0)
    """
    return limit if parallel <= 1 else limit * count_on


def cold_share(temperature: Celsius, freezing: Celsius, lowest: Celsius, share: float) -> float:
    """What is left of the continuous limit in the cold: all, `share` of it under freezing, nothing under lowest.

    >>> [cold_share(t, 0, -20, 0.5) for t in (10, 0, -8, -21)]
    [1.0, 1.0, 0.5, 0.0]
    """
    if temperature < lowest:
        return 0.0
    return share if temperature < freezing else 1.0


def judged(current: Ampere, limit: Ampere, parallel: int, count_on: float) -> str:
    """yes within what may be relied on, marginal within the whole limit, else no.

    >>> [judged(i, 300, 2, 0.8) for i in (240, 250, 301)]
    ['yes', 'marginal', 'no']
    """
    if current > limit:
        return "no"
    return "yes" if current <= in_reserve(limit, parallel, count_on) else "marginal"


def stated_limits(
    running: Ampere, inrush: Ampere, continuous: Ampere, peak: Ampere | None, parallel: int, count_on: float
) -> str:
    """The verdict where the continuous limit is stated: yes, marginal, no, or "peak" where that must be known.

    All of the bank. Running is held against the continuous limit, the first instant against the peak limit, or
    against the continuous one where it stays within that.

    >>> stated_limits(160, 240, 200, None, 1, 0.8), stated_limits(160, 240, 200, 300, 1, 0.8)
    ('peak', 'yes')
    """
    steady = judged(running, continuous, parallel, count_on)
    if steady == "no":
        return "no"
    first = judged(inrush, max(continuous, peak or 0.0), parallel, count_on)
    if first == "no":
        return "no" if peak is not None else "peak"
    return first if steady == "yes" else steady


def by_capacity(
    running: Ampere,
    inrush: Ampere,
    capacity: AmpereHour,
    parallel: int,
    *,
    per_hour: float,
    too_much: float,
    plenty: float,
    count_on: float,
) -> str:
    """The verdict where only the capacity is known: no over `too_much` x it, yes or marginal within `plenty` x it.

    In between "limits": the label must be read. `per_hour` is the assumed limit in A for each Ah; `too_much` and
    `plenty` are shares of that limit.

    >>> rule = dict(per_hour=1.0, too_much=1.5, plenty=0.5, count_on=0.8)
    >>> [by_capacity(i, 1.5 * i, 300, 1, **rule) for i in (80, 250, 500)]
    ['yes', 'limits', 'no']
    """
    assumed = per_hour * capacity
    if running > too_much * assumed:
        return "no"
    easily = judged(inrush, plenty * assumed, parallel, count_on)
    return "limits" if easily == "no" else easily
