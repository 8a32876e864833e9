"""Care: water, cleaning, equalising, checks."""

from __future__ import annotations

from typing import Any

import pytest

from service.finish import finished
from service.reply import Answer
from service.topics import topic
from tests.building import case
from tests.talks import only


def care(kind: str, *details: str) -> Answer:
    facts: dict[str, Any] = {"battery.chemistry": kind} if kind else {}
    return finished(topic("maintenance"), case(facts, {f"detail:{name}" for name in details}))


@pytest.mark.parametrize(
    ("kind", "details", "verdict", "words"),
    [
        ("flooded", ("water",), "information", "every month in season"),
        ("agm", ("water",), "information", "takes no water"),
        ("flooded", ("plates_dry", "water"), "no", "Cover the plates"),
        ("flooded", ("water", "tap_water"), "no", "No tap water"),
        ("flooded", ("water", "tap_water", "distilled_too"), "information", "distilled water"),
        ("agm", ("equalise",), "no", "never equalise"),
        ("lfp", ("equalise",), "no", "never equalise"),
        ("flooded", ("equalise",), "information", "0.015"),
        ("", ("equalise",), "needs-facts", "which kind"),
        ("", ("desulphate",), "information", "Expect little"),
        ("gel", ("desulphate",), "no", "never equalise"),
        ("", ("add_acid", "water"), "no", "only distilled"),
        ("", ("open_sealed",), "no", "stays closed"),
        ("", ("dirt",), "information", "soda water"),
        ("", ("additive",), "information", "no proof"),
        ("", ("concrete",), "information", "does not drain"),
        ("flooded", ("bubbles",), "information", "A few bubbles"),
        ("", ("check_list",), "information", "and at the water"),
        ("agm", ("check_list",), "information", "hold-down."),
        ("lfp", ("check_list",), "information", "full charge every 1 to 3 months"),
        ("", (), "information", "Before the season"),
    ],
)
def test_each_aspect_has_its_advice(kind: str, details: tuple[str, ...], verdict: str, words: str) -> None:
    found = care(kind, *details)
    assert found.verdict == verdict
    assert words in found.headline


def test_dry_plates_are_for_today() -> None:
    assert care("flooded", "plates_dry").urgency == "today"


def test_a_hydrometer_tells_of_caps() -> None:
    found = finished(topic("maintenance"), case({"reading.gravity": 1.19}, {"detail:equalise"}))
    assert found.verdict == "information"


def test_intervals_are_text_with_a_source() -> None:
    found = care("flooded", "check_list")
    assert {figure.name for figure in found.figures} >= {"water_interval", "clean_interval", "joint_interval"}
    assert all(isinstance(figure.value, str) for figure in found.figures)
    assert {item.id for item in found.cites} >= {"care-practice", "flooded-care"}


def test_how_often_is_of_the_water_where_gadgets_are_asked_about_too() -> None:
    cues = {"detail:water", "detail:tap_water", "detail:desulphate", "request:how_often"}
    found = finished(topic("maintenance"), case({}, cues))
    assert found.headline.startswith("Look every month in season")
    assert "no gadget brings back" in found.working[0].say
    alone = finished(topic("maintenance"), case({}, {"detail:desulphate", "request:how_often"}))
    assert "every three to six months" in alone.headline


@pytest.mark.parametrize(
    ("text", "verdict", "opens"),
    [
        ("Out of distilled, plates just showing. Will bottled spring water do instead?", "no",
         "No bottled spring water, not for once either: cover the plates"),
        ("The plates are bare and there is no distilled aboard. Rain water ok?", "no",
         "No rain water, not for once either: cover the plates"),
        ("can i use bottled water instead of distilled?", "no", "No bottled water: what is dissolved in it"),
        ("ran out of deionised, can I use mineral water in the flooded one?", "no", "No mineral water: what is"),
        ("which water, distilled or tap?", "information", "Distilled or deionised water only"),
        ("How do I clean the posts of the flooded one?", "information", "Brush it off"),
    ],
)  # fmt: skip
def test_the_water_they_would_use_is_named(text: str, verdict: str, opens: str) -> None:
    found = only(text)
    assert (found.verdict, found.headline.startswith(opens)) == (verdict, True), found.headline
