"""Standing drain: amp-hours a day and days to half."""

from __future__ import annotations

import pytest

from service.reply import Answer
from service.topics.standing_drain import TOPIC
from tests.topics import readings
from tests.topics.readings import Facts, asks, figures

PARALLEL = {"battery.count": 2, "bank.layout": "parallel"}
SERIES = {"battery.count": 2, "bank.layout": "series"}


def asked(facts: Facts) -> Answer:
    return readings.asked(TOPIC, facts)


@pytest.mark.parametrize(
    ("facts", "verdict", "days", "loss"),
    [
        ({"drain.current": 0.02, "battery.capacity": 100}, "information", 104.17, 0.48),
        ({"drain.current": 0.5, "battery.capacity": 110}, "information", 4.583, 12),
        ({"drain.current": 0.5, "battery.capacity": 100, "battery.charge": 75}, "information", 2.083, 12),
        ({"drain.current": 0.5, "battery.capacity": 92} | PARALLEL, "information", 7.667, 12),
        ({"drain.current": 0.4, "battery.capacity": 100} | SERIES, "information", 5.208, 9.6),
        ({"drain.current": 0.02, "battery.capacity": 70, "storage.time": 30}, "yes", 72.9, 0.48),
        ({"drain.current": 0.02, "battery.capacity": 70, "storage.time": 70}, "marginal", 72.9, 0.48),
        ({"drain.current": 0.08, "battery.capacity": 110, "storage.time": 90}, "no", 28.6, 1.92),
        ({"drain.current": 0.4, "battery.capacity": 100, "reading.voltage": 23.9}, "information", 0, 9.6),
    ],
)
def test_days_and_amp_hours(facts: Facts, verdict: str, days: float, loss: float) -> None:
    answer = asked(facts)
    assert answer.verdict == verdict
    assert figures(answer)["days_to_half"] == pytest.approx(days, abs=0.05)
    assert figures(answer)["daily_loss"] == pytest.approx(loss)


def test_without_capacity_the_daily_loss_is_still_told() -> None:
    answer = asked({"drain.current": 0.03})
    assert (answer.verdict, asks(answer)) == ("needs-facts", ["battery.capacity"])
    assert figures(answer)["daily_loss"] == pytest.approx(0.72)


def test_without_a_current_it_is_asked_for() -> None:
    assert asks(asked({"battery.capacity": 100})) == ["drain.current"]


def test_a_battery_under_half_is_for_today() -> None:
    assert asked({"drain.current": 0.4, "battery.capacity": 100, "battery.charge": 40}).urgency == "today"
