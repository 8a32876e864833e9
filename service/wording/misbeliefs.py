"""What many believe of batteries, cables and fuses: the true thing first, then the fair part of the idea.

The table holds for each how it is said, what is true of it and what is fair in it (reference/misbeliefs.toml); to
add one, add a row. It is answered where it is asked of ("does a BMS replace the fuse?") or claimed by somebody.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache

from grammar.dangers.text import Text, read
from grammar.lexicon.phrases import Hit, Phrases, compiled
from grammar.reading import Message, Span, Stated
from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.finish import cited
from service.reference import Row
from service.reply import HOUSE_RULES, Answer, Step
from service.wording.claims import Appeal, Claim, claim
from service.wording.summed import has_opening, lower

TABLE = "misbeliefs"
MOST_TRIED = 5  # places at which one is looked at, however often its words stand there
LONGEST = 30  # words of a headline
NEGATIONS = frozenset(
    (
        *("not", "no", "never", "doesnt", "dont", "isnt", "arent", "cant", "wont", "wouldnt", "shouldnt"),
        *("neither", "without"),
    )
)
BEFORE = 2  # words before a phrase in which it may be denied
TURNED = {"No": "Yes", "Not quite": "Yes"}
SENTENCE = regex(r"[.!?;\n](?=\s|$)")
LED_IN = r"\W*(?:(?:and|so|but|then|now|ok|well|hi|hello|or)\W+)*"
OPEN = regex(LED_IN + r"(?:what|which|where|how|why|when|who)\b", re.IGNORECASE)
ASKS_HOW_MANY = regex(r"\b(?:how (?:much|many|big|long)|what)\b", re.IGNORECASE)
YES_OR_NO = regex(
    LED_IN + r"(?:is|are|does|do|did|can|could|will|would|should|shall|must|may|might)(?:n['’]?t)?\b",
    re.IGNORECASE,
)
CONCLUDES = regex(
    r"(?:^|[,;]\s*)\W*(?:and |but )?so\b|\b(?:then|right)\W*$"
    r"|\bso (?:can|could|may|do|does|is|are|should|must|will|i|we|he|no)\b",
    re.IGNORECASE,
)
REFUSED = regex(
    r"\b(?:told (?:him|her|them)|i (?:say|said|told (?:him|her|them))) (?:no|not so|otherwise)\b", re.IGNORECASE
)
SLOT = regex(r"\{([a-z_.]+)\}")


@dataclass(frozen=True, slots=True)
class Belief:
    """A misbelief that a message asks of: its row, and how it is said."""

    row: Row
    span: Span  # of the sentence
    denied: bool = False  # the true thing is told
    reason: bool = False  # figures come before it

    def text(self, name: str) -> str:
        """A column as text; "" where the row has none."""
        return str(self.row[name].value) if name in self.row else ""

    @property
    def topics(self) -> tuple[str, ...]:
        """The topics that it is a matter of, the one that answers it alone first."""
        return tuple(self.row["topics"].value)

    @property
    def claimed(self) -> frozenset[str]:
        """The facts that are no facts where it is told."""
        return frozenset(self.row["claimed"].value) if "claimed" in self.row else frozenset()

    @property
    def cite(self) -> str:
        """Its source."""
        return self.row["id"].cite


@cache
def _phrases() -> Phrases:
    return Phrases(*compiled({row["id"].value: row["says"].value for row in reference.rows(TABLE)}, {}))


def found(message: Message) -> tuple[Belief, ...]:
    """The misbeliefs that a message asks of or that somebody claims in it, in their order, each once."""
    words = read(message.text)
    hits = _phrases().find(words.words)
    if not hits:
        return ()
    told = claim(message.text)
    beliefs: dict[str, Belief] = {}
    tried = Counter[str]()
    for hit in hits:
        tried[hit.name] += 1
        one = _belief(message, words, hit, told) if tried[hit.name] <= MOST_TRIED else None
        if one is not None:
            beliefs.setdefault(hit.name, one)
    if message.says("detail:which_limit"):  # "is it 3 % or 10 %" asks of neither alone
        return tuple(item for item in beliefs.values() if "cable.drop" not in item.claimed)
    return tuple(beliefs.values())


def _belief(message: Message, words: Text, hit: Hit, told: Claim | None) -> Belief | None:
    at, end = words.spans[hit.start][0], words.spans[hit.end - 1][1]
    row = reference.row(TABLE, id=hit.name)
    if "of" in row and all(item.fact != row["of"].value for item in message.stated):  # "from that": of what is told
        return None
    span = sentence(message.text, at, end)
    refused = REFUSED.search(message.text, end) is not None  # "told him no. Right?"
    denied = (_is_denied(words, hit) or _is_so(row, message, span)) != refused
    over_it = told is not None and told.checked and at < told.span[0] < end  # "on concrete, he says that drains it"
    if told and (over_it or told.span[0] <= at < told.span[1]):
        span = min(told.asked[0], span[0]), max(told.asked[1], span[1])
        given = at >= told.reason
        if "because" in row and not given:
            return None
        return Belief(row, span, denied != told.doubted, "reason" in row or given)
    if "because" in row:
        return None
    text = message.text[slice(*span)]
    if ASKS_HOW_MANY.search(message.text, at, end):  # "160 min of reserve, how much is that in Ah?" holds nothing
        return None
    if OPEN.match(text) or not _asks(message, text, span):
        return None
    return Belief(row, span, denied, "reason" in row)


def sentence(text: str, start: int, end: int) -> Span:
    """The sentence around a stretch of text, with the mark that ends it."""
    first = max((mark.end() for mark in SENTENCE.finditer(text, 0, start)), default=0)
    return first, next((mark.end() for mark in SENTENCE.finditer(text, end)), len(text))


def _asks(message: Message, text: str, span: Span) -> bool:
    """Whether a sentence asks if it is so, or draws it as a conclusion: "so I can leave the fuse out then"."""
    if text.rstrip().endswith("?") or YES_OR_NO.match(text) or CONCLUDES.search(text):
        return True
    inside = (clause.span[0] for clause in message.clauses if _within(clause.span, span))
    return any(YES_OR_NO.match(message.text, start) for start in inside)


def _within(inner: Span, outer: Span) -> bool:
    return outer[0] <= inner[0] < outer[1]


def _is_denied(words: Text, hit: Hit) -> bool:
    """Whether the true thing is told: "a BMS does not replace the fuse". A denial that the phrase holds is its own."""
    first = max(words.sentences[hit.start][0], hit.start - BEFORE)
    inside = (words.words[at : at + 2] for at in range(first, hit.end) if at not in hit.at)
    return any(pair[0] in NEGATIONS and pair[1:] != ("more",) for pair in inside)  # "no more than 3 %"


def _is_so(row: Row, message: Message, span: Span) -> bool:
    """Whether what is said to change stays as it is: "two of 400 CCA in series give 400 CCA"."""
    if "sum" not in row:
        return False
    told = [item.value for item in message.quantities if item.kind == row["sum"].value and _within(item.span, span)]
    return len(told) > 1 and len(set(told)) == 1


def appeals(beliefs: Iterable[Belief]) -> list[Appeal]:
    """The stretches in which certain facts are only appealed to."""
    return [(item.span, item.claimed) for item in beliefs if item.claimed and "sum" not in item.row]


def answered(answers: Sequence[Answer], beliefs: Sequence[Belief], message: Message, case: Case) -> list[Answer]:
    """The answers of a message with its misbeliefs taken up: each opens the answer that it is a matter of."""
    made = list(answers)
    if not beliefs:
        return made
    all_asked = not _asks_more(message, beliefs)
    if all_asked:
        made = _at_home(made, beliefs)
    for belief in reversed(beliefs):  # the first one opens
        at = next((number for number, item in enumerate(made) if item.topic in belief.topics), None)
        if at is None:
            made.insert(0, _opened(Answer(belief.topics[0], "information", ""), belief, case, all_asked))
        else:
            made[at] = _opened(made[at], belief, case, all_asked)
    return [item for item in made if item.topic != "unclear"]


JUDGED = ("yes", "marginal", "no")


def _beside_them(answer: Answer, beliefs: Iterable[Belief]) -> bool:
    """Whether an answer judges something that no misbelief is a matter of."""
    return answer.verdict in JUDGED and not any(answer.topic in belief.topics for belief in beliefs)


def _at_home(answers: Iterable[Answer], beliefs: Iterable[Belief]) -> list[Answer]:
    """The first answer that each misbelief is a matter of, what is said of a danger, and what is judged besides."""
    firsts = [next((item for item in answers if item.topic in belief.topics), None) for belief in beliefs]
    return [item for item in answers if item in firsts or item.topic == "hazard" or _beside_them(item, beliefs)]


def _asks_more(message: Message, beliefs: Iterable[Belief]) -> bool:
    """Whether a message asks anything outside the sentences that tell of them."""
    spans = [item.span for item in beliefs]
    asking = [clause.span for clause in message.clauses if clause.asks]
    return any(not any(_overlap(clause, span) for span in spans) for clause in asking)


def _overlap(one: Span, other: Span) -> bool:
    return one[0] < other[1] and other[0] < one[1]


def _opened(answer: Answer, belief: Belief, case: Case, all_asked: bool) -> Answer:
    """An answer that takes up a misbelief: in its headline, or among the reasons where its figures decide."""
    source = (belief.cite.partition("@")[0],)
    own = tuple(Step(f"{text}.", source) for text in _beside(belief))
    held = tuple(item.id for item in answer.cites if item.id != HOUSE_RULES) or source
    cites = [item for item in cited(case, [belief.cite]) if item.id not in {old.id for old in answer.cites}]
    answer = replace(answer, cites=(*answer.cites, *cites))
    if not belief.reason and answer.headline.startswith(f"{_opening(belief)}, "):  # the topic has words of its own:
        return replace(answer, working=(*own, *answer.working))  # "No, the fuse stays in: every feed needs one"
    if belief.reason and answer.figures and answer.verdict != "needs-facts":
        truth = Step(f"{say.capital(_truth(belief, case))}.", source)
        answer = replace(answer, working=(truth, *own, *answer.working))
        return _said_first(answer, belief) if belief.claimed else answer
    plain = _plain(answer)
    if all_asked and answer.verdict == "needs-facts":
        own_cite = tuple(cited(case, [belief.cite]))
        answer = Answer(belief.topics[0], "information", "", cites=own_cite, understood=answer.understood)
        plain = ""
    head = _headline(belief, case)
    if plain and len(f"{head} {plain}".split()) <= LONGEST:
        return replace(answer, headline=f"{head}; {lower(plain)}.", working=(*own, *answer.working))
    figures = (Step(f"{say.capital(plain)}.", held),) if plain else ()
    return replace(answer, headline=f"{head}.", working=(*figures, *own, *answer.working))


def _said_first(answer: Answer, belief: Belief) -> Answer:
    """The opening word before a figure that speaks against the idea: "No: 1000 MCA are about 800 CCA"."""
    if answer.verdict != "information" or has_opening(answer.headline):
        return answer
    return replace(answer, headline=f"{_opening(belief)}: {lower(answer.headline)}")


def _beside(belief: Belief) -> Iterator[str]:
    """What is said beside the truth: the fair part of the idea, where somebody holds it, and why it is so."""
    if belief.text("fair") and not belief.denied:
        yield f"You are right that {belief.text('fair')}"
    if belief.text("why"):
        yield belief.text("why")


def _plain(answer: Answer) -> str:
    """The headline of an answer without its opening word and its full stop."""
    head = answer.headline
    return (head.partition(": ")[2] if has_opening(head) else head).rstrip(".")


def _headline(belief: Belief, case: Case) -> str:
    return f"{_opening(belief)}: {_truth(belief, case)}"


def _opening(belief: Belief) -> str:
    opens = belief.text("opens")
    return TURNED.get(opens, opens) if belief.denied else opens


def _truth(belief: Belief, case: Case) -> str:
    """What is true of it, with the customer's own figures where they are told."""
    told = belief.text("told")
    slots = SLOT.findall(told)
    if slots and all(name in case.stated for name in slots):
        return SLOT.sub(lambda slot: case.show(slot[1], case.stated[slot[1]].value), told)
    return belief.text("truth")


def sums(beliefs: Iterable[Belief], claimed: Iterable[Stated]) -> list[Stated]:
    """The claimed sums that no misbelief answers in the headline."""
    own = {fact for item in beliefs if not item.reason for fact in item.claimed}
    return [item for item in claimed if item.fact not in own]
