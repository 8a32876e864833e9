"""Which battery to buy: the cheapest that will do, what its safety switch must allow, and one that is too small."""

import pytest

from tests.talks import on, plain, talk


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("I burned through my budget, so what is the cheapest battery type that will still do the job for a Minnow?",
         "A wet-cell starting battery of 350 CCA and 30 Ah or more"),
        ("what's the least expensive battery that runs the Pike", "A wet-cell starting battery of 650 CCA"),
        ("what BMS current do I need for a lithium on the Pike", "A BMS that allows 260 A all the time and 390 A"),
        ("how many amps must the BMS allow for a Sturgeon", "A BMS that allows 280 A all the time and 420 A"),
        ("What lithium battery for the Pike?", "Look for a lithium battery of 260 Ah or more"),
        ("What battery for the Pike?", "Look for a lead battery of 650 CCA"),
    ],
)  # fmt: skip
def test_one_to_choose(text, told):
    assert plain(on("bank-size", text).headline).startswith(told)


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("My 600 CCA battery was the cheapest, will it run the Minnow?", "run-check"),
        ("How much does the cheapest battery for a Minnow cost?", "other-desk"),
        ("what is a bms?", "meaning"),
    ],
)
def test_one_they_have_or_a_price_is_another_question(text, topic):
    assert [item.topic for item in talk(text).answers] == [topic]


@pytest.mark.parametrize(
    ("text", "small"),
    [
        ("100 A BMS lithium, will it run one of your thrusters?", True),
        (
            "bms on my lithium keeps cutting out when i hit the thruster, 100ah with 100a bms. do i need a bigger one?",
            True,
        ),
        ("lithium with a 150 A BMS, is it enough for a bow thruster?", False),
        ("100 A bms, my fridge trips it?", False),
    ],
)
def test_a_limit_under_our_smallest_is_too_small_for_any_of_ours(text, small):
    found = on("run-check", text)
    assert found.verdict == "needs-facts"
    assert found.headline.startswith("Too small for any of ours") is small
