"""What stands beside a danger and after it: no way to use or charge that battery, a plain no where leave is asked."""

from __future__ import annotations

import pytest

from service.reply import Answer
from service.told.may_i import asked
from tests.talks import talk


def answers(*turns: str) -> tuple[Answer, ...]:
    return talk(*turns).answers


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("The lithium was hissing an hour ago. May I charge it with the AGM setting?",
         "No: the danger above comes first (setting and volts of the charger)"),
        ("The sides of the gel are bulging. Is a 50 A charger too big for 100 Ah of gel?",
         "The danger above comes first (amps of the charger)"),
        ("Smoke came from the battery box this morning. Is 12.0 V too low for an AGM?",
         "The danger above comes first (volts at rest)"),
        ("The wet battery smoked last night. Is 500 CCA enough for the Pike?",
         "The danger above comes first (will the battery run it)"),
        ("It stinks of rotten eggs when we charge the wet one, 6 years old. New one now or does it do another season?",
         "Do not plan with this battery: the danger above comes first"),
        ("The AGM got too hot to touch. It is 5 years old, is it time for a new one?",
         "Do not plan with this battery: the danger above comes first"),
    ],
)  # fmt: skip
def test_a_no_for_a_lesser_reason_names_no_way_out(text: str, opens: str) -> None:
    hazard, waiting = answers(text)
    assert (hazard.verdict, waiting.verdict) == ("stop", "no")
    assert waiting.headline.startswith(opens)
    assert (waiting.would_change, waiting.figures, waiting.asks, waiting.compare) == ((), (), (), ())


def test_a_no_that_the_danger_is_the_reason_of_stands_in_its_own_words() -> None:
    hazard, fuse = answers("no fuse on the thruster cable, must there be one?")
    assert (hazard.verdict, fuse.topic) == ("stop", "fuse-size")
    assert fuse.headline.startswith("No: leave this circuit switched off")


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("The 200 A fuse kept blowing, so a nail is in its holder now. Motor 240 A, 2/0 cable. Which fuse then?", 300),
        ("They bridged the 150 A fuse with wire. 200 A thruster on 70 mm2: what fuse belongs in there?", 250),
    ],
)  # fmt: skip
def test_a_bridged_fuse_that_was_too_small_is_told_with_the_right_one(text: str, right: float) -> None:
    hazard, fuse = answers(text)
    assert (hazard.verdict, fuse.topic, fuse.verdict) == ("stop", "fuse-size", "no")
    assert {item.name: item.value for item in fuse.figures}["fuse_rating"] == right
    assert (fuse.would_change, fuse.asks, fuse.working) == ((), (), ())


def test_what_a_lithium_that_cuts_out_may_give_is_still_worked_out() -> None:
    text = "Lithium 100 Ah cuts out at every push and comes back. 100 A continuous, 200 A peak, a Pike. Too small?"
    _, check = answers(text)
    assert check.topic == "run-check"
    assert {item.name for item in check.figures} >= {"inrush_current", "running_current"}
    assert not check.would_change


@pytest.mark.parametrize(
    ("turns", "opens"),
    [
        (("one battery is swollen", "is it ok to charge it overnight?"), "No, do not charge it, and keep away"),
        (("The lithium got hot yesterday", "It is cold now. Can we use it on Sunday?"),
         "No, do not use it, and keep away"),
        (("a hiss came from the AGM when charging", "I unplugged it. So I can plug it in again tomorrow?"),
         "No, do not"),
        (("the bow battery was hissing", "quiet now, so fine to use?"), "No, do not use it"),
        (("salt water got into the lithium box", "all dry, may we switch it back on"), "No, do not use it"),
        (("two AGMs, one has bulging sides", "could the other one still be used?"), "No, do not use them"),
        (("what if a lithium swells?", "could I charge it slowly?"), "No, do not charge it"),
        (("Should I charge a battery that was under sea water?",), "No, do not charge it"),
    ],
)  # fmt: skip
def test_who_asks_leave_gets_a_no(turns: tuple[str, ...], opens: str) -> None:
    assert answers(*turns)[0].headline.startswith(opens)


@pytest.mark.parametrize(
    "text",
    [
        "Should I call the fire brigade?", "Do I have to leave the boat?", "Can I switch the charger off?",
        "May we stop charging it?", "Should I use a fire extinguisher?", "Is it dangerous?",
    ],
)  # fmt: skip
def test_no_is_not_said_to_what_helps(text: str) -> None:
    assert asked(text) == ""
    assert not answers("the battery is hissing", text)[0].headline.startswith("No,")


def test_beside_a_danger_that_is_only_asked_about_no_charging_is_told() -> None:
    below = answers("Should I charge a lithium that fell in the sea? Which setting?")[1:]
    assert all(item.verdict == "no" and not item.figures for item in below)


@pytest.mark.parametrize(
    ("text", "topic", "verdict"),
    [
        ("One of the old wets in the garage has split and leaks. Is a 30 A charger right for 120 Ah of AGM?",
         "charger-size", "yes"),
        ("An old lithium in my shed is swollen. Will a 900 CCA AGM run a 200 A thruster?", "run-check", "yes"),
        ("My AGM has split and leaks. Is a 30 A charger right for a 120 Ah AGM?", "charger-size", "no"),
        ("One of the batteries is leaking. Is a 20 A charger right for the 100 Ah wet?", "charger-size", "no"),
        ("An old battery at home is on fire. Is a 30 A charger right for my 120 Ah AGM?", "charger-size", "no"),
    ],
)  # fmt: skip
def test_only_a_battery_that_is_told_apart_is_answered(text: str, topic: str, verdict: str) -> None:
    first, *others = talk(text).answers
    assert first.verdict == "stop"
    assert [item.verdict for item in others if item.topic == topic] == [verdict]


def test_why_two_questions_wait_is_told_once() -> None:
    _, charger, cable = answers("The AGM is hissing. What charger amps for 100 Ah and which cable for 250 A over 5 m?")
    assert charger.headline.startswith("The danger above comes first (amps of the charger)")
    assert (cable.headline, cable.verdict) == ("Cable size: this waits too.", "no")


@pytest.mark.parametrize(
    "text",
    [
        "dropped a wrench over both terminals, huge flash, it's off now but acid sprayed on my arm",
        "shorted it with a ring, battery split and acid dripped on my jeans",
        "Arced the posts with a spanner; acid about, and I have some on my hand",
    ],
)
def test_acid_on_somebody_comes_before_the_short_circuit(text: str) -> None:
    (first,) = answers(text)
    assert first.headline.startswith("Rinse at once")
    assert sum(item.say.startswith("Hands off, step back") for item in first.steps) <= 1


@pytest.mark.parametrize(
    "text", ["the lugs get too hot to touch, will the fuse go first?", "fuse holder melted on one side"]
)
def test_no_fuse_is_waited_for_at_a_hot_joint(text: str) -> None:
    assert "wait for the fuse to blow: it does not see a hot joint" in [item.say for item in answers(text)[0].steps]


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("Jumping a dead 24V bow bank from the 12V van battery. Plus to plus and go?", "No: never join batteries of"),
        ("can I jump start the 12 V engine off the 24 V thruster bank?", "No: never join batteries of"),
        ("jump start from the other 12 V battery, which lead first?", "Jump leads go plus to plus first"),
    ],
)
def test_a_jump_start_between_two_voltages_is_a_no(text: str, opens: str) -> None:
    assert answers(text)[0].headline.replace("\u00a0", " ").startswith(opens)


@pytest.mark.parametrize(
    "text",
    [
        "The flooded battery is hissing on charge and its sides are hot. Do I just switch on the locker fan first?",
        "The lithium is smoking. Do I turn the fan in the locker on?",
        "Wet battery boiling over and it reeks of eggs. Is the blower in the locker enough air for 110 Ah?",
    ],
)
def test_no_fan_is_switched_on_in_the_gas(text: str) -> None:
    found = answers(text)
    assert found[0].verdict == "stop"
    assert [item.headline.partition(",")[0] for item in found if item.topic == "ventilation"] in (
        [],
        ["No: touch no fan and no switch in there"],
    )
    assert not any("m3/h" in item.headline or "two openings" in item.headline for item in found)
