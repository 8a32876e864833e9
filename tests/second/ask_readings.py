"""Questions about readings and age."""

from __future__ import annotations

from tests.second.draw import Draw


def rest_voltage(draw: Draw) -> str:
    if draw.rng.random() < 0.25:
        return rest_unnamed(draw)
    kind = draw.kind("flooded", "agm", "gel", "lfp")
    low, high = (12.2, 13.7) if draw.facts["battery.chemistry"] == "lfp" else (11.6, 13.2)
    if draw.rng.random() < 0.35:
        draw.facts["bank.voltage"] = 24
        reading = draw.amount("reading.voltage", 2 * low, 2 * high, 0.1, "V")
        return draw.one(
            f"My 24 V {kind} bank reads {reading} at rest, is that good?",
            f"How full is a 24 V {kind} bank resting at {reading}?",
        )
    reading = draw.amount("reading.voltage", low, high, 0.05, draw.one("V", "volts"))
    return draw.one(
        f"Is {reading} good for a {kind} battery at rest?",
        f"How full is my {kind} battery at {reading} after resting overnight?",
        f"My 12 V {kind} battery reads {reading} rested. Is it OK?",
    )


def rest_unnamed(draw: Draw) -> str:
    """Kind not said, or system not said, or far too low."""
    way = draw.one("unnamed", "high", "flat", "six")
    if way == "unnamed":
        reading = draw.amount("reading.voltage", 11.7, 12.9, 0.05, "V")
        return f"My battery reads {reading} at rest. Is that good?"
    if way == "high":
        volts = draw.one(24, 36, 48)
        draw.facts["bank.voltage"] = volts
        reading = draw.amount("reading.voltage", volts * 0.985, volts * 1.06, 0.1, "V")
        return f"My {volts} V AGM bank reads {draw.put('battery.chemistry', 'agm', reading)} at rest. Is it OK?"
    if way == "six":
        draw.facts["bank.voltage"] = 6
        return f"A 6 V flooded battery rests at {draw.amount('reading.voltage', 5.9, 6.4, 0.05, 'V')}. How full is it?"
    reading = draw.amount("reading.voltage", 8.0, 11.4, 0.1, "V")
    draw.facts["bank.voltage"] = 12
    return f"My 12 V {draw.kind()} battery reads {reading} at rest. Is that good?"


def load_bank(draw: Draw) -> str:
    """A 24 V bank, a model, a load test."""
    way = draw.one("bank", "model", "test")
    if way == "bank":
        draw.facts |= {"bank.voltage": 24, "battery.count": 2, "bank.layout": "series"}
        before = draw.amount("reading.voltage", 24.8, 25.6, 0.1, "V")
        under, amps = draw.amount("reading.load_voltage", 17, 23, 0.1, "V"), draw.amps(150, 300)
        draw.facts["reading.current"] = draw.facts.pop("load.current")
        cca = draw.cca(700)
        return f"My 24 V bank of two 12 V {cca} batteries in series drops from {before} to {under} at {amps}. OK?"
    if way == "model":
        before = draw.amount("reading.voltage", 12.4, 12.8, 0.1, "V")
        under, cca = draw.amount("reading.load_voltage", 8.5, 11.4, 0.1, "V"), draw.cca(600)
        model, draw.facts["reading.current"] = draw.one(("Minnow", 120), ("Pike", 260))
        return f"My 12 V {cca} battery drops from {before} to {under} when the {model} runs. Is that OK?"
    before = draw.amount("reading.voltage", 12.4, 12.8, 0.1, "V")
    under, cca = draw.amount("reading.load_voltage", 8.8, 10.4, 0.1, "V"), draw.cca(600)
    half = draw.put("reading.current", draw.facts["battery.cca"] / 2, f"{draw.facts['battery.cca'] / 2:g} A")
    warm = draw.celsius(10, 25)
    return f"Load test of a {cca} battery: {before} before, {under} at {half}, {warm}. Did it pass?"


def load_voltage(draw: Draw) -> str:
    if draw.rng.random() < 0.35:
        return load_bank(draw)
    kind = draw.kind("flooded", "agm", "lfp")
    lithium = draw.facts["battery.chemistry"] == "lfp"
    before = draw.amount("reading.voltage", *((13.1, 13.4) if lithium else (12.4, 12.8)), 0.1, "V")
    under = draw.amount("reading.load_voltage", *((11.0, 12.8) if lithium else (8.0, 11.4)), 0.1, "V")
    if lithium or draw.rng.random() < 0.35:
        return f"My 12 V {kind} battery drops from {before} to {under} when I run the thruster. Is that OK?"
    amps, cca = draw.amount("reading.current", 150, 400, 10, "A"), draw.cca(600)
    return draw.one(
        f"My {cca} {kind} battery goes from {before} to {under} with the thruster pulling {amps}. Is that OK?",
        f"A {kind} battery of {cca} falls from {before} at rest to {under} at {amps}. Is it healthy?",
    )


def specific_gravity(draw: Draw) -> str:
    value = draw.rng.randrange(1130, 1281, 5) / 1000
    gravity = draw.put("reading.gravity", value, f"{value:.3f}")
    way = draw.one("plain", "warm", "spread")
    if way == "plain":
        return draw.one(f"My hydrometer reads {gravity}, is that good?", f"How full is a cell at {gravity} SG?")
    if way == "warm":
        return f"Hydrometer says {gravity} at {draw.celsius(0, 35)}. How full is it?"
    spread = draw.rng.choice((0.02, 0.03, 0.05, 0.06, 0.08))
    draw.facts["reading.gravity_spread"] = spread
    low = f"{value - spread:.3f}"
    draw.facts["reading.gravity"] = float(low)
    return f"The cells read from {low} to {gravity} on the hydrometer. Is the battery good?"


def standing_drain(draw: Draw) -> str:
    capacity, kind = draw.capacity(), draw.kind()
    drain = draw.amount("drain.current", 10, 900, 10, "mA", 0.001)
    return draw.one(
        f"How long until a {drain} standing drain flattens my {capacity} {kind} battery?",
        f"Something draws {drain} with everything off. How fast does it flatten a {capacity} {kind} battery?",
    )


def replacement(draw: Draw) -> str:
    kind, age = draw.kind("flooded", "agm", "gel", "lfp"), draw.amount("battery.age", 1, 14, 1, "years")
    return draw.one(
        f"My {kind} battery is {age} old, is it time for a new one?",
        f"Should I replace a {kind} battery that is {age} old?",
    )


def freeze_point(draw: Draw) -> str:
    way = draw.one("charge", "charge", "gravity", "volts")
    if way == "volts":
        reading = draw.amount("reading.voltage", 11.9, 12.6, 0.05, "V")
        draw.facts["battery.chemistry"] = "flooded"
        return f"Will a flooded battery that rests at {reading} freeze at {draw.celsius(-40, -2)}?"
    if way == "charge":
        state = draw.amount("battery.charge", 0, 100, 5, "%") + " charged"
    else:
        value = draw.rng.randrange(1110, 1271, 5) / 1000
        state = draw.put("reading.gravity", value, f"at {value:.3f} specific gravity")
    if draw.rng.random() < 0.5:
        return f"At what temperature does a flooded battery {state} freeze?"
    return f"Will a flooded battery that is {state} freeze at {draw.celsius(-40, -2)}?"


def cold_cranking(draw: Draw) -> str:
    cca, cold = draw.cca(), draw.celsius(-28, 6)
    return draw.one(
        f"How much cranking power is left at {cold} from a {cca} battery?",
        f"What does a {cca} battery give at {cold}?",
    )
