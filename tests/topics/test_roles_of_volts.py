"""What volts are told as: the end of a load test, the stages of a charger, a limit that somebody named."""

from __future__ import annotations

import pytest

from tests.talks import only, plain, talk


@pytest.mark.parametrize(
    ("text", "verdict", "says"),
    [
        ("800CCA FLA, 400A 15s, 9.3V, 22C. pass?", "no", "9.3 V fails the load test"),
        ("AGM 640 CCA: 15 s @ 320 A -> 9.9. verdict", "yes", "9.9 V passes the load test"),
        ("900CCA wet 450A 10.1V 60F ok?", "yes", "10.1 V passes the load test"),
        ("600CCA FLA, 300A 15s, 9.5V, 3C. pass?", "needs-facts", "too cold"),
        ("24V 2x700CCA ser, 350A 15s, 18.4V, fail?", "no", "18.4 V fails the load test"),
    ],
)
def test_a_load_test_may_be_told_in_a_line_of_figures(text: str, verdict: str, says: str) -> None:
    found = only(text)
    assert (found.topic, found.verdict) == ("load-voltage", verdict)
    assert says in plain(found.headline)


def test_a_limit_of_lithium_is_no_load_test() -> None:
    found = only("LFP 100Ah, BMS 200A 10s, reads 11.2 V at rest. ok?")
    assert found.topic == "rest-voltage"


@pytest.mark.parametrize("before", ["12.6 before the test", "rested at 12.6 before", "it showed 12.6 at rest"])
def test_volts_at_rest_that_are_told_later_stand_beside_the_test(before: str) -> None:
    found = only("800CCA FLA, 400A 15s, 9.3V, 22C. pass?", before)
    assert (found.topic, found.verdict) == ("load-voltage", "no")
    assert "9.3 V fails" in plain(found.headline)
    assert {item.name: round(float(item.value), 1) for item in found.figures}["sag"] == 3.3


@pytest.mark.parametrize(
    ("text", "verdict", "says"),
    [
        ("gel 24V chgr abs 28.6 flt 27.4 ok?", "yes", "28.6 V for absorption is inside the 27.6 to 28.8 V"),
        ("AGM 12V abs 14.6 flt 13.5, ok?", "yes", "13.5 V for float is inside the 13.2 to 13.8 V"),
        ("gel charger: float 14.0, absorption 14.3. ok?", "no", "14.0 V for float is over the 13.5 to 13.8 V"),
        ("wet 12V absorption 14.9 float 13.4 fine?", "no", "14.9 V for absorption is over the 14.2 to 14.8 V"),
        ("my agm charger does 14.5 in absorption and floats at 13.0, right?", "marginal", "13.0 V for float is under"),
        ("lithium 24V, absorption 28.4 float 27.0. fine?", "yes", "27.0 V for float is inside"),
    ],
)
def test_both_stages_of_a_charger_are_judged(text: str, verdict: str, says: str) -> None:
    found = only(text)
    assert (found.topic, found.verdict) == ("charger-setting", verdict)
    assert says in plain(found.headline)


def test_what_would_mend_a_stage_names_it() -> None:
    (change,) = only("gel charger: float 14.0, absorption 14.3. ok?").would_change
    assert plain(change.say) == "float of 13.5 to 13.8 V"


def test_the_stages_are_judged_beside_the_amps() -> None:
    found = talk("24V 2x100Ah gel ser. 15A chgr big enough? and abs 28.6 flt 27.4 ok?").answers
    assert [(item.topic, item.verdict) for item in found] == [("charger-size", "yes"), ("charger-setting", "yes")]


@pytest.mark.parametrize(
    ("text", "verdict", "opens"),
    [
        ("my lithium shows 13.3, a friend said anything over 13 is dangerous??", "yes", "No: 13.3 V"),
        ("AGM rests at 12.8, they say more than 12.6 is bad. is it?", "yes", "No: 12.8 V"),
        ("gel at 12.3 rested; below 12.0 is dead, they say. is mine ok?", "no", "No, not yet: 12.3 V"),
        ("lithium 13.2, is everything above 13 harmful?", "yes", "No: 13.2 V"),
    ],
)
def test_a_limit_that_somebody_named_is_no_second_reading(text: str, verdict: str, opens: str) -> None:
    found = only(text)
    assert (found.topic, found.verdict) == ("rest-voltage", verdict)
    assert plain(found.headline).startswith(opens)
    assert not found.compare


def test_a_limit_that_somebody_named_hides_no_overcharge() -> None:
    found = talk("wet one shows 15.3 V on charge, my mate says anything over 14.4 is dangerous").answers
    assert found[0].verdict == "stop"


def test_two_readings_stay_two() -> None:
    assert len(only("one reads 12.7 and the other 12.1, both wet. fine?").compare) == 2


@pytest.mark.parametrize("later", ["the charger has been off since yesterday", "it's been unplugged since Sunday"])
def test_a_charger_long_off_means_rest(later: str) -> None:
    reply = talk("my lithium shows 13.3, is that fine?", later)
    assert reply.notice
    assert reply.notice.startswith("We have noted rest")


def test_lead_that_was_only_taken_is_told() -> None:
    found = only("drops to 10.4 when i push the joystick")
    assert [(item.fact, item.value) for item in found.assumed] == [("battery.chemistry", "lead")]
    assert not only("agm drops to 10.4 when i push the joystick").assumed


@pytest.mark.parametrize(
    "turns",
    [
        ("gravity 1.265 in all cells of my wet battery", "and it reads 11.9 V, is it any good?"),
        ("wet battery 12.7 V at rest, good?", "gravity is 1.150 in every cell"),
    ],
)
def test_a_gravity_and_volts_of_two_turns_that_contradict_are_both_named(turns: tuple[str, ...]) -> None:
    reply = talk(*turns)
    assert "cannot both be right" in reply.answers[0].headline
    assert reply.triage.route == "technician"


@pytest.mark.parametrize(
    "turns",
    [
        ("gravity 1.150 in all cells", "charged it all night, 12.7 V now"),
        ("gravity 1.225 in all cells, ok?", "volts are 12.45"),
    ],
)
def test_a_later_reading_that_fits_takes_the_place_of_the_gravity(turns: tuple[str, ...]) -> None:
    assert only(*turns).topic == "rest-voltage"
    assert only(*turns).verdict == "yes"
