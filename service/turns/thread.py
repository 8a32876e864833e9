"""What a conversation carries from turn to turn: facts, the last topics, what was asked back, a standing hazard.

It travels in a signed token that the customer's side sends back. The desk keeps no thread to go on from; the log keeps
with a follow-up the one that it met, so that the question can be asked again.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any
from zlib import crc32

from service.case import Known, Origin, Value
from service.turns.worked import KEPT, still

# A fact stated now makes these older ones stale: they spoke of the same thing or followed from it.
STALE: dict[str, tuple[str, ...]] = {
    "load.model": ("load.kind", "load.current", "load.peak", "load.power"),
    "load.current": ("load.power", "load.peak"),
    "load.peak": ("load.power",),
    "load.power": ("load.current", "load.peak", "load.model"),
    "cable.gauge": ("cable.area",),
    "cable.area": ("cable.gauge",),
    "battery.cca": ("battery.ca",),
    "battery.ca": ("battery.cca",),
    "reading.voltage": ("battery.charge", "reading.gravity"),
    "battery.charge": ("reading.voltage", "reading.gravity"),
    "reading.gravity": ("reading.voltage", "battery.charge"),
    "load.time": ("load.bursts",),
    "battery.energy": ("battery.capacity",),
    "battery.capacity": ("battery.energy",),
    "reading.state": ("reading.rest_time",),
}
OF_THE_BATTERIES = ("battery.", "bank.layout", "bank.count", "reading.")  # dropped where another is put in place
OF_ONE_BATTERY = ("battery.", "bank.", "reading.", "storage.", "drain.")  # dropped with "on my other boat"

OF_THE_LABEL = frozenset(  # what batteries of one make share
    (
        *("battery.chemistry", "battery.duty", "battery.nominal", "battery.capacity", "battery.energy", "battery.cca"),
        *("battery.ca", "battery.reserve", "battery.max_current", "battery.peak_current", "battery.group"),
        *("battery.weight", "battery.max_in_series", "battery.max_in_parallel"),
    )
)


@dataclass(frozen=True, slots=True)
class Thread:
    """The state of a conversation before the next message."""

    facts: Mapping[str, Known] = field(default_factory=dict)
    second: Mapping[str, Known] = field(default_factory=dict)
    topics: tuple[str, ...] = ()
    asks: tuple[str, ...] = ()
    dangers: tuple[str, ...] = ()  # families that stand
    cues: tuple[str, ...] = ()  # details of the last question, for a turn that only changes a fact of it
    turns: int = 0
    answered: int = 0  # what `fingerprint` makes of the last answers
    aside: Mapping[str, Known] = field(default_factory=dict)  # of the batteries that another one took the place of
    worked: Mapping[str, Value] = field(default_factory=dict)  # what the desk itself worked out (worked.py)

    def told(
        self,
        said: Iterable[Known],
        *,
        another: bool = False,
        in_place: bool = False,
        alike: bool = False,
        other_load: bool = False,
    ) -> Thread:
        """The thread with what the newest message states. `another`: it speaks of another battery or boat; `in_place`:
        of a battery that takes the place of those told of; `alike`: of one like the one before ("two of those"), whose
        label it has; `other_load`: of a boat whose own load it tells."""
        said = list(said)
        first = {item.fact: item for item in said if item.of == 1}
        second = {item.fact: item for item in said if item.of == 2}
        gone = {old for name in first for old in STALE.get(name, ()) if old not in first}
        before = self.facts.get("load.kind")
        if other_load or (before and before.value != first.get("load.kind", before).value):
            gone |= {name for name in self.facts if name.startswith("load.") and name not in first}  # another load
        if self._was_to_be(first):
            gone.add("bank.voltage")
        label = OF_THE_LABEL if alike else frozenset()
        kept = {
            name: replace(item, origin="thread", span=None)
            for name, item in self.facts.items()
            if name not in gone
            and not (another and name.startswith(OF_ONE_BATTERY) and name not in label)
            and not (in_place and name.startswith(OF_THE_BATTERIES))
        }
        both = {name: item for name, item in self.second.items() if name not in first and name not in gone}
        if in_place:
            both = {name: item for name, item in both.items() if not name.startswith(OF_THE_BATTERIES)}
        kept = {name: item for name, item in kept.items() if name not in first}  # the newest stand last
        worked = {} if another else still(self.worked, self._changed(first))
        return replace(self, facts=kept | first, second={} if another else both | second, worked=worked)

    def _changed(self, first: Mapping[str, Known]) -> set[str]:
        """The facts that had another value before; a model counts where another load was spoken of."""
        named = "load.model" in first and any(name.startswith("load.") for name in self.facts)
        fresh = {name for name, item in first.items() if name in self.facts and self.facts[name].value != item.value}
        return fresh | ({"load.model"} if named and "load.model" not in self.facts else set())

    def _was_to_be(self, first: Mapping[str, Known]) -> bool:
        """Whether the volts of the bank were what another way of joining should give: "as 24", then "and in parallel?".

        Those of a load stay: it needs them whatever is joined.
        """
        volts, layout, new = (facts.get(name) for facts, name in (
            (self.facts, "bank.voltage"), (self.facts, "bank.layout"), (first, "bank.layout")
        ))  # fmt: skip
        if not volts or not layout or not new or "bank.voltage" in first or new.value == layout.value:
            return False
        return volts.text == layout.text or "load.model" in self.facts or not any(map(_of_a_load, self.facts))

    def as_dict(self) -> dict[str, Any]:
        """The thread as plain JSON values, short."""
        return {
            "f": [packed(item) for item in (*self.facts.values(), *self.second.values())],
            "t": list(self.topics),
            "a": list(self.asks),
            "d": list(self.dangers),
            "c": list(self.cues),
            "n": self.turns,
            "h": self.answered,
            "w": dict(self.worked),
            **({"b": [packed(item) for item in self.aside.values()]} if self.aside else {}),
        }

    @classmethod
    def from_dict(cls, content: Mapping[str, Any]) -> Thread:
        """The thread that `as_dict` wrote. Raises KeyError or TypeError for anything else."""
        items = [unpacked(row) for row in content["f"]]
        return cls(
            {item.fact: item for item in items if item.of == 1},
            {item.fact: item for item in items if item.of != 1},
            tuple(content["t"]),
            tuple(content["a"]),
            tuple(content["d"]),
            tuple(content["c"]),
            int(content["n"]),
            int(content.get("h", 0)),
            {item.fact: item for item in map(unpacked, content.get("b", ()))},
            {name: value for name, value in content.get("w", {}).items() if name in KEPT},
        )


def _of_a_load(fact: str) -> bool:
    return fact.startswith("load.")


def fingerprint(headlines: Iterable[str]) -> int:
    """A number that is the same for the same answers; 0 for none."""
    return crc32("\n".join(headlines).encode())


def packed(item: Known) -> list[Any]:
    """A fact as a plain row, for a token or the log."""
    return [item.fact, item.value, item.unit, item.text, item.low, item.high, item.of]


def unpacked(row: Sequence[Any], origin: Origin = "thread") -> Known:
    """The fact that `packed` wrote. Raises ValueError for another row."""
    fact, value, unit, text, low, high, of = row
    return Known(fact, value, origin, unit, text=text, low=low, high=high, of=of)


class Signer:
    """Turns a thread into a token and back; a token that does not verify gives None."""

    def __init__(self, secret: str) -> None:
        from itsdangerous import URLSafeSerializer

        self._serializer = URLSafeSerializer(secret, salt="leadsman-thread")

    def token(self, thread: Thread) -> str:
        """The signed token."""
        return str(self._serializer.dumps(thread.as_dict()))

    def thread(self, token: str) -> Thread | None:
        """The thread of a token, or None where it was not ours."""
        from itsdangerous import BadData

        try:
            return Thread.from_dict(self._serializer.loads(token))
        except (BadData, KeyError, TypeError, ValueError):
            return None
