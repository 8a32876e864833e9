"""Several questions in one message: every one is answered, and one that is not is named and handed on."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.render.as_mail import as_mail
from service.routing.listed import questions
from tests.talks import talk


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("How long will it last, and may I leave it on?", ["How long will it last", "may I leave it on?"]),
        ("What does it weigh? And is it a group 27, and does it fit?",
         ["What does it weigh?", "is it a group 27", "does it fit?"]),
        ("It says gel on top, and what fuse then?", []),  # the first half tells
        ("1) does it run, and how long? 2) which fuse?", ["does it run, and how long?", "which fuse?"]),
        ("Is 12.4 V and a bit ok?", []),
    ],
)  # fmt: skip
def test_a_sentence_that_asks_twice_is_cut_before_its_second_question(text: str, parts: list[str]) -> None:
    assert [text[start:end].strip() for start, end in questions(text)] == parts


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("For our file: 1. Does one 800 CCA AGM carry a Minnow? 2. Which cable over 7 m? 3. What charger current do we "
         "quote for its 95 Ah?", ["run-check", "cable-size", "charger-size"]),
        ("1) Are two 90 Ah gels of 600 CCA in parallel enough for a Pike? 2) Which fuse on 1/0? 3) What charger output "
         "should we quote for the two?", ["run-check", "fuse-size", "charger-size"]),
        ("For the log book: (a) what does specific gravity tell you, (b) how often are wet batteries topped up?",
         ["meaning", "maintenance"]),
        ("(a) what does CCA tell you, (b) how long may a 100 Ah AGM stand over winter?", ["meaning", "storage"]),
        ("Can a 900 CCA starting battery turn a 300 amp motor, and what rating of fuse goes in if the cable is 95 mm2?",
         ["run-check", "fuse-size"]),
        ("Three makes of wet battery in parallel, one, three and five years old. Can that stay, and how often do I "
         "look at the water?", ["bank-wiring", "maintenance"]),
        ("Going from gel to AGM. Anything to set on the charger? Do I still want the vent hose? May they lie down?",
         ["charger-setting", "ventilation", "mounting"]),
    ],
)  # fmt: skip
def test_each_question_of_a_message_is_answered(text: str, topics: list[str]) -> None:
    reply = default_desk().ask(text)
    assert [answer.topic for answer in reply.answers] == topics
    assert reply.notice is None


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("1) fuse for a Pike on 2/0? 2) the same for a Minnow on 2 AWG? 3) what about the paint?",
         "what about the paint?"),
        ("1) may the AGM and the gel be paralleled? 2) which fuse for a Pike on 2/0? 3) which outlives the other?",
         "which outlives the other?"),
    ],
)  # fmt: skip
def test_a_question_without_an_answer_is_named_and_a_technician_reads_it(text: str, left: str) -> None:
    reply = default_desk().ask(text)
    said = f'We have not answered "{left}" here: one of our technicians reads that too.'
    assert (reply.notice, reply.triage.route) == (said, "technician")
    assert said in " ".join(as_mail(reply, {})[0].split())


@pytest.mark.parametrize(
    "text",
    [
        "12.3 V on my gel after a night. Good or bad?",
        "One AGM in the bow locker, on its side. Allowed? Which side down? And does it need a vent?",
        "35 mm2, 150 A at 24 V, 9 m each way. Drop? Acceptable? Fuse?",
        "Is a gel a good choice in a cold shed? And on its side?",
        "12.05 V at rest and 9.4 V in use with 200 A. (a) (b) (c) what do you say to each",
        "1. agm on its back, alright? 2. alright?",
        "40 mA drain, 15 W of panel in May. Does it hold the 90 Ah, lights all off?",
        "10.9 V at the battery, 8.6 V at the motor, 220 A. Healthy? Is the rest lost in the cable?",
        "5 months in the shed with wet batteries. All right like that? And when do I look in?",
    ],
)
def test_nothing_is_called_open_where_all_is_answered(text: str) -> None:
    assert default_desk().ask(text).notice is None


def test_of_two_terms_each_question_has_its_own() -> None:
    first, second = default_desk().ask("1) what is a BMS? 2) 130 min of reserve, how many Ah is that?").answers
    assert first.headline.startswith("A BMS")
    assert "Reserve" not in first.headline
    assert second.topic == "rating-convert"


def test_the_charger_of_another_question_makes_no_cable_thicker() -> None:
    alone = default_desk().ask("What cable for a 210 A motor over 6 m?").answers[0].headline
    first = default_desk().ask("What cable for a 210 A motor over 6 m? And which charger for 100 Ah AGM?").answers[0]
    assert first.headline == alone


@pytest.mark.parametrize(
    ("text", "handed"),
    [
        ("1. 12.6 on a rested gel, fine? 2. fuse for 90 A? 3. when will her parcel be delivered", True),
        ("Customer: 1) charger for 95 Ah AGM 2) how long does 6 A last on it 3) may he have a refund", True),
        ("1. 12.6 on a rested gel, fine? 2. fuse for 90 A? 3. can I charge it in the cold", False),
        ("1) cheapest kind of battery for a thruster? 2) 12.4 on a rested AGM, good?", False),
    ],
)
def test_an_item_for_the_orders_desk_is_handed_over(text: str, handed: bool) -> None:
    assert ("other-desk" in [item.topic for item in talk(text).answers]) is handed
