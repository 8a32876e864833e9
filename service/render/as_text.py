"""A reply as plain text for a terminal or a mail: headline, numbers, why, cautions, questions, changes, sources."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator
from dataclasses import replace

from service import say
from service.render.figures import alike, figure, numbers, only_asks, shown_assumed
from service.render.outcomes import THEN, outcomes
from service.render.short_names import short_sources
from service.reply import CONTACT, HOUSE_RULES, Act, Answer, Asked, Cite, Reply, Step

WIDTH = 78
MOST_CAUTIONS = 3
MOST_STEPS = 3
MOST_ASKED = 2
WORKING = {"unclear": "What helps"}
ACTS = {"do": "Do now", "do-not": "Do not", "who": "Who takes over"}
OF_A_SIDE = {"mounting": {"yes": "yes", "no": "no", "marginal": "if its manual allows it"}}
WELCOME = "At your service: ask whenever you need a figure for a battery, a charger, a cable or a fuse."
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
        yield "Then also" if number else "Please tell us", question(told, answer.topic)
    yield from _part("What would change this", "; or ".join(item.say for item in answer.would_change))
    yield from _part("Sources", short_sources(backed(answer)) if brief else sources(backed(answer)))


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


def question(asked: Asked, topic: str = "") -> str:
    """A question back: the fact, where to find it, the common replies and what each would mean."""
    text = f"{asked.say.rstrip('.')}. {asked.where}".strip()
    then = outcomes([item.then for item in asked.replies], topic)
    if not any(then):
        return text  # replies that decide nothing tell nothing
    told = (_choice(say.capital(item.say), word) for item, word in zip(asked.replies, then, strict=True))
    return f"{text} {' '.join(told)}".strip()


def _choice(said: str, then: str) -> str:
    return f"{said}: {then}." if then else f"{said}."


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
