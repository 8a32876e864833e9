"""At what temperature the battery freezes, and whether it will."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from grammar.text.patterns import regex
from service import chart, say
from service.calculators import freezing
from service.case import Case, Value
from service.judgements import frost, ice_first
from service.judgements.laid_up import urgency
from service.reply import Answer, Figure, Urgency
from service.rules.readings import cite, limit
from service.told import fallen_to, planned_charge, two_charges
from service.topic import Lever, Topic


def fuller(case: Case) -> Iterator[Value]:
    """More charge in steps of 5 %; none where the frost is there already."""
    if cold_now(case):
        return
    at = frost.charge_of(case)
    yield from (float(charge) for charge in range(5, 101, 5) if at is None or charge > at)


TOPIC = Topic(
    "freeze-point",
    "Freezing",
    cautions=("frost", "lithium-cold"),
    levers=(
        Lever(
            "battery.charge",
            fuller,
            "charged to {value} or more before the frost",
            without=("reading.voltage", "reading.gravity"),
        ),
    ),
    likely={"battery.charge": (("full", 100.0), ("half", 50.0), ("flat", 0.0))},
    unsure={
        "battery.charge": "We can't say yet: a full battery freezes near -59 °C and a flat one near -9 °C, so its "
        "charge decides."
    },
)
CLAIM = regex(r"\bfreezes\b[^.?!]{0,20}?(?:minus|-) ?\d", re.IGNORECASE)  # "a full one freezes at -60"
CLAIMED = regex(r"(?:\bminus|(?<!\w)-) ?(\d+)", re.IGNORECASE)
FULL, FLAT = regex(r"\b(?:full|fully|charged)\b", re.I), regex(r"\b(?:flat|empty|discharged|dead)\b", re.I)
CHARGE, FREEZE = regex(r"\bcharg(?:e|er|ing)\b", re.I), frost.WORDS
HELD = regex(  # the charge that it holds: "what fraction of charge is that?"
    r"\b(?:(?:fraction|state|share|degree|level|percent(?:age)?|%|amount|proportion|part|kind|sort) of|how much|what)"
    r" (?:(?:the|a|full|its|their) )?charge\b(?! (?:it|them|the|her|an?|my)\b)",
    re.I,
)
ASKS = regex(r"\?|\b(?:should|can|may|shall|could|do) (?:i|we)\b|\b(?:ok|okay|alright|safe|fine) to\b", re.I)
MAY_CHARGE = regex(r"\b(?:can|may|could|ok(?:ay)?|safe|fine|alright) (?:i|we|it|they|to)\b[^.?!;]{0,20}\bcharg", re.I)
COLD_NOW = regex(r"\bnow\b|\b(?:it'?s|its|is|at) (?:minus|-)|\bthis morning\b|\blast night\b|\bcurrently\b", re.I)
STILL_TO_COME = regex(r"\b(?:will|tonight|tomorrow|forecast|coming|next|going to|expect\w*|winter)\b", re.I)
HARDEST = -40.0  # °C: colder than any frost that a boat stands in
ALIKE = 2.0  # °C between a claim and the table
FROST = 10.0  # °C: nobody asks of freezing at more; a warmer temperature is that of the reading


STANDS = regex(
    r"\b(?:surviv\w*|make it|get through|stands?|withstand|cope|safe|ok(?:ay)?|fine|all ?right|good|leave|stay)\b",
    re.IGNORECASE,
)

SAFE_FROM = regex(  # "safe from freezing?"
    r"\b(?:safe|protected|secure) (?:from|against) (?:the )?(?:freez\w*|frost|ice)\b"
    r"|\b(?:freez\w*|frost)[- ]?(?:proof|safe)\b",
    re.IGNORECASE,
)
SHARE_SAID = {100.0: "a full one", 50.0: "a half-full one", 0.0: "a flat one"}
FREEZES = {"yes": "does not freeze", "marginal": "may freeze", "no": "can freeze"}
ABOVE_ZERO = regex(  # "4 degrees now", "plus 5 today", "3 above zero"
    r"(?<![-−–\d.,])(?<!minus )\b\d{1,2} ?(?:(?:degrees?|°|c|celsius)\W{0,2}(?:c |celsius )?)?"
    r"(?:now|today|again|above (?:zero|freezing))\b|(?:\bplus |\+)\d{1,2}\b"
    r"|\b(?:now|today)(?:'s|,| it is| it's| we have| is)? \d{1,2} ?(?:degrees|°|c\b)",
    re.IGNORECASE,
)
ITS_CHARGE = regex(  # the charge of one that is there, and no "would a flat one"
    r"\b(?:it|that|they|mine|ours|(?:the|my|our|his|her) (?:\w+ ){0,2}(?:batter(?:y|ies)|bank|accu|agm|gel|one|ones))"
    r"(?:'?s|'?re| is| are| sits?| reads?| shows?)\b(?! (?:full|charged)\b)",
    re.IGNORECASE,
)
GO_THERE = regex(r"\b(?:should|must|shall|do|need) (?:i|we) (?:have to |need to )?(?:go|come|drive|get)\b", re.I)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The freezing temperature, and a verdict where a temperature is named."""
    if CLAIM.search(case.text) and FULL.search(case.text) and FLAT.search(case.text):
        return claimed(case)
    as_planned(case)
    case.stated = fallen_to.at_rest(case.text, case.stated)
    celsius = coldest(case)
    if case.said("battery.chemistry") in ("lfp", "lithium-other"):
        return lithium(case, celsius)
    if (two := two_charges.told(case.text)) and not charging_asked(case.text):
        return of_two_charges(case, two, celsius)
    found = frost.point_of(case)
    if found is None:
        return charge_not_said(case, celsius)
    point, told = found
    figure = Figure("freezing_temperature", "freezes at", point, "C")
    charge = frost.charge_of(case)
    urgent = urgency(case, charge) if charge is not None and case.said("battery.charge") is None else "routine"
    if celsius is None and ice_first.has_it_frozen(case.text) and point > HARDEST:
        return whether_frozen(case, figure, told, urgent)
    if celsius is None:
        head = f"It freezes at about {say.temperature(point)}, because {told}."
        return TOPIC.says("information", head, figure, urgency=urgent, plot=plot(charge, point, None))
    verdict = freezing.judged(celsius, point, limit("freezing-margin"))
    now, at = say.temperature(celsius), say.temperature(point)
    case.step(
        f"{now} against {at}, with {say.number(limit('freezing-margin'))} °C kept in hand", cite("freezing-margin")
    )
    if verdict != "yes":
        case.because(ice_first.WHY, "frozen-charge")
    if charge is not None and (verdict == "no" or (verdict == "marginal" and ITS_CHARGE.search(case.text))):
        urgent = urgency(case, charge)
    charged = charge is not None and charge >= limit("lead-good")
    both = verdict == "yes" and charged and freeze_asked(case.text)  # a yes would seem to answer that it freezes
    if charging_asked(case.text) and not both:
        may = may_be_charged(case, verdict == "yes", f"{told} and freezes near {at}", now)
        urgent = urgent if verdict == "yes" else "today"
        return replace(may, figures=(figure,), urgency=urgent, plot=plot(charge, point, celsius))
    may_i = both and MAY_CHARGE.search(case.text) is not None
    then = "look for ice before charging it" if cold_now(case) else "charge it before the frost"
    then = "look for ice or a bulge, and have it tested before any charge" if thawed_since(case) else then
    opens, perhaps = ("No", "Not for sure") if is_it_safe(case) else ("Yes", "It may freeze")
    perhaps = "Yes" if GO_THERE.search(case.text) else perhaps
    head = {
        "yes": f"{unharmed(case, now)}: {told}, and it freezes near {at}{'; it may be charged' if may_i else ''}.",
        "marginal": f"{perhaps}: {told} and freezes near {at}, too close to {now}, so look for ice, then charge it.",
        "no": f"{opens}, it can freeze at {now}: {told}, and it freezes near {at}, so {then}.",
    }[verdict]
    return TOPIC.says(verdict, head, figure, urgency=urgent, plot=plot(charge, point, celsius))


def of_two_charges(case: Case, charges: tuple[float, float], celsius: float | None) -> Answer:
    """Whether each of two freezes, by their charges; the verdict is that of the emptier one."""
    points = [frost.point_at_charge(share) for share in charges]
    names = [SHARE_SAID.get(share, f"one at {say.charge(share)}") for share in charges]
    ends = [f"{name} freezes near {say.temperature(point)}" for name, point in zip(names, points, strict=True)]
    case.step("Freezing points by charge", frost.CHARGE_TABLE)
    figure = Figure("freezing_temperature", "freezes at, the emptier one", points[1], "C", min(points), max(points))
    for fact in ("battery.charge", "battery.chemistry"):
        case.known(fact)
    if celsius is None:
        return TOPIC.says("information", f"{say.capital(ends[0])}, {ends[1]}.", figure)
    verdicts = [freezing.judged(celsius, point, limit("freezing-margin")) for point in points]
    now = say.temperature(celsius)
    case.step(f"{now}, with {say.number(limit('freezing-margin'))} °C kept in hand", cite("freezing-margin"))
    if verdicts == ["yes", "yes"]:
        return TOPIC.says("yes", f"No, neither at {now}: {ends[0]}, {ends[1]}.", figure)
    case.because(ice_first.WHY, "frozen-charge")
    does = [f"{name} {FREEZES[found]}" for name, found in zip(names, verdicts, strict=True)]
    then = "look for ice before charging it" if cold_now(case) else "charge it before the frost"
    at = say.temperature(points[1])
    return TOPIC.says(verdicts[1], f"At {now} {does[0]}, {does[1]}: it does so near {at}, so {then}.", figure)


def may_be_charged(case: Case, unfrozen: bool, told: str, now: str) -> Answer:
    """Whether it may be charged: not where it may be frozen already, before a frost that is only to come."""
    if unfrozen:
        return TOPIC.says("yes", f"Yes, charge it: at {now} it is not frozen, as {told}.")
    if STILL_TO_COME.search(case.text) and not COLD_NOW.search(case.text):
        return TOPIC.says("no", f"Yes, before the {now} to come: {told}, so charge it now, if it holds no ice.")
    head = f"No charger yet: at {now} it may be frozen: {told}; warm it first, look for ice."
    return TOPIC.says("no", head, route="technician")


def as_planned(case: Case) -> None:
    """Takes the charge that this question plans: "will it freeze if I charge it full first?"."""
    if planned_charge.to_full(case.text, FREEZE):
        case.stated = planned_charge.charged(case.stated)


def whether_frozen(case: Case, figure: Figure, told: str, urgent: Urgency) -> Answer:
    """ "Has it frozen?" where no temperature is told: from which cold on it has, and no charge before a look."""
    case.because(ice_first.WHY, "frozen-charge")
    head = f"It may have, if it was colder than {say.temperature(float(figure.value))}: {told}, so {ice_first.LOOK}."
    asks = (TOPIC.ask(frost.TEMPERATURE),)
    return TOPIC.says("needs-facts", head, figure, asks=asks, urgency=urgent)


def cold_now(case: Case) -> bool:
    """Whether the frost that is told is there already: nothing is charged before somebody has looked."""
    if COLD_NOW.search(case.text):
        return True
    there = frost.TEMPERATURE in case.asked or ice_first.has_it_frozen(case.text)
    return there and not STILL_TO_COME.search(case.text)


def thawed_since(case: Case) -> bool:
    """Whether it is asked if it has frozen, and a degree above zero is told of today: the ice may be gone."""
    return ice_first.has_it_frozen(case.text) and ABOVE_ZERO.search(case.text) is not None


def is_it_safe(case: Case) -> bool:
    """Whether it is asked if the battery stands the cold, and not if it freezes."""
    stands = STANDS.search(case.text) is not None and FREEZE.search(case.text) is None
    return stands or SAFE_FROM.search(case.text) is not None


def unharmed(case: Case, now: str) -> str:
    """The opening for a battery that does not freeze."""
    return f"Yes, it stands {now}" if is_it_safe(case) else f"No, it will not freeze at {now}"


def charging_asked(text: str) -> bool:
    """Whether a sentence of its own asks about charging, not about ice."""
    sentences = re.split(r"(?<=[.!?;])\s", HELD.sub(" ", planned_charge.without_plans(text)))
    return any(CHARGE.search(part) and ASKS.search(part) and not FREEZE.search(part) for part in sentences)


def freeze_asked(text: str) -> bool:
    """Whether a sentence of its own asks if it freezes."""
    return any(FREEZE.search(part) and part.rstrip().endswith("?") for part in re.split(r"(?<=[.!?;])\s", text))


def claimed(case: Case) -> Answer:
    """What somebody says of a full and a flat one, beside the table: no weather that is to come."""
    points = [frost.point_at_charge(share) for share in (100.0, 50.0, 0.0)]
    full, half, flat = (say.temperature(point) for point in points)
    for fact in ("battery.charge", "ambient.temperature"):
        case.known(fact)
        if fact in case.second:
            case.used.setdefault((fact, 2), case.second[fact])
    case.step("Freezing points by charge", frost.CHARGE_TABLE)
    said = [-float(number) for number in CLAIMED.findall(case.text)]
    agrees = all(min(abs(one - point) for point in points) <= ALIKE for one in said)
    first = "Nearly so" if agrees else "Not quite"
    head = f"{first}: by the table a full one freezes near {full}, a half-full one near {half}, a flat one near {flat}."
    return TOPIC.says(
        "information",
        head,
        Figure("freezing_temperature", "freezes at, full to flat", points[2], "C", points[0], points[2]),
    )


def coldest(case: Case) -> float | None:
    """The frost that is named: the lower one of two temperatures, none above 10 °C, nor that of the acid alone."""
    told = [case.known("ambient.temperature"), case.second.get("ambient.temperature")]
    read = case.stated.get("reading.gravity")
    if read and told[0] and told[1] is None and frost.acid_temperature(case) is not None:
        return None
    frosts = [item for item in told if item is not None and float(item.value) <= FROST]
    if not frosts:
        return None
    found = min(frosts, key=lambda item: float(item.value))
    case.used.setdefault((found.fact, found.of), found)
    return float(found.value)


def charge_not_said(case: Case, celsius: float | None) -> Answer:
    """Without a charge: what holds for a full, a half-full and a flat one, or for all of them."""
    full, half, flat = (frost.point_at_charge(share) for share in (100.0, 50.0, 0.0))
    case.step(
        f"Full {say.temperature(full)}, half {say.temperature(half)}, flat {say.temperature(flat)}", frost.CHARGE_TABLE
    )
    figure = Figure("freezing_temperature", "freezes at, full to flat", flat, "C", full, flat)
    if celsius is None:
        head = (
            f"It depends on the charge: a full one freezes near {say.temperature(full)}, a half-full one near "
            f"{say.temperature(half)}, a flat one near {say.temperature(flat)}."
        )
        asks = (TOPIC.ask("battery.charge", TOPIC.likely["battery.charge"]),)
        return TOPIC.says("information", head, figure, asks=asks, plot=plot(None, half, None))
    if freezing.judged(celsius, flat, limit("freezing-margin")) == "yes":
        now, at = say.temperature(celsius), say.temperature(flat)
        head = f"{unharmed(case, now)}: even a flat one freezes near {at}."
        return TOPIC.says("yes", head, figure, plot=plot(None, flat, celsius))
    holds = freezing.judged(celsius, half, limit("freezing-margin")) == "yes"
    if holds and not is_it_safe(case) and not charging_asked(case.text):
        case.because(
            f"Flat it freezes near {say.temperature(flat)}, so keep it at half or more", cite("freezing-margin")
        )
        at = say.temperature(half)
        head = f"Not while your battery is half full or more: then its acid freezes near {at} or colder; flat it can."
        return TOPIC.needs("battery.charge", "reading.voltage", headline=head, figures=(figure,))
    return TOPIC.needs("battery.charge", "reading.voltage", figures=(figure,))


def lithium(case: Case, celsius: float | None) -> Answer:
    """It does not freeze; charging in the cold is what harms it."""
    case.step("Lithium holds no water; charging at or below 0 °C plates metal on the cells", "lithium-no-freeze")
    if celsius is not None and celsius <= 0 and case.says("word:charge"):
        head = f"No: at {say.temperature(celsius)} lithium must not be charged, though it does not freeze like lead."
        return TOPIC.says("no", head)
    stays = "Yes, it may stay:" if is_it_safe(case) else "No,"
    head = f"{stays} lithium does not freeze like lead, but it must not be charged at or below 0 °C."
    return TOPIC.says("information" if celsius is None else "yes", head)


def plot(charge: float | None, point: float, celsius: float | None) -> dict[str, Any]:
    """Freezing temperature against charge, with the frost that is expected."""
    return chart.chart(
        "line",
        "Where it freezes",
        ("charge", "%"),
        ("freezes at", "C"),
        [("lead", sorted(frost.rows("charge")))],
        [] if celsius is None else [("expected", celsius)],
        None if charge is None else ("yours", charge, point),
    )
