"""How many outputs a charger has and needs, and what one setting for all does."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import charge_volts, charging
from service.kinds import CHARGED, LITHIUM
from service.told import (
    charger_weighed,
    must_have,
)

OF_A_JOB = r"(?:start(?:er|ing)?|engine|house|domestic|thruster|bow) (?:battery|bank|one)"

ENGINE_AND_BOW = regex(
    r"\bengine (?:battery )?(?:and|\+|plus) (?:the )?(?:bow|stern|thruster)\b"
    r"|\b(?:bow|stern|thruster) (?:battery )?(?:and|\+|plus) (?:the )?engine\b",
    re.IGNORECASE,
)
AS_WELL = regex(  # one beside that which was told of
    rf"\b{OF_A_JOB}\b[^.?!;]{{0,40}}\b(?:too|as well|also)\b|\balso\b[^.?!;]{{0,24}}\b{OF_A_JOB}\b",
    re.IGNORECASE,
)

ONE_OF_LITHIUM = regex(
    r"\b(?:only |just )?one (?:of (?:them|those|these|the (?:two|three|four|banks|batteries)) )?(?:bank |battery )?"
    r"is (?:an? )?(?:lithium|lifepo4|lfp)\b",
    re.IGNORECASE,
)
ROLES = ("detail:start_bank", "detail:house_bank", "detail:thruster_bank")
NAMES = {"detail:start_bank": "engine", "detail:house_bank": "house"}


def advice(case: Case, need: int) -> str:
    """The headline where no charger is put up."""
    if need == 1:
        return "One output is enough for alike batteries that stay joined in parallel; one for each is better still."
    unlike = one_setting(case)
    more = ", each with its own setting, because their kinds differ" if unlike else ""
    more = more or (", that of the lithium one on a setting for lithium" if one_is_lithium(case.text) else "")
    return f"A charger with {counted(need, 'output')}, one for each bank{more}; or one charger for each."


def one_is_lithium(text: str) -> bool:
    """Whether one of several batteries or banks is told to be lithium, and the others are not.

    >>> one_is_lithium("one of them is lithium"), one_is_lithium("all of them are lithium")
    (True, False)
    """
    return ONE_OF_LITHIUM.search(text) is not None


def kinds_of_all(case: Case) -> Case:
    """The same case, in place, without the kind of one bank of several as that of all: the others are none."""
    if one_is_lithium(case.text) and float(case.said("bank.count") or 2) > 1 and "battery.chemistry" not in case.second:
        case.stated = {fact: known for fact, known in case.stated.items() if fact != "battery.chemistry"}
    return case


def too_few(need: int, have: int, lithium: bool = False, another: bool = False) -> str:
    """The headline for a charger with too few outputs; lithium beside lead does not even share one by turns.

    `another`: it is asked if another charger is needed, of which yes and no are turned round.
    """
    start = "Yes, or one of more outputs" if another else "No"
    head = (
        f"{start}: {counted(need, 'bank')} that work apart need {counted(need, 'charger output')}, and yours has {have}"
    )
    return f"{head}; lithium wants one of its own, on the lithium setting." if lithium else f"{head}."


def lithium_apart(case: Case) -> bool:
    """Whether one of two banks is lithium and the other is not, or is of a kind that nobody told."""
    other = case.second.get("battery.chemistry")
    kinds = (charging.known_kind(case), other.value if other else None)
    if sum(kind in LITHIUM for kind in kinds) != 1 or other is None:
        return False
    case.used.setdefault(("battery.chemistry", 2), other)
    return True


def enough(case: Case, need: int, have: int) -> str:
    """The headline for a charger with enough outputs."""
    start = "No, not another" if must_have.second_charger(case.text) else "Yes"
    if need == 1:
        return f"{start}: one output will do for alike batteries that stay joined in parallel."
    if charger_weighed.only_spoken_of(case.text):
        told = f"one charger with {counted(have, 'output')} charges {counted(need, 'bank')}, each by itself"
        return f"{start}: {told}."
    spare = f", which leaves {have - need} spare" if have > need else ""
    return f"{start}: your charger has {counted(have, 'output')} for {counted(need, 'bank')}{spare}."


def roles(case: Case) -> int:
    """How many jobs of batteries the message names: engine, house, thruster."""
    named = {role for role in ROLES if case.says(role)}
    named |= {ROLES[-1]} if case.says("detail:own_battery") else set()  # "a separate thruster battery"
    return len(named | {ROLES[0], ROLES[-1]}) if ENGINE_AND_BOW.search(case.text) else len(named)


def banks(case: Case) -> int | None:
    """How many banks are to be charged: as said, by their jobs, by the batteries that are not joined."""
    if "bank.count" in case:
        return int(case["bank.count"])
    named, count, layout = roles(case), int(case.get("battery.count") or 0), case.get("bank.layout")
    if named > 1 and (layout or named >= count):
        return int(case.assume("bank.count", float(named), "one bank for each job that you name"))
    if layout == "parallel":
        return 1
    if named == 1 and AS_WELL.search(case.text):
        return int(case.assume("bank.count", 2.0, "one battery, and one as well"))
    if count > 1:
        return int(case.assume("bank.count", float(count), "batteries that are not said to be joined"))
    return 2 if "battery.chemistry" in case.second or "battery.capacity" in case.second else None


def told_apart(case: Case) -> bool:
    """Whether several banks are counted: "3 banks"."""
    return float(case.get("bank.count", 1)) > 1


def counted(number: int, what: str) -> str:
    """ "1 output", "3 outputs"."""
    return f"{number}{say.NB}{what}{'' if number == 1 else 's'}"


def one_setting(case: Case) -> str | None:
    """What one programme for two kinds of battery means; None where the kinds are alike or not told."""
    other = case.second.get("battery.chemistry")
    first = charging.known_kind(case)
    if other is None or other.value == first or (first is None and not lithium_apart(case)):
        return None
    if lithium_apart(case):
        case.step("Lithium and lead want unlike stages: one programme for both harms one of them", "one-setting")
        have, need = int(case["charger.outputs"]) if "charger.outputs" in case else 0, banks(case)
        told = (
            f"{have} {'output is' if have == 1 else 'outputs are'} enough for {need}" if have else "lithium beside lead"
        )
        return f"Only just: {told}, but the lithium one wants its own, on the lithium setting, never one for both."
    kinds = (str(first), str(other.value))
    names = say.listed([say.CHEMISTRY[item] for item in kinds])
    known = all(item in CHARGED for item in kinds)
    lower = min(kinds, key=lambda item: charge_volts.stage(item, "absorption").high) if known else None
    case.step("One programme suits two kinds only in part; the lower of the two voltages harms neither", "one-setting")
    use = f"; with one for all, take the {say.CHEMISTRY[lower]} one" if lower else ""
    have, need = int(case.get("charger.outputs", 0)), banks(case)
    told = (
        f"{have} {'output is' if have == 1 else 'outputs are'} enough for {need}" if have else "one charger can do it"
    )
    return f"Only just: {told}, but {names} want different volts, so each output needs its own setting{use}."
