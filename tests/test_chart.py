"""The chart in characters: what stands where, at any width, and never a fault that costs the answer."""

from __future__ import annotations

import pytest

from service.leadsman import Leadsman
from service.render.chart import chart

BARS = {
    "kind": "bars", "title": "Volts lost", "x": {"label": "cable", "values": ["2 AWG", "1/0 AWG"]},
    "y": {"label": "volts lost", "unit": "V"}, "series": [{"label": "lost", "values": [2.0, 1.0]}],
    "limits": [{"label": "10 %", "value": 1.5}], "mark": {"x": "1/0 AWG", "label": "this cable"},
}  # fmt: skip
LINE = {
    "kind": "line", "title": "Charge left", "x": {"label": "time", "unit": "h"}, "y": {"label": "charge", "unit": "%"},
    "series": [{"label": "charge left", "points": [[0.0, 100.0], [10.0, 0.0]]}],
    "limits": [{"label": "usable to here", "value": 50.0}], "mark": {"label": "then", "x": 5.0, "y": 50.0},
}  # fmt: skip


def test_bars_are_as_long_as_their_values_and_cross_the_limit():
    title, first, second, limit = chart(BARS, 40, ascii_only=True)
    assert title == "Volts lost"
    assert first == "    2 AWG ################|##### 2.0 V"
    assert second == "X 1/0 AWG ###########     |      1.00 V"
    assert limit.index("'") == first.index("|")
    assert limit.strip() == "10 % 1.50 V '"


def test_a_line_falls_from_corner_to_corner_with_the_mark_on_the_limit():
    lines = chart(LINE, 50, ascii_only=True)
    rows = lines[1:10]
    assert rows[0].startswith("     100 % |*")
    assert rows[-1].startswith("       0 % |")
    assert rows[-1].endswith("*")
    assert rows[4].startswith("      50 % |-")
    assert "X" in rows[4]
    assert "usable to here" in rows[4]
    assert lines[-1].strip() == "X then: 50 % at 5 h"


QUESTIONS = [
    "will my 800 CCA AGM run the Pike?",
    "is 12.4 V good for an agm",
    "pike, 650 cca wet: 12.8 V drops to 9 V when I hit it",
    "how long does a 100 Ah AGM run a thruster of 260 amps",
    "2 AGMs stay on board 5 months at 5 C. ok?",
    "pike in the bow, battery 20 feet back. what cable",
    "will 100 Ah lithium, 100 A continuous, 300 A peak run the minnow",
    "will my half full wet battery freeze at -20 C",
    "0.05 A drain on a 100 Ah AGM, how long",
]


@pytest.mark.parametrize("width", [40, 78, 200])
@pytest.mark.parametrize("question", QUESTIONS)
def test_every_chart_of_the_desk_is_drawn_within_its_width(question, width):
    answers = Leadsman().ask(question).answers
    drawn = [chart(answer.plot, width, ascii_only=True) for answer in answers if answer.plot]
    assert drawn
    for lines in drawn:
        assert len(lines) >= 4
        assert max(map(len, lines)) <= width
        assert "".join(lines).isascii() or "°" in "".join(lines)


@pytest.mark.parametrize(
    "plot",
    [None, {"kind": "cloud", "title": ""}, {"kind": "line", "title": ""}, BARS | {"series": []}, LINE | {"series": []}],
)
def test_what_cannot_be_drawn_is_left_out(plot):
    assert chart(plot) == []
