"""An answer's chart as inline SVG: hatched ground is out of limits, buff is only just, the lead is where you touch.

Only classes and presentation attributes, no style: the page's policy allows no other. Every text is escaped.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup, escape

from service import say

WIDTH, LEFT, RIGHT, TOP, BOTTOM = 360, 50, 346, 26, 206
ROW, NAMES = 40, 104  # of bars: height of a row, width of their names
BAD = {  # on which side of the limits it goes wrong, by topic and kind; without one the limits are lines only
    ("run-check", "line"): "below",
    ("run-check", "bars"): "above",
    ("rest-voltage", "line"): "below",
    ("load-voltage", "bars"): "below",
    ("run-time", "line"): "below",
    ("storage", "line"): "below",
    ("standing-drain", "line"): "below",
    ("cable-size", "bars"): "above",
    ("voltage-drop", "bars"): "above",
}
Plot = Mapping[str, Any]
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Scale:
    """A range of values over a stretch of the picture."""

    low: float
    high: float
    start: float
    end: float

    def at(self, value: float) -> float:
        """Where a value stands; values outside stand at the end."""
        share = (value - self.low) / (self.high - self.low) if self.high > self.low else 0.5
        return round(self.start + (self.end - self.start) * min(1.0, max(0.0, share)), 1)


def picture(plot: Plot | None, topic: str, key: str) -> Markup:
    """The chart of an answer; empty where there is none or it is of a kind not known here."""
    if not plot or plot["kind"] not in ("line", "bars"):
        return Markup("")
    bad = BAD.get((topic, plot["kind"]), "")
    if topic == "rest-voltage" and plot.get("mark") and len(plot["limits"]) == 2:
        drawn, height, told = _charge_scale(plot)
    elif plot["kind"] == "bars":
        drawn, height, told = _bars(plot, bad)
    else:
        drawn, height, told = _line(plot, bad)
    head = Markup('<svg class="plot" viewBox="0 0 {} {}" role="img" aria-labelledby="p-{}-t p-{}-d">').format(
        WIDTH, height, key, key
    )
    names = Markup('<title id="p-{}-t">{}</title><desc id="p-{}-d">{}</desc>').format(key, plot["title"], key, told)
    return head + names + Markup("").join(drawn) + Markup("</svg>")


def _line(plot: Plot, bad: str) -> tuple[list[Markup], int, str]:
    series = [(item["label"], [(float(x), float(y)) for x, y in item["points"]]) for item in plot["series"]]
    mark, unit, x_unit = plot.get("mark"), plot["y"]["unit"], plot["x"]["unit"]
    points = [point for _, line in series for point in line]
    values = [y for _, y in points] + [item["value"] for item in plot["limits"]] + ([mark["y"]] if mark else [])
    room = (max(values) - min(values)) * 0.08
    low = 0.0 if unit == "%" else min(values) - room
    across = Scale(min(x for x, _ in points), max(x for x, _ in points), LEFT, RIGHT)
    up = Scale(low, max(values) + (0 if unit == "%" else room), BOTTOM, TOP)
    falling = points[0][1] > points[-1][1]
    drawn = _zones(plot["limits"], up, bad, falling, unit)
    drawn.append(_path("axis", f"M{LEFT} {TOP - 6}V{BOTTOM}H{RIGHT}"))
    ends = [point[1] for point in (points[0], points[-1])]
    drawn += _ticks([item["value"] for item in plot["limits"]] + ends, up, unit)
    drawn.append(_text(2, 13, _axis(plot["y"])))
    drawn += _feet([points[0][0], points[-1][0]], mark, across, x_unit)
    drawn.append(_text(RIGHT, BOTTOM + 38, _axis(plot["x"]), "end"))
    for label, line in series:
        drawn.append(_path("have", "M" + "L".join(f"{across.at(x)} {up.at(y)}" for x, y in line)))
        drawn.append(_name(label, line, across, up))
    if mark:
        drawn += _touch(mark, across, up, unit, _is_bad(mark["y"], plot["limits"], bad))
    return drawn, BOTTOM + 44, _told(plot)


def _zones(limits: Sequence[Plot], up: Scale, bad: str, falling: bool, unit: str) -> list[Markup]:
    """Hatched ground below the lowest limit, buff up to the first; lines alone where no side is bad."""
    if not limits:
        return []
    heights = sorted(up.at(item["value"]) for item in limits)
    drawn = []
    if bad == "below":
        if len(heights) > 1:
            drawn.append(_rect("shoal", LEFT, heights[0], RIGHT - LEFT, heights[-1] - heights[0]))
        drawn.append(_ground(LEFT, heights[-1], RIGHT - LEFT, BOTTOM - heights[-1]))
        if BOTTOM - heights[-1] > 26:
            drawn += _worded("too low", BOTTOM - 12, falling)
    else:
        for item in limits:
            at = up.at(item["value"])
            drawn.append(_path("need", f"M{LEFT} {at}H{RIGHT}"))
            said = f"{item['label']}: {_value(item['value'], unit)}"
            x, anchor = (RIGHT, "end") if falling else (LEFT + 6, "start")
            drawn.append(_text(x, at - 6, said, anchor, "need-text"))
    return drawn


def _worded(text: str, y: float, left: bool) -> list[Markup]:
    x = LEFT + 10 if left else RIGHT - 70
    return [_rect("clear", x - 5, y - 15, 66, 21), _text(x, y, text)]


def _ticks(values: Sequence[float], up: Scale, unit: str) -> list[Markup]:
    drawn: list[Markup] = []
    taken: list[float] = []
    for value in values:
        at = up.at(value)
        if all(abs(at - other) > 17 for other in taken):
            taken.append(at)
            drawn.append(_text(LEFT - 6, at + 5, _value(value, unit, bare=True), "end"))
    return drawn


def _feet(ends: Sequence[float], mark: Plot | None, across: Scale, unit: str) -> list[Markup]:
    drawn, at = [], across.at(mark["x"]) if mark else -99.0
    if mark:
        anchor = "end" if at > RIGHT - 24 else "middle"
        drawn.append(_text(min(at, RIGHT), BOTTOM + 19, _value(mark["x"], unit), anchor, "strong"))
    for value, anchor in zip(ends, ("middle", "end"), strict=True):
        if abs(across.at(value) - at) > 62:
            drawn.append(_text(across.at(value), BOTTOM + 19, _value(value, unit), anchor))
    return drawn


def _name(label: str, line: Sequence[Point], across: Scale, up: Scale) -> Markup:
    """The name of a line, beside it on the side that it leaves free."""
    x, y = line[len(line) // 3]
    rising = line[-1][1] > line[0][1]
    at = across.at(x)
    return _text(max(at - 10, LEFT + 4) if rising else at + 12, up.at(y) - 8, label,
                 "end" if rising and at > LEFT + 100 else "start", "strong")


def _touch(mark: Plot, across: Scale, up: Scale, unit: str, low: bool) -> list[Markup]:
    """The lead at the customer's own value, with dotted lines to both axes."""
    x, y = across.at(mark["x"]), up.at(mark["y"])
    left = x > (LEFT + RIGHT) / 2
    text = _value(mark["y"], unit)
    start = x - 20 - 9 * len(text) if left else x + 20
    return [
        _path("guide", f"M{LEFT} {y}H{x}V{BOTTOM}"),
        _path("lead" if low else "lead held", f"M{x - 4.5} {y}H{x + 4.5}L{x + 10} {y + 25}H{x - 10}Z"),
        _rect("clear", start - 5, y + 3, 9 * len(text) + 10, 22),
        _text(start, y + 20, text, css="low" if low else "strong"),
    ]


def _is_bad(value: float, limits: Sequence[Plot], bad: str) -> bool:
    if not limits or not bad:
        return False
    values = [float(item["value"]) for item in limits]
    return value < min(values) if bad == "below" else value > max(values)


def _bars(plot: Plot, bad: str) -> tuple[list[Markup], int, str]:
    rows = _rows(plot)
    unit, limits, mark = plot["y"]["unit"], plot["limits"], plot.get("mark")
    most = max([value for _, value in rows] + [item["value"] for item in limits])
    across, bottom = Scale(0, most * 1.12, NAMES, RIGHT - 8), 30 + ROW * len(rows)
    drawn = []
    if limits and bad:
        edge = across.at((max if bad == "above" else min)(item["value"] for item in limits))
        start, end = (edge, RIGHT) if bad == "above" else (NAMES, edge)
        drawn.append(_ground(start, 30, end - start, bottom - 30))
    for number, (name, value) in enumerate(rows):
        y, length = 30 + ROW * number, across.at(value) - NAMES
        own = mark is None or mark["x"] == name
        text = _value(value, unit)
        inside = length > 9 * len(text) + 12
        low = _is_bad(value, limits, bad)
        drawn.append(_text(NAMES - 8, y + 26, name, "end", "strong" if own else ""))
        drawn.append(_rect("bar-own" if own else "bar-other", NAMES, y + 9, length, ROW - 16))
        if inside:
            drawn.append(_text(NAMES + length - 7, y + 26, text, "end", "on-bar" if own else "on-other"))
        else:
            drawn.append(_rect("clear", NAMES + length + 4, y + 10, 9 * len(text) + 8, 22))
            drawn.append(_text(NAMES + length + 8, y + 26, text, "start", "low" if low and own else "strong"))
    drawn += _bar_limits(limits, across, bottom, unit)
    drawn.append(_path("axis", f"M{NAMES} 30V{bottom}"))
    return drawn, bottom + 6, _told(plot)


def _bar_limits(limits: Sequence[Plot], across: Scale, bottom: float, unit: str) -> list[Markup]:
    drawn, last = [], -99.0
    for item in sorted(limits, key=lambda item: float(item["value"])):
        at = across.at(item["value"])
        drawn.append(_path("need", f"M{at} 24V{bottom}"))
        said = str(item["label"]) if len(limits) > 1 else f"{item['label']} {_value(item['value'], unit)}"
        if at - last > 9 * len(said):
            drawn.append(_text(min(at, RIGHT - 4.2 * len(said)), 17, said, "middle", "need-text"))
            last = at
    return drawn


def _rows(plot: Plot) -> list[tuple[str, float]]:
    """Name and value of each bar, whichever way the chart gives them."""
    rows: list[tuple[str, float]] = []
    for item in plot["series"]:
        if "values" in item:
            rows += list(zip(map(str, plot["x"]["values"]), map(float, item["values"]), strict=True))
            continue
        for x, y in item["points"]:
            rows.append((x if isinstance(x, str) else str(item["label"]), float(y)))
    return rows


def _charge_scale(plot: Plot) -> tuple[list[Markup], int, str]:
    """Volts at rest as a scale of charge, with the lead on it."""
    points = sorted((float(charge), float(volts)) for charge, volts in plot["series"][0]["points"])
    mark = plot["mark"]
    across = Scale(0, 100, 16, 344)
    shares = sorted(float(str(item["label"]).split(say.NB)[0]) for item in plot["limits"])
    volts = sorted(item["value"] for item in plot["limits"])
    half, good = (across.at(share) for share in shares)
    own = across.at(mark["x"])
    drawn = [
        _ground(16, 50, half - 16, 26),
        _rect("shoal", half, 50, good - half, 26),
        _rect("water", good, 50, 344 - good, 26),
        _path("axis", f"M16 50H344V76H16ZM{half} 44V76M{good} 44V76"),
        _path("have", f"M{own} 4V26"),
        _path("lead" if mark["x"] < shares[0] else "lead held", f"M{own - 5} 26H{own + 5}L{own + 10} 52H{own - 10}Z"),
    ]
    volts_at = ((2.0, points[0][1], "start"), (half, volts[0], "middle"), (good, volts[1], "middle"),
                (358.0, points[-1][1], "end"))
    for x, value, anchor in volts_at:
        if abs(x - own) > 44 and (anchor != "middle" or 60 < x < 300):
            drawn.append(_text(x, 40, _value(value, "V"), anchor))
    drawn.append(_text(min(max(own, 24), 336), 94, say.number(mark["x"]), "middle", "strong"))
    for x, share, anchor in ((16.0, "0", "middle"), (half, say.number(shares[0]), "middle"),
                             (good, say.number(shares[1]), "middle"), (358.0, f"100{say.NB}%", "end")):
        if abs(x - own) > 30:
            drawn.append(_text(x, 94, share, anchor))
    for text, start, end in (("too low", 16.0, half), ("only just", half, good), ("fine", good, 344.0)):
        drawn.append(_text((start + end) / 2, 115, text, "middle"))
    return drawn, 122, _told(plot)


def _told(plot: Plot) -> str:
    """The chart in words, for those who do not see it: the customer's own value, the values, the limits."""
    unit, x_unit, mark = plot["y"]["unit"], plot["x"].get("unit", ""), plot.get("mark")
    said = []
    if plot["kind"] == "bars":
        said.append(say.listed([f"{name} {_value(value, unit)}" for name, value in _rows(plot)]))
    else:
        for item in plot["series"]:
            ends = (item["points"][0], item["points"][-1])
            said.append(f"{item['label']}: " + " to ".join(
                f"{_value(float(y), unit)} at {_value(float(x), x_unit)}" for x, y in ends))
    if mark and "y" in mark and not isinstance(mark["x"], str):
        said.append(f"{mark['label']}: {_value(mark['y'], unit)} at {_value(mark['x'], x_unit)}")
    limits = [f"{item['label']} {_value(item['value'], unit)}" for item in plot["limits"]]
    said += [f"limits: {say.listed(limits)}"] if limits else []
    return "; ".join(said) + "."


def _axis(axis: Plot) -> str:
    unit = say.SHOWN.get(axis.get("unit", ""), axis.get("unit", ""))
    return str(axis["label"]) if axis.get("unit") in ("", None, "d") else f"{axis['label']}, {unit}"


def _value(value: float, unit: str, bare: bool = False) -> str:
    places = {"V": 2 if abs(value) < 2 else 1, "%": 0, "C": 0, "d": 0, "A": 0 if abs(value) >= 10 else None}.get(unit)
    return say.quantity(value, "" if bare else unit, places)


def _path(css: str, d: str) -> Markup:
    return Markup('<path class="{}" d="{}"/>').format(css, d)


def _rect(css: str, x: float, y: float, width: float, height: float) -> Markup:
    size = (round(number, 1) for number in (x, y, max(width, 0), max(height, 0)))
    return Markup('<rect class="{}" x="{}" y="{}" width="{}" height="{}"/>').format(css, *size)


def _ground(x: float, y: float, width: float, height: float) -> Markup:
    size = (round(number, 1) for number in (x, y, max(width, 0), max(height, 0)))
    return Markup('<rect x="{}" y="{}" width="{}" height="{}" fill="url(#ground)"/>').format(*size)


def _text(x: float, y: float, text: str, anchor: str = "start", css: str = "") -> Markup:
    extra = Markup(' text-anchor="{}"').format(anchor) if anchor != "start" else Markup("")
    extra += Markup(' class="{}"').format(css) if css else Markup("")
    return Markup('<text x="{}" y="{}"{}>{}</text>').format(round(x, 1), round(y, 1), extra, escape(text))
