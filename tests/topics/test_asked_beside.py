"""What is asked beside the main question, or in words that need no figure, is answered: a rule, a choice, a why."""

from __future__ import annotations

import pytest

from service.reply import Answer
from tests.talks import plain, talk


def ask(text: str) -> tuple[Answer, ...]:
    return talk(text).answers


@pytest.mark.parametrize(
    ("text", "topic", "opens"),
    [
        ("Float reads 1.210. What should a full one read?", "specific-gravity", "About 65 % full: that is what"),
        ("1.180 in all cells, is it flat? and what is full?", "specific-gravity", "About 45 % full"),
    ],
)
def test_what_a_full_cell_reads_is_told_beside_its_own(text: str, topic: str, opens: str) -> None:
    (answer,) = ask(text)
    assert (answer.topic, answer.headline.endswith("; full is 1.265.")) == (topic, True)
    assert plain(answer.headline).startswith(opens)


def test_a_reading_alone_gets_no_other() -> None:
    assert "1.265" not in ask("1.230 on the hydrometer, is it full?")[0].headline


@pytest.mark.parametrize(
    ("text", "sides", "ends"),
    [
        ("The box is 28 cm long, 17.5 wide and 19 high. Will a group 31 go in, and if it won't which size would?",
         "not long, wide or high enough", "none in our table does."),
        ("Tray is 300 x 180 x 230 mm. Does a group 27 fit? If not, what does?",
         "not long, wide or high enough", "goes in only just."),
        ("Box 34 x 18 x 24 cm inside. Is a group 31 too big, and which one would go in?",
         "not wide or high enough", "goes in only just."),
        ("Will a group 24 fit a box 250 x 170 x 200 mm?", "not long, wide or high enough", "high enough."),
    ],
)  # fmt: skip
def test_every_side_that_is_too_short_is_named_and_the_case_that_goes_in(text: str, sides: str, ends: str) -> None:
    (answer,) = ask(text)
    assert sides in answer.headline
    assert answer.headline.endswith(ends)


@pytest.mark.parametrize(
    "text",
    [
        "Two batteries in parallel. Do both need to be the same age?",
        "Must two batteries in series be of the same age?",
        "Should both batteries be the same age and make?",
    ],
)
def test_of_one_age_is_a_rule_and_no_age_is_asked(text: str) -> None:
    found = ask(text)
    assert any(item.headline.startswith("Yes, of one age, kind and size") for item in found)
    assert not any(item.asks for item in found)


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("Take the AGM ashore for the winter or leave it aboard?", "Either will do: charged full and disconnected"),
        ("Laying up in Nov. Flooded 105 Ah. Home or on the boat? And how often do I put the charger on?",
         "Either will do: charged full and disconnected, it needs a look every 90 days and a charge after 152 days"),
        ("Leave it aboard with the charger on over winter?", "A smart charger may stay on"),
    ],
)  # fmt: skip
def test_ashore_or_aboard(text: str, opens: str) -> None:
    assert plain(ask(text)[0].headline).startswith(opens)


def test_agm_on_its_side_is_told_after_a_wet_one() -> None:
    (answer,) = ask("Two flooded starter types lie on their side in the bow. Can they stay so? If not is AGM ok so?")
    assert answer.headline.endswith("; an AGM or gel one may usually lie on a long side.")


@pytest.mark.parametrize(
    "text",
    [
        "Two bow AGMs in parallel, both 5 years. One is dead. Owner wants only the dead one changed. Not good enough?",
        "Two in parallel, 6 years old, one has failed. Can I replace just the bad one?",
    ],
)
def test_only_the_dead_one_of_an_old_pair(text: str) -> None:
    assert ask(text)[0].headline.startswith("Better both: ")


@pytest.mark.parametrize(
    "text",
    [
        "11.2 V at the posts and 9.4 V at the thruster, running. Where am I losing it, and is it the battery's fault?",
        "Where are the volts lost, and could it be the battery? 11.4 at the posts and 9.6 at the motor, running",
    ],
)
def test_a_part_is_blamed_in_a_second_clause(text: str) -> None:
    assert plain(ask(text)[0].headline).startswith("No, not the battery: 1.8 V")


@pytest.mark.parametrize(
    "text",
    [
        "It reads 12.7 V and falls to 10.9 V when the thruster runs. Surely that means the battery is finished?",
        "It drops to 10.8 V when I push the button. Is it finished?",
        "10.6 V under load with the thruster, 12.7 before. So the battery is dead?",
    ],
)
def test_a_reading_that_is_no_bad_sign_shows_no_finished_battery(text: str) -> None:
    assert ask(text)[0].headline.startswith("No, not by this reading: ")
    assert not any(item.headline.startswith("We can't say yet") for item in ask(text))


def test_a_bad_reading_stays_one() -> None:
    assert not any(item.headline.startswith("No: ") for item in ask("AGM falls to 8.9 V under load. Is it finished?"))


@pytest.mark.parametrize(
    "text",
    [
        "Battery rests at 12.7 and the thruster pushes feebly. What should I check?",
        "The thruster is only humming slow. Battery shows 12.7 resting. What should I look at?",
    ],
)
def test_what_to_look_at_where_a_full_battery_drives_weakly(text: str) -> None:
    assert ask(text)[0].headline.startswith("Read the volts twice while it runs")


@pytest.mark.parametrize(
    "text",
    [
        "Why is CCA more important than Ah for a bow thruster?",
        "why do you ask for cca and not ah",
        "why cranking amps and not amp hours?",
    ],
)
def test_why_cca_and_not_ah(text: str) -> None:
    assert ask(text)[0].headline.startswith("A thruster takes hundreds of amps for seconds, and CCA tells how far")


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("Battery A 100 Ah 850 CCA, battery B 115 Ah 600 CCA. Which for a thruster?", "Take the 850 CCA battery"),
        ("is the 120 Ah 600 CCA or the 90 Ah 800 CCA better for a bow thruster?", "Take the 800 CCA battery"),
        ("800 CCA or 650 CCA for the Pike?", "Your 800 CCA battery holds about 9.7 V"),
    ],
)
def test_of_two_the_one_of_more_cca(text: str, opens: str) -> None:
    assert plain(ask(text)[0].headline).startswith(opens)
