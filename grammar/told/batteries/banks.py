"""Banks told by their names, where one charger is to serve them: "start, house, thruster, windlass: four islands"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex
from grammar.told.words import stated_at

BANKS = (
    frozenset({"house", "domestic", "leisure", "service"}),
    frozenset({"start", "starter", "starting", "engine", "motor", "cranking"}),
    frozenset({"bow", "thruster", "stern"}),
)
FURTHER = frozenset({"windlass", "capstan"})
NEXT_ON = 4  # words
SERVED = frozenset({"outputs", "output", "outlets", "legs", "channels", "banks"})
LISTED_AS = regex(
    r"(?P<list>\w[\w' ]*(?:(?:, ?| and )[\w' ]+){1,5}): (?P<many>two|three|four|five|[2-6])"
    r" (?:\w+ )?(?:islands|camps|mouths|kingdoms|worlds|banks|sets|lots|circuits|systems|batteries|families)\b",
    re.IGNORECASE,
)
TOLD_AFTER = regex(  # the number that sums up a list
    r"[.:;,\u2013-]\s*(?:that'?s |so |makes |which makes |in all )?(?P<many>three|four|five|[3-6])"
    r"(?: (?:separate |different |own )?banks?| in all| of them| all told)?\s*[.;:!?]",
    re.IGNORECASE,
)
COUNTED = regex(  # "banks are four: start, house, bow and the generator's own", "my banks come to three"
    r"\bbanks (?:are|come to|number|add up to|make) (?:up )?(?P<many>two|three|four|five|six|[2-6])"
    r"(?=\s*(?:[,.;:?!)]|$)| (?:in all|altogether)\b)",
    re.IGNORECASE,
)
WHERE = r"(?:(?:in|at|up|down|under|by) )?(?:(?:the|my|our) )?(?:front|back|bow|stern|forepeak|cabin|aft|forward|side) "
NAMED = r"(?:house|domestic|leisure|service|start(?:er|ing)?|engine|bow|thruster|windlass)"
ONE_EACH = regex(  # "one battery for the diesel, one up the front for the thruster, another does the fridge"
    rf"\b(?:one|another) (?:battery |bank |set )?(?:is |goes |sits )?(?:(?:up|down|out) )?(?:{WHERE})?"
    r"(?:for (?:the|my|our|a|starting|lights?|thrusters?|engine|house|windlass|fridge)\b"
    r"|(?:that |which )?(?:starts|does|runs|feeds|turns|cranks|powers|drives) (?:the|my|our)\b"
    rf"|(?P<name>{NAMED})(?= ?[,;.&?]|$| (?:and|how|what|which|all|kept|one|batter(?:y|ies)|banks?)\b))",
    re.IGNORECASE,
)
IN_ALL = regex(
    r"\b(?P<many>two|three|four|five|six|[2-6]) (?:batter\w+ |banks |of them )?(?:altogether|all together|in all"
    r"|in total|all told)\b",
    re.IGNORECASE,
)
OUTPUTS_ASKED = regex(
    r"\b(?:outputs?|outlets?|legs|channels) (?:needed|required|wanted|necessary)(?: for)?[:,]? ", re.IGNORECASE
)
OUTPUTS = SERVED - {"banks"}
PLACE = (
    r"(?:engines?'?(?: start(?:er|ing)?s?)?|start(?:er|ing)?s?|house|domestic|leisure|service|bow|stern|thrusters?"
    r"|windlass|generator|genset)"
)
ENTRY = (
    rf"(?:one|two|three|four|[1-6]) ?(?:x )?{PLACE}(?: thrusters?)?(?:'s)?(?: (?:banks?|batter(?:y|ies)|batts?|sets?))?"
)
EACH_COUNTED = regex(  # "2 engine starters, 1 house, 1 bow"
    rf"(?<!\w, )(?<!and )(?<!plus )(?<![+&] )\b{ENTRY}(?:(?: ?, and |, ?| and | ?[+&] ?| plus ){ENTRY})+\b"
    r"(?! (?:banks?|batter\w+|batts?|sets?)\b|[^\w.?!]*(?:(?:and|plus|connected|joined|in|an?|the|one|two|\d)\b|[+&]))",
    re.IGNORECASE,
)
LISTED = 20  # words from the first to the last
FAR = 40  # characters


def banks_named(scene: Scene) -> Iterator[Stated]:
    """Three banks told by their names, where a charger is to serve them: "one charger for start, house and bow"."""
    charged = "charger" in scene.heads
    if not (charged or SERVED & scene.vocabulary) or "bank.count" in scene.facts:
        return
    if (counted := _numbered(scene.text)) is not None:
        yield counted
        return
    named = list(ONE_EACH.finditer(scene.text)) if charged or OUTPUTS & scene.vocabulary else []
    listed = any(found["name"] for found in named) and len(named) < len(BANKS)
    if listed and all(names & scene.vocabulary for names in BANKS):
        named = []  # "bow pair joined, one start, one house": the names tell more than the ones
    if len(named) > 1 and named[-1].end() - named[0].start() <= FAR * len(named):  # "one for the engine, one for ..."
        told, span = IN_ALL.search(scene.text, named[-1].end()), (named[0].start(), named[-1].end())
        many = max(value(told["many"].lower()) if told else 0.0, float(len(named)))  # one more may be told otherwise
        yield Stated("bank.count", many, "", scene.text[slice(*span)], span, how="default")
        return
    if not (charged or OUTPUTS_ASKED.search(scene.text)):
        return
    if (told := LISTED_AS.search(scene.text)) is not None:  # "start, house, thruster, windlass: four islands"
        many = value(told["many"].lower())
        if many == len(re.findall(r",|\band\b", told["list"])) + 1:
            yield Stated("bank.count", many, "", told["many"], told.span("many"), how="default")
            return
    places = [next((at for at, token in enumerate(scene.tokens) if token.word in names), None) for names in BANKS]
    found = sorted(at for at in places if at is not None)
    if len(found) == len(BANKS) and found[-1] - found[0] <= LISTED:
        if (told := _summed_up(scene, scene.tokens[found[-1]].end)) is not None:  # "start, house, bow. Four."
            many = value(told["many"].lower())
            yield Stated("bank.count", many, "", told["many"], told.span("many"), how="default")
            return
        further = FURTHER & {scene.word(at) for at in range(found[0], found[-1] + NEXT_ON)}
        both_ends = {"bow", "stern"} <= scene.vocabulary
        yield stated_at(scene, "bank.count", float(len(BANKS) + len(further) + both_ends), found[0], found[0] + 1)


def _numbered(text: str) -> Stated | None:
    """How many banks there are by their number, or by those of each place."""
    if (told := COUNTED.search(text)) is not None:
        return Stated("bank.count", value(told["many"].lower()), "", told["many"], told.span("many"), how="default")
    if (listed := EACH_COUNTED.search(text)) is None:
        return None
    counts = re.findall(r"\b(?:one|two|three|four|[1-6])\b", listed[0].lower())
    return Stated("bank.count", sum(value(word) for word in counts), "", listed[0], listed.span(), how="grammar")


def _summed_up(scene: Scene, end: int) -> re.Match[str] | None:
    """The number of banks right behind their list, or behind one more that it names."""
    return TOLD_AFTER.search(scene.text, end, end + FAR)
