"""What a panel brings in a day, and whether that covers what the battery loses."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.text.patterns import regex
from service import reference, say
from service.calculators import solar, storage
from service.case import Case, Value
from service.judgements import charging, put_back, session, supply
from service.reply import Answer, Figure, Option, strictest
from service.sentences.panel_asked import (
    WHICH_PANEL,
    Need,
    panel,
    required,
    value,
    volts,
    wanted_panel,
    whole,
    without_controller,
    without_panel,
)
from service.told import in_frost, seasons
from service.topic import Lever, Topic

OF_A_MOTOR = 60.0  # A: what draws so much runs for seconds, whatever it is called
SELDOM = ("thruster", "windlass", "engine")  # loads that run for seconds, not all day
OWN_LOSS = ("detail:hold_charge", "detail:no_self_discharge")  # "self discharge" is a word of lay-ups as well
WEEKEND = 2 / 7
SIZES = ("request:what_size", "detail:how_many_watts")
IN_WINTER = regex(
    r"\b(?:christmas|xmas|new year|halloween|nov(?:ember)?|dec(?:ember)?|jan(?:uary)?|feb(?:ruary)?"
    r"|(?:over|through|during|all) (?:the )?winter)\b",
    re.IGNORECASE,
)
LAY_UP = 60.0  # days: who is away for less has not laid up the boat
OTHER_SIZES = frozenset({"fuse-size", "cable-size"})  # of which "which size" is asked then
PWM = regex(r"\bpwm\b|\bsimple controller\b", re.IGNORECASE)
SUMMER = regex(r"\b(?:summer|june|july|august)\b", re.IGNORECASE)


def larger(case: Case) -> Iterator[Value]:
    """The panel that covers the need with the reserve."""
    case = case.fresh()
    found, sun = need(case), sun_hours(case)
    if found and found.in_all and sun and "solar.power" in case:
        yield panel(case, found.in_all * value("margin"), sun)


TOPIC = Topic(
    "solar",
    "A panel to keep it up",
    cautions=("lithium-cold", "fuse-at-battery", "check-date"),
    levers=(
        Lever("solar.power", larger, "a panel of {value} or more"),
        charging.WARMER,
    ),
    likely={"drain.current": (("nothing is on", 0.0001), ("an alarm: 0.03 A", 0.03), ("a bilge alarm: 0.1 A", 0.1))},
    unsure={
        "solar.power": "We can't say yet: the watts of the panel decide what it brings.",
        "drain.current": "We can't say yet: what the panel must cover decides, so tell us what stays on.",
    },
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The daily charge against the daily need; the panel for a need where none is named."""
    stopped = charging.barred(TOPIC, case, charging.known_kind(case), alternator=False)
    if stopped:
        return stopped
    if charging.known_kind(case) == "lfp" and freezes(case):
        case.step("Charging at or below 0 °C plates metal on lithium cells, for good", "lithium-charge-cold")
        head = "No, not in frost: lithium may not be charged at or below 0 °C, and a panel charges in any sun."
        return TOPIC.says("no", head)
    wanted = need(case)
    if wanted and "solar.power" in case and both_seasons(case):
        return by_season(case, float(case["solar.power"]), wanted)
    sun = sun_hours(case)
    if "solar.power" not in case:
        return wanted_panel(TOPIC, case, wanted, sun) if wanted and sun else without_panel(TOPIC, case)
    power = float(case["solar.power"])
    figures = (brings(case, power, sun),)
    bare = without_controller(case, power)
    if bare:
        return TOPIC.says("no", bare, *figures)
    if not sun:
        where = "under a cover" if case.says("detail:under_cover") else "without sun"
        return TOPIC.says("no", f"No: {where} a panel brings nothing.", *figures)
    if wanted is None:
        return open_need(case, power, figures)
    return judged(case, power, wanted, sun, figures)


def freezes(case: Case) -> bool:
    """Whether words tell of frost, and no degrees."""
    told = case.says("detail:frost") or in_frost.in_words(case.text)
    return told and "ambient.temperature" not in case


def sun_hours(case: Case) -> float:
    """Hours of full sun a day: none under a cover, as said, one in winter, four in summer; over the week two sevenths
    where it is covered on weekdays."""
    covered = case.says("detail:under_cover") and not case.says("detail:uncovered")
    if covered:
        case.step("Under a cover no direct light reaches the panel", "sun-hours")
    if covered and not case.says("detail:weekdays"):
        return 0.0
    winter = laid_up(case)
    found = reference.value("solar", "sun-winter" if winter else "sun-summer")
    why = "a winter day" if winter else "a summer day"
    hours = float(case.assume("solar.sun_hours", float(found.value), why, found.cite, unit="h"))
    if not covered:
        return hours
    case.step(f"Free at weekends alone, it has {say.quantity(hours * WEEKEND, 'h')} a day over the week", "sun-hours")
    return hours * WEEKEND


def laid_up(case: Case) -> bool:
    """Whether it is winter or a lay-up, where none says that it is summer; a fortnight away is neither."""
    if seasons.IN_SUMMER.search(case.text) or (SUMMER.search(case.text) and "winter" not in case.text.lower()):
        return False
    if case.says(seasons.SUMMER) and case.origin("storage.time") != "message":
        return False  # said last, after a lay-up that was told before
    stands = case.says("word:winter") and not case.says(*OWN_LOSS)
    away = float(case.said("storage.time") or 0.0)
    return stands or case.says("detail:winter") or away >= LAY_UP or bool(IN_WINTER.search(case.text))


def both_seasons(case: Case) -> bool:
    """Whether they ask of summer and of winter or a lay-up, and no hours of sun are told."""
    winter = case.says("word:winter", "detail:winter") and not case.says(*OWN_LOSS)
    if case.says("detail:under_cover", "detail:no_controller"):  # what decides then is no season
        return False
    summer = SUMMER.search(case.text) and not seasons.IN_SUMMER.search(case.text)
    return winter and bool(summer) and case.said("solar.sun_hours") is None


def by_season(case: Case, power: float, wanted: Need) -> Answer:
    """A panel in summer and in winter or a lay-up, side by side; the stricter verdict leads."""
    sides, told = [], []
    for name, hours in (("in summer", "sun-summer"), ("in winter or lay-up", "sun-winter")):
        sun = reference.value("solar", hours)
        side = case.supposing({"solar.sun_hours": float(sun.value)})
        case.step(f"{say.capital(name)} {say.quantity(float(sun.value), 'h')} of full sun a day", sun.cite)
        found = judged(side, power, wanted, float(sun.value), (brings(side, power, float(sun.value)),))
        case.follow(side)
        sides.append(Option(say.capital(name), found.verdict, found.figures))
        word = {"yes": "yes", "marginal": "only just", "no": "no"}[found.verdict]
        told.append(f"{say.capital(name)} {word}, {say.daily(float(found.figures[0].value))} a day")
    need = f"{takes(case, wanted)} {say.daily(wanted.in_all)}"
    verdict = strictest(*(side.verdict for side in sides))
    summer, winter = told
    head = f"{summer}; {winter[0].lower()}{winter[1:]}: {need}."
    return TOPIC.says(verdict, head, *sides[-1].figures, compare=tuple(sides))


def brings(case: Case, power: float, sun: float) -> Figure:
    """The daily charge, with the low end of a simple panel on deck."""
    high, low = (solar.daily_charge(power, sun, value(name), volts(case)) for name in ("share", "share-low"))
    case.step(
        f"{say.quantity(power, 'W')} x {say.quantity(sun, 'h')} x {value('share'):g} / {say.volts(volts(case))} is "
        f"{say.amp_hours(high)} a day; with a simple controller, flat on deck, {say.amp_hours(low)}",
        "panel-share",
    )
    if PWM.search(case.text):
        return Figure("daily_charge", "a day", low, "Ah")
    return Figure("daily_charge", "a day", high, "Ah", low, high)


def need(case: Case) -> Need | None:
    """What a day takes: drain, a load that runs all day, self-discharge. None where neither drain nor size is known."""
    amps = case.get("drain.current")
    motor = case.get("load.kind", "thruster") in SELDOM and float(case.get("load.current", 0.0)) >= OF_A_MOTOR
    if amps is None and "load.current" in case.stated and case.get("load.kind") not in SELDOM and not motor:
        share = case["load.time"] / 86400 if "load.time" in case.stated else session.share_on(case)
        amps = case["load.current"] * share
    taken = put_back.a_day(case) if amps is None and case.get("load.kind", "thruster") in SELDOM else None
    if amps is None and taken is None and "bank.capacity" not in case:
        return None
    drawn = float(amps or 0.0) * 24
    if amps:
        case.step(f"{say.amps(float(amps))} on average are {say.amp_hours(drawn)} a day", "drain-arithmetic")
    else:
        case.assume("drain.current", 0.0, "everything else off", unit="A")
    return Need(drawn, by_itself(case), taken or 0.0)


def by_itself(case: Case) -> float:
    """Self-discharge a day; a kind not known is taken as wet-cell, which loses most."""
    if "bank.capacity" not in case:
        return 0.0
    if case.says("detail:no_self_discharge"):
        case.step("What the battery loses by itself is left out, as you wrote", "drain-arithmetic")
        return 0.0
    rate = reference.row("self_discharge", chemistry=charging.known_kind(case) or "flooded")["rate"]
    warm = max(20.0, float(case.said("ambient.temperature") or 20.0))
    loses = solar.self_discharge(float(case["bank.capacity"]), storage.monthly_rate(float(rate.value), warm))
    case.step(f"By itself the battery loses {say.amp_hours(loses)} a day ({rate.value:g} % a month)", rate.cite)
    return loses


def judged(case: Case, power: float, wanted: Need, sun: float, figures: tuple[Figure, ...]) -> Answer:
    """A panel against the need: yes with the reserve, marginal without."""
    gain, total = float(figures[0].value), wanted.in_all
    verdict = "yes" if gain >= total * value("margin") * (1 - charging.NEAR) else "marginal" if gain >= total else "no"
    case.step(f"A clear yes wants {value('margin'):g} times the need", "panel-margin")
    start = {"yes": "Yes", "marginal": "Only just", "no": "No"}[verdict]
    brought, lost = say.daily(gain), say.daily(total)
    than = {"yes": "and", "marginal": "little more than the", "no": "but"}[verdict]
    if (case.says(*SIZES) or WHICH_PANEL.search(case.text)) and sun and OTHER_SIZES.isdisjoint(case.beside):
        return TOPIC.says(verdict, its_size(case, power, wanted, sun), *figures, *required(case, wanted, sun))
    what = takes(case, wanted)
    joint = f"{than} {what} {lost}" if verdict != "marginal" else f"and {what} nearly as much, {lost}"
    off = "" if wanted.drawn or wanted.taken else ", with everything off"
    head = f"{start}: a {say.quantity(power, 'W')} panel brings about {brought} a day{season(case)}, {joint}{off}."
    return TOPIC.says(verdict, head, *figures, *required(case, wanted, sun))


def takes(case: Case, wanted: Need) -> str:
    """What the panel has to cover, with its verb."""
    drains = [
        name
        for name, amp_hours in (
            ("the drain", wanted.drawn),
            (supply.load_name(case), wanted.taken),
            ("the battery's own loss", wanted.lost),
        )
        if amp_hours
    ]
    if len(drains) > 1:
        return f"{say.listed(drains)} take"
    return "the battery loses by itself" if wanted.lost else f"{drains[0]} takes" if drains else "nothing takes"


def season(case: Case) -> str:
    """The season that was taken, where none is told."""
    known = case.known("solar.sun_hours")
    taken = known is not None and known.origin == "assumed" and not laid_up(case) and not SUMMER.search(case.text)
    return " in summer" if taken else ""


def its_size(case: Case, power: float, wanted: Need, sun: float) -> str:
    """The panel to fit, where its watts are asked beside one that they have."""
    least = panel(case, wanted.in_all, sun)
    spare, theirs = whole(least * value("margin")), say.quantity(power, "W")
    return f"{spare} or more: {whole(least)} just covers {say.daily(wanted.in_all)} a day, and yours has {theirs}."


def open_need(case: Case, power: float, figures: tuple[Figure, ...]) -> Answer:
    """The need is not known: what the panel brings, and what to ask where it is put up for approval."""
    gain, least = say.daily(float(figures[0].value)), say.daily(float(figures[0].low or 0.0))
    simple = " with a simple controller" if PWM.search(case.text) else f" ({least} with a simple controller)"
    told = f"a {say.quantity(power, 'W')} panel brings about {gain} a day{simple}"
    if case.says("request:enough", "request:may_i", "detail:keeps_up"):
        head = f"We can't say yet: {told}; what stays on and the battery's size decide."
        return TOPIC.needs("drain.current", "battery.capacity", headline=head, figures=figures)
    return TOPIC.says("information", f"About {gain} a day: {told.replace(f' about {gain} a day', ' that')}.", *figures)
