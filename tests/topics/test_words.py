"""Meanings, other desks, and what was not understood."""

from __future__ import annotations

import pytest

from service.finish import finished
from service.topics import topic
from tests.building import case


@pytest.mark.parametrize(
    ("terms", "words"),
    [
        (["cca"], "30 seconds at -18"),
        (["bms", "lfp"], "safety switch"),
        (["agm"], "glass mat"),
        (["float", "agm"], "keeps a full battery full"),
        (["bulk", "float"], "; Float is"),
    ],
)
def test_a_term_is_explained(terms: list[str], words: str) -> None:
    found = finished(topic("meaning"), case({}, {f"term:{term}" for term in terms}))
    assert found.verdict == "information"
    assert words in found.headline


def test_an_unknown_term_is_asked_back() -> None:
    assert finished(topic("meaning"), case({})).verdict == "needs-facts"


@pytest.mark.parametrize(
    ("cue", "words"),
    [
        ("detail:order", "order number"),
        ("detail:warranty", "serial number"),
        ("detail:price", "prices"),
        ("", "another"),
    ],
)
def test_another_desk_takes_over(cue: str, words: str) -> None:
    found = finished(topic("other-desk"), case({}, {cue}))
    assert (found.verdict, found.route) == ("information", "other-desk")
    assert words in found.headline


@pytest.mark.parametrize(
    ("cues", "route"),
    [
        ({"note:foreign"}, "technician"),
        ({"note:thanks"}, "answered"),
        ({"note:not_ours"}, "other-desk"),
        ({"note:not_ours", "thing:battery"}, "technician"),
        (set(), "technician"),
    ],
)
def test_what_is_not_understood_goes_to_somebody(cues: set[str], route: str) -> None:
    assert finished(topic("unclear"), case({}, cues)).route == route
