"""Standing drain: amp-hours a day and days to half."""

from __future__ import annotations

import pytest

from service.reply import Answer
from service.topics.standing_drain import TOPIC
from tests.talks import on, plain
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


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("Battery was full when I left, three weeks later it read 12.1 V. Something draws 40 mA. Would that explain "
         "it? The battery is 90 Ah.", "No: 40 mA took 20.2 Ah in 21 days, which leaves about 75 %, but 12.1 V means "
         "about 30 %"),
        ("Full on 1st June, 12.2 V four weeks after. meter shows 25 mA with all off. 100 Ah AGM. Does that account for "
         "it?", "No: 25 mA took 16.8 Ah in 28 days"),
        ("Left it full; 6 weeks later 12.4 V. The alarm takes 20 mA. 75 Ah flooded. Is that the reason?",
         "Yes: 20 mA took 20.2 Ah in 42 days, which leaves about 65 %, and 12.4 V means about 70 %"),
        ("A drain of 40 mA on 90 Ah for three weeks, all right?", "Yes: 40 mA reaches half after 46 days"),
        ("Explain what 40 mA does to 90 Ah in three weeks, at 12.5 V now", "Yes: 40 mA reaches half"),
        ("A drain of 40 mA on 90 Ah, how long?", "About 46 days until half"),
    ],
)  # fmt: skip
def test_the_drain_is_held_against_what_was_read(text: str, start: str) -> None:
    assert plain(on("standing-drain", text).headline).startswith(start)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        (
            "left boat 5 weeks, battery flat. 75ah. how much does it draw?",
            "About 84 mA or more on average",
        ),
        ("battery 100 Ah full, dead after 3 weeks. what current has been drawn?", "About 190 mA or more on average"),
        ("90ah was flat after ten days, how many mA is something taking?", "About 370 mA or more on average"),
        ("battery flat after 5 weeks, how much does it draw?", "We can't say yet"),
        ("90 Ah, flat after ten days. what is draining it?", "We can't say yet"),
    ],
)
def test_a_battery_found_flat_tells_the_least_that_was_drawn(text: str, start: str) -> None:
    assert plain(on("standing-drain", text).headline).startswith(start)
