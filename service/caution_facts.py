"""What the rows of cautions ask of a case: its battery, its charger, its cold."""

from __future__ import annotations

from dataclasses import dataclass

from service.case import Case
from service.kinds import LEAD, LITHIUM, says_iron
from service.reply import Answer
from service.told import pressed

SEALED = ("agm", "gel")

FREEZES = 0.0  # °C
WARM = 10.0  # °C: above it no frost is near
SIX = 6.0  # volts of a battery
DEEP = {"lead": 10.5, "lithium": 10.0}  # V for each 12 V: deeply flat
ITS_OWN = ("whose:another",)
OF_THE_CIRCUIT = ("standing-drain", "voltage-drop", "cable-size", "fuse-size")
MAINTAINERS = ("alternator", "solar", "dc-dc")  # chargers without a mains side


@dataclass(frozen=True)
class Facts:
    """What the rows ask of a case and its answer, in the words of the table below."""

    topic: str
    case: Case
    answer: Answer

    @property
    def kinds(self) -> tuple[str, ...]:
        """The kinds of battery named, of one or two."""
        second = self.case.second.get("battery.chemistry")
        return tuple(str(kind) for kind in (self.get("battery.chemistry"), second and second.value) if kind)

    def get(self, fact: str) -> object:
        """The value of a fact, or None."""
        return self.case.get(fact)

    def number(self, fact: str) -> float:
        """A fact as a number, 0 where it is not known."""
        value = self.case.get(fact)
        return float(value) if isinstance(value, (int, float)) else 0.0

    def about(self, *topics: str) -> bool:
        """Whether the answer is of one of these topics."""
        return self.topic in topics

    def figure(self, name: str) -> float | None:
        """A figure of the answer."""
        found = (item.value for item in self.answer.figures if item.name == name)
        return next((float(value) for value in found if isinstance(value, (int, float))), None)

    @property
    def nothing_yet(self) -> bool:
        """Whether the answer only asks, without a figure."""
        return self.answer.verdict == "needs-facts" and not self.answer.figures

    @property
    def lithium(self) -> bool:
        """Lithium, or one of two is."""
        return any(kind in LITHIUM for kind in self.kinds)

    @property
    def lead(self) -> bool:
        """Lead of any kind, or not said: only lithium alone rules it out."""
        return not self.kinds or any(kind in LEAD for kind in self.kinds)

    @property
    def liquid_acid(self) -> bool:
        """A battery with caps, or not known to be sealed."""
        return self.lead and not (self.kinds and all(kind in (*SEALED, *LITHIUM) for kind in self.kinds))

    @property
    def volts(self) -> float:
        """Volts of the bank."""
        return self.number("bank.voltage")

    @property
    def thruster(self) -> bool:
        """A thruster, or a load not named otherwise at this desk of thrusters."""
        return self.get("load.kind") in (None, "thruster")

    @property
    def names_a_thruster(self) -> bool:
        """A thruster by its word, its model or its button; of other amps nobody knows whose they are."""
        named = self.get("load.kind") == "thruster" or self.get("load.model") is not None
        held = pressed.is_told(self.case.text) or self.case.said("load.burst") is not None
        return named or (held and self.get("load.kind") is None)

    @property
    def is_a_starter(self) -> bool:
        """A starting battery, of which nobody says that it is the thruster's own."""
        return self.get("battery.duty") == "cranking" and not self.case.says("detail:own_battery", *ITS_OWN)

    @property
    def cable_known(self) -> bool:
        """A cable is stated."""
        return any(self.case.said(fact) is not None for fact in ("cable.gauge", "cable.area"))

    @property
    def freezing(self) -> bool:
        """A temperature under 0 °C is stated."""
        known = self.case.said("ambient.temperature")
        return known is not None and float(known) < FREEZES

    @property
    def warm(self) -> bool:
        """A temperature with no frost near is stated."""
        known = self.case.said("ambient.temperature")
        return known is not None and float(known) > WARM

    @property
    def several(self) -> bool:
        """Two or more batteries."""
        return self.number("battery.count") >= 2 or self.get("bank.layout") is not None

    @property
    def taken_as_iron(self) -> bool:
        """ "Lithium" without its kind."""
        known = self.case.known("battery.chemistry")
        plain = known is not None and known.value == "lfp" and known.stated
        return plain and not says_iron(known.text if known else "")

    @property
    def tells_a_limit(self) -> bool:
        """Whether a voltage or a limit of current is given, or the one that a battery of that size usually has; the
        amps of a drain, a cable or a fuse are none of the battery."""
        answer = self.answer
        if self.about(*OF_THE_CIRCUIT):
            return False
        if self.about("charge-time") and answer.figures:  # by the amps that lithium takes
            return True
        units = {item.unit for item in answer.figures} | {item.unit for item in answer.assumed}
        asked = {item.fact for item in answer.asks}
        return not units.isdisjoint(("V", "A")) or not asked.isdisjoint(("battery.max_current", "battery.peak_current"))

    @property
    def deeply_flat(self) -> bool:
        """Under 10.5 V (lithium 10.0 V) for each 12 V at rest."""
        each = self.figure("voltage_per_battery") or self.number("reading.voltage") / max(1.0, self.volts / 12)
        each *= 2 if self.number("battery.nominal") == SIX else 1
        return 0 < each < DEEP["lithium" if self.lithium and not self.lead else "lead"]

    @property
    def no_converter(self) -> bool:
        """It is only asked what stands between an alternator and the battery."""
        return any(item.fact == "charger.kind" for item in self.answer.asks)

    @property
    def mains(self) -> bool:
        """A charger with a mains side."""
        panel = self.case.said("solar.power") is not None and self.case.said("charger.current") is None
        return not panel and self.get("charger.kind") not in MAINTAINERS
