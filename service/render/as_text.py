"""A reply as plain text for a terminal or a mail: headline, numbers, why, cautions, questions, changes, sources."""

from __future__ import annotations

import math
import re
import textwrap
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace

from grammar.facts import facts
from service import say
from service.render.short_names import short_sources
from service.reply import CONTACT, HOUSE_RULES, Act, Answer, Asked, Assumed, Choice, Cite, Figure, Reply, Step

WIDTH = 78
MOST_CAUTIONS = 3
MOST_STEPS = 3
MOST_ASSUMED = 2
MOST_ASKED = 2
WORKING = {"unclear": "What helps"}
LEFT_OUT = "gauge_for_ampacity"  # told by the size to fit
AT_LOSS = ("{}_at_3_percent", "{}_at_10_percent")
ACTS = {"do": "Do now", "do-not": "Do not", "who": "Who takes over"}
THEN = {"yes": "yes", "no": "no", "marginal": "only just", "needs-facts": "one more fact is needed"}
BEST = ("absorption_voltage", "float_voltage")  # ranges with a value to aim for
EXACT = ("voltage_per_battery", "recharge_voltage")  # shown to 0.01 V where it was read so
ROUGH = (  # estimates, shown in whole percent or to 0.1
    "depth_of_discharge",
    "duty_cycle",
    "self_discharge",
    "share_of_warm_power",
)
AS_WORKED = ("charger_current_low", "charger_current_high")  # ends of what suits: rounded they would leave it
GOOD_FOR = ("burst_count", "trip_count", "bursts_before_start_limit")  # what a battery gives, counted
OF_THE_LOAD = ("running_current", "inrush_current")  # no assumption on a battery is of them, though it be as large
NEEDED = ("opening_area",)  # of what is needed, what does not begin with "required_"
NAMED = ("A", "Ah", "%", "s", "h")  # units of facts whose number alone does not tell what it is
POUND = 0.45359237  # kg
MEANS = {  # what a verdict means where yes and no alone could be taken the wrong way
    "replacement": {"yes": "keep it", "marginal": "in its last years", "no": "time for a new one"},
    "load-voltage": {"yes": "as it should be", "no": "too weak"},
    "standing-drain": {"yes": "half is left by then", "marginal": "about half is left", "no": "under half by then"},
    "fuse-size": {"yes": "yes", "no": "too thin", "marginal": "only just"},
    "freeze-point": {"yes": "it will not freeze", "marginal": "close to freezing", "no": "it can freeze"},
}
OF_A_SIDE = {"mounting": {"yes": "yes", "no": "no", "marginal": "if its manual allows it"}}
WELCOME = "At your service: ask whenever you need a figure for a battery, a charger, a cable or a fuse."
APART = {"fuse-size": ("cable.drop",)}  # what the proposed cable was reckoned with is no number of its fuse
UNDECIDED = {"", "information", "needs-facts"}
PLAIN = str.maketrans({"°": "", "²": "2", "³": "3", "Ω": "ohm", "−": "-", "–": "-", "’": "'"})


def as_text(reply: Reply, width: int = WIDTH, ascii_only: bool = False) -> str:
    """The whole reply; several answers are numbered in the order of the message."""
    blocks = [reply.notice] if reply.notice else []
    several = len(reply.answers) > 1
    for number, answer in enumerate(said_once(reply.answers), 1):
        mark = f"{number}. " if several else ""
        blocks.append("\n".join(answer_lines(answer, width, mark, brief=reply.shorthand)))
    text = "\n\n".join(blocks) or WELCOME
    text = text.replace(say.NB, " ")
    return text.replace("mΩ", "mohm").translate(PLAIN) if ascii_only else text


def said_once(answers: Iterable[Answer]) -> Iterator[Answer]:
    """The answers, each caution, assumption and word of the house only with the first that carries it.

    A step that says no more than a caution is left out.
    """
    said: set[str] = set()
    warned: list[set[str]] = []
    taken: set[tuple[str, object]] = set()
    for answer in answers:
        fresh = tuple(item for item in answer.cautions if item.id not in said)
        headline = words(answer.headline)
        warned += [words(item.say) for item in fresh]
        working = tuple(
            item
            for item in answer.working
            if not (of_the_house(item) and item.say in said)
            and not any(words(item.say) <= headline | caution for caution in warned)
        )
        said.update(item.id for item in fresh)
        said.update(item.say for item in working if of_the_house(item))
        assumed = tuple(item for item in answer.assumed if (item.fact, item.value) not in taken)
        taken.update((item.fact, item.value) for item in shown_assumed(answer))
        yield replace(answer, cautions=fresh, working=working, assumed=assumed)


def of_the_house(step: Step) -> bool:
    """Whether a step is what the house adds in words: a rule, a contact, a disclaimer."""
    return HOUSE_RULES in step.cites


def house_notes(answer: Answer) -> Iterator[str]:
    """What the house adds in words, but for what the headline says already."""
    headline = words(answer.headline)
    yield from (item.say for item in answer.working if of_the_house(item) and not words(item.say) <= headline)


def answer_lines(answer: Answer, width: int = WIDTH, mark: str = "", brief: bool = False) -> Iterator[str]:
    """One answer as wrapped lines."""
    yield from wrapped(mark + answer.headline, width)
    for label, text in answer_parts(answer, brief):
        yield from wrapped(f"{label}: {text}", width)


def answer_parts(answer: Answer, brief: bool = False) -> Iterator[tuple[str, str]]:
    """The labelled parts of an answer in reading order, empty ones left out.

    `brief`: for a technician, the other numbers only, no why, sources by their short names. First actions stay whole.
    """
    brief = brief and not answer.steps
    if answer.steps:
        yield from acts(answer.steps)
    else:
        yield from _part("Numbers", "; ".join(numbers(answer, brief)))
        yield from sides(answer)
        if not brief or answer.topic in WORKING:
            yield from _part(WORKING.get(answer.topic, "Why"), " ".join(why(answer)))
    first, more = (1, 1) if only_asks(answer) else (MOST_CAUTIONS, len(answer.cautions))
    yield from _part("Take care", " ".join(item.say for item in answer.cautions[:first]))
    yield from _part("Also", " ".join(item.say for item in answer.cautions[first:more]))
    yield from _part("Please note", " ".join(map(_sentence, house_notes(answer))))
    for number, asked in enumerate(answer.asks[:MOST_ASKED]):
        told = replace(asked, where="") if brief and asked.replies else asked
        yield "Then also" if number else "Please tell us", question(told, MEANS.get(answer.topic, THEN))
    yield from _part("What would change this", "; or ".join(item.say for item in answer.would_change))
    yield from _part("Sources", short_sources(backed(answer)) if brief else sources(backed(answer)))


def only_asks(answer: Answer) -> bool:
    """Whether an answer has nothing to be careful with yet: it asks, and no figure is known."""
    return answer.verdict == "needs-facts" and not answer.figures


def sides(answer: Answer) -> Iterator[tuple[str, str]]:
    """The things that are weighed, each with the figures in which they differ, or with its verdict."""
    same = alike(answer)
    differ = {item.name for option in answer.compare for item in option.figures} - same
    if not differ and THEN.keys().isdisjoint(option.verdict for option in answer.compare):
        return  # they are all "as above"
    for option in answer.compare:
        own = [figure(item) for item in option.figures if item.name not in same]
        means = OF_A_SIDE.get(answer.topic, THEN)
        yield say.capital(option.label), "; ".join(own) or means.get(option.verdict, "as above")


def alike(answer: Answer) -> set[str]:
    """The names of the figures that all things weighed have in common, as they are shown."""
    shown_in = [{(item.name, figure(item)) for item in option.figures} for option in answer.compare]
    return {name for name, _ in set.intersection(*shown_in)} if len(shown_in) > 1 else set()


def why(answer: Answer) -> Iterator[str]:
    """The first steps of the working: the cause, then the sums; not what the assumptions say by themselves."""
    said = words(answer.headline)
    steps = (item.say for item in answer.working if not of_the_house(item))
    told = dict.fromkeys(text for text in steps if " is assumed: " not in text)
    fresh = [text for text in told if not words(text) <= said]
    yield from (_sentence(text) for text in fresh[:MOST_STEPS])


def words(text: str) -> set[str]:
    """The words of a sentence, without its marks."""
    return {word.strip(".,;:()").lower() for word in text.split()}


def backed(answer: Answer) -> tuple[Cite, ...]:
    """The sources of what an answer says; a part that is refused beside a danger says nothing of them."""
    return answer.cites if answer.working or answer.steps or answer.figures or answer.compare else ()


def sources(cites: Iterable[Cite]) -> str:
    """The sources, those of a kind together. The trade's habits have no place to look them up."""
    kinds: dict[str, list[str]] = {}
    for item in cites:
        if (item.id, item.locator) == (HOUSE_RULES, CONTACT):  # whom to ring is no source
            continue
        habit = item.kind == "common-practice"
        told = item.title.partition(": ")[0] if habit else f"{item.title}, {item.locator}"
        kinds.setdefault(item.kind.replace("-", " "), []).append(told)
    return "; ".join(f"{'; '.join(dict.fromkeys(titles))} ({kind})" for kind, titles in kinds.items())


def numbers(answer: Answer, brief: bool = False) -> Iterator[str]:
    """The figures of an answer, each with what was assumed for it, then at most two further assumptions.

    `brief`: those that the headline does not give, and of an assumption not why.
    """
    left = [item for item in answer.assumed if item.fact not in APART.get(answer.topic, ())]
    unsaid = {LEFT_OUT, *not_theirs(answer), *capped(answer)}
    weighed, same = {item.name for option in answer.compare for item in option.figures}, alike(answer)
    for item in answer.figures:
        told_apart = item.name in weighed and item.name not in same
        if told_apart or item.name in unsaid or is_the_reading(item, answer):
            continue
        taken = next((each for each in left if is_of(each, item)), None)
        if taken:
            left.remove(taken)
        if brief and not taken and is_in(item, answer.headline):
            continue
        why_taken = "" if not taken else " (assumed)" if brief else f" (assumed: {taken.why})"
        told = in_their_unit(replace(item, label=item.label.partition(" (")[0]) if brief else item, answer)
        yield told + why_taken
    if not only_asks(answer):  # that lithium is taken for iron phosphate is told by its caution
        others = (assumption(other, brief) for other in left if other.value != "lfp")
        yield from list(dict.fromkeys(others))[:MOST_ASSUMED]


def not_theirs(answer: Answer) -> Iterator[str]:
    """The cable sizes in the system that the customer does not write in; only what is to fit is told in both."""
    first = next((item.name for item in answer.figures if item.name in ("gauge", "area")), "gauge")
    yield from (name.format("area" if first == "gauge" else "gauge") for name in AT_LOSS)


def capped(answer: Answer) -> Iterator[str]:
    """The low end of a range that the cold has made a single cap."""
    ends = {item.name: item.value for item in answer.figures}
    if "charger_current_warm" in ends and ends["charger_current_low"] == ends["charger_current_high"]:
        yield "charger_current_low"


def is_of(taken: Assumed, item: Figure) -> bool:
    """Whether an assumption is the figure itself."""
    same = (taken.unit, taken.value) == (item.unit, item.value)
    same = same and not (item.name in OF_THE_LOAD and taken.fact.startswith("battery."))
    return same and (bool(item.unit) or taken.fact.endswith(".count"))


def shown_assumed(answer: Answer) -> list[Assumed]:
    """The assumptions that are shown with an answer: those of its figures, and at most two more."""
    of_figures = [item for item in answer.assumed if any(is_of(item, figure) for figure in answer.figures)]
    others = [item for item in answer.assumed if item not in of_figures and item.value != "lfp"]
    return [*of_figures, *others[:MOST_ASSUMED]]


def is_in(item: Figure, headline: str) -> bool:
    """Whether a headline gives a figure already."""
    return item.low is None and re.search(rf"(?<![\d.,]){re.escape(shown(item))}(?!\d|[.,]\d)", headline) is not None


def assumption(item: Assumed, brief: bool = False) -> str:
    """What was assumed, named where the bare number would not tell, and why."""
    spec = facts().get(item.fact)
    bare = item.fact not in say.CABLE_WORDS and (item.unit in NAMED or item.fact.endswith(".count"))
    label = f"{spec.label} " if spec and bare else ""
    return f"{label}{say.fact(item.fact, item.value)} (assumed{'' if brief else f': {item.why}'})"


def in_their_unit(item: Figure, answer: Answer) -> str:
    """A figure as it is shown; a weight in pounds where they wrote pounds."""
    of_charge = item.name.startswith("state_of_charge") and item.name not in ONE_WAY
    if of_charge and item.low is None and isinstance(item.value, float):
        lithium = any(fact.value == "lfp" for fact in answer.understood)
        return f"{item.label} {say.charge_within(item.value, (40, 20) if lithium else (75, 50))}"
    typed = next((fact.text.lower() for fact in answer.understood if fact.fact == "battery.weight"), "")
    pounds = "lb" in typed or "pound" in typed or f"{say.NB}lb" in answer.headline
    if item.unit == "kg" and isinstance(item.value, float) and pounds:
        return f"{item.label} {say.quantity(item.value / POUND, 'lb', 0)} ({shown(item)})"
    return figure(item)


def is_the_reading(item: Figure, answer: Answer) -> bool:
    """Whether a figure is only the reading itself: the volts of a single battery."""
    return item.name == "voltage_per_battery" and any(
        fact.fact == "reading.voltage" and fact.value == item.value for fact in answer.understood
    )


def figure(item: Figure) -> str:
    """One figure with its label: "sag 3.8 V"; a range with its best value, or in brackets."""
    if isinstance(item.value, (str, bool)):
        return f"{item.label} {say.gauge(str(item.value)) if item.unit == 'AWG' else say.fact(item.name, item.value)}"
    if item.low is None or item.high is None:
        return f"{item.label} {shown(item)}"
    if item.name.startswith("state_of_charge"):
        return f"{item.label} {say.between(say.fives(item.low), say.fives(item.high), '%', 0)}"
    span = say.between(item.low, item.high, item.unit, places(item))
    if item.name in GOOD_FOR:
        span = " to ".join(dict.fromkeys((say.so_many(item.low), say.so_many(item.high))))
    if item.unit in ("min", "h"):
        minutes = 60 if item.unit == "h" else 1
        span = say.between_times(item.low * minutes, item.high * minutes, item.name.startswith("time_to"))
    if item.value in (item.low, item.high):
        return f"{item.label} {span}"
    if item.name in BEST:
        return f"{item.label} {span}, best {shown(item)}"
    return f"{item.label} {shown(item)} ({span})"


ONE_WAY: Mapping[str, Callable[[float, str], str]] = {  # limits, and what is given: never rounded past
    "charger_current_low": say.at_least,
    "charger_current_high": say.at_most,
    "cranking_current": lambda value, _: say.given(value),
    "state_of_charge_left": lambda value, _: say.still_in(value),  # the part used is told beside it
    **dict.fromkeys(GOOD_FOR, lambda value, _: say.so_many(value)),
}


def shown(item: Figure) -> str:
    """The value of a figure, rounded as its unit is read."""
    if not isinstance(item.value, (int, float)) or isinstance(item.value, bool):
        return str(item.value)
    if item.name in ONE_WAY:
        return ONE_WAY[item.name](float(item.value), item.unit)
    if item.unit == "%" and item.name.startswith("state_of_charge"):
        return say.charge_within(item.value)
    if item.unit == "%" and "drop" in item.name:
        return say.share(item.value)
    if item.unit in ("min", "h"):
        told = say.lasting if item.name.startswith("time_to") else say.duration  # what is given rounds down
        return told(item.value * (60 if item.unit == "h" else 1))
    if item.unit == "d" and (item.value == 0 or item.value >= 2):
        return say.days(item.value) if item.value else "now"
    if item.name == "drain_current" and item.value < 0.5:
        return say.quantity(item.value * 1000, "mA")
    if item.name in NEEDED or (
        item.name.startswith("required_") and (item.unit == "W" or (item.unit in ("A", "Ah") and item.value >= 10))
    ):
        return say.quantity(math.ceil(item.value - 1e-6), item.unit, 0)  # what is needed rounds up
    return say.quantity(item.value, item.unit, places(item))


def places(item: Figure) -> int | None:
    """Decimal places for a figure: volts to 0.1 (losses 0.01), whole amps and ratings; None: what counts."""
    value = abs(float(item.value))
    if item.name in ROUGH:
        ends = [float(end) for end in (item.value, item.low, item.high) if end is not None]
        return 0 if all(end >= 5 or abs(end - round(end)) < 0.05 for end in ends) else 1
    if item.name == "corrected_gravity":
        return 3
    if item.unit == "V":
        fine = "drop" in item.name or value < 0.1 or (item.name in EXACT and abs(value * 10 - round(value * 10)) > 1e-6)
        return 2 if fine else 0 if item.name == "bank_voltage" else 1
    if item.unit in ("A", "Ah", "Wh", "cm2") and value >= 10 and item.name not in AS_WORKED:
        return 0
    if item.unit == "Ah":
        return 1 if value >= 1 else 2
    return {"C": 0, "mohm": 1, "%": 1}.get(item.unit) if item.unit != "%" or "drop" in item.name else None


def question(asked: Asked, means: Mapping[str, str] = THEN) -> str:
    """A question back: the fact, where to find it, the common replies and what each would mean."""
    said = asked.say.rstrip(".")
    text = f"{said}. {asked.where}".strip()
    outcomes = {item.then for item in asked.replies}
    if outcomes <= UNDECIDED or (len(outcomes) == 1 and len(asked.replies) > 1):
        return text  # replies that decide nothing tell nothing
    replies = " ".join(_choice(item, means) for item in asked.replies)
    return f"{text} {replies}".strip()


def _choice(item: Choice, means: Mapping[str, str]) -> str:
    then = means.get(item.then, THEN.get(item.then, item.then))
    said = say.capital(item.say)
    return f"{said}: {then}." if then and then != "information" else f"{said}."


def acts(steps: Iterable[Act]) -> Iterator[tuple[str, str]]:
    """First actions: do now numbered, do not and who takes over in a line each."""
    steps = list(steps)
    for kind, label in ACTS.items():
        said = [item.say for item in steps if item.kind == kind]
        if kind == "do" and len(said) > 1:
            yield label, " ".join(f"{number}. {_sentence(say.capital(text))}" for number, text in enumerate(said, 1))
        elif kind == "do-not" and said:
            yield label, _sentence("; ".join(text.removesuffix(".") for text in said))
        elif said:
            yield label, " ".join(_sentence(say.capital(text)) for text in said)


def _part(label: str, text: str) -> Iterator[tuple[str, str]]:
    if text:
        yield label, text


def _sentence(text: str) -> str:
    return text if text.endswith((".", "?", ":")) else f"{text}."


def wrapped(text: str, width: int = WIDTH) -> list[str]:
    """A text in lines of that width, further ones set in."""
    # a no-break space is no white space to textwrap, so number and unit stay on one line
    return textwrap.wrap(text, width, subsequent_indent="  ", break_long_words=False, break_on_hyphens=False)
