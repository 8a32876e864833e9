"""Questions about charging, storage and air."""

from __future__ import annotations

from tests.second.draw import NAMES, Draw


def charger_size(draw: Draw) -> str:
    kind, capacity = draw.kind("flooded", "agm", "gel", "lfp"), draw.capacity(60, 300)
    way = draw.one("ask", "have", "two", "have", "series", "cold")
    if way == "series":
        draw.facts |= {"battery.count": 2, "bank.layout": "series", "bank.voltage": 24}
        return f"What size of charger for two 12 V {capacity} {kind} batteries in series?"
    if way == "cold" and "lfp" in draw.facts.values():
        amps, cold = draw.amount("charger.current", 10, 60, 10, "A"), draw.celsius(-15, -1)
        return f"Is a {amps} charger right for a {capacity} {kind} battery at {cold}?"
    if way == "ask":
        return draw.one(
            f"What size of charger for a {capacity} {kind} battery?",
            f"How many amps of charger does a 12 V {capacity} {kind} battery need?",
        )
    if way == "two":
        draw.facts |= {"battery.count": 2, "bank.layout": "parallel"}
        return f"How many amps of charger do I need for two {capacity} {kind} batteries in parallel?"
    amps = draw.amount("charger.current", 5, 80, 5, "A")
    return draw.one(
        f"Is a {amps} charger right for a {capacity} {kind} battery?",
        f"Is a {amps} charger big enough for my {capacity} {kind} battery?",
    )


def charge_time(draw: Draw) -> str:
    kind, capacity = draw.kind("flooded", "agm", "gel", "lfp"), draw.capacity(60, 300)
    amps = draw.amount("charger.current", 10, 60, 5, "A")
    if draw.rng.random() < 0.4:
        return f"How long does a {amps} charger take to charge a {capacity} {kind} battery?"
    charge = draw.amount("battery.charge", 10, 80, 5, "%")
    return draw.one(
        f"How long to charge a {capacity} {kind} battery from {charge} with a {amps} charger?",
        f"My {capacity} {kind} battery is {charge} charged. How many hours to full on a {amps} charger?",
    )


def charger_setting(draw: Draw) -> str:
    kind = draw.kind("flooded", "agm", "gel", "lfp")
    way = draw.one("which", "which", "mode", "mode", "volts", "self")
    if way == "volts":
        volts = draw.amount("charger.voltage", 14.2, 14.9, 0.1, "V")
        return f"Is {volts} absorption right for a 12 V {kind} battery?"
    if way == "self":
        draw.facts["repairs"] = True
        return f"Can I use a charger with an automatic desulphation mode on a {kind} battery?"
    if way == "which":
        volts = draw.volts()
        return draw.one(
            f"Which charger setting for a {volts} {kind} battery?",
            f"What mode should I set the charger to for a {volts} {kind} bank?",
        )
    mode = draw.one("agm", "gel", "lfp")
    draw.facts["charger.setting"] = mode
    return draw.one(
        f"Is the {NAMES[mode][0]} setting on my charger all right for a {kind} battery?",
        f"Can I charge a {kind} battery on the {NAMES[mode][0]} setting?",
    )


def charger_banks(draw: Draw) -> str:
    count = draw.one(2, 3, 4)
    word = {2: "two", 3: "three", 4: "four"}[count]
    draw.facts["bank.count"] = count
    return draw.one(
        f"How many charger outputs do I need for {word} separate banks?",
        f"I have {word} separate battery banks. How many outputs must the charger have?",
    )


def dc_dc(draw: Draw) -> str:
    source, bank = draw.one((12, 24), (12, 12), (24, 12))
    draw.facts |= {"charger.input_voltage": source, "bank.voltage": bank}
    if draw.rng.random() < 0.4:
        amps, kind = draw.amount("charger.current", 10, 60, 5, "A"), draw.kind("agm", "lfp")
        alternator = draw.amount("alternator.current", 50, 150, 10, "A")
        return f"Is a {source} V to {bank} V {amps} DC-DC charger OK on a {alternator} alternator for a {kind} bank?"
    amps = draw.amount("charger.current", 10, 60, 5, "A")
    return draw.one(
        f"What does a DC-DC charger draw from {source} V when it charges a {bank} V bank at {amps}?",
        f"How many amps does a {source} V to {bank} V {amps} DC-DC charger draw on the input side?",
    )


def solar(draw: Draw) -> str:
    power, capacity, kind = draw.amount("solar.power", 10, 200, 10, "W"), draw.capacity(), draw.kind()
    way = draw.one("plain", "winter", "drain", "hours")
    if way == "plain":
        return f"Will a {power} solar panel keep a {capacity} {kind} battery up?"
    if way == "winter":
        draw.facts["winter"] = True
        return f"Will a {power} solar panel keep a {capacity} {kind} battery charged over the winter?"
    drain = draw.amount("drain.current", 20, 900, 20, "mA", 0.001)
    if draw.rng.random() < 0.2:
        draw.facts["bank.voltage"] = 24
        return f"Will a {power} panel cover a {drain} standing drain on a 24 V {capacity} {kind} bank?"
    if way == "drain":
        return f"Will a {power} panel cover a {drain} standing drain on a {capacity} {kind} battery?"
    sun = draw.amount("solar.sun_hours", 2, 6, 1, "hours")
    return f"Will a {power} panel with {sun} of sun a day cover a {drain} drain on a {capacity} {kind} battery?"


def storage(draw: Draw) -> str:
    kind, cold = draw.kind("flooded", "agm", "gel", "lfp"), draw.celsius(-5, 35)
    way = draw.one("plain", "cold", "time", "drain")
    if way == "drain":
        capacity, drain = draw.capacity(), draw.amount("drain.current", 5, 60, 5, "mA", 0.001)
        return f"How long can a {capacity} {kind} battery with a {drain} drain be stored at {cold}?"
    if way == "plain":
        del draw.facts["ambient.temperature"]
        return f"How often must I charge a {kind} battery in storage?"
    if way == "cold":
        return draw.one(
            f"How long can a {kind} battery be stored at {cold} before it needs charging?",
            f"How often should I check a {kind} battery that is stored at {cold}?",
        )
    time = draw.one(("weeks", 7), ("months", 30.4))
    time = draw.amount("storage.time", 1, 8, 1, *time)
    draw.facts["battery.charge"] = 100
    return f"Can I leave a fully charged {kind} battery in storage for {time} at {cold}?"


def ventilation(draw: Draw) -> str:
    kind, capacity, volts = draw.kind(), draw.capacity(), draw.volts()
    if draw.rng.random() < 0.3:
        draw.facts["float"] = True
        return f"How much ventilation does a {volts} {capacity} {kind} bank need on float charge only?"
    return draw.one(
        f"How much ventilation does a {volts} {capacity} {kind} battery bank need?",
        f"How big must the vents of a battery box for a {volts} {capacity} {kind} bank be?",
    )
