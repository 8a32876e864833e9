"""Whether a battery that is laid up stays on its charger: what is asked of it, and the answer."""

from __future__ import annotations

from service import say
from service.case import Case
from service.judgements import charging, laid_up
from service.judgements.laid_up import FULL, LaidUp, left_on, plot
from service.reply import Answer, Figure
from service.rules.readings import NEAR, cite
from service.sentences import wording
from service.told import charger_left_on
from service.topic import Topic

ON_CHARGE = ("thing:charger", "detail:on_charge")
PUT_UP = (
    "request:may_i",
    "request:is_good",
    "detail:asks_good",
    "detail:asks_bad",
    "detail:harm",
    "put:leave",
    "put:need",
    "put:bad",
)


def asked(case: Case) -> bool:
    """Whether it is asked if a charger may stay on, and not what else to do."""
    kind = case.said("charger.kind") is not None or case.says(*charger_left_on.KINDS)
    put_up = case.says(*PUT_UP) or (kind and case.says("detail:left_on"))
    named = (kind or case.says(*ON_CHARGE)) and put_up and not charger_left_on.instead(case.text)
    if left_on(case) or is_weighed(case):
        return False
    return named and not charger_left_on.taken_off(case.text) and not charger_left_on.in_between(case.text)


def filled_first(case: Case) -> bool:
    """Whether it is asked if a charger may stay on a low lead battery: the charger fills it first."""
    return asked(case) and not laid_up.is_lithium(case) and laid_up.charge_now(case) < FULL - NEAR


def answer(topic: Topic, case: Case, found: LaidUp, figures: list[Figure]) -> Answer:
    """ "Can I leave it on the charger all winter?": a smart one may keep lead full; lithium is better off without."""
    check, bad = say.quantity(float(figures[1].value), "d", 0), case.says("put:bad", "detail:asks_bad", "detail:harm")
    chart = plot(case, found, None)
    if laid_up.is_lithium(case):
        case.step("Lithium is stored about half full, and no charger is needed for that", cite("lithium-store"))
        if charging.too_cold(case, "lfp"):
            start = "Yes" if bad else "No"
            head = f"{start}: no charger on lithium at 0 °C or below; lay it up half full, and look every {check}."
            return topic.says("no", head, *figures, plot=chart)
        start = "A little" if bad else "Better not"
        head = f"{start}: lay lithium up about half full, charger off and disconnected, and look every {check}."
        return topic.says("marginal", head, *figures, plot=chart)
    case.step("A charger with a float stage may stay on; else it is charged at each look", cite("check-most"))
    batteries, smart = f"{wording.kind(case)} batteries", is_smart(case)
    rest = f"without one, charge {batteries} full, disconnect them and look every {check}"
    if charger_left_on.two_ways(case.text) and not charging.must_come_off(case):
        start = "Both are right" if smart else "Both are right, if it is a smart charger"
        rest = f"charged full and disconnected, {batteries} want a look every {check}"
        head = f"{start}: {'a smart one' if smart else 'that'} drops to float by itself; {rest}."
        return topic.says("yes" if smart else "information", head, *figures, plot=chart)
    if name := charging.must_come_off(case):
        start = "Yes, it harms" if bad else "No"
        head = f"{start}: no {name} stays on; charge {batteries} full, disconnect them and look every {check}."
        return topic.says("no", head, *figures, plot=chart)
    if smart:
        told = f"a smart charger drops to float by itself, so it may stay on; {rest}."
        return topic.says("yes", say.capital(told) if bad else f"Yes: {told}", *figures, plot=chart)
    start = "A smart charger may stay on, as it" if bad else "Yes, if it is a smart charger: that"
    return topic.says("information", f"{start} drops to float by itself; {rest}.", *figures, plot=chart)


def is_smart(case: Case) -> bool:
    """Whether the charger is told to drop to float by itself."""
    return case.said("charger.kind") == "smart" or charger_left_on.floats(case.text)


def is_weighed(case: Case) -> bool:
    """Whether a charge now and then is weighed against a charger that must not stay on, which is judged beside it."""
    plain = case.said("charger.kind") in charger_left_on.PLAIN or case.says("detail:unregulated")
    return plain and charger_left_on.BESIDE in case.beside and charger_left_on.or_taken_home(case.text)
