"""Topics of charging among those found that are only told: a charger that is named, or that stays on."""

from __future__ import annotations

import re
from collections.abc import Set

from grammar.reading import Message
from grammar.text.patterns import regex
from service.routing.motor_as_told import ANY_CABLE
from service.routing.supply_as_told import KIND, is_lithium
from service.topic import CIRCUIT

STAYS_ON = regex(
    r"\b(?:leav|keep|stay|left|kept)\w*\b[^.?!;]{0,60}\b(?:charger|charging|plugged|on|charge)\b", re.IGNORECASE
)
OF_SETTING = ("word:setting", "role:charger.setting", "request:which")
MADE_UP = regex(
    r"\b(?:covers?|beats?|offsets?|make[sn]? up(?: for)?) (?:an? |the |my )?[\d.,]* ?(?:m?a )?(?:drain|draw|loss)\b",
    re.I,
)
CHARGES = ("thing:charger", "about:charger", "about:charging", "word:charge", "thing:alternator", "thing:dcdc")
SIZE = regex(
    r"\b(?:amps?|amperes?|amperage|a|size[ds]?|sizing|big\w*|large\w*|small\w*|enough|strong|powerful|current|rating|watts?)\b",
    re.IGNORECASE,
)
SET_SO = r"(?:settings?|modes?|programmes?|programs?|profiles?|positions?|voltages?|volts?)"
OF_ITS_SETTING = regex(rf"\bcharg(?:er|ing)s? {SET_SO}\b|\b{SET_SO}\b[^,.?!;]{{0,24}}\bcharger\b", re.IGNORECASE)
ONE_OUTPUT = (
    r"(?:\b(?:on|off|from|by|to) (?:the |an? )?(?:one|same|single|that) (?:output|outlet|lead|leg|charger)\b"
    r"|\bone charger for (?:both|all|the (?:lot|pair|two|three))\b)"
)
TOLD_SO = regex(
    rf"{ONE_OUTPUT}(?! ?\?| (?:ok(?:ay)?|fine|allowed|enough|right|possible|or|do|will|good|safe)\b)", re.IGNORECASE
)
ASKED_SO = regex(
    rf"\b(?:can|may|could|should|must|is|are|do|does|will|would|how|which|whether)\b[^.?!;]{{0,60}}{ONE_OUTPUT}"
    r"|\b(?:outputs|outlets|isolat\w*|separate\w*|one or two|two chargers|banks?)\b",
    re.IGNORECASE,
)
AMPS_OF_IT = regex(
    r"\bcharger (?:amps|size)\b|\b(?:what|which) (?:size|amps|amperage)\b|\bhow many amps\b|\bhow (?:big|strong)\b",
    re.IGNORECASE,
)
BY_SIZE = regex(
    r"\bcharger|\b(?:amps?|amperes?|amperage|size[ds]?|sizing|big\w*|strong|powerful|current)\b", re.IGNORECASE
)


def of_no_charger(message: Message, found: Set[str], told: Set[str]) -> set[str]:
    """The size of a charger, where the amps of a battery are asked for: "how many amps and what CCA for the Pike"."""
    charged = any(map(message.says, CHARGES)) or any(fact.startswith(("charger.", "alternator.")) for fact in told)
    supply = "charger-size" in found and found & {"bank-size", "run-check"}
    return {"charger-size"} if supply and not charged else set()


def made_up_for(message: Message, found: Set[str]) -> set[str]:
    """The drain that a panel is to make up for: "40 W; covers a drain of 0.1 A?"."""
    covered = MADE_UP.search(message.text) and not message.says("request:how_long")
    return {"standing-drain"} if covered and {"solar", "standing-drain"} <= found else set()


def only_stays_on(message: Message) -> bool:
    """Whether a charger is asked about only for staying on: of a kind that may, on no other battery's setting."""
    told = {item.fact: item.value for item in message.stated if item.of == 1}
    if told.get("charger.kind", "smart") != "smart" or "charger.voltage" in told or message.says("detail:unregulated"):
        return False
    if told.get("charger.setting", told.get(KIND)) != told.get(KIND) or not STAYS_ON.search(message.text):
        return False
    if is_lithium(message):  # its charger in the cold is a question of its own
        return False
    asking = [clause.span for clause in message.clauses if clause.asks]
    return bool(asking) and not any(message.says(cue, span) for cue in OF_SETTING for span in asking)


def charger_only_named(message: Message, found: Set[str], told: Set[str]) -> set[str]:
    """The size of a charger, where its cable or its outputs are asked of, or its setting alone: "16 mm2 for 30 A of
    charging, is it ok?", "which charger setting for 100 Ah of gel"."""
    plain = OF_ITS_SETTING.sub(" ", message.text)
    if {"charger-size", "charger-setting"} <= found and plain != message.text and not BY_SIZE.search(plain):
        return {"charger-size"}
    asked = {"charger-size", "charger-banks"} <= found and AMPS_OF_IT.search(message.text)
    if asked and TOLD_SO.search(message.text) and not ASKED_SO.search(message.text):
        return {"charger-banks"}  # "charger amps for three of 120 Ah, all on one output"
    if "charger-size" not in found or ("charger.current" in told) == ("charger-banks" in found):
        return set()
    by_cable = found & CIRCUIT and told & ANY_CABLE and "battery.capacity" not in told
    by_outputs = "charger-banks" in found and not SIZE.search(message.text)
    return {"charger-size"} if by_cable or by_outputs else set()
