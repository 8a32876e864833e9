"""Who knows little: a thruster that only clicks, a kind to be found out, a label that is gone, a ruined battery."""

from __future__ import annotations

import pytest

from tests.talks import only, plain, talk


@pytest.mark.parametrize(
    "text",
    [
        "our thruster only clicks and I've no idea what battery it has",
        "the windlass clicks but does not turn",
        "thruster dead this morning, no idea why",
        "bow thruster won't work. what should i check first?",
        "nothing happens when I press the button of the thruster",
        "my stern thruster is so slow lately, no idea what battery is in there",
    ],
)
def test_a_motor_that_is_weak_or_dead_is_measured_in_two_places(text: str) -> None:
    found = only(text)
    assert (found.topic, found.verdict) == ("load-voltage", "needs-facts")
    assert found.headline.startswith("Read the volts twice")
    assert [asked.fact for asked in found.asks] == ["reading.load_voltage", "reading.load_voltage_at_load"]


def test_which_battery_to_buy_is_still_asked_of_a_weak_one() -> None:
    assert only("thruster clicks, which battery do i need for a 260 A one").topic == "bank-size"


@pytest.mark.parametrize(
    "text",
    [
        "the thruster won't work and smoke comes from the battery locker",
        "thruster dead and the battery is hot and swollen",
    ],
)
def test_a_dead_motor_hides_no_danger(text: str) -> None:
    assert talk(text).answers[0].verdict == "stop"


@pytest.mark.parametrize(
    "text",
    [
        "how do i find out what kind of battery i have",
        "how can I tell if mine is agm or gel?",
        "what type of battery is it? how do I see that",
        "how do i know if my battery is lithium",
    ],
)
def test_how_a_kind_is_found_out_is_not_which_to_choose(text: str) -> None:
    found = only(text)
    assert found.topic == "battery-type"
    assert found.headline.startswith("Look at it: caps that unscrew mean wet-cell")
    assert [asked.fact for asked in found.asks] == ["battery.chemistry"]
    assert not [item for item in found.understood if item.fact == "battery.chemistry"]


def test_which_kind_to_choose_is_still_that() -> None:
    assert only("what kind of battery is best for a thruster").headline.startswith("AGM for most boats")


@pytest.mark.parametrize(
    ("label", "says"),
    [
        ("it has caps on top", "It is a wet-cell battery"),
        ("it says VRLA AGM 100Ah", "It is an AGM battery"),
        ("12V 70Ah 600A EN sealed", "A 12 V sealed lead battery of 70 Ah and 600 A EN"),
        ("12V 95Ah 850 CCA gel", "A 12 V gel battery of 95 Ah and 850 CCA"),
    ],
)
def test_the_kind_that_was_found_is_given_back(label: str, says: str) -> None:
    assert plain(only("how do i find out what kind it is?", label).headline).startswith(says)


def test_the_weak_motor_is_not_forgotten_over_the_label() -> None:
    found = only("our thruster only clicks", "how do i find out what kind it is?", "12V 70Ah 600A EN sealed")
    assert "reading.load_voltage" in [asked.fact for asked in found.asks]


def test_amps_by_en_are_told_as_such() -> None:
    assert "640 A EN" in plain(only("will my 640A EN wet battery run a minnow").headline)


@pytest.mark.parametrize("gone", ["the sticker's gone", "the plate on the motor is unreadable", "label has come off"])
def test_who_has_no_label_is_not_sent_to_it_again(gone: str) -> None:
    found = only("what cable for my bow thruster, 6 m", gone)
    assert plain(found.headline).startswith("The model name is enough, from the joystick panel")
    assert not any("plate" in asked.where for asked in found.asks)


def test_a_label_told_to_be_gone_at_once_is_not_looked_for() -> None:
    found = only("what cable for my bow thruster, 6 m? the sticker on the motor is gone")
    assert "plate" not in found.asks[0].where


@pytest.mark.parametrize("named", ["1000 is MCA", "the 1000 is marine cranking amps, it's wet", "1000 MCA it says"])
def test_amps_named_as_mca_settle_the_cca(named: str) -> None:
    asked = "battery says 1000 A. will it run a 340 A thruster?"
    assert [item.fact for item in only(asked).asks] == ["battery.cca"]
    assert not only(asked, named).asks
    assert "800 CCA" in plain(only(asked, named).headline)


def test_amps_before_a_kind_of_lead_are_the_battery_s() -> None:
    assert "800 CCA AGM" in plain(only("will my 1000 amp agm run a 340a thruster").headline)


@pytest.mark.parametrize(
    "text",
    [
        "wet one down at 9.9 V after the lay-up, is it ruined",
        "gel 10.3 V since autumn, have we killed it?",
        "battery rested at 10.0, is it scrap?",
    ],
)
def test_whether_a_flat_one_is_ruined_is_a_question_of_a_new_one(text: str) -> None:
    reply = talk(text)
    assert [(item.topic, item.verdict) for item in reply.answers] == [("replacement", "needs-facts")]
    assert reply.answers[0].headline.startswith("It may be: ")
    assert reply.triage.urgency == "today"


def test_a_six_volt_battery_is_not_flat_at_its_volts() -> None:
    assert only("6 V battery reads 6.3, is it ruined?").topic == "rest-voltage"
