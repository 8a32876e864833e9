"""Case sizes."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.topics.group_size import TOPIC
from tests.building import case
from tests.talks import on, plain
from tests.topics import asked, figures


@pytest.mark.parametrize(  # four public pages agree on 27 and 31; GC2 and H8 by the outline table
    ("group", "length", "width", "height"),
    [
        ("27", 306, 173, 225),
        ("31", 330, 173, 240),
        ("GC2", 264, 183, 270),
        ("H8", 354, 175, 190),
        ("group 24", 260, 173, 225),
        ("31S", 330, 173, 240),
        ("G24", 260, 173, 225),
    ],
)
def test_the_dimensions_of_a_case(group, length, width, height):
    answer = TOPIC.answer(case({"battery.group": group}))
    assert answer.verdict == "information"
    assert figures(answer) == {"length": length, "width": width, "height": height}


@pytest.mark.parametrize(
    ("groups", "cues", "verdict"),
    [
        (("31", "27"), [], "no"),
        (("27", "31"), [], "yes"),
        (("24", "31"), ["detail:aboard_now"], "no"),  # a 24 is in there now, will a 31 fit
        (("31", "24"), ["detail:aboard_now"], "yes"),
        (("24", "31"), ["detail:aboard_now", "detail:space_given"], "information"),
    ],
)
def test_one_case_in_the_place_of_another(groups, cues, verdict):
    answer = TOPIC.answer(case({"battery.group": groups}, cues))
    assert answer.verdict == verdict
    assert len(answer.compare) == 2


@pytest.mark.parametrize("facts", [{}, {"battery.group": "99X"}])
def test_an_unknown_case_is_asked_about(facts):
    assert asked(TOPIC.answer(case(facts))) == ["battery.group"]


@pytest.mark.parametrize(
    ("groups", "words"),
    [(("8D", "4D"), "Group 8D is as long as group 4D"), (("31", "27"), "Group 31 is 24\u00a0mm longer than group 27")],
)
def test_one_side_alone_is_compared_where_it_alone_is_asked_about(groups, words):
    assert TOPIC.answer(case({"battery.group": groups}, ["detail:by_length"])).headline.startswith(words)


@pytest.mark.parametrize(
    ("text", "verdict", "parts"),
    [
        ("batt bay - 530 x 210 mm by 240 high inside. will group 31 fit? or 27?", "no",
         ("a group 31 does not go in", "530 x 210 x 240 mm, not high enough", "a group 27: only just")),
        ("my battery bay is 350 x 190 mm and 280 high, group 31 or 27?", "yes", ("a group 27: goes in",)),
        ("will a group 31 fit where a 27 is now?", "no", ("in the place of a group 27",)),
    ],
)  # fmt: skip
def test_two_sizes_are_held_against_the_bay_that_was_measured(text, verdict, parts):
    (found,) = default_desk().ask(text).answers
    assert (found.topic, found.verdict) == ("group-size", verdict)
    for part in parts:
        assert part in found.headline.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("will group 31 go where my group 27 is? have 13 inch length, 7 wide, 9.5 high", "no"),
        ("will a group 31 go where my group 27 is? there is 12.5 inch length, 7 wide, 10 high", "no"),
        ("group 31 in place of a 27: space of 350 mm length, 190 mm width and 280 mm height, ok?", "yes"),
        ("will group 31 go where my group 27 is?", "no"),
    ],
)
def test_a_place_told_side_by_side_decides(text, verdict):
    (answer,) = default_desk().ask(text).answers
    assert (answer.topic, answer.verdict) == ("group-size", verdict)


def test_inches_are_answered_in_inches():
    text = "will group 31 go where my group 27 is? have 13 inch length, 7 wide, 9.5 high"
    (answer,) = default_desk().ask(text).answers
    assert "13.4 x 7.2 x 10.2\u00a0in" in answer.headline
    assert "mm" not in answer.headline


@pytest.mark.parametrize(
    ("text", "end"),
    [
        ("A group 24 or a 31 for the Minnow?", "so either will do if its label says as much."),
        ("group 27 or 24 for our Pike, which?", "so the labels decide."),
    ],
)
def test_two_cases_weighed_for_a_thruster_are_held_against_what_it_needs(text: str, end: str) -> None:
    (found,) = default_desk().ask(text).answers
    assert found.topic == "group-size"
    assert found.headline.endswith(end)


@pytest.mark.parametrize(
    ("text", "verdict", "part"),
    [
        ("Will a group 31 go into a box 330x175 inner? height 240", "no", "the place has 330 x 175 x 240 mm"),
        ("the tray inside measures 335 mm by 180, will a 31 go in?", "marginal", "the place has 335 x 180 mm"),
        ("Would a group 27 go in a tray 320 x 180, 250 high?", "marginal", "Only just: a group 27 goes in"),
        ("does a group 24 fit, recess 290 by 190 by 260?", "yes", "Yes: a group 24 goes in"),
        ("what case fits where the old one was: 345 long, 180 wide, 235 high, all in mm?", "information",
         "345 x 180 x 235 mm takes group 27"),
        ("space is 330 x 175 x 240, which battery do I order?", "information", "takes group 27"),
        ("Which battery size goes in? my tray is 36 x 19 x 25 inside", "needs-facts", "the case size on the label"),
    ],
)  # fmt: skip
def test_a_place_in_hundreds_is_in_millimetres(text: str, verdict: str, part: str) -> None:
    found = on("group-size", text)
    assert found.verdict == verdict
    assert part in plain(found.headline)


@pytest.mark.parametrize(
    ("text", "part"),
    [
        (
            "What is the difference between a group 27 and a group 31, and will a 31 fit where a 27 was?",
            "group 31 does not fit",
        ),
        ("group 24 and 31, what's the difference, and does the 24 go where a 31 was?", "group 24 is no larger"),
        ("What is the difference between a group 27 and a group 31?", "Group 31 usually has 95"),
        ("would the group 31 bring any advantage where a 27 was?", "Group 31 usually has 95"),
    ],
)
def test_whether_it_fits_comes_before_what_differs(text: str, part: str) -> None:
    assert part in plain(on("group-size", text).headline)


@pytest.mark.parametrize(
    ("long", "verdict", "spare"), [("330 mm", "no", "24 mm is spare"), ("34 cm", "marginal", "34 mm is spare")]
)
def test_the_length_of_the_place_alone_tells_what_is_spare(long: str, verdict: str, spare: str) -> None:
    (found,) = default_desk().ask(f"would a group 31 go where a group 27 stands, the box is {long} long").answers
    assert (found.verdict, spare in found.headline.replace("\u00a0", " ")) == (verdict, True)


def test_a_case_that_may_be_swapped_is_judged_by_its_place_and_what_it_brings_stands_beside():
    (found,) = default_desk().ask("may I swap my group 24 for a group 27, what do I gain?").answers
    assert found.verdict == "no"
    assert any("usually has" in step.say for step in found.working)


@pytest.mark.parametrize(
    ("text", "verdict", "words"),
    [
        ("Is a group 27 of the same size as a group 31?", "no", "No: a group 27 is 24 mm shorter and 15 mm lower than"),
        ("Does a group 31 want the same space as a group 24?", "no", "No: a group 31 is 70 mm longer and 15 mm higher"),
        ("Is a group 49 as large as an H8?", "yes", "Yes: a group 49 is as large as"),
        ("Is a group 31 in length the same as a group 27?", "information", "Group 31 is 24 mm longer"),
        ("Does a group 27 fit where a group 31 is, is it the same size?", "yes", "Yes: a group 27 is no larger"),
    ],
)
def test_cases_of_the_same_size_or_not(text, verdict, words):
    found = on("group-size", text)
    assert (found.verdict, plain(found.headline)[: len(words)]) == (verdict, words)


@pytest.mark.parametrize(("size", "verdict"), [("30", "no"), ("36", "information")])
def test_the_length_of_a_place_told_lengthwise_is_its_length(size: str, verdict: str) -> None:
    (found,) = default_desk().ask(f"The tray is {size} cm inside, lengthways. Does a group 31 go in?").answers
    assert found.verdict == verdict


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("Which group would a battery of 305 x 172 x 226 mm be?", "it is a group 27, at most 306 x 173 x 225"),
        ("mine measures 10.2 x 6.8 x 7.9 inches, which case size is that?", "it is a group 34"),
        ("The battery is 20.7 in long, 8.7 in wide and 9.8 in high. What group is it?", "it is a group 4D"),
        ("which group is my battery, 20.8 x 8.8 x 9.7", "it is a group 4D"),  # inches, as no other unit fits a case
        ("what case size is a battery 26 x 17.2 x 20?", "it is a group 34"),  # and these are centimetres
        ("what case size is 210 x 90 x 120 mm?", "No case of our table has 210 x 90 x 120 mm"),
        ("what group fits 305 x 176 x 226 mm?", "takes group 34 only just"),  # the same, as a place
    ],
)
def test_a_battery_that_was_measured_is_named_by_its_group(text: str, part: str) -> None:
    assert part in plain(on("group-size", text).headline)


@pytest.mark.parametrize(
    ("text", "goes", "stays"),
    [
        ("which battery fits 12.2 in long by 7.4 in wide by 9.8 in high?", ("24", "34"), ("49", "94R", "31")),
        ("a case size that goes in 350 x 190 x 265 mm", ("31", "27"), ("8D", "30H")),
    ],
)
def test_length_and_width_count_beside_the_height(text: str, goes: tuple[str, ...], stays: tuple[str, ...]) -> None:
    found = on("group-size", text)
    named = {option.label.removeprefix("group ") for option in found.compare}
    assert named.issuperset(goes)
    assert named.isdisjoint(stays)
