"""A reply as plain text for a terminal or a mail: headline, numbers, why, cautions, questions, changes, sources."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator
from dataclasses import replace

from service import say
from service.reply import Act, Answer, Asked, Choice, Cite, Figure, Reply

WIDTH = 78
MOST_CAUTIONS = 3
MOST_STEPS = 3
MOST_ASSUMED = 2
ACTS = {"do": "Do now", "do-not": "Do not", "who": "Who takes over"}
THEN = {"yes": "yes", "no": "no", "marginal": "only just", "needs-facts": "one more fact is needed"}
UNDECIDED = {"", "information", "needs-facts"}
PLAIN = str.maketrans({"°": "", "²": "2", "³": "3", "Ω": "ohm", "−": "-", "–": "-", "’": "'"})


def as_text(reply: Reply, width: int = WIDTH, ascii_only: bool = False) -> str:
    """The whole reply; several answers are numbered in the order of the message."""
    blocks = [reply.notice] if reply.notice else []
    several = len(reply.answers) > 1
    for number, answer in enumerate(said_once(reply.answers), 1):
        blocks.append("\n".join(answer_lines(answer, width, f"{number}. " if several else "")))
    text = "\n\n".join(blocks) or "You are welcome. Ask whenever you need a figure."
    text = text.replace(say.NB, " ")
    return text.replace("mΩ", "mohm").translate(PLAIN) if ascii_only else text


def said_once(answers: Iterable[Answer]) -> Iterator[Answer]:
    """The answers, each caution only with the first that carries it."""
    said: set[str] = set()
    for answer in answers:
        fresh = tuple(item for item in answer.cautions if item.id not in said)
        said.update(item.id for item in fresh)
        yield replace(answer, cautions=fresh)


def answer_lines(answer: Answer, width: int = WIDTH, mark: str = "") -> Iterator[str]:
    """One answer as wrapped lines."""
    yield from _wrapped(mark + answer.headline, width)
    for label, text in answer_parts(answer):
        yield from _wrapped(f"{label}: {text}", width)


def answer_parts(answer: Answer) -> Iterator[tuple[str, str]]:
    """The labelled parts of an answer in reading order, empty ones left out."""
    if answer.steps:
        yield from acts(answer.steps)
    else:
        yield from _part("Numbers", "; ".join(numbers(answer)))
        for option in answer.compare:
            yield option.label, "; ".join(figure(item) for item in option.figures) or THEN.get(option.verdict, "")
        yield from _part("Why", " ".join(why(answer)))
    yield from _part("Take care", " ".join(item.say for item in answer.cautions[:MOST_CAUTIONS]))
    yield from _part("Also", " ".join(item.say for item in answer.cautions[MOST_CAUTIONS:]))
    for number, asked in enumerate(answer.asks):
        yield "Then also" if number else "Please tell us", question(asked)
    yield from _part("What would change this", "; or ".join(item.say for item in answer.would_change))
    yield from _part("Sources", sources(answer.cites))


def why(answer: Answer) -> Iterator[str]:
    """The first steps of the working: the cause, then the sums; not what the assumptions say by themselves."""
    told = [item for item in answer.working if not any(taken.why in item.say for taken in answer.assumed)]
    yield from (_sentence(item.say) for item in told[:MOST_STEPS])


def sources(cites: Iterable[Cite]) -> str:
    """The sources, those of a kind together. The trade's habits have no place to look them up."""
    kinds: dict[str, list[str]] = {}
    for item in cites:
        place = "" if item.kind == "common-practice" else f", {item.locator}"
        kinds.setdefault(item.kind.replace("-", " "), []).append(f"{item.title}{place}")
    return "; ".join(f"{'; '.join(dict.fromkeys(titles))} ({kind})" for kind, titles in kinds.items())


def numbers(answer: Answer) -> Iterator[str]:
    """The figures of an answer, each with what was assumed for it, then at most two further assumptions."""
    left = list(answer.assumed)
    for item in answer.figures:
        taken = next((each for each in left if (each.unit, each.value) == (item.unit, item.value) and item.unit), None)
        if taken:
            left.remove(taken)
        yield figure(item) + (f" (assumed: {taken.why})" if taken else "")
    said = " ".join(item.say for item in answer.cautions)
    left = [item for item in left if not (item.value == "lfp" and "lithium iron phosphate" in said)]
    for other in left[:MOST_ASSUMED]:
        yield f"{say.fact(other.fact, other.value)} (assumed: {other.why})"


def figure(item: Figure) -> str:
    """One figure with its label: "sag 3.8 V"; a range in brackets."""
    if isinstance(item.value, (str, bool)):
        return f"{item.label} {say.fact(item.name, item.value)}"
    text = f"{item.label} {shown(item)}"
    if item.low is not None and item.high is not None:
        text += f" ({say.between(item.low, item.high, item.unit, places(item))})"
    return text


def shown(item: Figure) -> str:
    """The value of a figure, rounded as its unit is read."""
    if not isinstance(item.value, (int, float)) or isinstance(item.value, bool):
        return str(item.value)
    if item.unit == "%" and item.name == "state_of_charge":
        return say.charge(item.value)
    if item.unit in ("min", "h"):
        return say.duration(item.value * (60 if item.unit == "h" else 1))
    return say.quantity(item.value, item.unit, places(item))


def places(item: Figure) -> int | None:
    """Decimal places for a figure: volts to 0.1 (losses 0.01), whole amps and ratings; None: what counts."""
    if item.unit == "V":
        return 2 if "drop" in item.name or abs(float(item.value)) < 1 else 1
    if item.unit in ("A", "Ah", "Wh", "cm2") and abs(float(item.value)) >= 10:
        return 0
    return None


def question(asked: Asked) -> str:
    """A question back: the fact, where to find it, the common replies and what each would mean."""
    said = asked.say.rstrip(".")
    text = f"{said}. {asked.where}".strip()
    outcomes = {item.then for item in asked.replies}
    if outcomes <= UNDECIDED or (len(outcomes) == 1 and len(asked.replies) > 1):
        return text  # replies that decide nothing tell nothing
    replies = " ".join(_choice(item) for item in asked.replies)
    return f"{text} {replies}".strip()


def _choice(item: Choice) -> str:
    then = THEN.get(item.then, item.then)
    said = f"{item.say[:1].upper()}{item.say[1:]}"
    return f"{said}: {then}." if then and then != "information" else f"{said}."


def acts(steps: Iterable[Act]) -> Iterator[tuple[str, str]]:
    """First actions: do now numbered, do not and who takes over in a line each."""
    steps = list(steps)
    for kind, label in ACTS.items():
        said = [item.say for item in steps if item.kind == kind]
        if kind == "do" and len(said) > 1:
            yield label, " ".join(f"{number}. {_sentence(text)}" for number, text in enumerate(said, 1))
        elif said:
            yield label, " ".join(_sentence(text) for text in said)


def _part(label: str, text: str) -> Iterator[tuple[str, str]]:
    if text:
        yield label, text


def _sentence(text: str) -> str:
    return text if text.endswith((".", "?", ":")) else f"{text}."


def _wrapped(text: str, width: int) -> list[str]:
    # a no-break space is no white space to textwrap, so number and unit stay on one line
    return textwrap.wrap(text, width, subsequent_indent="  ", break_long_words=False, break_on_hyphens=False)
