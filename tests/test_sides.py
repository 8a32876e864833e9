"""Two who differ: the headline names the one that the verdict takes; "is the yard right" gets its yes or no."""

from __future__ import annotations

import pytest

from tests.test_headlines import head


@pytest.mark.parametrize(
    ("text", "topic", "opens"),
    [
        ("My wife says a 480 CCA AGM is too weak for the Pike, I think it is fine. Who is right?", "run-check",
         "Your wife is right: your 480"),
        ("My wife says a 720 CCA AGM is too weak for the Pike, I think it is fine. Which of us is right?", "run-check",
         "You are right: your 720"),
        ("Skipper: 620 CCA is enough for a Pike. Me: too small. Who's right?", "run-check", "You are right: the Pike"),
        ("My brother reckons 12.1 at rest is fine for an AGM, I reckon it's flat. Who has it right?", "rest-voltage",
         "You are right: 12.1 V"),
        ("A 60 A charger on a 100 Ah gel: the salesman said it is fine, my husband said it is too big. Who is wrong?",
         "charger-size", "The salesman is wrong: 60 A"),
        ("A friend has a 40 W panel and a tracker of 0.05 A on a 90 Ah AGM. He says it keeps it up in summer, I say "
         "that is a toy. Who is right?", "solar", "The friend is right: a 40 W panel"),
        ("We dropped anchor over this: 12.3 at rest, AGM. My son says good, my wife says it's low. Who is right?",
         "rest-voltage", "Your son is right, but only just: 12.3 V"),
        ("The fitter put 16 mm2 in for 120 A over 5 m at 12 V and I say it is too thin. Is he right or am I?",
         "cable-size", "You are right: 16 mm²"),
        ("My neighbour says the bow battery is empty at 12.7 V at rest, AGM. I say it's not empty. Who is right?",
         "rest-voltage", "You are right: 12.7 V"),
        ("My brother thinks 11.9 V at rest is not flat, I think it is flat. Flooded. Who is right?", "rest-voltage",
         "You are right: 11.9 V"),
        # a charger that only keeps it full is too small, whoever says that it does
        ("5 A charger on 110 Ah AGM. My wife says it's fine, I say it's too small. Who is right?", "charger-size",
         "You are right: for 110 Ah"),
        ("10 A charger on 2 x 110 Ah AGM parallel. Owner says it's OK. I say too weak. Who is right?", "charger-size",
         "You are right: for 220 Ah"),
        ("My brother says a 6 A charger is plenty for 150 Ah of wet cells, I say it is too small. Who is wrong?",
         "charger-size", "Your brother is wrong: for 150 Ah"),
        ("8 A charger on 100 Ah AGM. My wife says it's fine, I say it's too small. Who is right?", "charger-size",
         "Your wife is right, but only just: for 100 Ah"),
        ("A 12 A charger on a 100 Ah AGM: the shop says it's big enough, I say too small. Who's right?", "charger-size",
         "The shop is right: 12 A"),
        # asked of one of them
        ("24 V thruster, 150 A. Yard: 35 mm2 is plenty for 9 m each way. Me: it wants 70 mm2. 105 degree cable outside "
         "the engine room. Is the yard right?", "cable-size", "Yes: 35 mm² loses"),
        ("Surveyor: 2 AWG is too thin for 150 A over 6 m at 12 V. Me: it is fine. Is the surveyor wrong?", "cable-size",
         "Yes: 2 AWG"),
        # what each of them thinks is not told: no word that may be the wrong one
        ("The dealer sold me a 720 CCA AGM for the Pike and my dad has one of 800. Who is right?", "run-check",
         "Your 720"),
    ],
)  # fmt: skip
def test_of_two_who_differ_the_one_who_is_right_is_named(text, topic, opens):
    assert head(text, topic=topic)[: len(opens)] == opens
