"""An answer's chart in characters: a line or bars, the limits across it, and where the customer's own value stands."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from service import say

HEIGHT = 9  # rows of a line chart
FRAME = 10  # columns of numbers before a line chart
MOST = 60  # columns of a line chart: wider tells no more
PLAIN = str.maketrans({"█": "#", "┆": "|", "│": "|", "└": "`", "┘": "'", "─": "-", "╌": "-", "•": "*", "◆": "X"})
POINTS = "•+x"  # of the first series, the second, the third

Plot = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Ruler:
    """A range of values over so many columns or rows."""

    low: float
    high: float
    cells: int

    def at(self, value: float) -> int:
        """The cell of a value; values outside stand in the last one."""
        share = (value - self.low) / (self.high - self.low) if self.high > self.low else 0.5
        return round(min(1.0, max(0.0, share)) * (self.cells - 1))


def chart(plot: Plot | None, width: int = 78, ascii_only: bool = False) -> list[str]:
    """The chart as lines no wider than `width`; none where there is no chart or it cannot be drawn."""
    draw = {"line": _line, "bars": _bars}.get(plot["kind"]) if plot else None
    if plot is None or draw is None:
        return []
    try:
        lines = [str(plot["title"]), *draw(plot, width)]
    except (LookupError, TypeError, ValueError):  # a picture that cannot be drawn must not cost the answer
        return []
    cut = [line.replace(say.NB, " ").rstrip()[:width] for line in lines]
    return [line.translate(PLAIN) for line in cut] if ascii_only else cut


def _bars(plot: Plot, width: int) -> Iterator[str]:
    rows, unit, limits = _rows(plot), plot["y"]["unit"], _limits(plot)
    names = max(len(name) for name, _ in rows)
    texts = [_value(value, unit) for _, value in rows]
    most = max([value for _, value in rows] + [value for _, value in limits])
    ruler = Ruler(0.0, most, width - names - max(map(len, texts)) - 5)
    own = plot.get("mark", {}).get("x")
    for (name, value), text in zip(rows, texts, strict=True):
        cells = list("█" * (ruler.at(value) + 1) + " " * (ruler.cells - ruler.at(value) - 1))
        for _, limit in limits:
            cells[ruler.at(limit)] = "┆"
        yield f"{'◆' if name == own else ' '} {name:>{names}} {''.join(cells)} {text}"
    for label, limit in limits:
        yield " " * (names + 3) + _hung(ruler.at(limit), f"{label} {_value(limit, unit)}", ruler.cells)


def _hung(at: int, said: str, cells: int) -> str:
    """A text under a column: to its right, else to its left."""
    if at + 2 + len(said) <= cells:
        return " " * at + f"└ {said}"
    return f"{said} ┘".rjust(at + 1)


def _rows(plot: Plot) -> list[tuple[str, float]]:
    """Name and value of each bar, whichever way the chart gives them."""
    rows: list[tuple[str, float]] = []
    for item in plot["series"]:
        if "values" in item:
            rows += list(zip(map(str, plot["x"]["values"]), map(float, item["values"]), strict=True))
        else:
            rows += [(x if isinstance(x, str) else str(item["label"]), float(y)) for x, y in item["points"]]
    return rows


def _limits(plot: Plot) -> list[tuple[str, float]]:
    return [(str(item["label"]).replace(say.NB, " "), float(item["value"])) for item in plot["limits"]]


def _line(plot: Plot, width: int) -> Iterator[str]:
    series = [[(float(x), float(y)) for x, y in sorted(item["points"])] for item in plot["series"]]
    limits, mark, unit = _limits(plot), plot.get("mark"), plot["y"]["unit"]
    heights = [y for line in series for _, y in line] + [value for _, value in limits] + ([mark["y"]] if mark else [])
    along = [x for line in series for x, _ in line]
    across = Ruler(min(along), max(along), min(width - FRAME - 2, MOST))
    up = Ruler(min(heights), max(heights), HEIGHT)
    grid = [[" "] * across.cells for _ in range(HEIGHT)]
    for _, value in limits:
        grid[up.at(value)][:] = "╌" * across.cells
    for line, point in zip(series, POINTS, strict=False):
        _trace(grid, line, across, up, point)
    if mark:
        grid[up.at(mark["y"])][across.at(mark["x"])] = "◆"
    for label, value in limits:
        if label != _value(value, unit):
            _named(grid[up.at(value)], f" {label} ")
    named = {up.at(value): _value(value, unit) for value in (up.low, up.high, *(value for _, value in limits))}
    for row in reversed(range(HEIGHT)):
        yield f"{named.get(row, ''):>{FRAME}} │{''.join(grid[row])}"
    yield " " * FRAME + " └" + "─" * across.cells
    yield _foot(plot, across)
    if mark:
        yield f"{'':{FRAME}}  ◆ {mark['label']}: {_value(mark['y'], unit)} at {_value(mark['x'], plot['x']['unit'])}"


def _named(row: list[str], name: str) -> None:
    """Write a limit's name on its row, at the right end or the left, where nothing else stands."""
    for start in (len(row) - len(name) - 1, 1):
        if start > 0 and set(row[start : start + len(name)]) == {"╌"}:
            row[start : start + len(name)] = name
            return


def _trace(grid: list[list[str]], line: Sequence[tuple[float, float]], across: Ruler, up: Ruler, point: str) -> None:
    """A line through its points, every column between the ends filled."""
    step = (across.high - across.low) / max(across.cells - 1, 1)
    for column in range(across.cells):
        x = across.low + column * step
        for (x1, y1), (x2, y2) in pairwise(line):
            if x1 - 1e-9 <= x <= x2 + 1e-9:
                grid[up.at(y1 if x2 == x1 else y1 + (y2 - y1) * (x - x1) / (x2 - x1))][column] = point
                break


def _foot(plot: Plot, across: Ruler) -> str:
    """The ends of the axis and its name between them."""
    unit = plot["x"]["unit"]
    first, last = _value(across.low, unit), _value(across.high, unit)
    label = str(plot["x"]["label"])
    name = ("" if last.endswith(label) else label).center(max(across.cells - len(first) - len(last), 0))
    return f"{'':{FRAME}}  {first}{name}{last}"


def _value(value: float, unit: str) -> str:
    small = abs(value) < 10
    volts = 2 if abs(value) < 2 else 1
    places = {"V": volts, "%": 0, "C": 0, "d": 0, "A": None if small else 0, "min": None if small else 0}.get(unit)
    return say.quantity(float(value), unit, places).replace(say.NB, " ")
