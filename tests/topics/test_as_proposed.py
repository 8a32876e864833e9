"""The cable that the desk proposed, in later turns and beside other questions: it goes with them, named as assumed."""

from __future__ import annotations

import pytest

from service.reply import Answer
from tests.talks import talk


def last(*turns: str) -> Answer:
    return talk(*turns).answers[-1]


def plain(answer: Answer) -> str:
    return answer.headline.replace("\u00a0", " ")


def taken_as_proposed(answer: Answer) -> list[object]:
    return [item.value for item in answer.assumed if item.why == "as proposed"]


@pytest.mark.parametrize(
    ("turns", "begins"),
    [
        (("thruster 260 A 12 V, 22 ft each way, what cable?", "in mm2?"), "Use 70 mm² (2/0 AWG in American sizes)"),
        (("12V 180A, 6 m one way, which cable do I need", "and in AWG?"), "Use 1 AWG (35 mm² in metric sizes)"),
        (("340A 12V 15 ft each way, which AWG", "sq mm pls"), "Use 95 mm² (3/0 AWG in American sizes)"),
        (("Pike, 5 m each way. cable size?", "whats that in awg"), "Use 1/0 AWG (70 mm² in metric sizes)"),
    ],
)
def test_the_size_proposed_is_told_in_the_other_sizes(turns, begins):
    reply = talk(*turns)
    assert [answer.topic for answer in reply.answers] == ["cable-size"]
    assert plain(reply.answers[0]).startswith(begins)
    assert reply.triage.route == "answered"


def test_a_size_of_their_own_is_converted_and_not_proposed():
    answer = last("2/0 20 ft each way 12V 260A, how much is lost?", "in mm2?")
    assert answer.topic == "rating-convert"
    assert [item.name for item in answer.figures] == ["area"]


@pytest.mark.parametrize(
    ("turns", "most", "cable"),
    [
        (("Pike, 5 m each way. cable size?", "whats that in awg", "and the fuse for that?"), 450.0, 70.0),
        (("260A 12V 18 ft one way, AWG?", "breaker?"), 400.0, "1/0"),
        (("cable for 300A 12V 10 m each way?", "in mm2?", "fuse?"), 500.0, 95.0),
    ],
)
def test_its_fuse_is_told_turns_later_without_asking_which_cable(turns, most, cable):
    answer = last(*turns)
    assert answer.topic == "fuse-size"
    assert not answer.asks
    assert {item.name: item.value for item in answer.figures}["fuse_rating_high"] == most
    assert taken_as_proposed(answer) == [cable]


@pytest.mark.parametrize(
    ("turns", "parts"),
    [
        (("340A 12V 15 ft each way, AWG?", "fuse?", "and if it passes the engine space?"),
         ("Use 4/0 AWG now, as 3/0 AWG may carry only 327 A in the engine space", "fit a 450 A fuse")),
        (("260A 12V 18 ft one way, AWG?", "breaker?", "it goes through the engine space"),
         ("Use 2/0 AWG now, as 1/0 AWG may carry only 242 A in the engine space", "fit a 350 A breaker")),
        (("which cable for the Minnow, 4 m each way?", "and through the engine room"),
         ("Use 25 mm² (4 AWG in American sizes): over",)),  # the catalogue's size carries enough there
        (("200A thruster, 7 m one way, 12 V. cable?", "and if it runs through the engine room?"),
         ("Use 50 mm² (1/0 AWG in American sizes): over",)),  # it carries 208 A there too
    ],
)  # fmt: skip
def test_the_engine_space_is_held_against_the_size_proposed_before(turns, parts):
    head = plain(last(*turns))
    assert all(part in head for part in parts), head


@pytest.mark.parametrize(
    ("turns", "begins"),
    [
        (("340A 12V 15 ft each way, AWG?", "volts at the motor?"), "About 11.3 V of 12 V reach the motor"),
        (("cable for the Pike, 6 m each way?", "how many volts reach the thruster then"), "About 11.2 V of 12 V"),
        (("what cable for 200 A at 12 V over 8 m each way", "how many volts do I lose with that?"),
         "50 mm², as proposed, loses 1.14 V"),
    ],
)  # fmt: skip
def test_the_volts_that_it_leaves_the_motor_follow_from_it(turns, begins):
    answer = last(*turns)
    assert (answer.topic, answer.verdict) == ("voltage-drop", "yes")
    assert plain(answer).startswith(begins)
    assert len(taken_as_proposed(answer)) == 1


@pytest.mark.parametrize(
    ("turns", "verdict", "at_motor"),
    [
        # 12.6 - 390 x 6/650 = 9.0 at the posts; 70 mm² over 6 m takes 1.20 in the first instant
        (("Pike 6 m each way: which cable, and will my 650 CCA battery do?",), "marginal", 7.8),
        (("I need cable for 260 A 12 V 20 ft each way", "will my 700 CCA AGM run it?"), "marginal", 7.56),
        (("Will my 700 CCA AGM start the Pike 6 m away, and which cable do I pull?",), "yes", 8.06),
    ],
)
def test_run_check_takes_off_what_the_proposed_cable_loses(turns, verdict, at_motor):
    answer = next(item for item in talk(*turns).answers if item.topic == "run-check")
    assert answer.verdict == verdict
    assert {item.name: item.value for item in answer.figures}["voltage_at_load"] == pytest.approx(at_motor, abs=0.01)
    assert len(taken_as_proposed(answer)) == 1


def test_without_a_proposal_the_cable_stays_unknown():
    answer = last("Will a 700 CCA AGM run the Pike, 6 m from the battery?")
    assert "voltage_at_load" not in {item.name for item in answer.figures}
    assert not taken_as_proposed(answer)


def test_a_cable_that_is_told_takes_the_place_of_the_proposed_one():
    answer = last("260A 12V 18 ft one way, AWG?", "it is 4/0 in there already, 105C", "fuse?")
    assert "4/0 AWG" in plain(answer)
    assert not taken_as_proposed(answer)


@pytest.mark.parametrize(
    ("turns", "topic", "parts"),
    [
        (("what cable for 340 A at 12 V over 24 ft each way", "would 24 V help?"), "cable-size",
         ("Yes: a 24 V thruster of the same power draws about 170 A", "2 AWG (35 mm² in metric sizes) is enough")),
        (("2/0 20 ft each way 12V 260A, how much is lost?", "is 24 volts better"), "voltage-drop",
         ("Yes: a 24 V thruster of the same power draws about 130 A", "2/0 AWG loses 0.45 V, 1.9 % of 24 V")),
    ],
)  # fmt: skip
def test_whether_24_volts_help_is_told_for_a_motor_of_the_same_power(turns, topic, parts):
    answer = last(*turns)
    assert answer.topic == topic
    assert all(part in plain(answer) for part in parts), plain(answer)


def test_at_24_volts_alone_keeps_the_amps():
    answer = last("what cable for 200 A at 12 V over 10 m", "and at 24V?")
    assert next(item.value for item in answer.understood if item.fact == "load.current") == 200.0


@pytest.mark.parametrize(
    ("turns", "verdict", "part"),
    [
        (("340A 12V 15 ft each way, AWG?", "is a 500 A fuse ok?"), "marginal", "over the 400 A that suits 3/0 AWG"),
        (
            ("which cable for Pike, 5 m each way?", "got a 400 A fuse, will it do"),
            "marginal",
            "350 A that suits 70 mm²",
        ),
        (("what cable for 200 A 12 V 7 m one way", "250A fuse ok on that?"), "yes", "suits 200 A on 50 mm²"),
        (("340A 12V 15 ft each way. cable? is a 600 A fuse ok with that?",), "no", "3/0 AWG allows 500 A at most"),
    ],
)
def test_a_fuse_of_theirs_is_judged_on_the_proposed_cable(turns, verdict, part):
    answer = last(*turns)
    assert (answer.topic, answer.verdict) == ("fuse-size", verdict)
    assert part in plain(answer)
    assert len(taken_as_proposed(answer)) == 1


def test_a_smaller_current_leaves_the_cable_that_was_named():
    assert "3/0 AWG" in plain(last("340A 12V 15 ft each way, AWG?", "fuse?", "and at 300 A?"))


@pytest.mark.parametrize(
    "turns",
    [
        ("cable for a 110 A windlass, 12 V, 20 ft each way?", "will my 700 CCA AGM run the Pike?"),
        ("what cable for the 40 A charger, 3 m each way, and will my 700 CCA AGM run the Pike?",),
    ],
)
def test_the_cable_of_another_load_is_not_taken(turns):
    assert not taken_as_proposed(last(*turns))
