"""A word that names a topic beside the question that is asked: the studs of posts, amps of an adapter, CCA of two."""

from __future__ import annotations

import pytest

from service.say import NB
from tests.talks import talk


@pytest.mark.parametrize(
    ("turns", "topic", "verdict", "told"),
    [
        # posts that have studs, or a nut
        (("which nut goes on posts that are threaded",), "terminals", "information", "3/8-16 on plus"),
        (("spanner size for these posts with studs",), "terminals", "information", "3/8-16 on plus"),
        (("do round posts take ring lugs?",), "terminals", "information", "Round posts take clamps"),
        # an adapter is asked about, not the lug that has to go on it
        (("car posts, my lugs are M8. adapters ok for 200 A?",), "terminals", "information", "An adapter works"),
        (("tapered posts on the new wet one, rings are M10. can I use an adapter, good enough for 240 amps?",),
         "terminals", "information", "An adapter works"),
        # cranking amps that differ, with no load told
        (("will it matter that one has 600 CCA and the other 700, both gel in parallel",), "bank-wiring",
         "information", "and 1300 CCA"),
        (("two wets in series, is it a problem that the new one has 750 CCA and the old one 650",), "bank-wiring",
         "no", "Yes: an old and a new battery must not be joined in series"),
        # what a word means is not told again for the next noun
        (("What is a BMS, and can I leave the fuse out with it?", "90 Ah lithium, 50 mm2 cable"), "fuse-size", "no",
         "the fuse stays in"),
        (("What does CCA mean and is a 25 A charger too big?", "it's an 80 Ah gel"), "charger-size", "no",
         "25 A is too much"),
        # volts under the load are a better witness than the age
        (("Minnow, wet 520 CCA, 12.7 at rest falls to 9.0 at the posts. finished?", "it's four years old, does that "
          "change anything?"), "replacement", "marginal", "falls to 9.0 V where a good one holds 11.3 V"),
    ],
)  # fmt: skip
def test_the_question_stands_before_the_word(turns: tuple[str, ...], topic: str, verdict: str, told: str) -> None:
    (answer,) = talk(*turns).answers
    assert (answer.topic, answer.verdict) == (topic, verdict)
    assert told in answer.headline.replace(NB, " ")


def test_the_same_with_another_battery_asks_both_questions_again() -> None:
    first = "90 Ah AGM, 150 A thruster: how many bursts of 5 seconds? And how big must it be for eight minutes?"
    reply = talk(first, "ok, and the same with a 120 Ah lithium, limit 200 A, peak 400 A?")
    assert [item.topic for item in reply.answers] == ["run-time", "bank-size"]


def test_lugs_for_cables_that_are_made_up_ask_no_cable_size() -> None:
    text = "I make up my cables. Stud is 3/8 inch, the lugs are M8, do they fit? Fuse at battery or motor?"
    assert {item.topic for item in talk(text).answers} == {"terminals", "fuse-size"}
