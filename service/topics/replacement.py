"""Whether it is time for a new battery: by a failed test, else by its age."""
from __future__ import annotations

from service import reference, say
from service.case import Case
from service.reply import Answer, Figure
from service.rules import load_reading, wording
from service.rules.readings import NEAR, cite, limit
from service.topic import Lever, Topic

TOPIC = Topic(
    "replacement",
    "Time for a new one",
    cautions=("deep-flat", "measure-each", "charge-not-strength", "cable-and-joints", "equalise", "acid",
              "short-circuit", "lift"),
    levers=(Lever("battery.age", lambda case: (0.0,) if case.said("battery.age") else (), "a new battery"),),
    likely={"battery.age": (("2 years", 2.0), ("4 years", 4.0), ("8 years", 8.0))},
    unsure={"battery.age": "We can't say yet: please tell us how old the battery is, or how it did in a load test."},
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """A failed test is a no whatever the age; else the age against the usual life of its kind."""
    if reason := failed(case):
        case.step(*reason[1:])
        start = "Yes" if case.says("detail:asks_bad") else "No"
        return TOPIC.says("no", f"{start}: {reason[0]}, so plan a new battery, whatever its age.")
    age = case.said("battery.age")
    if age is None:
        return without_age(case)
    return by_age(case, float(age))


def failed(case: Case) -> tuple[str, ...] | None:
    """The test that was failed: in words, as a step, and its sources; None where none was."""
    if load_reading.failed_test(case):
        return "it failed a load test", "A valid load test was failed", "load-test", cite("test-charged")
    spread = case.said("reading.gravity_spread")
    known, second = case.known("reading.gravity"), case.second.get("reading.gravity")
    if spread is None and known is not None:
        ends = [float(x) for x in (known.value, known.low, known.high, second.value if second else None) if x is not None]
        spread = max(ends) - min(ends)
    if spread is None or float(spread) < limit("gravity-spread") - NEAR:
        return None
    told = f"{float(spread):.3f}"
    return f"its cells differ by {told}", f"Cells differ by {told}; from 0.050 one is at fault", cite("gravity-spread")


def life_of(case: Case) -> tuple[str, float, float]:
    """Whose usual life is taken, and its two ends in years."""
    said = str(case.said("battery.chemistry") or "lead")
    kind = {"lead": "flooded", "lithium-other": "lfp"}.get(said, said)
    row = reference.row("lives", chemistry=kind)
    low, high = float(row["low"].value), float(row["high"].value)
    name = {"flooded": "wet-cell", "lfp": "lithium"}.get(kind, say.CHEMISTRY[kind])
    case.step(f"A {name} battery usually lasts {say.between(low, high, 'years')}".replace("A AGM", "An AGM"), row["low"].cite)
    return kind, low, high


def judged(age: float, low: float, high: float) -> str:
    """yes under the low end of its life, marginal up to the high end, no above."""
    if age < low - NEAR:
        return "yes"
    return "marginal" if age <= high + NEAR else "no"


def by_age(case: Case, age: float) -> Answer:
    """The verdict by age only."""
    kind, low, high = life_of(case)
    verdict, asks = judged(age, low, high), ()
    name = f"{wording.kind(case)} battery"
    if wording.kind_is_open(case):
        case.assume("battery.chemistry", "flooded", "kind not said: the life of a wet-cell battery taken")
        other = reference.row("lives", chemistry="agm")
        if judged(age, float(other["low"].value), float(other["high"].value)) != verdict:
            case.step(f"An AGM usually lasts {say.between(float(other['low'].value), float(other['high'].value), 'years')}",
                      other["low"].cite)
            asks = (TOPIC.ask("battery.chemistry", (("wet-cell", "flooded"), ("AGM", "agm"), ("lithium", "lfp"))),)
    years, life = say.quantity(age, "years"), say.between(low, high, "years")
    swap = case.says("detail:asks_bad")
    start = {"yes": "No" if swap else "Yes", "marginal": "Perhaps soon", "no": "Yes" if swap else "No"}[verdict]
    head = {
        "yes": f"{start}: at {years} your {name} is inside its usual life of {life}; that is by age only, so test it.",
        "marginal": f"{start}: at {years} your {name} is in its last years (usually {life}); by age only, so test it under load.",
        "no": f"{start}: at {years} your {name} is past its usual life of {life}; by age only, so test it before you rely on it.",
    }[verdict]
    return TOPIC.says(verdict, head, *months(age, low, high), asks=asks)


def months(age: float, low: float, high: float) -> tuple[Figure, ...]:
    """The months that are left by age; none past the usual life."""
    if age > high:
        return ()
    least, most = (max(0.0, (years - age) * 12) for years in (low, high))
    return (Figure("months_left", "months left by age", (least + most) / 2, "months", least, most),)


def without_age(case: Case) -> Answer:
    """The usual life where that is asked, else the age is asked for."""
    if case.said("battery.chemistry") in (None, "lead") and not case.says("detail:when_replaced"):
        return TOPIC.needs("battery.age")
    kind, low, high = life_of(case)
    name = {"flooded": "wet-cell", "lfp": "lithium"}.get(kind, say.CHEMISTRY[kind])
    head = (f"{name[0].upper()}{name[1:]} batteries usually last {say.between(low, high, 'years')}; replace one when it fails "
            "a load test or a cell lags by 0.050.")
    case.step("A failed load test or a spread of 0.050 between cells ends it earlier", "load-test", cite("gravity-spread"))
    return TOPIC.says("information", head)
