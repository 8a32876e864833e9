"""A lay-up by what is told of its charger: taken off, used in between, left on; and a charge that is planned."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.reply import Answer


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def answers(text: str) -> dict[str, Answer]:
    return {item.topic: item for item in default_desk().ask(text).answers}


@pytest.mark.parametrize(
    "text",
    [
        "Gel, charged with his charger till the lamp went green, then leads off. Can it stand so for 5 months at 9 C?",
        "I had the AGM on the charger for a day and disconnected it. Can it stand for four months at 6 degrees?",
        "Wet battery, filled by the shore charger, cables taken off. May I leave it like that for 4 months at 5 C?",
        "Two AGMs, full from the charger, charger away now and unplugged. Fine for 3 months at 10 C?",
    ],
)
def test_a_charger_that_was_taken_off_does_not_stay_on(text: str) -> None:
    found = answers(text)
    assert list(found) == ["storage"]
    assert found["storage"].verdict == "yes"
    assert "still" in found["storage"].headline
    assert any(item.name == "state_of_charge_after" for item in found["storage"].figures)


@pytest.mark.parametrize(
    ("text", "verdict", "opens"),
    [
        ("It is disconnected from the boat. Can I leave the wet battery on the charger for 4 months?", "information",
         "Yes, if it is a smart charger"),
        ("May the AGM stay on the charger for 5 months?", "information", "Yes, if it is a smart charger"),
        ("Can I leave the AGM on its smart charger all winter, five months?", "yes", "Yes: a smart charger drops"),
        ("The gel is laid up till spring, how often to look? Can I leave it on the timer charger all winter?", "no",
         "No: no timer charger stays on"),
        ("Wet battery, 5 months at 8 C: does it need a charger in between?", "yes", "No, but look every 90 days"),
        ("Wet battery, 12 months at 20 C: does it want a charger in between?", "no", "Yes: charged full"),
        ("A 90 Ah LiFePO4 for five months at 8 C: half or full, and a charger in between?", "yes",
         "Leave it about half full, with no charge in between, and look every 90 days"),
        ("Is an AGM laid up full or half full? 4 months at 5 degrees.", "yes", "Leave it full and look every 90 days"),
        ("She says leave the gel on the charger till spring, I say fill and unplug it. Who is right?", "information",
         "Both are right, if it is a smart charger"),
        ("Dad keeps the smart charger on the AGM all winter, I would rather disconnect it. Who should we believe?",
         "yes", "Both are right: a smart one drops to float"),
        ("My mate leaves the lithium on the charger all winter, I would unplug it. Who is right?", "marginal",
         "Better not: lay lithium up about half full"),
    ],
)  # fmt: skip
def test_a_charger_left_on_or_in_between(text: str, verdict: str, opens: str) -> None:
    found = answers(text)["storage"]
    assert (found.verdict, plain(found.headline)[: len(opens)]) == (verdict, opens)


def test_staying_on_is_no_question_of_the_setting() -> None:
    told = "It is a smart charger on the gel setting and a gel battery. "
    assert list(answers(f"{told}He leaves the charger on all winter, she unplugs it. Who is right?")) == ["storage"]
    wrong = "It is a smart charger on the wet setting and a gel battery. "
    assert answers(f"{wrong}Can the charger stay on all winter?")["charger-setting"].verdict == "no"


@pytest.mark.parametrize(
    ("text", "freezes", "stands"),
    [
        ("Wet, at 55 percent now. Will it freeze at minus 12? And how often do I look at it if I charge it full first?",
         "No, it will not freeze at -12", "Charge it full, take the cables off"),
        ("AGM at 50 %. Does it freeze at minus 10? And can it stand 4 months at 5 C once I have charged it full?",
         "No, it will not freeze at -10", "Yes, but look every 90 days: charged full"),
        ("The gel is at 60 %. Can it freeze at -15? And will it last 5 months at 0 C if it is fully charged first?",
         "No, it will not freeze at -15", "Yes, but look every 90 days: charged full"),
        ("Wet battery at 40 % now. Will it freeze at -30 if I fill it up first? And may it stand 6 months at 15 C?",
         "No, it will not freeze at -30", "No: from 40 %"),
    ],
)  # fmt: skip
def test_a_planned_charge_counts_for_the_question_that_plans_it(text: str, freezes: str, stands: str) -> None:
    found = answers(text)
    assert plain(found["freeze-point"].headline).startswith(freezes)
    assert plain(found["storage"].headline).startswith(stands)


def test_a_charge_that_is_asked_for_is_no_plan() -> None:
    found = answers("Wet battery at 50 %, minus 10 outside now. Is it frozen? Should I charge it?")
    assert plain(found["freeze-point"].headline).startswith("Yes, charge it")


@pytest.mark.parametrize(
    ("text", "verdict", "says"),
    [
        ("lfp 200 Ah, charger 60 A, 14.4 absorption / 13.5 float, ok?", "yes", "60 A suits 200 Ah"),
        ("lfp 90 Ah, charger 60 A, 14.4 absorption / 13.5 float, ok?", "no", "60 A is too much for 90 Ah"),
        ("AGM 160 Ah, charger of 30 A, absorption 14.4 V, float 13.5 V. Right?", "yes", "30 A suits 160 Ah"),
        ("gel 100 Ah, 35 A charger, absorption 14.2 and float 13.6 ok?", "no", "both volts are right, but 35 A"),
    ],
)
def test_the_amps_are_told_beside_both_volts(text: str, verdict: str, says: str) -> None:
    found = answers(text)["charger-setting"]
    assert found.verdict == verdict
    assert says in plain(found.headline)


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("Fine to leave the flooded one six months at 20 C, no charger, full and the switch off?", "marginal"),
        ("AGM off its charger for 5 months at 10 C, charged full, may I?", "yes"),
        ("Can a wet battery stand 7 months unplugged from any charger at 20 C?", "marginal"),
        ("no maintainer at our mooring, wet battery full, is 7 months at 20 C ok?", "marginal"),
    ],
)
def test_a_time_without_any_charger_is_judged_as_such(text: str, verdict: str) -> None:
    found = answers(text)["storage"]
    assert found.verdict == verdict
    assert any(item.name == "state_of_charge_after" for item in found.figures)


@pytest.mark.parametrize(
    "text",
    [
        "Do I leave the gel on a charger for the winter or without one?",
        "no charger needed over winter, or may the wet battery stay on one?",
    ],
)
def test_a_charger_that_is_weighed_is_still_spoken_of(text: str) -> None:
    assert "smart charger" in answers(text)["storage"].headline
