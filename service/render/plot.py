"""An answer's chart as inline SVG: hatched ground is out of limits, buff is only just, the lead is where you touch.

Only classes and presentation attributes, no style: the page's policy allows no other. Every text is escaped.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

from markupsafe import Markup

from service import say
from service.render import svg
from service.render.svg import Scale

WIDTH, LEFT, RIGHT, TOP, BOTTOM = 360, 50, 346, 26, 206
SCALE_LEFT, SCALE_RIGHT = 16, 344
ROW = 40  # height of a bar with its gap
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
Drawn = tuple[list[Markup], int, str]  # the parts, the height, the chart in words


def picture(plot: Plot | None, topic: str, key: str) -> Markup:
    """The chart of an answer; empty where there is none or it cannot be drawn."""
    if not plot or plot["kind"] not in ("line", "bars"):
        return Markup("")
    try:
        drawn, height, told = _drawn(plot, topic)
    except (LookupError, TypeError, ValueError):  # a picture that cannot be drawn must not cost the answer
        return Markup("")
    head = Markup('<svg class="plot" viewBox="0 0 {} {}" role="img" aria-labelledby="p-{}-t p-{}-d">').format(
        WIDTH, height, key, key
    )
    names = Markup('<title id="p-{}-t">{}</title><desc id="p-{}-d">{}</desc>').format(key, plot["title"], key, told)
    return head + names + Markup("").join(drawn) + Markup("</svg>")


def _drawn(plot: Plot, topic: str) -> Drawn:
    bad = BAD.get((topic, plot["kind"]), "")
    if topic == "rest-voltage" and plot.get("mark") and len(plot["limits"]) == 2:
        return _charge_scale(plot)
    return _bars(plot, bad) if plot["kind"] == "bars" else _line(plot, bad)


def _line(plot: Plot, bad: str) -> Drawn:
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
    drawn.append(svg.path("axis", f"M{LEFT} {TOP - 6}V{BOTTOM}H{RIGHT}"))
    ends = [point[1] for point in (points[0], points[-1])]
    drawn += _ticks([item["value"] for item in plot["limits"]] + ends, up, unit)
    drawn.append(svg.text(2, 13, _axis(plot["y"])))
    drawn += _feet([points[0][0], points[-1][0]], mark, across, x_unit)
    if x_unit not in ("d", "min"):  # the numbers say it
        drawn.append(svg.text(RIGHT, BOTTOM + 38, _axis(plot["x"]), "end"))
    for label, line in series:
        drawn.append(svg.path("have", "M" + "L".join(f"{across.at(x)} {up.at(y)}" for x, y in line)))
        if label.lower() not in str(plot["y"]["label"]).lower() and len(line) > 1:
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
            drawn.append(svg.rect("shoal", LEFT, heights[0], RIGHT - LEFT, heights[-1] - heights[0]))
        drawn.append(svg.ground(LEFT, heights[-1], RIGHT - LEFT, BOTTOM - heights[-1]))
        if BOTTOM - heights[-1] > 26:
            drawn += _worded("too low", BOTTOM - 12, falling)
    else:
        for item in limits:
            at = up.at(item["value"])
            drawn.append(svg.path("need", f"M{LEFT} {at}H{RIGHT}"))
            said = f"{item['label']}: {_value(item['value'], unit)}"
            x, anchor = (RIGHT, "end") if falling else (LEFT + 6, "start")
            drawn.append(svg.text(x, at - 6, said, anchor, "need-text"))
    return drawn


def _worded(text: str, y: float, left: bool) -> list[Markup]:
    x = LEFT + 10 if left else RIGHT - 70
    return [svg.rect("clear", x - 5, y - 15, 66, 21), svg.text(x, y, text)]


def _ticks(values: Sequence[float], up: Scale, unit: str) -> list[Markup]:
    drawn: list[Markup] = []
    taken: list[float] = []
    for value in values:
        at = up.at(value)
        if all(abs(at - other) > 17 for other in taken):
            taken.append(at)
            drawn.append(svg.text(LEFT - 6, at + 5, _value(value, unit, bare=True), "end"))
    return drawn


def _feet(ends: Sequence[float], mark: Plot | None, across: Scale, unit: str) -> list[Markup]:
    drawn, at = [], across.at(mark["x"]) if mark else -99.0
    if mark:
        anchor = "end" if at > RIGHT - 24 else "middle"
        drawn.append(svg.text(min(at, RIGHT), BOTTOM + 19, _value(mark["x"], unit), anchor, "strong"))
    for value, anchor in zip(ends, ("middle", "end"), strict=True):
        if abs(across.at(value) - at) > 62:
            drawn.append(svg.text(across.at(value), BOTTOM + 19, _value(value, unit), anchor))
    return drawn


def _name(label: str, line: Sequence[Point], across: Scale, up: Scale) -> Markup:
    """The name of a line, beside it on the side that it leaves free."""
    wanted = line[0][0] + (line[-1][0] - line[0][0]) / 3
    (x, y), (next_x, next_y) = next(pair for pair in pairwise(line) if pair[1][0] >= wanted)
    share = (wanted - x) / (next_x - x)
    at, height = across.at(wanted), up.at(y + (next_y - y) * share) - 8
    if line[-1][1] > line[0][1]:
        return svg.text(at - 10, height, label, "end" if at > LEFT + 9 * len(label) else "middle", "strong")
    return svg.text(at + 12, height, label, css="strong")


def _touch(mark: Plot, across: Scale, up: Scale, unit: str, low: bool) -> list[Markup]:
    """The lead at the customer's own value, with dotted lines to both axes."""
    x, y = across.at(mark["x"]), up.at(mark["y"])
    left = x > (LEFT + RIGHT) / 2
    text = _value(mark["y"], unit)
    start = x - 20 - 9 * len(text) if left else x + 20
    return [
        svg.path("guide", f"M{LEFT} {y}H{x}V{BOTTOM}"),
        svg.lead(x, y, low),
        svg.rect("clear", start - 5, y + 3, 9 * len(text) + 10, 22),
        svg.text(start, y + 20, text, css="low" if low else "strong"),
    ]


def _is_bad(value: float, limits: Sequence[Plot], bad: str) -> bool:
    if not limits or not bad:
        return False
    values = [float(item["value"]) for item in limits]
    return value < min(values) if bad == "below" else value > max(values)


def _bars(plot: Plot, bad: str) -> Drawn:
    rows = _rows(plot)
    unit, limits, mark = plot["y"]["unit"], plot["limits"], plot.get("mark")
    most = max([value for _, value in rows] + [item["value"] for item in limits])
    start = min(150.0, 18 + 9.4 * max(len(name) for name, _ in rows))
    limits = sorted(limits, key=lambda item: float(item["value"]))
    across = Scale(0, most * 1.12, start, RIGHT - 8)
    top = _top(limits, across)
    bottom = top + ROW * len(rows)
    drawn = []
    if limits and bad:
        edge = across.at((max if bad == "above" else min)(item["value"] for item in limits))
        left, right = (edge, RIGHT) if bad == "above" else (start, edge)
        drawn.append(svg.ground(left, top, right - left, bottom - top))
    drawn += _bar_limits(limits, across, top, bottom, unit)
    for number, (name, value) in enumerate(rows):
        own = mark is None or mark["x"] == name
        low = own and _is_bad(value, limits, bad)
        drawn += _bar(name, _value(value, unit), (start, top + ROW * number, across.at(value)), own, low)
    drawn.append(svg.path("axis", f"M{start} {top}V{bottom}"))
    return drawn, bottom + 6, _told(plot)


def _bar(name: str, text: str, at: tuple[float, float, float], own: bool, low: bool) -> list[Markup]:
    """A bar with its name before it and its value in it, or behind it where it is short."""
    start, y, end = at
    wide = 9 * len(text)
    drawn = [
        svg.text(start - 8, y + 26, name, "end", "strong" if own else ""),
        svg.rect("bar-own" if own else "bar-other", start, y + 9, end - start, ROW - 16),
    ]
    if end - start > wide + 12:
        return [*drawn, svg.text(end - 7, y + 26, text, "end", "on-bar" if own else "on-other")]
    return [
        *drawn,
        svg.rect("clear", end + 4, y + 10, wide + 8, 22),
        svg.text(end + 8, y + 26, text, css="low" if low else "strong"),
    ]


def _bar_limits(limits: Sequence[Plot], across: Scale, top: int, bottom: float, unit: str) -> list[Markup]:
    """The limits as lines with their names above, in rows of their own where side by side has no room."""
    drawn = []
    for number, item in enumerate(limits):
        at, said = across.at(item["value"]), _limit_name(item, limits, unit)
        y = 17 if top == TOP + 4 else 17 + 18 * (len(limits) - 1 - number)
        drawn.append(svg.path("need", f"M{at} {y + 6}V{bottom}"))
        drawn.append(svg.text(min(at, RIGHT - 4.4 * len(said)), y, said, "middle", "need-text"))
    return drawn


def _limit_name(item: Plot, limits: Sequence[Plot], unit: str) -> str:
    return str(item["label"]) if len(limits) > 1 else f"{item['label']} {_value(item['value'], unit)}"


def _top(limits: Sequence[Plot], across: Scale) -> int:
    """Where the bars begin: lower where the names of the limits stand in rows."""
    at = [(across.at(item["value"]), len(item["label"])) for item in limits]
    close = any(b - a < 4.8 * (n + m) for (a, n), (b, m) in pairwise(at))
    return TOP + 4 + (18 * (len(limits) - 1) if close else 0)


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


def _charge_scale(plot: Plot) -> Drawn:
    """Volts at rest as a scale of charge, with the lead on it."""
    points = sorted((float(charge), float(volts)) for charge, volts in plot["series"][0]["points"])
    limits = sorted((float(str(item["label"]).split()[0]), item["value"]) for item in plot["limits"])
    across, charge = Scale(0, 100, SCALE_LEFT, SCALE_RIGHT), plot["mark"]["x"]
    half, good, own = across.at(limits[0][0]), across.at(limits[1][0]), across.at(charge)
    drawn = [
        svg.ground(SCALE_LEFT, 50, half - SCALE_LEFT, 26),
        svg.rect("shoal", half, 50, good - half, 26),
        svg.rect("water", good, 50, SCALE_RIGHT - good, 26),
        svg.path("axis", f"M{SCALE_LEFT} 50H{SCALE_RIGHT}V76H{SCALE_LEFT}ZM{half} 44V76M{good} 44V76"),
        svg.path("have", f"M{own} 4V26"),
        svg.lead(own, 26, charge < limits[0][0]),
        svg.text(min(max(own, 24), 336), 94, say.charge(charge).split()[0], "middle", "strong"),
    ]
    for share, volts in ((0.0, points[0][1]), *limits, (100.0, points[-1][1])):
        drawn += _mark_at(across.at(share), share, volts, own)
    for said, start, end in (("too low", SCALE_LEFT, half), ("only just", half, good), ("fine", good, SCALE_RIGHT)):
        drawn.append(svg.text((start + end) / 2, 115, said, "middle"))
    return drawn, 122, _told(plot)


def _mark_at(x: float, share: float, volts: float, own: float) -> list[Markup]:
    """Volts above and charge below a place of the scale, where the lead leaves room for them."""
    first, last = x == SCALE_LEFT, x == SCALE_RIGHT
    drawn = []
    if abs(x - own) > (56 if first or last else 46) and (first or last or 62 < x < 298):
        at, anchor = (2, "start") if first else (358, "end") if last else (x, "middle")
        drawn.append(svg.text(at, 40, _value(volts, "V"), anchor))
    if last and own < x - 44:
        drawn.append(svg.text(358, 94, f"100{say.NB}%", "end"))
    elif abs(x - own) > 30 and not last:
        drawn.append(svg.text(x, 94, say.number(share), "middle"))
    return drawn


def _told(plot: Plot) -> str:
    """The chart in words, for those who do not see it: the customer's own value, the values, the limits."""
    unit, x_unit, mark = plot["y"]["unit"], plot["x"].get("unit", ""), plot.get("mark")
    said = []
    if plot["kind"] == "bars":
        said.append(say.listed([f"{name} {_value(value, unit)}" for name, value in _rows(plot)]))
    else:
        for item in plot["series"]:
            ends = (item["points"][0], item["points"][-1])
            said.append(
                f"{item['label']}: "
                + " to ".join(f"{_value(float(y), unit)} at {_value(float(x), x_unit)}" for x, y in ends)
            )
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
