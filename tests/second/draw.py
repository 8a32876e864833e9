"""Draws the values of a question: each gives its words for the text and notes the fact that they state."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random
from typing import Any

Facts = dict[str, Any]

NAMES = {
    "flooded": ("flooded", "wet"),
    "agm": ("AGM",),
    "gel": ("gel",),
    "lfp": ("LiFePO4", "LFP"),
    "lead": ("lead-acid",),
}
GAUGES = ("6", "4", "2", "1", "1/0", "2/0", "3/0", "4/0")
AREAS = (16, 25, 35, 50, 70, 95, 120)


@dataclass(frozen=True)
class Question:
    """A question, the topic that it asks about and the facts that it states, in canonical units."""

    topic: str
    text: str
    facts: Facts


@dataclass
class Draw:
    """Draws values; each puts its fact into `facts` and gives the words for the text."""

    rng: Random
    facts: Facts

    def put(self, fact: str, value: Any, words: str) -> str:
        self.facts[fact] = value
        return words

    def one(self, *choices: Any) -> Any:
        return self.rng.choice(choices)

    def amount(self, fact: str, low: float, high: float, step: float, unit: str, scale: float = 1) -> str:
        """A number of whole steps with its unit; the fact holds it times `scale`."""
        value = round(self.rng.randrange(round(low / step), round(high / step) + 1) * step, 4)
        return self.put(fact, value * scale, f"{value:g} {unit}".strip())

    def kind(self, *among: str) -> str:
        chosen = self.one(*(among or ("flooded", "agm", "gel")))
        return self.put("battery.chemistry", chosen, self.one(*NAMES[chosen]))

    def capacity(self, low: int = 60, high: int = 260) -> str:
        return self.amount("battery.capacity", low, high, 5, "Ah")

    def cca(self, low: int = 350, high: int = 1200) -> str:
        return self.amount("battery.cca", low, high, 10, "CCA")

    def amps(self, low: int = 100, high: int = 500) -> str:
        return self.amount("load.current", low, high, 10, self.one("A", "amp"))

    def volts(self) -> str:
        chosen = self.one(12, 24)
        return self.put("bank.voltage", chosen, f"{chosen} V")

    def length(self, low: int = 2, high: int = 9) -> str:
        """One way, in metres or feet."""
        if self.rng.random() < 0.5:
            return self.amount("cable.length", low, high, 0.5, "m")
        return self.amount("cable.length", round(low * 3.3), round(high * 3.3), 1, self.one("ft", "feet"), 0.3048)

    def cable(self, gauges: tuple[str, ...] = GAUGES, areas: tuple[int, ...] = AREAS) -> str:
        if self.rng.random() < 0.5:
            gauge = self.one(*gauges)
            return self.put("cable.gauge", gauge, f"{gauge} AWG")
        area = self.one(*areas)
        return self.put("cable.area", area, f"{area} mm2")

    def celsius(self, low: int, high: int) -> str:
        """A temperature in C or F."""
        value = self.rng.randint(low, high)
        if self.rng.random() < 0.5:
            return self.put("ambient.temperature", value, f"{value} C")
        fahrenheit = round(value * 1.8 + 32)
        return self.put("ambient.temperature", (fahrenheit - 32) / 1.8, f"{fahrenheit} F")

    def load(self) -> str:
        """What a motor takes: amps, kilowatts or shaft horsepower at the system's volts."""
        way = self.one("amps", "amps", "kw", "hp")
        volts = self.facts.get("bank.voltage", 12)
        if way == "amps":
            return self.amps()
        if way == "kw":
            return self.amount("load.power", 0.15 * volts, 0.3 * volts, 0.1, "kW", 1000)
        self.facts["power.unit"] = "hp"
        return self.amount("load.power", 0.17 * volts, 0.42 * volts, 0.5, "hp", 745.699872)
