"""Figures that belong to one thing and not to its neighbour: a fuse, a lug, an output, a battery of its own."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.render.as_text import as_text
from tests.talks import talk


def plain(text):
    return text.replace("\u00a0", " ")


def last(*turns):
    (found,) = talk(*turns).answers
    return found.topic, found.verdict, plain(found.headline)


@pytest.mark.parametrize(
    ("text", "verdict", "fit"),
    [
        ("put a 500 A in place of the 300 A fuse, Pike on 1/0. can it stay?", "no", 350.0),
        ("fuse blew, so he replaced the 350 A by a 600 A. Pike, 2/0, fine?", "no", 350.0),
        ("there was a 350 A fuse, now there is a 500 A, Pike on 2/0. right?", "no", 350.0),
        ("in place of a 340 A thruster we fit a Pike on 2/0, what fuse?", "information", 350.0),
        ("swapped the 260 A thruster for a 340 A one on 4/0, what fuse?", "information", 450.0),
    ],
)
def test_what_was_replaced_counts_no_more(text, verdict, fit):
    (found,) = talk(text).answers
    assert (found.topic, found.verdict) == ("fuse-size", verdict)
    assert {item.name: item.value for item in found.figures}["fuse_rating"] == fit


@pytest.mark.parametrize(
    ("text", "verdict", "says"),
    [
        ("Pike on 2/0 from a 200 Ah lithium, owner has a 2 kA strip fuse. what rating?", "no",
         "one that breaks 2000 A is too weak for this bank, so take class T"),
        ("Pike on 2/0, 100 Ah lithium, what AIC must its fuse have?", "information", "what the battery's maker states"),
        ("350 A fuse of 3 kA breaking capacity, Pike on 2/0, two 700 cca agm in parallel. ok?", "no",
         "one that breaks 3000 A is too weak, as this bank asks for 5000 A"),
        ("350 A fuse of 6 kA breaking capacity, Pike on 2/0, two 700 cca agm in parallel. ok?", "yes",
         "one that breaks 6000 A is strong enough"),
        ("is 6 kA interrupting enough for a 300 Ah lithium bank?", "no", "No: a fuse that breaks 6000 A is too weak"),
        ("200 Ah lithium, Pike, 2/0 cable. is 3 kA enough?", "no", "one that breaks 3000 A is too weak for this bank"),
        ("fuse for a Pike on 2/0, is 6 kA interrupting ok?", "information", "the CCA of the whole bank"),
    ],
)  # fmt: skip
def test_kiloamps_are_what_a_fuse_can_break(text, verdict, says):
    fuse = next(item for item in talk(text).answers if item.topic == "fuse-size")
    found, headline = fuse.verdict, plain(fuse.headline)
    assert found == verdict
    assert says in headline
    assert "A fuse is too large" not in headline


@pytest.mark.parametrize(
    ("turns", "verdict", "says"),
    [
        (("5/16 lug on an M10 stud, ok?", "and the torque?"), "information", "Tighten your M10 stud to 10.4 to 13 Nm"),
        (("M10 lug over a 3/8 stud, does it fit?", "how tight then"), "information", "Tighten your 3/8-16 stud"),
        (("what torque on an M8 stud?", "my lugs are M10, do they fit"), "no", "too loose on your M8 stud"),
        (("bought M10 lugs, do they fit a marine battery?",), "information", "is too loose on a 5/16-18"),
        (("I have M8 lugs, will they go on?",), "information", "does not go over a 3/8-16 stud"),
        (("which lug do I need for an M10 stud?",), "information", "Use a lug with a hole for M10"),
    ],
)
def test_the_lug_and_the_stud_keep_their_sizes(turns, verdict, says):
    topic, found, headline = last(*turns)
    assert (topic, found) == ("terminals", verdict)
    assert says in headline


@pytest.mark.parametrize(
    ("turns", "verdict", "says"),
    [
        (("engine and bow battery on one charger, it has a single pair of clips. works?",), "no", "yours has 1"),
        (("charger with two pairs of leads for engine and thruster, ok?",), "yes", "2 outputs for 2 banks"),
        (("charger has one red and one black cable, two separate banks, ok?",), "no", "yours has 1"),
        (("one output charger, start wet and bow AGM, ok?", "what if the bow one is lithium"), "no",
         "lithium wants one of its own"),
        (("two output charger, start wet, bow AGM. ok?", "bow becomes lithium"), "marginal", "never one for both"),
        (("one charger with two outputs, two batteries, ok?", "and with lithium in the front"), "marginal",
         "never one for both"),
    ],
)  # fmt: skip
def test_outputs_are_told_in_everyday_words(turns, verdict, says):
    topic, found, headline = last(*turns)
    assert (topic, found) == ("charger-banks", verdict)
    assert says in headline


SHARED = "the Pike hangs on the engine's start battery, 900 CCA. good enough?"


@pytest.mark.parametrize(
    ("turns", "verdict"),
    [
        ((SHARED,), "marginal"),
        ((SHARED, "and a second one like it for the thruster alone"), "yes"),
        ((SHARED, "another 900 only for the bow?"), "yes"),
        ((SHARED, "and with its own 850 CCA battery"), "yes"),
        ((SHARED, "give the thruster its own 600 CCA then"), "no"),
        ((SHARED, "and what if a second like it goes in parallel?"), "marginal"),
        (("lamps dim when I push, the Minnow shares the engine's battery. ok or not?",), "needs-facts"),
        (("lamps dim when I push, the Minnow shares the engine's battery. ok or not?", "750 cca, wet"), "marginal"),
    ],
)
def test_a_battery_of_its_own_is_not_the_engines(turns, verdict):
    assert last(*turns)[:2] == ("run-check", verdict)


def test_a_second_one_beside_the_engines_is_still_the_engines():
    first, *_ = talk(SHARED, "and if I add a second one in parallel?").answers
    assert (first.topic, first.verdict) == ("run-check", "marginal")


PANEL = "40 W panel, alarm takes 40 mA, 90 Ah AGM on a mooring. does it keep up?"


@pytest.mark.parametrize(
    "later",
    ["and november to march under a full cover", "over winter with the cover on?", "december to february, covered up"],
)
def test_a_panel_brings_nothing_under_a_cover_in_any_month(later):
    assert last(PANEL, later)[:2] == ("solar", "no")


@pytest.mark.parametrize(
    "later",
    ["and if the 12 V is just tapped off the lower battery of the 24 V pair", "what if we take 12 V from one of them"],
)
def test_a_tap_is_refused_after_a_converter_was_asked_about(later):
    asked = "must the 24 to 12 V converter be isolated? both sides share one negative"
    assert last(asked, later)[:2] == ("bank-wiring", "no")


@pytest.mark.parametrize(
    ("text", "urgency", "opens"),
    [
        ("it is -4 in the boat. lithium 120 Ah, may the 20 A charger stay on?", "today", "No: switch it off"),
        ("lithium 120 Ah at -4, is a 20 A charger ok?", "routine", "No: a lithium battery may not"),
    ],
)
def test_a_charger_that_is_on_in_frost_goes_off_today(text, urgency, opens):
    reply = talk(text)
    assert (reply.triage.urgency, plain(reply.answers[0].headline)[: len(opens)]) == (urgency, opens)


@pytest.mark.parametrize("later", ["thawed, cells at 4 °C now", "it has warmed up to 4 C"])
def test_lithium_above_freezing_goes_by_its_degrees(later):
    asked = "lithium 150 Ah at -5 C, is a 30 A shore charger ok?"
    assert last(asked, later)[:2] == ("charger-size", "no")
    assert "15 A at most" in last(asked, later)[2]
    assert last(asked, later, "and 15 C")[:2] == ("charger-size", "yes")


@pytest.mark.parametrize(
    ("text", "parts", "never"),
    [
        ("What charger should I buy for a wet battery of 95 Ah?", ("9.5 to 23.7 A", "at most 23.7 A"), "24 A"),
        ("What charger should I buy for an AGM of 115 Ah?", ("11.5 to 34.5 A", "at most 34.5 A"), "35 A"),
        ("90 Ah agm, minnow, how many 8 sec bursts", ("about 100 bursts", "13 minutes in all", "to half 13 to 19"),
         "103"),
    ],
)  # fmt: skip
def test_a_limit_reads_alike_everywhere_and_is_not_rounded_past_itself(text, parts, never):
    told = plain(" ".join(as_text(talk(text)).split()))
    assert all(part in told for part in parts)
    assert never not in told


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("cells 1.240 1.250 1.235 1.240 1.180 1.240, how is it?", 1.180, 1.250),
        ("1.180 1.245 1.250, wet battery, hydrometer", 1.180, 1.250),
    ],
)
def test_the_range_of_the_cells_goes_to_the_highest(text, low, high):
    (found,) = talk(text).answers
    gravity = next(item for item in found.figures if item.name == "corrected_gravity")
    assert (round(gravity.low, 3), round(gravity.high, 3)) == (low, high)


@pytest.mark.parametrize(
    ("turns", "minutes"),
    [
        (("110 Ah and 90 Ah agm in parallel, how long at 10 A?",), 600.0),
        (("2 x 100 Ah agm in parallel, how long at 10 A?", "no, 110 and 90"), 600.0),
    ],
)
def test_unlike_batteries_in_parallel_give_as_one(turns, minutes):
    (found,) = talk(*turns).answers
    figures = {item.name: item.value for item in found.figures}
    assert (found.topic, figures["time_to_usable_limit"]) == ("run-time", pytest.approx(minutes))


def test_a_label_in_the_thread_goes_on_with_how_long():
    turns = ("how long will the pike go on a 100 Ah lithium?", "label says 200 A continuous, 400 peak")
    assert last(*turns)[:2] == ("run-time", "no")
    topic, verdict, headline = last(*turns, "two of them then, in parallel")
    assert (topic, verdict) == ("run-time", "information")
    assert "about 31 minutes" in headline


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("AGM in it now and the charger is still on WET, does it matter?", "marginal"),
        ("gel fitted, the charger is still at AGM. ok?", "no"),
    ],
)
def test_a_charger_that_still_stands_on_a_kind_is_set_to_it(text, verdict):
    assert last(text)[:2] == ("charger-setting", verdict)


@pytest.mark.parametrize(
    "text", ["can you name a nice anchorage for the weekend?", "what's the weather going to be", "which marina is good"]
)
def test_the_boat_at_large_is_another_desks(text):
    assert talk(text).triage.route == "other-desk"


@pytest.mark.parametrize(
    "text",
    [
        "We swap the Minnow for a Pike: will our 80 Ah AGM of 700 CCA do?",
        "moving up from Minnow to Pike, will our 80 Ah AGM of 700 CCA do?",
        "A Pike instead of the old Minnow: will our 80 Ah AGM of 700 CCA do?",
    ],
)
def test_a_thruster_that_comes_in_the_place_of_another_is_the_one_that_is_asked_about(text):
    (found,) = default_desk().ask(text).answers
    assert {item.value for item in found.understood if item.fact == "load.model"} == {"Pike"}
    assert next(item.value for item in found.figures if item.name == "running_current") == 260
    both = default_desk().ask("will our 80 Ah AGM of 700 CCA run a Minnow and a Pike?").answers[0]
    assert {item.value for item in both.understood if item.fact == "load.model"} == {"Minnow", "Pike"}


def test_what_is_assumed_of_a_battery_is_not_shown_as_its_loads():
    told = " ".join(as_text(talk("will a 120 Ah lithium take the Minnow?")).replace("\u00a0", " ").split())
    assert "running 120 A; first instant" in told
    assert "battery limit 120 A (assumed" in told
