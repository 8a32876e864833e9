"""The headline of a question that puts a choice, "leave it or go and get it": it opens with the one to take."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.text.patterns import regex
from service import say
from service.judgements import ice_first
from service.reply import Answer

SIDES = regex(r"(?P<one>[^.?!;,:]{1,80}?),? or (?P<other>[^.?!;,:]{1,80})", re.IGNORECASE)
LED = regex(
    r"^(?:(?:and|so|but|then|ok|well|right|now|just|better|best|rather|maybe|also)\b ?"
    r"|(?:do|should|shall|can|could|must|would|may|will) (?:i|we|he|she|they|you|it|that)\b ?"
    r"|(?:is|was) it (?:better|best|ok|fine|safe)\b ?|better (?:off )?|to )+",
    re.IGNORECASE,
)
STAY = regex(r"^(?:leave|leaving|keep|keeping|stay|let (?:it|them)|wait|carry on)\b", re.IGNORECASE)
GO = r"(?:go (?:down )?and )?"
FETCH = rf"{GO}(?:get|fetch|bring|take|carry|haul|move)\b"
CHARGE = rf"{GO}(?:(?:re)?charge|charging|plug|top|put (?:it|them|the charger) on)\b"
RENEW = r"(?:replace|bin|scrap|chuck|dump|swap|change|renew|buy|get a new|new one)\b"
ACTS = {  # what may be done, by what the answer judges: where it is not well, that is the one to take
    "freeze-point": regex(f"^(?:{FETCH}|{CHARGE})", re.IGNORECASE),
    "rest-voltage": regex(f"^{CHARGE}", re.IGNORECASE),
    "specific-gravity": regex(f"^{CHARGE}", re.IGNORECASE),
    "storage": regex(f"^(?:{FETCH}|{CHARGE})", re.IGNORECASE),
    "replacement": regex(f"^{RENEW}", re.IGNORECASE),
}
FIRST = regex(  # what a headline opens with, before its colon
    r"^(?:Yes|No|Only just|Just enough|It may|Keep it|Most likely|Not for much longer|Not by this|A little)[^:]*: ?"
)
ADVICE = regex(  # what a headline ends with
    r", so (?:(?P<ice>charge only if free of ice)|charge it full before that frost"
    r"|charge it(?: (?P<when>today|soon))?(?:, then test it| or bring it in)?)\.$"
)
CHARGES, RENEWS = (regex(f"^{act}", re.IGNORECASE) for act in (CHARGE, RENEW))
GERUND = regex(r"^(?:re)?charging\b", re.IGNORECASE)
UNSURE = ("replacement", "marginal")  # "perhaps soon" chooses neither
FULL = 97.5  # percent of charge from which nothing is to be charged
LONGEST = 5  # words of one side


def taken(answer: Answer, text: str) -> Answer | None:
    """The answer opened with the side of the choice that its verdict takes; None where it puts no such choice."""
    acts = ACTS.get(answer.topic)
    if acts is None or answer.verdict not in ("yes", "marginal", "no") or (answer.topic, answer.verdict) == UNSURE:
        return None
    if acts.match(answer.headline):
        return None
    for stay, act in _choices(text, acts):
        renewed = RENEWS.match(stay) and answer.topic != "replacement"  # "charge or bin" of one that is well
        low = any(item.name == "state_of_charge" and float(item.value) < FULL for item in answer.figures)
        side = stay if answer.verdict == "yes" and not (renewed and low) else act
        if side is stay and answer.asks:  # a fact that is asked for may want the other one
            return None
        if RENEWS.match(side) and answer.topic != "replacement":  # "charge it or bin it" of one that is well
            return None
        if side is act and ("deeply flat" in answer.headline or (CHARGES.match(act) and ice_first.comes(answer))):
            return None
        return replace(answer, headline=_opened_with(side, answer))
    return None


def _opened_with(side: str, answer: Answer) -> str:
    """The sentence with what to do first and not told again at its end."""
    rest, soon = _rest(answer.headline), ""
    if answer.verdict != "yes" and (advice := ADVICE.search(rest)):
        soon = f" {advice['when']}" if advice["when"] and CHARGES.match(side) else ""
        rest = f"{rest[: advice.start()]}{'; look for ice before you charge it' if advice['ice'] else ''}."
    sure = "most likely " if answer.topic == "replacement" and answer.verdict == "no" else ""
    first = f"{sure}{side}{soon}"
    return f"{say.capital(first)}: {rest}"


def _choices(text: str, acts: re.Pattern[str]) -> Iterator[tuple[str, str]]:
    """Each choice between leaving things as they are and an act that this answer may call for, in their words."""
    for found in SIDES.finditer(text):
        sides = [LED.sub("", side.strip()).strip() for side in found.group("one", "other")]
        sides = [GERUND.sub("charge it", _last_words(side, acts)) for side in sides]
        for stay, act in (sides, sides[::-1]):
            other = STAY.match(stay) or (CHARGES.match(act) and RENEWS.match(stay))
            if other and acts.match(act) and max(len(side.split()) for side in sides) <= LONGEST:
                yield stay, act


def _last_words(side: str, acts: re.Pattern[str]) -> str:
    """The choice at the end of a longer clause: "minus 10 tonight so leave it" ends in "leave it"."""
    words = side.split()
    ends = (" ".join(words[at:]) for at in range(len(words)))
    return next((end for end in ends if STAY.match(end) or acts.match(end) or RENEWS.match(end)), side)


def _rest(headline: str) -> str:
    """The sentence without the yes or no before it."""
    found = FIRST.match(headline)
    if not found:
        return f"{headline[:1].lower()}{headline[1:]}" if not headline[:2].isupper() else headline
    return headline[found.end() :]
