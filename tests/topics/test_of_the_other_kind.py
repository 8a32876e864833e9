""" "May AGM lie on its side? And lithium?": the same is asked of another kind, and both are answered."""

import pytest

from tests.talks import only, plain, talk


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        (
            "The battery is under the berth where my daughter sleeps. Is that safe with AGM, and what if it was a "
            "flooded one?",
            "Yes for AGM, no for wet-cell: a wet-cell battery gives off gas",
        ),
        ("AGM under the bunk ok? and a wet one?", "Yes for AGM, no for wet-cell:"),
        ("can a gel battery stand in the cabin, and what about a wet-cell", "Yes for gel, no for wet-cell:"),
        ("can agm be mounted on its side?? and lithium??", "Yes for AGM, if its manual allows it for lithium."),
        ("May a flooded battery lie on its side? And AGM?", "No for wet-cell, yes for AGM."),
    ],
)
def test_the_kind_asked_first_comes_first(text, opens):
    found = only(text)
    assert found.topic == "mounting"
    assert plain(found.headline).startswith(opens)


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("can I put AGM on its side? and which is better, AGM or lithium?", ["mounting", "battery-type"]),
        ("AGM or wet in the sleeping cabin, which?", ["battery-type"]),
        ("AGM or lithium for the Minnow?", ["battery-type"]),
    ],
)
def test_a_choice_of_kinds_is_weighed(text, topics):
    assert [item.topic for item in talk(text).answers] == topics


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("AGM comes out, lithium goes in. May the lithium lie down?", "Usually yes: a lithium battery"),
        ("is flooded or AGM allowed in the cabin?", "No: a wet-cell battery gives off gas"),
    ],
)
def test_where_the_same_is_not_asked_of_the_other_nothing_changes(text, opens):
    assert only(text).headline.startswith(opens)
