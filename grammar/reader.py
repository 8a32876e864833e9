"""Reads a message: quantities, names, cues, clauses and facts. Any text gives a Message."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from grammar.attach.by_rule import ruled
from grammar.attach.values import words_of
from grammar.dangers.find import find_dangers
from grammar.figures.weighed import reasons
from grammar.lexicon.clauses import as_clauses, stretches
from grammar.lexicon.cues import as_cues
from grammar.lexicon.slips import mended
from grammar.lexicon.tapped_for import for_its_own
from grammar.lexicon.vocabulary import Found, lexicon, model_names
from grammar.reading import Message, Part, Span, Stated
from grammar.scene.groups import groups
from grammar.scene.items import items_of
from grammar.scene.near import weights
from grammar.scene.restated import restated
from grammar.scene.scene import Scene
from grammar.settle import settled
from grammar.text.parts import parts
from grammar.text.tokens import cut, unlinked

MOST_WORDS = 3600  # and marks: the longest mail that is taken has fewer; of anything else the beginning is enough
MOST_FIGURES = 600  # that are measured: a log may hold thousands, of which no answer speaks
RATING = "cable.insulation"
MENDS = ("note", "correction")
QUESTIONS = frozenset({"request", "put", "detail"})


def read(
    text: str,
    models: Sequence[str] = (),
    expecting: Sequence[str] = (),
    said: Sequence[Stated] = (),
    likely: Sequence[str] = (),
) -> Message:
    """What a text says. `models` are names of the house's catalogue; `expecting` the facts that the desk asked
    for last, which a bare value then states; `said` those of the conversation, newest first, which it may
    correct; `likely` the facts that the things asked about last go by, as a fuse does by its amps.
    Knows no rule and no topic; never raises for a text."""
    scene, pieces, plain = laid_out(text, models, expecting, said, likely)
    stated = words_of(scene)
    facts = settled(scene, stated, expecting, said)
    return Message(
        scene.text,
        quantities=tuple(quantity for part in pieces for quantity in part.quantities),
        stated=tuple(facts),
        cues=as_cues(scene.text, scene.tokens, scene.found),
        clauses=as_clauses(scene.tokens, scene.clauses),
        dangers=find_dangers(plain, said, rated(scene, facts)),
        words=tuple(token.word for token in scene.tokens),
        denied=stated.denied,
        implausible=tuple(scene.implausible),
    )


def rated(scene: Scene, stated: Iterable[Stated]) -> list[Span]:
    """The degrees that a cable stands, where those were asked for or no battery is spoken of that may be hot."""
    battery = "battery" in scene.heads or any(item.fact.startswith("battery.") for item in (*stated, *scene.said))
    if battery and RATING not in scene.expected:
        return []
    return [item.span for item in stated if item.fact == RATING and item.span]


def laid_out(
    text: str,
    models: Sequence[str] = (),
    expecting: Sequence[str] = (),
    said: Sequence[Stated] = (),
    likely: Sequence[str] = (),
) -> tuple[Scene, Sequence[Part], str]:
    """A text as the rules of attachment see it, the pieces that the quantities grammar cut, and it without links."""
    plain = unlinked(text)
    typed = cut(plain, MOST_WORDS)
    if len(typed) == MOST_WORDS:
        text = text[: typed[-1].end]
    tokens = mended(typed, models)
    words = [token.word for token in tokens]
    found = asked_of_nobody(lexicon().find(words))
    clauses = stretches(plain, tokens, found)
    found = for_its_own(found, clauses, words)
    figures = [token.end for token in typed if token.word[0].isdigit()]
    end = figures[MOST_FIGURES - 1] if len(figures) > MOST_FIGURES else len(text)
    slips = [(token.start, token.end, token.word) for token in tokens if token.mended and token.end <= end]
    pieces = parts(plain[:end], slips)
    items = restated(items_of(text, tokens, [*found, *model_names(tuple(models)).find(words)], pieces))
    asked = frozenset(expecting)
    scene = Scene(text, tokens, items, found, clauses, asked, weights(items), groups(items), tuple(said), tuple(likely))
    return scene, pieces, plain


def asked_of_nobody(found: list[Found]) -> list[Found]:
    """The phrases without what only sounds like a question inside a correction: "I read that wrong" asks nothing."""
    mends = {item.start: item.end for item in found if (item.kind, item.concept) == MENDS}
    mended = {at: end for start, end in mends.items() for at in range(start, end)}
    return [item for item in found if item.kind not in QUESTIONS or item.end > mended.get(item.start, 0)]


def why_weighed(text: str, item: Stated, models: Sequence[str] = ()) -> list[str]:
    """The points that spoke for a fact that was weighed, the strongest first: "left:charger +6"."""
    scene, _, _ = laid_out(text, models)
    claims = ruled(scene)
    at = next((one.at for one in scene.measured if one.part is not None and one.part.span == item.span), None)
    return [] if at is None else [f"{sign} {number:+}" for number, sign in reasons(scene, claims, at, item.fact)]
