"""The age of a battery that is not told, or told by its year."""

from __future__ import annotations

from service import reference, say
from service.case import Case
from service.judgements import lifetime, load_reading
from service.reply import Answer, Asked
from service.sentences import ageing, wording
from service.told import its_years, what_became
from service.topic import Topic


def put_otherwise(topic: Topic, case: Case) -> Answer | None:
    """What heat does to its years, and what parts a worn battery from one too small, where that is asked."""
    if its_years.asks_of_heat(case.text):
        lifetime.life_of(case)
        case.source("battery-places")
        return topic.says("information", ageing.BY_HEAT)
    if what_became.small_or_worn(case.text) and case.said("reading.load_voltage") is None:
        return topic.needs("battery.age", headline=ageing.SMALL_OR_WORN)
    return None


def by_year(topic: Topic, case: Case) -> Answer | None:
    """The years at which one of a year that is told reaches the two ends of its usual life."""
    year = its_years.of_year(case.text) or its_years.of_before(case.cues)
    if year is None:
        return None
    _, low, high = lifetime.life_of(case)
    asks = other_kind(topic, case, 0.0, "") if wording.kind_is_open(case) else ()
    if under := load_reading.held(case):
        read = say.volts(float(under.read or 0.0))
        case.step(f"{read} under load is over {say.volts(under.lowest)}, the lowest of one in good order", "load-test")
        return topic.says("marginal", ageing.held_by_year(read, year, high))
    ageing.note_test(case)
    return topic.says("information", ageing.by_year(case, year, low, high), asks=asks)


def no_sign_of_it(topic: Topic, case: Case, under: load_reading.UnderLoad) -> Answer:
    """ "Is it finished?" of one that stays over the lowest good reading: that shows nothing of the kind."""
    case.step("The amps it drew and its CCA tell how strong it still is", "load-test")
    read, least = say.volts(float(under.read or 0.0)), say.volts(under.lowest)
    head = f"No: {read} under load is over {least}, the lowest of a lead battery in good order."
    return topic.says("information", head, asks=(topic.ask("battery.age"),))


def may_be_weak(topic: Topic, case: Case, under: load_reading.UnderLoad) -> Answer:
    """ "Is it finished?" of one that falls far under its load: charged right through and tested again, it is told."""
    case.because("A battery that was not charged right through falls as far", "falls-under-load")
    fell, least = say.volts(float(under.read or 0.0)), say.volts(under.lowest)
    head = (
        f"Not for sure: it falls to {fell}; charge it for a full day and test again, and if it still falls under "
        f"{least}, replace it."
    )
    return topic.needs("battery.age", headline=head)


def other_kind(topic: Topic, case: Case, age: float, verdict: str) -> tuple[Asked, ...]:
    """Kind not said: the wet-cell life is taken, and the kind is asked for where an AGM would be judged otherwise."""
    case.assume("battery.chemistry", "flooded", "the kind is not said")
    row = reference.row("lives", chemistry="agm")
    low, high = float(row["low"].value), float(row["high"].value)
    if lifetime.judged(age, low, high) == verdict:
        return ()
    case.step(f"An AGM usually lasts {say.between(low, high, 'years')}", row["low"].cite)
    return (topic.ask("battery.chemistry", (("wet-cell", "flooded"), ("AGM", "agm"), ("lithium", "lfp"))),)
