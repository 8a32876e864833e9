"""How many outputs a charger has, as they are told: "it has only one pair of cables"; and that they share nothing."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

FACT = "charger.outputs"
NUMBERS = {"two": 2.0, "2": 2.0, "twin": 2.0, "three": 3.0, "3": 3.0, "four": 4.0, "4": 4.0} | {
    **dict.fromkeys(("dual", "double"), 2.0),
    "triple": 3.0,
}  # all others are one
ENDS = r"(?:leads?|cables?|clips?|wires?|clamps?|crocs?|tails?)"
PAIRS = regex(
    rf"\b(?P<many>one|a|1|single|two|2|three|3|four|4) (?:single )?"
    rf"(?:(?:pair|set|lot)s? of (?:\w+ )?{ENDS}|{ENDS} pairs?\b|pairs? (?:of )?{ENDS})\b",
    re.IGNORECASE,
)
POST_PAIRS = regex(  # "a charger with a single pair of posts on it"
    r"\bcharger\b(?:(?!\bbatt)[^.?!;]){0,40}?\b(?P<many>one|an?|1|single|two|2|three|3|four|4) (?:single )?"
    r"(?:pair|set)s? of (?:output |screw )?(?:posts|terminals|studs|poles)\b"
    r"(?! (?:of|on) (?:the |my |our |each )?batt)",
    re.IGNORECASE,
)
BOTH_POLES = regex(  # one lead for each pole, and no more
    rf"\b(?:one|a|1|single) (?:red|plus|positive)(?: {ENDS})? and (?:one|a|1|single) (?:black|minus|negative)\b"
    rf"|\btwo {ENDS},? (?:red and black|plus and minus|positive and negative)\b",
    re.IGNORECASE,
)
ONE_OUT = regex(rf"\b(?:one|a single|single|only one) {ENDS} (?:coming |comes? |going |goes? )?out\b", re.IGNORECASE)
NUMBER = r"(?P<many>one|a single|single|1|two|2|twin|three|3|four|4)"
EXITS = r"(?:exits?|mouths?|teats?|spoons?|taps?|arms?|tails?|nozzles?|branches|branch|spouts?|fingers|ways out|o/?ps?)"
OF_CHARGER = regex(  # "the shore charger carries only two spoons", "a charger of one lead"
    r"\b(?:charger|chgr)\b[^.?!;,]{0,30}?(?:\b(?:has|have|with|carries|owns|of|sports|got|having)| w/)(?: got)?"
    rf"(?: only| just| but)?(?: the)? {NUMBER} (?:(?:own |small |short )?{EXITS}|{ENDS}(?! acid| batter| and minus))\b",
    re.IGNORECASE,
)
FEEDS = regex(  # "my charger feeds two, I have three banks"
    r"\bcharger(?: that)? (?:only |just )?(?:feeds|serves|caters for|looks after)(?: only| just)? "
    r"(?P<many>one|two|three|four|[1-4])(?: (?:batteries|banks|battery|bank))?(?=[,.;?!]|$| and\b| but\b)",
    re.IGNORECASE,
)
LEADS_OUT = regex(  # "one box on shore power with two leads coming out"
    r"\b(?:box|unit|thing|gadget)\b[^.?!;]{0,20}\b(?:shore(?: power)?|mains|wall|quay)\b[^.?!;]{0,24}"
    rf"\b(?:with|has|having|and) (?:only |just )?{NUMBER} (?:{ENDS}|{EXITS})\b",
    re.IGNORECASE,
)
ENDS_IN = regex(  # "it has three legs coming out", "it comes out in two tails"
    rf"\b{NUMBER} (?:legs?|{EXITS}|{ENDS}) (?:that )?(?:coming|comes?|going|goes?) out\b"
    rf"|\b(?:splits|comes out|goes out|ends|divides)(?: up)? (?:in|into|to) (?P<into>two|three|four|[2-4])"
    rf" (?:legs|{EXITS}|{ENDS}|outputs|ways)\b",
    re.IGNORECASE,
)
ARMED = regex(
    r"\b(?P<many>one|single|two|twin|three|four|[1-4])[- ]"
    r"(?:armed|headed|legged|mouthed|exit|outlet|lead|tailed|tail|arm|o/?p)"
    r" (?:\d{1,3} ?(?:a|amps?) )?(?:charger|chgr|unit|one)\b"
    r"|\b(?P<only>one|two|three|four) (?:exits?|outlets?|outputs?|ways? out) only\b",
    re.IGNORECASE,
)
DUAL = regex(  # "dual charger, 10 A a leg"
    r"\b(?:charger|chgr)(?:'s| is| has)(?: an?)? (?P<here>two|three|four|dual|twin|triple|[2-4])[- ]bank\b"
    r"|\b(?P<many>dual|double|twin|triple) (?:\d{1,3} ?(?:a|amps?) )?charger\b"
    r"(?![,(]? ?\(?(?:for )?12[^.?!;]{0,4}(?:or|/) ?24)",
    re.IGNORECASE,
)
FEW = r"(?:one|two|three|four|[1-4])"
PLACES = (
    r"(?:outputs?|outlets?|connections?|connectors?|room|places?|spaces?|exits|sockets|leads|cables|wires)"
    r" (?:enough )?for(?: only| just)?"
)
BEHIND = r"(?= (?:batteries|battery|banks?|of them|only|and|on|but)\b|\W*(?:[,.;:?!)]|$))"
ROOM_FOR = regex(  # "the charger's got outputs for two", "places for two on the charger"
    rf"\bcharger\b[^.?!;,]{{0,24}}? {PLACES} (?P<many>{FEW})\b{BEHIND}"
    rf"|\b{PLACES} (?P<here>{FEW}) (?:batteries |banks )?on (?:the|my|our|this|that) charger\b",
    re.IGNORECASE,
)
ISOLATED = "charger.isolated"
APART = regex(
    r"\b(?:outputs?|outlets?|exits|legs|channels|outs)(?: ?[,:(]+)? ?(?:\(?(?:all|both|fully|galvanically|each) )?"
    r"(?:isolated|floating|(?:galvanically )?separated?)\b(?!\s*\?| or\b| from (?:the )?(?:boat|hull))"
    r"|\b(?:outputs?|outlets?|exits|legs|channels|outs)\b[^.?!;]{0,40}"
    r"\b(?:they'?re|they are|them are|each is|both are|being)"
    r"(?: all| both| fully| galvanically| properly)* isolated\b(?!\s*\?| or\b)"
    rf"|{NUMBER}[- ]?(?:outputs?|outlets?|legs?|banks?|channels?)(?: \d+ ?a(?:mps?)?)?(?: charger| unit)?"
    r",? \(?(?:both |all |fully |galvanically )*isolated\b(?!\s*\?| or\b| from (?:the )?(?:boat|hull))",
    re.IGNORECASE,
)
UNPARTED = regex(  # "a converter without isolation", "two outputs sharing their negative"
    r"\b(?:without|with no|has no|having no|no)(?: any)?(?: galvanic)? isolation\b(?! or\b|\s*\?)"
    r"|\bnon-?isolating\b|\bnot isolating\b|\bisolated from nothing\b|\bisolat(?:es|ing) nothing\b"
    r"|\bnothing (?:that )?(?:separat|isolat|part)(?:es|s|ing)(?: them| the (?:two|one))?\b"
    r"|\b(?:sharing|share) (?:their|its|the) (?:negative|minus|neg)\b"
    r"|\b(?:charger|outputs?|outlets?)\b[^.?!;]{0,16}\bshares? (?:one|a|a common|the same) (?:negative|minus|neg)\b"
    r"|\b(?:their|the|its|with|have|has) (?:minus|negative|neg)(?:es|s)?(?: all)? in common\b",
    re.IGNORECASE,
)
CHOOSES = regex(
    r"\b(?:must|should|need|do i|does it|may|can|could|would|is an?|are|better|which)\b[^.?!;]{0,40}$", re.IGNORECASE
)
WEIGHED = regex(r"\bor(?: one| a \w+)? ?$", re.IGNORECASE)
ASKED = regex(r"\b(?:are|is|must|should|needs?|whether|if|does|not|non|no|unless|without)\b[^.?!;]{0,30}$", re.I)
OPEN = regex(r"\b(?:if|whether|wonder|unsure|unless|are they|not sure)\b", re.IGNORECASE)
ASKED_AFTER = regex(r"^[^.?!;,]{0,12}\?")


def outlets(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """How many batteries a charger can be clipped to: "it has only one pair of cables"."""
    if found := LEADS_OUT.search(scene.text):
        yield _told(found, NUMBERS.get(_many(found), 1.0))
        return
    if not _of_charger(scene):
        return
    if told := [item for item in stated if item.fact == FACT]:
        found = OF_CHARGER.search(scene.text)
        if found is not None and all(_is_asked(scene, item) for item in told):
            yield _told(found, NUMBERS.get(_many(found), 1.0))
        return
    found = (
        PAIRS.search(scene.text)
        or POST_PAIRS.search(scene.text)
        or OF_CHARGER.search(scene.text)
        or FEEDS.search(scene.text)
        or ARMED.search(scene.text)
        or ENDS_IN.search(scene.text)
        or DUAL.search(scene.text)
        or ROOM_FOR.search(scene.text)
    )
    if found is not None:
        yield _told(found, NUMBERS.get(_many(found), 1.0))
    elif found := BOTH_POLES.search(scene.text) or ONE_OUT.search(scene.text):
        yield _told(found, 1.0)


def _is_asked(scene: Scene, item: Stated) -> bool:
    """Whether a number of outputs is only asked about: "a charger of one exit. Two exits are better?"."""
    rest = re.search(r"[.?!;]", scene.text[item.span[1] :])
    return rest is not None and rest[0] == "?"


def _of_charger(scene: Scene) -> bool:
    """Whether a charger is named, or a "20 A unit" beside its outlet."""
    return "charger" in scene.heads or bool({"outlet", "output"} & scene.vocabulary and "unit" in scene.vocabulary)


def _many(found: re.Match[str]) -> str:
    names = found.groupdict()
    return str(found["many"] or names.get("only") or names.get("into") or names.get("here", "")).lower()


def _told(found: re.Match[str], many: float) -> Stated:
    start = found.start("many") if found.re.groupindex.get("many") and found["many"] else found.start()
    end = (
        found.end("many") if re.search(r"\d ?a", found[0][1:], re.IGNORECASE) else found.end()
    )  # "one-outlet 20 A unit"
    span = start, end
    return Stated(FACT, many, "", found.string[slice(*span)], span, how="grammar")


def floating(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """That a charger's outputs are isolated, where it is told and not asked."""
    if "charger" not in scene.heads and not scene.about("word:outputs", "role:charger.outputs"):
        return
    if any(item.fact == ISOLATED for item in stated) or (found := APART.search(scene.text)) is None:
        return
    if OPEN.search(found[0]):
        return
    if not ASKED.search(scene.ahead(found.start())) and not ASKED_AFTER.search(scene.text[found.end() :][:20]):
        yield Stated(ISOLATED, True, "", found[0], found.span(), how="default")


def unparted(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """That what charges keeps nothing apart: "a converter without isolation", "isolated from nothing"."""
    if any(item.fact == ISOLATED for item in stated) or not {"charger", "dcdc"} & scene.heads | _steps(scene):
        return
    found = UNPARTED.search(scene.text)
    if found is None or OPEN.search(scene.text):
        return
    before = scene.ahead(found.start())
    if not WEIGHED.search(before) and not CHOOSES.search(before):
        yield Stated(ISOLATED, False, "", found[0], found.span(), how="default")


def _steps(scene: Scene) -> set[str]:
    return {"dcdc"} if {12.0, 24.0} <= scene.figures or scene.about("word:boost") else set()
