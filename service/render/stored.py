"""A reply read back from the log's JSON, for renderings that take a Reply."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from service.reply import (
    Act,
    Answer,
    Asked,
    Assumed,
    Caution,
    Change,
    Choice,
    Cite,
    Figure,
    Option,
    Reply,
    Step,
    Triage,
    Understood,
)


def reply(content: Mapping[str, Any]) -> Reply:
    """The reply whose `as_dict` this is; thread and trace are not kept, so they are empty."""
    answers = tuple(_answer(item) for item in content["answers"])
    return Reply(content["id"], "", Triage(**content["triage"]), answers, content.get("notice"))


def _answer(item: Mapping[str, Any]) -> Answer:
    return Answer(
        item["topic"],
        item["verdict"],
        item["headline"],
        figures=_figures(item),
        working=tuple(Step(part["say"], tuple(part["cites"])) for part in item["working"]),
        cites=tuple(Cite(**part) for part in item["cites"]),
        cautions=tuple(Caution(**part) for part in item["cautions"]),
        asks=tuple(_asked(part) for part in item["asks"]),
        understood=tuple(_understood(part) for part in item["understood"]),
        assumed=tuple(Assumed(**part) for part in item["assumed"]),
        would_change=tuple(Change(**{**part, "also": tuple(part["also"])}) for part in item["would_change"]),
        steps=tuple(Act(**part) for part in item["steps"]),
        compare=tuple(Option(part["label"], part["verdict"], _figures(part)) for part in item["compare"]),
        plot=item["plot"],
    )


def _figures(item: Mapping[str, Any]) -> tuple[Figure, ...]:
    return tuple(Figure(**part) for part in item["figures"])


def _asked(item: Mapping[str, Any]) -> Asked:
    return Asked(item["fact"], item["say"], item["where"], tuple(Choice(**part) for part in item["replies"]))


def _understood(item: Mapping[str, Any]) -> Understood:
    known = {name: value for name, value in item.items() if name not in ("from", "span")}
    return Understood(**known, span=tuple(item["span"]) if item["span"] else None, source=item["from"])
