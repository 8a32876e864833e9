"""The circuit of a cable, the sizes that are chosen and named, the ratings of its fuse."""

from __future__ import annotations

from typing import Any

import pytest

from service.calculators.cable import Size
from service.case import Known
from service.judgements import circuit, fitting, fusing
from tests.building import case

Facts = dict[str, Any]
TWO_ZERO, SEVENTY = Size("2/0", 125_100, 330), Size(70.0, 138_145, 330)


@pytest.mark.parametrize(
    ("choice", "us_first", "named"),
    [
        (fitting.Choice(TWO_ZERO, SEVENTY), True, "2/0 AWG (70 mm² in metric sizes)"),
        (fitting.Choice(TWO_ZERO, SEVENTY), False, "70 mm² (2/0 AWG in American sizes)"),
        (fitting.Choice(TWO_ZERO, SEVENTY, 2), True, "2/0 AWG (70 mm²)"),
        (fitting.Choice(None, SEVENTY), True, "70 mm²"),
        (fitting.Choice(TWO_ZERO, None), False, "2/0 AWG"),
    ],
)
def test_a_choice_by_name(choice: fitting.Choice, us_first: bool, named: str) -> None:
    assert choice.named(us_first).replace("\u00a0", " ") == named


@pytest.mark.parametrize(
    ("facts", "gauge", "area", "count"),
    [
        # 10.75 x 340 A x 40 ft / 1.2 V = 121 833 cmil; ampacity of 2/0 at 105 °C is 330 A, of 3/0 385 A
        ({"load.current": 340, "cable.length": 6.096}, "3/0", 95, 1),
        ({"load.current": 300, "cable.length": 3.048}, "2/0", 70, 1),
        # 600 A over 20 ft each way: 215 000 cmil; over 4/0. Two of 0.6 x 445 A carry 534, three of 0.6 x 385 A 693
        ({"load.current": 600, "cable.length": 6.096}, "3/0", None, 3),
        ({"load.current": 5000, "cable.length": 30}, None, None, 0),  # nothing will do
    ],
)
def test_the_cable_to_fit(facts: Facts, gauge: str | None, area: float | None, count: int) -> None:
    found = fitting.chosen(case({"load.kind": "thruster", **facts}), facts["load.current"])
    assert (found.gauge and found.gauge.name, found.count) == (gauge, count)
    if area or not count:
        assert (found.area and found.area.name) == area


@pytest.mark.parametrize(
    ("facts", "cues", "amps"),
    [
        ({"load.current": 100}, (), 100),
        ({"charger.current": 30}, (), 30),
        ({"charger.current": 30, "load.current": 100}, (), 100),
        ({"charger.current": 30, "load.current": 100}, ("thing:charger",), 100),
        ({"charger.current": 30, "load.model": "pike"}, (), 260),
        ({"charger.current": 30, "load.model": "pike"}, ("thing:charger",), 30),  # the charger's cable, on that boat
        # 28.8 V out x 30 A / (11 V x 0.90)
        ({"charger.current": 30, "charger.kind": "dc-dc", "bank.voltage": 24}, (), 87.27),
    ],
)
def test_the_current_in_the_cable(facts: Facts, cues: tuple[str, ...], amps: float) -> None:
    assert circuit.current(case(facts, cues)) == pytest.approx(amps, abs=0.01)


@pytest.mark.parametrize(
    ("typed", "feet"),
    [
        ("20'", True),
        ("20 ft", True),
        ("20 FEET", True),
        ("20′", True),
        ("6 m", False),
        ("6 metres", False),
        (None, False),
    ],
)
def test_a_length_typed_in_feet(typed: str | None, feet: bool) -> None:
    known = case({})
    if typed is not None:
        known.stated = {"cable.length": Known("cable.length", 6.096, "message", "m", typed)}
    assert circuit.in_feet(known) is feet


@pytest.mark.parametrize("volts", [12, 24])
def test_the_picture_of_a_cable_draws_the_limits_of_3_and_10_percent(volts: float) -> None:
    known = case({"load.current": 200, "load.kind": "thruster", "cable.length": 5, "bank.voltage": volts})
    american, _ = circuit.sizes(known)
    fitted = next(size for size in american if size.name == "1")
    drawn: Any = circuit.bars(known, 200, fitted)
    assert [line["value"] for line in drawn["limits"]] == pytest.approx([volts * 0.03, volts * 0.10])
    assert [line["label"].replace("\u00a0", " ") for line in drawn["limits"]] == ["3 %", "10 %"]
    assert [name.partition("\u00a0")[0] for name in drawn["x"]["values"]] == ["4", "2", "1", "1/0", "2/0"]
    assert drawn["mark"]["x"] == drawn["x"]["values"][2]
    lost = 10.75 * 200 * 2 * 5 / 0.3048 / fitted.area
    assert drawn["series"][0]["values"][2] == pytest.approx(lost)
    assert circuit.bars(known, 200, None) is None


@pytest.mark.parametrize(
    ("facts", "amps"),
    [
        # ABYC E-11: up to 650 CCA 1500 A, to 1100 CCA 3000 A, beyond 5000 A, in systems of 12 and 24 V
        ({"battery.cca": 650}, 1500),
        ({"battery.cca": 651}, 3000),
        ({"battery.cca": 1100}, 3000),
        ({"battery.cca": 1101}, 5000),
        ({"battery.cca": 650, "bank.voltage": 24}, 1500),
        ({"battery.cca": 650, "bank.voltage": 36}, None),
        ({"battery.cca": 650, "battery.chemistry": "lfp"}, None),
        ({"battery.capacity": 100}, None),
    ],
)
def test_what_the_fuse_must_break(facts: Facts, amps: float | None) -> None:
    found = fusing.interrupting(case(facts))
    assert (found and found.value) == amps


@pytest.mark.parametrize(
    ("facts", "fuse"),
    [
        ({"load.model": "pike"}, 350),
        ({"load.model": "pike", "load.current": 260}, 350),
        ({"load.model": "pike", "load.current": 200}, None),
        ({"load.current": 260}, None),
    ],
)
def test_the_fuse_of_the_catalogue(facts: Facts, fuse: float | None) -> None:
    known = case(facts)
    assert fusing.house_fuse(known, known["load.current"]) == fuse
    causes = [fired.say.replace("\u00a0", " ") for fired in known.trace if fired.kind == "cause"]
    assert causes == (["The catalogue names a 350 A fuse for the Pike"] if fuse else [])


@pytest.mark.parametrize(
    ("band", "fit"),
    [
        (fusing.Band(400, 350, 450), 400),
        (fusing.Band(400, 350, 450, house=350), 350),
        (fusing.Band(400, 350, 450, house=450), 450),
        (fusing.Band(400, 350, 450, house=500), 400),  # the cable does not hold it
        (fusing.Band(400, None, None, house=350), 400),  # no cable known
    ],
)
def test_the_rating_to_fit(band: fusing.Band, fit: float) -> None:
    assert band.fit == fit
