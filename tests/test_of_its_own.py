"""What a message tells belongs to one question, one battery, one moment: the others are answered without it."""

from __future__ import annotations

import pytest

from service.reply import Answer
from tests.talks import talk

ONE_OF_THEM = "off one of the two batteries"
STEPPED = "12 to 24 V converter, 15 A out. Isolated or not?"


def of(topic: str, *turns: str) -> Answer:
    """The answer on a topic to the last of these turns."""
    (found,) = (answer for answer in talk(*turns).answers if answer.topic == topic)
    return found


def figure(answer: Answer, name: str) -> float:
    return next(item.value for item in answer.figures if item.name == name)


@pytest.mark.parametrize(
    "turns",
    [
        (f"Can I take 12 V for the fridge {ONE_OF_THEM}, and what does a 12 to 24 charger of 10 A draw?",),
        ("What does a 12 to 24 V charger of 10 A draw? May I run the radio from one of the pair of the 24 V bank?",),
        ("May I tap 12 V from one of the two in the 24 V bank? And what does a 12 to 24 charger of 10 A pull?",),
        (
            f"Can I take 12 V for a lamp {ONE_OF_THEM}, and what does a 12 to 24 charger of 10 A draw?",
            "the alternator gives 80 A",
        ),
    ],
)
def test_a_tap_for_a_consumer_tells_nothing_of_the_converter(turns: tuple[str, ...]) -> None:
    found = of("dc-dc", *turns)
    assert found.verdict in ("information", "yes")
    assert "part of the 24" not in found.headline
    assert figure(found, "input_current") == pytest.approx(22.2, abs=0.1)


@pytest.mark.parametrize(
    "text",
    [
        f"My 12 to 24 V charger of 10 A is not isolated. May I feed it 12 V {ONE_OF_THEM} of the 24 V bank?",
        "12 to 24 V, 10 A, non-isolated, common negative. Can I take its 12 V from one of the two in the bank?",
        f"Can I tap 12 V {ONE_OF_THEM}? It would feed a non-isolated 12 to 24 V charger of 10 A.",
    ],
)
def test_a_converter_that_is_fed_by_a_battery_of_its_bank_is_still_refused(text: str) -> None:
    assert of("dc-dc", text).verdict == "no"


@pytest.mark.parametrize(
    "reply",
    [
        "common negative. The 12 V start battery is separate from the 24 V bank",
        "one negative; the 12V house battery stands apart from the 24V pair",
        "shared minus, 12 V engine battery, disconnected from the 24 volt one",
        "common neg, 24 V bank is kept separate from the 12 V start battery",
    ],
)
def test_what_a_battery_is_apart_from_gives_no_volts_to_a_converter(reply: str) -> None:
    assert figure(of("dc-dc", STEPPED, reply), "input_current") == pytest.approx(33.3, abs=0.1)


def test_what_a_charge_is_taken_from_still_does() -> None:
    asked = "a 12 A converter charges a 12 V battery from the 24 V bank, what does it draw?"
    assert figure(of("dc-dc", asked), "input_current") == pytest.approx(6.67, abs=0.1)


FUSED = "1/0 cable of 105 C, a 200 A fuse, 180 A motor, all right?"


@pytest.mark.parametrize("reply", ["250 instead", "and 250?", "250 amps then", "what about a 250", "ok, 250"])
def test_a_bare_rating_after_a_fuse_was_judged_is_another_fuse(reply: str) -> None:
    found = of("fuse-size", FUSED, reply)
    assert (found.verdict, found.headline.partition(" suits")[0]) == ("yes", "Yes: a 250\u00a0A fuse")


@pytest.mark.parametrize(
    ("reply", "load"),
    [("200 A motor instead", 200.0), ("and for 225?", 225.0), ("260 instead", 260.0), ("sorry, 175", 175.0)],
)
def test_amps_that_are_no_rating_or_are_told_of_the_load_stay_the_loads(reply: str, load: float) -> None:
    told = {item.fact: item.value for item in of("fuse-size", FUSED, reply).understood}
    assert (told["load.current"], told["fuse.rating"]) == (load, 200.0)


@pytest.mark.parametrize(
    "text",
    [
        "The yard puts a 300 A fuse, the seller says 400 A. 250 A thruster on 70 mm2. Who is right?",
        "One mate says 400 A, the other says a 300 A fuse. My thruster runs at 250 A on 70 mm2. Which?",
        "My 250 A thruster needs a 300 A fuse says the yard, the shop recommends 400 A, which never blows. 70 mm2.",
        "A friend told me 300 amps is fine for the fuse, the dealer suggests 400 A. 250 A thruster on 70 mm2.",
    ],
)
def test_the_fuse_that_somebody_else_names_is_no_load(text: str) -> None:
    found = of("fuse-size", text)
    assert {item.value for item in found.understood if item.fact == "load.current"} == {250.0}
    assert found.headline.startswith("Fit 350\u00a0A: 300\u00a0A is too small for 250\u00a0A")


def test_what_a_plate_says_is_still_the_load() -> None:
    told = {
        item.fact: item.value
        for item in of("fuse-size", "My fuse is 300 A and the plate says 200 A. 70 mm2. Good?").understood
    }
    assert (told["load.current"], told["fuse.rating"]) == (200.0, 300.0)


def test_a_fuse_that_blew_is_heard_beside_one_that_does_not() -> None:
    text = "The 200 A fuse blew twice, a 300 A fuse does not blow. 180 A thruster on 1/0 of 105 C. Good?"
    assert any("motor and cable" in step.say or "fault" in step.say for step in of("fuse-size", text).working)


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("My thruster needs 600 CCA. The battery has 640 CCA. Is it enough?", "yes"),
        ("The manual of the windlass asks for at least 700 CCA; mine is an AGM of 640 CCA. Good?", "no"),
        ("Is a 900 MCA battery enough for a thruster that requires 740 CCA?", "no"),  # 720 CCA
        ("600 CCA are required by the thruster's manual. Will two batteries of 350 CCA in parallel run it?", "yes"),
        ("The engine wants 450 CCA and the thruster 620 CCA. My battery has 600 CCA, enough?", "no"),
        ("My thruster needs 640 CCA and the battery has 760 MCA. Is it enough?", "no"),
        ("My thruster needs 600 CCA. Will a 640 CCA battery at 12.0 V rested run it?", "no"),
    ],
)
def test_a_cca_that_is_asked_for_is_held_against_the_batterys(text: str, verdict: str) -> None:
    found = of("run-check", text)
    assert found.verdict == verdict
    assert not any(item.of > 1 for item in found.understood)


def test_what_the_load_asks_for_never_makes_the_battery_better() -> None:
    assert of("run-check", "The Pike needs 700 CCA; my battery has 660 CCA, enough?").verdict == "no"
    assert of("run-check", "The Pike needs 500 CCA; my battery has 600 CCA, enough?").verdict == "no"  # the house: 650
    waits = of("run-check", "The thruster needs 600 CCA. Is my 100 Ah AGM enough?")
    assert [ask.fact for ask in waits.asks] == ["battery.cca"]


def test_a_battery_with_a_need_of_its_own_keeps_its_cca() -> None:
    told = {
        item.fact
        for item in of("run-check", "My thruster battery of 650 CCA needs water. Does it run a Pike?").understood
    }
    assert "battery.cca" in told
    assert "load.cca" not in {
        item.fact
        for item in of("run-check", "Is a 700 CCA battery all my Pike needs?").understood
        if item.value == 700.0
    }


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("My flooded battery is six years old, replace it? And would you take AGM or gel?", "wet-cell"),
        ("The AGM is 5 years old. Should it go? And is lithium or AGM better for a thruster?", "AGM"),
        ("A gel of 9 years, time for a new one? And what would you buy, lithium or AGM?", "gel"),
    ],
)
def test_kinds_that_are_only_weighed_are_not_owned(text: str, kind: str) -> None:
    found = of("replacement", text)
    assert f"your {kind} battery" in found.headline
    assert not found.compare


@pytest.mark.parametrize(
    ("text", "amps"),
    [
        ("Lithium was quoted at two thousand, so we stick with our wets, 90 Ah. What charger?", 9.0),
        ("We can't afford lithium. It will be the 70 Ah gel again; how many amps may the charger have?", 7.0),
        ("I'm staying with AGM as lithium is far too pricey: 150 Ah, amps of charger?", 15.0),
        ("Gel cost a fortune so in the end she went for AGM, 60 Ah. Which charger?", 6.0),
        ("Lithium too steep for my purse, AGM it stays. 200 Ah: charger of what size?", 20.0),
    ],
)
def test_a_kind_that_was_too_dear_has_no_part(text: str, amps: float) -> None:
    found = of("charger-size", text)
    assert (found.figures[0].value, found.compare) == (amps, ())


@pytest.mark.parametrize(
    "text",
    [
        "Is it wise to keep the AGM, or is lithium worth what it costs?",
        "Lithium is pricey. Should I be staying with gel?",
    ],
)
def test_a_dear_kind_is_weighed_where_that_is_asked(text: str) -> None:
    assert len(of("battery-type", text).compare) == 2


def test_what_is_weighed_goes_without_the_kind_that_is_aboard() -> None:
    found = of("battery-type", "My flooded battery is six years old, replace it? And would you take AGM or gel?")
    assert [option.label for option in found.compare] == ["AGM", "Gel"]


def test_two_that_are_aboard_are_still_told_apart() -> None:
    assert len(of("replacement", "The AGM is 7 years and the wet one 3 years old. Which should go?").compare) == 2


@pytest.mark.parametrize(
    "text",
    [
        "100 Ah AGM, 180 A thruster: how long does it last? And for ten minutes in all, how big would it have to be?",
        "How many minutes from a 100 Ah AGM at 180 A? And if we wanted a quarter of an hour, what size do we need?",
        "What size of AGM gives twelve minutes at 180 A? And how many minutes would my 100 Ah AGM give?",
        "How long will my 100 Ah AGM run 180 A, and how big a battery do I need for 15 minutes?",
    ],
)
def test_a_time_that_is_wished_of_a_larger_battery_is_not_asked_of_this_one(text: str) -> None:
    found = of("run-time", text)
    assert (found.verdict, found.would_change) == ("information", ())
    assert figure(found, "time_to_usable_limit") == pytest.approx(9.4, abs=0.5)
    assert figure(of("bank-size", text), "required_capacity") > 100


@pytest.mark.parametrize(
    "text",
    [
        "How many hours from two 100 Ah lithiums in parallel at 60 A, and what charger fills them in 8 hours?",
        "How long do two 100 Ah lithiums in parallel last at 60 A? Which charger refills them overnight, say 9 hours?",
        "What charger puts it all back in ten hours, and how long would 60 A run off two parallel 100 Ah lithiums?",
    ],
)
def test_a_time_that_is_wished_of_a_charger_is_not_asked_of_the_battery(text: str) -> None:
    found = of("run-time", text)
    assert (found.verdict, found.would_change) == ("information", ())
    assert figure(found, "time_to_usable_limit") == pytest.approx(146, abs=3)


def test_a_time_that_is_asked_of_this_battery_is_judged() -> None:
    assert of("run-time", "100 Ah AGM, 10 minutes at 180 A: enough? And how big would be better?").verdict == "no"


@pytest.mark.parametrize(
    ("text", "sag", "charge"),
    [
        (
            "AGM of 800 CCA, tested with 400 A for 15 s, it went to 9.8 V, fully charged before. Passed? "
            "Today at rest it shows 12.5, is that all right?",
            3.0,
            66.7,
        ),
        (
            "A wet 700 CCA battery was load tested last week with 350 A, charged full, and fell to 9.7 V. This morning "
            "it reads 12.3 at rest. Did it pass, and is 12.3 good?",
            2.95,
            57.1,
        ),
    ],
)
def test_the_volts_of_another_day_are_no_start_of_a_test(text: str, sag: float, charge: float) -> None:
    test = of("load-voltage", text)
    assert test.verdict == "yes"
    assert figure(test, "sag") == pytest.approx(sag, abs=0.06)
    assert figure(of("rest-voltage", text), "state_of_charge") == pytest.approx(charge, abs=1)


@pytest.mark.parametrize(
    "text",
    [
        "AGM of 800 CCA, 12.5 at rest, load test of 400 A went to 9.8 V. Passed?",
        "This morning it was 12.5 at rest, then 400 A took it down to 9.8. 800 CCA AGM. Passed?",
        "It shows 12.5 V at rest today. With 400 A it falls to 9.8. 800 CCA AGM, ok?",
    ],
)
def test_the_volts_of_the_same_hour_are(text: str) -> None:
    assert figure(of("load-voltage", text), "sag") == pytest.approx(2.7, abs=0.01)


@pytest.mark.parametrize(
    ("text", "headline"),
    [
        ("The lithium rests at 13.1 volts. My previous lead battery showed 12.7 when full. Is 13.1 good?", "13.1"),
        ("My old AGM always read 12.8. The new wet one shows 12.5 at rest. Is it ok?", "wet-cell"),
        ("Before this we had a gel of 12.9 V; now the AGM reads 12.6 at rest. Good?", "AGM"),
        ("The AGM rests at 12.6 V. The gel we had before lasted nine years, is 12.6 healthy for the AGM?", "AGM"),
    ],
)
def test_a_battery_that_is_gone_is_not_judged(text: str, headline: str) -> None:
    (found,) = talk(text).answers
    assert (found.topic, found.verdict, found.compare) == ("rest-voltage", "yes", ())
    assert headline in found.headline


def test_an_old_battery_that_is_still_there_is() -> None:
    found = of("rest-voltage", "My old AGM shows 12.2 and the new one 12.8, both rested. Are both ok?")
    assert (found.verdict, len(found.compare)) == ("no", 2)


@pytest.mark.parametrize(
    ("text", "topic", "count"),
    [
        ("What charger for two 110 Ah gels in parallel? And can I add a third next season?", "charger-size", 2.0),
        ("Is 25 A enough for 2 x 90 Ah AGM in parallel, and could I put in another later?", "charger-size", 2.0),
        ("Is 25 A enough for 2 x 90 Ah AGM in parallel, and could I put in another later?", "bank-wiring", 3.0),
        ("Two 100 Ah AGMs in parallel. Can I add another next year, and is 30 A enough for them?", "charger-size", 3.0),
        ("2 x 120 Ah AGM in parallel, adding a third next month: what charger?", "charger-size", 3.0),
    ],
)  # fmt: skip
def test_a_battery_for_later_is_not_there_yet(text: str, topic: str, count: float) -> None:
    told = {item.fact: item.value for item in of(topic, text).understood}
    assert told["battery.count"] == count


@pytest.mark.parametrize(
    ("text", "topic", "figure", "value"),
    [
        ("A 90 Ah gel: how long at 9 A? And may a 60 Ah gel be joined to it in parallel?", "run-time",
         "time_to_empty", 540.8),
        ("80 Ah AGM. Which charger amps for it? And could a 110 Ah AGM go beside it in parallel?", "charger-size",
         "charger_current_high", 24.0),
        ("120 Ah of wet, 12 V. How many watt hours is that? And should I link it to one of 75 Ah in parallel?",
         "rating-convert", "energy", 1440.0),
        # here both are there, or are asked of together
        ("My 90 Ah and 60 Ah gels lie in parallel: how long at 9 A? And may they be joined by 35 mm2?", "run-time",
         "time_to_empty", 973.0),
        ("May I put a 60 Ah gel beside my 90 Ah gel in parallel, and how long do both last at 9 A?", "run-time",
         "time_to_empty", 973.0),
    ],
)  # fmt: skip
def test_what_is_asked_before_another_is_joined_is_of_the_first(
    text: str, topic: str, figure: str, value: float
) -> None:
    found = {item.name: item.value for item in of(topic, text).figures}
    assert found[figure] == pytest.approx(value, rel=0.02)
