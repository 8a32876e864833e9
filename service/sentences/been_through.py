"""What a battery has been through: a test, a fall, a time that it stood flat."""

from __future__ import annotations

from service import say
from service.case import Case
from service.judgements import load_reading
from service.kinds import LITHIUM
from service.reply import Answer
from service.rules import readings
from service.rules.readings import NEAR, cite, limit, six_volts
from service.sentences import at_rest, wording
from service.told import what_became
from service.topic import Topic

WITNESS = "A load test tells how strong a battery still is, its age only how long it may last"


def after_a_test(topic: Topic, case: Case, age: float, verdict: str, life: str) -> Answer:
    """A battery that passed a load test: that is the better witness, and past its first years it is asked again."""
    case.because(WITNESS, "load-test")
    years, battery = say.quantity(age, "years"), f"your {wording.kind(case)} battery"
    if verdict == "yes":
        head = f"Keep it: it passed its load test, and at {years} {battery} is inside its usual life of {life}."
        return topic.says("yes", head)
    when = "past the usual" if verdict == "no" else "in its last years, usually"
    head = f"Keep it for now: it passed its load test; but at {years}, {when} {life}, test {battery} again each season."
    return topic.says("marginal", head)


def fell_too_far(case: Case) -> load_reading.UnderLoad | None:
    """The reading under its load that a good battery of this rating would not show; None where there is none, or
    where it was not charged, or the test was none of this battery's."""
    read = case.said("reading.load_voltage") is not None and case.get("battery.family") == "lead"
    if not read or of_the_other(case) or load_reading.not_full(case):
        return None
    under = load_reading.read_under_load(case)
    return None if under.holds or under.small or under.basis != "current" else under


def after_a_fall(topic: Topic, case: Case, age: float, verdict: str, under: load_reading.UnderLoad) -> Answer:
    """A battery that fell too far under its load: the age does not stand alone, and one more test decides."""
    case.because(
        "Volts under a load tell how strong a battery still is, its age only how long it may last", "load-test"
    )
    fell = f"at {say.quantity(age, 'years')} it falls to {say.volts(float(under.read or 0.0))} where a good one holds "
    head = f"Plan a new one: {fell}{say.volts(under.lowest)}; charge it fully and test it once more before you buy."
    return topic.says("no" if verdict == "no" else "marginal", head)


def stood_flat(case: Case) -> bool:
    """Whether a battery was read so low at rest that it may be harmed inside, whatever its age."""
    volts, kind = case.said("reading.voltage"), case.said("battery.chemistry")
    if volts is None or case.said("reading.state") not in (None, "rest"):
        return False
    count = readings.spanned(case, float(volts)) or 1.0
    least = limit("lithium-flat" if kind in LITHIUM else "lead-flat")
    return float(volts) / count < least - NEAR and not six_volts(case)


def after_flat(topic: Topic, case: Case, age: float, verdict: str) -> Answer:
    """A battery that was deeply flat: its age alone tells no months."""
    if case.said("battery.chemistry") in LITHIUM:
        case.because("Lithium cells that were so flat may be damaged inside, at any age", cite("lithium-flat"))
        head = "No charge yet: after it was so flat the maker of your lithium battery decides, not its age."
        return topic.says("no", head)
    case.because("A lead battery that was so flat may be damaged inside, at any age", cite("lead-flat"))
    if what_became.went_wrong(case.text):
        head = at_rest.STOOD.format(f"{say.volts(float(case['reading.voltage']), 1)} at rest")
        return topic.says("marginal" if verdict == "yes" else verdict, head)
    worse = "reckon with a new one" if verdict != "yes" else "it may need replacing early"
    head = (
        f"At {say.quantity(age, 'years')} and after it was so flat, {worse}: charge your {wording.kind(case)} battery "
        "slowly, rest it a day, and a load test decides."
    )
    return topic.says("marginal" if verdict == "yes" else verdict, head)


def low_whatever_its_age(topic: Topic, case: Case, age: float, verdict: str, under: load_reading.UnderLoad) -> Answer:
    """A battery of known age that falls far under a load that is not known: the volts come before the years."""
    case.because("A battery that was not charged right through falls as far", "falls-under-load")
    fell = f"{say.volts(float(under.read or 0.0))} under load is too low (a good one holds {say.volts(under.lowest)})"
    head = f"Test first: {fell}, whatever its {say.quantity(age, 'years')}; charge it fully, repeat on its posts."
    return topic.says("no" if verdict == "no" else "marginal", head)


def of_the_other(case: Case) -> bool:
    """Whether the test that was read is the first battery's, and this is the second one of another kind."""
    kind, read = case.stated.get("battery.chemistry"), case.stated.get("reading.load_voltage")
    return kind is not None and read is not None and kind.of > read.of
