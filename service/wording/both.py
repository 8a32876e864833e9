"""One sentence on two things weighed side by side. A verdict behind a label is an aside, never a headline by itself."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from grammar.text.patterns import regex
from service import say
from service.reply import Answer, strictness

LONGEST_HEADLINE = 30  # words
LONGEST_OPENING = 3  # words before a colon: "Usually yes"
SHORT_OF = {"mounting": say.VERDICT | {"marginal": "if its manual allows it"}}  # where "only just" would mean nothing
WHOLE = {"yes": "Yes", "marginal": "Only just", "no": "No", "needs-facts": "One fact is missing"}
WHOLE_OF = {"mounting": WHOLE | {"marginal": "If its manual allows it"}}
SETTING, SIZE = "charger-setting", "bank-size"
NEEDED = {"required_cca": "CCA", "required_limit_current": "A", "required_capacity": "Ah"}
SAME = 1e-6  # rounded up no further than what is real
USE = regex(r"Use (the .{1,40}? setting)\b")
REPLACEMENT, BY_AGE = "replacement", "by age only"
ALIKE_IN_AGE = {  # both of one verdict; {which} where they ask which of the two has to go
    "yes": "{which}: {one} and {other} are inside their usual lives; that is by age only, so test both.",
    "marginal": "{which}: {one} and {other} are in their last years; test both under load.",
    "no": "{which}: {one} and {other} are past their usual lives; by age only, so have both tested first.",
}
OF_AGE = {"yes": "Keep both", "marginal": "Perhaps both soon", "no": "Most likely both"}
WHICH_OF_AGE = {"yes": "Neither", "marginal": "Neither by age alone", "no": "Both, most likely"}
AGED = {"yes": "is inside its usual life", "marginal": "is in its last years", "no": "is past its usual life"}


def of_both(
    labels: Sequence[str], both: Sequence[Answer], leading: Answer, which: bool = False, about: bool = False
) -> str:
    """One sentence on two things: the one that decides, then the other; a shorter one on both where that is too long.

    `which`: they ask which of the two; `about`: they ask of the first, and what of the second.
    """
    said = [item.headline for item in both]
    verdicts = {item.verdict for item in both}
    if len(set(said)) == 1 or verdicts == {"needs-facts"}:
        return leading.headline
    if leading.topic == REPLACEMENT and all(BY_AGE in headline for headline in said):
        return of_age(labels, both, which)
    if _one_figure(both):
        return leading.headline
    if about and leading is both[1] and leading.topic in SHORT_OF and verdicts <= set(WHOLE_OF[leading.topic]):
        bare, why = on_both(labels, both), leading.verdict == "no"
        told = f"{bare.removesuffix('.')}: {_rest(leading.headline)}" if why else bare
        return told if len(told.split()) <= LONGEST_HEADLINE else bare
    if each := _settings(both):
        return each
    first, last = leading.headline.removesuffix("."), 1 - both.index(leading)
    if verdicts <= set(say.VERDICT):
        short = SHORT_OF.get(leading.topic, say.VERDICT)
        whole, bare = f"{first}; {labels[last]}: {short[both[last].verdict]}.", on_both(labels, both)
    else:
        whole = f"{first}; {_on(said[last])}"
        parts = [f"{label}: {_figure(item)}" for label, item in zip(labels, both, strict=True)]
        bare = f"{say.capital('; '.join(parts))}."
    again = first.split()[:3] == said[last].split()[:3]  # one sentence twice: the figures alone are clearer
    return whole if len(whole.split()) <= LONGEST_HEADLINE and not again else bare


def _settings(both: Sequence[Answer]) -> str:
    """The setting of either kind, where each has one of its own; "" where a verdict stands instead."""
    named = [USE.match(item.headline) for item in both]
    if both[0].topic != SETTING or not all(named):
        return ""
    each = [
        f"{name[1]} for {which} ({say.between(low, high, item.figures[0].unit, 1)}"
        for name, which, item in zip(named, ("one", "the other"), both, strict=True)
        if name and item.figures
        if (low := item.figures[0].low) is not None and (high := item.figures[0].high) is not None
    ]
    return f"Use {each[0]} for absorption), {each[1]})." if len(each) == len(both) else ""


def _on(headline: str) -> str:
    """A headline that goes on after a semicolon; a short name ("AGM") keeps its capitals."""
    return headline if headline[1:2].isupper() else f"{headline[:1].lower()}{headline[1:]}"


def _rest(headline: str) -> str:
    """A headline without the word that opens it."""
    first, mark, rest = headline.partition(": ")
    return rest if mark and len(first.split()) <= LONGEST_OPENING else headline


def on_both(labels: Sequence[str], both: Sequence[Answer]) -> str:
    """Both verdicts as a sentence: "Yes for AGM, only just for gel."."""
    words: Mapping[str, str] = WHOLE_OF.get(both[0].topic, WHOLE)
    one, other = (words[item.verdict] for item in both)
    if one == other:
        return f"{one} in both cases, {labels[0]} and {labels[1]}."
    return f"{one} for {labels[0]}, {other[:1].lower()}{other[1:]} for {labels[1]}."


def of_age(labels: Sequence[str], both: Sequence[Answer], which: bool) -> str:
    """Two batteries by their age: whether one of them has to go, and which."""
    one, other = (f"the {label}" for label in labels)
    if both[0].verdict == both[1].verdict:
        opens = (WHICH_OF_AGE if which else OF_AGE)[both[0].verdict]
        return ALIKE_IN_AGE[both[0].verdict].format(which=opens, one=one, other=other)
    (old, its), (young, other_its) = sorted(
        zip((one, other), (item.verdict for item in both), strict=True), key=lambda pair: -strictness(pair[1])
    )
    sure = "most likely" if its == "no" else "perhaps soon"
    return f"{say.capital(old)}, {sure}: it {AGED[its]}, while {young} {AGED[other_its]}; by age only, so test both."


def _one_figure(both: Sequence[Answer]) -> bool:
    """Whether two answers agree in verdict and in the figure that leads: what tells them apart changes nothing."""
    one, other = both
    if one.verdict != other.verdict or not (one.figures and other.figures) or one.topic == SETTING:
        return False  # of two kinds on the same volts each has a setting of its own
    return (one.figures[0].name, one.figures[0].value) == (other.figures[0].name, other.figures[0].value)


def _figure(answer: Answer) -> str:
    """The first figure of an answer in words, else its headline; of a battery to buy what it must have."""
    needed = {item.name: item.value for item in answer.figures if item.name in NEEDED}
    if answer.topic == SIZE and needed:
        wanted = ((float(needed[name]), unit) for name, unit in NEEDED.items() if name in needed)
        return say.listed([say.quantity(math.ceil(value - SAME), unit) for value, unit in wanted])
    if not answer.figures or not isinstance(value := answer.figures[0].value, (int, float)):
        return answer.headline.removesuffix(".")
    item = answer.figures[0]
    if item.unit in ("min", "h"):
        return f"about {say.duration(value * (60 if item.unit == 'h' else 1))} {item.label}"
    if item.unit == "d":
        return f"{item.label} {say.quantity(int(value + 1e-6), 'd')}"
    places = 1 if item.unit == "V" else 0 if abs(value) >= 10 else None
    return f"{item.label} {say.quantity(value, item.unit, places)}"
