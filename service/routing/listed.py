"""The items of a message: a numbered list, several questions, a list of wants. Each may ask a topic of its own."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence, Set
from functools import lru_cache

from grammar.reading import Message, Span
from grammar.text.patterns import regex
from service.routing.framed import framed
from service.told import charger_wished
from service.topic import CIRCUIT

MARK = regex(
    r"(?:^|(?<=[\s.,;:(?!]))(?:\(?([1-9]|[a-e]|i{1,3})[).:](?=\s)|(?:question|point) ([1-9])[,.:)]?(?=\s))",
    re.MULTILINE | re.IGNORECASE,
)
LABELS = (tuple("123456789"), tuple("abcde"), ("i", "ii", "iii"))
SENTENCE = regex(r"(?:[^.?!\n]|\.(?=\w))+[.?!]*")
ELLIPTIC = regex(  # "At -20?", "Which for AGM?", "in lay-up?": the question before, with another fact
    r"\W*(?:(?:and|or|but|then|which|what) )*(?:at|in|on|for|with|w/|from|under|over|half)\b(?:\W+[\w.]+){0,3}\W*",
    re.IGNORECASE,
)
ANSWERED = regex(r"\s*(?:yes|no|nope|yep|none)\b", re.IGNORECASE)  # "Should it be AGM? Yes."
APART = regex(r"[,;&+]| [/–-] |\b(?:and|plus|n|also)\b", re.IGNORECASE)
ORDERED = regex(r"\b(?:please|pls|plz|need(?:ed)?|wanted|quote|tell me|give me|looking for)\b", re.IGNORECASE)
ASKED = regex(r"\?|\b(?:want|what|which)\b", re.IGNORECASE)
TELLS = regex(
    r"\d|\b(?:ha(?:ve|s|d|ven't|vent)|got|fit(?:ted|s)?|there|came|comes|with|by|from|in|on|no|not|if|my|same|new|old)\b",
    re.IGNORECASE,
)
IS = regex(r"\b(?:is|are|was|were|has|have|had|stays?|waiting|needs? no)\b|\w'(?:s|re|ve)\b", re.IGNORECASE)
ASKS = regex(
    r"\?|^\W*(?:is|are|am)\b|\b(?:enough|what|which|who|when|where|why|how|whether|can|may|could|should|does|do|will|would|ok|please)\b",
    re.IGNORECASE,
)  # an item that asks; "charger's broken" tells
HALVES = regex(  # what begins a question of its own within a sentence: "how long will it last, and can I ..."
    r",?\s+(?:and|plus|also|&|n)\s+(?=(?:also |then |if so )?(?:what|whats|how|which|can|could|does|do|is|are|will"
    r"|would|should|may|must|where|when|why|who)\b)",
    re.IGNORECASE,
)
OPENS = regex(  # a question without its mark
    r"\W*(?:(?:and|so|but|also) )?(?:what|whats|which|how|where|when|why|who|is|are|does|do|can|could|will|would|should"
    r"|may|must)\b",
    re.IGNORECASE,
)
INDIRECT = regex(  # "and my wife asks if gel is the right kind"
    r"\b(?:asks|wonders|wants to know|wondering|like to know|need to know)"
    r" (?:if|whether|how|what|which|when|why|where)\b",
    re.IGNORECASE,
)
PART = regex(r"[^;]+")
BRIEF = 6  # words of a part of shorthand
MOST = 9  # items: a longer row of questions is no list that somebody wants answered
FEW = 4  # words of a want: "metric cable please"
CHARGING = frozenset({"charger-banks", "charger-setting"})
FILLING = frozenset({"charger-banks", "charger-setting", "charger-size", "charge-time"})
SUPPLY = frozenset({"bank-size", "run-check"})  # beside which the charger for the battery is a question of its own
KINDS = frozenset({"battery-type", "battery-duty", "bank-size", "run-check", "charger-setting"})  # these tell the kind
WHICH_KIND = regex(  # "which sort do I want", where batteries are spoken of
    r"\b(?:which|what) (?:sort|kind|type)s?(?: of (?:a )?batter(?:y|ies))? (?:do|should|would|must|shall) (?:i|we)"
    r" (?:want|need|get|buy|take|fit|choose)\b",
    re.IGNORECASE,
)
CHARGED = FILLING | {"dc-dc", "solar"}
READINGS = frozenset({"rest-voltage", "specific-gravity"})
WANTS: tuple[
    tuple[re.Pattern[str], str, frozenset[str], frozenset[str]], ...
] = (  # what is only named in a list, where a topic beside it is asked and these facts are told
    (regex(r"\b(?:fuse|fusing|breaker)\b", re.IGNORECASE), "fuse-size", CIRCUIT, frozenset()),
    (regex(r"\b(?:cables?|wires?|gauge)\b", re.IGNORECASE), "cable-size", CIRCUIT, frozenset({"cable.length"})),
    (
        regex(
            r"\b(?:right|enough|good|correct) (?:amps|amperage|current)\b|\bamps? \w*\b(?:right|enough|ok|good)",
            re.IGNORECASE,
        ),
        "charger-size",
        CHARGING,
        frozenset({"charger.current", "battery.capacity"}),
    ),
    (regex(r"\b(?:smallest|lowest|least|minimum|min) cca\b", re.IGNORECASE), "bank-size", CIRCUIT, frozenset()),
    (
        regex(r"\b(?:absorb|absorption|charg(?:e|ing)) ?(?:v|volts?|voltage)\b", re.IGNORECASE),
        "charger-setting",
        FILLING,
        frozenset({"battery.chemistry"}),
    ),
    (
        regex(r"\b(?:chgr|charger)s? ?(?:a|amps?|size)\b", re.IGNORECASE),
        "charger-size",
        FILLING | {"bank-wiring"},
        frozenset({"battery.capacity"}),
    ),
    (regex(r"\bfreez\w*", re.IGNORECASE), "freeze-point", READINGS, frozenset()),
    (
        regex(r"\b(?:tot(?:al)?|bank|together) (?:v|volts?|ah|amp[- ]?hours|cca|wh|capacity)\b", re.IGNORECASE),
        "bank-wiring",
        FILLING,
        frozenset({"battery.count", "battery.capacity"}),
    ),
)
LISTS = frozenset().union(*(beside for _, _, beside, _ in WANTS))
ROW = {  # what a job is made of; three of them named in a row are three wants, where one of them is asked
    "bank-size": regex(r"\b(?:batter(?:y|ies)|batts?|banks?)\b", re.IGNORECASE),
    "cable-size": regex(r"\b(?:cables?|copper|wires?|wiring|gauge)\b", re.IGNORECASE),
    "fuse-size": regex(r"\b(?:fuses?|fusing|breakers?)\b", re.IGNORECASE),
    "charger-size": regex(r"\bchargers?\b", re.IGNORECASE),
}
BETWEEN = regex(
    r"(?:[\s,/&+;?:-]|\b(?:and|plus|n|then|the|a|an|its|what|which|sizes?|of|for|rating|specs?|mm2|mm²|type)\b)*",
    re.IGNORECASE,
)
IN_A_ROW = 3
BATTERY = frozenset(
    {"battery.capacity", "battery.energy", "battery.cca", "battery.ca", "battery.reserve", "battery.group"}
)
READ = (("reading.voltage", "rest-voltage"), ("reading.gravity", "specific-gravity"))  # "SOC?" asks of
SIZED = frozenset({"cable.gauge", "cable.area"})


@lru_cache(maxsize=4)  # so as those below: several look at the same text
def items(text: str) -> tuple[Span, ...]:
    """The stretches that may each ask something of their own, in order; none where a message is of one piece."""
    found = numbered(text) or _in_brief(text) or [item.span() for item in SENTENCE.finditer(text) if _asks(text, item)]
    return tuple(found) if 1 < len(found) <= MOST else ()


def _in_brief(text: str) -> list[Span]:
    """The parts of one line of shorthand between its semicolons: "agm absorb v 12v; chgr a?"."""
    parts = [item.span() for item in PART.finditer(text.rstrip("?. "))]
    brief = all(len(text[slice(*span)].split()) <= BRIEF for span in parts)
    one_line = SENTENCE.fullmatch(text) is not None
    return parts if ";" in text and brief and one_line else []


def questions(text: str) -> Sequence[Span]:
    """The items of a message, else its questions with the halves of those that ask two things; none where it is one."""
    found = numbered(text) or [half for span in asking(text) for half in _halves(text, span)]
    return found if 1 < len(found) <= MOST else ()


@lru_cache(maxsize=4)
def asking(text: str) -> tuple[Span, ...]:
    """The sentences that ask, with a question mark or without it."""
    found = (
        item
        for item in SENTENCE.finditer(text)
        if _asks(text, item) or OPENS.match(item.group()) or INDIRECT.search(item.group())
    )
    return tuple(item.span() for item in found)


def _halves(text: str, sentence: Span) -> Iterator[Span]:
    """The parts of a sentence that ask, cut before each "and how", "and can"."""
    start, end = sentence
    for joint in HALVES.finditer(text, *sentence):
        if ASKS.search(text[start : joint.start()]):
            yield start, joint.start()
        start = joint.end()
    yield start, end


def _asks(text: str, sentence: re.Match[str]) -> bool:
    """Whether a sentence asks a question of its own, which is not answered in the next words."""
    own = "?" in sentence.group() and not ELLIPTIC.fullmatch(sentence.group())
    return own and not ANSWERED.match(text, sentence.end())


@lru_cache(maxsize=4)
def numbered(text: str) -> tuple[Span, ...]:
    """What stands behind each number of a list, "1) ... 2) ..."; the last item ends with its sentence."""
    marks = list(MARK.finditer(text))
    for labels in LABELS:
        row: list[re.Match[str]] = []
        for mark in marks:
            if (mark[1] or mark[2]) == labels[min(len(row), len(labels) - 1)]:
                row.append(mark)
        if len(row) > 1:
            last = SENTENCE.match(text, row[-1].end())
            ends = [*(mark.start() for mark in row[1:]), last.end() if last else len(text)]
            found = [(mark.end(), end) for mark, end in zip(row, ends, strict=True)]
            return tuple(span for span in found if ASKS.search(text[slice(*span)]) or not IS.search(text[slice(*span)]))
    return ()


def wants(text: str) -> Iterator[str]:
    """The things of a list that are only named, as "fuse" in "what cable, fuse and CCA please"; none with a figure."""
    ordered = ORDERED.search(text)
    for sentence in SENTENCE.findall(text):
        _, colon, after = sentence.partition(": ")
        sentence = after if colon else sentence  # "2 x 110 Ah AGM: charger amps, absorption volts"
        parts = APART.split(sentence) if ordered or colon or ASKED.search(sentence) else ()
        for number, part in enumerate(parts if len(parts) > 1 else ()):
            named = part.partition(" for ")[0]
            told = "?" not in sentence and IS.search(" ".join(parts[number:]))  # "the fuse and the switch are here"
            if 0 < len(named.split()) <= FEW and not (told or TELLS.search(named)):
                yield named


def in_a_row(text: str) -> dict[str, int]:
    """The topics of three things or more that are named in a row, and where: "battery, cable, fuse: sizes"."""
    named = sorted((item.span(), topic) for topic, words in ROW.items() for item in words.finditer(text))
    found: dict[str, int] = {}
    row: dict[str, int] = {}
    end = 0
    for (start, after), topic in named:
        row = {topic: start, **row} if row and BETWEEN.fullmatch(text, end, start) else {topic: start}
        end = after
        if len(row) >= IN_A_ROW:
            found = {**row, **found}
    return found


def wanted_too(message: Message, topics: Set[str]) -> set[str]:
    """The topics that are wanted in a list beside one that is asked: the fuse of a cable, the amps of a charger."""
    told = {item.fact for item in message.stated}
    found = set()
    for part in wants(message.text) if topics & LISTS else ():
        for words, topic, beside, facts in WANTS:
            there = topic == "cable-size" and SIZED & told  # it is told, not wanted
            if words.search(part) and topics & beside and facts <= told and not there:
                found.add(topic)
    found.update(framed(message.text, topics, told))
    if (row := set(in_a_row(message.text))) & topics:
        lacking = {"bank-size"} if BATTERY & told else {"charger-size"}
        found |= row - lacking - ({"cable-size"} if SIZED & told or "cable.length" not in told else set())
    brief = [span for span in items(message.text) if len(message.text[slice(*span)].split()) <= FEW]
    if any(message.says("request:how_full", span) for span in brief):
        found |= {topic for fact, topic in READ if fact in told and not topics & {name for _, name in READ}}
    if (
        topics & SUPPLY
        and not topics & CHARGED
        and charger_wished.asked(message.text)
        and "charger.current" not in told
    ):
        found.add("charger-size")
    apart = len(items(message.text)) > 1 and not {"charger-banks", "dc-dc"} & topics
    if apart and charger_wished.output_asked(message.text):
        found.add("charger-size")
    if topics & CIRCUIT and not topics & KINDS and WHICH_KIND.search(message.text) and message.says("thing:battery"):
        found.add("battery-type")
    return found - topics
