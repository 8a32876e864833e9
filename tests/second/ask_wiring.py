"""Questions about wiring, sizes and conversions."""

from __future__ import annotations

from tests.second.draw import GAUGES, Draw


def cable_size(draw: Draw) -> str:
    way = draw.one("motor", "motor", "engine", "panel", "have")
    volts, length = draw.volts(), draw.length(2, 12)
    if way == "panel":
        amps = draw.amount("load.current", 5, 60, 5, "A")
        draw.facts["load.kind"] = "electronics"
        return draw.one(
            f"What size of cable for {amps} of electronics at {volts}, {length} one way?",
            f"What wire do I need for {volts} navigation lights drawing {amps}, {length} each way?",
        )
    draw.facts["load.kind"] = draw.one("thruster", "thruster", "windlass")
    name, load = draw.facts["load.kind"], draw.load()
    if way == "have":
        draw.facts["cable.gauge"] = draw.one("1/0", "2/0", "3/0", "4/0")
        cable = draw.facts["cable.gauge"] + " AWG"
        return f"Is {cable} cable big enough for a {volts} {load} {name}, {length} one way?"
    if way == "engine":
        draw.facts["cable.in_engine_space"] = True
        return f"What size of cable through the engine room for a {volts} {load} {name}, {length} one way?"
    return draw.one(
        f"What size of cable for a {volts} {load} {name}, {length} one way?",
        f"What gauge of wire do I need for a {load} {volts} {name} {length} from the battery?",
    )


def voltage_drop(draw: Draw) -> str:
    if draw.rng.random() < 0.2:
        draw.facts |= {"load.model": draw.one("Minnow", "Pike"), "bank.voltage": 12, "cable.insulation": 105}
        length, cable = draw.length(2, 12), draw.cable()
        return f"What is the voltage drop of a {draw.facts['load.model']} over {length} of {cable} 105 C cable?"
    volts, length = draw.volts(), draw.length(2, 12)
    cable, amps = draw.cable(), draw.amps(50, 340)
    draw.facts |= {"load.kind": "thruster", "cable.insulation": 105}
    return draw.one(
        f"How much voltage do I lose in {length} of {cable} 105 C cable with a {amps} {volts} thruster, one way?",
        f"What is the voltage drop of a {volts} {amps} thruster over {length} one way of {cable} cable rated 105 C?",
    )


def fuse_size(draw: Draw) -> str:
    way = draw.one("bare", "cable", "cable", "fuse", "fuse", "model", "engine")
    if way == "model":
        draw.facts["load.model"] = draw.one("Minnow", "Pike", "Sturgeon")
        if draw.rng.random() < 0.5:
            return f"What size of fuse does a {draw.facts['load.model']} need?"
        cable = draw.cable()
        draw.facts["cable.insulation"] = 105
        return f"What size of fuse for a {draw.facts['load.model']} on {cable} 105 C cable?"
    amps = draw.amps(50, 400)
    if way == "engine":
        gauge = draw.one("2", "1", "1/0", "2/0", "3/0", "4/0")
        draw.facts |= {"cable.gauge": gauge, "cable.in_engine_space": True, "cable.insulation": 105}
        return f"What size of fuse for a {amps} thruster on {gauge} AWG 105 C cable through the engine room?"
    if way == "bare":
        return draw.one(f"What fuse for a {amps} thruster?", f"What size of breaker do I need for a {amps} thruster?")
    cable = draw.cable()
    draw.facts["cable.insulation"] = 105
    if way == "cable":
        return f"What size of fuse for a {amps} thruster on {cable} 105 C cable?"
    draw.facts["fuse.rating"] = draw.one(100, 150, 200, 250, 300, 350, 400, 450, 500)
    fuse = f"{draw.facts['fuse.rating']} A"
    return f"Is a {fuse} fuse right for a {amps} thruster on {cable} 105 C cable?"


def bank_wiring(draw: Draw) -> str:
    if draw.rng.random() < 0.35:
        return unlike(draw)
    count, word = draw.one((2, "two"), (2, "two"), (4, "four"))
    layout = draw.one("series", "parallel")
    draw.facts |= {"battery.count": count, "bank.layout": layout, "battery.nominal": 12}
    kind, capacity = draw.kind("flooded", "agm", "gel", "lfp"), draw.capacity()
    if draw.rng.random() < 0.4 and "lfp" not in draw.facts.values():
        cca = draw.cca()
        return f"What do I get from {word} 12 V {capacity} {kind} batteries of {cca} each in {layout}?"
    return draw.one(
        f"What do I get from {word} 12 V {capacity} {kind} batteries in {layout}?",
        f"If I wire {word} 12 V {capacity} {kind} batteries in {layout}, what voltage and capacity do I have?",
    )


def unlike(draw: Draw) -> str:
    """May I join two batteries, alike or not?"""
    layout = draw.facts["bank.layout"] = draw.one("series", "parallel")
    way = draw.one("kind", "capacity", "age", "alike")
    draw.facts["unlike"] = way
    if way == "kind":
        first, second = draw.rng.sample(["flooded", "AGM", "gel"], 2)
        return f"Can I connect a 12 V {first} and a 12 V {second} battery in {layout}?"
    if way == "age":
        return f"Can I connect a new 12 V 100 Ah AGM and a {draw.rng.randint(2, 6)} year old one in {layout}?"
    first, second = draw.one(*(((100, 80), (120, 90), (200, 100)) if way == "capacity" else ((100, 100), (90, 90))))
    if way == "alike":
        return f"Can I connect two identical 12 V {first} Ah AGM batteries of the same age in {layout}?"
    return f"Can I connect a 12 V {first} Ah AGM and a 12 V {second} Ah AGM battery in {layout}?"


def weight(draw: Draw) -> str:
    heavy = draw.amount("battery.weight", 15, 60, 1, "kg")
    if draw.rng.random() < 0.5:
        return f"How much weight do I save if I swap a {heavy} lead battery for lithium?"
    draw.facts["battery.count"] = 2
    return f"How much lighter is lithium in place of two {heavy} lead batteries?"


def group_size(draw: Draw) -> str:
    group = draw.one("24", "27", "31", "34", "4D", "8D", "GC2")
    draw.facts["battery.group"] = group
    return draw.one(f"How big is a group {group} battery?", f"What are the dimensions of a group {group}?")


def rating_convert(draw: Draw) -> str:
    way = draw.one("capacity", "reserve", "cca", "ca", "current", "area", "energy")
    draw.facts["wanted"] = way
    if way == "capacity":
        return f"Convert {draw.amount('battery.reserve', 60, 250, 5, 'minutes')} reserve capacity to amp hours"
    if way == "reserve":
        return f"What reserve capacity in minutes is {draw.capacity()}?"
    if way == "cca":
        return f"What is {draw.amount('battery.ca', 500, 1300, 50, 'MCA')} in CCA?"
    if way == "ca":
        return f"Convert {draw.cca()} to MCA"
    if way == "current":
        volts = draw.volts()
        return f"How many amps is {draw.amount('load.power', 100, 6000, 100, 'W')} at {volts}?"
    if way == "area":
        gauge = draw.put("cable.gauge", draw.one("8", *GAUGES), "")
        return f"What is {draw.facts['cable.gauge']} AWG in mm2{gauge}?"
    kind = draw.kind("flooded", "agm", "lfp")
    return f"How many watt hours is a 12 V {draw.capacity()} {kind} battery?"
