"""What must stay on is never taken off the battery by an answer, nor by a caution of a later turn."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.reply import Answer


def last(*turns: str) -> Answer:
    desk, thread = default_desk(), None
    for turn in turns:
        reply = desk.ask(turn, thread)
        thread = reply.thread
    return reply.answers[0]


@pytest.mark.parametrize(
    ("text", "cables_off"),
    [
        ("The gas alarm must stay on, 40 mA, 90 Ah gel. How long can the boat be left?", False),
        ("gel 90 Ah, how often do I look at it over winter", True),
    ],
)
def test_the_cables_stay_where_an_alarm_hangs_on_them(text, cables_off):
    found = last(text)
    assert ("take the cables off" in found.headline) == cables_off


@pytest.mark.parametrize(
    ("turns", "all_off"),
    [
        (("What panel keeps a 110 Ah wet battery full with a gas detector on, 60 mA?", "and in December?"), False),
        (("What panel keeps a 110 Ah wet battery full over the winter?",), True),
    ],
)
def test_a_panel_that_feeds_an_alarm_is_no_reason_to_disconnect(turns, all_off):
    said = " ".join(item.say for item in last(*turns).cautions)
    assert ("Disconnect everything" in said) == all_off
