"""What a message offers as evidence of what it asks: words, cues of the lexicon, quantities, facts, the thread."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

from grammar.reading import Message, Quantity, Stated
from grammar.text.patterns import regex
from grammar.text.tokens import cut
from service.routing.ruled_out import ruled_out

CLASSES = ("request:", "word:", "thing:", "about:", "note:")  # of the lexicon; the others serve facts and answers
MARKS = frozenset("?!+&=@/")
CHOICES = frozenset(
    [
        "battery.chemistry",
        "battery.duty",
        "bank.layout",
        "charger.kind",
        "charger.setting",
        "load.kind",
        "reading.state",
    ]
)
KINDS = {
    "cold_cranking_current": "CCA",
    "cranking_current": "CA",
    "reserve_minutes": "RC",
    "wire_gauge": "gauge",
    "group_size": "group",
    "stud_size": "stud",
    "specific_gravity": "gravity",
    "state_of_charge": "charge",
    "count": "count",
    "drop": "drop",
    "boat_length": "boat",
}
FREEZING_F = 32
LOSS = frozenset({"about:loss", "word:loss"})
LIMITING = frozenset({"than", "most", "max", "maximum", "under", "within", "below", "allow", "allowed", "allowing"})
REACH = 30  # characters about a limit of loss
SHORT, LONG = 6, 14  # words of a message: what is shorter than the first seldom asks anything of its own
ASIDE = 60  # characters about a term in which it is seen what is asked of it
TERM = "term:"  # begins the cues of the words that the glossary explains
QUOTES = frozenset("\"'‘’“”«»`")
WHAT_IS = regex(
    r"\b(?:what|wot|wat)(?:'?s| is| are| does| do|)\s+(?:(?:an?|the|this|that|it|actually|exactly|even|really|precisely"
    r"|meant|by|called|so)\s+)*[\"'‘“«`]?$",
    re.IGNORECASE,
)
EXPLAIN = regex(
    r"\b(?:explain|define|decode|translate|(?:meaning|definition) of|spell(?:s|ed)? out|english for)\s+"
    r"(?:(?:an?|the|this|that|word|term|letters)\s+)*[\"'‘“«`]?$",
    re.IGNORECASE,
)
NO_MORE = regex(
    r"[\"'’”»`]?\s*(?:$|[?.,;:!)\n]|\b(?:mean|means|meaning|stands?|even|actually|exactly|really|when|is|for|and)\b)",
    re.IGNORECASE,
)
LAST: list[
    tuple[Message, tuple[str, ...], tuple[Sign, ...]]
] = []  # of one message alarms, topics and doubts are sought
ENDINGS = (("ies", "y"), ("ing", ""), ("ied", "y"), ("ed", ""), ("es", ""), ("s", ""), ("ly", ""))


class Sign(NamedTuple):
    """A piece of evidence: its name in the table of points, and where in the text it stands."""

    name: str
    at: int


def evidence(message: Message, context: Iterable[str] = ()) -> list[Sign]:
    """Everything in a message, and in the topics of the turn before, that the table of points may weigh."""
    context = tuple(context)
    for same, before, signs in LAST:
        if same is message and before == context:
            return list(signs)
    signs = tuple(_signs(message, context))
    LAST[:] = [(message, context, signs)]
    return list(signs)


def _signs(message: Message, context: Iterable[str]) -> list[Sign]:
    quantities = {item.span: item for item in reversed(message.quantities)}  # the low end stands for a range
    signs = [Sign(f"quantity:{name}", span[0]) for span, item in quantities.items() for name in quantity_names(item)]
    words = sorted([*plain_words(message, quantities), *quantity_places(quantities)], key=lambda item: item[1])
    signs += [Sign(word, at) for word, at in words if word[0] != "<"]
    signs += neighbours(message, words)
    spared = limited(message)
    signs += [
        Sign(cue.name, cue.span[0])
        for cue in message.cues
        if cue.name.startswith(CLASSES) and not (cue.name in LOSS and cue.span[0] in spared)
    ]
    signs += fact_signs(message.stated)
    signs += term_signs(message)
    out = ruled_out(message)
    if out:
        signs = [sign for sign in signs if not any(start <= sign.at < end for start, end in out)]
    signs += [Sign("clause:asks" if item.asks else "clause:tells", item.span[0]) for item in message.clauses]
    signs += [Sign(name, 0) for name in thread_names(message, context)]
    return signs


def limited(message: Message) -> range:
    """The stretch that only tells what may be lost in a cable, and asks for no loss: "lose no more than 3 %"."""
    drop = next((item for item in message.stated if item.fact == "cable.drop"), None)
    if drop is None:
        return range(0)
    start = max(drop.span[0] - REACH, 0)
    before = message.text[start : drop.span[0]].lower().split()
    return range(start, drop.span[1] + REACH) if LIMITING.intersection(before) else range(0)


def plain_words(message: Message, quantities: Iterable[tuple[int, int]]) -> Iterator[tuple[str, int]]:
    """The words outside quantities, by their stems, and the marks that tell something."""
    held = {at for start, end in quantities for at in range(start, end)}
    for word, token in zip(message.words, cut(message.text), strict=False):
        if token.start not in held and (word[0].isalpha() or word in MARKS):
            yield stem(SHORTHAND.get(word, word)), token.start


def quantity_places(quantities: Mapping[tuple[int, int], Quantity]) -> Iterator[tuple[str, int]]:
    """The quantities as words: "<ampere>" for any current."""
    for span, item in quantities.items():
        yield f"<{quantity_names(item)[0].lower()}>", span[0]


def neighbours(message: Message, words: Sequence[tuple[str, int]]) -> Iterator[Sign]:
    """Two words that follow each other in one clause: "which_fus", "<ampere>_thruster"."""
    starts = [clause.span[0] for clause in message.clauses][1:]
    placed = [(word, at, bisect_right(starts, at)) for word, at in words]
    for (word, at, clause), (after, _, next_clause) in pairwise(placed):
        if clause == next_clause:
            yield Sign(f"{word}_{after}", at)


def stem(word: str) -> str:
    """A word without the endings of number and tense. Crude on purpose: both sides are cut alike."""
    for ending, instead in ENDINGS if len(word) > 4 else ():
        if word.endswith(ending) and len(word) - len(ending) >= 3 and not word.endswith(("ss", "us", "is")):
            word = word[: -len(ending)] + instead
            if len(word) > 3 and word[-1] == word[-2] and word[-1] not in "ls":
                word = word[:-1]
            break
    return word[:-1] if len(word) > 4 and word.endswith("e") else word


def quantity_names(item: Quantity) -> list[str]:
    """What a quantity counts as: its kind or unit, and for volts and temperatures the region it lies in."""
    if item.kind in KINDS:
        return [KINDS[item.kind]]
    value = item.value
    name = item.unit or "number"
    if isinstance(value, str):
        return [name]
    if item.kind == "system_voltage":
        return ["system"]
    if name == "volt" or (name == "number" and value % 1 and 5 <= abs(value) < 32):  # -12.6: the leads are swapped
        return ["volt", volt_name(abs(value))]
    if name.startswith("degree") or (name == "number" and value < 0):
        cold = value <= (FREEZING_F if name == "degree_Fahrenheit" else 0)
        return ["degree", "frost"] if cold else ["degree"]
    if name == "number":
        return ["number" if value < 10 else "number-of-100" if value >= 100 else "number-of-10"]
    return [name]


def volt_name(value: float) -> str:
    """Where a voltage lies for a 12 V battery (24 V halved): charging, at rest, pulled down, or elsewhere."""
    volts = value / 2 if value > 20 else value
    regions = ((16.0, "volt-other"), (13.3, "volt-charging"), (11.6, "volt-resting"), (5.0, "volt-low"))
    return next((name for low, name in regions if volts >= low), "volt-other")


def fact_signs(stated: Iterable[Stated]) -> Iterator[Sign]:
    """The facts, the values of those that are a choice, and "two:" where a fact has two values."""
    seen: dict[str, set[object]] = {}
    for item in stated:
        yield Sign(f"fact:{item.fact}", item.span[0])
        if item.fact in CHOICES:
            yield Sign(f"fact:{item.fact}={item.value}", item.span[0])
        values = seen.setdefault(item.fact, set())
        values.add(item.value)
        if len(values) == 2:
            yield Sign(f"two:{item.fact}", item.span[0])


def term_signs(message: Message) -> Iterator[Sign]:
    """A term that is put in quotation marks, and one that "what is", "what does" stand right before: "what's float"."""
    for cue in message.cues:
        if cue.name.startswith(TERM):
            first, last = cue.span
            before, after = message.text[max(first - ASIDE, 0) : first], message.text[last : last + ASIDE]
            if before[-1:] in QUOTES and after[:1] in QUOTES:
                yield Sign("term:quoted", cue.span[0])
            if (WHAT_IS.search(before) and NO_MORE.match(after)) or EXPLAIN.search(before):
                yield Sign("term:asked", cue.span[0])


def thread_names(message: Message, context: Iterable[str]) -> Iterator[str]:
    """The topics before, told apart by whether this message asks anew, is short, or only changes a fact."""
    anew = any(cue.name.startswith("request:") for cue in message.cues)
    size = "short" if len(message.words) <= SHORT else "long" if len(message.words) > LONG else "middling"
    for topic in context:
        yield f"before:{topic}"
        yield f"before-{'asking' if anew else 'telling'}:{topic}"
        yield f"before-{size}:{topic}"
        if message.says("note:ellipsis"):
            yield f"before-ellipsis:{topic}"


SHORTHAND = {  # as typed on a phone
    **dict.fromkeys(("wot", "wat", "wots", "whats", "wats", "whatll"), "what"),
    **dict.fromkeys(("hows", "howd", "howll"), "how"),
    **dict.fromkeys(("u", "ya", "yous"), "you"),
    **dict.fromkeys(("ur", "yer"), "your"),
    **dict.fromkeys(("batt", "batts", "bat", "accu", "accus", "akku", "akkus", "batteries"), "battery"),
    **dict.fromkeys(("plz", "pls"), "please"),
    **dict.fromkeys(("thx", "thks", "thanx", "tks", "ta", "cheers", "thank"), "thanks"),
    **dict.fromkeys(("cos", "coz", "cuz", "bcos", "bc"), "because"),
    **dict.fromkeys(("wd", "wud", "wld", "itd"), "would"),
    **dict.fromkeys(("cd", "cud"), "could"),
    **dict.fromkeys(("shd", "shud"), "should"),
    **dict.fromkeys(("gonna", "gunna"), "going"),
    **dict.fromkeys(("gotta", "gotto"), "must"),
    **dict.fromkeys(("thrusters", "bowthruster", "thrustr"), "thruster"),
    **dict.fromkeys(("wires",), "wire"),
    **dict.fromkeys(("nite", "overnite"), "night"),
    **dict.fromkeys(("isnt", "aint"), "not"),
    "wheres": "where",
    "whens": "when",
    "whys": "why",
    "whos": "who",
    "thats": "that",
    "theres": "there",
    "its": "it",
    "im": "i",
    "ive": "i",
    "wanna": "want",
    "r": "are",
    "y": "why",
    "n": "and",
    "tho": "though",
    "thru": "through",
    "b4": "before",
    "abt": "about",
    "prob": "probably",
    "dunno": "know",
}
