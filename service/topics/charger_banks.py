"""One charger for several batteries: how many outputs, and whether series or parallel changes that."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.text.patterns import regex
from service import likely, say
from service.case import WEIGHED, Case, Value
from service.judgements import charging, joining, series_charger, too_many_volts
from service.judgements.series_charger import outputs
from service.judgements.unlike import LIMITS
from service.reply import Answer
from service.sentences.outputs import (
    NAMES,
    ROLES,
    advice,
    banks,
    counted,
    enough,
    kinds_of_all,
    lithium_apart,
    one_setting,
    roles,
    told_apart,
    too_few,
)
from service.told import (
    charged_apart,
    must_have,
    one_by_one,
    outputs_on_offer,
    two_chargers,
)
from service.topic import Lever, Topic

ONE_OUTPUT = "On one output the charger cannot see which battery is full, so one is charged too much or too little"
ASKS_COUNT = ("request:how_many", "detail:one_or_more")


def more_outputs(case: Case) -> Iterator[Value]:
    """Enough outputs for the banks."""
    case = case.fresh()
    need = banks(case)
    if need and case.get("charger.outputs") and not in_series(case) and not of_more_volts(case):
        yield float(need)


def isolated(case: Case) -> Iterator[Value]:
    """Outputs that share no negative."""
    case = case.fresh()
    if in_series(case) or of_more_volts(case):
        yield True


TOPIC = Topic(
    "charger-banks",
    "One charger for several batteries",
    amps="charger.current",
    cautions=("isolated-outputs", "explosive-gas", "mains"),
    levers=(
        Lever("charger.outputs", more_outputs, "a charger with {value} outputs, or one charger for each bank"),
        Lever("charger.isolated", isolated, "outputs isolated from each other, or one charger of the full voltage"),
        charging.WARMER,
    ),
    likely={
        "charger.isolated": (("isolated outputs", True), ("one common negative", False)),
        "bank.count": (("two: engine and thruster", 2.0), ("three: engine, house and thruster", 3.0)),
        "charger.kind": likely.FROM_THE_ENGINE,
    },
    unsure={"bank.count": "We can't say yet: one output for each bank that works apart, so their number decides."},
)


APART = regex(  # "... that never come apart. In the bow a third" tells of no two places
    r"\b(?:(?<!come )(?<!comes )(?<!coming )(?<!taken )apart"
    r"|separate(?:ly)?|two (?:different )?places|different places|each on its own)\b[^?!;]{0,60}"
    r"\b(?:places?|bow|stern|ends?|engine)\b"
    r"|\bone (?:for|in|at) the (?:bow|front)\b[^.?!;]{0,12}\b(?:one|other) (?:for|in|at) the (?:stern|back|engine)",
    re.IGNORECASE,
)
TWELVE = 12.0  # V
ENDS = ("engine", "bow")
ONE_OR_TWO = regex(r"\bone (?:single )?(?:charger|box|unit)? ?(?:or|, or) (?:two|2|a second|another)\b", re.IGNORECASE)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Series first, because there a wrong connection shorts a battery; then one output for each bank."""
    stopped = charging.barred(TOPIC, case, charging.known_kind(case)) or too_many_volts.judged(TOPIC, case)
    if first := stopped or of_two_chargers(case):
        return first
    outputs_on_offer.left_out(case)
    case = kinds_of_all(case)
    beside_12 = roles(case) > 1 and only_counts(case) and outputs_on_offer.one_of_12(case.text)
    several = roles(case) == len(ROLES) or told_apart(case) or beside_12 or of_two_systems(case)
    if of_more_volts(case) and several and (banks(case.fresh()) or 0) > 1:
        return beside_a_series(case, banks(case) or 0)
    if in_series(case) and one_by_one.asked(case.text) and float(case.get("charger.outputs", 1)) == 1:
        return series_charger.in_turn(TOPIC, case)
    if in_series(case) and not (roles(case) > 1 and only_counts(case)):
        return series_charger.judged(TOPIC, case, only_counts(case))
    if general := before_counting(case):
        return general
    need = banks(case)
    if need is None:
        return TOPIC.needs("bank.count")
    case.because(ONE_OUTPUT, "one-output-a-bank")
    have = case.get("charger.outputs")
    figure = outputs(need)
    if have is None:
        return TOPIC.says("information", advice(case, need), figure)
    apart = lithium_apart(case)
    if have < need:
        return TOPIC.says("no", too_few(need, int(have), apart, must_have.second_charger(case.text)), figure)
    clash = one_setting(case)
    if clash and need > 1:
        return TOPIC.says("marginal", clash, figure)
    return TOPIC.says("yes", enough(case, need, int(have)), figure)


def of_two_chargers(case: Case) -> Answer | None:
    """Which of two chargers for a bank of several batteries; None where that is not asked."""
    if not two_chargers.chosen_of(case.text):
        return None
    told = (facts.get("bank.voltage") for facts in (case.stated, case.second))
    most = max((float(item.value) for item in told if item is not None), default=0.0)
    whole = most > TWELVE or in_series(case)
    return series_charger.of_the_whole(TOPIC, case, max(most, float(case["bank.voltage"]))) if whole else None


def before_counting(case: Case) -> Answer | None:
    """What holds whatever the number of banks is: two batteries used apart, whether a second charger is a must."""
    joined = case.get("bank.layout") == "parallel" and "charger.outputs" not in case.stated
    if unlike := of_unlike_kinds(case):
        return unlike
    if APART.search(case.text) and joined:  # where the joint is asked of first
        case.because(ONE_OUTPUT, "one-output-a-bank")
        head = "Yes, one at each place and never joined: each with its own fuse, its own output and its own setting."
        return TOPIC.says("information", head, outputs(2))
    if charged_apart.asked(case.text) and "charger.outputs" not in case:
        case.because(ONE_OUTPUT, "one-output-a-bank")
        many = banks(case)
        head = "Yes, on an output or a charger of its own, unless it stays joined in parallel with alike batteries."
        return TOPIC.says("information", head, *((outputs(many),) if many else ()))
    if must_have.second_charger(case.text) and "bank.count" not in case.stated and (may := one_may_do(case)):
        return TOPIC.needs("bank.count", headline=may)
    return None


def of_unlike_kinds(case: Case) -> Answer | None:
    """ "May a gel and an AGM in parallel share one output?": they are parted first; None for alike ones."""
    kinds = joining.pair(case, "battery.chemistry")
    apart = told_apart(case) or APART.search(case.text) or case.says(*WEIGHED)
    if case.said("bank.layout") != "parallel" or len({*kinds} - {"lead"}) < 2 or apart:
        return None
    case.because("Unlike kinds want unlike charging volts and wear each other out", LIMITS["kind"].cite)
    names = say.listed([say.CHEMISTRY[str(kind)] for kind in kinds])
    told = f"{names} batteries must not stay joined; apart they want two outputs, each with its own setting"
    if "charger.outputs" in case.stated:
        return TOPIC.says("no", f"No: {told}.", outputs(2))
    return TOPIC.says("information", f"{say.capital(told)}.", outputs(2))


def one_may_do(case: Case) -> str:
    """ "Must I have a second charger?" where one of several outputs is told of: what it takes; "" where none is."""
    have = int(case.get("charger.outputs", 1))
    if have < 2:
        return ""
    far = ""
    if "cable.length" in case.stated:
        far = f"; over {say.quantity(float(case['cable.length']), 'm')} it wants a thick cable"
    free = f"Yours can do it, if one of its {counted(have, 'output')} is free for that battery"
    return f"{free}, as each bank wants its own{far}."


def in_series(case: Case) -> bool:
    """Whether the batteries to be charged are joined in series, as far as is said."""
    if told_apart(case):
        return False
    if case.says("detail:link_on") and case.get("bank.layout") is None and case.get("battery.count", 2) > 1:
        return True  # "with the link left on": the strap that makes 24 V of two
    if joining.as_the_load_asks(case) == "series":
        return True
    return case.get("bank.layout") in ("series", "series-parallel") or (
        "bank.voltage" in case.stated and float(case["bank.in_series"]) > 1
    )


def only_counts(case: Case) -> bool:
    """Whether it is only asked how many chargers or outputs, with none put up."""
    counted_so = case.says(*ASKS_COUNT) or ONE_OR_TWO.search(case.text) is not None
    return counted_so and "charger.outputs" not in case and "charger.isolated" not in case


def of_more_volts(case: Case) -> bool:
    """Whether one of the banks is a series of 24 V or more beside those of 12 V, which no 12 V output charges."""
    told = "bank.voltage" in case.stated and float(case["bank.in_series"]) > 1
    return (told or one_in_series(case)) and not (told and series_charger.full_voltage(case))


def of_two_systems(case: Case) -> bool:
    """Whether a battery of 12 V and a bank of more have a job each: "12 V start battery, 24 V bow bank"."""
    alone = case.said("battery.nominal") == TWELVE and "battery.count" not in case.stated
    return alone and roles(case) > 1 and "bank.layout" not in case.stated


def one_in_series(case: Case) -> bool:
    """Whether one of several banks is told to be a series: "house two in parallel, thruster two in series"."""
    told = (facts.get("bank.layout") for facts in (case.stated, case.second))
    return any(item is not None and item.value == "series" for item in told)


def beside_a_series(case: Case, need: int) -> Answer:
    """Banks of 12 V and one in series: an output for each, for the series its own charger or isolated outputs."""
    have, apart = case.get("charger.outputs"), case.get("charger.isolated")
    figure = replace(outputs(need), label="banks to charge")
    told = "bank.voltage" in case.stated and float(case["bank.in_series"]) > 1
    number = int(case["bank.in_series"]) if told else 2
    volts = say.quantity(float(case["bank.voltage"]) if told else 24.0, "V")
    case.because(
        "A 12 V output cannot charge batteries in series, and a shared negative would short one of them",
        "series-charging",
    )
    of_12 = (
        " and ".join(name for role, name in NAMES.items() if case.says(role))
        or f"the 12 V bank{'s' if need > 2 else ''}"
    )
    own = f"the {volts} bank wants a {volts} charger of its own, or an isolated output for each battery"
    if apart is False:
        head = (
            f"No: outputs that share one negative short a battery of the {volts} bank, so use them for {of_12} and fit "
            f"a {volts} charger for it."
        )
        return TOPIC.says("no", head, figure)
    if have is None:
        twelve = f"{counted(need - 1, 'output')}, for {of_12}, and a {volts} charger for the {volts} bank"
        isolated_ones = f"{counted(need - 1 + number, 'isolated output')}, one for each battery"
        if need == len(ENDS) and ONE_OR_TWO.search(case.text):
            own_12 = of_12 if of_12.startswith("the ") else f"the {of_12} battery"
            head = f"Two: one for {own_12} and a {volts} one for the {volts} bank; or one with {isolated_ones}."
            return TOPIC.says("information", head, figure)
        return TOPIC.says("information", f"{twelve}; or {isolated_ones}.", figure)
    if have < need - 1:
        return TOPIC.says("no", f"No: {counted(need - 1, 'bank')} of 12 V need an output each, and {own}.", figure)
    if have < need - 1 + number:
        return TOPIC.says("no", f"Use {counted(need - 1, 'output')} for {of_12}; {own}.", figure)
    if apart is None:
        return TOPIC.needs("charger.isolated", headline=f"We can't say yet: {own}.", figures=(figure,))
    return TOPIC.says("yes", f"Yes: {counted(int(have), 'isolated output')} charge each battery by itself.", figure)
