"""What batteries are said to come to, put up to be checked: "two 100 Ah in series, so I have 200 Ah, correct?".

The figure is no second battery and no wish: it is the customer's own sum, and yes or no answers it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Message, Stated
from grammar.text.patterns import regex
from service.judgements.rewired import other_way

COUNT, LAYOUT = "battery.count", "bank.layout"
EACH = {  # a figure that may be a sum, and what one battery has of it
    "battery.capacity": "battery.capacity",
    "battery.cca": "battery.cca",
    "battery.nominal": "battery.nominal",
    "bank.voltage": "battery.nominal",
}
SUMMED = {"battery.capacity": "parallel", "battery.cca": "parallel", "battery.nominal": "series"}
ONE_VOLTS = 12.0  # of a battery of which no volts are told
LEADS = regex(  # what stands before a sum, from the last thing told of the batteries
    r"""(?:[\s:;,.=>–-]|\b\d{1,2}\s?v(?:olts?)?\b|\b(?:so|then|still|now|that|this|it|they|these|which|i|we|you|is|are|be|me|us|my|our|the|a|in|to|with|at
      |about|only|really|just|total|totals|altogether|together|all|of|and|thus|hence|therefore|would|will|should|do|does
      |gives?|giving|gave|makes?|making|gets?|get|have|has|got|had|['’]?ve|['’]s|becomes?|equals?|means?|comes?|come|adds?|up
      |counted|end|ends|doubles?|replaces?|as|good|same|batter(?:y|ies)|bank|for|volts?|amp|hours?|cca|x|not|stays?|remains?
      |wired|connected|hooked|joined|put|parallel|series|correct|right)\b)*""",
    re.IGNORECASE | re.VERBOSE,
)
SAYS_SO = regex(  # in that, a word for what they come to, or nothing but a mark
    r"\b(?:gives?|giving|makes?|making|gets?|have|has|got|['’]?ve|is|are|be|equals?|means?|becomes?|comes?|adds?|ends?"
    r"|['’]s|doubles?|replaces?|totals?|so|then|still|stays?|remains?|together)\b|[=:>]|^\s*[,;–-]?\s*$",
    re.IGNORECASE,
)
RECKONED = regex(  # before the batteries: "the owner counts two 90 Ah in series as 180 Ah"
    r"\b(?:count|reckon|add|call|book|list|treat|figure)(?:s|ed|ing)?\b[^.?!;]{0,200}$", re.IGNORECASE
)
AS_MUCH = regex(r"\b(?:as|up to|to)\s*$", re.IGNORECASE)
ANOTHER = regex(  # "and a 200 Ah"
    r"\b(?:and|plus|beside|(?<!up )with) (?:an? |my |the )?$|\bto (?:an?|my|the) $|\b(?:an?|the) $", re.IGNORECASE
)
ANOTHER_YET = regex(r"\b(?:an?|the|another) $", re.IGNORECASE)  # after one sum: "24 V and a 12 V"
RESTATED = regex(r"\b(?<!and )(?<!plus )(?<!with )(?<!beside )(?:the|these|those|whole|all|combined) $", re.IGNORECASE)
ASKED = regex(
    r"""^(?:(?!\b(?:how|what|which|why|when|where|can|could|do|does|may|should)\b)[^.!?;]){0,60}\?
      | ^[^?]{0,30}?(?:[,.;:–-]\s*|\s)(?:is\s+(?:that|this|it)\s+|am\s+i\s+)?
        (?:correct|right|true|yes|agreed?|ok|okay|no)\s*[?.!]*\s*(?:$|\?)""",
    re.IGNORECASE | re.VERBOSE,
)
QUESTION = regex(  # before a sum: "is that 12 V 220 Ah"
    r"\b(?:is|are|do|does|will|would|so)\s(?:that|this|it|they|these|those|i|we|two|three|four)\b", re.IGNORECASE
)
NEAR = 0.01


def put_up(message: Message) -> tuple[Stated, ...]:
    """The figures of a message that are its own sum of batteries joined, put up to be checked."""
    return tuple(item for item, asked in _found(message) if asked)


def found(message: Message) -> tuple[Stated, ...]:
    """Those and the sums that are only told again, which are no further battery either."""
    return tuple(item for item, _ in _found(message))


def _found(message: Message) -> tuple[tuple[Stated, bool], ...]:
    """Each sum, and whether it is put up to be checked."""
    first = {item.fact: item for item in message.stated if item.of == 1}
    many, layout = first.get(COUNT), first.get(LAYOUT)
    if any(item.fact == COUNT and item.of == 2 for item in message.stated):  # "two 60 Ah in parallel or one 120"
        return ()
    if many is None or layout is None or float(many.value) < 2:
        return ()
    one = first.get("battery.nominal")
    if other_way(message.text, layout.value, float(many.value), float(one.value) if one else ONE_VOLTS):
        return ()  # volts as they are, and as they are to be
    return tuple(_sums(message, first))


def _sums(message: Message, first: dict[str, Stated]) -> Iterator[tuple[Stated, bool]]:
    """One after the other, each led in from what is told before it."""
    text = message.text
    told = sorted(message.stated, key=lambda item: item.span)
    end, battery = 0, [first[COUNT], *(first[fact] for fact in ("battery.capacity", "battery.cca") if fact in first)]
    begun = max(item.span[0] for item in battery if item.of == 1)
    sums: list[tuple[Stated, bool]] = []
    for item in told:
        lead = text[end : item.span[0]] if end else ""
        after = text[item.span[1] :]
        other = (ANOTHER_YET if sums else ANOTHER).search(lead)
        reckoned = item.fact == "battery.capacity" and RECKONED.search(text[: item.span[0]]) is not None
        says = SAYS_SO.search(lead) or (reckoned and AS_MUCH.search(lead))
        led = LEADS.fullmatch(lead) and not other and (sums or says)
        asks = bool(ASKED.search(after) or reckoned or QUESTION.search(lead) or (sums and sums[-1][1]))
        put_up = bool(led) and asks and _may_be(item, first)
        restated = (led or RESTATED.search(lead)) and _is_sum(item, first)
        if item.span[0] > begun and (put_up or restated):
            sums.append((item, put_up))
            yield sums[-1]
        end = max(end, item.span[1])


def _is_sum(item: Stated, first: dict[str, Stated]) -> bool:
    """Whether it is what alike batteries have together: "two 100 Ah in parallel: I charge the 200 Ah"."""
    each, many = first.get(item.fact), float(first[COUNT].value)
    if item.of == 1 or each is None or SUMMED.get(item.fact) != first[LAYOUT].value:
        return False
    return abs(float(item.value) - many * float(each.value)) <= NEAR


def _may_be(item: Stated, first: dict[str, Stated]) -> bool:
    """Whether a figure is what so many batteries could be said to come to: that of one, or a multiple of it."""
    if item.fact not in EACH or (item.of == 1 and item.fact != "bank.voltage"):
        return False
    one = first.get(EACH[item.fact])
    each = float(one.value) if one else ONE_VOLTS if item.fact == "bank.voltage" else 0.0
    times = float(item.value) / each if each else 0.0
    return any(abs(times - count) <= NEAR * count for count in range(1, int(float(first[COUNT].value)) + 1))
