"""So much cable that is to be bought, and papers of what was: a message that asks for price, delivery, an invoice, a
receipt or spare parts goes to the other desk alone."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex

LENGTH = r"\d+(?:[.,]\d+)? ?(?:m|metres?|meters?|ft|feet|foot)\b"
BUYS = r"\b(?:deliver\w*|order\w*|prices?|quote|ship(?:ped|ping)?|sell|costs?|in stock|how much (?:is|are|for))\b"
ORDERED = regex(rf"{BUYS}[^.?!]{{0,200}}?\b{LENGTH}|\b{LENGTH}[^.?!]{{0,200}}?{BUYS}", re.IGNORECASE)
POLITELY = ("request:may_i",)  # "could I get the receipt"
OF_A_CIRCUIT = ("load.", "cable.length", "cable.in_engine_space", "battery.", "charger.", "reading.")
PAPER = r"(?:invoices?|receipts?|bills?|pro ?forma|credit notes?|proofs? of purchase|vat papers?)"
BOOKS = r"(?:accountants?|book-?keep(?:er|ing)|tax (?:man|office|return|adviser)|accounts department)"
PAPERS = regex(  # "could I get a copy of the receipt", "the accountant wants the bill": no "bill" of a shock
    rf"\b(?:send|sent|resend|forward|e-?mail|mail|post|print|get|need|want|copy of|duplicate|missing|issue|make out)"
    rf"s?\b[^.?!;]{{0,24}}\b{PAPER}\b|\b(?:can|could|may) (?:i|we) (?:please )?have\b[^.?!;]{{0,24}}\b{PAPER}\b"
    rf"|\b{BOOKS}\b[^.?!;]{{0,40}}\b{PAPER}\b|\b{PAPER}\b[^.?!;]{{0,40}}\b{BOOKS}\b",
    re.IGNORECASE,
)
SPARES = regex(  # parts of a thruster that wear and are bought, of which this desk knows nothing else
    r"\b(?:sell|stock|supply|prices?|costs?|order|buy|deliver|how much (?:is|are|for))\b[^.?!;]{0,40}"
    r"\b(?:anodes?|zincs?|props?|propell[eo]rs?|shear ?pins?)\b"
    r"|\b(?:anodes?|zincs?|props?|propell[eo]rs?|shear ?pins?)\b[^.?!;]{0,30}"
    r"\b(?:in stock|prices?|order|deliver\w*|cost)\b",
    re.IGNORECASE,
)
OF_A_PRICE = regex(rf"\b(?:electricity|power|shore|harbour|marina|fuel|heating) {PAPER}\b", re.IGNORECASE)
ASKED = ("thing:fuse", "about:fuse", "word:loss", "about:loss", "request:what_size")


def of_papers(message: Message) -> bool:
    """Whether papers or spare parts are asked for, and nothing of a circuit is told or asked beside them."""
    told = any(item.fact.startswith(OF_A_CIRCUIT) and item.fact != "load.kind" for item in message.stated)
    asks = any(cue.name.startswith("request:") and cue.name not in POLITELY for cue in message.cues)
    if told or asks or OF_A_PRICE.search(message.text):
        return False
    return bool(PAPERS.search(message.text) or SPARES.search(message.text))


def orders(message: Message) -> bool:
    """Whether a length of cable is to be bought, and nothing of a circuit is told or asked beside it."""
    told = any(item.fact.startswith(OF_A_CIRCUIT) for item in message.stated)
    return not told and not any(map(message.says, ASKED)) and bool(ORDERED.search(message.text))


OF_A_PHONE = regex(  # "my phone is dead by lunch", "the laptop's battery lasts an hour"
    r"(?:^|[.?!;,:]\s*|\b(?:hi|hello|and|but|also),? )(?:my|our|his|her|the|this|a) (?:\w+(?:'s)? )?"
    r"(?:smart ?phone|phone|mobile|laptop|notebook|tablet|camera|watch|hearing aid)(?:(?:'s)? batter(?:y|ies)"
    r"|(?:'s)? (?:is (?:dead|flat|empty)|dies|died|keeps dying|goes (?:dead|flat)|lasts|only lasts|loses"
    r"|runs (?:out|down|flat)"
    r"|won'?t (?:charge|last|hold)))\b",
    re.IGNORECASE,
)
ITS_OWN = (
    "battery.age",
    "battery.charge",
    "load.kind",
    "load.time",
    "reading.rest_time",
)  # what may be told of a phone too


def of_a_phone(message: Message) -> bool:
    """Whether only the battery of a phone or the like is spoken of, and nothing of a boat."""
    told = {item.fact for item in message.stated}
    things = any(cue.name.startswith("thing:") and cue.name != "thing:battery" for cue in message.cues)
    found = OF_A_PHONE.search(message.text)
    if found is None or things or message.says("about:kind_word") or not told <= {*ITS_OWN}:
        return False
    return all(found.start() <= cue.span[0] < found.end() for cue in message.cues if cue.name == "about:load")
