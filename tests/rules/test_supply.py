"""What decides whether a bank carries a load: its volts, its limits, its charge, its cable."""

from __future__ import annotations

from typing import Any

import pytest

from service.calculators.cable import Size
from service.case import Case
from service.rules import abreast, circuit, cranking, fitting, joining, lithium, load_reading, session
from service.topics import topic
from tests.building import case

Facts = dict[str, Any]
LFP = {"battery.chemistry": "lfp"}


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def steps(known: Case) -> str:
    return "\n".join(plain(fired.say) for fired in known.trace)


@pytest.mark.parametrize(
    ("facts", "built", "bank"),
    [
        ({"battery.nominal": 24, "battery.count": 1}, 24, 24),
        ({"battery.nominal": 24}, 24, 24),
        ({"battery.nominal": 12}, None, 12),
        ({"battery.nominal": 6}, None, 12),
        ({"battery.count": 1}, None, 12),
        ({"battery.nominal": 6, "battery.count": 2}, 12, 12),
        ({"battery.nominal": 12, "battery.count": 2, "bank.layout": "parallel"}, 12, 12),
        ({"battery.nominal": 6, "battery.count": 4, "bank.layout": "series-parallel"}, 12, 12),
        ({"battery.nominal": 12, "battery.count": 1, "load.model": "sturgeon"}, 12, 12),
        ({"battery.nominal": 12, "load.model": "sturgeon"}, None, 24),
    ],
)
def test_volts_of_the_batteries_alone(facts: Facts, built: float | None, bank: float) -> None:
    known = case(facts)
    assert (known.get("bank.built_voltage"), known["bank.voltage"]) == (built, bank)


@pytest.mark.parametrize(
    ("facts", "how"),
    [
        ({"bank.layout": "series"}, "series"),
        ({"battery.count": 2}, None),
        ({"battery.count": 2, "bank.voltage": 12}, "parallel"),
        ({"battery.count": 2, "bank.voltage": 24}, "series"),
        ({"battery.count": 4, "bank.voltage": 24}, "series-parallel"),
        ({"battery.count": 1, "bank.voltage": 12}, None),
    ],
)
def test_how_batteries_are_joined(facts: Facts, how: str | None) -> None:
    assert joining.layout(case(facts)) == how


@pytest.mark.parametrize(
    ("facts", "how", "figures"),
    [
        ({"battery.count": 2}, "series", {"bank_voltage": 24}),
        (
            {"battery.count": 2, "battery.capacity": 100},
            "parallel",
            {"bank_voltage": 12, "bank_capacity": 200, "bank_energy": 2400},
        ),
        (
            {"battery.count": 2, "battery.capacity": 100, "battery.cca": 600},
            "series",
            {"bank_voltage": 24, "bank_capacity": 100, "bank_cca": 600, "bank_energy": 2400},
        ),
        ({"battery.count": 2, "battery.cca": (600, 700)}, "parallel", {"bank_voltage": 12, "bank_cca": 1300}),
        (
            {"battery.count": 2, "battery.capacity": 100, **LFP},
            "parallel",
            {"bank_voltage": 12, "bank_capacity": 200, "bank_energy": 2560},
        ),
    ],
)
def test_what_they_make_together(facts: Facts, how: str, figures: dict[str, float]) -> None:
    found = joining.figures(case(facts), how)
    assert {item.name: item.value for item in found} == pytest.approx(figures)


@pytest.mark.parametrize(
    ("facts", "kind", "why"),
    [
        ({"battery.charge": 49}, "no", "less than half full"),
        ({"battery.charge": 50}, "marginal", "not full enough"),  # 12.24 V by the table
        ({"battery.charge": 75}, None, ""),  # 12.45 V
        ({"reading.voltage": 12.2}, "no", "less than half full"),
        ({"reading.voltage": 12.39}, "marginal", "not full enough"),
        ({"reading.voltage": 12.4}, None, ""),
        ({"reading.voltage": 9.8}, "no", "less than half full"),  # beyond the tables
        ({"reading.voltage": 13.4}, None, ""),  # full of charging
        ({}, None, ""),
    ],
)
def test_what_the_charge_allows(facts: Facts, kind: str | None, why: str) -> None:
    known = case({"battery.chemistry": "flooded", **facts})
    found = cranking.charge_grounds(known)
    assert [ground.verdict for ground in found] == ([kind] if kind else [])
    assert all(why in ground.why for ground in found)
    assert ("under half" in steps(known)) is (kind == "no")
    assert ("is under 12.4 V at rest" in steps(known)) is (kind == "marginal")


def test_the_cca_for_a_clear_yes_is_worked_out() -> None:
    known = case({})
    assert cranking.required_cca(known, 500) == pytest.approx(500 * 6.0 / 3.6)
    assert "500 A x 6.0 / 3.6 = 834" in steps(known)


@pytest.mark.parametrize("volts", [12, 24])
def test_the_picture_of_a_start_draws_both_limits(volts: float) -> None:
    known = case({"battery.cca": 800, "bank.voltage": volts, "battery.count": volts / 12})
    drawn = cranking.plot(known, 480, 9.0, volts / 12)
    assert [line["value"] for line in drawn["limits"]] == pytest.approx([9.0 * volts / 12, 8.5 * volts / 12])
    assert drawn["series"][0]["points"][0] == pytest.approx([0, 12.6 * volts / 12])
    assert drawn["series"][0]["points"][5] == pytest.approx([480, 9.0 * volts / 12])  # 12.6 - 480 x 6.0 / 800
    assert drawn["mark"] == {"label": "first instant", "x": 480, "y": 9.0 * volts / 12}


@pytest.mark.parametrize(
    ("facts", "running", "inrush", "verdict", "head"),
    [
        ({"battery.max_current": 150}, 200, 300, "no", "No: your lithium battery allows 150 A, and {} draws 200 A."),
        (
            {"battery.max_current": 150, "battery.peak_current": 400},
            200,
            300,
            "no",
            "No: your lithium battery allows 150 A, and {} draws 200 A.",
        ),
        (
            {"battery.max_current": 250, "battery.peak_current": 280},
            200,
            300,
            "no",
            "No: your lithium battery may give 280 A for a few seconds, and {} takes 300 A at first.",
        ),
        (
            {"battery.capacity": 100},
            200,
            300,
            "no",
            "No: your 100 Ah lithium battery gives about 100 A, and {} draws 200 A.",
        ),
        (
            {"battery.capacity": 600, "battery.peak_current": 280},
            200,
            300,
            "no",
            "No: your 600 Ah lithium battery may give 280 A for a few seconds, and {} takes 300 A at first.",
        ),
        (
            {"battery.max_current": 900, "ambient.temperature": -21},
            200,
            300,
            "no",
            "No: under -20 °C a lithium battery must not be used, so {} has to wait for warmer weather.",
        ),
        ({"battery.max_current": 200}, 200, 300, "peak", ""),
        (
            {"battery.max_current": 200, "battery.peak_current": 300},
            200,
            300,
            "yes",
            "Yes: your lithium battery allows 200 A and 300 A for a few seconds, and {} takes 200 A and 300 A at first.",
        ),
        (
            {"battery.max_current": 300, "battery.peak_current": 500},
            200,
            300,
            "yes",
            "Yes: your lithium battery allows 300 A, and {} takes 200 A and 300 A at first.",
        ),
        (
            {"battery.max_current": 125, "battery.peak_current": 400, "battery.count": 2},
            210,
            315,
            "marginal",
            "Only just: your batteries allow 250 A together, of which 200 A can be relied on, and {} takes 210 A.",
        ),
        (
            {"battery.max_current": 150, "battery.peak_current": 170, "battery.count": 2},
            200,
            300,
            "marginal",
            "Only just: your batteries allow 340 A together, of which 272 A can be relied on, and {} takes 300 A.",
        ),
        ({"battery.capacity": 200}, 200, 300, "limits", ""),
        (
            {"battery.capacity": 600},
            200,
            300,
            "yes",
            "Yes: your 600 Ah lithium battery gives about 600 A, and {} takes 200 A and 300 A at first.",
        ),
        (
            {"battery.capacity": 300, "battery.count": 2},
            200,
            300,
            "marginal",
            "Only just: without a stated limit count on 240 A of 300 A in the first instant, and {} takes 300 A.",
        ),
    ],
)
def test_lithium_by_its_limits(facts: Facts, running: float, inrush: float, verdict: str, head: str) -> None:
    known = case({**LFP, **facts})
    found = lithium.limits(known)
    assert found is not None
    assert lithium.judged(running, inrush, found) == verdict
    if head:
        assert plain(lithium.words(known, verdict, running, inrush, found)) == head.format("your thruster")


@pytest.mark.parametrize(
    ("celsius", "limit", "step"),
    [
        (10, 300, None),
        (0, 300, None),
        (-1, 150, "the continuous limit halves: 150 A"),
        (-20, 150, "the continuous limit halves: 150 A"),
        (-21, 0, "must not be used"),
    ],
)
def test_the_limit_in_the_cold(celsius: float, limit: float, step: str | None) -> None:
    known = case({**LFP, "battery.max_current": 300, "ambient.temperature": celsius})
    found = lithium.limits(known)
    assert found is not None
    assert found.continuous == limit
    assert (step in steps(known)) if step else ("°C" not in steps(known))


@pytest.mark.parametrize(
    ("facts", "cues", "percent"),
    [
        ({}, (), 10),
        ({"load.kind": "windlass"}, (), 10),
        ({"load.kind": "electronics"}, (), 3),
        ({}, ("detail:feed",), 3),
        ({}, ("thing:charger",), 3),
        ({"load.kind": "thruster"}, ("detail:feed",), 10),
        ({"load.model": "pike"}, ("thing:charger",), 10),
        ({"cable.drop": 5}, (), 5),
        ({"cable.drop": 15}, (), 10),
    ],
)
def test_the_loss_allowed(facts: Facts, cues: tuple[str, ...], percent: float) -> None:
    assert circuit.allowed(case(facts, cues)) == pytest.approx(percent)


def test_no_picture_of_a_size_that_is_no_standard_one() -> None:
    known = case({"load.current": 200, "load.kind": "thruster", "cable.length": 5})
    assert circuit.bars(known, 200, Size("odd", 50_000, 200)) is None


@pytest.mark.parametrize(
    ("facts", "gauges", "areas"),
    [({"cable.gauge": "2/0"}, ["3/0", "4/0"], []), ({"cable.area": 70}, [], [95, 120]), ({}, [], [])],
)
def test_cables_thicker_than_theirs(facts: Facts, gauges: list[str], areas: list[float]) -> None:
    assert list(fitting.thicker_gauges(case(facts))) == gauges
    assert list(fitting.thicker_areas(case(facts))) == areas


@pytest.mark.parametrize(
    ("cca", "best", "verdict"),
    [((900, 1000), 1, "yes"), ((1000, 900), 0, "yes"), ((800, 900), 1, "yes"), ((600, 500), 0, "no")],
)
def test_of_two_batteries_the_one_that_holds_more_volts_leads(
    cca: tuple[float, float], best: int, verdict: str
) -> None:
    known = case({"battery.chemistry": "agm", "battery.cca": cca, "load.current": 340}, ("request:which",))
    found = abreast.batteries(known, topic("run-check").answer)
    assert found.verdict == verdict
    assert found.compare[best].figures == found.figures
    volts = next(item.value for item in found.figures if item.name == "terminal_voltage_at_inrush")
    assert volts == pytest.approx(12.6 - 510 * 6.0 / cca[best])


@pytest.mark.parametrize(
    ("facts", "small", "lowest"),
    [
        (LFP, False, 12.0),
        ({}, False, 9.6),
        ({"battery.cca": 800, "reading.current": 200}, False, 11.1),  # 12.6 - 200 x 6.0 / 800
        ({"battery.cca": 800, "reading.current": 500}, True, 9.0),  # 8.85 V: in order, but too small
        ({"battery.cca": 800, "reading.current": 400}, False, 9.6),  # a load test
        ({"battery.cca": 1000, "reading.current": 600}, False, 9.0),
    ],
)
def test_the_least_volts_under_load(facts: Facts, small: bool, lowest: float) -> None:
    found = load_reading.read_under_load(case({**facts, "reading.load_voltage": 10}))
    assert (found.small, found.lowest) == (small, pytest.approx(lowest))


@pytest.mark.parametrize(("amps", "shown"), [(0, False), (0.5, True)])
def test_a_session_without_a_current_takes_nothing(amps: float, shown: bool) -> None:
    facts = {"battery.capacity": 100, "battery.chemistry": "agm", "load.burst": 5, "load.bursts": 20}
    assert bool(session.figures(case(facts), amps)) is shown
