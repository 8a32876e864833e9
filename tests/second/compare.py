"""Where the service and the second implementation part."""

from __future__ import annotations

from typing import Any

from tests.second import METHODS
from tests.second.draw import Question

CLOSE = 0.01
NEAR = 0.03  # percent of charge: gravities are read to 0.001


def differences(question: Question, reply: dict[str, Any]) -> list[str]:
    """What is not equal in the answer to a question: the topic, the verdict, a figure."""
    wanted = METHODS[question.topic](question.facts)
    answer = next((item for item in reply["answers"] if item["topic"] == question.topic), None)
    if answer is None:
        return [f"answered as {', '.join(item['topic'] for item in reply['answers']) or 'nothing'}"]
    allowed = wanted["verdict"] if isinstance(wanted["verdict"], tuple) else (wanted["verdict"],)
    found = [] if answer["verdict"] in allowed else [f"verdict {answer['verdict']}, not {' or '.join(allowed)}"]
    figures = {item["name"]: item for item in answer["figures"]}
    for name, value in wanted["figures"].items():
        if not same(figures.get(name), value, NEAR if name == "state_of_charge" else 0):
            shown = figures.get(name) and {key: figures[name].get(key) for key in ("value", "low", "high")}
            found.append(f"{name} {shown}, not {value}")
    return found


def same(figure: dict[str, Any] | None, value: Any, near: float) -> bool:
    if figure is None:
        return False
    if isinstance(value, tuple):
        return all(close(figure.get(end), part, near) for end, part in zip(("low", "high"), value, strict=True))
    return figure["value"] == value if isinstance(value, str) else close(figure["value"], value, near)


def close(found: Any, wanted: float, near: float = 0) -> bool:
    return isinstance(found, int | float) and abs(found - wanted) <= max(CLOSE * abs(wanted), near, 1e-6)
