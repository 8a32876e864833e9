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
