"""The headline answers what was asked, in the words of the question: must I charge it, can it be saved."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def heads(text: str) -> list[str]:
    return [plain(item.headline) for item in default_desk().ask(text).answers]


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("Twelve AGMs, full and disconnected, 5 months in a shed at 6 C. Do the crew have to charge them?", "No, but"),
        ("Two AGMs disconnected for five months at 10 C. Must I charge them in between?", "No, but look every 90 days"),
        ("AGM, full, off the leads, 4 months at 8 C. Is a charge needed in between?", "No, but look every"),
        ("Flooded battery left 6 months at 20 C, fully charged. Must it be charged in between?", "Yes: charged full"),
        ("wet battery, disconnected, 9 months at 25 C. do i have to top it up meanwhile", "Yes: charged full"),
        ("LiFePO4 for 7 months at 15 C: need I charge it in between?", "No, but look every"),
        ("Two AGMs, full, 4 months at 8 C. Will they want a top up half way?", "No, but look every 90 days"),
        ("gel full, 3 months in the shed at 5 C, does it need a boost?", "No, but look every"),
        ("Can I leave a wet battery, full and disconnected, for 5 months at 4 C?", "Yes, but look every"),
        ("At what state of charge do I leave a 150 Ah LiFePO4 for four months at 10 C, and how often do I look at it?",
         "Leave it about half full and look every 90 days"),
        ("what percentage should lifepo4 sit at for 6 months at 10 C", "Leave it about half full"),
        ("How full do I leave the AGM for 5 months at 5 C?", "Leave it full and look every"),
    ],
)  # fmt: skip
def test_a_lay_up_is_answered_as_it_is_put(text: str, opens: str) -> None:
    assert heads(text)[0].startswith(opens)


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("11.8 V after a week with the lamp left on, wet 80 Ah. Can it be brought back?", "Often yes: 11.8 V at rest"),
        ("11.9 V at rest on an AGM of 100 Ah, can it be saved?", "Often yes: 11.9 V at rest"),
        ("Gel at 12.0 V after standing all winter: can it be recovered?", "Often yes: 12.0 V at rest"),
        ("LiFePO4 at 12.4 V rest, can it be brought back?", "Yes, charge it soon"),
        ("12.3 V on my wet battery, can I bring it back up?", "Yes, charge it soon"),
        ("12.1 with the fridge on, can it be saved?", "Too early to say: with something on"),
        ("12.1 V with the fridge left on, good?", "Too early to say: with something on"),  # it is on still
        ("11.9 V, someone left the lights on since Friday. ok?", "No, not yet: 11.9 V at rest"),
    ],
)
def test_a_low_battery_that_may_be_brought_back(text: str, opens: str) -> None:
    assert heads(text)[0].startswith(opens)


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("wet 12.35, has it enough charge for a trip?", "Only just: 12.35 V at rest"),
        ("AGM 12.75 V. Full enough for Sunday?", "Yes: 12.75 V at rest"),
        ("AGM 12.1, enough left in it to go out today?", "No, not yet: 12.1 V at rest"),
        ("AGM 12.75 V. How full is it?", "About 95 % full"),
        ("gel at 12.5, what charge is that?", "About 65 % full"),
    ],
)
def test_whether_it_is_charged_enough_is_no_question_of_how_full(text: str, opens: str) -> None:
    assert heads(text)[0].startswith(opens)


ONE_MAY_DO = "One new one may do, in place of the old one"


@pytest.mark.parametrize(
    ("text", "verdict", "opens"),
    [
        ("Pair of AGMs in series: one new from last summer, the other 5 years old. Do I have to buy two?", "no",
         ONE_MAY_DO),
        ("Two gels in series, one of them 6 years old, the other brand new. Must both be new?", "no", ONE_MAY_DO),
        ("One of my pair in series died. The other is 4 years old. must I replace both?", "no", "Yes, both"),
        ("One of my two gels packed up, they are 5 years old, in series. Must I buy two?", "no", "Yes, both"),
        ("My two gels in parallel: one new, one 5 years. Do I have to change both?", "marginal", "Better both"),
        ("One of two wets in series is dead, the other 6 months old. Do I need two new ones?", "yes", "One will do"),
        ("24 V bank, one AGM replaced last year, the other is 6 years. must both be new?", "no",
         "One new one may do, in place of the old one"),
    ],
)  # fmt: skip
def test_whether_both_must_be_new(text: str, verdict: str, opens: str) -> None:
    (answer, *_) = default_desk().ask(text).answers
    assert (answer.topic, answer.verdict) == ("bank-wiring", verdict)
    assert plain(answer.headline).startswith(opens)


def test_two_old_ones_of_one_age_are_judged_by_their_age() -> None:
    assert [item.topic for item in default_desk().ask("My two AGMs are 7 years old. Replace both?").answers] == [
        "replacement"
    ]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("The plate says 630 A (EN). Will it do for the Pike?",
         "No: 630 A (EN) counts as 630 CCA at most, and the Pike asks for 650 CCA."),
        ("Pike on a 600 CCA AGM?", "No: the Pike asks for 650 CCA, and your AGM battery has 600 CCA."),
        ("two 300 CCA wet in parallel on the Pike, ok?",
         "No: the Pike asks for 650 CCA, and your two 300 CCA wet-cell batteries in parallel have 600 CCA."),
    ],
)  # fmt: skip
def test_one_number_stands_once_beside_what_the_catalogue_asks(text: str, says: str) -> None:
    assert heads(text) == [says]


def test_two_answers_stand_in_the_order_of_the_message_and_the_second_opens_with_its_yes() -> None:
    first, second = heads("sticker: 1000 MCA. what is that in CCA, and does it do for a Pike")
    assert first.startswith("1000 cranking amps")
    assert second.startswith("Yes: your 800 CCA")


@pytest.mark.parametrize(
    ("text", "topics", "says"),
    [
        ("PO 20319: please confirm the dispatch date. Secondly, is 95 mm2 enough for a Pike over 8 m?",
         ["other-desk", "cable-size"], "can see your order"),
        ("Re our PO number 88: when is it despatched? And what charger suits 2 x 100 Ah AGM in parallel?",
         ["other-desk", "charger-size"], "can see your order"),
        ("Please send a pro forma for two Sturgeons.", ["other-desk"], "knows prices"),
        ("Your trade price for four Minnows and the lead time to Hull, please.", ["other-desk"], "knows prices"),
        ("Where is the consignment?", ["other-desk"], "can see your order"),
        ("price of a Pike, and where is my order?", ["other-desk"], "knows prices and can see your order"),
    ],
)  # fmt: skip
def test_what_the_orders_desk_takes_over(text: str, topics: list[str], says: str) -> None:
    reply = default_desk().ask(text)
    assert [answer.topic for answer in reply.answers] == topics
    assert says in reply.answers[0].headline
    assert reply.triage.route == "other-desk"
