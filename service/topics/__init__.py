"""Finds the topic files: one file a topic, named after it. Each is imported when it is first asked for."""
from __future__ import annotations

import pkgutil
from functools import cache
from importlib import import_module

from service.topic import Topic


@cache
def names() -> tuple[str, ...]:
    """The names of all topics, sorted."""
    return tuple(sorted(info.name.replace("_", "-") for info in pkgutil.iter_modules(__path__)))


@cache
def topic(name: str) -> Topic:
    """The topic of that name. Raises LookupError for another, ValueError for a file that holds another topic."""
    if name not in names():
        raise LookupError(f"no topic is called {name!r}: there are {', '.join(names())}")
    found: Topic = import_module(f"service.topics.{name.replace('-', '_')}").TOPIC
    if found.name != name:
        raise ValueError(f"{name.replace('-', '_')}.py holds the topic {found.name}: rename one of them")
    return found
