"""Whether it is time for a new battery: by a failed test, else by its age."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from grammar.text.patterns import regex
from service import reference, say
from service.calculators import gravity
from service.case import Case
from service.judgements import laid_up, lifetime, load_reading, new_and_old
from service.kinds import LITHIUM
from service.reply import Answer, Urgency
from service.rules.battery import lowest_at
from service.rules.readings import NEAR, cite, limit, six_volts
from service.sentences import ageing, wording
from service.sentences.been_through import (
    WITNESS,
    after_a_fall,
    after_a_test,
    after_flat,
    fell_too_far,
    low_whatever_its_age,
    of_the_other,
    stood_flat,
)
from service.sentences.years_unknown import by_year, may_be_weak, no_sign_of_it, other_kind, put_otherwise
from service.told import fallen_to, what_became
from service.topic import Topic

YOUNG = 1.0  # years under which no battery is worn by its age alone
WEAK = ("word:flattens", "detail:weak_motor", "detail:dead_motor")
TOPIC = Topic(
    "replacement",
    "Time for a new one",
    cautions=(
        "deep-flat",
        "measure-each",
        "charge-not-strength",
        "cable-and-joints",
        "equalise",
        "acid",
        "short-circuit",
        "lift",
    ),
    of_two="worst",
    likely={"battery.age": (("2 years", 2.0), ("4 years", 4.0), ("8 years", 8.0))},
    unsure={"battery.age": "We can't say yet: please tell us how old the battery is, or how it did in a load test."},
)

WIRING = "bank-wiring"
NEW_WITH_OLD = regex(
    r"\bnew\b(?: \w+){0,2} (?:with|beside|next to|alongside|to) (?:an? |the |my |our )?"
    r"(?:\d|old|one|two|three|four|five)"
    r"(?![^.?!;]{0,20}\bah\b)",
    re.IGNORECASE,
)
SIGNS = regex(  # "how do I see it's at its end", "what are the signs"
    r"\bhow (?:do|can|could|would|will|should) (?:i|we|you|one) (?:see|tell|know|notice|spot|find out)\b|\bsigns?\b"
    r"|\bsymptoms?\b|\bbefore it (?:leaves|lets|strands|fails|dies)\b",
    re.IGNORECASE,
)
UNTESTED = regex(
    r"\b(?:never|not|isn['’]?t|wasn['’]?t)\s+(?:been\s+)?(?:load[- ])?tested\b|\buntested\b", re.IGNORECASE
)


AT_ONCE = regex(r"\b(?:same time|at once|together|both)\b", re.IGNORECASE)
TWO_BANKS = regex(
    r"\bhouse\b[^.?!;]{0,20}\b(?:bow|thruster|start\w*)\b|\b(?:bow|thruster|start\w*)\b[^.?!;]{0,20}\bhouse\b",
    re.IGNORECASE,
)
BY_AGE = regex(r"(?:, but that|; that|; by age| ?\(usually)")  # what is said of an age in any case
LONGEST_HEADLINE = 30  # words


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """A failed test is a no whatever the age; else the age against the usual life of its kind."""
    if WIRING in case.beside and NEW_WITH_OLD.search(case.text):
        return beside_a_new_one(case)
    if rule := new_and_old.of_one_age(case):
        return TOPIC.says("information", rule)
    if lifetime.of_one_age(case):
        case.second = {}
    if reason := failed(case):
        case.step(*reason[1:])
        start = "Yes" if case.says("detail:asks_bad") else "No"
        return TOPIC.says("no", f"{start}: {reason[0]}, so plan a new battery, whatever its age.")
    if what_became.went_wrong(case.text):  # no load runs while it stands
        case.stated = fallen_to.at_rest(case.text, case.stated)
    age = case.said("battery.age")
    if age is None and passed(case):
        case.step(
            "A battery that passes while charged and warm is strong enough still", "load-test", cite("test-charged")
        )
        return TOPIC.says("yes", "Keep it: it passed the load test, and that says more than its age.")
    if age is None:
        return without_age(case)
    return both_banks(case, replace(by_age(case, float(age)), urgency=urgency(case)))


def both_banks(case: Case, found: Answer) -> Answer:
    """The answer with what holds of two banks, where it is asked if both are changed at once."""
    if not (AT_ONCE.search(case.text) and TWO_BANKS.search(case.text)):
        return found
    told = "house and bow each go by their own test"
    whole = f"{BY_AGE.split(found.headline)[0].removesuffix('.')}; {told}."
    case.because(say.capital(told), "bank-practice")
    return replace(found, headline=whole) if len(whole.replace(say.NB, " ").split()) <= LONGEST_HEADLINE else found


def beside_a_new_one(case: Case) -> Answer:
    """A new battery with an old one, where it is asked beside another joint: how that goes, and no age by itself."""
    case.second = {}
    case.known("battery.age")
    case.step("Of unlike batteries the weaker one wears the other", "bank-practice")
    most = say.quantity(float(new_and_old.MOST.value), "year")
    head = f"New beside old works in parallel, but the weaker one wears the other; in series {most} apart is the most."
    return TOPIC.says("marginal", head)


def urgency(case: Case) -> Urgency:
    """today where a resting reading tells that a lead battery is under half, or so low that no system fits."""
    charge, volts = case.get("battery.charge"), case.said("reading.voltage")
    if charge is not None:
        return laid_up.urgency(case, float(charge))
    low = volts is not None and float(volts) < limit("lead-flat") and not six_volts(case)
    return "today" if low and case.said("reading.state") in (None, "rest") else "routine"


def failed(case: Case) -> tuple[str, ...] | None:
    """The test that was failed: in words, as a step, and its sources; None where none was."""
    if of_the_other(case):
        return None
    if load_reading.failed_test(case):
        lost = "A battery that fails while charged and warm has lost plates for good"
        which = f"your {wording.kind(case)} battery" if "battery.chemistry" in case.second else "it"
        return f"{which} failed a load test", lost, "load-test", cite("test-charged")
    spread = case.said("reading.gravity_spread")
    known, second = case.stated.get("reading.gravity"), case.second.get("reading.gravity")
    if spread is None and known is not None:
        ends = (known.value, known.low, known.high, second.value if second else None)
        spread = gravity.spread(float(read) for read in ends if read is not None)
    if spread is None or float(spread) < limit("gravity-spread") - NEAR:
        return None
    told = f"{float(spread):.3f}"
    return f"its cells differ by {told}", f"Cells differ by {told}; from 0.050 one is at fault", cite("gravity-spread")


def by_age(case: Case, age: float) -> Answer:
    """The verdict by age only."""
    _, low, high = lifetime.life_of(case)
    verdict = lifetime.judged(age, low, high)
    if stood_flat(case):
        return after_flat(TOPIC, case, age, verdict)
    if passed(case):
        return after_a_test(TOPIC, case, age, verdict, say.between(low, high, "years"))
    if under := fell_too_far(case):
        return after_a_fall(TOPIC, case, age, verdict, under)
    if not of_the_other(case) and not load_reading.not_full(case) and (under := load_reading.fell_by_volts(case)):
        return low_whatever_its_age(TOPIC, case, age, verdict, under)
    asks = other_kind(TOPIC, case, age, verdict) if wording.kind_is_open(case) else ()
    years, life = say.quantity(age, "years"), say.between(low, high, "years")
    if ageing.note_test(case):
        return TOPIC.says(verdict, ageing.to_test(case, years, verdict), *lifetime.months(age, low, high), asks=asks)
    told = f"at {years} your {wording.kind(case)} battery is"
    bad, good = case.says("detail:asks_bad"), case.says("detail:asks_good", "detail:asks_keep")
    if age < YOUNG and case.says(*WEAK):
        case.because(WITNESS, "load-test")
        head = f"Not its age: at {years} charge your {wording.kind(case)} battery full, then test it under load; "
        return TOPIC.says(verdict, f"{head}if it fails, it is a matter for the warranty.")
    # "still fine. Replace?" and "is it still fine?" are not told apart: one opening that answers both
    keep, swap = ("No", "Yes") if bad else ("Yes", "Not for much longer") if good else ("Keep it", "Most likely")
    if case.says("detail:asks_swap") and verdict != "yes":  # age alone buys no new one
        where = "past its usual life of" if verdict == "no" else "in its last years, usually"
        head = f"Test first: {told} {where} {life}, but that is by age only; replace it if it fails."
        return TOPIC.says(verdict, head, *lifetime.months(age, low, high), asks=asks)
    keep = "Keep it" if case.says("detail:asks_swap") else keep
    head = {
        "yes": f"{keep}: {told} inside its usual life of {life}; that is by age only, so test it.",
        "marginal": f"Perhaps soon: {told} in its last years (usually {life}); by age only, so test it under load.",
        "no": f"{swap}: {told} past its usual life of {life}; by age only, so have it tested first.",
    }[verdict]
    return TOPIC.says(verdict, head, *lifetime.months(age, low, high), asks=asks)


def passed(case: Case) -> bool:
    """Whether a load test was passed: by its volts, or as told. Volts of an earlier turn were those of the battery
    whose age was told there."""
    if UNTESTED.search(case.text) or of_the_other(case):
        return False
    earlier = case.origin("battery.age") == "message" and case.origin("reading.load_voltage") == "thread"
    return case.says("detail:passed_test") or (load_reading.passed_test(case) and not earlier)


def lives(case: Case, kinds: Sequence[str]) -> Answer:
    """The usual lives of several kinds side by side."""
    told = []
    for kind in kinds:
        row = reference.row("lives", chemistry=kind)
        case.source(row["low"].cite)
        told.append(f"{say.CHEMISTRY[kind]} {say.between(float(row['low'].value), float(row['high'].value), 'years')}")
    return TOPIC.says("information", f"Usual lives: {say.listed(told)}; heat and deep discharges shorten them.")


def without_age(case: Case) -> Answer:
    """The usual life where that is asked, else the age is asked for."""
    if "reading.voltage" in case.second and "reading.voltage" in case.stated:
        low = min(float(case["reading.voltage"]), float(case.second["reading.voltage"].value))
        case.used.setdefault(("reading.voltage", 2), case.second["reading.voltage"])
        case.step("Volts at rest show charge, not strength; in series one weak battery is emptied too far", "load-test")
        head = (
            f"Neither by these readings: charge the one at {say.volts(low, 2)} alone, rest both, load-test both; where "
            "one of a series pair fails, change both."
        )
        return TOPIC.needs("battery.age", headline=head)
    if found := put_otherwise(TOPIC, case) or by_year(TOPIC, case):
        return found
    if stood_flat(case) and case.says("detail:asks_dead"):
        return perhaps_dead(case)
    if fall := load_reading.fell_by_volts(case):
        return may_be_weak(TOPIC, case, fall)
    if held := load_reading.held_by_volts(case):
        return no_sign_of_it(TOPIC, case, held)
    if load_reading.test_asked(case) and not case.says("detail:when_replaced"):
        least = say.volts(float(lowest_at(None).value))
        case.step("Volts at rest show charge, not strength; a load test shows that", "load-test", cite("test-charged"))
        head = f"Yes, test it, charged full: a good lead battery holds {least} or more for 15 seconds at half its CCA."
        return TOPIC.says("information", head, asks=(TOPIC.ask("battery.age"),))
    if not case.says("detail:when_replaced"):
        return TOPIC.needs("battery.age")
    kinds = [kind for kind in ("flooded", "agm", "gel", "lfp") if case.says(f"detail:kind_{kind}")]
    if len(kinds) > 1:
        return lives(case, kinds)
    name, low, high = lifetime.life_of(case)
    caps = case.said("battery.chemistry") in (None, "lead", "flooded")  # no hydrometer goes into the others
    lags = (", or 0.050 between cells,", ", or when one cell lags by 0.050") if caps else ("", "")
    case.step(f"A failed load test{lags[0]} ends it earlier", "load-test", *((cite("gravity-spread"),) if caps else ()))
    life = f"{name[0].upper()}{name[1:]} batteries usually last {say.between(low, high, 'years')}"
    if SIGNS.search(case.text) and name != say.CHEMISTRY["lfp"]:
        least = say.volts(float(lowest_at(None).value))
        head = f"{life}; near its end one rests well but falls under {least} under load, so load-test it every season."
        return TOPIC.says("information", head)
    return TOPIC.says("information", f"{life}; replace one when it fails a load test{lags[1]}.")


def perhaps_dead(case: Case) -> Answer:
    """ "Is it ruined?" of a battery that was deeply flat: only a test tells."""
    volts = say.volts(float(case["reading.voltage"]), 1)
    case.because("A battery that was so flat may be damaged inside, at any age", cite("lead-flat"))
    how = "ask its maker before any charge"
    if case.said("battery.chemistry") not in LITHIUM:
        how = "charge it slowly, rest it a day, and a load test decides"
    head = f"It may be: {volts} at rest is deeply flat for your {wording.kind(case)} battery; {how}."
    return replace(TOPIC.needs("battery.age", headline=head), urgency=urgency(case))
