"""What a picture is drawn with: a scale, lines, areas, hatched ground, texts. Classes and attributes only, no style."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup


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


def path(css: str, d: str) -> Markup:
    """A line."""
    return Markup('<path class="{}" d="{}"/>').format(css, d)


def rect(css: str, x: float, y: float, width: float, height: float) -> Markup:
    """A filled area."""
    size = (round(number, 1) for number in (x, y, max(width, 0), max(height, 0)))
    return Markup('<rect class="{}" x="{}" y="{}" width="{}" height="{}"/>').format(css, *size)


def ground(x: float, y: float, width: float, height: float) -> Markup:
    """Hatched ground, by the page's own pattern."""
    size = (round(number, 1) for number in (x, y, max(width, 0), max(height, 0)))
    return Markup('<rect x="{}" y="{}" width="{}" height="{}" fill="url(#ground)"/>').format(*size)


def text(x: float, y: float, said: str, anchor: str = "start", css: str = "") -> Markup:
    """A text, escaped."""
    extra = Markup(' text-anchor="{}"').format(anchor) if anchor != "start" else Markup("")
    extra += Markup(' class="{}"').format(css) if css else Markup("")
    return Markup('<text x="{}" y="{}"{}>{}</text>').format(round(x, 1), round(y, 1), extra, said)


def lead(x: float, y: float, bad: bool) -> Markup:
    """The lead, hung at a place; in magenta where it stands out of limits."""
    return path("lead" if bad else "lead held", f"M{x - 4.5} {y}H{x + 4.5}L{x + 10} {y + 25}H{x - 10}Z")
