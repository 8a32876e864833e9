"""Shorthand in which a bare figure stands for one of two things: a system or a loss, a jacket or a heat, an end or a
beginning."""

from __future__ import annotations

import pytest

from service.say import NB
from tests.talks import talk


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "told"),
    [
        # the volts of a system are no loss
        (("1/0, 18ft ow, 220A, 24V drop?",), "voltage-drop", "yes", "% of 24 V"),
        (("50mm2 7m 150A 12V drop?",), "voltage-drop", "yes", "% of 12 V"),
        (("what is the 24 V drop over 9 m of 95 mm2 at 260 A",), "voltage-drop", "yes", "% of 24 V"),
        (("0.6 V drop allowed, 24V, 7 m, 160A. cable?",), "cable-size", "information", "inside the 2.5 %"),
        # degrees that a cable stands are no heat of a battery
        (("2/0, 15ft ow, 240A, drop?", "75C ins, ER?"), "voltage-drop", "no", "may carry only 198 A of the 240 A"),
        (("50mm2, 3m, 230A ok?", "75C"), "voltage-drop", "no", "may carry only 195 A of the 230 A"),
        (("2/0 12ft 230A ok?", "it says 90 deg"), "voltage-drop", "yes", "2/0 AWG loses"),
        (("1/0 rated 90C, 10ft, 230A, ER, ok?",), "cable-size", "no", "1/0 AWG may carry 200 A"),
        (("er, 2/0, 10ft, 230A, ok?",), "voltage-drop", "yes", "2/0 AWG loses"),
        # the charge at which a time ends is not the charge now
        (("AGM 95Ah, 240A, 6s bursts, how many to 50%?",), "run-time", "information", "until it is half empty"),
        (("AGM 95Ah, 240A, 6s bursts, how many to 50%?", "gel same"), "run-time", "information", "bursts of 6 seconds"),
        (("AGM 110Ah, 12A, how long to 50%?",), "run-time", "information", "at 12 A until it is half empty"),
        (("gel 110Ah, 8A, how long down to 50 percent",), "run-time", "information", "at 8 A until it is half empty"),
        (("lithium 160Ah, 150A, 6s bursts, how many until 20%",), "run-time", "information", "down to 20 %"),
        (("110Ah gel down to 50%, how long to charge with 15A",), "charge-time", "information", "from 50 % to full"),
        (("LFP 160Ah, 150A cont, 300A 5s bursts. Minnow ok?",), "run-check", "yes", "allows 150 A"),
    ],
)  # fmt: skip
def test_a_bare_figure_is_read_by_what_stands_around_it(
    turns: tuple[str, ...], topic: str, verdict: str, told: str
) -> None:
    (answer,) = talk(*turns).answers
    assert (answer.topic, answer.verdict) == (topic, verdict)
    assert told in answer.headline.replace(NB, " ")


@pytest.mark.parametrize(
    "turns",
    [
        ("50mm2, 3m, 230A ok?", "75C, and the battery is hot"),
        ("50mm2, 3m, 230A ok?", "the battery is at 75C"),
        ("gel 100 Ah, 800 CCA, Minnow ok?", "it's at 75C"),
    ],
)
def test_a_battery_that_is_hot_stops_beside_a_cable(turns: tuple[str, ...]) -> None:
    assert talk(*turns).triage.urgency == "stop-now"
