"""A run that is asked for, held against what the battery gives."""

from __future__ import annotations

import math

from service import reference, say
from service.case import Case
from service.judgements import ice_first, session, supply


def judged(case: Case, minutes: float, usable: float, running: float, to_empty: float) -> tuple[str, str]:
    """The verdict and the headline."""
    limit = "half empty" if case.get("battery.usable", 50.0) == 50 else "down to 20 %"
    amount, asked = say.lasting(minutes), wanted(case)
    if usable <= 0:
        before = ice_first.first(case, float(case.get("battery.charge", 100.0)))
        least = say.charge(100 - float(reference.row("usable", family=family_of(case))["share"].value))
        start = "Nothing is left to use" if asked is None else "No"
        return "no", f"{start}: {supply.bank_name(case)} should not go below {least}, so {before}."
    if trips := session.trips_in_words(case, minutes):
        return "information", f"{say.capital(supply.does(case, 'last'))} about {amount} before charging: {trips}."
    if asked is not None:
        return against(case, minutes, asked)
    if session.share_on(case) < 1:
        share = say.quantity(session.share_on(case) * 100, "%", 0)
        told = f"about {amount} at {say.amps(running)} for {share} of the time, until the battery is {limit}."
    elif case.said("load.burst") is not None:
        count = say.so_many(math.floor(minutes * 60 / float(case["load.burst"]) + 1e-9))
        each = say.duration(float(case["load.burst"]) / 60)
        told = f"the battery would last for about {count} bursts of {each}, {amount} in all, until it is {limit}."
    else:
        empty = f", {say.lasting(to_empty)} until it is empty" if case.says("detail:asks_bad") else ""
        told = f"the battery would last about {amount} at {say.amps(running)} until it is {limit}{empty}."
    return "information", say.capital(house_first(case) + told)


def family_of(case: Case) -> str:
    """The family of the battery; lead where nothing is told."""
    return "lithium" if case.get("battery.family") == "lithium" else "lead"


def house_first(case: Case) -> str:
    """The run limit of the house's model, which comes before the battery's."""
    seconds = case.get("load.run_limit")
    if seconds is None:
        return ""
    may = f"{supply.load_name(case)} may run {say.duration(float(seconds) / 60)}"
    case.step(say.capital(f"{may} in all within one hour"), "house")
    one = case.said("load.burst")
    so_many = f", {int(float(seconds) // float(one))} of those bursts" if one else ""
    return f"{may} in one hour{so_many}; "


def against(case: Case, minutes: float, asked: float) -> tuple[str, str]:
    """The time held against the time asked for: yes while it is within the usable part, else no."""
    limit = case.get("load.run_limit")
    gives, amount = supply.does(case, "last"), say.lasting(minutes)
    if limit is not None and asked * 60 > float(limit) and not case.says("detail:over_the_day"):
        may = say.duration(float(limit) / 60)
        case.step(f"The model's limit is {may} in all within one hour", "house")
        return "no", f"No: {supply.load_name(case)} may run {may} in one hour, and {needed(case, asked)}."
    if asked <= minutes + 1e-9:
        hourly = ""
        if limit is not None and asked * 60 > float(limit):
            hourly = f"; {supply.load_name(case)} may run {say.duration(float(limit) / 60)} in any one hour"
        told = f"{gives} about {amount} before charging, and {needed(case, asked)}{hourly}"
        if supply.shares_the_engines(case):
            case.step("The engine's start battery is kept for the engine", "start-battery")
            return "marginal", f"Only just: {told}, but it must start the engine after that."
        return "yes", f"Yes: {told}."
    about = f"just under {amount}" if amount == say.duration(asked) else f"about {amount}"
    return "no", f"No: {gives} {about} before charging, and {needed(case, asked)}."


def needed(case: Case, minutes: float) -> str:
    """The time that is asked for, in words; of so many bursts how many they are, as the customer may count them."""
    count, one = case.said("load.bursts"), case.said("load.burst")
    if case.said("load.time") is None and count and one and float(count) > 1:
        return f"your {say.number(count)} bursts of {say.duration(float(one) / 60)} take {say.duration(minutes)}"
    return f"you need {say.duration(minutes)}"


def wanted(case: Case) -> float | None:
    """Minutes asked for, as a time or as so many bursts."""
    if (seconds := case.said("load.time")) is not None:
        return float(seconds) / 60
    count, one = case.said("load.bursts"), case.said("load.burst")
    return float(count) * float(one) / 60 if count and one else None
