"""Orders, prices, deliveries, returns, warranty, jobs, spam: handed over, with what to have ready."""

from __future__ import annotations

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


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Who takes over and for what; no figure, no promise."""
    head = next((said for cue, said in HAND_OVERS if case.says(cue)), ANY)
    if case.says("detail:order") and case.says("detail:warranty"):
        head = BOTH
    elif case.says("detail:order") and case.says("detail:price"):
        head = PRICE_TOO
    return TOPIC.says("information", head, route="other-desk")
