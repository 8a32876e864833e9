"""What reading costs: no worse than linear in the length of a mail, and bounded for any text that is taken."""

from __future__ import annotations

from collections.abc import Callable
from random import Random

import pytest

from grammar import read
from service.leadsman import LONGEST, default_desk
from tests.generator.messages import data, message
from tests.timing import pace, seconds

WORDS, CHUNKS = 50, 60
MOST_TIMES = 60
MOST_SECONDS = 0.5
TRIES = 10
PIECES = {  # each repeated until the text is as long as may be
    "a reading": "12.6 ",
    "many readings": "12.{} drops to 9.{}, ",
    "whole numbers": "12 ",
    "growing numbers": "{} ",
    "amps": "340 A ",
    "Fahrenheit": "fahrenheit {} c ",
    "inches": '5" ',
    "a count": "2x",
    "a label": "cca: ",
    "per day": "5 a day ",
    "choices": "12 or ",
    "denials": "not 12 ",
    "kinds": "agm or gel or ",
    "a trade word": "battery ",
    "trade words": "battery 12 V 100 Ah thruster 300 A, ",
    "slips": "batetry thrutser ",
    "no spaces": "batterythruster",
    "requests": "what size of cable? ",
    "dangers": "smoke from the battery ",
    "denied dangers": "hot battery not hot ",
    "ordinary words": "the quick brown fox ",
    "lines": "\nx",
    "sentences": "x. ",
    "brackets": "((",
    "quotes": "a'",
    "one letter": "a",
    "nothing": "\u0000",
    "addresses": "a@b.",
    "letters": "b m ",
    "quoted letters": '"a" ',
    "shorthand": "agm; 14.4; ",
    "leave": "can i ",
    "runs": "20 ft ",
    "denied kinds": "not lithium ",
    "charging": "charger 14.4 ",
    "months": "in june\n",
    "labels": "CCA 650, RC 110; ",
    "as it runs": "it falls to 9.8 as we push the lever, ",
    "does he": "should she? ",
    "stories": "The lithium cut out at the quay, then it came back by itself; 120 Ah. ",
    "corrected": "sorry i read that wrong ",
    "too much": "going 20 A over, ",
}


def full(piece: str) -> str:
    """A piece repeated to the longest text that is taken; "{}" counts up."""
    text = "".join(piece.format(number, number) for number in range(LONGEST // len(piece) + 1))
    return ("x" + text)[:LONGEST]


@pytest.mark.slow
@pytest.mark.parametrize("piece", PIECES.values(), ids=PIECES.keys())
def test_the_longest_text_is_answered_soon(piece):
    desk, text = default_desk(), full(piece)
    desk.ask("Is 12.6 V good?")
    took, before = [], pace()
    for _ in range(TRIES):  # others on the machine change its pace at any time
        spent, after = seconds(lambda: desk.ask(text), times=1), pace()
        took.append(spent / max(before, after))
        before = after
        if took[-1] < MOST_SECONDS:
            break
    assert min(took) < MOST_SECONDS


def mails() -> list[str]:
    """Stories of so many words each."""
    rng = Random("cost")
    words: list[str] = []
    while len(words) < WORDS * CHUNKS:
        words += message(rng, rng.choice(sorted(data("templates"))), "story").text.split()
    return [" ".join(words[at : at + WORDS]) for at in range(0, WORDS * CHUNKS, WORDS)]


def _each(call: Callable[[str], object], parts: list[str]) -> float:
    """What one of the parts takes."""
    return seconds(lambda: [call(part) for part in parts], times=2) / len(parts)


@pytest.mark.slow
def test_a_long_mail_costs_no_more_than_its_parts(tell):
    desk, parts = default_desk(), mails()
    whole = " ".join(parts)
    for name, call in (("read", read), ("answer", desk.ask)):
        call(whole)
        took = [(_each(call, parts), seconds(lambda call=call: call(whole), times=2)) for _ in range(3)]
        one = min(short for short, _ in took)
        times = min(long for _, long in took) / one
        tell(f"cost: to {name} {WORDS * CHUNKS} words takes {times:.0f} times as long as {WORDS} ({1000 * one:.1f} ms)")
        assert times <= MOST_TIMES
