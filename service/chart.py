"""The small charts of readings and care: a line or bars, the limits, and where the customer's own value stands."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

Axis = tuple[str, str]  # label, unit
Point = Sequence[float | str | None]


def chart(
    kind: str,
    title: str,
    x: Axis,
    y: Axis,
    series: Iterable[tuple[str, Iterable[Point]]],
    limits: Iterable[tuple[str, float]] = (),
    mark: tuple[str, float | str, float] | None = None,
) -> dict[str, Any]:
    """A chart as the contract's plot. Limits are values on y."""
    drawn: dict[str, Any] = {
        "kind": kind,
        "title": title,
        "x": {"label": x[0], "unit": x[1]},
        "y": {"label": y[0], "unit": y[1]},
        "series": [{"label": label, "points": [list(point) for point in points]} for label, points in series],
        "limits": [{"label": label, "value": value} for label, value in limits],
    }
    if mark:
        drawn["mark"] = {"label": mark[0], "x": mark[1], "y": mark[2]}
    return drawn
