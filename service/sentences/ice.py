"""What is claimed of ice, and what stands until the coldest night."""

from __future__ import annotations

import re
from typing import Any

from grammar.text.patterns import regex
from service import chart, say
from service.calculators import freezing
from service.case import Case
from service.judgements import frost
from service.reply import Answer, Figure
from service.rules.readings import cite, limit
from service.told import planned_charge
from service.topic import Topic

CHARGE, FREEZE = regex(r"\bcharg(?:e|er|ing)\b", re.I), frost.WORDS
HELD = regex(  # the charge that it holds: "what fraction of charge is that?"
    r"\b(?:(?:fraction|state|share|degree|level|percent(?:age)?|%|amount|proportion|part|kind|sort) of|how much|what)"
    r" (?:(?:the|a|full|its|their) )?charge\b(?! (?:it|them|the|her|an?|my)\b)",
    re.I,
)
ASKS = regex(r"\?|\b(?:should|can|may|shall|could|do) (?:i|we)\b|\b(?:ok|okay|alright|safe|fine) to\b", re.I)
STANDS = regex(
    r"\b(?:surviv\w*|make it|get through|stands?|withstand|cope|safe|ok(?:ay)?|fine|all ?right|good|leave|stay)\b",
    re.IGNORECASE,
)
SAFE_FROM = regex(  # "safe from freezing?"
    r"\b(?:safe|protected|secure) (?:from|against) (?:the )?(?:freez\w*|frost|ice)\b"
    r"|\b(?:freez\w*|frost)[- ]?(?:proof|safe)\b",
    re.IGNORECASE,
)

CLAIMED = regex(r"(?:\bminus|(?<!\w)-) ?(\d+)", re.IGNORECASE)
ALIKE = 2.0  # °C between a claim and the table
FROST = 10.0  # °C: nobody asks of freezing at more; a warmer temperature is that of the reading


def claimed(topic: Topic, case: Case) -> Answer:
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
    return topic.says(
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


def charge_not_said(topic: Topic, case: Case, celsius: float | None) -> Answer:
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
        asks = (topic.ask("battery.charge", topic.likely["battery.charge"]),)
        return topic.says("information", head, figure, asks=asks, plot=plot(None, half, None))
    if freezing.judged(celsius, flat, limit("freezing-margin")) == "yes":
        now, at = say.temperature(celsius), say.temperature(flat)
        head = f"{unharmed(case, now)}: even a flat one freezes near {at}."
        return topic.says("yes", head, figure, plot=plot(None, flat, celsius))
    holds = freezing.judged(celsius, half, limit("freezing-margin")) == "yes"
    if holds and not is_it_safe(case) and not charging_asked(case.text):
        case.because(
            f"Flat it freezes near {say.temperature(flat)}, so keep it at half or more", cite("freezing-margin")
        )
        at = say.temperature(half)
        head = f"Not while your battery is half full or more: then its acid freezes near {at} or colder; flat it can."
        return topic.needs("battery.charge", "reading.voltage", headline=head, figures=(figure,))
    return topic.needs("battery.charge", "reading.voltage", figures=(figure,))


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
