"""A charge that is only to come: "minus 4 in the box, the charger's timer is set for 5. Leave it?" """

from __future__ import annotations

from itertools import pairwise

from grammar.dangers.text import Text
from grammar.text.patterns import regex

WHEN = (  # a time of the clock, and no length of time: "for 0530", "at 6 in the morning", "tomorrow"
    r"(?: \w+){0,3}? (?:\d{1,4}(?! ?(?:hours?|hrs?|h|min\w*|amps?|a|ah|volts?|v"
    r"|percent|days?|weeks?|watts?|w|c|degrees?)\b)"
    r"|tomorrow|tonight|midnight|dawn|noon|five|six|seven|eight|nine|ten|eleven|in an hour|later)\b"
)
STARTS = regex(  # what is to start the charger by itself
    r"\b(?:(?:timer|time ?switch|time ?clock|scheduled|programmed|due|set)"
    r"|(?:will|should|shall|would|to|itll) (?:\w+ )?(?:come|start|kick|cut|switch|turn|go|begin)"
    rf"|(?:comes|kicks|cuts|switches|turns|goes|starts|begins)){WHEN}"
)
HAPPENED = frozenset(  # what has been done, goes on or comes back every day
    (
        *("was", "were", "been", "had", "has", "did", "ran", "came", "started", "kicked", "charged", "fed", "took"),
        *("yesterday", "ago", "last", "again", "still", "already", "since", "every", "each", "daily", "nightly"),
        *("always", "usually", "mornings", "nights", "twice", "woke", "found", "showed", "shows", "app", "now", "kept"),
        *("pushing", "pushed", "going", "taking", "running", "runs", "finished", "ended", "stopped", "forgot", "week"),
        *("weeks", "days", "months", "ive", "weve", "got", "went", "hot", "warm", "swollen", "until", "till"),
    )
)
BEGINS = frozenset({"start", "starts", "begin", "begins", "starting", "stop", "before", "of", "to"})


def is_to_come(words: Text) -> bool:
    """Whether a message tells when a charger will start, and nothing of a charge that has begun."""
    if not HAPPENED.isdisjoint(words.words) or STARTS.search(" ".join(words.words)) is None:
        return False
    goes_on = any(word == "charging" and before not in BEGINS for before, word in pairwise(("", *words.words)))
    return not goes_on
