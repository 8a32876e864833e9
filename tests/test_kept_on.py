"""What must stay on is left on, several cables have a fuse each, yes or no is said where no more is asked."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.reply import Answer
from service.say import NB


def found(text: str, topic: str) -> Answer:
    return next(item for item in default_desk().ask(text).answers if item.topic == topic)


@pytest.mark.parametrize(
    ("text", "topic", "stays"),
    [
        ("The bilge pump's float switch takes 80 mA from 100 Ah, away for 3 months.", "standing-drain", True),
        ("CO alarm and gas sniffer, 0.15 A, 110 Ah. How long?", "standing-drain", True),
        ("A radio memory takes 30 mA, 100 Ah, away for 6 months.", "standing-drain", False),
        ("Will a 20 W panel cover a bilge alarm of 0.1 A on 100 Ah?", "solar", True),
        ("Will a 20 W panel cover a drain of 0.1 A on 100 Ah?", "solar", False),
    ],
)
def test_a_pump_or_an_alarm_is_never_disconnected(text: str, topic: str, stays: bool) -> None:
    answer = found(text, topic)
    told = " ".join([answer.headline, *(item.say for item in answer.cautions), *(c.say for c in answer.would_change)])
    assert ("isconnect" not in told) is stays


def test_a_pump_that_stays_on_empties_the_battery_in_store() -> None:
    left = found("I leave the boat for 4 months with the automatic bilge pump on, 100 Ah AGM.", "storage")
    assert (left.verdict, [item.fact for item in left.asks]) == ("needs-facts", ["drain.current"])
    assert found("I leave the boat for 4 months, 100 Ah AGM.", "storage").verdict != "needs-facts"


@pytest.mark.parametrize(
    ("text", "topic", "opens"),
    [
        ("24 V 4 kW thruster on two 1000 CCA in series. Does that fly or not?", "run-check", "Yes: "),
        ("A Pike on 480 CCA, yay or nay?", "run-check", "No: "),
        ("225 A fuse on 50 mm2 with 170 A, yea or nay", "fuse-size", "Yes: "),
        ("500 CCA for the Pike: thumbs up or down?", "run-check", "No: "),
        ("Will an 80 W panel feed 0.1 A on 100 Ah at 1 sun hour, and if not, how many days to half?", "solar", "Yes: "),
        ("AGM or gel for the Pike?", "battery-type", "AGM"),  # a choice, no yes or no
    ],
)
def test_both_ways_of_asking_want_a_yes_or_a_no(text: str, topic: str, opens: str) -> None:
    assert found(text, topic).headline.startswith(opens)


def test_each_of_several_cables_has_a_fuse_of_its_own() -> None:
    told = "24 V, 5 kW, 11 m one way, {} °C insulation in the engine space. Which cable and which fuse?"
    cable, fuse = (found(told.format(70), topic) for topic in ("cable-size", "fuse-size"))
    assert "or one 70 mm² of 105 °C" in cable.headline.replace(NB, " ")
    assert "Fit a 150 A fuse in each of the 2 cables of 120 mm²" in fuse.headline.replace(NB, " ")
    assert any("may carry 174 A in the engine space" in step.say.replace(NB, " ") for step in cable.working)
    assert "in each" not in found(told.format(105), "fuse-size").headline


@pytest.mark.parametrize(
    ("text", "circuit"),
    [
        ("There is no fuse on the bow thruster. Which cable for 190 A over 5 m?", True),
        ("My lithium battery is swollen. Which cable for 190 A over 5 m?", False),
    ],
)
def test_beside_a_danger_of_a_circuit_no_battery_is_spoken_of(text: str, circuit: bool) -> None:
    assert ("before this circuit is used" in found(text, "cable-size").headline) is circuit
