"""What decides whether a bank carries a load: its volts, its limits, its charge, its cable."""

from __future__ import annotations

from typing import Any

import pytest

from service import chart
from service.calculators.cable import Size
from service.case import Case, Missing
from service.judgements import (
    abreast,
    charging,
    circuit,
    converter,
    cranking,
    deciding,
    fitting,
    fusing,
    joining,
    laid_up,
    lithium,
    load_reading,
    session,
    supply,
)
from service.topics import topic
from tests.building import case

Facts = dict[str, Any]
LFP: Facts = {"battery.chemistry": "lfp"}


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
    found = deciding.charge_grounds(known)
    assert [ground.verdict for ground in found] == ([kind] if kind else [])
    assert all(why in ground.why for ground in found)
    assert ("under half" in steps(known)) is (kind == "no")
    assert ("is under 12.4 V at rest" in steps(known)) is (kind == "marginal")


def test_the_cca_for_a_clear_yes_is_worked_out() -> None:
    known = case({})
    assert cranking.required_cca(known, 500) == pytest.approx(500 * 6.0 / 3.6)
    assert "500 A x 6.0 / 3.6 = 834" in steps(known)
    cranking.required_cca(known, 510)  # 850 to the last digit
    assert "510 A x 6.0 / 3.6 = 850" in steps(known)


@pytest.mark.parametrize(
    ("facts", "volts", "told"),
    [
        (
            {"battery.cca": 800},
            8.85,
            ("6.0 / 800 = 7.5 mΩ", "12.6 V - 500 A x 7.5 mΩ = 8.9 V"),
        ),  # 12.6 - 500 x 6.0 / 800
        (
            {"battery.cca": 800, "battery.count": 2},
            10.725,
            ("6.0 / 800 = 7.5 mΩ", "12.6 V - 500 A x 7.5 mΩ / 2 in parallel = 10.7 V"),
        ),
    ],
)
def test_volts_in_the_first_instant_are_worked_out(facts: Facts, volts: float, told: tuple[str, str]) -> None:
    known = case(facts)
    assert cranking.terminal_voltage(known, 500) == pytest.approx(volts)
    assert all(words in steps(known) for words in told)


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
            "No: your lithium battery allows 400 A at first but only 150 A after a few seconds, and {} draws 200 A.",
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
            "Yes: your lithium battery allows 200 A and 300 A for a few seconds, "
            "and {} takes 200 A and 300 A at first.",
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
    [
        ({"cable.gauge": "2/0"}, ["3/0", "4/0"], []),
        ({"cable.gauge": "4/0"}, [], []),
        ({"cable.area": 70}, [], [95, 120]),
        ({"cable.area": 120}, [], []),
        ({}, [], []),
    ],
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
        ({"battery.cca": 800, "reading.current": 360}, False, 9.6),  # 45 %
        ({"battery.cca": 800, "reading.current": 359}, False, 12.6 - 359 * 6.0 / 800),
        ({"battery.cca": 800, "reading.current": 440}, False, 9.6),  # 55 %
        ({"battery.cca": 800, "reading.current": 441}, False, 12.6 - 441 * 6.0 / 800),
        ({"battery.cca": 1000, "reading.current": 600}, False, 9.0),
    ],
)
def test_the_least_volts_under_load(facts: Facts, small: bool, lowest: float) -> None:
    found = load_reading.read_under_load(case({**facts, "reading.load_voltage": 10}))
    assert found.small is small
    assert found.lowest == pytest.approx(lowest)


@pytest.mark.parametrize(("amps", "shown"), [(0, False), (0.5, True)])
def test_a_session_without_a_current_takes_nothing(amps: float, shown: bool) -> None:
    facts: Facts = {"battery.capacity": 100, "battery.chemistry": "agm", "load.burst": 5, "load.bursts": 20}
    assert bool(session.figures(case(facts), amps)) is shown


@pytest.mark.parametrize(
    ("facts", "count"),
    [
        ({"reading.load_voltage": 10}, 1),
        ({"reading.load_voltage": 14.9}, 1),
        ({"reading.load_voltage": 20}, 2),
        ({"reading.load_voltage": 33}, 3),
        ({"reading.load_voltage": 46}, 4),  # 44.8 to 59 V is a 48 V system
        ({"reading.load_voltage_at_load": 20}, 2),
        ({"reading.load_voltage": 10, "reading.voltage": 25.2}, 2),
        ({"reading.load_voltage": 20, "bank.voltage": 48}, 4),
    ],
)
def test_how_many_batteries_a_reading_under_load_spans(facts: Facts, count: float) -> None:
    assert load_reading.batteries_of(case(facts)) == count


def test_without_a_label_lithium_is_counted_on_for_half() -> None:
    known = case({**LFP, "battery.capacity": 200}, ("note:no_idea",))
    found = lithium.limits(known)
    assert found is not None
    head = plain(lithium.still_open(known, found, 200, 300))
    assert head.startswith("Without the label count on 100 A in the first instant, and your thruster takes 300 A")


@pytest.mark.parametrize(
    ("facts", "cues", "us"),
    [
        ({"cable.gauge": "2/0"}, (), True),
        ({"cable.area": 70}, (), False),
        ({}, (), False),
        ({"cable.gauge": "2/0"}, ("detail:to_mm2",), False),
        ({"cable.area": 70}, ("detail:to_awg",), True),
        ({"cable.gauge": "2/0"}, ("detail:to_mm2", "detail:to_awg"), True),
    ],
)
def test_whose_sizes_come_first(facts: Facts, cues: tuple[str, ...], us: bool) -> None:
    assert fitting.us_first(case(facts, cues)) is us


@pytest.mark.parametrize(
    ("facts", "fact"),
    [
        ({"cable.gauge": "2/0"}, None),
        ({"cable.gauge": "00"}, None),
        ({"cable.area": 70}, None),
        ({}, None),
        ({"cable.gauge": "5/0"}, "cable.gauge"),  # in no table
        ({"cable.gauge": "2/0", "cable.insulation": 40}, "cable.insulation"),
    ],
)
def test_a_cable_that_no_table_holds_is_asked_about(facts: Facts, fact: str | None) -> None:
    if fact is None:
        circuit.must_know(case(facts))
        return
    with pytest.raises(Missing) as lack:
        circuit.must_know(case(facts))
    assert lack.value.fact == fact


def test_a_rating_of_a_case_that_lists_none_is_not_told() -> None:
    assert supply.usual(case({"battery.group": "99"}), "cca_low", "cca_high", "A") == ""
    assert supply.usual(case({"battery.group": "31"}), "no_such", "cca_high", "A") == ""
    told = supply.usual(case({"battery.group": "31"}), "cca_low", "cca_high", "CCA")
    assert plain(told) == "a group 31 battery usually has 650 to 1150 CCA"


def test_of_two_batteries_told_of_without_a_choice_both_are_shown() -> None:
    known = case({"battery.chemistry": "agm", "battery.cca": (1000, 900), "load.current": 340})
    found = abreast.batteries(known, topic("run-check").answer)
    assert [option.verdict for option in found.compare] == ["yes", "yes"]
    assert found.figures == found.compare[0].figures


def test_the_least_volts_under_load_are_worked_out() -> None:
    known = case({"battery.cca": 800, "reading.current": 200, "reading.load_voltage": 10})
    load_reading.read_under_load(known)
    assert "7.5 mΩ: 12.60 V less 200 A x 7.5 mΩ = 11.10 V for each 12 V" in steps(known)


def test_what_is_relied_on_of_several_lithium_batteries_is_told() -> None:
    known = case({**LFP, "battery.max_current": 150, "battery.count": 2})
    lithium.limits(known)
    assert "Two in parallel share unequally: 240 A of 300 A is relied on" in steps(known)


@pytest.mark.parametrize(
    ("facts", "cues", "converts"),
    [
        ({"charger.current": 30, "charger.kind": "dc-dc"}, (), True),
        ({"charger.current": 30, "charger.input_voltage": 24}, (), True),
        ({"charger.current": 30}, ("thing:dcdc",), True),
        ({"charger.current": 30}, ("word:boost",), True),
        ({"charger.current": 30, "charger.kind": "smart"}, (), False),
        ({"charger.kind": "dc-dc"}, (), False),  # how many amps is not said
    ],
)
def test_a_charger_that_takes_from_a_battery(facts: Facts, cues: tuple[str, ...], converts: bool) -> None:
    assert converter.converts(case(facts, cues)) is converts


@pytest.mark.parametrize(
    ("facts", "thin", "size"),
    [
        # at 105 °C 4 AWG carries 160 A, 2 AWG 210 A, 1 AWG 245 A, 1/0 285 A, 2/0 330 A
        ({"load.current": 100, "cable.gauge": "2"}, False, None),
        ({"load.current": 220, "cable.gauge": "2"}, True, "1/0 AWG"),  # a 300 A fuse, and 1 AWG takes 250 A
        ({"load.current": 200, "cable.gauge": "2"}, False, "1 AWG"),  # a 250 A fuse
        ({"load.current": 5000, "cable.gauge": "4/0"}, False, ""),  # beyond the list
    ],
)
def test_a_cable_too_thin_and_the_next_one(facts: Facts, thin: bool, size: str | None) -> None:
    known = case(facts)
    band = fusing.ratings(known)
    if band.load:
        assert fusing.too_thin(known, band) is thin
    if size is not None:
        assert plain(fusing.next_cable(known, band)) == size


@pytest.mark.parametrize(
    ("facts", "capacity"),
    [
        ({"battery.capacity": (100, 140), "bank.layout": "parallel"}, 240),
        ({"battery.capacity": (100, 140)}, 100),
        ({"battery.capacity": 100, "battery.count": 2}, 200),
        ({"battery.capacity": 100, "bank.count": 2}, 100),
    ],
)
def test_amp_hours_charged_together(facts: Facts, capacity: float) -> None:
    known = case(facts)
    assert charging.capacity(known) == capacity
    assert ("100 Ah and 140 Ah add up to 240 Ah" in steps(known)) is (capacity == 240)


@pytest.mark.parametrize(
    ("charge", "chemistry", "urgency"),
    [(49, "agm", "today"), (50, "agm", "routine"), (80, None, "routine"), (49, None, "today"), (10, "lfp", "routine")],
)
def test_a_lead_battery_under_half_is_for_today(charge: float, chemistry: str | None, urgency: str) -> None:
    assert laid_up.urgency(case({"battery.chemistry": chemistry} if chemistry else {}), charge) == urgency


def test_the_mark_of_a_picture_has_its_name_and_place() -> None:
    found = chart.chart(
        "line", "t", ("x", "A"), ("y", "V"), [("s", [(0, 1), (2, 3)])], [("l", 9.0)], ("yours", 4.0, 5.0)
    )
    assert found["mark"] == {"label": "yours", "x": 4.0, "y": 5.0}
    assert (found["x"], found["y"]) == ({"label": "x", "unit": "A"}, {"label": "y", "unit": "V"})
    assert found["series"] == [{"label": "s", "points": [[0, 1], [2, 3]]}]
    assert found["limits"] == [{"label": "l", "value": 9.0}]
    assert "mark" not in chart.chart("line", "t", ("x", "A"), ("y", "V"), [])


@pytest.mark.parametrize(("cca", "shown"), [(100, False), (160, False), (171, True), (190, True), (800, True)])
def test_a_session_ends_with_volts_only_where_any_are_left(cca: float, shown: bool) -> None:
    """Of about 12.6 V at rest 340 A x 6.0 / 160 CCA would take 12.75 V, 6.0 / 171 CCA 11.9 V."""
    known = case(
        {"battery.capacity": 100, "battery.chemistry": "agm", "battery.cca": cca, "load.burst": 1, "load.bursts": 1}
    )
    assert ("end_voltage" in {item.name for item in session.figures(known, 340)}) is shown


@pytest.mark.parametrize(
    ("facts", "inrush"),
    [
        ({"load.model": "minnow"}, 210),  # the catalogue's own, not 1.5 x 120 A
        ({"load.model": "minnow", "load.current": 120}, 210),
        ({"load.model": "minnow", "load.current": 100}, 150),  # a stated current beats the model's
        ({"load.current": 100}, 150),
    ],
)
def test_the_first_instant_of_a_model(facts: Facts, inrush: float) -> None:
    assert case(facts)["load.peak"] == inrush


@pytest.mark.parametrize(
    ("size", "shown"), [("18", ["18", "16", "14"]), ("16", ["18", "16", "14", "12"]), ("4/0", ["2/0", "3/0", "4/0"])]
)
def test_the_picture_of_a_cable_ends_with_the_list(size: str, shown: list[str]) -> None:
    known = case({"load.current": 10, "load.kind": "thruster", "cable.length": 5})
    american, _ = circuit.sizes(known)
    found: Any = circuit.bars(known, 10, next(item for item in american if item.name == size))
    assert [name.partition("\u00a0")[0] for name in found["x"]["values"]] == shown


def test_the_hazard_of_a_frozen_battery_is_worked_out() -> None:
    known = case({"battery.chemistry": "flooded", "battery.charge": 0, "ambient.temperature": -15})
    answer = charging.frozen_answer(topic("charger-size"), known)
    assert (answer.verdict, answer.urgency) == ("stop", "today")
    assert "At 0 % of charge the acid freezes at" in steps(known)
