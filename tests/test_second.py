"""The service against a second, independent implementation of the contract's methods, over generated questions."""

from __future__ import annotations

from collections import defaultdict

import pytest

from service.leadsman import default_desk
from tests.second import METHODS
from tests.second.compare import differences
from tests.second.questions import questions

EQUAL = 0.99


@pytest.mark.parametrize("count", [40, pytest.param(400, marks=pytest.mark.slow)])
def test_service_and_second_implementation_agree(count):
    parted = defaultdict(list)
    for topic in METHODS:
        for question in questions(topic, count):
            reply = default_desk().ask(question.text).as_dict()
            if found := differences(question, reply):
                parted[topic].append(f"{question.text}\n      {'; '.join(found)}")
    shown = "\n".join(
        f"{topic}: {len(lines)} of {count} differ\n    " + "\n    ".join(lines[:3]) for topic, lines in parted.items()
    )
    assert sum(map(len, parted.values())) <= (1 - EQUAL) * count * len(METHODS), f"\n{shown}"
