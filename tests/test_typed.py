"""Values as people type them beside a fact's name."""

from __future__ import annotations

import pytest

from service.commands.typed import named, typed
from service.question import BadInput


@pytest.mark.parametrize(
    ("fact", "text", "unit", "value"),
    [
        ("reading.voltage", "12.4", "", 12.4),
        ("reading.voltage", "12,4 V", "", 12.4),
        ("reading.voltage", "12,45", "", 12.45),
        ("reading.gravity", "1,265", "", 1.265),
        ("battery.cca", "1,050", "", 1050),
        ("battery.cca", "650 CCA", "", 650),
        ("ambient.temperature", "23", "F", -5),
        ("ambient.temperature", "-5 C", "F", -5),
        ("ambient.temperature", "−5", "", -5),
        ("battery.age", "18 months", "", 1.5),
        ("battery.age", "6", "months", 0.5),
        ("cable.length", "20 ft", "", 6.096),
        ("cable.gauge", "2/0 AWG", "", "2/0"),
        ("cable.gauge", "4", "", "4"),
        ("battery.chemistry", "AGM", "", "agm"),
        ("battery.chemistry", "wet cell", "", "flooded"),
        ("battery.chemistry", "LiFePO4", "", "lfp"),
        ("charger.isolated", "Yes", "", True),
        ("load.model", "Pike", "", "Pike"),
        ("cca", "650", "", 650),
    ],
)
def test_values(fact, text, unit, value):
    found = typed(fact, text, unit).value
    assert found == pytest.approx(value) if isinstance(value, float) else found == value


@pytest.mark.parametrize(
    ("fact", "text", "word"),
    [
        ("reading.voltage", "fine", "no such number"),
        ("reading.voltage", "twelve-ish", "no such number"),
        ("reading.voltage", "12 Ah", "held in V"),
        ("battery.cca", "9", "outside 50 to 2500"),
        ("battery.chemistry", "good", "write one of flooded"),
        ("charger.isolated", "maybe", "yes or no"),
        ("cranking", "3", "not a fact"),
        ("voltage", "12", "write one of them"),
    ],
)
def test_what_is_no_value_is_said(fact, text, word):
    with pytest.raises(BadInput, match=word):
        typed(fact, text)


def test_a_fact_goes_by_its_label_too():
    assert named("State of Charge") == "battery.charge"
