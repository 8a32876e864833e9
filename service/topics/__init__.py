"""Finds the topic files: one file a topic, named after it. Each is imported when it is first asked for."""

from __future__ import annotations

from functools import cache
from importlib import import_module
from pathlib import Path

from service.topic import Topic


@cache
def names() -> tuple[str, ...]:
    """The names of all topics, sorted."""
    return tuple(sorted(file.stem.replace("_", "-") for file in Path(__file__).parent.glob("[a-z]*.py")))


@cache
def topic(name: str) -> Topic:
    """The topic of that name. Raises LookupError for another, ValueError for a file that holds another topic."""
    if name not in names():
        raise LookupError(f"no topic is called {name!r}: there are {', '.join(names())}")
    found: Topic = import_module(f"service.topics.{name.replace('-', '_')}").TOPIC
    if found.name != name:
        raise ValueError(f"{name.replace('-', '_')}.py holds the topic {found.name}: rename one of them")
    return found
