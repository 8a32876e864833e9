"""Thousands of made messages: how many are understood, by noise and by topic; the tests' output shows it."""

from __future__ import annotations

from random import Random

import pytest

from service.leadsman import default_desk
from tests.generator.messages import LEVELS, messages
from tests.generator.outcomes import share, tally
from tests.generator.slips import with_slips, without_a_space

EACH = 600  # messages of a level
# A little under what was measured, so that a change that understands less shows here.
LEAST = {"plain": 91, "careless": 92, "story": 83, "slips": 87, "hurried": 80}  # right, in percent
MOST_WRONG = {"plain": 4.5, "careless": 3, "story": 5, "slips": 6, "hurried": 7}
LEAST_OF_A_TOPIC = 65  # of any, over all levels
FACTS_RIGHT, FACTS_WRONG = 99.0, 0.3  # of the facts stated, whatever the topic
MOST_STRAY = 20  # facts read from words that state none


@pytest.mark.slow
def test_made_messages_are_understood(tell):
    found = tally(default_desk(), (made for level in LEVELS for made in messages(EACH, level)))
    tell(found.table())
    levels, topics = found.levels.items(), found.topics.items()
    assert [name for name, counts in levels if share(counts, "right") < LEAST[name]] == []
    assert [name for name, counts in levels if share(counts, "wrong") > MOST_WRONG[name]] == []
    assert [name for name, counts in topics if share(counts, "right") < LEAST_OF_A_TOPIC] == []
    assert share(found.facts, "right") >= FACTS_RIGHT
    assert share(found.facts, "wrong") <= FACTS_WRONG
    assert found.stray.total() <= MOST_STRAY, found.stray.most_common(10)


def test_the_same_seed_makes_the_same_messages():
    assert list(messages(60, "hurried")) == list(messages(60, "hurried"))
    assert list(messages(60, "hurried")) != list(messages(60, "hurried", seed=2))


def test_slips_leave_numbers_and_their_units():
    rng = Random(1)
    text = "With a 12.6 volts reading, 340 amperes and 2/0 cable: battery?"
    for _ in range(50):
        typed = without_a_space(rng, with_slips(rng, text, 3))
        assert all(said in typed for said in ("12.6 volts", "340 amperes", "2/0")), typed
