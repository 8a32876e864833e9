"""A message cut in two between two questions: the points of both parts, by hand."""

from __future__ import annotations

import pytest

from service.routing.parted import growth, in_order, parted

# points of each sign: in its own clause, anywhere in the part
FUSE = {"fuse": (6, 2), "cable": (-5, -3), "amps": (1, 0)}
CABLE = {"fuse": (-4, -2), "cable": (7, 1), "amps": (2, 0)}


def best(rows: list[dict[str, int]]) -> int:
    signs = in_order(rows)
    fuse, cable = (growth(signs, lambda name, of=of: of.get(name, (0, 0))) for of in (FUSE, CABLE))
    return parted(signs, fuse, cable)


@pytest.mark.parametrize(
    ("rows", "points"),
    [
        ([{"fuse": 0, "cable": 9}], (6 + 2) + (7 + 1)),  # "what fuse and cable"
        ([{"cable": 0, "fuse": 9}], (7 + 1) + (6 + 2)),  # in either order
        ([{"fuse": 0, "amps": 5, "cable": 9}], (6 + 2) + (2 + 7 + 1)),  # the amps count more for the cable
        ([{"amps": 0, "fuse": 5, "cable": 9}], (1 + 6 + 2) + (7 + 1)),
        ([{"fuse": 0}, {"cable": 9}], (6 + 2) + (7 + 1)),  # in two clauses
        ([{"fuse": 0, "amps": 5}, {"amps": 12, "cable": 16}], (6 + 2 + 1) + (2 + 7 + 1)),  # a sign in both
        ([{"fuse": 0, "cable": 0}], (6 + 2 - 5 - 3) + (7 + 1 - 4 - 2)),  # in the same words: no cut
        ([{}], 0),
    ],
)
def test_the_best_cut_gives_each_part_to_its_topic(rows, points):
    assert best(rows) == points


def test_the_best_clause_of_a_part_speaks_for_it():
    """Three clauses, the last two of them of the cable: the better one counts, once."""
    rows = [{"fuse": 0}, {"cable": 9}, {"cable": 16, "amps": 20}]
    assert best(rows) == (6 + 2) + (7 + 2 + 1)
