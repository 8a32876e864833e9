"""Whether another kind of battery wants another charger: "we go from AGM to lithium, do I need a new charger?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service.case import Case
from service.judgements import charging
from service.judgements.charge_volts import figures, stage
from service.kinds import CHARGED
from service.reply import Answer
from service.topic import Topic

ASKED = regex(
    r"\b(?:do|does|would|will|must|should)\b[^.?!;]{0,16}\b(?:need|want|have|buy|get|fit)\b[^.?!;]{0,12}"
    r"\b(?:new|another|different|other) charger\b",
    re.IGNORECASE,
)
SETTING, VOLTS, KIND = "charger.setting", "charger.voltage", "battery.chemistry"
NAMES = {"flooded": "wet-cell", "agm": "AGM", "gel": "gel", "lfp": "lithium"}


def judged(topic: Topic, case: Case) -> Answer | None:
    """What the charger they have must be able to do; None where that is not asked, or its setting or volts are told."""
    if not ASKED.search(case.text) or {SETTING, VOLTS} & set(case.stated):
        return None
    told = [facts[KIND] for facts in (case.stated, case.second) if KIND in facts]
    kinds = {str(item.value) for item in told}
    wanted = "lfp" if "lfp" in kinds else next(iter(kinds)) if len(kinds) == 1 else ""
    if wanted not in CHARGED:
        return None
    for item in told:
        case.used.setdefault((KIND, item.of), item)
    volts = float(case["bank.voltage"])
    absorption, floating = (stage(wanted, name, volts) for name in ("absorption", "float"))
    never = ", and nothing that equalises by itself" if wanted != "flooded" else ""
    takes = f"{charging.called(wanted)} takes {absorption}, then {floating}{never}"
    head = f"Only if yours has no {NAMES[wanted]} setting: {takes}."
    return topic.needs(SETTING, headline=head, figures=figures(case, wanted))
