"""One minus of a converter's two sides: "both earth on the engine block", "a single black terminal common to both"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

COMMON = "converter.common_negative"
NEXT = (
    r"(?:and|but|while|with|the|up|to|so|sides?|end|on|at|from|into|aft|astern|forward|for|in|is|what|how|a|i|we|bow"
    r"|forrard|back)"
)
V = rf"(?: ?-?v(?:olts?)?\b|(?=\s*(?:[,;:?!)/]|\.(?!\d)|$|{NEXT}\b)))"  # not "12 hp", "12 lights", "24 hours"
ASKED = regex(
    r"\b(?:should|must|do|does|may|can|could|whether|if|not|don'?t|doesn'?t|never)\b[^.?!;]{0,24}$", re.IGNORECASE
)
GIVEN_THAT = regex(r"\b(?:if|where|when|since|as) (?:the |all (?:the )?|both |my |our )?$", re.IGNORECASE)
UNKNOWN = regex(
    r"\b(?:know|sure|unsure|idea|clue|tell|say|says|wonder\w*|unclear|check|dunno|remember|ask\w*|see)\b", re.IGNORECASE
)
TWO = (
    r"(?:both(?: sides| systems| of them)?|each side|(?:the )?two sides|sides"
    rf"|(?:12|24){V}(?: side)? and (?:the )?(?:12|24){V}(?: sides?)?)"
)
EARTHED = regex(  # "the 12 V side and the 24 V side both earth on the engine block"
    rf"\b{TWO}(?: of the [\w-]+)? (?:are |is |get |go |come |both |all |sit )*"
    r"(?:(?:earth|ground|negative|return)(?:s|ed)? (?:on|to|at|in|through|via) (?:the |one |a )?(?:same )?"
    r"(?:engine|block|motor|hull|keel|bus|bar|busbar|bolt|stud|frame|point|place)"
    r"|shar(?:e|ing) (?:an?|one|the|their) (?:earth|ground|return))\b"
    r"|\b(?:everything|every one|the lot|(?:it|they)(?: are|'?re| is|'?s) all|all of (?:it|them))(?:'?s| is| are)?"
    r" (?:all )?(?:earthed|grounded|bonded) (?:on|to|at|in|through|via) (?:the )?(?:same|one|a single)"
    r" (?:engine|block|bus|bar|busbar|bolt|stud|frame|point|place)\b",
    re.IGNORECASE,
)
ONE_MINUS = regex(
    r"\b(?:minus(?:es)?|negatives?|negs?|grounds?|earths?)\b(?! ?\?)"
    r"(?: (?:are|is|on board|aboard|on (?:the|this) boat|here|come|all|both|do|does"
    r"|being|of|them|lot|the|cables?|leads?|wires?|everything|it|run|taken|brought|led))*"
    r" (?:one and the same(?! as)|(?:(?:land|end|meet|sit|finish|go|come|bolt(?:ed)?|join(?:ed)?)s?(?: up"
    r"| together| down| all)* )?(?:on|at|to)"
    r" (?:one|a single|the one|the same|a common|a shared)(?: \w+){0,2}?"
    r" (?:bus ?bar|bus|bar|stud|bolt|post|block|point|lump|terminal|plate))\b",
    re.IGNORECASE,
)
ONE_PLACE = regex(
    r"\b(?:both|the two|all the|all) (?:minus(?:es)?|negatives?|neg)(?: (?:cables?|leads?|wires?|posts?))?"
    r"(?: \w+){0,2}? (?:on|at|to|in|onto|into) "
    r"(?:(?:the |an? )?(?:same|one|single)(?: \w+)? (?:block|bus ?bar|bar|bolt|stud|point|post|frame)"
    r"|the engine(?: block)?|the (?:motor|engine) block)\b"
    r"|\b(?:the|my|our|all|every) (?:minus|negative|neg)(?: side)? (?:is|goes to) (?:all )?(?:one|a single|the same)"
    r"(?: \w+)? (?:bus ?bar|bar|bolt|stud|block|rail)\b",
    re.IGNORECASE,
)
SHARED = regex(  # "all negatives on the boat are common"
    r"\b(?:all|both)(?: of)?(?: the| our| my)? (?:minus(?:es)?|negatives?|grounds?)(?: (?:cables?|leads?|wires?))?"
    r"(?: (?:on board|aboard|here|(?:on|of) (?:the|this|our|my) boat))? (?:are|is) (?:all )?"
    r"(?:common|shared|joined|tied together|linked|one)\b",
    re.IGNORECASE,
)
NEGATIVE = r"(?:black|minus|negative|neg|earth|ground)"
POST = r"(?:terminals?|studs?|posts?|bolts?|poles?|clamps?|screws?|connections?)"
ONE_POST = regex(  # "a single black terminal common to both sides", "a common black post"
    rf"\b(?:one|single)(?: single| common| shared)? {NEGATIVE}(?: {POST})?\b[^.?!;,]{{0,24}}"
    r"\b(?:both(?: sides| of them)?(?! (?:out|leg|bank|batter|channel|lead))"
    r"|in and out|input and output|the two sides|each side)\b"
    rf"|\b(?:common|shared) {NEGATIVE} {POST}\b"
    rf"|\b(?:both|both sides|the two sides)(?: of [^.?!;,]{{3,24}})? (?:hang|sit|rest|live|run|are)"
    rf" on (?:the same|one) {NEGATIVE}\b",
    re.IGNORECASE,
)


def earthed(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """One negative of both sides, told as their earth."""
    spoken = "dcdc" in scene.heads or scene.about("word:boost") or {12.0, 24.0} <= scene.figures
    if not spoken or any(item.fact == COMMON for item in stated):
        return
    if found := EARTHED.search(scene.text):
        yield Stated(COMMON, True, "", found[0], found.span(), how="grammar")


def one_minus(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """One negative of both sides, told of their minuses."""
    if any(item.fact == COMMON for item in stated):
        return
    found = ONE_MINUS.search(scene.text) or SHARED.search(scene.text)
    if found is not None and not _is_asked(scene.ahead(found.start())):
        yield Stated(COMMON, True, "", found[0], found.span(), how="grammar")


def _is_asked(before: str) -> bool:
    """Whether it is asked: "are the negatives one?"; "does it serve if the negatives are one" takes it as given."""
    found = ASKED.search(before)
    if found is None:
        return False
    return not GIVEN_THAT.search(before) or UNKNOWN.search(before) is not None


def one_place(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """One negative of a converter's two sides: "both minuses land on one engine block"."""
    steps = "dcdc" in scene.heads or scene.about("word:boost") or {12.0, 24.0} <= scene.figures
    if not steps or any(item.fact == COMMON for item in stated):
        return
    found = ONE_POST.search(scene.text)
    if found is not None and ASKED.search(scene.ahead(found.start())):
        found = None
    if found := found or ONE_PLACE.search(scene.text):
        yield Stated(COMMON, True, "", found[0], found.span(), how="grammar")
