"""No text of the desk says what must never be said: the tables whole, and the answers on care and danger."""

from __future__ import annotations

import itertools
import tomllib
from pathlib import Path

import pytest

from service import reference
from service.finish import finished
from service.reply import Act, Answer, Caution, Step
from service.topics import topic
from tests.building import case
from tests.never_say import faults

KINDS = [None, "flooded", "agm", "gel", "lead", "lfp", "lithium-other"]
WORDS = Path(__file__).parents[1] / "grammar" / "words"
DETAILS = [f"detail:{name}" for name in tomllib.loads((WORDS / "details_care.toml").read_text()) if name != "class"]
FAMILIES = [str(row["id"].value) for row in reference.rows("hazards")]


def kind(name: str | None) -> dict[str, str]:
    return {"battery.chemistry": name} if name else {}


@pytest.mark.parametrize("family", FAMILIES)
@pytest.mark.parametrize("status", ["present", "general", "standing"])
def test_no_danger_says_it(family: str, status: str) -> None:
    for name in KINDS:
        assert faults(finished(topic("hazard"), case(kind(name), {f"danger:{family}:{status}"}))) == []


@pytest.mark.parametrize("name", ["maintenance", "mounting", "other-desk", "unclear"])
def test_no_answer_on_care_says_it(name: str) -> None:
    for chemistry, detail in itertools.product(KINDS, [None, *DETAILS]):
        assert faults(finished(topic(name), case(kind(chemistry), {detail} if detail else ()))) == []


@pytest.mark.parametrize("row", reference.rows("meanings"), ids=lambda row: str(row["id"].value))
def test_no_meaning_says_it(row: reference.Row) -> None:
    answer = finished(topic("meaning"), case({}, {f"term:{row['id'].value}"}))
    assert faults(answer) == []
    assert answer.verdict == "information"


def test_no_caution_says_it() -> None:
    cautions = tuple(Caution(str(row["id"].value), str(row["say"].value)) for row in reference.rows("cautions"))
    assert faults(Answer("run-check", "yes", "Yes.", cautions=cautions)) == []


@pytest.mark.parametrize(
    "answer",
    [
        Answer("run-check", "yes", "Yes: it is safe."),
        Answer("run-check", "yes", "Yes.", working=(Step("The cable complies with the standard"),)),
        Answer("hazard", "stop", "Out.", steps=(Act("do", "bypass the switch"),)),
        Answer("run-time", "yes", "Great!"),
        Answer("run-time", "yes", "word " * 31),
    ],
)
def test_the_walker_finds_it(answer: Answer) -> None:
    assert faults(answer) != []


def test_what_is_forbidden_to_the_customer_may_be_named() -> None:
    assert faults(Answer("hazard", "stop", "Out.", steps=(Act("do-not", "bypass the BMS"),))) == []
