"""What the sources of an answer must be: each exists, each step's stands among them, each figure has its own."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

from grammar.files import toml
from service.reference import sources
from service.reply import HOUSE_RULES, Answer, Figure

EXPECTED = Path(__file__).parent / "data" / "figure_sources.toml"
OWN = ("house", HOUSE_RULES)  # the maker's file, which is no published source


@cache
def expected() -> dict[str, dict[str, list[str]]]:
    """By topic and figure the sources, one of which the answer must name."""
    return toml(EXPECTED)


def unsourced(answer: Answer) -> list[str]:
    """What has no source that exists: "figure running_current", "step ...", "source x"."""
    return list(_found(answer))


def _found(answer: Answer) -> Iterator[str]:
    named = {item.id for item in answer.cites}
    yield from (f"source {name}" for name in sorted(named) if name not in sources() and name not in OWN)
    yield from (f"source {item.id} without words" for item in answer.cites if not (item.title and item.locator))
    reasons = {item.why for item in answer.assumed}
    for step in answer.working:
        if not step.cites and not any(step.say.endswith(why) for why in reasons if why):
            yield f"step {step.say}"
        yield from (f"step of {name}: {step.say}" for name in step.cites if name not in named)
    for figure in (*answer.figures, *(item for option in answer.compare for item in option.figures)):
        if not _sourced(answer, figure, named):
            yield f"figure {figure.name}"


def _sourced(answer: Answer, figure: Figure, named: set[str]) -> bool:
    wanted = expected().get(answer.topic, {}).get(figure.name) or expected()["any"].get(figure.name)
    if wanted is None:
        raise LookupError(f"{EXPECTED.name} has no sources for {figure.name} of {answer.topic}: add them")
    return bool(named & set(wanted)) or any(item.value == figure.value for item in answer.understood)
