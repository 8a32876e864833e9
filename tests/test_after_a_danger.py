"""What is told after a danger: that it is over, never was, or is another's; and what only sounds like one."""

from __future__ import annotations

import pytest

from tests.talks import plain, talk

CRACKED = "the case of my flooded battery has a crack"
SWOLLEN = "the gel is bulging at the sides"
COLD = "can the lithium be charged at -4 C?"


def told(*turns: str) -> list[tuple[str, str]]:
    return [(item.topic, item.verdict) for item in talk(*turns).answers]


def head(*turns: str) -> str:
    return plain(talk(*turns).answers[0].headline)


def used(*turns: str) -> dict[str, object]:
    return {item.fact: item.value for answer in talk(*turns).answers for item in answer.understood}


@pytest.mark.parametrize(
    ("turns", "found"),
    [
        ((CRACKED, "exchanged it for a fresh one, 700 cca agm. strong enough for a pike?"), [("run-check", "yes")]),
        ((CRACKED, "the yard has replaced it, 85 ah gel. which charger?"), [("charger-size", "information")]),
        (("the lithium was on charge all night at -6", "new battery is in, agm 85 ah. what charger?"),
         [("charger-size", "information")]),
        (("the joint at my breaker gets hot", "lug renewed by an electrician. what cable for 150 A, 4 m?"),
         [("cable-size", "information")]),
        (("we drift, no power at all", "anchored now, all well. agm shows 12.1 at rest"), [("rest-voltage", "no")]),
        (("smell of petrol in the bilge", "fire brigade gave the all clear, hose replaced. agm 12.1 at rest"),
         [("rest-voltage", "no")]),
        (("the lithium is puffed up", "the yard took it to the recycler today. which float volts for a gel?"),
         [("charger-setting", "information")]),
        (("there's no fuse on the thruster cable and we use it", "300 A fuse is in now. how do I top up wet cells?"),
         [("fuse-size", "needs-facts"), ("maintenance", "information")]),
        (("my son is in the water by the thruster", "he's out, all good. 105 Ah gel, how many amps of charger?"),
         [("charger-size", "information")]),
        (("the rail tingles when plugged in", "sparky found the bad earth and renewed it. agm 12.1 at rest"),
         [("rest-voltage", "no")]),
        (("the bow thruster will not stop", "the yard swapped its relay, stops as it should. agm 12.1 at rest"),
         [("rest-voltage", "no")]),
        (("smell of petrol in the bilge", "engineer renewed the hose, detector reads zero. agm 12.1 at rest"),
         [("rest-voltage", "no")]),
        (("acid went in my eye", "back from the hospital, all well. how do I top up the cells?"),
         [("maintenance", "information")]),
        (("the gel went hot and fat on charge", "technician tested it and cleared it for use. agm 12.1 at rest"),
         [("rest-voltage", "no")]),
        (("is a swollen battery a danger?", "only asking in general, ours is fine, agm 12.1 at rest"),
         [("rest-voltage", "no")]),
    ],
)  # fmt: skip
def test_what_is_gone_mended_or_cleared_stands_no_longer(turns, found):
    assert told(*turns) == found


@pytest.mark.parametrize(
    "turns",
    [
        (CRACKED, "shall I exchange it for a fresh one, 700 cca agm? enough for a pike?"),
        (SWOLLEN, "it's a new battery, only fitted in June. 12.7 V"),
        (SWOLLEN, "new battery fitted, that one bulges too"),
        (CRACKED, "the fuse blew as well and i replaced it with a new one. 12.7 V at rest"),
        ("the joint at my breaker gets hot", "new lug needed by the electrician? what cable for 150 A, 4 m?"),
        ("we drift, no power at all", "anchor is down but it drags. agm 12.1"),
        (SWOLLEN, "should it go to the recycler? agm 12.1"),
        (SWOLLEN, "must the yard test it and clear it for use? agm 12.1"),
        ("there's no fuse on the thruster cable and we use it", "when I have a 250 A fuse in, is it ok? 180 A, 5 m"),
        ("my son is in the water by the thruster", "he isn't out yet. agm 12.1"),
        ("the bow thruster will not stop", "the yard must swap its relay? agm 12.1"),
        ("acid went in my eye", "should i go to the hospital? how do I top up the cells?"),
        ("smell of petrol in the bilge", "should I call the fire brigade? agm 12.1"),
        ("is a swollen battery a danger?", "asking as mine is round. agm 12.1"),
    ],
)
def test_what_is_only_thought_of_or_goes_on_stands(turns):
    assert told(*turns)[0] == ("hazard", "stop")
    assert all(verdict not in ("yes", "marginal") for _, verdict in told(*turns))


def test_a_new_battery_that_was_bought_is_answered_beside_the_old_one():
    found = told(SWOLLEN, "got a replacement, 85 ah wet. how do i store that one over winter")
    assert found == [("hazard", "stop"), ("storage", "information")]
    found = told(SWOLLEN, "got a replacement, 85 ah wet. store that one next to the swollen one?")
    assert ("storage", "information") not in found


@pytest.mark.parametrize(
    ("danger", "says"),
    [
        ("we drift, no power at all", "Stay on VHF 16"),
        ("the gas alarm is going", "Stay off, touch no switch"),
        ("the joint at my breaker gets hot", "That circuit stays off"),
        ("the bow thruster will not stop", "The thruster's main switch stays off"),
        ("smoke is coming out of the locker", "Stay off and out of the smoke"),
        (SWOLLEN, "No use and no charging, keep away: a swollen battery"),
    ],
)
def test_each_danger_stands_in_words_of_its_own(danger, says):
    assert head(danger, "agm 12.1 at rest").startswith(says)


@pytest.mark.parametrize(
    ("turns", "found"),
    [
        ((COLD, "warmed the cabin up, it is 11 C now"), ("charger-setting", "information")),
        ((COLD, "it has warmed up to 11 now"), ("charger-setting", "information")),
        ((COLD, "it warmed up on the charger"), ("hazard", "stop")),
        (("the lithium has warmed up",), ("hazard", "stop")),
    ],
)
def test_cold_that_is_over_is_no_heat(turns, found):
    assert told(*turns)[0] == found


@pytest.mark.parametrize(
    ("turns", "found"),
    [
        (("sturgeon on a pair of agms, it falls to 16.9 while running. good?",), ("load-voltage", "no")),
        (("agm, one 12 V battery", "16.8 on the posts with the charger on"), ("hazard", "stop")),
        (("sturgeon on two agms, it reads 31 V on the charger",), ("hazard", "stop")),
    ],
)  # fmt: skip
def test_volts_of_a_larger_bank_under_load_are_no_charge(turns, found):
    assert told(*turns)[0] == found


@pytest.mark.parametrize(
    ("turns", "found"),
    [
        (("wet cells, they gas slightly and bubble faintly while charging",), False),
        (("agm, it vents slightly and bubbles while charging",), True),
        (("wet cells, they bubble a little while charging and it smells of eggs",), True),
    ],
)
def test_wet_cells_that_bubble_a_little_on_charge_are_no_danger(turns, found):
    assert (("hazard", "stop") in told(*turns)) is found


def test_what_rests_after_the_charger_went_off_is_no_charger():
    for turn in ("turned it off, 13.2 resting", "switched the charger off, 13.2"):
        assert used("my charger shows 15.3 V. ok?", turn)["reading.voltage"] == 13.2
    assert used("my charger shows 15.3 V. ok?", "14.2 now")["charger.voltage"] == 14.2
    found = talk("my charger shows 15.3 V. ok?", "switched it off, 12.7 at rest").answers
    assert not any("12.7 V is too high" in plain(item.headline) for item in found)


@pytest.mark.parametrize(
    ("turns", "opens"),
    [
        (("200 Ah lfp, bms 150 A, 80 A load at -6 C. ok?", "and charge it too?"), "No: a lithium battery may not"),
        (
            ("is gel fine at -12?", "lithium of 120 A instead", "so can't charge it then?"),
            "No: a lithium battery may not",
        ),
        (("lithium sits at 3 C, may i charge it",), "Only slowly: at 3 °C"),
        (("lithium sits at 18 C, may i charge it",), "Use the lithium setting"),
        (("lithium sits at 3 C, may i charge it", "25 amp charger, 120 ah"), "No: 25 A is too much"),
        (("110 ah agm on a 25 A charger. normal that the charger gets hot?",), "25 A suits"),
        (("110 ah agm on a 25 A charger. is that normal?",), "Yes: 25 A suits"),
        (("may i undo the clamps while the charger is on?",), "No: switch the charger off first"),
        (("can i boost 12v from one of my 24v?", "only for 2 minutes"), "No: never join"),
        (("wet battery at 11.8 V and minus 18, will that freeze?",), "Yes, it can freeze"),
        (("12.6 V wet, when does it freeze?", "can i charge it"), "Look for ice or a bulge first"),
    ],
)
def test_what_a_question_of_charging_gets(turns, opens):
    assert head(*turns).startswith(opens)


def test_no_charge_is_advised_where_it_may_be_frozen():
    for text in ("wet battery 11.9 V and minus 15, does it freeze", "and if it was at 11.9 and minus 15, wet?"):
        assert not head("wet battery, when does it freeze?", text).endswith("so charge it before the frost.")


@pytest.mark.parametrize("thanks", ["Thanks.", "ok, cheers", "👍"])
def test_thanks_end_no_danger(thanks):
    assert "holds until somebody has seen to it" in head(SWOLLEN, thanks)
    assert "holds" not in head("Is 12.5 V good for an AGM?", thanks)
    assert told(SWOLLEN, thanks, "agm 12.1 at rest")[0] == ("hazard", "stop")
