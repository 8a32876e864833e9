"""Conversations about cables, fuses, studs and banks: the question that was put is the one that is answered."""

from __future__ import annotations

import pytest

from service.render.as_text import as_text
from tests.talks import talk


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "parts"),
    [
        (("is 50 mm2 enough for the Pike, 9.5 m away from its battery",), "cable-size", "no", ("fit 95 mm² (3/0 AWG",)),
        (("Will 1 AWG or 2 AWG do for my Pike 30 ft away?",), "cable-size", "no", ("fit 3/0 AWG (95 mm²",)),
        (("May I use the engine block as the minus of my windlass and lay only a plus?",), "cable-size", "no",
         ("No: neither hull nor engine may carry it",)),
        (("my Pike hangs on 9 m of 50mm2. which fuse?",), "fuse-size", "no", ("260 A; fit 95 mm²",)),
        (("1/0 cable to the Pike, there's a 500 A fuse, I think of 250. which?",), "fuse-size", "no",
         ("Neither: 250 A is too small for 260 A, 500 A too large for 1/0 AWG; fit 350 A",)),
        (("fuse for a 12 V thruster of 420 amps?",), "fuse-size", "information",
         ("Fit a 600 A fuse", "a slow bolt-down one, or class T", "the manual's stands")),
        (("which fuse has a 6 kW 12 V thruster",), "fuse-size", "information",
         ("700 A in all: no single cable carries 500 A", "each with a fuse of its own")),
    ],
)  # fmt: skip
def test_the_last_answer_tells(turns, topic, verdict, parts):
    reply = talk(*turns)
    found = [(item.topic, item.verdict) for item in reply.answers]
    assert (topic, verdict) in found
    text = " ".join(as_text(reply).split()).replace("\u00a0", " ")
    for part in parts:
        assert part in text
