"""Two things weighed side by side get a sentence, never a list of labels with a word behind each."""

from __future__ import annotations

import pytest

from service.reply import Answer, Figure
from service.wording.both import of_both
from tests.test_headlines import head


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("A 6-year-old gel and a 5-year-old AGM. Which of them must be replaced?",
         "Neither by age alone: the gel of 6 years and the AGM of 5 years are in their last years"),
        ("My AGM is 9 years old and the gel is 2 years old. Which one has to go?",
         "The AGM of 9 years, most likely: it is past its usual life, while the gel of 2 years"),
        ("A gel of 2 years and an AGM of 3 years, which of the two should I replace?", "Neither: the gel of 2 years"),
        ("A flooded battery of 8 years and an AGM of 9 years, do they need replacing?", "Most likely both: "),
        ("One AGM is 5 years old, the other is 6 years old. Time for new ones?", "Perhaps both soon: the one of 5"),
    ],
)  # fmt: skip
def test_of_two_old_batteries_the_one_to_go_is_named(text, opens):
    assert head(text, topic="replacement")[: len(opens)] == opens


LONG = "Only just: for 100 Ah of gel 10 A fills it slowly, and a charger of 10 to 20 A is what suits a battery of it"


@pytest.mark.parametrize(
    ("first", "second", "expected"),
    [
        ("yes", "yes", "Yes in both cases, AGM and gel."),
        ("yes", "no", "Yes for AGM, no for gel."),
        ("marginal", "no", "Only just for AGM, no for gel."),
    ],
)
def test_two_verdicts_are_a_sentence(first, second, expected):
    both = [Answer("charger-size", verdict, f"{LONG} {at} times.") for at, verdict in enumerate((first, second))]
    assert of_both(["AGM", "gel"], both, both[1]) == expected


def test_what_tells_two_apart_and_changes_no_figure_is_left_out():
    until_half = Figure("time_to_usable_limit", "to half", 21.0, "min")
    both = [Answer("run-time", "yes", f"Yes: {count} bursts fit.", (until_half,)) for count in ("nine", "five")]
    assert of_both(["9", "5"], both, both[0]) == "Yes: nine bursts fit."


def test_a_second_sentence_goes_on_in_small_letters():
    both = [Answer("run-time", "no", "No: it needs 24 V."), Answer("run-time", "information", "It lasts 9 hours.")]
    assert of_both(["9", "5"], both, both[0]) == "No: it needs 24 V; it lasts 9 hours."
    agm = [both[0], Answer("run-time", "information", "AGM lasts 9 hours.")]
    assert of_both(["9", "5"], agm, agm[0]) == "No: it needs 24 V; AGM lasts 9 hours."
