"""What is left for cranking in the cold."""

from __future__ import annotations

import re
from typing import Any

from grammar.text.patterns import regex
from service import chart, reference, say
from service.calculators import cold
from service.case import Case
from service.judgements import charging
from service.reply import Answer, Figure, Option
from service.rules.readings import cite, limit
from service.told import culprit
from service.topic import Topic

TOPIC = Topic(
    "cold-cranking",
    "Cranking power in the cold",
    amps="battery.cca",
    cautions=("frost", "lithium-cold"),
    likely={"battery.cca": (("500 CCA", 500.0), ("700 CCA", 700.0), ("900 CCA", 900.0))},
    unsure={"battery.cca": "We can't say the amps yet: please tell us the CCA on the battery's label."},
)
FREEZING, RATED = 0.0, -18.0  # °C
WHICH_COUNTS = regex(
    r"\b(?:mca\b.*\bcca|cca\b.*\bmca)\b.*\bwhich\b.{0,20}\b(?:counts?|matters?|applies)\b", re.IGNORECASE | re.DOTALL
)
MATTERS = regex(
    r"\b(?:matters?|mak(?:e|es|ing) (?:a |any |much |such a )?difference|affects?|influences?)\b"
    r"|\b(?:because of|down to|due to) the (?:cold|temperature)\b",
    re.IGNORECASE,
)
SAME = 0.3  # °C: 0 °F is -17.8
CHARGING = frozenset({"dc-dc", "charge-time", "charger-banks", "charger-setting", "charger-size", "solar"})


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Amps at a temperature, and the share of the warm power."""
    if case.said("battery.chemistry") in ("lfp", "lithium-other"):
        return lithium(case)
    if culprit.cold_or_battery(case.text):
        return or_the_battery(case)
    if "battery.cca" not in case and WHICH_COUNTS.search(case.text):
        return which_counts(case)
    if "ambient.temperature" in case.second or "battery.cca" in case.second:
        return two(case)
    return one(case)


def share_at(case: Case, celsius: float) -> Figure:
    """The share of the warm power, noted."""
    rows = reference.rows("cranking_temperature")
    points = [(row["temperature"].value, row["share"].value) for row in rows]
    found = cold.share(celsius, points)
    nearest = min(rows, key=lambda row: abs(row["temperature"].value - celsius))
    case.step(
        f"At {say.temperature(celsius)} a full battery has {say.number(found)} % of the power it has at 27 °C",
        nearest["share"].cite,
    )
    return Figure("share_of_warm_power", "share of warm power", found, "%")


def one(case: Case) -> Answer:
    """One battery at one temperature; at 0 °C where none is named."""
    celsius = case.said("ambient.temperature")
    at = FREEZING if celsius is None else float(celsius)
    if "battery.cca" not in case:
        return without_cca(case, at, named=celsius is not None)
    cca = float(case["battery.cca"])
    if celsius is None:
        return in_general(case, cca)
    share = share_at(case, at)
    if at < limit("cranking-coldest"):
        end = say.temperature(limit("cranking-coldest"))
        case.step(f"No rating reaches below {end}", cite("cranking-coldest"))
        head = f"Under {end} no rating tells the amps that your {say.cca(cca)} battery gives, so do not count on it."
        return TOPIC.says("information", head, share, plot=plot(cca, at))
    counted = RATED if abs(at - RATED) <= SAME else at  # 0 °F, at which the rating itself is given
    amps = cold.cranking_current(cca, counted, limit("cranking-rise"), limit("cranking-coldest"))
    step = (
        f"{say.cca(cca)} x (1 + 0.25 x ({exact(counted)} + 18) / 18) = {say.given(amps)}"
        if at <= 0
        else f"{say.cca(cca)} x 1.25 = {say.given(amps)}, the cranking amps at 0 °C"
    )
    case.step(step, cite("cranking-rise"))
    least = "at least " if at > 0 else "about "
    gives = f"{least}{say.given(amps)} at {say.temperature(at)}"
    head = f"Your {say.cca(cca)} battery gives {gives}, if it is full and in order."
    current = Figure("cranking_current", "cranking current", amps, "A")
    return TOPIC.says("information", head, current, share, plot=plot(cca, at))


def exact(celsius: float) -> str:
    """A temperature as the sum has it: 10 °F is -12.2 °C."""
    return say.number(celsius, 1).removesuffix(".0")


def in_general(case: Case, cca: float) -> Answer:
    """A rating but no temperature: both ends of the line."""
    share = share_at(case, FREEZING)
    amps = cold.cranking_current(cca, FREEZING, limit("cranking-rise"))
    case.step(f"{say.cca(cca)} x 1.25 = {say.given(amps)} at 0 °C", cite("cranking-rise"))
    head = (
        f"Cold takes much: at 0 °C a full battery has about {say.number(float(share.value))} % of its warm power; "
        f"yours gives about {say.given(amps)} there."
    )
    return TOPIC.says(
        "information",
        head,
        Figure("cranking_current", "cranking current at 0 °C", amps, "A"),
        share,
        plot=plot(cca, None),
    )


def which_counts(case: Case) -> Answer:
    """ "MCA or CCA, which counts at 2 degrees?": the one that is measured nearest, and the one that we size by."""
    celsius = float(case.get("ambient.temperature", FREEZING))
    nearest = "MCA, measured at 0 °C," if celsius > (FREEZING + RATED) / 2 else "CCA, measured at -18 °C,"
    case.step("MCA is measured at 0 °C and CCA at -18 °C", "ca-over-cca")
    head = (
        f"At {say.temperature(celsius)} {nearest} is the nearer one; thrusters are sized by CCA, whatever the weather."
    )
    return TOPIC.says("information", head)


def or_the_battery(case: Case) -> Answer:
    """ "Is it the cold or is the battery shot?": neither the degrees nor its age tell, a test does."""
    at = case.said("ambient.temperature")
    shares = [] if at is None else [share_at(case, float(at))]
    cold_takes = "the cold takes part of its power"
    if at is not None:
        left = f"about {say.number(float(shares[0].value))} % of its warm power"
        cold_takes = f"at {say.temperature(float(at))} it has {left}"
    case.step("A load test counts from 12.4 V at rest and from 10 °C on", cite("test-charged"))
    head = f"We can't say yet: {cold_takes}, and age alone condemns no battery; charge it, warm it, then load-test it."
    return TOPIC.needs("reading.load_voltage", headline=head, figures=shares)


def without_cca(case: Case, celsius: float, named: bool) -> Answer:
    """The share alone; the amps need the rating."""
    share = share_at(case, celsius)
    told = f"about {say.number(float(share.value))} % of its warm power"
    if named and MATTERS.search(case.text):
        at = say.temperature(celsius)
        head = f"Yes: at {at} a full lead battery has {told}, so a motor on it turns slower than in summer."
        return TOPIC.says("information", head, share, plot=plot(None, celsius))
    if named and not case.says("detail:share"):
        head = f"We can't say the amps yet: at {say.temperature(celsius)} it has {told}; please tell us its CCA."
        return TOPIC.needs("battery.cca", headline=head, figures=(share,))
    head = f"At {say.temperature(celsius)} a full lead battery has {told}, so a motor on it turns slower in the cold."
    return TOPIC.says("information", head, share, asks=(), plot=plot(None, celsius))


def two(case: Case) -> Answer:
    """Two temperatures or two ratings side by side."""
    other = case.others()
    answers = (one(case), one(other))
    case.follow_other(other)
    names = [label(of, "battery.cca" in case.second) for of in (case, other)]
    options = tuple(Option(name, found.verdict, found.figures) for name, found in zip(names, answers, strict=True))
    parts = [f"{shown(found)} {name}" for name, found in zip(names, answers, strict=True)]
    verdict = "information" if all(found.verdict == "information" for found in answers) else "needs-facts"
    asks = answers[0].asks or answers[1].asks
    return TOPIC.says(verdict, f"It gives {parts[0]}, and {parts[1]}.", *answers[0].figures, compare=options, asks=asks)


def label(case: Case, rated: bool) -> str:
    """What tells one side from the other."""
    at = case.said("ambient.temperature")
    told = f"at {say.temperature(float(at))}" if at is not None else "at 0 °C"
    return f"{told} with {say.cca(float(case['battery.cca']))}" if rated and "battery.cca" in case else told


def shown(found: Answer) -> str:
    """The main figure of one side."""
    figure = found.figures[0]
    if figure.name == "cranking_current":
        return say.given(float(figure.value))
    return f"{say.number(float(figure.value))} % of the warm power"


def lithium(case: Case) -> Answer:
    """No cranking rating; its own limits in the cold. After a question on charging: what it takes there."""
    if CHARGING.intersection(case.before) and (found := charging.cold_share(case, "lfp")):
        return charged(case, found)
    half, coldest = reference.value("lithium", "cold"), reference.value("lithium", "coldest")
    case.step("Below 0 °C count on half of the continuous limit, below -20 °C on nothing", half.cite, coldest.cite)
    head = (
        "CCA does not apply to lithium: below 0 °C count on half of its continuous limit, and below -20 °C do not "
        "use it."
    )
    return TOPIC.says("information", head)


def charged(case: Case, share: reference.Cited) -> Answer:
    """What lithium may be charged with at the temperature that was told."""
    at = say.temperature(float(case["ambient.temperature"]))
    case.step(f"At {at} lithium takes at most {say.number(share.value)} x its amp-hours", share.cite)
    if not share.value:
        return TOPIC.says("no", f"No charge at {at}: lithium takes none at or below 0 °C, so warm it first or wait.")
    if "battery.capacity" not in case:
        most = f"{say.number(share.value)} A for each Ah at most"
        return TOPIC.says("information", f"Yes, it matters: at {at} lithium takes {most}, and none at or below 0 °C.")
    amp_hours = float(case["battery.capacity"])
    amps = amp_hours * share.value
    head = (
        f"Yes, it matters: at {at} your {say.amp_hours(amp_hours)} lithium battery takes {say.amps(amps)} at most, so "
        "hold the charge to that or warm it first."
    )
    return TOPIC.says("information", head, Figure("charger_current_high", "charge with at most", amps, "A"))


def plot(cca: float | None, celsius: float | None) -> dict[str, Any]:
    """The amps against the temperature, or the share of warm power where the rating is not known."""
    title, x = "Cranking in the cold", ("temperature", "C")
    if cca is None:
        rows = sorted((row["temperature"].value, row["share"].value) for row in reference.rows("cranking_temperature"))
        return chart.chart("line", title, x, ("share of warm power", "%"), [("share of warm power", rows)])
    coldest, rise = limit("cranking-coldest"), limit("cranking-rise")
    points = [(float(at), cold.cranking_current(cca, at, rise)) for at in range(int(coldest), 1, 6)]
    mark = None
    if celsius is not None and coldest <= celsius <= FREEZING:
        mark = ("yours", celsius, cold.cranking_current(cca, celsius, rise))
    return chart.chart("line", title, x, ("cranking current", "A"), [("cranking current", points)], mark=mark)
