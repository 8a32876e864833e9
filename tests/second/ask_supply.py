"""Questions about thruster supply."""

from __future__ import annotations

from tests.second.draw import Draw


def run_check(draw: Draw) -> str:
    ways = (lead_run, lithium_run, cable_run, bank_run, charged_run, model_run, unrated_run)
    return draw.one(*ways, lead_run, lithium_run, cold_run, peak_run, lithium_bank, unlike_volts)(draw)


def lead_run(draw: Draw) -> str:
    kind, cca, load = draw.kind(), draw.cca(), draw.load()
    return draw.one(
        f"Will a 12 V {cca} {kind} battery run a 12 V {load} thruster?",
        f"Is a 12 V {kind} battery of {cca} enough for a {load} bow thruster?",
        f"Can I run a {load} thruster from one 12 V {cca} {kind} battery?",
    )


def lithium_run(draw: Draw) -> str:
    kind, capacity, amps = draw.kind("lfp"), draw.capacity(100, 400), draw.amps()
    limits = draw.one("none", "continuous", "both")
    if limits == "none":
        return draw.one(
            f"Will a {capacity} {kind} battery run a {amps} thruster?",
            f"Can a {amps} bow thruster run off a {capacity} {kind} battery?",
        )
    most = draw.amount("battery.max_current", 100, 500, 50, "A")
    if limits == "continuous":
        return f"Will a {capacity} {kind} battery with a {most} continuous discharge limit run a {amps} thruster?"
    peak = draw.amount("battery.peak_current", draw.facts["battery.max_current"], 900, 50, "A")
    return f"Will a {capacity} {kind} battery rated {most} continuous and {peak} peak run a {amps} thruster?"


def cable_run(draw: Draw) -> str:
    cca, amps = draw.cca(600), draw.amps(100, 340)
    cable, length = draw.cable(("2", "1", "1/0", "2/0", "3/0", "4/0"), (35, 50, 70, 95, 120)), draw.length(2, 6)
    draw.facts["cable.insulation"] = 105
    return draw.one(
        f"Will one 12 V {cca} battery run a {amps} thruster over {length} of {cable} 105 C cable, one way?",
        f"Is a 12 V battery of {cca} enough for a {amps} thruster with {cable} cable rated 105 C, {length} each way?",
    )


def bank_run(draw: Draw) -> str:
    cca, amps, kind = draw.cca(), draw.amps(), draw.kind()
    draw.facts["battery.count"] = 2
    if draw.rng.random() < 0.5:
        draw.facts["bank.layout"] = "parallel"
        return f"Will two 12 V {cca} {kind} batteries in parallel run a 12 V {amps} thruster?"
    draw.facts |= {"bank.layout": "series", "bank.voltage": 24}
    return f"Will two 12 V {cca} {kind} batteries in series run a 24 V {amps} thruster?"


def charged_run(draw: Draw) -> str:
    kind, cca, amps = draw.kind(), draw.cca(600), draw.amps(100, 300)
    if draw.rng.random() < 0.5:
        charge = draw.amount("battery.charge", 30, 100, 5, "%")
        return f"Will a 12 V {kind} battery of {cca} that is {charge} charged run a {amps} thruster?"
    rest = draw.amount("reading.voltage", 12.0, 12.7, 0.05, "V")
    return f"My 12 V {kind} battery of {cca} rests at {rest}. Will it run a {amps} thruster?"


def model_run(draw: Draw) -> str:
    model, cca = draw.one("Minnow", "Pike", "Sturgeon"), draw.cca(300, 900)
    draw.facts["load.model"] = model
    if model == "Sturgeon":
        draw.facts |= {"battery.count": 2, "bank.layout": "series", "bank.voltage": 24}
        return f"Will two 12 V {cca} batteries in series run a Sturgeon?"
    return draw.one(f"Will a 12 V {cca} battery run a {model}?", f"Is {cca} enough to run the {model} at 12 V?")


def cold_run(draw: Draw) -> str:
    """Below freezing: a lead battery holds less, a lithium battery may give half."""
    amps, cold = draw.amps(100, 300), draw.celsius(-17, -1)
    if draw.rng.random() < 0.5:
        return f"Will a 12 V {draw.kind()} battery of {draw.cca(500)} run a {amps} thruster at {cold}?"
    kind, capacity, most = draw.kind("lfp"), draw.capacity(), draw.amount("battery.max_current", 100, 500, 50, "A")
    draw.facts["battery.peak_current"] = 600
    return f"Will a {capacity} {kind} battery, {most} continuous and 600 A peak, run a {amps} thruster at {cold}?"


def peak_run(draw: Draw) -> str:
    rating, amps = draw.amount("battery.ca", 500, 1400, 50, draw.one("MCA", "CA")), draw.amps(100, 350)
    peak = draw.amount("load.peak", draw.facts["load.current"] + 50, draw.facts["load.current"] + 200, 10, "A")
    return f"Will a 12 V lead battery of {rating} run a thruster that draws {amps} running and {peak} inrush?"


def lithium_bank(draw: Draw) -> str:
    kind, capacity, amps = draw.kind("lfp"), draw.capacity(), draw.amps(100, 400)
    most = draw.amount("battery.max_current", 100, 300, 50, "A")
    peak = draw.amount("battery.peak_current", draw.facts["battery.max_current"], 500, 50, "A")
    draw.facts |= {"battery.count": 2, "bank.layout": draw.one("parallel", "series")}
    volts = 24 if draw.facts["bank.layout"] == "series" else 12
    draw.facts["bank.voltage"] = volts
    batteries = f"two 12 V {capacity} {kind} batteries in {draw.facts['bank.layout']}"
    if draw.rng.random() < 0.4:
        del draw.facts["battery.max_current"], draw.facts["battery.peak_current"]
        return f"Will {batteries} run a {volts} V {amps} thruster?"
    return f"Will {batteries}, each {most} continuous and {peak} peak, run a {volts} V {amps} thruster?"


def unlike_volts(draw: Draw) -> str:
    """A battery of other volts than the thruster's."""
    cca = draw.cca()
    draw.facts["unlike volts"] = True
    if draw.rng.random() < 0.5:
        draw.facts["load.model"] = "Sturgeon"
        return f"Will one 12 V {cca} battery run a Sturgeon?"
    return f"Will a single 12 V {cca} battery run a 24 V {draw.amps()} thruster?"


def unrated_run(draw: Draw) -> str:
    capacity, amps, kind = draw.capacity(), draw.amps(), draw.kind()
    if draw.rng.random() < 0.5:
        draw.facts["battery.duty"] = "deep-cycle"
        return f"Will a {capacity} {kind} deep-cycle battery run a {amps} thruster?"
    return f"Will a {capacity} {kind} battery run a {amps} thruster?"


def bank_size(draw: Draw) -> str:
    kind = draw.kind("flooded", "agm", "gel", "lfp")
    if draw.rng.random() < 0.4:
        amps, time = draw.amount("load.current", 2, 60, 1, "A"), draw.amount("load.time", 1, 24, 1, "hours", 3600)
        return draw.one(
            f"What size of {kind} battery do I need for a {amps} load for {time}, 12 V?",
            f"How many amp hours of {kind} do I need to run {amps} for {time}?",
        )
    draw.facts["load.kind"] = "thruster"
    if draw.rng.random() < 0.2:
        draw.facts["load.model"] = draw.one("Minnow", "Pike")
        return f"What size of {kind} battery does a {draw.facts['load.model']} need?"
    amps = draw.amps()
    if draw.rng.random() < 0.5:
        return draw.one(
            f"How big a 12 V {kind} battery do I need for a {amps} thruster?",
            f"What size of 12 V {kind} battery does a {amps} bow thruster need?",
        )
    time = draw.amount("load.time", 2, 12, 1, "minutes", 60)
    return f"What size of 12 V {kind} battery do I need to run a {amps} thruster for {time} in all?"


def run_time(draw: Draw) -> str:
    kind, capacity = draw.kind("flooded", "agm", "gel", "lfp"), draw.capacity(100, 300)
    high = draw.facts["battery.capacity"] if "lfp" in draw.facts.values() else 400
    way = draw.one("thruster", "load", "cold", "bursts", "night", "charged", "two", "watts", "count", "limit")
    if way == "limit" and "lfp" in draw.facts.values():
        most, amps = draw.amount("battery.max_current", 100, 200, 50, "A"), draw.amps(150, 400)
        return f"How long will a {capacity} {kind} battery with a {most} continuous limit run a {amps} thruster?"
    if way == "watts":
        draw.facts["bank.voltage"] = 12
        power = draw.amount("load.power", 30, 600, 10, "W")
        return f"How long will a 12 V {capacity} {kind} battery run a {power} load?"
    if way in ("load", "night", "cold", "charged"):
        amps = draw.amount("load.current", 2, 40, 1, "A")
    else:
        amps = draw.amount("load.current", 50, high // 10 * 10, 10, "A")
    if way == "two":
        draw.facts |= {"battery.count": 2, "bank.layout": "parallel"}
        return f"How long will two {capacity} {kind} batteries in parallel run a {amps} thruster?"
    if way in ("bursts", "count"):
        burst = draw.amount("load.burst", 3, 20, 1, draw.one("second", "sec"))
        if way == "count":
            bursts = draw.put("load.bursts", draw.rng.randint(5, 60), "")
            bursts = draw.facts["load.bursts"]
            return f"Can a {capacity} {kind} battery give {bursts} bursts of {burst} each at {amps}?"
        return f"How many {burst} bursts of a {amps} thruster do I get from a {capacity} {kind} battery?"
    if way == "night":
        time = draw.amount("load.time", 3, 20, 1, "hours", 3600)
        return f"Will a {capacity} {kind} battery last {time} at {amps}?"
    if way == "cold":
        cold = draw.celsius(-4, 8)
        return f"How long will a {capacity} {kind} battery run a {amps} load at {cold}?"
    if way == "charged":
        charge = draw.amount("battery.charge", 60, 95, 5, "%")
        return f"How long will a {capacity} {kind} battery that is {charge} charged run a {amps} load?"
    what = "load" if way == "load" else "thruster"
    return draw.one(
        f"How long will a {capacity} {kind} battery run a {amps} {what}?",
        f"How long does a {capacity} {kind} battery last at {amps}?",
    )
