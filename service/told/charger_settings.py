"""The kinds of battery that a message names together: the settings that a charger offers, or kinds to be compared."""

from __future__ import annotations

import re
from collections.abc import Collection

from grammar.text.patterns import regex
from grammar.told.chargers.listed_settings import LISTED_NAMES, NAMES, OFFERS, PLAIN, WORDS, rows
from service.case import Case
from service.kinds import CHARGED

OFFERS_IT = "offers:"  # begins the cue of a setting that the charger of a thread was told to have
UNNAMED = regex(
    r"\b(?:knob|dial|switch|selector|positions?|settings?)\b[^?!;]{0,60}?\b(?:"
    r"(?:no|without(?: any)?|not any) (?:text|names?|labels?|words?|writing|markings?|legend)\b"
    r"|(?:un|not )(?:labelled|labeled|named|marked)\b|(?:only|just) (?:numbers|numbered|digits))",
    re.IGNORECASE,
)
WITH_VOLTS = regex(
    rf"\b(?P<name>{NAMES})(?P<number> ?[12])?(?: (?:is|at|says|gives|has))? ?[=:(]? ?(?P<volts>1[2-6][.,]\d{{1,2}})\b",
    re.IGNORECASE,
)
NONE = regex(  # "a gel and a wet setting but no AGM"
    rf"\b(?:no|not an?|without(?: an?)?|lacks(?: an?)?|(?:hasn['’]?t|has not)(?: got)?(?: an?)?) (?P<name>{NAMES})\b"
    r"(?! (?:batter|bank))",
    re.IGNORECASE,
)
PRINTED = regex(
    r"\b(?P<volts>1[3-6][.,]\d{1,2}) ?v?(?:olts?)?\b[^.?!]{0,12}"
    r"\b(?:written|printed|stamped|marked|on the (?:label|side|case|lid|top))",
    re.IGNORECASE,
)


def named(text: str) -> tuple[str, ...]:
    """The kinds that a text names, in the order of the tables."""
    told = {WORDS[word.lower()] for word in LISTED_NAMES.findall(text)}
    return tuple(kind for kind in CHARGED if kind in told)


def offered(case: Case) -> tuple[str, ...]:
    """The settings between which a charger lets one choose: "gel, agm and wet"; none where one is told to be set."""
    if "charger.setting" in case.stated and not case.says("request:which"):
        return ()
    own = _listed(case.text)
    if own or "charger.voltage" in case.stated or case.origin("battery.chemistry") != "message":
        return own
    return of_before(case.cues)  # the kind of battery is what was still open


def lacks(case: Case, kind: str) -> bool:
    """Whether the settings that are listed have none for this kind of battery, or it is told that none is for it."""
    if OFFERS.search(case.text) and any(WORDS[found["name"].lower()] == kind for found in NONE.finditer(case.text)):
        return True
    told = listed(case)
    return bool(told) and kind not in told


def listed(case: Case) -> tuple[str, ...]:
    """The settings that the charger was told to have, in this message or before it."""
    return _listed(case.text) or of_before(case.cues)


def of_before(cues: Collection[str]) -> tuple[str, ...]:
    """The settings that an earlier message listed, by the cues of its thread."""
    return tuple(kind for kind in CHARGED if f"{OFFERS_IT}{kind}" in cues)


def kept(text: str, before: Collection[str]) -> tuple[str, ...]:
    """The cues of the settings that hold after a message: those that it lists, else those before it."""
    own = _listed(text)
    return tuple(f"{OFFERS_IT}{kind}" for kind in own or of_before(before))


def _listed(text: str) -> tuple[str, ...]:
    """Two kinds and more in a row, where a charger's settings are spoken of."""
    listed = " ".join(text[start:end] for start, end in rows(text))
    told = named(listed)
    return told if len(told) > 1 or PLAIN.search(listed) else ()


def plain_one(case: Case) -> bool:
    """Whether a position is among those listed that names no kind: "AGM and Std"."""
    return any(PLAIN.search(case.text, start, end) for start, end in rows(case.text))


def with_volts(text: str) -> dict[str, tuple[str, float]]:
    """The settings that stand with their volts: kind -> its name and volts; of one kind twice the lower volts."""
    found: dict[str, tuple[str, float]] = {}
    settings = [
        (match["name"].upper() + (match["number"] or "").strip(), WORDS[match["name"].lower()], match["volts"])
        for match in WITH_VOLTS.finditer(text)
    ]
    for name, kind, typed in settings:
        volts = float(typed.replace(",", "."))
        if kind not in found or volts < found[kind][1]:
            found[kind] = (name, volts)
    return found if len(settings) > 1 else {}


def printed_limit(text: str) -> float | None:
    """Charging volts that stand on a battery: "14.6 written on the side"."""
    found = PRINTED.search(text)
    return float(found["volts"].replace(",", ".")) if found else None


def unnamed(text: str) -> bool:
    """Whether a charger's positions bear no names.

    >>> unnamed("a knob with 1 to 8, no text"), unnamed("the knob stands on AGM, no idea why")
    (True, False)
    """
    return bool(UNNAMED.search(text))
