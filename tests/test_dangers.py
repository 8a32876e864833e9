"""Signs of danger: found when present, and told from look-alikes, denials, the past and general questions."""
from __future__ import annotations

import random
import tomllib
from pathlib import Path

import pytest

from grammar.dangers import find_dangers

TABLE = tomllib.loads((Path(__file__).parent / "reading" / "dangers.toml").read_text(encoding="utf-8"))
PRESENT = [(family, phrase) for family, phrases in TABLE["present"].items() for phrase in phrases]


@pytest.mark.parametrize(("family", "phrase"), PRESENT)
def test_a_sign_that_is_there_is_present(family: str, phrase: str) -> None:
    assert (family, "present") in {(item.family, item.status) for item in find_dangers(phrase)}


@pytest.mark.parametrize("phrase", TABLE["silent"]["phrases"])
def test_a_look_alike_is_no_sign(phrase: str) -> None:
    assert find_dangers(phrase) == ()


@pytest.mark.parametrize(
    ("status", "phrase"),
    [(name, phrase) for name in ("denied", "past", "general") for phrase in TABLE[name]["phrases"]],
)
def test_what_is_not_so_now_is_not_present(status: str, phrase: str) -> None:
    assert {item.status for item in find_dangers(phrase)} == {status}


@pytest.mark.parametrize(("family", "phrase"), PRESENT)
def test_the_span_holds_the_words(family: str, phrase: str) -> None:
    for item in find_dangers(phrase):
        assert phrase[slice(*item.span)] == item.text != ""


def test_any_text_is_read() -> None:
    chance = random.Random(1)
    letters = "ab hot battery acid'’`.,-\n0159é°²☠️ smoke not " + chr(0) + chr(0x130)
    for _ in range(2000):
        find_dangers("".join(chance.choice(letters) for _ in range(chance.randrange(80))))


def test_a_long_text_takes_no_time_to_speak_of() -> None:
    assert find_dangers("the battery is not " * 4000 + "hot") is not None
