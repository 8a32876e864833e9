"""The demo conversations are what the desk says, word for word. Refresh them with `python -m tests.demo`."""

from __future__ import annotations

import pytest

from tests.demo import CUSTOMER, conversations, told


def test_there_are_a_dozen():
    assert len(conversations()) >= 12


@pytest.mark.parametrize("path", conversations(), ids=lambda path: path.stem)
def test_the_desk_says_what_stands_there(path):
    text = path.read_text(encoding="utf-8")
    assert CUSTOMER in text
    assert told(text).splitlines() == text.splitlines()
