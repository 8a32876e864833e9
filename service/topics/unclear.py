"""Not understood, another language, thanks, or not our trade: what the desk can answer, and who takes over."""

from __future__ import annotations

import re
from collections.abc import Iterable

from grammar.text.patterns import regex
from service.case import Case
from service.reply import Answer, Route
from service.told import of_before, pictured
from service.topic import Topic

ASKS = regex(  # what asks something and names nothing of our trade: "will it rain at the weekend"
    r"\?|^\W*(?:will|which|what|who|where|when|how|can|could|is|are|do|does|should)\b", re.IGNORECASE
)
OF_NOTHING = r"(?:ones?|kinds?|types?|sizes?|sort|ways?|options?|thing|for|of|to|is|if|when|so|it|this|that)\b"
SEEKS = regex(  # the same without a word that asks: "best bait for walleye"; "best one for me" may be of ours
    r"^\W*(?:the )?(?:best|cheapest|nearest|closest|recommend\w*|any(?:one|body) (?:know|got|been|seen)\w*|forecast)"
    rf" (?!{OF_NOTHING})[a-z]+|^\W*(?:the )?weather\b",
    re.IGNORECASE,
)
ASKS_ELSE = regex(  # the same, where it stands beside a thank-you or a laugh
    r"\?|\b(?:where|who|when|which|what|how|why)(?:['’]?s)? (?:do|does|did|is|are|can|could|will|would|should|was|were"
    r"|many|much|long|far|old|time|the)\b",
    re.IGNORECASE,
)
POLITE = frozenset(  # words of those who greet, thank, laugh or ask whether somebody is there
    (
        *("a", "about", "afternoon", "again", "all", "am", "an", "and", "anybody", "anyone", "are", "as"),
        *("ask", "at", "bot", "but", "bye", "can", "chat", "cheers", "could", "day", "did", "do", "does"),
        *("doing", "else", "english", "evening", "everything", "fine", "folks", "for", "from", "good", "got"),
        *("great", "guessed", "guys", "haha", "have", "hello", "help", "helpful", "helps", "hey", "hi", "how"),
        *("human", "i", "in", "is", "it", "its", "just", "kind", "know", "known", "later", "like", "lol"),
        *("lot", "lots", "m", "man", "mate", "may", "me", "mean", "mind", "morning", "much", "my", "nice"),
        *("no", "not", "now", "of", "ok", "okay", "on", "one", "perfect", "person", "please", "question"),
        *("questions", "quick", "re", "real", "right", "robot", "s", "see", "should", "sir", "so", "some"),
        *("something", "speak", "t", "ta", "talk", "team", "thank", "thanks", "that", "thats", "the", "there"),
        *("they", "thing", "this", "thought", "to", "today", "u", "understood", "very", "was", "we", "weekend"),
        *("well", "were", "what", "when", "where", "which", "who", "whos", "why", "will", "with", "work"),
        *("works", "would", "wow", "ya", "yes", "you", "your", "yours"),
    )
)
WORDS = regex(r"\w")
NAMES = regex(r"[a-z]+")
TOPIC = Topic("unclear", "Not understood")
BACK = "note:first_boat"  # after another boat was spoken of, whose figures took the place of the first one's

FOREIGN = "We answer in English here, so we have marked your message for a colleague to read."
WELCOME = "You are welcome: ask whenever you need a figure for a battery, a charger, a cable or a fuse."
IT_HOLDS = "what we said of the danger holds until somebody has seen to it."  # thanks end no danger
AT_YOUR_SERVICE = "At your service: ask whenever you need a figure for a battery, a charger, a cable or a fuse."
NOT_OURS = "That is outside what this desk knows: it answers questions on boat batteries, chargers, cables and fuses."
NOT_OF_THE_DESK = (
    "That is outside what this desk answers (batteries, chargers, cables, fuses): one of our technicians will read "
    "your message."
)
PERSON = "We could not tell what you want to know, so one of our technicians will read your message."
PICTURE = (
    "One of our technicians will look at your picture; we read words only, so type the figures on it for an answer "
    "right away."
)
OFFER = (
    "Tell us what you have and what you want to do, such as: will a 110 Ah AGM battery of 800 CCA run a 260 A "
    "thruster; is 12.4 V good; what cable over 6 m; how long to charge"
)
FIRST_BOAT = (
    "We keep the figures of one boat at a time: please tell us the battery and the thruster of that one once more."
)
UNREAD = "note:unread"  # the reader failed on the message
BOAT_MATTERS = "note:boat_matters"  # gelcoat, sails, moorings
OURS = (  # what makes a message of such matters one for this desk after all
    *("thing:battery", "thing:charger", "thing:dcdc", "thing:alternator", "thing:panel", "thing:cable", "thing:fuse"),
    *("thing:bms", "thing:cell", "thing:terminal", "thing:drain", "thing:load"),
    *("about:load", "about:kind_word", "term:"),
)
LOADS = ("about:load", "thing:load")
OF_A_LOAD = frozenset({"load.kind", "load.model"})
THANKS, PLEASANTRIES = "note:thanks", ("note:greeting", "note:small_talk")
OF_OUR_TRADE = (
    *("battery.", "bank.", "reading.", "charger.", "load.", "fuse.", "solar.", "alternator.", "drain.", "storage."),
)
BATTERY_CLASSES = ("thing:", "about:load", "about:reading_word", "about:charging", "word:sag", "term:", "role:storage")


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """A language we do not answer in, thanks, not our trade, else for a technician: the first that fits."""
    if case.says(BACK):
        return TOPIC.needs("load.model", "battery.cca", headline=FIRST_BOAT)
    head, route = said(case)
    if case.hazard and head in (WELCOME, AT_YOUR_SERVICE):
        return TOPIC.says("information", f"{head.split(':')[0]}; {IT_HOLDS}", route=route)
    if head == PERSON and pictured.shown(case.text):
        return TOPIC.says("information", PICTURE, route=route)
    if head == PERSON:
        case.step(OFFER, "desk-scope")
    return TOPIC.says("information", head, route=route)


def said(case: Case) -> tuple[str, Route]:
    """The sentence and where the message goes."""
    if case.says("note:foreign"):
        return FOREIGN, "technician"
    if of_its_mechanics(case):
        return NOT_OF_THE_DESK, "technician"
    if outside(case.cues):
        return NOT_OURS, "other-desk"
    if case.says(UNREAD) or about_batteries(case):
        return PERSON, "technician"
    if case.says("note:not_ours", "note:other_desk"):
        return NOT_OURS, "other-desk"
    if case.says(THANKS, *PLEASANTRIES) and asks_else(case.text):
        return NOT_OURS, "other-desk"
    if case.says(THANKS):
        return WELCOME, "answered"
    if case.says(*PLEASANTRIES):
        return AT_YOUR_SERVICE, "answered"
    if case.text and not WORDS.search(case.text):  # an emoji, "???"
        return (PERSON, "technician") if "?" in case.text else (AT_YOUR_SERVICE, "answered")
    return (NOT_OURS, "other-desk") if seeks_else(case.text) else (PERSON, "technician")


def seeks_else(text: str) -> bool:
    """Whether something is asked or sought that a message names, of which no word is of our trade.

    >>> seeks_else("will it rain at the weekend"), seeks_else("best bait for walleye")
    (True, True)
    >>> seeks_else("it did it again, any thoughts?"), seeks_else("best one for me"), seeks_else("she is called Susan")
    (False, False, False)
    """
    return not of_before.told(text, POLITE) and any(words.search(text) for words in (ASKS, SEEKS))


def asks_else(text: str) -> bool:
    """Whether something is asked beside the thanks, and no more than whether anybody is there.

    >>> asks_else("Thanks! Where is the next fish market?"), asks_else("haha what time do the pubs shut")
    (True, True)
    >>> asks_else("Hello, is anybody there?"), asks_else("thanks, how are you?"), asks_else("lol, caught a cod")
    (False, False, False)
    """
    return ASKS_ELSE.search(text) is not None and not POLITE.issuperset(NAMES.findall(text.lower()))


def outside(cues: Iterable[str]) -> bool:
    """Whether a message with these cues is of the boat alone, and of nothing that this desk knows."""
    told = set(cues)
    return BOAT_MATTERS in told and not any(cue.startswith(OURS) for cue in told)


def of_its_mechanics(case: Case) -> bool:
    """Whether oil, paint or an anode of a thruster or a windlass is asked for, and nothing electrical is named."""
    electric = tuple(cue for cue in OURS if cue not in LOADS)
    named = any(cue.startswith(electric) for cue in case.cues) or not set(case.stated) <= OF_A_LOAD
    load = case.says(*LOADS) or bool(case.stated)
    return case.says(BOAT_MATTERS) and load and not named


def about_batteries(case: Case) -> bool:
    """Whether anything of our trade is named."""
    told = any(fact.startswith(OF_OUR_TRADE) for fact in case.stated)
    return told or any(cue.startswith(BATTERY_CLASSES) for cue in case.cues)
