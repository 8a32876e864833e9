"""The changes that may turn a verdict on thruster supply: which values are tried, in which order, in what words."""

from __future__ import annotations

from typing import Any

import pytest

from service.judgements import charging, supply_levers
from tests.building import case

Facts = dict[str, Any]
LEAD: Facts = {"battery.chemistry": "agm", "load.current": 340}
LITHIUM: Facts = {"battery.chemistry": "lfp", "battery.max_current": 100, "load.current": 200}
UNLIKE: Facts = {
    "battery.nominal": 12,
    "battery.count": 1,
    "load.model": "sturgeon",
    "battery.cca": 800,
}  # 12 V for 24 V


@pytest.mark.parametrize(
    ("facts", "values"),
    [
        (LEAD, [850, 950]),  # 510 A x 6.0 / 3.6, then up to the next 50, then 100 more
        ({"battery.chemistry": "agm", "load.peak": 500}, [834, 850, 950]),  # 833.3
        ({**LEAD, "battery.count": 2}, [425, 450, 550]),  # two in parallel share it
        ({**LITHIUM, "battery.count": 2}, [500, 600]),  # one lead battery in their place
        ({**LEAD, "load.model": "pike", "load.current": 100}, [650, 750]),  # the catalogue asks for more
        # 5.5 m of 50 mm2 take 1.18 V of 300 A: 12.6 - 8.0 - 1.18 = 3.42 V are left, and 300 x 6.0 / 3.42
        ({"battery.chemistry": "agm", "load.peak": 300, "cable.length": 5.5, "cable.area": 50}, [500, 527, 550, 650]),
        # 12 m of it take 5.15 V of 600 A: no battery leaves the motor its 8.0 V
        ({"battery.chemistry": "agm", "load.peak": 600, "cable.length": 12, "cable.area": 50}, [1000, 1100]),
        ({"battery.chemistry": "lithium-other", "load.current": 340}, []),
        ({"battery.chemistry": "agm"}, []),
    ],
)
def test_cca_to_look_for(facts: Facts, values: list[float]) -> None:
    assert list(supply_levers.enough_cca(case(facts))) == values


@pytest.mark.parametrize(
    ("facts", "also", "words"),
    [
        (LEAD, {}, "850 CCA"),
        ({**LEAD, "battery.count": 2}, {}, "850 CCA each"),
        (LITHIUM, {"battery.chemistry": "agm"}, "a lead battery of 850 CCA"),
        (
            {**LITHIUM, "battery.count": 2, "bank.layout": "series"},
            {"battery.chemistry": "agm", "battery.count": 2},
            "a lead battery of 850 CCA",
        ),
        (
            {**LITHIUM, "battery.count": 2},
            {"battery.chemistry": "agm", "battery.count": 1},
            "a lead battery of 850 CCA",
        ),
    ],
)
def test_a_lead_battery_in_the_place_of_lithium(facts: Facts, also: Facts, words: str) -> None:
    assert supply_levers.as_lead(case(facts), 850) == also
    assert supply_levers.in_words_of_cca(case(facts), 850).replace("\u00a0", " ") == words


@pytest.mark.parametrize(
    ("facts", "counts", "layout", "words"),
    [
        ({**LEAD, "battery.cca": 500}, [2, 3, 4], "parallel", "two equal batteries in parallel (plus to plus)"),
        (
            {**LEAD, "battery.cca": 500, "bank.voltage": 24},
            [4, 6, 8],
            "series-parallel",
            "four equal batteries, two strings of two in series, side by side",
        ),
        ({**LEAD, "battery.cca": 500, "battery.count": 2}, [3, 4, 5], "parallel", "three equal batteries in parallel"),
        (LITHIUM, [2, 3, 4], "parallel", "two equal batteries in parallel"),
        (UNLIKE, [2], "series", "two equal batteries in series (plus to minus)"),
        (LEAD, [], "parallel", None),  # neither rating tells what one more would bring
    ],
)
def test_more_batteries(facts: Facts, counts: list[float], layout: str, words: str | None) -> None:
    known = case(facts)
    assert list(supply_levers.more_batteries(known)) == counts
    assert supply_levers.in_parallel(known, 2) == {"bank.layout": layout}
    if words:
        assert supply_levers.in_words_of_count(known, counts[0]).startswith(words)


@pytest.mark.parametrize(
    ("facts", "continuous", "peak"),
    [
        (LITHIUM, 200, 300),  # running, and 1.5 x that in the first instant
        ({**LITHIUM, "battery.count": 2}, 125, 188),  # 80 % of the sum counts: 200 / 1.6, 300 / 1.6 = 187.5
        ({**LITHIUM, "battery.count": 4, "bank.layout": "parallel"}, None, 94),  # 63 A are allowed already
        ({**LITHIUM, "ambient.temperature": -10}, 400, 300),  # half of it in the cold
        ({**LITHIUM, "load.current": 250, "battery.count": 2}, 157, 235),  # 156.25 and 234.4
    ],
)
def test_limits_that_carry_the_load(facts: Facts, continuous: float | None, peak: float) -> None:
    assert list(supply_levers.enough_limit(case(facts))) == ([] if continuous is None else [continuous])
    assert list(supply_levers.enough_peak(case(facts))) == [peak]


def test_no_limit_is_proposed_for_lead_nor_without_a_load() -> None:
    unloaded: Facts = {"battery.chemistry": "lfp", "battery.max_current": 100}
    for facts in (LEAD, unloaded):
        assert list(supply_levers.enough_limit(case(facts))) == []
        assert list(supply_levers.enough_peak(case(facts))) == []


@pytest.mark.parametrize(
    ("facts", "limit", "also"),
    [
        (LITHIUM, 200, {"battery.peak_current": 300}),
        (LITHIUM, 299, {"battery.peak_current": 300}),
        (LITHIUM, 300, {}),  # the first instant stays within the continuous limit
        ({**LITHIUM, "battery.peak_current": 300}, 200, {}),
        ({**LITHIUM, "battery.peak_current": 299}, 200, {"battery.peak_current": 300}),
        ({**LITHIUM, "battery.count": 2}, 188, {"battery.peak_current": 188}),
        ({**LITHIUM, "battery.count": 2, "battery.peak_current": 188}, 125, {}),
    ],
)
def test_the_peak_limit_that_goes_with_it(facts: Facts, limit: float, also: Facts) -> None:
    assert supply_levers.with_peak(case(facts), limit) == also


@pytest.mark.parametrize(
    ("facts", "volts"),
    [
        ({**LEAD, "reading.voltage": 12.1}, [12.4, 12.5, 12.6]),
        ({**LEAD, "reading.voltage": 24.2}, [24.8, 25.0, 25.2]),
        ({**LEAD, "reading.voltage": 9.0}, [12.4, 12.5, 12.6]),
        ({**LITHIUM, "reading.voltage": 12.1}, []),
        (LEAD, []),
    ],
)
def test_volts_after_charging(facts: Facts, volts: list[float]) -> None:
    assert list(supply_levers.charged(case(facts))) == volts


@pytest.mark.parametrize(
    ("facts", "charges"),
    [({**LEAD, "battery.charge": 40}, [50, 75, 100]), ({**LITHIUM, "battery.charge": 40}, []), (LEAD, [])],
)
def test_a_fuller_battery(facts: Facts, charges: list[float]) -> None:
    assert list(supply_levers.fuller(case(facts))) == charges


@pytest.mark.parametrize(
    ("facts", "volts"),
    [
        ({"battery.nominal": 24, "battery.count": 1, "load.model": "pike"}, [12]),
        ({"battery.nominal": 12, "battery.count": 1, "load.model": "sturgeon"}, []),  # one more in series mends that
        ({"battery.nominal": 12, "battery.count": 1, "load.model": "pike"}, []),
    ],
)
def test_a_bank_of_the_loads_volts(facts: Facts, volts: list[float]) -> None:
    assert list(supply_levers.right_volts(case(facts))) == volts


@pytest.mark.parametrize(
    ("celsius", "warmer"), [(-5, (1, 6, 11)), (0, (1, 6, 11)), (3, (6, 11)), (8, (11,)), (12, ()), (None, ())]
)
def test_temperatures_from_which_lithium_takes_more(celsius: float | None, warmer: tuple[float, ...]) -> None:
    assert charging.warmer(case({} if celsius is None else {"ambient.temperature": celsius})) == warmer


FROST: Facts = {"battery.chemistry": "lfp", "battery.capacity": 200, "load.model": "minnow", "ambient.temperature": -4}


@pytest.mark.parametrize(
    ("facts", "words"),
    [
        (FROST, "a battery kept at 0 °C or warmer, whose label allows 120 A all the time and 210 A for a few seconds"),
        (
            {**FROST, "battery.max_current": 200},
            "a battery kept at 0 °C or warmer, whose label allows 210 A for a few seconds",
        ),
        ({**FROST, "battery.max_current": 220}, "a battery kept at 0 °C or warmer"),
    ],
)
def test_warmth_gives_a_lithium_battery_its_limits_back(facts: Facts, words: str) -> None:
    frost = case(facts)
    (warm,) = supply_levers.warmer(frost)
    assert warm == 0
    assert supply_levers.in_words_of_warmth(frost, warm).replace("\u00a0", " ") == words
    assert not list(supply_levers.warmer(case({**facts, "ambient.temperature": 4})))
    assert not list(supply_levers.warmer(case({**facts, "battery.chemistry": "agm"})))


def test_what_is_relied_on_of_several_is_halved_by_the_cold() -> None:
    facts = {**FROST, "battery.max_current": 90}
    assert "180\u00a0A is relied on" not in supply_levers.in_words_of_count(case(facts), 3)
    assert "108\u00a0A is relied on" in supply_levers.in_words_of_count(case(facts), 3)  # 3 x 90 x 0.8 / 2


def test_a_limit_that_carries_the_running_amps_in_the_cold_is_no_peak_limit() -> None:
    assert supply_levers.with_peak(case(FROST), 240) == {"battery.peak_current": 210}  # 240 A are 120 A there
