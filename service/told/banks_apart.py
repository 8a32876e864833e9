"""Two banks of unlike kinds, told with number and size: "a 90 Ah AGM in the bow, two 110 Ah wets for the house"."""

from __future__ import annotations

import re
from dataclasses import dataclass

from grammar.text.numbers import value
from grammar.text.patterns import regex

KINDS = {"agm": "agm", "gel": "gel", "wet": "flooded", "flo": "flooded", "lit": "lfp", "lif": "lfp", "lfp": "lfp"}
KIND = r"(?P<{}>agm|gel|wet(?:[- ]cell)?|flooded|lithium|lifepo4|lfp)s?"
MANY = r"(?P<{}>one|an?|single|two|three|four|[1-4])"
SIZE = r"(?P<{}>\d{{2,3}}) ?-?ah\b"
BANK = regex(
    rf"(?:(?<![\w.,/-]){MANY.format('many')}(?: ?(?:x|times))? (?:12 ?v )?)?{SIZE.format('size')}"
    rf"(?: each)?,? {KIND.format('kind')}\b"
    rf"|(?:(?<![\w.,/-]){MANY.format('of_many')} (?:12 ?v )?)?\b{KIND.format('of_kind')}(?: batter(?:y|ies))?"
    rf" (?:of|at|with),? {SIZE.format('of_size')}",
    re.IGNORECASE,
)
NAMED = regex(rf"\b{KIND.format('kind')}\b", re.IGNORECASE)
PLACES = {
    "house": r"house|domestic|leisure|service|fridge|lights",
    "bow": r"bow|front|forward|thruster|windlass",
    "start": r"start(?:er|ing)?|engine|cranking",
    "stern": r"stern|aft",
}
ANY = "|".join(PLACES.values())
PLACE = regex("|".join(rf"\b(?P<{name}>{words})\b" for name, words in PLACES.items()), re.IGNORECASE)
FOR_IT = regex(  # "two 110 Ah wets for the house"
    rf"^[^;:.?!]{{0,45}}?\b(?:for|serves?|feeds?|runs?|in|at|on) (?:the |my |our )?(?P<place>{ANY})\b", re.IGNORECASE
)
OF_IT = regex(  # "bow: a 90 Ah AGM"
    rf"(?<!for )(?<!for the )(?<!for my )(?<!in the )\b(?P<place>{ANY})"
    r"(?: (?:bank|battery|side|one))?(?: is| has|:| -|,)? ?$",
    re.IGNORECASE,
)
NO_BANKS = regex(
    r"\b(?:series|24 ?v\w*|or|instead|replac\w+|swap\w*|chang\w+|than|upgrad\w+|was|were|used to)\b", re.IGNORECASE
)
NEAR = 60  # characters in which the place of a bank is told


@dataclass(frozen=True, slots=True)
class Bank:
    """Batteries alike in parallel: how many, of what size and kind, and what they are for, as far as it is told."""

    many: int
    size: float
    kind: str
    places: frozenset[str | None]

    @property
    def amp_hours(self) -> float:
        """What they hold together."""
        return self.many * self.size


def told(text: str) -> tuple[Bank, Bank] | None:
    """The two banks, the one that is asked about first; None where a message tells of no such two, or of a choice.

    >>> [(bank.amp_hours, bank.kind) for bank in told("a 90 Ah AGM and two 110 Ah wets, how many amps for the wets?")]
    [(220.0, 'flooded'), (90.0, 'agm')]
    >>> told("a 90 Ah AGM or two 110 Ah wets, how many amps?"), told("two 110 Ah wets, how many amps?")
    (None, None)
    """
    found = list(BANK.finditer(text))
    if len(found) != 2 or NO_BANKS.search(text, 0, found[1].end()):
        return None
    first, second = (_bank(text, one, found) for one in found)
    if first.kind == second.kind:
        return None
    rest = text[found[1].end() :]
    asked = rest[max(rest.rfind(mark) for mark in ".;:!\n") + 1 :]
    return (second, first) if _is_meant(asked, second) and not _is_meant(asked, first) else (first, second)


def _bank(text: str, found: re.Match[str], banks: list[re.Match[str]]) -> Bank:
    name = (found["kind"] or found["of_kind"]).lower()
    many = (found["many"] or found["of_many"] or "one").lower()
    count = 1 if many in ("a", "an", "single") else int(value(many))
    end = next((other.start() for other in banks if other.start() > found.start()), found.end() + NEAR)
    told_so = (
        OF_IT.search(text[max(0, found.start() - NEAR) : found.start()]),
        FOR_IT.search(text[found.end() : end]),
    )
    places = (PLACE.fullmatch(words["place"]) for words in told_so if words)
    return Bank(
        count,
        float(found["size"] or found["of_size"]),
        KINDS[name[:3]],
        frozenset(place.lastgroup for place in places if place),
    )


def _is_meant(asked: str, bank: Bank) -> bool:
    """Whether the question names a bank, by its place or its kind."""
    places = {found.lastgroup for found in PLACE.finditer(asked)}
    kinds = {KINDS[found["kind"].lower()[:3]] for found in NAMED.finditer(asked)}
    return not bank.places.isdisjoint(places) or bank.kind in kinds
