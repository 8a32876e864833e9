"""What somebody else says, to be checked: "the yard says THAT p. Is that right?".

p is told of nobody: the figures in it that it claims (what two batteries are said to give, the loss that is said to be
the limit) are no facts, and yes and no answer p and not the fitness of what it tells of.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import lru_cache

from grammar.reading import Message, Span, Stated
from grammar.text.patterns import regex
from service.reply import Answer
from service.routing.request import Request
from service.wording import own_sums
from service.wording.summed import SUMS, has_opening, lower

SAYS = regex(
    r"""(?:\b(?P<who>[\w'’]{1,30}),?\s+(?:\w+ly\s+|once\s+|just\s+|still\s+|also\s+|has\s+|have\s+)?
        (?:says?|said|claims?|claimed|reckons?|reckoned|insists?|insisted|wrote|writes|thinks?|thought|believes?|swears?
          |swore|maintains?|argues?|argued|states?|heard|(?:told|tells|assured|assures)(?:\s+(?:(?:my|our|the|a|his|her)\s+)?(?!never\b|not\b|minus\b)\w+)?)
      | \bis\s+it\s+(?:really\s+|still\s+)?(?:true|right|correct|so|a\s+fact)
      )(?:\s+(?:to\s+(?:me|us)\s+)?that)?[\s,:]+""",
    re.IGNORECASE | re.VERBOSE,
)
INSTRUMENTS = frozenset(  # whose word is a reading and no opinion
    (
        *("it", "label", "meter", "multimeter", "voltmeter", "plate", "sticker", "gauge", "display", "screen", "app"),
        *("monitor", "manual", "box", "charger", "hydrometer", "bms", "panel", "sheet", "print", "tester", "needle"),
        *("forecast", "leaflet", "handbook", "battery", "insulation", "cable", "fuse", "to", "that", "which", "what"),
        *("thing", "thingy", "gadget", "device", "gizmo", "float", "reading", "readout", "clamp", "probe", "tool"),
    )
)
CHECKS = regex(
    r"""\b(?:is|are|was|were|isn['’]?t)\s+
          (?:that|this|it|he|she|they|the\s+\w+(?:\s\w+)?(?=\s+(?:right|correct|true|so|fair|sensible|wrong|mistaken|nonsense)\b))
          (?:\s+(?P<way>right|correct|true|so|fair|sensible|wrong|mistaken|nonsense|rubbish|bunk|a\s+myth))?\s*(?:\?|$|,|\band\b|(?<=\w\s)or\b)
      | (?:^|[.,;!?:\s])(?:so\s+)?(?:true|right|correct|agreed?|fair|sensible|really)\s*\?
      | \bdo(?:es)?\s+(?:you|that|the\s+desk)\s+(?:agree|hold|make\s+sense|stand)
      | \b(?:does|do)\s+(?:he|she|they|the\s+\w+)\s+have\s+a\s+point\b
      | \b(?:agree|right|true|correct)\s*$""",
    re.IGNORECASE | re.VERBOSE,
)
OBJECTS = regex(  # one who finds fault with what they tell of
    r"""\b(?:grumbl|moan|object|complain|frown|tut|fuss|protest|disapprov|refus|reject|scold|winc|sigh|griev|nag)\w*
      | \b(?:shook|shakes?|shaking)\s+(?:his|her|their|the)\s+heads?\b
      | \b(?:not|isn['’]?t|wasn['’]?t|aren['’]?t|never)\s+(?:\w+\s+){0,2}?
          (?:happy|pleased|keen|impressed|convinced|fond)\b
      | \b(?:doesn['’]?t|didn['’]?t|don['’]?t|(?:does|did|do)\s+not)\s+(?:like|approve|want|agree|accept|fancy)\b
      | \b(?:said|says|say)\s+no\b|\b(?:won['’]?t|wouldn['’]?t|doesn['’]?t)\s+let\b|\b(?:forb[ia]d|advis|warn)\w*
      | \bunhappy\b|\bhas\s+(?:his|her|their)?\s*doubts\b|\bhave\s+(?:their\s+)?doubts\b|\bpulled\s+a\s+face\b""",
    re.IGNORECASE | re.VERBOSE,
)
SIDED_WITH = regex(
    r"""\b(?:is|are|was|were)\s+(?:he|she|they|the\s+\w+(?:\s\w+)?)\s+(?:really\s+|perhaps\s+)?
          (?P<way>right|correct|fair|wrong|mistaken|fussy|too\s+\w+|overdoing\s+it)\b
      | \b(?:does|do|has|have)\s+(?:he|she|they|the\s+\w+)\s+(?:have\s+|got\s+)?a\s+point\b""",
    re.IGNORECASE | re.VERBOSE,
)
MOTIVE = regex(  # asked of one who says so, and neither yes nor no to what is said
    r"\b(?:is|are)\s+(?:he|she|they|it|that|this)\s+(?:just|only|simply|merely)\s+(?:\w+\s+){0,4}?"
    r"(?:sell\w*|sales|money|work|job|business|commission|turnover)\b",
    re.IGNORECASE,
)
AGREES = ("", "right", "correct", "fair")
DOUBTS = ("wrong", "mistaken", "nonsense", "rubbish", "bunk", "myth")
END = regex(r"[.!?;\n](?=\s|$)")
WHY = regex(r"\b(?:because|since|as it|as the|on the grounds)\b|,\s*same as\b|\bsame as\b", re.IGNORECASE)
RESULT = regex(  # what p says that something comes to
    r"\b(?:gives?|giving|makes?|making|gets?|is|are|has|have|needs?|wants?|takes?|asks? for|becomes?|equals?|means?"
    r"|totals?|comes? to|adds? up to|doubles? to)"
    r"(?:\s+(?:him|her|me|us|you|them|a|an|about|only|really|in fact|the same as))*\s*$|=\s*$",
    re.IGNORECASE,
)
NEVER_TOLD = frozenset({"cable.drop"})  # a loss that p names is a rule it appeals to
NOT_GOOD = regex(
    r"\b(?:not|isn['’]?t|aren['’]?t|won['’]?t|can['’]?t|cannot|never|no)\s+(?:\w+\s+){0,2}$", re.IGNORECASE
)
SPOKEN_AGAINST = regex(  # what p says that one may not do, or that a thing will not
    r"""\b(?:can['’]?t|cannot|must\s*n['’]?t|should\s*n['’]?t|won['’]?t|(?:must|should|may|will)\s+(?:not|never)|never)\s+
        (?!be\b|need\b|hurt|harm|damage|matter)\w+
      | \bnot\s+to\s+\w+|\bnot\s+allowed\b|\bno[-\s]no\b|^\s*no\b""",
    re.IGNORECASE | re.VERBOSE,
)
CALLED_BAD = regex(  # "a charger with two outputs is nonsense"
    r"\b(?:is|are|was|were|would\s+be|['’]s)\s+(?:\w+\s+){0,2}?(?:nonsense|rubbish|stupid|silly|pointless|useless|mad|crazy)\b",
    re.IGNORECASE,
)
DENIED = regex(r"\b(?:not|never|no)\b", re.IGNORECASE)
RULE_PUT_UP = regex(  # "lithium may not be charged at -5. True?": a prohibition, and whether it is so
    r"""(?:(?<!\bi\s)(?<!\bwe\s)(?<!\bhe\s)(?<!\bshe\s)(?<!\bthey\s)\b
          (?:can['’]?t|cannot|must\s*n['’]?t|should\s*n['’]?t|(?:must|should|may)\s+(?:not|never)|never)\s+
          (?!be\b|have\b|get\b|hurt|harm|need)\w+
        | \b(?:can['’]?t|cannot|must\s*n['’]?t|should\s*n['’]?t|(?:must|may|should)\s+not)\s+be\s+\w+(?:ed|t)\b
        | \bno[-\s]no\b|\bforbidden\b|\b(?:not|never)\s+allowed\b|\bis\s+out\s+of\s+the\s+question\b)
      [^?!]{0,70}?(?:[,.;:–-]\s*|\s)(?:is\s+(?:that|this|it)\s+)?(?:really\s+)?(?:true|(?<!\ball\s)right|correct|so)\s*\?""",
    re.IGNORECASE | re.VERBOSE,
)
ALIKE = {  # facts that are set against each other in a sum
    "battery.ca": "cranking",
    "battery.cca": "cranking",
    "battery.reserve": "held",
    "battery.capacity": "held",
}
Appeal = tuple[Span, frozenset[str]]  # a stretch that speaks of a rule, and the facts that are no facts in it
CLOSE = regex(  # "is he close?", "is that far off?"
    r"\b(?:is|are|was|were)\s+(?:he|she|they|it|that|this|the\s+\w+)\s+"
    r"(?:(?:close|near|nearly\s+right|about\s+right|roughly\s+right|spot\s+on)|(?P<off>(?:far|way|miles)\s+(?:off|out)))\b",
    re.IGNORECASE,
)
SAID_FIGURE = regex(r"(?P<value>\d+(?:[.,]\d+)?)\s*(?P<unit>volts?|v|ah|%)(?!\w)", re.IGNORECASE)
HELD = frozenset({"drop", "drop_percent", "capacity", "bank_capacity", "bank_voltage"})
CLOSE_BY = 0.15  # a share by which what is called close may be off
REACH = 60  # characters before a word in which what leads to it is looked for
OR_ELSE = regex(r"[^.?!;]{0,15}\bor\b(?! not\b)", re.IGNORECASE)
TO_CHECK = regex(  # asked before the claim: "is he wrong when he says that"
    r"\b(?:is|are|was|were)\s+(?:he|she|they|the\s+\w+)\s+(?P<way>right|correct|wrong|mistaken)\s+(?:when|if|in|as)?\s*$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Claim:
    """What is claimed, by its place, and how it is put to the desk."""

    span: Span
    reason: int  # where the reason given begins; the end of the span where none is
    checked: bool  # the desk is asked whether it is so
    doubted: bool  # ... or whether it is not: "is he wrong?"
    asked: Span  # from the claim to the end of what asks of it


@lru_cache(maxsize=4)  # each answer to a message asks it
def claim(text: str) -> Claim | None:
    """The first claim of a text: who says so is named, and what follows is put up for checking. None without one."""
    for said in SAYS.finditer(text):
        who = (said["who"] or "").lower()
        first = TO_CHECK.search(text, max(0, said.start() - REACH), said.start())
        if who in INSTRUMENTS and first is None:
            continue
        start, whole = said.end(), said["who"] is None
        end = next((found.start() for found in END.finditer(text, start)), len(text))
        check = first or CHECKS.search(text, start)
        if check and start <= check.start() < end:
            end = check.start()
        if end <= start:
            continue
        why = WHY.search(text, start, end)
        return Claim(
            (start, end),
            why.start() if why else end,
            whole or check is not None,
            check is not None and (check["way"] or "").split(" ")[-1].lower() in DOUBTS,
            (first.start() if first else said.start(), max(end, check.end() if check else end)),
        )
    return None


def unclaimed(message: Message, appeals: Iterable[Appeal] = ()) -> tuple[Message, tuple[Stated, ...]]:
    """The message without the facts that are only claimed, and those. `appeals`: what misbeliefs in it appeal to."""
    found = claim(message.text)
    appealed = [
        item
        for item in message.stated
        if any(start <= item.span[0] < end and item.fact in facts for (start, end), facts in appeals)
    ]
    own = own_sums.found(message)
    taken = [
        item
        for item in message.stated
        if item in appealed or item in own or (found and _is_claimed(item, message, found))
    ]
    if not taken:
        return message, ()
    kept = [item for item in message.stated if item not in taken]
    first = {item.fact for item in kept if item.of == 1}
    kept = [item if item.fact in first or item.of == 1 else replace(item, of=1) for item in kept]
    only_told = set(own) - set(own_sums.put_up(message))
    return replace(message, stated=tuple(kept)), tuple(item for item in taken if item not in only_told)


def _is_claimed(item: Stated, message: Message, found: Claim) -> bool:
    """Whether a figure of p is one that it claims: a limit, or what figures before it are said to come to."""
    at = item.span[0]
    if not found.checked or not found.span[0] <= at < found.span[1]:
        return False
    if item.fact in NEVER_TOLD:
        return True
    before = [other.fact for other in message.stated if found.span[0] <= other.span[0] < at]
    told = any(ALIKE.get(fact, fact) == ALIKE.get(item.fact, item.fact) for fact in before)
    result = RESULT.search(message.text, max(found.span[0], at - REACH), at)
    return item.fact in SUMS and told and result is not None


def way(message: Message, request: Request, alone: bool) -> str:
    """How a claim puts a question: "good" where p calls it so, else "bad"; "" where the question asks of no claim."""
    found = claim(message.text)
    if found is not None and not found.checked and MOTIVE.search(message.text, found.span[1]):
        return "open"
    if found is None or not found.checked:
        return objected(message.text, request, alone) or put_up(message.text, request, alone)
    if not alone and not (request.span[0] < found.asked[1] and found.asked[0] < request.span[1]):
        return ""
    bad = is_bad(message, (found.span[0], found.reason))
    return "good" if bad == found.doubted else "bad"


def own(message: Message, claimed: Iterable[Stated]) -> str:
    """ "good" where what is claimed is the customer's own sum, which nobody else says; "" else, and of a choice."""
    sums = tuple(claimed)
    chosen = any(OR_ELSE.match(message.text, item.span[1]) for item in sums)  # "do I get 220 Ah or 110?"
    return "good" if sums and not chosen and claim(message.text) is None else ""


def objected(text: str, request: Request, alone: bool) -> str:
    """How one who finds fault puts a question: "the surveyor grumbles about my fuse. Is he right?"; "" without one."""
    fault = OBJECTS.search(text)
    asked = SIDED_WITH.search(text, fault.end()) if fault else None
    if asked is None or not (alone or request.span[0] <= asked.start()):
        return ""
    return "bad" if (asked["way"] or "").lower() in AGREES else "good"


def put_up(text: str, request: Request, alone: bool) -> str:
    """ "bad" where a prohibition is put up by nobody in particular: "gel may not be equalised, right?"; else ""."""
    rule = RULE_PUT_UP.search(text)
    return "bad" if rule and (alone or (request.span[0] < rule.end() and rule.start() < request.span[1])) else ""


def is_bad(message: Message, span: Span) -> bool:
    """Whether p speaks of something bad: "too thin", "over the limit", "not enough"."""
    bad = [cue for cue in message.cues if cue.name == "put:bad" and span[0] <= cue.span[0] < span[1]]
    if any(not NOT_GOOD.search(message.text, max(span[0], cue.span[0] - REACH), cue.span[0]) for cue in bad):
        return True  # "it is flat", not "it isn't flat"
    if SPOKEN_AGAINST.search(message.text[slice(*span)]):
        return True
    called = CALLED_BAD.search(message.text, *span)
    if called and not DENIED.search(called[0]):
        return True
    good = [cue for cue in message.cues if cue.name == "put:good" and span[0] <= cue.span[0] < span[1]]
    return any(NOT_GOOD.search(message.text, max(span[0], cue.span[0] - REACH), cue.span[0]) for cue in good)


def near_enough(answer: Answer, text: str) -> Answer | None:
    """The answer to "the yard says 1 V. Are they close?", by the figure of that unit; None where it is not so put.

    An answer without such a figure, which is not what was asked, keeps no yes or no.
    """
    found = claim(text)
    asked = CLOSE.search(text, found.span[0]) if found else None
    said = SAID_FIGURE.search(text, found.span[0], asked.start()) if found and asked else None
    if asked is None or said is None:
        return None
    told, unit = float(said["value"].replace(",", ".")), said["unit"][:2].upper().rstrip("O")
    rest = answer.headline.partition(": ")[2] if has_opening(answer.headline) else answer.headline
    own = [float(item.value) for item in answer.figures if item.unit.upper() == unit and item.name in HELD]
    if not own:
        return replace(answer, headline=f"{rest[:1].upper()}{rest[1:]}")
    near = abs(own[0] - told) <= CLOSE_BY * max(own[0], told)
    return replace(answer, headline=f"{'Yes' if near != bool(asked['off']) else 'No'}: {lower(rest)}")
