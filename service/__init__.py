"""The battery desk: rules, calculators and topics behind one call, `answer`."""

from __future__ import annotations

from typing import Any


def answer(text: str, thread: str | None = None, facts: list[dict[str, Any]] | None = None) -> Any:
    """Answer a message under the demo house. The reply's `.as_dict()` is the contract's JSON."""
    from service.leadsman import default_desk

    return default_desk().ask(text, thread=thread, facts=facts)
