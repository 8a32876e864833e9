"""Posts, studs and lugs."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.topics.terminals import TOPIC
from tests.building import case
from tests.talks import only
from tests.topics import figures


@pytest.mark.parametrize(
    ("sizes", "verdict"),
    [
        (("M8", "M10"), "no"),
        (("M10", "M8"), "no"),
        (("3/8-16", "M10"), "yes"),
        (("5/16", "M8"), "yes"),
        (("3/8", "M8"), "no"),
    ],
)
def test_the_lug_of_one_size_on_the_stud_of_another(sizes, verdict):
    assert TOPIC.answer(case({"terminal.size": sizes})).verdict == verdict


@pytest.mark.parametrize(("size", "lug"), [("M10", "M10"), ("3/8-16", "3/8 in or M10"), ("5/16", "5/16 in or M8")])
def test_the_lug_of_a_stud(size, lug):
    answer = TOPIC.answer(case({"terminal.size": size}))
    assert answer.verdict == "information"
    assert figures(answer) == {"lug_hole": lug}


@pytest.mark.parametrize(
    ("cue", "verdict", "told"),
    [
        ("wing_nut", "no", "hex nut"),
        ("washer", "no", "on top"),
        ("stacked", "information", "four rings"),
        ("order", "information", "Minus comes off first"),
        ("adapter", "information", "full-size metal"),
        ("joint", "information", "Crimp"),
        ("torque", "information", "5 to 8\u00a0Nm"),
        ("posts", "information", "under a nut on a stud"),
    ],
)
def test_what_is_asked_in_words(cue, verdict, told):
    answer = TOPIC.answer(case({}, [f"detail:{cue}"]))
    assert answer.verdict == verdict
    assert told in answer.headline


def test_the_tightening_of_a_named_stud():
    answer = TOPIC.answer(case({"terminal.size": "M10"}, ["detail:torque"]))
    assert "10.4 to 13\u00a0Nm" in answer.headline


@pytest.mark.parametrize(
    "text",
    [
        "post is 3/8 stud, lugs from stock are M8. go or no go? and torque?",
        "we have M8 lugs in our stores stock, post is 3/8 stud, do they fit?",
    ],
)
def test_lugs_from_one_s_own_stock_are_no_order(text):
    assert [item.topic for item in default_desk().ask(text).answers] == ["terminals"]


@pytest.mark.parametrize(
    ("text", "verdict", "told"),
    [
        ("lug hole 5/16, stud on battery M10, can i drill it bigger", "no", "do not drill the lug for 5/16"),
        ("lug hole is 5/16 and the battery stud is M10", "no", "does not go over your M10 stud"),
        ("stud M10, lug has a 5/16 hole", "no", "does not go over your M10 stud"),
        ("my battery studs are 3/8, the cable came with M8 rings, do they fit", "no", "does not go over your 3/8-16"),
        ("Stud: M8. Lug: M10. ok?", "no", "too loose on your M8 stud"),
        ("Does an M10 lug go on a 3/8 stud", "yes", "fits your 3/8-16 stud"),
        ("can I drill out a lug from M8 to M10?", "no", "fits your M10 stud"),
    ],
)
def test_the_word_beside_a_size_tells_whose_it_is(text, verdict, told):
    (answer,) = default_desk().ask(text).answers
    assert answer.verdict == verdict
    assert told in answer.headline


@pytest.mark.parametrize(
    "text",
    [
        "which post type should i look for when ordering a battery, the round car posts or the bolt ones",
        "automotive posts or threaded studs for a bow thruster battery?",
        "better a battery with bolts or with the tapered posts for the Sturgeon",
        "M8 studs or SAE posts for 400A? torque?",
        "should the thruster battery have round posts or screw terminals? how tight?",
    ],
)
def test_of_posts_and_studs_the_studs_are_chosen(text):
    assert only(text).headline.startswith("Studs for a thruster: its cables belong under a nut on a stud;")


def test_how_tight_is_told_beside_the_choice():
    assert "tighten M8 to 6.6 to 8.5\u00a0Nm" in only("M8 studs or SAE posts for 400A? torque?").headline


@pytest.mark.parametrize(
    "text",
    [
        "my battery has round posts, what lug?",
        "how tight should the M8 nuts be, 8 or 12 Nm?",
        "which lug for M8 studs",
        "does an M10 lug go on an M8 stud or is it too loose?",
    ],
)
def test_where_no_choice_is_put_none_is_made(text):
    assert "Studs for a thruster" not in only(text).headline


def test_a_washer_does_not_mend_a_hole_that_is_too_wide():
    head = only("The terminals are the small screw M6, and the lug has a hole 10 mm. Can I put washers?").headline
    assert head.startswith("No: a hole of 10\u00a0mm is too loose on your M6 stud, and a washer does not mend that")


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("How tight do the nuts go, M10 on the battery and M8 at the motor?", ("M10 to 10.4", "M8 to 6.6")),
        ("torque for 3/8-16 plus and 5/16-18 minus studs?", ("3/8-16 to 12 ", "5/16-18 to 10.7")),
        ("battery post M8, windlass motor M12, what torque?", ("M8 to 6.6", "for M12 go by its maker's figure")),
    ],
)
def test_two_terminals_are_each_told_how_tight(text, told):
    answer = only("terminals", text)
    assert answer.verdict == "information"
    assert all(part in answer.headline.replace("\u00a0", " ") for part in told)


@pytest.mark.parametrize(
    "text",
    [
        "My lugs are M8 and the stud is M10, how tight?",
        "The cable ends are M8, the stud M10. Do they fit, and what torque?",
    ],
)
def test_a_lug_that_does_not_go_on_is_not_tightened(text):
    assert only("terminals", text).verdict == "no"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Windlass has M10 bolts, the fuse holder M8. What lugs should I buy?", ("M10 on your M10", "on your M8 stud")),
        ("What ring terminals for 50 mm2 between an M6 busbar and M8 on the battery?", ("50 mm²", "on your M6 stud")),
        ("M8 at one end, M10 at the other: lugs, which?", ("on your M8 stud", "on your M10 stud")),
    ],
)
def test_two_studs_want_a_lug_each(text, told):
    answer = only("terminals", text)
    assert answer.verdict == "information"
    assert all(part in answer.headline.replace("\u00a0", " ") for part in told)


@pytest.mark.parametrize(
    "text",
    [
        "My lugs are M8 and the studs M10. Which lugs do I need?",
        "I have M8 ring lugs, the stud is M10. Which lug would go on?",
        "Stud M10: does an M8 lug go over it?",
        "What do you say, is a lug meant for M8 right for an M10 stud?",
        "Which lug for an M10 stud? I only have M8 ones.",
    ],
)
def test_a_lug_that_is_there_is_still_judged(text):
    assert only("terminals", text).verdict == "no"
