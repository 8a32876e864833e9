"""A request beside its things: each of them is answered, and no thing that is only told."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.routing.framed import framed

FUSE = "Which fuse for a thruster of 160 A on 1/0?"


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("which cable and breaker for my stern thruster please, the boat is 9 m", {"cable-size", "fuse-size"}),
        ("need fuse n wire for a 150 A motor", {"cable-size", "fuse-size"}),
        ("Recommend the right breaker & cable size", {"cable-size", "fuse-size"}),
        ("The wire and the breaker came today, which lugs?", set()),  # they are there
        ("the fuse blew, which cable is to blame", set()),
    ],
)
def test_a_cable_and_its_fuse_are_asked_in_one_breath(text: str, topics: set[str]) -> None:
    assert set(framed(text, {"fuse-size"}, set())) == topics


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("35 mm2, 24 V motor of 110 A, 6 m one way. Is the drop ok? Which fuse?", {"voltage-drop", "fuse-size"}),
        ("10 mm2, 20 A charger, 5 m each way. What do I lose? What mm2 should go in instead?",
         {"voltage-drop", "cable-size"}),
        ("wet 2 x 180 Ah in series - chgr amps / which setting / 1 chgr or 2?",
         {"charger-size", "charger-setting", "charger-banks"}),
        ("4P of 90 Ah LFP: total Ah, and chgr A?", {"bank-wiring", "charger-size"}),
        ("2S2P 12 V 95 Ah gel 600 CCA -> V / Ah / CCA", {"bank-wiring"}),
        ("10.6 V at the battery and 8.5 V at the motor, 260 A, 7 m one way. Cable or battery, and if it is the cable, "
         "what size then?", {"load-voltage", "cable-size"}),
        ("11.0 V at the battery and 9.1 V at the motor, 260 A, 35 mm2, 7 m one way. Cable or battery?",
         {"load-voltage"}),
        ("Full wet battery of 90 Ah, an alarm of 40 mA stays on. How many days till it is half empty? We have a 50 W "
         "panel in the open, so would the panel keep the alarm going all winter? And will it freeze at -12?",
         {"standing-drain", "solar", "freeze-point"}),
        ("The cold box takes 6 A from a 120 Ah wet battery, full. How many hours until we should stop? And my husband "
         "asks if wet is still the right kind or whether we should go for gel.", {"run-time", "battery-type"}),
        ("12.7 V at rest today. Running at 150 A it falls to 9.8 V, 640 CCA. Is that fall acceptable?",
         {"load-voltage"}),
        ("One gel of 3 years, 90 Ah, and I can have another of 60 Ah. In series for 24 V: allowed?", {"bank-wiring"}),
        ("The lid of the box no longer shuts. Will a strap across the top hold the two gels?", {"mounting"}),
        ("What is the difference between float and absorption? And what volts should mine show in each, gel, 12 V?",
         {"meaning", "charger-setting"}),
        ("What does float mean? And what should my gel read at rest when full?", {"meaning", "rest-voltage"}),
        ("The charger shows 14.8 V, and it says AGM on the lid. Is that right for it? Second, how long must it stay on "
         "the charger?", {"charger-setting", "charge-time"}),
        ("Is 14.4 V right for my AGM? And how long should I leave it plugged in?", {"charger-setting", "charge-time"}),
        ("Which charger setting for gel? And may it stay plugged in all winter?", {"charger-setting"}),
        ("gel float v 24v; chgr a?", {"charger-setting", "charger-size"}),
        ("12.35v agm soc; runtime @180a?", {"rest-voltage", "run-time"}),
        ("2x95 gel; thruster 140A; ok?", {"run-check"}),
        ("20 W panel, 5 sun hours; makes up 0.2 A drain?", {"solar"}),
        ("How much lighter is lithium of 80 Ah, and which charger setting for it?", {"weight", "charger-setting"}),
        ("Which charger and what charger setting for 80 Ah of gel?", {"charger-size", "charger-setting"}),
        ("Fitted a Pike. Will the battery under the berth do?", {"run-check"}),
        ("What battery would do for a Pike?", {"bank-size"}),
    ],
)  # fmt: skip
def test_what_is_asked_is_answered_and_nothing_else(text: str, topics: set[str]) -> None:
    found = {answer.topic for answer in default_desk().ask(text).answers}
    assert topics <= found <= topics | {"cable-size", "storage"}


@pytest.mark.parametrize(
    "aside",
    [
        "My customer number is 7712.",
        "I found your address on the net.",
        "Please reply in simple words.",
        "The cupboard measures 70 by 50 cm.",
        "I weigh 88 kg, it is a squeeze.",
        "The chandler shuts at 5.30.",
        "Our mast is 13 m.",
        "The depth is 2 m.",
        "Went aground in August, nothing broken.",
        "The inverter sits in the engine room.",
        "We sail in 10 days.",
        "The jetty has 230 V.",
        "The yacht is lovely, had her 8 years.",
        "The kedge anchor weighs 14 kg.",
        "Our tender is 70 kilos.",
        "The association has 200 members.",
        "The jib is 15 years old.",
        "It took the crew three hours to reach the fuel berth.",
        "Our old boat had nothing of that sort.",
    ],
)
def test_what_is_told_by_the_way_asks_nothing_and_changes_no_figure(aside: str) -> None:
    plain, told = (default_desk().ask(text).answers for text in (FUSE, f"{FUSE} {aside}"))
    assert [(item.topic, item.verdict, item.figures) for item in told] == [
        (item.topic, item.verdict, item.figures) for item in plain
    ]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("My customer number is 7712, when will you deliver? Which fuse for 160 A on 1/0?", "other-desk"),
        ("What does CCA mean, in simple words? And which fuse for 160 A on 1/0?", "meaning"),
        ("The cupboard measures 35 by 20 cm, does a group 31 fit? And which fuse for 160 A on 1/0?", "group-size"),
        ("We are aground, and which fuse for 160 A on 1/0?", "hazard"),
    ],
)
def test_what_is_asked_beside_it_is_answered(text: str, topic: str) -> None:
    assert topic in {item.topic for item in default_desk().ask(text).answers}


def test_a_battery_beside_its_load_is_judged_for_it() -> None:
    (found,) = default_desk().ask("24 V windlass, a 12 V battery, is that fine?").answers
    assert (found.topic, found.verdict) == ("run-check", "no")


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("what does DoD mean. which fuse for 2 AWG", {"meaning"}),
        ("aic is what? and which breaker", {"meaning"}),
        ("What on earth is reserve capacity, and which breaker", {"meaning"}),
        ("What is meant by ampacity? and which breaker", {"meaning"}),
        ("somebody say what a class T is, and which cable", {"meaning"}),
        ("35 mm2 is wot awg.. and which breaker", set()),
        ("a 35 A fuse. 600 MCA is what in CCA", set()),  # counted in another rating
        ("what's the CCA left at -5, and which fuse", set()),
        ("fuse for 35 mm2, and how much liter is lfp", {"weight"}),
        ("how light is the cable to be for this fuse", set()),
        ("the new one next to the old one went in, which fuse", set()),
        ("which fuse. new battery next to old ok?", {"bank-wiring"}),
    ],
)
def test_what_is_asked_by_the_way_is_answered(text: str, topics: set[str]) -> None:
    assert set(framed(text, {"fuse-size"}, set())) - {"fuse-size", "cable-size"} == topics
