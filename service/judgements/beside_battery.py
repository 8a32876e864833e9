"""What a model asks of its battery, told beside the verdict on its cable: "Pike, AGM 90 Ah, 6 m of 35 mm2. OK?"."""

from __future__ import annotations

from service import say
from service.case import Case
from service.judgements import cranking

APPROVED = ("request:is_good", "request:enough", "detail:asks_good", "put:good")
LONGEST_HEADLINE = 30  # words


def told(case: Case, headline: str) -> str:
    """The sentence with what the model asks of the battery, where it was put up as well and no answer judges it."""
    there = {"battery.capacity", "battery.chemistry"} & set(case.stated)
    rated = {"battery.cca", "battery.ca", "battery.max_current"} & set(case.stated)
    lead = case.get("battery.family") == "lead"
    wanted = cranking.demanded(case) if there and lead and not rated and case.says(*APPROVED) else 0.0
    if not wanted or "run-check" in case.beside:
        return headline
    for fact in sorted(there):
        case.known(fact)
    whole = f"{headline.removesuffix('.')}; the battery needs {say.cca(wanted)}."
    return whole if len(whole.replace(say.NB, " ").split()) <= LONGEST_HEADLINE else headline
