"""Days of the year in a message, and the days between them."""

from __future__ import annotations

import pytest

from grammar.told.times import dates
from service.finish import finished
from service.topics import topic
from tests.building import case


@pytest.mark.parametrize(
    ("text", "days"),
    [
        ("I lay her up on 1 October", ["1 October"]),
        ("from October to April", ["1 October", "1 April"]),
        ("15th of November until March", ["15 November", "1 March"]),
        ("on Nov 3 at 5 C", ["3 November"]),
        ("between 20 Sept and 5 May", ["20 September", "5 May"]),
        ("in May", ["1 May"]),
        ("Nov-Apr", ["1 November", "30 April"]),
        ("December to March", ["1 December", "1 March"]),
        ("ordered 12-mar", []),
        ("may I charge it", []),
        ("it may march on", []),
        ("12.4 V in 3 decades", []),
        ("on 31 February", []),
        ("on 31 October", ["31 October"]),
        ("it marched to Marchwood", []),
    ],
)
def test_days_that_are_named(text: str, days: list[str]) -> None:
    assert [item.words for item in dates.told(text)] == days


@pytest.mark.parametrize(
    ("text", "end"), [("until 1 April", True), ("by May", True), ("from May", False), ("on 3 May", False)]
)
def test_a_time_to_be_reached_is_told_from_a_start(text: str, end: bool) -> None:
    assert dates.told(text)[0].end is end


@pytest.mark.parametrize(
    ("month", "day", "days", "later"),
    [
        (10, 1, 0, "1 October"),
        (10, 1, 57, "27 November"),
        (12, 31, 1, "1 January"),
        (2, 28, 1, "1 March"),
        (1, 1, 364, "31 December"),
        (7, 15, 180, "11 January"),
    ],
)
def test_some_days_later(month: int, day: int, days: float, later: str) -> None:
    assert dates.later(dates.YearDay(month, day), days).words == later


@pytest.mark.parametrize(
    ("first", "last", "days"),
    [((10, 1), (4, 1), 182), ((4, 1), (10, 1), 183), ((5, 5), (5, 5), 0), ((1, 1), (12, 31), 364)],
)
def test_days_between(first: tuple[int, int], last: tuple[int, int], days: int) -> None:
    assert dates.between(dates.YearDay(*first), dates.YearDay(*last)) == days


def laid_up(text: str, **facts: object):
    return finished(topic("storage"), case({"battery.chemistry": "flooded", **facts}, text=text))


def test_a_lay_up_is_told_to_its_date() -> None:
    found = laid_up("laid up on 1 October", **{"ambient.temperature": 30})
    assert any(step.say == "Laid up on 1 October, charge it by 16 December" for step in found.working)  # 76 days


def test_what_is_left_at_its_end() -> None:
    found = laid_up("from October to April")
    left = next(item for item in found.figures if item.name == "state_of_charge_on_date")
    assert left.label == "left on 1 April"
    assert left.value == pytest.approx(100 - 182 * 5 / 30.4375)
    warmer = laid_up("from October to April", **{"ambient.temperature": 30})
    assert next(item for item in warmer.figures if item.name == left.name).value == pytest.approx(
        100 - 182 * 10 / 30.4375
    )


def test_an_end_alone_has_no_start_to_count_from() -> None:
    found = laid_up("until April")
    assert not any("April" in step.say for step in found.working)


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("it goes into the barn each October and comes out at the end of March", "1 October", "31 March"),
        ("she is hauled out in late September and goes back in in mid May", "30 September", "15 May"),
        ("out of the shed again in April; she went inside on 12 October", "12 October", "1 April"),
        ("she comes out of the water in October and is launched in April", "1 October", "1 April"),
        ("relaunched on 3 May", None, "3 May"),
        ("each may be charged", None, None),
        ("from the end of September until the 1st of May", "30 September", "1 May"),
    ],
)
def test_the_days_on_which_a_lay_up_begins_and_ends(text: str, first: str | None, last: str | None) -> None:
    assert tuple(day and day.words for day in dates.spell(text)) == (first, last)
