"""A fuse that is left out, bridged, open or in the wrong place, and what is asked back of any fuse."""

from __future__ import annotations

from service import say
from service.case import Case
from service.judgements import circuit
from service.judgements.fusing import PLACE, PLACED, Band, figures, next_cable, running, too_thin
from service.reply import Answer, Asked, Change
from service.rules.cable import TABLE_5
from service.sentences.fuses import cable_beside, far, judge, print_decides, too_thin_if_older
from service.topic import Topic

USUAL, LARGE = 3, ("1/0", "2/0", "4/0")  # sizes that are offered; those of a thruster whose amps are not known
NEAR = PLACE.value / 1000  # metres of cable from the battery to its fuse


def left_or_misplaced(topic: Topic, case: Case, band: Band, away: float | None) -> Answer | None:
    """The answer on a fuse that is missing, bridged, open or in the wrong place; None where it is none of these."""
    if case.says("detail:bridged"):
        case.source("fuse-practice")
        return bridged(topic, band)
    if case.says("detail:one_end") and case.says("thing:dcdc", "thing:charger", "thing:panel"):
        return one_end(topic, case, band)
    if case.says("detail:fuse_left_out") and "fuse.rating" not in case.stated:
        return left_out(topic, case, band)
    if case.says("detail:no_fuse") and "fuse.rating" not in case.stated:
        case.source(PLACE.cite)
        return unfused(topic, band)
    if away is not None and away > NEAR:
        return too_far(topic, case, band, away)
    if case.says("detail:fuse_far") and not case.says("detail:fuse_place", "detail:fuse_near"):
        return too_far(topic, case, band)
    if case.says("detail:open_holder") and case.says("detail:petrol_near"):
        return unguarded(topic, case, band)
    return None


def ask_cable(topic: Topic, case: Case) -> tuple[Asked, ...]:
    """The question for the size of the cable, with the usual ones for its load."""
    amps = circuit.current(case) if running(case) else 0.0
    able = [str(size.name) for size in circuit.sizes(case)[0] if size.ampacity >= amps] if amps else []
    return (topic.ask("cable.gauge", [(size, size) for size in able[:USUAL] or LARGE]),)


def ask_insulation(topic: Topic, case: Case) -> tuple[Asked, ...]:
    """The question for the print on the cable, where it decides whether the cable carries the load."""
    if not too_thin_if_older(case):
        return ()
    case.step(f"At 75{say.NB}°C insulation it may carry {say.amps(circuit.warm_rating(case) or 0)}", TABLE_5)
    good = "105 °C" if "fuse.rating" in case.stated else "105 °C: as above"
    return (topic.ask("cable.insulation", ((good, 105.0), ("75 °C or less", 75.0))),)


def to_fit(band: Band) -> float | None:
    """Amps of the fuse that belongs there: the catalogue's, unless a cable is known that does not hold it."""
    return band.house if band.house and band.most is None else band.fit


def left_out(topic: Topic, case: Case, band: Band) -> Answer:
    """Whether a fuse may be left out, however short the load runs: never."""
    case.because("A fuse guards the cable against a short circuit, which needs no running motor", "fuse-practice")
    fits = to_fit(band) and not too_thin(case, band)
    which = f"this one takes {say.amps(to_fit(band) or 0)}" if fits else "every feed needs one, a thruster's too"
    head = f"No, the fuse stays in: {which}, {PLACED}."
    return topic.says("no", head, *figures(band), asks=ask_insulation(topic, case))


def unfused(topic: Topic, band: Band) -> Answer:
    """A circuit without a fuse is not used until it has one."""
    fit = to_fit(band)
    which = f"a {say.amps(fit)} fuse" if fit else "the right fuse"
    head = f"No: leave this circuit switched off until {which} is in, {PLACED}."
    if fit is None:
        return topic.says("no", head, *figures(band), urgency="today", asks=(topic.ask("load.current"),))
    change = Change("fuse.rating", fit, "A", f"a {say.amps(fit)} fuse near the battery")
    return topic.says("no", head, *figures(band), urgency="today", would_change=(change,))


def bridged(topic: Topic, band: Band) -> Answer:
    """Foil or wire in place of a fuse."""
    fit = to_fit(band)
    which = f"a {say.amps(fit)} fuse" if fit else "a fuse of the same rating"
    head = f"No: only {which} goes in its place, and the circuit stays switched off until then."
    return topic.says("no", head, *figures(band), urgency="today")


def unguarded(topic: Topic, case: Case, band: Band) -> Answer:
    """An open fuse where petrol can gather."""
    case.because("A fuse that blows in the open can light petrol vapour", "cfr-183-410")
    fit = to_fit(band)
    fitting = f", with a {say.amps(fit)} fuse" if fit and not too_thin(case, band) else ""
    head = f"No: an open fuse holder must not stand where petrol can gather; fit an ignition protected one{fitting}."
    return topic.says("no", head, *figures(band), asks=ask_insulation(topic, case))


def too_far(topic: Topic, case: Case, band: Band, away: float | None = None) -> Answer:
    """A fuse at the wrong end of the cable, with the rating that belongs there where it is known."""
    case.because("A short in the cable before the fuse has nothing to stop it", PLACE.cite)
    fit = None if too_thin(case, band) or "fuse.rating" in case.stated else to_fit(band)
    which = f"a {say.amps(fit)} fuse" if fit else "the fuse"
    head = f"No: {which} belongs {PLACED}, because the cable before the fuse has no protection."
    if away is not None:
        head = f"No: {which} belongs {PLACED}, and {far(away)} away leaves that much cable without protection."
        if "fuse.rating" in case.stated and band.load and band.most:  # size and cable are judged apart from the place
            case.because(f"Its size by itself: {decided(topic, case, band, float(case['fuse.rating']))[1]}", PLACE.cite)
            cable_beside(case, away)
    return topic.says("no", head, *figures(band), asks=ask_insulation(topic, case))


def near_enough(topic: Topic, case: Case, away: float) -> Answer:
    """A fuse whose place alone is known, and right."""
    case.because("Measured along the cable", PLACE.cite)
    head = f"Yes: {far(away)} from the battery is near enough for a fuse, which belongs {PLACED}."
    return topic.says("yes", head)


def one_end(topic: Topic, case: Case, band: Band) -> Answer:
    """One fuse where both ends of the cable can feed it."""
    case.step("Both ends of this cable are sources, and each can feed a short circuit", PLACE.cite)
    head = f"No: both ends can feed this cable, so fit a second fuse at the other end, {PLACED} there."
    return topic.says("no", head, *figures(band))


def decided(topic: Topic, case: Case, band: Band, rated: float) -> tuple[str, str, tuple[Asked, ...]]:
    """The verdict on one fuse, the sentence for it, and what is asked back."""
    verdict, why = judge(case, band, rated)
    if verdict == "needs-facts":
        return verdict, why, (topic.ask("load.current"),)
    if verdict == "information":
        return verdict, why, ask_cable(topic, case)
    asks = ask_insulation(topic, case) if verdict != "no" else ()
    if asks:
        return "needs-facts", print_decides(case, band, circuit.name(case), next_cable(case, band), rated), asks
    return verdict, why, ()
