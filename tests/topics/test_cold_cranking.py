"""Cranking amps and the share of warm power in the cold."""

from __future__ import annotations

import pytest

from service.render.as_text import as_text
from service.reply import Answer
from service.topics.cold_cranking import TOPIC
from tests.talks import talk
from tests.topics import readings
from tests.topics.readings import Facts, asks, figures


def asked(facts: Facts, *cues: str) -> Answer:
    return readings.asked(TOPIC, facts, cues)


@pytest.mark.parametrize(
    ("facts", "amps", "share"),
    [
        ({"battery.cca": 700, "ambient.temperature": -17.8}, 700, 40),  # 0 °F, where the rating itself is given
        ({"battery.cca": 700, "ambient.temperature": -12.2}, 756.4, 47.9),
        ({"battery.cca": 700, "ambient.temperature": 0}, 875, 65),
        ({"battery.cca": 650, "ambient.temperature": 10}, 812.5, 78.1),
        ({"battery.ca": 1000, "ambient.temperature": -18}, 800, 39.6),
        ({"battery.cca": 650}, 812.5, 65),  # at 0 °C where nothing is said
    ],
)
def test_amps_and_share_stand_apart(facts: Facts, amps: float, share: float) -> None:
    answer = asked(facts)
    assert answer.verdict == "information"
    assert figures(answer)["cranking_current"] == pytest.approx(amps, abs=0.6)
    assert figures(answer)["share_of_warm_power"] == pytest.approx(share, abs=0.5)


@pytest.mark.parametrize(
    ("text", "step"),
    [
        ("700 CCA at 0 F, what is left?", "700 CCA x (1 + 0.25 x (-18 + 18) / 18) = 700 A"),
        ("700 CCA at 10 F, what is left?", "700 CCA x (1 + 0.25 x (-12.2 + 18) / 18) = 756 A"),
        ("700 CCA at -5 C, what is left?", "700 CCA x (1 + 0.25 x (-5 + 18) / 18) = 826 A"),
    ],
)
def test_the_sum_is_printed_with_the_numbers_it_was_done_with(text: str, step: str) -> None:
    (found,) = talk(text).answers
    assert step in [item.say.replace("\u00a0", " ") for item in found.working]


def test_above_freezing_it_is_at_least_so_much() -> None:
    assert "at least" in asked({"battery.cca": 650, "ambient.temperature": 10}).headline


def test_under_minus_30_no_amps_are_told() -> None:
    assert "cranking_current" not in figures(asked({"battery.cca": 650, "ambient.temperature": -35}))


def test_without_a_rating_the_share_is_told() -> None:
    answer = asked({"ambient.temperature": -10})
    assert (answer.verdict, asks(answer)) == ("needs-facts", ["battery.cca"])
    assert figures(answer)["share_of_warm_power"] == pytest.approx(50.96, abs=0.1)
    assert asked({}).verdict == "information"
    assert asked({"ambient.temperature": 0}, "detail:share").verdict == "information"


def test_two_temperatures_are_compared() -> None:
    answer = asked({"battery.cca": 650, "ambient.temperature": (-20.6, 10)})
    assert [round(float(option.figures[0].value)) for option in answer.compare] == [627, 812]


def test_lithium_has_no_cca() -> None:
    assert asked({"battery.chemistry": "lfp", "ambient.temperature": -10}).figures == ()


@pytest.mark.parametrize(
    ("text", "amps"),
    [
        ("650 CCA at plus 5, what does it give?", "812 A"),
        ("850 CCA battery at 10 C, how much is left to crank?", "1062 A"),
        ("750 CCA, what is left at minus 9?", "843 A"),
        ("730 CCA at 0 C, how many amps to crank?", "912 A"),
    ],
)
def test_what_is_given_rounds_down_wherever_it_stands(text: str, amps: str) -> None:
    shown = as_text(talk(text)).replace("\n  ", " ")
    number, above = amps.partition(" ")[0], str(int(amps.partition(" ")[0]) + 1)
    assert number in shown
    assert above not in shown
