"""Orders, prices, deliveries, returns, warranty, jobs, spam: handed over, with what to have ready."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service.case import Case
from service.reply import Answer
from service.topic import Topic

TOPIC = Topic("other-desk", "For another desk")

# The first row whose cues stand in the question speaks.
BOTH = (
    "This is for the orders desk, who can see your order and decides on warranty: we have marked your message for "
    "them; please have the order and serial numbers ready."
)
PRICE_TOO = (
    "This is for the orders desk, who knows prices and can see your order: we have marked your message for them; "
    "please have the order number ready."
)
HAND_OVERS: tuple[tuple[str, str], ...] = (
    (
        "detail:advert",
        "This is nothing for the battery desk, so no answer is due: it is left for the office to look at.",
    ),
    (
        "detail:legal",
        "This is for the office, who deals with claims and personal data: we have marked your message for them.",
    ),
    ("detail:job", "This is for the office, who deals with jobs and training: we have marked your message for them."),
    (
        "detail:warranty",
        "This is for the orders desk, who decides on warranty and returns: we have marked your message for them; "
        "please have the serial number ready.",
    ),
    (
        "detail:order",
        "This is for the orders desk, who can see your order: we have marked your message for them; "
        "please have the order number ready.",
    ),
    (
        "detail:price",
        "This is for the orders desk, who knows prices, stock and dealers: we have marked your message for them.",
    ),
    (
        "detail:delivery",
        "This is for the orders desk, who can see your order: we have marked your message for them; "
        "please have the order number ready.",
    ),
)
ANY = (
    "This is for another desk, who deals with orders, prices, returns and papers: we have marked your message for them."
)

NOT_COUNTED = (
    r"(?![\w-]|[.,]\d| ?(?:a|ah|amps?|v|volts?|m|mm2?|cm|ft|feet|kg|lbs?|cca|w|pcs|pieces|units|x|of|euros?)\b)"
)
SIGN = r"(?P<sign>(?:[a-z]{1,4}[- ]?)?\d[\d/-]*"
ORDER_TOLD = regex(  # "order 4471", "order no. OT-20931", "invoice #881"
    r"\b(?:order|p\.?o|invoice)\b(?:(?:'s)? ?(?:number|no|nr|num|ref(?:erence)?)\b\.?)?(?: is| was)?"
    rf"[ :#]{{1,3}}{SIGN}\d){NOT_COUNTED}|#{SIGN.replace('sign', 'mark')}\d){NOT_COUNTED}",
    re.IGNORECASE,
)
SERIAL_TOLD = regex(
    r"\bserial(?: ?(?:number|no|nr|num)\b\.?)?(?: is| was)?[ :#]{1,3}(?P<sign>(?=[\w-]*\d)[\w-]{4,})", re.IGNORECASE
)
LEAST = 3  # signs of a number that is one of an order


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Who takes over and for what; no figure, no promise."""
    head = next((said for cue, said in HAND_OVERS if case.says(cue)), ANY)
    if case.says("detail:order") and case.says("detail:warranty"):
        head = BOTH
    elif case.says("detail:order") and case.says("detail:price"):
        head = PRICE_TOO
    head = with_numbers(head, case.text)
    return TOPIC.says("information", head, route="other-desk")


def with_numbers(head: str, text: str) -> str:
    """The sentence without asking for a number that the message tells, which goes with it."""
    order = next(
        (told for found in ORDER_TOLD.finditer(text) if len(told := found["sign"] or found["mark"]) >= LEAST), ""
    )
    serial = found["sign"] if (found := SERIAL_TOLD.search(text)) else ""
    both, one = "please have the order and serial numbers ready", "please have the {} number ready"
    if both in head and (order or serial):
        noted = " and ".join(f"{name} {told}" for name, told in (("order", order), ("serial number", serial)) if told)
        left = "" if order and serial else f", {one.format('serial' if order else 'order')}"
        return head.replace(both, f"with {noted} noted{left}")
    for name, told, words in (("order", order, "order"), ("serial", serial, "serial number")):
        if told:
            head = head.replace(one.format(name), f"{words} {told} is noted")
    return head
