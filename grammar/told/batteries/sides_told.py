"""The two voltages of a converter by what is done with them: "feed 24 from the start battery's 12", "it pulls that from
the 24", "the 12 V start battery is separate from the 24"; and one minus for both of them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.told.batteries.two_sides import BANK, COMMON, INPUT, V, with_sides

ANY = r"12|24|twelve|twenty[- ]four"
SOURCE = r"(?:engine|start(?:er|ing)?|house|domestic|alternator|cranking|leisure|main|service)"
FED = re.compile(
    r"\b(?:feed|charge|fill|supply|top up|nourish|keep up|bring up)(?:s|es|ing)? (?:up )?(?:the |my |our |a )?"
    rf"(?P<given>{ANY})(?:{V}(?! (?:a|amps?)\b)|(?= (?:off|out)\b))[^.?!;]{{0,24}}? (?:from|off"
    rf"|out of) [^.?!;\d]{{0,34}}?(?<![-\d.])(?P<taken>{ANY})\b{V}",
    re.IGNORECASE,
)
PULLED = re.compile(
    r"\b(?:pull|draw|take|cost|eat|steal|suck|come|go|gobble)(?:s|n|ing)?(?: (?!or\b)\w+){0,3}"
    rf" (?:from|off|out of) the (?P<taken>{ANY})\b{V}",
    re.IGNORECASE,
)
PARTED = re.compile(
    rf"\b(?P<taken>{ANY})\b{V} {SOURCE}(?: (?:battery|batt|bank|side|accu|one))?,? (?:(?:is|are|stays?"
    rf"|kept|sits|quite) )*"
    rf"(?:separate[d]?|apart|independent|split|away|isolated|divorced) (?:from|of) (?:the |my "
    rf"|our )?(?P<given>{ANY})\b{V}",
    re.IGNORECASE,
)
OR_OTHER = re.compile(rf"^(?: ?-?v(?:olts?)?| side)* or (?:the )?(?:{ANY})\b", re.IGNORECASE)
ONE_MINUS = re.compile(
    r"\b(?:minus(?:es)?|negatives?|negs?|grounds?|earths?)\b(?! ?\?)(?: (?:are|is|all|both|do|does|being"
    r"|of|them|lot|the))*"
    r" (?:one and the same(?! as)|(?:land|end|meet|sit|finish|go|come|bolt(?:ed)?|join(?:ed)?)s?(?: up"
    r"| together| down| all)* (?:on|at|to)"
    r" (?:one|a single|the one)(?: \w+)? (?:bus ?bar|bar|stud|bolt|post|block|point|lump|terminal|plate))\b",
    re.IGNORECASE,
)
ISOLATED = re.compile(
    r"\b(?:through|via|by way of|using|by) (?:an?|the|our|my|one) (?:galvanically )?isolated "
    r"(?:box|unit|converter|charger|booster|dc-?dc|b2b|brick|gadget|one|job)\b",
    re.IGNORECASE,
)
ASKED = re.compile(
    r"\b(?:should|must|do|does|may|can|could|whether|if|not|don'?t|doesn'?t|never)\b[^.?!;]{0,24}$", re.IGNORECASE
)
SEPARATE = "charger.isolated"
OTHER = {12.0: 24.0, 24.0: 12.0}
WORDS = {"12": 12.0, "twelve": 12.0}


def sides_told(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, with the sides of a converter where such words tell them, and their common minus."""
    stated = [*stated, *_isolated(scene, stated)]
    if not ("dcdc" in scene.heads or scene.about("word:boost") or {12.0, 24.0} <= scene.figures):
        return stated
    stated = [*stated, *_one_minus(scene, stated)]
    if not {12.0, 24.0} <= scene.figures:
        return stated
    for pattern in (FED, PARTED):
        found = pattern.search(scene.text)
        if found is not None and _volts(found["taken"]) != _volts(found["given"]):
            sides = ((INPUT, "taken"), (BANK, "given"))
            return with_sides(stated, [_stated(fact, found, name) for fact, name in sides])
    return _pulled(scene, stated)


def _pulled(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with the side from which a converter is said to pull, where both are named."""
    found = PULLED.search(scene.text) if "dcdc" in scene.heads else None
    if found is None or OR_OTHER.match(scene.text[found.end("taken") :][:24]):
        return stated
    taken = _volts(found["taken"])
    other = [item for item in stated if item.value == OTHER[taken] and item.fact in (INPUT, BANK, "battery.nominal")]
    told = [_stated(INPUT, found, "taken")]
    told += [Stated(BANK, OTHER[taken], "volt", one.text, one.span, how="grammar") for one in other[:1]]
    kept = [item for item in stated if item.fact != BANK or item.value != taken]
    return with_sides(kept, told)


def _isolated(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """That the box is an isolated one, told with the way that the current goes."""
    found = ISOLATED.search(scene.text)
    if found is None or any(item.fact == SEPARATE for item in stated) or ASKED.search(scene.ahead(found.start())):
        return
    yield Stated(SEPARATE, True, "", found[0], found.span(), how="grammar")


def _one_minus(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """One negative of both sides, told of their minuses."""
    if any(item.fact == COMMON for item in stated):
        return
    found = ONE_MINUS.search(scene.text)
    if found is not None and not ASKED.search(scene.ahead(found.start())):
        yield Stated(COMMON, True, "", found[0], found.span(), how="grammar")


def _volts(said: str) -> float:
    return WORDS.get(said.lower(), 24.0)


def _stated(fact: str, found: re.Match[str], name: str) -> Stated:
    return Stated(fact, _volts(found[name]), "volt", found[name], found.span(name), how="grammar")
