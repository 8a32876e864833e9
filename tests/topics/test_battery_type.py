"""Which kind of battery."""

from __future__ import annotations

import pytest

from service.reply import Answer
from service.topics.battery_type import TOPIC
from tests.building import case


def asked(first: str, second: str, *cues: str) -> Answer:
    return TOPIC.answer(case({"battery.chemistry": (first, second)}, cues))


@pytest.mark.parametrize(
    ("first", "second", "cues", "best"),
    [
        ("agm", "gel", [], "AGM"),
        ("lfp", "agm", [], "AGM"),
        ("gel", "flooded", ["detail:sleep_beside"], "Gel"),
        ("flooded", "gel", ["detail:hold_charge"], "Gel"),
        ("agm", "lfp", ["detail:long_life"], "Lithium"),
        ("lfp", "flooded", ["detail:seldom"], "Wet-cell"),
    ],
)
def test_the_better_of_two_for_what_is_cared_about(first: str, second: str, cues: list[str], best: str) -> None:
    found = asked(first, second, *cues)
    assert (found.verdict, len(found.compare)) == ("information", 2)
    assert found.headline.startswith(best)


def test_a_third_kind_is_named_by_its_word() -> None:
    found = TOPIC.answer(case({"battery.chemistry": ("flooded", "agm")}, ["detail:kind_agm", "detail:kind_lfp"]))
    assert [option.label for option in found.compare] == ["Wet-cell", "AGM", "Lithium"]


def test_all_four_where_none_or_one_is_named() -> None:
    assert [option.label for option in TOPIC.answer(case({})).compare] == ["Wet-cell", "AGM", "Gel", "Lithium"]
    assert len(TOPIC.answer(case({"battery.chemistry": "lfp"})).compare) == 4


def test_the_figures_stand_with_their_sources() -> None:
    weighed = case({"battery.chemistry": ("agm", "lfp")})
    agm, lithium = TOPIC.answer(weighed).compare
    assert [(f.name, f.low, f.high) for f in agm.figures if f.name == "life"] == [("life", 4, 7)]
    assert [f.value for f in lithium.figures if f.name == "usable_share"] == [80]
    assert all(step.cites for step in weighed.trace)


def test_lead_carbon_is_judged_by_its_label() -> None:
    assert TOPIC.answer(case({}, ["detail:carbon"])).verdict == "needs-facts"
