"""One order of verdicts, the strictest first to stand."""

from __future__ import annotations

from itertools import permutations
from typing import get_args

import pytest

from service.reply import STRICTNESS, Verdict, strictest
from service.topics import rest_voltage


def test_each_verdict_has_its_place() -> None:
    assert set(STRICTNESS) == set(get_args(Verdict))


@pytest.mark.parametrize(
    ("verdicts", "stands"),
    [
        (("yes", "marginal"), "marginal"),
        (("marginal", "needs-facts", "yes"), "needs-facts"),
        (("needs-facts", "no"), "no"),
        (("no", "stop"), "stop"),
        (("information", "yes"), "yes"),
    ],
)
def test_the_strictest_stands_in_any_order(verdicts: tuple[str, ...], stands: str) -> None:
    assert {strictest(*order) for order in permutations(verdicts)} == {stands}


@pytest.mark.parametrize(
    ("verdicts", "stands"),
    [
        (("yes", "information"), "information"),  # one reading tells nothing: good is not said of both
        (("marginal", "needs-facts"), "marginal"),  # the low one is low whatever the other is
        (("needs-facts", "information"), "needs-facts"),
        (("yes", "yes"), "yes"),
    ],
)
def test_of_two_readings_a_low_one_stands_and_else_an_open_one(verdicts: tuple[str, ...], stands: str) -> None:
    assert {rest_voltage.of_both(*order) for order in permutations(verdicts)} == {stands}
