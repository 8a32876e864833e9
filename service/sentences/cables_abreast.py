"""Several cables for each pole: what they carry together, and what one must carry alone."""

from __future__ import annotations

from dataclasses import replace

from service import say
from service.case import Case
from service.judgements import parallel_cables
from service.judgements.fitting import (
    BUNDLED,
    FROM_AREA,
    FROM_GAUGE,
)
from service.reply import Answer, Figure
from service.sentences.fuses_abreast import in_their_place
from service.topic import Topic


def several_per_pole(topic: Topic, case: Case) -> Answer:
    """Two thinner cables in place of a thick one, before the amps are told: what holds whatever runs in them."""
    case.source(BUNDLED.cite, FROM_GAUGE.cite)
    least = f"{say.quantity(float(FROM_AREA.value), 'mm2')} ({say.gauge(str(FROM_GAUGE.value))})"
    count = Figure("conductors_per_pole", "cables for each pole", float(max(2, parallel_cables.runs(case))), "")
    head = f"Yes, if they are alike, each {least} or more and with its own fuse, and count at 60 %: the amps decide."
    asked = topic.needs("load.current", *(() if "cable.length" in case else ("cable.length",)), headline=head)
    return replace(asked, figures=(count,), route="technician")


def together(topic: Topic, case: Case, amps: float, count: int) -> Answer:
    """Whether several equal cables for each pole will do; they are an electrician's work."""
    verdict, head, facts = parallel_cables.judged(case, amps, count)
    if verdict == "no":
        head = f"{head.removesuffix('.')}; {in_their_place(case, amps)}."
    asks = (topic.ask("cable.insulation", topic.likely["cable.insulation"]),) if verdict == "needs-facts" else ()
    return topic.says(verdict, head, *facts, asks=asks, route="technician")
