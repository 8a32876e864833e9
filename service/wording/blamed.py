"""A headline where one part is blamed: "could it be just the cable?" wants Yes where the answer finds it bad."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from service import say
from service.reply import Answer
from service.told import culprit
from service.wording.summed import has_opening, lower

JUDGED = {"voltage-drop": "cable", "cable-size": "cable", "load-voltage": "battery", "run-check": "battery"}
REST = {"cable": "battery, joints and motor", "battery": "cable, joints and motor"}
FAULTY = "is lost between battery and motor"
ITSELF = "in the cable itself"  # ... of which the cable explains a part
MOST = 30  # words of a headline


def opened(answer: Answer, asked: Iterable[str]) -> Answer | None:
    """The answer opened for the part that one of the sentences `asked` wants to blame; None where none does."""
    part = next((found for text in asked if (found := culprit.blamed(text))), "")
    if not part or answer.verdict not in ("yes", "marginal", "no"):
        return None
    rest = answer.headline.partition(": ")[2] if has_opening(answer.headline) else answer.headline
    if answer.topic == "load-voltage" and FAULTY in rest:
        if part == "cable" and ITSELF in rest:
            return replace(answer, headline=f"Only in part: {rest}")
        return replace(answer, headline=f"{'Yes' if part == 'cable' else f'No, not the {part}'}: {rest}")
    if JUDGED.get(answer.topic) != part or answer.verdict == "marginal":
        return replace(answer, headline=say.capital(rest))
    if answer.verdict == "no":
        return replace(answer, headline=f"Yes: {lower(rest)}")
    head = f"No, not the {part}: {lower(rest)}"
    longer = f"{head.removesuffix('.')}; look at {REST[part]}."
    return replace(answer, headline=longer if len(longer.replace(say.NB, " ").split()) <= MOST else head)
