"""Who does not know a fact hears how to find out, and is never asked the same again."""

from __future__ import annotations

import pytest

from grammar.facts import facts
from tests.talks import only, talk

LONGEST = 30  # words of a headline


@pytest.mark.parametrize(
    ("question", "not_known", "says", "asks"),
    [
        ("how big a battery for my bow thruster", "dont know the amps", "kW or hp", "load.model"),
        ("something is draining my battery", "no idea how to measure", "minus cable off", "reading.voltage"),
        ("what setting for my battery", "not sure", "caps that unscrew", "battery.chemistry"),
        ("what setting for my sealed battery", "not sure", "12.8 V or BMS", "battery.chemistry"),
        ("fuse size", "dont know what cable it is", "electrician measures", "load.current"),
    ],
)
def test_the_way_to_find_out(question: str, not_known: str, says: str, asks: str) -> None:
    (answer,) = talk(question, not_known).answers
    assert says in answer.headline
    assert answer.asks[0].fact == asks


def test_no_fuse_for_a_cable_that_nobody_knows() -> None:
    (answer,) = talk("cable for a 260 A thruster 6 m away", "and the fuse?", "no idea what cable it is").answers
    assert answer.topic == "fuse-size"
    assert "fuse_rating_high" not in {item.name for item in answer.figures}


def test_who_does_not_know_twice_is_asked_for_photos() -> None:
    reply = talk("how big a battery for my bow thruster", "no idea", "no idea about that either")
    assert "photos" in reply.answers[0].headline
    assert reply.triage.route == "technician"


def test_what_was_not_known_is_not_asked_again() -> None:
    reply = talk("will a leisure battery run the Minnow?", "no idea of the CCA", "12.6 at rest and 10.4 when I run it")
    assert "battery.cca" not in {asked.fact for answer in reply.answers for asked in answer.asks}


@pytest.mark.parametrize("spec", [spec for spec in facts().values() if spec.unknown], ids=lambda spec: spec.name)
def test_help_is_short_and_names_facts(spec: object) -> None:
    assert len(spec.unknown.split()) <= LONGEST  # type: ignore[attr-defined]
    assert set(spec.instead) <= set(facts())  # type: ignore[attr-defined]


RATED = "will a 100Ah agm run the Pike?"


@pytest.mark.parametrize(
    ("question", "not_there", "says"),
    [
        (RATED, "no CCA on the label", "look for 9.6\u00a0V"),
        (RATED, "label doesn't show CCA", "look for 9.6\u00a0V"),
        (RATED, "the sticker does not give it, only Ah", "under 9.6\u00a0V"),
        (RATED, "it's not stamped anywhere", "under 9.6\u00a0V"),
        (RATED, "no CCA on it, it weighs 28 kg", "look for 9.6\u00a0V"),
        ("Will two 12 V 100 Ah AGM in series feed a 24V 280A thruster?", "can't find a CCA figure", "19.2\u00a0V"),
        ("what fuse for my 200 A thruster?", "nothing printed on the cable", "electrician measures the copper"),
        ("how old is too old for my gel, is it time for a new one?", "no date on it", "Without a date"),
        ("12.6 drops to 10.1 with it running, ok?", "cca isn't marked anywhere", "a load test decides"),
    ],
)
def test_a_label_that_does_not_tell_is_not_asked_of_again(question: str, not_there: str, says: str) -> None:
    reply = talk(question, not_there)
    assert says in reply.answers[0].headline
    assert reply.notice is None


@pytest.mark.parametrize("told", ["the label says 700 CCA, not 650", "not 100 Ah, the label says 110"])
def test_a_label_that_tells_is_believed(told: str) -> None:
    headline = talk(RATED, told).answers[0].headline
    assert "test" not in headline


SERIES_OUTPUTS = "A charger with two outputs on our two batteries in series, is that all right?"
LITHIUM_ROW = "May I put two lithium batteries in series?"


@pytest.mark.parametrize(
    ("first", "reply", "fact"),
    [
        (SERIES_OUTPUTS, "not certain", "charger.isolated"),
        (SERIES_OUTPUTS, "not really sure", "charger.isolated"),
        (SERIES_OUTPUTS, "not a clue", "charger.isolated"),
        ("A non-isolated 12 to 24 V converter of 10 A, fine?", "no clue about the minus", "converter.common_negative"),
        (LITHIUM_ROW, "not sure how many its maker lets you", "battery.max_in_series"),
        (LITHIUM_ROW, "no idea what is allowed", "battery.max_in_series"),
    ],
)
def test_who_does_not_know_has_not_said_no(first, reply, fact):
    answer = only(first, reply)
    assert answer.verdict == "needs-facts"
    assert fact in [item.fact for item in answer.asks]
    assert not answer.headline.startswith("We can't say yet")  # how it is found out, or what is true without it


def test_a_plain_no_is_an_answer():
    assert only(SERIES_OUTPUTS, "no").verdict == "no"
    assert only(SERIES_OUTPUTS, "not isolated").verdict == "no"
