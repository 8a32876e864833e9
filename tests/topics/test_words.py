"""Meanings, other desks, and what was not understood."""

from __future__ import annotations

import pytest

from service.finish import finished
from service.leadsman import Leadsman, default_desk
from service.topics import topic
from tests.building import case
from tests.talks import talk


@pytest.mark.parametrize(
    ("terms", "words"),
    [
        (["cca"], "30 seconds at -18"),
        (["bms", "lfp"], "safety switch"),
        (["agm"], "glass mat"),
        (["float", "agm"], "keeps a full battery full"),
        (["bulk", "float"], "; float is"),
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
        ({"note:boat_matters", "thing:space"}, "other-desk"),
        ({"note:boat_matters", "about:load"}, "technician"),
        (set(), "technician"),
    ],
)
def test_what_is_not_understood_goes_to_somebody(cues: set[str], route: str) -> None:
    assert finished(topic("unclear"), case({}, cues)).route == route


@pytest.mark.parametrize(
    "text",
    [
        "what detergent for washing a mainsail",
        "which anchor for an 11 m boat",
        "stern gland drips, how many drops a minute is right",
        "star cracks in the topsides gelcoat, who fills them",
        "is 12.4 V good on an agm >> and which antifouling for the tunnel",
        "12.7 at rest agm, good? >> thanks. what filler for the cracked gelcoat round the tunnel",
    ],
)
def test_what_is_of_the_boat_alone_is_for_another_desk(text: str) -> None:
    reply = talk(*text.split(" >> "))
    assert (reply.triage.route, [item.topic for item in reply.answers]) == ("other-desk", ["unclear"])


@pytest.mark.parametrize(
    "text", ["sails down and the agm fell to 12.1 V at rest, ok?", "the mast light takes 2 A, how long on a 90 Ah agm"]
)
def test_a_battery_among_sails_is_ours(text: str) -> None:
    assert "unclear" not in [item.topic for item in Leadsman().ask(text).answers]


@pytest.mark.parametrize(
    "text",
    [
        "is EN the same as CCA",
        "no idea what EN means. is EN the same as cca?",
        "What is the difference between EN and CCA?",
    ],
)
def test_en_and_cca_are_set_beside_each_other(text: str) -> None:
    (found,) = default_desk().ask(text).answers
    assert found.topic == "meaning"
    assert "we take EN amps as CCA at most" in found.headline
