"""Whether one part is to blame, whether a thing should go, whether one must go there: yes and no as they are asked."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.told.culprit import blamed


@pytest.mark.parametrize(
    ("text", "topic", "verdict", "opens"),
    [
        (
            "12 V thruster, 70 mm2, 3 m, 200 A, it turns lazily. Could it be the cable?",
            "voltage-drop",
            "yes",
            "No, not the cable: 70",
        ),
        (
            "Is it the wiring's fault that the stern thruster is lazy? 12 V, 70 mm2 cable, 3 m, 200 A",
            "cable-size",
            "yes",
            "No, not the cable: 70",
        ),
        ("Is the lead to blame for a slow thruster, 12 V, 25 mm2, 8 m, 150 A?", "voltage-drop", "no", "Yes: 25"),
        ("Does the fault lie in the cable, 24 V, 95 mm2, 6 m, 200 A?", "voltage-drop", "yes", "No, not the cable: 95"),
        (
            "Can it be the battery? It drops to 11.0 V with 260 A, 850 CCA",
            "load-voltage",
            "yes",
            "No, not the battery: with",
        ),
        ("Could my battery be the culprit? 12.6 falls to 8.4 V under the button", "load-voltage", "no", "Yes: a lead"),
        (
            "11.4 V on the posts and 8.8 V at the thruster, 250 A, 850 CCA. Is the cable at fault?",
            "load-voltage",
            "no",
            "Yes: 2.6",
        ),
        ("Is 70 mm2 long enough for 200 A over 3 m?", "cable-size", "yes", "Yes: 70"),  # nothing is blamed
        # what only looks like it
        ("A 950 CCA AGM on the Minnow, does it go?", "run-check", "yes", "Yes: your 950"),
        (
            "On land from 1 October to 1 May, a full AGM, no cable on it. How often must I drive out and charge it?",
            "storage",
            "yes",
            "Look every 90 days",
        ),
        ("Is that loss normal for that wire: 35 mm2, 5 m, 100 A, 12 V?", "voltage-drop", "yes", "Yes: 35"),
        ("70mm there and back 18m 280A whats dropped", "voltage-drop", "no", "70"),
        ("Should the wing nuts go?", "terminals", "no", "Yes: use"),
        ("Do the wing nuts have to come off the thruster cable?", "terminals", "no", "Yes: use"),
        ("Are wing nuts all right on the thruster cable?", "terminals", "no", "No: use"),
        ("Wet, gravity 1.150, -14 tonight. Must I drive out now?", "specific-gravity", "no", "Yes: a gravity"),
        ("Wet, gravity 1.150, -12 tonight. Must I drive out now?", "freeze-point", "marginal", "Yes: the gravity"),
        ("Should I hurry down there? Gel at 80 %, -15 C tonight", "freeze-point", "yes", "No, it will not"),
        ("My AGM rests at 12.0 V. Must I go there today?", "rest-voltage", "no", "Yes: 12.0"),
        ("My AGM rests at 12.9 V. Must I go there today?", "rest-voltage", "yes", "No: 12.9"),
        ("Gravity 1.140, -11 C tonight, must I charge tonight?", "freeze-point", "no", "Yes, before the -11"),
        ("Will that do any harm: a 10 A charger on a 200 Ah AGM?", "charger-size", "marginal", "For 200"),
        (
            "12.72, 12.70 and 12.05 at rest, three alike. One of them is not like the others.",
            "rest-voltage",
            "no",
            "12.7",
        ),
    ],
)
def test_the_first_word_answers_the_bad_thing_that_is_asked(text: str, topic: str, verdict: str, opens: str) -> None:
    found = next(item for item in default_desk().ask(text).answers if item.topic == topic)
    assert (found.verdict, found.headline[: len(opens)].replace("\xa0", " ")) == (verdict, opens)


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("Is it down to the leads?", "cable"),
        ("Might it be only the battery?", "battery"),
        ("Is it the cable or the battery?", ""),  # which of them
        ("The cable is to blame, the yard says.", ""),  # told
        ("Is that loss normal for that wire?", ""),
        ("How much voltage do I lose in the cables?", ""),
        ("Is the cable to the battery thick enough?", ""),
    ],
)
def test_one_part_is_blamed_only_where_it_is_asked(text: str, part: str) -> None:
    assert blamed(text) == part


def test_what_is_lost_is_held_against_what_the_cable_takes() -> None:
    told = "70 mm2, 9 m one way. 11.2 V on the posts and 8.9 V at the thruster while it runs at 280 A. Is it the cable?"
    found = next(item for item in default_desk().ask(told).answers if item.topic == "load-voltage")
    head = found.headline.replace("\xa0", " ")
    assert head.startswith("Only in part: ")
    assert "only 1.3 V of it in the cable itself" in head
    alone = default_desk().ask("250 A. 11.2 V at the posts and 8.9 V at the thruster, does that tally?").answers[0]
    assert "itself" not in alone.headline
